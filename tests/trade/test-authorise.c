/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "authorise.h"
#include "trade-error.h"

#include <string.h>

static const UnsootOverrunLimit no_limit = { UNSOOT_NO_LIMIT, UNSOOT_NO_LIMIT };

typedef struct
{
  UnsootAuthorised authorised;
  gint64 final_amount;
  UnsootOverrunLimit limit;
  UnsootAuthority verdict;
  gint64 overrun;
  gint64 allowed;
} Case;

/* Worked by hand; the limits are settings, not any state's law. */
static const Case cases[] = {
  { { 50000, 50000, TRUE }, 50000, { -1, -1 }, UNSOOT_AUTHORITY_COVERED, 0, 0 },
  { { 50000, 50000, TRUE }, 50001, { -1, -1 }, UNSOOT_AUTHORITY_ASK, 1, 0 },
  { { 50000, 50000, TRUE }, 49000, { 10000, -1 }, UNSOOT_AUTHORITY_COVERED, 0, 5000 },
  { { 50000, 50000, TRUE }, 55000, { 10000, -1 }, UNSOOT_AUTHORITY_WITHIN, 5000, 5000 },
  { { 50000, 50000, TRUE }, 55001, { 10000, -1 }, UNSOOT_AUTHORITY_ASK, 5001, 5000 },
  { { 50000, 50000, TRUE }, 52000, { -1, 2000 }, UNSOOT_AUTHORITY_WITHIN, 2000, 2000 },
  { { 50000, 50000, TRUE }, 52001, { 10000, 2000 }, UNSOOT_AUTHORITY_ASK, 2001, 2000 },
  { { 10000, 10000, TRUE }, 11500, { 10000, 2000 }, UNSOOT_AUTHORITY_ASK, 1500, 1000 },
  { { 50000, 30000, TRUE }, 33001, { 10000, -1 }, UNSOOT_AUTHORITY_ASK, 3001, 3000 },
  { { 50000, 60000, TRUE }, 58000, { 10000, -1 }, UNSOOT_AUTHORITY_COVERED, 0, 5000 },
  { { 50000, 60000, TRUE }, 65001, { 10000, -1 }, UNSOOT_AUTHORITY_ASK, 5001, 5000 },
  { { 9999, 9999, TRUE }, 10999, { 10000, -1 }, UNSOOT_AUTHORITY_ASK, 1000, 999 },
  { { 50000, 50000, TRUE }, 50001, { 0, -1 }, UNSOOT_AUTHORITY_ASK, 1, 0 },
  { { 50000, 0, FALSE }, 50000, { 10000, -1 }, UNSOOT_AUTHORITY_NONE, 50000, 0 },
  { { G_MAXINT64, 1, TRUE }, G_MAXINT64, { -1, -1 }, UNSOOT_AUTHORITY_ASK, G_MAXINT64 - 1, 0 },
};

START_TEST (overruns_are_judged)
{
  const Case *c = &cases[_i];
  g_auto (UnsootAuthorityResult) result = { 0 };
  ck_assert (unsoot_authorise_check (&c->authorised, c->final_amount, &c->limit, "USD",
                                     UNSOOT_MONEY_POINT, &result, NULL));
  ck_assert_int_eq (result.verdict, c->verdict);
  ck_assert_int_eq (result.overrun, c->overrun);
  ck_assert_int_eq (result.allowed, c->allowed);
}
END_TEST

START_TEST (the_sentence_names_the_amounts)
{
  UnsootAuthorised authorised = { 50000, 50000, TRUE };
  g_auto (UnsootAuthorityResult) result = { 0 };
  unsoot_authorise_check (&authorised, 56100, &(UnsootOverrunLimit){ 10000, -1 }, "USD",
                          UNSOOT_MONEY_POINT, &result, NULL);
  ck_assert_ptr_nonnull (strstr (result.sentence, "$561.00"));
  ck_assert_ptr_nonnull (strstr (result.sentence, "$61.00 above"));
  ck_assert_ptr_nonnull (strstr (result.sentence, "$500.00 authorised"));
  ck_assert_ptr_nonnull (strstr (result.sentence, "allows $50.00"));
}
END_TEST

START_TEST (amounts_below_zero_are_refused)
{
  UnsootAuthorised authorised = { -1, 0, TRUE };
  UnsootAuthorityResult result = { 0 };
  g_autoptr (GError) error = NULL;
  ck_assert (!unsoot_authorise_check (&authorised, 5, &no_limit, "USD", UNSOOT_MONEY_POINT, &result,
                                      &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE));
}
END_TEST

static Suite *
authorise_suite (void)
{
  Suite *suite = suite_create ("authorise");
  TCase *tests = tcase_create ("authorise");
  tcase_add_loop_test (tests, overruns_are_judged, 0, (int) G_N_ELEMENTS (cases));
  tcase_add_test (tests, the_sentence_names_the_amounts);
  tcase_add_test (tests, amounts_below_zero_are_refused);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (authorise_suite)
