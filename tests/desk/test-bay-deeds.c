/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "bay-card.h"
#include "bay-entry.h"
#include "bay-page.h"
#include "bay-queue.h"
#include "bay-stepper.h"
#include "desk-shop.h"
#include "prechecks.h"
#include "runs.h"
#include "staff.h"
#include "suite.h"
#include "window.h"

/* What the bay refuses on the screen, and what it keeps: the demo shop's waiting vehicle, carried
 * through its steps in this process. What was stored is read apart from the desk. */

/* NIST SP 811, appendix B.8: 1 psi = 6.894757 kPa. */
#define PSI 6894.757

enum
{
  MINUTE = 60,
  MOST_STEPS = 60
};

#define THE_RUN "(SELECT max (id) FROM runs)"
#define LAST_EVENT " FROM run_events WHERE run_id = " THE_RUN " ORDER BY seq DESC LIMIT 1"

typedef struct
{
  UnsootSession *session;
  UnsootWindow *window;
  UnsootBayCard *card;
  gint64 run_id;
  char *key; /* of what was asked before */
} Bay;

static double
ask_book (const char *sql)
{
  g_autoptr (GError) error = NULL;
  UnsootDb *db = unsoot_db_open (desk_shop_path (), UNSOOT_DB_READ_ONLY, &error);
  g_autofree char *as_text = g_strdup_printf ("SELECT CAST (round (1000 * (%s)) AS INTEGER)", sql);
  gint64 thousandths = 0;

  ck_no_error (error);
  unsoot_db_int (db, &thousandths, &error, as_text);
  ck_no_error (error);
  unsoot_db_close (db);
  return (double) thousandths / 1000.0;
}

static int
events (void)
{
  return (int) ask_book ("SELECT count (*) FROM run_events WHERE run_id = " THE_RUN);
}

static gpointer
begin (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootActing *who = data;
  gint64 job = 0, *run = g_new0 (gint64, 1);

  if (unsoot_db_int (db, &job, error, "SELECT min (id) FROM jobs WHERE status = 'arrived'")
      && unsoot_job_precheck_rest (db, who, job, error))
    *run = unsoot_job_run_begin (db, who, job, 0, error);
  return run;
}

static gpointer
find_technician (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_staff_find (db, "Ines Farrow", error);
}

static gboolean
is_settled (gpointer data)
{
  UnsootView *view = unsoot_window_get_view (data);

  return view != NULL && unsoot_view_is_settled (view);
}

static gboolean
is_asked (gpointer data)
{
  const Bay *bay = data;
  const UnsootBayTask *task = unsoot_bay_card_get_task (bay->card);

  return task != NULL && g_strcmp0 (task->key, bay->key) != 0;
}

static void
open_bay (Bay *bay)
{
  UnsootStore *store;
  g_autoptr (UnsootStaffRow) technician = NULL;
  g_autofree gint64 *run = NULL;
  GError *error = NULL;

  desk_shop_start_toolkit ();
  bay->session = desk_shop_open ();
  store = unsoot_session_get_store (bay->session);
  technician = unsoot_store_call (store, find_technician, NULL, NULL, &error);
  ck_no_error (error);
  unsoot_session_set_person (bay->session, technician);
  UnsootActing who = unsoot_session_acting (bay->session);
  run = unsoot_store_call (store, begin, &who, NULL, &error);
  ck_no_error (error);
  bay->run_id = *run;
  bay->window = g_object_new (UNSOOT_TYPE_WINDOW, NULL);
  unsoot_window_set_session (bay->window, bay->session);
  gtk_window_present (GTK_WINDOW (bay->window));
  ck_assert (unsoot_window_open (bay->window, "bay",
                                 (gint64) ask_book ("SELECT job_id FROM runs ORDER BY id DESC"
                                                    " LIMIT 1")));
  desk_shop_wait (is_settled, bay->window, "the bay");
  bay->card = UNSOOT_BAY_CARD (desk_shop_widget (GTK_WIDGET (bay->window), UNSOOT_TYPE_BAY_CARD));
  desk_shop_wait (is_asked, bay, "the first step");
}

static void
close_bay (Bay *bay)
{
  g_free (bay->key);
  gtk_window_destroy (GTK_WINDOW (bay->window));
  g_object_unref (bay->session);
}

static GtkWidget *
part (Bay *bay, const char *id)
{
  return GTK_WIDGET (
      gtk_widget_get_template_child (GTK_WIDGET (bay->card), UNSOOT_TYPE_BAY_CARD, id));
}

static void
press (GtkWidget *button)
{
  ck_assert (gtk_widget_is_sensitive (button) && gtk_widget_get_visible (button));
  g_signal_emit_by_name (button, "clicked");
}

static void
enter_usual (Bay *bay, UnsootAskKind kind)
{
  GtkWidget *entry = desk_shop_widget (GTK_WIDGET (bay->card), UNSOOT_TYPE_BAY_ENTRY);

  if (kind == UNSOOT_ASK_OIL)
    gtk_toggle_button_set_active (
        GTK_TOGGLE_BUTTON (desk_shop_widget (entry, GTK_TYPE_TOGGLE_BUTTON)), TRUE);
  else if (kind == UNSOOT_ASK_NOTE)
    gtk_editable_set_text (GTK_EDITABLE (desk_shop_widget (entry, GTK_TYPE_ENTRY)), "steady");
}

static gboolean
is_ready (gpointer data)
{
  Bay *bay = data;

  return is_asked (bay) && gtk_widget_is_sensitive (part (bay, "main"));
}

static void
note_key (Bay *bay)
{
  g_free (bay->key);
  bay->key = g_strdup (unsoot_bay_card_get_task (bay->card)->key);
}

static void
step_on (Bay *bay)
{
  note_key (bay);
  enter_usual (bay, unsoot_bay_card_get_task (bay->card)->ask.kind);
  press (part (bay, "main"));
  desk_shop_wait (is_asked, bay, "the next step");
}

static void
go_to (Bay *bay, UnsootAct act, UnsootSubject subject)
{
  for (int i = 0; i < MOST_STEPS; i++)
    {
      const UnsootBayTask *task = unsoot_bay_card_get_task (bay->card);
      if (task->what != NULL && task->what->act == act && task->what->subject == subject)
        return;
      g_clear_pointer (&bay->key, g_free);
      desk_shop_wait (is_ready, bay, "the button");
      step_on (bay);
    }
  ck_abort_msg ("the step did not come");
}

static gboolean
is_refused (gpointer data)
{
  return gtk_widget_get_visible (part (data, "trouble"));
}

static void
ck_refused_with (Bay *bay, const char *sentence)
{
  desk_shop_wait (is_refused, bay, "the sentence");
  ck_assert_msg (strstr (gtk_label_get_text (GTK_LABEL (part (bay, "trouble"))), sentence) != NULL,
                 "“%s” does not say “%s”", gtk_label_get_text (GTK_LABEL (part (bay, "trouble"))),
                 sentence);
}

static GtkEditable *
figure (GtkWidget *root)
{
  GtkWidget *stepper = desk_shop_widget (root, UNSOOT_TYPE_BAY_STEPPER);

  ck_assert_ptr_nonnull (stepper);
  return GTK_EDITABLE (gtk_widget_get_template_child (stepper, UNSOOT_TYPE_BAY_STEPPER, "text"));
}

START_TEST (a_pressure_outside_the_window_is_refused)
{
  Bay bay = { 0 };
  int before;
  double least, most;

  open_bay (&bay);
  go_to (&bay, UNSOOT_ACT_SET, UNSOOT_SUBJECT_PRESSURE);
  least = unsoot_bay_card_get_task (bay.card)->ask.least_pa;
  most = unsoot_bay_card_get_task (bay.card)->ask.most_pa;
  before = events ();
  g_autofree char *above = g_strdup_printf ("%.2f", most / PSI + 0.2);
  g_autofree char *below = g_strdup_printf ("%.2f", least / PSI - 0.2);
  g_autofree char *within = g_strdup_printf ("%.2f", least / PSI + 0.1);
  GtkWidget *entry = desk_shop_widget (GTK_WIDGET (bay.card), UNSOOT_TYPE_BAY_ENTRY);
  gtk_editable_set_text (figure (entry), above);
  press (part (&bay, "main"));
  ck_refused_with (&bay, "outside this engine family's window");
  gtk_editable_set_text (figure (entry), below);
  press (part (&bay, "main"));
  desk_shop_settle ();
  ck_refused_with (&bay, "outside this engine family's window");
  /* What was typed stays, to be mended. */
  ck_assert_str_eq (gtk_editable_get_text (figure (entry)), below);
  ck_assert_int_eq (events (), before);
  gtk_editable_set_text (figure (entry), within);
  note_key (&bay);
  press (part (&bay, "main"));
  desk_shop_wait (is_asked, &bay, "the next step");
  ck_assert_double_eq_tol (ask_book ("SELECT value" LAST_EVENT),
                           g_ascii_strtod (within, NULL) * PSI, 1.0);
  close_bay (&bay);
}
END_TEST

START_TEST (an_ordinary_step_may_be_late)
{
  Bay bay = { 0 };
  int before;

  open_bay (&bay);
  while (!unsoot_bay_card_get_task (bay.card)->may_be_late)
    step_on (&bay);
  unsoot_session_stop_clock (bay.session, desk_shop_now () + 30 * MINUTE);
  before = events ();
  enter_usual (&bay, unsoot_bay_card_get_task (bay.card)->ask.kind);
  press (part (&bay, "late"));
  gtk_editable_set_text (figure (part (&bay, "late_form")), "45");
  g_signal_emit_by_name (figure (part (&bay, "late_form")), "activate");
  ck_refused_with (&bay, "It can't be stamped earlier than the step before it, which was done "
                         "30 minutes ago.");
  ck_assert_int_eq (events (), before);
  gtk_editable_set_text (figure (part (&bay, "late_form")), "10");
  note_key (&bay);
  g_signal_emit_by_name (figure (part (&bay, "late_form")), "activate");
  desk_shop_wait (is_asked, &bay, "the next step");
  ck_assert_int_eq ((int) ask_book ("SELECT at - done_at" LAST_EVENT), 10 * MINUTE);
  close_bay (&bay);
}
END_TEST

/* The pump: what depends on the moment is stamped at the moment. */
START_TEST (an_interlock_may_not)
{
  Bay bay = { 0 };
  GError *error = NULL;

  open_bay (&bay);
  go_to (&bay, UNSOOT_ACT_START, UNSOOT_SUBJECT_PUMP);
  ck_assert (!gtk_widget_get_visible (part (&bay, "late")));
  g_autoptr (UnsootRunEvent) event
      = unsoot_bay_task_event (unsoot_bay_card_get_task (bay.card), desk_shop_now () + 30 * MINUTE);
  event->done_at = event->at - 10 * MINUTE;
  unsoot_session_stop_clock (bay.session, event->at);
  /* As if it were asked for all the same. */
  g_signal_emit_by_name (bay.card, "event", event);
  ck_refused_with (&bay, "depends on the moment and can't be stamped late");
  ck_no_error (error);
  close_bay (&bay);
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
  return ask_book ("SELECT count (*) FROM run_events WHERE run_id = " THE_RUN " AND kind = 'halt'")
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

  open_bay (&bay);
  go_to (&bay, UNSOOT_ACT_DRAIN, UNSOOT_SUBJECT_TANK);
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
  ck_assert_int_eq ((int) ask_book ("SELECT count (*) FROM run_events a, run_events b WHERE"
                                    " a.run_id = " THE_RUN " AND b.run_id = a.run_id AND a.kind"
                                    " = 'confirm' AND b.kind = 'halt' AND b.seq = a.seq + 1"),
                    1);
  close_bay (&bay);
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
