/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "stock.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "trade-error.h"

gboolean
unsoot_stock_on_hand (const gint64 *moves, gsize n, gint64 *on_hand, GError **error)
{
  gint64 sum = 0;
  gboolean fits = TRUE;
  for (gsize i = 0; i < n && fits; i++)
    fits = !__builtin_add_overflow (sum, moves[i], &sum);
  if (!fits || sum < 0)
    {
      g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE,
                           fits ? _ ("More has been taken out of this lot than ever came in; count "
                                     "it and record the difference.")
                                : _ ("The moves of this lot are too large to be added up."));
      return FALSE;
    }
  *on_hand = sum;
  return TRUE;
}

const char *
unsoot_stock_last_day (const UnsootStockLot *lot)
{
  const char *opened = lot->opened ? lot->opened_until : NULL;
  if (opened == NULL || lot->expires == NULL)
    return opened ? opened : lot->expires;
  return strcmp (opened, lot->expires) < 0 ? opened : lot->expires;
}

gboolean
unsoot_stock_usable (const UnsootStockLot *lot, const char *day)
{
  const char *last = unsoot_stock_last_day (lot);
  return !lot->held && lot->on_hand > 0 && (last == NULL || strcmp (day, last) <= 0);
}

UnsootStockState
unsoot_stock_state (const UnsootStockLot *lots, gsize n, const char *today, gint64 promised,
                    double daily_use)
{
  UnsootStockState state = { .promised = promised };
  for (gsize i = 0; i < n; i++)
    {
      state.on_hand += lots[i].on_hand;
      if (unsoot_stock_usable (&lots[i], today))
        state.usable += lots[i].on_hand;
    }
  state.free = state.usable - promised;
  state.has_days_left = daily_use > 0;
  if (state.has_days_left)
    state.days_left = (double) MAX (state.free, 0) / daily_use;
  return state;
}

static int
compare_lots (gconstpointer a, gconstpointer b, gpointer data)
{
  const UnsootStockLot *lots = data;
  const gsize left = *(const gsize *) a, right = *(const gsize *) b;
  if (lots[left].opened != lots[right].opened)
    return lots[left].opened ? -1 : 1;
  const char *left_day = unsoot_stock_last_day (&lots[left]);
  const char *right_day = unsoot_stock_last_day (&lots[right]);
  if (left_day == NULL || right_day == NULL)
    {
      if (left_day != right_day)
        return left_day ? -1 : 1;
    }
  else if (strcmp (left_day, right_day) != 0)
    return strcmp (left_day, right_day);
  return left < right ? -1 : 1;
}

GArray *
unsoot_stock_pick (const UnsootStockLot *lots, gsize n, gint64 ml, const char *day,
                   gint64 *shortage)
{
  g_autoptr (GArray) order = g_array_new (FALSE, FALSE, sizeof (gsize));
  for (gsize i = 0; i < n; i++)
    if (unsoot_stock_usable (&lots[i], day))
      g_array_append_val (order, i);
  g_array_sort_with_data (order, compare_lots, (gpointer) lots);
  GArray *picks = g_array_new (FALSE, FALSE, sizeof (UnsootStockPick));
  gint64 missing = MAX (ml, 0);
  for (guint i = 0; i < order->len && missing > 0; i++)
    {
      gsize lot = g_array_index (order, gsize, i);
      UnsootStockPick pick = { lot, MIN (lots[lot].on_hand, missing) };
      missing -= pick.ml;
      g_array_append_val (picks, pick);
    }
  *shortage = missing;
  return picks;
}

static int
compare_needs (gconstpointer a, gconstpointer b, gpointer data)
{
  const UnsootStockNeed *needs = data;
  const gsize left = *(const gsize *) a, right = *(const gsize *) b;
  int by_day = strcmp (needs[left].day, needs[right].day);
  return by_day ? by_day : left < right ? -1 : 1;
}

void
unsoot_stock_allot (const UnsootStockLot *lots, gsize n, const UnsootStockNeed *needs,
                    gsize n_needs, gint64 *shortages)
{
  g_autofree UnsootStockLot *left = g_memdup2 (lots, n * sizeof *lots);
  g_autoptr (GArray) order = g_array_new (FALSE, FALSE, sizeof (gsize));
  for (gsize i = 0; i < n_needs; i++)
    g_array_append_val (order, i);
  g_array_sort_with_data (order, compare_needs, (gpointer) needs);
  for (guint i = 0; i < order->len; i++)
    {
      gsize need = g_array_index (order, gsize, i);
      g_autoptr (GArray) picks
          = unsoot_stock_pick (left, n, needs[need].ml, needs[need].day, &shortages[need]);
      for (guint k = 0; k < picks->len; k++)
        {
          const UnsootStockPick *pick = &g_array_index (picks, UnsootStockPick, k);
          left[pick->lot].on_hand -= pick->ml;
        }
    }
}

char *
unsoot_stock_shortage_sentence (const char *fluid, gint64 shortage, const char *when)
{
  /* Translators: a fluid, litres, a point in time as in "tomorrow 10:00". */
  return g_strdup_printf (_ ("%s is %g L short for %s."), fluid, (double) shortage / 1000, when);
}
