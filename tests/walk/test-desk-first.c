/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gio/gio.h>
#include <string.h>

#include "book-kit.h"
#include "desk-keys.h"
#include "suite.h"

/* A new owner on the first morning: from no book at all to the first booked job, through the
 * screen alone. Today says what is still missing, and each line goes once the thing is there. What
 * came of it is read from the book by SQLite. */

enum
{
  PATIENCE_S = 40,
  POLL_US = 100000
};

static void
fill (Desk *desk, const char *field, const char *text)
{
  desk_tab_to (desk, field);
  desk_type (desk, text);
}

static void
next_field (Desk *desk, const char *text)
{
  desk_key (desk, "Tab");
  desk_type (desk, text);
}

/* One of the buttons that stand for a choice. */
static void
choose (Desk *desk, const char *choice)
{
  desk_tab_to (desk, choice);
  desk_key (desk, "space");
}

static Desk *
first_desk (void)
{
  const char *const arguments[] = { NULL };
  Desk *desk = desk_start (arguments);

  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "New shop");
  g_usleep (3 * POLL_US);
  desk_type (desk, "Pell Lane Diesel");
  next_field (desk, "Pell Lane");
  /* Past the currency and the sheet, which are proposed. */
  desk_key (desk, "Tab");
  desk_key (desk, "Tab");
  next_field (desk, "Ottoline Marsh");
  next_field (desk, "4711");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Open the book");
  desk_wait_title (desk, "Today");
  return desk;
}

/* From a line of Today to the dialog that adds what it asks for. */
static void
follow (Desk *desk, const char *line, const char *button, const char *title)
{
  desk_focus (desk, "Unsoot");
  desk_key (desk, "ctrl+1");
  desk_wait_title (desk, "Today");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, line);
  desk_wait_title (desk, "Preferences");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, button);
  desk_wait_title (desk, title);
  desk_focus (desk, title);
}

/* What it asked for is there, and so is not asked for any more. */
static void
ck_settled (Desk *desk, const char *line)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;

  desk_focus (desk, "Unsoot");
  desk_key (desk, "ctrl+1");
  desk_wait_title (desk, "Today");
  while (desk_has (desk, ATSPI_ROLE_PUSH_BUTTON, line) && g_get_monotonic_time () < last)
    g_usleep (POLL_US);
  ck_assert_msg (!desk_has (desk, ATSPI_ROLE_PUSH_BUTTON, line), "“%s” is still asked for", line);
}

static void
settle_tax (Desk *desk)
{
  follow (desk, "Settle: Tax", "Settle what is missing", "Settle the tax");
  fill (desk, "Rate in percent", "7.25");
  fill (desk, "As it is printed", "Sales tax");
  desk_key (desk, "Return");
  ck_book ("5 S 7250", "SELECT count (*) || ' ' || min (category) || ' '"
                       " || min (rate_milli_percent) FROM tax_rules");
  ck_settled (desk, "Settle: Tax");
}

static void
add_technician (Desk *desk)
{
  follow (desk, "Add: A technician", "Add someone", "Who works here");
  desk_type (desk, "Bram Tolliver");
  fill (desk, "Initials", "BT");
  choose (desk, "Technician");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Save");
  ck_book ("technician", "SELECT role FROM staff WHERE name = 'Bram Tolliver'");
  ck_settled (desk, "Add: A technician");
}

static void
add_service (Desk *desk)
{
  follow (desk, "Add: A service", "Add a service", "Service");
  desk_type (desk, "Full cleaning");
  choose (desk, "Both sides");
  fill (desk, "Labour", "240");
  fill (desk, "Planned minutes", "100");
  fill (desk, "Disposal of used fluid", "15");
  desk_key (desk, "Return");
  ck_book ("both 24000 100 1500", "SELECT sides || ' ' || price_minor || ' ' || planned_minutes"
                                  " || ' ' || disposal_minor FROM services");
  ck_settled (desk, "Add: A service");
}

static void
add_machine (Desk *desk)
{
  follow (desk, "Add: A machine", "Add a machine", "New machine");
  desk_type (desk, "Cart A");
  fill (desk, "Fuel side tank holds", "4 L");
  next_field (desk, "200 mL");
  fill (desk, "Intake side tank holds", "4 L");
  next_field (desk, "200 mL");
  desk_key (desk, "Return");
  ck_book ("2 8000 400", "SELECT count (*) || ' ' || sum (capacity_ml) || ' ' || sum (low_ml)"
                         " FROM tanks");
  ck_settled (desk, "Add: A machine");
}

static void
add_fluids (Desk *desk)
{
  follow (desk, "Add: A fluid for the fuel side", "Add a fluid", "Fluid");
  desk_type (desk, "K");
  fill (desk, "Name", "Fuel fluid K");
  fill (desk, "Sold, for a litre", "26");
  desk_key (desk, "Return");
  ck_book ("fuel 2600", "SELECT side || ' ' || price_minor FROM fluids WHERE code = 'K'");
  ck_settled (desk, "Add: A fluid for the fuel side");
  follow (desk, "Add: A fluid for the intake side", "Add a fluid", "Fluid");
  desk_type (desk, "R");
  fill (desk, "Name", "Intake fluid R");
  choose (desk, "Intake side");
  fill (desk, "Sold, for a litre", "31");
  desk_key (desk, "Return");
  ck_book ("intake 3100", "SELECT side || ' ' || price_minor FROM fluids WHERE code = 'R'");
  ck_settled (desk, "Add: A fluid for the intake side");
}

static void
add_family (Desk *desk)
{
  follow (desk, "Add: An engine family", "Add an engine family", "Engine family");
  desk_type (desk, "Brindle T4 5.1");
  fill (desk, "Make", "Brindle");
  fill (desk, "Engine", "5.1");
  choose (desk, "¾-ton and one-ton");
  fill (desk, "Supply pressure, at least", "6 psi");
  fill (desk, "Supply pressure, at most", "10 psi");
  desk_key (desk, "Return");
  /* 6 and 10 psi: NIST SP 811. */
  ck_book ("light 41369 68948",
           "SELECT size_class || ' ' || CAST (round (window_min_pa) AS INTEGER)"
           " || ' ' || CAST (round (window_max_pa) AS INTEGER) FROM families");
  ck_settled (desk, "Add: An engine family");
  follow (desk, "Write: A procedure", "Procedure…: Brindle T4 5.1", "Procedure");
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "no rule is broken"));
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Put into use");
  ck_book ("both 1", "SELECT sides || ' ' || number FROM procedures WHERE state = 'in-use'");
  ck_settled (desk, "Write: A procedure");
}

/* The next deed can be done: its button is there and not grey. */
static void
do_deed (Desk *desk, const char *verb)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  gboolean ready = FALSE;

  while (!ready && g_get_monotonic_time () < last)
    {
      g_autoptr (AtspiAccessible) button = desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, verb);
      AtspiStateSet *states = atspi_accessible_get_state_set (button);
      ready = atspi_state_set_contains (states, ATSPI_STATE_SENSITIVE);
      g_object_unref (states);
      g_usleep (POLL_US);
    }
  ck_assert_msg (ready, "“%s” can't be done", verb);
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, verb);
}

/* The VIN is the regulation's own example (49 CFR 565.15), with its check digit as computed there. */
static void
book (Desk *desk)
{
  desk_focus (desk, "Unsoot");
  desk_key (desk, "ctrl+k");
  desk_type (desk, "1G4AH59H45G118341");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "New vehicle with this VIN"));
  desk_key (desk, "Return");
  desk_wait_title (desk, "New booking");
  desk_type (desk, "Quill Ostrander");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "New customer “Quill Ostrander”"));
  desk_key (desk, "Return");
  g_object_unref (
      desk_find (desk, ATSPI_ROLE_LABEL, "The check digit fits the other sixteen characters."));
  desk_type (desk, "270 555 0188");
  for (int i = 0; i < 4; i++)
    desk_key (desk, "Tab");
  desk_type (desk, "8QZ 417");
  for (int i = 0; i < 7; i++)
    desk_key (desk, "Tab");
  desk_type (desk, "13300");
  do_deed (desk, "Give the estimate");
  do_deed (desk, "Authorise");
  do_deed (desk, "Book");
  desk_wait_title (desk, "Job 1");
  ck_book ("booked", "SELECT status FROM jobs");
  /* 240 labour, 1 L at 26, 2 L at 31, 15 disposal: 343, of which 7.25 % is 24.8675. */
  ck_book ("34300 2487 36787",
           "SELECT net_minor || ' ' || tax_minor || ' ' || total_minor FROM estimates");
  ck_book ("Bay 1 Cart A Bram Tolliver",
           "SELECT y.name || ' ' || m.name || ' ' || t.name FROM bookings b JOIN bays y ON y.id ="
           " b.bay_id JOIN machines m ON m.id = b.machine_id JOIN staff t ON t.id ="
           " b.technician_id");
}

START_TEST (from_nothing_to_the_first_booked_job)
{
  Desk *desk = first_desk ();

  settle_tax (desk);
  add_technician (desk);
  add_service (desk);
  add_machine (desk);
  add_fluids (desk);
  add_family (desk);
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, "Nothing needs a hand"));
  book (desk);
  desk_end (desk);
}
END_TEST

static Suite *
desk_first_suite (void)
{
  Suite *suite = suite_create ("desk first");
  TCase *tcase = tcase_create ("first");

  tcase_set_timeout (tcase, 560);
  tcase_add_test (tcase, from_nothing_to_the_first_booked_job);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (desk_first_suite)
