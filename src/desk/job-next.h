/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "job-view-file.h"
#include "session.h"

G_BEGIN_DECLS

/* What may happen to a job next: the usual deed as a button, everything else in a menu. */
#define UNSOOT_TYPE_JOB_NEXT (unsoot_job_next_get_type ())
G_DECLARE_FINAL_TYPE (UnsootJobNext, unsoot_job_next, UNSOOT, JOB_NEXT, GtkBox)

void unsoot_job_next_show (UnsootJobNext *self, UnsootJobViewFile *file, UnsootSession *session);

G_END_DECLS
