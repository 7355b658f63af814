/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "label-day.h"
#include "civil.h"
#include "pack-text.h"
#include "supply.h"
#include "trade-error.h"

#include <math.h>
#include <string.h>

/* NIST StRD, univariate, NumAcc3: 1000000.2, then 500 times 1000000.1 and 1000000.3; certified
 * mean 1000000.2, standard deviation 0.1. Here in tenths, so that they are whole. */
START_TEST (demand_keeps_its_digits)
{
  gint64 weeks[1001] = { 10000002 };
  double demand, sd;

  for (gsize i = 1; i < G_N_ELEMENTS (weeks); i++)
    weeks[i] = i % 2 == 1 ? 10000001 : 10000003;
  ck_assert (unsoot_demand_of_weeks (weeks, G_N_ELEMENTS (weeks), &demand, &sd));
  ck_near (demand * 7, 10000002.0, 1e-6);
  ck_near (sd * sqrt (7), 1.0, 1e-9);
  ck_assert (!unsoot_demand_of_weeks (weeks, 1, &demand, &sd));
}
END_TEST

/* Reorder point of a published worked example: service 0.9, 2500 a day, deviation 500, lead
 * 6 days → 16569.57 (computed from L·d + z·σ·√L). */
START_TEST (suggestion_goes_up_to_the_cover)
{
  const UnsootReorder reorder
      = { .demand = 2500, .demand_sd = 500, .lead = 6, .lead_sd = 0, .service = 0.9 };
  UnsootSuggestion suggestion;
  GError *error = NULL;

  ck_assert (unsoot_supply_suggest (&reorder, 16569, 0, &suggestion, &error));
  ck_near (suggestion.point, 16569.57, 0.01);
  ck_near (suggestion.safety, 1569.57, 0.01);
  /* 28 days of 2500 on top: 86569.57, of which 16569 are here. */
  ck_assert_int_eq (suggestion.wanted_ml, 70001);
  ck_assert (unsoot_supply_suggest (&reorder, 16570, 0, &suggestion, &error));
  ck_assert_int_eq (suggestion.wanted_ml, 0);
  ck_assert (unsoot_supply_suggest (&reorder, -400, 0, &suggestion, &error));
  ck_assert_int_eq (suggestion.wanted_ml, 86970);
}
END_TEST

/* At the very point one orders: 4 days of 2500 even mL are 10000; 28 more days are 70000. */
START_TEST (the_point_itself_orders)
{
  const UnsootReorder even = { .demand = 2500, .demand_sd = 0, .lead = 4, .service = 0.9 };
  UnsootSuggestion suggestion;
  GError *error = NULL;

  ck_assert (unsoot_supply_suggest (&even, 10000, 0, &suggestion, &error));
  ck_near (suggestion.point, 10000, 1e-9);
  ck_assert_int_eq (suggestion.wanted_ml, 70000);
}
END_TEST

/* Worked by hand: 11 L of 5 L at 12.00 is three, 36.00; of 1 L at 2.50 it is 27.50. */
START_TEST (packs_by_what_they_cost)
{
  const UnsootPack packs[] = { { 5000, 1200 }, { 1000, 250 }, { 20000, 4000 } };
  UnsootPackOrder order;

  ck_assert (unsoot_pack_order (packs, 3, 11000, &order));
  ck_assert_uint_eq (order.pack, 1);
  ck_assert_int_eq (order.count, 11);
  ck_assert_int_eq (order.cost_minor, 2750);
  /* 16 L: 40.00 whether sixteen small ones or one large one; the smaller amount wins. */
  ck_assert (unsoot_pack_order (packs, 3, 16000, &order));
  ck_assert_int_eq (order.ml, 16000);
  ck_assert (unsoot_pack_order (packs, 1, 5001, &order));
  ck_assert_int_eq (order.count, 2);
  ck_assert (!unsoot_pack_order (packs, 3, 0, &order));
  ck_assert (!unsoot_pack_order (packs, 0, 100, &order));
}
END_TEST

/* 2500 a day even, 4 days of lead: the point is 10000, and 28 days more make 80000. What was
 * ordered counts as if it were here, whole or in part. */
START_TEST (nothing_is_suggested_twice)
{
  const UnsootReorder even = { .demand = 2500, .demand_sd = 0, .lead = 4, .service = 0.9 };
  UnsootSuggestion suggestion;
  GError *error = NULL;

  ck_assert (unsoot_supply_suggest (&even, 3000, 70000, &suggestion, &error));
  ck_assert_int_eq (suggestion.wanted_ml, 0);
  ck_assert (unsoot_supply_suggest (&even, 3000, 5000, &suggestion, &error));
  ck_assert_int_eq (suggestion.wanted_ml, 72000);
  ck_assert (unsoot_supply_suggest (&even, 3000, 0, &suggestion, &error));
  ck_assert_int_eq (suggestion.wanted_ml, 77000);
}
END_TEST

START_TEST (the_worst_is_said)
{
  ck_assert_int_eq (unsoot_supply (1, 9000, 0, 100, 0), UNSOOT_SUPPLY_SHORT);
  ck_assert_int_eq (unsoot_supply (0, -1, 0, (double) NAN, 0), UNSOOT_SUPPLY_SHORT);
  ck_assert_int_eq (unsoot_supply (0, 100, 0, 100, 50), UNSOOT_SUPPLY_LOW);
  ck_assert_int_eq (unsoot_supply (0, 101, 0, 100, 50), UNSOOT_SUPPLY_GOES_OFF);
  ck_assert_int_eq (unsoot_supply (0, 0, 0, (double) NAN, 0), UNSOOT_SUPPLY_FINE);
  ck_assert_int_eq (unsoot_supply (0, 100, 1, 100, 50), UNSOOT_SUPPLY_ON_ORDER);
  ck_assert_int_eq (unsoot_supply (0, 60, 40, 100, 50), UNSOOT_SUPPLY_LOW);
  ck_assert_int_eq (unsoot_supply (1, 60, 9000, 100, 0), UNSOOT_SUPPLY_SHORT);
  ck_assert_str_eq (unsoot_supply_words (UNSOOT_SUPPLY_GOES_OFF), "goes off");
  ck_assert_str_eq (unsoot_supply_words (UNSOOT_SUPPLY_ON_ORDER), "on order");
}
END_TEST

/* 500 mL a day. The first lot has four days (its last counts), so 2 L of 3 are used and 1 L is
 * lost; the second then has 7 days from the fifth on: 3.5 L of 4. */
START_TEST (what_will_not_be_used)
{
  const UnsootStockLot lots[]
      = { { .id = 2, .on_hand = 4000, .expires = "2026-03-11" },
          { .id = 1, .on_hand = 3000, .expires = "2026-03-04" },
          { .id = 3, .on_hand = 9000, .expires = "2027-01-01" },
          { .id = 4, .on_hand = 800, .expires = "2026-03-02", .held = TRUE } };

  ck_assert_int_eq (unsoot_supply_going_off (lots, 4, "2026-03-01", 500, 30), 1500);
  ck_assert_int_eq (unsoot_supply_going_off (lots, 4, "2026-03-01", 500, 3), 1000);
  /* Nothing is used: all that expires within the month. */
  ck_assert_int_eq (unsoot_supply_going_off (lots, 4, "2026-03-01", 0, 30), 7000);
}
END_TEST

START_TEST (bookings_are_part_of_the_usual_use)
{
  const UnsootOutlookNeed needs[] = { { 2, 4000 }, { -1, 1000 } };
  UnsootOutlookDay days[31];

  unsoot_outlook (10000, needs, 2, NULL, 0, 1000, 300, 2, days, G_N_ELEMENTS (days));
  ck_near (days[0].ml, 9000, 1e-9);         /* late job takes its dose today */
  ck_near (days[1].ml, 9000, 1e-9);         /* 1 L of mean use is no more than what is booked */
  ck_near (days[2].ml, 5000, 1e-9);         /* 5 L booked by then, 2 L usual */
  ck_near (days[6].ml, 4000, 1e-9);         /* 6 L usual, 5 L booked */
  ck_near (days[4].low, 5000 - 1200, 1e-9); /* 2 × 300 × √4 */
  ck_near (days[4].high, 5000 + 1200, 1e-9);
  ck_near (days[0].low, days[0].high, 1e-9);
  ck_near (days[30].ml, 0, 1e-9);
  ck_near (days[30].low, 0, 1e-9);
}
END_TEST

/* The same shop with 5 L due in three days and 2 L that should have come yesterday. */
START_TEST (what_is_on_order_arrives)
{
  const UnsootOutlookNeed needs[] = { { 2, 4000 }, { -1, 1000 } };
  const UnsootOutlookNeed arrivals[] = { { 3, 5000 }, { -1, 2000 } };
  UnsootOutlookDay days[5];

  unsoot_outlook (10000, needs, 2, arrivals, 2, 1000, 0, 2, days, G_N_ELEMENTS (days));
  ck_near (days[0].ml, 11000, 1e-9);
  ck_near (days[2].ml, 7000, 1e-9);
  ck_near (days[3].ml, 12000, 1e-9);
  ck_assert_int_eq (unsoot_arrived_by (arrivals, 2, 2), 2000);
  ck_assert_int_eq (unsoot_arrived_by (arrivals, 2, 3), 7000);
}
END_TEST

static void
check_pack (const char *text, gint64 count, gint64 ml)
{
  UnsootPackText pack = { 0 };
  GError *error = NULL;

  ck_assert_msg (unsoot_pack_text_parse (text, UNSOOT_UNIT_L, &pack, &error), "%s", text);
  ck_assert_int_eq (pack.count, count);
  ck_assert_int_eq (pack.ml, ml);
}

/* A quart is 946.352946 mL (NIST SP 811): each is rounded before it is multiplied. */
START_TEST (packs_as_they_are_typed)
{
  static const char *const wrong[]
      = { "2.5 x 5 L",       "0 x 5 L", "x 5 L",       "2 x",     "2 x 5 psi",
          "9999 x 900000 L", "",        "2 x 5 x 3 L", "-2 x 5 L" };

  check_pack ("5 L", 1, 5000);
  check_pack ("5", 1, 5000);
  check_pack ("1 qt", 1, 946);
  check_pack ("2 x 5 L", 2, 10000);
  check_pack ("3×1 qt", 3, 2838);
  check_pack (" 12 X 750 mL ", 12, 9000);
  check_pack ("4*2.5", 4, 10000);
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      UnsootPackText pack = { 7, 7, 7 };
      GError *error = NULL;
      ck_assert_msg (!unsoot_pack_text_parse (wrong[i], UNSOOT_UNIT_L, &pack, &error), "%s",
                     wrong[i]);
      ck_assert_ptr_nonnull (error);
      ck_assert_int_eq (pack.ml, 7);
      g_clear_error (&error);
    }
}
END_TEST

static void
check_day (const char *text, const char *wanted)
{
  g_autofree char *iso = NULL;
  GError *error = NULL;
  int day = 0;

  ck_assert_msg (unsoot_label_day_parse (text, &day, &error), "%s", text);
  iso = unsoot_day_iso (day);
  ck_assert_str_eq (iso, wanted);
}

START_TEST (days_as_labels_have_them)
{
  static const char *const wrong[]
      = { "", "2026-13", "0/2026", "2026-02-30", "soon", "3-26", "2026", "2026-03-", "12345-01" };

  check_day ("2026-03-31", "2026-03-31");
  check_day (" 2026-03 ", "2026-03-31");
  check_day ("02/2028", "2028-02-29");
  check_day ("12/26", "2026-12-31");
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      GError *error = NULL;
      int day = 0;
      ck_assert_msg (!unsoot_label_day_parse (wrong[i], &day, &error), "%s", wrong[i]);
      ck_assert_msg (strstr (error->message, wrong[i]) != NULL, "%s", error->message);
      g_clear_error (&error);
    }
}
END_TEST

static Suite *
supply_suite (void)
{
  Suite *suite = suite_create ("supply");
  TCase *stock = tcase_create ("stock");
  TCase *texts = tcase_create ("texts");

  tcase_add_test (stock, demand_keeps_its_digits);
  tcase_add_test (stock, suggestion_goes_up_to_the_cover);
  tcase_add_test (stock, the_point_itself_orders);
  tcase_add_test (stock, packs_by_what_they_cost);
  tcase_add_test (stock, nothing_is_suggested_twice);
  tcase_add_test (stock, the_worst_is_said);
  tcase_add_test (stock, what_will_not_be_used);
  tcase_add_test (stock, bookings_are_part_of_the_usual_use);
  tcase_add_test (stock, what_is_on_order_arrives);
  tcase_add_test (texts, packs_as_they_are_typed);
  tcase_add_test (texts, days_as_labels_have_them);
  suite_add_tcase (suite, stock);
  suite_add_tcase (suite, texts);
  return suite;
}

UNSOOT_TEST_MAIN (supply_suite)
