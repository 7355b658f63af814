/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draft-row.h"
#include "session.h"
#include "store-call.h"

/* The desk's way to what was typed and not carried out: on the store's worker, by person, place
 * and record. */

/* Tells @done the UnsootDraftRow, the receiver's; NULL: nothing was kept. */
void unsoot_draft_file_load (UnsootStoreSlot *slot, UnsootSession *session, gint64 staff_id,
                             const char *place, gint64 record, UnsootStoreDone done,
                             gpointer owner);

/* Keeps @text (JSON, taken) in place of what was kept; NULL: keeps nothing any more. It goes on
 * when whoever asked is gone. */
void unsoot_draft_file_put (UnsootSession *session, gint64 staff_id, const char *place,
                            gint64 record, char *text);
