/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-service.h"
#include "booking-times.h"
#include "desk-book.h"
#include "suite.h"

/* A booking from the call to its place on the planner, in the window's process. What came of it
 * is read from the book. */

/* The shop opens at 7:00: three in the morning is named, and nothing is booked. */
START_TEST (a_conflict_is_named)
{
  DeskBook desk;
  gint64 job;
  GtkWidget *clock;

  desk_book_begin (&desk);
  job = desk_book_authorised_job (&desk, 0);
  desk_book_go (&desk, "booking-job", job);
  desk_book_wait_label ("Book");
  clock = desk_shop_widget (desk_book_in (&desk, UNSOOT_TYPE_BOOKING_TIMES), GTK_TYPE_ENTRY);
  gtk_editable_set_text (GTK_EDITABLE (clock), "soon");
  g_signal_emit_by_name (clock, "activate");
  desk_book_wait_label ("Type a time of the day");
  ck_assert (desk_book_has_button ("Book"));
  gtk_editable_set_text (GTK_EDITABLE (clock), "3:00");
  g_signal_emit_by_name (clock, "activate");
  desk_book_wait_label ("is outside opening hours");
  ck_assert (!desk_book_has_button ("Book"));
  ck_assert_int_eq (desk_book_raw ("SELECT count (*) FROM bookings WHERE job_id = $1", job), 0);
  desk_book_end (&desk);
}
END_TEST

static gboolean
is_job_page (gpointer data)
{
  UnsootView *view = unsoot_window_get_view (data);

  return g_strcmp0 (unsoot_view_get_slug (view), "job") == 0 && unsoot_view_is_settled (view);
}

/* The last time of the day that is shown. */
static void
pick_last (DeskBook *desk)
{
  GtkWidget *flow
      = desk_shop_widget (desk_book_in (desk, UNSOOT_TYPE_BOOKING_TIMES), GTK_TYPE_FLOW_BOX);
  GtkWidget *cell = gtk_widget_get_last_child (flow);

  ck_assert_ptr_nonnull (cell);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (gtk_widget_get_first_child (cell)), TRUE);
}

START_TEST (a_booking_made_or_moved_is_undone)
{
  static const char planned[]
      = "SELECT count (*) FROM bookings WHERE job_id = $1 AND state = 'planned'";
  static const char starts[]
      = "SELECT starts_at FROM bookings WHERE job_id = $1 AND state = 'planned'";
  static const char held[]
      = "SELECT sum (item_id * item_id) FROM booking_adapters a JOIN bookings b"
        " ON b.id = a.booking_id WHERE b.job_id = $1 AND b.state = 'planned'";
  DeskBook desk;
  gint64 job, before, items;

  desk_book_begin (&desk);
  job = desk_book_authorised_job (&desk, 4);
  desk_book_go (&desk, "booking-job", job);
  desk_book_press ("Book");
  desk_book_wait_book (planned, job, 1);
  desk_book_press ("Undo");
  desk_book_wait_book (planned, job, 0);
  desk_book_wait_book ("SELECT status = 'quoted' FROM jobs WHERE id = $1", job, 1);

  desk_book_go (&desk, "booking-job", job);
  desk_book_press ("Book");
  desk_book_wait_book (planned, job, 1);
  desk_shop_wait (is_job_page, desk.window, "the job");
  before = desk_book_raw (starts, job);
  items = desk_book_raw (held, job);
  desk_book_go (&desk, "booking-job", job);
  desk_book_wait_label ("Move the booking");
  pick_last (&desk);
  desk_book_press ("Move the booking");
  desk_shop_wait (is_job_page, desk.window, "the job");
  ck_assert_int_ne (desk_book_raw (starts, job), before);
  desk_book_press ("Undo");
  desk_book_wait_book (starts, job, before);
  ck_assert_int_eq (desk_book_raw (held, job), items);
  desk_book_end (&desk);
}
END_TEST

/* Said and carried out at once, while the answer to another service is on its way: the
 * estimate waits for the last word, and is given with it. */
START_TEST (what_was_typed_last_is_in_the_estimate)
{
  static const char smokes[]
      = "SELECT count (*) FROM jobs WHERE vehicle_id = $1 AND complaint = 'Smokes uphill'";
  DeskBook desk;
  gint64 vehicle;
  GtkWidget *service, *choice;

  desk_book_begin (&desk);
  vehicle = desk_book_free_vehicle (5);
  desk_book_go (&desk, "booking-vehicle", vehicle);
  desk_book_wait_button ("Give the estimate");
  service = desk_book_in (&desk, UNSOOT_TYPE_BOOKING_SERVICE);
  choice = desk_shop_widget (service, GTK_TYPE_DROP_DOWN);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice),
                              gtk_drop_down_get_selected (GTK_DROP_DOWN (choice)) == 0 ? 1 : 0);
  gtk_editable_set_text (GTK_EDITABLE (desk_shop_widget (service, GTK_TYPE_ENTRY)),
                         "Smokes uphill");
  ck_assert (gtk_widget_activate_action (service, "booking.deed", NULL));
  desk_book_wait_book (smokes, vehicle, 1);
  desk_book_end (&desk);
}
END_TEST

static Suite *
booking_suite (void)
{
  Suite *suite = suite_create ("booking");
  TCase *tcase = tcase_create ("booking");

  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_set_timeout (tcase, 120);
  tcase_add_test (tcase, a_conflict_is_named);
  tcase_add_test (tcase, a_booking_made_or_moved_is_undone);
  tcase_add_test (tcase, what_was_typed_last_is_in_the_estimate);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (booking_suite)
