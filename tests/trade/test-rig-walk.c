/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every state of the bay that acts and accidents can reach, breadth first, in
 * five models that together meet every rule. What must never be so is asked of
 * each state, and of each step between two states, from the rig's plain fields
 * and from marks that the test keeps itself. */
#include "procedure-kit.h"

typedef struct
{
  const char *name;
  gboolean bypass; /* lift pump that may be bypassed; else it is unplugged */
  gboolean lift_pump;
  const char *const *acts;
  guint least; /* states that are at least reached: fewer means a dead model */
} Model;

/* What the test knows by itself about the way to a state. */
typedef struct
{
  gboolean liquid; /* something may stand in the low point */
  gboolean oil_unread;
  gboolean not_idled;
  gboolean unseen; /* fuel lines touched or raised since the last look */
  gboolean air_unseen;
  gboolean foreign[UNSOOT_SIDES]; /* the tank may hold what isn't its own */
} Marks;

typedef struct
{
  UnsootRig *rig;
  Marks marks;
} State;

static const char *const fuel_acts[] = {
  "drain tank fuel",
  "flush tank fuel",
  "fill tank fuel",
  "fill tank fuel with intake",
  "hold tank fuel",
  "part line vehicle-supply",
  "part line vehicle-return",
  "join line vehicle-supply",
  "join line vehicle-return",
  "part line machine-supply",
  "part line machine-return",
  "join line machine-supply",
  "join line machine-return",
  "join line bypass",
  "part line bypass",
  "part line high-pressure",
  "bleed pressure",
  "start pump",
  "stop pump",
  "prime pump",
  "set pressure 8 psi",
  "set pressure 12 psi",
  "set pressure minimum",
  "start key",
  "stop key",
  "start engine",
  "stop engine",
  "look leaks fuel",
  "run engine fuel share 0.5 minutes 9 low-level",
  "run engine fuel share 1 minutes 9 low-level",
  "run engine fuel share 1 minutes 9",
  "run engine minutes 2",
  "disconnect lead lift-pump",
  "reconnect lead lift-pump",
  NULL,
};

static const char *const intake_acts[] = {
  "drain tank intake",
  "flush tank intake",
  "fill tank intake",
  "fill tank intake with fuel",
  "hold tank intake",
  "take-off part intake hose new-gasket",
  "replace gasket ring at hose",
  "refit part hose",
  "fit adapter intake nozzle at hose",
  "remove adapter nozzle",
  "fit guard intake cap at hose closes",
  "remove guard cap",
  "disable heater",
  "enable heater",
  "start key",
  "stop key",
  "start engine",
  "stop engine",
  "set air 40 psi",
  "set air 60 psi",
  "set air minimum",
  "bleed air",
  "look leaks intake",
  "start atomiser",
  "stop atomiser",
  "run engine intake share 0.5 minutes 9",
  "run engine intake share 1 minutes 9",
  "run engine minutes 2",
  "set speed raised",
  "set speed idle",
  "drain low-point elbow",
  "measure oil",
  "soak part manifold minutes 5",
  "drive road",
  NULL,
};

/* Both sides at once: lines are joined, tanks filled and the adapter is on before. */
static const char *const both_acts[] = {
  "start pump",
  "stop pump",
  "prime pump",
  "set pressure 8 psi",
  "set pressure 9 psi",
  "set pressure minimum",
  "bleed pressure",
  "start key",
  "stop key",
  "start engine",
  "stop engine",
  "look leaks fuel",
  "look leaks intake",
  "set air 40 psi",
  "set air minimum",
  "bleed air",
  "start atomiser",
  "stop atomiser",
  "disable heater",
  "enable heater",
  "run engine fuel share 0.5 minutes 9 low-level",
  "run engine fuel share 1 minutes 9 low-level",
  "run engine intake share 0.5 minutes 9 low-level",
  "run engine intake share 1 minutes 9",
  "run engine minutes 2 low-level",
  "run engine minutes 2",
  "set speed raised",
  "set speed idle",
  "drain low-point elbow",
  "measure oil",
  "drain tank fuel",
  "drain tank intake",
  "part line machine-supply",
  "join line machine-supply",
  "remove adapter nozzle",
  "fit adapter intake nozzle at hose",
  NULL,
};

static const char *const both_before[] = {
  "drain tank fuel",
  "flush tank fuel",
  "fill tank fuel",
  "drain tank intake",
  "flush tank intake",
  "fill tank intake",
  "bleed pressure",
  "part line vehicle-supply",
  "part line vehicle-return",
  "join line bypass",
  "join line machine-supply",
  "join line machine-return",
  "take-off part intake hose",
  "fit adapter intake nozzle at hose",
  NULL,
};

static const Model models[] = {
  { "fuel side, bypass", TRUE, TRUE, fuel_acts, 11000 },
  { "fuel side, unplugged", FALSE, TRUE, fuel_acts, 5000 },
  { "fuel side, no lift pump", FALSE, FALSE, fuel_acts, 3000 },
  { "intake side", TRUE, TRUE, intake_acts, 120000 },
  { "both sides", TRUE, TRUE, both_acts, 250000 },
};

static UnsootFamilyFacts *
facts_of (const Model *model)
{
  UnsootFamilyFacts *facts = unsoot_family_facts_new (model->name);

  facts->has_lift_pump = model->lift_pump;
  facts->lift_pump_bypass_allowed = model->bypass;
  facts->window_min_pa = 6 * UNSOOT_PSI_PA;
  facts->window_max_pa = 10 * UNSOOT_PSI_PA;
  facts->has_egr = facts->has_heater = facts->has_road = TRUE;
  facts->dose_ml[UNSOOT_SIDE_FUEL] = 1000;
  facts->dose_ml[UNSOOT_SIDE_INTAKE] = 2000;
  if (model->acts != fuel_acts)
    unsoot_family_facts_add_low_point (facts, "elbow");
  return facts;
}

static gboolean
is_on (const UnsootRig *rig, UnsootSubject subject)
{
  return unsoot_rig_change (rig, subject, NULL) != NULL;
}

#define JOINED(rig, line) ((rig)->joined[UNSOOT_LINE_##line])

/* Not ck_assert: it writes to a pipe each time, and this is asked millions of times. */
#define never(condition)                                                                           \
  do                                                                                               \
    if (condition)                                                                                 \
      ck_abort_msg ("after “%s”: %s\nbefore %s\nafter  %s", act, #condition,                       \
                    unsoot_rig_digest (before), unsoot_rig_digest (after));                        \
  while (0)

/* What may never be so, whatever led there. */
static void
check_state (const UnsootFamilyFacts *facts, const char *act, const UnsootRig *before,
             const UnsootRig *after, const Marks *marks)
{
  gboolean runs = after->engine != UNSOOT_ENGINE_OFF;
  gboolean machine = JOINED (after, MACHINE_SUPPLY) && JOINED (after, MACHINE_RETURN);
  gboolean whole = JOINED (after, VEHICLE_SUPPLY) && JOINED (after, VEHICLE_RETURN);
  gboolean unplugged = unsoot_rig_change (after, UNSOOT_SUBJECT_LEAD, "lift-pump") != NULL;

  never (after->atomiser && !runs);
  never (after->atomiser && is_on (after, UNSOOT_SUBJECT_HEATER) != facts->has_heater);
  never (after->atomiser && !is_on (after, UNSOOT_SUBJECT_ADAPTER));
  never (after->atomiser && after->air_pa <= 0);
  never (after->atomiser && after->tank[UNSOOT_SIDE_INTAKE].contents != UNSOOT_CONTENTS_FRESH);
  never (after->atomiser && !marks->liquid);
  never (runs && !after->key);
  never (runs && !machine && !whole);
  never (runs && machine && !after->pump);
  never (runs && machine && !(after->pressure_pa >= facts->window_min_pa));
  never (runs && machine && !after->primed);
  never (runs && machine && after->tank[UNSOOT_SIDE_FUEL].contents != UNSOOT_CONTENTS_RETURNED);
  never (runs && whole && facts->has_lift_pump && unplugged);
  never (after->key && facts->has_lift_pump && !unplugged && !whole && !JOINED (after, BYPASS));
  never (after->pump && !machine);
  never (after->pump && marks->foreign[UNSOOT_SIDE_FUEL]);
  never (after->atomiser && marks->foreign[UNSOOT_SIDE_INTAKE]);
  never (after->pressure_pa > facts->window_max_pa + 1);
  never (JOINED (after, MACHINE_SUPPLY) && JOINED (after, VEHICLE_SUPPLY));
  never (JOINED (after, MACHINE_RETURN) && JOINED (after, VEHICLE_RETURN));
  never (JOINED (after, BYPASS)
         && (JOINED (after, VEHICLE_SUPPLY) || JOINED (after, VEHICLE_RETURN)));
  never (JOINED (after, BYPASS) && !facts->lift_pump_bypass_allowed);
  never (JOINED (after, HIGH_PRESSURE));
  never (runs && is_on (after, UNSOOT_SUBJECT_GUARD));
  never (after->engine == UNSOOT_ENGINE_RAISED && (marks->not_idled || marks->liquid));
}

/* What no step of anyone's choosing may do from where it was. */
static void
check_step (const UnsootFamilyFacts *facts, const char *act, const UnsootRig *before,
            const UnsootRig *after, const Marks *marks)
{
  gboolean ran = before->engine != UNSOOT_ENGINE_OFF, runs = after->engine != UNSOOT_ENGINE_OFF;
  gboolean bare = !before->pump && !ran && !before->key && !before->atomiser
                  && before->pressure_pa <= 0 && before->pressure_bled;
  gboolean airless = before->air_pa <= 0 && before->air_bled && !ran && !before->atomiser;
  gboolean live = before->pump
                  || (before->key && facts->has_lift_pump
                      && unsoot_rig_change (before, UNSOOT_SUBJECT_LEAD, "lift-pump") == NULL);

  never (memcmp (before->joined, after->joined, sizeof before->joined) != 0 && !bare);
  never (is_on (before, UNSOOT_SUBJECT_ADAPTER) != is_on (after, UNSOOT_SUBJECT_ADAPTER)
         && !airless);
  never (is_on (before, UNSOOT_SUBJECT_PART) != is_on (after, UNSOOT_SUBJECT_PART) && ran);
  never (!ran && runs && (marks->liquid || marks->oil_unread));
  never (!ran && runs && marks->unseen && live);
  never (!before->atomiser && after->atomiser && (marks->air_unseen || marks->unseen));
  never (ran && !runs && (before->atomiser || before->air_pa > 0 || !before->air_bled));
  never (before->pump && !after->pump && ran);
  never (before->key && !after->key && ran);
  never (before->air_pa > 0 && after->air_pa <= 0 && before->atomiser);
  never (before->share[UNSOOT_SIDE_FUEL] < 1 && after->share[UNSOOT_SIDE_FUEL] >= 1
         && before->atomiser);
  never (g_str_has_prefix (act, "run")
         && (marks->unseen || (marks->air_unseen && before->air_pa > 0)));
  never (g_str_has_prefix (act, "drive") && (after->changes->len > 0 || !runs));
  never (g_str_has_prefix (act, "refit")
         && (is_on (before, UNSOOT_SUBJECT_ADAPTER) || is_on (before, UNSOOT_SUBJECT_GUARD)));
  for (int side = UNSOOT_SIDE_FUEL; side < UNSOOT_SIDES; side++)
    never (after->tank[side].contents == UNSOOT_CONTENTS_FRESH && marks->foreign[side]);
}

/* The test's own marks, moved on by the act's words alone. */
static void
mark_step (Marks *marks, const char *act, const UnsootRig *before)
{
  gboolean raise = g_str_has_prefix (act, "set pressure") && !g_str_has_suffix (act, "minimum")
                   && atof (act + 13) * UNSOOT_PSI_PA > before->pressure_pa + 1;
  gboolean wet = g_str_equal (act, "start atomiser") || g_str_has_prefix (act, "soak");

  if (wet)
    marks->liquid = marks->oil_unread = marks->not_idled = TRUE;
  if (g_str_has_prefix (act, "drain low-point"))
    marks->liquid = FALSE;
  if (g_str_equal (act, "measure oil"))
    marks->oil_unread = FALSE;
  if (g_str_has_prefix (act, "run engine minutes") && !marks->liquid && !marks->oil_unread
      && before->engine == UNSOOT_ENGINE_IDLE)
    marks->not_idled = FALSE;
  if (raise || g_str_equal (act, "start pump") || strstr (act, "line ") != NULL)
    marks->unseen = TRUE;
  if (g_str_equal (act, "look leaks fuel"))
    marks->unseen = FALSE;
  if (g_str_has_prefix (act, "fit adapter")
      || (g_str_equal (act, "set air 40 psi") && before->air_pa <= 0))
    marks->air_unseen = TRUE;
  if (g_str_equal (act, "look leaks intake") || g_str_has_prefix (act, "remove adapter"))
    marks->air_unseen = FALSE;
  if (g_str_equal (act, "flush tank fuel"))
    marks->foreign[UNSOOT_SIDE_FUEL] = FALSE;
  if (g_str_equal (act, "flush tank intake"))
    marks->foreign[UNSOOT_SIDE_INTAKE] = FALSE;
}

static void
mark_happening (Marks *marks, UnsootHappening happening, const UnsootRig *before)
{
  if (happening == UNSOOT_HAPPENING_STALL || happening == UNSOOT_HAPPENING_RUNAWAY)
    marks->liquid = marks->oil_unread = TRUE;
  if (happening == UNSOOT_HAPPENING_LEAK_OR_FIRE
      || (happening == UNSOOT_HAPPENING_BURST_HOSE && JOINED (before, MACHINE_SUPPLY)))
    marks->unseen = TRUE;
  if ((happening == UNSOOT_HAPPENING_LEAK_OR_FIRE || happening == UNSOOT_HAPPENING_LOST_AIR))
    marks->air_unseen = is_on (before, UNSOOT_SUBJECT_ADAPTER);
}

/* All that may decide what can follow; each model has one thing of a kind. What
 * was used so far only adds up and decides nothing. */
typedef struct
{
  guint64 flags;
  guint64 changes; /* a bit for each subject, and one for a gasket that is owed */
  gint32 pressure, air, ml[2], share[2];
} Key;

static guint64
pack (guint64 flags, guint value, guint bits)
{
  return flags << bits | value;
}

static guint64
pack_marks (guint64 flags, const Marks *marks)
{
  flags = pack (pack (flags, !!marks->liquid, 1), !!marks->oil_unread, 1);
  flags = pack (pack (flags, !!marks->not_idled, 1), !!marks->unseen, 1);
  flags = pack (pack (flags, !!marks->air_unseen, 1), !!marks->foreign[UNSOOT_SIDE_FUEL], 1);
  return pack (flags, !!marks->foreign[UNSOOT_SIDE_INTAKE], 1);
}

static guint64
pack_rig (const UnsootRig *rig)
{
  guint64 flags = pack (pack (0, !!rig->key, 1), rig->engine, 2);

  flags = pack (pack (flags, !!rig->pump, 1), !!rig->atomiser, 1);
  flags = pack (pack (flags, !!rig->pressure_bled, 1), !!rig->primed, 1);
  flags = pack (pack (flags, !!rig->air_bled, 1), !!rig->oil_due, 1);
  flags = pack (pack (flags, !!rig->oil_risen, 1), !!rig->idle_due, 1);
  flags = pack (pack (flags, !!rig->raise_due, 1), !!rig->codes_due, 1);
  flags = pack (flags, !!rig->driven, 1);
  for (int line = 0; line < UNSOOT_LINES; line++)
    flags = pack (flags, !!rig->joined[line], 1);
  for (int side = UNSOOT_SIDE_FUEL; side < UNSOOT_SIDES; side++)
    {
      flags = pack (flags, rig->tank[side].contents, 3);
      flags = pack (pack (flags, !!rig->tank[side].used, 1), !!rig->look_due[side], 1);
    }
  return flags;
}

static gpointer
key_of (const State *state)
{
  const UnsootRig *rig = state->rig;
  Key *key = g_new0 (Key, 1);

  key->flags = pack_marks (pack_rig (rig), &state->marks);
  key->pressure = (gint32) rig->pressure_pa;
  key->air = (gint32) rig->air_pa;
  for (int side = UNSOOT_SIDE_FUEL; side < UNSOOT_SIDES; side++)
    {
      key->ml[side - 1] = (gint32) rig->tank[side].ml;
      key->share[side - 1] = (gint32) (rig->share[side] * 1000);
    }
  for (guint i = 0; i < rig->changes->len; i++)
    {
      const UnsootChange *change = rig->changes->pdata[i];
      key->changes |= (guint64) 1 << change->subject | (guint64) !!change->owes_gasket << 40;
    }
  return key;
}

static guint
key_hash (gconstpointer key)
{
  const guint32 *words = key;
  guint hash = 2166136261u;

  for (guint i = 0; i < sizeof (Key) / sizeof *words; i++)
    hash = (hash ^ words[i]) * 16777619u;
  return hash;
}

static gboolean
key_equal (gconstpointer a, gconstpointer b)
{
  return memcmp (a, b, sizeof (Key)) == 0;
}

typedef struct
{
  GHashTable *seen;
  GQueue queue;
  guint states, steps, refusals;
} Walk;

static void
reach (Walk *walk, UnsootRig *rig, const Marks *marks)
{
  State *state = g_new (State, 1);

  state->rig = rig;
  state->marks = *marks;
  if (!g_hash_table_add (walk->seen, key_of (state)))
    {
      unsoot_rig_free (rig);
      g_free (state);
      return;
    }
  walk->states++;
  g_queue_push_tail (&walk->queue, state);
}

/* More than one dose in a tank is the same as one: it bounds the walk. */
static gboolean
is_overfull (const UnsootFamilyFacts *facts, const UnsootRig *rig)
{
  return rig->tank[UNSOOT_SIDE_FUEL].ml > facts->dose_ml[UNSOOT_SIDE_FUEL]
         || rig->tank[UNSOOT_SIDE_INTAKE].ml > facts->dose_ml[UNSOOT_SIDE_INTAKE];
}

static void
try_act (Walk *walk, const UnsootFamilyFacts *facts, const State *state, const char *act,
         const UnsootStep *step)
{
  UnsootRig *rig;
  Marks marks = state->marks;

  if (!unsoot_rig_allows (state->rig, facts, step, NULL, NULL))
    {
      walk->refusals++;
      return;
    }
  rig = unsoot_rig_copy (state->rig);
  if (!unsoot_rig_apply (rig, facts, step, NULL, NULL))
    ck_abort_msg ("allowed, and then refused: %s", act);
  walk->steps++;
  mark_step (&marks, act, state->rig);
  /* Whether the act was allowed is judged by what was known before it. */
  check_step (facts, act, state->rig, rig, &state->marks);
  check_state (facts, act, state->rig, rig, &marks);
  if (is_overfull (facts, rig))
    unsoot_rig_free (rig);
  else
    reach (walk, rig, &marks);
}

static void
try_happening (Walk *walk, const UnsootFamilyFacts *facts, const State *state,
               UnsootHappening happening)
{
  UnsootRig *rig = unsoot_rig_copy (state->rig);
  Marks marks = state->marks;
  const char *act = unsoot_happening_to_slug (happening);

  unsoot_rig_suffer (rig, facts, happening);
  mark_happening (&marks, happening, state->rig);
  if (facts->low_points->len == 0)
    marks.liquid = FALSE;
  check_state (facts, act, state->rig, rig, &marks);
  reach (walk, rig, &marks);
}

static void
begin (Walk *walk, const UnsootFamilyFacts *facts, const Model *model)
{
  UnsootRig *rig = unsoot_rig_new ();
  Marks marks = { .foreign = { FALSE, TRUE, TRUE } };

  if (model->acts == both_acts)
    for (guint i = 0; both_before[i] != NULL; i++)
      {
        g_autoptr (UnsootStep) step = unsoot_step_parse (both_before[i], NULL);
        UnsootFault fault = UNSOOT_FAULT_INIT;
        ck_assert_msg (unsoot_rig_apply (rig, facts, step, NULL, &fault), "%s: %s", both_before[i],
                       fault.reason);
        mark_step (&marks, both_before[i], rig);
      }
  reach (walk, rig, &marks);
}

static void
walk_on (Walk *walk, const UnsootFamilyFacts *facts, const Model *model, GPtrArray *steps)
{
  State *state;

  while ((state = g_queue_pop_head (&walk->queue)) != NULL)
    {
      for (guint i = 0; i < steps->len; i++)
        try_act (walk, facts, state, model->acts[i], steps->pdata[i]);
      for (int h = UNSOOT_HAPPENING_NONE + 1; h < UNSOOT_HAPPENINGS; h++)
        try_happening (walk, facts, state, (UnsootHappening) h);
      unsoot_rig_free (state->rig);
      g_free (state);
    }
}

START_TEST (test_no_reachable_state_breaks_a_rule)
{
  const Model *model = &models[_i];
  g_autoptr (UnsootFamilyFacts) facts = facts_of (model);
  g_autoptr (GPtrArray) steps = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_step_free);
  Walk walk = { g_hash_table_new_full (key_hash, key_equal, g_free, NULL), G_QUEUE_INIT, 0 };

  for (guint i = 0; model->acts[i] != NULL; i++)
    {
      UnsootStep *step = unsoot_step_parse (model->acts[i], NULL);
      ck_assert_msg (step != NULL, "%s", model->acts[i]);
      g_ptr_array_add (steps, step);
    }
  begin (&walk, facts, model);
  walk_on (&walk, facts, model, steps);
  g_printerr ("# %s: %u states, %u steps, %u refusals\n", model->name, walk.states, walk.steps,
              walk.refusals);
  ck_assert_uint_ge (walk.states, model->least);
  g_hash_table_unref (walk.seen);
}
END_TEST

static Suite *
walk_suite (void)
{
  Suite *suite = suite_create ("rig-walk");
  TCase *tcase = tcase_create ("walk");

  tcase_set_timeout (tcase, 200);
  tcase_add_loop_test (tcase, test_no_reachable_state_breaks_a_rule, 0, G_N_ELEMENTS (models));
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (walk_suite)
