/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "photo-intake.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "deed-dialog.h"
#include "photo-fields.h"
#include "photo-pair.h"
#include "photos.h"
#include "picture-import.h"
#include "settings.h"

static gboolean
add (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootPhotoRow) photo = unsoot_photo_row_new ();

  photo->job_id = order->record;
  photo->angle = g_strdup (unsoot_deed_text (order, UNSOOT_PHOTO_ANGLE));
  photo->stage = g_strdup (unsoot_photo_stages[order->values[UNSOOT_PHOTO_STAGE].number]);
  photo->width = order->picture.width;
  photo->height = order->picture.height;
  photo->jpeg = order->picture.jpeg != NULL ? g_bytes_ref (order->picture.jpeg) : NULL;
  if (!unsoot_photo_add (db, who, photo, error))
    return FALSE;
  order->undo_id = photo->id;
  return TRUE;
}

static gboolean
take_back (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_photo_remove (db, who, order->undo_id, error);
}

static const UnsootDeedForm add_form = {
  .slug = "photo",
  .title = N_ ("A picture"),
  .verb = N_ ("Add"),
  .done = N_ ("The picture is added"),
  .deed = UNSOOT_DEED_RECORD_READING,
  .n_fields = UNSOOT_PHOTO_FIELDS,
  .fields = { UNSOOT_PHOTO_ANGLE_FIELD, UNSOOT_PHOTO_STAGE_FIELD },
  .carry_out = add,
  .undo = take_back,
};

/* Pictures that are asked about one by one. */
typedef struct
{
  GtkWidget *over; /* what stays while pages are made anew */
  UnsootSession *session;
  UnsootJobViewFile *file;
  GListModel *files; /* NULL: only what was pasted */
  guint next;
  GHashTable *proposed; /* angles, borrowed from the file */
} Intake;

static void
intake_free (Intake *intake)
{
  g_object_unref (intake->over);
  g_object_unref (intake->session);
  unsoot_job_view_file_unref (intake->file);
  g_clear_object (&intake->files);
  g_hash_table_unref (intake->proposed);
  g_free (intake);
}

static Intake *
intake_new (GtkWidget *over, UnsootSession *session, UnsootJobViewFile *file, GListModel *files)
{
  Intake *intake = g_new0 (Intake, 1);

  intake->over = g_object_ref (gtk_widget_get_ancestor (over, ADW_TYPE_TOAST_OVERLAY));
  intake->session = g_object_ref (session);
  intake->file = unsoot_job_view_file_ref (file);
  intake->files = files != NULL ? g_object_ref (files) : NULL;
  intake->proposed = g_hash_table_new (g_str_hash, g_str_equal);
  return intake;
}

/* After the work: what was taken before and has no other half yet. */
static const char *
proposal (Intake *intake)
{
  g_autoptr (GArray) pairs = unsoot_photo_pairs (intake->file->file->photos);

  for (guint i = 0; i < pairs->len; i++)
    {
      const UnsootPhotoPair *pair = &g_array_index (pairs, UnsootPhotoPair, i);
      if (pair->before != NULL && pair->after == NULL
          && g_hash_table_add (intake->proposed, (gpointer) pair->angle))
        return pair->angle;
    }
  return NULL;
}

static void read_next (Intake *intake);

static void
ask (Intake *intake, const UnsootImport *import)
{
  const gboolean after = intake->file->file->run != NULL;
  UnsootDeedDialog *dialog = unsoot_deed_dialog_new (intake->over, intake->session, &add_form,
                                                     intake->file->file->job->id);

  if (import->name != NULL)
    {
      unsoot_deed_dialog_say (dialog, import->name);
      unsoot_deed_dialog_set_part (dialog, import->name);
    }
  unsoot_deed_dialog_attach (dialog, &import->picture);
  unsoot_deed_dialog_set_choice (dialog, UNSOOT_PHOTO_STAGE, after ? 1 : 0);
  if (after)
    unsoot_deed_dialog_set_text (dialog, UNSOOT_PHOTO_ANGLE, proposal (intake));
  g_signal_connect_swapped (dialog, "destroy", G_CALLBACK (read_next), intake);
  unsoot_deed_dialog_open (dialog);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Intake *intake = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (UnsootImport) import = unsoot_import_finish (result, &error);

  if (import != NULL)
    {
      ask (intake, import);
      return;
    }
  adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (intake->over), adw_toast_new (error->message));
  read_next (intake);
}

static void
read_next (Intake *intake)
{
  g_autoptr (GFile) file
      = intake->files != NULL ? g_list_model_get_item (intake->files, intake->next++) : NULL;

  if (file == NULL || gtk_widget_get_root (intake->over) == NULL)
    intake_free (intake);
  else
    unsoot_import_file (file, NULL, read_cb, intake);
}

void
unsoot_photos_add_files (GtkWidget *over, UnsootSession *session, UnsootJobViewFile *file,
                         GListModel *files)
{
  read_next (intake_new (over, session, file, files));
}

static void
say_no_picture (Intake *intake)
{
  adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (intake->over),
                               adw_toast_new (_ ("Nothing that was copied is a picture.")));
  intake_free (intake);
}

static void
pasted_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Intake *intake = user_data;
  g_autoptr (GdkTexture) texture
      = gdk_clipboard_read_texture_finish (GDK_CLIPBOARD (source), result, NULL);

  if (texture != NULL)
    unsoot_import_texture (texture, NULL, read_cb, intake);
  else
    say_no_picture (intake);
}

/* Asked for what is not there, the toolkit's clipboard loses its task. */
static gboolean
holds_picture (GdkClipboard *clipboard)
{
  g_autoptr (GdkContentFormats) formats = gdk_content_formats_union_deserialize_gtypes (
      gdk_content_formats_ref (gdk_clipboard_get_formats (clipboard)));

  return gdk_content_formats_contain_gtype (formats, GDK_TYPE_TEXTURE);
}

static void
read_picture (GdkClipboard *clipboard, Intake *intake)
{
  if (holds_picture (clipboard))
    gdk_clipboard_read_texture_async (clipboard, NULL, pasted_cb, intake);
  else
    say_no_picture (intake);
}

static void
pasted_files_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Intake *intake = user_data;
  const GValue *value = gdk_clipboard_read_value_finish (GDK_CLIPBOARD (source), result, NULL);

  if (value == NULL)
    {
      read_picture (GDK_CLIPBOARD (source), intake);
      return;
    }
  intake->files = unsoot_photos_of_list (value);
  read_next (intake);
}

void
unsoot_photos_paste (GtkWidget *over, UnsootSession *session, UnsootJobViewFile *file)
{
  GdkClipboard *clipboard = gtk_widget_get_clipboard (over);
  Intake *intake = intake_new (over, session, file, NULL);

  if (gdk_content_formats_contain_gtype (gdk_clipboard_get_formats (clipboard), GDK_TYPE_FILE_LIST))
    gdk_clipboard_read_value_async (clipboard, GDK_TYPE_FILE_LIST, G_PRIORITY_DEFAULT, NULL,
                                    pasted_files_cb, intake);
  else
    read_picture (clipboard, intake);
}

GListModel *
unsoot_photos_of_list (const GValue *files)
{
  GListStore *store = g_list_store_new (G_TYPE_FILE);

  for (const GSList *at = g_value_get_boxed (files); at != NULL; at = at->next)
    g_list_store_append (store, at->data);
  return G_LIST_MODEL (store);
}

/* A chooser, and what it is for. */
typedef struct
{
  GtkFileChooserNative *chooser;
  Intake *intake;
} Choosing;

static void
keep_folder (GtkFileChooser *chooser)
{
  g_autoptr (GSettings) settings = unsoot_settings_new ();
  g_autoptr (GFile) folder = gtk_file_chooser_get_current_folder (chooser);
  g_autofree char *uri = folder != NULL ? g_file_get_uri (folder) : NULL;

  if (settings != NULL && uri != NULL)
    g_settings_set_string (settings, "picture-folder", uri);
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, Choosing *choosing)
{
  Intake *intake = choosing->intake;

  if (response == GTK_RESPONSE_ACCEPT)
    {
      keep_folder (GTK_FILE_CHOOSER (dialog));
      intake->files = gtk_file_chooser_get_files (GTK_FILE_CHOOSER (dialog));
    }
  gtk_native_dialog_destroy (dialog);
  g_object_unref (dialog);
  g_free (choosing);
  read_next (intake);
}

static GtkFileChooserNative *
chooser_new (GtkWindow *window)
{
  g_autoptr (GSettings) settings = unsoot_settings_new ();
  g_autoptr (GtkFileFilter) pictures = gtk_file_filter_new ();
  g_autofree char *uri
      = settings != NULL ? g_settings_get_string (settings, "picture-folder") : NULL;
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (
      _ ("Pictures of the job"), window, GTK_FILE_CHOOSER_ACTION_OPEN, _ ("Add"), NULL);

  gtk_file_filter_set_name (pictures, _ ("Pictures"));
  gtk_file_filter_add_pixbuf_formats (pictures);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), pictures);
  gtk_file_chooser_set_select_multiple (GTK_FILE_CHOOSER (chooser), TRUE);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  if (uri != NULL && *uri != '\0')
    {
      g_autoptr (GFile) folder = g_file_new_for_uri (uri);
      gtk_file_chooser_set_current_folder (GTK_FILE_CHOOSER (chooser), folder, NULL);
    }
  return chooser;
}

void
unsoot_photos_choose_files (GtkWidget *over, UnsootSession *session, UnsootJobViewFile *file)
{
  Choosing *choosing = g_new (Choosing, 1);

  choosing->intake = intake_new (over, session, file, NULL);
  choosing->chooser = chooser_new (GTK_WINDOW (gtk_widget_get_root (over)));
  g_signal_connect (choosing->chooser, "response", G_CALLBACK (chosen_cb), choosing);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (choosing->chooser));
}
