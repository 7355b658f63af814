/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run-kit.h"

static char *
replayed_digest (const Player *player, guint n)
{
  g_autoptr (UnsootRun) again = unsoot_run_new (player->procedure, player->facts, NULL);

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GError) error = NULL;
      if (!unsoot_run_apply (again, player->events->pdata[i], &error))
        ck_abort_msg ("event %u is refused when it is read back: %s", i, error->message);
    }
  return unsoot_run_digest (again);
}

/* The whole job, step by step, to the signature. */
START_TEST (test_plays_to_the_end)
{
  g_autoptr (Player) player = player_new (kit_names[_i]);

  ck_assert_int_eq (unsoot_run_state (player->run), UNSOOT_RUN_STATE_READY);
  play_to_end (player);
  ck_assert_int_eq (unsoot_run_state (player->run), UNSOOT_RUN_STATE_SIGNED);
  for (int i = 0; i < (int) player->procedure->steps->len; i++)
    ck_assert (unsoot_run_step_done (player->run, i)
               && !unsoot_run_step_passed_over (player->run, i));
}
END_TEST

/* Power may go after any event: what was stored makes the same run again. */
START_TEST (test_reopens_after_any_event)
{
  g_autoptr (Player) player = player_new (kit_names[_i]);
  g_autoptr (GPtrArray) digests = g_ptr_array_new_with_free_func (g_free);
  const guint total = player->procedure->steps->len;

  play_until (player, 1);
  while (unsoot_run_state (player->run) == UNSOOT_RUN_STATE_RUNNING)
    {
      if (unsoot_run_current (player->run) == (int) total / 2)
        {
          must (player, happened (player, UNSOOT_HAPPENING_STALL));
          recover (player);
        }
      play_step (player);
    }
  for (guint n = 0; n < player->events->len; n++)
    ck_assert_int_eq (((UnsootRunEvent *) player->events->pdata[n])->seq, n + 1);
  for (guint n = 0; n <= player->events->len; n++)
    g_ptr_array_add (digests, replayed_digest (player, n));
  {
    g_autoptr (UnsootRun) straight = unsoot_run_new (player->procedure, player->facts, NULL);
    for (guint n = 0; n <= player->events->len; n++)
      {
        g_autofree char *digest = unsoot_run_digest (straight);
        ck_assert_str_eq (digest, digests->pdata[n]);
        if (n < player->events->len)
          ck_assert (unsoot_run_apply (straight, player->events->pdata[n], NULL));
      }
  }
}
END_TEST

/* A screen is never offered what would be refused, nor refused what it is offered. */
START_TEST (test_offer_is_kept)
{
  g_autoptr (Player) player = player_new (kit_names[_i]);

  play_until (player, 1);
  while (unsoot_run_state (player->run) == UNSOOT_RUN_STATE_RUNNING)
    {
      g_auto (UnsootRunOffer) offer = { 0 };
      g_autoptr (Player) other = player_copy (player);
      UnsootRunEventKind kind;
      gboolean taken;
      unsoot_run_offer (player->run, &offer);
      kind = !offer.timed    ? UNSOOT_RUN_CONFIRM
             : offer.running ? UNSOOT_RUN_ENDED
                             : UNSOOT_RUN_STARTED;
      {
        UnsootRunEvent *made = event (other, kind, offer.step);
        made->ml = 40;
        taken = offer_event (other, made, NULL);
      }
      ck_assert_msg (taken == offer.may_do, "step %d", offer.step);
      ck_assert (offer.may_do || offer.caution);
      if (offer.caution)
        must (player, event (player, UNSOOT_RUN_CAUTION,
                             unsoot_procedure_step (player->procedure, offer.step)->phase));
      else
        play_step (player);
    }
}
END_TEST

START_TEST (test_order)
{
  g_autoptr (Player) player = player_new (SKELDER);
  UnsootRunEvent *made;

  must_not (player, event (player, UNSOOT_RUN_CONFIRM, 0), UNSOOT_RUN_ERROR_STATE);
  must (player, event (player, UNSOOT_RUN_BEGAN, -1));
  must_not (player, event (player, UNSOOT_RUN_BEGAN, -1), UNSOOT_RUN_ERROR_STATE);
  must_not (player, event (player, UNSOOT_RUN_CONFIRM, 0), UNSOOT_RUN_ERROR_ORDER);
  must_not (player, event (player, UNSOOT_RUN_CAUTION, 1), UNSOOT_RUN_ERROR_ORDER);
  must (player, event (player, UNSOOT_RUN_CAUTION, 0));
  must_not (player, event (player, UNSOOT_RUN_CONFIRM, 1), UNSOOT_RUN_ERROR_ORDER);
  must_not (player, event (player, UNSOOT_RUN_STARTED, 0), UNSOOT_RUN_ERROR_ORDER);
  must_not (player, event (player, UNSOOT_RUN_ENDED, 0), UNSOOT_RUN_ERROR_ORDER);
  must_not (player, event (player, UNSOOT_RUN_ALARM_HEARD, 0), UNSOOT_RUN_ERROR_ORDER);
  must_not (player, event (player, UNSOOT_RUN_ASKED_AGAIN, 0), UNSOOT_RUN_ERROR_ORDER);
  must_not (player, event (player, UNSOOT_RUN_SIGNED, -1), UNSOOT_RUN_ERROR_STATE);
  must_not (player, event (player, UNSOOT_RUN_RESUMED, -1), UNSOOT_RUN_ERROR_STATE);
  made = event (player, UNSOOT_RUN_CONFIRM, 0);
  made->seq++;
  must_not (player, made, UNSOOT_RUN_ERROR_ORDER);
  must_not (player, event (player, (UnsootRunEventKind) 99, 0), UNSOOT_RUN_ERROR_ENTRY);
  must_not (player, event (player, UNSOOT_RUN_PASS_OVER, 0), UNSOOT_RUN_ERROR_ENTRY);
  must (player, event (player, UNSOOT_RUN_CONFIRM, 0));
  ck_assert_int_eq (unsoot_run_current (player->run), 1);
}
END_TEST

/* What is entered counts, not what the procedure says. */
START_TEST (test_entries)
{
  g_autoptr (Player) player = player_new (BRINDLE);
  UnsootRunEvent *made;

  play_to (player, "fill tank fuel");
  made = event (player, UNSOOT_RUN_CONFIRM, unsoot_run_current (player->run));
  made->fluid = UNSOOT_SIDE_INTAKE;
  must_not (player, made, UNSOOT_RUN_ERROR_REFUSED);
  made = event (player, UNSOOT_RUN_CONFIRM, unsoot_run_current (player->run));
  made->ml = 900;
  made->lot_id = 12;
  made->fluid = UNSOOT_SIDE_FUEL;
  must (player, made);
  ck_assert_int_eq (unsoot_run_rig (player->run)->tank[UNSOOT_SIDE_FUEL].ml, 900);
  ck_assert_int_eq (unsoot_run_rig (player->run)->tank[UNSOOT_SIDE_FUEL].lot_id, 12);
  play_to (player, "set pressure 8 psi");
  made = event (player, UNSOOT_RUN_CONFIRM, unsoot_run_current (player->run));
  made->value = 11 * UNSOOT_PSI_PA;
  must_not (player, made, UNSOOT_RUN_ERROR_REFUSED);
  made = event (player, UNSOOT_RUN_CONFIRM, unsoot_run_current (player->run));
  made->value = 7 * UNSOOT_PSI_PA;
  must (player, made);
  ck_near (unsoot_run_rig (player->run)->pressure_pa, 7 * UNSOOT_PSI_PA, 1e-6);
  play_to (player, "start engine");
  play_step (player);
  must_not (player, event (player, UNSOOT_RUN_STARTED, unsoot_run_current (player->run)),
            UNSOOT_RUN_ERROR_REFUSED); /* 950 mL out of 900 */
}
END_TEST

START_TEST (test_known_tanks)
{
  UnsootRunStart start = { 0 };
  g_autoptr (Player) player = player_new (SKELDER);
  UnsootRunEvent *made;

  start.tank[UNSOOT_SIDE_FUEL]
      = (UnsootTank){ .contents = UNSOOT_CONTENTS_CLEAN, .capacity_ml = 700, .used = TRUE };
  unsoot_run_free (player->run);
  player->run = unsoot_run_new (player->procedure, player->facts, &start);
  ck_assert (!unsoot_run_rig (player->run)->tank[UNSOOT_SIDE_FUEL].used);
  play_to (player, "drain tank fuel");
  must (player, passed (player));
  must (player, passed (player));
  must_not (player, event (player, UNSOOT_RUN_CONFIRM, unsoot_run_current (player->run)),
            UNSOOT_RUN_ERROR_REFUSED); /* 750 mL into 700 */
  made = event (player, UNSOOT_RUN_CONFIRM, unsoot_run_current (player->run));
  made->ml = 700;
  must (player, made);
  ck_assert (unsoot_run_step_passed_over (player->run, 2));
  ck_assert (!unsoot_run_step_done (player->run, 2));
}
END_TEST

START_TEST (test_tank_is_measured)
{
  g_autoptr (Player) player = player_new (SKELDER);

  play_to (player, "measure tank fuel");
  must_not (player, event (player, UNSOOT_RUN_CONFIRM, unsoot_run_current (player->run)),
            UNSOOT_RUN_ERROR_ENTRY);
  play_step (player);
  ck_assert_int_eq (unsoot_run_rig (player->run)->tank[UNSOOT_SIDE_FUEL].ml, 40);
}
END_TEST

/* Risen oil is changed, and read again, before the engine starts. */
START_TEST (test_risen_oil)
{
  g_autoptr (Player) player = player_new (FENMOOR);
  UnsootRunEvent *made;

  play_to (player, "measure oil#2");
  made = event (player, UNSOOT_RUN_CONFIRM, unsoot_run_current (player->run));
  made->value = 1;
  must (player, made);
  play_to (player, "start engine#2");
  must_not (player, event (player, UNSOOT_RUN_CONFIRM, unsoot_run_current (player->run)),
            UNSOOT_RUN_ERROR_REFUSED);
  must (player, extra (player, "stop key"));
  must (player, extra (player, "replace oil"));
  must (player, extra (player, "start key"));
  must_not (player, event (player, UNSOOT_RUN_CONFIRM, unsoot_run_current (player->run)),
            UNSOOT_RUN_ERROR_REFUSED);
  must (player, extra (player, "measure oil"));
  play_to_end (player);
}
END_TEST

static void
confirm_late (Player *player, gint64 by, gboolean taken)
{
  UnsootRunEvent *made = event (player, UNSOOT_RUN_CONFIRM, unsoot_run_current (player->run));

  made->done_at -= by;
  if (taken)
    must (player, made);
  else
    must_not (player, made, UNSOOT_RUN_ERROR_LATE);
}

START_TEST (test_late_stamps)
{
  g_autoptr (Player) player = player_new (FENMOOR);

  play_to (player, "take-off part \"air duct\"");
  must (player, event (player, UNSOOT_RUN_CAUTION, 1));
  player->now += 600;
  confirm_late (player, -5, FALSE);
  confirm_late (player, 800, FALSE); /* before the step before it */
  confirm_late (player, 500, TRUE);
  player->now += 100;
  confirm_late (player, 650, FALSE);
  confirm_late (player, 60, TRUE); /* take-off part intake */
  play_to (player, "start key");
  must (player, event (player, UNSOOT_RUN_CAUTION, 2));
  player->now += 600;
  confirm_late (player, 10, FALSE);
  confirm_late (player, 0, TRUE);
}
END_TEST

/* Nothing that order, pressure or a running engine decide about is stamped late. */
START_TEST (test_interlocks)
{
  static const char *const interlocks[] = {
    "start key",
    "stop engine",
    "start pump",
    "stop atomiser",
    "part line vehicle-supply",
    "join line bypass",
    "bleed air",
    "bleed pressure",
    "set pressure 8 psi",
    "set air minimum",
    "set speed raised",
    "look leaks fuel",
    "drain low-point x",
    "measure oil",
    "disable heater",
    "enable regeneration",
    "fit adapter intake x",
    "remove adapter x",
    "fill tank fuel",
    "drain tank fuel",
    "take-off part fuel x",
    "disconnect lead lift-pump",
    "prime pump",
    "run engine minutes 2",
    "soak part x minutes 3",
    "fit guard x closes",
    "open valve x",
    "replace filter fuel x",
  };
  static const char *const others[] = {
    "take-off part cover", "refit part intake hose", "replace gasket x",
    "fit tool x",          "remove tool x",          "disconnect lead x",
    "measure reading x",   "measure tank fuel",      "clear codes",
    "drive road",          "flush tank fuel",        "hold tank fuel",
    "replace oil",         "replace filter air",     "fit guard screen",
  };

  for (guint i = 0; i < G_N_ELEMENTS (interlocks); i++)
    {
      g_autoptr (UnsootStep) step = unsoot_step_parse (interlocks[i], NULL);
      ck_assert_msg (unsoot_run_is_interlock (step), "%s", interlocks[i]);
    }
  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    {
      g_autoptr (UnsootStep) step = unsoot_step_parse (others[i], NULL);
      ck_assert_msg (!unsoot_run_is_interlock (step), "%s", others[i]);
    }
}
END_TEST

static gint64
remaining (const Player *player)
{
  gint64 seconds = -99999;

  ck_assert (unsoot_run_remaining (player->run, player->now, &seconds));
  return seconds;
}

/* 21 minutes are 1,260 seconds; only those in which cleaner flows count. */
START_TEST (test_timer)
{
  g_autoptr (Player) player = player_new (SKELDER);
  UnsootRunEvent *made;
  gint64 late = -1, unused;

  play_to (player, "run engine fuel");
  ck_assert (!unsoot_run_remaining (player->run, player->now, &unused));
  ck_assert_int_eq (unsoot_run_alarm_at (player->run), -1);
  must (player, event (player, UNSOOT_RUN_CAUTION, 2));
  must_not (player, event (player, UNSOOT_RUN_CONFIRM, unsoot_run_current (player->run)),
            UNSOOT_RUN_ERROR_ORDER);
  must (player, event (player, UNSOOT_RUN_STARTED, unsoot_run_current (player->run)));
  must_not (player, event (player, UNSOOT_RUN_STARTED, unsoot_run_current (player->run)),
            UNSOOT_RUN_ERROR_ORDER);
  ck_assert_int_eq (remaining (player), 1260);
  ck_assert_int_eq (unsoot_run_alarm_at (player->run), player->now + 1260);
  player->now -= 3600; /* someone set the clock back */
  ck_assert_int_eq (remaining (player), 1260);
  player->now += 3600 + 300;
  ck_assert_int_eq (remaining (player), 960);
  made = event (player, UNSOOT_RUN_PROGRESS, -1);
  made->ml = 200;
  must (player, made);
  ck_assert_int_eq (unsoot_run_progress_ml (player->run), 200);
  made = event (player, UNSOOT_RUN_PROGRESS, -1);
  made->ml = 150;
  must_not (player, made, UNSOOT_RUN_ERROR_ENTRY);

  must (player, happened (player, UNSOOT_HAPPENING_STALL));
  ck_assert (!unsoot_run_timer_counts (player->run));
  ck_assert_int_eq (unsoot_run_alarm_at (player->run), -1);
  player->now += 1800;
  ck_assert_int_eq (remaining (player), 960);
  recover (player);
  ck_assert (unsoot_run_timer_counts (player->run));
  ck_assert_int_eq (remaining (player), 960);
  player->now += 900;
  ck_assert_int_eq (remaining (player), 60);
  ck_assert (!unsoot_run_alarm (player->run, player->now, &late));

  player->now += 60;
  ck_assert (unsoot_run_alarm (player->run, player->now, &late));
  ck_assert_int_eq (late, 0);
  player->now += 754; /* the power was out: it rings at once, and says how late it is */
  ck_assert (unsoot_run_alarm (player->run, player->now, &late));
  ck_assert_int_eq (late, 754);
  must (player, event (player, UNSOOT_RUN_ALARM_HEARD, -1));
  ck_assert (!unsoot_run_alarm (player->run, player->now, &late));
  made = event (player, UNSOOT_RUN_ENDED, unsoot_run_current (player->run));
  made->ml = 610;
  must (player, made);
  ck_assert_int_eq (unsoot_run_rig (player->run)->used_ml[UNSOOT_SIDE_FUEL], 610);
  ck_assert_int_eq (unsoot_run_rig (player->run)->tank[UNSOOT_SIDE_FUEL].ml, 140);
  ck_assert (!unsoot_run_remaining (player->run, player->now, &unused));
  play_to_end (player);
}
END_TEST

/* A stall that is recorded late stopped the clock when it happened. */
START_TEST (test_timer_stops_when_it_happened)
{
  g_autoptr (Player) player = player_new (SKELDER);
  UnsootRunEvent *made;

  play_to (player, "run engine fuel");
  must (player, event (player, UNSOOT_RUN_STARTED, unsoot_run_current (player->run)));
  player->now += 400;
  made = happened (player, UNSOOT_HAPPENING_STALL);
  made->done_at -= 100;
  must (player, made);
  ck_assert_int_eq (remaining (player), 1260 - 300);
}
END_TEST

/* STOP is pressed, the alarm is heard while its page is read, then it is recorded. */
START_TEST (test_stop_is_taken_behind_an_alarm)
{
  g_autoptr (Player) player = player_new (SKELDER);
  UnsootRunEvent *made;

  play_to (player, "run engine fuel");
  must (player, event (player, UNSOOT_RUN_STARTED, unsoot_run_current (player->run)));
  player->now += 1300;
  made = event (player, UNSOOT_RUN_HALT, -1);
  made->happening = UNSOOT_HAPPENING_STOP;
  player->now += 20;
  must (player, event (player, UNSOOT_RUN_ALARM_HEARD, -1));
  made->seq = unsoot_run_next_seq (player->run);
  made->at = player->now + 5;
  must (player, made);
  ck_assert_int_eq (unsoot_run_state (player->run), UNSOOT_RUN_STATE_HALTED);
  ck_assert_int_eq (remaining (player), 1260 - 1300);
}
END_TEST

/* Lost air stops the mist and its clock; the engine idles on. */
START_TEST (test_mist_timer)
{
  g_autoptr (Player) player = player_new (FENMOOR);

  play_to (player, "run engine intake");
  must (player, event (player, UNSOOT_RUN_STARTED, unsoot_run_current (player->run)));
  player->now += 120;
  must (player, happened (player, UNSOOT_HAPPENING_LOST_AIR));
  ck_assert (unsoot_rig_engine_runs (unsoot_run_rig (player->run)));
  ck_assert (!unsoot_run_timer_counts (player->run));
  player->now += 1000;
  ck_assert_int_eq (remaining (player), 1200 - 120);
  recover (player);
  ck_assert (unsoot_run_timer_counts (player->run));
  play_to_end (player);
}
END_TEST

/* A soak goes on whatever else happens. */
START_TEST (test_soak_timer)
{
  g_autoptr (Player) player = player_new (FENMOOR);
  gint64 late;

  play_to (player, "soak part");
  must (player, event (player, UNSOOT_RUN_STARTED, unsoot_run_current (player->run)));
  must (player, happened (player, UNSOOT_HAPPENING_CO_ALARM));
  player->now += 605;
  ck_assert_int_eq (remaining (player), -5);
  ck_assert (unsoot_run_alarm (player->run, player->now, &late));
  ck_assert_int_eq (late, 5);
}
END_TEST

/* A stall, then restart and mist without a drain: refused, whatever way it is tried. */
START_TEST (test_stall_then_start)
{
  g_autoptr (Player) player = player_new (HARROW);

  play_to (player, "run engine intake");
  must (player, event (player, UNSOOT_RUN_STARTED, unsoot_run_current (player->run)));
  must (player, happened (player, UNSOOT_HAPPENING_STALL));
  ck_assert_int_eq (unsoot_run_state (player->run), UNSOOT_RUN_STATE_HALTED);
  must_not (player, extra (player, "start engine"), UNSOOT_RUN_ERROR_STATE);
  must (player, event (player, UNSOOT_RUN_RESUMED, -1));
  must_not (player, extra (player, "start engine"), UNSOOT_RUN_ERROR_REFUSED);
  must_not (player, extra (player, "start atomiser"), UNSOOT_RUN_ERROR_REFUSED);
  must_not (player, event (player, UNSOOT_RUN_ENDED, unsoot_run_current (player->run)),
            UNSOOT_RUN_ERROR_ORDER);
  must (player, event (player, UNSOOT_RUN_ASKED_AGAIN, unsoot_run_current (player->run) - 1));
  must_not (player, event (player, UNSOOT_RUN_ENDED, unsoot_run_current (player->run)),
            UNSOOT_RUN_ERROR_REFUSED);
}
END_TEST

START_TEST (test_halt_takes_only_what_is_safe)
{
  g_autoptr (Player) player = player_new (BRINDLE);

  play_to (player, "set pressure 8 psi");
  must (player, happened (player, UNSOOT_HAPPENING_CO_ALARM));
  must_not (player, extra (player, "start pump"), UNSOOT_RUN_ERROR_STATE);
  must_not (player, extra (player, "part line machine-supply"), UNSOOT_RUN_ERROR_STATE);
  must_not (player, extra (player, "set pressure 8 psi"), UNSOOT_RUN_ERROR_STATE);
  must_not (player, extra (player, "make it so"), UNSOOT_RUN_ERROR_ENTRY);
  must (player, extra (player, "set pressure minimum"));
  must (player, extra (player, "bleed pressure"));
  must_not (player, event (player, UNSOOT_RUN_CONFIRM, unsoot_run_current (player->run)),
            UNSOOT_RUN_ERROR_STATE);
}
END_TEST

START_TEST (test_stop_chosen)
{
  g_autoptr (Player) player = player_new (BRINDLE);
  UnsootRunEvent *made;

  play_to (player, "stop atomiser");
  made = event (player, UNSOOT_RUN_HALT, -1);
  must_not (player, made, UNSOOT_RUN_ERROR_ENTRY);
  made = event (player, UNSOOT_RUN_HALT, -1);
  made->happening = UNSOOT_HAPPENING_LOST_AIR; /* happens; is not chosen */
  must_not (player, made, UNSOOT_RUN_ERROR_ENTRY);
  made = event (player, UNSOOT_RUN_HALT, -1);
  made->happening = UNSOOT_HAPPENING_STOP;
  must (player, made);
  ck_assert (!unsoot_run_rig (player->run)->atomiser);
  ck_assert (!unsoot_rig_engine_runs (unsoot_run_rig (player->run)));
  recover (player);
  play_to_end (player);
}
END_TEST

/* What forbids the signature, one thing at a time: these steps are passed over. */
typedef struct
{
  const char *family;
  const char *steps; /* passed over, separated by bars */
  const char *rule;
  const char *words;
} Unfinished;

static const Unfinished unfinished[] = {
  { SKELDER, "hold tank fuel", "fluids-apart", "fuel tank" },
  { FENMOOR, "hold tank intake", "fluids-apart", "intake tank" },
  { FENMOOR, "refit part \"air duct\"|drive road", "everything-back", "air duct" },
  { FENMOOR, "remove guard screen|drive road", "everything-back", "screen" },
  { FENMOOR, "close valve|drive road", "everything-back", "egr valve" },
  { FENMOOR, "enable heater|drive road", "everything-back", "intake heater" },
  { HARROW, "remove tool|drive road", "everything-back", "valve holder" },
  { HARROW, "enable regeneration|drive road", "everything-back", "regeneration" },
  { HARROW,
    "replace gasket|refit part \"boost|start engine#2|run engine minutes 5|set speed raised|run engine minutes 2|set speed idle|drive road|stop engine#2",
    "everything-back", "boost sensor" },
  { BRINDLE, "remove adapter \"valve adapter\"#2|drive road", "everything-back", "valve adapter" },
  { BRINDLE, "reconnect lead|clear codes|drive road", "everything-back", "egr position" },
  { SKELDER, "clear codes", "everything-back", "codes" },
  { SKELDER, "drive road", "road-test-last", "road test" },
  { TOLVER, "drive load", "road-test-last", "under load" },
  { SKELDER, "stop key#2", "stop-order", "key" },
  { SKELDER, "stop engine#2|stop key#2", "stop-order", "engine" },
  { FENMOOR, "set speed raised|drive road", "idle-first", "raised" },
  { FENMOOR,
    "measure oil#2|start engine#2|run engine minutes 5|set speed raised|run engine minutes 2|set speed idle|drive road|stop engine#2",
    "drain-before-start", "oil" },
  { FENMOOR,
    "drain low-point|start engine#2|run engine minutes 5|set speed raised|run engine minutes 2|set speed idle|drive road|stop engine#2",
    "drain-before-start", "charge cooler" },
  { SKELDER, "look leaks fuel#2|start engine#2|run engine minutes 3|drive road|stop engine#2",
    "leak-look", "fuel lines" },
  { SKELDER,
    "join line vehicle-return|reconnect lead|start key#2|look leaks fuel#2|clear codes|start engine#2|run engine minutes 3|drive road|stop engine#2|stop key#2",
    "everything-back", "return" },
};

static gboolean
has_fault (const GArray *faults, const char *rule, const char *words)
{
  for (guint i = 0; i < faults->len; i++)
    {
      const UnsootFault *fault = &g_array_index (faults, UnsootFault, i);
      if (g_str_equal (unsoot_rule_to_slug (fault->rule), rule)
          && strstr (fault->reason, words) != NULL)
        return TRUE;
    }
  return FALSE;
}

static void
play_but (Player *player, const char *steps)
{
  g_auto (GStrv) each = g_strsplit (steps, "|", -1);

  for (char **step = each; *step != NULL; step++)
    {
      g_auto (UnsootRunOffer) offer = { 0 };
      play_to (player, *step);
      unsoot_run_offer (player->run, &offer);
      if (offer.caution)
        must (player, event (player, UNSOOT_RUN_CAUTION,
                             unsoot_procedure_step (player->procedure, offer.step)->phase));
      must (player, passed (player));
    }
  play_until (player, (int) player->procedure->steps->len);
}

START_TEST (test_unfinished)
{
  const Unfinished *c = &unfinished[_i];
  g_autoptr (Player) player = player_new (c->family);
  g_autoptr (GArray) faults = unsoot_faults_new ();
  g_auto (UnsootRunOffer) offer = { 0 };

  play_but (player, c->steps);
  ck_assert_int_eq (unsoot_run_state (player->run), UNSOOT_RUN_STATE_COMPLETE);
  ck_assert (!unsoot_run_finish_faults (player->run, faults));
  ck_assert_msg (has_fault (faults, c->rule, c->words), "%s", c->steps);
  unsoot_run_offer (player->run, &offer);
  ck_assert (!offer.may_sign);
  must_not (player, event (player, UNSOOT_RUN_SIGNED, -1), UNSOOT_RUN_ERROR_REFUSED);
}
END_TEST

/* … and made good beside the list, it is signed. */
START_TEST (test_made_good)
{
  g_autoptr (Player) player = player_new (SKELDER);
  UnsootRunEvent *unsigned_event;

  play_but (player, "hold tank fuel");
  must (player, extra (player, "drain tank fuel"));
  must (player, happened (player, UNSOOT_HAPPENING_CO_ALARM));
  must (player, event (player, UNSOOT_RUN_RESUMED, -1));
  must_not (player, event (player, UNSOOT_RUN_SIGNED, -1), UNSOOT_RUN_ERROR_ORDER);
  must (player, event (player, UNSOOT_RUN_ASKED_AGAIN,
                       kit_step_index (player->procedure, "measure tank fuel")));
  unsigned_event = event (player, UNSOOT_RUN_SIGNED, -1);
  unsigned_event->staff_id = 0;
  must_not (player, unsigned_event, UNSOOT_RUN_ERROR_ENTRY);
  must (player, event (player, UNSOOT_RUN_SIGNED, -1));
  must_not (player, extra (player, "measure oil"), UNSOOT_RUN_ERROR_STATE);
  must_not (player, happened (player, UNSOOT_HAPPENING_STALL), UNSOOT_RUN_ERROR_STATE);
}
END_TEST

/* Where only the screen was gone, the last step may be confirmed again, and changes nothing. */
START_TEST (test_asked_again_after_a_cut)
{
  g_autoptr (Player) player = player_new (SKELDER);
  int current;

  play_to (player, "run engine fuel");
  must (player, event (player, UNSOOT_RUN_STARTED, unsoot_run_current (player->run)));
  current = unsoot_run_current (player->run);
  must_not (player, event (player, UNSOOT_RUN_ASKED_AGAIN, current), UNSOOT_RUN_ERROR_ORDER);
  must_not (player, event (player, UNSOOT_RUN_ASKED_AGAIN, current - 2), UNSOOT_RUN_ERROR_ORDER);
  must (player, event (player, UNSOOT_RUN_ASKED_AGAIN, current - 1));
  ck_assert_int_eq (unsoot_run_current (player->run), current);
  ck_assert (unsoot_run_timer_counts (player->run));
}
END_TEST

START_TEST (test_steps_left)
{
  g_autoptr (Player) player = player_new (SKELDER);
  g_autoptr (GArray) faults = unsoot_faults_new ();

  play_to (player, "hold tank fuel");
  ck_assert (!unsoot_run_finish_faults (player->run, faults));
  ck_assert (has_fault (faults, "sense", "1 step is not done."));
}
END_TEST

static gboolean
tells (char **lines, const char *words)
{
  for (char **line = lines; *line != NULL; line++)
    if (strstr (*line, words) != NULL)
      return TRUE;
  return FALSE;
}

static UnsootRunEvent *
release (Player *player)
{
  UnsootRunEvent *made = event (player, UNSOOT_RUN_RELEASED, -1);

  made->text = g_strdup ("the gasket comes tomorrow");
  return made;
}

/* Left overnight in pieces: what the tag says, and the way on. */
START_TEST (test_released_incomplete)
{
  g_autoptr (Player) player = player_new (BRINDLE);
  UnsootRunEvent *made;
  g_auto (GStrv) off = NULL, tanks = NULL;
  g_autofree char *next = NULL, *tag = NULL;

  play_to (player, "stop atomiser");
  must_not (player, release (player), UNSOOT_RUN_ERROR_REFUSED);
  play_to (player, "replace gasket");
  made = release (player);
  g_clear_pointer (&made->text, g_free);
  must_not (player, made, UNSOOT_RUN_ERROR_ENTRY);
  made = release (player);
  made->staff_id = 0;
  must_not (player, made, UNSOOT_RUN_ERROR_ENTRY);
  must (player, release (player));
  ck_assert_int_eq (unsoot_run_state (player->run), UNSOOT_RUN_STATE_RELEASED);
  off = unsoot_run_off_engine (player->run);
  tanks = unsoot_run_tanks (player->run);
  next = unsoot_run_next_safe_step (player->run);
  ck_assert (tells (off, "“egr crossover” is still off."));
  ck_assert (tells (off, "“valve adapter” is still on the vehicle."));
  ck_assert (tells (off, "Still disabled: intake heater."));
  ck_assert (tells (off, "The lead “egr position” is still off."));
  ck_assert (tells (tanks, "Fuel tank: this vehicle's return"));
  ck_assert (tells (tanks, "Intake tank: fresh fluid, 1 L"));
  ck_assert_str_eq (next, "Next: New gasket for the crossover pipe");
  tag = unsoot_run_tag (player->run);
  ck_assert (g_str_has_suffix (tag, "Next safe step: New gasket for the crossover pipe"));
  must_not (player, extra (player, "measure oil"), UNSOOT_RUN_ERROR_STATE);
  player->now += 50000;
  recover (player);
  play_to_end (player);
}
END_TEST

/* The machine served other vehicles meanwhile: its tank is not trusted again. */
START_TEST (test_released_tanks_are_in_doubt)
{
  g_autoptr (Player) player = player_new (SKELDER);

  play_to (player, "bleed pressure");
  must (player, release (player));
  must (player, event (player, UNSOOT_RUN_RESUMED, -1));
  ck_assert_int_eq (unsoot_run_rig (player->run)->tank[UNSOOT_SIDE_FUEL].contents,
                    UNSOOT_CONTENTS_UNKNOWN);
  must (player, happened (player, UNSOOT_HAPPENING_STOP));
  recover (player);
  ck_assert_int_eq (unsoot_run_rig (player->run)->tank[UNSOOT_SIDE_FUEL].contents,
                    UNSOOT_CONTENTS_FRESH);
  play_to_end (player);
}
END_TEST

START_TEST (test_tag_warns_of_liquid)
{
  g_autoptr (Player) player = player_new (FENMOOR);
  g_autofree char *next = NULL;

  play_to (player, "drain low-point");
  must (player, release (player));
  next = unsoot_run_next_safe_step (player->run);
  ck_assert (g_str_has_prefix (next, "Do not start the engine"));
  ck_assert (g_str_has_suffix (next, "Drain the charge cooler"));
}
END_TEST

START_TEST (test_copy_is_apart)
{
  g_autoptr (Player) player = player_new (HARROW);
  g_autoptr (Player) copy = NULL;
  g_autofree char *before = NULL, *after = NULL;

  play_to (player, "start atomiser");
  must (player, happened (player, UNSOOT_HAPPENING_CO_ALARM));
  copy = player_copy (player);
  before = unsoot_run_digest (player->run);
  recover (copy);
  play_to_end (copy);
  after = unsoot_run_digest (player->run);
  ck_assert_str_eq (before, after);
}
END_TEST

static Suite *
run_suite (void)
{
  Suite *suite = suite_create ("run");
  TCase *tcase = tcase_create ("run");

  tcase_add_loop_test (tcase, test_plays_to_the_end, 0, G_N_ELEMENTS (kit_names));
  tcase_add_loop_test (tcase, test_reopens_after_any_event, 0, G_N_ELEMENTS (kit_names));
  tcase_add_loop_test (tcase, test_offer_is_kept, 0, G_N_ELEMENTS (kit_names));
  tcase_add_test (tcase, test_order);
  tcase_add_test (tcase, test_entries);
  tcase_add_test (tcase, test_known_tanks);
  tcase_add_test (tcase, test_tank_is_measured);
  tcase_add_test (tcase, test_risen_oil);
  tcase_add_test (tcase, test_late_stamps);
  tcase_add_test (tcase, test_interlocks);
  tcase_add_test (tcase, test_timer);
  tcase_add_test (tcase, test_timer_stops_when_it_happened);
  tcase_add_test (tcase, test_stop_is_taken_behind_an_alarm);
  tcase_add_test (tcase, test_mist_timer);
  tcase_add_test (tcase, test_soak_timer);
  tcase_add_test (tcase, test_stall_then_start);
  tcase_add_test (tcase, test_halt_takes_only_what_is_safe);
  tcase_add_test (tcase, test_stop_chosen);
  tcase_add_loop_test (tcase, test_unfinished, 0, G_N_ELEMENTS (unfinished));
  tcase_add_test (tcase, test_made_good);
  tcase_add_test (tcase, test_steps_left);
  tcase_add_test (tcase, test_asked_again_after_a_cut);
  tcase_add_test (tcase, test_released_incomplete);
  tcase_add_test (tcase, test_released_tanks_are_in_doubt);
  tcase_add_test (tcase, test_tag_warns_of_liquid);
  tcase_add_test (tcase, test_copy_is_apart);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (run_suite)
