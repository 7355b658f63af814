/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-run.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "bay-steps.h"
#include "bay-words.h"
#include "machine-drawing.h"

struct _UnsootBayRun
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *phase;
  GtkProgressBar *progress;
  GtkLabel *job;
  GtkWidget *left;
  UnsootBaySteps *steps;
  UnsootBayCard *card;
  GtkWidget *right;
  UnsootMachineDrawing *machine;
  GtkLabel *off_title;
  GtkBox *off;
  GtkLabel *timer;
};

enum
{
  STOP,
  RELEASE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBayRun, unsoot_bay_run, GTK_TYPE_BOX)

static void
stop_cb (GtkButton *button, UnsootBayRun *self)
{
  g_signal_emit (self, signals[STOP], 0);
}

static void
release_cb (GtkButton *button, UnsootBayRun *self)
{
  g_signal_emit (self, signals[RELEASE], 0);
}

static void
unsoot_bay_run_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_bay_run_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BAY_RUN);
}

static void
unsoot_bay_run_class_init (UnsootBayRunClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_bay_run_dispose;
  signals[STOP]
      = g_signal_new ("stop", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[RELEASE]
      = g_signal_new ("release", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  g_type_ensure (UNSOOT_TYPE_BAY_CARD);
  g_type_ensure (UNSOOT_TYPE_BAY_STEPS);
  g_type_ensure (UNSOOT_TYPE_MACHINE_DRAWING);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/bay-run.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRun, phase);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRun, progress);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRun, job);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRun, left);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRun, steps);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRun, card);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRun, right);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRun, machine);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRun, off_title);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRun, off);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRun, timer);
  gtk_widget_class_bind_template_callback (widget_class, stop_cb);
  gtk_widget_class_bind_template_callback (widget_class, release_cb);
}

static void
unsoot_bay_run_init (UnsootBayRun *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
show_phase (UnsootBayRun *self, const UnsootRun *run)
{
  const UnsootProcedure *procedure = unsoot_run_procedure (run);
  guint steps = 0, done = 0;
  const int phase = unsoot_bay_phase (run, &steps, &done);
  g_autofree char *words = NULL;
  g_autofree char *spoken = NULL;

  if (phase < 0)
    return;
  /* Translators: which part of the procedure, of how many, and what it is called */
  words = g_strdup_printf (_ ("Part %d of %d · %s"), phase + 1, (int) procedure->phases->len,
                           unsoot_procedure_phase (procedure, phase)->title);
  spoken = g_strdup_printf (_ ("%d of %d steps of this part are done"), (int) done, (int) steps);
  gtk_label_set_text (self->phase, words);
  gtk_progress_bar_set_fraction (self->progress, steps > 0 ? (double) done / (double) steps : 1.0);
  unsoot_access_name (GTK_WIDGET (self->progress), spoken);
}

static void
show_off (UnsootBayRun *self, const UnsootRun *run)
{
  g_auto (GStrv) lines = unsoot_run_off_engine (run);
  g_autofree char *title = g_strdup_printf (_ ("Off the engine (%d)"), (int) g_strv_length (lines));
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->off))) != NULL)
    gtk_box_remove (self->off, child);
  gtk_label_set_text (self->off_title, title);
  for (char **line = lines; *line != NULL; line++)
    {
      GtkWidget *label = gtk_label_new (*line);
      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_widget_add_css_class (label, "off-line");
      gtk_box_append (self->off, label);
    }
}

/* Nothing else is looked at while cautions are read; the shelf of lots takes the list's room. */
static void
make_room (UnsootBayRun *self, const UnsootBayTask *task)
{
  const gboolean alone = task->kind == UNSOOT_TASK_CAUTIONS;

  gtk_widget_set_visible (self->left, !alone && task->ask.kind != UNSOOT_ASK_LOT);
  gtk_widget_set_visible (self->right, !alone);
}

void
unsoot_bay_run_tick (UnsootBayRun *self, const UnsootBayFile *file, gint64 now)
{
  const UnsootJobFile *job = file->view->file;
  g_autofree char *clock = unsoot_bay_clock (MAX (now - job->run->began_at, 0));
  g_autofree char *words = g_strdup_printf (_ ("Job %d · %s"), (int) job->job->number, clock);
  g_autofree char *left = NULL;
  gint64 remaining = 0;

  gtk_label_set_text (self->job, words);
  unsoot_bay_card_tick (self->card, file->run, now);
  if (unsoot_run_remaining (file->run, now, &remaining))
    {
      left = unsoot_bay_remaining (remaining);
      gtk_label_set_text (self->timer, left);
    }
  gtk_widget_set_visible (gtk_widget_get_parent (GTK_WIDGET (self->timer)), left != NULL);
}

void
unsoot_bay_run_show (UnsootBayRun *self, const UnsootBayFile *file, UnsootSession *session,
                     gboolean cut_off)
{
  UnsootBayTask *task = unsoot_bay_task_new (file->run, cut_off);

  g_return_if_fail (UNSOOT_IS_BAY_RUN (self));
  show_phase (self, file->run);
  show_off (self, file->run);
  unsoot_bay_steps_show (self->steps, file->run);
  unsoot_machine_drawing_show (self->machine, file->run);
  make_room (self, task);
  unsoot_bay_card_show (self->card, task, file, session);
  unsoot_bay_run_tick (self, file, unsoot_session_now (session));
}

UnsootBayCard *
unsoot_bay_run_get_card (UnsootBayRun *self)
{
  return self->card;
}
