/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is looked at before the work, and what is kept of what was typed. */
#include "shop-fixture.h"

#include <math.h>

#include "drafts.h"
#include "jobs.h"
#include "prechecks.h"

/* Here, with nothing looked at yet. */
static gint64
arrived (TestShop *shop)
{
  UnsootActing who = test_as (shop->advisor, 800);
  UnsootArrival arrival = { .odometer = 51000, .odometer_unit = "mi", .hours = (double) NAN };
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  test_authorise (shop, job);
  test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);
  ck_assert (unsoot_job_arrive (shop->db, &who, job, &arrival, &error));
  return job;
}

static gint64
begin (TestShop *shop, gint64 job, GError **error)
{
  UnsootActing who = test_as (shop->technician, SHOP_HOUR);

  return unsoot_job_run_begin (shop->db, &who, job, 0, error);
}

static gboolean
answer (TestShop *shop, gint64 staff, gint64 job, UnsootPrecheck check, UnsootPrecheckAnswer said,
        gboolean overridden, const char *reason, GError **error)
{
  UnsootActing who = test_as (staff, 900);

  return unsoot_job_precheck_answer (shop->db, &who, job, check, said, overridden, reason, error);
}

static void
answer_rest (TestShop *shop, gint64 job)
{
  UnsootActing who = test_as (shop->technician, 1000);
  GError *error = NULL;

  unsoot_job_precheck_rest (shop->db, &who, job, &error);
  ck_no_error (error);
}

START_TEST (test_nothing_begins_unlooked_at)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job = arrived (shop);

  ck_assert_int_eq (begin (shop, job, &error), 0);
  ck_assert_ptr_nonnull (strstr (error->message, "Carbon monoxide alarm on? Not answered."));
  ck_constraint (error, "Oil between its marks, and without fuel in it? Not answered.");
  ck_ask_text (shop, "SELECT status FROM jobs", "arrived");
  ck_ask (shop, "SELECT count (*) FROM runs", 0);
  answer_rest (shop, job);
  ck_ask (shop, "SELECT count (*) FROM prechecks WHERE answer = 'yes'", UNSOOT_PRECHECKS);
  ck_assert_int_ne (begin (shop, job, &error), 0);
  ck_no_error (error);
}
END_TEST

START_TEST (test_a_no_holds_it_until_it_is_put_right)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job = arrived (shop);

  ck_assert (answer (shop, shop->technician, job, UNSOOT_PRECHECK_OIL, UNSOOT_PRECHECK_NO, FALSE,
                     NULL, &error));
  answer_rest (shop, job);
  ck_assert_int_eq (begin (shop, job, &error), 0);
  ck_constraint (error, "without fuel in it? No.");
  ck_assert (!answer (shop, shop->owner, job, UNSOOT_PRECHECK_OIL, UNSOOT_PRECHECK_NO, TRUE,
                      "no time", &error));
  ck_constraint (error, "can't be overridden");
  ck_assert (answer (shop, shop->technician, job, UNSOOT_PRECHECK_OIL, UNSOOT_PRECHECK_YES, FALSE,
                     NULL, &error));
  ck_assert_int_ne (begin (shop, job, &error), 0);
}
END_TEST

START_TEST (test_the_lead_overrides_with_a_reason)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job = arrived (shop);

  ck_assert (!answer (shop, shop->technician, job, UNSOOT_PRECHECK_TURBO, UNSOOT_PRECHECK_NO, TRUE,
                      "a new one is on order", &error));
  ck_not_allowed (error, "ask the lead technician");
  ck_assert (!answer (shop, shop->clerk, job, UNSOOT_PRECHECK_TURBO, UNSOOT_PRECHECK_YES, FALSE,
                      NULL, &error));
  ck_not_allowed (error, "parts clerk");
  ck_assert (answer (shop, shop->lead, job, UNSOOT_PRECHECK_TURBO, UNSOOT_PRECHECK_NO, TRUE,
                     "a new one is on order", &error));
  answer_rest (shop, job);
  ck_ask_text (shop, "SELECT reason FROM prechecks WHERE kind = 'turbo' AND overridden = 1",
               "a new one is on order");
  ck_assert_int_ne (begin (shop, job, &error), 0);
}
END_TEST

/* What was found on Tuesday says nothing of Thursday. */
START_TEST (test_only_this_visit_counts)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job = arrived (shop);

  answer_rest (shop, job);
  g_autoptr (UnsootJobRow) row = unsoot_job_load (shop->db, job, &error);
  UnsootActing who = test_as (shop->advisor, 3 * SHOP_DAY);
  row->arrived_at = who.now;
  ck_assert (unsoot_rows_update (shop->db, &unsoot_job_row_type, row, &who, &error));
  g_autoptr (GPtrArray) left = unsoot_job_prechecks (shop->db, job, &error);
  ck_assert_uint_eq (left->len, 0);
  ck_assert (!unsoot_job_precheck_gate (shop->db, job, &error));
  ck_constraint (error, "Not answered");
}
END_TEST

START_TEST (test_answers_are_postings_of_an_arrived_job)
{
  g_autoptr (TestShop) shop = test_shop_new_file ();
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  ck_assert (!answer (shop, shop->technician, job, UNSOOT_PRECHECK_OIL, UNSOOT_PRECHECK_YES, FALSE,
                      NULL, &error));
  ck_constraint (error, "once the vehicle is here");
  ck_assert (!unsoot_db_run (shop->db, &error, "DELETE FROM prechecks"));
  ck_assert (g_error_matches (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_ALLOWED));
  g_clear_error (&error);
}
END_TEST

START_TEST (test_altered_parts_stay_with_the_vehicle)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 800);
  UnsootArrival arrival
      = { .odometer = (double) NAN, .hours = (double) NAN, .altered = "EGR cooler blanked off" };
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  test_authorise (shop, job);
  test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);
  ck_assert (unsoot_job_arrive (shop->db, &who, job, &arrival, &error));
  ck_ask_text (shop,
               "SELECT emission_note FROM vehicles WHERE emission_altered = 1 AND id ="
               " (SELECT vehicle_id FROM jobs)",
               "EGR cooler blanked off");
}
END_TEST

START_TEST (test_drafts_by_person_place_and_record)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 0), other = test_as (shop->owner, 0);
  GError *error = NULL;
  gint64 changes = test_ask (shop, "SELECT count (*) FROM changes");

  ck_assert (unsoot_draft_keep (shop->db, &who, "booking", 0, "{\"a\":1}", &error));
  ck_assert (unsoot_draft_keep (shop->db, &who, "booking", 7, "{\"b\":2}", &error));
  ck_assert (unsoot_draft_keep (shop->db, &other, "booking", 0, "{\"c\":3}", &error));
  ck_assert (unsoot_draft_keep (shop->db, &who, "booking", 0, "{\"a\":4}", &error));
  ck_ask (shop, "SELECT count (*) FROM drafts", 3);
  g_autoptr (UnsootDraftRow) draft
      = unsoot_draft_load (shop->db, shop->advisor, "booking", 0, &error);
  ck_assert_str_eq (draft->text, "{\"a\":4}");
  ck_assert (unsoot_draft_drop (shop->db, &who, "booking", 0, &error));
  ck_assert_ptr_null (unsoot_draft_load (shop->db, shop->advisor, "booking", 0, &error));
  ck_no_error (error);
  ck_ask (shop, "SELECT count (*) FROM drafts", 2);
  ck_ask (shop, "SELECT count (*) FROM changes", changes);
}
END_TEST

static Suite *
precheck_deeds_suite (void)
{
  Suite *suite = suite_create ("precheck deeds");
  TCase *tcase = tcase_create ("checks");

  tcase_set_timeout (tcase, 30);
  tcase_add_test (tcase, test_nothing_begins_unlooked_at);
  tcase_add_test (tcase, test_a_no_holds_it_until_it_is_put_right);
  tcase_add_test (tcase, test_the_lead_overrides_with_a_reason);
  tcase_add_test (tcase, test_only_this_visit_counts);
  tcase_add_test (tcase, test_answers_are_postings_of_an_arrived_job);
  tcase_add_test (tcase, test_altered_parts_stay_with_the_vehicle);
  tcase_add_test (tcase, test_drafts_by_person_place_and_record);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (precheck_deeds_suite)
