/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "deed-form.h"
#include "invoices.h"

/* The deeds about money, as forms. */

/* On a job that is done. */
enum
{
  UNSOOT_INVOICE_ORDER, /* the customer's order number */
};
extern const UnsootDeedForm unsoot_form_invoice;

/* On a job that is not invoiced yet; its Undo declines the line. */
enum
{
  UNSOOT_DISCOUNT_AMOUNT,
  UNSOOT_DISCOUNT_FOR,
};
extern const UnsootDeedForm unsoot_form_discount;

/* On an invoice that is open; its Undo takes the payment back. */
enum
{
  UNSOOT_PAYMENT_AMOUNT,
  UNSOOT_PAYMENT_METHOD,
  UNSOOT_PAYMENT_REFERENCE,
  UNSOOT_PAYMENT_DAY,
};
extern const UnsootDeedForm unsoot_form_payment;

/* On a payment. */
enum
{
  UNSOOT_REVERSAL_REASON,
};
extern const UnsootDeedForm unsoot_form_reversal;
