/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "lot-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* A lot with what is left of it. */
typedef struct
{
  UnsootLotRow *lot;
  gint64 on_hand_ml;  /* by the book */
  gint64 left_ml;     /* of it, not poured by a run under way */
  gboolean opened;    /* a container of it is open */
  char *opened_until; /* ISO date of the open container that goes off first; NULL: none */
  gboolean usable;    /* on the day asked about */
  char *why_not;      /* a sentence, NULL where usable */
} UnsootLotStock;

void unsoot_lot_stock_free (UnsootLotStock *stock);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootLotStock, unsoot_lot_stock_free)

UnsootLotRow *unsoot_lot_load (UnsootDb *db, gint64 id, GError **error);

/* UnsootLotStock of one fluid on @today (ISO date): first to expire first, empty lots last. */
GPtrArray *unsoot_lot_list (UnsootDb *db, gint64 fluid_id, const char *today, GError **error);

/**
 * unsoot_lot_pick:
 *
 * The lot to take @ml from on @today: of those that are not expired, not stopped and hold
 * enough, the first to expire.
 *
 * Errors: CONSTRAINT where none holds enough, saying what there is.
 */
UnsootLotRow *unsoot_lot_pick (UnsootDb *db, gint64 fluid_id, gint64 ml, const char *today,
                               GError **error);

/* Whether @lot_id may be used on @today for a side's tank. Errors: CONSTRAINT: expired,
 * stopped, or of the other side's fluid. */
gboolean unsoot_lot_check (UnsootDb *db, gint64 lot_id, const char *side, const char *today,
                           GError **error);

/* A stop-use with its reason; %NULL lifts it. */
gboolean unsoot_lot_stop (UnsootDb *db, const UnsootActing *who, gint64 lot_id, const char *reason,
                          GError **error);

/* Ids (gint64) of the jobs that used the lot, oldest first: whom to tell of a recall. */
GArray *unsoot_lot_jobs (UnsootDb *db, gint64 lot_id, GError **error);

/**
 * unsoot_container_open:
 *
 * Records an opened container of a lot; its own date follows the fluid's days once
 * opened, never later than the lot's expiry.
 *
 * Returns: its id, 0 on error.
 */
gint64 unsoot_container_open (UnsootDb *db, const UnsootActing *who, gint64 lot_id,
                              const char *label, gint64 size_ml, const char *opened_on,
                              GError **error);

/* An opened container has nothing left. Errors: CONSTRAINT where it was said before. */
gboolean unsoot_container_emptied (UnsootDb *db, const UnsootActing *who, gint64 container_id,
                                   GError **error);

/* UnsootContainerRow that are not empty, first to go off first. */
GPtrArray *unsoot_container_list (UnsootDb *db, gint64 lot_id, GError **error);

G_END_DECLS
