/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Nothing runs out of the sheet or over something else, on any paper, in either size. */
#include "printed.h"

#include <math.h>
#include <string.h>

#include "suite.h"

/* Boxes of letters are higher than the letters: only the middle of each counts. */
static gboolean
overprint (const ProbeWord *a, const ProbeWord *b)
{
  const double low = MAX (a->top * 0.8 + a->bottom * 0.2, b->top * 0.8 + b->bottom * 0.2);
  const double high = MIN (a->top * 0.2 + a->bottom * 0.8, b->top * 0.2 + b->bottom * 0.8);

  return a->page == b->page && MIN (a->right, b->right) - MAX (a->left, b->left) > 0.5
         && high - low > 0.2;
}

static void
never_overprints (const Probe *probe)
{
  for (guint i = 0; i < probe->words->len; i++)
    for (guint j = i + 1; j < probe->words->len; j++)
      {
        const ProbeWord *a = g_ptr_array_index (probe->words, i);
        const ProbeWord *b = g_ptr_array_index (probe->words, j);

        if (overprint (a, b))
          ck_abort_msg ("page %u: “%s” over “%s”", a->page, a->text, b->text);
      }
}

/* The lowest line above the foot is no heading: those are of 13 points, at the left margin. */
static void
strands_no_heading (const Probe *probe)
{
  for (guint page = 1; page <= probe->pages; page++)
    {
      const ProbeWord *lowest = NULL;

      for (guint i = 0; i < probe->words->len; i++)
        {
          const ProbeWord *word = g_ptr_array_index (probe->words, i);
          if (word->page == page && word->bottom < probe->height - MARGIN + 4
              && (lowest == NULL || word->top > lowest->top + 1))
            lowest = word;
        }
      ck_assert_ptr_nonnull (lowest);
      ck_assert_msg (fabs ((lowest->bottom - lowest->top) / 1.362 - 13) > 0.3
                         || lowest->left > MARGIN + 1,
                     "page %u ends with “%s”", page, lowest->text);
    }
}

static void
numbers_its_pages (GBytes *pdf, guint pages)
{
  for (guint page = 1; page <= pages; page++)
    {
      g_autofree char *text = probe_text (pdf, page);
      g_autofree char *count = g_strdup_printf ("Page %u of %u", page, pages);

      printed_has (text, count);
      printed_has (text, "Larkmoor Diesel Cleaning");
      if (page > 1)
        printed_has (text, "plate 7KD 204");
    }
}

static void
check_layout (GBytes *pdf)
{
  g_autoptr (Probe) probe = probe_words (pdf);

  probe_is_sound (pdf);
  printed_stays_on_the_sheet (probe);
  never_overprints (probe);
  strands_no_heading (probe);
  numbers_its_pages (pdf, probe->pages);
}

START_TEST (every_paper_keeps_to_its_sheet)
{
  for (int size = UNSOOT_PAPER_LETTER; size <= UNSOOT_PAPER_A4; size++)
    {
      g_autoptr (GBytes) pdf = printed_make ((UnsootPaper) _i, (UnsootPaperSize) size, -1);
      check_layout (pdf);
    }
}
END_TEST
START_TEST (short_papers_keep_to_their_sheet)
{
  static const UnsootPaper papers[] = { UNSOOT_PAPER_ESTIMATE, UNSOOT_PAPER_WORK_ORDER };

  unsoot_job_file_free (printed_job);
  printed_job = paper_fixture_short ();
  for (gsize i = 0; i < G_N_ELEMENTS (papers); i++)
    for (int size = UNSOOT_PAPER_LETTER; size <= UNSOOT_PAPER_A4; size++)
      {
        g_autoptr (GBytes) pdf = printed_make (papers[i], (UnsootPaperSize) size, -1);
        check_layout (pdf);
      }
}
END_TEST
/* A job with as little as a job can have is printed too. */
START_TEST (bare_jobs_print)
{
  g_autoptr (GBytes) pdf = NULL;

  unsoot_job_file_free (printed_job);
  printed_job = unsoot_job_file_new ();
  printed_job->shop = unsoot_shop_row_new ();
  printed_job->shop->name = g_strdup ("Larkmoor Diesel Cleaning");
  printed_job->shop->currency = g_strdup ("USD");
  printed_job->job = unsoot_job_row_new ();
  printed_job->job->number = 1;
  printed_job->customer = unsoot_customer_row_new ();
  printed_job->vehicle = unsoot_vehicle_row_new ();
  pdf = printed_make (UNSOOT_PAPER_WORK_ORDER, UNSOOT_PAPER_A4, -1);
  probe_is_sound (pdf);
}
END_TEST
static Suite *
paper_layout_suite (void)
{
  Suite *suite = suite_create ("paper-layout");
  TCase *tests = tcase_create ("pages");

  tcase_add_checked_fixture (tests, printed_setup, printed_teardown);
  tcase_add_loop_test (tests, every_paper_keeps_to_its_sheet, 0, UNSOOT_PAPERS);
  tcase_add_test (tests, short_papers_keep_to_their_sheet);
  tcase_add_test (tests, bare_jobs_print);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (paper_layout_suite)
