/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run-kit.h"

#include <string.h>

#include "bay-kit.h"
#include "book-kit.h"
#include "suite.h"

enum
{
  PATIENCE_S = 90
};

void
run_holds (const char *book, const char *sql, const char *expected)
{
  g_autofree char *found = book_text_in (book, sql);

  ck_assert_msg (g_strcmp0 (found, expected) == 0, "%s gives %s, not %s", sql, found, expected);
}

void
run_is_shown (Desk *desk, const char *name)
{
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, name));
}

void
run_is_gone (Desk *desk, const char *name)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;

  while (desk_has (desk, ATSPI_ROLE_INVALID, name) && g_get_monotonic_time () < last)
    g_usleep (50000);
  ck_assert_msg (!desk_has (desk, ATSPI_ROLE_INVALID, name), "“%s” is still there", name);
}

void
run_press (Desk *desk, const char *name)
{
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, name);
}

/* Ines Farrow, technician, takes the desk. */
Desk *
run_technicians_desk (void)
{
  const char *const arguments[] = { "--demo", NULL };
  Desk *desk = desk_start (arguments);

  desk_wait_title (desk, "Today");
  desk_key (desk, "ctrl+l");
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Ines Farrow");
  desk_focus (desk, "Who is at the desk");
  desk_type (desk, "5555");
  desk_key (desk, "Return");
  run_is_shown (desk, "Ines Farrow, Technician");
  desk_focus (desk, "Unsoot");
  return desk;
}

void
run_answer_checks (const char *book, const char *job)
{
  const char *const line[]
      = { g_getenv ("UNSOOT_PROGRAM"), "check", job, "--rest", "--as", "DH", "--file", book, NULL };
  GError *error = NULL;

  g_spawn_sync (NULL, (char **) line, NULL, G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL,
                NULL, NULL, NULL, NULL, NULL, &error);
  ck_no_error (error);
}

/* A keyboard wedge: a few milliseconds between the letters, then Return. */
void
run_scan (const char *code)
{
  const char *const line[] = { "xdotool", "type", "--delay", "4", NULL, NULL };
  g_autofree char *typed = g_strdup_printf ("%s\n", code);
  const char *argv[G_N_ELEMENTS (line)];
  GError *error = NULL;

  memcpy (argv, line, sizeof line);
  argv[4] = typed;
  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL, NULL,
                &error);
  ck_no_error (error);
}

void
run_begin (Desk *desk, const char *book)
{
  g_autofree char *job = book_text_in (book, "SELECT number FROM jobs WHERE status = 'arrived'");
  g_autofree char *title = g_strdup_printf ("Bay, job %s", job);

  run_answer_checks (book, job);
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Bays");
  run_press (desk, "Start: ");
  desk_wait_title (desk, title);
  run_press (desk, "Begin the run");
  run_is_shown (desk, "Read, and kept: Cautions of this part");
  run_holds (book,
             "SELECT status FROM jobs WHERE id = (SELECT job_id FROM runs WHERE id = " THE_RUN ")",
             "in-bay");
}

void
run_go_to (Desk *desk, const char *wanted)
{
  bay_carry (desk, wanted, bay_enter_usual, NULL);
}
