/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is stored and typed: each word has one value, each value one word. */
#include "suite.h"

#include "procedure.h"
#include "run.h"

/* Each enum's two ways, as plain int functions. */
#define WAYS(name, Type)                                                                           \
  static const char *name##_to (int value)                                                         \
  {                                                                                                \
    return unsoot_##name##_to_slug ((Type) value);                                                 \
  }                                                                                                \
  static gboolean name##_from (const char *slug, int *value)                                       \
  {                                                                                                \
    Type found = (Type) *value;                                                                    \
    gboolean known = unsoot_##name##_from_slug (slug, &found);                                     \
    *value = (int) found;                                                                          \
    return known;                                                                                  \
  }

WAYS (act, UnsootAct)
WAYS (subject, UnsootSubject)
WAYS (line, UnsootLine)
WAYS (side, UnsootSide)
WAYS (rule, UnsootRule)
WAYS (contents, UnsootContents)
WAYS (happening, UnsootHappening)
WAYS (run_event, UnsootRunEventKind)
WAYS (run_state, UnsootRunState)

typedef struct
{
  const char *(*to) (int value);
  gboolean (*from) (const char *slug, int *value);
  int n;
} Ways;

static const Ways ways[] = {
  { act_to, act_from, UNSOOT_ACTS },
  { subject_to, subject_from, UNSOOT_SUBJECTS },
  { line_to, line_from, UNSOOT_LINES },
  { side_to, side_from, UNSOOT_SIDES },
  { rule_to, rule_from, UNSOOT_RULES },
  { contents_to, contents_from, UNSOOT_CONTENTS_KINDS },
  { happening_to, happening_from, UNSOOT_HAPPENINGS },
  { run_event_to, run_event_from, UNSOOT_RUN_EVENT_KINDS },
  { run_state_to, run_state_from, UNSOOT_RUN_STATES },
};

START_TEST (test_both_ways)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (int value = 0; value < ways[_i].n; value++)
    {
      const char *slug = ways[_i].to (value);
      int back = -1;
      ck_assert_msg (slug != NULL, "no slug for %d", value);
      ck_assert (g_hash_table_add (seen, (gpointer) slug));
      ck_assert (ways[_i].from (slug, &back));
      ck_assert_int_eq (back, value);
      for (const char *p = slug; *p != '\0'; p++)
        ck_assert (g_ascii_islower (*p) || *p == '-');
    }
}
END_TEST

START_TEST (test_unknown_is_left_alone)
{
  static const char *const unknown[] = { NULL, "", "Take-Off", "unheard-of" };

  for (guint i = 0; i < G_N_ELEMENTS (unknown); i++)
    {
      int value = 1;
      ck_assert (!ways[_i].from (unknown[i], &value));
      ck_assert_int_eq (value, 1);
    }
}
END_TEST

START_TEST (test_cautions)
{
  for (guint i = 0; i < UNSOOT_CAUTIONS; i++)
    {
      UnsootCaution caution = (UnsootCaution) (1u << i), back;
      ck_assert (unsoot_caution_from_slug (unsoot_caution_to_slug (caution), &back));
      ck_assert_int_eq (back, caution);
      ck_assert_ptr_nonnull (unsoot_caution_text (caution));
    }
}
END_TEST

/* The eight numbered rules are all served. */
START_TEST (test_rules_serve_the_eight)
{
  guint served = 0;

  for (int rule = UNSOOT_RULE_NONE; rule < UNSOOT_RULES; rule++)
    {
      int number = unsoot_rule_number ((UnsootRule) rule);
      ck_assert (number >= 0 && number <= 8);
      ck_assert_ptr_nonnull (unsoot_rule_text ((UnsootRule) rule));
      served |= 1u << number;
    }
  ck_assert_uint_eq (served, 0x1ff);
  ck_assert_int_eq (unsoot_rule_number (UNSOOT_RULE_SENSE), 0);
  ck_assert_int_eq (unsoot_rule_number (UNSOOT_RULE_IGNITION_OUT), 7);
}
END_TEST

START_TEST (test_every_act_takes_something)
{
  for (int act = 0; act < UNSOOT_ACTS; act++)
    {
      int taken = 0;
      for (int subject = 0; subject < UNSOOT_SUBJECTS; subject++)
        taken += unsoot_act_takes ((UnsootAct) act, (UnsootSubject) subject);
      ck_assert_int_ge (taken, 1);
      ck_assert_ptr_nonnull (unsoot_act_label ((UnsootAct) act));
    }
  ck_assert (unsoot_act_takes (UNSOOT_ACT_FILL, UNSOOT_SUBJECT_TANK));
  ck_assert (!unsoot_act_takes (UNSOOT_ACT_FILL, UNSOOT_SUBJECT_KEY));
}
END_TEST

START_TEST (test_words_without_wording)
{
  g_autoptr (UnsootStep) line
      = unsoot_step_new (UNSOOT_ACT_JOIN, UNSOOT_SUBJECT_LINE, "machine-supply");
  g_autoptr (UnsootStep) speed
      = unsoot_step_new (UNSOOT_ACT_SET, UNSOOT_SUBJECT_SPEED, UNSOOT_SPEED_IDLE);
  g_autofree char *line_words = unsoot_step_words (line);
  g_autofree char *speed_words = unsoot_step_words (speed);

  ck_assert_str_eq (line_words, "Join: machine's supply hose");
  ck_assert_str_eq (speed_words, "Set: engine speed, idle");
}
END_TEST

START_TEST (test_fault_sentence)
{
  UnsootFault fault = { 3, UNSOOT_RULE_HIGH_PRESSURE, g_strdup ("No.") };
  g_autofree char *sentence = unsoot_fault_sentence (&fault);

  ck_assert_str_eq (sentence, "No. Rule 3: High-pressure lines are never opened.");
  unsoot_fault_clear (&fault);
}
END_TEST

static Suite *
slugs_suite (void)
{
  Suite *suite = suite_create ("procedure-slugs");
  TCase *tcase = tcase_create ("slugs");

  tcase_add_loop_test (tcase, test_both_ways, 0, G_N_ELEMENTS (ways));
  tcase_add_loop_test (tcase, test_unknown_is_left_alone, 0, G_N_ELEMENTS (ways));
  tcase_add_test (tcase, test_cautions);
  tcase_add_test (tcase, test_rules_serve_the_eight);
  tcase_add_test (tcase, test_every_act_takes_something);
  tcase_add_test (tcase, test_words_without_wording);
  tcase_add_test (tcase, test_fault_sentence);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (slugs_suite)
