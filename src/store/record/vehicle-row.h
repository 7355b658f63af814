/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* What is worked on. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 customer_id; /* who owns it now */
  gint64 family_id;   /* engine family; NULL: not settled yet */
  char *vin;          /* 17 characters, or what is on the frame */
  char *plate;
  char *plate_region;
  char *unit_number; /* the fleet's own */
  gint64 year;       /* model year; NULL: unknown */
  char *make;
  char *model;
  char *engine; /* as people say it: 5.1 */
  char *engine_serial;
  gint64 gvwr_lb; /* rated gross weight in pounds, as the door plate says; NULL: unknown */
  gboolean has_egr;
  gboolean has_dpf;
  gboolean emission_altered; /* parts of the emission control are missing or altered */
  char *emission_note;
  char *note;
  gboolean active;
} UnsootVehicleRow;
UNSOOT_DECLARE_RECORD (UnsootVehicleRow, unsoot_vehicle_row)

/* Odometer and hours. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 vehicle_id;  /* of vehicles */
  gint64 job_id;      /* of jobs */
  char *taken_on;     /* ISO date */
  char *kind;         /* odometer or hours */
  double typed;       /* as read */
  char *unit;         /* mi, km or h */
  gint64 metres;      /* odometer in metres since new, meter changes added */
  gint64 seconds;     /* engine hours in seconds likewise */
  gboolean new_meter; /* first reading of a new meter: earlier ones no longer count on */
} UnsootMeterReadingRow;
UNSOOT_DECLARE_RECORD (UnsootMeterReadingRow, unsoot_meter_reading_row)

G_END_DECLS
