/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <signal.h>
#include <sqlite3.h>
#include <string.h>

#include "desk-kit.h"
#include "suite.h"

/* A technician in the bay with the real program: the invented shop's waiting vehicle, from the
 * choice of the machine through a phase, STOP and a kill. What was stored is read by SQLite
 * itself. The order of the acts is common practice, no source. */

#define RUN "(SELECT max (id) FROM runs)"

enum
{
  PATIENCE_S = 30,
  MOST_STEPS = 60,
  IDLE_MINUTES = 22, /* the invented family's fuel side */
  SLEPT_MINUTES = 25
};

static char *
demo_book (void)
{
  g_autofree char *folder = g_build_filename (g_get_user_data_dir (), "unsoot", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_prefix (name, "demo-") && g_str_has_suffix (name, ".unsoot"))
      return g_build_filename (folder, name, NULL);
  return NULL;
}

static char *
raw (const char *book, const char *sql)
{
  sqlite3 *db = NULL;
  sqlite3_stmt *statement = NULL;
  char *text = NULL;

  ck_assert_int_eq (sqlite3_open_v2 (book, &db, SQLITE_OPEN_READONLY, NULL), SQLITE_OK);
  ck_assert_msg (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL) == SQLITE_OK, "%s",
                 sqlite3_errmsg (db));
  if (sqlite3_step (statement) == SQLITE_ROW)
    text = g_strdup ((const char *) sqlite3_column_text (statement, 0));
  sqlite3_finalize (statement);
  sqlite3_close (db);
  return text;
}

static void
holds (const char *book, const char *sql, const char *expected)
{
  g_autofree char *found = raw (book, sql);

  ck_assert_msg (g_strcmp0 (found, expected) == 0, "%s gives %s, not %s", sql, found, expected);
}

/* As if the computer had slept: everything of the run happened so long ago. The book forbids it
 * to everybody else. */
static void
age_run (const char *book, int seconds)
{
  sqlite3 *db = NULL;
  g_autofree char *back = raw (book, "SELECT group_concat (sql, ';') FROM sqlite_master WHERE type"
                                     " = 'trigger' AND tbl_name = 'run_events'");
  g_autofree char *drop = raw (book, "SELECT group_concat ('DROP TRIGGER ' || name, ';') FROM"
                                     " sqlite_master WHERE type = 'trigger' AND tbl_name ="
                                     " 'run_events'");
  g_autofree char *sql
      = g_strdup_printf ("BEGIN; %s; UPDATE run_events SET at = at - %d, done_at = done_at - %d"
                         " WHERE run_id = " RUN "; %s; COMMIT;",
                         drop, seconds, seconds, back);

  ck_assert_int_eq (sqlite3_open (book, &db), SQLITE_OK);
  ck_assert_msg (sqlite3_exec (db, sql, NULL, NULL, NULL) == SQLITE_OK, "%s", sqlite3_errmsg (db));
  sqlite3_close (db);
}

static void
is_shown (Desk *desk, const char *name)
{
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, name));
}

static void
is_gone (Desk *desk, const char *name)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;

  while (desk_has (desk, ATSPI_ROLE_INVALID, name) && g_get_monotonic_time () < last)
    g_usleep (50000);
  ck_assert_msg (!desk_has (desk, ATSPI_ROLE_INVALID, name), "“%s” is still there", name);
}

static void
press (Desk *desk, const char *name)
{
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, name);
}

/* Ines Farrow, technician, takes the desk. */
static Desk *
technicians_desk (void)
{
  const char *const arguments[] = { "--demo", NULL };
  Desk *desk = desk_start (arguments);

  desk_wait_title (desk, "Today");
  desk_key (desk, "ctrl+l");
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Ines Farrow");
  desk_focus (desk, "Who is at the desk");
  desk_type (desk, "5555");
  desk_key (desk, "Return");
  is_shown (desk, "Ines Farrow, Technician");
  desk_focus (desk, "Unsoot");
  return desk;
}

/* What is looked at before the work is another page's: here it is answered by command. */
static void
answer_checks (const char *book, const char *job)
{
  const char *const line[]
      = { g_getenv ("UNSOOT_PROGRAM"), "check", job, "--rest", "--as", "DH", "--file", book, NULL };
  GError *error = NULL;

  g_spawn_sync (NULL, (char **) line, NULL, G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL,
                NULL, NULL, NULL, NULL, NULL, &error);
  ck_no_error (error);
}

/* A keyboard wedge: a few milliseconds between the letters, then Return. */
static void
scan (const char *code)
{
  g_autofree char *line
      = g_strdup_printf ("sh -c 'xdotool type --delay 4 %s; xdotool key Return'", code);
  GError *error = NULL;

  g_spawn_command_line_sync (line, NULL, NULL, NULL, &error);
  ck_no_error (error);
}

typedef struct
{
  char *name;
} Deed;

static void
note_deed (AtspiAccessible *thing, AtspiRole role, const char *name, gpointer data)
{
  static const char *const verbs[] = { "Confirm: ",      "Read, and kept", "Start the timer: ",
                                       "End the step: ", "Go on: ",        "Yes, it is so: " };
  Deed *deed = data;

  for (gsize i = 0; i < G_N_ELEMENTS (verbs); i++)
    if (role == ATSPI_ROLE_PUSH_BUTTON && deed->name == NULL && g_str_has_prefix (name, verbs[i]))
      deed->name = g_strdup (name);
}

/* What the main button says now: the verb and the step. */
static char *
deed_of (Desk *desk)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  Deed deed = { NULL };

  while (deed.name == NULL && g_get_monotonic_time () < last)
    desk_each (desk, note_deed, &deed);
  ck_assert_msg (deed.name != NULL, "no deed is offered");
  return deed.name;
}

/* What one step asks for, then its button; waits until something else is asked for. */
static void
do_step (Desk *desk, const char *book, const char *deed)
{
  g_autofree char *before = raw (book, "SELECT count (*) FROM run_events WHERE run_id = " RUN);
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  gboolean stored = FALSE;

  if (strstr (deed, "oil") != NULL)
    desk_click (desk, ATSPI_ROLE_INVALID, "As it was");
  if (strstr (deed, "Note how") != NULL)
    desk_type (desk, "steady");
  press (desk, deed);
  while (!stored && g_get_monotonic_time () < last)
    {
      g_autofree char *after = raw (book, "SELECT count (*) FROM run_events WHERE run_id = " RUN);
      stored = !g_str_equal (before, after);
      g_usleep (20000);
    }
  ck_assert_msg (stored, "“%s” was not stored", deed);
}

/* Step after step until the main button says @deed. */
static void
go_to (Desk *desk, const char *book, const char *wanted)
{
  for (int i = 0; i < MOST_STEPS; i++)
    {
      g_autofree char *deed = deed_of (desk);
      const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;

      if (strstr (deed, wanted) != NULL)
        return;
      do_step (desk, book, deed);
      for (;;)
        {
          g_autofree char *next = deed_of (desk);
          if (!g_str_equal (next, deed) || g_get_monotonic_time () > last)
            break;
        }
    }
  ck_abort_msg ("“%s” did not come", wanted);
}

static void
begin (Desk *desk, const char *book)
{
  g_autofree char *job = raw (book, "SELECT number FROM jobs WHERE status = 'arrived'");
  g_autofree char *title = g_strdup_printf ("Bay, job %s", job);

  answer_checks (book, job);
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Bays");
  press (desk, "Start: ");
  desk_wait_title (desk, title);
  press (desk, "Begin the run");
  is_shown (desk, "Read, and kept: Cautions of this part");
  holds (book, "SELECT status FROM jobs WHERE id = (SELECT job_id FROM runs WHERE id = " RUN ")",
         "in-bay");
}

/* Nothing is confirmed by a scan, and what is refused leaves everything as it is. */
static void
refuse_lots (Desk *desk, const char *book)
{
  g_autofree char *wrong = raw (
      book, "SELECT l.code FROM lots l JOIN fluids f ON f.id = l.fluid_id WHERE f.side = 'intake'"
            " AND l.code NOT IN (SELECT x.code FROM lots x JOIN fluids y ON y.id = x.fluid_id WHERE"
            " y.side = 'fuel') LIMIT 1");
  g_autofree char *expired
      = raw (book, "SELECT l.code FROM lots l JOIN fluids f ON f.id = l.fluid_id WHERE f.side ="
                   " 'fuel' AND l.expires_on < date ('now', '-2 days') LIMIT 1");
  const char *events = "SELECT count (*) FROM run_events WHERE run_id = " RUN;
  g_autofree char *before = raw (book, events);

  scan (wrong);
  is_shown (desk, "is an intake-side fluid. It never enters");
  scan ("no-such-lot");
  is_shown (desk, "No lot is called “no-such-lot”");
  if (expired != NULL)
    {
      scan (expired);
      is_shown (desk, "was good until");
    }
  holds (book, events, before);
  is_shown (desk, "Confirm: Fill the fuel tank with the dose");
}

static void
stop_and_go_on (Desk *desk, const char *book)
{
  desk_key (desk, "F8");
  is_shown (desk, "Pump off, only when the engine stands still.");
  desk_click (desk, ATSPI_ROLE_INVALID, "Engine runs away");
  is_shown (desk, "Never a hand, a rag or a board over the intake.");
  desk_click (desk, ATSPI_ROLE_INVALID, "Stop the run");
  press (desk, "It stands: record the stop");
  press (desk, "Go on: Nothing goes on by itself");
  holds (book,
         "SELECT kind || ' ' || happening FROM run_events WHERE run_id = " RUN
         " AND kind IN ('halt', 'happened')",
         "halt stop");
  press (desk, "Yes, it is so: ");
  is_gone (desk, "Yes, it is so: ");
  holds (book, "SELECT kind FROM run_events WHERE run_id = " RUN " ORDER BY seq DESC LIMIT 1",
         "asked-again");
}

START_TEST (a_phase_with_refusals_and_stop)
{
  Desk *desk = technicians_desk ();
  g_autofree char *book = demo_book ();

  begin (desk, book);
  go_to (desk, book, "Check the oil level");
  holds (book,
         "SELECT text FROM run_events WHERE run_id = " RUN " AND step = 0 AND kind = 'confirm'",
         "steady");
  press (desk, "Confirm: Check the oil level");
  is_shown (desk, "Say how the oil level is");
  go_to (desk, book, "Confirm: Fill the fuel tank");
  refuse_lots (desk, book);
  go_to (desk, book, "Confirm: Drain the intake tank");
  holds (
      book,
      "SELECT f.side || ' ' || e.ml FROM run_events e JOIN lots l ON l.id = e.lot_id JOIN fluids f"
      " ON f.id = l.fluid_id WHERE e.run_id = " RUN,
      "fuel 1000");
  stop_and_go_on (desk, book);
  go_to (desk, book, "Read, and kept");
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
  g_autofree char *at
      = raw (book, "SELECT at FROM run_events WHERE run_id = " RUN " AND kind = 'started'");
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
  press (desk, "To the bay that rings");
  is_shown (desk, "Yes, it is so: Start the engine, let it idle");
  holds (book, "SELECT max (seq) FROM run_events WHERE run_id = " RUN, last);
  press (desk, "Yes, it is so: Start the engine, let it idle");
  is_shown (desk, "End the step: Idle on cleaner");
  holds (book,
         "SELECT a.step - s.step FROM run_events a, run_events s WHERE a.run_id = " RUN
         " AND s.run_id = a.run_id AND a.kind = 'asked-again' AND s.kind = 'started'",
         "-1");
  press (desk, "The alarm is heard");
  is_gone (desk, "the time is over");
  holds (book, "SELECT kind FROM run_events WHERE run_id = " RUN " ORDER BY seq DESC LIMIT 1",
         "alarm-heard");
}

/* After a stall nothing is started before the low points are drained and the oil is read. */
static void
stall_and_come_back (Desk *desk, const char *book)
{
  desk_key (desk, "F8");
  desk_click (desk, ATSPI_ROLE_INVALID, "Engine stalled");
  press (desk, "It stands: record the stop");
  press (desk, "Go on: Nothing goes on by itself");
  press (desk, "Yes, it is so: ");
  go_to (desk, book, "End the step: Idle on cleaner");
  holds (book,
         "SELECT group_concat (word, ', ') FROM (SELECT CASE WHEN text LIKE 'drain low-point%'"
         " THEN 'drain' WHEN text LIKE 'measure oil%' THEN 'oil' ELSE 'engine' END AS word FROM"
         " run_events WHERE run_id = " RUN " AND kind = 'extra' AND (text LIKE 'drain low-point%'"
         " OR text LIKE 'measure oil%' OR text LIKE 'start engine%') ORDER BY seq)",
         "drain, drain, oil, engine");
}

START_TEST (killed_in_the_middle)
{
  Desk *desk = technicians_desk ();
  g_autofree char *book = demo_book ();
  g_autofree char *last = NULL;

  begin (desk, book);
  go_to (desk, book, "End the step: Idle on cleaner");
  last = raw (book, "SELECT seq FROM run_events WHERE run_id = " RUN " AND kind = 'started'");
  end_by_force (desk);
  holds (book, "SELECT max (seq) FROM run_events WHERE run_id = " RUN, last);
  age_run (book, SLEPT_MINUTES * 60);
  desk = technicians_desk ();
  reopen (desk, book, last);
  stall_and_come_back (desk, book);
  desk_end (desk);
}
END_TEST

static void
forget_books (void)
{
  char *book;

  while ((book = demo_book ()) != NULL)
    {
      g_unlink (book);
      g_free (book);
    }
}

static Suite *
desk_bay_suite (void)
{
  Suite *suite = suite_create ("desk bay");
  TCase *bay = tcase_create ("bay");

  tcase_set_timeout (bay, 240);
  tcase_add_checked_fixture (bay, forget_books, forget_books);
  tcase_add_test (bay, a_phase_with_refusals_and_stop);
  tcase_add_test (bay, killed_in_the_middle);
  suite_add_tcase (suite, bay);
  return suite;
}

UNSOOT_TEST_MAIN (desk_bay_suite)
