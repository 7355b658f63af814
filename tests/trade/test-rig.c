/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What single acts and accidents leave behind, and what forbids a job's end. */
#include "procedure-kit.h"
#include "unit.h"

/* Fuel and intake side, everything there is; four low points would only repeat two. */
static UnsootFamilyFacts *
facts_new (void)
{
  UnsootFamilyFacts *facts = unsoot_family_facts_new ("test");

  facts->has_lift_pump = facts->lift_pump_bypass_allowed = TRUE;
  facts->has_egr = facts->has_egr_cooler = facts->has_heater = TRUE;
  facts->has_regeneration = facts->has_road = TRUE;
  facts->window_min_pa = 6 * UNSOOT_PSI_PA;
  facts->window_max_pa = 10 * UNSOOT_PSI_PA;
  facts->dose_ml[UNSOOT_SIDE_FUEL] = 1000;
  facts->dose_ml[UNSOOT_SIDE_INTAKE] = 2000;
  unsoot_family_facts_add_low_point (facts, "cooler");
  unsoot_family_facts_add_low_point (facts, "elbow");
  return facts;
}

/* Each of ACTS, separated by bars, has to be allowed. */
static void
act (UnsootRig *rig, const UnsootFamilyFacts *facts, const char *acts)
{
  g_auto (GStrv) each = g_strsplit (acts, "|", -1);

  for (char **line = each; *line != NULL; line++)
    {
      g_autoptr (UnsootStep) step = unsoot_step_parse (*line, NULL);
      g_auto (UnsootFault) fault = UNSOOT_FAULT_INIT;
      ck_assert_msg (step != NULL, "%s", *line);
      ck_assert_msg (unsoot_rig_apply (rig, facts, step, NULL, &fault), "%s: %s", *line,
                     fault.reason);
    }
}

#define FILLED                                                                                     \
  "drain tank fuel|flush tank fuel|fill tank fuel|"                                                \
  "drain tank intake|flush tank intake|fill tank intake|"
#define JOINED                                                                                     \
  "bleed pressure|part line vehicle-supply|part line vehicle-return|join line bypass|"             \
  "join line machine-supply|join line machine-return|"
#define FITTED                                                                                     \
  "take-off part intake hose|fit adapter intake nozzle at hose|disable heater|"                    \
  "disable regeneration|"
#define RUNNING "start pump|prime pump|set pressure 8 psi|start key|look leaks fuel|start engine|"
#define MISTING "set air 40 psi|look leaks intake|start atomiser"

static UnsootRig *
misting_rig (const UnsootFamilyFacts *facts)
{
  UnsootRig *rig = unsoot_rig_new ();

  act (rig, facts, FILLED JOINED FITTED RUNNING MISTING);
  return rig;
}

START_TEST (test_touches_ask_for_a_look)
{
  static const char *const touches[] = { "take-off part fuel union", "replace filter fuel strainer",
                                         "fit adapter fuel coupling", "part line vehicle-supply" };
  g_autoptr (UnsootFamilyFacts) facts = facts_new ();
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();

  act (rig, facts, "bleed pressure");
  ck_assert (!rig->look_due[UNSOOT_SIDE_FUEL]);
  act (rig, facts, touches[_i]);
  ck_assert (rig->look_due[UNSOOT_SIDE_FUEL]);
  ck_assert (!rig->look_due[UNSOOT_SIDE_INTAKE]);
}
END_TEST

START_TEST (test_covers_ask_for_none)
{
  g_autoptr (UnsootFamilyFacts) facts = facts_new ();
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();

  act (rig, facts,
       "take-off part cover|replace filter panel|take-off part intake hose|"
       "fit tool clamp|disconnect lead sensor");
  ck_assert (!rig->look_due[UNSOOT_SIDE_FUEL] && !rig->look_due[UNSOOT_SIDE_INTAKE]);
}
END_TEST

START_TEST (test_start_over_with_fresh_fluid)
{
  g_autoptr (UnsootFamilyFacts) facts = facts_new ();
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();

  act (rig, facts,
       FILLED JOINED RUNNING
       "run engine fuel share 0.6 minutes 9 low-level|stop engine|stop key|stop pump|"
       "set pressure minimum|drain tank fuel");
  ck_assert (!rig->primed);
  ck_assert_int_eq (rig->tank[UNSOOT_SIDE_FUEL].ml, 0);
  act (rig, facts, "flush tank fuel|fill tank fuel");
  ck_assert_double_eq (rig->share[UNSOOT_SIDE_FUEL], 0);
  ck_assert_int_eq (rig->tank[UNSOOT_SIDE_FUEL].ml, 1000);
  ck_assert_int_eq (rig->used_ml[UNSOOT_SIDE_FUEL], 600);
}
END_TEST

/* A tank that came in full of known fluid is used by whatever draws from it. */
START_TEST (test_known_tank_is_used)
{
  g_autoptr (UnsootFamilyFacts) facts = facts_new ();
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();

  rig->tank[UNSOOT_SIDE_FUEL] = (UnsootTank){ .contents = UNSOOT_CONTENTS_FRESH, .ml = 1000 };
  rig->tank[UNSOOT_SIDE_INTAKE] = (UnsootTank){ .contents = UNSOOT_CONTENTS_FRESH, .ml = 2000 };
  act (rig, facts, JOINED "start pump");
  ck_assert (rig->tank[UNSOOT_SIDE_FUEL].used && !rig->tank[UNSOOT_SIDE_INTAKE].used);
  act (rig, facts, "stop pump|bleed pressure|" FITTED RUNNING MISTING);
  ck_assert (rig->tank[UNSOOT_SIDE_INTAKE].used);
  ck_assert_int_eq (rig->tank[UNSOOT_SIDE_FUEL].contents, UNSOOT_CONTENTS_RETURNED);
}
END_TEST

START_TEST (test_oil_is_read_again_after_a_change)
{
  g_autoptr (UnsootFamilyFacts) facts = facts_new ();
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();
  g_autoptr (UnsootStep) measure = unsoot_step_parse ("measure oil", NULL);
  UnsootEntry risen = UNSOOT_ENTRY_NONE;

  risen.value = 1;
  ck_assert (unsoot_rig_apply (rig, facts, measure, &risen, NULL));
  ck_assert (rig->oil_risen && unsoot_rig_must_drain (rig));
  act (rig, facts, "replace oil");
  ck_assert (!rig->oil_risen && rig->oil_due);
  act (rig, facts, "measure oil");
  ck_assert (!unsoot_rig_must_drain (rig));
}
END_TEST

typedef struct
{
  UnsootHappening happening;
  gboolean engine, key, pump;         /* left on */
  gboolean pooled;                    /* both low points are to be drained (mist did it anyway) */
  gboolean fuel_look, air_look, hose; /* due; the supply hose still joined */
  double air_pa, pressure_pa;         /* psi */
} Left;

static const Left lefts[] = {
  { UNSOOT_HAPPENING_STALL, FALSE, TRUE, TRUE, TRUE, FALSE, FALSE, TRUE, 40, 8 },
  { UNSOOT_HAPPENING_RUNAWAY, FALSE, FALSE, FALSE, TRUE, FALSE, FALSE, TRUE, 40, 8 },
  { UNSOOT_HAPPENING_BURST_HOSE, FALSE, FALSE, FALSE, TRUE, TRUE, FALSE, FALSE, 40, 8 },
  { UNSOOT_HAPPENING_LOST_AIR, TRUE, TRUE, TRUE, TRUE, FALSE, TRUE, TRUE, 0, 8 },
  { UNSOOT_HAPPENING_CO_ALARM, FALSE, FALSE, FALSE, TRUE, FALSE, FALSE, TRUE, 40, 8 },
  { UNSOOT_HAPPENING_LEAK_OR_FIRE, FALSE, FALSE, FALSE, TRUE, TRUE, TRUE, TRUE, 40, 8 },
  { UNSOOT_HAPPENING_STOP, FALSE, FALSE, FALSE, TRUE, FALSE, FALSE, TRUE, 0, 0 },
};

START_TEST (test_left_behind)
{
  const Left *c = &lefts[_i];
  g_autoptr (UnsootFamilyFacts) facts = facts_new ();
  g_autoptr (UnsootRig) rig = misting_rig (facts);

  unsoot_rig_suffer (rig, facts, c->happening);
  ck_assert (!rig->atomiser);
  ck_assert (unsoot_rig_engine_runs (rig) == c->engine);
  ck_assert (rig->key == c->key && rig->pump == c->pump);
  ck_assert (!!unsoot_rig_change (rig, UNSOOT_SUBJECT_LOW_POINT, "cooler") == c->pooled);
  ck_assert (!!unsoot_rig_change (rig, UNSOOT_SUBJECT_LOW_POINT, "elbow") == c->pooled);
  ck_assert (rig->look_due[UNSOOT_SIDE_FUEL] == c->fuel_look);
  ck_assert (rig->look_due[UNSOOT_SIDE_INTAKE] == c->air_look);
  ck_assert (rig->joined[UNSOOT_LINE_MACHINE_SUPPLY] == c->hose);
  ck_assert (rig->primed == c->hose);
  ck_assert (!rig->air_bled && !rig->pressure_bled);
  ck_near (rig->air_pa, c->air_pa * UNSOOT_PSI_PA, 1);
  ck_near (rig->pressure_pa, c->pressure_pa * UNSOOT_PSI_PA, 1);
}
END_TEST

/* Without mist before it, only a stall and a runaway ask for the drain. */
START_TEST (test_dry_accidents)
{
  g_autoptr (UnsootFamilyFacts) facts = facts_new ();
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();
  UnsootHappening happening = (UnsootHappening) _i;
  gboolean pools = happening == UNSOOT_HAPPENING_STALL || happening == UNSOOT_HAPPENING_RUNAWAY;

  act (rig, facts, "start key|start engine|drive road");
  unsoot_rig_suffer (rig, facts, happening);
  ck_assert (unsoot_rig_must_drain (rig) == pools);
  ck_assert (rig->driven == !(pools || happening == UNSOOT_HAPPENING_LEAK_OR_FIRE));
  ck_assert (!rig->look_due[UNSOOT_SIDE_INTAKE]);
}
END_TEST

static gboolean
is_blamed (const UnsootRig *rig, const UnsootFamilyFacts *facts, UnsootRule rule, const char *words)
{
  g_autoptr (UnsootProcedure) procedure = unsoot_procedure_new ("test");
  g_autoptr (GArray) faults = unsoot_faults_new ();

  ck_assert (!unsoot_rig_finish_faults (rig, facts, procedure, faults));
  ck_assert (!unsoot_rig_finish_faults (rig, facts, procedure, NULL));
  for (guint i = 0; i < faults->len; i++)
    {
      const UnsootFault *fault = &g_array_index (faults, UnsootFault, i);
      if (fault->rule == rule && strstr (fault->reason, words) != NULL)
        return TRUE;
    }
  return FALSE;
}

/* In the middle of a job nearly everything is wrong, and all of it is told. */
START_TEST (test_end_names_everything)
{
  g_autoptr (UnsootFamilyFacts) facts = facts_new ();
  g_autoptr (UnsootRig) rig = misting_rig (facts);

  rig->look_due[UNSOOT_SIDE_INTAKE] = rig->look_due[UNSOOT_SIDE_FUEL] = TRUE;
  rig->oil_risen = rig->codes_due = TRUE;
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_STOP_ORDER, "atomiser is still on"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_STOP_ORDER, "air is still charged"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_STOP_ORDER, "engine is still running"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_STOP_ORDER, "key is still on"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_STOP_ORDER, "pump is still on"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_STOP_ORDER, "not at its minimum"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_EVERYTHING_BACK, "hose"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_EVERYTHING_BACK, "nozzle"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_EVERYTHING_BACK, "heater"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_EVERYTHING_BACK, "bypass hose"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_EVERYTHING_BACK, "vehicle's supply line"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_EVERYTHING_BACK, "codes"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_FLUIDS_APART, "fuel tank"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_FLUIDS_APART, "intake tank"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_LEAK_LOOK, "fuel lines"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_LEAK_LOOK, "air hose"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_DRAIN_BEFORE_START, "elbow"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_DRAIN_BEFORE_START, "not checked"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_DRAIN_BEFORE_START, "risen"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_IDLE_FIRST, "idled"));
  ck_assert (is_blamed (rig, facts, UNSOOT_RULE_ROAD_TEST_LAST, "road test"));
}
END_TEST

/* A refusal changes nothing, whatever is tried. */
START_TEST (test_refusal_changes_nothing)
{
  g_autoptr (UnsootFamilyFacts) facts = facts_new ();
  g_autoptr (UnsootRig) rig = misting_rig (facts);
  int refused = 0;

  for (int a = 0; a < UNSOOT_ACTS; a++)
    for (int s = 0; s < UNSOOT_SUBJECTS; s++)
      {
        g_autoptr (UnsootStep) step = unsoot_step_new ((UnsootAct) a, (UnsootSubject) s, "x");
        g_autoptr (UnsootRig) tried = unsoot_rig_copy (rig);
        g_auto (UnsootFault) fault = UNSOOT_FAULT_INIT;
        g_autofree char *before = unsoot_rig_digest (rig), *after = NULL;
        if (unsoot_rig_apply (tried, facts, step, NULL, &fault))
          continue;
        after = unsoot_rig_digest (tried);
        ck_assert_str_eq (before, after);
        ck_assert_int_ne (fault.rule, UNSOOT_RULE_NONE);
        ck_assert_ptr_nonnull (fault.reason);
        refused++;
      }
  ck_assert_int_gt (refused, UNSOOT_ACTS * (UNSOOT_SUBJECTS - 4));
}
END_TEST

/* One pound per square inch is what the units say it is (NIST SP 811). */
START_TEST (test_air_window)
{
  ck_assert_double_eq (UNSOOT_PSI_PA, unsoot_unit_to_si (UNSOOT_UNIT_PSI, 1));
  ck_near (UNSOOT_AIR_NOMINAL_PA, 275790.3, 0.1);
}
END_TEST

static Suite *
rig_suite (void)
{
  Suite *suite = suite_create ("rig");
  TCase *tcase = tcase_create ("rig");

  tcase_add_loop_test (tcase, test_touches_ask_for_a_look, 0, 4);
  tcase_add_test (tcase, test_covers_ask_for_none);
  tcase_add_test (tcase, test_start_over_with_fresh_fluid);
  tcase_add_test (tcase, test_known_tank_is_used);
  tcase_add_test (tcase, test_oil_is_read_again_after_a_change);
  tcase_add_loop_test (tcase, test_left_behind, 0, G_N_ELEMENTS (lefts));
  tcase_add_loop_test (tcase, test_dry_accidents, UNSOOT_HAPPENING_STALL, UNSOOT_HAPPENINGS);
  tcase_add_test (tcase, test_air_window);
  tcase_add_test (tcase, test_end_names_everything);
  tcase_add_test (tcase, test_refusal_changes_nothing);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (rig_suite)
