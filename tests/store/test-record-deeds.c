/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Customers, vehicles, meters, staff, families: kept rows and how they are found. */
#include "shop-fixture.h"

#include <math.h>

#include "customers.h"
#include "find.h"
#include "families.h"
#include "fluids.h"
#include "jobs.h"
#include "lists.h"
#include "meters.h"
#include "procedures.h"
#include "services.h"
#include "staff.h"
#include "trade-error.h"
#include "vehicles.h"
#include "shops.h"

static void
check_found (TestShop *shop, const char *typed, UnsootFoundKind kind, gint64 row)
{
  GError *error = NULL;
  g_autoptr (GPtrArray) found = unsoot_find (shop->db, typed, 5, &error);

  ck_no_error (error);
  for (guint i = 0; i < found->len; i++)
    {
      const UnsootFound *one = found->pdata[i];
      if (one->kind == kind && one->row == row)
        return;
    }
  ck_abort_msg ("“%s” finds %u others", typed, found->len);
}

START_TEST (test_everything_is_found)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  gint64 job = test_quote (shop, shop->fleet_vehicle, "PO-4711");

  check_found (shop, "harrow creek", UNSOOT_FOUND_CUSTOMER, shop->fleet);
  check_found (shop, "5550102", UNSOOT_FOUND_CUSTOMER, shop->fleet);
  check_found (shop, "7kd204", UNSOOT_FOUND_VEHICLE, shop->vehicle);
  check_found (shop, "unit 12", UNSOOT_FOUND_VEHICLE, shop->fleet_vehicle);
  check_found (shop, "po4711", UNSOOT_FOUND_JOB, job);
  check_found (shop, "k-1", UNSOOT_FOUND_LOT, shop->fuel_lot);
  check_found (shop, "v-07/1", UNSOOT_FOUND_ADAPTER, shop->intake_adapter);
  check_found (shop, "intake fluid r", UNSOOT_FOUND_FLUID, shop->intake_fluid);
}
END_TEST

START_TEST (test_a_new_name_is_found_everywhere)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 0);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->fleet_vehicle, NULL);
  g_autoptr (UnsootCustomerRow) customer = unsoot_customer_load (shop->db, shop->fleet, &error);

  g_free (customer->name);
  customer->name = g_strdup ("Zwickel Stone");
  ck_assert (unsoot_customer_save (shop->db, &who, customer, NULL, NULL, &error));
  check_found (shop, "zwickel", UNSOOT_FOUND_CUSTOMER, shop->fleet);
  check_found (shop, "zwickel", UNSOOT_FOUND_VEHICLE, shop->fleet_vehicle);
  check_found (shop, "zwickel", UNSOOT_FOUND_JOB, job);
}
END_TEST

START_TEST (test_a_stale_version_loses_nothing)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 0);
  GError *error = NULL;
  g_autoptr (UnsootCustomerRow) mine = unsoot_customer_load (shop->db, shop->person, &error);
  g_autoptr (UnsootCustomerRow) theirs = unsoot_customer_load (shop->db, shop->person, &error);

  theirs->note = g_strdup ("calls first");
  ck_assert (unsoot_customer_save (shop->db, &who, theirs, NULL, NULL, &error));
  mine->note = g_strdup ("pays in cash");
  ck_assert (!unsoot_customer_save (shop->db, &who, mine, NULL, NULL, &error));
  ck_refused (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONFLICT,
              "Someone else changed this customer");
  ck_assert_str_eq (mine->note, "pays in cash");
  ck_ask_text (shop, "SELECT note FROM customers WHERE id = 1", "calls first");
}
END_TEST

START_TEST (test_phones_are_what_is_given)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 0);
  GError *error = NULL;
  g_autoptr (UnsootCustomerRow) customer = unsoot_customer_load (shop->db, shop->person, &error);
  g_autoptr (GPtrArray) phones
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_phone_row_free);
  UnsootPhoneRow *phone = unsoot_phone_row_new ();

  g_ptr_array_add (phones, phone);
  phone->number = g_strdup ("555-0199 x");
  ck_assert (!unsoot_customer_save (shop->db, &who, customer, phones, NULL, &error));
  ck_assert_ptr_nonnull (strstr (error->message, "555-0199 x"));
  g_clear_error (&error);
  g_free (phone->number);
  phone->number = g_strdup ("555-0199");
  ck_assert (unsoot_customer_save (shop->db, &who, customer, phones, NULL, &error));
  ck_ask_text (shop, "SELECT number FROM customer_phones WHERE customer_id = 1", "555-0199");
  ck_ask (shop, "SELECT count (*) FROM customer_phones WHERE customer_id = 1", 1);
  check_found (shop, "5550199", UNSOOT_FOUND_CUSTOMER, shop->person);
  ck_ask_text (shop,
               "SELECT was FROM changes WHERE record = 'customer_phones' AND was = '555-0101'",
               "555-0101");
}
END_TEST

static UnsootVehicleRow *
vehicle_of (TestShop *shop, const char *vin, const char *model)
{
  UnsootVehicleRow *row = unsoot_vehicle_row_new ();

  row->customer_id = shop->person;
  row->family_id = shop->family;
  row->vin = g_strdup (vin);
  row->make = g_strdup ("Brindle");
  row->model = g_strdup (model);
  row->engine = g_strdup ("5.1");
  row->active = TRUE;
  return row;
}

/* The VINs are those of 49 CFR 565.15's example and of published test data: the first has its
   check digit, 1HGCM82643A004352 fails at position 9. */
START_TEST (test_a_vin_only_warns)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 0);
  GError *error = NULL;
  g_autofree char *warning = NULL;
  g_autofree char *wrong = NULL;
  g_autofree char *twice = NULL;
  g_autoptr (UnsootVehicleRow) good = vehicle_of (shop, "1g4ah59h 45g-118341", "T4");
  g_autoptr (UnsootVehicleRow) bad = vehicle_of (shop, "1HGCM82643A004352", "T4");
  g_autoptr (UnsootVehicleRow) same = vehicle_of (shop, "1G4AH59H45G118341", "T4");
  g_autoptr (UnsootVehicleRow) none = vehicle_of (shop, NULL, "T4");

  ck_assert (unsoot_vehicle_save (shop->db, &who, good, &warning, &error));
  ck_assert_ptr_null (warning);
  ck_assert_str_eq (good->vin, "1G4AH59H45G118341");
  ck_assert (unsoot_vehicle_save (shop->db, &who, bad, &wrong, &error));
  ck_assert_ptr_nonnull (wrong);
  ck_assert (unsoot_vehicle_save (shop->db, &who, same, &twice, &error));
  ck_assert_str_eq (twice, "Brindle T4 5.1 has the same VIN.");
  ck_assert (!unsoot_vehicle_save (shop->db, &who, none, NULL, &error));
  ck_invalid (error, "tell this vehicle from others");
  ck_assert_int_eq (none->id, 0);
}
END_TEST

START_TEST (test_proposals_from_the_shops_own)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 0);
  GError *error = NULL;
  static const char *const known[][2] = { { "XX9ABCDE1A1000001", "T4" },
                                          { "XX9ABCDE2A1000002", "T4" },
                                          { "XX9ABCDF3A1000003", "T6" } };

  for (gsize i = 0; i < G_N_ELEMENTS (known); i++)
    {
      g_autoptr (UnsootVehicleRow) row = vehicle_of (shop, known[i][0], known[i][1]);
      ck_assert (unsoot_vehicle_save (shop->db, &who, row, NULL, &error));
    }
  g_autoptr (GPtrArray) near = unsoot_vehicle_proposals (shop->db, "XX9ABCDE9B9999999", &error);
  ck_no_error (error);
  ck_assert_int_eq (near->len, 1);
  const UnsootVehicleProposal *first = near->pdata[0];
  ck_assert_str_eq (first->model, "T4");
  ck_assert_int_eq (first->vehicles, 2);
  ck_assert_int_eq (first->matched, 8);
  /* Only the maker is known: both models are proposed. */
  g_autoptr (GPtrArray) far = unsoot_vehicle_proposals (shop->db, "XX9ZZZZZ9B9999999", &error);
  ck_assert_int_eq (far->len, 2);
  g_autoptr (GPtrArray) none = unsoot_vehicle_proposals (shop->db, "YY9", &error);
  ck_assert_int_eq (none->len, 0);
}
END_TEST

static gint64
read_meter (TestShop *shop, double typed, const char *unit, const char *on, gboolean new_meter,
            GError **error)
{
  UnsootActing who = test_as (shop->technician, 0);

  return unsoot_vehicle_meter_add (shop->db, &who, shop->vehicle, 0, "odometer", typed, unit, on,
                                   new_meter, error);
}

/* NIST SP 811: a mile is 1609.344 m exactly. */
START_TEST (test_meters)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;

  ck_assert_int_ne (read_meter (shop, 1000, "mi", "2025-01-10", FALSE, &error), 0);
  ck_ask (shop, "SELECT metres FROM meter_readings WHERE id = 1", 1609344);
  ck_assert_int_eq (read_meter (shop, 999, "mi", "2025-02-10", FALSE, &error), 0);
  ck_invalid (error, "less than the last reading");
  ck_assert_int_eq (read_meter (shop, 1001, "mi", "2025-01-09", FALSE, &error), 0);
  ck_invalid (error, "before the last one");
  ck_assert_int_eq (read_meter (shop, 10, "h", NULL, FALSE, &error), 0);
  ck_invalid (error, "miles or kilometres");
  /* A new meter that began at nothing, then its own second reading. */
  ck_assert_int_ne (read_meter (shop, 10, "km", "2025-03-10", TRUE, &error), 0);
  ck_ask (shop, "SELECT metres FROM meter_readings WHERE id = 2", 1609344 + 10000);
  ck_assert_int_ne (read_meter (shop, 25, "km", "2025-04-10", FALSE, &error), 0);
  ck_ask (shop, "SELECT metres FROM meter_readings WHERE id = 3", 1609344 + 25000);
  /* What is shown in another unit goes on all the same. */
  ck_assert_int_ne (read_meter (shop, 20, "mi", "2025-05-10", FALSE, &error), 0);
  ck_ask (shop, "SELECT metres FROM meter_readings WHERE id = 4", 1609344 + 32187);
}
END_TEST

START_TEST (test_staff)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing owner = test_as (shop->owner, 0);
  UnsootActing advisor = test_as (shop->advisor, 0);
  GError *error = NULL;
  g_autoptr (UnsootStaffRow) person = unsoot_staff_load (shop->db, shop->owner, &error);

  person->active = FALSE;
  ck_assert (!unsoot_staff_save (shop->db, &owner, person, &error));
  ck_constraint (error, "last owner");
  ck_assert (!unsoot_staff_save (shop->db, &advisor, person, &error));
  ck_not_allowed (error, "change who works here");
  g_autoptr (UnsootStaffRow) found = unsoot_staff_find (shop->db, "mq", &error);
  ck_assert_int_eq (found->id, shop->advisor);
  ck_assert_ptr_null (unsoot_staff_find (shop->db, "nobody", &error));
  ck_refused (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND, "Mara Quill");
}
END_TEST

START_TEST (test_pins)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0);
  GError *error = NULL;

  ck_assert_ptr_null (unsoot_staff_sign_in (shop->db, shop->clerk, "4711", &error));
  ck_not_allowed (error, "no PIN yet");
  ck_assert (!unsoot_staff_set_pin (shop->db, &clerk, shop->advisor, "4711", &error));
  ck_not_allowed (error, "parts clerk");
  ck_assert (unsoot_staff_set_pin (shop->db, &clerk, shop->clerk, "4711", &error));
  ck_assert_ptr_null (unsoot_staff_sign_in (shop->db, shop->clerk, "4712", &error));
  ck_not_allowed (error, "not the PIN");
  g_autoptr (UnsootStaffRow) person = unsoot_staff_sign_in (shop->db, shop->clerk, "4711", &error);
  ck_assert_str_eq (person->name, "Piet Lund");
  /* The log says that it changed, never to what. */
  ck_ask (shop, "SELECT count (*) FROM changes WHERE field = 'pin_hash' AND now LIKE '%argon%'", 0);
}
END_TEST

START_TEST (test_who_left_does_nothing)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing owner = test_as (shop->owner, 0);
  UnsootActing clerk = test_as (shop->clerk, 0);
  GError *error = NULL;
  g_autoptr (UnsootStaffRow) person = unsoot_staff_load (shop->db, shop->clerk, &error);
  g_autoptr (UnsootCustomerRow) customer = unsoot_customer_load (shop->db, shop->person, &error);

  person->active = FALSE;
  ck_assert (unsoot_staff_save (shop->db, &owner, person, &error));
  ck_assert (!unsoot_customer_save (shop->db, &clerk, customer, NULL, NULL, &error));
  ck_not_allowed (error, "no longer works here");
}
END_TEST

START_TEST (test_procedures_are_versions)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing lead = test_as (shop->lead, 0);
  UnsootActing technician = test_as (shop->technician, 0);
  GError *error = NULL;
  g_autoptr (UnsootProcedure) procedure = unsoot_procedure_load (shop->db, shop->procedure, &error);

  ck_no_error (error);
  ck_assert_int_eq (unsoot_procedure_save (shop->db, &technician, shop->family, procedure, &error),
                    0);
  ck_not_allowed (error, "change a procedure");
  gint64 second = unsoot_procedure_save (shop->db, &lead, shop->family, procedure, &error);
  ck_no_error (error);
  ck_ask (shop, "SELECT number FROM procedures WHERE state = 'in-use'", 2);
  ck_ask (shop, "SELECT number FROM procedures WHERE state = 'retired'", 1);
  g_autoptr (UnsootProcedure) again = unsoot_procedure_load (shop->db, second, &error);
  ck_assert (unsoot_procedure_equal (procedure, again));

  /* Without its last four steps both tanks stand as they are. */
  g_ptr_array_set_size (procedure->steps, (int) procedure->steps->len - 4);
  ck_assert_int_eq (unsoot_procedure_save (shop->db, &lead, shop->family, procedure, &error), 0);
  ck_refused (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED, "Rule 1");
  ck_ask (shop, "SELECT count (*) FROM procedures", 2);
  ck_ask (shop, "SELECT number FROM procedures WHERE state = 'in-use'", 2);
}
END_TEST

START_TEST (test_values_that_make_no_sense)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing owner = test_as (shop->owner, 0);
  GError *error = NULL;
  g_autoptr (UnsootFamilyRow) family = unsoot_family_load (shop->db, shop->family, &error);
  g_autoptr (UnsootFluidRow) fluid = unsoot_fluid_load (shop->db, shop->fuel_fluid, &error);
  g_autoptr (GPtrArray) rules = unsoot_tax_rule_list (shop->db, &error);
  UnsootTaxRuleRow *rule = rules->pdata[0];

  family->window_max_pa = family->window_min_pa;
  ck_assert (!unsoot_family_save (shop->db, &owner, family, NULL, &error));
  ck_invalid (error, "upside down");
  g_free (fluid->side);
  fluid->side = g_strdup ("intake");
  ck_assert (!unsoot_fluid_save (shop->db, &owner, fluid, &error));
  ck_constraint (error, "stays on its side");
  rule->rate_milli_percent = 1000;
  ck_assert (!unsoot_tax_rule_save (shop->db, &owner, rule, &error));
  ck_invalid (error, "category S");
}
END_TEST

/* Three customers in pages of two, both ways; nobody twice, nobody missing. */
static void
check_pages (TestShop *shop, UnsootListOrder order, const char *const *names)
{
  UnsootListPage page = { .limit = 2, .order = order };
  g_autofree char *after = NULL;
  GError *error = NULL;

  for (guint n = 0; n < 3;)
    {
      g_autoptr (GPtrArray) lines = unsoot_customer_page (shop->db, &page, &error);
      ck_no_error (error);
      ck_assert_int_gt (lines->len, 0);
      for (guint i = 0; i < lines->len; i++, n++)
        {
          const UnsootCustomerLine *line = lines->pdata[i];
          ck_assert_str_eq (line->name, names[n]);
          g_free (after);
          page.after_text = after = g_strdup (line->name);
          page.after_id = line->id;
        }
    }
  g_autoptr (GPtrArray) past = unsoot_customer_page (shop->db, &page, &error);
  ck_assert_int_eq (past->len, 0);
}

START_TEST (test_pages)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  static const char *const up[] = { "Ansel Reed", "Harrow Creek Gravel", "Long Acre Farm" };
  static const char *const down[] = { "Long Acre Farm", "Harrow Creek Gravel", "Ansel Reed" };
  UnsootListPage page = { .limit = 1, .order = UNSOOT_LIST_DOWN };
  GError *error = NULL;

  check_pages (shop, UNSOOT_LIST_UP, up);
  check_pages (shop, UNSOOT_LIST_DOWN, down);
  test_quote (shop, shop->vehicle, NULL);
  gint64 second = test_quote (shop, shop->fleet_vehicle, NULL);
  g_autoptr (GPtrArray) jobs = unsoot_job_page (shop->db, &page, NULL, 0, 0, &error);
  ck_assert_int_eq (((UnsootJobLine *) jobs->pdata[0])->id, second);
  page.after_id = second;
  g_autoptr (GPtrArray) next = unsoot_job_page (shop->db, &page, "quoted", 0, 0, &error);
  ck_assert_int_eq (((UnsootJobLine *) next->pdata[0])->number, 1);
  ck_assert_int_eq (((UnsootJobLine *) next->pdata[0])->total_minor, 50019);
  page.after_id = 0;
  page.limit = 9;
  g_autoptr (GPtrArray) vehicles = unsoot_vehicle_page (shop->db, &page, shop->fleet, &error);
  ck_no_error (error);
  ck_assert_int_eq (vehicles->len, 1);
  ck_assert_str_eq (((UnsootVehicleLine *) vehicles->pdata[0])->title, "Tolver H6 9.0 · unit 12");
}
END_TEST

START_TEST (test_hours_and_holidays_go)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  const UnsootActing owner = test_as (shop->owner, 0), advisor = test_as (shop->advisor, 0);
  g_autoptr (UnsootHolidayRow) day = unsoot_holiday_row_new ();
  g_autoptr (GPtrArray) hours = NULL;
  GError *error = NULL;
  gint64 before;

  day->day = g_strdup ("2025-12-24");
  day->name = g_strdup ("Half day");
  ck_assert (unsoot_holiday_save (shop->db, &owner, day, &error));
  ck_assert (!unsoot_holiday_drop (shop->db, &advisor, day, &error));
  ck_refused (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_ALLOWED, "shop owner");
  ck_ask (shop, "SELECT count (*) FROM holidays WHERE day = '2025-12-24'", 1);
  ck_assert (unsoot_holiday_drop (shop->db, &owner, day, &error));
  ck_ask (shop, "SELECT count (*) FROM holidays WHERE day = '2025-12-24'", 0);
  before = test_ask (shop, "SELECT count (*) FROM open_hours");
  hours = unsoot_open_hours_list (shop->db, &error);
  ck_assert (unsoot_open_hours_drop (shop->db, &owner, hours->pdata[0], &error));
  ck_ask (shop, "SELECT count (*) FROM open_hours", before - 1);
  ck_assert (!unsoot_open_hours_drop (shop->db, &owner, hours->pdata[0], &error));
  g_clear_error (&error);
}
END_TEST

static Suite *
record_deeds_suite (void)
{
  Suite *suite = suite_create ("record deeds");
  TCase *tcase = tcase_create ("records");

  tcase_add_test (tcase, test_everything_is_found);
  tcase_add_test (tcase, test_a_new_name_is_found_everywhere);
  tcase_add_test (tcase, test_a_stale_version_loses_nothing);
  tcase_add_test (tcase, test_phones_are_what_is_given);
  tcase_add_test (tcase, test_a_vin_only_warns);
  tcase_add_test (tcase, test_proposals_from_the_shops_own);
  tcase_add_test (tcase, test_meters);
  tcase_add_test (tcase, test_staff);
  tcase_add_test (tcase, test_pins);
  tcase_add_test (tcase, test_who_left_does_nothing);
  tcase_add_test (tcase, test_procedures_are_versions);
  tcase_add_test (tcase, test_values_that_make_no_sense);
  tcase_add_test (tcase, test_hours_and_holidays_go);
  tcase_add_test (tcase, test_pages);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (record_deeds_suite)
