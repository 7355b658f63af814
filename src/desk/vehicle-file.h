/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "customers.h"
#include "families.h"
#include "job-row.h"
#include "lists.h"
#include "vehicles.h"

G_BEGIN_DECLS

/* What the page of one vehicle shows, read in one go. */
typedef struct
{
  UnsootVehicleRow *vehicle;
  UnsootCustomerRow *customer;
  UnsootFamilyRow *family; /* NULL: not settled */
  GPtrArray *meters;       /* UnsootMeterReadingRow, oldest first */
  GPtrArray *readings;     /* UnsootReadingRow of all its jobs, oldest first */
  GPtrArray *jobs;         /* UnsootJobLine, newest first */
  GPtrArray *calls;        /* UnsootCallLine, newest first */
  UnsootJobRow *due;       /* the newest job that says when the next is due; NULL: none */
} UnsootVehicleFile;

void unsoot_vehicle_file_free (UnsootVehicleFile *file);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootVehicleFile, unsoot_vehicle_file_free)

UnsootVehicleFile *unsoot_vehicle_file_load (UnsootDb *db, gint64 id, GError **error);

G_END_DECLS
