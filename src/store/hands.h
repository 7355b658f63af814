/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "days.h"
#include "shop-row.h"
#include "vehicle-row.h"

G_BEGIN_DECLS

/* One round through the shop for what needs a hand; for the store's own days.c. */
typedef struct
{
  UnsootDb *db;
  const UnsootShopRow *shop;
  gint64 now;
  int today;        /* civil.h */
  const char *date; /* the same, ISO */
  GPtrArray *hands; /* UnsootHand */
} UnsootHandRound;

/* Takes @thing and @rest. */
void unsoot_hand_add (UnsootHandRound *round, UnsootHandKind kind, gint64 urgency,
                      UnsootTargetKind target, gint64 target_id, const char *verb, char *thing,
                      char *rest);

/* "Brindle T4, unit 12": short, as it stands in a line. */
char *unsoot_hand_vehicle (const UnsootVehicleRow *vehicle);
/* The same by the id; NULL on error. */
char *unsoot_hand_vehicle_of (UnsootHandRound *round, gint64 vehicle_id, GError **error);

/* The day of @iso; 0 where it is NULL or no date. */
int unsoot_hand_day (const char *iso);
/* "today 14:30", "in 9 days" for an instant. */
char *unsoot_hand_when (const UnsootHandRound *round, gint64 at);
/* The shop's day at an instant. */
int unsoot_hand_day_of (const UnsootHandRound *round, gint64 at);

/* One file for each part of the shop. */
gboolean unsoot_hands_setup (UnsootHandRound *round, GError **error);
gboolean unsoot_hands_runs (UnsootHandRound *round, GError **error);
gboolean unsoot_hands_jobs (UnsootHandRound *round, GError **error);
gboolean unsoot_hands_fluids (UnsootHandRound *round, GError **error);
gboolean unsoot_hands_equipment (UnsootHandRound *round, GError **error);
gboolean unsoot_hands_customers (UnsootHandRound *round, GError **error);

/* After the others: what was called about rests, and what was called about before says so. */
gboolean unsoot_hands_calls (UnsootHandRound *round, GError **error);

G_END_DECLS
