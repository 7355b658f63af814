/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ageing.h"

#include <glib/gi18n-lib.h>

#include "civil.h"
#include "money.h"

const UnsootSlug unsoot_ages[] = {
  { UNSOOT_AGED_NOT_DUE, "not-due", N_ ("Not yet due") },
  { UNSOOT_AGED_30, "0-30", N_ ("0 to 30 days") },
  { UNSOOT_AGED_60, "31-60", N_ ("31 to 60 days") },
  { UNSOOT_AGED_90, "61-90", N_ ("61 to 90 days") },
  { UNSOOT_AGED_OVER, "over-90", N_ ("Over 90 days") },
  { 0, NULL, NULL },
};

const UnsootSlug unsoot_aged_from[] = {
  { UNSOOT_AGED_FROM_DUE, "due", N_ ("Age counted from the due date") },
  { UNSOOT_AGED_FROM_ISSUED, "issued", N_ ("Age counted from the invoice date") },
  { 0, NULL, NULL },
};

int
unsoot_ageing_due (int issued, int terms_days)
{
  if (issued <= 0 || terms_days < 0 || terms_days > UNSOOT_DAY_MAX - issued)
    return 0;
  return issued + terms_days;
}

UnsootAged
unsoot_ageing_of (const UnsootOpenItem *item, UnsootAgedFrom from, int today)
{
  int age = today - (from == UNSOOT_AGED_FROM_DUE ? item->due : item->issued);
  if (age < 0 && from == UNSOOT_AGED_FROM_DUE)
    return UNSOOT_AGED_NOT_DUE;
  if (age <= 30)
    return UNSOOT_AGED_30;
  if (age <= 60)
    return UNSOOT_AGED_60;
  return age <= 90 ? UNSOOT_AGED_90 : UNSOOT_AGED_OVER;
}

gboolean
unsoot_ageing_sum (const UnsootOpenItem *items, gsize n, UnsootAgedFrom from, int today,
                   UnsootAgeing *ageing, GError **error)
{
  UnsootAgeing sum = { 0 };
  for (gsize i = 0; i < n; i++)
    {
      gint64 *owed = &sum.owed[unsoot_ageing_of (&items[i], from, today)];
      if (!unsoot_money_add (*owed, items[i].open, owed, error)
          || !unsoot_money_add (sum.total, items[i].open, &sum.total, error))
        return FALSE;
    }
  *ageing = sum;
  return TRUE;
}
