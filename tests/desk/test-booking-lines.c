/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "deed-dialog.h"
#include "desk-book.h"
#include "jobs.h"
#include "quotes.h"
#include "suite.h"

/* The lines of an estimate: declined and offered again, and what goes beyond the word that was
 * given. What came of it is read from the book. */

static const char disposal[] = "Disposal of used fluid";
static const char total[] = "SELECT total_minor FROM estimates WHERE job_id = $1"
                            " ORDER BY number DESC LIMIT 1";

/* The deed in the row of the job's lines that begins with @text. */
static GtkWidget *
deed_of_line (const char *text)
{
  GtkWidget *cell = desk_book_wait_label (text);

  while (cell != NULL && !GTK_IS_BUTTON (cell))
    cell = gtk_widget_get_next_sibling (cell);
  ck_assert_ptr_nonnull (cell);
  return cell;
}

static void
decline (const char *text, const char *why)
{
  GtkWidget *dialog;

  g_signal_emit_by_name (deed_of_line (text), "clicked");
  dialog = GTK_WIDGET (gtk_widget_get_root (desk_book_wait_label ("Decline this line")));
  unsoot_deed_dialog_set_text (UNSOOT_DEED_DIALOG (dialog), 0, why);
  desk_book_press ("Record as declined");
}

/* The word is given on the newest estimate: a declined line is not in it, and is again where the
 * decline was a slip. */
START_TEST (a_line_is_declined_and_stands_again)
{
  static const char state[] = "SELECT state = 'declined' AND declined_reason = 'They have a tank'"
                              " FROM job_lines WHERE job_id = $1 AND kind = 'disposal'";
  DeskBook desk;
  gint64 job, before, price;

  desk_book_begin (&desk);
  job = desk_book_quoted_job (&desk, 1);
  before = desk_book_raw (total, job);
  price = desk_book_raw (
      "SELECT unit_price_minor FROM job_lines WHERE job_id = $1 AND kind = 'disposal'", job);
  desk_book_go (&desk, "job", job);
  decline (disposal, "They have a tank");
  desk_book_wait_book (state, job, 1);
  ck_assert_int_le (desk_book_raw (total, job), before - price);
  desk_book_press ("Undo");
  desk_book_wait_book (
      "SELECT state = 'offered' FROM job_lines WHERE job_id = $1 AND kind = 'disposal'", job, 1);
  desk_book_wait_book (total, job, before);
  desk_book_end (&desk);
}
END_TEST

START_TEST (a_declined_line_is_offered_next_time)
{
  static const char again[] = "SELECT count (*) FROM job_lines l JOIN jobs j ON j.id = l.job_id"
                              " WHERE j.vehicle_id = $1 AND l.kind = 'disposal'"
                              " AND l.state = 'offered'";
  DeskBook desk;
  gint64 job, vehicle;
  GtkWidget *check;

  desk_book_begin (&desk);
  job = desk_book_quoted_job (&desk, 2);
  vehicle = desk_book_raw ("SELECT vehicle_id FROM jobs WHERE id = $1", job);
  desk_book_go (&desk, "job", job);
  decline (disposal, "They have a tank");
  desk_book_wait_book (again, vehicle, 0);
  desk_book_go (&desk, "booking-vehicle", vehicle);
  desk_book_wait_label ("Declined before; offer it again?");
  check = gtk_widget_get_ancestor (desk_book_wait_label ("Disposal of used fluid · "),
                                   GTK_TYPE_CHECK_BUTTON);
  ck_assert_ptr_nonnull (check);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  desk_book_press ("Give the estimate");
  /* Its own, and the declined one besides. */
  desk_book_wait_book (again, vehicle, 2);
  desk_book_end (&desk);
}
END_TEST

static gpointer
add_line (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootActing who = { 1, desk_shop_now () };
  g_autoptr (UnsootJobLineRow) line = unsoot_job_line_row_new ();

  line->job_id = *(const gint64 *) data;
  line->kind = g_strdup ("labour");
  line->text = g_strdup ("A seized bolt");
  line->quantity_milli = 1000;
  line->unit = g_strdup ("job");
  line->unit_price_minor = 90000;
  ck_assert (unsoot_job_line_save (db, &who, line, error));
  ck_assert_int_ne (unsoot_job_estimate (db, &who, line->job_id, error), 0);
  return NULL;
}

/* Beyond the limit the next deed is to ask, on both pages; the word then covers it. */
START_TEST (an_overrun_asks_again)
{
  GError *error = NULL;
  DeskBook desk;
  gint64 job;

  desk_book_begin (&desk);
  job = desk_book_authorised_job (&desk, 3);
  desk_book_go (&desk, "booking-job", job);
  desk_book_wait_label ("Book");
  ck_assert (!desk_book_has_button ("Authorise"));
  unsoot_store_call (unsoot_session_get_store (desk.session), add_line, &job, NULL, &error);
  ck_no_error (error);
  desk_book_wait_label ("ask the customer again");
  ck_assert (!desk_book_has_button ("Book"));
  desk_book_press ("Authorise");
  desk_book_wait_book ("SELECT count (*) FROM authorisations a WHERE job_id = $1 AND amount_minor ="
                       " (SELECT total_minor FROM estimates e WHERE e.id = a.estimate_id)",
                       job, 2);
  desk_book_press ("Book");
  desk_book_wait_book ("SELECT count (*) FROM bookings WHERE job_id = $1 AND state = 'planned'",
                       job, 1);
  desk_book_end (&desk);
}
END_TEST

static Suite *
booking_lines_suite (void)
{
  Suite *suite = suite_create ("booking-lines");
  TCase *tcase = tcase_create ("booking-lines");

  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_set_timeout (tcase, 120);
  tcase_add_test (tcase, a_line_is_declined_and_stands_again);
  tcase_add_test (tcase, a_declined_line_is_offered_next_time);
  tcase_add_test (tcase, an_overrun_asks_again);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (booking_lines_suite)
