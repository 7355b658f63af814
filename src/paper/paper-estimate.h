/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-file.h"
#include "paper-size.h"

/* The latest written estimate: lines, doses with their reason, totals, how long it is valid,
 * how far the work may run over, and who authorised it or a block to do so. @remark as in
 * unsoot_paper_make (). Errors: UNSOOT_PAPER_ERROR; RECORD for a job without an estimate. */
GBytes *unsoot_paper_estimate (const UnsootJobFile *file, UnsootPaperSize size, char **remark,
                               GError **error);
