/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"

G_BEGIN_DECLS

/* What the find box knows of each kind of row: title, detail and codes. Each is called in
 * the deed that changed the row, and fits UnsootDeedIndex. */
gboolean unsoot_index_customer (UnsootDb *db, gint64 id, GError **error);
gboolean unsoot_index_vehicle (UnsootDb *db, gint64 id, GError **error);
gboolean unsoot_index_job (UnsootDb *db, gint64 id, GError **error);
gboolean unsoot_index_estimate (UnsootDb *db, gint64 id, GError **error);
gboolean unsoot_index_invoice (UnsootDb *db, gint64 id, GError **error);
gboolean unsoot_index_lot (UnsootDb *db, gint64 id, GError **error);
gboolean unsoot_index_adapter (UnsootDb *db, gint64 item_id, GError **error);
gboolean unsoot_index_fluid (UnsootDb *db, gint64 id, GError **error);

/* Everything of a customer's that names them: after a change of name. */
gboolean unsoot_index_customer_whole (UnsootDb *db, gint64 customer_id, GError **error);

G_END_DECLS
