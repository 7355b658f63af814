/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run-step.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "pick.h"
#include "procedure-text.h"
#include "show-run.h"
#include "runs.h"
#include "unit-text.h"

#define SECONDS_A_MINUTE 60

/* What a technician enters with a step, as typed. */
typedef struct
{
  char *value;
  char *volume;
  char *lot;
  int ago;
} Entry;

/* What is done with the step, instead of confirming or ending it. */
typedef struct
{
  gboolean cautions;
  gboolean again;
  gboolean start;
  gboolean alarm_heard;
  char *so_far;
  char *pass_over;
} Deed;

static void
entry_clear (Entry *entry)
{
  g_free (entry->value);
  g_free (entry->volume);
  g_free (entry->lot);
}

static void
deed_clear (Deed *deed)
{
  g_free (deed->so_far);
  g_free (deed->pass_over);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Entry, entry_clear)
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Deed, deed_clear)

UnsootRun *
unsoot_command_run_of (UnsootCall *call, const char *number, gint64 *run_id, GError **error)
{
  g_autoptr (GError) fault = NULL;
  gint64 job_id = 0;

  if (!unsoot_pick_job (call, number, &job_id, error))
    return NULL;
  g_autoptr (UnsootRunRow) row = unsoot_job_run_of (call->db, job_id, &fault);
  if (fault != NULL)
    g_propagate_error (error, g_steal_pointer (&fault));
  else if (row == NULL)
    g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
                 _ ("Job %s has not begun its run: “run begin” does."), number);
  if (row == NULL)
    return NULL;
  *run_id = row->id;
  return unsoot_job_run_load (call->db, row->id, error);
}

gboolean
unsoot_command_run_post (UnsootCall *call, gint64 run_id, UnsootRunEvent *event, char *sentence,
                         GError **error)
{
  g_autofree char *taken = sentence;
  g_autoptr (UnsootRun) after = NULL;

  if (!unsoot_job_run_post (call->db, &call->who, run_id, event, &after, error))
    return FALSE;
  unsoot_answer_say (call->answer, g_steal_pointer (&taken));
  unsoot_show_run (call, after);
  return TRUE;
}

/* A number with or without its unit, in SI; the step's unit where none is typed. */
static gboolean
read_measure (const UnsootStep *step, const char *text, double *value, GError **error)
{
  UnsootUnit unit = step->unit != NULL ? unsoot_unit_from_words (step->unit) : UNSOOT_UNIT_NONE;
  const char *words = text + strspn (text, "-+0123456789.,/ ");
  UnsootUnit typed_unit = unsoot_unit_from_words (words);
  g_autofree char *digits = g_strndup (text, (gsize) (words - text));
  double typed = 0.0;

  if (*words != '\0' && typed_unit == UNSOOT_UNIT_NONE)
    return unsoot_call_misused (error, _ ("“%s” has a unit that is not known."), text);
  if (!unsoot_number_parse (g_strstrip (digits), &typed, error))
    return FALSE;
  if (*words != '\0')
    unit = typed_unit;
  *value = unit != UNSOOT_UNIT_NONE ? unsoot_unit_to_si (unit, typed) : typed;
  return TRUE;
}

static gboolean
read_value (const UnsootStep *step, const char *text, double *value, GError **error)
{
  UnsootTyped typed;
  UnsootUnit unit = step->unit != NULL ? unsoot_unit_from_words (step->unit) : UNSOOT_UNIT_NONE;

  if (step->subject == UNSOOT_SUBJECT_OIL)
    {
      *value = g_str_equal (text, "risen") ? 1.0 : 0.0;
      return g_str_equal (text, "risen") || g_str_equal (text, "ok")
             || unsoot_call_misused (error, _ ("The oil level is “ok” or “risen”, not “%s”."),
                                     text);
    }
  if (step->subject != UNSOOT_SUBJECT_PRESSURE && step->subject != UNSOOT_SUBJECT_AIR)
    return read_measure (step, text, value, error);
  if (!unsoot_typed_parse (text, UNSOOT_QUANTITY_PRESSURE, unit, &typed, error))
    return FALSE;
  *value = typed.si;
  return TRUE;
}

static gboolean
read_entry (UnsootCall *call, const Entry *entry, const UnsootStep *step, UnsootRunEvent *event,
            GError **error)
{
  if (entry->ago < 0)
    return unsoot_call_misused (error, _ ("--ago counts minutes back, so it is not below zero."));
  event->done_at = call->who.now - (gint64) entry->ago * SECONDS_A_MINUTE;
  if (step->subject == UNSOOT_SUBJECT_OIL && step->act == UNSOOT_ACT_MEASURE
      && !unsoot_call_wants (entry->value, "--value ok|risen", error))
    return FALSE;
  return (entry->value == NULL || read_value (step, entry->value, &event->value, error))
         && (entry->volume == NULL || unsoot_call_read_volume (entry->volume, &event->ml, error))
         && (entry->lot == NULL || unsoot_pick_lot (call, entry->lot, &event->lot_id, error));
}

static UnsootRunEventKind
kind_of (const Deed *deed, const UnsootRunOffer *offer)
{
  if (deed->cautions)
    return UNSOOT_RUN_CAUTION;
  if (deed->again)
    return UNSOOT_RUN_ASKED_AGAIN;
  if (deed->alarm_heard)
    return UNSOOT_RUN_ALARM_HEARD;
  if (deed->pass_over != NULL)
    return UNSOOT_RUN_PASS_OVER;
  if (deed->so_far != NULL)
    return UNSOOT_RUN_PROGRESS;
  if (deed->start)
    return UNSOOT_RUN_STARTED;
  return offer->timed ? UNSOOT_RUN_ENDED : UNSOOT_RUN_CONFIRM;
}

static gboolean
check_deed (const Deed *deed, GError **error)
{
  int n = deed->cautions + deed->again + deed->start + deed->alarm_heard + (deed->so_far != NULL)
          + (deed->pass_over != NULL);

  return n <= 1
         || unsoot_call_misused (error, _ ("Only one of --cautions, --again, --start, --so-far, "
                                           "--alarm-heard and --pass-over at a time."));
}

/* The step is named, so that the same line given twice can't confirm two. */
static gboolean
check_number (const UnsootRun *run, const char *text, GError **error)
{
  gint64 number = 0;
  int current = unsoot_run_current (run) + 1;

  if (!unsoot_pick_number (text, _ ("STEP"), 1, &number, error))
    return FALSE;
  if (number == current)
    return TRUE;
  if (current > (int) unsoot_run_procedure (run)->steps->len)
    g_set_error_literal (error, UNSOOT_RUN_ERROR, UNSOOT_RUN_ERROR_ORDER,
                         _ ("Every step is done."));
  else
    g_set_error (error, UNSOOT_RUN_ERROR, UNSOOT_RUN_ERROR_ORDER,
                 _ ("It is step %d that comes now, not %s."), current, text);
  return FALSE;
}

static UnsootRunEvent *
make_event (UnsootCall *call, const UnsootRun *run, const Entry *entry, const Deed *deed,
            GError **error)
{
  g_auto (UnsootRunOffer) offer = { 0 };

  unsoot_run_offer (run, &offer);
  UnsootRunEventKind kind = kind_of (deed, &offer);
  const UnsootStep *step = unsoot_procedure_step (
      unsoot_run_procedure (run), deed->again && offer.ask_again ? offer.ask_step : offer.step);
  g_autoptr (UnsootRunEvent) event = unsoot_run_event_new (kind, call->who.now);

  event->step = kind == UNSOOT_RUN_CAUTION ? step->phase
                : deed->again              ? offer.ask_step
                                           : offer.step;
  event->text = g_strdup (deed->pass_over);
  if (deed->so_far != NULL && !unsoot_call_read_volume (deed->so_far, &event->ml, error))
    return NULL;
  if ((kind == UNSOOT_RUN_CONFIRM || kind == UNSOOT_RUN_ENDED)
      && !read_entry (call, entry, step, event, error))
    return NULL;
  return g_steal_pointer (&event);
}

gboolean
unsoot_command_run_step (UnsootCall *call, GError **error)
{
  g_auto (Entry) entry = { 0 };
  g_auto (Deed) deed = { 0 };
  gint64 run_id = 0;
  const GOptionEntry options[] = {
    { "value", 'v', 0, G_OPTION_ARG_STRING, &entry.value,
      N_ ("What was set or measured: 8 psi; ok or risen for the oil level"), N_ ("VALUE") },
    { "volume", 0, 0, G_OPTION_ARG_STRING, &entry.volume,
      N_ ("What was poured, used, or is left in the tank"), N_ ("VOLUME") },
    { "lot", 'l', 0, G_OPTION_ARG_STRING, &entry.lot, N_ ("The lot that was poured"), N_ ("LOT") },
    { "ago", 0, 0, G_OPTION_ARG_INT, &entry.ago, N_ ("It was done so long ago"), N_ ("MINUTES") },
    { "cautions", 0, 0, G_OPTION_ARG_NONE, &deed.cautions,
      N_ ("The cautions of this phase are read and kept"), NULL },
    { "again", 0, 0, G_OPTION_ARG_NONE, &deed.again,
      N_ ("After a halt: the step asked for again is as it was"), NULL },
    { "start", 's', 0, G_OPTION_ARG_NONE, &deed.start,
      N_ ("Start the timer of a run or soak, or let it go on"), NULL },
    { "so-far", 0, 0, G_OPTION_ARG_STRING, &deed.so_far, N_ ("What this run has used up to now"),
      N_ ("VOLUME") },
    { "alarm-heard", 0, 0, G_OPTION_ARG_NONE, &deed.alarm_heard, N_ ("The alarm was heard"), NULL },
    { "pass-over", 0, 0, G_OPTION_ARG_STRING, &deed.pass_over,
      N_ ("The step does not apply, and why"), N_ ("REASON") },
    { NULL }
  };

  if (!unsoot_call_begin (call, options, 2, 2, error) || !check_deed (&deed, error))
    return FALSE;
  g_autoptr (UnsootRun) run = unsoot_command_run_of (call, call->args[0], &run_id, error);
  if (run == NULL || !check_number (run, call->args[1], error))
    return FALSE;
  g_autoptr (UnsootRunEvent) event = make_event (call, run, &entry, &deed, error);
  if (event == NULL)
    return FALSE;
  /* Translators: what was done with a step, then its number, as in "Done: step 12" */
  char *sentence
      = g_strdup_printf (_ ("%s: step %s"), unsoot_run_event_label (event->kind), call->args[1]);
  return unsoot_command_run_post (call, run_id, event, sentence, error);
}

gboolean
unsoot_command_run_extra (UnsootCall *call, GError **error)
{
  g_auto (Entry) entry = { 0 };
  gint64 run_id = 0;
  const GOptionEntry options[] = {
    { "value", 'v', 0, G_OPTION_ARG_STRING, &entry.value,
      N_ ("What was set or measured: 8 psi; ok or risen for the oil level"), N_ ("VALUE") },
    { "volume", 0, 0, G_OPTION_ARG_STRING, &entry.volume,
      N_ ("What was poured, used, or is left in the tank"), N_ ("VOLUME") },
    { "lot", 'l', 0, G_OPTION_ARG_STRING, &entry.lot, N_ ("The lot that was poured"), N_ ("LOT") },
    { "ago", 0, 0, G_OPTION_ARG_INT, &entry.ago, N_ ("It was done so long ago"), N_ ("MINUTES") },
    { NULL }
  };

  if (!unsoot_call_begin (call, options, 2, 2, error))
    return FALSE;
  g_autoptr (UnsootStep) step = unsoot_step_parse (call->args[1], error);
  g_autoptr (UnsootRun) run
      = step != NULL ? unsoot_command_run_of (call, call->args[0], &run_id, error) : NULL;
  if (run == NULL)
    return FALSE;
  g_autoptr (UnsootRunEvent) event = unsoot_run_event_new (UNSOOT_RUN_EXTRA, call->who.now);
  event->text = unsoot_step_print (step);
  if (!read_entry (call, &entry, step, event, error))
    return FALSE;
  g_autofree char *words = unsoot_step_words (step);
  /* Translators: an act that is not one of the procedure's steps */
  char *sentence = g_strdup_printf (_ ("Done beside the list: %s"), words);
  return unsoot_command_run_post (call, run_id, event, sentence, error);
}
