/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "run.h"
#include "session.h"

G_BEGIN_DECLS

/* The vehicle leaves, or stays overnight, in pieces: what is off, who takes it on, and why.
 * Signals "release" (signature, reason) and "back". */
#define UNSOOT_TYPE_BAY_RELEASE (unsoot_bay_release_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayRelease, unsoot_bay_release, UNSOOT, BAY_RELEASE, GtkBox)

/* Who is at the desk is proposed as the one who signs. What they typed before stays. */
void unsoot_bay_release_open (UnsootBayRelease *self, const UnsootRun *run, gint64 job_id,
                              UnsootSession *session);

/* It is released; what was typed is kept no more. */
void unsoot_bay_release_done (UnsootBayRelease *self);

/* Someone else is at the desk: what was typed is kept for its writer, and gone from here. */
void unsoot_bay_release_forget (UnsootBayRelease *self);

/* Why it can't be released; NULL takes it away. */
void unsoot_bay_release_say (UnsootBayRelease *self, const char *sentence);

G_END_DECLS
