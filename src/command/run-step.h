/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "call.h"
#include "run.h"

G_BEGIN_DECLS

/* The run of the job that @number names, as it stands. NULL: an error, or it has none. */
UnsootRun *unsoot_command_run_of (UnsootCall *call, const char *number, gint64 *run_id,
                                  GError **error);

/* Posts @event and tells where the run stands then. */
gboolean unsoot_command_run_post (UnsootCall *call, gint64 run_id, UnsootRunEvent *event,
                                  char *sentence, GError **error);

/* `run step` and `run extra`. */
gboolean unsoot_command_run_step (UnsootCall *call, GError **error);
gboolean unsoot_command_run_extra (UnsootCall *call, GError **error);

G_END_DECLS
