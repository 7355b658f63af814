/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Plays a run from step to step, for the tests of the run and of the way back. */
#pragma once

#include "procedure-kit.h"
#include "run-recovery.h"

#define KIT_STAFF 7

/* A run, the events that made it, and a clock that the test turns. */
typedef struct
{
  UnsootProcedure *procedure;
  UnsootFamilyFacts *facts;
  UnsootRun *run;
  GPtrArray *events;
  gint64 now;
} Player;

G_GNUC_UNUSED static Player *
player_new (const char *name)
{
  Player *player = g_new0 (Player, 1);

  kit_load (name, &player->procedure, &player->facts);
  player->run = unsoot_run_new (player->procedure, player->facts, NULL);
  player->events = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_run_event_free);
  player->now = 1000000;
  return player;
}

G_GNUC_UNUSED static Player *
player_copy (const Player *player)
{
  Player *copy = g_new0 (Player, 1);

  copy->procedure = unsoot_procedure_copy (player->procedure);
  copy->facts = unsoot_family_facts_copy (player->facts);
  copy->run = unsoot_run_copy (player->run);
  copy->events = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_run_event_free);
  for (guint i = 0; i < player->events->len; i++)
    g_ptr_array_add (copy->events, unsoot_run_event_copy (player->events->pdata[i]));
  copy->now = player->now;
  return copy;
}

G_GNUC_UNUSED static void
player_free (Player *player)
{
  unsoot_procedure_free (player->procedure);
  unsoot_family_facts_free (player->facts);
  unsoot_run_free (player->run);
  g_ptr_array_unref (player->events);
  g_free (player);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Player, player_free)

G_GNUC_UNUSED static UnsootRunEvent *
event (Player *player, UnsootRunEventKind kind, int step)
{
  UnsootRunEvent *made = unsoot_run_event_new (kind, player->now);

  made->seq = unsoot_run_next_seq (player->run);
  made->step = step;
  made->staff_id = KIT_STAFF;
  return made;
}

/* Takes EVENT; keeps it when it is accepted. A refused one has to change nothing. */
G_GNUC_UNUSED static gboolean
offer_event (Player *player, UnsootRunEvent *made, GError **error)
{
  g_autofree char *before = unsoot_run_digest (player->run);
  g_autofree char *after = NULL;

  if (unsoot_run_apply (player->run, made, error))
    {
      g_ptr_array_add (player->events, made);
      return TRUE;
    }
  after = unsoot_run_digest (player->run);
  if (!g_str_equal (before, after))
    ck_abort_msg ("refused, and changed the run:\n%s\n%s", before, after);
  unsoot_run_event_free (made);
  return FALSE;
}

/* Takes EVENT, which has to be accepted. */
G_GNUC_UNUSED static void
must (Player *player, UnsootRunEvent *made)
{
  g_autoptr (GError) error = NULL;
  int kind = (int) made->kind, step = made->step;

  if (!offer_event (player, made, &error))
    ck_abort_msg ("event %d at step %d: %s", kind, step, error->message);
}

/* Takes EVENT, which has to be refused with CODE. */
G_GNUC_UNUSED static void
must_not (Player *player, UnsootRunEvent *made, UnsootRunErrorCode code)
{
  g_autoptr (GError) error = NULL;

  if (offer_event (player, made, &error))
    ck_abort_msg ("was accepted, not refused");
  ck_assert_msg (g_error_matches (error, UNSOOT_RUN_ERROR, (gint) code), "code %d: %s", error->code,
                 error->message);
}

G_GNUC_UNUSED static UnsootRunEvent *
extra (Player *player, const char *line)
{
  UnsootRunEvent *made = event (player, UNSOOT_RUN_EXTRA, -1);

  made->text = g_strdup (line);
  return made;
}

G_GNUC_UNUSED static UnsootRunEvent *
happened (Player *player, UnsootHappening happening)
{
  UnsootRunEvent *made = event (
      player, happening == UNSOOT_HAPPENING_STOP ? UNSOOT_RUN_HALT : UNSOOT_RUN_HAPPENED, -1);
  made->happening = happening;
  return made;
}

G_GNUC_UNUSED static UnsootRunEvent *
passed (Player *player)
{
  UnsootRunEvent *made = event (player, UNSOOT_RUN_PASS_OVER, unsoot_run_current (player->run));

  made->text = g_strdup ("already so");
  return made;
}

/* Does what the way back asks for first; returns how far steps are so already. */
G_GNUC_UNUSED static int
make_good (Player *player)
{
  g_autoptr (UnsootRecovery) recovery = unsoot_run_recovery (player->run);

  if (recovery->fault.rule != UNSOOT_RULE_NONE)
    {
      g_autofree char *rig = unsoot_rig_digest (unsoot_run_rig (player->run));
      ck_abort_msg ("no way back at step %d: %s\n%s", unsoot_run_current (player->run),
                    recovery->fault.reason, rig);
    }
  for (guint i = 0; i < recovery->acts->len; i++)
    {
      g_autofree char *line = unsoot_step_print (recovery->acts->pdata[i]);
      player->now += 20;
      must (player, extra (player, line));
    }
  ck_assert_int_eq (recovery->first, unsoot_run_current (player->run));
  return recovery->until;
}

/* Whatever the run asks for next, up to and with one step. */
G_GNUC_UNUSED static void
play_step (Player *player)
{
  g_auto (UnsootRunOffer) offer = { 0 };
  const UnsootStep *step;

  player->now += 30;
  unsoot_run_offer (player->run, &offer);
  step = unsoot_procedure_step (player->procedure, offer.step);
  if (offer.ask_again)
    must (player, event (player, UNSOOT_RUN_ASKED_AGAIN, offer.ask_step));
  if (offer.caution)
    must (player, event (player, UNSOOT_RUN_CAUTION, step->phase));
  if (offer.fault.rule == UNSOOT_RULE_LEAK_LOOK)
    make_good (player);
  if (offer.already_so && offer.fault.rule != UNSOOT_RULE_NONE)
    {
      must (player, passed (player));
      return;
    }
  if (offer.timed && !offer.running)
    must (player, event (player, UNSOOT_RUN_STARTED, offer.step));
  if (offer.timed)
    {
      player->now += 60;
      must (player, event (player, UNSOOT_RUN_ENDED, offer.step));
    }
  else
    {
      UnsootRunEvent *made = event (player, UNSOOT_RUN_CONFIRM, offer.step);
      if (step->subject == UNSOOT_SUBJECT_TANK && step->act == UNSOOT_ACT_MEASURE)
        made->ml = 40;
      must (player, made);
    }
}

/* Up to, and without, STEP. */
G_GNUC_UNUSED static void
play_until (Player *player, int step)
{
  if (unsoot_run_state (player->run) == UNSOOT_RUN_STATE_READY)
    must (player, event (player, UNSOOT_RUN_BEGAN, -1));
  while (unsoot_run_current (player->run) < step)
    play_step (player);
}

G_GNUC_UNUSED static void
play_to (Player *player, const char *step)
{
  play_until (player, kit_step_index (player->procedure, step));
}

G_GNUC_UNUSED static void
play_to_end (Player *player)
{
  play_until (player, (int) player->procedure->steps->len);
  must (player, event (player, UNSOOT_RUN_SIGNED, -1));
}

/* Resumes, does what the way back says, and passes over what it says is so already. */
G_GNUC_UNUSED static void
recover (Player *player)
{
  g_auto (UnsootRunOffer) offer = { 0 };
  int until;

  must (player, event (player, UNSOOT_RUN_RESUMED, -1));
  unsoot_run_offer (player->run, &offer);
  if (offer.ask_again)
    must (player, event (player, UNSOOT_RUN_ASKED_AGAIN, offer.ask_step));
  until = make_good (player);
  while (unsoot_run_current (player->run) < until)
    {
      const UnsootStep *step
          = unsoot_procedure_step (player->procedure, unsoot_run_current (player->run));
      g_auto (UnsootRunOffer) now = { 0 };
      unsoot_run_offer (player->run, &now);
      if (now.caution)
        must (player, event (player, UNSOOT_RUN_CAUTION, step->phase));
      must (player, passed (player));
    }
}
