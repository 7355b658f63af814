/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* The bay of one job: from the choice of the machine, through the steps of its run, to the
 * signature or the tag. The record is the job. */
#define UNSOOT_TYPE_BAY_PAGE (unsoot_bay_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayPage, unsoot_bay_page, UNSOOT, BAY_PAGE, UnsootView)

G_END_DECLS
