/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "calls.h"
#include "desk-hand.h"
#include "suite.h"

/* A call that was noted stands on the page of what it was about, with when, by whom and with
 * whom. */

static UnsootSession *session;
static UnsootWindow *window;

typedef struct
{
  const char *about;
  gint64 record;
} Note;

static gpointer
note (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Note *call = data;
  const UnsootActing who = { .staff_id = 1, .now = desk_shop_now () };

  unsoot_phone_call_note (db, &who, call->about, call->record, "Dana", "an earlier word", NULL,
                          error);
  if (*error == NULL)
    unsoot_phone_call_note (db, &who, call->about, call->record, NULL, "the newest word", NULL,
                            error);
  return NULL;
}

static gint64
number (const char *sql)
{
  g_autofree char *text = desk_hand_text (sql);

  return g_ascii_strtoll (text, NULL, 10);
}

static gboolean
is_settled (gpointer data)
{
  UnsootView *view = unsoot_window_get_view (window);

  return view != NULL && unsoot_view_is_settled (view);
}

/* The first label in sight with that in it. */
static GtkWidget *
find (GtkWidget *root, const char *words)
{
  if (GTK_IS_LABEL (root) && gtk_widget_get_mapped (root)
      && strstr (gtk_label_get_text (GTK_LABEL (root)), words) != NULL)
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, words);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static void
check_page (const char *slug, gint64 page, const char *about, gint64 record)
{
  g_autoptr (GError) error = NULL;
  Note call = { about, record };
  g_autofree char *who = desk_hand_text ("SELECT name FROM staff WHERE id = 1");
  g_autofree char *with = g_strdup_printf ("%s with Dana: an earlier word", who);
  g_autofree char *nobody = g_strdup_printf ("%s: nobody answered. the newest word", who);
  GtkWidget *newest, *earlier;

  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  unsoot_store_call (unsoot_session_get_store (session), note, &call, NULL, &error);
  ck_no_error (error);
  window = desk_hand_window (session);
  ck_assert (unsoot_window_open (window, slug, page));
  desk_shop_wait (is_settled, NULL, slug);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  newest = find (GTK_WIDGET (unsoot_window_get_view (window)), nobody);
  earlier = find (GTK_WIDGET (unsoot_window_get_view (window)), with);
  ck_assert_ptr_nonnull (newest);
  ck_assert_ptr_nonnull (earlier);
  /* The demo's clock stands at 16:40 UTC, and the town's at UTC−6. */
  ck_assert_ptr_nonnull (strstr (gtk_label_get_text (GTK_LABEL (newest)), "10:40"));
  ck_assert_ptr_eq (gtk_widget_get_next_sibling (newest), earlier);
  desk_hand_leave (window, session);
}

START_TEST (on_a_job)
{
  gint64 job = number ("SELECT CAST (min (id) AS TEXT) FROM jobs WHERE status = 'quoted'");

  check_page ("job", job, "job", job);
}
END_TEST

START_TEST (on_a_vehicle)
{
  check_page ("vehicle", 3, "vehicle", 3);
}
END_TEST

START_TEST (on_an_invoice)
{
  gint64 invoice = number ("SELECT CAST (min (id) AS TEXT) FROM invoices WHERE kind = 'invoice'");

  check_page ("invoice", invoice, "invoice", invoice);
}
END_TEST

START_TEST (on_an_adapter)
{
  gint64 loan = number ("SELECT CAST (max (id) AS TEXT) FROM loans");

  check_page ("adapter",
              number ("SELECT CAST (item_id AS TEXT) FROM loans ORDER BY id DESC LIMIT 1"), "loan",
              loan);
}
END_TEST

static Suite *
suite (void)
{
  Suite *all = suite_create ("calls");
  TCase *tcase = tcase_create ("noted");

  tcase_set_timeout (tcase, 120);
  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_add_test (tcase, on_a_job);
  tcase_add_test (tcase, on_a_vehicle);
  tcase_add_test (tcase, on_an_invoice);
  tcase_add_test (tcase, on_an_adapter);
  suite_add_tcase (all, tcase);
  return all;
}

UNSOOT_TEST_MAIN (suite)
