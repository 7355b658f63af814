/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The one way in: which papers there are, what they are called, what they refuse. */
#include "paper.h"

#include <string.h>

#include "paper-fixture.h"
#include "paper-probe.h"
#include "suite.h"

static void
replace (char **text, const char *with)
{
  g_free (*text);
  *text = g_strdup (with);
}

START_TEST (every_paper_has_a_slug_and_a_name)
{
  for (int i = 0; i < UNSOOT_PAPERS; i++)
    {
      UnsootPaper paper = UNSOOT_PAPER_INCOMPLETE_TAG;

      ck_assert (unsoot_paper_find (unsoot_paper_slug ((UnsootPaper) i), &paper));
      ck_assert_int_eq (paper, i);
      ck_assert_ptr_nonnull (unsoot_paper_title ((UnsootPaper) i));
    }
  ck_assert (!unsoot_paper_find ("label", NULL));
}
END_TEST

START_TEST (files_are_named_for_what_they_are)
{
  g_autoptr (UnsootJobFile) file = paper_fixture_long ();
  const struct
  {
    UnsootPaper paper;
    int invoice; /* -1: the latest */
    const char *name;
  } cases[] = {
    { UNSOOT_PAPER_ESTIMATE, -1, "estimate-119.pdf" },
    { UNSOOT_PAPER_WORK_ORDER, -1, "work-order-2417.pdf" },
    { UNSOOT_PAPER_INVOICE, 0, "invoice-1031.pdf" },
    { UNSOOT_PAPER_INVOICE, -1, "credit-note-1032.pdf" },
    { UNSOOT_PAPER_CUSTOMER_REPORT, -1, "customer-report-2417.pdf" },
    { UNSOOT_PAPER_INCOMPLETE_TAG, -1, "incomplete-tag-2417.pdf" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const UnsootInvoiceFile *invoice
          = cases[i].invoice >= 0 ? g_ptr_array_index (file->invoices, (guint) cases[i].invoice)
                                  : NULL;
      g_autofree char *name = unsoot_paper_file_name (cases[i].paper, file, invoice);
      ck_assert_str_eq (name, cases[i].name);
    }
}
END_TEST

static void
refuses (UnsootPaper paper, const UnsootJobFile *file, const char *sentence)
{
  GError *error = NULL;
  GBytes *pdf = unsoot_paper_make (paper, file, UNSOOT_PAPER_A4, NULL, NULL, &error);

  ck_assert_ptr_null (pdf);
  ck_assert (g_error_matches (error, UNSOOT_PAPER_ERROR, UNSOOT_PAPER_ERROR_RECORD));
  ck_assert_msg (strstr (error->message, sentence) != NULL, "%s", error->message);
  g_error_free (error);
}

START_TEST (what_is_not_there_yet_is_refused)
{
  g_autoptr (UnsootJobFile) file = paper_fixture_short ();
  g_autoptr (UnsootJobFile) empty = unsoot_job_file_new ();

  refuses (UNSOOT_PAPER_INVOICE, file, "Job 2417 has not been invoiced yet");
  refuses (UNSOOT_PAPER_CUSTOMER_REPORT, file, "Job 2417 has not been run");
  refuses (UNSOOT_PAPER_INCOMPLETE_TAG, file, "Job 2417 was not released in pieces");
  g_ptr_array_set_size (file->estimates, 0);
  refuses (UNSOOT_PAPER_ESTIMATE, file, "Job 2417 has no estimate yet");
  for (int i = 0; i < UNSOOT_PAPERS; i++)
    if (i != UNSOOT_PAPER_INVOICE)
      refuses ((UnsootPaper) i, empty, "lacks the shop's own name and address");
  g_clear_pointer (&file->vehicle, unsoot_vehicle_row_free);
  refuses (UNSOOT_PAPER_WORK_ORDER, file, "lacks its vehicle");
}
END_TEST

/* The same records twice are the same bytes; another record is other bytes. */
START_TEST (papers_are_the_same_to_the_byte)
{
  g_autoptr (UnsootJobFile) one = paper_fixture_long ();
  g_autoptr (UnsootJobFile) two = paper_fixture_long ();

  one->run->tag = g_strdup ("In the tanks:\n– Fuel tank: empty");
  two->run->tag = g_strdup ("In the tanks:\n– Fuel tank: empty");
  for (int i = 0; i < UNSOOT_PAPERS; i++)
    {
      GError *error = NULL;
      g_autoptr (GBytes) first
          = unsoot_paper_make ((UnsootPaper) i, one, UNSOOT_PAPER_LETTER, NULL, NULL, &error);
      g_autoptr (GBytes) second
          = unsoot_paper_make ((UnsootPaper) i, two, UNSOOT_PAPER_LETTER, NULL, NULL, NULL);
      g_autoptr (GBytes) other = NULL;

      ck_no_error (error);
      ck_assert (g_bytes_equal (first, second));
      replace (&two->shop->phone, "555 0199");
      other = unsoot_paper_make ((UnsootPaper) i, two, UNSOOT_PAPER_LETTER, NULL, NULL, NULL);
      ck_assert (!g_bytes_equal (first, other));
      replace (&two->shop->phone, "555 0142");
    }
}
END_TEST

/* A remark reaches the caller, and the paper is made all the same. */
START_TEST (a_remark_does_not_stop_the_paper)
{
  g_autoptr (UnsootJobFile) file = paper_fixture_short ();
  g_autofree char *remark = NULL;
  g_autoptr (GBytes) pdf = NULL;

  replace (&file->customer->name, "花子");
  pdf = unsoot_paper_make (UNSOOT_PAPER_WORK_ORDER, file, UNSOOT_PAPER_A4, NULL, &remark, NULL);
  ck_assert_ptr_nonnull (pdf);
  probe_is_sound (pdf);
  ck_assert_ptr_nonnull (strstr (remark, "U+5B50"));
  ck_assert_ptr_nonnull (strstr (remark, "U+82B1"));
}
END_TEST

static Suite *
paper_suite (void)
{
  Suite *suite = suite_create ("paper");
  TCase *tests = tcase_create ("paper");

  tcase_add_test (tests, every_paper_has_a_slug_and_a_name);
  tcase_add_test (tests, files_are_named_for_what_they_are);
  tcase_add_test (tests, what_is_not_there_yet_is_refused);
  tcase_add_test (tests, papers_are_the_same_to_the_byte);
  tcase_add_test (tests, a_remark_does_not_stop_the_paper);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (paper_suite)
