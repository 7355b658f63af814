/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "role.h"
#include "trade-error.h"

static gboolean
may (const char *role_slug, const char *deed_slug)
{
  UnsootRole role = UNSOOT_ROLE_OWNER;
  UnsootDeed deed = UNSOOT_DEED_RESTORE;

  ck_assert_msg (unsoot_role_find (role_slug, &role), "%s", role_slug);
  ck_assert_msg (unsoot_deed_find (deed_slug, &deed), "%s", deed_slug);
  return unsoot_role_may (role, deed);
}

START_TEST (who_does_what)
{
  /* How the shop shares the work: the advisor books, quotes and invoices; the clerk has fluids, orders and
     adapters; the technician runs the job; the lead edits the shop's procedures and doses; the
     owner reads the results. */
  ck_assert (may ("advisor", "book") && may ("advisor", "invoice"));
  ck_assert (!may ("advisor", "run-step") && !may ("advisor", "finish"));
  ck_assert (may ("clerk", "order") && may ("clerk", "lend-adapter"));
  ck_assert (!may ("clerk", "finish") && !may ("clerk", "invoice"));
  ck_assert (may ("technician", "run-step") && may ("technician", "record-reading"));
  ck_assert (!may ("technician", "edit-procedure") && !may ("technician", "enter-dose"));
  ck_assert (may ("lead", "edit-procedure") && may ("lead", "edit-dose-rule"));
  ck_assert (!may ("lead", "read-figures") && !may ("lead", "edit-staff"));
  ck_assert (may ("owner", "read-figures") && may ("owner", "restore"));
}
END_TEST

START_TEST (everyone_can_stop_a_run)
{
  for (int role = UNSOOT_ROLE_ADVISOR; role <= UNSOOT_ROLE_OWNER; role++)
    ck_assert (unsoot_role_may ((UnsootRole) role, UNSOOT_DEED_HALT));
}
END_TEST

START_TEST (a_lead_can_do_what_a_technician_can_and_an_owner_everything)
{
  for (int d = 0; d < UNSOOT_N_DEEDS; d++)
    {
      UnsootDeed deed = (UnsootDeed) d;

      ck_assert (unsoot_role_may (UNSOOT_ROLE_OWNER, deed));
      if (unsoot_role_may (UNSOOT_ROLE_TECHNICIAN, deed))
        ck_assert (unsoot_role_may (UNSOOT_ROLE_LEAD, deed));
    }
}
END_TEST

START_TEST (whoever_is_asked_may_do_it)
{
  for (int d = 0; d < UNSOOT_N_DEEDS; d++)
    for (int r = UNSOOT_ROLE_ADVISOR; r <= UNSOOT_ROLE_OWNER; r++)
      {
        g_autofree char *refusal = unsoot_role_refusal ((UnsootRole) r, (UnsootDeed) d);
        UnsootRole asked = UNSOOT_ROLE_OWNER;

        if (refusal == NULL)
          continue;
        if (g_str_has_suffix (refusal, "ask a service advisor"))
          asked = UNSOOT_ROLE_ADVISOR;
        else if (g_str_has_suffix (refusal, "ask a parts clerk"))
          asked = UNSOOT_ROLE_CLERK;
        else if (g_str_has_suffix (refusal, "ask a technician"))
          asked = UNSOOT_ROLE_TECHNICIAN;
        else if (g_str_has_suffix (refusal, "ask the lead technician"))
          asked = UNSOOT_ROLE_LEAD;
        else
          ck_assert (g_str_has_suffix (refusal, "ask the shop owner"));
        ck_assert_msg (unsoot_role_may (asked, (UnsootDeed) d), "%s", refusal);
      }
}
END_TEST

START_TEST (the_sentence_of_a_refusal)
{
  g_autoptr (GError) error = NULL;

  ck_assert (!unsoot_role_check (UNSOOT_ROLE_CLERK, UNSOOT_DEED_FINISH, &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED));
  ck_assert_str_eq (error->message, "A parts clerk can't sign a job off; ask a technician");
  g_clear_error (&error);
  ck_assert (unsoot_role_check (UNSOOT_ROLE_TECHNICIAN, UNSOOT_DEED_FINISH, &error));
  ck_no_error (error);
  ck_assert_ptr_null (unsoot_role_refusal (UNSOOT_ROLE_TECHNICIAN, UNSOOT_DEED_FINISH));
}
END_TEST

START_TEST (slugs_both_ways)
{
  g_autoptr (GError) error = NULL;
  UnsootRole role = UNSOOT_ROLE_OWNER;

  for (int d = 0; d < UNSOOT_N_DEEDS; d++)
    {
      UnsootDeed back = UNSOOT_DEED_ESTIMATE;

      ck_assert (unsoot_deed_find (unsoot_deed_slug ((UnsootDeed) d), &back));
      ck_assert_int_eq (back, d);
      ck_assert_ptr_nonnull (unsoot_deed_words ((UnsootDeed) d));
    }
  ck_assert (unsoot_role_parse ("Lead", &role, &error));
  ck_assert_int_eq (role, UNSOOT_ROLE_LEAD);
  ck_assert_str_eq (unsoot_role_words (role), "Lead technician");
  ck_assert (!unsoot_role_parse ("boss", &role, &error));
  ck_assert_ptr_nonnull (error);
}
END_TEST

static Suite *
role_suite (void)
{
  Suite *suite = suite_create ("role");
  TCase *tcase = tcase_create ("rights");

  tcase_add_test (tcase, who_does_what);
  tcase_add_test (tcase, everyone_can_stop_a_run);
  tcase_add_test (tcase, a_lead_can_do_what_a_technician_can_and_an_owner_everything);
  tcase_add_test (tcase, whoever_is_asked_may_do_it);
  tcase_add_test (tcase, the_sentence_of_a_refusal);
  tcase_add_test (tcase, slugs_both_ways);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (role_suite)
