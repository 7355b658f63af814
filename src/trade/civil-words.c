/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "civil-words.h"

#include <stdlib.h>

#include <glib/gi18n-lib.h>

static const char *const months[]
    = { NC_ ("short month", "Jan"), NC_ ("short month", "Feb"), NC_ ("short month", "Mar"),
        NC_ ("short month", "Apr"), NC_ ("short month", "May"), NC_ ("short month", "Jun"),
        NC_ ("short month", "Jul"), NC_ ("short month", "Aug"), NC_ ("short month", "Sep"),
        NC_ ("short month", "Oct"), NC_ ("short month", "Nov"), NC_ ("short month", "Dec") };

static const char *const weekdays[]
    = { N_ ("Monday"), N_ ("Tuesday"),  N_ ("Wednesday"), N_ ("Thursday"),
        N_ ("Friday"), N_ ("Saturday"), N_ ("Sunday") };

static const char *
month_words (int month)
{
  return g_dpgettext2 (GETTEXT_PACKAGE, "short month", months[month - 1]);
}

char *
unsoot_day_words (int day)
{
  int year = 0;
  int month = 0;
  int day_of_month = 0;

  unsoot_day_split (day, &year, &month, &day_of_month);
  /* Translators: day, short month and year, as in "24 Nov 2025" */
  return g_strdup_printf (_ ("%1$d %2$s %3$d"), day_of_month, month_words (month), year);
}

char *
unsoot_day_short_words (int day)
{
  int year = 0;
  int month = 0;
  int day_of_month = 0;

  unsoot_day_split (day, &year, &month, &day_of_month);
  /* Translators: day and short month, as in "24 Nov" */
  return g_strdup_printf (_ ("%1$d %2$s"), day_of_month, month_words (month));
}

char *
unsoot_day_month_words (int day)
{
  int year = 0;
  int month = 0;
  int day_of_month = 0;

  unsoot_day_split (day, &year, &month, &day_of_month);
  /* Translators: short month and year, as in "Nov 2025" */
  return g_strdup_printf (_ ("%1$s %2$d"), month_words (month), year);
}

const char *
unsoot_weekday_words (int weekday)
{
  g_return_val_if_fail (weekday >= 1 && weekday <= 7, "");

  return _ (weekdays[weekday - 1]);
}

char *
unsoot_day_near_words (int day, int today)
{
  int ahead = day - today;

  if (ahead == 0)
    return g_strdup (_ ("today"));
  if (ahead == 1)
    return g_strdup (_ ("tomorrow"));
  if (ahead == -1)
    return g_strdup (_ ("yesterday"));
  if (abs (ahead) > UNSOOT_NEAR_DAYS)
    return unsoot_day_words (day);
  if (ahead > 0)
    return g_strdup_printf (ngettext ("in %d day", "in %d days", (gulong) ahead), ahead);
  return g_strdup_printf (ngettext ("%d day ago", "%d days ago", (gulong) -ahead), -ahead);
}

char *
unsoot_moment_near_words (const UnsootLocal *moment, const UnsootLocal *now)
{
  g_autofree char *day = unsoot_day_near_words (moment->day, now->day);

  if (abs (moment->day - now->day) > 1)
    return g_steal_pointer (&day);
  /* Translators: "today", "tomorrow" or "yesterday", and hour and minute */
  return g_strdup_printf (_ ("%s %02d:%02d"), day, moment->hour, moment->minute);
}

char *
unsoot_moment_words (const UnsootLocal *moment)
{
  g_autofree char *day = unsoot_day_words (moment->day);

  /* Translators: a date, and hour and minute */
  return g_strdup_printf (_ ("%s %02d:%02d"), day, moment->hour, moment->minute);
}
