/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <signal.h>
#include <sqlite3.h>
#include <string.h>

#include "book-kit.h"
#include "run-kit.h"
#include "suite.h"

/* A technician in the bay with the real program: the invented shop's waiting vehicle, from the
 * choice of the machine through a phase, STOP and a kill. What was stored is read by SQLite
 * itself. The order of the acts is common practice, no source. */

enum
{
  IDLE_MINUTES = 22, /* the invented family's fuel side */
  SLEPT_MINUTES = 25
};

/* As if the computer had slept: everything of the run happened so long ago. The book forbids it
 * to everybody else. */
static void
age_run (const char *book, int seconds)
{
  sqlite3 *db = NULL;
  g_autofree char *back
      = book_text_in (book, "SELECT group_concat (sql, ';') FROM sqlite_master WHERE type"
                            " = 'trigger' AND tbl_name = 'run_events'");
  g_autofree char *drop
      = book_text_in (book, "SELECT group_concat ('DROP TRIGGER ' || name, ';') FROM"
                            " sqlite_master WHERE type = 'trigger' AND tbl_name ="
                            " 'run_events'");
  g_autofree char *sql
      = g_strdup_printf ("BEGIN; %s; UPDATE run_events SET at = at - %d, done_at = done_at - %d"
                         " WHERE run_id = " THE_RUN "; %s; COMMIT;",
                         drop, seconds, seconds, back);

  ck_assert_int_eq (sqlite3_open (book, &db), SQLITE_OK);
  ck_assert_msg (sqlite3_exec (db, sql, NULL, NULL, NULL) == SQLITE_OK, "%s", sqlite3_errmsg (db));
  sqlite3_close (db);
}

/* Nothing is confirmed by a scan, and what is refused leaves everything as it is. */
static void
refuse_lots (Desk *desk, const char *book)
{
  g_autofree char *wrong = book_text_in (
      book, "SELECT l.code FROM lots l JOIN fluids f ON f.id = l.fluid_id WHERE f.side = 'intake'"
            " AND l.code NOT IN (SELECT x.code FROM lots x JOIN fluids y ON y.id = x.fluid_id WHERE"
            " y.side = 'fuel') LIMIT 1");
  g_autofree char *expired = book_text_in (
      book, "SELECT l.code FROM lots l JOIN fluids f ON f.id = l.fluid_id WHERE f.side ="
            " 'fuel' AND l.expires_on < date ('now', '-2 days') LIMIT 1");
  const char *events = "SELECT count (*) FROM run_events WHERE run_id = " THE_RUN;
  g_autofree char *before = book_text_in (book, events);

  run_scan (wrong);
  run_is_shown (desk, "is an intake-side fluid. It never enters");
  run_scan ("no-such-lot");
  run_is_shown (desk, "No lot is called “no-such-lot”");
  if (expired != NULL)
    {
      run_scan (expired);
      run_is_shown (desk, "was good until");
    }
  run_holds (book, events, before);
  run_is_shown (desk, "Confirm: Fill the fuel tank with the dose");
}

static void
stop_and_go_on (Desk *desk, const char *book)
{
  desk_key (desk, "F8");
  run_is_shown (desk, "Pump off, only when the engine stands still.");
  desk_click (desk, ATSPI_ROLE_INVALID, "Engine runs away");
  run_is_shown (desk, "Never a hand, a rag or a board over the intake.");
  desk_click (desk, ATSPI_ROLE_INVALID, "Stop the run");
  run_press (desk, "It stands: record the stop");
  run_press (desk, "Go on: Nothing goes on by itself");
  run_holds (book,
             "SELECT kind || ' ' || happening FROM run_events WHERE run_id = " THE_RUN
             " AND kind IN ('halt', 'happened')",
             "halt stop");
  run_press (desk, "Yes, it is so: ");
  run_is_gone (desk, "Yes, it is so: ");
  run_holds (book,
             "SELECT kind FROM run_events WHERE run_id = " THE_RUN " ORDER BY seq DESC LIMIT 1",
             "asked-again");
}

START_TEST (a_phase_with_refusals_and_stop)
{
  Desk *desk = run_technicians_desk ();
  g_autofree char *book = book_named ("demo-");

  run_begin (desk, book);
  run_go_to (desk, "Check the oil level");
  run_holds (book,
             "SELECT text FROM run_events WHERE run_id = " THE_RUN
             " AND step = 0 AND kind = 'confirm'",
             "steady");
  run_press (desk, "Confirm: Check the oil level");
  run_is_shown (desk, "Say how the oil level is");
  run_go_to (desk, "Confirm: Fill the fuel tank");
  refuse_lots (desk, book);
  run_go_to (desk, "Confirm: Drain the intake tank");
  run_holds (
      book,
      "SELECT f.side || ' ' || e.ml FROM run_events e JOIN lots l ON l.id = e.lot_id JOIN fluids f"
      " ON f.id = l.fluid_id WHERE e.run_id = " THE_RUN,
      "fuel 1000");
  stop_and_go_on (desk, book);
  run_go_to (desk, "Read, and kept");
  desk_end (desk);
}
END_TEST

static void
end_by_force (Desk *desk)
{
  g_subprocess_send_signal (desk->process, SIGKILL);
  g_subprocess_wait (desk->process, NULL, NULL);
  g_clear_object (&desk->application);
  g_clear_object (&desk->process);
  g_free (desk);
}

/* How late the alarm says it is, in whole minutes: no less than the computer slept, no more than
 * the clock allows since the timer began. */
static void
is_late (Desk *desk, const char *book)
{
  static const char over[] = "the time is over, ";
  g_autoptr (AtspiAccessible) words = desk_find (desk, ATSPI_ROLE_LABEL, over);
  g_autofree char *text = atspi_accessible_get_name (words, NULL);
  g_autofree char *at = book_text_in (book, "SELECT at FROM run_events WHERE run_id = " THE_RUN
                                            " AND kind = 'started'");
  const gint64 since = g_get_real_time () / G_USEC_PER_SEC - g_ascii_strtoll (at, NULL, 10);
  const char *late = strstr (text, over) + strlen (over);
  char *unit = NULL;
  const gint64 minutes = g_ascii_strtoll (late, &unit, 10);

  ck_assert_msg (g_str_equal (unit, " min late"), "“%s”", text);
  ck_assert_int_ge (minutes, SLEPT_MINUTES - IDLE_MINUTES);
  ck_assert_int_le (minutes, since / 60 - IDLE_MINUTES);
}

/* The step that was on is on again; the one before is asked for again; what should have rung
 * rings at once, on whatever page, and says how late it is. */
static void
reopen (Desk *desk, const char *book, const char *last)
{
  is_late (desk, book);
  run_press (desk, "To the bay that rings");
  run_is_shown (desk, "Yes, it is so: Start the engine, let it idle");
  run_holds (book, "SELECT max (seq) FROM run_events WHERE run_id = " THE_RUN, last);
  run_press (desk, "Yes, it is so: Start the engine, let it idle");
  run_is_shown (desk, "End the step: Idle on cleaner");
  run_holds (book,
             "SELECT a.step - s.step FROM run_events a, run_events s WHERE a.run_id = " THE_RUN
             " AND s.run_id = a.run_id AND a.kind = 'asked-again' AND s.kind = 'started'",
             "-1");
  run_press (desk, "The alarm is heard");
  run_is_gone (desk, "the time is over");
  run_holds (book,
             "SELECT kind FROM run_events WHERE run_id = " THE_RUN " ORDER BY seq DESC LIMIT 1",
             "alarm-heard");
}

/* After a stall nothing is started before the low points are drained and the oil is read. */
static void
stall_and_come_back (Desk *desk, const char *book)
{
  desk_key (desk, "F8");
  desk_click (desk, ATSPI_ROLE_INVALID, "Engine stalled");
  run_press (desk, "It stands: record the stop");
  run_press (desk, "Go on: Nothing goes on by itself");
  run_press (desk, "Yes, it is so: ");
  run_go_to (desk, "End the step: Idle on cleaner");
  run_holds (book,
             "SELECT group_concat (word, ', ') FROM (SELECT CASE WHEN text LIKE 'drain low-point%'"
             " THEN 'drain' WHEN text LIKE 'measure oil%' THEN 'oil' ELSE 'engine' END AS word FROM"
             " run_events WHERE run_id = " THE_RUN
             " AND kind = 'extra' AND (text LIKE 'drain low-point%'"
             " OR text LIKE 'measure oil%' OR text LIKE 'start engine%') ORDER BY seq)",
             "drain, drain, oil, engine");
}

START_TEST (killed_in_the_middle)
{
  Desk *desk = run_technicians_desk ();
  g_autofree char *book = book_named ("demo-");
  g_autofree char *last = NULL;

  run_begin (desk, book);
  run_go_to (desk, "End the step: Idle on cleaner");
  last = book_text_in (book, "SELECT seq FROM run_events WHERE run_id = " THE_RUN
                             " AND kind = 'started'");
  end_by_force (desk);
  run_holds (book, "SELECT max (seq) FROM run_events WHERE run_id = " THE_RUN, last);
  age_run (book, SLEPT_MINUTES * 60);
  desk = run_technicians_desk ();
  reopen (desk, book, last);
  stall_and_come_back (desk, book);
  desk_end (desk);
}
END_TEST

static void
forget (void)
{
  book_forget ("demo-");
}

static Suite *
desk_bay_suite (void)
{
  Suite *suite = suite_create ("desk bay");
  TCase *bay = tcase_create ("bay");

  tcase_set_timeout (bay, 240);
  tcase_add_checked_fixture (bay, forget, forget);
  tcase_add_test (bay, a_phase_with_refusals_and_stop);
  tcase_add_test (bay, killed_in_the_middle);
  suite_add_tcase (suite, bay);
  return suite;
}

UNSOOT_TEST_MAIN (desk_bay_suite)
