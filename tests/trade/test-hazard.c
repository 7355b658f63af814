/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "hazard.h"
#include "hazard-statements.h"
#include "trade-error.h"

#include <string.h>

/* Regulation (EC) 1272/2008, annexes III and IV, consolidated text of 2025-09-01
 * (© European Union, CC BY 4.0). */
START_TEST (wording_is_the_standards)
{
  static const char *const texts[][2] = {
    { "H224", "Extremely flammable liquid and vapour." },
    { "H225", "Highly flammable liquid and vapour." },
    { "H226", "Flammable liquid and vapour." },
    { "H301", "Toxic if swallowed." },
    { "H304", "May be fatal if swallowed and enters airways." },
    { "H315", "Causes skin irritation." },
    { "H317", "May cause an allergic skin reaction." },
    { "H318", "Causes serious eye damage." },
    { "H319", "Causes serious eye irritation." },
    { "H332", "Harmful if inhaled." },
    { "H336", "May cause drowsiness or dizziness." },
    { "H350", "May cause cancer." },
    { "H373", "May cause damage to organs through prolonged or repeated exposure." },
    { "H412", "Harmful to aquatic life with long lasting effects." },
    { "EUH066", "Repeated exposure may cause skin dryness or cracking." },
    { "P210", "Keep away from heat, hot surfaces, sparks, open flames and other ignition sources. "
              "No smoking." },
    { "P331", "Do NOT induce vomiting." },
    { "P403+P235", "Store in a well-ventilated place. Keep cool." },
    /* Secondary text: the harmonised system's wording for category 4. */
    { "H227", "Combustible liquid." },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    ck_assert_str_eq (unsoot_statement_text (texts[i][0]), texts[i][1]);
  ck_assert_ptr_null (unsoot_statement_text ("H999"));
  ck_assert_ptr_null (unsoot_statement_text (NULL));
}
END_TEST

/* Every row is whole, every code is there once, and all advice leads to a row. */
START_TEST (the_set_is_whole)
{
  for (const UnsootStatement *s = unsoot_statements; s->code; s++)
    {
      ck_assert_ptr_eq (unsoot_statement_find (s->code), s);
      ck_assert (*s->text && strpbrk (s->text, "<>") == NULL);
      g_auto (GStrv) advice = g_strsplit (s->advice ? s->advice : "", " ", -1);
      for (guint i = 0; advice[i]; i++)
        ck_assert_msg (unsoot_statement_find (advice[i]) != NULL, "%s: %s", s->code, advice[i]);
    }
  for (int sign = UNSOOT_GHS01; sign < UNSOOT_PICTOGRAMS; sign++)
    ck_assert_ptr_nonnull (unsoot_slug_words (unsoot_pictograms, sign));
}
END_TEST

static void
check_signs (const char *codes, const char *signs, UnsootSignal signal)
{
  g_auto (UnsootLabel) label = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) shown = g_string_new (NULL);
  unsoot_label_read (codes, &label, &error);
  ck_no_error (error);
  for (int i = 1; i < UNSOOT_PICTOGRAMS; i++)
    if (label.pictograms[i])
      g_string_append_printf (shown, "%d", i);
  ck_assert_msg (strcmp (shown->str, signs) == 0, "%s: %s", codes, shown->str);
  ck_assert_int_eq (label.signal, signal);
}

/* Annex V for the signs, article 26 for which of them gives way. */
START_TEST (signs_follow_the_regulation)
{
  check_signs ("H226 H304 H336 H411", "2789", UNSOOT_SIGNAL_DANGER);
  check_signs ("H227", "", UNSOOT_SIGNAL_WARNING);
  check_signs ("H226", "2", UNSOOT_SIGNAL_WARNING);
  check_signs ("h225;h319, h336", "27", UNSOOT_SIGNAL_DANGER);
  check_signs ("H301 H315", "6", UNSOOT_SIGNAL_DANGER);
  check_signs ("H314 H319", "5", UNSOOT_SIGNAL_DANGER);
  check_signs ("H318 H335", "57", UNSOOT_SIGNAL_DANGER);
  check_signs ("H334 H317", "8", UNSOOT_SIGNAL_DANGER);
  check_signs ("H334 H332", "78", UNSOOT_SIGNAL_DANGER);
  check_signs ("H412", "", UNSOOT_SIGNAL_NONE);
  check_signs ("", "", UNSOOT_SIGNAL_NONE);
}
END_TEST

START_TEST (advice_comes_once_and_own_first)
{
  g_auto (UnsootLabel) label = { 0 };
  guint p280 = 0;
  ck_assert (unsoot_label_read ("P102 H226 H319 H226", &label, NULL));
  ck_assert_uint_eq (label.hazards->len, 2);
  ck_assert_str_eq (((UnsootStatement *) label.advice->pdata[0])->code, "P102");
  for (guint i = 0; i < label.advice->len; i++)
    p280 += strcmp (((UnsootStatement *) label.advice->pdata[i])->code, "P280") == 0;
  ck_assert_uint_eq (p280, 1);
}
END_TEST

START_TEST (an_unknown_code_is_named)
{
  UnsootLabel label = { 0 };
  g_autoptr (GError) error = NULL;
  ck_assert (!unsoot_label_read ("H226 H2266", &label, &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_UNKNOWN));
  ck_assert_ptr_nonnull (strstr (error->message, "H2266"));
  g_clear_error (&error);
  ck_assert (!unsoot_label_read ("H226 H2\xff", &label, &error));
  ck_assert (g_utf8_validate (error->message, -1, NULL));
}
END_TEST

static Suite *
hazard_suite (void)
{
  Suite *suite = suite_create ("hazard");
  TCase *tests = tcase_create ("hazard");
  tcase_add_test (tests, wording_is_the_standards);
  tcase_add_test (tests, the_set_is_whole);
  tcase_add_test (tests, signs_follow_the_regulation);
  tcase_add_test (tests, advice_comes_once_and_own_first);
  tcase_add_test (tests, an_unknown_code_is_named);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (hazard_suite)
