/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "runs.h"

G_BEGIN_DECLS

/* How far a run is carried. */
typedef struct
{
  double share;                /* of the steps, 0 to 1 */
  gint64 ends_by;              /* Unix seconds: steps are spread until then; 0: at a usual pace */
  gint64 lot_id[UNSOOT_SIDES]; /* what is poured */
  GRand *random;               /* a little scatter in volumes; NULL: exactly by the rule */
} UnsootDemoPace;

/**
 * unsoot_demo_carry:
 * @who: the technician, from whose `now` on the steps are stamped
 * @ends_at: (out): when the last step was done
 *
 * Confirms one step after the other as a careful technician would, each with the value
 * that the step plans, until @pace's share is done.
 */
gboolean unsoot_demo_carry (UnsootDb *db, const UnsootActing *who, gint64 run_id,
                            const UnsootDemoPace *pace, gint64 *ends_at, GError **error);

G_END_DECLS
