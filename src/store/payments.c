/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "invoices.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "ageing.h"
#include "civil.h"
#include "deed.h"
#include "invoice-rows.h"
#include "money.h"
#include "pay-method.h"
#include "shops.h"

static const char open_sql[]
    = "SELECT i.total_minor"
      " - COALESCE ((SELECT sum (p.amount_minor) FROM payments p WHERE p.invoice_id = i.id), 0)"
      " + COALESCE ((SELECT sum (c.total_minor) FROM invoices c WHERE c.credits_id = i.id), 0)"
      " FROM invoices i WHERE i.id = $1";

/* Invoices of a customer, or of all ($1 is 0), that are open, or paid too much: credit notes count
 * with theirs. */
static const char owed_sql[]
    = "SELECT o.issued_on, o.due_on, o.open FROM (SELECT i.id, i.issued_on, i.due_on, i.total_minor"
      " - COALESCE ((SELECT sum (p.amount_minor) FROM payments p WHERE p.invoice_id = i.id), 0)"
      " + COALESCE ((SELECT sum (c.total_minor) FROM invoices c WHERE c.credits_id = i.id), 0)"
      " AS open FROM invoices i WHERE ($1 = 0 OR i.customer_id = $1) AND i.kind = 'invoice') AS o"
      " WHERE o.open <> 0 ORDER BY o.id";

gboolean
unsoot_invoice_open_minor (UnsootDb *db, gint64 invoice_id, gint64 *amount, GError **error)
{
  return unsoot_db_int (db, amount, error, open_sql, unsoot_int (invoice_id));
}

static gboolean
check_amount (UnsootDb *db, const UnsootInvoiceRow *invoice, gint64 amount, GError **error)
{
  gint64 open = 0;

  if (g_strcmp0 (invoice->kind, "invoice") != 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("%" PRId64 " is a credit note: nothing is paid on it."),
                             invoice->number);
  if (amount <= 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Enter more than nothing. Money that goes back is a payment taken "
                                "back."));
  if (!unsoot_invoice_open_minor (db, invoice->id, &open, error))
    return FALSE;
  if (amount > open)
    {
      g_autofree char *owed = unsoot_money_format (open, invoice->currency, UNSOOT_MONEY_POINT);
      g_autofree char *paid = unsoot_money_format (amount, invoice->currency, UNSOOT_MONEY_POINT);
      return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                               _ ("%s is open on invoice %" PRId64 ", so %s can't be taken on it."),
                               owed, invoice->number, paid);
    }
  return TRUE;
}

/* The shop's today where @date is NULL; what is given has to be a date. */
static char *
date_or_today (UnsootDb *db, const char *date, gint64 now, GError **error)
{
  g_autoptr (UnsootShopRow) shop = NULL;
  int day;

  if (date != NULL)
    return unsoot_day_parse (date, &day, error) ? g_strdup (date) : NULL;
  shop = unsoot_shop_load (db, error);
  return shop != NULL ? unsoot_shop_date (shop, now) : NULL;
}

static gint64
post_payment (UnsootDb *db, const UnsootActing *who, UnsootPaymentRow *payment, GError **error)
{
  payment->id = 0;
  payment->at = who->now;
  payment->staff_id = who->staff_id;
  return unsoot_rows_post (db, &unsoot_payment_row_type, payment, error)
                 && unsoot_invoice_settle (db, who, payment->invoice_id, error)
             ? payment->id
             : 0;
}

static gboolean
check_method (const char *method, GError **error)
{
  int found;

  if (!unsoot_slug_find (unsoot_pay_methods, method, &found))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("“%s” is no way to pay. Use cash, card, transfer or cheque."),
                             method != NULL ? method : "");
  return TRUE;
}

gint64
unsoot_invoice_pay (UnsootDb *db, const UnsootActing *who, gint64 invoice_id, gint64 amount_minor,
                    const char *method, const char *reference, const char *received_on,
                    GError **error)
{
  if (!check_method (method, error))
    return 0;
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_TAKE_PAYMENT, error);
  g_autoptr (UnsootInvoiceRow) invoice
      = deed != NULL ? unsoot_rows_get (db, &unsoot_invoice_row_type, invoice_id, error) : NULL;
  g_autoptr (UnsootPaymentRow) payment = unsoot_payment_row_new ();

  if (invoice == NULL || !check_amount (db, invoice, amount_minor, error)
      || (payment->received_on = date_or_today (db, received_on, who->now, error)) == NULL)
    return 0;
  payment->invoice_id = invoice_id;
  payment->customer_id = invoice->customer_id;
  payment->amount_minor = amount_minor;
  payment->method = g_strdup (method);
  payment->reference = g_strdup (reference);
  gint64 id = post_payment (db, who, payment, error);
  return unsoot_deed_end (&deed, id != 0, error) ? id : 0;
}

static gboolean
check_not_reversed (UnsootDb *db, const UnsootPaymentRow *payment, const char *reason,
                    GError **error)
{
  gint64 reversed = 0;

  if (unsoot_deed_blank (reason))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say why the payment is taken back."));
  if (!unsoot_db_int (db, &reversed, error, "SELECT count (*) FROM payments WHERE reverses_id = $1",
                      unsoot_int (payment->id)))
    return FALSE;
  if (reversed > 0 || payment->amount_minor < 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("This payment was taken back already."));
  return TRUE;
}

gint64
unsoot_payment_reverse (UnsootDb *db, const UnsootActing *who, gint64 payment_id,
                        const char *reason, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_TAKE_PAYMENT, error);
  g_autoptr (UnsootPaymentRow) payment
      = deed != NULL ? unsoot_rows_get (db, &unsoot_payment_row_type, payment_id, error) : NULL;

  if (payment == NULL || !check_not_reversed (db, payment, reason, error))
    return 0;
  g_free (payment->received_on);
  payment->received_on = date_or_today (db, NULL, who->now, error);
  if (payment->received_on == NULL)
    return 0;
  payment->reverses_id = payment->id;
  payment->amount_minor = -payment->amount_minor;
  g_free (payment->reference);
  payment->reference = g_strdup (reason);
  gint64 id = post_payment (db, who, payment, error);
  return unsoot_deed_end (&deed, id != 0, error) ? id : 0;
}

static gboolean
read_open (UnsootDb *db, gint64 customer_id, GArray *items, GError **error)
{
  g_autoptr (UnsootQuery) query = unsoot_db_query (db, error, owed_sql, unsoot_int (customer_id));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    {
      UnsootOpenItem item = { .open = unsoot_query_get_int (query, 2) };
      if (!unsoot_day_parse (unsoot_query_get_text (query, 0), &item.issued, error)
          || !unsoot_day_parse (unsoot_query_get_text (query, 1), &item.due, error))
        return FALSE;
      g_array_append_val (items, item);
    }
  return step == UNSOOT_STEP_DONE;
}

gboolean
unsoot_customer_owes (UnsootDb *db, gint64 customer_id, const char *today, UnsootOwes *owes,
                      GError **error)
{
  g_autoptr (GArray) items = g_array_new (FALSE, TRUE, sizeof (UnsootOpenItem));
  UnsootAgeing ageing;
  int day;

  if (!unsoot_day_parse (today, &day, error) || !read_open (db, customer_id, items, error)
      || !unsoot_ageing_sum ((const UnsootOpenItem *) (gconstpointer) items->data, items->len,
                             UNSOOT_AGED_FROM_DUE, day, &ageing, error))
    return FALSE;
  *owes = (UnsootOwes){ .not_due = ageing.owed[UNSOOT_AGED_NOT_DUE],
                        .to_30 = ageing.owed[UNSOOT_AGED_30],
                        .to_60 = ageing.owed[UNSOOT_AGED_60],
                        .to_90 = ageing.owed[UNSOOT_AGED_90],
                        .over_90 = ageing.owed[UNSOOT_AGED_OVER],
                        .total = ageing.total,
                        .invoices = items->len };
  return TRUE;
}
