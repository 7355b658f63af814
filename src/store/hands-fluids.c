/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hands.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "attention.h"
#include "civil-words.h"
#include "dose.h"
#include "civil.h"
#include "fluid-needs.h"
#include "fluid-supply.h"
#include "fluids.h"
#include "lot-shelf.h"

/* The trade's sentence without the fluid's name in front, which is set bold, and without
 * its full stop. A translation that begins otherwise stays whole. */
static char *
rest_of (const char *sentence, const char *thing)
{
  g_autofree char *rest
      = g_strdup (g_str_has_prefix (sentence, thing) ? sentence + strlen (thing) : sentence);

  if (g_str_has_suffix (rest, "."))
    rest[strlen (rest) - 1] = '\0';
  return g_strdup (g_strstrip (rest));
}

/* What is to come in time: an order whose day is past comes nobody knows when. */
static GArray *
arrivals_of (const UnsootHandRound *round, const GPtrArray *orders)
{
  GArray *arrivals = g_array_new (FALSE, FALSE, sizeof (UnsootOutlookNeed));

  for (guint i = 0; i < orders->len; i++)
    {
      const UnsootSupplyOrder *order = orders->pdata[i];
      const UnsootOutlookNeed arrival = { unsoot_hand_day (order->expected_on), order->open_ml };
      if (arrival.day >= round->today)
        g_array_append_val (arrivals, arrival);
    }
  return arrivals;
}

/* The first dose that lacks and that nothing on order brings in time; @short_ml: what it and those
 * before it lack. */
static const UnsootFluidNeed *
first_short (const UnsootHandRound *round, const UnsootFluidSupply *supply)
{
  g_autoptr (GArray) arrivals = arrivals_of (round, supply->orders);
  gint64 lacking = 0;

  for (guint i = 0; i < supply->needs->len; i++)
    {
      const UnsootFluidNeed *need = supply->needs->pdata[i];
      lacking += need->short_ml;
      if (need->short_ml > 0
          && unsoot_arrived_by ((const UnsootOutlookNeed *) (gconstpointer) arrivals->data,
                                arrivals->len, unsoot_hand_day (need->day))
                 < lacking)
        return need;
    }
  return NULL;
}

/* "is 3 L short for tomorrow 10:00", and when more of it comes. */
static void
tell_short (UnsootHandRound *round, const UnsootFluidSupply *supply, const UnsootFluidNeed *need)
{
  g_autofree char *when = unsoot_hand_when (round, need->starts_at);
  g_autofree char *sentence = unsoot_stock_shortage_sentence (need->fluid, need->short_ml, when);
  g_autofree char *rest = rest_of (sentence, need->fluid);
  const UnsootSupplyOrder *order = supply->orders->len > 0 ? supply->orders->pdata[0] : NULL;
  const int expected = order != NULL ? unsoot_hand_day (order->expected_on) : 0;
  g_autofree char *day = expected != 0 ? unsoot_day_near_words (expected, round->today) : NULL;
  g_autofree char *coming = NULL;

  if (day != NULL)
    {
      g_autofree char *volume = unsoot_dose_volume_words (supply->stock->on_order_ml);
      /* Translators: "is 3 L short for tomorrow 10:00", a volume, "in 2 days" */
      coming = g_strdup_printf (_ ("%s; %s on order, expected %s"), rest, volume, day);
    }
  else
    coming = g_steal_pointer (&rest);
  unsoot_hand_add (round, UNSOOT_HAND_SHORT, -need->starts_at, UNSOOT_TARGET_FLUID, need->fluid_id,
                   supply->suggestion.wanted_ml > 0 || order == NULL ? _ ("Order") : _ ("Call"),
                   g_strdup (need->fluid), g_steal_pointer (&coming));
}

/* Out of use, and yet a booked job takes it: the job gets another, or the fluid is used again. */
static void
tell_out_of_use (UnsootHandRound *round, const UnsootFluidSupply *supply)
{
  const UnsootFluidNeed *need = supply->needs->pdata[0];
  g_autofree char *when = unsoot_hand_when (round, need->starts_at);
  g_autofree char *volume = unsoot_dose_volume_words (need->ml);

  unsoot_hand_add (
      round, UNSOOT_HAND_SHORT, -need->starts_at, UNSOOT_TARGET_JOB, need->job_id,
      _ ("Change the job"), g_strdup (need->fluid),
      /* Translators: a volume, "tomorrow 10:00" */
      g_strdup_printf (_ ("is out of use, and %s of it is promised for %s"), volume, when));
}

static void
tell_late (UnsootHandRound *round, const UnsootSupplyOrder *order)
{
  const int expected = unsoot_hand_day (order->expected_on);
  g_autofree char *volume = unsoot_dose_volume_words (order->open_ml);
  g_autofree char *when = unsoot_day_near_words (expected, round->today);

  if (expected == 0 || expected >= round->today)
    return;
  unsoot_hand_add (round, UNSOOT_HAND_LATE, round->today - expected, UNSOOT_TARGET_FLUID,
                   order->order->fluid_id, _ ("Call"),
                   g_strdup_printf (_ ("Order %d"), (int) order->order->number),
                   /* Translators: a volume, a fluid, a supplier, "yesterday" */
                   g_strdup_printf (_ ("of %s %s from %s was expected %s"), volume, order->fluid,
                                    order->supplier->name, when));
}

static void
tell_reorder (UnsootHandRound *round, const UnsootFluidSupply *supply)
{
  g_autofree char *volume = unsoot_dose_volume_words (MAX (supply->stock->free_ml, 0));

  if (supply->state != UNSOOT_SUPPLY_LOW || supply->suggestion.wanted_ml <= 0)
    return;
  unsoot_hand_add (round, UNSOOT_HAND_REORDER, -supply->stock->free_ml, UNSOOT_TARGET_FLUID,
                   supply->fluid->id, _ ("Order"), g_strdup (supply->fluid->name),
                   /* Translators: a volume */
                   g_strdup_printf (_ ("is at its reorder point with %s free"), volume));
}

/* The first shortage of each fluid: what is ordered for it covers the rest. */
static gboolean
tell_supplies (UnsootHandRound *round, GError **error)
{
  g_autoptr (GPtrArray) supplies = unsoot_fluid_supply_list (round->db, round->now, error);

  for (guint i = 0; supplies != NULL && i < supplies->len; i++)
    {
      const UnsootFluidSupply *supply = supplies->pdata[i];
      const UnsootFluidNeed *need = first_short (round, supply);

      if (!supply->fluid->active)
        tell_out_of_use (round, supply);
      else if (need != NULL)
        tell_short (round, supply, need);
      for (guint k = 0; k < supply->orders->len; k++)
        tell_late (round, supply->orders->pdata[k]);
      if (supply->fluid->active)
        tell_reorder (round, supply);
    }
  return supplies != NULL;
}

static void
tell_lot (UnsootHandRound *round, const UnsootFluidRow *fluid, const UnsootLotStock *stock,
          const UnsootStockLot *lot)
{
  int ends = unsoot_hand_day (unsoot_stock_last_day (lot));
  g_autofree char *volume = unsoot_dose_volume_words (stock->on_hand_ml);
  g_autofree char *when = unsoot_day_near_words (ends, round->today);

  if (ends == 0 || stock->on_hand_ml <= 0 || ends - round->today > UNSOOT_ATTENTION_LOT)
    return;
  gboolean over = ends < round->today;
  unsoot_hand_add (
      round, UNSOOT_HAND_EXPIRY, round->today - ends, UNSOOT_TARGET_LOT, stock->lot->id,
      over ? _ ("Record waste") : _ ("Use first"), g_strdup_printf (_ ("Lot %s"), stock->lot->code),
      over ? g_strdup_printf (_ ("of %s expired %s with %s left"), fluid->name, when, volume)
           : g_strdup_printf (_ ("of %s expires %s with %s left"), fluid->name, when, volume));
}

static gboolean
tell_lots (UnsootHandRound *round, GError **error)
{
  g_autoptr (GPtrArray) fluids = unsoot_fluid_list (round->db, error);

  for (guint i = 0; fluids != NULL && i < fluids->len; i++)
    {
      const UnsootFluidRow *fluid = fluids->pdata[i];
      g_autoptr (UnsootLotShelf) shelf
          = unsoot_lot_shelf_load (round->db, fluid->id, round->date, error);
      if (shelf == NULL)
        return FALSE;
      for (guint k = 0; k < shelf->stocks->len; k++)
        tell_lot (round, fluid, shelf->stocks->pdata[k],
                  &g_array_index (shelf->lots, UnsootStockLot, k));
    }
  return fluids != NULL;
}

gboolean
unsoot_hands_fluids (UnsootHandRound *round, GError **error)
{
  return tell_supplies (round, error) && tell_lots (round, error);
}
