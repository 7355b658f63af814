/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "fluid-moves.h"
#include "session.h"

/* A row of a link list: a job that a fluid falls short for, with by how much. It opens the job.
 * @with_fluid: says which fluid. */
GtkWidget *unsoot_short_job_row_new (const UnsootShortJob *line, UnsootSession *session,
                                     gboolean with_fluid);
