/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fluid-row.h"
#include "record-button.h"
#include "shop-row.h"

G_BEGIN_DECLS

/* Fluids, how they are bought, what they do to people, and who sends them: buttons and rows that
 * open their forms. */

/* @fluid NULL: a new one; @suppliers: UnsootSupplierRow. */
GtkWidget *unsoot_fluid_change_new (UnsootSession *session, const char *label,
                                    const UnsootFluidRow *fluid, const GPtrArray *suppliers);
GtkWidget *unsoot_fluid_hazards_new (UnsootSession *session, const UnsootFluidRow *fluid);
GtkWidget *unsoot_fluid_figures_new (UnsootSession *session, const char *label,
                                     const UnsootFluidRow *fluid);

GtkWidget *unsoot_pack_row_widget_new (UnsootSession *session, const UnsootFluidRow *fluid,
                                       const UnsootPackRow *pack);
GtkWidget *unsoot_pack_add_new (UnsootSession *session, const UnsootFluidRow *fluid);

GtkWidget *unsoot_supplier_row_widget_new (UnsootSession *session,
                                           const UnsootSupplierRow *supplier);
GtkWidget *unsoot_supplier_add_new (UnsootSession *session);

G_END_DECLS
