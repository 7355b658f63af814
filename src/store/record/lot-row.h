/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Deliveries of one making. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 fluid_id;   /* of fluids */
  char *code;        /* the maker's */
  char *expires_on;  /* ISO date */
  char *received_on; /* ISO date */
  gint64 cost_minor_per_litre;
  char *stop_reason; /* a stop-use: not to be used, and why */
} UnsootLotRow;
UNSOOT_DECLARE_RECORD (UnsootLotRow, unsoot_lot_row)

/* Opened containers with their own date. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 lot_id; /* of lots */
  char *label;
  gint64 size_ml;
  char *opened_on; /* ISO date */
  char *use_by;    /* of the opened container */
  gboolean empty;
} UnsootContainerRow;
UNSOOT_DECLARE_RECORD (UnsootContainerRow, unsoot_container_row)

/* Every mL that came in or went out. */
typedef struct
{
  gint64 id;
  gint64 lot_id;       /* of lots */
  gint64 container_id; /* of containers */
  gint64 job_id;       /* of jobs */
  char *kind;
  gint64 ml; /* into stock positive, out of it negative */
  char *reason;
  gint64 at;          /* Unix seconds */
  gint64 staff_id;    /* of staff */
  gint64 reverses_id; /* the posting that this one corrects */
} UnsootStockMoveRow;
UNSOOT_DECLARE_RECORD (UnsootStockMoveRow, unsoot_stock_move_row)

G_END_DECLS
