/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "procedure-text.h"
#include "step-ask.h"

/* The windows and shares are common practice, no source: 6 to 10 psi at the inlet, 36 to 44 psi
 * counting as 40 psi of air; one psi is 6894.757 Pa (NIST SP 811). */
#define PSI 6894.757

static UnsootFamilyFacts *
facts_new (void)
{
  UnsootFamilyFacts *facts = unsoot_family_facts_new ("Test");

  facts->window_min_pa = 6 * PSI;
  facts->window_max_pa = 10 * PSI;
  facts->dose_ml[UNSOOT_SIDE_FUEL] = 1000;
  facts->dose_ml[UNSOOT_SIDE_INTAKE] = 2000;
  return facts;
}

static UnsootAsk
ask (const char *line, const UnsootRig *rig)
{
  g_autoptr (UnsootFamilyFacts) facts = facts_new ();
  g_autoptr (UnsootStep) step = unsoot_step_parse (line, NULL);

  ck_assert_ptr_nonnull (step);
  return unsoot_step_ask (step, facts, rig);
}

START_TEST (pressures_have_the_familys_window)
{
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();
  UnsootAsk asked = ask ("set pressure 8 psi", rig);

  ck_assert_int_eq (asked.kind, UNSOOT_ASK_PRESSURE);
  ck_assert_int_eq (asked.unit, UNSOOT_UNIT_PSI);
  ck_near (asked.preset_pa, 8 * PSI, 1);
  ck_near (asked.least_pa, 6 * PSI, 1);
  ck_near (asked.most_pa, 10 * PSI, 1);
  asked = ask ("set air 40 psi", rig);
  ck_near (asked.least_pa, 36 * PSI, 1);
  ck_near (asked.most_pa, 44 * PSI, 1);
  ck_assert_int_eq (ask ("set pressure minimum", rig).kind, UNSOOT_ASK_NOTHING);
  ck_assert_int_eq (ask ("set pressure 55158 Pa", rig).unit, UNSOOT_UNIT_PSI);
  ck_assert_int_eq (ask ("set pressure 0.6 bar", rig).unit, UNSOOT_UNIT_BAR);
}
END_TEST

START_TEST (fills_ask_for_lot_and_dose)
{
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();
  UnsootAsk asked;

  rig->tank[UNSOOT_SIDE_INTAKE].capacity_ml = 4000;
  rig->tank[UNSOOT_SIDE_INTAKE].ml = 500;
  asked = ask ("fill tank intake", rig);
  ck_assert_int_eq (asked.kind, UNSOOT_ASK_LOT);
  ck_assert_int_eq (asked.side, UNSOOT_SIDE_INTAKE);
  ck_assert_int_eq (asked.preset_ml, 2000);
  ck_assert_int_eq (asked.most_ml, 3500);
  ck_assert_int_eq (ask ("fill tank intake share 0.5", rig).preset_ml, 1000);
  ck_assert_int_eq (ask ("fill tank fuel", rig).most_ml, -1);
}
END_TEST

START_TEST (runs_ask_what_was_used)
{
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();
  UnsootAsk asked;

  rig->tank[UNSOOT_SIDE_INTAKE].ml = 2000;
  rig->used_ml[UNSOOT_SIDE_INTAKE] = 0;
  asked = ask ("run engine intake share 0.5 minutes 20", rig);
  ck_assert_int_eq (asked.kind, UNSOOT_ASK_USED);
  ck_assert_int_eq (asked.preset_ml, 1000);
  ck_assert_int_eq (asked.most_ml, 2000);
  ck_assert_int_eq (ask ("run engine minutes 5", rig).kind, UNSOOT_ASK_NOTHING);
}
END_TEST

START_TEST (the_rest_is_told_apart)
{
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();

  rig->tank[UNSOOT_SIDE_FUEL].ml = 50;
  ck_assert_int_eq (ask ("measure oil", rig).kind, UNSOOT_ASK_OIL);
  ck_assert_int_eq (ask ("measure tank fuel", rig).kind, UNSOOT_ASK_LEFT);
  ck_assert_int_eq (ask ("measure tank fuel", rig).preset_ml, 50);
  ck_assert_int_eq (ask ("measure reading \"idle quality\"", rig).kind, UNSOOT_ASK_NOTE);
  ck_assert_int_eq (ask ("hold tank fuel", rig).kind, UNSOOT_ASK_LABEL);
  ck_assert_int_eq (ask ("start engine", rig).kind, UNSOOT_ASK_NOTHING);
}
END_TEST

static Suite *
step_ask_suite (void)
{
  Suite *suite = suite_create ("step-ask");
  TCase *asks = tcase_create ("asks");

  tcase_add_test (asks, pressures_have_the_familys_window);
  tcase_add_test (asks, fills_ask_for_lot_and_dose);
  tcase_add_test (asks, runs_ask_what_was_used);
  tcase_add_test (asks, the_rest_is_told_apart);
  suite_add_tcase (suite, asks);
  return suite;
}

UNSOOT_TEST_MAIN (step_ask_suite)
