/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fluid-supply.h"
#include "session.h"

#include <gtk/gtk.h>

/* An open order of @supply's fluid, with what may be done with it. The supply has to outlive the
 * row. */
GtkWidget *unsoot_supply_row_new (const UnsootFluidSupply *supply, const UnsootSupplyOrder *order,
                                  UnsootSession *session);

/* An order that is all here or cancelled, a line. */
GtkWidget *unsoot_supply_past_new (const UnsootSupplyOrder *order, UnsootSession *session);
