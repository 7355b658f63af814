/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draft-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* What was typed and not carried out, by person, page and record. A draft leaves no trace in the
 * log of changes. */

/* What @staff_id typed there, NULL without an error where there is nothing. */
UnsootDraftRow *unsoot_draft_load (UnsootDb *db, gint64 staff_id, const char *place, gint64 record,
                                   GError **error);

/* Keeps @text (JSON) in place of what was kept before. */
gboolean unsoot_draft_keep (UnsootDb *db, const UnsootActing *who, const char *place, gint64 record,
                            const char *text, GError **error);

/* Carried out, or thrown away. */
gboolean unsoot_draft_drop (UnsootDb *db, const UnsootActing *who, const char *place, gint64 record,
                            GError **error);

G_END_DECLS
