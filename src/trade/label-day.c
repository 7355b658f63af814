/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "label-day.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "civil.h"
#include "trade-error.h"

enum
{
  CENTURY = 2000 /* two digits are of this one: nothing keeps for longer */
};

/* One to four digits; -1 for anything else. */
static int
take_digits (const char **text, gsize *length)
{
  int value = 0;

  for (*length = 0; *length < 4 && g_ascii_isdigit (**text); (*length)++)
    value = value * 10 + g_ascii_digit_value (*(*text)++);
  return *length > 0 ? value : -1;
}

/* "2026-03", "03/2026" or "3/26". */
static gboolean
take_month (const char *text, int *year, int *month)
{
  gsize before, after;
  const int first = take_digits (&text, &before);
  const char sign = *text;
  int second;

  if (first < 0 || (sign != '-' && sign != '/'))
    return FALSE;
  text++;
  second = take_digits (&text, &after);
  if (second < 0 || *text != '\0')
    return FALSE;
  if (before == 4 && after <= 2)
    *year = first, *month = second;
  else if (before <= 2 && (after == 4 || after == 2) && sign == '/')
    *year = after == 2 ? CENTURY + second : second, *month = first;
  else
    return FALSE;
  return TRUE;
}

gboolean
unsoot_label_day_parse (const char *text, int *day, GError **error)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));
  int year, month, first;

  if (!take_month (bare, &year, &month))
    {
      if (unsoot_day_parse (bare, day, NULL))
        return TRUE;
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                   _ ("“%s” is no day: write it as 2026-03-31, or the month as 2026-03"), text);
      return FALSE;
    }
  first = unsoot_day (year, month, 1);
  if (first == 0)
    {
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE,
                   _ ("“%s” names no month: they go from 01 to 12"), text);
      return FALSE;
    }
  *day = unsoot_day_add_months (first, 1) - 1;
  return TRUE;
}
