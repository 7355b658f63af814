/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "fluid-supply.h"
#include "session.h"

G_BEGIN_DECLS

/* A fluid in the table of fluids; it opens the fluid. */
#define UNSOOT_TYPE_FLUID_SHELF_ROW (unsoot_fluid_shelf_row_get_type ())
G_DECLARE_FINAL_TYPE (UnsootFluidShelfRow, unsoot_fluid_shelf_row, UNSOOT, FLUID_SHELF_ROW,
                      GtkListBoxRow)

/* The columns that rows and heads share: mark and name, on hand, promised, free, lasts, expiry,
 * state. */
#define UNSOOT_SHELF_COLUMNS 8

/* @groups: one for each column. */
GtkWidget *unsoot_fluid_shelf_row_new (const UnsootFluidSupply *supply, UnsootSession *session,
                                       GtkSizeGroup *const *groups);

/* The heads, for above the rows. */
GtkWidget *unsoot_fluid_shelf_heads_new (GtkSizeGroup *const *groups);

G_END_DECLS
