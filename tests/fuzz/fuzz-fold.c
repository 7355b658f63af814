/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "fold.h"
#include "fuzz.h"
#include "targets.h"

static void
check_folded (const char *folded)
{
  g_autofree char *twice = unsoot_fold (folded, NULL);
  FUZZ_CHECK (g_strcmp0 (twice, folded) == 0, "“%s” folds to “%s”", folded, twice);
  FUZZ_CHECK (*folded != ' ' && !g_str_has_suffix (folded, " "), "“%s”", folded);
  FUZZ_CHECK (strstr (folded, "  ") == NULL, "“%s”", folded);
  for (const char *p = folded; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);
      FUZZ_CHECK (c == ' ' || !g_unichar_isspace (c), "U+%04X in “%s”", c, folded);
      FUZZ_CHECK (!g_unichar_ismark (c), "U+%04X in “%s”", c, folded);
      FUZZ_CHECK (!g_ascii_isupper ((char) MIN (c, 127)), "U+%04X in “%s”", c, folded);
    }
}

static void
check_compact (const char *text, const char *folded)
{
  g_autofree char *compact = unsoot_fold_compact (text, NULL);
  g_autofree char *of_folded = unsoot_fold_compact (folded, NULL);
  g_autofree char *twice = unsoot_fold (compact, NULL);
  FUZZ_CHECK (g_strcmp0 (compact, of_folded) == 0, "“%s” or “%s”", compact, of_folded);
  FUZZ_CHECK (g_strcmp0 (compact, twice) == 0, "“%s” folds to “%s”", compact, twice);
  for (const char *p = compact; *p != '\0'; p = g_utf8_next_char (p))
    FUZZ_CHECK (g_unichar_isalnum (g_utf8_get_char (p)), "“%s”", compact);
}

/* What is typed in capitals, or in small letters, is the same to a search. */
static void
check_case (const char *text, const char *folded)
{
  g_autofree char *upper = g_utf8_strup (text, -1);
  g_autofree char *lower = g_utf8_strdown (text, -1);
  g_autofree char *of_upper = unsoot_fold (upper, NULL);
  g_autofree char *of_lower = unsoot_fold (lower, NULL);
  FUZZ_CHECK (g_strcmp0 (of_upper, folded) == 0, "“%s”, in capitals “%s”", folded, of_upper);
  FUZZ_CHECK (g_strcmp0 (of_lower, folded) == 0, "“%s”, in small “%s”", folded, of_lower);
}

/* Three bytes a character: letters of any alphabet, which bytes changed at random seldom are. */
static char *
any_letters (const guint8 *data, gsize size)
{
  GString *text = g_string_new (NULL);
  for (gsize i = 0; i + 3 <= size; i += 3)
    {
      gunichar c = ((gunichar) data[i] << 16 | (gunichar) data[i + 1] << 8 | data[i + 2]) % 0x20000;
      if (c != 0 && g_unichar_validate (c))
        g_string_append_unichar (text, c);
    }
  return g_string_free (text, FALSE);
}

static void
check_text (const char *text)
{
  GError *error = NULL;
  g_autofree char *folded = unsoot_fold (text, &error);

  fuzz_answer (folded != NULL, &error);
  FUZZ_CHECK ((folded != NULL) == g_utf8_validate (text, -1, NULL), "%s", text);
  if (folded == NULL)
    return;
  check_folded (folded);
  check_compact (text, folded);
  check_case (text, folded);
}

void
fuzz_fold (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  g_autofree char *letters = any_letters (data, size);

  check_text (text);
  check_text (letters);
}
