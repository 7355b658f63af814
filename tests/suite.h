/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <check.h>
#include <glib.h>
#include <stdlib.h>

/* The closing lines of every test program: run the suite, speak TAP to meson. */
#define UNSOOT_TEST_MAIN(suite_function)                                                           \
  int main (void)                                                                                  \
  {                                                                                                \
    SRunner *runner = srunner_create (suite_function ());                                          \
    srunner_run_all (runner, CK_ENV);                                                              \
    int failed = srunner_ntests_failed (runner);                                                   \
    srunner_free (runner);                                                                         \
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;                                                   \
  }

/* A double within a stated absolute tolerance, with both values in the message. */
#define ck_near(value, expected, tolerance) ck_assert_double_eq_tol (value, expected, tolerance)

/* A GError must be unset; its sentence is shown where it is not. */
#define ck_no_error(error)                                                                         \
  ck_assert_msg ((error) == NULL, "unexpected error: %s", (error) ? (error)->message : "")
