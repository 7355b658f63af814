/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fold.h"

#include <glib/gi18n-lib.h>

#include "trade-error.h"

/* Letters with a stroke or of two letters have no decomposition in Unicode. */
static const struct
{
  gunichar letter;
  const char *plain;
} by_hand[] = {
  { 0x00DF, "ss" }, { 0x00E6, "ae" }, { 0x00F0, "d" }, { 0x00F8, "o" },
  { 0x00FE, "th" }, { 0x0111, "d" },  { 0x0127, "h" }, { 0x0131, "i" },
  { 0x0142, "l" },  { 0x0153, "oe" }, { 0x0167, "t" },
};

static const char *
plain_form (gunichar c)
{
  for (gsize i = 0; i < G_N_ELEMENTS (by_hand); i++)
    if (by_hand[i].letter == c)
      return by_hand[i].plain;
  return NULL;
}

static void
append_folded (GString *out, gunichar c)
{
  /* GLib's case folding leaves the small letters of Cherokee beside the capitals. */
  gunichar small = g_unichar_tolower (c);
  const char *plain = plain_form (small);

  if (g_unichar_isspace (c))
    {
      if (out->len > 0 && out->str[out->len - 1] != ' ')
        g_string_append_c (out, ' ');
    }
  else if (plain != NULL)
    g_string_append (out, plain);
  else if (!g_unichar_ismark (c) && g_unichar_type (c) != G_UNICODE_FORMAT)
    g_string_append_unichar (out, small);
}

static char *
fold_once (const char *text)
{
  g_autofree char *folded = g_utf8_casefold (text, -1);
  g_autofree char *apart = g_utf8_normalize (folded, -1, G_NORMALIZE_ALL);
  GString *out = g_string_new (NULL);

  for (const char *p = apart; *p != '\0'; p = g_utf8_next_char (p))
    append_folded (out, g_utf8_get_char (p));
  if (out->len > 0 && out->str[out->len - 1] == ' ')
    g_string_truncate (out, out->len - 1);
  return g_string_free (out, FALSE);
}

char *
unsoot_fold (const char *text, GError **error)
{
  const char *end = NULL;
  g_autofree char *once = NULL;

  if (!g_utf8_validate (text, -1, &end))
    {
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                   _ ("The text is damaged at byte %d: it is not UTF-8; type it again"),
                   (int) (end - text) + 1);
      return NULL;
    }
  /* A compatibility form can hide a capital (℃ is °C), so fold what came apart once more. */
  once = fold_once (text);
  return fold_once (once);
}

char *
unsoot_fold_compact (const char *text, GError **error)
{
  g_autofree char *folded = unsoot_fold (text, error);
  GString *out = NULL;

  if (folded == NULL)
    return NULL;
  out = g_string_new (NULL);
  for (const char *p = folded; *p != '\0'; p = g_utf8_next_char (p))
    if (g_unichar_isalnum (g_utf8_get_char (p)))
      g_string_append_unichar (out, g_utf8_get_char (p));
  return g_string_free (out, FALSE);
}
