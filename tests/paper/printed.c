/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "printed.h"

#include <string.h>

#include "paper-fixture.h"
#include "suite.h"

/* As it is written when a vehicle is released. */
#define TAG                                                                                        \
  "Not as it came in:\n– EGR valve is off.\n– Intake hose at the charge cooler is off.\n"      \
  "In the tanks:\n– Fuel tank: returned, 400 mL\nNext safe step: Drain the charge cooler"

UnsootJobFile *printed_job;

void
printed_setup (void)
{
  printed_job = paper_fixture_long ();
  printed_job->run->tag = g_strdup (TAG);
}

void
printed_teardown (void)
{
  unsoot_job_file_free (printed_job);
}

GBytes *
printed_make (UnsootPaper paper, UnsootPaperSize size, int invoice)
{
  GError *error = NULL;
  g_autofree char *remark = NULL;
  GBytes *pdf = unsoot_paper_make (
      paper, printed_job, size,
      invoice >= 0 ? g_ptr_array_index (printed_job->invoices, (guint) invoice) : NULL, &remark,
      &error);

  ck_no_error (error);
  ck_assert_msg (remark == NULL, "%s", remark);
  return pdf;
}

void
printed_has (const char *text, const char *wanted)
{
  ck_assert_msg (strstr (text, wanted) != NULL, "“%s” is missing", wanted);
}

void
printed_has_all (const char *text, const char *const *wanted)
{
  for (; *wanted != NULL; wanted++)
    printed_has (text, *wanted);
}

/* Every word lies between the margins; only head and foot stand in the upper and lower one. */
void
printed_stays_on_the_sheet (const Probe *probe)
{
  for (guint i = 0; i < probe->words->len; i++)
    {
      const ProbeWord *word = g_ptr_array_index (probe->words, i);
      const gboolean foot = word->top > probe->height - MARGIN;

      ck_assert_msg (word->left > MARGIN - 0.5 && word->right < probe->width - MARGIN + 0.5,
                     "page %u: “%s” from %.1f to %.1f", word->page, word->text, word->left,
                     word->right);
      ck_assert_msg (foot || word->bottom < probe->height - MARGIN + 4,
                     "page %u: “%s” ends at %.1f", word->page, word->text, word->bottom);
    }
}
