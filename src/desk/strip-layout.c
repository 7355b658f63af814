/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "strip-layout.h"

enum
{
  HOUR = 3600
};

/* Rounded down, below zero too. */
static gint64
floor_hours (gint64 seconds)
{
  return seconds >= 0 ? seconds / HOUR : -((HOUR - 1 - seconds) / HOUR);
}

void
unsoot_strip_hours (gint64 midnight, gint64 opens, gint64 closes, const UnsootStripSpan *spans,
                    gsize n, gint64 *from, gint64 *to)
{
  gint64 first = opens, last = closes;

  for (gsize i = 0; i < n; i++)
    {
      first = MIN (first, spans[i].from);
      last = MAX (last, spans[i].to);
    }
  /* Counted from the shop's midnight: a zone may be half an hour off the others. */
  *from = midnight + floor_hours (first - midnight) * HOUR;
  *to = midnight - floor_hours (midnight - last) * HOUR;
  if (*to <= *from)
    *to = *from + HOUR;
}

double
unsoot_strip_x (const UnsootStripScale *scale, gint64 at)
{
  const double share = (double) (at - scale->from) / (double) (scale->to - scale->from);

  return scale->left + CLAMP (share, 0.0, 1.0) * (scale->width - scale->left);
}

static gboolean
overlap (const UnsootStripSpan *a, const UnsootStripSpan *b)
{
  return a->lane == b->lane && a->from < b->to && b->from < a->to;
}

/* The lowest storey of the lane that no earlier block in the way has taken. */
static int
free_storey (const UnsootStripSpan *spans, const int *storeys, gsize i)
{
  int storey = 0;
  gboolean taken = TRUE;

  while (taken)
    {
      taken = FALSE;
      for (gsize j = 0; j < i && !taken; j++)
        taken = storeys[j] == storey && overlap (&spans[i], &spans[j]);
      storey += taken;
    }
  return storey;
}

/* Marks all blocks that hang together with block i through overlaps; returns how high they stack. */
static int
storeys_around (const UnsootStripSpan *spans, const int *storeys, gsize n, gsize i)
{
  gint64 from = spans[i].from, to = spans[i].to;
  int highest = 0;
  gboolean grown = TRUE;

  while (grown)
    {
      grown = FALSE;
      for (gsize j = 0; j < n; j++)
        {
          const UnsootStripSpan reach = { from, to, spans[i].lane };
          if (!overlap (&reach, &spans[j]))
            continue;
          highest = MAX (highest, storeys[j]);
          grown |= spans[j].from < from || spans[j].to > to;
          from = MIN (from, spans[j].from);
          to = MAX (to, spans[j].to);
        }
    }
  return highest + 1;
}

void
unsoot_strip_place (const UnsootStripScale *scale, const UnsootStripSpan *spans, gsize n,
                    UnsootStripRect *rects)
{
  g_autofree int *storeys = g_new0 (int, n);

  for (gsize i = 0; i < n; i++)
    storeys[i] = free_storey (spans, storeys, i);
  for (gsize i = 0; i < n; i++)
    {
      const int n_storeys = storeys_around (spans, storeys, n, i);
      const double height = (scale->lane_height - scale->gap * (n_storeys - 1)) / n_storeys;
      const double left = unsoot_strip_x (scale, spans[i].from);

      rects[i].x = left;
      rects[i].width = unsoot_strip_x (scale, spans[i].to) - left;
      rects[i].height = height;
      rects[i].y = scale->top + spans[i].lane * (scale->lane_height + scale->gap)
                   + storeys[i] * (height + scale->gap);
    }
}

int
unsoot_strip_hour_step (const UnsootStripScale *scale, double label_width)
{
  static const int steps[] = { 1, 2, 3, 4, 6 };
  const double hours = (double) (scale->to - scale->from) / HOUR;
  const double hour_width = (scale->width - scale->left) / hours;

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if (hour_width * steps[i] >= label_width)
      return steps[i];
  return 12;
}
