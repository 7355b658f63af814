/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/**
 * UnsootPaperError:
 * @UNSOOT_PAPER_ERROR_FONT: the papers' font is not installed or can't be read
 * @UNSOOT_PAPER_ERROR_RECORD: the job has not got what this paper is made from
 * @UNSOOT_PAPER_ERROR_PDF: the file could not be built
 *
 * What a caller can do about it; the message is a sentence for a person.
 */
typedef enum
{
  UNSOOT_PAPER_ERROR_FONT,
  UNSOOT_PAPER_ERROR_RECORD,
  UNSOOT_PAPER_ERROR_PDF,
} UnsootPaperError;

#define UNSOOT_PAPER_ERROR (unsoot_paper_error_quark ())

GQuark unsoot_paper_error_quark (void);
