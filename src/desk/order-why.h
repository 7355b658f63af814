/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "fluid-supply.h"
#include "session.h"

/* What to order of a fluid, and how that is reckoned, step by step. */
GtkWidget *unsoot_order_why_new (const UnsootFluidSupply *supply, const GPtrArray *suppliers,
                                 UnsootSession *session);

/* "2 × 5 L" of what is suggested; NULL where there is nothing to order. */
char *unsoot_order_packs (const UnsootFluidSupply *supply);
