/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "fold.h"
#include "trade-error.h"

static void
check_fold (const char *text, const char *expected)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folded = unsoot_fold (text, &error);

  ck_no_error (error);
  ck_assert_str_eq (folded, expected);
}

START_TEST (marks_and_case_go)
{
  /* Decompositions: Unicode Character Database, UnicodeData.txt, field 5. */
  check_fold ("Ångström", "angstrom");
  check_fold ("Łódź", "lodz");
  check_fold ("ÉCLAIR", "eclair");
  check_fold ("Ǭ", "o");               /* 01EC = 01EA 0304, 01EA = 004F 0328 */
  check_fold ("ﬁlter", "filter");      /* FB01 = <compat> 0066 0069 */
  check_fold ("ＡＢ１２", "ab12");     /* FF21 = <wide> 0041 */
  check_fold ("℃", "°c");              /* 2103 = <compat> 00B0 0043 */
  check_fold ("İSTANBUL", "istanbul"); /* CaseFolding.txt: 0130; F; 0069 0307 */
  check_fold ("STRASSE", "strasse");
  check_fold ("Straße", "strasse");  /* CaseFolding.txt: 00DF; F; 0073 0073 */
  check_fold ("ΣΊΣΥΦΟΣ", "σισυφοσ"); /* CaseFolding.txt: 03A3; C; 03C3 */
}
END_TEST

START_TEST (letters_without_decomposition)
{
  check_fold ("Łukasz Ørsted Đorđe", "lukasz orsted dorde");
  check_fold ("ıĦŦ", "iht");
  check_fold ("Ærøskøbing Œuvre Þór Hlíð", "aeroskobing oeuvre thor hlid");
}
END_TEST

START_TEST (spaces_and_the_unseen)
{
  check_fold ("  Oak \t\n Street\u00A0 7 ", "oak street 7");
  check_fold ("soft\u00ADhyphen \u200Bzero", "softhyphen zero");
  check_fold ("", "");
  check_fold ("   ", "");
}
END_TEST

START_TEST (compact_keeps_letters_and_digits)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *plate = unsoot_fold_compact (" 7KD-204 ", &error);
  g_autofree char *phone = unsoot_fold_compact ("+1 (555) 010-7788", &error);
  g_autofree char *lot = unsoot_fold_compact ("Łot № 12/B", &error);

  ck_no_error (error);
  ck_assert_str_eq (plate, "7kd204");
  ck_assert_str_eq (phone, "15550107788");
  ck_assert_str_eq (lot, "lotno12b"); /* 2116 = <compat> 004E 006F */
}
END_TEST

START_TEST (damaged_text_is_reported)
{
  g_autoptr (GError) error = NULL;

  ck_assert_ptr_null (unsoot_fold ("ab\xff"
                                   "c",
                                   &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID));
  ck_assert_ptr_nonnull (strstr (error->message, "byte 3"));
  g_clear_error (&error);
  ck_assert_ptr_null (unsoot_fold_compact ("\xc3", &error)); /* a character cut in half */
  ck_assert_ptr_nonnull (error);
}
END_TEST

START_TEST (folding_twice_changes_nothing)
{
  for (gunichar c = 1; c < 0x20000; c++)
    {
      char text[8] = { 0 };
      g_autofree char *once = NULL;
      g_autofree char *twice = NULL;

      if (!g_unichar_validate (c))
        continue;
      g_unichar_to_utf8 (c, text);
      once = unsoot_fold (text, NULL);
      twice = unsoot_fold (once, NULL);
      ck_assert_msg (g_str_equal (once, twice), "U+%04X: “%s” then “%s”", c, once, twice);
    }
}
END_TEST

START_TEST (capitals_and_small_letters_are_one)
{
  check_fold ("ꭰꮿ", "ꭰꮿ");
  check_fold ("ᎠᏯ", "ꭰꮿ"); /* UnicodeData.txt: 13A0 and 13EF, field 13: AB70 and ABBF */
  for (gunichar c = 1; c < 0x20000; c++)
    {
      char text[8] = { 0 };

      if (!g_unichar_validate (c))
        continue;
      g_unichar_to_utf8 (c, text);
      g_autofree char *upper = g_utf8_strup (text, -1);
      g_autofree char *folded = unsoot_fold (text, NULL);
      g_autofree char *of_upper = unsoot_fold (upper, NULL);
      ck_assert_msg (g_str_equal (folded, of_upper), "U+%04X: “%s” and “%s”", c, folded, of_upper);
    }
}
END_TEST

static Suite *
fold_suite (void)
{
  Suite *suite = suite_create ("fold");
  TCase *tcase = tcase_create ("text");

  tcase_add_test (tcase, marks_and_case_go);
  tcase_add_test (tcase, letters_without_decomposition);
  tcase_add_test (tcase, spaces_and_the_unseen);
  tcase_add_test (tcase, compact_keeps_letters_and_digits);
  tcase_add_test (tcase, damaged_text_is_reported);
  tcase_add_test (tcase, folding_twice_changes_nothing);
  tcase_add_test (tcase, capitals_and_small_letters_are_one);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (fold_suite)
