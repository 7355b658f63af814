/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "fuzz.h"
#include "targets.h"
#include "trouble-code.h"

static const char systems[] = "PCBU";

/* SAE J2012: two bits for the system, two for the first digit, then three digits of four. */
static void
check_bytes (guint8 first, guint8 second)
{
  char code[UNSOOT_TROUBLE_CODE_SIZE] = "";
  gboolean is_code = unsoot_trouble_code_decode (first, second, code);
  FUZZ_CHECK (is_code == (first != 0 || second != 0), "%02x %02x", first, second);
  if (!is_code)
    return;
  FUZZ_CHECK (unsoot_trouble_code_is_valid (code), "%s", code);
  guint number = (guint) g_ascii_strtoull (code + 1, NULL, 16);
  guint back = (guint) (strchr (systems, code[0]) - systems) << 14 | number;
  FUZZ_CHECK (back == ((guint) first << 8 | second), "%02x %02x is %s", first, second, code);
}

static void
check_list (char **codes)
{
  GError *error = NULL;
  g_autofree char *joined = g_strjoinv (", ", codes);
  g_auto (GStrv) again = unsoot_trouble_codes_parse (joined, &error);
  fuzz_answer (again != NULL, &error);
  FUZZ_CHECK (again != NULL
                  && g_strv_equal ((const char *const *) codes, (const char *const *) again),
              "%s", joined);
  for (guint i = 0; codes[i] != NULL; i++)
    {
      FUZZ_CHECK (unsoot_trouble_code_is_valid (codes[i]), "%s", codes[i]);
      FUZZ_CHECK (!g_strv_contains ((const char *const *) codes + i + 1, codes[i]), "%s", joined);
    }
}

void
fuzz_trouble_code (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  GError *error = NULL;
  g_auto (GStrv) codes = unsoot_trouble_codes_parse (text, &error);

  if (fuzz_answer (codes != NULL, &error))
    check_list (codes);
  if (size >= 2)
    check_bytes (data[0], data[1]);
}
