/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rows.h"
#include "vehicle-row.h"

G_BEGIN_DECLS

/* What a VIN's first characters have meant in this shop before. */
typedef struct
{
  char *make;
  char *model;
  char *engine;
  gint64 family_id; /* 0: not settled */
  gint64 gvwr_lb;   /* 0: unknown, or they differ */
  gint64 vehicles;  /* how many there are */
  int matched;      /* leading characters that agree */
} UnsootVehicleProposal;

void unsoot_vehicle_proposal_free (UnsootVehicleProposal *proposal);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootVehicleProposal, unsoot_vehicle_proposal_free)

UnsootVehicleRow *unsoot_vehicle_load (UnsootDb *db, gint64 id, GError **error);

/* UnsootVehicleRow of one customer, by unit number and plate. */
GPtrArray *unsoot_customer_vehicles (UnsootDb *db, gint64 customer_id, GError **error);

/**
 * unsoot_vehicle_save:
 * @vehicle: added where its id is 0; the VIN is put in capitals without spaces
 * @warning: (out) (optional) (nullable): what looks wrong about the VIN, in a sentence: a
 *   failed check, or another vehicle that has the same. It never hinders the saving
 *
 * Errors: CONFLICT, NOT_ALLOWED; INVALID where nothing tells the vehicle from others.
 */
gboolean unsoot_vehicle_save (UnsootDb *db, const UnsootActing *who, UnsootVehicleRow *vehicle,
                              char **warning, GError **error);

/* "Brindle T4 5.1 · unit 12 · plate 7KD 204": how a vehicle is called everywhere. */
char *unsoot_vehicle_title (const UnsootVehicleRow *vehicle);
/* The same and its VIN, which no other has: what an invoice says for good. */
char *unsoot_vehicle_whole_title (const UnsootVehicleRow *vehicle);
/* The same without plate and unit: "2019 Brindle T4 5.1". */
char *unsoot_vehicle_model_title (const UnsootVehicleRow *vehicle);

/**
 * unsoot_vehicle_proposals:
 *
 * UnsootVehicleProposal, best first: make, model and engine of the shop's own vehicles
 * whose VIN begins as @vin does (first eight characters, else the maker's three). Empty
 * where none does.
 */
GPtrArray *unsoot_vehicle_proposals (UnsootDb *db, const char *vin, GError **error);

/* Whose vehicle it is from now on. */
gboolean unsoot_vehicle_pass_on (UnsootDb *db, const UnsootActing *who, gint64 vehicle_id,
                                 gint64 customer_id, GError **error);

G_END_DECLS
