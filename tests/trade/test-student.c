/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "reorder.h"
#include "student.h"

#include <math.h>

typedef struct
{
  int freedom;
  double ninety_five; /* one-sided */
  double ninety_seven_half;
  double ninety_nine_half;
} Row;

/* NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2: upper critical values of Student's t
 * distribution, three decimals. */
static const Row table[] = {
  { 1, 6.314, 12.706, 63.657 }, { 2, 2.920, 4.303, 9.925 },   { 3, 2.353, 3.182, 5.841 },
  { 4, 2.132, 2.776, 4.604 },   { 5, 2.015, 2.571, 4.032 },   { 9, 1.833, 2.262, 3.250 },
  { 10, 1.812, 2.228, 3.169 },  { 20, 1.725, 2.086, 2.845 },  { 30, 1.697, 2.042, 2.750 },
  { 60, 1.671, 2.000, 2.660 },  { 100, 1.660, 1.984, 2.626 },
};

START_TEST (table_is_reproduced)
{
  const Row *row = &table[_i];

  ck_near (unsoot_student_quantile (0.95, row->freedom), row->ninety_five, 0.0005);
  ck_near (unsoot_student_quantile (0.975, row->freedom), row->ninety_seven_half, 0.0005);
  ck_near (unsoot_student_quantile (0.995, row->freedom), row->ninety_nine_half, 0.0005);
}
END_TEST

/* With one degree of freedom it is Cauchy's, whose quantile is tan (π (p − ½)); with two it is
 * (2p − 1) / √(2p (1 − p)): both follow from the definition. */
START_TEST (closed_forms)
{
  for (double p = 0.01; p < 1; p += 0.01)
    {
      ck_near (unsoot_student_quantile (p, 1), tan (G_PI * (p - 0.5)),
               1e-10 * (1 / p + 1 / (1 - p)));
      ck_near (unsoot_student_quantile (p, 2), (2 * p - 1) / sqrt (2 * p * (1 - p)), 1e-10);
    }
}
END_TEST

START_TEST (share_and_quantile_are_inverse)
{
  for (int freedom = 1; freedom <= 41; freedom++)
    for (double t = -6; t <= 6; t += 0.75)
      ck_near (unsoot_student_quantile (unsoot_student_share (t, freedom), freedom), t, 1e-8);
}
END_TEST

/* Many degrees of freedom make it the normal distribution. */
START_TEST (many_are_normal)
{
  ck_near (unsoot_student_quantile (0.975, 1000000), unsoot_normal_quantile (0.975), 1e-5);
}
END_TEST

static Suite *
student_suite (void)
{
  Suite *suite = suite_create ("student");
  TCase *tests = tcase_create ("student");

  tcase_add_loop_test (tests, table_is_reproduced, 0, G_N_ELEMENTS (table));
  tcase_add_test (tests, closed_forms);
  tcase_add_test (tests, share_and_quantile_are_inverse);
  tcase_add_test (tests, many_are_normal);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (student_suite)
