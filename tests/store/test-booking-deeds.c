/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Bookings: what they hold, what they would break, and how they are let go. */
#include "shop-fixture.h"

#include "adapters.h"
#include "bookings.h"
#include "jobs.h"
#include "stocks.h"

/* The fitting intake adapter is the only one of its kind; of the fuel one there are two. */

static gint64
book (TestShop *shop, gint64 job, gint64 bay, gint64 cart, gint64 technician, gint64 starts,
      GError **error)
{
  UnsootActing who = test_as (shop->advisor, 0);
  UnsootBookingWish wish = { .job_id = job,
                             .bay_id = bay,
                             .machine_id = cart,
                             .technician_id = technician,
                             .starts_at = SHOP_NOW + starts };

  return unsoot_job_book (shop->db, &who, &wish, error);
}

START_TEST (test_double_booking)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 first = test_quote (shop, shop->vehicle, NULL);
  gint64 second = test_quote (shop, shop->exempt_vehicle, NULL);

  test_book_job (shop, first, shop->bay, shop->cart, SHOP_HOUR);
  ck_assert_int_eq (
      book (shop, second, shop->bay, shop->cart, shop->technician, 2 * SHOP_HOUR, &error), 0);
  ck_assert_ptr_nonnull (strstr (error->message, "Bay 1"));
  ck_assert_ptr_nonnull (strstr (error->message, "Cart A"));
  ck_assert_ptr_nonnull (strstr (error->message, "Tove Aske"));
  ck_constraint (error, "V-07/1");
  ck_ask (shop, "SELECT count (*) FROM bookings", 1);
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 2", "quoted");
  /* 100 minutes from 09:00: free again at 10:40, and not before. */
  ck_assert_int_eq (
      book (shop, second, shop->bay, shop->cart, shop->technician, SHOP_HOUR + 99 * 60, &error), 0);
  g_clear_error (&error);
  ck_assert_int_ne (
      book (shop, second, shop->bay, shop->cart, shop->technician, SHOP_HOUR + 100 * 60, &error),
      0);
  ck_no_error (error);
}
END_TEST

START_TEST (test_free_items_are_chosen)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 0);
  UnsootLoanRow loan = { .item_id = shop->fuel_adapter,
                         .to_kind = (char *) "shop",
                         .to_name = (char *) "Osier Garage",
                         .due_on = (char *) "2025-11-30" };
  GError *error = NULL;

  ck_assert (unsoot_adapter_lend (shop->db, &who, &loan, &error));
  ck_no_error (error);
  test_book_job (shop, test_quote (shop, shop->vehicle, NULL), shop->bay, shop->cart, SHOP_HOUR);
  ck_ask (shop, "SELECT count (*) FROM booking_adapters WHERE item_id = 2", 1);
  ck_ask (shop, "SELECT count (*) FROM booking_adapters WHERE item_id = 3", 1);
  g_autoptr (GArray) items
      = unsoot_booking_items (shop->db, test_ask (shop, "SELECT id FROM bookings"), &error);
  ck_no_error (error);
  ck_assert_uint_eq (items->len, 2);
  ck_assert_int_eq (g_array_index (items, gint64, 0), 2);
  ck_assert_int_eq (g_array_index (items, gint64, 1), 3);
}
END_TEST

START_TEST (test_a_lent_adapter_stands_in_the_way)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->clerk, 0);
  UnsootLoanRow loan = { .item_id = shop->intake_adapter,
                         .to_kind = (char *) "shop",
                         .to_name = (char *) "Osier Garage",
                         .due_on = (char *) "2025-11-19" };
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  ck_assert (unsoot_adapter_lend (shop->db, &who, &loan, &error));
  ck_assert_int_eq (book (shop, job, shop->bay, shop->cart, shop->technician, SHOP_HOUR, &error),
                    0);
  ck_constraint (error, "Osier Garage");
  /* Due back on Wednesday: Thursday is possible. */
  ck_assert_int_ne (
      book (shop, job, shop->bay, shop->cart, shop->technician, 2 * SHOP_DAY + SHOP_HOUR, &error),
      0);
  ck_no_error (error);
}
END_TEST

START_TEST (test_shut)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  /* 16:00 and 100 minutes: past 17:00. */
  ck_assert_int_eq (
      book (shop, job, shop->bay, shop->cart, shop->technician, 8 * SHOP_HOUR, &error), 0);
  g_clear_error (&error);
  /* Saturday, 22 November. */
  ck_assert_int_eq (
      book (shop, job, shop->bay, shop->cart, shop->technician, 4 * SHOP_DAY + SHOP_HOUR, &error),
      0);
  g_clear_error (&error);
  ck_ask (shop, "SELECT count (*) FROM bookings", 0);
}
END_TEST

START_TEST (test_moving)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);
  gint64 booking = test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);

  /* Over itself: half an hour later, in the other bay. */
  ck_assert_int_eq (
      book (shop, job, shop->other_bay, shop->cart, shop->technician, SHOP_HOUR + 1800, &error),
      booking);
  ck_no_error (error);
  ck_ask (shop, "SELECT count (*) FROM bookings", 1);
  ck_ask (shop, "SELECT bay_id FROM bookings", shop->other_bay);
  ck_ask (shop, "SELECT count (*) FROM booking_adapters", 2);
  ck_ask_text (shop,
               "SELECT was FROM changes WHERE record = 'bookings' AND field = 'bay_id'"
               " AND now = '2'",
               "1");
}
END_TEST

START_TEST (test_letting_go)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 0);
  UnsootActing clerk = test_as (shop->clerk, 0);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);
  gint64 booking = test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);

  ck_assert (!unsoot_booking_drop (shop->db, &clerk, booking, NULL, &error));
  ck_not_allowed (error, "parts clerk");
  ck_assert (unsoot_booking_drop (shop->db, &who, booking, "rain", &error));
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "quoted");
  ck_ask_text (shop, "SELECT note FROM job_status ORDER BY id DESC LIMIT 1", "rain");
  test_book_job (shop, test_quote (shop, shop->exempt_vehicle, NULL), shop->bay, shop->cart,
                 SHOP_HOUR);
}
END_TEST

START_TEST (test_cancelling_lets_go)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 0);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);
  ck_assert (unsoot_job_cancel (shop->db, &who, job, "sold", &error));
  ck_ask_text (shop, "SELECT state FROM bookings", "dropped");
  ck_assert (!unsoot_booking_drop (shop->db, &who, 1, NULL, &error));
  ck_constraint (error, "does not stand");
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "cancelled");
  ck_assert_int_eq (book (shop, job, shop->bay, shop->cart, shop->technician, SHOP_HOUR, &error),
                    0);
  ck_constraint (error, "Job 1");
}
END_TEST

/* 8 L of K are taken out: 2 L are left for the first, and none for the second. */
START_TEST (test_short_fluid_is_a_warning)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0);
  GError *error = NULL;
  gint64 first = test_quote (shop, shop->vehicle, NULL);
  gint64 second = test_quote (shop, shop->exempt_vehicle, NULL);
  UnsootBookingWish wish
      = { .job_id = second, .bay_id = shop->bay, .starts_at = SHOP_NOW + SHOP_DAY + SHOP_HOUR };

  ck_assert (unsoot_stock_count (shop->db, &clerk, shop->fuel_lot, 2000, "spilt", &error));
  test_book_job (shop, first, shop->bay, shop->cart, SHOP_HOUR);
  g_autoptr (GPtrArray) conflicts = unsoot_booking_conflicts (shop->db, &wish, SHOP_NOW, &error);
  ck_no_error (error);
  ck_assert_int_eq (conflicts->len, 1);
  ck_assert_ptr_nonnull (strstr (conflicts->pdata[0], "Fuel fluid K"));
  test_book_job (shop, second, shop->bay, shop->cart, SHOP_DAY + SHOP_HOUR);
  g_autoptr (UnsootFluidStock) stock
      = unsoot_fluid_stock (shop->db, shop->fuel_fluid, SHOP_NOW, &error);
  ck_assert_int_eq (stock->promised_ml, 4000);
  ck_assert_int_eq (stock->free_ml, -2000);
}
END_TEST

static Suite *
booking_deeds_suite (void)
{
  Suite *suite = suite_create ("booking deeds");
  TCase *tcase = tcase_create ("bookings");

  tcase_add_test (tcase, test_double_booking);
  tcase_add_test (tcase, test_free_items_are_chosen);
  tcase_add_test (tcase, test_a_lent_adapter_stands_in_the_way);
  tcase_add_test (tcase, test_shut);
  tcase_add_test (tcase, test_moving);
  tcase_add_test (tcase, test_letting_go);
  tcase_add_test (tcase, test_cancelling_lets_go);
  tcase_add_test (tcase, test_short_fluid_is_a_warning);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (booking_deeds_suite)
