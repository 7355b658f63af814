/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* The place Machines: each cart with its two tanks drawn, and what is due on it. */
#define UNSOOT_TYPE_MACHINES_PAGE (unsoot_machines_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootMachinesPage, unsoot_machines_page, UNSOOT, MACHINES_PAGE, UnsootView)

G_END_DECLS
