/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What the demo shop owns and sells. All of it is invented: town, people, makes,
 * fluids and adapters. Prices are in cents. */

typedef struct
{
  const char *name;
  const char *initials;
  const char *role; /* slug of UnsootRole */
  const char *pin;  /* shown on the demo's first page: the demo guards nothing */
} UnsootDemoPerson;

typedef struct
{
  const char *name;
  const char *phone;
  double lead_days;
  double lead_days_spread;
} UnsootDemoSupplier;

typedef struct
{
  const char *code;
  const char *name;
  const char *side;
  int supplier; /* index */
  gint64 price_minor;
  gint64 pack_ml;
  gint64 pack_cost_minor;
  double flash_point_c;
  double boiling_point_c;
  double density_kg_m3;
  const char *signal_word;
  const char *pictograms;
  const char *h_statements;
  const char *p_statements;
  const char *un_number;
  double share; /* how often jobs of its side use it */
} UnsootDemoFluid;

typedef struct
{
  const char *code;
  const char *name;
  const char *side;
  int items;
  gint64 inspect_days;  /* 0: none */
  const char *families; /* letters of the families it fits */
  int year_from;
  int year_to; /* 0: open */
} UnsootDemoAdapter;

typedef struct
{
  char letter;      /* by which adapters and models name it */
  const char *file; /* the procedure it is run by, in data/demo/procedures */
  const char *size_class;
  gint64 displacement_ml;
} UnsootDemoFamily;

typedef struct
{
  char family;
  const char *make;
  const char *model;
  const char *engine;
  const char *maker_code; /* first three of its VINs; codes from A0 belong to no country */
  gint64 gvwr_lb;
  gboolean has_dpf;
  int first_year;
  int last_year;
} UnsootDemoModel;

typedef struct
{
  const char *name;
  const char *sides;
  gint64 price_minor;
  gint64 planned_minutes;
  gint64 disposal_minor;
} UnsootDemoService;

extern const UnsootDemoPerson unsoot_demo_staff[];
extern const gsize unsoot_demo_n_staff;
extern const UnsootDemoSupplier unsoot_demo_suppliers[];
extern const gsize unsoot_demo_n_suppliers;
extern const UnsootDemoFluid unsoot_demo_fluids[];
extern const gsize unsoot_demo_n_fluids;
extern const UnsootDemoAdapter unsoot_demo_adapters[];
extern const gsize unsoot_demo_n_adapters;
extern const UnsootDemoFamily unsoot_demo_families[];
extern const gsize unsoot_demo_n_families;
extern const UnsootDemoModel unsoot_demo_models[];
extern const gsize unsoot_demo_n_models;
extern const UnsootDemoService unsoot_demo_services[];
extern const gsize unsoot_demo_n_services;

G_END_DECLS
