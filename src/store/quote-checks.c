/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "quote-checks.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "contact.h"
#include "dose.h"
#include "fluid-needs.h"
#include "money.h"
#include "stocks.h"

/* What a job that is quoted already lacks once all doses before it are taken. */
static gboolean
short_for_job (UnsootDb *db, const UnsootShopRow *shop, const UnsootQuoteWish *wish, gint64 now,
               UnsootQuoteDose *dose, GError **error)
{
  const gint64 at = wish->wanted_at != 0 ? wish->wanted_at : now;
  g_autoptr (GPtrArray) needs = unsoot_fluid_needs (db, shop, now, wish->job_id, at, error);

  for (guint i = 0; needs != NULL && i < needs->len; i++)
    {
      const UnsootFluidNeed *need = needs->pdata[i];
      if (need->job_id == wish->job_id && need->fluid_id == dose->fluid_id)
        dose->short_ml = need->short_ml;
    }
  return needs != NULL;
}

static void
say_short (UnsootQuote *quote, const UnsootQuoteDose *dose)
{
  g_autofree char *lack = unsoot_dose_volume_words (dose->short_ml);

  if (dose->short_ml <= 0)
    return;
  /* Translators: a fluid, then a volume */
  g_ptr_array_add (quote->warnings,
                   g_strdup_printf (_ ("%s is %s short for this job. Order it, or book it for when "
                                       "it has come."),
                                    dose->fluid, lack));
}

gboolean
unsoot_quote_check_fluid (UnsootDb *db, const UnsootShopRow *shop, const UnsootQuoteWish *wish,
                          gint64 now, UnsootQuote *quote, UnsootQuoteDose *dose, GError **error)
{
  g_autoptr (UnsootFluidStock) stock = unsoot_fluid_stock (db, dose->fluid_id, now, error);
  g_autofree char *free = NULL;

  if (stock == NULL)
    return FALSE;
  if (wish->job_id != 0 && !short_for_job (db, shop, wish, now, dose, error))
    return FALSE;
  if (wish->job_id == 0)
    dose->short_ml = MAX (dose->ml - MAX (stock->free_ml, 0), 0);
  free = unsoot_dose_volume_words (MAX (stock->free_ml, 0));
  /* Translators: a fluid, then a volume */
  g_ptr_array_add (
      quote->reasons,
      g_strdup_printf (_ ("%s: %s in stock that is promised to no job."), dose->fluid, free));
  say_short (quote, dose);
  return TRUE;
}

static char *
limit_words (const UnsootShopRow *shop)
{
  const gboolean by_share = isfinite (shop->estimate_over_percent);
  const gboolean by_amount = shop->estimate_over_minor > 0;
  g_autofree char *amount
      = unsoot_money_format (shop->estimate_over_minor, shop->currency, UNSOOT_MONEY_POINT);

  if (by_share && by_amount)
    /* Translators: a share in per cent, then an amount */
    return g_strdup_printf (_ ("Beyond the word given it may come to %g %% or %s more, whichever "
                               "is less; above that the customer is asked again."),
                            shop->estimate_over_percent, amount);
  if (by_share)
    return g_strdup_printf (_ ("Beyond the word given it may come to %g %% more; above that the "
                               "customer is asked again."),
                            shop->estimate_over_percent);
  if (by_amount)
    return g_strdup_printf (_ ("Beyond the word given it may come to %s more; above that the "
                               "customer is asked again."),
                            amount);
  return g_strdup (_ ("Anything beyond the word given is asked again."));
}

void
unsoot_quote_check_terms (const UnsootShopRow *shop, const UnsootCustomerRow *customer,
                          UnsootQuote *quote)
{
  g_autofree char *words = limit_words (shop);
  g_autoptr (GError) beyond = NULL;

  if (shop->region != NULL)
    /* Translators: a sentence, then the state whose law the shop's limits follow */
    g_ptr_array_add (quote->reasons,
                     g_strdup_printf (_ ("%s Limits as set for %s."), words, shop->region));
  else
    g_ptr_array_add (quote->reasons, g_steal_pointer (&words));
  if (customer->po_required
      && !unsoot_po_limit_check (customer->po_limit_minor, quote->bill->with_tax, shop->currency,
                                 customer->name, &beyond))
    g_ptr_array_add (quote->warnings, g_strdup (beyond->message));
}
