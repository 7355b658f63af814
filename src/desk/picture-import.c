/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture-import.h"

#include <glib/gi18n-lib.h>

/* More than any telephone's camera writes. */
#define MOST_BYTES (40 * 1000 * 1000)

void
unsoot_import_free (UnsootImport *self)
{
  g_free (self->name);
  unsoot_picture_clear (&self->picture);
  g_free (self);
}

static gboolean
is_small (GFile *file, const char *name, GCancellable *cancellable, GError **error)
{
  g_autoptr (GFileInfo) info = g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_SIZE,
                                                  G_FILE_QUERY_INFO_NONE, cancellable, error);

  if (info == NULL)
    return FALSE;
  if (g_file_info_get_size (info) > MOST_BYTES)
    g_set_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_DATA, _ ("“%s” is larger than 40 MB."),
                 name);
  return g_file_info_get_size (info) <= MOST_BYTES;
}

static void
read_file (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  GFile *file = data;
  g_autoptr (UnsootImport) import = g_new0 (UnsootImport, 1);
  g_autoptr (GBytes) bytes = NULL;
  GError *error = NULL;

  import->name = g_file_get_basename (file);
  if (is_small (file, import->name, cancellable, &error))
    bytes = g_file_load_bytes (file, cancellable, NULL, &error);
  if (bytes == NULL)
    g_task_return_error (task, error);
  else if (!unsoot_picture_read (&import->picture, bytes))
    g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_INVALID_DATA,
                             _ ("“%s” can't be read as a picture."), import->name);
  else
    g_task_return_pointer (task, g_steal_pointer (&import), (GDestroyNotify) unsoot_import_free);
}

static void
read_texture (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  g_autoptr (UnsootImport) import = g_new0 (UnsootImport, 1);
  g_autoptr (GBytes) png = gdk_texture_save_to_png_bytes (data);

  if (unsoot_picture_read (&import->picture, png))
    g_task_return_pointer (task, g_steal_pointer (&import), (GDestroyNotify) unsoot_import_free);
  else
    g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_INVALID_DATA,
                             _ ("What was copied can't be read as a picture."));
}

static void
start (gpointer what, GTaskThreadFunc func, GCancellable *cancellable, GAsyncReadyCallback done,
       gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, done, user_data);

  g_task_set_task_data (task, g_object_ref (what), g_object_unref);
  g_task_run_in_thread (task, func);
}

void
unsoot_import_file (GFile *file, GCancellable *cancellable, GAsyncReadyCallback done,
                    gpointer user_data)
{
  start (file, read_file, cancellable, done, user_data);
}

void
unsoot_import_texture (GdkTexture *texture, GCancellable *cancellable, GAsyncReadyCallback done,
                       gpointer user_data)
{
  start (texture, read_texture, cancellable, done, user_data);
}

UnsootImport *
unsoot_import_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
