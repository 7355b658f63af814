/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-file.h"
#include "paper-size.h"

/* What the customer takes home: what was done, before and after with what the instruments can
 * tell, pictures, what the readings can't show, the next service with its reason, cautions for
 * the first drive. @remark as in unsoot_paper_make (). Errors: UNSOOT_PAPER_ERROR; RECORD for
 * a job that was not run. */
GBytes *unsoot_paper_customer_report (const UnsootJobFile *file, UnsootPaperSize size,
                                      char **remark, GError **error);
