/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "bookings.h"
#include "desk-shop.h"
#include "invoice-row.h"
#include "invoice-words.h"
#include "paper-view.h"
#include "planner-file.h"
#include "planner-move.h"
#include "prefs-edit.h"
#include "services.h"
#include "suite.h"
#include "window.h"

/* The planner, the preferences and the papers on the demo shop, in this process. */

static gpointer
with_service (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  g_autoptr (GPtrArray) services = unsoot_service_list (db, error);

  ck_assert_ptr_nonnull (services);
  return unsoot_planner_file_load (db, NULL, ((const UnsootServiceRow *) services->pdata[0])->id,
                                   desk_shop_now (), error);
}

static gboolean
meet (const UnsootPlannerFree *free, const UnsootDayBlock *block)
{
  return free->bay_id == block->bay_id && free->from < block->ends_at
         && block->starts_at < free->to;
}

/* What is shown as free is ahead, within the hours, and touches no booking of its bay. */
START_TEST (free_times_touch_no_booking)
{
  g_autoptr (UnsootSession) session = desk_shop_open ();
  GError *error = NULL;
  g_autoptr (UnsootPlannerFile) file
      = unsoot_store_call (unsoot_session_get_store (session), with_service, NULL, NULL, &error);

  ck_no_error (error);
  ck_assert_uint_gt (file->free->len, 0);
  for (guint i = 0; i < file->free->len; i++)
    {
      const UnsootPlannerFree *free = &g_array_index (file->free, UnsootPlannerFree, i);
      ck_assert_int_ge (free->from, desk_shop_now ());
      ck_assert_int_lt (free->from, free->to);
      ck_assert_int_le (free->to, file->day->closes_at);
      for (guint j = 0; j < file->day->blocks->len; j++)
        ck_assert (!meet (free, g_ptr_array_index (file->day->blocks, j)));
    }
}
END_TEST

/* One that is planned, and another of the same day that stands in another bay. */
static const UnsootPlannerBooking *
planned (const UnsootPlannerFile *file)
{
  for (guint i = 0; i < file->bookings->len; i++)
    {
      const UnsootPlannerBooking *booking = g_ptr_array_index (file->bookings, i);
      if (g_strcmp0 (booking->block->status, "booked") == 0)
        return booking;
    }
  ck_abort_msg ("nothing is planned today");
}

static const UnsootDayBlock *
in_another_bay (const UnsootPlannerFile *file, gint64 bay_id)
{
  for (guint i = 0; i < file->day->blocks->len; i++)
    {
      const UnsootDayBlock *block = g_ptr_array_index (file->day->blocks, i);
      if (block->bay_id != 0 && block->bay_id != bay_id)
        return block;
    }
  ck_abort_msg ("only one bay is in use today");
}

/* Held over another job it breaks, and the sentence names that job; where it is, nothing does. */
START_TEST (what_a_move_would_break)
{
  g_autoptr (UnsootSession) session = desk_shop_open ();
  UnsootStore *store = unsoot_session_get_store (session);
  const UnsootActing who = unsoot_session_acting (session);
  GError *error = NULL;
  g_autoptr (UnsootPlannerFile) file = unsoot_store_call (store, with_service, NULL, NULL, &error);
  const UnsootPlannerBooking *booking = planned (file);
  const UnsootDayBlock *other = in_another_bay (file, booking->block->bay_id);
  const UnsootPlannerLane from = { UNSOOT_LANE_BAY, booking->block->bay_id, NULL };
  const UnsootPlannerLane to = { UNSOOT_LANE_BAY, other->bay_id, NULL };
  const UnsootStripSpan over = { other->starts_at, other->ends_at, 0 };
  g_autofree UnsootPlannerMove *move = unsoot_planner_move_new (booking, &who);
  g_autofree char *name = g_strdup_printf ("job %d", (int) other->job_number);
  UnsootPlannerVerdict *verdict;

  verdict = unsoot_store_call (store, unsoot_planner_move_ask, move, NULL, &error);
  ck_no_error (error);
  ck_assert_uint_eq (verdict->breaks->len, 0);
  unsoot_planner_verdict_free (verdict);
  unsoot_planner_move_to (move, &from, &to, &over);
  verdict = unsoot_store_call (store, unsoot_planner_move_ask, move, NULL, &error);
  ck_no_error (error);
  ck_assert_uint_gt (verdict->breaks->len, 0);
  ck_assert_ptr_nonnull (strstr (g_ptr_array_index (verdict->breaks, 0), name));
  unsoot_planner_verdict_free (verdict);
  /* It is not done either. */
  unsoot_store_call (store, unsoot_planner_move_do, move, NULL, &error);
  ck_assert (g_error_matches (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONSTRAINT));
  g_clear_error (&error);
}
END_TEST

/* Only a lane of the same kind changes who or what does it. */
START_TEST (a_lane_of_another_kind_changes_the_time_alone)
{
  const UnsootDayBlock block = { .booking_id = 1, .job_id = 2, .bay_id = 3 };
  const UnsootPlannerBooking booking = { .block = &block, .machine_id = 4, .technician_id = 5 };
  const UnsootActing who = { 6, 7 };
  const UnsootPlannerLane bay = { UNSOOT_LANE_BAY, 3, NULL },
                          cart = { UNSOOT_LANE_MACHINE, 8, NULL };
  const UnsootPlannerLane own = { UNSOOT_LANE_MACHINE, 4, NULL };
  const UnsootStripSpan span = { 900, 1800, 0 };
  g_autofree UnsootPlannerMove *move = unsoot_planner_move_new (&booking, &who);

  unsoot_planner_move_to (move, &bay, &cart, &span);
  ck_assert_int_eq (move->wish.machine_id, 4);
  ck_assert_int_eq (move->wish.bay_id, 3);
  ck_assert_int_eq (move->wish.starts_at, 900);
  unsoot_planner_move_to (move, &own, &cart, &span);
  ck_assert_int_eq (move->wish.machine_id, 8);
}
END_TEST

static char *
bay_text (gconstpointer record, gsize field, const char *currency)
{
  return g_strdup (((const UnsootBayRow *) record)->name);
}

static gboolean
bay_apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootBayRow *bay = record;

  g_free (bay->name);
  bay->name = g_strdup (order->values[0].text);
  return TRUE;
}

static gboolean
bay_save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_bay_save (db, who, record, error);
}

static const UnsootDeedForm bay_form
    = { .slug = "test", .n_fields = 1, .fields = { { .label = "Name" } } };
static const UnsootPrefsEdit bay_edit
    = { &bay_form, &unsoot_bay_row_type, bay_text, bay_apply, bay_save };

static gpointer
save_twice (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootActing program = { 0, desk_shop_now () };
  g_autoptr (GPtrArray) bays = unsoot_bay_list (db, error);
  const UnsootBayRow *bay = bays->pdata[0];
  g_autoptr (UnsootDeedOrder) first = unsoot_deed_order_new (bay->id);
  g_autoptr (UnsootDeedOrder) second = unsoot_deed_order_new (bay->id);
  g_autoptr (UnsootBayRow) kept = NULL;

  first->version = second->version = bay->version;
  first->values[0].text = g_strdup ("North bay");
  second->values[0].text = g_strdup ("South bay");
  ck_assert (unsoot_prefs_carry_out (db, &program, first, &bay_edit, error));
  ck_assert (!unsoot_prefs_carry_out (db, &program, second, &bay_edit, error));
  kept = unsoot_rows_get (db, &unsoot_bay_row_type, bay->id, NULL);
  ck_assert_str_eq (kept->name, "North bay");
  return NULL;
}

START_TEST (a_conflict_says_what_both_have)
{
  g_autoptr (UnsootSession) session = desk_shop_open ();
  GError *error = NULL;

  unsoot_store_call (unsoot_session_get_store (session), save_twice, NULL, NULL, &error);
  ck_assert (g_error_matches (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONFLICT));
  ck_assert_ptr_nonnull (strstr (error->message, "North bay"));
  ck_assert_ptr_nonnull (strstr (error->message, "South bay"));
  g_clear_error (&error);
}
END_TEST

static gboolean
has_pages (gpointer data)
{
  return unsoot_paper_view_get_n_pages (data) > 0;
}

static gpointer
newest_invoice (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_rows_first (db, &unsoot_invoice_row_type, error,
                            "WHERE kind = 'invoice' ORDER BY number DESC LIMIT 1");
}

START_TEST (a_paper_is_shown)
{
  UnsootPaperView *view;
  GError *error = NULL;

  desk_shop_start_toolkit ();
  g_autoptr (UnsootSession) session = desk_shop_open ();
  g_autoptr (UnsootInvoiceRow) invoice
      = unsoot_store_call (unsoot_session_get_store (session), newest_invoice, NULL, NULL, &error);
  g_autofree char *title = unsoot_invoice_title ("invoice", invoice->number);
  UnsootWindow *window = g_object_new (UNSOOT_TYPE_WINDOW, NULL);

  unsoot_window_set_session (window, session);
  gtk_window_present (GTK_WINDOW (window));
  view = unsoot_paper_view_open (GTK_WIDGET (window), session, invoice->job_id,
                                 UNSOOT_PAPER_INVOICE, invoice->id);
  desk_shop_wait (has_pages, view, "the paper");
  ck_assert_str_eq (gtk_window_get_title (GTK_WINDOW (view)), title);
  ck_assert_uint_eq (desk_shop_count (GTK_WIDGET (view), GTK_TYPE_PICTURE),
                     unsoot_paper_view_get_n_pages (view));
  g_object_add_weak_pointer (G_OBJECT (view), (gpointer *) &view);
  gtk_window_destroy (GTK_WINDOW (view));
  desk_shop_settle ();
  ck_assert_ptr_null (view);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (how_an_invoice_stands)
{
  static const struct
  {
    const char *kind;
    const char *due;
    gint64 open;
    const char *words;
    gboolean late;
  } cases[] = {
    { "invoice", "2025-11-20", 0, "paid", FALSE },
    { "invoice", "2025-11-20", 500, "due today", FALSE },
    { "invoice", "2025-11-29", 500, "due in 9 days", FALSE },
    { "invoice", "2025-11-19", 500, "1 day over", TRUE },
    { "invoice", "2025-11-08", 500, "12 days over", TRUE },
    { "invoice", "2025-11-08", -500, "paid too much", FALSE },
    { "credit", "2025-11-08", 0, "credit note", FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      gboolean late;
      g_autofree char *words
          = unsoot_invoice_state (cases[i].kind, cases[i].due, cases[i].open, "2025-11-20", &late);
      ck_assert_str_eq (words, cases[i].words);
      ck_assert_int_eq (late, cases[i].late);
    }
}
END_TEST

static Suite *
planner_suite (void)
{
  Suite *suite = suite_create ("planner and papers");
  TCase *tcase = tcase_create ("planner and papers");

  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_set_timeout (tcase, 60);
  tcase_add_test (tcase, free_times_touch_no_booking);
  tcase_add_test (tcase, what_a_move_would_break);
  tcase_add_test (tcase, a_lane_of_another_kind_changes_the_time_alone);
  tcase_add_test (tcase, a_conflict_says_what_both_have);
  tcase_add_test (tcase, a_paper_is_shown);
  tcase_add_test (tcase, how_an_invoice_stands);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (planner_suite)
