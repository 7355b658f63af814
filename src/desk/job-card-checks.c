/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-cards.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "deed-call.h"
#include "deed-dialog.h"
#include "entry-form.h"
#include "path.h"
#include "prechecks.h"

/* The deeds behind the card. Which check it is comes with the answer; the job is the record. */
enum
{
  CHECK,
  ANSWER,
  REASON,
  OVERRIDE,
};

static gboolean
do_answer (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_job_precheck_answer (
      db, who, order->record, (UnsootPrecheck) order->values[CHECK].number,
      (UnsootPrecheckAnswer) order->values[ANSWER].number, order->values[OVERRIDE].number != 0,
      unsoot_deed_text (order, REASON), error);
}

static const UnsootDeedForm answer_form = {
  .slug = "check",
  .title = N_ ("Answer a check"),
  .verb = N_ ("Answer"),
  .done = N_ ("Answered"),
  .deed = UNSOOT_DEED_CHECK_VEHICLE,
  .carry_out = do_answer,
};

static gboolean
do_rest (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_job_precheck_rest (db, who, order->record, error);
}

static const UnsootDeedForm rest_form = {
  .slug = "check-rest",
  .title = N_ ("The rest is as it should be"),
  .verb = N_ ("The rest is as it should be"),
  .done = N_ ("Every check is answered"),
  .deed = UNSOOT_DEED_CHECK_VEHICLE,
  .carry_out = do_rest,
};

/* With a reason the check and the answer are chosen, not typed. */
static gboolean
do_reason (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  /* The record is the job; the check is packed into the version, which a posting has none of. */
  return unsoot_job_precheck_answer (db, who, order->record, (UnsootPrecheck) (order->version / 2),
                                     order->version % 2 != 0 ? UNSOOT_PRECHECK_NO
                                                             : UNSOOT_PRECHECK_NOT_APPLICABLE,
                                     order->version % 2 != 0, order->values[0].text, error);
}

static const UnsootDeedForm not_applicable_form = {
  .slug = "check-not-applicable",
  .title = N_ ("It does not apply"),
  .verb = N_ ("Not applicable"),
  .done = N_ ("Answered"),
  .deed = UNSOOT_DEED_CHECK_VEHICLE,
  .n_fields = 1,
  .fields = { { N_ ("Why"), UNSOOT_ASK_TEXT, FALSE, NULL, NULL } },
  .carry_out = do_reason,
};

static const UnsootDeedForm override_form = {
  .slug = "check-override",
  .title = N_ ("Let it run all the same"),
  .verb = N_ ("Override"),
  .done = N_ ("Overridden, with the reason kept"),
  .deed = UNSOOT_DEED_OVERRIDE_CHECK,
  .destroys = TRUE,
  .n_fields = 1,
  .fields = { { N_ ("Why it may run all the same"), UNSOOT_ASK_TEXT, FALSE,
                N_ ("The vehicle maker's information comes first"), NULL } },
  .carry_out = do_reason,
};

/* What a button answers. */
typedef struct
{
  UnsootSession *session;
  gint64 job_id;
  UnsootPrecheck check;
  UnsootPrecheckAnswer answer;
} Choice;

static void
choice_free (gpointer data, GClosure *closure)
{
  g_object_unref (((Choice *) data)->session);
  g_free (data);
}

static void
ask_reason (GtkWidget *over, const Choice *choice, const UnsootDeedForm *form, gboolean overrides)
{
  UnsootDeedDialog *dialog = unsoot_deed_dialog_new (over, choice->session, form, choice->job_id);

  unsoot_deed_dialog_say (dialog, unsoot_slug_words (unsoot_prechecks, (int) choice->check));
  unsoot_deed_dialog_set_part (dialog, unsoot_slug_of (unsoot_prechecks, (int) choice->check));
  unsoot_deed_dialog_set_version (dialog, (gint64) choice->check * 2 + (overrides ? 1 : 0));
  unsoot_deed_dialog_open (dialog);
}

static void
answer_cb (GtkToggleButton *button, const Choice *choice)
{
  UnsootDeedOrder *order;

  if (!gtk_toggle_button_get_active (button))
    return;
  if (choice->answer == UNSOOT_PRECHECK_NOT_APPLICABLE)
    {
      ask_reason (GTK_WIDGET (button), choice, &not_applicable_form, FALSE);
      return;
    }
  order = unsoot_deed_order_new (choice->job_id);
  order->values[CHECK].number = (gint64) choice->check;
  order->values[ANSWER].number = (gint64) choice->answer;
  unsoot_deed_call (GTK_WIDGET (button), choice->session, &answer_form, order, NULL, NULL);
}

static void
override_cb (GtkButton *button, const Choice *choice)
{
  ask_reason (GTK_WIDGET (button), choice, &override_form, TRUE);
}

static void
rest_cb (GtkButton *button, const Choice *choice)
{
  unsoot_deed_do (GTK_WIDGET (button), choice->session, &rest_form, choice->job_id);
}

static Choice *
choice_new (UnsootSession *session, gint64 job_id, UnsootPrecheck check,
            UnsootPrecheckAnswer answer)
{
  Choice *choice = g_new (Choice, 1);

  *choice = (Choice){ g_object_ref (session), job_id, check, answer };
  return choice;
}

static const UnsootPrecheckRow *
row_of (const UnsootJobViewFile *view, int check)
{
  for (guint i = 0; i < view->prechecks->len; i++)
    {
      const UnsootPrecheckRow *row = g_ptr_array_index (view->prechecks, i);
      if (g_strcmp0 (row->kind, unsoot_slug_of (unsoot_prechecks, check)) == 0)
        return row;
    }
  return NULL;
}

static int
answer_of (const UnsootPrecheckRow *row)
{
  int answer = -1;

  if (row != NULL)
    unsoot_slug_find (unsoot_precheck_answers, row->answer, &answer);
  return answer;
}

static GtkWidget *
buttons_new (const UnsootJobViewFile *view, UnsootSession *session, int check)
{
  const char *const words[] = { _ ("Yes"), _ ("No"), _ ("N/A") };
  const int given = answer_of (row_of (view, check));
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkToggleButton *group = NULL;

  gtk_widget_add_css_class (box, "linked");
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  for (int i = 0; i <= UNSOOT_PRECHECK_NOT_APPLICABLE; i++)
    {
      GtkWidget *button = gtk_toggle_button_new_with_label (words[i]);
      g_autofree char *name = g_strdup_printf ("%s %s", unsoot_slug_words (unsoot_prechecks, check),
                                               unsoot_slug_words (unsoot_precheck_answers, i));
      if (group == NULL)
        group = GTK_TOGGLE_BUTTON (button);
      else
        gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), group);
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), given == i);
      gtk_widget_set_sensitive (button,
                                i != UNSOOT_PRECHECK_NOT_APPLICABLE
                                    || unsoot_precheck_may_not_apply ((UnsootPrecheck) check));
      gtk_widget_add_css_class (button, "check-choice");
      unsoot_access_name (button, name);
      g_signal_connect_data (button, "toggled", G_CALLBACK (answer_cb),
                             choice_new (session, view->file->job->id, (UnsootPrecheck) check,
                                         (UnsootPrecheckAnswer) i),
                             choice_free, 0);
      gtk_box_append (GTK_BOX (box), button);
    }
  return box;
}

static GtkWidget *
line_new (const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css);
  return label;
}

/* Under a no: why it matters, and whether it may give way. */
static void
add_no (GtkWidget *texts, const UnsootJobViewFile *view, UnsootSession *session, int check,
        const UnsootPrecheckRow *row)
{
  const UnsootPrecheck which = (UnsootPrecheck) check;
  GtkWidget *button;

  if (row->overridden)
    {
      g_autofree char *words = g_strdup_printf (_ ("No, overridden: %s"), row->reason);
      gtk_box_append (GTK_BOX (texts), line_new (words, "warning"));
      return;
    }
  gtk_box_append (GTK_BOX (texts), line_new (unsoot_precheck_why (which), "warning"));
  if (!unsoot_precheck_may_override (which))
    return;
  button = gtk_button_new_with_label (_ ("Override…"));
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_widget_add_css_class (button, "flat");
  unsoot_access_name (button, _ ("Override…"));
  g_signal_connect_data (button, "clicked", G_CALLBACK (override_cb),
                         choice_new (session, view->file->job->id, which, UNSOOT_PRECHECK_NO),
                         choice_free, 0);
  gtk_box_append (GTK_BOX (texts), button);
}

static void
add_check (UnsootCard *card, const UnsootJobViewFile *view, UnsootSession *session, int check)
{
  const UnsootPrecheckRow *row = row_of (view, check);
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *question = line_new (unsoot_slug_words (unsoot_prechecks, check), "check-question");

  gtk_widget_set_tooltip_text (question, unsoot_precheck_why ((UnsootPrecheck) check));
  gtk_widget_set_hexpand (texts, TRUE);
  gtk_widget_set_valign (texts, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (texts), question);
  if (answer_of (row) == UNSOOT_PRECHECK_NO)
    add_no (texts, view, session, check, row);
  else if (answer_of (row) == UNSOOT_PRECHECK_NOT_APPLICABLE)
    gtk_box_append (GTK_BOX (texts), line_new (row->reason, "dim-label"));
  gtk_box_append (GTK_BOX (line), texts);
  gtk_box_append (GTK_BOX (line), buttons_new (view, session, check));
  gtk_box_append (GTK_BOX (card), line);
}

static void
add_rest (UnsootCard *card, const UnsootJobViewFile *view, UnsootSession *session)
{
  GtkWidget *button;

  if (view->prechecks->len == UNSOOT_PRECHECKS)
    return;
  button = gtk_button_new_with_label (_ ("The rest is as it should be"));
  gtk_widget_set_halign (button, GTK_ALIGN_END);
  unsoot_access_name (button, _ ("The rest is as it should be"));
  g_signal_connect_data (
      button, "clicked", G_CALLBACK (rest_cb),
      choice_new (session, view->file->job->id, UNSOOT_PRECHECK_OIL, UNSOOT_PRECHECK_YES),
      choice_free, 0);
  gtk_box_append (GTK_BOX (card), button);
}

/* Once the run has begun the answers are only read. */
static void
add_summary (UnsootCard *card, const UnsootJobViewFile *view)
{
  guint fine = 0;

  for (int check = 0; check < UNSOOT_PRECHECKS; check++)
    {
      const UnsootPrecheckRow *row = row_of (view, check);
      g_autofree char *text = NULL;

      if (answer_of (row) == UNSOOT_PRECHECK_YES)
        fine++;
      else if (row != NULL)
        text = g_strdup_printf ("%s %s: %s", unsoot_slug_words (unsoot_prechecks, check),
                                row->overridden
                                    ? _ ("No, overridden")
                                    : unsoot_slug_words (unsoot_precheck_answers, answer_of (row)),
                                row->reason != NULL ? row->reason : "");
      if (text != NULL)
        gtk_box_append (GTK_BOX (card), line_new (text, "check-question"));
    }
  g_autofree char *sum = g_strdup_printf (
      ngettext ("%d check was as it should be.", "%d checks were as they should be.", fine),
      (int) fine);
  gtk_box_append (GTK_BOX (card), line_new (sum, "dim-label"));
}

void
unsoot_job_card_checks (UnsootCard *card, const UnsootJobViewFile *view, UnsootSession *session)
{
  const gboolean here
      = g_strcmp0 (view->file->job->status, unsoot_job_status_slug (UNSOOT_JOB_ARRIVED)) == 0;

  gtk_widget_set_visible (GTK_WIDGET (card), here || view->prechecks->len > 0);
  if (!here)
    {
      add_summary (card, view);
      return;
    }
  unsoot_card_say (card, _ ("Yes means that it is as it should be. The vehicle maker's "
                            "information comes first; the run waits for every answer."));
  for (int check = 0; check < UNSOOT_PRECHECKS; check++)
    add_check (card, view, session, check);
  add_rest (card, view, session);
}
