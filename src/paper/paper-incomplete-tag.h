/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-file.h"
#include "paper-size.h"

/* The tag of a vehicle released in pieces, as large as one page allows: what is off, what is
 * in the tanks, the next safe step, who signed. @remark as in unsoot_paper_make (). Errors:
 * UNSOOT_PAPER_ERROR; RECORD for a vehicle that was not released in pieces. */
GBytes *unsoot_paper_incomplete_tag (const UnsootJobFile *file, UnsootPaperSize size, char **remark,
                                     GError **error);
