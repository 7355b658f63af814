/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "civil.h"

#include <stdlib.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "trade-error.h"

#define DAY_SECONDS 86400
#define LAST_YEAR 9999

int
unsoot_day (int year, int month, int day_of_month)
{
  GDate date;

  if (year < 1 || year > LAST_YEAR || month < 1 || month > 12 || day_of_month < 1
      || day_of_month > 31
      || !g_date_valid_dmy ((GDateDay) day_of_month, (GDateMonth) month, (GDateYear) year))
    return 0;
  g_date_clear (&date, 1);
  g_date_set_dmy (&date, (GDateDay) day_of_month, (GDateMonth) month, (GDateYear) year);
  return (int) g_date_get_julian (&date);
}

void
unsoot_day_split (int day, int *year, int *month, int *day_of_month)
{
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_julian (&date, (guint32) CLAMP (day, 1, UNSOOT_DAY_MAX));
  *year = (int) g_date_get_year (&date);
  *month = (int) g_date_get_month (&date);
  *day_of_month = (int) g_date_get_day (&date);
}

static gboolean
has_iso_form (const char *iso)
{
  const char *form = "dddd-dd-dd";

  if (strlen (iso) != strlen (form))
    return FALSE;
  for (gsize i = 0; form[i] != '\0'; i++)
    if (form[i] == 'd' ? !g_ascii_isdigit (iso[i]) : iso[i] != '-')
      return FALSE;
  return TRUE;
}

gboolean
unsoot_day_parse (const char *iso, int *day, GError **error)
{
  int found = 0;

  if (!has_iso_form (iso))
    {
      g_autofree char *shown = g_utf8_make_valid (iso, -1);
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                   _ ("“%s” is not a date; type year, month and day as in 2025-02-28"), shown);
      return FALSE;
    }
  found = unsoot_day (atoi (iso), atoi (iso + 5), atoi (iso + 8));
  if (found == 0)
    {
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE,
                   _ ("“%s” is not in the calendar: look at month and day"), iso);
      return FALSE;
    }
  *day = found;
  return TRUE;
}

char *
unsoot_day_iso (int day)
{
  int year = 0;
  int month = 0;
  int day_of_month = 0;

  unsoot_day_split (day, &year, &month, &day_of_month);
  return g_strdup_printf ("%04d-%02d-%02d", year, month, day_of_month);
}

int
unsoot_day_add_months (int day, int months)
{
  int year = 0;
  int month = 0;
  int day_of_month = 0;
  gint64 index = 0;

  unsoot_day_split (day, &year, &month, &day_of_month);
  index = (gint64) year * 12 + month - 1 + months;
  if (index < 12 || index >= (LAST_YEAR + 1) * 12)
    return 0;
  year = (int) (index / 12);
  month = (int) (index % 12) + 1;
  day_of_month
      = MIN (day_of_month, (int) g_date_get_days_in_month ((GDateMonth) month, (GDateYear) year));
  return unsoot_day (year, month, day_of_month);
}

int
unsoot_day_weekday (int day)
{
  /* 0001-01-01 of the Gregorian calendar is a Monday. */
  return (day - 1) % 7 + 1;
}

UnsootLocal
unsoot_local_from_unix (gint64 unix_seconds, int offset_minutes)
{
  UnsootLocal local = { 0 };
  gint64 days = unix_seconds / DAY_SECONDS;
  gint64 second = unix_seconds % DAY_SECONDS + (gint64) offset_minutes * 60;

  while (second < 0)
    {
      second += DAY_SECONDS;
      days--;
    }
  days += second / DAY_SECONDS + UNSOOT_DAY_1970;
  second %= DAY_SECONDS;
  if (days < 1 || days > UNSOOT_DAY_MAX)
    return local;
  local.day = (int) days;
  local.hour = (int) (second / 3600);
  local.minute = (int) (second / 60 % 60);
  local.second = (int) (second % 60);
  return local;
}

gint64
unsoot_local_to_unix (const UnsootLocal *local, int offset_minutes)
{
  return (gint64) (local->day - UNSOOT_DAY_1970) * DAY_SECONDS + local->hour * 3600
         + (local->minute - offset_minutes) * 60 + local->second;
}
