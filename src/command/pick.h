/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "call.h"

G_BEGIN_DECLS

/* Things of the book by what a person would type for them. Each sets an id and fails with
 * UNSOOT_STORE_ERROR_NOT_FOUND, saying what there is, where nothing or more than one is meant. */

/* A job or invoice by its number, with or without "#". */
gboolean unsoot_pick_job (UnsootCall *call, const char *text, gint64 *id, GError **error);
gboolean unsoot_pick_invoice (UnsootCall *call, const char *text, gint64 *id, GError **error);

/* A vehicle by plate, VIN, unit number or whatever finds it alone. */
gboolean unsoot_pick_vehicle (UnsootCall *call, const char *text, gint64 *id, GError **error);

/* By name, or how it begins where only one does. */
gboolean unsoot_pick_service (UnsootCall *call, const char *text, gint64 *id, GError **error);
gboolean unsoot_pick_bay (UnsootCall *call, const char *text, gint64 *id, GError **error);
gboolean unsoot_pick_supplier (UnsootCall *call, const char *text, gint64 *id, GError **error);
gboolean unsoot_pick_machine (UnsootCall *call, const char *text, gint64 *id, GError **error);

/* By initials or name. */
gboolean unsoot_pick_person (UnsootCall *call, const char *text, gint64 *id, GError **error);

/* A fluid by code or name; an adapter by the label on its tag. */
gboolean unsoot_pick_fluid (UnsootCall *call, const char *text, gint64 *id, GError **error);
gboolean unsoot_pick_item (UnsootCall *call, const char *text, gint64 *id, GError **error);

/* A lot by the maker's code; "R 7714" where two fluids have lots of that code. */
gboolean unsoot_pick_lot (UnsootCall *call, const char *text, gint64 *id, GError **error);

/* A whole number from @least on, typed as an argument that is called @what. */
gboolean unsoot_pick_number (const char *text, const char *what, gint64 least, gint64 *number,
                             GError **error);

G_END_DECLS
