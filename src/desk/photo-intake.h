/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-view-file.h"
#include "session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Pictures on their way into a job: from files, dropped, or copied elsewhere. */

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

G_END_DECLS
