/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bill.h"
#include "customer-row.h"
#include "job-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* The shop's tax for one customer, and the arithmetic over a job's lines; for the store's
 * own deeds. */
typedef struct
{
  GPtrArray *rows; /* UnsootTaxRuleRow */
  char *exempt_reason;
  UnsootBillTerms terms; /* borrows from both */
} UnsootShopTerms;

void unsoot_shop_terms_free (UnsootShopTerms *terms);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootShopTerms, unsoot_shop_terms_free)

/* Errors: CONSTRAINT where a kind of line has no tax rule. */
UnsootShopTerms *unsoot_shop_terms_load (UnsootDb *db, const UnsootCustomerRow *customer,
                                         GError **error);

/* Category and rate of one line, after the customer's exemption. */
void unsoot_shop_terms_of (const UnsootShopTerms *terms, const char *line_kind,
                           UnsootTaxCategory *category, gint64 *rate);

/* What the tax rule of a row is called, or why it is none. */
const char *unsoot_shop_terms_label (const UnsootShopTerms *terms, const UnsootTaxRow *row);

/* The bill over UnsootJobLineRow. */
UnsootBill *unsoot_job_lines_bill (GPtrArray *lines, const UnsootShopTerms *terms, GError **error);

/* The job's lines that are authorised, and where @offered those offered too. */
GPtrArray *unsoot_job_lines_standing (UnsootDb *db, gint64 job_id, gboolean offered,
                                      GError **error);

/* A line's kind as the bill has it: a discount follows labour. Errors: INVALID. */
gboolean unsoot_job_line_kind (const char *kind, UnsootBillKind *bill_kind, GError **error);

G_END_DECLS
