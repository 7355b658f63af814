/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a person types finds what the shop has. */
#include "book.h"

#include <string.h>

#include "find.h"

static void
put (UnsootDb *db, UnsootFoundKind kind, gint64 row, const char *title, const char *words,
     const char *codes)
{
  GError *error = NULL;
  g_auto (GStrv) list = codes != NULL ? g_strsplit (codes, "|", -1) : NULL;
  unsoot_find_put (db, kind, row, title, NULL, words, (const char *const *) list, &error);
  ck_no_error (error);
}

/* The results as "kind:row fit", joined by spaces. */
static char *
find (UnsootDb *db, const char *typed, guint limit)
{
  GError *error = NULL;
  g_autoptr (GPtrArray) found = unsoot_find (db, typed, limit, &error);
  g_autoptr (GString) text = g_string_new (NULL);
  static const char fits[] = "WSI";
  ck_no_error (error);
  for (guint i = 0; i < found->len; i++)
    {
      UnsootFound *one = g_ptr_array_index (found, i);
      g_string_append_printf (text, "%s%d:%d%c", i > 0 ? " " : "", (int) one->kind, (int) one->row,
                              fits[one->fit]);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

#define ck_find(db, typed, wanted)                                                                 \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autofree char *answer = find (db, typed, 10);                                                \
    ck_assert_msg (strcmp (answer, wanted) == 0, "“%s” finds “%s”", typed, answer);                \
  }                                                                                                \
  G_STMT_END

static UnsootDb *
town (void)
{
  UnsootDb *db = test_book (NULL);
  put (db, UNSOOT_FOUND_CUSTOMER, 1, "Łukasz Øster", "Groß-Straße 5", "(555) 010-2233");
  put (db, UNSOOT_FOUND_CUSTOMER, 2, "Ana Müller-Lind", NULL, "555 010 9944");
  put (db, UNSOOT_FOUND_CUSTOMER, 3, "O’Dell Haulage", "yard gate", NULL);
  /* The regulation's own example: 49 CFR 565. */
  put (db, UNSOOT_FOUND_VEHICLE, 1, "Ox 300", "unit 17", "AB 12-CDE|1G4AH59H45G118341|17");
  put (db, UNSOOT_FOUND_VEHICLE, 2, "Ox 500", NULL, "XY 99");
  put (db, UNSOOT_FOUND_JOB, 12, "Job 12", NULL, "12");
  put (db, UNSOOT_FOUND_INVOICE, 7, "Invoice 2012-7", "Łukasz Øster", "2012-7");
  put (db, UNSOOT_FOUND_LOT, 4, "Lot QF/0117", NULL, "QF/0117");
  put (db, UNSOOT_FOUND_ADAPTER, 9, "A-17 banjo", NULL, "A-17");
  return db;
}

START_TEST (test_marks_and_case_do_not_matter)
{
  g_autoptr (UnsootDb) db = town ();
  ck_find (db, "lukasz", "1:1W 5:7W");
  ck_find (db, "ŁUKASZ oster", "1:1W 5:7W");
  ck_find (db, "gross strasse", "1:1W");
  ck_find (db, "muller", "1:2W");
  ck_find (db, "Mull lin", "1:2S");
  ck_find (db, "o'dell", "1:3W");
  ck_find (db, "odell", "");
  ck_find (db, "gross anything", "");
}
END_TEST

START_TEST (test_codes_whatever_the_spacing)
{
  g_autoptr (UnsootDb) db = town ();
  ck_find (db, "ab12cde", "2:1W");
  ck_find (db, "AB-12 CDE", "2:1W");
  ck_find (db, "ab12", "2:1S");
  ck_find (db, "ab 12", "2:1S");
  ck_find (db, "5550102233", "1:1W");
  ck_find (db, "(555) 010", "1:2S 1:1S");
  ck_find (db, "qf0117", "6:4W");
  ck_find (db, "qf/01", "6:4S");
}
END_TEST

START_TEST (test_inside_a_code_from_three_characters)
{
  g_autoptr (UnsootDb) db = town ();
  ck_find (db, "118341", "2:1I");
  ck_find (db, "2233", "1:1I");
  ck_find (db, "22 33", "1:1I");
  ck_find (db, "h59", "2:1I");
  ck_find (db, "h5", "");
  /* One code's end and the next one's beginning are not inside either. */
  ck_find (db, "cde1g4", "");
}
END_TEST

/* Longer than the index's prefixes: looked up among the words, few or many. */
START_TEST (test_long_beginnings)
{
  g_autoptr (UnsootDb) db = town ();
  ck_find (db, "strass", "1:1S");
  ck_find (db, "gross strass", "1:1S");
  ck_find (db, "haulagex", "");
  ck_find (db, "1g4ah59h", "2:1S");
  for (int i = 1; i <= 40; i++)
    {
      g_autofree char *title = g_strdup_printf ("longword%02d", i);
      put (db, UNSOOT_FOUND_LOT, 100 + i, title, NULL, NULL);
    }
  ck_find (db, "longword4", "6:140S");
  ck_find (db, "longword39", "6:139W");
  g_autofree char *three = find (db, "longwo", 3);
  ck_assert_str_eq (three, "6:140S 6:139S 6:138S");
}
END_TEST

START_TEST (test_groups_and_order)
{
  g_autoptr (UnsootDb) db = town ();
  /* A whole fit brings its group to the front, in each group the best comes first. */
  ck_find (db, "17", "2:1W 7:9W");
  ck_find (db, "12", "3:12W");
  ck_find (db, "ox", "2:2W 2:1W");
  put (db, UNSOOT_FOUND_CUSTOMER, 40, "Twelve 12x", NULL, NULL);
  ck_find (db, "12", "3:12W 1:40S");
  put (db, UNSOOT_FOUND_VEHICLE, 3, "Oxen 1", NULL, NULL);
  ck_find (db, "ox", "2:2W 2:1W 2:3S");
  g_autofree char *two = find (db, "o", 2);
  ck_assert_str_eq (two, "1:3W 1:1S 2:3S 2:2S 5:7S");
}
END_TEST

START_TEST (test_renewed_and_removed)
{
  g_autoptr (UnsootDb) db = town ();
  GError *error = NULL;
  put (db, UNSOOT_FOUND_VEHICLE, 2, "Ox 500", NULL, "ZZ 11");
  ck_find (db, "xy99", "");
  ck_find (db, "zz11", "2:2W");
  put (db, UNSOOT_FOUND_VEHICLE, 2, "Ox 500", NULL, "ZZ 11");
  ck_find (db, "zz11", "2:2W");
  ck_assert (unsoot_find_remove (db, UNSOOT_FOUND_VEHICLE, 2, &error));
  ck_assert (unsoot_find_remove (db, UNSOOT_FOUND_VEHICLE, 2, &error));
  ck_find (db, "zz11", "");
  ck_find (db, "500", "");
}
END_TEST

/* What would be syntax to the engine is only text to a person. */
START_TEST (test_anything_may_be_typed)
{
  g_autoptr (UnsootDb) db = town ();
  static const char *const typed[] = { "",          " ",
                                       "\"",        "*",
                                       "AND",       "a OR b",
                                       "NEAR(a b)", "folded:a",
                                       "^a",        "-ox",
                                       "''--",      "ox\"*",
                                       "(((",       "\xf0\x9f\x94\xa7",
                                       "{a b}: c",  "a b c d e f g h i j k l m n o p q" };
  for (gsize i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      g_autofree char *answer = find (db, typed[i], 10);
      ck_assert_ptr_nonnull (answer);
    }
  ck_find (db, "", "");
  ck_find (db, "--", "");
  ck_find (db, "-ox", "2:2W 2:1W");

  GError *error = NULL;
  ck_assert_ptr_null (unsoot_find (db, "\xff\xfe", 10, &error));
  ck_store_error (error, UNSOOT_STORE_ERROR_INVALID, "UTF-8");
  ck_assert (!unsoot_find_put (db, UNSOOT_FOUND_JOB, 0, "x", NULL, NULL, NULL, &error));
  ck_store_error (error, UNSOOT_STORE_ERROR_INVALID, "findable");
}
END_TEST

/* A row's words and the row itself are one deed. */
START_TEST (test_part_of_the_deed)
{
  g_autoptr (UnsootDb) db = town ();
  UnsootTransaction *deed = unsoot_db_begin (db, NULL);
  put (db, UNSOOT_FOUND_JOB, 13, "Job 13 zebra", NULL, NULL);
  ck_find (db, "zebra", "3:13W");
  unsoot_transaction_rollback (deed);
  ck_find (db, "zebra", "");
}
END_TEST

static Suite *
find_suite (void)
{
  Suite *suite = suite_create ("find");
  TCase *tcase = tcase_create ("find");
  tcase_add_test (tcase, test_marks_and_case_do_not_matter);
  tcase_add_test (tcase, test_codes_whatever_the_spacing);
  tcase_add_test (tcase, test_inside_a_code_from_three_characters);
  tcase_add_test (tcase, test_long_beginnings);
  tcase_add_test (tcase, test_groups_and_order);
  tcase_add_test (tcase, test_renewed_and_removed);
  tcase_add_test (tcase, test_anything_may_be_typed);
  tcase_add_test (tcase, test_part_of_the_deed);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (find_suite)
