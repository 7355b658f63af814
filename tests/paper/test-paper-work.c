/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Work order, report and tag as poppler reads them. */
#include "printed.h"

#include <string.h>

#include "caution.h"
#include "first-drive.h"
#include "stop-page.h"
#include "suite.h"

START_TEST (the_work_order_says_it_all)
{
  static const char *const wanted[] = {
    "Work order 2417",
    "14 Nov 2026 08:30–10:10",
    "Bay 2",
    "Cart B",
    "Odalys Brennan",
    "Fuel and intake, adapter at the valve, version 3",
    "Heron Fuel Cleaner (H)",
    "Lot HN-4471, good until 31 Aug 2027",
    "Supply pressure while running: 6.0 to 10.0 psi",
    "F-02/1",
    "V-07/2",
    "A11",
    "H-19",
    "none chosen",
    "Charge cooler pipe, 76 mm",
    "O-ring",
    "Danger",
    "H226 Flammable liquid and vapour",
    "H304 May be fatal if swallowed and enters airways",
    "H411 Toxic to aquatic life with long lasting effects",
    "UN 1993",
    "safety data sheet of 1 Feb 2026",
    "Smoke meter SM-2",
    "Engine speed",
    "until 50 % of the dose is used: 500 mL",
    "40.0 psi",
    "at most 22.5 min",
    "or until the low level",
    "Phase 3 · Intake side, through the valve",
    "Sign-off",
    NULL,
  };
  g_autoptr (GBytes) pdf = printed_make (UNSOOT_PAPER_WORK_ORDER, UNSOOT_PAPER_LETTER, -1);
  g_autofree char *text = probe_text (pdf, 0);

  printed_has_all (text, wanted);
  for (int bit = 0; bit < UNSOOT_CAUTIONS; bit++)
    printed_has (text, unsoot_caution_text ((UnsootCaution) (1 << bit)));
}
END_TEST
START_TEST (the_work_order_says_what_stop_asks_for)
{
  g_autoptr (GBytes) pdf = printed_make (UNSOOT_PAPER_WORK_ORDER, UNSOOT_PAPER_LETTER, -1);
  g_autofree char *text = probe_text (pdf, 0);
  static const UnsootStopPage pages[]
      = { UNSOOT_STOP_PAGE_RUNAWAY, UNSOOT_STOP_PAGE_LEAK, UNSOOT_STOP_PAGE_STALLED };
  const char *line;

  for (gsize page = 0; page < G_N_ELEMENTS (pages); page++)
    {
      for (guint i = 0; (line = unsoot_stop_line (pages[page], i)) != NULL; i++)
        printed_has (text, line);
      printed_has (text, unsoot_stop_never (pages[page]));
    }
  for (guint i = 0; (line = unsoot_lock_line (i)) != NULL; i++)
    printed_has (text, line);
}
END_TEST
/* Wording and reason of each of the 60 steps stand whole on one page, in order, with the value
 * that was entered; a phase's cautions stand above its first step, on the same page. */
START_TEST (steps_are_whole_and_in_order)
{
  g_autoptr (GBytes) pdf = printed_make (UNSOOT_PAPER_WORK_ORDER, (UnsootPaperSize) _i, -1);
  g_autoptr (Probe) probe = probe_words (pdf);
  guint page = 1;
  g_autofree char *text = probe_text (pdf, page);

  for (guint i = 0; i < printed_job->steps->len; i++)
    {
      const UnsootStepRow *step = g_ptr_array_index (printed_job->steps, i);

      while (strstr (text, step->wording) == NULL)
        {
          ck_assert_msg (++page <= probe->pages, "step %u: %s", i, step->wording);
          g_free (text);
          text = probe_text (pdf, page);
        }
      if (step->why != NULL)
        printed_has (text, step->why);
      printed_has (text, "Time, initials");
    }
}
END_TEST
START_TEST (cautions_stand_with_the_first_step)
{
  g_autoptr (GBytes) pdf = printed_make (UNSOOT_PAPER_WORK_ORDER, (UnsootPaperSize) _i, -1);
  g_autoptr (Probe) probe = probe_words (pdf);
  guint found = 0;

  for (guint page = 1; page <= probe->pages; page++)
    {
      g_autofree char *text = probe_text (pdf, page);

      if (strstr (text, "Phase 3 ·") == NULL)
        continue;
      found++;
      printed_has (text, "Goggles and gloves on");
      printed_has (text, "Step 20 wording");
    }
  ck_assert_uint_eq (found, 1);
}
END_TEST
/* A step that sets the supply's pressure says the family's window in its own unit, and its
 * target where the wording does not: 6 and 10 psi are 0.41 and 0.69 bar (NIST SP 811). */
START_TEST (a_pressure_step_says_its_window)
{
  UnsootStepRow *step = g_ptr_array_index (printed_job->steps, 1);
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *text = NULL;

  g_free (step->act);
  step->act = g_strdup ("set");
  g_free (step->subject);
  step->subject = g_strdup ("pressure");
  step->unit = g_strdup ("bar");
  step->value = 55000;
  g_free (step->wording);
  step->wording = g_strdup ("Set the supply to 0.55 bar");
  pdf = printed_make (UNSOOT_PAPER_WORK_ORDER, UNSOOT_PAPER_LETTER, -1);
  text = probe_text (pdf, 0);
  printed_has (text, "window 0.41 to 0.69 bar");
  ck_assert_ptr_eq (strstr (text, "0.55"), g_strrstr (text, "0.55"));
}
END_TEST

static double
left_of_word (const Probe *probe, const char *text)
{
  for (guint i = 0; i < probe->words->len; i++)
    {
      const ProbeWord *word = g_ptr_array_index (probe->words, i);
      if (g_str_equal (word->text, text))
        return word->left;
    }
  ck_abort_msg ("“%s” is missing", text);
}

/* A line of reasons for each side stands in that side's panel: fuel left, intake right. */
START_TEST (doses_are_reasoned_side_by_side)
{
  g_autoptr (GBytes) pdf = NULL;
  g_autoptr (Probe) probe = NULL;

  g_free (printed_job->job->dose_reason);
  printed_job->job->dose_reason = g_strdup ("1 L: class 2b, ¾-ton\n2 L: the family's own");
  pdf = printed_make (UNSOOT_PAPER_WORK_ORDER, UNSOOT_PAPER_LETTER, -1);
  probe = probe_words (pdf);
  ck_assert (left_of_word (probe, "¾-ton") < probe->width / 2);
  ck_assert (left_of_word (probe, "family's") > probe->width / 2);
}
END_TEST

START_TEST (a_stopped_procedure_is_said_first)
{
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *text = NULL;

  printed_job->procedure->stop_reason = g_strdup ("The wand chafes the valve seat");
  pdf = printed_make (UNSOOT_PAPER_WORK_ORDER, UNSOOT_PAPER_A4, -1);
  text = probe_text (pdf, 1);
  printed_has (text, "Don't run this procedure");
  printed_has (text, "The wand chafes the valve seat");
}
END_TEST
START_TEST (the_report_says_it_all)
{
  static const char *const wanted[] = {
    "Service report 2417",
    "14 Nov 2026 08:40–10:05",
    "Cleaned with 1 L of Heron Fuel Cleaner, lot HN-4471",
    "Cleaned with 1.96 L of Rook Intake Cleaner, lot RK-0209",
    "Put everything back",
    "not done",
    "Smoke opacity: 38.0 % before, 14.0 % after. Better",
    "Air flow at idle: 18.5 g/s before, 18.9 g/s after. No change shown",
    "Boost under load: 16.0 psi before, 18.3 psi after. Not comparable. The engine speed was",
    "DPF pressure difference: 5.2 kPa before, not measured after. It shows no change.",
    "Smoke meter SM-2, ± 1.50 %",
    "What these readings can't show",
    "EGR valve, from the manifold, before",
    "Throttle body, after",
    "EGR cooler, inlet, after",
    "No picture was taken",
    "14 Nov 2027 or at 145 000 mi, whichever comes first",
    "12 months or 25 000 mi, the shop's interval",
    "Questions: ask for Mara",
    NULL,
  };
  g_autoptr (GBytes) pdf = printed_make (UNSOOT_PAPER_CUSTOMER_REPORT, UNSOOT_PAPER_LETTER, -1);
  g_autofree char *text = probe_text (pdf, 0);
  const char *line;

  printed_has_all (text, wanted);
  for (guint i = 0; (line = unsoot_first_drive_line (i)) != NULL; i++)
    printed_has (text, line);
}
END_TEST
START_TEST (a_damaged_photo_is_said_in_its_place)
{
  UnsootPhotoRow *photo = g_ptr_array_index (printed_job->photos, 1);
  g_autofree char *remark = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GBytes) pdf = NULL;

  g_bytes_unref (photo->jpeg);
  photo->jpeg = g_bytes_new_static ("\xFF\xD8\xFF\xE0 broken", 11);
  pdf = unsoot_paper_make (UNSOOT_PAPER_CUSTOMER_REPORT, printed_job, UNSOOT_PAPER_A4, NULL,
                           &remark, NULL);
  probe_is_sound (pdf);
  text = probe_text (pdf, 0);
  printed_has (remark, "“EGR valve, from the manifold, after” is damaged");
  printed_has (text, "is damaged and can't be shown");
}
END_TEST
/* One page whatever it says; letters of 20 points and more where there is room: read at two
 * metres by the sign trade's inch for 25 feet. Common practice, no source. */
START_TEST (the_tag_is_one_large_page)
{
  static const char *const wanted[] = { "Do not start",
                                        "plate 7KD 204",
                                        "Not as it came in",
                                        "EGR valve is off.",
                                        "Fuel tank: returned, 400 mL",
                                        "Next safe step",
                                        "Drain the charge cooler",
                                        "Odalys Brennan",
                                        "14 Nov 2026 10:05",
                                        "job 2417",
                                        "Why: waits for a gasket",
                                        NULL };
  UnsootRunEventRow *released
      = g_ptr_array_index (printed_job->run_events, printed_job->run_events->len - 1);
  g_autoptr (GBytes) pdf = NULL;
  g_autoptr (Probe) probe = NULL;
  g_autofree char *text = NULL;
  double warning = 0, item = 0;

  g_free (released->kind);
  released->kind = g_strdup ("released");
  released->text = g_strdup ("waits for a gasket");
  pdf = printed_make (UNSOOT_PAPER_INCOMPLETE_TAG, (UnsootPaperSize) _i, -1);
  probe = probe_words (pdf);
  text = probe_text (pdf, 0);
  printed_has_all (text, wanted);
  ck_assert_uint_eq (probe->pages, 1);
  for (guint i = 0; i < probe->words->len; i++)
    {
      const ProbeWord *word = g_ptr_array_index (probe->words, i);

      /* Noto Sans: the box is 1.362 ems high. */
      if (g_str_equal (word->text, "start"))
        warning = (word->bottom - word->top) / 1.362;
      if (g_str_equal (word->text, "hose"))
        item = (word->bottom - word->top) / 1.362;
    }
  ck_assert_msg (warning > 46, "%f", warning);
  ck_assert_msg (item > 20, "%f", item);
}
END_TEST
START_TEST (a_long_tag_is_still_one_page)
{
  GString *tag = g_string_new ("Not as it came in:");
  g_autoptr (GBytes) pdf = NULL;
  g_autoptr (Probe) probe = NULL;
  g_autofree char *text = NULL;

  for (int i = 0; i < 24; i++)
    g_string_append_printf (tag, "\n– part number %d of the intake side", i);
  g_free (printed_job->run->tag);
  printed_job->run->tag = g_string_free (tag, FALSE);
  pdf = printed_make (UNSOOT_PAPER_INCOMPLETE_TAG, UNSOOT_PAPER_LETTER, -1);
  probe = probe_words (pdf);
  text = probe_text (pdf, 0);
  ck_assert_uint_eq (probe->pages, 1);
  printed_stays_on_the_sheet (probe);
  printed_has (text, "part number 23 of the intake side");
}
END_TEST
static Suite *
paper_work_suite (void)
{
  Suite *suite = suite_create ("paper-work");
  TCase *tests = tcase_create ("pages");

  tcase_add_checked_fixture (tests, printed_setup, printed_teardown);
  tcase_add_test (tests, the_work_order_says_it_all);
  tcase_add_test (tests, the_work_order_says_what_stop_asks_for);
  tcase_add_loop_test (tests, steps_are_whole_and_in_order, 0, 2);
  tcase_add_loop_test (tests, cautions_stand_with_the_first_step, 0, 2);
  tcase_add_test (tests, a_pressure_step_says_its_window);
  tcase_add_test (tests, doses_are_reasoned_side_by_side);
  tcase_add_test (tests, a_stopped_procedure_is_said_first);
  tcase_add_test (tests, the_report_says_it_all);
  tcase_add_test (tests, a_damaged_photo_is_said_in_its_place);
  tcase_add_loop_test (tests, the_tag_is_one_large_page, 0, 2);
  tcase_add_test (tests, a_long_tag_is_still_one_page);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (paper_work_suite)
