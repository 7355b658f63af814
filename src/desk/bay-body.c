/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-body.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "bay-cautions.h"
#include "bay-entry.h"
#include "bay-line.h"
#include "bay-words.h"

enum
{
  SENTENCE_WIDTH = 30 /* characters */
};

struct _UnsootBayBody
{
  GtkBox parent_instance;

  /* borrowed children, NULL where not shown */
  UnsootBayEntry *entry;
  GtkLabel *clock;
  GtkLabel *clock_words;
};

enum
{
  ACTIVATE,
  ANSWERED,
  NOTE,
  REFUSED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBayBody, unsoot_bay_body, GTK_TYPE_BOX)

static void
activated_cb (UnsootBayEntry *entry, UnsootBayBody *self)
{
  g_signal_emit (self, signals[ACTIVATE], 0);
}

static void
answered_cb (UnsootBayEntry *entry, UnsootBayBody *self)
{
  g_signal_emit (self, signals[ANSWERED], 0);
}

static void
note_cb (GtkButton *button, UnsootBayBody *self)
{
  g_signal_emit (self, signals[NOTE], 0);
}

static void
refused_cb (UnsootBayEntry *entry, const char *sentence, UnsootBayBody *self)
{
  g_signal_emit (self, signals[REFUSED], 0, sentence);
}

static void
unsoot_bay_body_class_init (UnsootBayBodyClass *klass)
{
  const GType type = G_TYPE_FROM_CLASS (klass);

  signals[ACTIVATE]
      = g_signal_new ("activate", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[ANSWERED]
      = g_signal_new ("answered", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[NOTE]
      = g_signal_new ("note", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[REFUSED] = g_signal_new ("refused", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
unsoot_bay_body_init (UnsootBayBody *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
}

static void
clear (UnsootBayBody *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_box_remove (GTK_BOX (self), child);
  self->entry = NULL;
  self->clock = self->clock_words = NULL;
}

static void
add_entry (UnsootBayBody *self, GtkWidget *entry)
{
  self->entry = UNSOOT_BAY_ENTRY (entry);
  g_signal_connect (entry, "activate", G_CALLBACK (activated_cb), self);
  g_signal_connect (entry, "answered", G_CALLBACK (answered_cb), self);
  g_signal_connect (entry, "refused", G_CALLBACK (refused_cb), self);
  gtk_box_append (GTK_BOX (self), entry);
}

static void
ask (UnsootBayBody *self, const UnsootBayTask *task, const UnsootBayFile *file,
     UnsootSession *session)
{
  if (task->ask.kind != UNSOOT_ASK_NOTHING)
    add_entry (self, unsoot_bay_entry_new (task, file, session));
}

static void
add_signature (UnsootBayBody *self, UnsootSession *session)
{
  const UnsootStaffRow *person = unsoot_session_get_person (session);

  add_entry (self, unsoot_bay_entry_new_signature (person != NULL ? person->name : ""));
}

static GtkWidget *
note_button_new (UnsootBayBody *self)
{
  GtkWidget *note = gtk_button_new_with_label (_ ("Note so far"));

  gtk_widget_set_valign (note, GTK_ALIGN_CENTER);
  unsoot_access_name (note, _ ("Note what it has used so far"));
  g_signal_connect (note, "clicked", G_CALLBACK (note_cb), self);
  return note;
}

static void
add_clock (UnsootBayBody *self, const UnsootBayTask *task)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18);
  GtkWidget *clock = gtk_label_new (""), *words = unsoot_bay_line_new ("", "text-body");

  gtk_widget_add_css_class (clock, "bay-figure");
  gtk_widget_add_css_class (clock, "largest");
  gtk_box_append (GTK_BOX (row), clock);
  if (task->ask.kind == UNSOOT_ASK_USED)
    gtk_box_append (GTK_BOX (row), note_button_new (self));
  gtk_box_append (GTK_BOX (self), row);
  gtk_box_append (GTK_BOX (self), words);
  self->clock = GTK_LABEL (clock);
  self->clock_words = GTK_LABEL (words);
}

static void
add_sentences (UnsootBayBody *self, const UnsootBayTask *task)
{
  for (guint i = 0; i < task->sentences->len; i++)
    {
      GtkWidget *line = unsoot_bay_line_new (g_ptr_array_index (task->sentences, i), "trouble");
      gtk_box_append (GTK_BOX (self), unsoot_bay_line_narrow (line, SENTENCE_WIDTH));
    }
}

static void
add_halt (UnsootBayBody *self, const UnsootBayFile *file)
{
  g_autofree char *next = unsoot_run_next_safe_step (file->run);
  GtkWidget *what = unsoot_bay_line_new (unsoot_happening_label (file->happening), "heading");
  GtkWidget *line = unsoot_bay_line_new (next, "text-body");

  gtk_box_append (GTK_BOX (self), what);
  gtk_box_append (GTK_BOX (self), unsoot_bay_line_narrow (line, SENTENCE_WIDTH));
}

void
unsoot_bay_body_show (UnsootBayBody *self, const UnsootBayTask *task, const UnsootBayFile *file,
                      UnsootSession *session)
{
  g_return_if_fail (UNSOOT_IS_BAY_BODY (self));

  clear (self);
  switch (task->kind)
    {
    case UNSOOT_TASK_CAUTIONS:
      gtk_box_append (GTK_BOX (self), unsoot_bay_cautions_new (task->cautions));
      break;
    case UNSOOT_TASK_TIMER:
      add_clock (self, task);
      ask (self, task, file, session);
      break;
    case UNSOOT_TASK_ACT:
    case UNSOOT_TASK_STEP:
      /* Why not stands by itself: nothing is entered with what may not be done. */
      if (task->may_do)
        ask (self, task, file, session);
      break;
    case UNSOOT_TASK_HALTED:
      add_halt (self, file);
      break;
    case UNSOOT_TASK_SIGN:
      if (task->may_do)
        add_signature (self, session);
      break;
    case UNSOOT_TASK_START:
    case UNSOOT_TASK_AGAIN:
    case UNSOOT_TASK_ALREADY:
    case UNSOOT_TASK_OVER:
      break;
    }
  add_sentences (self, task);
}

void
unsoot_bay_body_tick (UnsootBayBody *self, const UnsootRun *run, gint64 now)
{
  gint64 remaining = 0;
  g_autofree char *clock = NULL;

  if (self->clock == NULL)
    return;
  if (!unsoot_run_remaining (run, now, &remaining))
    {
      gtk_label_set_text (self->clock, "–");
      gtk_label_set_text (self->clock_words, _ ("no time is set: it ends when it is clear"));
      return;
    }
  clock = unsoot_bay_clock (remaining);
  gtk_label_set_text (self->clock, clock);
  if (remaining <= 0)
    gtk_label_set_text (self->clock_words, _ ("over its time: end the step"));
  else
    gtk_label_set_text (self->clock_words, unsoot_run_timer_counts (run)
                                               ? _ ("left; the alarm is on")
                                               : _ ("left; it waits, nothing flows"));
}

gboolean
unsoot_bay_body_read (UnsootBayBody *self, UnsootRunEvent *event, GError **error)
{
  return self->entry == NULL || unsoot_bay_entry_read (self->entry, event, error);
}

UnsootBayLots *
unsoot_bay_body_lots (UnsootBayBody *self)
{
  return self->entry != NULL ? unsoot_bay_entry_lots (self->entry) : NULL;
}

const char *
unsoot_bay_body_note (UnsootBayBody *self)
{
  return self->entry != NULL ? unsoot_bay_entry_note (self->entry) : "";
}

void
unsoot_bay_body_watch (UnsootBayBody *self, UnsootFormDraft *draft)
{
  if (self->entry != NULL)
    unsoot_bay_entry_watch (self->entry, draft);
}

gboolean
unsoot_bay_body_focus (UnsootBayBody *self)
{
  return self->entry != NULL && self->clock == NULL && unsoot_bay_entry_focus (self->entry);
}
