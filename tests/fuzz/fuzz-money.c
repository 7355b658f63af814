/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "fuzz.h"
#include "money.h"
#include "targets.h"

/* Every number of decimals, with and without a symbol. */
static const char *const currencies[] = { "USD", "EUR", "GBP", "JPY", "KRW", "CHF", "KWD", "CLF" };

/* What is printed for people reads as the same amount. */
static void
check_shown (gint64 amount, const char *currency, UnsootMoneyStyle style)
{
  GError *error = NULL;
  gint64 again = ~amount;
  g_autofree char *shown = unsoot_money_format (amount, currency, style);
  gboolean read = unsoot_money_parse (shown, currency, style, &again, &error);
  fuzz_answer (read, &error);
  FUZZ_CHECK (read && again == amount, "%s is %" G_GINT64_FORMAT ", not %" G_GINT64_FORMAT, shown,
              again, amount);
}

/* What is printed for machines: a point, no groups. */
static void
check_plain (gint64 amount, const char *currency)
{
  GError *error = NULL;
  gint64 again = ~amount;
  g_autofree char *plain = unsoot_money_plain (amount, currency);
  gboolean read = unsoot_money_parse (plain, currency, UNSOOT_MONEY_POINT, &again, &error);
  fuzz_answer (read, &error);
  FUZZ_CHECK (read && again == amount, "%s", plain);
  FUZZ_CHECK (strspn (plain, "-0123456789.") == strlen (plain), "%s", plain);
}

/* Twice the half, and the half of twice: rounding is away from zero and symmetric. */
static void
check_ratio (gint64 amount, gint64 by)
{
  gint64 product = 0, mirrored = 0;
  if (amount == G_MININT64 || !unsoot_money_rate (amount, by, &product, NULL))
    return;
  FUZZ_CHECK (product == G_MININT64 || unsoot_money_rate (-amount, by, &mirrored, NULL),
              "%" G_GINT64_FORMAT, amount);
  FUZZ_CHECK (product == G_MININT64 || mirrored == -product, "%" G_GINT64_FORMAT, amount);
  __int128 off = (__int128) product * 100000 - (__int128) amount * by;
  FUZZ_CHECK (2 * (off < 0 ? -off : off) <= 100000, "%" G_GINT64_FORMAT, amount);
}

void
fuzz_money (const guint8 *data, gsize size)
{
  guint8 choice = fuzz_byte (&data, &size);
  const char *currency = currencies[choice % G_N_ELEMENTS (currencies)];
  UnsootMoneyStyle style = choice & 0x80 ? UNSOOT_MONEY_COMMA : UNSOOT_MONEY_POINT;
  g_autofree char *text = fuzz_text (data, size);
  gint64 amount = 4711;
  GError *error = NULL;

  if (fuzz_answer (unsoot_money_parse (text, currency, style, &amount, &error), &error))
    check_shown (amount, currency, style);
  else
    FUZZ_CHECK (amount == 4711, "“%s” is refused and taken", text);

  gint64 any = fuzz_int64 (&data, &size);
  check_shown (any, currency, style);
  check_plain (any, currency);
  check_ratio (any, fuzz_int64 (&data, &size) % 1000000);
}
