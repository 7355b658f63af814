/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include <math.h>

#include "answer.h"

static const UnsootAnswerColumn columns[] = {
  { "code", "Code", FALSE },
  { "ml", "Left", TRUE },
  { "note", "Note", FALSE },
  { NULL },
};

static void
put_shelf (UnsootAnswer *answer)
{
  UnsootAnswerTable *table = unsoot_answer_table (answer, "shelf", "Shelf", columns);

  unsoot_answer_cell (table, unsoot_cell_text ("R"));
  unsoot_answer_cell (table, unsoot_cell_int (12000, g_strdup ("12 L")));
  unsoot_answer_cell (table, unsoot_cell_none ());
  unsoot_answer_cell (table, unsoot_cell_text ("Quer"));
  unsoot_answer_cell (table, unsoot_cell_int (500, NULL));
  unsoot_answer_cell (table, unsoot_cell_text ("low"));
}

START_TEST (values_stand_under_one_another)
{
  g_autoptr (UnsootAnswer) answer = unsoot_answer_new ();

  unsoot_answer_say (answer, g_strdup ("Booked."));
  unsoot_answer_put (answer, "job", "Job", unsoot_cell_int (412, NULL));
  unsoot_answer_put (answer, "note", "Note", unsoot_cell_text (NULL));
  unsoot_answer_put (answer, "vehicle", "Vehicle", unsoot_cell_text ("Brindle T4\nunit 12"));
  g_autofree char *text = unsoot_answer_to_text (answer);

  ck_assert_str_eq (text, "Booked.\n"
                          "Job      412\n"
                          "Vehicle  Brindle T4\n"
                          "         unit 12\n");
}
END_TEST

START_TEST (figures_stand_against_the_right)
{
  g_autoptr (UnsootAnswer) answer = unsoot_answer_new ();

  put_shelf (answer);
  g_autofree char *text = unsoot_answer_to_text (answer);

  ck_assert_str_eq (text, "Shelf\n"
                          "Code  Left  Note\n"
                          "R     12 L\n"
                          "Quer   500  low\n");
}
END_TEST

/* A terminal gives these letters two columns, and a combining mark none (Unicode UAX #11). */
START_TEST (wide_letters_keep_the_columns)
{
  g_autoptr (UnsootAnswer) answer = unsoot_answer_new ();
  UnsootAnswerTable *table = unsoot_answer_table (answer, "names", "Names", columns);

  unsoot_answer_cell (table, unsoot_cell_text ("日本"));
  unsoot_answer_cell (table, unsoot_cell_int (1, NULL));
  unsoot_answer_cell (table, unsoot_cell_text ("wide"));
  unsoot_answer_cell (table, unsoot_cell_text ("e\xcc\x81\x61"));
  unsoot_answer_cell (table, unsoot_cell_int (2, NULL));
  unsoot_answer_cell (table, unsoot_cell_text ("mark"));
  g_autofree char *text = unsoot_answer_to_text (answer);

  ck_assert_str_eq (text, "Names\n"
                          "Code  Left  Note\n"
                          "日本     1  wide\n"
                          "e\xcc\x81\x61       2  mark\n");
}
END_TEST

START_TEST (blocks_stand_apart)
{
  g_autoptr (UnsootAnswer) answer = unsoot_answer_new ();
  g_autoptr (GPtrArray) reasons = g_ptr_array_new ();

  unsoot_answer_put (answer, "a", "A", unsoot_cell_flag (TRUE));
  g_ptr_array_add (reasons, (char *) "one");
  g_ptr_array_add (reasons, (char *) "two\nlines");
  unsoot_answer_list (answer, "reasons", "Because", reasons);
  unsoot_answer_list (answer, "nothing", "Nothing", NULL);
  unsoot_answer_drawing (answer, "[##--]\n");
  unsoot_answer_table (answer, "shelf", "Shelf", columns);
  unsoot_answer_put (answer, "b", "B", unsoot_cell_flag (FALSE));
  g_autofree char *text = unsoot_answer_to_text (answer);

  ck_assert_str_eq (text, "A  yes\n"
                          "\n"
                          "Because:\n"
                          "  - one\n"
                          "  - two\n"
                          "    lines\n"
                          "\n"
                          "[##--]\n"
                          "\n"
                          "Shelf: none\n"
                          "\n"
                          "B  no\n");
}
END_TEST

START_TEST (nothing_is_nothing)
{
  g_autoptr (UnsootAnswer) answer = unsoot_answer_new ();
  g_autofree char *text = unsoot_answer_to_text (answer);
  g_autofree char *json = unsoot_answer_to_json (answer);

  ck_assert_str_eq (text, "");
  ck_assert_str_eq (json, "{}\n");
}
END_TEST

START_TEST (json_has_the_same_in_its_own_types)
{
  g_autoptr (UnsootAnswer) answer = unsoot_answer_new ();
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GPtrArray) reasons = g_ptr_array_new ();
  GError *error = NULL;

  g_ptr_array_add (reasons, (char *) "2 L: class 3, \"one-ton\"");
  unsoot_answer_say (answer, g_strdup ("First."));
  unsoot_answer_say (answer, g_strdup ("Second."));
  unsoot_answer_put (answer, "job", "Job", unsoot_cell_int (412, g_strdup ("no. 412")));
  unsoot_answer_put (answer, "share", "Share", unsoot_cell_real (0.5, g_strdup ("50 %")));
  unsoot_answer_put (answer, "unknown", "Unknown", unsoot_cell_real ((double) NAN, NULL));
  unsoot_answer_put (answer, "total", "Total", unsoot_cell_both ("12.50", g_strdup ("$12.50")));
  unsoot_answer_put (answer, "done", "Done", unsoot_cell_flag (TRUE));
  unsoot_answer_list (answer, "reasons", "Because", reasons);
  unsoot_answer_drawing (answer, "[##--]\n");
  put_shelf (answer);
  g_autofree char *json = unsoot_answer_to_json (answer);

  json_parser_load_from_data (parser, json, -1, &error);
  ck_no_error (error);
  JsonObject *object = json_node_get_object (json_parser_get_root (parser));
  ck_assert_str_eq (json_object_get_string_member (object, "message"), "First.\nSecond.");
  ck_assert_int_eq (json_object_get_int_member (object, "job"), 412);
  ck_assert_double_eq (json_object_get_double_member (object, "share"), 0.5);
  ck_assert (json_object_get_null_member (object, "unknown"));
  ck_assert_str_eq (json_object_get_string_member (object, "total"), "12.50");
  ck_assert (json_object_get_boolean_member (object, "done"));
  JsonArray *list = json_object_get_array_member (object, "reasons");
  ck_assert_str_eq (json_array_get_string_element (list, 0), "2 L: class 3, \"one-ton\"");
  JsonArray *rows = json_object_get_array_member (object, "shelf");
  ck_assert_uint_eq (json_array_get_length (rows), 2);
  JsonObject *second = json_array_get_object_element (rows, 1);
  ck_assert_str_eq (json_object_get_string_member (second, "code"), "Quer");
  ck_assert_int_eq (json_object_get_int_member (second, "ml"), 500);
  ck_assert_str_eq (json_object_get_string_member (second, "note"), "low");
  ck_assert_uint_eq (json_object_get_size (object), 8);
}
END_TEST

static Suite *
answer_suite (void)
{
  Suite *suite = suite_create ("answer");
  TCase *tcase = tcase_create ("answer");

  tcase_add_test (tcase, values_stand_under_one_another);
  tcase_add_test (tcase, figures_stand_against_the_right);
  tcase_add_test (tcase, wide_letters_keep_the_columns);
  tcase_add_test (tcase, blocks_stand_apart);
  tcase_add_test (tcase, nothing_is_nothing);
  tcase_add_test (tcase, json_has_the_same_in_its_own_types);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (answer_suite)
