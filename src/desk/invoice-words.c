/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "invoice-words.h"

#include <glib/gi18n-lib.h>

#include "civil-words.h"

char *
unsoot_invoice_title (const char *kind, gint64 number)
{
  return g_strdup_printf (g_strcmp0 (kind, "credit") == 0 ? _ ("Credit note %d") : _ ("Invoice %d"),
                          (int) number);
}

char *
unsoot_invoice_state (const char *kind, const char *due_on, gint64 open_minor, const char *today,
                      gboolean *late)
{
  int due = 0, now = 0;
  g_autofree char *when = NULL;

  *late = FALSE;
  if (g_strcmp0 (kind, "credit") == 0)
    return g_strdup (_ ("credit note"));
  if (open_minor == 0)
    return g_strdup (_ ("paid"));
  if (open_minor < 0)
    return g_strdup (_ ("paid too much"));
  unsoot_day_parse (due_on, &due, NULL);
  unsoot_day_parse (today, &now, NULL);
  if (due < now)
    {
      *late = TRUE;
      return g_strdup_printf (ngettext ("%d day over", "%d days over", (gulong) (now - due)),
                              now - due);
    }
  when = unsoot_day_near_words (due, now);
  /* Translators: when an invoice is to be paid */
  return g_strdup_printf (_ ("due %s"), when);
}
