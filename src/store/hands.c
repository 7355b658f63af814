/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hands.h"

#include <glib/gi18n-lib.h>

#include "civil-words.h"
#include "deed.h"
#include "shops.h"
#include "vehicles.h"

void
unsoot_hand_free (UnsootHand *hand)
{
  if (hand == NULL)
    return;
  g_free (hand->thing);
  g_free (hand->rest);
  g_free (hand->verb);
  g_free (hand);
}

void
unsoot_hand_add (UnsootHandRound *round, UnsootHandKind kind, gint64 urgency,
                 UnsootTargetKind target, gint64 target_id, const char *verb, char *thing,
                 char *rest)
{
  UnsootHand *hand = g_new0 (UnsootHand, 1);

  hand->kind = kind;
  hand->urgency = urgency;
  hand->target = target;
  hand->target_id = target_id;
  hand->verb = g_strdup (verb);
  hand->thing = thing;
  hand->rest = rest;
  g_ptr_array_add (round->hands, hand);
}

char *
unsoot_hand_vehicle (const UnsootVehicleRow *vehicle)
{
  g_autoptr (GString) title = g_string_new (vehicle->make);

  if (!unsoot_deed_blank (vehicle->model))
    g_string_append_printf (title, "%s%s", title->len > 0 ? " " : "", vehicle->model);
  if (title->len == 0)
    return unsoot_vehicle_title (vehicle);
  if (!unsoot_deed_blank (vehicle->unit_number))
    return g_strdup_printf (_ ("%s, unit %s"), title->str, vehicle->unit_number);
  if (!unsoot_deed_blank (vehicle->plate))
    return g_strdup_printf (_ ("%s, plate %s"), title->str, vehicle->plate);
  return g_strdup (title->str);
}

char *
unsoot_hand_vehicle_of (UnsootHandRound *round, gint64 vehicle_id, GError **error)
{
  g_autoptr (UnsootVehicleRow) vehicle = unsoot_vehicle_load (round->db, vehicle_id, error);

  return vehicle != NULL ? unsoot_hand_vehicle (vehicle) : NULL;
}

int
unsoot_hand_day (const char *iso)
{
  int day = 0;

  if (iso != NULL)
    unsoot_day_parse (iso, &day, NULL);
  return day;
}

static UnsootLocal
local_of (const UnsootHandRound *round, gint64 at)
{
  return unsoot_local_from_unix (at, unsoot_shop_utc_offset (round->shop, at));
}

char *
unsoot_hand_when (const UnsootHandRound *round, gint64 at)
{
  UnsootLocal moment = local_of (round, at);
  UnsootLocal now = local_of (round, round->now);

  return unsoot_moment_near_words (&moment, &now);
}

int
unsoot_hand_day_of (const UnsootHandRound *round, gint64 at)
{
  return local_of (round, at).day;
}
