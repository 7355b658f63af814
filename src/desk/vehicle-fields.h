/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "form-draft.h"
#include "session.h"
#include "vehicle-row.h"

G_BEGIN_DECLS

/* What is asked of a vehicle. The VIN's check is said as it is typed; make, model and engine are
 * proposed from the shop's own vehicles that begin alike. Signal "edited". */
#define UNSOOT_TYPE_VEHICLE_FIELDS (unsoot_vehicle_fields_get_type ())
G_DECLARE_FINAL_TYPE (UnsootVehicleFields, unsoot_vehicle_fields, UNSOOT, VEHICLE_FIELDS, GtkBox)

/* @whole: everything, not only what a call needs. */
GtkWidget *unsoot_vehicle_fields_new (UnsootSession *session, gboolean whole);

/* UnsootFamilyRow to choose from; for @whole they are read by itself. */
void unsoot_vehicle_fields_set_families (UnsootVehicleFields *self, const GPtrArray *families);

/* Shows @vehicle; says nothing of it. */
void unsoot_vehicle_fields_set (UnsootVehicleFields *self, const UnsootVehicleRow *vehicle);

/* Writes what was typed into @vehicle; the rest of it stays. Errors: a number that is none. */
gboolean unsoot_vehicle_fields_read (UnsootVehicleFields *self, UnsootVehicleRow *vehicle,
                                     GError **error);

/* What is typed into them is kept. */
void unsoot_vehicle_fields_watch (UnsootVehicleFields *self, UnsootFormDraft *draft);

/* The name of a family, borrowed; NULL where it is none, or they are not read yet. */
const char *unsoot_vehicle_fields_family_name (UnsootVehicleFields *self, gint64 family_id);

G_END_DECLS
