/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "clock-text.h"

#include <glib/gi18n-lib.h>

#include "trade-error.h"

enum
{
  DAY_MINUTES = 24 * 60
};

gboolean
unsoot_clock_parse (const char *text, int *minute, GError **error)
{
  if (g_regex_match_simple ("^\\s*[0-9]{1,2}:[0-9]{2}\\s*$", text, 0, 0))
    {
      char *rest = NULL;
      const gint64 hour = g_ascii_strtoll (text, &rest, 10);
      const gint64 past = g_ascii_strtoll (rest + 1, NULL, 10);

      if (past < 60 && hour * 60 + past <= DAY_MINUTES)
        {
          *minute = (int) (hour * 60 + past);
          return TRUE;
        }
    }
  g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
               _ ("“%s” is no time of the day. Type it as 07:30."), text);
  return FALSE;
}

char *
unsoot_clock_text (int minute)
{
  return g_strdup_printf ("%02d:%02d", minute / 60, minute % 60);
}
