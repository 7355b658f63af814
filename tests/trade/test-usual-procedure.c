/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The starting point of a procedure is judged by the checker, which knows nothing of it: for every
 * engine that the facts can describe, no rule is broken. */
#include "procedure-text.h"
#include "suite.h"
#include "usual-procedure.h"

enum
{
  HEATER = 1 << 0,
  REGENERATION = 1 << 1,
  ROAD = 1 << 2,
  LOW_POINT = 1 << 3,
  ALL = 1 << 4,
  LIFT_PUMPS = 3, /* none, bypassed, unplugged */
  EGRS = 3        /* none, valve, valve and cooler */
};

static UnsootFamilyFacts *
facts_of (int bits, int lift_pump, int egr)
{
  UnsootFamilyFacts *facts = unsoot_family_facts_new ("Brindle T4 5.1");

  facts->has_lift_pump = lift_pump > 0;
  facts->lift_pump_bypass_allowed = lift_pump == 1;
  facts->has_egr = egr > 0;
  facts->has_egr_cooler = egr > 1;
  facts->has_heater = (bits & HEATER) != 0;
  facts->has_regeneration = (bits & REGENERATION) != 0;
  facts->has_road = (bits & ROAD) != 0;
  facts->window_min_pa = 6 * 6894.757293168361;
  facts->window_max_pa = 10 * 6894.757293168361;
  facts->dose_ml[UNSOOT_SIDE_FUEL] = 1000;
  facts->dose_ml[UNSOOT_SIDE_INTAKE] = 2000;
  if ((bits & LOW_POINT) != 0)
    {
      unsoot_family_facts_add_low_point (facts, "charge cooler");
      unsoot_family_facts_add_low_point (facts, "left low pipe");
    }
  return facts;
}

static void
check (const UnsootFamilyFacts *facts, int sides)
{
  g_autoptr (UnsootProcedure) procedure
      = unsoot_usual_procedure (facts, (sides & 1) != 0, (sides & 2) != 0);
  g_autofree char *text = unsoot_procedure_print (procedure, facts);
  g_autoptr (GArray) faults = unsoot_faults_new ();

  if (!unsoot_procedure_check (procedure, facts, faults))
    {
      const UnsootFault *fault = &g_array_index (faults, UnsootFault, 0);
      g_autofree char *sentence = unsoot_fault_sentence (fault);
      ck_abort_msg ("step %d: %s\n%s", fault->step + 1, sentence, text);
    }
}

START_TEST (no_rule_is_broken)
{
  for (int bits = 0; bits < ALL; bits++)
    for (int lift_pump = 0; lift_pump < LIFT_PUMPS; lift_pump++)
      for (int egr = 0; egr < EGRS; egr++)
        {
          g_autoptr (UnsootFamilyFacts) facts = facts_of (bits, lift_pump, egr);
          for (int sides = 1; sides <= 3; sides++)
            check (facts, sides);
        }
}
END_TEST

/* What is written is read again, and is the same. */
START_TEST (its_text_reads_the_same)
{
  g_autoptr (UnsootFamilyFacts) facts = facts_of (ALL - 1, 1, 2);
  g_autoptr (UnsootProcedure) procedure = unsoot_usual_procedure (facts, TRUE, TRUE);
  g_autofree char *text = unsoot_procedure_print (procedure, facts);
  g_autoptr (UnsootProcedure) again = NULL;
  g_autoptr (UnsootFamilyFacts) its_facts = NULL;
  GError *error = NULL;

  unsoot_procedure_parse (text, &again, &its_facts, &error);
  ck_no_error (error);
  ck_assert (unsoot_procedure_equal (again, procedure));
  ck_assert (unsoot_family_facts_equal (its_facts, facts));
}
END_TEST

/* Rule 5 by hand, beside the checker: the pump stops after the engine and before the line. */
static int
find (const UnsootProcedure *procedure, UnsootAct act, UnsootSubject subject)
{
  for (guint i = 0; i < procedure->steps->len; i++)
    {
      const UnsootStep *step = unsoot_procedure_step (procedure, (int) i);
      if (step->act == act && step->subject == subject)
        return (int) i;
    }
  ck_abort_msg ("no such step");
}

START_TEST (it_stops_in_the_right_order)
{
  g_autoptr (UnsootFamilyFacts) facts = facts_of (ALL - 1, 1, 2);
  g_autoptr (UnsootProcedure) procedure = unsoot_usual_procedure (facts, TRUE, TRUE);
  const int engine = find (procedure, UNSOOT_ACT_STOP, UNSOOT_SUBJECT_ENGINE);
  const int pump = find (procedure, UNSOOT_ACT_STOP, UNSOOT_SUBJECT_PUMP);
  const int atomiser = find (procedure, UNSOOT_ACT_STOP, UNSOOT_SUBJECT_ATOMISER);
  const int air = find (procedure, UNSOOT_ACT_BLEED, UNSOOT_SUBJECT_AIR);

  ck_assert_int_lt (engine, pump);
  ck_assert_int_lt (atomiser, air);
  ck_assert_int_lt (air, find (procedure, UNSOOT_ACT_DRAIN, UNSOOT_SUBJECT_LOW_POINT));
}
END_TEST

static Suite *
usual_procedure_suite (void)
{
  Suite *suite = suite_create ("usual procedure");
  TCase *tcase = tcase_create ("usual procedure");

  tcase_add_test (tcase, no_rule_is_broken);
  tcase_add_test (tcase, its_text_reads_the_same);
  tcase_add_test (tcase, it_stops_in_the_right_order);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (usual_procedure_suite)
