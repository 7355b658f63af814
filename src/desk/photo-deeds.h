/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-view-file.h"
#include "session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What is done with a job's pictures. */

/* Takes files into the job, one after the other: of each is asked what it shows. @files: a
 * GListModel of GFile. */
void unsoot_photos_add_files (GtkWidget *over, UnsootSession *session, UnsootJobViewFile *file,
                              GListModel *files);

/* The same with what was copied elsewhere. */
void unsoot_photos_paste (GtkWidget *over, UnsootSession *session, UnsootJobViewFile *file);

/* The files of a GdkFileList: what was dropped or copied. New. */
GListModel *unsoot_photos_of_list (const GValue *files);

/* Asks for files, in the folder that pictures were taken from last. */
void unsoot_photos_choose_files (GtkWidget *over, UnsootSession *session, UnsootJobViewFile *file);

/* Buttons of one picture: it shows something else; it is printed; it is taken out. */
GtkWidget *unsoot_photo_tell_button_new (UnsootSession *session, const UnsootPhotoRow *photo);
GtkWidget *unsoot_photo_choose_button_new (UnsootSession *session, const UnsootPhotoRow *photo);
GtkWidget *unsoot_photo_remove_button_new (UnsootSession *session, const UnsootPhotoRow *photo);

G_END_DECLS
