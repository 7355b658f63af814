/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "booking-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* What becomes of a job's bookings, in the caller's deed. */

/* None of them stands any more. */
gboolean unsoot_job_drop_bookings (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                                   GError **error);

/* The one that stands was kept, until now: what it held is free again. */
gboolean unsoot_job_keep_booking (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                                  GError **error);

/* In the bay again: it holds what it held. */
gboolean unsoot_job_renew_booking (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                                   GError **error);

G_END_DECLS
