/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "code128.h"
#include "fuzz.h"
#include "targets.h"

/* ISO/IEC 15417, 4.3: what a reader does with each symbol, written from the reader's side. */
typedef struct
{
  char set;     /* the set that is read in */
  char shifted; /* the set of the one next symbol, or 0 */
} Reader;

static char
character (char set, guint8 symbol)
{
  FUZZ_CHECK (symbol < 96, "%d in set %c", symbol, set);
  return (char) (set == 'A' && symbol >= 64 ? symbol - 64 : symbol + 32);
}

static void
read_symbol (Reader *reader, guint8 symbol, GString *text)
{
  char set = reader->shifted ? reader->shifted : reader->set;
  gboolean shifted = reader->shifted != 0;
  reader->shifted = 0;
  if (set == 'C' && symbol < 100)
    g_string_append_printf (text, "%02d", symbol);
  else if (!shifted && symbol == 98 && set != 'C')
    reader->shifted = set == 'A' ? 'B' : 'A';
  else if (!shifted && symbol == 99 && set != 'C')
    reader->set = 'C';
  else if (!shifted && symbol == 100 && set != 'B')
    reader->set = 'B';
  else if (!shifted && symbol == 101 && set != 'A')
    reader->set = 'A';
  else
    g_string_append_c (text, character (set, symbol));
}

static void
check_symbols (const char *text, const GByteArray *symbols)
{
  g_autoptr (GString) read = g_string_new (NULL);
  Reader reader = { "ABC"[symbols->data[0] % 3 == 1 ? 0 : symbols->data[0] % 3 == 2 ? 1 : 2], 0 };
  guint sum = symbols->data[0];

  FUZZ_CHECK (symbols->len >= 4 && symbols->data[symbols->len - 1] == 106, "%s", text);
  FUZZ_CHECK (symbols->data[0] >= 103 && symbols->data[0] <= 105, "%s", text);
  for (guint i = 1; i + 2 < symbols->len; i++)
    {
      sum += i * symbols->data[i];
      read_symbol (&reader, symbols->data[i], read);
    }
  FUZZ_CHECK (symbols->data[symbols->len - 2] == sum % 103, "%s", text);
  FUZZ_CHECK (strcmp (read->str, text) == 0, "“%s” reads “%s”", text, read->str);
}

/* Eleven modules a symbol, thirteen the stop; bars of each an even sum, by the standard. */
static void
check_widths (const GByteArray *symbols)
{
  g_autoptr (GByteArray) widths = unsoot_code128_widths (symbols);
  guint modules = 0;
  for (guint i = 0; i < widths->len; i++)
    {
      FUZZ_CHECK (widths->data[i] >= 1 && widths->data[i] <= 4, "%u", i);
      modules += widths->data[i];
    }
  FUZZ_CHECK (modules == symbols->len * 11 + 2, "%u", modules);
  FUZZ_CHECK (modules == unsoot_code128_modules (symbols), "%u", modules);
  for (guint i = 0; i + 7 < widths->len; i += 6)
    FUZZ_CHECK ((widths->data[i] + widths->data[i + 2] + widths->data[i + 4]) % 2 == 0, "%u", i);
}

void
fuzz_code128 (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  guint shortest = G_MAXUINT, chosen = 0;

  for (int set = UNSOOT_CODE128_AUTO; set <= UNSOOT_CODE128_C; set++)
    {
      GError *error = NULL;
      g_autoptr (GByteArray) symbols = unsoot_code128_encode (text, (UnsootCode128Set) set, &error);
      fuzz_answer (symbols != NULL, &error);
      FUZZ_CHECK ((symbols != NULL) == (*text != '\0' && g_str_is_ascii (text)), "“%s”", text);
      if (symbols == NULL)
        return;
      check_symbols (text, symbols);
      check_widths (symbols);
      if (set == UNSOOT_CODE128_AUTO)
        chosen = symbols->len;
      else
        shortest = MIN (shortest, symbols->len);
    }
  FUZZ_CHECK (chosen == shortest, "“%s”: %u, not %u", text, chosen, shortest);
}
