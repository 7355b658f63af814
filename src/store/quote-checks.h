/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "quotes.h"
#include "shop-row.h"

G_BEGIN_DECLS

/* What else a quote has to say, each sentence among its reasons or its warnings; for the preview. */

/* Whether the shop will have the dose of that fluid: sets its short_ml. */
gboolean unsoot_quote_check_fluid (UnsootDb *db, const UnsootShopRow *shop,
                                   const UnsootQuoteWish *wish, gint64 now, UnsootQuote *quote,
                                   UnsootQuoteDose *dose, GError **error);

/* How far the work may run over without a new word, and what @customer asks of an order. */
void unsoot_quote_check_terms (const UnsootShopRow *shop, const UnsootCustomerRow *customer,
                               UnsootQuote *quote);

G_END_DECLS
