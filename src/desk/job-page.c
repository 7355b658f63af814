/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-page.h"

#include <glib/gi18n-lib.h>

#include "bay-words.h"
#include "call-deeds.h"
#include "card.h"
#include "columns.h"
#include "first-record.h"
#include "job-cards.h"
#include "job-next.h"
#include "job-path.h"
#include "job-view-file.h"
#include "paper-task.h"
#include "paper-view.h"
#include "rows.h"
#include "title-block.h"
#include "vehicles.h"

struct _UnsootJobPage
{
  UnsootView parent_instance;

  /* template */
  UnsootTitleBlock *head;
  UnsootJobPath *path;
  UnsootJobNext *next;
  UnsootCard *what;
  UnsootCard *when;
  UnsootCard *checks;
  UnsootCard *readings;
  UnsootCard *photos;
  UnsootCard *lines;
  UnsootCard *papers;
  UnsootCard *calls;
  UnsootCard *run;

  UnsootPaper at_hand;
  gint64 printable; /* the job whose paper that is; 0: there is none */
};

G_DEFINE_FINAL_TYPE (UnsootJobPage, unsoot_job_page, UNSOOT_TYPE_VIEW)

/* An estimate leads to its job; 0 on error. */
static gint64
job_of (UnsootDb *db, const UnsootViewQuery *query, GError **error)
{
  if (g_str_equal (query->slug, "estimate"))
    {
      g_autoptr (UnsootEstimateRow) estimate
          = unsoot_rows_get (db, &unsoot_estimate_row_type, query->record, error);
      return estimate != NULL ? estimate->job_id : 0;
    }
  return unsoot_first_record (db, query, "job", error);
}

static gpointer
read_job (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;
  const gint64 id = job_of (db, query, error);

  return id != 0 ? unsoot_job_view_file_load (db, id, query->now, error) : NULL;
}

/* The bay comes next, unless a word has to be had first. */
static void
show_way_in (UnsootJobPage *self, const UnsootJobViewFile *view)
{
  const UnsootJobRow *job = view->file->job;
  const char *verb = unsoot_bay_way_in (job->status);

  if (verb != NULL)
    {
      GtkWidget *button
          = unsoot_title_block_link (self->head, "unsoot-bay-symbolic", verb, "bay", job->id);
      if (!view->asks)
        gtk_widget_add_css_class (button, "suggested-action");
    }
}

static void
show_head (UnsootJobPage *self, const UnsootJobViewFile *view)
{
  const UnsootJobFile *file = view->file;
  g_autofree char *vehicle = unsoot_vehicle_title (file->vehicle);
  g_autofree char *title = g_strdup_printf (_ ("Job %d"), (int) file->job->number);

  unsoot_view_set_title (UNSOOT_VIEW (self), title);
  unsoot_title_block_show (self->head, title, vehicle);
  show_way_in (self, view);
  unsoot_title_block_link (self->head, "unsoot-vehicle-symbolic", _ ("Vehicle"), "vehicle",
                           file->vehicle->id);
  unsoot_title_block_link (self->head, "unsoot-customer-symbolic", file->customer->name, "customer",
                           file->customer->id);
}

/* The paper that a person has in mind at each stage: the last that the job has come to. */
static void
find_paper (UnsootJobPage *self, const UnsootJobFile *file)
{
  static const UnsootPaper last_first[]
      = { UNSOOT_PAPER_INCOMPLETE_TAG, UNSOOT_PAPER_INVOICE, UNSOOT_PAPER_CUSTOMER_REPORT,
          UNSOOT_PAPER_WORK_ORDER, UNSOOT_PAPER_ESTIMATE };

  self->printable = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (last_first) && self->printable == 0; i++)
    if (unsoot_paper_task_possible (file, last_first[i]))
      {
        self->at_hand = last_first[i];
        self->printable = file->job->id;
      }
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootJobPage *self = UNSOOT_JOB_PAGE (widget);

  if (self->printable != 0)
    unsoot_paper_view_print (unsoot_paper_view_open (
        widget, unsoot_view_get_session (UNSOOT_VIEW (self)), self->printable, self->at_hand, 0));
}

static void
show_job (UnsootView *view, gpointer result)
{
  UnsootJobPage *self = UNSOOT_JOB_PAGE (view);
  UnsootSession *session = unsoot_view_get_session (view);
  g_autoptr (UnsootJobViewFile) file = result;
  UnsootCard *const cards[] = { self->what,   self->when,  self->checks, self->readings,
                                self->photos, self->lines, self->papers };

  for (gsize i = 0; i < G_N_ELEMENTS (cards); i++)
    unsoot_card_clear (cards[i]);
  unsoot_card_clear (self->run);
  show_head (self, file);
  find_paper (self, file->file);
  unsoot_job_path_show (self->path, file->file->job->status, file->file->status,
                        unsoot_session_now (session), unsoot_session_zone (session));
  unsoot_job_next_show (self->next, file, session);
  unsoot_job_card_what (self->what, file, session);
  unsoot_job_card_when (self->when, file, session);
  unsoot_job_card_checks (self->checks, file, session);
  unsoot_job_card_readings (self->readings, file, session);
  unsoot_job_card_photos (self->photos, file, session);
  unsoot_job_card_lines (self->lines, file, session);
  unsoot_job_card_bill (self->lines, file, session);
  unsoot_job_card_run (self->run, file);
  unsoot_job_card_papers (self->papers, file);
  unsoot_phone_call_card (self->calls, file->calls, session);
}

static void
unsoot_job_page_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_job_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_JOB_PAGE);
}

static void
unsoot_job_page_class_init (UnsootJobPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_job_page_dispose;
  view_class->read = read_job;
  view_class->free_result = (GDestroyNotify) unsoot_job_view_file_unref;
  view_class->show = show_job;
  g_type_ensure (UNSOOT_TYPE_CARD);
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  g_type_ensure (UNSOOT_TYPE_JOB_NEXT);
  g_type_ensure (UNSOOT_TYPE_JOB_PATH);
  g_type_ensure (UNSOOT_TYPE_TITLE_BLOCK);
  gtk_widget_class_install_action (widget_class, "view.print", NULL, print_action);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/job-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootJobPage, head);
  gtk_widget_class_bind_template_child (widget_class, UnsootJobPage, path);
  gtk_widget_class_bind_template_child (widget_class, UnsootJobPage, next);
  gtk_widget_class_bind_template_child (widget_class, UnsootJobPage, what);
  gtk_widget_class_bind_template_child (widget_class, UnsootJobPage, when);
  gtk_widget_class_bind_template_child (widget_class, UnsootJobPage, checks);
  gtk_widget_class_bind_template_child (widget_class, UnsootJobPage, readings);
  gtk_widget_class_bind_template_child (widget_class, UnsootJobPage, photos);
  gtk_widget_class_bind_template_child (widget_class, UnsootJobPage, lines);
  gtk_widget_class_bind_template_child (widget_class, UnsootJobPage, papers);
  gtk_widget_class_bind_template_child (widget_class, UnsootJobPage, calls);
  gtk_widget_class_bind_template_child (widget_class, UnsootJobPage, run);
}

static void
unsoot_job_page_init (UnsootJobPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
