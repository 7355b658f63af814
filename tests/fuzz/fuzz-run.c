/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "fuzz.h"
#include "procedure-text.h"
#include "run.h"
#include "targets.h"

#define STEPS_A_RUN 400

static UnsootProcedure *procedure;
static UnsootFamilyFacts *facts;

static void
read_procedure (void)
{
  const char *source = g_getenv ("UNSOOT_SOURCE_DIR");
  g_autofree char *path = g_build_filename (source != NULL ? source : ".", "data", "demo",
                                            "procedures", "brindle-t4-5-1.txt", NULL);
  g_autofree char *text = NULL;
  GError *error = NULL;
  FUZZ_CHECK (g_file_get_contents (path, &text, NULL, &error)
                  && unsoot_procedure_parse (text, &procedure, &facts, &error),
              "%s", error->message);
}

/* What the screen offers next, so that a run gets on. */
static UnsootRunEventKind
next_kind (const UnsootRun *run)
{
  g_auto (UnsootRunOffer) offer = { 0 };
  unsoot_run_offer (run, &offer);
  switch (unsoot_run_state (run))
    {
    case UNSOOT_RUN_STATE_READY:
      return UNSOOT_RUN_BEGAN;
    case UNSOOT_RUN_STATE_HALTED:
    case UNSOOT_RUN_STATE_RELEASED:
      return UNSOOT_RUN_RESUMED;
    case UNSOOT_RUN_STATE_COMPLETE:
    case UNSOOT_RUN_STATE_SIGNED:
      return UNSOOT_RUN_SIGNED;
    case UNSOOT_RUN_STATE_RUNNING:
      break;
    }
  if (offer.caution)
    return UNSOOT_RUN_CAUTION;
  if (offer.ask_again)
    return UNSOOT_RUN_ASKED_AGAIN;
  if (!offer.may_do && offer.may_pass_over)
    return UNSOOT_RUN_PASS_OVER;
  if (!offer.timed)
    return UNSOOT_RUN_CONFIRM;
  return offer.running ? UNSOOT_RUN_ENDED : UNSOOT_RUN_STARTED;
}

static int
next_step (const UnsootRun *run, UnsootRunEventKind kind)
{
  g_auto (UnsootRunOffer) offer = { 0 };
  unsoot_run_offer (run, &offer);
  if (kind == UNSOOT_RUN_ASKED_AGAIN)
    return offer.ask_step;
  if (kind == UNSOOT_RUN_CAUTION && offer.step < (int) procedure->steps->len)
    return unsoot_procedure_step (procedure, offer.step)->phase;
  return kind == UNSOOT_RUN_BEGAN || kind == UNSOOT_RUN_RESUMED || kind == UNSOOT_RUN_SIGNED
             ? -1
             : offer.step;
}

/* What a careful technician enters with the step: its own values, nine tenths of the dose used. */
static void
enter (const UnsootRun *run, UnsootRunEvent *event)
{
  if (event->step < 0 || event->step >= (int) procedure->steps->len
      || (event->kind != UNSOOT_RUN_CONFIRM && event->kind != UNSOOT_RUN_ENDED))
    return;
  const UnsootStep *step = unsoot_procedure_step (procedure, event->step);
  event->value = step->act == UNSOOT_ACT_MEASURE ? 0.0 : step->value;
  event->lot_id = step->act == UNSOOT_ACT_FILL ? 1 : 0;
  if (step->act == UNSOOT_ACT_MEASURE && step->subject == UNSOOT_SUBJECT_TANK)
    event->ml = facts->dose_ml[step->side] / 10;
  if (step->act == UNSOOT_ACT_RUN && step->side != UNSOOT_SIDE_NONE)
    event->ml = (gint64) ((double) facts->dose_ml[step->side] * 0.9 * step->share)
                - unsoot_run_rig (run)->used_ml[step->side];
}

/* An event that gets on, or one that comes in the way: the first byte says which. */
static UnsootRunEvent *
next_event (const UnsootRun *run, gint64 *now, const guint8 **data, gsize *size)
{
  guint8 choice = fuzz_byte (data, size);
  gboolean odd = choice >= 0xc0;
  UnsootRunEventKind kind
      = odd ? (UnsootRunEventKind) (fuzz_byte (data, size) % UNSOOT_RUN_EVENT_KINDS)
            : next_kind (run);
  *now += choice % 64 * 10;
  UnsootRunEvent *event = unsoot_run_event_new (kind, *now);
  event->seq = unsoot_run_next_seq (run);
  event->step = odd && choice & 1 ? fuzz_byte (data, size) % 120 - 2 : next_step (run, kind);
  event->staff_id = 1;
  enter (run, event);
  if (kind == UNSOOT_RUN_PASS_OVER || kind == UNSOOT_RUN_SIGNED)
    event->text = g_strdup ("said");
  if (choice & 2)
    event->ml = fuzz_byte (data, size) * 20 - 20;
  if (choice & 4)
    event->lot_id = fuzz_byte (data, size) % 3;
  if (!odd)
    return event;
  event->happening = (UnsootHappening) (fuzz_byte (data, size) % UNSOOT_HAPPENINGS);
  event->done_at -= choice & 8 ? fuzz_byte (data, size) * 10 : 0;
  event->value = choice & 16 ? fuzz_byte (data, size) * 1000.0 : event->value;
  g_clear_pointer (&event->text, g_free);
  if (kind == UNSOOT_RUN_EXTRA)
    event->text = unsoot_step_print (
        unsoot_procedure_step (procedure, fuzz_byte (data, size) % (int) procedure->steps->len));
  else
    event->text = g_strdup ("said");
  return event;
}

/* Nobody is in danger whatever was told: the rules that hold in any state of the rig. */
static void
check_rig (const UnsootRun *run)
{
  const UnsootRig *rig = unsoot_run_rig (run);
  FUZZ_CHECK (!rig->atomiser || unsoot_rig_engine_runs (rig), "mist, and the engine stands still");
  FUZZ_CHECK (!unsoot_rig_on_machine (rig) || !unsoot_rig_engine_runs (rig) || rig->pump,
              "the engine runs on a pump that stands still");
}

static void
check_words (const UnsootRun *run, gint64 now)
{
  g_auto (GStrv) off = unsoot_run_off_engine (run);
  g_auto (GStrv) tanks = unsoot_run_tanks (run);
  g_autofree char *next = unsoot_run_next_safe_step (run);
  gint64 late = 0;
  FUZZ_CHECK (off != NULL && tanks != NULL && next != NULL, "no words");
  FUZZ_CHECK (!unsoot_run_alarm (run, now, &late) || late >= 0, "%" G_GINT64_FORMAT, late);
}

/* The events that were taken give the same run again. */
static void
check_again (const UnsootRun *run, const GPtrArray *taken)
{
  g_autoptr (UnsootRun) again = unsoot_run_new (procedure, facts, NULL);
  for (guint i = 0; i < taken->len; i++)
    {
      GError *error = NULL;
      fuzz_answer (unsoot_run_apply (again, taken->pdata[i], &error), &error);
    }
  g_autofree char *digest = unsoot_run_digest (run);
  g_autofree char *digest_again = unsoot_run_digest (again);
  FUZZ_CHECK (strcmp (digest, digest_again) == 0, "%s\n%s", digest, digest_again);
}

/* The events of a run as they are read back from the store, possible ones and others. */
void
fuzz_run (const guint8 *data, gsize size)
{
  if (procedure == NULL)
    read_procedure ();
  g_autoptr (UnsootRun) run = unsoot_run_new (procedure, facts, NULL);
  g_autoptr (GPtrArray) taken
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_run_event_free);
  gint64 now = 1700000000;

  for (int i = 0; i < STEPS_A_RUN && size > 0; i++)
    {
      g_autoptr (UnsootRunEvent) event = next_event (run, &now, &data, &size);
      g_autofree char *before = unsoot_run_digest (run);
      GError *error = NULL;
      if (fuzz_answer (unsoot_run_apply (run, event, &error), &error))
        g_ptr_array_add (taken, g_steal_pointer (&event));
      else
        {
          g_autofree char *after = unsoot_run_digest (run);
          FUZZ_CHECK (strcmp (before, after) == 0, "%s\n%s", before, after);
        }
      check_rig (run);
    }
  check_words (run, now);
  check_again (run, taken);
}
