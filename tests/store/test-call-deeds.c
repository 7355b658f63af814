/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Calls: what is noted, who may, what is refused, and where it is read again. */
#include "shop-fixture.h"

#include "adapters.h"
#include "calls.h"
#include "invoices.h"

static gint64
note (TestShop *shop, gint64 seconds, const char *about, gint64 record, const char *said)
{
  const UnsootActing who = test_as (shop->advisor, seconds);
  GError *error = NULL;
  const gint64 id
      = unsoot_phone_call_note (shop->db, &who, about, record, "Dana", said, NULL, &error);

  ck_no_error (error);
  ck_assert_int_ne (id, 0);
  return id;
}

/* "first|second": what is read on that page, in its order. */
static char *
read_on (TestShop *shop, const char *page, gint64 id)
{
  GError *error = NULL;
  g_autoptr (GPtrArray) calls = unsoot_calls_shown_on (shop->db, page, id, &error);
  g_autoptr (GString) said = g_string_new (NULL);

  ck_no_error (error);
  for (guint i = 0; i < calls->len; i++)
    {
      const UnsootCallLine *line = calls->pdata[i];
      g_string_append_printf (said, "%s%s", i > 0 ? "|" : "", line->row->said);
    }
  return g_strdup (said->str);
}

#define ck_read_on(shop, page, id, wanted)                                                         \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autofree char *said = read_on (shop, page, id);                                              \
    ck_assert_str_eq (said, wanted);                                                               \
  }                                                                                                \
  G_STMT_END

START_TEST (what_is_noted)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  const UnsootActing who = test_as (shop->advisor, 60);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  ck_assert_int_ne (
      unsoot_phone_call_note (shop->db, &who, "job", job, "  ", "No answer", "2025-11-18", &error),
      0);
  ck_no_error (error);
  ck_ask (shop, "SELECT count (*) FROM calls WHERE spoke_with IS NULL AND said = 'No answer'", 1);
  ck_ask_text (shop, "SELECT again_on FROM calls", "2025-11-18");
  ck_assert_int_eq (test_ask (shop, "SELECT at FROM calls"), SHOP_NOW + 60);
  ck_assert_int_eq (test_ask (shop, "SELECT staff_id FROM calls"), shop->advisor);
  ck_assert_int_eq (test_ask (shop, "SELECT customer_id FROM calls"), shop->person);
}
END_TEST

START_TEST (what_is_refused)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  const UnsootActing advisor = test_as (shop->advisor, 0);
  const UnsootActing technician = test_as (shop->technician, 0);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  ck_assert_int_eq (
      unsoot_phone_call_note (shop->db, &advisor, "job", job, NULL, " ", NULL, &error), 0);
  ck_invalid (error, "Note what was said");
  ck_assert_int_eq (
      unsoot_phone_call_note (shop->db, &advisor, "job", job, NULL, "Later", "2025-11-17", &error),
      0);
  ck_invalid (error, "2025-11-17");
  ck_assert_int_eq (
      unsoot_phone_call_note (shop->db, &advisor, "weather", 1, NULL, "Rain", NULL, &error), 0);
  ck_invalid (error, "weather");
  ck_assert_int_eq (
      unsoot_phone_call_note (shop->db, &technician, "job", job, NULL, "Hello", NULL, &error), 0);
  ck_not_allowed (error, "technician");
  ck_ask (shop, "SELECT count (*) FROM calls", 0);
}
END_TEST

/* A posting: what is taken back stays in the book and counts no more. */
START_TEST (taken_back_it_stays_in_the_book)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  const UnsootActing who = test_as (shop->advisor, 90);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);
  gint64 call = note (shop, 0, "job", job, "A slip");

  ck_assert (unsoot_phone_call_take_back (shop->db, &who, call, &error));
  ck_no_error (error);
  ck_read_on (shop, "job", job, "");
  ck_ask (shop, "SELECT count (*) FROM calls WHERE said = 'A slip'", 2);
  ck_assert_int_eq (test_ask (shop, "SELECT max (reverses_id) FROM calls"), call);
  ck_assert (!unsoot_phone_call_take_back (shop->db, &who, call, &error));
  ck_constraint (error, "taken back already");
  ck_ask (shop, "SELECT count (*) FROM calls", 2);
}
END_TEST

START_TEST (where_it_is_read_again)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  const UnsootActing advisor = test_as (shop->advisor, 0);
  const UnsootActing clerk = test_as (shop->clerk, 0);
  UnsootLoanRow loan = { .item_id = shop->intake_adapter,
                         .to_kind = (char *) "shop",
                         .to_name = (char *) "Osier Garage",
                         .due_on = (char *) "2025-11-20" };
  GError *error = NULL;
  gint64 job = test_done (shop, shop->vehicle, NULL);
  gint64 other = test_quote (shop, shop->exempt_vehicle, NULL);
  gint64 invoice = unsoot_job_invoice (shop->db, &advisor, job, &error);

  ck_no_error (error);
  ck_assert (unsoot_adapter_lend (shop->db, &clerk, &loan, &error));
  note (shop, 10, "vehicle", shop->vehicle, "due in spring");
  note (shop, 20, "job", job, "about the estimate");
  note (shop, 30, "invoice", invoice, "pays on Friday");
  note (shop, 40, "job", other, "about another");
  note (shop, 50, "loan", test_ask (shop, "SELECT max (id) FROM loans"), "brings it tomorrow");

  ck_read_on (shop, "job", job, "pays on Friday|about the estimate");
  ck_read_on (shop, "job", other, "about another");
  ck_read_on (shop, "invoice", invoice, "pays on Friday");
  ck_read_on (shop, "vehicle", shop->vehicle, "pays on Friday|about the estimate|due in spring");
  ck_read_on (shop, "adapter", shop->intake_adapter, "brings it tomorrow");
  ck_read_on (shop, "adapter", shop->fuel_adapter, "");
}
END_TEST

static Suite *
call_deeds_suite (void)
{
  Suite *suite = suite_create ("call deeds");
  TCase *tcase = tcase_create ("calls");

  tcase_add_test (tcase, what_is_noted);
  tcase_add_test (tcase, what_is_refused);
  tcase_add_test (tcase, taken_back_it_stays_in_the_book);
  tcase_add_test (tcase, where_it_is_read_again);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (call_deeds_suite)
