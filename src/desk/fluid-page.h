/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* The record of a fluid: its stock as a picture, what to order and why, its lots, its moves,
 * what jobs took of it, what it does to people. */
#define UNSOOT_TYPE_FLUID_PAGE (unsoot_fluid_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootFluidPage, unsoot_fluid_page, UNSOOT, FLUID_PAGE, UnsootView)

G_END_DECLS
