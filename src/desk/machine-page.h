/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* The record of a machine: what is in each tank and what may be done with it, what was done,
 * gauge checks and hoses. */
#define UNSOOT_TYPE_MACHINE_PAGE (unsoot_machine_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootMachinePage, unsoot_machine_page, UNSOOT, MACHINE_PAGE, UnsootView)

G_END_DECLS
