/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <poppler.h>
#include <sqlite3.h>
#include <string.h>

#include "desk-shop.h"
#include "invoice-row.h"
#include "invoices.h"
#include "loose-paper.h"
#include "paper-print.h"
#include "paper-view.h"
#include "statements.h"
#include "suite.h"
#include "supply-orders.h"
#include "window.h"

/* Invoices, what is owed, and their papers on the demo shop, in this process. Sums are told by
 * SQLite itself, beside the store. */

static char *
raw (const char *sql)
{
  sqlite3 *db = NULL;
  sqlite3_stmt *statement = NULL;
  char *text = NULL;

  ck_assert_int_eq (sqlite3_open_v2 (desk_shop_path (), &db, SQLITE_OPEN_READONLY, NULL),
                    SQLITE_OK);
  ck_assert_msg (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL) == SQLITE_OK, "%s",
                 sqlite3_errmsg (db));
  if (sqlite3_step (statement) == SQLITE_ROW)
    text = g_strdup ((const char *) sqlite3_column_text (statement, 0));
  sqlite3_finalize (statement);
  sqlite3_close (db);
  return text;
}

static gint64
raw_int (const char *sql)
{
  g_autofree char *text = raw (sql);

  return text != NULL ? g_ascii_strtoll (text, NULL, 10) : 0;
}

/* @sql ends where the id comes. */
static gint64
by_id (const char *begin, gint64 id)
{
  g_autofree char *sql = g_strdup_printf ("%s%d", begin, (int) id);

  return raw_int (sql);
}

#define OPEN                                                                                       \
  "(i.total_minor"                                                                                 \
  " - COALESCE ((SELECT sum (p.amount_minor) FROM payments p WHERE p.invoice_id = i.id), 0)"       \
  " + COALESCE ((SELECT sum (c.total_minor) FROM invoices c WHERE c.credits_id = i.id), 0))"

/* EN 16931, BR-CO-10 to BR-CO-17, on every paper of the book: lines add up, tax is the category's
 * sum times its rate, rounded once, half away from zero. */
START_TEST (every_invoice_adds_up)
{
  ck_assert_int_gt (raw_int ("SELECT count (*) FROM invoices"), 0);
  ck_assert_int_eq (
      raw_int ("SELECT count (*) FROM invoices i WHERE i.net_minor <>"
               " (SELECT sum (net_minor) FROM invoice_lines WHERE invoice_id = i.id)"),
      0);
  ck_assert_int_eq (
      raw_int ("SELECT count (*) FROM invoice_taxes t WHERE t.taxable_minor <>"
               " (SELECT sum (l.net_minor) FROM invoice_lines l WHERE l.invoice_id = t.invoice_id"
               "  AND l.category = t.category AND l.rate_milli_percent = t.rate_milli_percent)"),
      0);
  ck_assert_int_eq (raw_int ("SELECT count (*) FROM invoice_taxes t JOIN invoices i"
                             " ON i.id = t.invoice_id WHERE i.kind = 'invoice' AND t.tax_minor <>"
                             " CAST (round (t.taxable_minor * t.rate_milli_percent / 100000.0)"
                             " AS INTEGER)"),
                    0);
  ck_assert_int_eq (raw_int ("SELECT count (*) FROM invoices i WHERE total_minor <> net_minor"
                             " + (SELECT sum (tax_minor) FROM invoice_taxes"
                             "    WHERE invoice_id = i.id)"),
                    0);
}
END_TEST

START_TEST (numbers_have_no_gaps)
{
  ck_assert_int_eq (raw_int ("SELECT max (number) - min (number) + 1 - count (*) FROM invoices"),
                    0);
  ck_assert_int_eq (raw_int ("SELECT count (*) - count (DISTINCT number) FROM invoices"), 0);
}
END_TEST

static gpointer
list_owing (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_owing_list (db, data, error);
}

/* Bucket by bucket, counted from the due day: 0-30, 31-60, 61-90, over 90. */
START_TEST (what_each_customer_owes)
{
  g_autoptr (UnsootSession) session = desk_shop_open ();
  g_autofree char *today = unsoot_session_today (session);
  GError *error = NULL;
  g_autoptr (GPtrArray) list
      = unsoot_store_call (unsoot_session_get_store (session), list_owing, today, NULL, &error);
  gint64 all = 0;

  ck_no_error (error);
  ck_assert_uint_gt (list->len, 1);
  for (guint i = 0; i < list->len; i++)
    {
      const UnsootOwing *owing = g_ptr_array_index (list, i);
      g_autofree char *over = g_strdup_printf (
          "SELECT COALESCE (sum (" OPEN "), 0) FROM invoices i WHERE i.kind = 'invoice'"
          " AND i.customer_id = %d AND julianday ('%s') - julianday (i.due_on) > 30",
          (int) owing->customer_id, today);
      g_autofree char *total = g_strdup_printf (
          "SELECT sum (" OPEN ") FROM invoices i WHERE i.kind = 'invoice' AND i.customer_id = %d",
          (int) owing->customer_id);

      ck_assert_int_eq (owing->owes.total, raw_int (total));
      ck_assert_int_eq (owing->owes.to_60 + owing->owes.to_90 + owing->owes.over_90,
                        raw_int (over));
      ck_assert_int_eq (owing->owes.total, owing->owes.not_due + owing->owes.to_30
                                               + owing->owes.to_60 + owing->owes.to_90
                                               + owing->owes.over_90);
      all += owing->owes.total;
    }
  ck_assert_int_eq (all, raw_int ("SELECT sum (" OPEN ") FROM invoices i WHERE kind = 'invoice'"));
}
END_TEST

static char *
words_of (GBytes *pdf)
{
  GError *error = NULL;
  PopplerDocument *document = poppler_document_new_from_bytes (pdf, NULL, &error);
  GString *words = g_string_new (NULL);

  ck_no_error (error);
  for (int i = 0; i < poppler_document_get_n_pages (document); i++)
    {
      PopplerPage *page = poppler_document_get_page (document, i);
      g_autofree char *text = poppler_page_get_text (page);
      g_string_append (words, text);
      g_object_unref (page);
    }
  g_object_unref (document);
  return g_string_free (words, FALSE);
}

/* Who owes most, as SQLite says. */
static gint64
debtor (void)
{
  return raw_int ("SELECT i.customer_id FROM invoices i WHERE i.kind = 'invoice'"
                  " GROUP BY i.customer_id ORDER BY sum (" OPEN ") DESC LIMIT 1");
}

START_TEST (a_statement_of_account)
{
  g_autoptr (UnsootSession) session = desk_shop_open ();
  g_autofree gpointer ask = unsoot_loose_paper_ask_new (debtor (), desk_shop_now ());
  GError *error = NULL;
  g_autoptr (UnsootLoosePaper) made = unsoot_store_call (
      unsoot_session_get_store (session), unsoot_loose_paper_statement, ask, NULL, &error);
  g_autofree char *words = NULL, *sum = NULL, *numbers = NULL, *query = NULL, *owed = NULL;
  g_auto (GStrv) each = NULL;

  ck_no_error (error);
  words = words_of (made->pdf);
  query = g_strdup_printf ("SELECT sum (" OPEN ") FROM invoices i WHERE i.kind = 'invoice'"
                           " AND i.customer_id = %d",
                           (int) debtor ());
  sum = unsoot_session_money (session, raw_int (query));
  ck_assert_msg (strstr (words, sum) != NULL, "%s not in: %s", sum, words);
  ck_assert_ptr_nonnull (strstr (words, made->about));
  owed = g_strdup_printf ("SELECT group_concat (i.number) FROM invoices i WHERE i.kind = 'invoice'"
                          " AND i.customer_id = %d AND " OPEN " <> 0",
                          (int) debtor ());
  numbers = raw (owed);
  each = g_strsplit (numbers, ",", -1);
  for (char **number = each; *number != NULL; number++)
    ck_assert_msg (strstr (words, *number) != NULL, "%s not in: %s", *number, words);
  ck_assert (g_str_has_prefix (made->file_name, "statement-"));
}
END_TEST

static gpointer
credit_a_line (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const gint64 *ids = data;
  UnsootActing who = { .staff_id = ids[2], .now = desk_shop_now () };

  unsoot_invoice_credit (db, &who, ids[0], &ids[1], 1, "not fitted", error);
  return NULL;
}

/* A line of a debtor's invoice is credited: the statement takes it off that invoice and off what
 * is owed. What is expected is the book's, by SQLite: the credit note's own total. */
START_TEST (a_statement_counts_a_credit_note)
{
  g_autoptr (UnsootSession) session = desk_shop_open ();
  g_autofree gpointer ask = NULL;
  GError *error = NULL;
  g_autoptr (UnsootLoosePaper) made = NULL;
  g_autofree char *words = NULL, *less = NULL, *open = NULL, *all = NULL, *gone = NULL;
  gint64 ids[3], customer, total, paid, credited, owed;

  /* An open invoice of two lines or more, on which nothing was credited. */
  ids[0] = raw_int ("SELECT i.id FROM invoices i WHERE i.kind = 'invoice' AND " OPEN " > 0"
                    " AND NOT EXISTS (SELECT 1 FROM invoices c WHERE c.credits_id = i.id)"
                    " AND (SELECT count (*) FROM invoice_lines l WHERE l.invoice_id = i.id"
                    "  AND l.net_minor > 0) > 1 ORDER BY i.id LIMIT 1");
  ck_assert_int_gt (ids[0], 0);
  gone = g_strdup_printf ("SELECT position FROM invoice_lines WHERE invoice_id = %d"
                          " AND net_minor > 0 ORDER BY net_minor LIMIT 1",
                          (int) ids[0]);
  ids[1] = raw_int (gone);
  ids[2] = raw_int ("SELECT id FROM staff WHERE role = 'advisor' AND active = 1 LIMIT 1");
#define OF(what) by_id ("SELECT " what " FROM invoices i WHERE i.id = ", ids[0])
  customer = OF ("i.customer_id");
  owed = by_id ("SELECT sum (" OPEN ") FROM invoices i WHERE i.kind = 'invoice'"
                " AND i.customer_id = ",
                customer);
  unsoot_store_call (unsoot_session_get_store (session), credit_a_line, ids, NULL, &error);
  ck_no_error (error);

  credited = by_id ("SELECT -sum (total_minor) FROM invoices WHERE credits_id = ", ids[0]);
  ck_assert_int_gt (credited, 0);
  total = OF ("i.total_minor");
  paid
      = by_id ("SELECT COALESCE (sum (amount_minor), 0) FROM payments WHERE invoice_id = ", ids[0]);
#undef OF
  ask = unsoot_loose_paper_ask_new (customer, desk_shop_now ());
  made = unsoot_store_call (unsoot_session_get_store (session), unsoot_loose_paper_statement, ask,
                            NULL, &error);
  ck_no_error (error);
  words = words_of (made->pdf);
  less = unsoot_session_money (session, paid + credited);
  open = unsoot_session_money (session, total - paid - credited);
  all = unsoot_session_money (session, owed - credited);
  ck_assert_msg (strstr (words, less) != NULL, "%s taken off, not in: %s", less, words);
  ck_assert_msg (strstr (words, open) != NULL, "%s open, not in: %s", open, words);
  ck_assert_msg (strstr (words, all) != NULL, "%s owed, not in: %s", all, words);
}
END_TEST

static gpointer
order_some (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  UnsootActing who = { .staff_id = *(const gint64 *) data, .now = desk_shop_now () };
  g_autoptr (UnsootSupplyOrderRow) order = unsoot_supply_order_row_new ();

  order->fluid_id = 1;
  order->packs = 3;
  order->pack_ml = 5000;
  order->pack_cost_minor = 8550;
  order->expected_on = g_strdup ("2031-02-07");
  order->note = g_strdup ("Ring the bell at the back gate");
  unsoot_supply_order_place (db, &who, order, error);
  return NULL;
}

/* The sum is 3 × 85.50, by hand; the rest is what the book has, by SQLite. */
START_TEST (an_order_is_printed)
{
  static const char *const fixed[]
      = { "Purchase order", "15 L", "85.50", "256.50", "7 Feb 2031", "bell at the back gate" };
  static const char *const kept[]
      = { "SELECT number FROM supply_orders ORDER BY id DESC LIMIT 1",
          "SELECT name FROM fluids WHERE id = 1",
          "SELECT s.name FROM suppliers s JOIN supply_orders o ON o.supplier_id = s.id"
          " ORDER BY o.id DESC LIMIT 1",
          "SELECT name FROM shop",
          "SELECT street FROM shop",
          "SELECT town FROM shop",
          "SELECT name FROM staff WHERE role = 'clerk' AND active = 1 LIMIT 1" };
  g_autoptr (UnsootSession) session = desk_shop_open ();
  UnsootStore *store = unsoot_session_get_store (session);
  gint64 clerk = raw_int ("SELECT id FROM staff WHERE role = 'clerk' AND active = 1 LIMIT 1");
  GError *error = NULL;
  g_autofree gpointer ask = NULL;
  g_autofree char *words = NULL;
  g_autoptr (UnsootLoosePaper) made = NULL;

  unsoot_store_call (store, order_some, &clerk, NULL, &error);
  ck_no_error (error);
  ask = unsoot_loose_paper_ask_new (raw_int ("SELECT max (id) FROM supply_orders"),
                                    desk_shop_now ());
  made = unsoot_store_call (store, unsoot_loose_paper_order, ask, NULL, &error);
  ck_no_error (error);
  ck_assert_ptr_null (made->remark);
  words = words_of (made->pdf);
  for (gsize i = 0; i < G_N_ELEMENTS (fixed); i++)
    ck_assert_msg (strstr (words, fixed[i]) != NULL, "%s not in: %s", fixed[i], words);
  for (gsize i = 0; i < G_N_ELEMENTS (kept); i++)
    {
      g_autofree char *wanted = raw (kept[i]);
      ck_assert_msg (wanted != NULL && strstr (words, wanted) != NULL, "%s not in: %s", wanted,
                     words);
    }
}
END_TEST

static gboolean
has_pages (gpointer data)
{
  return unsoot_paper_view_get_n_pages (data) > 0;
}

START_TEST (a_statement_is_shown)
{
  UnsootPaperView *view;
  UnsootWindow *window;

  desk_shop_start_toolkit ();
  g_autoptr (UnsootSession) session = desk_shop_open ();
  window = g_object_new (UNSOOT_TYPE_WINDOW, NULL);
  unsoot_window_set_session (window, session);
  gtk_window_present (GTK_WINDOW (window));
  view = unsoot_paper_view_open_statement (GTK_WIDGET (window), session, debtor ());
  desk_shop_wait (has_pages, view, "the statement");
  ck_assert_str_eq (gtk_window_get_title (GTK_WINDOW (view)), "Statement of account");
  g_object_add_weak_pointer (G_OBJECT (view), (gpointer *) &view);
  gtk_window_destroy (GTK_WINDOW (view));
  desk_shop_settle ();
  ck_assert_ptr_null (view);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

static void
finished_cb (GtkPrintOperation *operation, GtkPrintOperationResult result, gboolean *done)
{
  ck_assert_int_eq (result, GTK_PRINT_OPERATION_RESULT_APPLY);
  *done = TRUE;
}

static gboolean
is_done (gpointer data)
{
  return *(gboolean *) data;
}

/* What comes out of the printer's job is the paper: the same words, as many pages, the same sheet. */
START_TEST (a_paper_is_printed)
{
  desk_shop_start_toolkit ();
  g_autoptr (UnsootSession) session = desk_shop_open ();
  g_autofree gpointer ask = unsoot_loose_paper_ask_new (debtor (), desk_shop_now ());
  GError *error = NULL;
  g_autoptr (UnsootLoosePaper) made = unsoot_store_call (
      unsoot_session_get_store (session), unsoot_loose_paper_statement, ask, NULL, &error);
  g_autofree char *file = g_strconcat (desk_shop_path (), "-printed.pdf", NULL);
  g_autoptr (GtkPrintOperation) operation = unsoot_paper_print_new (made->pdf, "paper", &error);
  g_autofree char *text = NULL, *wanted = words_of (made->pdf), *printed = NULL;
  g_autoptr (GBytes) out = NULL;
  gboolean done = FALSE;
  gsize size;

  ck_no_error (error);
  gtk_print_operation_set_export_filename (operation, file);
  g_signal_connect (operation, "done", G_CALLBACK (finished_cb), &done);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, &error);
  ck_no_error (error);
  desk_shop_wait (is_done, &done, "the printer");
  g_file_get_contents (file, &text, &size, &error);
  ck_no_error (error);
  out = g_bytes_new (text, size);
  printed = words_of (out);
  ck_assert_str_eq (printed, wanted);
  g_unlink (file);
}
END_TEST

static Suite *
invoice_suite (void)
{
  Suite *suite = suite_create ("invoices");
  TCase *tcase = tcase_create ("invoices");

  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_set_timeout (tcase, 60);
  tcase_add_test (tcase, every_invoice_adds_up);
  tcase_add_test (tcase, numbers_have_no_gaps);
  tcase_add_test (tcase, what_each_customer_owes);
  tcase_add_test (tcase, a_statement_of_account);
  tcase_add_test (tcase, a_statement_counts_a_credit_note);
  tcase_add_test (tcase, an_order_is_printed);
  tcase_add_test (tcase, a_statement_is_shown);
  tcase_add_test (tcase, a_paper_is_printed);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (invoice_suite)
