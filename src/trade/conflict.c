/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "conflict.h"

#include <glib/gi18n-lib.h>

#include "civil-words.h"

gint64
unsoot_wall_minute (const UnsootLocal *local)
{
  return (gint64) local->day * UNSOOT_DAY_MINUTES + local->hour * 60 + local->minute;
}

/* With NULL for a list, looking stops at the first conflict and writes no sentence. */
typedef struct
{
  GArray *list;
  gboolean any;
} Found;

static void
clear_conflict (gpointer data)
{
  g_free (((UnsootConflict *) data)->sentence);
}

G_GNUC_PRINTF (4, 5)
static void
report (Found *found, UnsootConflictKind kind, gint64 other, const char *format, ...)
{
  va_list args;
  found->any = TRUE;
  if (found->list == NULL)
    return;
  va_start (args, format);
  UnsootConflict conflict = { kind, other, g_strdup_vprintf (format, args) };
  va_end (args);
  g_array_append_val (found->list, conflict);
}

static int
day_of (gint64 minute)
{
  return (int) (minute / UNSOOT_DAY_MINUTES);
}

static char *
clock_words (gint64 minute)
{
  int of_day = (int) (minute % UNSOOT_DAY_MINUTES);
  return g_strdup_printf ("%02d:%02d", of_day / 60, of_day % 60);
}

/* "24 Nov 2025 08:30 to 10:10". */
static char *
span_words (const UnsootSlot *slot)
{
  g_autofree char *day = unsoot_day_words (day_of (slot->starts));
  g_autofree char *last = unsoot_day_words (day_of (slot->ends));
  g_autofree char *from = clock_words (slot->starts);
  g_autofree char *to = clock_words (slot->ends);
  if (day_of (slot->starts) == day_of (slot->ends))
    /* Translators: a day, two times of that day. */
    return g_strdup_printf (_ ("%s %s to %s"), day, from, to);
  /* Translators: a day and time, another day and time. */
  return g_strdup_printf (_ ("%s %s to %s %s"), day, from, last, to);
}

static void
report_taken (Found *found, UnsootConflictKind kind, const UnsootNamed *what,
              const UnsootSlot *other)
{
  g_autofree char *span = span_words (other);
  /* Translators: a bay, machine, person or adapter, a job, its time. */
  report (found, kind, other->id, _ ("%s is taken by %s, %s."), what->label, other->title, span);
}

static gboolean
is_same (const UnsootNamed *a, const UnsootNamed *b)
{
  return a->id != 0 && a->id == b->id;
}

static void
find_shared_items (const UnsootSlot *slot, const UnsootSlot *other, Found *found)
{
  for (gsize i = 0; i < slot->n_items; i++)
    for (gsize k = 0; k < other->n_items; k++)
      if (is_same (&slot->items[i], &other->items[k]))
        report_taken (found, UNSOOT_CONFLICT_ADAPTER, &slot->items[i], other);
}

static void
find_overlaps (const UnsootSlot *slot, const UnsootDiary *diary, Found *found)
{
  for (gsize i = 0; i < diary->n_slots; i++)
    {
      const UnsootSlot *other = &diary->slots[i];
      gboolean itself = slot->id != 0 && slot->id == other->id;
      if (itself || slot->starts >= other->ends || other->starts >= slot->ends)
        continue;
      if (is_same (&slot->bay, &other->bay))
        report_taken (found, UNSOOT_CONFLICT_BAY, &slot->bay, other);
      if (is_same (&slot->machine, &other->machine))
        report_taken (found, UNSOOT_CONFLICT_MACHINE, &slot->machine, other);
      if (is_same (&slot->technician, &other->technician))
        report_taken (found, UNSOOT_CONFLICT_TECHNICIAN, &slot->technician, other);
      find_shared_items (slot, other, found);
    }
}

static gboolean
is_open (const UnsootSlot *slot, const UnsootDiary *diary)
{
  int day = day_of (slot->starts);
  gint64 midnight = (gint64) day * UNSOOT_DAY_MINUTES;
  int weekday = unsoot_day_weekday (day);
  for (gsize i = 0; i < diary->n_openings; i++)
    {
      const UnsootOpening *opening = &diary->openings[i];
      if (opening->weekday == weekday && slot->starts >= midnight + opening->opens
          && slot->ends <= midnight + opening->closes)
        return TRUE;
    }
  return FALSE;
}

static char *
opening_words (const UnsootDiary *diary, int weekday)
{
  GString *words = g_string_new (NULL);
  for (gsize i = 0; i < diary->n_openings; i++)
    {
      if (diary->openings[i].weekday != weekday)
        continue;
      g_autofree char *opens = clock_words (diary->openings[i].opens);
      g_autofree char *closes = diary->openings[i].closes == UNSOOT_DAY_MINUTES
                                    ? g_strdup ("24:00")
                                    : clock_words (diary->openings[i].closes);
      g_string_append_printf (words, "%s%s–%s", words->len ? ", " : "", opens, closes);
    }
  return g_string_free (words, FALSE);
}

static void
find_closed (const UnsootSlot *slot, const UnsootDiary *diary, Found *found)
{
  if (is_open (slot, diary))
    return;
  int weekday = unsoot_day_weekday (day_of (slot->starts));
  g_autofree char *span = span_words (slot);
  g_autofree char *hours = opening_words (diary, weekday);
  const char *name = unsoot_weekday_words (weekday);
  if (*hours == '\0')
    /* Translators: a span of time, a weekday. */
    report (found, UNSOOT_CONFLICT_CLOSED, 0, _ ("%s: the shop is shut on %s."), span, name);
  else
    /* Translators: a span of time, a weekday, hours of that day. */
    report (found, UNSOOT_CONFLICT_CLOSED, 0,
            _ ("%s is outside opening hours; on %s the shop is open %s."), span, name, hours);
}

static void
find_holidays (const UnsootSlot *slot, const UnsootDiary *diary, Found *found)
{
  for (gsize i = 0; i < diary->n_holidays; i++)
    {
      const UnsootHoliday *holiday = &diary->holidays[i];
      if (holiday->day < day_of (slot->starts) || holiday->day > day_of (slot->ends - 1))
        continue;
      g_autofree char *day = unsoot_day_words (holiday->day);
      report (found, UNSOOT_CONFLICT_HOLIDAY, 0, _ ("%s is a holiday: %s."), day, holiday->name);
    }
}

static char *
until_words (gint64 until)
{
  if (until == G_MAXINT64)
    return g_strdup (_ ("nobody noted until when"));
  g_autofree char *day = unsoot_day_words (day_of (until));
  g_autofree char *at = clock_words (until);
  return g_strdup_printf (_ ("back %s %s"), day, at);
}

static void
report_away (Found *found, const UnsootNamed *item, const UnsootAway *away)
{
  g_autofree char *until = until_words (away->until);
  switch (away->why)
    {
    case UNSOOT_AWAY_LOAN:
      /* Translators: an adapter, who has it, when it comes back. */
      report (found, UNSOOT_CONFLICT_LOAN, item->id, _ ("%s is on loan to %s, %s."), item->label,
              away->where ? away->where : _ ("somebody"), until);
      return;
    case UNSOOT_AWAY_INSPECTION:
      report (found, UNSOOT_CONFLICT_INSPECTION, item->id, _ ("%s is under inspection, %s."),
              item->label, until);
      return;
    }
  g_assert_not_reached ();
}

static void
find_away (const UnsootSlot *slot, const UnsootDiary *diary, Found *found)
{
  for (gsize i = 0; i < slot->n_items; i++)
    for (gsize k = 0; k < diary->n_aways; k++)
      if (diary->aways[k].item == slot->items[i].id && slot->starts < diary->aways[k].until)
        report_away (found, &slot->items[i], &diary->aways[k]);
}

static void
find_shorts (const UnsootDiary *diary, Found *found)
{
  for (gsize i = 0; i < diary->n_shorts; i++)
    if (diary->shorts[i].short_ml > 0)
      report (found, UNSOOT_CONFLICT_FLUID, 0, _ ("%s is %g L short for this booking."),
              diary->shorts[i].fluid, (double) diary->shorts[i].short_ml / 1000);
}

static void
find_by_time (const UnsootSlot *slot, const UnsootDiary *diary, Found *found)
{
  find_overlaps (slot, diary, found);
  find_closed (slot, diary, found);
  find_holidays (slot, diary, found);
  find_away (slot, diary, found);
}

GArray *
unsoot_conflict_find (const UnsootSlot *slot, const UnsootDiary *diary)
{
  Found found = { g_array_new (FALSE, FALSE, sizeof (UnsootConflict)), FALSE };
  g_array_set_clear_func (found.list, clear_conflict);
  find_by_time (slot, diary, &found);
  find_shorts (diary, &found);
  return found.list;
}

GArray *
unsoot_conflict_free_starts (const UnsootSlot *slot, const UnsootDiary *diary, int day, guint most)
{
  GArray *starts = g_array_new (FALSE, FALSE, sizeof (gint64));
  gint64 length = slot->ends - slot->starts;
  gint64 midnight = (gint64) day * UNSOOT_DAY_MINUTES;
  for (gint64 at = midnight; at < midnight + UNSOOT_DAY_MINUTES; at += UNSOOT_GRID_MINUTES)
    {
      UnsootSlot moved = *slot;
      Found found = { NULL, FALSE };
      moved.starts = at;
      moved.ends = at + length;
      if (is_open (&moved, diary))
        find_by_time (&moved, diary, &found);
      else
        continue;
      if (!found.any)
        g_array_append_val (starts, at);
      if (most > 0 && starts->len == most)
        break;
    }
  return starts;
}
