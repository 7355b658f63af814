/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "commands.h"

#include <glib/gi18n-lib.h>

#include "pick.h"
#include "show-run.h"
#include "run-step.h"
#include "runs.h"
#include "show.h"
#include "stop-happening.h"

/* A job's run in the bay. */

static gboolean
run_begin (UnsootCall *call, GError **error)
{
  g_autofree char *machine = NULL;
  gint64 job_id = 0, machine_id = 0, run_id = 0;
  const GOptionEntry options[]
      = { { "machine", 'm', 0, G_OPTION_ARG_STRING, &machine,
            N_ ("With which cart; without it, the booking's"), N_ ("NAME") },
          { NULL } };

  if (!unsoot_call_begin (call, options, 1, 1, error)
      || !unsoot_pick_job (call, call->args[0], &job_id, error)
      || (machine != NULL && !unsoot_pick_machine (call, machine, &machine_id, error))
      || (run_id = unsoot_job_run_begin (call->db, &call->who, job_id, machine_id, error)) == 0
      || !unsoot_show_deed (call, job_id, g_strdup (_ ("The run has begun.")), error))
    return FALSE;
  g_autoptr (UnsootRun) run = unsoot_job_run_load (call->db, run_id, error);
  if (run == NULL)
    return FALSE;
  unsoot_show_run (call, run);
  return TRUE;
}

static gboolean
run_show (UnsootCall *call, GError **error)
{
  gint64 run_id = 0;

  if (!unsoot_call_begin (call, NULL, 1, 1, error))
    return FALSE;
  g_autoptr (UnsootRun) run = unsoot_command_run_of (call, call->args[0], &run_id, error);
  if (run == NULL)
    return FALSE;
  unsoot_show_run (call, run);
  return TRUE;
}

static gboolean
read_happening (const char *slug, UnsootHappening *happening, GError **error)
{
  g_autoptr (GString) known = g_string_new (NULL);

  if (unsoot_happening_from_slug (slug, happening) && *happening != UNSOOT_HAPPENING_NONE)
    return TRUE;
  for (int i = UNSOOT_HAPPENING_NONE + 1; i < UNSOOT_HAPPENINGS; i++)
    g_string_append_printf (known, "%s%s", known->len > 0 ? ", " : "",
                            unsoot_happening_to_slug ((UnsootHappening) i));
  return unsoot_call_misused (error, _ ("“%s” is none of these: %s."), slug, known->str);
}

/* The page that the bay shows on STOP. */
static void
put_stop_page (UnsootCall *call, UnsootHappening happening)
{
  UnsootStopPage page = unsoot_stop_page_of (happening);
  g_autoptr (GPtrArray) lines = g_ptr_array_new ();

  for (guint i = 0; unsoot_stop_line (page, i) != NULL; i++)
    g_ptr_array_add (lines, (char *) unsoot_stop_line (page, i));
  g_ptr_array_add (lines, (char *) unsoot_stop_never (page));
  unsoot_answer_list (call->answer, "do_now", _ ("Now"), lines);
}

/* What happened is posted first and asked about never. */
static gboolean
post_happening (UnsootCall *call, UnsootRunEventKind kind, const char *slug, GError **error)
{
  UnsootHappening happening = UNSOOT_HAPPENING_NONE;
  gint64 run_id = 0;

  if (!read_happening (slug, &happening, error))
    return FALSE;
  g_autoptr (UnsootRun) run = unsoot_command_run_of (call, call->args[0], &run_id, error);
  if (run == NULL)
    return FALSE;
  g_autoptr (UnsootRunEvent) event = unsoot_run_event_new (kind, call->who.now);
  event->happening = happening;
  /* Translators: "Stopped: stall" */
  char *sentence = g_strdup_printf (_ ("%s: %s"), unsoot_run_event_label (kind),
                                    unsoot_happening_label (happening));
  put_stop_page (call, happening);
  return unsoot_command_run_post (call, run_id, event, sentence, error);
}

static gboolean
run_halt (UnsootCall *call, GError **error)
{
  return unsoot_call_begin (call, NULL, 1, 2, error)
         && post_happening (call, UNSOOT_RUN_HALT, call->n_args > 1 ? call->args[1] : "stop",
                            error);
}

static gboolean
run_happened (UnsootCall *call, GError **error)
{
  return unsoot_call_begin (call, NULL, 2, 2, error)
         && post_happening (call, UNSOOT_RUN_HAPPENED, call->args[1], error);
}

static gboolean
run_resume (UnsootCall *call, GError **error)
{
  g_autoptr (UnsootRun) after = NULL;
  gint64 run_id = 0;

  if (!unsoot_call_begin (call, NULL, 1, 1, error))
    return FALSE;
  g_autoptr (UnsootRun) run = unsoot_command_run_of (call, call->args[0], &run_id, error);
  if (run == NULL || !unsoot_job_run_resume (call->db, &call->who, run_id, &after, error))
    return FALSE;
  unsoot_answer_say (call->answer, g_strdup (_ ("The run goes on.")));
  unsoot_show_run (call, after);
  return TRUE;
}

const UnsootCommand unsoot_run_commands[] = {
  { "run begin", N_ ("JOB"), N_ ("The vehicle goes into the bay"), NULL, UNSOOT_NEEDS_PERSON,
    run_begin },
  { "run show", N_ ("JOB"), N_ ("Where the run stands, and what comes next"), NULL,
    UNSOOT_NEEDS_BOOK, run_show },
  { "run step", N_ ("JOB STEP"), N_ ("Confirm the step that is due, with what was entered"),
    N_ ("STEP is the number that “run show” gives, so that a line given twice can't confirm two "
        "steps. What the rules forbid is refused with rule and reason."),
    UNSOOT_NEEDS_PERSON, unsoot_command_run_step },
  { "run extra", N_ ("JOB “ACT SUBJECT …”"), N_ ("Record an act that is not on the list"),
    N_ ("An act is written as in a procedure's text: “drain low-point cooler”."),
    UNSOOT_NEEDS_PERSON, unsoot_command_run_extra },
  { "run halt", N_ ("JOB [KIND]"), N_ ("Stop the run"),
    N_ ("KIND is stop, runaway, leak-or-fire or stall; without it, stop."), UNSOOT_NEEDS_PERSON,
    run_halt },
  { "run happened", N_ ("JOB KIND"), N_ ("Record what happened against everyone's will"),
    N_ ("KIND is stall, runaway, burst-hose, lost-air, co-alarm or leak-or-fire."),
    UNSOOT_NEEDS_PERSON, run_happened },
  { "run resume", N_ ("JOB"), N_ ("Go on after a halt or an incomplete release"), NULL,
    UNSOOT_NEEDS_PERSON, run_resume },
  { NULL },
};
