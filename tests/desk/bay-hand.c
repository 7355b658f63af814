/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-hand.h"

#include <string.h>

#include "bay-entry.h"
#include "bay-stepper.h"
#include "prechecks.h"
#include "runs.h"
#include "suite.h"

enum
{
  MOST_STEPS = 60
};

double
bay_book (const char *sql)
{
  g_autofree char *as_text = g_strdup_printf ("SELECT CAST (round (1000 * (%s)) AS TEXT)", sql);
  g_autofree char *thousandths = desk_hand_text (as_text);

  return g_ascii_strtod (thousandths, NULL) / 1000.0;
}

int
bay_events (void)
{
  return (int) bay_book ("SELECT count (*) FROM run_events WHERE run_id = " BAY_RUN);
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

void
bay_sit (Bay *bay)
{
  desk_shop_start_toolkit ();
  bay->session = desk_shop_open ();
  desk_hand_take (bay->session, "technician");
}

void
bay_open (Bay *bay)
{
  UnsootActing who;
  g_autofree gint64 *run = NULL;
  GError *error = NULL;

  if (bay->session == NULL)
    bay_sit (bay);
  who = unsoot_session_acting (bay->session);
  run = unsoot_store_call (unsoot_session_get_store (bay->session), begin, &who, NULL, &error);
  ck_no_error (error);
  bay->run_id = *run;
  bay->window = desk_hand_window_sized (bay->session, bay->width, bay->height);
  ck_assert (unsoot_window_open (
      bay->window, "bay", (gint64) bay_book ("SELECT job_id FROM runs ORDER BY id DESC LIMIT 1")));
  desk_shop_wait (is_settled, bay->window, "the bay");
  bay->card = UNSOOT_BAY_CARD (desk_shop_widget (GTK_WIDGET (bay->window), UNSOOT_TYPE_BAY_CARD));
  bay_wait_next (bay);
}

void
bay_close (Bay *bay)
{
  g_free (bay->key);
  desk_hand_leave (bay->window, bay->session);
}

GtkWidget *
bay_part (Bay *bay, const char *id)
{
  return GTK_WIDGET (
      gtk_widget_get_template_child (GTK_WIDGET (bay->card), UNSOOT_TYPE_BAY_CARD, id));
}

void
bay_press (GtkWidget *button)
{
  ck_assert (gtk_widget_is_sensitive (button) && gtk_widget_get_visible (button));
  g_signal_emit_by_name (button, "clicked");
}

GtkEditable *
bay_figure (GtkWidget *root)
{
  GtkWidget *stepper = desk_shop_widget (root, UNSOOT_TYPE_BAY_STEPPER);

  ck_assert_ptr_nonnull (stepper);
  return GTK_EDITABLE (gtk_widget_get_template_child (stepper, UNSOOT_TYPE_BAY_STEPPER, "text"));
}

GtkWidget *
bay_button (GtkWidget *root, const char *label)
{
  GtkWidget *found = NULL;

  if (GTK_IS_BUTTON (root) && gtk_widget_get_mapped (root)
      && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (root)), label) == 0)
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = bay_button (child, label);
  return found;
}

gboolean
bay_asks (Bay *bay, UnsootAct act, UnsootSubject subject)
{
  const UnsootStep *what = unsoot_bay_card_get_task (bay->card)->what;

  return what != NULL && what->act == act && what->subject == subject;
}

void
bay_enter_usual (Bay *bay)
{
  const UnsootAskKind kind = unsoot_bay_card_get_task (bay->card)->ask.kind;
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

  return is_asked (bay) && gtk_widget_is_sensitive (bay_part (bay, "main"));
}

void
bay_note_asked (Bay *bay)
{
  g_free (bay->key);
  bay->key = g_strdup (unsoot_bay_card_get_task (bay->card)->key);
}

void
bay_wait_next (Bay *bay)
{
  desk_shop_wait (is_asked, bay, "the next step");
}

void
bay_step_on (Bay *bay)
{
  bay_note_asked (bay);
  bay_enter_usual (bay);
  bay_press (bay_part (bay, "main"));
  bay_wait_next (bay);
}

void
bay_go_to (Bay *bay, UnsootAct act, UnsootSubject subject)
{
  for (int i = 0; i < MOST_STEPS && !bay_asks (bay, act, subject); i++)
    {
      g_clear_pointer (&bay->key, g_free);
      desk_shop_wait (is_ready, bay, "the button");
      bay_step_on (bay);
    }
  ck_assert_msg (bay_asks (bay, act, subject), "the step did not come");
}

static gboolean
is_refused (gpointer data)
{
  return gtk_widget_get_visible (bay_part (data, "trouble"));
}

void
bay_ck_refused (Bay *bay, const char *words)
{
  desk_shop_wait (is_refused, bay, "the sentence");
  const char *said = gtk_label_get_text (GTK_LABEL (bay_part (bay, "trouble")));
  ck_assert_msg (strstr (said, words) != NULL, "“%s” does not say “%s”", said, words);
}
