/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-view.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "loose-paper.h"
#include "paper-pages.h"
#include "paper-print.h"
#include "paper-save.h"
#include "paper-task.h"
#include "store-call.h"

enum
{
  LEAST_HEIGHT = 480
};

/* Pixels to a point: sharp at the width the pages are shown in. */
static const double SCALE = 1.6;

struct _UnsootPaperView
{
  AdwWindow parent_instance;

  /* template */
  AdwWindowTitle *heading;
  GtkStack *stack;
  GtkBox *pages;
  AdwStatusPage *trouble;
  AdwToastOverlay *toasts;
  GtkScrolledWindow *scroller;

  /* owned */
  UnsootSession *session;
  UnsootJobViewFile *file;
  GBytes *pdf;
  char *file_name;
  GCancellable *cancellable;
  UnsootStoreSlot slot;

  gint64 job_id;
  gint64 invoice_id;
  UnsootPaper paper;
  guint n_pages;
  gboolean print_wanted;
};

G_DEFINE_FINAL_TYPE (UnsootPaperView, unsoot_paper_view, ADW_TYPE_WINDOW)

static void
say (UnsootPaperView *self, const char *text)
{
  g_autofree char *title = g_markup_escape_text (text, -1);

  adw_toast_overlay_add_toast (self->toasts, adw_toast_new (title));
}

static void
show_trouble (UnsootPaperView *self, const char *sentence)
{
  g_autofree char *escaped = g_markup_escape_text (sentence, -1);

  adw_status_page_set_description (self->trouble, escaped);
  gtk_stack_set_visible_child (self->stack, GTK_WIDGET (self->trouble));
}

static void
set_ready (UnsootPaperView *self, gboolean ready)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "paper.save", ready);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "paper.print", ready);
}

static GtkWidget *
picture_new (const UnsootPaperPage *page, guint number, guint of)
{
  GtkWidget *picture = gtk_picture_new_for_paintable (GDK_PAINTABLE (page->picture));
  g_autofree char *name = g_strdup_printf (_ ("Page %u of %u"), number, of);

  gtk_widget_add_css_class (picture, "sheet");
  unsoot_access_name (picture, name);
  unsoot_access_describe (picture, page->words != NULL ? page->words : "");
  return picture;
}

static void
drawn_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (UnsootPaperView) self = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) pages = unsoot_paper_pages_finish (result, &error);

  if (g_cancellable_is_cancelled (self->cancellable))
    return;
  if (pages == NULL)
    {
      show_trouble (self, error->message);
      return;
    }
  self->n_pages = pages->len;
  for (guint i = 0; i < pages->len; i++)
    gtk_box_append (self->pages, picture_new (g_ptr_array_index (pages, i), i + 1, pages->len));
  gtk_stack_set_visible_child_name (self->stack, "pages");
  gtk_widget_grab_focus (GTK_WIDGET (self->scroller));
  set_ready (self, TRUE);
  if (self->print_wanted)
    gtk_widget_activate_action (GTK_WIDGET (self), "paper.print", NULL);
}

/* The paper is there; its pages are drawn next. */
static void
take_pdf (UnsootPaperView *self, GBytes *pdf, const char *remark)
{
  if (remark != NULL)
    say (self, remark);
  self->pdf = g_bytes_ref (pdf);
  unsoot_paper_pages_async (self->pdf, SCALE * gtk_widget_get_scale_factor (GTK_WIDGET (self)),
                            self->cancellable, drawn_cb, g_object_ref (self));
}

static void
made_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (UnsootPaperView) self = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (UnsootPaperMade) made = unsoot_paper_task_finish (result, &error);

  if (g_cancellable_is_cancelled (self->cancellable))
    return;
  if (made == NULL)
    {
      show_trouble (self, error->message);
      return;
    }
  take_pdf (self, made->pdf, made->remark);
}

/* Which of the job's invoices; -1 for the latest. */
static int
invoice_index (UnsootPaperView *self)
{
  const GPtrArray *invoices = self->file->file->invoices;

  for (guint i = 0; i < invoices->len; i++)
    {
      const UnsootInvoiceFile *file = g_ptr_array_index (invoices, i);
      if (file->invoice->id == self->invoice_id)
        return (int) i;
    }
  return -1;
}

/* "Invoice 1031", "Credit note 1032", or the paper's name. */
static char *
title_of (UnsootPaperView *self, const UnsootInvoiceFile *invoice)
{
  if (invoice == NULL)
    return g_strdup (unsoot_paper_title (self->paper));
  return g_strdup_printf (g_strcmp0 (invoice->invoice->kind, "credit") == 0 ? _ ("Credit note %d")
                                                                            : _ ("Invoice %d"),
                          (int) invoice->invoice->number);
}

static void
set_heading (UnsootPaperView *self, const char *title, const char *subtitle)
{
  adw_window_title_set_title (self->heading, title);
  adw_window_title_set_subtitle (self->heading, subtitle);
  gtk_window_set_title (GTK_WINDOW (self), title);
}

static void
show_title (UnsootPaperView *self, const UnsootInvoiceFile *invoice)
{
  const UnsootJobFile *file = self->file->file;
  g_autofree char *title = title_of (self, invoice);
  /* Translators: a job's number, and whose it is */
  g_autofree char *subtitle
      = g_strdup_printf (_ ("Job %d · %s"), (int) file->job->number, file->customer->name);

  set_heading (self, title, subtitle);
}

static void
file_read (gpointer owner, gpointer result, const GError *error)
{
  UnsootPaperView *self = owner;
  const UnsootInvoiceFile *invoice = NULL;
  int index;

  if (error != NULL)
    {
      show_trouble (self, error->message);
      return;
    }
  self->file = result;
  index = invoice_index (self);
  if (self->paper == UNSOOT_PAPER_INVOICE && self->file->file->invoices->len > 0)
    invoice = g_ptr_array_index (self->file->file->invoices,
                                 index >= 0 ? (guint) index : self->file->file->invoices->len - 1);
  self->file_name = unsoot_paper_file_name (self->paper, self->file->file, invoice);
  show_title (self, invoice);
  unsoot_paper_task_async (self->file, self->paper, index, self->cancellable, made_cb,
                           g_object_ref (self));
}

typedef struct
{
  gint64 job_id;
  gint64 now;
} Wanted;

static gpointer
read_file (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Wanted *wanted = data;

  return unsoot_job_view_file_load (db, wanted->job_id, wanted->now, error);
}

static void
saved (gpointer owner, const char *sentence)
{
  say (owner, sentence);
}

static void
save_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootPaperView *self = UNSOOT_PAPER_VIEW (widget);

  unsoot_paper_save (GTK_WINDOW (self), self->pdf, self->file_name, self->cancellable, saved);
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootPaperView *self = UNSOOT_PAPER_VIEW (widget);
  g_autoptr (GError) error = NULL;

  self->print_wanted = FALSE;
  if (!unsoot_paper_print (GTK_WINDOW (self), self->pdf, self->file_name, &error))
    {
      g_autofree char *text
          = g_strdup_printf (_ ("The paper could not be printed: %s"), error->message);
      say (self, text);
    }
}

static void
unsoot_paper_view_dispose (GObject *object)
{
  UnsootPaperView *self = UNSOOT_PAPER_VIEW (object);

  g_cancellable_cancel (self->cancellable);
  unsoot_store_slot_clear (&self->slot);
  unsoot_paper_save_close (GTK_WINDOW (self));
  g_clear_object (&self->session);
  g_clear_pointer (&self->file, unsoot_job_view_file_unref);
  g_clear_pointer (&self->pdf, g_bytes_unref);
  g_clear_pointer (&self->file_name, g_free);
  G_OBJECT_CLASS (unsoot_paper_view_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_PAPER_VIEW);
}

static void
unsoot_paper_view_finalize (GObject *object)
{
  g_clear_object (&UNSOOT_PAPER_VIEW (object)->cancellable);
  G_OBJECT_CLASS (unsoot_paper_view_parent_class)->finalize (object);
}

static void
unsoot_paper_view_class_init (UnsootPaperViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GdkModifierType ctrl = GDK_CONTROL_MASK;

  G_OBJECT_CLASS (klass)->dispose = unsoot_paper_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = unsoot_paper_view_finalize;
  gtk_widget_class_install_action (widget_class, "paper.save", NULL, save_action);
  gtk_widget_class_install_action (widget_class, "paper.print", NULL, print_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, ctrl, "paper.save", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_p, ctrl, "paper.print", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/paper-view.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootPaperView, heading);
  gtk_widget_class_bind_template_child (widget_class, UnsootPaperView, stack);
  gtk_widget_class_bind_template_child (widget_class, UnsootPaperView, pages);
  gtk_widget_class_bind_template_child (widget_class, UnsootPaperView, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootPaperView, toasts);
  gtk_widget_class_bind_template_child (widget_class, UnsootPaperView, scroller);
}

static void
unsoot_paper_view_init (UnsootPaperView *self)
{
  self->cancellable = g_cancellable_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  unsoot_access_stack (self->stack);
  set_ready (self, FALSE);
}

static UnsootPaperView *
view_new (GtkWidget *over, UnsootSession *session)
{
  GtkWidget *window = GTK_WIDGET (gtk_widget_get_root (over));
  UnsootPaperView *self
      = g_object_new (UNSOOT_TYPE_PAPER_VIEW, "transient-for", window, "default-height",
                      MAX (gtk_widget_get_height (window) - 48, LEAST_HEIGHT), NULL);

  self->session = g_object_ref (session);
  return self;
}

UnsootPaperView *
unsoot_paper_view_open (GtkWidget *over, UnsootSession *session, gint64 job_id, UnsootPaper paper,
                        gint64 invoice_id)
{
  UnsootPaperView *self = view_new (over, session);
  Wanted *wanted = g_new0 (Wanted, 1);

  self->job_id = job_id;
  self->paper = paper;
  self->invoice_id = invoice_id;
  wanted->job_id = job_id;
  wanted->now = unsoot_session_now (session);
  adw_window_title_set_title (self->heading, unsoot_paper_title (paper));
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (session), read_file, wanted,
                          g_free, (GDestroyNotify) unsoot_job_view_file_unref, file_read, self);
  gtk_window_present (GTK_WINDOW (self));
  return self;
}

static void
loose_made (gpointer owner, gpointer result, const GError *error)
{
  UnsootPaperView *self = owner;
  g_autoptr (UnsootLoosePaper) made = result;

  if (error != NULL)
    {
      show_trouble (self, error->message);
      return;
    }
  self->file_name = g_steal_pointer (&made->file_name);
  set_heading (self, made->title, made->about);
  take_pdf (self, made->pdf, made->remark);
}

static UnsootPaperView *
open_loose (GtkWidget *over, UnsootSession *session, const char *title, UnsootStoreFunc make,
            gint64 id)
{
  UnsootPaperView *self = view_new (over, session);

  set_heading (self, title, "");
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (session), make,
                          unsoot_loose_paper_ask_new (id, unsoot_session_now (session)), g_free,
                          (GDestroyNotify) unsoot_loose_paper_free, loose_made, self);
  gtk_window_present (GTK_WINDOW (self));
  return self;
}

UnsootPaperView *
unsoot_paper_view_open_statement (GtkWidget *over, UnsootSession *session, gint64 customer_id)
{
  return open_loose (over, session, _ ("Statement of account"), unsoot_loose_paper_statement,
                     customer_id);
}

UnsootPaperView *
unsoot_paper_view_open_order (GtkWidget *over, UnsootSession *session, gint64 order_id)
{
  return open_loose (over, session, _ ("Purchase order"), unsoot_loose_paper_order, order_id);
}

void
unsoot_paper_view_print (UnsootPaperView *self)
{
  if (self->n_pages > 0)
    gtk_widget_activate_action (GTK_WIDGET (self), "paper.print", NULL);
  else
    self->print_wanted = TRUE;
}

guint
unsoot_paper_view_get_n_pages (UnsootPaperView *self)
{
  return self->n_pages;
}
