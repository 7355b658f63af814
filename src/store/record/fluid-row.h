/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Cleaning fluids, each for one side only. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *code; /* short: R */
  char *name;
  char *side;
  gint64 supplier_id;   /* of suppliers */
  gint64 price_minor;   /* sold, for a litre */
  double service_level; /* share of weeks without running out, 0 to 1 */
  gint64 opened_days;   /* how long an opened container keeps; NULL: until its expiry */
  double flash_point_c;
  double boiling_point_c;
  double density_kg_m3;
  char *signal_word;  /* danger or warning */
  char *pictograms;   /* GHS02 GHS07 … */
  char *h_statements; /* H226 H304 … */
  char *p_statements;
  char *un_number;
  char *sds_on; /* date of the safety data sheet */
  gboolean active;
} UnsootFluidRow;
UNSOOT_DECLARE_RECORD (UnsootFluidRow, unsoot_fluid_row)

/* How a fluid is bought. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 fluid_id; /* of fluids */
  gint64 ml;
  gint64 cost_minor; /* bought, each */
} UnsootPackRow;
UNSOOT_DECLARE_RECORD (UnsootPackRow, unsoot_pack_row)

G_END_DECLS
