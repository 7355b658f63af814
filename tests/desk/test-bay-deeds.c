/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-entry.h"
#include "bay-hand.h"
#include "bay-queue.h"
#include "runs.h"
#include "suite.h"

/* What the bay refuses of a value or a time, and that a stop is kept. */

/* NIST SP 811, appendix B.8: 1 psi = 6.894757 kPa. */
#define PSI 6894.757

enum
{
  MINUTE = 60
};

START_TEST (a_pressure_outside_the_window_is_refused)
{
  Bay bay = { 0 };
  int before;
  double least, most;

  bay_open (&bay);
  bay_go_to (&bay, UNSOOT_ACT_SET, UNSOOT_SUBJECT_PRESSURE);
  least = unsoot_bay_card_get_task (bay.card)->ask.least_pa;
  most = unsoot_bay_card_get_task (bay.card)->ask.most_pa;
  before = bay_events ();
  g_autofree char *above = g_strdup_printf ("%.2f", most / PSI + 0.2);
  g_autofree char *below = g_strdup_printf ("%.2f", least / PSI - 0.2);
  g_autofree char *within = g_strdup_printf ("%.2f", least / PSI + 0.1);
  GtkWidget *entry = desk_shop_widget (GTK_WIDGET (bay.card), UNSOOT_TYPE_BAY_ENTRY);
  gtk_editable_set_text (bay_figure (entry), above);
  bay_press (bay_part (&bay, "main"));
  bay_ck_refused (&bay, "outside this engine family's window");
  gtk_editable_set_text (bay_figure (entry), below);
  bay_press (bay_part (&bay, "main"));
  desk_shop_settle ();
  bay_ck_refused (&bay, "outside this engine family's window");
  /* What was typed stays, to be mended. */
  ck_assert_str_eq (gtk_editable_get_text (bay_figure (entry)), below);
  ck_assert_int_eq (bay_events (), before);
  gtk_editable_set_text (bay_figure (entry), within);
  bay_note_asked (&bay);
  bay_press (bay_part (&bay, "main"));
  bay_wait_next (&bay);
  ck_assert_double_eq_tol (bay_book ("SELECT value" BAY_LAST_EVENT),
                           g_ascii_strtod (within, NULL) * PSI, 1.0);
  bay_close (&bay);
}
END_TEST

START_TEST (an_ordinary_step_may_be_late)
{
  Bay bay = { 0 };
  int before;

  bay_open (&bay);
  while (!unsoot_bay_card_get_task (bay.card)->may_be_late)
    bay_step_on (&bay);
  unsoot_session_stop_clock (bay.session, desk_shop_now () + 30 * MINUTE);
  before = bay_events ();
  bay_enter_usual (&bay);
  bay_press (bay_part (&bay, "late"));
  gtk_editable_set_text (bay_figure (bay_part (&bay, "late_form")), "45");
  g_signal_emit_by_name (bay_figure (bay_part (&bay, "late_form")), "activate");
  bay_ck_refused (&bay, "It can't be stamped earlier than the step before it, which was done "
                        "30 minutes ago.");
  ck_assert_int_eq (bay_events (), before);
  gtk_editable_set_text (bay_figure (bay_part (&bay, "late_form")), "10");
  bay_note_asked (&bay);
  g_signal_emit_by_name (bay_figure (bay_part (&bay, "late_form")), "activate");
  bay_wait_next (&bay);
  ck_assert_int_eq ((int) bay_book ("SELECT at - done_at" BAY_LAST_EVENT), 10 * MINUTE);
  bay_close (&bay);
}
END_TEST

/* The pump: what depends on the moment is stamped at the moment. */
START_TEST (an_interlock_may_not)
{
  Bay bay = { 0 };
  GError *error = NULL;

  bay_open (&bay);
  bay_go_to (&bay, UNSOOT_ACT_START, UNSOOT_SUBJECT_PUMP);
  ck_assert (!gtk_widget_get_visible (bay_part (&bay, "late")));
  g_autoptr (UnsootRunEvent) event
      = unsoot_bay_task_event (unsoot_bay_card_get_task (bay.card), desk_shop_now () + 30 * MINUTE);
  event->done_at = event->at - 10 * MINUTE;
  unsoot_session_stop_clock (bay.session, event->at);
  /* As if it were asked for all the same. */
  g_signal_emit_by_name (bay.card, "event", event);
  bay_ck_refused (&bay, "depends on the moment and can't be stamped late");
  ck_no_error (error);
  bay_close (&bay);
}
END_TEST

static void
not_told (gpointer owner, UnsootBayDone what, const GError *error)
{
  ck_abort_msg ("a page that is gone was told");
}

static UnsootBayOrder *
order (Bay *bay, UnsootRunEvent *event)
{
  UnsootBayOrder *made = unsoot_bay_order_new (
      UNSOOT_ORDER_POST, unsoot_session_acting (bay->session), 0, bay->run_id);

  made->event = event;
  return made;
}

static gboolean
is_stopped (gpointer data)
{
  return bay_book ("SELECT count (*) FROM run_events WHERE run_id = " BAY_RUN " AND kind = 'halt'")
         > 0;
}

/* Pressed while a step is on its way, and the page is left at once: both are stored. */
START_TEST (stop_is_never_lost)
{
  Bay bay = { 0 };
  UnsootBayQueue queue = { .done = not_told };
  GObject *page = g_object_new (G_TYPE_OBJECT, NULL);
  UnsootRunEvent *stop = unsoot_run_event_new (UNSOOT_RUN_HALT, desk_shop_now ());
  UnsootStore *store;

  bay_open (&bay);
  bay_go_to (&bay, UNSOOT_ACT_DRAIN, UNSOOT_SUBJECT_TANK);
  store = unsoot_session_get_store (bay.session);
  stop->happening = UNSOOT_HAPPENING_STOP;
  queue.owner = page;
  unsoot_bay_queue_add (
      &queue, store,
      order (&bay, unsoot_bay_task_event (unsoot_bay_card_get_task (bay.card), desk_shop_now ())));
  unsoot_bay_queue_add (&queue, store, order (&bay, stop));
  ck_assert (unsoot_bay_queue_is_busy (&queue));
  unsoot_bay_queue_clear (&queue);
  g_object_unref (page);
  desk_shop_wait (is_stopped, &bay, "the stop");
  ck_assert_int_eq ((int) bay_book ("SELECT count (*) FROM run_events a, run_events b WHERE"
                                    " a.run_id = " BAY_RUN " AND b.run_id = a.run_id AND a.kind"
                                    " = 'confirm' AND b.kind = 'halt' AND b.seq = a.seq + 1"),
                    1);
  bay_close (&bay);
}
END_TEST

static Suite *
bay_deeds_suite (void)
{
  Suite *suite = suite_create ("bay deeds");
  TCase *tcase = tcase_create ("demo shop");

  tcase_set_timeout (tcase, 120);
  /* A book for each: a run that was begun stays begun. */
  tcase_add_checked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_add_test (tcase, a_pressure_outside_the_window_is_refused);
  tcase_add_test (tcase, an_ordinary_step_may_be_late);
  tcase_add_test (tcase, an_interlock_may_not);
  tcase_add_test (tcase, stop_is_never_lost);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (bay_deeds_suite)
