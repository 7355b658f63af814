/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "civil-words.h"
#include "civil.h"
#include "fuzz.h"
#include "targets.h"

static void
check_day (int day)
{
  int year, month, day_of_month;
  unsoot_day_split (day, &year, &month, &day_of_month);
  FUZZ_CHECK (unsoot_day (year, month, day_of_month) == day, "%d", day);
  FUZZ_CHECK (unsoot_day_add_months (day, 0) == day, "%d", day);
  FUZZ_CHECK (unsoot_day_weekday (day) == (day + 6) % 7 + 1, "%d", day);

  g_autofree char *iso = unsoot_day_iso (day);
  g_autofree char *words = unsoot_day_words (day);
  int again = 0;
  FUZZ_CHECK (unsoot_day_parse (iso, &again, NULL) && again == day, "%d is %s", day, iso);
  FUZZ_CHECK (g_utf8_validate (words, -1, NULL), "%s", words);
}

/* A year holds twelve months: going there and back ends on the day, or on the last of a month. */
static void
check_months (int day, int months)
{
  int then = unsoot_day_add_months (day, months);
  int back = then != 0 ? unsoot_day_add_months (then, -months) : 0;
  FUZZ_CHECK (then >= 0 && then <= UNSOOT_DAY_MAX, "%d + %d", day, months);
  FUZZ_CHECK (then == 0 || (back <= day && back > day - 4), "%d + %d is %d, back %d", day, months,
              then, back);
}

static void
check_moment (gint64 unix_seconds, int offset_minutes)
{
  UnsootLocal local = unsoot_local_from_unix (unix_seconds, offset_minutes);
  if (local.day == 0)
    return;
  FUZZ_CHECK (local.hour >= 0 && local.hour < 24 && local.minute >= 0 && local.minute < 60
                  && local.second >= 0 && local.second < 60,
              "%" G_GINT64_FORMAT, unix_seconds);
  FUZZ_CHECK (unsoot_local_to_unix (&local, offset_minutes) == unix_seconds, "%" G_GINT64_FORMAT,
              unix_seconds);
  g_autofree char *words = unsoot_moment_words (&local);
  FUZZ_CHECK (*words != '\0', "%" G_GINT64_FORMAT, unix_seconds);
}

void
fuzz_day (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  GError *error = NULL;
  int day = -1;

  if (fuzz_answer (unsoot_day_parse (text, &day, &error), &error))
    {
      g_autofree char *iso = unsoot_day_iso (day);
      FUZZ_CHECK (strcmp (iso, text) == 0, "“%s” is %s", text, iso);
    }
  else
    FUZZ_CHECK (day == -1, "“%s” is refused and taken", text);

  gint64 number = fuzz_int64 (&data, &size);
  guint8 other = fuzz_byte (&data, &size);
  day = (int) ((guint64) number % UNSOOT_DAY_MAX) + 1;
  check_day (day);
  check_months (day, (int) number);
  check_months (day, other - 128);
  check_moment (number, (other - 128) * 15);
  check_moment (number % 300000000000, (other - 128) * 15);
}
