/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-save.h"

#include <glib/gi18n-lib.h>

static const char CHOOSER[] = "paper-chooser", SAVING[] = "paper-saving";

typedef struct
{
  GtkWindow *over; /* borrowed; owned while it is written */
  GBytes *pdf;
  GCancellable *cancellable;
  UnsootPaperSaved saved;
} Saving;

static void
saving_free (gpointer data)
{
  Saving *saving = data;

  g_bytes_unref (saving->pdf);
  g_object_unref (saving->cancellable);
  g_free (saving);
}

static void
written_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Saving *saving = user_data;
  g_autoptr (GError) error = NULL;
  g_autofree char *name = g_file_get_basename (G_FILE (source));
  g_autofree char *text = NULL;

  if (g_file_replace_contents_finish (G_FILE (source), result, NULL, &error))
    /* Translators: a file was saved */
    text = g_strdup_printf (_ ("Saved %s"), name);
  else
    text = g_strdup_printf (_ ("The paper could not be written: %s"), error->message);
  if (!g_cancellable_is_cancelled (saving->cancellable))
    saving->saved (saving->over, text);
  g_object_unref (saving->over);
  saving_free (saving);
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, GtkWindow *over)
{
  g_autoptr (GFile) target = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    target = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  if (target != NULL)
    {
      Saving *saving = g_object_steal_data (G_OBJECT (dialog), SAVING);
      g_object_ref (saving->over);
      g_file_replace_contents_bytes_async (target, saving->pdf, NULL, FALSE, G_FILE_CREATE_PRIVATE,
                                           saving->cancellable, written_cb, saving);
    }
  unsoot_paper_save_close (over);
}

static void
chooser_free (gpointer chooser)
{
  gtk_native_dialog_destroy (GTK_NATIVE_DIALOG (chooser));
  g_object_unref (chooser);
}

void
unsoot_paper_save (GtkWindow *over, GBytes *pdf, const char *name, GCancellable *cancellable,
                   UnsootPaperSaved saved)
{
  GtkFileChooserNative *chooser;
  Saving *saving;

  if (g_object_get_data (G_OBJECT (over), CHOOSER) != NULL)
    return;
  saving = g_new0 (Saving, 1);
  saving->over = over;
  saving->pdf = g_bytes_ref (pdf);
  saving->cancellable = g_object_ref (cancellable);
  saving->saved = saved;
  chooser = gtk_file_chooser_native_new (_ ("Save the paper"), over, GTK_FILE_CHOOSER_ACTION_SAVE,
                                         NULL, NULL);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  g_object_set_data_full (G_OBJECT (chooser), SAVING, saving, saving_free);
  g_signal_connect (chooser, "response", G_CALLBACK (chosen_cb), over);
  g_object_set_data_full (G_OBJECT (over), CHOOSER, chooser, chooser_free);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

void
unsoot_paper_save_close (GtkWindow *over)
{
  g_object_set_data (G_OBJECT (over), CHOOSER, NULL);
}
