/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo-run.h"

#include "store-error.h"

#include <math.h>

/* How long steps that have no clock of their own take, in seconds. */
#define STEP_SECONDS 38
#define READ_SECONDS 25

static gint64
dose_share (const UnsootRun *run, UnsootSide side, double share)
{
  return llround ((double) unsoot_run_facts (run)->dose_ml[side] * (isnan (share) ? 1.0 : share));
}

/* What is poured is the dose; what is used by a run is its share of the dose, less what
 * earlier runs used; what is measured is what the rig holds. */
static void
enter_values (const UnsootRun *run, const UnsootStep *step, const UnsootDemoPace *pace,
              UnsootRunEvent *event)
{
  const UnsootRig *rig = unsoot_run_rig (run);
  UnsootSide side = step->side;

  event->value = step->value;
  if (step->act == UNSOOT_ACT_FILL)
    {
      event->ml = dose_share (run, side, step->share);
      event->lot_id = pace->lot_id[side];
      event->fluid = side;
    }
  else if (step->act == UNSOOT_ACT_RUN && side != UNSOOT_SIDE_NONE)
    {
      gint64 until = dose_share (run, side, step->share);

      event->ml = MAX (0, until - rig->used_ml[side]);
      if (pace->random != NULL && event->ml > 200)
        event->ml -= g_rand_int_range (pace->random, 0, 13) * 5;
      event->ml = MIN (event->ml, rig->tank[side].ml);
    }
  else if (step->subject == UNSOOT_SUBJECT_TANK && side != UNSOOT_SIDE_NONE)
    event->ml = rig->tank[side].ml;
  else if (step->subject == UNSOOT_SUBJECT_OIL)
    event->value = 0.0;
  else if (step->act == UNSOOT_ACT_MEASURE && isnan (event->value))
    event->value = 1.0;
}

static gint64
seconds_for (const UnsootStep *step, const UnsootDemoPace *pace)
{
  if (step->act == UNSOOT_ACT_RUN || step->act == UNSOOT_ACT_SOAK)
    return isnan (step->minutes) ? 240 : llround (step->minutes * 60.0);
  return STEP_SECONDS + (pace->random != NULL ? g_rand_int_range (pace->random, -15, 25) : 0);
}

typedef struct
{
  UnsootRun *run;
  GPtrArray *events; /* UnsootRunEvent, in order */
  gint64 at;
  gint64 staff_id;
} Carry;

static gboolean
add_event (Carry *carry, UnsootRunEvent *event, GError **error)
{
  event->seq = unsoot_run_next_seq (carry->run);
  event->staff_id = carry->staff_id;
  g_ptr_array_add (carry->events, event);
  return unsoot_run_apply (carry->run, event, error);
}

static gboolean
carry_step (Carry *carry, const UnsootRunOffer *offer, const UnsootDemoPace *pace, GError **error)
{
  const UnsootStep *step = unsoot_procedure_step (unsoot_run_procedure (carry->run), offer->step);
  UnsootRunEvent *event;

  if (offer->caution)
    {
      event = unsoot_run_event_new (UNSOOT_RUN_CAUTION, carry->at += READ_SECONDS);
      event->step = step->phase;
      return add_event (carry, event, error);
    }
  if (offer->timed && !offer->running)
    {
      event = unsoot_run_event_new (UNSOOT_RUN_STARTED, carry->at += 5);
      event->step = offer->step;
      return add_event (carry, event, error);
    }
  carry->at += seconds_for (step, pace);
  event = unsoot_run_event_new (offer->timed ? UNSOOT_RUN_ENDED : UNSOOT_RUN_CONFIRM, carry->at);
  event->step = offer->step;
  enter_values (carry->run, step, pace, event);
  return add_event (carry, event, error);
}

/* Stretches or presses the stamps between the first and ENDS_BY. */
static void
fit_times (Carry *carry, gint64 from, gint64 ends_by)
{
  double scale = carry->at > from ? (double) (ends_by - from) / (double) (carry->at - from) : 1.0;

  for (guint i = 0; i < carry->events->len; i++)
    {
      UnsootRunEvent *event = carry->events->pdata[i];

      event->at = from + (gint64) ((double) (event->at - from) * scale);
      event->done_at = event->at;
    }
  carry->at = ends_by;
}

gboolean
unsoot_demo_carry (UnsootDb *db, const UnsootActing *who, gint64 run_id, const UnsootDemoPace *pace,
                   gint64 *ends_at, GError **error)
{
  g_autoptr (UnsootRun) run = unsoot_job_run_load (db, run_id, error);
  g_autoptr (GPtrArray) events
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_run_event_free);

  if (run == NULL)
    return FALSE;
  Carry carry = { .run = run, .events = events, .at = who->now, .staff_id = who->staff_id };
  int steps = (int) unsoot_run_procedure (run)->steps->len;
  int until = (int) lround (pace->share * steps);
  while (unsoot_run_current (run) < until)
    {
      g_auto (UnsootRunOffer) offer = { 0 };

      unsoot_run_offer (run, &offer);
      if (!offer.caution && !offer.may_do)
        {
          g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONSTRAINT, "%s",
                       offer.fault.reason);
          return FALSE;
        }
      if (!carry_step (&carry, &offer, pace, error))
        return FALSE;
    }
  if (pace->ends_by != 0)
    fit_times (&carry, who->now, pace->ends_by);
  *ends_at = carry.at;
  return unsoot_job_run_post_all (db, who, run_id, events, error);
}
