/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "catalogue.h"
#include "family-row.h"
#include "fluid-row.h"
#include "rows.h"
#include "staff-row.h"
#include "vehicle-row.h"

G_BEGIN_DECLS

/* How often the demo's own clock ticks between two deeds. */
#define UNSOOT_DEMO_MINUTE 60
#define UNSOOT_DEMO_DAY 86400

/* Roles of the demo's staff, by position in the catalogue. */
enum
{
  UNSOOT_DEMO_OWNER,
  UNSOOT_DEMO_ADVISOR,
  UNSOOT_DEMO_CLERK,
  UNSOOT_DEMO_LEAD,
  UNSOOT_DEMO_TECHNICIAN,
  UNSOOT_DEMO_TECHNICIAN_2,
};

/* A demo shop in the making. */
typedef struct
{
  UnsootDb *db;
  GRand *random;
  gint64 now; /* the moment that the shop is made for */
  char *zone; /* the demo town's clock */
  int offset_minutes;
  char *today;      /* the town's date at @now */
  gint64 day_start; /* of today, Unix seconds */

  gint64 staff[8];
  gint64 families[8]; /* by letter - 'a' */
  gint64 services[4];
  gint64 fluids[8];
  gint64 bays[4];
  gint64 machines[4];
  GPtrArray *vehicles; /* UnsootDemoVehicle */

  GCancellable *cancellable;
  void (*progress) (double share, gpointer data);
  gpointer progress_data;
} UnsootDemo;

/* What history needs to know of a vehicle. */
typedef struct
{
  gint64 id;
  gint64 customer_id;
  const UnsootDemoModel *model;
  gboolean fleet;
  double odometer_mi; /* on @read_on */
  double miles_a_day; /* hours a day for what has no road */
  gint64 read_at;
  gboolean hours;
  gboolean taken; /* has its part in today */
  char *contact;  /* who gives the word */
} UnsootDemoVehicle;

/* Who acts at @at. */
static inline UnsootActing
unsoot_demo_as (const UnsootDemo *demo, int person, gint64 at)
{
  return (UnsootActing){ .staff_id = demo->staff[person], .now = at };
}

/* Each makes its part through the same deeds that people use. */
gboolean unsoot_demo_make_shop (UnsootDemo *demo, GError **error);
gboolean unsoot_demo_make_families (UnsootDemo *demo, GError **error);
gboolean unsoot_demo_make_stores (UnsootDemo *demo, GError **error);
gboolean unsoot_demo_make_people (UnsootDemo *demo, GError **error);
gboolean unsoot_demo_make_history (UnsootDemo *demo, GError **error);
gboolean unsoot_demo_make_today (UnsootDemo *demo, GError **error);

/* The town's date @days from today, ISO text to free. */
char *unsoot_demo_date (const UnsootDemo *demo, int days);

/* FALSE and CANCELLED once someone has stopped it. */
gboolean unsoot_demo_goes_on (UnsootDemo *demo, double share, GError **error);

G_END_DECLS
