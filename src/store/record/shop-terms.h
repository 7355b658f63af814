/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bill.h"
#include "customer-row.h"
#include "job-row.h"
#include "service-row.h"

G_BEGIN_DECLS

/* The shop's tax for one customer, and the bill over a job's lines: what the book, the
 * screen and every paper reckon by. Errors are of UNSOOT_TRADE_ERROR. */
typedef struct
{
  GPtrArray *rows; /* UnsootTaxRuleRow */
  char *exempt_reason;
  UnsootBillTerms terms; /* borrows from both */
} UnsootShopTerms;

/* Takes a reference on @rules (UnsootTaxRuleRow). Errors: REFUSED where a kind of line has
 * no tax rule. */
UnsootShopTerms *unsoot_shop_terms_new (GPtrArray *rules, const UnsootCustomerRow *customer,
                                        GError **error);
void unsoot_shop_terms_free (UnsootShopTerms *terms);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootShopTerms, unsoot_shop_terms_free)

/* Category and rate of one line, after the customer's exemption. */
void unsoot_shop_terms_of (const UnsootShopTerms *terms, const char *line_kind,
                           UnsootTaxCategory *category, gint64 *rate);

/* What the tax rule of a row is called, or why it is none. */
const char *unsoot_shop_terms_label (const UnsootShopTerms *terms, const UnsootTaxRow *row);

/* The bill over UnsootJobLineRow. */
UnsootBill *unsoot_job_lines_bill (const GPtrArray *lines, const UnsootShopTerms *terms,
                                   GError **error);

/* A line's kind as the bill has it: a discount follows labour, for what a shop gives away
 * is its own work. Errors: UNKNOWN. */
gboolean unsoot_job_line_kind (const char *kind, UnsootBillKind *bill_kind, GError **error);

G_END_DECLS
