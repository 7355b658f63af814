/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "drawing.h"
#include "due.h"

G_BEGIN_DECLS

/* A service in a vehicle's life. Days as in civil.h. */
typedef struct
{
  int day;
  int job_number;
  gboolean fuel, intake; /* the sides that were cleaned */
} UnsootLifeService;

/**
 * UnsootLife:
 * @meter: the odometer in metres, or engine hours in seconds where there is no odometer
 * @unit: in which the meter is shown
 * @services: UnsootLifeService, oldest first
 * @target: where the next is due on the meter; 0: by no meter
 * @due: the day on which the next is due; 0: none
 */
typedef struct
{
  UnsootMeter meter;
  UnsootUnit unit;
  GArray *services;
  gint64 target;
  int due;
  int today;
} UnsootLife;

/* Of all cases, those that lie within the band and the window. */
#define UNSOOT_LIFE_SHARE 0.9

/* A vehicle's life: the meter against time with the line through it and its band, services with
 * their sides, and the days between which the next is due. */
UnsootDrawing *unsoot_life_drawing_new (const UnsootLife *life, double width, double height);

G_END_DECLS
