/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "call.h"

#include <locale.h>

#include "dose.h"
#include "money.h"
#include "unit-text.h"
#include "when.h"

/* Amounts are written and read with the decimal sign of the person's locale. */
static UnsootMoneyStyle
money_style (void)
{
  return localeconv ()->decimal_point[0] == ',' ? UNSOOT_MONEY_COMMA : UNSOOT_MONEY_POINT;
}

char *
unsoot_call_money_words (UnsootCall *call, gint64 minor)
{
  return unsoot_money_format (minor, call->shop->currency, money_style ());
}

UnsootCell
unsoot_call_money (UnsootCall *call, gint64 minor)
{
  g_autofree char *plain = unsoot_money_plain (minor, call->shop->currency);

  return unsoot_cell_both (plain, unsoot_call_money_words (call, minor));
}

UnsootCell
unsoot_call_moment (UnsootCall *call, gint64 at)
{
  g_autofree char *iso = unsoot_when_iso (call->shop, at);

  return unsoot_cell_both (iso, unsoot_when_words (call->shop, at));
}

UnsootCell
unsoot_call_date (const char *iso)
{
  return unsoot_cell_both (iso, unsoot_when_day_words (iso));
}

UnsootCell
unsoot_call_volume (gint64 ml)
{
  return ml != 0 ? unsoot_cell_int (ml, unsoot_dose_volume_words (ml)) : unsoot_cell_none ();
}

gboolean
unsoot_call_read_money (UnsootCall *call, const char *text, gint64 *minor, GError **error)
{
  return unsoot_money_parse (text, call->shop->currency, money_style (), minor, error);
}

gboolean
unsoot_call_read_volume (const char *text, gint64 *ml, GError **error)
{
  UnsootTyped typed;

  return unsoot_volume_parse (text, UNSOOT_UNIT_L, &typed, ml, error);
}
