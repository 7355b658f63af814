/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-conflicts.h"

#include "booking-diary.h"

static GPtrArray *
sentences (const UnsootBookingDiary *book, const UnsootSlot *slot)
{
  GPtrArray *result = g_ptr_array_new_with_free_func (g_free);
  const UnsootDiary diary = unsoot_booking_diary_get (book);
  g_autoptr (GArray) conflicts = unsoot_conflict_find (slot, &diary);

  for (guint i = 0; i < conflicts->len; i++)
    g_ptr_array_add (result, g_strdup (g_array_index (conflicts, UnsootConflict, i).sentence));
  return result;
}

GPtrArray *
unsoot_booking_find_conflicts (UnsootDb *db, const UnsootBookingWish *wish, gboolean with_fluid,
                               gint64 now, GError **error)
{
  g_autoptr (UnsootBookingDiary) book = unsoot_booking_diary_new (db, error);
  UnsootSlot slot;

  if (book == NULL || !unsoot_booking_diary_read (book, wish->starts_at, wish->ends_at, error)
      || !unsoot_booking_diary_read_items (book, wish->items, wish->n_items, wish->starts_at,
                                           wish->ends_at, wish->job_id, now, error)
      || (with_fluid && !unsoot_booking_diary_read_shorts (book, wish, now, error))
      || !unsoot_booking_diary_slot (book, wish, &slot, error))
    return NULL;
  return sentences (book, &slot);
}
