/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-over.h"

#include <glib/gi18n-lib.h>

#include "link-row.h"
#include "paper-row.h"
#include "path.h"

struct _UnsootBayOver
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *title;
  GtkLabel *words;
  GtkBox *papers;
  GtkLabel *trouble;
  GtkButton *job;
  GtkButton *take_up;
};

enum
{
  TAKE_UP,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBayOver, unsoot_bay_over, GTK_TYPE_BOX)

static void
take_up_cb (GtkButton *button, UnsootBayOver *self)
{
  unsoot_bay_over_say (self, NULL);
  g_signal_emit (self, signals[TAKE_UP], 0);
}

static void
unsoot_bay_over_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_bay_over_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BAY_OVER);
}

static void
unsoot_bay_over_class_init (UnsootBayOverClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_bay_over_dispose;
  signals[TAKE_UP] = g_signal_new ("take-up", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/bay-over.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBayOver, title);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayOver, words);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayOver, papers);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayOver, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayOver, job);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayOver, take_up);
  gtk_widget_class_bind_template_callback (widget_class, take_up_cb);
}

static void
unsoot_bay_over_init (UnsootBayOver *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
show_paper (UnsootBayOver *self, const UnsootBayFile *file, UnsootPaper paper)
{
  GtkWidget *list = unsoot_link_list_new (_ ("Papers"));
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->papers))) != NULL)
    gtk_box_remove (self->papers, child);
  gtk_list_box_append (GTK_LIST_BOX (list), unsoot_paper_row_new (file->view, paper, -1));
  gtk_box_append (self->papers, list);
}

static void
show_words (UnsootBayOver *self, const UnsootBayFile *file, gboolean released)
{
  const UnsootJobFile *job = file->view->file;
  UnsootJobStatus status = UNSOOT_JOB_QUOTED;
  g_autofree char *waits = NULL;

  unsoot_job_status_find (job->job->status, &status);
  waits = g_strdup_printf (_ ("The job is “%s”. It comes into the bay once it has arrived."),
                           unsoot_job_status_words (status));
  gtk_label_set_text (self->title, released            ? _ ("Released incomplete")
                                   : file->run != NULL ? _ ("Signed off")
                                                       : _ ("Nothing runs here"));
  gtk_label_set_text (self->words, released ? job->run->tag
                                   : file->run != NULL
                                       ? _ ("The engine is whole, the fluid is out of stock, the "
                                            "job is done.")
                                       : waits);
}

void
unsoot_bay_over_show (UnsootBayOver *self, const UnsootBayFile *file)
{
  const gboolean released
      = file->run != NULL && unsoot_run_state (file->run) == UNSOOT_RUN_STATE_RELEASED;

  g_return_if_fail (UNSOOT_IS_BAY_OVER (self));
  show_words (self, file, released);
  if (file->run != NULL)
    show_paper (self, file, released ? UNSOOT_PAPER_INCOMPLETE_TAG : UNSOOT_PAPER_CUSTOMER_REPORT);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self->job), "(sx)", "job",
                                    file->view->file->job->id);
  gtk_widget_set_visible (GTK_WIDGET (self->take_up), released);
}

void
unsoot_bay_over_say (UnsootBayOver *self, const char *sentence)
{
  gtk_label_set_text (self->trouble, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), sentence != NULL);
}
