/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which check gives way to what is common practice, no source. */
#include "suite.h"

#include "precheck.h"
#include "trade-error.h"

#include <string.h>

static void
refused (const char *slug, UnsootPrecheckAnswer answer, gboolean overridden, const char *reason,
         const char *words)
{
  g_autoptr (GError) error = NULL;
  int check;

  ck_assert (unsoot_slug_find (unsoot_prechecks, slug, &check));
  ck_assert (!unsoot_precheck_check ((UnsootPrecheck) check, answer, overridden, reason, &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED));
  ck_assert_msg (strstr (error->message, words) != NULL, "%s", error->message);
}

static void
taken (const char *slug, UnsootPrecheckAnswer answer, gboolean overridden, const char *reason)
{
  GError *error = NULL;
  int check;

  ck_assert (unsoot_slug_find (unsoot_prechecks, slug, &check));
  unsoot_precheck_check ((UnsootPrecheck) check, answer, overridden, reason, &error);
  ck_assert_msg (error == NULL, "%s", error != NULL ? error->message : "");
}

START_TEST (every_check_has_words_and_a_reason)
{
  for (int check = 0; check < UNSOOT_PRECHECKS; check++)
    {
      ck_assert_ptr_nonnull (unsoot_slug_of (unsoot_prechecks, check));
      ck_assert (g_str_has_suffix (unsoot_slug_words (unsoot_prechecks, check), "?"));
      ck_assert_uint_gt (strlen (unsoot_precheck_why ((UnsootPrecheck) check)), 20);
      taken (unsoot_slug_of (unsoot_prechecks, check), UNSOOT_PRECHECK_YES, FALSE, NULL);
      taken (unsoot_slug_of (unsoot_prechecks, check), UNSOOT_PRECHECK_NO, FALSE, NULL);
    }
}
END_TEST

START_TEST (what_can_run_an_engine_away_never_gives_way)
{
  static const char *const never[]
      = { "oil", "leaks", "soot", "tanks", "extraction", "co-alarm", "plate", "extinguisher" };

  for (gsize i = 0; i < G_N_ELEMENTS (never); i++)
    refused (never[i], UNSOOT_PRECHECK_NO, TRUE, "in a hurry", "can't be overridden");
  taken ("turbo", UNSOOT_PRECHECK_NO, TRUE, "a new one is on order");
  taken ("coolant", UNSOOT_PRECHECK_NO, TRUE, "topped up in the bay");
  refused ("turbo", UNSOOT_PRECHECK_NO, TRUE, "  ", "say why it may run");
  refused ("turbo", UNSOOT_PRECHECK_YES, TRUE, "why not", "only a no");
}
END_TEST

START_TEST (what_does_not_apply_says_why)
{
  taken ("soot", UNSOOT_PRECHECK_NOT_APPLICABLE, FALSE, "no filter");
  refused ("soot", UNSOOT_PRECHECK_NOT_APPLICABLE, FALSE, NULL, "say why it does not apply");
  refused ("oil", UNSOOT_PRECHECK_NOT_APPLICABLE, FALSE, "none", "always applies");
  refused ("plate", UNSOOT_PRECHECK_NOT_APPLICABLE, FALSE, "none", "always applies");
}
END_TEST

START_TEST (a_bare_no_keeps_the_run_from_beginning)
{
  ck_assert (unsoot_precheck_lets_begin (UNSOOT_PRECHECK_YES, FALSE));
  ck_assert (unsoot_precheck_lets_begin (UNSOOT_PRECHECK_NOT_APPLICABLE, FALSE));
  ck_assert (unsoot_precheck_lets_begin (UNSOOT_PRECHECK_NO, TRUE));
  ck_assert (!unsoot_precheck_lets_begin (UNSOOT_PRECHECK_NO, FALSE));
}
END_TEST

static Suite *
precheck_suite (void)
{
  Suite *suite = suite_create ("precheck");
  TCase *tcase = tcase_create ("answers");

  tcase_add_test (tcase, every_check_has_words_and_a_reason);
  tcase_add_test (tcase, what_can_run_an_engine_away_never_gives_way);
  tcase_add_test (tcase, what_does_not_apply_says_why);
  tcase_add_test (tcase, a_bare_no_keeps_the_run_from_beginning);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (precheck_suite)
