/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Passing procedures, changed at random from a fixed seed; every verdict, and the
 * step it falls at, is confirmed by the naive judge. */
#include "procedure-kit.h"

#include "naive-judge.h"

#define SEED 20260117
#define TRIALS 8000 /* for each of the five procedures */

/* Lines that may be put in anywhere: some always harmless, most not. */
static const char *const strays[] = {
  "measure reading noise",
  "measure reading noise",
  "measure reading noise",
  "measure tank fuel",
  "measure oil",
  "set speed idle",
  "open valve \"test valve\"",
  "close valve \"test valve\"",
  "drain tank intake",
  "flush tank intake",
  "drain tank fuel",
  "flush tank fuel",
  "fill tank fuel share 0.1",
  "fill tank intake share 0.1",
  "hold tank fuel",
  "look leaks fuel",
  "look leaks intake",
  "start key",
  "stop key",
  "start engine",
  "stop engine",
  "start pump",
  "stop pump",
  "start atomiser",
  "stop atomiser",
  "set air 40 psi",
  "set air minimum",
  "set pressure minimum",
  "set pressure 7 psi",
  "bleed air",
  "bleed pressure",
  "prime pump",
  "prime line vehicle-supply",
  "set speed raised",
  "run engine minutes 2 low-level",
  "run engine minutes 2",
  "run engine fuel share 0.5 minutes 9 low-level",
  "run engine fuel share 1 minutes 9 low-level",
  "run engine intake share 0.7 minutes 9 low-level",
  "soak part \"stray part\" minutes 5",
  "take-off part \"stray part\"",
  "take-off part intake \"stray pipe\"",
  "take-off part fuel \"stray union\" new-gasket",
  "replace gasket ring at \"stray union\"",
  "refit part \"stray part\"",
  "refit part \"stray pipe\"",
  "refit part \"stray union\"",
  "replace filter \"air filter\"",
  "replace filter fuel \"fuel filter\"",
  "replace oil",
  "fit tool clamp at \"stray pipe\"",
  "remove tool clamp",
  "fit guard intake plug at \"stray pipe\" closes",
  "remove guard plug",
  "fit adapter intake stray at \"stray pipe\"",
  "fit adapter fuel coupling",
  "remove adapter stray",
  "remove adapter coupling",
  "disconnect lead \"stray lead\"",
  "reconnect lead \"stray lead\"",
  "disconnect lead lift-pump",
  "reconnect lead lift-pump",
  "disable heater",
  "enable heater",
  "enable regeneration",
  "drain low-point \"charge cooler\"",
  "join line bypass",
  "part line bypass",
  "part line machine-supply",
  "part line vehicle-return",
  "join line vehicle-return",
  "clear codes",
  "drive road",
  "drive load",
};

static UnsootStep *
stray (GRand *random)
{
  guint n = (guint) g_rand_int_range (random, 0, G_N_ELEMENTS (strays));
  g_autoptr (GError) error = NULL;
  UnsootStep *step = unsoot_step_parse (strays[n], &error);

  ck_no_error (error);
  step->phase = 0;
  return step;
}

static void
swap (GPtrArray *steps, guint a, guint b)
{
  gpointer held = steps->pdata[a];

  steps->pdata[a] = steps->pdata[b];
  steps->pdata[b] = held;
}

static void
mutate_once (GRand *random, GPtrArray *steps)
{
  guint here = (guint) g_rand_int_range (random, 0, (gint32) steps->len - 1);
  guint there = (guint) g_rand_int_range (random, 0, (gint32) steps->len);

  switch (g_rand_int_range (random, 0, 7))
    {
    case 0:
      g_ptr_array_remove_index (steps, here);
      return;
    case 1:
      swap (steps, here, here + 1);
      return;
    case 2:
      swap (steps, here, there);
      return;
    case 3:
      g_ptr_array_insert (steps, (int) there, unsoot_step_copy (steps->pdata[here]));
      return;
    case 4:
      g_ptr_array_insert (steps, (int) MIN (there, steps->len - 1),
                          g_ptr_array_steal_index (steps, here));
      return;
    default:
      g_ptr_array_insert (steps, (int) here, stray (random));
      return;
    }
}

/* A pair that undoes itself, at the same spot: often harmless, and never twice alike. */
static void
add_pair (GRand *random, GPtrArray *steps)
{
  static const char *const pairs[][2] = {
    { "take-off part \"stray part\"", "refit part \"stray part\"" },
    { "fit tool clamp", "remove tool clamp" },
    { "open valve \"test valve\"", "close valve \"test valve\"" },
    { "set air 40 psi", "set air minimum" },
    { "drain tank intake", "flush tank intake" },
    { "disconnect lead \"stray lead\"", "reconnect lead \"stray lead\"" },
    { "set speed raised", "set speed idle" },
    { "fit adapter fuel coupling", "remove adapter coupling" },
    { "replace filter \"air filter\"", "measure oil" },
    { "look leaks fuel", "look leaks fuel" },
  };
  guint n = (guint) g_rand_int_range (random, 0, G_N_ELEMENTS (pairs));
  gint at = g_rand_int_range (random, 0, (gint32) steps->len);

  for (int i = 0; i < 2; i++)
    {
      UnsootStep *step = unsoot_step_parse (pairs[n][i], NULL);
      step->phase = 0;
      g_ptr_array_insert (steps, at + i, step);
    }
}

static UnsootProcedure *
mutant (GRand *random, const UnsootProcedure *procedure)
{
  UnsootProcedure *changed = unsoot_procedure_copy (procedure);
  int times = g_rand_int_range (random, 1, 4);

  for (int i = 0; i < times; i++)
    if (g_rand_int_range (random, 0, 3) == 0)
      add_pair (random, changed->steps);
    else
      mutate_once (random, changed->steps);
  return changed;
}

static void
explain (const UnsootProcedure *procedure, int ours, int theirs, const char *reason)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < procedure->steps->len; i++)
    {
      g_autofree char *line = unsoot_step_print (procedure->steps->pdata[i]);
      g_string_append_printf (text, "%u %s\n", i, line);
    }
  ck_abort_msg ("checker %d (%s), judge %d:\n%s", ours, reason != NULL ? reason : "", theirs,
                text->str);
}

/* Two lines a procedure: how many mutants of it were accepted and refused. */
static int tally[2];

static void
judge_both (const UnsootProcedure *procedure, const UnsootFamilyFacts *facts)
{
  g_autoptr (GArray) faults = unsoot_faults_new ();
  gboolean accepted = unsoot_procedure_check (procedure, facts, faults);
  const UnsootFault *first = accepted ? NULL : &g_array_index (faults, UnsootFault, 0);
  int ours = accepted ? -1 : first->step;
  int theirs = naive_judge (procedure, facts);

  if (ours != theirs)
    explain (procedure, ours, theirs, first != NULL ? first->reason : NULL);
  tally[accepted]++;
}

START_TEST (test_judge_passes_the_five)
{
  g_autoptr (UnsootProcedure) procedure = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL;

  kit_load (kit_names[_i], &procedure, &facts);
  ck_assert_int_eq (naive_judge (procedure, facts), -1);
}
END_TEST

START_TEST (test_every_verdict_is_confirmed)
{
  GRand *random = g_rand_new_with_seed (SEED);

  for (guint n = 0; n < G_N_ELEMENTS (kit_names); n++)
    {
      g_autoptr (UnsootProcedure) procedure = NULL;
      g_autoptr (UnsootFamilyFacts) facts = NULL;
      kit_load (kit_names[n], &procedure, &facts);
      for (int trial = 0; trial < TRIALS; trial++)
        {
          g_autoptr (UnsootProcedure) changed = mutant (random, procedure);
          if (!unsoot_procedure_equal (changed, procedure))
            judge_both (changed, facts);
        }
    }
  g_rand_free (random);
  ck_assert_int_ge (tally[TRUE], 1000);
  ck_assert_int_ge (tally[FALSE], 1000);
}
END_TEST

static Suite *
mutate_suite (void)
{
  Suite *suite = suite_create ("procedure-mutate");
  TCase *tcase = tcase_create ("mutate");

  tcase_set_timeout (tcase, 120);
  tcase_add_loop_test (tcase, test_judge_passes_the_five, 0, G_N_ELEMENTS (kit_names));
  tcase_add_test (tcase, test_every_verdict_is_confirmed);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (mutate_suite)
