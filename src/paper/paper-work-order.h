/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-file.h"
#include "paper-size.h"

/* The work order: doses a side, adapters with their bins, kit, what STOP asks for, the
 * fluids' hazards, room for readings, every step by phase with its cautions above, room to
 * sign. What a run has recorded already is filled in. @remark as in unsoot_paper_make ().
 * Errors: UNSOOT_PAPER_ERROR. */
GBytes *unsoot_paper_work_order (const UnsootJobFile *file, UnsootPaperSize size, char **remark,
                                 GError **error);
