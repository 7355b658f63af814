/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-card.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "bay-body.h"
#include "bay-stepper.h"
#include "bay-words.h"

#define SECONDS_A_MINUTE 60

struct _UnsootBayCard
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *kicker;
  GtkLabel *title;
  GtkLabel *why;
  GtkStack *middle;
  GtkWidget *plain;
  GtkWidget *late_form;
  GtkWidget *pass_form;
  UnsootBayBody *body;
  UnsootBayStepper *minutes;
  GtkEntry *reason;
  GtkLabel *trouble;
  GtkWidget *deeds;
  GtkButton *pass_over;
  GtkButton *late;
  GtkButton *not_so;
  GtkButton *main;

  UnsootFormDraft *draft; /* of what the task asks for; borrowed, NULL without a task */

  /* owned */
  UnsootBayTask *task;
  UnsootSession *session;

  gboolean told; /* what was typed is on its way to the book */
};

enum
{
  EVENT,
  GO_ON,
  SIGN,
  NOT_SO,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBayCard, unsoot_bay_card, GTK_TYPE_BOX)

void
unsoot_bay_card_say (UnsootBayCard *self, const char *sentence)
{
  gtk_label_set_text (self->trouble, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), sentence != NULL);
  if (sentence != NULL)
    self->told = FALSE;
}

static void
emit_event (UnsootBayCard *self, const UnsootRunEvent *event)
{
  unsoot_bay_card_say (self, NULL);
  self->told = TRUE;
  g_signal_emit (self, signals[EVENT], 0, event);
}

/* @minutes: how long ago it was done. */
static void
confirm (UnsootBayCard *self, gint64 minutes)
{
  const gint64 now = unsoot_session_now (self->session);
  g_autoptr (UnsootRunEvent) event = unsoot_bay_task_event (self->task, now);
  g_autoptr (GError) error = NULL;

  if (event == NULL)
    return;
  event->done_at = now - minutes * SECONDS_A_MINUTE;
  if (unsoot_bay_body_read (self->body, event, &error))
    emit_event (self, event);
  else
    unsoot_bay_card_say (self, error->message);
}

static void
show_form (UnsootBayCard *self, GtkWidget *form)
{
  const gboolean plain = form == self->plain;

  gtk_stack_set_visible_child (self->middle, form);
  gtk_widget_set_visible (self->deeds, plain);
  unsoot_bay_card_say (self, NULL);
}

static void
sign (UnsootBayCard *self)
{
  g_autofree char *who = g_strstrip (g_strdup (unsoot_bay_body_note (self->body)));

  if (*who == '\0')
    unsoot_bay_card_say (self, _ ("Enter who signs."));
  else
    {
      self->told = TRUE;
      g_signal_emit (self, signals[SIGN], 0, who);
    }
}

static void
main_cb (GtkButton *button, UnsootBayCard *self)
{
  if (self->task->kind == UNSOOT_TASK_HALTED)
    g_signal_emit (self, signals[GO_ON], 0);
  else if (self->task->kind == UNSOOT_TASK_SIGN)
    sign (self);
  else
    confirm (self, 0);
}

static void
body_activated_cb (UnsootBayBody *body, UnsootBayCard *self)
{
  if (self->task->kind != UNSOOT_TASK_SIGN && gtk_widget_is_sensitive (GTK_WIDGET (self->main)))
    confirm (self, 0);
}

/* Return confirms next. */
static void
body_answered_cb (UnsootBayBody *body, UnsootBayCard *self)
{
  unsoot_bay_card_say (self, NULL);
  gtk_widget_grab_focus (GTK_WIDGET (self->main));
}

static void
note_cb (UnsootBayBody *body, UnsootBayCard *self)
{
  g_autoptr (UnsootRunEvent) event
      = unsoot_run_event_new (UNSOOT_RUN_PROGRESS, unsoot_session_now (self->session));
  g_autoptr (GError) error = NULL;

  event->step = self->task->step;
  if (unsoot_bay_body_read (self->body, event, &error))
    emit_event (self, event);
  else
    unsoot_bay_card_say (self, error->message);
}

static void
refused_cb (UnsootBayBody *body, const char *sentence, UnsootBayCard *self)
{
  unsoot_bay_card_say (self, sentence);
}

static void
not_so_cb (GtkButton *button, UnsootBayCard *self)
{
  g_signal_emit (self, signals[NOT_SO], 0);
}

static void
late_cb (GtkButton *button, UnsootBayCard *self)
{
  show_form (self, self->late_form);
  unsoot_bay_stepper_focus (self->minutes);
}

static void
pass_over_cb (GtkButton *button, UnsootBayCard *self)
{
  show_form (self, self->pass_form);
  gtk_widget_grab_focus (GTK_WIDGET (self->reason));
}

static void
back_cb (GtkButton *button, UnsootBayCard *self)
{
  show_form (self, self->plain);
  unsoot_bay_card_focus (self);
}

static void
late_confirm_cb (gpointer source, UnsootBayCard *self)
{
  g_autoptr (GError) error = NULL;
  double minutes = 0;

  if (!unsoot_bay_stepper_read (self->minutes, &minutes, &error))
    unsoot_bay_card_say (self, error->message);
  else if (minutes < 0)
    unsoot_bay_card_say (self, _ ("Enter how many minutes ago it was done."));
  else
    confirm (self, (gint64) minutes);
}

static void
pass_confirm_cb (GtkButton *button, UnsootBayCard *self)
{
  g_autoptr (UnsootRunEvent) event
      = unsoot_run_event_new (UNSOOT_RUN_PASS_OVER, unsoot_session_now (self->session));

  event->step = self->task->step;
  event->text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->reason))));
  if (*event->text == '\0')
    unsoot_bay_card_say (self, _ ("Say why it does not apply, in a few words."));
  else
    emit_event (self, event);
}

static void
unsoot_bay_card_dispose (GObject *object)
{
  UnsootBayCard *self = UNSOOT_BAY_CARD (object);

  g_clear_pointer (&self->task, unsoot_bay_task_free);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (unsoot_bay_card_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BAY_CARD);
}

static void
bind_template (GtkWidgetClass *klass)
{
  gtk_widget_class_set_template_from_resource (klass, "/org/unsoot/Unsoot/ui/bay-card.ui");
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, kicker);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, title);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, why);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, middle);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, plain);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, late_form);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, pass_form);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, body);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, minutes);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, reason);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, trouble);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, deeds);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, pass_over);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, late);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, not_so);
  gtk_widget_class_bind_template_child (klass, UnsootBayCard, main);
  gtk_widget_class_bind_template_callback (klass, main_cb);
  gtk_widget_class_bind_template_callback (klass, body_activated_cb);
  gtk_widget_class_bind_template_callback (klass, body_answered_cb);
  gtk_widget_class_bind_template_callback (klass, note_cb);
  gtk_widget_class_bind_template_callback (klass, refused_cb);
  gtk_widget_class_bind_template_callback (klass, not_so_cb);
  gtk_widget_class_bind_template_callback (klass, late_cb);
  gtk_widget_class_bind_template_callback (klass, pass_over_cb);
  gtk_widget_class_bind_template_callback (klass, back_cb);
  gtk_widget_class_bind_template_callback (klass, late_confirm_cb);
  gtk_widget_class_bind_template_callback (klass, pass_confirm_cb);
}

static void
unsoot_bay_card_class_init (UnsootBayCardClass *klass)
{
  const GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_bay_card_dispose;
  g_type_ensure (UNSOOT_TYPE_BAY_BODY);
  g_type_ensure (UNSOOT_TYPE_BAY_STEPPER);
  bind_template (GTK_WIDGET_CLASS (klass));
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
  signals[EVENT] = g_signal_new ("event", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                 1, G_TYPE_POINTER);
  signals[GO_ON]
      = g_signal_new ("go-on", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGN] = g_signal_new ("sign", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                1, G_TYPE_STRING);
  signals[NOT_SO]
      = g_signal_new ("not-so", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
unsoot_bay_card_init (UnsootBayCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  unsoot_access_stack (self->middle);
  unsoot_bay_stepper_set_up (self->minutes, _ ("Minutes ago"), _ ("min ago"), 5, 5, 0, 240, 0);
}

static void
set_words (UnsootBayCard *self, const UnsootBayFile *file)
{
  g_autofree char *kicker = unsoot_bay_kicker (self->task, file->run);
  g_autofree char *title = unsoot_bay_title (self->task);
  g_autofree char *why = unsoot_bay_why (self->task);

  gtk_label_set_text (self->kicker, kicker);
  gtk_widget_set_visible (GTK_WIDGET (self->kicker), *kicker != '\0');
  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->why, why != NULL ? why : "");
  gtk_widget_set_visible (GTK_WIDGET (self->why), why != NULL && *why != '\0');
  unsoot_access_name (GTK_WIDGET (self), title);
}

static void
set_buttons (UnsootBayCard *self)
{
  const UnsootBayTask *task = self->task;
  g_autofree char *title = unsoot_bay_title (task);
  g_autofree char *name = g_strdup_printf ("%s: %s", unsoot_bay_verb (task), title);

  gtk_button_set_label (self->main, unsoot_bay_verb (task));
  gtk_widget_set_visible (GTK_WIDGET (self->main), task->kind != UNSOOT_TASK_OVER);
  gtk_widget_set_sensitive (GTK_WIDGET (self->main), task->may_do);
  gtk_widget_set_visible (GTK_WIDGET (self->late), task->may_be_late);
  gtk_widget_set_visible (GTK_WIDGET (self->pass_over), task->may_pass_over);
  gtk_widget_set_visible (GTK_WIDGET (self->not_so), task->kind == UNSOOT_TASK_AGAIN);
  unsoot_access_name (GTK_WIDGET (self->main), name);
}

/* What was typed for the task before is in the book, or is kept. */
static void
drop_draft (UnsootBayCard *self)
{
  if (self->draft == NULL)
    return;
  if (self->told)
    unsoot_form_draft_done (self->draft);
  else
    unsoot_form_draft_leave (self->draft);
  gtk_box_remove (GTK_BOX (self), GTK_WIDGET (self->draft));
  self->draft = NULL;
}

static void
begin_draft (UnsootBayCard *self, gint64 job_id)
{
  g_autofree char *place = g_strdup_printf ("bay %s", self->task->key);

  self->told = FALSE;
  self->draft = UNSOOT_FORM_DRAFT (unsoot_form_draft_new ());
  gtk_box_insert_child_after (GTK_BOX (self), GTK_WIDGET (self->draft), GTK_WIDGET (self->why));
  unsoot_bay_body_watch (self->body, self->draft);
  unsoot_form_draft_watch (self->draft, "reason", _ ("Why does it not apply here?"),
                           GTK_WIDGET (self->reason));
  unsoot_form_draft_begin (self->draft, self->session, place, job_id);
}

void
unsoot_bay_card_show (UnsootBayCard *self, UnsootBayTask *task, const UnsootBayFile *file,
                      UnsootSession *session)
{
  g_return_if_fail (UNSOOT_IS_BAY_CARD (self));

  const gboolean same = self->task != NULL && g_str_equal (self->task->key, task->key);
  g_clear_pointer (&self->task, unsoot_bay_task_free);
  self->task = task;
  g_set_object (&self->session, session);
  set_words (self, file);
  set_buttons (self);
  if (same)
    return;
  drop_draft (self);
  gtk_editable_set_text (GTK_EDITABLE (self->reason), "");
  show_form (self, self->plain);
  unsoot_bay_body_show (self->body, task, file, session);
  begin_draft (self, file->view->file->job->id);
  unsoot_bay_card_tick (self, file->run, unsoot_session_now (session));
  unsoot_bay_card_focus (self);
}

const UnsootBayTask *
unsoot_bay_card_get_task (UnsootBayCard *self)
{
  return self->task;
}

void
unsoot_bay_card_set_busy (UnsootBayCard *self, gboolean busy)
{
  gtk_widget_set_sensitive (GTK_WIDGET (self->main), !busy && self->task->may_do);
  gtk_widget_set_sensitive (self->late_form, !busy);
  gtk_widget_set_sensitive (self->pass_form, !busy);
}

void
unsoot_bay_card_tick (UnsootBayCard *self, const UnsootRun *run, gint64 now)
{
  unsoot_bay_body_tick (self->body, run, now);
}

gboolean
unsoot_bay_card_scan (UnsootBayCard *self, const char *code)
{
  UnsootBayLots *lots = unsoot_bay_body_lots (self->body);

  if (lots == NULL)
    return FALSE;
  unsoot_bay_lots_scan (lots, code);
  return TRUE;
}

void
unsoot_bay_card_forget (UnsootBayCard *self)
{
  drop_draft (self);
  if (self->task != NULL)
    *self->task->key = '\0';
}

void
unsoot_bay_card_focus (UnsootBayCard *self)
{
  if (gtk_widget_get_mapped (GTK_WIDGET (self)) && !unsoot_bay_body_focus (self->body))
    gtk_widget_grab_focus (GTK_WIDGET (self->main));
}
