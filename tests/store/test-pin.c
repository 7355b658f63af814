/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book.h"

#include <string.h>

#include "pin.h"

START_TEST (test_own_pin_and_no_other)
{
  GError *error = NULL;
  g_autofree char *hash = unsoot_pin_hash ("4711", UNSOOT_PIN_QUICK, &error);
  g_autofree char *again = unsoot_pin_hash ("4711", UNSOOT_PIN_QUICK, &error);
  ck_no_error (error);
  ck_assert (unsoot_pin_verify (hash, "4711"));
  ck_assert (!unsoot_pin_verify (hash, "4712"));
  ck_assert (!unsoot_pin_verify (hash, "47111"));
  ck_assert (!unsoot_pin_verify (hash, ""));
  ck_assert (!unsoot_pin_verify (NULL, "4711"));
  ck_assert (!unsoot_pin_verify ("4711", "4711"));
  ck_assert_str_ne (hash, again);
}
END_TEST

/* The string names its cost: libsodium's documentation, "The pwhash* API", gives the
   interactive limits as 2 passes over 64 MiB (67108864 bytes). */
START_TEST (test_interactive_cost)
{
  g_autofree char *hash = unsoot_pin_hash ("4711", UNSOOT_PIN_INTERACTIVE, NULL);
  ck_assert (g_str_has_prefix (hash, "$argon2id$v=19$m=65536,t=2,p=1$"));
  ck_assert (unsoot_pin_verify (hash, "4711"));
}
END_TEST

START_TEST (test_short_pin)
{
  GError *error = NULL;
  ck_assert_ptr_null (unsoot_pin_hash ("123", UNSOOT_PIN_QUICK, &error));
  ck_store_error (error, UNSOOT_STORE_ERROR_INVALID, "at least 4");
}
END_TEST

static Suite *
pin_suite (void)
{
  Suite *suite = suite_create ("pin");
  TCase *tcase = tcase_create ("pin");
  tcase_add_test (tcase, test_own_pin_and_no_other);
  tcase_add_test (tcase, test_interactive_cost);
  tcase_add_test (tcase, test_short_pin);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (pin_suite)
