/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gio/gio.h>
#include <string.h>

#include "book-kit.h"
#include "desk-keys.h"
#include "suite.h"

/* Money and the shop's own settings at the real program. What came of each deed is
 * read from the book by SQLite, and from the saved paper by pdftotext. */

enum
{
  PATIENCE_S = 30,
  POLL_US = 100000
};

/* Opens a deed's dialog, where the keyboard then is. */
static void
open_deed (Desk *desk, const char *button, const char *title)
{
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, button);
  desk_wait_title (desk, title);
  desk_focus (desk, title);
}

/* A done job that nobody's order number holds up. */
#define DONE_JOB                                                                                   \
  "SELECT j.%s FROM jobs j JOIN customers c ON c.id = j.customer_id WHERE j.status = 'done'"       \
  " AND (c.po_required = 0 OR j.po_number IS NOT NULL) ORDER BY j.number LIMIT 1"

static void
save_paper (Desk *desk, const char *invoice, const char *number, const char *total)
{
  g_autofree char *file = g_build_filename (g_get_user_cache_dir (), "paper.pdf", NULL);
  g_autofree char *text = NULL;

  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Show, save or print");
  g_object_unref (desk_find (desk, ATSPI_ROLE_IMAGE, "Page 1 of"));
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Save…");
  /* The toolkit’s own dialog: waited for by its title, which is no frame’s name. */
  desk_focus (desk, "Save the paper");
  desk_key (desk, "ctrl+a");
  desk_type (desk, file);
  desk_key (desk, "Return");
  text = paper_text (file);
  ck_assert_ptr_nonnull (strstr (text, number));
  ck_assert_ptr_nonnull (strstr (text, total));
  desk_wait_closed ("Save the paper");
  desk_escape (desk, invoice);
}

START_TEST (a_job_is_invoiced_paid_in_parts_and_credited)
{
  Desk *desk = desk_start_demo ();
  g_autofree char *job = book_text (DONE_JOB, "number"), *id = book_text (DONE_JOB, "id");
  g_autofree char *last = book_text ("SELECT max (number) FROM invoices");
  g_autofree char *number = g_strdup_printf ("%d", atoi (last) + 1);
  g_autofree char *invoice = g_strdup_printf ("Invoice %s", number);
  g_autofree char *status = g_strdup_printf ("SELECT status FROM jobs WHERE id = %s", id);
  g_autofree char *paid = g_strdup_printf ("SELECT sum (amount_minor) FROM payments p JOIN invoices"
                                           " i ON i.id = p.invoice_id WHERE i.number = %s",
                                           number);
  g_autofree char *total = NULL, *written = NULL, *minus = NULL, *credit = NULL;

  desk_open_job (desk, job);
  open_deed (desk, "Invoice…", "Invoice this job");
  desk_key (desk, "Return");
  ck_book ("invoiced", "%s", status);
  desk_focus (desk, "Unsoot");
  desk_open_invoice (desk, number);
  total = book_text ("SELECT total_minor FROM invoices WHERE number = %s", number);
  written = g_strdup_printf ("%d.%02d", atoi (total) / 100, atoi (total) % 100);

  /* More than is open is refused where it is typed, and stays there to be mended. */
  open_deed (desk, "Take payment…", "Take a payment");
  desk_key (desk, "ctrl+a");
  desk_type (desk, "99999");
  desk_key (desk, "Return");
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "can't be taken on it"));
  desk_key (desk, "ctrl+a");
  desk_type (desk, "100");
  desk_key (desk, "Return");
  ck_book ("10000", "%s", paid);
  ck_book ("invoiced", "%s", status);
  /* The rest stands in the field already. */
  desk_focus (desk, "Unsoot");
  g_usleep (G_USEC_PER_SEC);
  open_deed (desk, "Take payment…", "Take a payment");
  desk_key (desk, "Return");
  ck_book (total, "%s", paid);
  ck_book ("paid", "%s", status);

  desk_focus (desk, "Unsoot");
  save_paper (desk, invoice, number, written);

  desk_focus (desk, "Unsoot");
  open_deed (desk, "Credit note…", "Credit note");
  desk_type (desk, "Agreed on the phone");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Issue the credit note");
  minus = g_strdup_printf ("-%s", total);
  credit = g_strdup_printf ("SELECT c.total_minor FROM invoices c JOIN invoices i ON i.id ="
                            " c.credits_id WHERE i.number = %s AND c.kind = 'credit'"
                            " AND c.note = 'Agreed on the phone'",
                            number);
  ck_book (minus, "%s", credit);
  desk_focus (desk, "Unsoot");
  desk_end (desk);
}
END_TEST

START_TEST (a_price_is_changed_by_the_owner_alone)
{
  Desk *desk = desk_start_demo ();
  g_autofree char *name
      = book_text ("SELECT name FROM services WHERE active = 1 ORDER BY id LIMIT 1");
  g_autofree char *price = g_strdup_printf (
      "SELECT price_minor || '/' || version FROM services WHERE name = '%s'", name);
  g_autofree char *button = g_strdup_printf ("Change…: %s", name);
  g_autofree char *version = book_text ("SELECT version + 1 FROM services WHERE name = '%s'", name);
  g_autofree char *wanted = g_strdup_printf ("36500/%s", version);

  desk_key (desk, "ctrl+l");
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Oona Brask");
  desk_focus (desk, "Who is at the desk");
  desk_type (desk, "1111");
  desk_key (desk, "Return");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Oona Brask"));
  desk_focus (desk, "Unsoot");
  desk_key (desk, "ctrl+comma");
  desk_wait_title (desk, "Preferences");
  open_deed (desk, button, "Service");
  desk_tab_to (desk, "Labour");
  desk_key (desk, "ctrl+a");
  desk_type (desk, "365");
  desk_key (desk, "Return");
  ck_book (wanted, "%s", price);
  desk_focus (desk, "Unsoot");
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, "365.00"));
  desk_end (desk);
}
END_TEST

static void
add_case (Suite *suite, const char *name, const TTest *test)
{
  TCase *tcase = tcase_create (name);

  tcase_set_timeout (tcase, 240);
  tcase_add_test (tcase, test);
  suite_add_tcase (suite, tcase);
}

static Suite *
desk_money_suite (void)
{
  Suite *suite = suite_create ("desk money");

  add_case (suite, "invoice", a_job_is_invoiced_paid_in_parts_and_credited);
  add_case (suite, "preferences", a_price_is_changed_by_the_owner_alone);
  return suite;
}

UNSOOT_TEST_MAIN (desk_money_suite)
