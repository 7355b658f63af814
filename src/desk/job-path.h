/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The path of a job as a picture: a dot for each stop, its name and time beneath. */
#define UNSOOT_TYPE_JOB_PATH (unsoot_job_path_get_type ())
G_DECLARE_FINAL_TYPE (UnsootJobPath, unsoot_job_path, UNSOOT, JOB_PATH, GtkWidget)

GtkWidget *unsoot_job_path_new (void);

/* @status: the job's, @history: UnsootJobStatusRow, oldest first. */
void unsoot_job_path_show (UnsootJobPath *self, const char *status, const GPtrArray *history,
                           gint64 now, GTimeZone *zone);

G_END_DECLS
