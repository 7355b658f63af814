/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "run.h"

G_BEGIN_DECLS

/* The vehicle leaves, or stays overnight, in pieces: what is off, who takes it on, and why.
 * Signals "release" (signature, reason) and "back". */
#define UNSOOT_TYPE_BAY_RELEASE (unsoot_bay_release_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayRelease, unsoot_bay_release, UNSOOT, BAY_RELEASE, GtkBox)

/* @person: proposed as the one who signs; may be NULL. What was typed before stays. */
void unsoot_bay_release_open (UnsootBayRelease *self, const UnsootRun *run, const char *person);

/* Why it can't be released; NULL takes it away. */
void unsoot_bay_release_say (UnsootBayRelease *self, const char *sentence);

G_END_DECLS
