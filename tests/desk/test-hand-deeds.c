/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "deed-dialog.h"
#include "desk-hand.h"
#include "hand-row.h"
#include "suite.h"

/* One press on a line of Today leads to the thing: its record in front, and over it the deed. */

static UnsootSession *session;
static UnsootWindow *window;

static gpointer
post (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  unsoot_db_run (db, error, data);
  return NULL;
}

static void
arrange (const char *sql)
{
  g_autoptr (GError) error = NULL;

  unsoot_store_call (unsoot_session_get_store (session), post, (gpointer) sql, NULL, &error);
  ck_no_error (error);
}

/* The demo's day, arranged further by @sql (NULL: not), with a person of that role at the desk. */
static void
begin (const char *role, const char *sql)
{
  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  if (sql != NULL)
    arrange (sql);
  desk_hand_take (session, role);
  window = desk_hand_window (session);
}

static void
end (void)
{
  desk_hand_leave (window, session);
}

/* The button of the first line with that verb; NULL: there is none. */
static GtkWidget *
verb_button (const char *verb)
{
  GtkWidget *first = desk_shop_widget (GTK_WIDGET (window), UNSOOT_TYPE_HAND_ROW);

  for (GtkWidget *row = first; row != NULL; row = gtk_widget_get_next_sibling (row))
    {
      GtkWidget *words = desk_shop_label (row, verb);
      if (words != NULL)
        return gtk_widget_get_ancestor (words, GTK_TYPE_BUTTON);
    }
  return NULL;
}

static gboolean
has_verb (gpointer verb)
{
  return verb_button (verb) != NULL;
}

static gboolean
is_settled (gpointer data)
{
  return unsoot_view_is_settled (unsoot_window_get_view (window));
}

static GtkWidget *
press (const char *verb, const char *slug, const char *title)
{
  desk_shop_wait (has_verb, (gpointer) verb, verb);
  g_signal_emit_by_name (verb_button (verb), "clicked");
  desk_hand_wait_dialog (UNSOOT_TYPE_DEED_DIALOG);
  ck_assert_str_eq (gtk_window_get_title (GTK_WINDOW (desk_hand_dialog (UNSOOT_TYPE_DEED_DIALOG))),
                    title);
  ck_assert_str_eq (unsoot_view_get_slug (unsoot_window_get_view (window)), slug);
  return desk_hand_dialog (UNSOOT_TYPE_DEED_DIALOG);
}

static const char *
entry_text (GtkWidget *form, const char *label)
{
  GtkWidget *words = desk_shop_label (form, label);

  ck_assert_msg (words != NULL, "no field %s", label);
  return gtk_editable_get_text (
      GTK_EDITABLE (desk_shop_widget (gtk_widget_get_next_sibling (words), GTK_TYPE_ENTRY)));
}

START_TEST (a_fluid_is_ordered)
{
  GtkWidget *form;

  begin ("owner", NULL);
  form = press ("Order", "fluid", "Order a fluid");
  ck_assert_str_ne (entry_text (form, "How many packs"), "");
  ck_assert_str_ne (entry_text (form, "In each"), "");
  end ();
}
END_TEST

/* 2026-03-04 is the shop's day. */
START_TEST (a_gauge_is_checked)
{
  GtkWidget *form;

  begin ("owner", "INSERT INTO gauge_checks (machine_id, gauge, reads_pa, reference_pa, passed,"
                  " next_on, at, staff_id) SELECT machine_id, gauge, reads_pa, reference_pa, 1,"
                  " '2026-03-01', at, staff_id FROM gauge_checks ORDER BY id DESC LIMIT 1");
  form = press ("Check", "machine", "Check a gauge");
  ck_assert_str_ne (entry_text (form, "Gauge"), "");
  end ();
}
END_TEST

START_TEST (hoses_are_replaced)
{
  begin ("owner", "UPDATE machines SET hoses_due_on = '2026-03-03' WHERE id = 1");
  press ("Replace", "machine", "Hoses replaced");
  end ();
}
END_TEST

START_TEST (work_that_is_done_is_invoiced)
{
  begin ("owner", NULL);
  press ("Invoice", "job", "Invoice this job");
  end ();
}
END_TEST

#define LOT_WITH_FLUID                                                                             \
  " WHERE id = (SELECT lot_id FROM stock_moves GROUP BY lot_id HAVING sum (ml) > 0"                \
  " ORDER BY lot_id LIMIT 1)"

START_TEST (an_expired_lot_is_waste)
{
  begin ("owner", "UPDATE lots SET expires_on = '2026-03-01'" LOT_WITH_FLUID);
  press ("Record waste", "lot", "Spill or waste");
  end ();
}
END_TEST

/* Using it first posts nothing: the lot is shown. */
START_TEST (a_good_lot_is_only_shown)
{
  begin ("owner", "UPDATE lots SET expires_on = '2026-03-08'" LOT_WITH_FLUID);
  desk_shop_wait (has_verb, (gpointer) "Use first", "the lot");
  g_signal_emit_by_name (verb_button ("Use first"), "clicked");
  ck_assert_str_eq (unsoot_view_get_slug (unsoot_window_get_view (window)), "lot");
  desk_shop_wait (is_settled, NULL, "the lot's page");
  desk_shop_settle ();
  ck_assert_ptr_null (desk_hand_dialog (UNSOOT_TYPE_DEED_DIALOG));
  end ();
}
END_TEST

/* Who may not order sees the fluid. */
START_TEST (what_one_may_not_do_does_not_open)
{
  begin ("technician", NULL);
  desk_shop_wait (has_verb, (gpointer) "Order", "the order");
  g_signal_emit_by_name (verb_button ("Order"), "clicked");
  ck_assert_str_eq (unsoot_view_get_slug (unsoot_window_get_view (window)), "fluid");
  desk_shop_wait (is_settled, NULL, "the fluid's page");
  desk_shop_settle ();
  ck_assert_ptr_null (desk_hand_dialog (UNSOOT_TYPE_DEED_DIALOG));
  end ();
}
END_TEST

static Suite *
hand_deeds_suite (void)
{
  Suite *suite = suite_create ("hand-deeds");
  TCase *tcase = tcase_create ("one press");

  tcase_set_timeout (tcase, 120);
  tcase_add_checked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_add_test (tcase, a_fluid_is_ordered);
  tcase_add_test (tcase, a_gauge_is_checked);
  tcase_add_test (tcase, hoses_are_replaced);
  tcase_add_test (tcase, work_that_is_done_is_invoiced);
  tcase_add_test (tcase, an_expired_lot_is_waste);
  tcase_add_test (tcase, a_good_lot_is_only_shown);
  tcase_add_test (tcase, what_one_may_not_do_does_not_open);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (hand_deeds_suite)
