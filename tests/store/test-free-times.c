/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Times at which everything is free, reckoned by hand from the fixture: it opens at 08:00 UTC,
 * and both sides take 100 minutes. */
#include "shop-fixture.h"

#include "bookings.h"
#include "free-times.h"

static UnsootFreeTimeAsk
ask_for (TestShop *shop)
{
  return (UnsootFreeTimeAsk){ .vehicle_id = shop->vehicle, .service_id = shop->both, .days = 2 };
}

static const UnsootFreeTime *
first_time (const GPtrArray *days)
{
  for (guint i = 0; i < days->len; i++)
    {
      const UnsootFreeDay *day = days->pdata[i];
      if (day->times->len > 0)
        return day->times->pdata[0];
    }
  ck_abort_msg ("no free time at all");
}

START_TEST (test_first_free_time_takes_one_of_each)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootFreeTimeAsk ask = ask_for (shop);
  GError *error = NULL;
  g_autoptr (GPtrArray) days = unsoot_free_days (shop->db, &ask, SHOP_NOW, &error);

  ck_no_error (error);
  const UnsootFreeTime *first = first_time (days);
  ck_assert_int_eq (first->starts_at, SHOP_NOW);
  ck_assert_int_eq (first->ends_at, SHOP_NOW + 100 * 60);
  ck_assert_int_eq (first->bay_id, shop->bay);
  ck_assert_int_ne (first->machine_id, 0);
  ck_assert_int_eq (first->technician_id, shop->technician);
  ck_assert_str_eq (first->adapters, "F-01/1, V-07/1");
}
END_TEST

/* The only intake adapter is held until 10:40, whatever else is free. */
START_TEST (test_the_scarcest_decides)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootFreeTimeAsk ask = ask_for (shop);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->fleet_vehicle, "PO-1");

  test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);
  g_autoptr (GPtrArray) days = unsoot_free_days (shop->db, &ask, SHOP_NOW, &error);
  ck_no_error (error);
  const UnsootFreeTime *first = first_time (days);
  ck_assert_int_eq (first->starts_at, SHOP_NOW + 2 * SHOP_HOUR + 45 * 60);

  g_autoptr (GPtrArray) why = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (UnsootFreeTime) at
      = unsoot_free_time_at (shop->db, &ask, SHOP_NOW + SHOP_HOUR + 420, SHOP_NOW, why, &error);
  ck_no_error (error);
  ck_assert_uint_ge (why->len, 1);
  g_autofree char *all = g_strjoin ("\n", why->pdata[0], why->len > 1 ? why->pdata[1] : "", NULL);
  ck_assert_msg (strstr (all, "V-07/1 is taken by job 1, 18 Nov 2025 09:00 to 10:40.") != NULL,
                 "%s", all);
  ck_assert_int_eq (at->bay_id, shop->other_bay);
  ck_assert_uint_eq (at->items->len, 1);
}
END_TEST

/* A job that is moved does not stand in its own way. */
START_TEST (test_its_own_booking_is_no_hindrance)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootFreeTimeAsk ask = ask_for (shop);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);
  ask.job_id = job;
  g_autoptr (GPtrArray) days = unsoot_free_days (shop->db, &ask, SHOP_NOW, &error);
  ck_assert_int_eq (first_time (days)->starts_at, SHOP_NOW);
}
END_TEST

/* What is offered can be booked as it is offered. */
START_TEST (test_what_is_offered_can_be_booked)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootFreeTimeAsk ask = ask_for (shop);
  GError *error = NULL;

  for (int i = 0; i < 3; i++)
    {
      gint64 job = test_quote (shop, shop->vehicle, NULL);
      UnsootActing who = test_as (shop->advisor, 0);
      g_autoptr (GPtrArray) days = unsoot_free_days (shop->db, &ask, SHOP_NOW, &error);
      const UnsootFreeTime *time = first_time (days);
      const UnsootBookingWish wish = { .job_id = job,
                                       .bay_id = time->bay_id,
                                       .machine_id = time->machine_id,
                                       .technician_id = time->technician_id,
                                       .starts_at = time->starts_at,
                                       .ends_at = time->ends_at,
                                       .items = (const gint64 *) (gconstpointer) time->items->data,
                                       .n_items = time->items->len };
      unsoot_job_book (shop->db, &who, &wish, &error);
      ck_no_error (error);
    }
  ck_ask (shop, "SELECT count (DISTINCT starts_at) FROM bookings", 3);
}
END_TEST

START_TEST (test_a_full_day_says_why)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootFreeTimeAsk ask = ask_for (shop);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->fleet_vehicle, "PO-1");
  UnsootActing who = test_as (shop->advisor, 0);
  const UnsootBookingWish wish = {
    .job_id = job, .bay_id = shop->bay, .starts_at = SHOP_NOW, .ends_at = SHOP_NOW + 9 * SHOP_HOUR
  };

  unsoot_job_book (shop->db, &who, &wish, &error);
  ck_no_error (error);
  g_autoptr (GPtrArray) days = unsoot_free_days (shop->db, &ask, SHOP_NOW, &error);
  const UnsootFreeDay *today = days->pdata[0];
  ck_assert_str_eq (today->day, "2025-11-18");
  ck_assert_uint_eq (today->times->len, 0);
  ck_assert_uint_eq (today->why->len, 1);
  ck_assert_ptr_nonnull (strstr (today->why->pdata[0], "V-07/1 is taken by job 1"));
}
END_TEST

static Suite *
free_times_suite (void)
{
  Suite *suite = suite_create ("free-times");
  TCase *tcase = tcase_create ("times");

  tcase_set_timeout (tcase, 30);
  tcase_add_test (tcase, test_first_free_time_takes_one_of_each);
  tcase_add_test (tcase, test_the_scarcest_decides);
  tcase_add_test (tcase, test_its_own_booking_is_no_hindrance);
  tcase_add_test (tcase, test_what_is_offered_can_be_booked);
  tcase_add_test (tcase, test_a_full_day_says_why);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (free_times_suite)
