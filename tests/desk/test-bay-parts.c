/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include <string.h>

#include "bay-task.h"
#include "bay-words.h"
#include "machine-plan.h"
#include "procedure-text.h"
#include "scan-burst.h"

/* What the bay reckons without a widget. The order of the acts after a stop is common practice,
 * no source; sizes are those of the shop's own rule for gloved hands: 48 px and up. */

#define TOUCH 48

static const char procedure_text[] = "procedure Fuel side\n"
                                     "sides fuel\n"
                                     "family Test\n"
                                     "lift-pump none\n"
                                     "window 6 to 10 psi\n"
                                     "egr none\n"
                                     "heater no\n"
                                     "regeneration no\n"
                                     "road yes\n"
                                     "dose fuel 1000 ml\n"
                                     "phase Get ready\n"
                                     "caution maker\n"
                                     "drain tank fuel | Drain it\n"
                                     "flush tank fuel | Flush it\n"
                                     "fill tank fuel | Fill it\n"
                                     "phase Connect\n"
                                     "part line vehicle-supply\n";

static UnsootRun *
run_new (void)
{
  g_autoptr (UnsootProcedure) procedure = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL;
  g_autoptr (GError) error = NULL;

  unsoot_procedure_parse (procedure_text, &procedure, &facts, &error);
  ck_no_error (error);
  return unsoot_run_new (procedure, facts, NULL);
}

static void
happens (UnsootRun *run, UnsootRunEvent *made)
{
  g_autoptr (UnsootRunEvent) event = made;
  g_autoptr (GError) error = NULL;

  event->seq = unsoot_run_next_seq (run);
  unsoot_run_apply (run, event, &error);
  ck_no_error (error);
}

/* Carries out what the bay asks for and returns what it was. */
static UnsootBayTaskKind
carry_out (UnsootRun *run)
{
  g_autoptr (UnsootBayTask) task = unsoot_bay_task_new (run, FALSE);

  happens (run, unsoot_bay_task_event (task, 1000));
  return task->kind;
}

START_TEST (one_thing_at_a_time)
{
  g_autoptr (UnsootRun) run = run_new ();
  g_autoptr (UnsootBayTask) filling = NULL;
  guint steps = 0, done = 0;

  happens (run, unsoot_run_event_new (UNSOOT_RUN_BEGAN, 1000));
  ck_assert_int_eq (carry_out (run), UNSOOT_TASK_CAUTIONS);
  ck_assert_int_eq (carry_out (run), UNSOOT_TASK_STEP);
  ck_assert_int_eq (carry_out (run), UNSOOT_TASK_STEP);
  filling = unsoot_bay_task_new (run, FALSE);
  ck_assert_int_eq (filling->step, 2);
  ck_assert_int_eq (filling->ask.kind, UNSOOT_ASK_LOT);
  ck_assert_int_eq (filling->ask.preset_ml, 1000);
  ck_assert_int_eq (unsoot_bay_phase (run, &steps, &done), 0);
  ck_assert_uint_eq (steps, 3);
  ck_assert_uint_eq (done, 2);
}
END_TEST

START_TEST (cut_off_it_asks_again)
{
  g_autoptr (UnsootRun) run = run_new ();
  g_autoptr (UnsootBayTask) first = NULL, again = NULL, after = NULL;

  happens (run, unsoot_run_event_new (UNSOOT_RUN_BEGAN, 1000));
  first = unsoot_bay_task_new (run, TRUE);
  ck_assert_int_eq (first->kind, UNSOOT_TASK_CAUTIONS);
  carry_out (run);
  carry_out (run);
  again = unsoot_bay_task_new (run, TRUE);
  ck_assert_int_eq (again->kind, UNSOOT_TASK_AGAIN);
  ck_assert_int_eq (again->step, 0);
  happens (run, unsoot_bay_task_event (again, 1001));
  after = unsoot_bay_task_new (run, FALSE);
  ck_assert_int_eq (after->kind, UNSOOT_TASK_STEP);
  ck_assert_int_eq (after->step, 1);
}
END_TEST

START_TEST (halted_it_offers_nothing_else)
{
  g_autoptr (UnsootRun) run = run_new ();
  g_autoptr (UnsootBayTask) task = NULL;
  UnsootRunEvent *halt = unsoot_run_event_new (UNSOOT_RUN_HALT, 1002);

  happens (run, unsoot_run_event_new (UNSOOT_RUN_BEGAN, 1000));
  halt->happening = UNSOOT_HAPPENING_STOP;
  happens (run, halt);
  task = unsoot_bay_task_new (run, FALSE);
  ck_assert_int_eq (task->kind, UNSOOT_TASK_HALTED);
  ck_assert_ptr_null (unsoot_bay_task_event (task, 1003));
}
END_TEST

START_TEST (every_part_can_be_touched)
{
  static const float sizes[][2]
      = { { 0, 0 }, { 224, 196 }, { 236, 210 }, { 320, 300 }, { 900, 200 } };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      UnsootMachinePlan plan;
      const float width = MAX (sizes[i][0], UNSOOT_MACHINE_LEAST_WIDTH);
      const float height = MAX (sizes[i][1], UNSOOT_MACHINE_LEAST_HEIGHT);
      const graphene_rect_t room = GRAPHENE_RECT_INIT (0, 0, width, height);

      unsoot_machine_plan (sizes[i][0], sizes[i][1], &plan);
      for (int a = 0; a < UNSOOT_MACHINE_PARTS; a++)
        {
          ck_assert (graphene_rect_contains_rect (&room, &plan.part[a]));
          ck_assert_float_ge (plan.part[a].size.width, TOUCH);
          ck_assert_float_ge (plan.part[a].size.height, TOUCH);
          for (int b = 0; b < a; b++)
            ck_assert_msg (!graphene_rect_intersection (&plan.part[a], &plan.part[b], NULL),
                           "parts %d and %d overlap", a, b);
        }
    }
}
END_TEST

START_TEST (hoses_begin_and_end_at_what_they_join)
{
  UnsootMachinePlan plan;
  const graphene_rect_t *tank, *engine;

  unsoot_machine_plan (240, 220, &plan);
  tank = &plan.part[UNSOOT_PART_FUEL_TANK];
  engine = &plan.part[UNSOOT_PART_ENGINE];
  ck_assert (graphene_rect_contains_point (tank, &plan.hose[UNSOOT_HOSE_SUPPLY][0]));
  ck_assert (graphene_rect_contains_point (engine, &plan.hose[UNSOOT_HOSE_SUPPLY][3]));
  ck_assert (graphene_rect_contains_point (engine, &plan.hose[UNSOOT_HOSE_RETURN][0]));
  ck_assert (graphene_rect_contains_point (tank, &plan.hose[UNSOOT_HOSE_RETURN][3]));
  ck_assert (graphene_rect_contains_point (engine, &plan.hose[UNSOOT_HOSE_MIST][3]));
  ck_assert (graphene_rect_contains_point (&plan.part[UNSOOT_PART_ATOMISER],
                                           &plan.hose[UNSOOT_HOSE_AIR][3]));
}
END_TEST

START_TEST (levels_are_what_is_in_the_tank)
{
  const graphene_rect_t tank = GRAPHENE_RECT_INIT (10, 20, 80, 100);
  const UnsootTank quarter = { .ml = 1000, .capacity_ml = 4000 };
  const UnsootTank over = { .ml = 5000, .capacity_ml = 4000 };
  const UnsootTank unknown = { .ml = 700 }, empty = { 0 };
  graphene_rect_t level;

  unsoot_machine_level (&tank, &quarter, &level);
  ck_assert_float_eq_tol (level.size.height, 25, 0.01f);
  ck_assert_float_eq_tol (level.origin.y + level.size.height, 120, 0.01f);
  unsoot_machine_level (&tank, &over, &level);
  ck_assert_float_eq_tol (level.size.height, 100, 0.01f);
  unsoot_machine_level (&tank, &unknown, &level);
  ck_assert_float_eq_tol (level.size.height, 50, 0.01f);
  unsoot_machine_level (&tank, &empty, &level);
  ck_assert_float_eq_tol (level.size.height, 0, 0.01f);
}
END_TEST

/* Rule 2: the atomiser only into a running engine; the lock says so in the trade's words. */
START_TEST (what_must_not_be_is_locked)
{
  g_autoptr (UnsootRun) run = run_new ();
  g_autofree char *atomiser = unsoot_machine_lock (run, UNSOOT_PART_ATOMISER);
  g_autofree char *tank = unsoot_machine_lock (run, UNSOOT_PART_FUEL_TANK);

  ck_assert_ptr_nonnull (atomiser);
  ck_assert_ptr_nonnull (strstr (atomiser, "engine"));
  ck_assert_ptr_null (tank);
}
END_TEST

START_TEST (what_runs_moves)
{
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();
  UnsootMachineState rest, running;

  unsoot_machine_state (rig, &rest);
  ck_assert (!unsoot_machine_state_moves (&rest));
  rig->pump = TRUE;
  rig->joined[UNSOOT_LINE_MACHINE_SUPPLY] = TRUE;
  unsoot_machine_state (rig, &running);
  ck_assert (running.flows[UNSOOT_HOSE_SUPPLY]);
  ck_assert (!running.flows[UNSOOT_HOSE_RETURN]);
  ck_assert (unsoot_machine_state_moves (&running));
  ck_assert (!unsoot_machine_state_equal (&rest, &running));
}
END_TEST

static void
type (UnsootScanBurst *burst, const char *text, guint32 *when, guint32 pause)
{
  for (const char *letter = text; *letter != '\0'; letter++, *when += pause)
    unsoot_scan_burst_letter (burst, (gunichar) *letter, *when);
}

START_TEST (a_scanner_is_told_from_fingers)
{
  UnsootScanBurst burst = { 0 };
  guint32 when = 5000;
  g_autofree char *scanned = NULL;
  char long_text[200];

  type (&burst, "7714-A", &when, 8);
  scanned = unsoot_scan_burst_return (&burst, when);
  ck_assert_str_eq (scanned, "7714-A");
  ck_assert_ptr_null (unsoot_scan_burst_return (&burst, when + 1));
  type (&burst, "7714-A", &when, 120);
  ck_assert_ptr_null (unsoot_scan_burst_return (&burst, when));
  /* A finger's letter before the scan is not part of it; Return by hand after one is no scan. */
  type (&burst, "x", &when, 300);
  type (&burst, "9911", &when, 5);
  ck_assert_ptr_null (unsoot_scan_burst_return (&burst, when + 500));
  memset (long_text, 'a', sizeof long_text - 1);
  long_text[sizeof long_text - 1] = '\0';
  type (&burst, long_text, &when, 2);
  g_free (scanned);
  scanned = unsoot_scan_burst_return (&burst, when);
  ck_assert_uint_lt (strlen (scanned), sizeof burst.text);
}
END_TEST

/* Where what is typed goes into no field, a scanner may be as slow as it likes (common practice, no
 * source: the slowest wedges send a letter every 100 ms or so). */
START_TEST (a_slow_scanner_presses_nothing)
{
  UnsootScanBurst burst = { .no_field = TRUE };
  guint32 when = 5000;
  g_autofree char *scanned = NULL, *letter = NULL;

  type (&burst, "7714-A", &when, 120);
  scanned = unsoot_scan_burst_return (&burst, when + 120);
  ck_assert_str_eq (scanned, "7714-A");
  ck_assert_ptr_null (unsoot_scan_burst_return (&burst, when + 240));
  type (&burst, "x", &when, 300);
  letter = unsoot_scan_burst_return (&burst, when);
  ck_assert_str_eq (letter, "x");
  type (&burst, "7714-A", &when, 120);
  ck_assert_ptr_null (unsoot_scan_burst_return (&burst, when + 3000));
}
END_TEST

START_TEST (times_read_as_a_clock)
{
  static const struct
  {
    gint64 seconds;
    const char *clock;
  } cases[] = { { 0, "0:00" }, { 65, "1:05" }, { -35, "0:35" }, { 3600, "1:00:00" } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *clock = unsoot_bay_clock (cases[i].seconds);
      ck_assert_str_eq (clock, cases[i].clock);
    }
  g_autofree char *late = unsoot_bay_late (185), *now = unsoot_bay_late (0);
  ck_assert_str_eq (late, "3 min late");
  ck_assert_str_eq (now, "now");
}
END_TEST

static Suite *
bay_parts_suite (void)
{
  Suite *suite = suite_create ("bay parts");
  TCase *parts = tcase_create ("parts");

  tcase_add_test (parts, one_thing_at_a_time);
  tcase_add_test (parts, cut_off_it_asks_again);
  tcase_add_test (parts, halted_it_offers_nothing_else);
  tcase_add_test (parts, every_part_can_be_touched);
  tcase_add_test (parts, hoses_begin_and_end_at_what_they_join);
  tcase_add_test (parts, levels_are_what_is_in_the_tank);
  tcase_add_test (parts, what_must_not_be_is_locked);
  tcase_add_test (parts, what_runs_moves);
  tcase_add_test (parts, a_scanner_is_told_from_fingers);
  tcase_add_test (parts, a_slow_scanner_presses_nothing);
  tcase_add_test (parts, times_read_as_a_clock);
  suite_add_tcase (suite, parts);
  return suite;
}

UNSOOT_TEST_MAIN (bay_parts_suite)
