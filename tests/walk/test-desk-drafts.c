/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <signal.h>

#include "book-kit.h"
#include "desk-keys.h"
#include "suite.h"

/* The program is killed while somebody types into a form, and started again. */

static void
kill_desk (Desk *desk)
{
  g_subprocess_send_signal (desk->process, SIGKILL);
  g_subprocess_wait (desk->process, NULL, NULL);
  ck_assert (g_subprocess_get_if_signaled (desk->process));
  g_clear_object (&desk->application);
  g_clear_object (&desk->process);
  g_free (desk);
}

static Desk *
open_form (const char *place, const char *record, const char *button, const char *title)
{
  const char *const arguments[] = { "--demo", "--place", place, "--record", record, NULL };
  Desk *desk = desk_start (arguments);

  desk_wait_ready (desk, ATSPI_ROLE_PUSH_BUTTON, button);
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, button);
  desk_wait_title (desk, title);
  desk_focus (desk, title);
  return desk;
}

START_TEST (a_customer_half_changed_survives_a_kill)
{
  g_autofree char *before = NULL;
  Desk *desk = open_form ("customer", "1", "Edit…", "The customer");

  before = book_text ("SELECT COALESCE (contact, '') FROM customers WHERE id = 1");
  desk_fill (desk, "Whom to ask for", "Ottoline Marsh");
  ck_book ("1", "SELECT count (*) FROM drafts WHERE place = 'customer' AND record = 1"
                " AND text LIKE '%%Ottoline Marsh%%'");
  kill_desk (desk);
  ck_book (before, "SELECT COALESCE (contact, '') FROM customers WHERE id = 1");

  desk = open_form ("customer", "1", "Edit…", "The customer");
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, "Kept from "));
  desk_key (desk, "ctrl+Return");
  ck_book ("Ottoline Marsh", "SELECT contact FROM customers WHERE id = 1");
  ck_book ("0", "SELECT count (*) FROM drafts");
  desk_end (desk);
}
END_TEST

START_TEST (an_arrival_half_typed_survives_a_kill)
{
  const char *const today[] = { "--demo", NULL };
  Desk *desk = desk_start (today);
  g_autofree char *job
      = book_text ("SELECT id FROM jobs WHERE status = 'booked' ORDER BY id LIMIT 1");

  desk_end (desk);
  desk = open_form ("job", job, "Record the arrival…", "The vehicle is here");
  desk_fill (desk, "Engine hours", "4321");
  ck_book ("1",
           "SELECT count (*) FROM drafts WHERE place = 'arrival' AND record = %s"
           " AND text LIKE '%%4321%%'",
           job);
  kill_desk (desk);

  desk = open_form ("job", job, "Record the arrival…", "The vehicle is here");
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, "Kept from "));
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Drop what was kept");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Put back what was dropped"));
  ck_book ("0", "SELECT count (*) FROM drafts");
  kill_desk (desk);
}
END_TEST

static Suite *
desk_drafts_suite (void)
{
  Suite *suite = suite_create ("desk drafts");
  TCase *tcase = tcase_create ("killed");

  tcase_set_timeout (tcase, 240);
  tcase_add_test (tcase, a_customer_half_changed_survives_a_kill);
  tcase_add_test (tcase, an_arrival_half_typed_survives_a_kill);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (desk_drafts_suite)
