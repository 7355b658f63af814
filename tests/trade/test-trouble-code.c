/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include <string.h>

#include "trade-error.h"
#include "trouble-code.h"

START_TEST (two_bytes_to_a_code)
{
  char code[UNSOOT_TROUBLE_CODE_SIZE];

  /* SAE J2012 examples of public tables; the last two are a CAN reply's */
  ck_assert (unsoot_trouble_code_decode (0x01, 0x04, code));
  ck_assert_str_eq (code, "P0104");
  ck_assert (unsoot_trouble_code_decode (0x41, 0x23, code));
  ck_assert_str_eq (code, "C0123");
  ck_assert (unsoot_trouble_code_decode (0x80, 0x03, code));
  ck_assert_str_eq (code, "B0003");
  ck_assert (unsoot_trouble_code_decode (0x01, 0x02, code));
  ck_assert_str_eq (code, "P0102");
  ck_assert (unsoot_trouble_code_decode (0x01, 0x13, code));
  ck_assert_str_eq (code, "P0113");
  ck_assert (!unsoot_trouble_code_decode (0x00, 0x00, code));
}
END_TEST

START_TEST (every_pair_of_bytes_decodes_to_its_own_code)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint word = 1; word <= 0xFFFF; word++)
    {
      char code[UNSOOT_TROUBLE_CODE_SIZE];

      ck_assert (unsoot_trouble_code_decode ((guint8) (word >> 8), (guint8) word, code));
      ck_assert_msg (unsoot_trouble_code_is_valid (code), "%s", code);
      ck_assert_msg (g_hash_table_add (seen, g_strdup (code)), "%s twice", code);
    }
}
END_TEST

START_TEST (a_typed_list)
{
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) codes = unsoot_trouble_codes_parse (" p0401, P2463;u0100\nP0401  b3fFf,", &error);
  g_autofree char *joined = NULL;
  g_auto (GStrv) none = unsoot_trouble_codes_parse (" , ", &error);

  ck_no_error (error);
  joined = g_strjoinv (" ", codes);
  ck_assert_str_eq (joined, "P0401 P2463 U0100 B3FFF");
  ck_assert_uint_eq (g_strv_length (none), 0);
}
END_TEST

static void
check_refused (const char *text, const char *named, const char *why)
{
  g_autoptr (GError) error = NULL;

  ck_assert_ptr_null (unsoot_trouble_codes_parse (text, &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID));
  ck_assert_msg (strstr (error->message, named) != NULL, "%s", error->message);
  ck_assert_msg (strstr (error->message, why) != NULL, "%s", error->message);
}

START_TEST (the_wrong_one_is_named)
{
  check_refused ("P0401 PO101", "“PO101”", "0 to 3");
  check_refused ("X0401", "“X0401”", "P, C, B or U");
  check_refused ("P4401", "“P4401”", "0 to 3");
  check_refused ("P0G01", "“P0G01”", "A to F");
  check_refused ("P040", "“P040”", "five characters");
  check_refused ("P04011", "“P04011”", "five characters");
  check_refused ("P040é", "“P040é”", "five characters");
  /* Damaged text is shown with the sign for it, U+FFFD, as Unicode's chapter 3.9 asks. */
  check_refused ("P040\xff", "“P040\uFFFD”", "five characters");
}
END_TEST

static Suite *
trouble_code_suite (void)
{
  Suite *suite = suite_create ("trouble-code");
  TCase *tcase = tcase_create ("codes");

  tcase_add_test (tcase, two_bytes_to_a_code);
  tcase_add_test (tcase, every_pair_of_bytes_decodes_to_its_own_code);
  tcase_add_test (tcase, a_typed_list);
  tcase_add_test (tcase, the_wrong_one_is_named);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (trouble_code_suite)
