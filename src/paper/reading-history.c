/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reading-history.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "civil-words.h"
#include "civil.h"
#include "drawing-scale.h"

#define LEFT 64.0
#define RIGHT 12.0
#define TOP 30.0
#define BOTTOM 24.0
#define TITLE_Y 10.0
#define APART_MOST 46.0 /* before from after */
#define WHISKER 3.0
#define MARK 3.5

enum
{
  LINES_MOST = 3
};

static void
history_free (gpointer data)
{
  UnsootReadingHistory *history = data;

  g_array_unref (history->visits);
  g_free (history);
}

static UnsootReadingVisit *
visit_of (UnsootReadingHistory *history, gint64 job_id)
{
  const UnsootReadingVisit new_visit = { .job_id = job_id };

  for (guint i = 0; i < history->visits->len; i++)
    {
      UnsootReadingVisit *visit = &g_array_index (history->visits, UnsootReadingVisit, i);
      if (visit->job_id == job_id)
        return visit;
    }
  g_array_append_val (history->visits, new_visit);
  return &g_array_index (history->visits, UnsootReadingVisit, history->visits->len - 1);
}

static void
take (const UnsootReadingRow **latest, const UnsootReadingRow *row)
{
  if (*latest == NULL || row->at >= (*latest)->at)
    *latest = row;
}

static gint64
time_of (const UnsootReadingVisit *visit)
{
  return visit->before != NULL ? visit->before->at : visit->after->at;
}

static int
by_time (gconstpointer a, gconstpointer b)
{
  const gint64 first = time_of (a), second = time_of (b);

  return (first > second) - (first < second);
}

static UnsootReadingHistory *
history_of (const GPtrArray *rows, int kind)
{
  UnsootReadingHistory *history = g_new (UnsootReadingHistory, 1);

  history->kind = (UnsootReadingKind) kind;
  history->visits = g_array_new (FALSE, FALSE, sizeof (UnsootReadingVisit));
  for (guint i = 0; i < rows->len; i++)
    {
      const UnsootReadingRow *row = g_ptr_array_index (rows, i);
      UnsootReadingVisit *visit;
      int its_kind;

      if (!unsoot_slug_find (unsoot_reading_kinds, row->kind, &its_kind) || its_kind != kind)
        continue;
      visit = visit_of (history, row->job_id);
      take (g_strcmp0 (row->stage, "after") == 0 ? &visit->after : &visit->before, row);
    }
  g_array_sort (history->visits, by_time);
  return history;
}

GPtrArray *
unsoot_reading_histories (const GPtrArray *rows)
{
  GPtrArray *histories = g_ptr_array_new_with_free_func (history_free);

  for (int kind = 0; kind < UNSOOT_READING_KINDS; kind++)
    {
      UnsootReadingHistory *history = history_of (rows, kind);
      if (history->visits->len > 0)
        g_ptr_array_add (histories, history);
      else
        history_free (history);
    }
  return histories;
}

/* What is needed again and again while it is drawn. */
typedef struct
{
  UnsootDrawing *drawing;
  const UnsootReadingHistory *history;
  UnsootScale up; /* in the unit that is shown */
} Plot;

static UnsootUnit
unit_of (const UnsootReadingHistory *history)
{
  return unsoot_reading_facts (history->kind).shown;
}

static char *
value_words (double value, gconstpointer data)
{
  const UnsootUnit unit = unit_of (data);

  return unsoot_unit_format (unsoot_unit_to_si (unit, value), unit, value == floor (value) ? 0 : 1);
}

/* The ends of a whisker, in the unit that is shown. */
static void
ends_of (const Plot *plot, const UnsootReadingRow *row, double *low, double *high)
{
  const UnsootReading reading = unsoot_paper_reading (row);
  const double off = unsoot_reading_tolerance (plot->history->kind, &reading);

  *low = unsoot_unit_from_si (unit_of (plot->history), row->value - off);
  *high = unsoot_unit_from_si (unit_of (plot->history), row->value + off);
}

static void
find_scale (Plot *plot, double start, double end)
{
  double low = INFINITY, high = -INFINITY;

  for (guint i = 0; i < plot->history->visits->len; i++)
    {
      const UnsootReadingVisit *visit
          = &g_array_index (plot->history->visits, UnsootReadingVisit, i);
      const UnsootReadingRow *rows[] = { visit->before, visit->after };
      for (gsize j = 0; j < G_N_ELEMENTS (rows); j++)
        if (rows[j] != NULL)
          {
            double its_low, its_high;
            ends_of (plot, rows[j], &its_low, &its_high);
            low = MIN (low, its_low);
            high = MAX (high, its_high);
          }
    }
  plot->up = unsoot_scale_round (low, high, LINES_MOST, start, end);
}

static UnsootPoint
place_of (const Plot *plot, const UnsootReadingRow *row, double x)
{
  const double value = unsoot_unit_from_si (unit_of (plot->history), row->value);

  return (UnsootPoint){ x, unsoot_scale_at (&plot->up, value) };
}

/* Its mark and whisker. */
static void
draw_value (const Plot *plot, const UnsootReadingRow *row, double x, gboolean after)
{
  const UnsootInk ink = after ? UNSOOT_INK_ACCENT : UNSOOT_INK_LABEL;
  double ends[2];

  ends_of (plot, row, &ends[0], &ends[1]);
  for (gsize i = 0; i < G_N_ELEMENTS (ends); i++)
    {
      ends[i] = unsoot_scale_at (&plot->up, ends[i]);
      unsoot_drawing_line (plot->drawing, UNSOOT_STROKE_LINE, ink, 1, x - WHISKER, ends[i],
                           x + WHISKER, ends[i]);
    }
  unsoot_drawing_line (plot->drawing, UNSOOT_STROKE_LINE, ink, 1, x, ends[0], x, ends[1]);
  unsoot_drawing_mark (plot->drawing, after ? UNSOOT_STROKE_DISC : UNSOOT_STROKE_RING, ink, MARK, x,
                       place_of (plot, row, x).y);
}

static char *
visit_words (const Plot *plot, const UnsootReadingVisit *visit, const char *day)
{
  g_autofree char *before = visit->before != NULL
                                ? unsoot_reading_format (plot->history->kind, visit->before->value)
                                : g_strdup ("–");
  g_autofree char *after = visit->after != NULL
                               ? unsoot_reading_format (plot->history->kind, visit->after->value)
                               : g_strdup ("–");

  if (visit->before != NULL && visit->after != NULL)
    {
      const UnsootReading first = unsoot_paper_reading (visit->before);
      const UnsootReading last = unsoot_paper_reading (visit->after);
      g_auto (UnsootReadingChange) change
          = unsoot_reading_change (plot->history->kind, &first, &last, &unsoot_alike_usual);
      /* Translators: a day; the reading before and after; a sentence about the difference */
      return g_strdup_printf (_ ("%s: before %s, after %s. %s"), day, before, after,
                              change.sentence);
    }
  return g_strdup_printf (_ ("%s: before %s, after %s"), day, before, after);
}

static char *
day_words (gint64 at, GTimeZone *zone, gboolean shortly)
{
  const int interval = g_time_zone_find_interval (zone, G_TIME_TYPE_UNIVERSAL, at);
  const int day = unsoot_local_from_unix (at, g_time_zone_get_offset (zone, interval) / 60).day;

  return shortly ? unsoot_day_month_words (day) : unsoot_day_words (day);
}

static void
draw_visit (const Plot *plot, const UnsootReadingVisit *visit, double left, double width,
            GTimeZone *zone)
{
  const double middle = left + width / 2, apart = MIN (width / 2, APART_MOST);
  g_autofree char *day = day_words (time_of (visit), zone, TRUE);
  g_autofree char *exact = day_words (time_of (visit), zone, FALSE);
  const double x[] = { middle - apart / 2, middle + apart / 2 };

  if (visit->before != NULL && visit->after != NULL)
    {
      const UnsootPoint ends[]
          = { place_of (plot, visit->before, x[0]), place_of (plot, visit->after, x[1]) };
      unsoot_drawing_add (plot->drawing, UNSOOT_STROKE_LINE, UNSOOT_INK_ACCENT, 1.5, ends,
                          G_N_ELEMENTS (ends));
    }
  if (visit->before != NULL)
    draw_value (plot, visit->before, x[0], FALSE);
  if (visit->after != NULL)
    draw_value (plot, visit->after, x[1], TRUE);
  unsoot_drawing_text (plot->drawing, UNSOOT_INK_LABEL, 0.5, middle, plot->up.start + BOTTOM / 2,
                       day);
  unsoot_drawing_spot (plot->drawing, left, TOP, width, plot->drawing->height - TOP,
                       visit_words (plot, visit, exact));
}

UnsootDrawing *
unsoot_reading_history_draw (const UnsootReadingHistory *history, GTimeZone *zone, double width,
                             double height)
{
  Plot plot = { unsoot_drawing_new (width, height), history, { 0 } };
  const double right = MAX (width - RIGHT, LEFT + 1);
  const double room = (right - LEFT) / MAX (history->visits->len, 1);

  unsoot_drawing_text (plot.drawing, UNSOOT_INK_TEXT, 0, 0, TITLE_Y,
                       unsoot_slug_words (unsoot_reading_kinds, (int) history->kind));
  find_scale (&plot, MAX (height - BOTTOM, TOP + 1), TOP);
  unsoot_scale_draw_lines (plot.drawing, &plot.up, LINES_MOST, LEFT, right, value_words, history);
  for (guint i = 0; i < history->visits->len; i++)
    draw_visit (&plot, &g_array_index (history->visits, UnsootReadingVisit, i), LEFT + room * i,
                room, zone);
  return plot.drawing;
}
