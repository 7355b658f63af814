/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "picture-file.h"

G_BEGIN_DECLS

/* Pictures on their way into the book: read and encoded afresh away from the main loop. */

/* One that was read. */
typedef struct
{
  char *name; /* of the file; NULL: it came from the clipboard */
  UnsootPicture picture;
} UnsootImport;

void unsoot_import_free (UnsootImport *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootImport, unsoot_import_free)

/**
 * unsoot_import_file:
 *
 * Reads a file of any usual format, of at most 40 MB; the finish function's error names it and
 * what is wrong.
 */
void unsoot_import_file (GFile *file, GCancellable *cancellable, GAsyncReadyCallback done,
                         gpointer user_data);

/* The same with a picture of the clipboard. */
void unsoot_import_texture (GdkTexture *texture, GCancellable *cancellable,
                            GAsyncReadyCallback done, gpointer user_data);

UnsootImport *unsoot_import_finish (GAsyncResult *result, GError **error);

G_END_DECLS
