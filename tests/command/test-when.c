/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "when.h"

/* Unix seconds beside each moment: date -u -d '2025-11-24 16:30' +%s (coreutils). */
#define NOON 1764001800 /* 2025-11-24 10:30 where it is six hours behind UTC */
#define LATE 1764050340 /* 2025-11-24 23:59 there, the next day in UTC */

static UnsootShopRow *
new_shop (void)
{
  UnsootShopRow *shop = unsoot_shop_row_new ();

  shop->timezone = g_strdup ("-06:00");
  return shop;
}

static gint64
moment_of (const char *text, gint64 now)
{
  g_autoptr (UnsootShopRow) shop = new_shop ();
  GError *error = NULL;
  gint64 at = 0;

  unsoot_when_moment (shop, now, text, &at, &error);
  ck_no_error (error);
  return at;
}

START_TEST (a_moment_is_by_the_shops_clock)
{
  ck_assert_int_eq (moment_of ("2025-11-24 10:30", NOON), NOON);
  ck_assert_int_eq (moment_of ("2025-11-24T10:30", NOON), NOON);
  ck_assert_int_eq (moment_of ("today 23:59", NOON), LATE);
  ck_assert_int_eq (moment_of ("23:59", NOON), LATE);
  ck_assert_int_eq (moment_of (" tomorrow 10:30 ", NOON), NOON + 86400);
  ck_assert_int_eq (moment_of ("yesterday 10:30", NOON), NOON - 86400);
  ck_assert_int_eq (moment_of ("2025-11-24T16:30:00Z", 0), NOON);
  ck_assert_int_eq (moment_of ("1764001800", 0), NOON);
}
END_TEST

/* It is the next day already where UTC is, but not in the shop. */
START_TEST (today_is_the_shops)
{
  ck_assert_int_eq (moment_of ("today 10:30", LATE), NOON);
}
END_TEST

START_TEST (what_is_no_moment_is_refused)
{
  static const char *const wrong[] = {
    "",   "noon",  "2025-02-29 10:30", "2025-11-24 24:00", "2025-11-24 10:60", "2025-11-24", "10:5",
    "-1", "today", "10:30:00",         "x y z 10:30"
  };
  g_autoptr (UnsootShopRow) shop = new_shop ();

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (GError) error = NULL;
      gint64 at = 7;
      gboolean read = unsoot_when_moment (shop, NOON, wrong[i], &at, &error);

      ck_assert_msg (!read, "“%s” was read as %" G_GINT64_FORMAT, wrong[i], at);
      ck_assert_ptr_nonnull (strstr (error->message, wrong[i]));
    }
}
END_TEST

START_TEST (a_day_is_the_shops)
{
  g_autoptr (UnsootShopRow) shop = new_shop ();
  g_autofree char *today = unsoot_when_date (shop, LATE, "today", NULL);
  g_autofree char *tomorrow = unsoot_when_date (shop, LATE, "tomorrow", NULL);
  g_autofree char *leap = unsoot_when_date (shop, LATE, "2024-02-29", NULL);
  g_autoptr (GError) error = NULL;

  ck_assert_str_eq (today, "2025-11-24");
  ck_assert_str_eq (tomorrow, "2025-11-25");
  ck_assert_str_eq (leap, "2024-02-29");
  ck_assert_ptr_null (unsoot_when_date (shop, LATE, "2025-02-29", &error));
  ck_assert_ptr_nonnull (strstr (error->message, "2025-02-29"));
}
END_TEST

START_TEST (moments_are_told_with_their_zone)
{
  g_autoptr (UnsootShopRow) shop = new_shop ();
  g_autofree char *iso = unsoot_when_iso (shop, NOON);
  g_autofree char *words = unsoot_when_words (shop, LATE);
  g_autofree char *day = unsoot_when_day_words ("2025-11-24");
  g_autofree char *no_day = unsoot_when_day_words ("soon");

  ck_assert_str_eq (iso, "2025-11-24T10:30:00-06:00");
  ck_assert_str_eq (words, "24 Nov 2025 23:59");
  ck_assert_str_eq (day, "24 Nov 2025");
  ck_assert_str_eq (no_day, "soon");
  ck_assert_ptr_null (unsoot_when_iso (shop, 0));
  ck_assert_ptr_null (unsoot_when_words (shop, 0));
}
END_TEST

static Suite *
when_suite (void)
{
  Suite *suite = suite_create ("when");
  TCase *tcase = tcase_create ("when");

  tcase_add_test (tcase, a_moment_is_by_the_shops_clock);
  tcase_add_test (tcase, today_is_the_shops);
  tcase_add_test (tcase, what_is_no_moment_is_refused);
  tcase_add_test (tcase, a_day_is_the_shops);
  tcase_add_test (tcase, moments_are_told_with_their_zone);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (when_suite)
