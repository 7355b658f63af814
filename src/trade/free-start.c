/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "free-start.h"

#define QUARTERS (UNSOOT_DAY_MINUTES / UNSOOT_GRID_MINUTES)

/* A slot that takes one thing and nothing else. */
static UnsootSlot
slot_with (const UnsootFreeAsk *ask, UnsootNeedKind kind, const UnsootNamed *thing, gint64 starts)
{
  UnsootSlot slot = { .id = ask->own, .starts = starts, .ends = starts + ask->minutes };

  switch (kind)
    {
    case UNSOOT_NEED_BAY:
      slot.bay = *thing;
      break;
    case UNSOOT_NEED_MACHINE:
      slot.machine = *thing;
      break;
    case UNSOOT_NEED_TECHNICIAN:
      slot.technician = *thing;
      break;
    case UNSOOT_NEED_ADAPTER:
      slot.items = thing;
      slot.n_items = 1;
      break;
    }
  return slot;
}

static void
mark_starts (const UnsootFreeAsk *ask, const UnsootDiary *diary, int day, const UnsootNeed *need,
             gboolean free[QUARTERS])
{
  const gint64 midnight = (gint64) day * UNSOOT_DAY_MINUTES;

  for (gsize i = 0; i < need->n_any; i++)
    {
      const UnsootSlot slot = slot_with (ask, need->kind, &need->any[i], midnight);
      g_autoptr (GArray) starts = unsoot_conflict_free_starts (&slot, diary, day, 0);
      for (guint k = 0; k < starts->len; k++)
        free[(g_array_index (starts, gint64, k) - midnight) / UNSOOT_GRID_MINUTES] = TRUE;
    }
}

static void
keep_open (const UnsootFreeAsk *ask, const UnsootDiary *diary, int day, gboolean together[QUARTERS])
{
  const gint64 midnight = (gint64) day * UNSOOT_DAY_MINUTES;
  const UnsootSlot slot = { .id = ask->own, .starts = midnight, .ends = midnight + ask->minutes };
  g_autoptr (GArray) starts = unsoot_conflict_free_starts (&slot, diary, day, 0);

  for (guint k = 0; k < starts->len; k++)
    together[(g_array_index (starts, gint64, k) - midnight) / UNSOOT_GRID_MINUTES] = TRUE;
}

GArray *
unsoot_free_starts (const UnsootFreeAsk *ask, const UnsootDiary *diary, int day, gint64 from,
                    guint most)
{
  const gint64 midnight = (gint64) day * UNSOOT_DAY_MINUTES;
  GArray *starts = g_array_new (FALSE, FALSE, sizeof (gint64));
  gboolean together[QUARTERS] = { FALSE };

  keep_open (ask, diary, day, together);
  for (gsize i = 0; i < ask->n_needs; i++)
    {
      gboolean one[QUARTERS] = { FALSE };
      if (ask->needs[i].n_any == 0)
        continue;
      mark_starts (ask, diary, day, &ask->needs[i], one);
      for (int k = 0; k < QUARTERS; k++)
        together[k] = together[k] && one[k];
    }
  for (int k = 0; k < QUARTERS && (most == 0 || starts->len < most); k++)
    {
      const gint64 at = midnight + k * UNSOOT_GRID_MINUTES;
      if (together[k] && at >= from)
        g_array_append_val (starts, at);
    }
  return starts;
}

static gboolean
is_known (const GPtrArray *why, const char *sentence)
{
  for (guint i = 0; i < why->len; i++)
    if (g_strcmp0 (g_ptr_array_index (why, i), sentence) == 0)
      return TRUE;
  return FALSE;
}

/* Closing hours stand in the way of everything, and are said once. */
static void
add_sentences (GPtrArray *why, GArray *conflicts)
{
  for (guint i = 0; why != NULL && i < conflicts->len; i++)
    {
      const char *sentence = g_array_index (conflicts, UnsootConflict, i).sentence;
      if (!is_known (why, sentence))
        g_ptr_array_add (why, g_strdup (sentence));
    }
}

static gint64
choose_one (const UnsootFreeAsk *ask, const UnsootDiary *diary, const UnsootNeed *need,
            gint64 starts, GPtrArray *why)
{
  g_autoptr (GPtrArray) of_this = g_ptr_array_new_with_free_func (g_free);

  for (gsize i = 0; i < need->n_any; i++)
    {
      const UnsootSlot slot = slot_with (ask, need->kind, &need->any[i], starts);
      g_autoptr (GArray) conflicts = unsoot_conflict_find (&slot, diary);
      if (conflicts->len == 0)
        return need->any[i].id;
      add_sentences (of_this, conflicts);
    }
  for (guint i = 0; why != NULL && i < of_this->len; i++)
    if (!is_known (why, g_ptr_array_index (of_this, i)))
      g_ptr_array_add (why, g_strdup (g_ptr_array_index (of_this, i)));
  return 0;
}

gboolean
unsoot_free_choose (const UnsootFreeAsk *ask, const UnsootDiary *diary, gint64 starts, gint64 *ids,
                    GPtrArray *why)
{
  const UnsootSlot empty = { .id = ask->own, .starts = starts, .ends = starts + ask->minutes };
  const UnsootDiary timed = { .slots = diary->slots,
                              .n_slots = diary->n_slots,
                              .openings = diary->openings,
                              .n_openings = diary->n_openings,
                              .holidays = diary->holidays,
                              .n_holidays = diary->n_holidays,
                              .aways = diary->aways,
                              .n_aways = diary->n_aways };
  g_autoptr (GArray) closed = unsoot_conflict_find (&empty, &timed);
  gboolean all = closed->len == 0;

  add_sentences (why, closed);
  for (gsize i = 0; i < ask->n_needs; i++)
    {
      ids[i] = ask->needs[i].n_any > 0 ? choose_one (ask, &timed, &ask->needs[i], starts, why) : 0;
      all = all && (ids[i] != 0 || ask->needs[i].n_any == 0);
    }
  return all;
}
