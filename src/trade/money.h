/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Money is a gint64 of minor units (cents) of a currency named by its ISO 4217
 * code. Every rounding is half away from zero, once; nothing wraps silently. Errors
 * are of UNSOOT_TRADE_ERROR: INVALID for what can't be read, RANGE for what does not fit. */

/* How a shop writes its amounts. */
typedef enum
{
  UNSOOT_MONEY_POINT, /* 1,234.50 */
  UNSOOT_MONEY_COMMA, /* 1.234,50 */
} UnsootMoneyStyle;

/* Three capital letters. */
gboolean unsoot_currency_is_code (const char *code);
/* Digits after the decimal sign: ISO 4217's exceptions, otherwise 2. */
int unsoot_currency_decimals (const char *code);
/* "$", "€" … or NULL where the code itself is the clearer mark. */
const char *unsoot_currency_symbol (const char *code);

/* result = a + b. FALSE and RANGE where it does not fit. */
gboolean unsoot_money_add (gint64 a, gint64 b, gint64 *result, GError **error);
/* result = amount × numerator / denominator (not 0), rounded once. */
gboolean unsoot_money_ratio (gint64 amount, gint64 numerator, gint64 denominator, gint64 *result,
                             GError **error);
/* result = unit price × quantity in thousandths. */
gboolean unsoot_money_times (gint64 unit_price, gint64 quantity_milli, gint64 *result,
                             GError **error);
/* result = amount × rate in thousandths of a percent (8.25 % is 8250). */
gboolean unsoot_money_rate (gint64 amount, gint64 milli_percent, gint64 *result, GError **error);

/* Reads what a person typed: grouping, the currency's symbol or code and a minus
 * are understood; an amount that reads two ways is refused with both readings. */
gboolean unsoot_money_parse (const char *text, const char *currency, UnsootMoneyStyle style,
                             gint64 *amount, GError **error);

/* "−$1,234.50", "1.234,50 €", "1,234.500 KWD". Free with g_free. */
char *unsoot_money_format (gint64 amount, const char *currency, UnsootMoneyStyle style);
/* "-1234.50", for machines. Free with g_free. */
char *unsoot_money_plain (gint64 amount, const char *currency);
