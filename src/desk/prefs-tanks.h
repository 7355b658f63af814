/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "machine-row.h"
#include "prefs-edit.h"

G_BEGIN_DECLS

/* A row that shows how big a tank of @machine is, with a button that opens its form. */
GtkWidget *unsoot_prefs_tank_row_new (UnsootSession *session, const UnsootMachineRow *machine,
                                      const UnsootTankRow *tank);

G_END_DECLS
