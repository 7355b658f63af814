/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hands.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "attention.h"
#include "civil-words.h"
#include "dose.h"
#include "fluid-needs.h"
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

static void
tell_short (UnsootHandRound *round, const UnsootFluidNeed *need)
{
  g_autofree char *when = unsoot_hand_when (round, need->starts_at);
  g_autofree char *sentence = unsoot_stock_shortage_sentence (need->fluid, need->short_ml, when);

  unsoot_hand_add (round, UNSOOT_HAND_SHORT, -need->starts_at, UNSOOT_TARGET_FLUID, need->fluid_id,
                   _ ("Order"), g_strdup (need->fluid), rest_of (sentence, need->fluid));
}

/* The first shortage of each fluid: what is ordered for it covers the rest. */
static gboolean
tell_shorts (UnsootHandRound *round, GError **error)
{
  g_autoptr (GPtrArray) needs
      = unsoot_fluid_needs (round->db, round->shop, round->now, 0, 0, error);
  gint64 told = 0;

  for (guint i = 0; needs != NULL && i < needs->len; i++)
    {
      const UnsootFluidNeed *need = needs->pdata[i];
      if (need->short_ml <= 0 || need->fluid_id == told)
        continue;
      told = need->fluid_id;
      tell_short (round, need);
    }
  return needs != NULL;
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
  return tell_shorts (round, error) && tell_lots (round, error);
}
