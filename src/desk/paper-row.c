/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-row.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "paper-view.h"
#include "window.h"

struct _UnsootPaperRow
{
  AdwActionRow parent_instance;

  /* template */
  GtkButton *show;

  gint64 job_id;
  gint64 invoice_id;
  UnsootPaper paper;
};

G_DEFINE_FINAL_TYPE (UnsootPaperRow, unsoot_paper_row, ADW_TYPE_ACTION_ROW)

static void
show_cb (GtkButton *button, UnsootPaperRow *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (UNSOOT_IS_WINDOW (root))
    unsoot_paper_view_open (GTK_WIDGET (self), unsoot_window_get_session (UNSOOT_WINDOW (root)),
                            self->job_id, self->paper, self->invoice_id);
}

static void
unsoot_paper_row_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_paper_row_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_PAPER_ROW);
}

static void
unsoot_paper_row_class_init (UnsootPaperRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_paper_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/paper-row.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootPaperRow, show);
  gtk_widget_class_bind_template_callback (widget_class, show_cb);
}

static void
unsoot_paper_row_init (UnsootPaperRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* "Invoice 1031", "Credit note 1032", or the paper's name. */
static char *
row_title (UnsootPaper paper, const UnsootInvoiceRow *invoice)
{
  if (invoice == NULL)
    return g_strdup (unsoot_paper_title (paper));
  return g_strdup_printf (g_strcmp0 (invoice->kind, "credit") == 0 ? _ ("Credit note %d")
                                                                   : _ ("Invoice %d"),
                          (int) invoice->number);
}

GtkWidget *
unsoot_paper_row_new (UnsootJobViewFile *file, UnsootPaper paper, int invoice)
{
  UnsootPaperRow *self = g_object_new (UNSOOT_TYPE_PAPER_ROW, NULL);
  const UnsootInvoiceFile *which
      = invoice >= 0 ? g_ptr_array_index (file->file->invoices, (guint) invoice) : NULL;
  g_autofree char *title = row_title (paper, which != NULL ? which->invoice : NULL);
  g_autofree char *escaped = g_markup_escape_text (title, -1);
  /* Translators: a button that shows a paper; the paper's name */
  g_autofree char *show = g_strdup_printf (_ ("Show: %s"), title);

  self->job_id = file->file->job->id;
  self->invoice_id = which != NULL ? which->invoice->id : 0;
  self->paper = paper;
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), escaped);
  unsoot_access_name (GTK_WIDGET (self), title);
  unsoot_access_name (GTK_WIDGET (self->show), show);
  return GTK_WIDGET (self);
}
