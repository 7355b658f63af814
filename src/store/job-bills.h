/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rows.h"
#include "shop-terms.h"

G_BEGIN_DECLS

/* What a job's bill is reckoned from, out of the book; for the store's own deeds. */

/* The shop's tax rules for one customer. Errors: as unsoot_shop_terms_new(). */
UnsootShopTerms *unsoot_shop_terms_load (UnsootDb *db, const UnsootCustomerRow *customer,
                                         GError **error);

/* The job's lines that are authorised, and where @offered those offered too. */
GPtrArray *unsoot_job_lines_standing (UnsootDb *db, gint64 job_id, gboolean offered,
                                      GError **error);

G_END_DECLS
