/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "invoice-deeds.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "job-row.h"
#include "jobs.h"
#include "pay-method.h"

static gboolean
invoice (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  const char *po_number = unsoot_deed_text (order, UNSOOT_INVOICE_ORDER);
  g_autoptr (UnsootInvoiceRow) invoice = NULL;
  gint64 id;

  if (po_number != NULL && !unsoot_job_set_po (db, who, order->record, po_number, error))
    return FALSE;
  id = unsoot_job_invoice (db, who, order->record, error);
  invoice = id != 0 ? unsoot_rows_get (db, &unsoot_invoice_row_type, id, error) : NULL;
  if (invoice == NULL)
    return FALSE;
  order->said = g_strdup_printf (_ ("Invoice %" PRId64 " is issued"), invoice->number);
  return TRUE;
}

const UnsootDeedForm unsoot_form_invoice = {
  .slug = "invoice",
  .title = N_ ("Invoice this job"),
  .verb = N_ ("Invoice"),
  .done = N_ ("Invoiced"),
  .deed = UNSOOT_DEED_INVOICE,
  .n_fields = 1,
  .fields = {
    [UNSOOT_INVOICE_ORDER] = { .label = N_ ("Purchase order"), .optional = TRUE,
                               .hint = N_ ("The customer’s own number, printed on the invoice") },
  },
  .carry_out = invoice,
};

static gboolean
add_discount (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootJobLineRow) line = unsoot_job_line_row_new ();
  const char *what_for = unsoot_deed_text (order, UNSOOT_DISCOUNT_FOR);

  line->job_id = order->record;
  line->kind = g_strdup ("discount");
  line->text = what_for != NULL ? g_strdup (what_for) : g_strdup (_ ("Discount"));
  line->quantity_milli = -1000;
  line->unit = g_strdup ("");
  line->unit_price_minor = order->values[UNSOOT_DISCOUNT_AMOUNT].number;
  if (!unsoot_job_line_save (db, who, line, error))
    return FALSE;
  order->undo_id = line->id;
  return TRUE;
}

static gboolean
drop_discount (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_job_line_decline (db, who, order->undo_id, _ ("taken back at once"), error);
}

const UnsootDeedForm unsoot_form_discount = {
  .slug = "discount",
  .title = N_ ("Discount"),
  .verb = N_ ("Take it off"),
  .done = N_ ("The discount is taken off"),
  .deed = UNSOOT_DEED_ESTIMATE,
  .n_fields = 2,
  .fields = {
    [UNSOOT_DISCOUNT_AMOUNT] = { .label = N_ ("Amount, without tax"), .kind = UNSOOT_ASK_MONEY },
    [UNSOOT_DISCOUNT_FOR] = { .label = N_ ("What for"), .optional = TRUE,
                              .hint = N_ ("Printed as the line’s text") },
  },
  .carry_out = add_discount,
  .undo = drop_discount,
};

static gboolean
pay (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  const int method = (int) order->values[UNSOOT_PAYMENT_METHOD].number;

  order->undo_id
      = unsoot_invoice_pay (db, who, order->record, order->values[UNSOOT_PAYMENT_AMOUNT].number,
                            unsoot_slug_of (unsoot_pay_methods, method),
                            unsoot_deed_text (order, UNSOOT_PAYMENT_REFERENCE),
                            unsoot_deed_text (order, UNSOOT_PAYMENT_DAY), error);
  return order->undo_id != 0;
}

static gboolean
take_back (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_payment_reverse (db, who, order->undo_id, _ ("taken back at once"), error) != 0;
}

static const char *const methods[]
    = { N_ ("Cash"), N_ ("Card"), N_ ("Bank transfer"), N_ ("Cheque"), NULL };

const UnsootDeedForm unsoot_form_payment = {
  .slug = "payment",
  .title = N_ ("Take a payment"),
  .verb = N_ ("Take it"),
  .done = N_ ("The payment is taken"),
  .deed = UNSOOT_DEED_TAKE_PAYMENT,
  .n_fields = 4,
  .fields = {
    [UNSOOT_PAYMENT_AMOUNT] = { .label = N_ ("Amount"), .kind = UNSOOT_ASK_MONEY,
                                .hint = N_ ("All that is open, or a part of it") },
    [UNSOOT_PAYMENT_METHOD] = { .label = N_ ("Paid by"), .kind = UNSOOT_ASK_CHOICE,
                                .words = methods },
    [UNSOOT_PAYMENT_REFERENCE] = { .label = N_ ("Reference"), .optional = TRUE,
                                   .hint = N_ ("Cheque or transfer number, last digits of a card") },
    [UNSOOT_PAYMENT_DAY] = { .label = N_ ("Received on"), .kind = UNSOOT_ASK_DAY,
                             .optional = TRUE, .hint = N_ ("Empty: today") },
  },
  .carry_out = pay,
  .undo = take_back,
};

static gboolean
reverse (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_payment_reverse (db, who, order->record,
                                 unsoot_deed_text (order, UNSOOT_REVERSAL_REASON), error)
         != 0;
}

const UnsootDeedForm unsoot_form_reversal = {
  .slug = "reversal",
  .title = N_ ("Take the payment back"),
  .verb = N_ ("Take it back"),
  .done = N_ ("The payment is taken back"),
  .deed = UNSOOT_DEED_TAKE_PAYMENT,
  .destroys = TRUE,
  .n_fields = 1,
  .fields = {
    [UNSOOT_REVERSAL_REASON] = { .label = N_ ("Why"),
                                 .hint = N_ ("A cheque that bounced, a wrong amount, a wrong invoice") },
  },
  .carry_out = reverse,
};
