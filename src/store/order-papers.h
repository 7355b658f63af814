/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"
#include "order-file.h"

G_BEGIN_DECLS

/* The order as it is printed. Errors: NOT_FOUND. */
UnsootOrderFile *unsoot_order_file_load (UnsootDb *db, gint64 order_id, GError **error);

G_END_DECLS
