/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include <string.h>

#include "contact.h"
#include "trade-error.h"

START_TEST (phones)
{
  /* ITU-T E.164: at most 15 digits; 555-01xx is kept for invented numbers. */
  static const char *const good[]
      = { "555-0142",    "(406) 555-0142",   "+1 406 555 0142 x12", "406.555.0142 Ext. 7",
          "555-0142 #3", "+123456789012345", " +1 406 555 0142 ",   "",
          "  " };
  static const char *const bad[]
      = { "12345",        "1234567890123456", "call me",      "555-0142 x",
          "555+0142999",  "++14065550142",    "555-O142",     "555-0142 ext",
          "555-0142 xx1", "555-0142 e1",      "555-0142 x1a", " ++4065550142" };

  for (gsize i = 0; i < G_N_ELEMENTS (good); i++)
    ck_assert_msg (unsoot_phone_check (good[i], NULL), "%s", good[i]);
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;

      ck_assert_msg (!unsoot_phone_check (bad[i], &error), "%s", bad[i]);
      ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID));
      ck_assert_ptr_nonnull (strstr (error->message, bad[i]));
    }
  ck_assert (unsoot_phone_check (NULL, NULL));
}
END_TEST

START_TEST (damaged_text_can_be_shown)
{
  g_autoptr (GError) error = NULL;

  ck_assert (!unsoot_phone_check ("555-01\xff", &error));
  ck_assert (g_utf8_validate (error->message, -1, NULL));
  g_clear_error (&error);
  ck_assert (!unsoot_email_check ("ana\xff@oak.example", &error));
  ck_assert (g_utf8_validate (error->message, -1, NULL));
}
END_TEST

START_TEST (emails)
{
  /* Domains of RFC 2606, lengths of RFC 5321, 4.5.3.1. */
  static const char *const good[]
      = { "mara@osier.example", "m.k+fleet@a-b.example.com", "jörg@osier.example", "" };
  static const char *const bad[]
      = { "mara",          "@osier.example", "mara@osier",     "mara@osier.",  "mara@.example",
          "a b@c.example", "a@b@c.example",  "a..b@c.example", ".a@c.example", "a@c..example",
          "a@c.example,",  "a,b@c.example",  "M <m@c.example>" };
  g_autofree char *long_name = g_strnfill (65, 'a');
  g_autofree char *too_long = g_strconcat (long_name, "@c.example", NULL);
  g_autofree char *just_fits = g_strconcat (long_name + 1, "@c.example", NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (good); i++)
    ck_assert_msg (unsoot_email_check (good[i], NULL), "%s", good[i]);
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;

      ck_assert_msg (!unsoot_email_check (bad[i], &error), "%s", bad[i]);
      ck_assert_ptr_nonnull (strstr (error->message, bad[i]));
    }
  ck_assert (!unsoot_email_check (too_long, NULL));
  ck_assert (unsoot_email_check (just_fits, NULL));
}
END_TEST

START_TEST (purchase_orders)
{
  g_autoptr (GError) error = NULL;

  ck_assert (unsoot_po_number_check (NULL, FALSE, "Osier Haulage", &error));
  ck_assert (unsoot_po_number_check ("PO 7/2025", TRUE, "Osier Haulage", &error));
  ck_no_error (error);
  ck_assert (!unsoot_po_number_check ("  ", TRUE, "Osier Haulage", &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED));
  ck_assert (g_str_has_prefix (error->message, "Osier Haulage"));
  g_clear_error (&error);
  ck_assert (!unsoot_po_number_check (NULL, TRUE, "Osier Haulage", &error));
}
END_TEST

START_TEST (plates)
{
  g_autofree char *spaced = unsoot_plate_normalise ("  7kd\t 204 ");
  g_autofree char *dashed = unsoot_plate_normalise ("hä-x 12");

  ck_assert_str_eq (spaced, "7KD 204");
  ck_assert_str_eq (dashed, "HÄ-X 12");
  ck_assert_ptr_null (unsoot_plate_normalise ("7\xff"));
}
END_TEST

static Suite *
contact_suite (void)
{
  Suite *suite = suite_create ("contact");
  TCase *tcase = tcase_create ("typed");

  tcase_add_test (tcase, phones);
  tcase_add_test (tcase, damaged_text_can_be_shown);
  tcase_add_test (tcase, emails);
  tcase_add_test (tcase, purchase_orders);
  tcase_add_test (tcase, plates);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (contact_suite)
