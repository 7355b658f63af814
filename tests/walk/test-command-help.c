/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "program.h"

/* Every command says what it takes: what is listed here is what the README and scripts rely on. */

#define ANY "--json "
#define BOOK "--file " ANY
#define WHO "--as " BOOK

static const struct
{
  const char *name;
  const char *options; /* a space between */
} commands[] = {
  { "vin", ANY "--gvwr" },
  { "procedure", ANY },
  { "dose", ANY "--gvwr --size" },
  { "demo", ANY "--file --carry --at" },
  { "verify", BOOK },
  { "backup", WHO },
  { "find", BOOK "--limit" },
  { "day", BOOK "--date" },
  { "job", BOOK },
  { "estimate", WHO "--vehicle --service --fuel-fluid --intake-fluid --fuel-dose --intake-dose "
                    "--wanted --complaint --po --note --comeback-of --preview" },
  { "authorise", WHO "--by --how --amount --po --note" },
  { "decline", WHO "--reason --line" },
  { "book", WHO "--start --end --bay --machine --technician --adapter" },
  { "arrive", WHO "--odometer --hours --new-meter --complaint --codes" },
  { "reading", WHO "--stage --unit --instrument --rpm --load --coolant --egr --regeneration "
                   "--barometer --ambient" },
  { "check", WHO "--answer --reason --override --rest" },
  { "run begin", WHO "--machine" },
  { "run show", BOOK },
  { "run step", WHO "--value --volume --lot --ago --cautions --again --start --so-far "
                    "--alarm-heard --pass-over" },
  { "run extra", WHO "--value --volume --lot --ago" },
  { "run halt", WHO },
  { "run happened", WHO },
  { "run resume", WHO },
  { "finish", WHO "--signature" },
  { "release", WHO "--signature --reason" },
  { "invoice", WHO },
  { "pay", WHO "--method --amount --reference --received" },
  { "credit", WHO "--reason --line" },
  { "stock", BOOK },
  { "deliver", WHO "--expires --received --cost --order" },
  { "lend", WHO "--to --kind --phone --due --job" },
  { "back", WHO "--condition --bin" },
  { "order place", WHO "--from --price --expected --note" },
  { "order show", BOOK },
  { "order expect", WHO "--reason" },
  { "order cancel", WHO "--reason" },
  { "order reopen", WHO },
  { "paper", BOOK "--output --invoice" },
};

static void
open_folder (void)
{
  walk_folder = g_dir_make_tmp ("unsoot-walk-XXXXXX", NULL);
  walk_book = g_build_filename (walk_folder, "shop.unsoot", NULL);
}

START_TEST (a_command_names_its_options)
{
  g_auto (Told) told = told_by ("%s --help", commands[_i].name);
  g_auto (Told) same = told_by ("help %s", commands[_i].name);
  g_auto (GStrv) options = g_strsplit (commands[_i].options, " ", -1);
  g_autofree char *usage = g_strdup_printf ("unsoot %s [OPTION", commands[_i].name);

  ck_done (told);
  ck_contains (told.out, usage);
  for (guint i = 0; options[i] != NULL; i++)
    ck_contains (told.out, options[i]);
  ck_assert_ptr_null (strstr (told.out, "--now"));
  ck_assert_str_eq (same.out, told.out);
}
END_TEST

/* A command that is not in the table above is not looked at either. */
START_TEST (help_lists_every_command)
{
  g_auto (Told) told = told_by ("help");
  g_auto (GStrv) lines = g_strsplit (told.out, "\n", -1);
  guint listed = 0;

  ck_done (told);
  for (guint i = 0; lines[i] != NULL; i++)
    listed += g_str_has_prefix (lines[i], "  ");
  ck_assert_uint_eq (listed, G_N_ELEMENTS (commands));
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      g_autofree char *line = g_strdup_printf ("\n  %s ", commands[i].name);
      ck_contains (told.out, line);
    }
}
END_TEST

START_TEST (a_group_lists_its_own)
{
  g_auto (Told) told = told_by ("run --help");
  g_auto (Told) none = told_by ("run");

  ck_done (told);
  ck_contains (told.out, "  run halt ");
  ck_assert_ptr_null (strstr (told.out, "  finish "));
  ck_refused (none, 2, "unsoot help run");
}
END_TEST

START_TEST (what_there_is_not_is_misused)
{
  static const char *const lines[] = { "polish", "run away", "help polish" };

  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_auto (Told) told = told_by ("%s", lines[i]);
      ck_refused (told, 2, "unsoot help");
    }
}
END_TEST

/* Values and their sources: tests/trade/test-vin.c. Here: what the command makes of them. */
START_TEST (vins_are_checked)
{
  g_auto (Told) good = told_by ("vin '1M8GDM9AXKP042788' --json");
  g_auto (Told) foreign = told_by ("vin WP0ZZZ99ZTS392124");
  g_auto (Told) wrong = told_by ("vin 1HGCM82643A004352 --json");
  g_auto (Told) heavy = told_by ("vin 1M8GDM9AXKP042788 --gvwr 33000");
  g_autoptr (JsonNode) told = json_told (&good);
  JsonObject *row = json_array_get_object_element (
      json_object_get_array_member (json_node_get_object (told), "vins"), 0);

  ck_assert_str_eq (json_object_get_string_member (row, "verdict"), "valid");
  ck_assert_str_eq (json_object_get_string_member (row, "calculated"), "X");
  ck_done (foreign);
  ck_contains (foreign.out, "may be right");
  ck_assert_int_eq (wrong.status, 1);
  ck_contains (wrong.out, "\"shown\" : \"4\"");
  ck_contains (wrong.out, "\"calculated\" : \"3\"");
  ck_contains (wrong.err, "anywhere");
  ck_contains (heavy.out, "1989 or 2019");
}
END_TEST

/* Common practice, no source. */
START_TEST (doses_have_reasons)
{
  g_auto (Told) dose = told_by ("dose intake --gvwr 13300 --json");
  g_auto (Told) small = told_by ("dose fuel --gvwr 8000");
  g_auto (Told) nothing = told_by ("dose fuel");
  g_auto (Told) no_side = told_by ("dose exhaust --gvwr 8000");
  g_autoptr (JsonNode) told = json_told (&dose);

  ck_assert_int_eq (json_int (told, "dose_ml"), 2000);
  ck_assert_str_eq (json_text (told, "rule"), "2 L: class 3, one-ton");
  ck_assert_int_eq (small.status, 1);
  ck_contains (small.err, "the lead technician enters it");
  ck_refused (nothing, 2, "--gvwr");
  ck_refused (no_side, 2, "exhaust");
}
END_TEST

/* The demo's own procedure without its drains: rule 6 forbids the next start. */
START_TEST (procedures_are_checked)
{
  g_autofree char *good = g_build_filename (g_getenv ("UNSOOT_SOURCE_DIR"), "data", "demo",
                                            "procedures", "brindle-t4-5-1.txt", NULL);
  g_autofree char *bad = g_build_filename (walk_folder, "bad.txt", NULL);
  g_autofree char *text = NULL;
  g_autoptr (GString) spoilt = NULL;

  ck_assert (g_file_get_contents (good, &text, NULL, NULL));
  spoilt = g_string_new (text);
  ck_assert_uint_gt (g_string_replace (spoilt, "\ndrain low-point", "\n# drain low-point", 0), 0);
  ck_assert (g_file_set_contents (bad, spoilt->str, -1, NULL));

  g_auto (Told) passes = told_by ("procedure '%s'", good);
  ck_done (passes);
  ck_contains (passes.out, "Accepted   yes");
  g_auto (Told) fails = told_by ("procedure '%s' --json", bad);
  ck_assert_int_eq (fails.status, 1);
  ck_contains (fails.err, "Nobody should follow it");
  g_autoptr (JsonNode) told = json_from_string (fails.out, NULL);
  ck_assert_ptr_nonnull (told);
  JsonObject *fault = json_array_get_object_element (
      json_object_get_array_member (json_node_get_object (told), "faults"), 0);
  ck_assert_str_eq (json_object_get_string_member (fault, "rule"), "drain-before-start");
  ck_assert_int_eq (json_object_get_int_member (fault, "number"), 6);
  ck_assert_int_gt (json_object_get_int_member (fault, "step"), 0);
  ck_contains (json_object_get_string_member (fault, "reason"), "charge cooler");
}
END_TEST

START_TEST (a_procedure_that_cannot_be_read_is_refused)
{
  g_autofree char *odd = g_build_filename (walk_folder, "odd.txt", NULL);

  ck_assert (g_file_set_contents (odd, "procedure P\nsides fuel\nfrobnicate the pump\n", -1, NULL));
  g_auto (Told) unread = told_by ("procedure '%s'", odd);
  g_auto (Told) missing = told_by ("procedure '%s/none.txt'", walk_folder);
  ck_refused (unread, 1, "3");
  ck_contains (unread.err, "odd.txt");
  ck_refused (missing, 1, "none.txt");
}
END_TEST

static Suite *
help_suite (void)
{
  Suite *suite = suite_create ("command-help");
  TCase *tcase = tcase_create ("command-help");

  tcase_add_unchecked_fixture (tcase, open_folder, close_walk);
  tcase_add_loop_test (tcase, a_command_names_its_options, 0, G_N_ELEMENTS (commands));
  tcase_add_test (tcase, help_lists_every_command);
  tcase_add_test (tcase, a_group_lists_its_own);
  tcase_add_test (tcase, what_there_is_not_is_misused);
  tcase_add_test (tcase, vins_are_checked);
  tcase_add_test (tcase, doses_have_reasons);
  tcase_add_test (tcase, procedures_are_checked);
  tcase_add_test (tcase, a_procedure_that_cannot_be_read_is_refused);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (help_suite)
