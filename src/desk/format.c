/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "format.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include <string.h>

#include "civil-words.h"

enum
{
  DAYS_WITHOUT_YEAR = 300,
  UNIT_ALPHA_PERCENT = 65,
  LIGHT_ALPHA_PERCENT = 72
};

#define NOTHING "–"
#define PART " · "

static UnsootLocal
local (gint64 at, GTimeZone *zone)
{
  const int interval = g_time_zone_find_interval (zone, G_TIME_TYPE_UNIVERSAL, at);

  return unsoot_local_from_unix (at, g_time_zone_get_offset (zone, interval) / 60);
}

static char *
clock_words (const UnsootLocal *moment)
{
  /* Translators: hour and minute */
  return g_strdup_printf (_ ("%02d:%02d"), moment->hour, moment->minute);
}

static char *
exact_day_words (int day)
{
  g_autofree char *date = unsoot_day_words (day);

  /* Translators: weekday and date, as in “Tuesday 24 Nov 2026” */
  return g_strdup_printf (_ ("%s %s"), unsoot_weekday_words (unsoot_day_weekday (day)), date);
}

char *
unsoot_format_moment (gint64 at, gint64 now, GTimeZone *zone)
{
  const UnsootLocal moment = local (at, zone), present = local (now, zone);
  g_autofree char *day = NULL, *clock = NULL;

  if (at == 0)
    return g_strdup (NOTHING);
  day = unsoot_day_near_words (moment.day, present.day);
  clock = clock_words (&moment);
  return g_strdup_printf ("%s %s", day, clock);
}

char *
unsoot_format_moment_near (gint64 at, gint64 now, GTimeZone *zone)
{
  const UnsootLocal moment = local (at, zone), present = local (now, zone);

  return at != 0 ? unsoot_moment_near_words (&moment, &present) : g_strdup (NOTHING);
}

char *
unsoot_format_day (const char *day, const char *today)
{
  int date, present;

  if (day == NULL || *day == '\0')
    return g_strdup (NOTHING);
  if (!unsoot_day_parse (day, &date, NULL) || !unsoot_day_parse (today, &present, NULL))
    return g_strdup (day);
  return unsoot_day_near_words (date, present);
}

char *
unsoot_format_stamp (gint64 at, gint64 now, GTimeZone *zone)
{
  const UnsootLocal moment = local (at, zone), present = local (now, zone);

  if (at == 0)
    return g_strdup ("");
  if (moment.day == present.day)
    return clock_words (&moment);
  return abs (moment.day - present.day) < DAYS_WITHOUT_YEAR ? unsoot_day_short_words (moment.day)
                                                            : unsoot_day_words (moment.day);
}

char *
unsoot_format_exact (gint64 at, GTimeZone *zone)
{
  const UnsootLocal moment = local (at, zone);
  g_autofree char *day = NULL, *clock = NULL;

  if (at == 0)
    return g_strdup (NOTHING);
  day = exact_day_words (moment.day);
  clock = clock_words (&moment);
  return g_strdup_printf ("%s, %s", day, clock);
}

char *
unsoot_format_exact_day (const char *day)
{
  int date;

  if (day == NULL || *day == '\0')
    return g_strdup (NOTHING);
  return unsoot_day_parse (day, &date, NULL) ? exact_day_words (date) : g_strdup (day);
}

char *
unsoot_format_clock (gint64 at, GTimeZone *zone)
{
  const UnsootLocal moment = local (at, zone);

  return clock_words (&moment);
}

char *
unsoot_format_from_to (gint64 from, gint64 to, gint64 now, GTimeZone *zone)
{
  const UnsootLocal first = local (from, zone), last = local (to, zone);
  g_autofree char *begin = unsoot_format_moment (from, now, zone);
  g_autofree char *end = NULL;

  if (from == 0 || to == 0)
    return g_strdup (NOTHING);
  end = first.day == last.day ? clock_words (&last) : unsoot_format_moment (to, now, zone);
  return g_strdup_printf ("%s–%s", begin, end);
}

char *
unsoot_format_span (gint64 seconds)
{
  const gint64 minutes = (seconds + 30) / 60;
  const gint64 hours = minutes / 60;
  const gint64 days = hours / 24;

  if (minutes < 60)
    /* Translators: a length of time in minutes */
    return g_strdup_printf (_ ("%d min"), (int) minutes);
  if (days >= 2)
    return g_strdup_printf (ngettext ("%d day", "%d days", (gulong) days), (int) days);
  if (minutes % 60 == 0)
    /* Translators: a length of time in hours */
    return g_strdup_printf (_ ("%d h"), (int) hours);
  return g_strdup_printf (_ ("%d h %d min"), (int) hours, (int) (minutes % 60));
}

char *
unsoot_format_iso_day (gint64 at, GTimeZone *zone)
{
  return unsoot_day_iso (local (at, zone).day);
}

static void
cut_zeros (char *text)
{
  char *end = text + strlen (text) - 1;

  while (*end == '0')
    *end-- = '\0';
  if (!g_ascii_isdigit (*end))
    *end = '\0';
}

char *
unsoot_format_number (double value, int decimals)
{
  g_autofree char *text = g_strdup_printf ("%'.*f", decimals, value);

  if (decimals > 0)
    cut_zeros (text);
  if (g_str_equal (text, "-0"))
    return g_strdup ("0");
  return *text == '-' ? g_strconcat ("−", text + 1, NULL) : g_steal_pointer (&text);
}

char *
unsoot_format_litres (gint64 ml)
{
  g_autofree char *number = unsoot_format_number ((double) ml / 1000.0, 3);

  return g_strconcat (number, " L", NULL);
}

char *
unsoot_format_with_unit (const char *value, const char *unit)
{
  if (unit == NULL || *unit == '\0')
    return g_markup_escape_text (value, -1);
  return g_markup_printf_escaped ("%s <span alpha=\"%d%%\">%s</span>", value, UNIT_ALPHA_PERCENT,
                                  unit);
}

char *
unsoot_format_title_markup (const char *title, gboolean heavy)
{
  const char *rest = strstr (title, PART);
  g_autofree char *first
      = rest != NULL ? g_strndup (title, (gsize) (rest - title)) : g_strdup (title);
  g_autofree char *head = g_markup_printf_escaped (heavy ? "<b>%s</b>" : "%s", first);
  g_autofree char *foot = NULL;

  if (rest == NULL)
    return g_steal_pointer (&head);
  foot = g_markup_printf_escaped ("<span size=\"small\" alpha=\"%d%%\">%s</span>",
                                  LIGHT_ALPHA_PERCENT, rest + strlen (PART));
  return g_strconcat (head, "\n", foot, NULL);
}
