/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "procedure-kit.h"

/* Text, values and text again. */
START_TEST (test_demo_round_trip)
{
  g_autofree char *text = kit_text (kit_names[_i]);
  g_autofree char *again = NULL;
  g_autoptr (UnsootProcedure) procedure = NULL, second = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL, second_facts = NULL;

  kit_parse (text, &procedure, &facts);
  again = unsoot_procedure_print (procedure, facts);
  ck_assert_str_eq (again, text);
  kit_parse (again, &second, &second_facts);
  ck_assert (unsoot_procedure_equal (procedure, second));
  ck_assert (unsoot_family_facts_equal (facts, second_facts));
}
END_TEST

static const char *const lines[] = {
  "start pump",
  "take-off part intake \"hose \\\"A\\\" \\\\ left\" new-gasket | Off \\| away | Why \\\\ not\\n twice",
  "fit guard intake cap at \"cooler outlet\" closes | Cap it",
  "fit tool \"at\" at \"share\"",
  "run engine fuel share 0.333 minutes 12.5 low-level until-clear",
  "fill tank fuel with intake share 0.1",
  "set pressure 0.55 bar",
  "set pressure 55 kPa | Set it",
  "set pressure minimum",
  "set air 40 psi | | Only a reason",
  "set speed raised",
  "set pressure 8 \"p si\"",
  "set pressure 1.0000000000000002 psi",
  "set pressure 7.1999999999999993 bar",
  "start pump | \\ Wording that begins with a blank, and ends with one\\  | \\\tWhy",
  "fit tool \" a \" at \"b\\ \"",
  "measure reading \"Größe\" | Ölstand prüfen",
  "drain low-point elbow",
};

START_TEST (test_line_round_trip)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (UnsootStep) step = unsoot_step_parse (lines[_i], &error), again = NULL;
  g_autofree char *printed = NULL;

  ck_no_error (error);
  printed = unsoot_step_print (step);
  again = unsoot_step_parse (printed, &error);
  ck_no_error (error);
  ck_assert (unsoot_step_equal (step, again));
}
END_TEST

/* Whatever a shop types as a pressure is printed as typed. */
START_TEST (test_values_as_typed)
{
  static const char *const units[] = { "psi", "bar", "kPa", "Pa" };

  for (int tenths = 1; tenths < 1000; tenths++)
    {
      g_autofree char *line
          = g_strdup_printf ("set pressure %d.%d %s", tenths / 10, tenths % 10, units[_i]);
      g_autofree char *whole = g_strdup_printf ("set pressure %d %s", tenths / 10, units[_i]);
      g_autoptr (UnsootStep) step = unsoot_step_parse (line, NULL);
      g_autofree char *printed = unsoot_step_print (step);
      ck_assert_str_eq (printed, tenths % 10 == 0 ? whole : line);
    }
}
END_TEST

START_TEST (test_fields)
{
  g_autoptr (UnsootStep) step = unsoot_step_parse (
      "run engine intake share 0.5 minutes 20 low-level | Mist it | So that", NULL);

  ck_assert_int_eq (step->act, UNSOOT_ACT_RUN);
  ck_assert_int_eq (step->subject, UNSOOT_SUBJECT_ENGINE);
  ck_assert_int_eq (step->side, UNSOOT_SIDE_INTAKE);
  ck_assert_double_eq (step->share, 0.5);
  ck_assert_double_eq (step->minutes, 20);
  ck_assert (step->low_level && !step->until_clear);
  ck_assert (isnan (step->value));
  ck_assert_str_eq (step->wording, "Mist it");
  ck_assert_str_eq (step->why, "So that");
  ck_assert_ptr_null (step->name);
}
END_TEST

/* NIST SP 811: 1 psi is 6894.757 Pa. */
START_TEST (test_psi)
{
  g_autoptr (UnsootStep) step = unsoot_step_parse ("set pressure 8 psi", NULL);

  ck_near (step->value, 8 * 6894.757293168361, 1e-6);
  ck_assert_str_eq (step->unit, "psi");
}
END_TEST

typedef struct
{
  const char *edits;
  int line;          /* of the edited text */
  const char *words; /* what the message has to hold */
} Wrong;

static const Wrong wrong[] = {
  { "start pump => start pomp", 42, "pomp" },
  { "start pump => stert pump", 42, "stert" },
  { "start pump => fill key", 42, "fill" },
  { "start pump => start", 42, "what" },
  { "set pressure 8 psi => set pressure 8 furlongs", 44, "furlongs" },
  { "set pressure 8 psi => set pressure 8", 44, "unit" },
  { "set pressure 8 psi => set pressure 1e308 psi", 44, "1e+308" },
  { "set pressure 8 psi => set pressure 8 psi 9 psi", 44, "9" },
  { "take-off part => take-off part \"egr", 37, "quotation" },
  { "take-off part => take-off part one two", 37, "two" },
  { "take-off part => take-off part One", 37, "One" },
  { "take-off part => take-off part intake fuel x", 37, "fuel" },
  { "run engine fuel => run engine fuel share lots", 48, "lots" },
  { "run engine fuel => run engine fuel share 1 share 1", 48, "share" },
  { "run engine fuel => run engine fuel low-level low-level", 48, "low-level" },
  { "run engine fuel => run engine fuel share -1", 48, "-1" },
  { "run engine fuel => run engine fuel share nan", 48, "nan" },
  { "fit adapter => fit adapter x at", 38, "at" },
  { "fill tank fuel => fill tank fuel with none", 21, "none" },
  { "sides fuel intake => sides fuel left", 2, "left" },
  { "sides fuel intake => sides fuel fuel", 2, "fuel" },
  { "lift-pump => lift-pump perhaps", 4, "perhaps" },
  { "window => window 6 psi", 5, "6 psi" },
  { "window => window 10 to 6 psi", 5, "edge" },
  { "window => window 0 to 6 psi", 5, "edge" },
  { "window => window 1 to 6 miles", 5, "miles" },
  { "window => window 1 to 1e308 psi", 5, "1e+308" },
  { "egr => egr cooler", 6, "cooler" },
  { "heater => heater maybe", 7, "maybe" },
  { "road => road", 9, "road" },
  { "low-point left => low-point charge cooler", 11, "charge cooler" },
  { "dose fuel => dose fuel 1 qt", 12, "1 qt" },
  { "dose fuel => dose intake 5 ml", 13, "intake" },
  { "dose fuel => dose fuel 99999999999999999999 ml", 12, "9999" },
  { "caution maker => caution courage", 16, "courage" },
  { "caution maker => caution maker maker", 16, "maker" },
  { "phase Get ready => ", 16, "phase" },
  { "phase Get ready => phase", 15, "phase" },
  { ">family => family Other", 4, "family" },
  { "-heater", 119, "heater" },
};

START_TEST (test_wrong_lines_are_named)
{
  g_autofree char *text = kit_edited (BRINDLE, wrong[_i].edits);
  g_autofree char *named = g_strdup_printf ("Line %d:", wrong[_i].line);
  UnsootProcedure *procedure = NULL;
  UnsootFamilyFacts *facts = NULL;
  g_autoptr (GError) error = NULL;

  ck_assert_msg (!unsoot_procedure_parse (text, &procedure, &facts, &error), "read: %s",
                 wrong[_i].edits);
  ck_assert_msg (g_str_has_prefix (error->message, named), "%s: %s", wrong[_i].edits,
                 error->message);
  ck_assert_int_eq (error->code, wrong[_i].line);
  ck_assert_msg (strstr (error->message, wrong[_i].words) != NULL, "%s", error->message);
  ck_assert_ptr_null (procedure);
  ck_assert_ptr_null (facts);
}
END_TEST

START_TEST (test_notes_and_blanks_are_skipped)
{
  g_autofree char *text = kit_text (SKELDER), *noted = NULL, *printed = NULL;
  g_auto (GStrv) split = g_strsplit (text, "\n", -1);
  g_autoptr (UnsootProcedure) procedure = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL;

  noted = g_strjoinv ("  \r\n\n# a note\n\t", split);
  kit_parse (noted, &procedure, &facts);
  printed = unsoot_procedure_print (procedure, facts);
  ck_assert_str_eq (printed, text);
}
END_TEST

START_TEST (test_not_utf8)
{
  UnsootProcedure *procedure = NULL;
  UnsootFamilyFacts *facts = NULL;
  g_autoptr (GError) error = NULL;

  ck_assert (!unsoot_procedure_parse ("procedure \xff\n", &procedure, &facts, &error));
  ck_assert_ptr_nonnull (strstr (error->message, "UTF-8"));
  g_clear_error (&error);
  ck_assert_ptr_null (unsoot_step_parse ("start pump | \xff", &error));
  ck_assert_ptr_nonnull (strstr (error->message, "UTF-8"));
}
END_TEST

/* Cut anywhere, a text is read or refused, and never crashes the reader. */
START_TEST (test_cut_short)
{
  g_autofree char *text = kit_text (TOLVER);

  for (gsize length = 0; length < strlen (text); length++)
    {
      g_autofree char *cut = g_strndup (text, length);
      g_autoptr (UnsootProcedure) procedure = NULL;
      g_autoptr (UnsootFamilyFacts) facts = NULL;
      g_autoptr (GError) error = NULL;
      if (!unsoot_procedure_parse (cut, &procedure, &facts, &error))
        ck_assert_ptr_nonnull (error);
    }
}
END_TEST

static Suite *
text_suite (void)
{
  Suite *suite = suite_create ("procedure-text");
  TCase *tcase = tcase_create ("text");

  tcase_add_loop_test (tcase, test_demo_round_trip, 0, G_N_ELEMENTS (kit_names));
  tcase_add_loop_test (tcase, test_line_round_trip, 0, G_N_ELEMENTS (lines));
  tcase_add_loop_test (tcase, test_values_as_typed, 0, 4);
  tcase_add_test (tcase, test_fields);
  tcase_add_test (tcase, test_psi);
  tcase_add_loop_test (tcase, test_wrong_lines_are_named, 0, G_N_ELEMENTS (wrong));
  tcase_add_test (tcase, test_notes_and_blanks_are_skipped);
  tcase_add_test (tcase, test_not_utf8);
  tcase_add_test (tcase, test_cut_short);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (text_suite)
