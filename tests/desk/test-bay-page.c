/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "bay-bell.h"
#include "bay-page.h"
#include "bay-run.h"
#include "desk-hand.h"
#include "suite.h"

/* The bay on the demo shop, in this process, at the smallest size that it has to fit into. Sizes
 * of what is touched are the shop's own rule for gloved hands: 48 px, and 64 for a deed. */

#define WIDTH 1024
#define HEIGHT 600

enum
{
  TOUCH = 48,
  DEED = 64
};

static gboolean
is_settled (gpointer data)
{
  UnsootView *view = unsoot_window_get_view (data);

  return view != NULL && unsoot_view_is_settled (view);
}

static UnsootWindow *
open_bay (UnsootSession *session, gint64 job)
{
  UnsootWindow *window = desk_hand_window_sized (session, WIDTH, HEIGHT);

  ck_assert (unsoot_window_open (window, "bay", job));
  desk_shop_wait (is_settled, window, "the bay");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return window;
}

static gboolean
has_class (GtkWidget *widget, const char *css_class)
{
  return gtk_widget_has_css_class (widget, css_class);
}

/* Everything under @root that is touched: its size, and that it stands within the window. */
static guint
check_targets (GtkWidget *root, GtkWidget *window)
{
  guint n = 0;

  if (!gtk_widget_get_mapped (root))
    return 0;
  if (GTK_IS_BUTTON (root))
    {
      const int least
          = has_class (root, "deed") || has_class (root, "stop") || has_class (root, "stride")
                ? DEED
                : TOUCH;
      graphene_rect_t place;

      /* With border and padding: the whole of it is touched. */
      ck_assert (gtk_widget_compute_bounds (root, window, &place));
      const int width = (int) place.size.width, height = (int) place.size.height;
      ck_assert_msg (width >= TOUCH && height >= least, "a button of %d by %d, not %d: “%s”", width,
                     height, least,
                     gtk_button_get_label (GTK_BUTTON (root)) != NULL
                         ? gtk_button_get_label (GTK_BUTTON (root))
                         : "a picture");
      ck_assert_float_le (place.origin.x + place.size.width, WIDTH);
      n++;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += check_targets (child, window);
  return n;
}

static gint64
job_with (const char *sql)
{
  g_autoptr (GError) error = NULL;
  UnsootDb *db = unsoot_db_open (desk_shop_path (), UNSOOT_DB_READ_ONLY, &error);
  gint64 id = 0;

  ck_no_error (error);
  unsoot_db_int (db, &id, &error, sql);
  ck_no_error (error);
  unsoot_db_close (db);
  return id;
}

START_TEST (what_is_touched_is_big_enough)
{
  static const char *const jobs[] = {
    "SELECT min (r.job_id) FROM runs r WHERE r.outcome IS NULL",
    "SELECT min (id) FROM jobs WHERE status = 'arrived'",
    "SELECT min (job_id) FROM runs WHERE outcome = 'finished'",
  };
  UnsootSession *session;

  desk_shop_start_toolkit ();
  desk_hand_load_style ();
  session = desk_shop_open ();
  for (gsize i = 0; i < G_N_ELEMENTS (jobs); i++)
    {
      UnsootWindow *window = open_bay (session, job_with (jobs[i]));
      GtkWidget *page = desk_shop_widget (GTK_WIDGET (window), UNSOOT_TYPE_BAY_PAGE);

      ck_assert_int_le (gtk_widget_get_width (GTK_WIDGET (window)), WIDTH);
      ck_assert_int_le (gtk_widget_get_height (GTK_WIDGET (window)), HEIGHT);
      ck_assert_uint_gt (check_targets (page, GTK_WIDGET (window)), 0);
      gtk_window_destroy (GTK_WINDOW (window));
    }
  g_object_unref (session);
}
END_TEST

START_TEST (stop_and_release_are_big_enough)
{
  static const char *const ways[] = { "stop", "release" };
  UnsootSession *session;

  desk_shop_start_toolkit ();
  desk_hand_load_style ();
  session = desk_shop_open ();
  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      UnsootWindow *window
          = open_bay (session, job_with ("SELECT min (job_id) FROM runs WHERE outcome IS NULL"));
      GtkWidget *page = desk_shop_widget (GTK_WIDGET (window), UNSOOT_TYPE_BAY_PAGE);

      g_signal_emit_by_name (desk_shop_widget (page, UNSOOT_TYPE_BAY_RUN), ways[i]);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
      ck_assert_uint_ge (check_targets (page, GTK_WIDGET (window)), 2);
      ck_assert_int_le (gtk_widget_get_height (GTK_WIDGET (window)), HEIGHT);
      gtk_window_destroy (GTK_WINDOW (window));
    }
  g_object_unref (session);
}
END_TEST

typedef struct
{
  gboolean over;
  UnsootHeard heard;
} Heard;

static void
heard_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Heard *heard = user_data;

  heard->heard = unsoot_bay_bell_ring_finish (result);
  heard->over = TRUE;
}

static gboolean
is_over (gpointer data)
{
  return ((Heard *) data)->over;
}

/* No sound server is here: the bell rings, and asking for it holds nobody up. */
START_TEST (without_a_sound_server_the_bell_rings)
{
  Heard heard = { FALSE, UNSOOT_HEARD_SOUND };

  desk_shop_start_toolkit ();
  unsoot_bay_bell_ring_async (NULL, heard_cb, &heard);
  ck_assert (!heard.over);
  desk_shop_wait (is_over, &heard, "the end of the alarm");
  ck_assert_int_eq (heard.heard, UNSOOT_HEARD_BELL);
  ck_assert_ptr_nonnull (strstr (unsoot_heard_words (heard.heard), "bell"));
}
END_TEST

static Suite *
bay_page_suite (void)
{
  Suite *suite = suite_create ("bay page");
  TCase *tcase = tcase_create ("demo shop");

  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_add_test (tcase, what_is_touched_is_big_enough);
  tcase_add_test (tcase, stop_and_release_are_big_enough);
  tcase_add_test (tcase, without_a_sound_server_the_bell_rings);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (bay_page_suite)
