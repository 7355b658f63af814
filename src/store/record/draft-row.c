/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draft-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField draft_columns[] = {
  UNSOOT_COLUMN (UnsootDraftRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootDraftRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootDraftRow, staff_id, INT64, REF),
  UNSOOT_COLUMN (UnsootDraftRow, place, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootDraftRow, record, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootDraftRow, text, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootDraftRow, at, INT64, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootDraftRow, unsoot_draft_row, "drafts", N_ ("draft"), FALSE,
                      draft_columns)
