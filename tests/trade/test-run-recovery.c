/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whatever happens, before whichever step of whichever procedure: the bay is left
 * so that no rule is broken, there is a way back, and the job ends signed. */
#include "run-kit.h"

/* Written from the rules, apart from the rig's own checks. */
static void
check_left (const UnsootRig *rig, UnsootHappening happening, const char *where)
{
  gboolean runs = rig->engine != UNSOOT_ENGINE_OFF;
  gboolean machine = rig->joined[UNSOOT_LINE_MACHINE_SUPPLY];

  ck_assert_msg (!rig->atomiser || runs, "%s: mist into a stopped engine", where);
  ck_assert_msg (!rig->atomiser, "%s: the atomiser is left on", where);
  ck_assert_msg (!runs || !machine || rig->pump, "%s: engine without its pump", where);
  ck_assert_msg (!runs || rig->key, "%s: engine without a key", where);
  ck_assert_msg (!runs || happening == UNSOOT_HAPPENING_LOST_AIR, "%s: engine left on", where);
  if (happening == UNSOOT_HAPPENING_STALL || happening == UNSOOT_HAPPENING_RUNAWAY)
    ck_assert_msg (unsoot_rig_must_drain (rig), "%s: may start on liquid", where);
  if (happening == UNSOOT_HAPPENING_LEAK_OR_FIRE)
    ck_assert_msg (!rig->pump && rig->look_due[UNSOOT_SIDE_FUEL], "%s: leak", where);
  if (happening == UNSOOT_HAPPENING_BURST_HOSE)
    ck_assert_msg (!rig->pump && !machine, "%s: burst hose", where);
}

static void
happen_and_go_on (const Player *before, UnsootHappening happening)
{
  g_autoptr (Player) player = player_copy (before);
  g_autofree char *where = g_strdup_printf (
      "%s before step %d", unsoot_happening_to_slug (happening), unsoot_run_current (player->run));

  must (player, happened (player, happening));
  check_left (unsoot_run_rig (player->run), happening, where);
  player->now += 120;
  recover (player);
  play_to_end (player);
}

/* In the midst of a timed step too. */
static void
happen_in_step (const Player *before, UnsootHappening happening)
{
  g_autoptr (Player) player = player_copy (before);
  g_auto (UnsootRunOffer) offer = { 0 };

  unsoot_run_offer (player->run, &offer);
  if (!offer.timed)
    return;
  if (offer.caution)
    must (player, event (player, UNSOOT_RUN_CAUTION,
                         unsoot_procedure_step (player->procedure, offer.step)->phase));
  must (player, event (player, UNSOOT_RUN_STARTED, offer.step));
  happen_and_go_on (player, happening);
}

START_TEST (test_anything_from_anywhere)
{
  g_autoptr (Player) player = player_new (kit_names[_i]);

  for (int step = 0; step < (int) player->procedure->steps->len; step++)
    {
      play_until (player, step);
      for (int h = UNSOOT_HAPPENING_NONE + 1; h < UNSOOT_HAPPENINGS; h++)
        {
          happen_and_go_on (player, (UnsootHappening) h);
          happen_in_step (player, (UnsootHappening) h);
        }
    }
}
END_TEST

/* Two in a row, the second while the first is not yet made good. */
START_TEST (test_twice)
{
  g_autoptr (Player) player = player_new (kit_names[_i]);

  for (int step = 0; step < (int) player->procedure->steps->len; step++)
    {
      play_until (player, step);
      for (int h = UNSOOT_HAPPENING_NONE + 1; h < UNSOOT_HAPPENINGS; h++)
        {
          g_autoptr (Player) other = player_copy (player);
          must (other, happened (other, (UnsootHappening) h));
          must (other, event (other, UNSOOT_RUN_RESUMED, -1));
          happen_and_go_on (other, UNSOOT_HAPPENING_STALL);
          must (other, happened (other, UNSOOT_HAPPENING_STOP));
          happen_and_go_on (other, UNSOOT_HAPPENING_CO_ALARM);
        }
    }
}
END_TEST

/* After the last step, before the signature. */
START_TEST (test_at_the_end)
{
  g_autoptr (Player) player = player_new (kit_names[_i]);

  play_until (player, (int) player->procedure->steps->len);
  for (int h = UNSOOT_HAPPENING_NONE + 1; h < UNSOOT_HAPPENINGS; h++)
    happen_and_go_on (player, (UnsootHappening) h);
}
END_TEST

static void
check_order (const UnsootRecovery *recovery, const char *const *expected)
{
  for (guint i = 0; i < recovery->acts->len; i++)
    {
      g_autofree char *line = unsoot_step_print (recovery->acts->pdata[i]);
      ck_assert_msg (expected[i] != NULL && g_str_has_prefix (line, expected[i]),
                     "act %u is “%s”, not “%s”", i, line, expected[i] ? expected[i] : "none");
    }
  ck_assert_ptr_null (expected[recovery->acts->len]);
}

/* The order that the rules ask for: drain, oil, pump, pressure, key, look, engine,
 * air, look, atomiser. */
START_TEST (test_order_of_the_way_back)
{
  static const char *const expected[] = {
    "set air minimum",
    "bleed air",
    "stop key",
    "stop pump",
    "drain low-point \"charge cooler\"",
    "drain low-point \"lower charge pipe\"",
    "measure oil",
    "set pressure minimum",
    "start pump",
    "set pressure",
    "start key",
    "look leaks fuel",
    "start engine",
    "set air",
    "look leaks intake",
    "start atomiser",
    NULL,
  };
  g_autoptr (Player) player = player_new (HARROW);
  g_autoptr (UnsootRecovery) recovery = NULL;

  play_to (player, "run engine intake");
  must (player, happened (player, UNSOOT_HAPPENING_STALL));
  recovery = unsoot_run_recovery (player->run);
  ck_assert_int_eq (recovery->fault.rule, UNSOOT_RULE_NONE);
  check_order (recovery, expected);
  ck_assert_int_eq (recovery->first, recovery->until);
}
END_TEST

/* Oil that has risen is changed and read again on the way back. */
START_TEST (test_risen_oil_on_the_way)
{
  static const char *const expected[] = { "set air minimum",
                                          "bleed air",
                                          "stop key",
                                          "stop pump",
                                          "drain low-point \"charge cooler\"",
                                          "drain low-point \"lower charge pipe\"",
                                          "replace oil",
                                          "measure oil" };
  g_autoptr (Player) player = player_new (HARROW);
  g_autoptr (UnsootRecovery) recovery = NULL;
  UnsootRunEvent *made;

  play_to (player, "run engine intake");
  must (player, happened (player, UNSOOT_HAPPENING_STALL));
  made = extra (player, "measure oil");
  made->value = 1;
  must (player, made);
  recovery = unsoot_run_recovery (player->run);
  ck_assert_int_eq (recovery->fault.rule, UNSOOT_RULE_NONE);
  for (guint i = 0; i < G_N_ELEMENTS (expected); i++)
    {
      g_autofree char *line = unsoot_step_print (recovery->acts->pdata[i]);
      ck_assert_str_eq (line, expected[i]);
    }
  recover (player);
  play_to_end (player);
}
END_TEST

/* What was to be stopped next is stopped already: no restart for its sake. */
START_TEST (test_no_needless_restart)
{
  g_autoptr (Player) player = player_new (SKELDER);
  g_autoptr (UnsootRecovery) recovery = NULL, again = NULL;

  play_to (player, "stop engine");
  must (player, happened (player, UNSOOT_HAPPENING_CO_ALARM));
  recovery = unsoot_run_recovery (player->run);
  ck_assert_int_eq (recovery->fault.rule, UNSOOT_RULE_NONE);
  ck_assert_uint_eq (recovery->acts->len, 0);
  ck_assert_int_eq (recovery->until - recovery->first, 3); /* engine, key, pump */
  recover (player);
  again = unsoot_run_recovery (player->run);
  ck_assert_int_eq (again->fault.rule, UNSOOT_RULE_NONE);
  ck_assert_uint_eq (again->acts->len, 0);
  ck_assert_int_eq (again->until, recovery->until);
}
END_TEST

START_TEST (test_nothing_to_make_good)
{
  g_autoptr (Player) player = player_new (HARROW);
  g_autoptr (UnsootRecovery) recovery = NULL;

  play_to (player, "start engine");
  recovery = unsoot_run_recovery (player->run);
  ck_assert_uint_eq (recovery->acts->len, 0);
  ck_assert_int_eq (recovery->until, unsoot_run_current (player->run));
  ck_assert_int_eq (recovery->fault.rule, UNSOOT_RULE_NONE);
}
END_TEST

/* From @from on everything is passed over until the fuel tank is to be filled; @contents is then
 * in it. Drain, flush, start over: rule 1. */
static void
check_start_over (const char *from, UnsootContents contents, const char *const *expected)
{
  g_autoptr (Player) player = player_new (SKELDER);
  g_autoptr (UnsootRecovery) recovery = NULL;
  g_auto (UnsootRunOffer) offer = { 0 }, after = { 0 };

  play_to (player, from);
  while (unsoot_procedure_step (player->procedure, unsoot_run_current (player->run))->act
         != UNSOOT_ACT_FILL)
    must (player, passed (player));
  unsoot_run_offer (player->run, &offer);
  ck_assert (!offer.may_do);
  ck_assert_int_eq (offer.fault.rule, UNSOOT_RULE_FLUIDS_APART);
  ck_assert_int_eq (unsoot_run_rig (player->run)->tank[UNSOOT_SIDE_FUEL].contents, contents);
  recovery = unsoot_run_recovery (player->run);
  ck_assert_int_eq (recovery->fault.rule, UNSOOT_RULE_NONE);
  check_order (recovery, expected);
  make_good (player);
  unsoot_run_offer (player->run, &after);
  ck_assert (after.may_do);
  play_to_end (player);
}

START_TEST (test_what_was_passed_over_is_made_good)
{
  static const char *const flushed[] = { "flush tank fuel", NULL };
  static const char *const both[] = { "drain tank fuel", "flush tank fuel", NULL };

  check_start_over ("flush tank fuel", UNSOOT_CONTENTS_EMPTY, flushed);
  check_start_over ("drain tank fuel", UNSOOT_CONTENTS_UNKNOWN, both);
}
END_TEST

static Suite *
recovery_suite (void)
{
  Suite *suite = suite_create ("run-recovery");
  TCase *tcase = tcase_create ("recovery");

  tcase_set_timeout (tcase, 120);
  tcase_add_loop_test (tcase, test_anything_from_anywhere, 0, G_N_ELEMENTS (kit_names));
  tcase_add_loop_test (tcase, test_twice, 0, G_N_ELEMENTS (kit_names));
  tcase_add_loop_test (tcase, test_at_the_end, 0, G_N_ELEMENTS (kit_names));
  tcase_add_test (tcase, test_order_of_the_way_back);
  tcase_add_test (tcase, test_risen_oil_on_the_way);
  tcase_add_test (tcase, test_no_needless_restart);
  tcase_add_test (tcase, test_nothing_to_make_good);
  tcase_add_test (tcase, test_what_was_passed_over_is_made_good);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (recovery_suite)
