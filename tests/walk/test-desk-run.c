/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <string.h>

#include "book-kit.h"
#include "run-kit.h"
#include "suite.h"

/* A run to its end with the real program: both sides to the signature, or released in pieces with
 * its tag. What was stored is read by SQLite itself, the tag by pdftotext. The
 * doses are those of the vehicle's class (common practice, no source). */

enum
{
  PATIENCE_S = 90,
  POLL_US = 50000
};

/* The job of the run that was begun last. */
#define JOB "(SELECT job_id FROM runs WHERE id = " THE_RUN ")"

/* What was poured is out of its lots, no more and no less, and the history says so. */
static void
stock_is_used (const char *book)
{
  run_holds (book,
             "SELECT group_concat (words, ', ') FROM (SELECT f.side || ' ' || sum (m.ml) AS words"
             " FROM stock_moves m JOIN lots l ON l.id = m.lot_id JOIN fluids f ON f.id = l.fluid_id"
             " WHERE m.kind = 'use' AND m.job_id = " JOB " GROUP BY f.side ORDER BY f.side)",
             "fuel -1000, intake -2000");
  run_holds (book,
             "SELECT count (*) FROM stock_moves m JOIN runs r ON r.id = " THE_RUN
             " WHERE m.job_id = " JOB " AND m.lot_id NOT IN (r.fuel_lot_id, r.intake_lot_id)",
             "0");
}

/* Rule 1 of the trade: what is left on the fuel side is kept apart under a label, the other tank
 * is clean. */
static void
tanks_are_left_well (const char *book)
{
  run_holds (book,
             "SELECT group_concat (words, ', ') FROM (SELECT t.side || ' ' || e.contents AS words"
             " FROM tanks t JOIN tank_events e ON e.id = (SELECT max (x.id) FROM tank_events x"
             " WHERE x.tank_id = t.id) WHERE t.machine_id = (SELECT machine_id FROM runs WHERE id"
             " = " THE_RUN ") ORDER BY t.side)",
             "fuel held, intake clean");
}

START_TEST (both_sides_to_the_signature)
{
  Desk *desk = run_technicians_desk ();
  g_autofree char *book = book_named ("demo-");

  run_begin (desk, book);
  run_go_to (desk, "Sign off: ");
  run_holds (book, "SELECT outcome FROM runs WHERE id = " THE_RUN, NULL);
  run_press (desk, "Sign off: Sign that the engine is whole");
  run_is_shown (desk, "Signed off");
  run_holds (book, "SELECT status FROM jobs WHERE id = " JOB, "done");
  run_holds (book, "SELECT outcome || ' ' || signature FROM runs WHERE id = " THE_RUN,
             "finished Ines Farrow");
  run_holds (book,
             "SELECT group_concat (text, ', ') FROM (SELECT text FROM run_events WHERE run_id"
             " = " THE_RUN " AND text = 'steady' ORDER BY seq)",
             "steady, steady");
  /* Every step was confirmed or ended, none passed over. */
  run_holds (book,
             "SELECT count (*) - (SELECT count (*) FROM procedure_steps s WHERE s.procedure_id ="
             " (SELECT procedure_id FROM runs WHERE id = " THE_RUN ")) FROM run_events WHERE"
             " run_id = " THE_RUN " AND kind IN ('confirm', 'ended')",
             "0");
  stock_is_used (book);
  tanks_are_left_well (book);
  desk_end (desk);
}
END_TEST

/* The paper over the bay, saved. */
static char *
saved_tag (Desk *desk)
{
  g_autofree char *file = g_build_filename (g_get_user_cache_dir (), "tag.pdf", NULL);

  g_object_unref (desk_find (desk, ATSPI_ROLE_IMAGE, "Page 1 of 1"));
  run_press (desk, "Save…");
  desk_focus (desk, "Save the paper");
  desk_key (desk, "ctrl+a");
  desk_type (desk, file);
  desk_key (desk, "Return");
  return paper_text (file);
}

static void
says (const char *text, const char *words)
{
  ck_assert_msg (strstr (text, words) != NULL, "the tag does not say “%s”:\n%s", words, text);
}

static void
release (Desk *desk, const char *book)
{
  run_press (desk, "Release incomplete");
  run_is_shown (desk, "A tag is printed for the vehicle");
  /* Nothing is signed for without a reason. */
  run_press (desk, "Release the vehicle incomplete");
  run_is_shown (desk, "Say why the vehicle leaves, or stays, in pieces.");
  run_holds (book, "SELECT status FROM jobs WHERE id = " JOB, "in-bay");
  desk_type (desk, "gasket comes tomorrow");
  run_press (desk, "Release the vehicle incomplete");
}

static void
read_tag (Desk *desk, const char *book)
{
  g_autofree char *text = saved_tag (desk);
  g_autofree char *number = book_text_in (book, "SELECT number FROM jobs WHERE id = " JOB);

  says (text, "Do not start");
  says (text, number);
  says (text, "egr crossover");
  says (text, "bypass");
  says (text, "Fuel tank");
  says (text, "Intake tank");
  says (text, "Next safe step");
  says (text, "Why: gasket comes tomorrow");
  says (text, "Ines Farrow");
}

/* Next day it comes into the bay again: the last step is asked for again, and what was not done
 * before it was released is what goes on. */
static void
take_up (Desk *desk, const char *book)
{
  g_autofree char *confirmed = book_text_in (
      book, "SELECT max (step) FROM run_events WHERE run_id = " THE_RUN " AND kind = 'confirm'");
  g_autofree char *again = g_strdup_printf ("resumed, asked-again %s", confirmed);

  desk_key (desk, "ctrl+1");
  desk_wait_title (desk, "Today");
  run_press (desk, "Take up again: Brindle T6 dually, unit 9");
  desk_wait_title (desk, "Bay, job ");
  run_press (desk, "Take the run up again");
  ck_book ("in-bay", "SELECT status FROM jobs WHERE id = " JOB);
  ck_book ("open", "SELECT coalesce (outcome, 'open') FROM runs WHERE id = " THE_RUN);
  run_press (desk, "Yes, it is so: ");
  run_is_gone (desk, "Yes, it is so: ");
  ck_book (again,
           "SELECT group_concat (words, ', ') FROM (SELECT CASE kind WHEN 'resumed' THEN kind"
           " ELSE kind || ' ' || step END AS words FROM run_events WHERE run_id = " THE_RUN
           " AND seq > (SELECT max (seq) FROM run_events WHERE run_id = " THE_RUN
           " AND kind = 'released') ORDER BY seq)");
  run_go_to (desk, "Confirm: Fit the valve adapter");
}

START_TEST (released_in_pieces_with_its_tag)
{
  Desk *desk = run_technicians_desk ();
  g_autofree char *book = book_named ("demo-");

  run_begin (desk, book);
  run_go_to (desk, "Confirm: Fit the valve adapter");
  release (desk, book);
  run_is_shown (desk, "Released incomplete");
  run_holds (book, "SELECT status FROM jobs WHERE id = " JOB, "stopped");
  run_holds (book, "SELECT outcome || ' ' || signature FROM runs WHERE id = " THE_RUN,
             "released Ines Farrow");
  read_tag (desk, book);
  desk_focus (desk, "Incomplete tag");
  desk_key (desk, "Escape");
  desk_focus (desk, "Bay, job");
  /* The job offers the same paper. */
  run_press (desk, "Open the job");
  run_is_shown (desk, "Show: Incomplete tag");
  take_up (desk, book);
  desk_end (desk);
}
END_TEST

/* The invented shop's own vehicle in pieces, released the day before. */
START_TEST (yesterdays_vehicle_is_taken_up_again)
{
  Desk *desk = run_technicians_desk ();
  g_autofree char *book = book_named ("demo-");
  g_autofree char *job
      = book_text_in (book, "SELECT id FROM jobs WHERE status = 'stopped' ORDER BY id LIMIT 1");
  g_autofree char *status = g_strdup_printf ("SELECT status FROM jobs WHERE id = %s", job);
  g_autofree char *run
      = g_strdup_printf ("SELECT group_concat (kind, ' ') FROM (SELECT e.kind FROM run_events e"
                         " JOIN runs r ON r.id = e.run_id WHERE r.job_id = %s AND e.seq >= (SELECT"
                         " max (x.seq) FROM run_events x WHERE x.run_id = e.run_id AND x.kind ="
                         " 'released') ORDER BY e.seq)",
                         job);
  g_autofree char *outcome
      = g_strdup_printf ("SELECT coalesce (outcome, 'open') FROM runs WHERE job_id = %s", job);

  ck_book ("stopped", "%s", status);
  ck_book ("released", "%s", outcome);
  run_press (desk, "Take up again: ");
  desk_wait_title (desk, "Bay, job ");
  run_press (desk, "Take the run up again");
  ck_book ("in-bay", "%s", status);
  ck_book ("open", "%s", outcome);
  ck_book ("released resumed", "%s", run);
  run_press (desk, "Yes, it is so: ");
  run_is_gone (desk, "Yes, it is so: ");
  ck_book ("released resumed asked-again", "%s", run);
  desk_key (desk, "ctrl+1");
  desk_wait_title (desk, "Today");
  run_is_gone (desk, "Take up again: ");
  desk_end (desk);
}
END_TEST

/* What is asked for is answered by keys alone; Return confirms. */
START_TEST (by_keyboard_alone)
{
  Desk *desk = run_technicians_desk ();
  g_autofree char *book = book_named ("demo-");

  run_begin (desk, book);
  desk_key (desk, "Return");
  run_is_shown (desk, "Confirm: Note how it idles");
  desk_type (desk, "steady");
  desk_key (desk, "Return");
  run_is_shown (desk, "Confirm: Check the oil level");
  desk_key (desk, "Return");
  run_holds (book, "SELECT count (*) FROM run_events WHERE run_id = " THE_RUN " AND step = 1", "0");
  desk_key (desk, "Return");
  run_is_shown (desk, "Confirm: Drain the fuel tank");
  /* A slow scanner's Return is no answer. */
  desk_type (desk, "7714-A");
  desk_key (desk, "Return");
  run_is_shown (desk, "“7714-A” was scanned, but nothing is asked for that is scanned.");
  run_is_shown (desk, "Confirm: Drain the fuel tank");
  desk_key (desk, "Return");
  run_is_shown (desk, "Confirm: Flush the fuel tank");
  desk_key (desk, "Return");
  run_is_shown (desk, "Confirm: Fill the fuel tank");
  desk_key (desk, "Return");
  run_is_shown (desk, "Confirm: Drain the intake tank");
  run_holds (book,
             "SELECT group_concat (kind || ' ' || step, ', ') FROM (SELECT kind, step FROM"
             " run_events WHERE run_id = " THE_RUN " AND seq > 1 ORDER BY seq)",
             "caution 0, confirm 0, confirm 1, confirm 2, confirm 3, confirm 4");
  desk_key (desk, "F8");
  run_is_shown (desk, "It stands: record the stop");
  desk_key (desk, "Return");
  desk_key (desk, "Return");
  run_is_shown (desk, "Go on: Nothing goes on by itself");
  run_holds (book,
             "SELECT kind || ' ' || happening FROM run_events WHERE run_id = " THE_RUN
             " ORDER BY seq DESC LIMIT 1",
             "halt stop");
  desk_key (desk, "Return");
  run_is_shown (desk, "Yes, it is so: ");
  desk_end (desk);
}
END_TEST

static void
forget (void)
{
  book_forget ("demo-");
}

static void
add_case (Suite *suite, const char *name, const TTest *test)
{
  TCase *tcase = tcase_create (name);

  tcase_set_timeout (tcase, 540);
  tcase_add_checked_fixture (tcase, forget, forget);
  tcase_add_test (tcase, test);
  suite_add_tcase (suite, tcase);
}

static Suite *
desk_run_suite (void)
{
  Suite *suite = suite_create ("desk run");

  add_case (suite, "keyboard", by_keyboard_alone);
  add_case (suite, "released", released_in_pieces_with_its_tag);
  add_case (suite, "taken up", yesterdays_vehicle_is_taken_up_again);
  add_case (suite, "signed", both_sides_to_the_signature);
  return suite;
}

UNSOOT_TEST_MAIN (desk_run_suite)
