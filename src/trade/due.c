/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "due.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "civil.h"
#include "civil-words.h"
#include "fit.h"
#include "student.h"

#define OWN_RATE_NEEDS 3
#define WINDOW_DAYS 3650

const UnsootSlug unsoot_due_by[] = {
  { UNSOOT_DUE_NEVER, "never", N_ ("No interval set") },
  { UNSOOT_DUE_MONTHS, "months", N_ ("By time") },
  { UNSOOT_DUE_DISTANCE, "distance", N_ ("By distance") },
  { UNSOOT_DUE_HOURS, "hours", N_ ("By engine hours") },
  { 0, NULL, NULL },
};

/* FALSE where its own readings are too few or it does not grow. */
static gboolean
own_line (const UnsootMeter *meter, UnsootTrend *fit)
{
  g_autofree UnsootPoint *points = g_new (UnsootPoint, meter->n_points);
  for (gsize i = 0; i < meter->n_points; i++)
    points[i] = (UnsootPoint){ meter->points[i].day, (double) meter->points[i].value };
  return meter->n_points >= OWN_RATE_NEEDS && unsoot_fit_line (points, meter->n_points, fit)
         && fit->slope > 0;
}

double
unsoot_due_rate (const UnsootMeter *meter, gboolean *from_fleet)
{
  UnsootTrend fit;
  *from_fleet = FALSE;
  if (own_line (meter, &fit))
    return fit.slope;
  *from_fleet = meter->fleet_rate > 0;
  return *from_fleet ? meter->fleet_rate : 0;
}

/* Where the meter was last seen, at the service or after it. */
static UnsootMeterPoint
last_seen (int last_service, const UnsootMeter *meter)
{
  UnsootMeterPoint seen = { last_service, meter->at_service };
  for (gsize i = 0; i < meter->n_points; i++)
    if (meter->points[i].day > seen.day && meter->points[i].value >= seen.value)
      seen = meter->points[i];
  return seen;
}

/* The first day on which the meter has gone the interval, or 0. */
static int
day_of_meter (int last_service, const UnsootMeter *meter, gint64 interval, double *rate,
              gboolean *from_fleet)
{
  *rate = unsoot_due_rate (meter, from_fleet);
  if (interval <= 0 || meter->at_service < 0)
    return 0;
  UnsootMeterPoint seen = last_seen (last_service, meter);
  double left = (double) meter->at_service + (double) interval - (double) seen.value;
  if (left <= 0)
    {
      *rate = 0;
      *from_fleet = FALSE;
      return seen.day;
    }
  if (*rate <= 0)
    return 0;
  double days = ceil (left / *rate);
  return days > UNSOOT_DAY_MAX - seen.day ? 0 : seen.day + (int) days;
}

static void
take_earlier (UnsootDue *due, UnsootDueBy by, int day, double rate, gboolean from_fleet)
{
  if (day > 0 && (due->by == UNSOOT_DUE_NEVER || day < due->day))
    *due = (UnsootDue){ by, day, rate, from_fleet, NULL };
}

static char *
by_meter_sentence (const UnsootDue *due, const char *day, const char *interval, const char *rate)
{
  if (due->rate <= 0)
    return g_strdup_printf (_ ("Due since %s: %s since the last service are over."), day, interval);
  if (due->from_fleet)
    return g_strdup_printf (
        _ ("Due about %s: %s after the last service, at %s a day as like vehicles "
           "do."),
        day, interval, rate);
  return g_strdup_printf (_ ("Due about %s: %s after the last service, at %s a day by its own "
                             "readings."),
                          day, interval, rate);
}

static char *
due_sentence (const UnsootDue *due, const UnsootDueInterval *interval, UnsootUnit distance)
{
  UnsootUnit unit = due->by == UNSOOT_DUE_HOURS ? UNSOOT_UNIT_H : distance;
  gint64 span = due->by == UNSOOT_DUE_HOURS ? interval->seconds : interval->metres;
  g_autofree char *day = due->day > 0 ? unsoot_day_words (due->day) : NULL;
  g_autofree char *far = unsoot_unit_format ((double) span, unit, 0);
  g_autofree char *rate = unsoot_unit_format (due->rate, unit, 1);
  switch (due->by)
    {
    case UNSOOT_DUE_NEVER:
      return g_strdup (
          _ ("No next service can be reckoned: no interval is set, or the meter was not "
             "read."));
    case UNSOOT_DUE_MONTHS:
      return g_strdup_printf (ngettext ("Due %s: %d month after the last service.",
                                        "Due %s: %d months after the last service.",
                                        (gulong) interval->months),
                              day, interval->months);
    case UNSOOT_DUE_DISTANCE:
    case UNSOOT_DUE_HOURS:
      return by_meter_sentence (due, day, far, rate);
    }
  g_assert_not_reached ();
}

UnsootDue
unsoot_due_next (int last_service, const UnsootDueInterval *interval, const UnsootMeter *odometer,
                 const UnsootMeter *hours, UnsootUnit distance)
{
  UnsootDue due = { UNSOOT_DUE_NEVER, 0, 0, FALSE, NULL };
  double rate;
  gboolean fleet;
  if (interval->months > 0)
    take_earlier (&due, UNSOOT_DUE_MONTHS, unsoot_day_add_months (last_service, interval->months),
                  0, FALSE);
  int day = day_of_meter (last_service, odometer, interval->metres, &rate, &fleet);
  take_earlier (&due, UNSOOT_DUE_DISTANCE, day, rate, fleet);
  day = day_of_meter (last_service, hours, interval->seconds, &rate, &fleet);
  take_earlier (&due, UNSOOT_DUE_HOURS, day, rate, fleet);
  due.sentence = due_sentence (&due, interval, distance);
  return due;
}

gboolean
unsoot_due_window (const UnsootMeter *meter, gint64 target, int today, double share, int *first,
                   int *last)
{
  UnsootTrend fit;
  *first = *last = 0;
  if (!own_line (meter, &fit) || unsoot_fit_at (&fit, today) >= (double) target)
    return FALSE;
  const double t = unsoot_student_quantile ((1 + share) / 2, (int) fit.n - 2);
  for (int day = today; day <= today + WINDOW_DAYS && *last == 0; day++)
    {
      const double middle = unsoot_fit_at (&fit, day), band = t * unsoot_fit_scatter (&fit, day);
      if (*first == 0 && middle + band >= (double) target)
        *first = day;
      if (middle - band >= (double) target)
        *last = day;
    }
  return *first > 0;
}

void
unsoot_due_clear (UnsootDue *due)
{
  g_clear_pointer (&due->sentence, g_free);
}
