/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk-shop.h"
#include "find-box.h"
#include "first-start.h"
#include "frame.h"
#include "hands-dialog.h"
#include "job-path.h"
#include "opening.h"
#include "paper-row.h"
#include "paper-task.h"
#include "place-row.h"
#include "records-page.h"
#include "staff.h"
#include "strip-block.h"
#include "suite.h"
#include "today-page.h"
#include "window.h"

/* The window on the demo shop, in this process. */

static UnsootWindow *
open_window (UnsootSession *session)
{
  UnsootWindow *window = g_object_new (UNSOOT_TYPE_WINDOW, NULL);

  unsoot_window_set_session (window, session);
  gtk_window_present (GTK_WINDOW (window));
  return window;
}

static gboolean
is_settled (gpointer data)
{
  UnsootView *view = unsoot_window_get_view (data);

  return view != NULL && unsoot_view_is_settled (view);
}

static void
go (UnsootWindow *window, const char *slug, gint64 record)
{
  ck_assert (unsoot_window_open (window, slug, record));
  desk_shop_wait (is_settled, window, slug);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
}

static GtkWidget *
in (UnsootWindow *window, GType type)
{
  return desk_shop_widget (GTK_WIDGET (window), type);
}

static gint64
raw_count (const char *sql)
{
  g_autoptr (GError) error = NULL;
  UnsootDb *db = unsoot_db_open (desk_shop_path (), UNSOOT_DB_READ_ONLY, &error);
  gint64 n = 0;

  ck_no_error (error);
  unsoot_db_int (db, &n, &error, sql);
  ck_no_error (error);
  unsoot_db_close (db);
  return n;
}

START_TEST (today_shows_the_day)
{
  UnsootSession *session;
  UnsootWindow *window;
  UnsootTodayPage *today;

  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  window = open_window (session);
  desk_shop_wait (is_settled, window, "Today");
  today = UNSOOT_TODAY_PAGE (unsoot_window_get_view (window));
  /* The demo's Wednesday, by the town's clock of UTC−6. */
  ck_assert_uint_eq (
      desk_shop_count (GTK_WIDGET (window), UNSOOT_TYPE_STRIP_BLOCK),
      raw_count ("SELECT count (*) FROM bookings WHERE state <> 'dropped' AND starts_at >= "
                 "1772604000 AND starts_at < 1772690400"));
  ck_assert_uint_gt (unsoot_today_page_get_hands (today), 5);
  ck_assert_str_eq (gtk_window_get_title (GTK_WINDOW (window)), "Today – Unsoot");
  gtk_window_destroy (GTK_WINDOW (window));
  g_object_unref (session);
}
END_TEST

START_TEST (every_place_and_record_opens_and_back)
{
  static const char *const slugs[]
      = { "jobs",  "customers", "vehicles", "job",     "customer", "vehicle",
          "fluid", "lot",       "adapter",  "machine", "invoice",  "estimate" };
  UnsootSession *session;
  UnsootWindow *window;

  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  window = open_window (session);
  for (gsize i = 0; i < G_N_ELEMENTS (slugs); i++)
    {
      go (window, slugs[i], i < 3 ? 0 : 1);
      ck_assert_msg (desk_shop_label (GTK_WIDGET (window), "This could not be read") == NULL,
                     "%s could not be read", slugs[i]);
    }
  gtk_widget_activate_action (GTK_WIDGET (window), "win.back", NULL);
  desk_shop_wait (is_settled, window, "the record before");
  ck_assert_str_eq (unsoot_view_get_slug (unsoot_window_get_view (window)), "invoice");
  ck_assert (!unsoot_window_open (window, "nowhere", 0));
  gtk_window_destroy (GTK_WINDOW (window));
  g_object_unref (session);
}
END_TEST

START_TEST (a_record_that_is_gone_says_so)
{
  UnsootSession *session;
  UnsootWindow *window;

  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  window = open_window (session);
  go (window, "customer", 999999);
  ck_assert_ptr_nonnull (desk_shop_label (GTK_WIDGET (window), "This could not be read"));
  gtk_window_destroy (GTK_WINDOW (window));
  g_object_unref (session);
}
END_TEST

static gboolean
has_answer (gpointer box)
{
  return unsoot_find_box_has_answer (box);
}

START_TEST (the_find_box_finds_and_the_last_word_counts)
{
  UnsootSession *session;
  UnsootWindow *window;
  UnsootFindBox *box;

  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  window = open_window (session);
  desk_shop_wait (is_settled, window, "Today");
  box = UNSOOT_FIND_BOX (in (window, UNSOOT_TYPE_FIND_BOX));
  /* Each letter asks anew; only the answer to the last may be shown. */
  unsoot_find_box_type (box, "a");
  unsoot_find_box_type (box, "ha");
  unsoot_find_box_type (box, "harrow creek gr");
  desk_shop_wait (has_answer, box, "an answer");
  ck_assert_str_eq (unsoot_find_box_get_chosen (box), "Harrow Creek Gravel");
  unsoot_find_box_type (box, "qqqqzz");
  desk_shop_wait (has_answer, box, "no answer");
  ck_assert_uint_eq (unsoot_find_box_get_n_results (box), 0);
  ck_assert_ptr_null (unsoot_find_box_get_chosen (box));
  gtk_window_destroy (GTK_WINDOW (window));
  g_object_unref (session);
}
END_TEST

static gboolean
has_lines (gpointer page)
{
  return unsoot_records_page_get_n_lines (page) > 0;
}

typedef struct
{
  UnsootRecordsPage *page;
  guint wanted;
} Scrolling;

/* Scrolls to the end for as long as there is more to come. */
static gboolean
has_all_lines (gpointer data)
{
  const Scrolling *scrolling = data;
  GtkWidget *list = desk_shop_widget (GTK_WIDGET (scrolling->page), GTK_TYPE_COLUMN_VIEW);
  GtkAdjustment *scroll = gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (list));

  gtk_adjustment_set_value (scroll, gtk_adjustment_get_upper (scroll));
  return unsoot_records_page_get_n_lines (scrolling->page) == scrolling->wanted;
}

START_TEST (lists_read_on_and_filter)
{
  UnsootSession *session;
  UnsootWindow *window;
  UnsootRecordsPage *page;
  Scrolling scrolling;

  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  window = open_window (session);
  go (window, "jobs", 0);
  page = UNSOOT_RECORDS_PAGE (unsoot_window_get_view (window));
  scrolling = (Scrolling){ page, (guint) raw_count ("SELECT count (*) FROM jobs") };
  ck_assert_uint_lt (unsoot_records_page_get_n_lines (page), scrolling.wanted);
  desk_shop_wait (has_all_lines, &scrolling, "the whole list");
  unsoot_records_page_set_filter (page, "arrived");
  desk_shop_wait (has_lines, page, "the jobs that have arrived");
  ck_assert_uint_eq (unsoot_records_page_get_n_lines (page),
                     raw_count ("SELECT count (*) FROM jobs WHERE status = 'arrived'"));
  gtk_window_destroy (GTK_WINDOW (window));
  g_object_unref (session);
}
END_TEST

static gpointer
find_clerk (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  g_autoptr (GPtrArray) staff = unsoot_staff_list (db, error);

  for (guint i = 0; i < staff->len; i++)
    {
      const UnsootStaffRow *person = g_ptr_array_index (staff, i);
      if (g_str_equal (person->role, "clerk"))
        return unsoot_record_copy (&unsoot_staff_row_type, person);
    }
  return NULL;
}

/* Whether that place stands at the side. */
static gboolean
has_place (UnsootWindow *window, const char *title)
{
  GtkWidget *row = in (window, UNSOOT_TYPE_PLACE_ROW);

  return row != NULL && desk_shop_label (gtk_widget_get_parent (row), title) != NULL;
}

START_TEST (places_narrow_to_the_role)
{
  UnsootSession *session;
  UnsootWindow *window;
  g_autoptr (UnsootStaffRow) clerk = NULL;

  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  window = open_window (session);
  go (window, "customers", 0);
  ck_assert (has_place (window, "Customers"));
  clerk = unsoot_store_call (unsoot_session_get_store (session), find_clerk, NULL, NULL, NULL);
  unsoot_session_set_person (session, clerk);
  desk_shop_wait (is_settled, window, "Today");
  ck_assert (has_place (window, "Today"));
  ck_assert (!has_place (window, "Customers"));
  ck_assert_str_eq (unsoot_view_get_slug (unsoot_window_get_view (window)), "today");
  unsoot_session_set_person (session, NULL);
  ck_assert_ptr_null (unsoot_window_get_view (window));
  ck_assert_ptr_null (in (window, UNSOOT_TYPE_FRAME));
  gtk_window_destroy (GTK_WINDOW (window));
  g_object_unref (session);
}
END_TEST

/* Opens and closes each view, then the window: nothing of it may stay. */
START_TEST (everything_is_freed)
{
  static const char *const slugs[] = { "jobs", "job", "customer", "vehicle", "today" };
  UnsootSession *session;
  UnsootWindow *window;
  gpointer views[G_N_ELEMENTS (slugs)];
  gpointer gone;

  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  window = open_window (session);
  for (gsize i = 0; i < G_N_ELEMENTS (slugs); i++)
    {
      go (window, slugs[i], g_str_has_suffix (slugs[i], "s") || i == 4 ? 0 : 1);
      views[i] = unsoot_window_get_view (window);
      g_object_add_weak_pointer (views[i], &views[i]);
    }
  gone = window;
  g_object_add_weak_pointer (gone, &gone);
  gtk_window_destroy (GTK_WINDOW (window));
  desk_shop_settle ();
  for (gsize i = 0; i < G_N_ELEMENTS (slugs); i++)
    ck_assert_msg (views[i] == NULL, "%s was not freed", slugs[i]);
  ck_assert_msg (gone == NULL, "the window was not freed");
  gone = session;
  g_object_add_weak_pointer (gone, &gone);
  g_object_unref (session);
  desk_shop_settle ();
  ck_assert_msg (gone == NULL, "the session was not freed");
}
END_TEST

typedef struct
{
  UnsootPaperMade *made;
  GError *error;
  gboolean done;
} Made;

static void
made_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Made *made = data;

  made->made = unsoot_paper_task_finish (result, &made->error);
  made->done = TRUE;
}

static gboolean
is_made (gpointer data)
{
  return ((Made *) data)->done;
}

static gpointer
load_job (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  gint64 id = 0;

  unsoot_db_int (db, &id, error, "SELECT min (id) FROM jobs WHERE status = 'paid'");
  return unsoot_job_view_file_load (db, id, desk_shop_now (), error);
}

START_TEST (papers_are_made_off_the_main_loop)
{
  UnsootSession *session;
  g_autoptr (UnsootJobViewFile) file = NULL;
  g_autoptr (GError) error = NULL;
  guint n = 0;

  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  file = unsoot_store_call (unsoot_session_get_store (session), load_job, NULL, NULL, &error);
  ck_no_error (error);
  for (int paper = 0; paper < UNSOOT_PAPERS; paper++)
    {
      Made made = { 0 };

      if (!unsoot_paper_task_possible (file->file, (UnsootPaper) paper))
        continue;
      unsoot_paper_task_async (file, (UnsootPaper) paper, -1, NULL, made_cb, &made);
      desk_shop_wait (is_made, &made, "a paper");
      ck_no_error (made.error);
      ck_assert_mem_eq (g_bytes_get_data (made.made->pdf, NULL), "%PDF-", 5);
      unsoot_paper_made_free (made.made);
      n++;
    }
  /* Estimate, work order, invoice, customer report. */
  ck_assert_uint_eq (n, 4);
  g_object_unref (session);
}
END_TEST

static Suite *
desk_window_suite (void)
{
  Suite *suite = suite_create ("desk window");
  TCase *tcase = tcase_create ("demo shop");

  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_add_test (tcase, today_shows_the_day);
  tcase_add_test (tcase, every_place_and_record_opens_and_back);
  tcase_add_test (tcase, a_record_that_is_gone_says_so);
  tcase_add_test (tcase, the_find_box_finds_and_the_last_word_counts);
  tcase_add_test (tcase, lists_read_on_and_filter);
  tcase_add_test (tcase, places_narrow_to_the_role);
  tcase_add_test (tcase, everything_is_freed);
  tcase_add_test (tcase, papers_are_made_off_the_main_loop);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (desk_window_suite)
