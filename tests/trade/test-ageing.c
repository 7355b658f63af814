/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "ageing.h"
#include "civil.h"

/* Columns 0–30, 31–60, 61–90, over 90 as bookkeeping texts have them (secondary). */
START_TEST (columns_change_at_30_60_90)
{
  static const struct
  {
    int age;
    UnsootAged due;
    UnsootAged issued;
  } cases[] = {
    { -1, UNSOOT_AGED_NOT_DUE, UNSOOT_AGED_30 },  { 0, UNSOOT_AGED_30, UNSOOT_AGED_30 },
    { 30, UNSOOT_AGED_30, UNSOOT_AGED_30 },       { 31, UNSOOT_AGED_60, UNSOOT_AGED_60 },
    { 60, UNSOOT_AGED_60, UNSOOT_AGED_60 },       { 61, UNSOOT_AGED_90, UNSOOT_AGED_90 },
    { 90, UNSOOT_AGED_90, UNSOOT_AGED_90 },       { 91, UNSOOT_AGED_OVER, UNSOOT_AGED_OVER },
    { 4000, UNSOOT_AGED_OVER, UNSOOT_AGED_OVER },
  };
  int today = unsoot_day (2025, 3, 1);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      UnsootOpenItem item = { today - cases[i].age, today - cases[i].age, 1 };
      ck_assert_int_eq (unsoot_ageing_of (&item, UNSOOT_AGED_FROM_DUE, today), cases[i].due);
      ck_assert_int_eq (unsoot_ageing_of (&item, UNSOOT_AGED_FROM_ISSUED, today), cases[i].issued);
    }
}
END_TEST

/* Net 30 from 30 January 2024 is 29 February: a leap year, counted by hand. */
START_TEST (terms_give_the_due_day)
{
  ck_assert_int_eq (unsoot_ageing_due (unsoot_day (2024, 1, 30), 30), unsoot_day (2024, 2, 29));
  ck_assert_int_eq (unsoot_ageing_due (unsoot_day (2025, 1, 30), 30), unsoot_day (2025, 3, 1));
  ck_assert_int_eq (unsoot_ageing_due (unsoot_day (2025, 1, 30), 0), unsoot_day (2025, 1, 30));
  ck_assert_int_eq (unsoot_ageing_due (UNSOOT_DAY_MAX, 1), 0);
  ck_assert_int_eq (unsoot_ageing_due (UNSOOT_DAY_MAX, G_MAXINT), 0);
  ck_assert_int_eq (unsoot_ageing_due (5, -1), 0);
  ck_assert_int_eq (unsoot_ageing_due (0, 30), 0);
}
END_TEST

START_TEST (open_items_add_up)
{
  int today = unsoot_day (2025, 3, 1);
  UnsootOpenItem items[] = { { today - 10, today + 20, 10000 },
                             { today - 50, today - 20, 2500 },
                             { today - 50, today - 20, -500 },
                             { today - 130, today - 100, 700 } };
  UnsootAgeing due, issued;
  ck_assert (unsoot_ageing_sum (items, 4, UNSOOT_AGED_FROM_DUE, today, &due, NULL));
  ck_assert (unsoot_ageing_sum (items, 4, UNSOOT_AGED_FROM_ISSUED, today, &issued, NULL));
  ck_assert_int_eq (due.owed[UNSOOT_AGED_NOT_DUE], 10000);
  ck_assert_int_eq (due.owed[UNSOOT_AGED_30], 2000);
  ck_assert_int_eq (due.owed[UNSOOT_AGED_OVER], 700);
  ck_assert_int_eq (due.total, 12700);
  ck_assert_int_eq (issued.owed[UNSOOT_AGED_30], 10000);
  ck_assert_int_eq (issued.owed[UNSOOT_AGED_60], 2000);
  ck_assert_int_eq (issued.total, 12700);
  items[0].open = items[1].open = G_MAXINT64;
  ck_assert (!unsoot_ageing_sum (items, 2, UNSOOT_AGED_FROM_DUE, today, &due, NULL));
  ck_assert_int_eq (due.total, 12700);
}
END_TEST

static Suite *
ageing_suite (void)
{
  Suite *suite = suite_create ("ageing");
  TCase *tests = tcase_create ("ageing");
  tcase_add_test (tests, columns_change_at_30_60_90);
  tcase_add_test (tests, terms_give_the_due_day);
  tcase_add_test (tests, open_items_add_up);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (ageing_suite)
