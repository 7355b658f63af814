/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trouble-code.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "trade-error.h"

/* In the order of the top two bits (SAE J2012): powertrain, chassis, body, network. */
static const char systems[] = "PCBU";

/* Why @code is not one, translated, or NULL where it is. */
static const char *
what_is_wrong (const char *code)
{
  if (!g_str_is_ascii (code) || strlen (code) != UNSOOT_TROUBLE_CODE_SIZE - 1)
    return _ ("it has five characters, as in P0104");
  if (strchr (systems, code[0]) == NULL)
    return _ ("it begins with P, C, B or U");
  if (code[1] < '0' || code[1] > '3')
    return _ ("its second character is a digit from 0 to 3");
  for (const char *p = code + 2; *p != '\0'; p++)
    if (!g_ascii_isxdigit (*p) || g_ascii_islower (*p))
      return _ ("its last three characters are digits or letters A to F");
  return NULL;
}

gboolean
unsoot_trouble_code_is_valid (const char *code)
{
  return what_is_wrong (code) == NULL;
}

static gboolean
already_there (GPtrArray *codes, const char *code)
{
  return g_ptr_array_find_with_equal_func (codes, code, g_str_equal, NULL);
}

static void
take (GPtrArray *codes, const char *typed, GError **error)
{
  g_autofree char *code = g_ascii_strup (typed, -1);
  g_autofree char *shown = g_utf8_make_valid (typed, -1);
  const char *wrong = what_is_wrong (code);

  if (wrong != NULL)
    /* Translators: what was typed, and what form it should have */
    g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                 _ ("“%s” is not a trouble code: %s"), shown, wrong);
  else if (!already_there (codes, code))
    g_ptr_array_add (codes, g_steal_pointer (&code));
}

char **
unsoot_trouble_codes_parse (const char *text, GError **error)
{
  g_auto (GStrv) typed = g_strsplit_set (text, ",; \t\r\n", -1);
  g_autoptr (GPtrArray) codes = g_ptr_array_new_with_free_func (g_free);
  GError *wrong = NULL;

  for (char **p = typed; *p != NULL && wrong == NULL; p++)
    if (**p != '\0')
      take (codes, *p, &wrong);
  if (wrong != NULL)
    {
      g_propagate_error (error, wrong);
      return NULL;
    }
  g_ptr_array_add (codes, NULL);
  return (char **) g_ptr_array_free (g_steal_pointer (&codes), FALSE);
}

gboolean
unsoot_trouble_code_decode (guint8 first, guint8 second, char code[UNSOOT_TROUBLE_CODE_SIZE])
{
  if (first == 0 && second == 0)
    return FALSE;
  g_snprintf (code, UNSOOT_TROUBLE_CODE_SIZE, "%c%d%X%02X", systems[first >> 6], first >> 4 & 3,
              first & 0xFu, (guint) second);
  return TRUE;
}
