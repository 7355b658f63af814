/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "code128.h"
#include "trade-error.h"

#include <string.h>

static void
check_symbols (const char *text, UnsootCode128Set start, const guint8 *expected, gsize n)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GByteArray) symbols = unsoot_code128_encode (text, start, &error);
  ck_no_error (error);
  ck_assert_uint_eq (symbols->len, n);
  for (gsize i = 0; i < n; i++)
    ck_assert_msg (symbols->data[i] == expected[i], "%s: symbol %u is %u, not %u", text, (guint) i,
                   symbols->data[i], expected[i]);
}

/* ISO/IEC 15417, A.1. */
START_TEST (the_standards_example)
{
  static const guint8 expected[] = { 104, 33, 41, 45, 99, 12, 34, 87, 106 };
  check_symbols ("AIM1234", UNSOOT_CODE128_AUTO, expected, G_N_ELEMENTS (expected));
}
END_TEST

/* The worked example "HI345678" found in tutorials on Code 128: set A, check 67;
 * 68 in set B. */
START_TEST (a_start_can_be_asked_for)
{
  static const guint8 in_a[] = { 103, 40, 41, 99, 34, 56, 78, 67, 106 };
  static const guint8 in_b[] = { 104, 40, 41, 99, 34, 56, 78, 68, 106 };
  check_symbols ("HI345678", UNSOOT_CODE128_A, in_a, G_N_ELEMENTS (in_a));
  check_symbols ("HI345678", UNSOOT_CODE128_B, in_b, G_N_ELEMENTS (in_b));
}
END_TEST

/* Values by the standard's table, check symbols worked by hand. */
START_TEST (sets_change_where_it_is_shorter)
{
  static const guint8 digits[] = { 105, 12, 34, 82, 106 };  /* 105 + 12 + 68 = 185, − 103 */
  static const guint8 one[] = { 104, 17, 18, 106 };         /* 104 + 17 = 121 */
  static const guint8 control[] = { 103, 73, 33, 36, 106 }; /* 103 + 73 + 66 = 242 */
  static const guint8 shifted[] = { 104, 65, 98, 73, 65, 20, 106 }; /* 844 − 8 · 103 */
  check_symbols ("1234", UNSOOT_CODE128_AUTO, digits, G_N_ELEMENTS (digits));
  check_symbols ("1", UNSOOT_CODE128_AUTO, one, G_N_ELEMENTS (one));
  check_symbols ("\tA", UNSOOT_CODE128_AUTO, control, G_N_ELEMENTS (control));
  check_symbols ("a\ta", UNSOOT_CODE128_AUTO, shifted, G_N_ELEMENTS (shifted));
}
END_TEST

/* ISO/IEC 15417: six widths of 1 to 4, eleven modules, an even number of them
 * dark; the stop has thirteen. No two symbols look alike. */
START_TEST (widths_follow_the_standard)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint8 value = 0; value < 106; value++)
    {
      GByteArray one = { &value, 1 };
      g_autoptr (GByteArray) widths = unsoot_code128_widths (&one);
      guint all = 0, dark = 0;
      ck_assert_uint_eq (widths->len, 6);
      for (guint i = 0; i < 6; i++)
        {
          ck_assert (widths->data[i] >= 1 && widths->data[i] <= 4);
          all += widths->data[i];
          dark += i % 2 ? 0 : widths->data[i];
        }
      ck_assert_uint_eq (all, 11);
      ck_assert_msg (dark % 2 == 0, "symbol %u", value);
      ck_assert (g_hash_table_add (seen, g_strndup ((const char *) widths->data, 6)));
    }
  /* Start B and stop, as the standard's table gives them. */
  guint8 ends[] = { 104, 106 };
  static const guint8 expected[] = { 2, 1, 1, 2, 1, 4, 2, 3, 3, 1, 1, 1, 2 };
  GByteArray both = { ends, 2 };
  g_autoptr (GByteArray) widths = unsoot_code128_widths (&both);
  ck_assert_uint_eq (widths->len, sizeof expected);
  ck_assert (memcmp (widths->data, expected, sizeof expected) == 0);
  ck_assert_uint_eq (unsoot_code128_modules (&both), 24);
}
END_TEST

START_TEST (what_has_no_symbol_is_refused)
{
  g_autoptr (GError) error = NULL;
  ck_assert_ptr_null (unsoot_code128_encode ("Größe", UNSOOT_CODE128_AUTO, &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID));
  ck_assert_ptr_nonnull (strstr (error->message, "Größe"));
  g_clear_error (&error);
  ck_assert_ptr_null (unsoot_code128_encode ("Gr\xff", UNSOOT_CODE128_AUTO, &error));
  ck_assert (g_utf8_validate (error->message, -1, NULL));
  g_clear_error (&error);
  ck_assert_ptr_null (unsoot_code128_encode ("", UNSOOT_CODE128_AUTO, &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID));
}
END_TEST

/* A reader written apart from the encoder: start, sets, shift, check, stop. */
static char *
read_back (const GByteArray *symbols)
{
  GString *text = g_string_new (NULL);
  guint sum = symbols->data[0];
  int set = "ABC"[symbols->data[0] - 103];
  int shifted = 0;
  for (guint i = 1; i + 2 < symbols->len; i++)
    {
      guint v = symbols->data[i];
      sum += i * v;
      int now = shifted ? shifted : set;
      shifted = 0;
      if (now == 'C' && v < 100)
        g_string_append_printf (text, "%02u", v);
      else if (now != 'C' && v < 96)
        g_string_append_c (text, (char) (now == 'A' && v >= 64 ? v - 64 : v + 32));
      else if (v == 98)
        shifted = set == 'A' ? 'B' : 'A';
      else
        set = v == 99 ? 'C' : v == 100 ? 'B' : 'A';
    }
  ck_assert_uint_eq (symbols->data[symbols->len - 2], sum % 103);
  ck_assert_uint_eq (symbols->data[symbols->len - 1], 106);
  return g_string_free (text, FALSE);
}

START_TEST (everything_reads_back)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (15417);
  for (int round = 0; round < 20000; round++)
    {
      char text[24] = { 0 };
      int length = g_rand_int_range (rand, 1, 24);
      int flavour = g_rand_int_range (rand, 0, 4);
      for (int i = 0; i < length; i++)
        {
          gboolean digit = flavour == 0 || (flavour == 1 && g_rand_boolean (rand));
          text[i] = (char) (digit          ? g_rand_int_range (rand, '0', '9' + 1)
                            : flavour == 3 ? g_rand_int_range (rand, 1, 128)
                                           : g_rand_int_range (rand, 32, 127));
        }
      g_autoptr (GByteArray) best = unsoot_code128_encode (text, UNSOOT_CODE128_AUTO, NULL);
      g_autofree char *back = read_back (best);
      ck_assert_str_eq (back, text);
      for (int start = UNSOOT_CODE128_A; start <= UNSOOT_CODE128_C; start++)
        {
          g_autoptr (GByteArray) other
              = unsoot_code128_encode (text, (UnsootCode128Set) start, NULL);
          g_autofree char *again = read_back (other);
          ck_assert_str_eq (again, text);
          ck_assert_uint_ge (other->len, best->len);
        }
    }
}
END_TEST

static Suite *
code128_suite (void)
{
  Suite *suite = suite_create ("code128");
  TCase *tests = tcase_create ("code128");
  tcase_add_test (tests, the_standards_example);
  tcase_add_test (tests, a_start_can_be_asked_for);
  tcase_add_test (tests, sets_change_where_it_is_shorter);
  tcase_add_test (tests, widths_follow_the_standard);
  tcase_add_test (tests, what_has_no_symbol_is_refused);
  tcase_add_test (tests, everything_reads_back);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (code128_suite)
