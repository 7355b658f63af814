/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pictures as lists of strokes: where things stand, and that paper shows them there. */
#include "civil.h"
#include "drawing-scale.h"
#include "life-drawing.h"
#include "page-drawing.h"
#include "paper-fixture.h"
#include "paper-probe.h"
#include "reading-history.h"
#include "suite.h"
#include "trace-drawing.h"

#include <math.h>
#include <string.h>

#define MILE 1609.344

/* The least of 1, 2, 5, 10 … that needs no more than so many pieces; worked out by hand. */
START_TEST (steps_are_round)
{
  static const struct
  {
    double span;
    int most;
    double step;
  } cases[] = { { 10, 5, 2 },    { 11, 5, 5 },      { 5, 5, 1 },          { 100, 4, 50 },
                { 0.3, 5, 0.1 }, { 0.09, 5, 0.02 }, { 123456, 5, 50000 }, { 1, 1, 1 } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    ck_near (unsoot_scale_step (cases[i].span, cases[i].most), cases[i].step, 1e-12);
}
END_TEST

START_TEST (rounded_scale_holds_its_values)
{
  const UnsootScale scale = unsoot_scale_round (83211, 131877, 5, 200, 0);

  ck_near (scale.low, 80000, 1e-6);
  ck_near (scale.high, 140000, 1e-6);
  ck_near (unsoot_scale_at (&scale, 110000), 100, 1e-9);
  ck_near (unsoot_scale_at (&scale, 1e9), 0, 1e-9);
  ck_near (unsoot_scale_at (&scale, -1), 200, 1e-9);
}
END_TEST

START_TEST (the_last_spot_is_on_top)
{
  g_autoptr (UnsootDrawing) drawing = unsoot_drawing_new (100, 50);
  g_autofree char *words = NULL;

  unsoot_drawing_spot (drawing, 0, 0, 50, 50, g_strdup ("wide"));
  unsoot_drawing_spot (drawing, 10, 10, 5, 5, g_strdup ("small"));
  ck_assert_str_eq (unsoot_drawing_spot_at (drawing, 12, 12)->words, "small");
  ck_assert_str_eq (unsoot_drawing_spot_at (drawing, 20, 12)->words, "wide");
  ck_assert_ptr_null (unsoot_drawing_spot_at (drawing, 60, 12));
  words = unsoot_drawing_words (drawing);
  ck_assert_str_eq (words, "wide\nsmall");
}
END_TEST

/* A truck that does 50 miles a day, a little up and down, with two services. */
static UnsootLife
truck (GArray *services, UnsootMeterPoint *points)
{
  static const int wobble[] = { 0, 300, -250, 120, -170 };
  const int start = unsoot_day (2025, 1, 15);
  const UnsootLifeService first = { start, 101, TRUE, FALSE };
  const UnsootLifeService second = { start + 200, 140, TRUE, TRUE };

  for (int i = 0; i < 5; i++)
    points[i]
        = (UnsootMeterPoint){ start + 60 * i, (gint64) ((80000 + 3000 * i + wobble[i]) * MILE) };
  g_array_append_val (services, first);
  g_array_append_val (services, second);
  return (UnsootLife){ .meter = { points[0].value, points, 5, 0 },
                       .unit = UNSOOT_UNIT_MI,
                       .services = services,
                       .target = (gint64) (97000 * MILE),
                       .due = start + 340,
                       .today = start + 245 };
}

static const UnsootStroke *
find_stroke (const UnsootDrawing *drawing, UnsootStrokeKind kind, UnsootInk ink, guint which)
{
  for (guint i = 0; i < drawing->strokes->len; i++)
    {
      const UnsootStroke *stroke = g_ptr_array_index (drawing->strokes, i);
      if (stroke->kind == kind && stroke->ink == ink && which-- == 0)
        return stroke;
    }
  return NULL;
}

/* Two services and today fix the scale of days: what lies between them is in proportion. */
START_TEST (days_are_in_proportion)
{
  g_autoptr (GArray) services = g_array_new (FALSE, FALSE, sizeof (UnsootLifeService));
  UnsootMeterPoint points[5];
  const UnsootLife life = truck (services, points);
  g_autoptr (UnsootDrawing) drawing = unsoot_life_drawing_new (&life, 800, 260);
  const UnsootStroke *fuel[] = { find_stroke (drawing, UNSOOT_STROKE_AREA, UNSOOT_INK_FUEL, 0),
                                 find_stroke (drawing, UNSOOT_STROKE_AREA, UNSOOT_INK_FUEL, 1) };
  const UnsootStroke *due = find_stroke (drawing, UNSOOT_STROKE_DASHES, UNSOOT_INK_WARNING, 0);
  const double middle[] = { (fuel[0]->points[0].x + fuel[0]->points[1].x) / 2,
                            (fuel[1]->points[0].x + fuel[1]->points[1].x) / 2 };
  const double a_day = (middle[1] - middle[0]) / 200;

  ck_assert_ptr_nonnull (find_stroke (drawing, UNSOOT_STROKE_HATCH, UNSOOT_INK_INTAKE, 0));
  ck_assert_ptr_null (find_stroke (drawing, UNSOOT_STROKE_HATCH, UNSOOT_INK_INTAKE, 1));
  ck_near (due->points[0].x, middle[0] + 340 * a_day, 1e-6);
}
END_TEST

/* The shaded days are those of unsoot_due_window (), which has its own test. */
START_TEST (window_is_shaded)
{
  g_autoptr (GArray) services = g_array_new (FALSE, FALSE, sizeof (UnsootLifeService));
  UnsootMeterPoint points[5];
  const UnsootLife life = truck (services, points);
  g_autoptr (UnsootDrawing) drawing = unsoot_life_drawing_new (&life, 800, 260);
  const UnsootStroke *shade = find_stroke (drawing, UNSOOT_STROKE_AREA, UNSOOT_INK_WARNING, 0);
  const UnsootStroke *due = find_stroke (drawing, UNSOOT_STROKE_DASHES, UNSOOT_INK_WARNING, 0);
  const UnsootStroke *fuel = find_stroke (drawing, UNSOOT_STROKE_AREA, UNSOOT_INK_FUEL, 0);
  const double service = (fuel->points[0].x + fuel->points[1].x) / 2;
  const double a_day = (due->points[0].x - service) / 340;
  int first, last;

  ck_assert (unsoot_due_window (&life.meter, life.target, life.today, 0.9, &first, &last));
  ck_assert_int_lt (first, life.due);
  ck_assert_int_gt (last, life.due);
  ck_near (shade->points[1].x - shade->points[0].x, (last - first) * a_day, 1e-6);
  ck_near (shade->points[0].x, service + (first - points[0].day) * a_day, 1e-6);
}
END_TEST

START_TEST (what_is_said_names_jobs_and_sides)
{
  g_autoptr (GArray) services = g_array_new (FALSE, FALSE, sizeof (UnsootLifeService));
  UnsootMeterPoint points[5];
  const UnsootLife life = truck (services, points);
  g_autoptr (UnsootDrawing) drawing = unsoot_life_drawing_new (&life, 800, 260);
  g_autofree char *words = unsoot_drawing_words (drawing);

  ck_assert_ptr_nonnull (strstr (words, "15 Jan 2025: job 101, fuel side"));
  ck_assert_ptr_nonnull (strstr (words, "3 Aug 2025: job 140, both sides"));
  ck_assert_ptr_nonnull (strstr (words, "15 Jan 2025: 80000 mi"));
  ck_assert_ptr_nonnull (strstr (words, "Next due about 21 Dec 2025"));
}
END_TEST

/* Whatever is known or unknown, nothing is drawn off the picture or nowhere. */
START_TEST (nothing_leaves_the_picture)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (2417);

  for (int round = 0; round < 400; round++)
    {
      g_autoptr (GArray) services = g_array_new (FALSE, FALSE, sizeof (UnsootLifeService));
      UnsootMeterPoint points[5];
      UnsootLife life = truck (services, points);
      const double width = g_rand_double_range (random, 240, 1500);

      life.meter.n_points = (gsize) g_rand_int_range (random, 0, 6);
      for (int i = 0; i < 5; i++)
        points[i].value = g_rand_int_range (random, 0, G_MAXINT);
      g_array_set_size (services, (guint) g_rand_int_range (random, 0, 3));
      life.due = g_rand_boolean (random) ? life.due : 0;
      life.target = g_rand_boolean (random) ? g_rand_int_range (random, 1, G_MAXINT) : 0;
      g_autoptr (UnsootDrawing) drawing = unsoot_life_drawing_new (&life, width, 260);
      for (guint i = 0; i < drawing->strokes->len; i++)
        {
          const UnsootStroke *stroke = g_ptr_array_index (drawing->strokes, i);
          /* A month's name reaches some 27 to both sides of its line. */
          if (stroke->text != NULL && stroke->ink == UNSOOT_INK_LABEL && stroke->align > 0
              && stroke->align < 1)
            ck_assert_msg (stroke->points[0].x + 27 <= width, "round %d: %s is cut", round,
                           stroke->text);
          for (gsize j = 0; j < stroke->n; j++)
            ck_assert_msg (stroke->points[j].x >= 0 && stroke->points[j].x <= width
                               && stroke->points[j].y >= 0 && stroke->points[j].y <= 260,
                           "round %d: %f, %f", round, stroke->points[j].x, stroke->points[j].y);
        }
    }
}
END_TEST

static UnsootReadingRow *
reading (GPtrArray *rows, gint64 job, const char *kind, const char *stage, double value, gint64 at)
{
  UnsootReadingRow *row = unsoot_reading_row_new ();

  row->job_id = job;
  row->kind = g_strdup (kind);
  row->stage = g_strdup (stage);
  row->value = value;
  row->tolerance = 1000;
  row->rpm = 2000;
  row->load_percent = row->coolant_c = row->barometer_pa = row->ambient_c = NAN;
  row->at = at;
  g_ptr_array_add (rows, row);
  return row;
}

/* Two visits and a kind that has only one half: grouped by visit, the latest of a stage taken. */
static GPtrArray *
some_readings (void)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_reading_row_free);

  reading (rows, 9, "boost", "before", 140000, 1760000000);
  reading (rows, 9, "boost", "after", 150000, 1760003600);
  reading (rows, 4, "boost", "before", 100000, 1700000000);
  reading (rows, 4, "boost", "after", 170000, 1700003600);
  reading (rows, 4, "boost", "after", 160000, 1700007200);
  reading (rows, 9, "rail", "before", 30000000, 1760000000);
  reading (rows, 9, "no-such-kind", "before", 1, 1760000000);
  return rows;
}

START_TEST (readings_are_parted_by_kind_and_visit)
{
  g_autoptr (GPtrArray) rows = some_readings ();
  g_autoptr (GPtrArray) histories = unsoot_reading_histories (rows);
  const UnsootReadingHistory *boost, *rail;
  const UnsootReadingVisit *first;

  ck_assert_uint_eq (histories->len, 2);
  boost = g_ptr_array_index (histories, 0);
  rail = g_ptr_array_index (histories, 1);
  ck_assert_int_eq (boost->kind, UNSOOT_READING_BOOST);
  ck_assert_uint_eq (boost->visits->len, 2);
  first = &g_array_index (boost->visits, UnsootReadingVisit, 0);
  ck_assert_int_eq (first->job_id, 4);
  ck_near (first->before->value, 100000, 1e-6);
  ck_near (first->after->value, 160000, 1e-6);
  ck_assert_int_eq (rail->kind, UNSOOT_READING_RAIL);
  ck_assert_ptr_null (g_array_index (rail->visits, UnsootReadingVisit, 0).after);
}
END_TEST

/* 60 kPa more is drawn six times as high as 10 kPa more, upwards, and a whisker of 1 kPa either way
 * a fifth of the latter. */
START_TEST (readings_are_in_proportion)
{
  g_autoptr (GPtrArray) rows = some_readings ();
  g_autoptr (GPtrArray) histories = unsoot_reading_histories (rows);
  g_autoptr (GTimeZone) zone = g_time_zone_new_utc ();
  g_autoptr (UnsootDrawing) drawing
      = unsoot_reading_history_draw (g_ptr_array_index (histories, 0), zone, 300, 130);
  g_autofree char *words = unsoot_drawing_words (drawing);
  double rise[2] = { 0, 0 }, whisker = 0;

  for (guint i = 0, pair = 0; i < drawing->strokes->len; i++)
    {
      const UnsootStroke *stroke = g_ptr_array_index (drawing->strokes, i);
      if (stroke->kind != UNSOOT_STROKE_LINE || stroke->ink != UNSOOT_INK_ACCENT)
        continue;
      if (stroke->weight > 1)
        rise[pair++] = stroke->points[0].y - stroke->points[1].y;
      else if (stroke->points[0].x == stroke->points[1].x)
        whisker = fabs (stroke->points[0].y - stroke->points[1].y);
    }
  ck_assert (rise[1] > 0);
  ck_near (rise[0] / rise[1], 6, 1e-9);
  ck_near (rise[1] / whisker, 5, 1e-9);
  ck_assert_ptr_nonnull (strstr (words, "14 Nov 2023: before 14.5 psi, after 23.2 psi"));
}
END_TEST

/* Ten minutes: 1 L poured at once, half of it used in the middle; the earlier run took twenty. */
START_TEST (a_trace_is_level_between_events)
{
  const UnsootTracePoint own[] = { { 1000, { 0, 1000, 0 }, 0, 0 },
                                   { 1300, { 0, 500, 0 }, 55000, 0 },
                                   { 1600, { 0, 500, 0 }, 0, 0 } };
  const UnsootTracePoint before[]
      = { { 500, { 0, 0, 2000 }, 0, 0 }, { 1700, { 0, 0, 0 }, 0, 275000 } };
  g_autoptr (GArray) first = g_array_new (FALSE, FALSE, sizeof (UnsootTracePoint));
  g_autoptr (GArray) second = g_array_new (FALSE, FALSE, sizeof (UnsootTracePoint));
  const UnsootTraceLine lines[] = { { 1000, first }, { 500, second } };
  g_autoptr (UnsootDrawing) drawing = NULL;
  g_autofree char *words = NULL;
  const UnsootStroke *level;

  g_array_append_vals (first, own, G_N_ELEMENTS (own));
  g_array_append_vals (second, before, G_N_ELEMENTS (before));
  drawing = unsoot_trace_drawing_new (lines, 2, 700, 300);
  level = find_stroke (drawing, UNSOOT_STROKE_LINE, UNSOOT_INK_FUEL, 0);
  ck_assert_uint_eq (level->n, 5);
  ck_near (level->points[0].y, level->points[1].y, 1e-9); /* 1 L until minute 5 … */
  ck_near (level->points[1].x, level->points[2].x, 1e-9); /* … then half at once */
  ck_assert (level->points[2].y > level->points[1].y);
  ck_near (level->points[4].x - level->points[0].x, 2 * (level->points[2].x - level->points[0].x),
           1e-9);
  words = unsoot_drawing_words (drawing);
  ck_assert_ptr_nonnull (
      strstr (words, "5 min: fuel tank 500 mL, intake tank 0 mL, supply 8 psi, air 0 psi"));
}
END_TEST

enum
{
  DOTS = 4 /* in a point */
};

static gboolean
is_dark (const guint8 *pixels, int width, double x, double y)
{
  return pixels[3 * ((int) (y * DOTS) * width + (int) (x * DOTS))] < 128;
}

/* The area is dark where it was put and the page white beside it, a hatch is neither, and an arrow
 * is narrow at its tip. */
START_TEST (paper_shows_it_where_it_stands)
{
  GError *error = NULL;
  UnsootShopRow *shop = unsoot_shop_row_new ();
  const UnsootPageHead head = {
    .shop = shop, .title = g_strdup ("Trial"), .number = g_strdup ("7"), .subject = g_strdup ("")
  };
  g_autoptr (UnsootPageKit) kit = unsoot_page_kit_new (UNSOOT_PAPER_LETTER, head, &error);
  g_autoptr (UnsootDrawing) drawing = unsoot_drawing_new (400, 100);
  g_autoptr (GBytes) pdf = NULL;
  g_autofree guint8 *pixels = NULL;
  int width, height, inked = 0, all = 0;
  double left;

  ck_no_error (error);
  unsoot_drawing_box (drawing, UNSOOT_STROKE_AREA, UNSOOT_INK_TEXT, 1, 10, 10, 40, 40);
  unsoot_drawing_box (drawing, UNSOOT_STROKE_HATCH, UNSOOT_INK_TEXT, 1, 110, 10, 40, 40);
  unsoot_drawing_mark (drawing, UNSOOT_STROKE_UP, UNSOOT_INK_TEXT, 20, 230, 10);
  left = kit->left;
  kit->y = 300;
  unsoot_page_drawing (kit, drawing);
  ck_near (kit->y, 400, 1e-9);
  pdf = unsoot_page_kit_finish (kit, NULL, &error);
  ck_no_error (error);
  probe_is_sound (pdf);
  pixels = probe_pixels (pdf, 1, 72 * DOTS, &width, &height);
  for (double x = 8; x <= 52; x += 4)
    ck_assert (is_dark (pixels, width, left + x, 330) == (x >= 10 && x < 50));
  for (double x = 112; x < 148; x += 0.25)
    for (double y = 312; y < 348; y += 0.25, all++)
      inked += is_dark (pixels, width, left + x, y);
  ck_assert_msg (inked > all / 6 && inked < all / 2, "%d of %d", inked, all);
  ck_assert (is_dark (pixels, width, left + 230, 328));
  ck_assert (is_dark (pixels, width, left + 222, 328));
  ck_assert (!is_dark (pixels, width, left + 222, 314));
  ck_assert (!is_dark (pixels, width, left + 238, 314));
  unsoot_shop_row_free (shop);
}
END_TEST

static Suite *
drawing_suite (void)
{
  Suite *suite = suite_create ("drawing");
  TCase *tests = tcase_create ("drawing");

  tcase_add_test (tests, steps_are_round);
  tcase_add_test (tests, rounded_scale_holds_its_values);
  tcase_add_test (tests, the_last_spot_is_on_top);
  tcase_add_test (tests, days_are_in_proportion);
  tcase_add_test (tests, window_is_shaded);
  tcase_add_test (tests, what_is_said_names_jobs_and_sides);
  tcase_add_test (tests, nothing_leaves_the_picture);
  tcase_add_test (tests, readings_are_parted_by_kind_and_visit);
  tcase_add_test (tests, readings_are_in_proportion);
  tcase_add_test (tests, a_trace_is_level_between_events);
  tcase_add_test (tests, paper_shows_it_where_it_stands);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (drawing_suite)
