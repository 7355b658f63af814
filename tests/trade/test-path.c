/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "path.h"
#include "trade-error.h"

#define N_STATUSES (UNSOOT_JOB_STOPPED + 1)

START_TEST (the_path_from_end_to_end)
{
  for (int s = UNSOOT_JOB_QUOTED; s < UNSOOT_JOB_PAID; s++)
    {
      gsize n = 0;
      const UnsootPathMove *next = unsoot_path_next ((UnsootJobStatus) s, &n);

      ck_assert (unsoot_path_may ((UnsootJobStatus) s, (UnsootJobStatus) (s + 1)));
      ck_assert_msg ((int) next[0].to == s + 1, "the usual move from %d comes first", s);
      ck_assert_int_eq (unsoot_path_position ((UnsootJobStatus) s), s);
    }
  ck_assert_int_eq (unsoot_path_position (UNSOOT_JOB_PAID), 6);
  ck_assert_int_eq (unsoot_path_position (UNSOOT_JOB_STOPPED), -1);
  ck_assert_int_eq (unsoot_path_position (UNSOOT_JOB_DECLINED), -1);
}
END_TEST

START_TEST (nothing_is_skipped)
{
  for (int from = UNSOOT_JOB_QUOTED; from <= UNSOOT_JOB_PAID; from++)
    for (int to = from + 2; to <= UNSOOT_JOB_PAID; to++)
      ck_assert_msg (!unsoot_path_may ((UnsootJobStatus) from, (UnsootJobStatus) to), "%d to %d",
                     from, to);
}
END_TEST

START_TEST (an_engine_in_pieces_goes_back_to_the_bay_only)
{
  for (int to = 0; to < N_STATUSES; to++)
    ck_assert (unsoot_path_may (UNSOOT_JOB_STOPPED, (UnsootJobStatus) to)
               == (to == UNSOOT_JOB_IN_BAY));
}
END_TEST

START_TEST (a_billed_job_is_never_cancelled)
{
  ck_assert (!unsoot_path_may (UNSOOT_JOB_DONE, UNSOOT_JOB_CANCELLED));
  ck_assert (!unsoot_path_may (UNSOOT_JOB_INVOICED, UNSOOT_JOB_CANCELLED));
  ck_assert (!unsoot_path_may (UNSOOT_JOB_PAID, UNSOOT_JOB_CANCELLED));
  ck_assert (!unsoot_path_may (UNSOOT_JOB_PAID, UNSOOT_JOB_DONE));
  ck_assert (unsoot_path_may (UNSOOT_JOB_INVOICED, UNSOOT_JOB_DONE));
}
END_TEST

START_TEST (the_list_and_the_question_agree)
{
  for (int from = 0; from < N_STATUSES; from++)
    {
      gsize n = 0;
      gsize allowed = 0;
      const UnsootPathMove *next = unsoot_path_next ((UnsootJobStatus) from, &n);

      for (int to = 0; to < N_STATUSES; to++)
        allowed += unsoot_path_may ((UnsootJobStatus) from, (UnsootJobStatus) to) ? 1 : 0;
      ck_assert_uint_eq (n, allowed);
      for (gsize i = 0; i < n; i++)
        {
          ck_assert (unsoot_path_may ((UnsootJobStatus) from, next[i].to));
          ck_assert_str_ne (unsoot_path_verb (&next[i]), "");
        }
    }
}
END_TEST

START_TEST (the_sentence_of_a_refusal)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *same = unsoot_path_refusal (UNSOOT_JOB_BOOKED, UNSOOT_JOB_BOOKED);

  ck_assert (!unsoot_path_check (UNSOOT_JOB_QUOTED, UNSOOT_JOB_PAID, &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED));
  ck_assert_str_eq (error->message, "A job that stands at “Quoted” can't go to “Paid”; it can go "
                                    "to “Booked”, “Declined”, “Cancelled”");
  ck_assert_str_eq (same, "The job already stands at “Booked”");
  ck_assert_ptr_null (unsoot_path_refusal (UNSOOT_JOB_QUOTED, UNSOOT_JOB_BOOKED));
}
END_TEST

START_TEST (slugs_both_ways)
{
  UnsootJobStatus status = UNSOOT_JOB_QUOTED;

  for (int s = 0; s < N_STATUSES; s++)
    {
      ck_assert (unsoot_job_status_find (unsoot_job_status_slug ((UnsootJobStatus) s), &status));
      ck_assert_int_eq (status, s);
    }
  ck_assert (unsoot_job_status_find ("in-bay", &status));
  ck_assert_str_eq (unsoot_job_status_words (status), "In bay");
  ck_assert (!unsoot_job_status_find ("open", &status));
}
END_TEST

static Suite *
path_suite (void)
{
  Suite *suite = suite_create ("path");
  TCase *tcase = tcase_create ("moves");

  tcase_add_test (tcase, the_path_from_end_to_end);
  tcase_add_test (tcase, nothing_is_skipped);
  tcase_add_test (tcase, an_engine_in_pieces_goes_back_to_the_bay_only);
  tcase_add_test (tcase, a_billed_job_is_never_cancelled);
  tcase_add_test (tcase, the_list_and_the_question_agree);
  tcase_add_test (tcase, the_sentence_of_a_refusal);
  tcase_add_test (tcase, slugs_both_ways);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (path_suite)
