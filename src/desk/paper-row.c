/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-row.h"

#include <glib/gi18n-lib.h>
#include <errno.h>

#include "access.h"
#include "paper-task.h"
#include "window.h"

enum
{
  PRIVATE_FOLDER = 0700
};

struct _UnsootPaperRow
{
  AdwActionRow parent_instance;

  /* template */
  GtkSpinner *spinner;
  GtkButton *open;
  GtkButton *save;

  /* owned */
  UnsootJobViewFile *file;
  GtkFileChooserNative *chooser;
  GCancellable *cancellable;
  GFile *target; /* where it is to be written */

  UnsootPaper paper;
  int invoice;
  gboolean then_open;
};

G_DEFINE_FINAL_TYPE (UnsootPaperRow, unsoot_paper_row, ADW_TYPE_ACTION_ROW)

static void
toast (UnsootPaperRow *self, const char *text)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (UNSOOT_IS_WINDOW (root))
    unsoot_window_toast (UNSOOT_WINDOW (root), text);
}

static void
set_busy (UnsootPaperRow *self, gboolean busy)
{
  gtk_spinner_set_spinning (self->spinner, busy);
  gtk_widget_set_visible (GTK_WIDGET (self->spinner), busy);
  gtk_widget_set_sensitive (GTK_WIDGET (self->open), !busy);
  gtk_widget_set_sensitive (GTK_WIDGET (self->save), !busy);
}

static char *
file_name (UnsootPaperRow *self)
{
  const UnsootJobFile *file = self->file->file;

  return unsoot_paper_file_name (
      self->paper, file,
      self->invoice >= 0 ? g_ptr_array_index (file->invoices, (guint) self->invoice) : NULL);
}

static void
opened_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (UnsootPaperRow) self = user_data;
  g_autoptr (GError) error = NULL;

  if (!g_app_info_launch_default_for_uri_finish (result, &error))
    toast (self, _ ("No program on this computer opens PDF files. Save the paper instead."));
}

static void
say_saved (UnsootPaperRow *self)
{
  g_autofree char *name = g_file_get_basename (self->target);
  /* Translators: a file was saved */
  g_autofree char *text = g_strdup_printf (_ ("Saved %s"), name);

  toast (self, text);
}

static void
written_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (UnsootPaperRow) self = user_data;
  g_autoptr (GError) error = NULL;

  if (g_cancellable_is_cancelled (self->cancellable))
    return;
  set_busy (self, FALSE);
  if (!g_file_replace_contents_finish (G_FILE (source), result, NULL, &error))
    {
      g_autofree char *text
          = g_strdup_printf (_ ("The paper could not be written: %s"), error->message);
      toast (self, text);
    }
  else if (self->then_open)
    {
      g_autofree char *uri = g_file_get_uri (self->target);
      g_app_info_launch_default_for_uri_async (uri, NULL, self->cancellable, opened_cb,
                                               g_object_ref (self));
    }
  else
    say_saved (self);
}

static void
made_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (UnsootPaperRow) self = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (UnsootPaperMade) made = unsoot_paper_task_finish (result, &error);

  if (g_cancellable_is_cancelled (self->cancellable))
    return;
  if (made == NULL)
    {
      set_busy (self, FALSE);
      toast (self, error->message);
      return;
    }
  if (made->remark != NULL)
    toast (self, made->remark);
  g_file_replace_contents_bytes_async (self->target, made->pdf, NULL, FALSE, G_FILE_CREATE_PRIVATE,
                                       self->cancellable, written_cb, g_object_ref (self));
}

/* Takes @target. */
static void
make (UnsootPaperRow *self, GFile *target, gboolean then_open)
{
  g_clear_object (&self->target);
  self->target = target;
  self->then_open = then_open;
  set_busy (self, TRUE);
  unsoot_paper_task_async (self->file, self->paper, self->invoice, self->cancellable, made_cb,
                           g_object_ref (self));
}

static void
open_cb (GtkButton *button, UnsootPaperRow *self)
{
  g_autofree char *folder = g_build_filename (g_get_user_cache_dir (), "unsoot", "papers", NULL);
  g_autofree char *name = file_name (self);

  if (g_mkdir_with_parents (folder, PRIVATE_FOLDER) != 0)
    {
      g_autofree char *text
          = g_strdup_printf (_ ("The folder %s can’t be made: %s"), folder, g_strerror (errno));
      toast (self, text);
      return;
    }
  make (self, g_file_new_build_filename (folder, name, NULL), TRUE);
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, UnsootPaperRow *self)
{
  if (response == GTK_RESPONSE_ACCEPT)
    make (self, gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog)), FALSE);
  g_clear_object (&self->chooser);
}

static void
save_cb (GtkButton *button, UnsootPaperRow *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  g_autofree char *name = file_name (self);

  if (self->chooser != NULL)
    return;
  self->chooser = gtk_file_chooser_native_new (_ ("Save the paper"), GTK_WINDOW (root),
                                               GTK_FILE_CHOOSER_ACTION_SAVE, NULL, NULL);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect (self->chooser, "response", G_CALLBACK (chosen_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
unsoot_paper_row_dispose (GObject *object)
{
  UnsootPaperRow *self = UNSOOT_PAPER_ROW (object);

  g_cancellable_cancel (self->cancellable);
  if (self->chooser != NULL)
    gtk_native_dialog_destroy (GTK_NATIVE_DIALOG (self->chooser));
  g_clear_object (&self->chooser);
  g_clear_object (&self->target);
  g_clear_pointer (&self->file, unsoot_job_view_file_unref);
  G_OBJECT_CLASS (unsoot_paper_row_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_PAPER_ROW);
}

static void
unsoot_paper_row_finalize (GObject *object)
{
  g_clear_object (&UNSOOT_PAPER_ROW (object)->cancellable);
  G_OBJECT_CLASS (unsoot_paper_row_parent_class)->finalize (object);
}

static void
unsoot_paper_row_class_init (UnsootPaperRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_paper_row_dispose;
  G_OBJECT_CLASS (klass)->finalize = unsoot_paper_row_finalize;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/paper-row.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootPaperRow, spinner);
  gtk_widget_class_bind_template_child (widget_class, UnsootPaperRow, open);
  gtk_widget_class_bind_template_child (widget_class, UnsootPaperRow, save);
  gtk_widget_class_bind_template_callback (widget_class, open_cb);
  gtk_widget_class_bind_template_callback (widget_class, save_cb);
}

static void
unsoot_paper_row_init (UnsootPaperRow *self)
{
  self->cancellable = g_cancellable_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* "Invoice 1031", "Credit note 1032", or the paper's name. */
static char *
row_title (UnsootJobViewFile *file, UnsootPaper paper, int invoice)
{
  const UnsootInvoiceFile *which;

  if (invoice < 0)
    return g_strdup (unsoot_paper_title (paper));
  which = g_ptr_array_index (file->file->invoices, (guint) invoice);
  return g_strdup_printf (g_strcmp0 (which->invoice->kind, "credit") == 0 ? _ ("Credit note %d")
                                                                          : _ ("Invoice %d"),
                          (int) which->invoice->number);
}

GtkWidget *
unsoot_paper_row_new (UnsootJobViewFile *file, UnsootPaper paper, int invoice)
{
  UnsootPaperRow *self = g_object_new (UNSOOT_TYPE_PAPER_ROW, NULL);
  g_autofree char *title = row_title (file, paper, invoice);
  g_autofree char *escaped = g_markup_escape_text (title, -1);
  g_autofree char *open = g_strdup_printf (_ ("Open: %s"), title);
  g_autofree char *save = g_strdup_printf (_ ("Save: %s"), title);

  self->file = unsoot_job_view_file_ref (file);
  self->paper = paper;
  self->invoice = invoice;
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), escaped);
  unsoot_access_name (GTK_WIDGET (self), title);
  unsoot_access_name (GTK_WIDGET (self->open), open);
  unsoot_access_name (GTK_WIDGET (self->save), save);
  return GTK_WIDGET (self);
}
