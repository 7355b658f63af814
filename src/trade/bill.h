/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "slug.h"

/* The arithmetic of an invoice, as EN 16931-1 lays it down in its business rules
 * BR-CO-10 to BR-CO-17. Amounts are minor units, quantities thousandths, rates
 * thousandths of a percent. */

typedef enum
{
  UNSOOT_BILL_LABOUR,
  UNSOOT_BILL_FLUID,
  UNSOOT_BILL_KIT,
  UNSOOT_BILL_DISPOSAL,
  UNSOOT_BILL_OTHER,
} UnsootBillKind;

#define UNSOOT_BILL_KINDS 5

extern const UnsootSlug unsoot_bill_kinds[];

/* The values are the category's code in UNTDID 5305. */
typedef enum
{
  UNSOOT_TAX_STANDARD = 'S', /* taxed, at a rate above zero */
  UNSOOT_TAX_ZERO = 'Z',     /* taxed, at zero */
  UNSOOT_TAX_EXEMPT = 'E',   /* not taxed, for a reason that is printed */
  UNSOOT_TAX_OUTSIDE = 'O',  /* not within the tax's scope */
} UnsootTaxCategory;

/* The slugs are the codes themselves: "S", "Z", "E", "O". */
extern const UnsootSlug unsoot_tax_categories[];

/**
 * UnsootTaxRule:
 * @rate: above zero for STANDARD, zero for every other category
 * @reason: why there is no tax; needed for EXEMPT and OUTSIDE (BR-E-10, BR-O-10)
 */
typedef struct
{
  UnsootTaxCategory category;
  gint64 rate;
  const char *reason;
} UnsootTaxRule;

/**
 * UnsootBillLine:
 * @quantity: below zero takes something back
 * @unit_price: for @base_quantity, never below zero (BR-27)
 * @base_quantity: what the unit price buys; 0 stands for one
 * @discount_rate: off the line, rounded to an amount before it is taken off
 * @discount: a fixed amount off the line, after the rate
 */
typedef struct
{
  UnsootBillKind kind;
  gint64 quantity;
  gint64 unit_price;
  gint64 base_quantity;
  gint64 discount_rate;
  gint64 discount;
} UnsootBillLine;

/**
 * UnsootBillAdjustment:
 * @charge: added where TRUE, an allowance taken off where FALSE
 * @kind: the kind of line whose tax rule it follows
 */
typedef struct
{
  gboolean charge;
  UnsootBillKind kind;
  gint64 amount;
} UnsootBillAdjustment;

/**
 * UnsootBillTerms:
 * @rules: the tax of each kind of line, by #UnsootBillKind
 * @exempt_reason: why this customer is not taxed, or NULL: what would be taxed
 *   at a rate becomes EXEMPT for that reason
 */
typedef struct
{
  UnsootTaxRule rules[UNSOOT_BILL_KINDS];
  const char *exempt_reason;
  gint64 prepaid;
  gint64 rounding;
} UnsootBillTerms;

typedef struct
{
  UnsootTaxCategory category;
  gint64 rate;
  gint64 taxable;
  gint64 tax;
  char *reason; /* owned, or NULL */
} UnsootTaxRow;

/**
 * UnsootBill:
 * @nets: each line's net, in the order given
 * @rows: #UnsootTaxRow, one for each category and rate, S before Z, E and O
 */
typedef struct
{
  GArray *nets;
  gint64 lines;
  gint64 allowances;
  gint64 charges;
  gint64 without_tax;
  gint64 tax;
  gint64 with_tax;
  gint64 prepaid;
  gint64 rounding;
  gint64 due;
  GArray *rows;
} UnsootBill;

/* The net of one line, rounded once for price × quantity and once for its discount. */
gboolean unsoot_bill_line_net (const UnsootBillLine *line, gint64 *net, GError **error);

/* The whole bill, or NULL with a sentence that names the line or the rule at fault. */
UnsootBill *unsoot_bill_reckon (const UnsootBillLine *lines, gsize n_lines,
                                const UnsootBillAdjustment *adjustments, gsize n_adjustments,
                                const UnsootBillTerms *terms, GError **error);

/* The credit note that takes the whole bill back: every amount with its sign turned. */
UnsootBill *unsoot_bill_negate (const UnsootBill *bill, GError **error);

/* BR-O-11: an electronic invoice can't hold category O beside another one. */
gboolean unsoot_bill_mixes_outside (const UnsootBill *bill);

void unsoot_bill_free (UnsootBill *bill);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootBill, unsoot_bill_free)
