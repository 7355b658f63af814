/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rows.h"
#include "staff-row.h"

G_BEGIN_DECLS

/* UnsootStaffRow by name, those who work here first. */
GPtrArray *unsoot_staff_list (UnsootDb *db, GError **error);
UnsootStaffRow *unsoot_staff_load (UnsootDb *db, gint64 id, GError **error);

/* Adds where the id is 0, else saves. Errors: CONFLICT; NOT_ALLOWED; INVALID for an unknown
 * role; CONSTRAINT where no owner would be left. */
gboolean unsoot_staff_save (UnsootDb *db, const UnsootActing *who, UnsootStaffRow *person,
                            GError **error);

/* A person's new PIN: their own, or set by an owner. */
gboolean unsoot_staff_set_pin (UnsootDb *db, const UnsootActing *who, gint64 staff_id,
                               const char *pin, GError **error);

/* The person at the desk, where @pin is theirs. Errors: NOT_ALLOWED for a wrong PIN, none
 * set, or someone who no longer works here. */
UnsootStaffRow *unsoot_staff_sign_in (UnsootDb *db, gint64 staff_id, const char *pin,
                                      GError **error);

/* By initials or name, as a command names the acting person. Errors: NOT_FOUND, with who
 * there is. */
UnsootStaffRow *unsoot_staff_find (UnsootDb *db, const char *name_or_initials, GError **error);

G_END_DECLS
