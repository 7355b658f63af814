/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "demo-private.h"
#include "lots.h"

G_BEGIN_DECLS

/* One job of the demo: what is asked for, and how far it is taken. */
typedef struct
{
  const UnsootDemoVehicle *vehicle;
  int service; /* index into the catalogue's services */
  gint64 starts_at;
  int bay; /* indexes */
  int machine;
  int technician;       /* UNSOOT_DEMO_… */
  gint64 quoted_before; /* seconds between the quote and the start */
  const char *complaint;
  const char *codes;
  gint64 comeback_of;
  guint port;  /* pictures are taken of this port; 0: none */
  gint64 wait; /* seconds that the vehicle arrives before its start */
} UnsootDemoPlan;

/* Each takes the job one deed further; ids come back, 0 and @error otherwise. */
gint64 unsoot_demo_quote (UnsootDemo *demo, const UnsootDemoPlan *plan, GError **error);
gboolean unsoot_demo_authorise (UnsootDemo *demo, const UnsootDemoPlan *plan, gint64 job_id,
                                GError **error);
gboolean unsoot_demo_book (UnsootDemo *demo, const UnsootDemoPlan *plan, gint64 job_id,
                           GError **error);
gboolean unsoot_demo_arrive (UnsootDemo *demo, const UnsootDemoPlan *plan, gint64 job_id,
                             GError **error);
/* Readings before and the run, up to @share of its steps, the last of them at @ends_by
 * (0: at a usual pace); @ends_at is when. */
gint64 unsoot_demo_run (UnsootDemo *demo, const UnsootDemoPlan *plan, gint64 job_id, double share,
                        gint64 ends_by, gint64 *ends_at, GError **error);
gboolean unsoot_demo_finish (UnsootDemo *demo, const UnsootDemoPlan *plan, gint64 job_id, gint64 at,
                             GError **error);
/* The invoice, and its payment where @paid_at is not 0. */
gboolean unsoot_demo_bill (UnsootDemo *demo, gint64 job_id, gint64 at, gint64 paid_at,
                           const char *method, GError **error);

/* What the vehicle's meter shows at @at. */
double unsoot_demo_meter (const UnsootDemoVehicle *vehicle, gint64 at);

/* Which service a vehicle can have: both sides, or the fuel side where there is no EGR. */
int unsoot_demo_service_for (const UnsootDemoVehicle *vehicle);

G_END_DECLS
