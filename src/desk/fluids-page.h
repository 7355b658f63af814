/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* The place Fluids: every fluid with what there is of it, and what falls short for which job. */
#define UNSOOT_TYPE_FLUIDS_PAGE (unsoot_fluids_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootFluidsPage, unsoot_fluids_page, UNSOOT, FLUIDS_PAGE, UnsootView)

G_END_DECLS
