/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "fits.h"

/* Invented catalogue. */
static const UnsootFitRow rows[] = {
  { .type_id = 1 },
  { .type_id = 2, .make = "Brindle" },
  { .type_id = 3, .make = "Brindle", .model = "T4", .year_from = 2011, .year_to = 2016 },
  { .type_id = 4, .make = "Brindle", .model = "T4", .year_from = 2017 },
  { .type_id = 5, .family_id = 9 },
  { .type_id = 3, .family_id = 9 },
  { .type_id = 6, .make = "Osier", .year_to = 2005 },
  { .type_id = 7, .make = "Brindle", .model = "T4", .engine = "6.6" },
};

static const UnsootFit *
fit_at (GPtrArray *fits, guint i)
{
  ck_assert_uint_lt (i, fits->len);
  return g_ptr_array_index (fits, i);
}

static void
check_types (const UnsootFitVehicle *vehicle, const char *expected)
{
  g_autoptr (GPtrArray) fits = unsoot_fits (rows, G_N_ELEMENTS (rows), vehicle);
  g_autoptr (GString) types = g_string_new (NULL);

  for (guint i = 0; i < fits->len; i++)
    g_string_append_printf (types, "%s%d%s", i > 0 ? " " : "", (int) fit_at (fits, i)->type_id,
                            fit_at (fits, i)->certain ? "" : "?");
  ck_assert_str_eq (types->str, expected);
}

START_TEST (most_specific_first_and_each_type_once)
{
  UnsootFitVehicle vehicle
      = { .family_id = 9, .make = "BRINDLE", .model = "t-4", .engine = "5.1", .year = 2014 };

  check_types (&vehicle, "3 5 2 1");
}
END_TEST

START_TEST (year_ranges_are_closed_and_open)
{
  UnsootFitVehicle vehicle = { .make = "Brindle", .model = "T4", .engine = "5.1", .family_id = 1 };

  vehicle.year = 2010;
  check_types (&vehicle, "2 1");
  vehicle.year = 2011;
  check_types (&vehicle, "3 2 1");
  vehicle.year = 2016;
  check_types (&vehicle, "3 2 1");
  vehicle.year = 2017;
  check_types (&vehicle, "4 2 1");
  vehicle.year = 2060;
  check_types (&vehicle, "4 2 1");
  vehicle.make = "Osier";
  vehicle.year = 1990;
  check_types (&vehicle, "6 1");
  vehicle.year = 2006;
  check_types (&vehicle, "1");
}
END_TEST

START_TEST (what_is_not_known_is_said)
{
  UnsootFitVehicle vehicle = { .make = "Brindle", .model = "T4", .engine = "6.6" };
  g_autoptr (GPtrArray) fits = unsoot_fits (rows, G_N_ELEMENTS (rows), &vehicle);

  check_types (&vehicle, "7 2 1 3? 4? 5?");
  ck_assert_str_eq (fit_at (fits, 3)->reason, "Brindle T4, 2011 to 2016; year not known");
  ck_assert_str_eq (fit_at (fits, 5)->reason, "its engine family; family not known");
}
END_TEST

START_TEST (reasons)
{
  UnsootFitVehicle vehicle = { .family_id = 9,
                               .family_name = "Hob 5.1",
                               .make = "Brindle",
                               .model = "T4",
                               .engine = "6.6",
                               .year = 2018 };
  g_autoptr (GPtrArray) fits = unsoot_fits (rows, G_N_ELEMENTS (rows), &vehicle);

  check_types (&vehicle, "7 4 5 3 2 1");
  ck_assert_str_eq (fit_at (fits, 0)->reason, "Brindle T4, 6.6");
  ck_assert_str_eq (fit_at (fits, 1)->reason, "Brindle T4, from 2017");
  ck_assert_str_eq (fit_at (fits, 2)->reason, "family Hob 5.1");
  ck_assert_uint_eq (fit_at (fits, 3)->row, 5);
  ck_assert_str_eq (fit_at (fits, 5)->reason, "fits everything");
}
END_TEST

START_TEST (nothing_fits_an_empty_catalogue)
{
  UnsootFitVehicle vehicle = { .make = "Brindle" };
  g_autoptr (GPtrArray) fits = unsoot_fits (NULL, 0, &vehicle);

  ck_assert_uint_eq (fits->len, 0);
}
END_TEST

static Suite *
fits_suite (void)
{
  Suite *suite = suite_create ("fits");
  TCase *tcase = tcase_create ("adapters");

  tcase_add_test (tcase, most_specific_first_and_each_type_once);
  tcase_add_test (tcase, year_ranges_are_closed_and_open);
  tcase_add_test (tcase, what_is_not_known_is_said);
  tcase_add_test (tcase, reasons);
  tcase_add_test (tcase, nothing_fits_an_empty_catalogue);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (fits_suite)
