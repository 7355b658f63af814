/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fluid-row.h"
#include "rows.h"
#include "shop-row.h"
#include "stocks.h"
#include "supply-orders.h"
#include "supply.h"

G_BEGIN_DECLS

/* Where a fluid stands, what is booked of it, and what to order. */
typedef struct
{
  UnsootFluidRow *fluid;
  UnsootFluidStock *stock;
  UnsootSupplierRow *supplier; /* NULL: none entered */
  GPtrArray *packs;            /* UnsootPackRow by size */
  GPtrArray *needs;            /* UnsootFluidNeed of it, by start */
  GPtrArray *orders;           /* UnsootSupplyOrder that are open, by the day expected */
  gint64 short_ml;             /* what they lack, all together */
  gint64 going_off_ml;         /* expires within the days of attention, unused */
  UnsootSupply state;
  UnsootReorder reorder; /* what the suggestion is reckoned from */
  gboolean has_point;    /* FALSE: no lead time is known, so the suggestion is empty */
  UnsootSuggestion suggestion;
  gboolean has_order; /* something is to be ordered, in packs that are known */
  UnsootPackOrder order;
} UnsootFluidSupply;

void unsoot_fluid_supply_free (UnsootFluidSupply *supply);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootFluidSupply, unsoot_fluid_supply_free)

UnsootFluidSupply *unsoot_fluid_supply (UnsootDb *db, gint64 fluid_id, gint64 now, GError **error);

/* Every fluid in use, and those out of use that a booked job still needs, by side and code. */
GPtrArray *unsoot_fluid_supply_list (UnsootDb *db, gint64 now, GError **error);

G_END_DECLS
