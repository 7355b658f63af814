/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drafts.h"

#include "deed.h"

UnsootDraftRow *
unsoot_draft_load (UnsootDb *db, gint64 staff_id, const char *place, gint64 record, GError **error)
{
  return unsoot_rows_maybe (db, &unsoot_draft_row_type, error,
                            "WHERE staff_id = $1 AND place = $2 AND record = $3 ORDER BY id",
                            unsoot_int (staff_id), unsoot_text (place), unsoot_int (record));
}

gboolean
unsoot_draft_keep (UnsootDb *db, const UnsootActing *who, const char *place, gint64 record,
                   const char *text, GError **error)
{
  return unsoot_db_run (db, error,
                        "INSERT INTO drafts (staff_id, place, record, text, at)"
                        " VALUES ($1, $2, $3, $4, $5)"
                        " ON CONFLICT (staff_id, place, record) DO UPDATE"
                        " SET text = excluded.text, at = excluded.at, version = drafts.version + 1",
                        unsoot_int (who->staff_id), unsoot_text (place), unsoot_int (record),
                        unsoot_text (text), unsoot_int (who->now));
}

gboolean
unsoot_draft_drop (UnsootDb *db, const UnsootActing *who, const char *place, gint64 record,
                   GError **error)
{
  return unsoot_db_run (db, error,
                        "DELETE FROM drafts WHERE staff_id = $1 AND place = $2 AND record = $3",
                        unsoot_int (who->staff_id), unsoot_text (place), unsoot_int (record));
}
