/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "caution-sheet.h"

#include <string.h>

/* The texts are the trade's common practice, no source. */

START_TEST (every_caution_has_its_words)
{
  for (int i = 0; i < UNSOOT_CAUTIONS; i++)
    {
      UnsootCaution caution = (UnsootCaution) (1 << i);
      ck_assert_ptr_nonnull (unsoot_caution_title (caution));
      ck_assert_ptr_nonnull (unsoot_caution_text (caution));
      ck_assert_str_ne (unsoot_caution_title (caution), unsoot_caution_text (caution));
    }
}
END_TEST

/* Work shows every caution; heat belongs to the side where the exhaust is opened;
 * the maker's information is named on every sheet. */
START_TEST (work_shows_them_all)
{
  const guint all = (1 << UNSOOT_CAUTIONS) - 1;
  ck_assert_uint_eq (unsoot_caution_sheet (UNSOOT_SHEET_BAY, UNSOOT_SIDE_INTAKE), all);
  ck_assert_uint_eq (unsoot_caution_sheet (UNSOOT_SHEET_WORK_ORDER, UNSOOT_SIDE_NONE), all);
  ck_assert_uint_eq (unsoot_caution_sheet (UNSOOT_SHEET_BAY, UNSOOT_SIDE_FUEL),
                     all & ~(guint) UNSOOT_CAUTION_HOT_PARTS);
  for (int sheet = 0; sheet < UNSOOT_SHEETS; sheet++)
    for (int side = 0; side < UNSOOT_SIDES; side++)
      {
        guint bits = unsoot_caution_sheet ((UnsootSheet) sheet, (UnsootSide) side);
        ck_assert (bits & UNSOOT_CAUTION_MAKER);
        ck_assert_uint_eq (bits & ~all, 0);
      }
  ck_assert_ptr_nonnull (strstr (unsoot_caution_closing (), "service information"));
  ck_assert_ptr_nonnull (strstr (unsoot_caution_closing (), "local codes"));
  ck_assert_ptr_nonnull (strstr (unsoot_caution_closing (), "licensed practice"));
}
END_TEST

static Suite *
caution_sheet_suite (void)
{
  Suite *suite = suite_create ("caution-sheet");
  TCase *tests = tcase_create ("caution-sheet");
  tcase_add_test (tests, every_caution_has_its_words);
  tcase_add_test (tests, work_shows_them_all);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (caution_sheet_suite)
