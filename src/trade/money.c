/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "money.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "trade-error.h"

#define MINUS_SIGN "\u2212"
#define NO_BREAK_SPACE "\u00a0"

typedef struct
{
  const char *code;
  int decimals;
} Exception;

/* ISO 4217, list one: every currency whose minor unit is not 2. Codes without a
 * minor unit (metals, funds, XXX) are no money a shop is paid in. */
static const Exception exceptions[] = {
  { "BIF", 0 }, { "CLP", 0 }, { "DJF", 0 }, { "GNF", 0 }, { "ISK", 0 }, { "JPY", 0 }, { "KMF", 0 },
  { "KRW", 0 }, { "PYG", 0 }, { "RWF", 0 }, { "UGX", 0 }, { "UYI", 0 }, { "VND", 0 }, { "VUV", 0 },
  { "XAF", 0 }, { "XOF", 0 }, { "XPF", 0 }, { "BHD", 3 }, { "IQD", 3 }, { "JOD", 3 }, { "KWD", 3 },
  { "LYD", 3 }, { "OMR", 3 }, { "TND", 3 }, { "CLF", 4 }, { "UYW", 4 },
};

gboolean
unsoot_currency_is_code (const char *code)
{
  if (code == NULL || strlen (code) != 3)
    return FALSE;
  return g_ascii_isupper (code[0]) && g_ascii_isupper (code[1]) && g_ascii_isupper (code[2]);
}

int
unsoot_currency_decimals (const char *code)
{
  for (gsize i = 0; i < G_N_ELEMENTS (exceptions); i++)
    if (g_strcmp0 (exceptions[i].code, code) == 0)
      return exceptions[i].decimals;
  return 2;
}

const char *
unsoot_currency_symbol (const char *code)
{
  static const char *const symbols[][2]
      = { { "USD", "$" }, { "EUR", "€" }, { "GBP", "£" }, { "JPY", "¥" } };
  for (gsize i = 0; i < G_N_ELEMENTS (symbols); i++)
    if (g_strcmp0 (symbols[i][0], code) == 0)
      return symbols[i][1];
  return NULL;
}

static gboolean
too_large (GError **error)
{
  g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE,
                       _ ("The amount is too large to be kept; check price, quantity and rate."));
  return FALSE;
}

gboolean
unsoot_money_add (gint64 a, gint64 b, gint64 *result, GError **error)
{
  gint64 sum;
  if (__builtin_add_overflow (a, b, &sum))
    return too_large (error);
  *result = sum;
  return TRUE;
}

gboolean
unsoot_money_ratio (gint64 amount, gint64 numerator, gint64 denominator, gint64 *result,
                    GError **error)
{
  g_return_val_if_fail (denominator != 0, FALSE);
  __int128 product = (__int128) amount * numerator;
  __int128 divisor = denominator;
  if (divisor < 0)
    {
      product = -product;
      divisor = -divisor;
    }
  __int128 quotient = product / divisor;
  __int128 rest = product % divisor;
  if (2 * (rest < 0 ? -rest : rest) >= divisor)
    quotient += product < 0 ? -1 : 1;
  if (quotient > G_MAXINT64 || quotient < G_MININT64)
    return too_large (error);
  *result = (gint64) quotient;
  return TRUE;
}

gboolean
unsoot_money_times (gint64 unit_price, gint64 quantity_milli, gint64 *result, GError **error)
{
  return unsoot_money_ratio (unit_price, quantity_milli, 1000, result, error);
}

gboolean
unsoot_money_rate (gint64 amount, gint64 milli_percent, gint64 *result, GError **error)
{
  return unsoot_money_ratio (amount, milli_percent, 100000, result, error);
}

/* The amount's digits without sign or grouping, split at the decimal sign. */
static void
split_digits (gint64 amount, int decimals, char **whole, char **fraction)
{
  guint64 size = amount < 0 ? -(guint64) amount : (guint64) amount;
  g_autofree char *digits = g_strdup_printf ("%0*" G_GUINT64_FORMAT, decimals + 1, size);
  gsize length = strlen (digits) - (gsize) decimals;
  *whole = g_strndup (digits, length);
  *fraction = g_strdup (digits + length);
}

static char *
group_digits (const char *whole, char sign)
{
  GString *grouped = g_string_new (NULL);
  gsize length = strlen (whole);
  for (gsize i = 0; i < length; i++)
    {
      if (i > 0 && (length - i) % 3 == 0)
        g_string_append_c (grouped, sign);
      g_string_append_c (grouped, whole[i]);
    }
  return g_string_free (grouped, FALSE);
}

static char
decimal_sign (UnsootMoneyStyle style)
{
  return style == UNSOOT_MONEY_COMMA ? ',' : '.';
}

static char
group_sign (UnsootMoneyStyle style)
{
  return style == UNSOOT_MONEY_COMMA ? '.' : ',';
}

char *
unsoot_money_plain (gint64 amount, const char *currency)
{
  int decimals = unsoot_currency_decimals (currency);
  g_autofree char *whole = NULL, *fraction = NULL;
  split_digits (amount, decimals, &whole, &fraction);
  return g_strconcat (amount < 0 ? "-" : "", whole, decimals > 0 ? "." : "", fraction, NULL);
}

char *
unsoot_money_format (gint64 amount, const char *currency, UnsootMoneyStyle style)
{
  int decimals = unsoot_currency_decimals (currency);
  const char *symbol = unsoot_currency_symbol (currency);
  g_autofree char *whole = NULL, *fraction = NULL;
  split_digits (amount, decimals, &whole, &fraction);
  g_autofree char *grouped = group_digits (whole, group_sign (style));
  const char point[] = { decimals > 0 ? decimal_sign (style) : '\0', '\0' };
  gboolean before = symbol != NULL && style == UNSOOT_MONEY_POINT;
  const char *after = symbol ? symbol : currency;
  return g_strconcat (amount < 0 ? MINUS_SIGN : "", before ? symbol : "", grouped, point, fraction,
                      before ? "" : NO_BREAK_SPACE, before ? "" : after, NULL);
}

/* Takes one sign or currency mark off either end; TRUE if there was one. */
static gboolean
take_mark (char *text, const char *mark)
{
  gsize size = strlen (text), length = mark ? strlen (mark) : 0;
  if (length == 0 || length > size)
    return FALSE;
  if (g_ascii_strncasecmp (text, mark, length) == 0)
    memmove (text, text + length, size - length + 1);
  else if (g_ascii_strcasecmp (text + size - length, mark) == 0)
    text[size - length] = '\0';
  else
    return FALSE;
  return TRUE;
}

/* Spaces of every kind and apostrophes only group: they say nothing. Those in
 * front of the digits and behind them go as well. */
static char *
strip_spaces (const char *text)
{
  GString *kept = g_string_new (NULL);
  for (const char *p = text; *p; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);
      if (g_unichar_isspace (c) || c == '\'' || c == 0x2019)
        continue;
      if (c == 0x2212)
        c = '-';
      g_string_append_unichar (kept, c);
    }
  return g_string_free (kept, FALSE);
}

/* Groups must be complete: one to three digits, then threes. */
static gboolean
groups_are_whole (const char *whole, char sign)
{
  const char separator[] = { sign, '\0' };
  g_auto (GStrv) parts = g_strsplit (whole, separator, -1);
  for (guint i = 0; parts[i]; i++)
    {
      gsize length = strlen (parts[i]);
      if (i == 0 ? length < 1 || (length > 3 && parts[1]) : length != 3)
        return FALSE;
    }
  return TRUE;
}

static gboolean
refuse_other_style (const char *text, UnsootMoneyStyle style, GError **error)
{
  g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
               style == UNSOOT_MONEY_POINT
                   ? _ ("“%s” has a decimal comma, but amounts here are written with a decimal "
                        "point, as in 1,234.50. Type it that way.")
                   : _ ("“%s” has a decimal point, but amounts here are written with a decimal "
                        "comma, as in 1.234,50. Type it that way."),
               text);
  return FALSE;
}

static gboolean
refuse_two_readings (const char *text, UnsootMoneyStyle style, GError **error)
{
  g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
               style == UNSOOT_MONEY_POINT
                   ? _ ("“%s” can be read two ways: the comma may group thousands or stand for the "
                        "decimal point. Type it without commas, as in 1234.50.")
                   : _ ("“%s” can be read two ways: the point may group thousands or stand for the "
                        "decimal comma. Type it without points, as in 1234,50."),
               text);
  return FALSE;
}

/* Digits, grouped digits or digits with one decimal sign, in the shop's own style. */
static gboolean
split_typed (char *digits, UnsootMoneyStyle style, const char **fraction, const char *text,
             GError **error)
{
  char *last_decimal = strrchr (digits, decimal_sign (style));
  char *last_group = strrchr (digits, group_sign (style));
  if (last_group && last_decimal && last_group > last_decimal)
    return refuse_other_style (text, style, error);
  *fraction = "";
  if (last_decimal)
    {
      *last_decimal = '\0';
      *fraction = last_decimal + 1;
    }
  if (strchr (digits, decimal_sign (style)))
    {
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                   _ ("“%s” has more than one decimal sign. Type one amount."), text);
      return FALSE;
    }
  return groups_are_whole (digits, group_sign (style)) || refuse_two_readings (text, style, error);
}

/* Digits behind the decimal sign; three of them may have been meant as thousands. */
static gboolean
check_fraction (const char *fraction, int decimals, const char *text, GError **error)
{
  gsize length = strlen (fraction);
  if (length <= (gsize) decimals)
    return TRUE;
  g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
               length == 3
                   ? _ ("“%s” can be read two ways: as thousands, or with more decimals than this "
                        "currency has. Type it without a thousands separator.")
                   : _ ("“%s” has more decimals than this currency has."),
               text);
  return FALSE;
}

/* Counts down from zero, where one more fits than above it. */
static gboolean
accumulate (const char *digits, gint64 *value)
{
  for (const char *p = digits; *p; p++)
    {
      if (!g_ascii_isdigit (*p))
        continue;
      if (__builtin_mul_overflow (*value, 10, value)
          || __builtin_sub_overflow (*value, *p - '0', value))
        return FALSE;
    }
  return TRUE;
}

static gboolean
to_minor_units (const char *whole, const char *fraction, int decimals, gboolean minus,
                gint64 *amount, GError **error)
{
  gint64 value = 0;
  gboolean fits = accumulate (whole, &value) && accumulate (fraction, &value);
  for (int i = (int) strlen (fraction); fits && i < decimals; i++)
    fits = !__builtin_mul_overflow (value, 10, &value);
  if (!fits || (!minus && value == G_MININT64))
    return too_large (error);
  *amount = minus ? value : -value;
  return TRUE;
}

/* Sign and currency mark off, in either order; TRUE where it was below zero. */
static gboolean
take_marks (char *digits, const char *currency)
{
  gboolean minus = take_mark (digits, "-");
  if (!take_mark (digits, currency))
    take_mark (digits, unsoot_currency_symbol (currency));
  return minus || take_mark (digits, "-");
}

gboolean
unsoot_money_parse (const char *text, const char *currency, UnsootMoneyStyle style, gint64 *amount,
                    GError **error)
{
  g_autofree char *shown = g_utf8_make_valid (text ? text : "", -1);
  g_autofree char *digits = strip_spaces (shown);
  gboolean minus = take_marks (digits, currency);
  if (strspn (digits, "0123456789.,") != strlen (digits) || !strpbrk (digits, "0123456789"))
    {
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                   _ ("“%s” is not an amount of money."), shown);
      return FALSE;
    }
  g_autofree char *whole = g_strconcat (*digits == decimal_sign (style) ? "0" : "", digits, NULL);
  const char *fraction = NULL;
  int decimals = unsoot_currency_decimals (currency);
  return split_typed (whole, style, &fraction, shown, error)
         && check_fraction (fraction, decimals, shown, error)
         && to_minor_units (whole, fraction, decimals, minus, amount, error);
}
