/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "adapters.h"

G_BEGIN_DECLS

/* Where an adapter stands on the board; a loan that is late is told from one that is not. */
typedef enum
{
  UNSOOT_BOARD_DUE, /* lent, and its day is past */
  UNSOOT_BOARD_LENT,
  UNSOOT_BOARD_ON_JOB,
  UNSOOT_BOARD_INSPECTION,
  UNSOOT_BOARD_HERE,
  UNSOOT_BOARD_RETIRED,
} UnsootBoardState;
#define UNSOOT_BOARD_STATES 6

/* "here", "on-job" …; with words for a person: "On a job". */
const char *unsoot_board_slug (UnsootBoardState state);
const char *unsoot_board_words (UnsootBoardState state);

/* One adapter on the board. */
typedef struct
{
  UnsootAdapterItemRow *item;
  UnsootAdapterTypeRow *type;
  UnsootBoardState state;
  char *words;         /* as unsoot_adapter_item_state () says it */
  UnsootLoanRow *loan; /* that is out; NULL: none */
  char *inspect_on;    /* ISO date of the next inspection; NULL: none is asked for */
} UnsootBoardTag;

void unsoot_board_tag_free (UnsootBoardTag *tag);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootBoardTag, unsoot_board_tag_free)

UnsootBoardTag *unsoot_board_tag (UnsootDb *db, gint64 item_id, gint64 now, GError **error);

/* UnsootBoardTag by bin and label; those without a bin come last, retired ones at the end. */
GPtrArray *unsoot_board (UnsootDb *db, gint64 now, GError **error);

/* UnsootLoanRow of an item, newest first. */
GPtrArray *unsoot_adapter_loans (UnsootDb *db, gint64 item_id, GError **error);

/* Ids (gint64) of the jobs it was held for, newest first, @limit of them. */
GArray *unsoot_adapter_jobs (UnsootDb *db, gint64 item_id, guint limit, GError **error);

/**
 * unsoot_adapter_inspected:
 * @passed: FALSE sets it aside
 * @condition: (nullable): what was seen; needed where it did not pass
 *
 * Looked over on the shop's today. Errors: NOT_ALLOWED; INVALID; CONSTRAINT while it is lent.
 */
gboolean unsoot_adapter_inspected (UnsootDb *db, const UnsootActing *who, gint64 item_id,
                                   gboolean passed, const char *condition, GError **error);

/* Out of use for good, with the reason as its condition; %NULL brings it back.
 * Errors: NOT_ALLOWED; INVALID for a blank reason; CONSTRAINT while it is lent or held. */
gboolean unsoot_adapter_retire (UnsootDb *db, const UnsootActing *who, gint64 item_id,
                                const char *reason, GError **error);

G_END_DECLS
