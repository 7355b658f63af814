/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "machines.h"
#include "rig.h"

G_BEGIN_DECLS

/* Tanks between the book and the simulated bay; for the store's own deeds. */

/* What the last event says of a tank; unknown where there was none. */
void unsoot_tank_state_to_rig (const UnsootTankState *state, UnsootTank *tank);

/* A tank's sizes make sense, and what is in it by the book fits. Errors: INVALID; CONSTRAINT. */
gboolean unsoot_tank_check_size (UnsootDb *db, const UnsootTankRow *tank, GError **error);

/* Adds a tank's event, in the caller's deed. Returns its id, 0 on error. */
gint64 unsoot_tank_event_add (UnsootDb *db, const UnsootActing *who, gint64 tank_id,
                              const char *kind, const UnsootTank *tank, gint64 job_id, gint64 at,
                              const char *label, GError **error);

G_END_DECLS
