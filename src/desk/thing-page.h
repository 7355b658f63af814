/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* A fluid, lot, adapter, loan or machine, as its slug says: what is known of it, and the jobs
 * that it was used on. */
#define UNSOOT_TYPE_THING_PAGE (unsoot_thing_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootThingPage, unsoot_thing_page, UNSOOT, THING_PAGE, UnsootView)

G_END_DECLS
