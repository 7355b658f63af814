/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "code128.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "trade-error.h"

enum
{
  SHIFT = 98,
  CODE_C = 99,
  CODE_B = 100,
  CODE_A = 101,
  START_A = 103,
  START_B = 104,
  START_C = 105,
  STOP = 106,
};

/* B is asked first, so that it wins where two ways are equally short. */
enum
{
  SET_B,
  SET_A,
  SET_C,
  SETS,
};

#define NEVER G_MAXUINT

static const guint8 starts[SETS] = { START_B, START_A, START_C };
static const guint8 latches[SETS] = { CODE_B, CODE_A, CODE_C };

/* ISO/IEC 15417, table 1: bar and space widths of each symbol value. */
static const char *const patterns[] = {
  "212222", "222122", "222221", "121223", "121322", "131222", "122213", "122312",  "132212",
  "221213", "221312", "231212", "112232", "122132", "122231", "113222", "123122",  "123221",
  "223211", "221132", "221231", "213212", "223112", "312131", "311222", "321122",  "321221",
  "312212", "322112", "322211", "212123", "212321", "232121", "111323", "131123",  "131321",
  "112313", "132113", "132311", "211313", "231113", "231311", "112133", "112331",  "132131",
  "113123", "113321", "133121", "313121", "211331", "231131", "213113", "213311",  "213131",
  "311123", "311321", "331121", "312113", "312311", "332111", "314111", "221411",  "431111",
  "111224", "111422", "121124", "121421", "141122", "141221", "112214", "112412",  "122114",
  "122411", "142112", "142211", "241211", "221114", "413111", "241112", "134111",  "111242",
  "121142", "121241", "114212", "124112", "124211", "411212", "421112", "421211",  "212141",
  "214121", "412121", "111143", "111341", "131141", "114113", "114311", "411113",  "411311",
  "113141", "114131", "311141", "411131", "211412", "211214", "211232", "2331112",
};

/* The cheapest way to go on from one place in one set. */
typedef struct
{
  guint cost;     /* symbols still to come, NEVER where there is no way */
  guint8 set;     /* the set the next symbol is read in */
  gboolean shift; /* that symbol alone comes from the other of A and B */
} Way;

static gboolean
set_has (int set, const char *text)
{
  guchar c = (guchar) text[0];
  if (set == SET_C)
    return g_ascii_isdigit (text[0]) && g_ascii_isdigit (text[1]);
  return set == SET_A ? c < 96 : c >= 32;
}

static guint8
value_in (int set, const char *text)
{
  guchar c = (guchar) text[0];
  if (set == SET_C)
    return (guint8) (g_ascii_digit_value (text[0]) * 10 + g_ascii_digit_value (text[1]));
  return (guint8) (c < 32 ? c + 64 : c - 32);
}

static gsize
taken_by (int set)
{
  return set == SET_C ? 2 : 1;
}

static void
offer (Way *best, guint cost, int set, gboolean shift)
{
  if (cost < best->cost)
    *best = (Way){ cost, (guint8) set, shift };
}

/* From the end backwards: what is left costs, whichever set we stand in. */
static Way *
find_ways (const char *text, gsize length)
{
  Way *ways = g_new0 (Way, (length + 3) * SETS);
  for (int set = 0; set < SETS; set++)
    ways[(length + 1) * SETS + (gsize) set].cost = NEVER / 2;
  for (gsize i = length; i-- > 0;)
    for (int from = 0; from < SETS; from++)
      {
        Way *best = &ways[i * SETS + (gsize) from];
        best->cost = NEVER / 2;
        for (int step = 0; step < SETS; step++)
          {
            int set = (from + step) % SETS;
            if (!set_has (set, text + i))
              continue;
            guint after = ways[(i + taken_by (set)) * SETS + (gsize) set].cost;
            offer (best, after + 1 + (set != from), set, FALSE);
          }
        int other = from == SET_A ? SET_B : SET_A;
        if (from != SET_C && set_has (other, text + i))
          offer (best, ways[(i + 1) * SETS + (gsize) from].cost + 2, other, TRUE);
      }
  return ways;
}

static void
append (GByteArray *symbols, guint8 value)
{
  g_byte_array_append (symbols, &value, 1);
}

static int
choose_start (const Way *ways)
{
  int best = SET_B;
  for (int set = 0; set < SETS; set++)
    if (ways[set].cost < ways[best].cost)
      best = set;
  return best;
}

/* Weighted sum modulo 103: the start counts once, each later symbol by its place. */
static guint8
check_symbol (const GByteArray *symbols)
{
  guint sum = symbols->data[0];
  for (guint i = 1; i < symbols->len; i++)
    sum = (sum + i % 103 * symbols->data[i]) % 103;
  return (guint8) (sum % 103);
}

static gboolean
check_text (const char *text, GError **error)
{
  g_autofree char *shown = g_utf8_make_valid (text, -1);
  const char *p = text;
  while (*p && (guchar) *p < 128)
    p++;
  if (*text == '\0')
    g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                         _ ("A bar code needs at least one character."));
  else if (*p)
    g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                 _ ("“%s” can't be a bar code: only plain letters, digits and signs can be."),
                 shown);
  return *text && *p == '\0';
}

static int
own_set (UnsootCode128Set start, const Way *ways)
{
  switch (start)
    {
    case UNSOOT_CODE128_A:
      return SET_A;
    case UNSOOT_CODE128_B:
      return SET_B;
    case UNSOOT_CODE128_C:
      return SET_C;
    case UNSOOT_CODE128_AUTO:
      break;
    }
  return choose_start (ways);
}

GByteArray *
unsoot_code128_encode (const char *text, UnsootCode128Set start, GError **error)
{
  if (!check_text (text, error))
    return NULL;
  gsize length = strlen (text);
  g_autofree Way *ways = find_ways (text, length);
  int set = own_set (start, ways);
  GByteArray *symbols = g_byte_array_new ();
  append (symbols, starts[set]);
  for (gsize i = 0; i < length;)
    {
      Way way = ways[i * SETS + (gsize) set];
      if (way.set != set)
        append (symbols, way.shift ? SHIFT : latches[way.set]);
      append (symbols, value_in (way.set, text + i));
      i += taken_by (way.set);
      if (!way.shift)
        set = way.set;
    }
  append (symbols, check_symbol (symbols));
  append (symbols, STOP);
  return symbols;
}

GByteArray *
unsoot_code128_widths (const GByteArray *symbols)
{
  GByteArray *widths = g_byte_array_new ();
  for (guint i = 0; i < symbols->len; i++)
    for (const char *p = patterns[symbols->data[i]]; *p; p++)
      append (widths, (guint8) (*p - '0'));
  return widths;
}

guint
unsoot_code128_modules (const GByteArray *symbols)
{
  return symbols->len * 11 + 2;
}
