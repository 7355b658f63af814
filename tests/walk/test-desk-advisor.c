/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "book-kit.h"
#include "desk-kit.h"
#include "suite.h"

/* The service advisor's calls at the real program, by keyboard: a returning customer, somebody new
 * with a VIN, an arrival with its checks. What came of each is read from the book by SQLite. */

enum
{
  PATIENCE_S = 30,
  POLL_US = 100000,
  MOST_KEYS = 20 /* the goal for a returning customer */
};

static guint keys_pressed;

/* A key counts as one, whatever is held down with it. */
static void
press (Desk *desk, const char *key)
{
  desk_key (desk, key);
  keys_pressed++;
}

static void
type (Desk *desk, const char *text)
{
  desk_type (desk, text);
  keys_pressed += (guint) strlen (text);
}

static void
press_times (Desk *desk, const char *key, guint times)
{
  for (guint i = 0; i < times; i++)
    press (desk, key);
}

static Desk *
advisor_desk (void)
{
  const char *const arguments[] = { "--demo", NULL };
  Desk *desk = desk_start (arguments);

  desk_wait_title (desk, "Today");
  desk_focus (desk, "Unsoot");
  return desk;
}

/* The next deed can be done: its button is there and not grey. */
static void
wait_for_deed (Desk *desk, const char *verb)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  gboolean ready = FALSE;

  while (!ready && g_get_monotonic_time () < last)
    {
      g_autoptr (AtspiAccessible) button = desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, verb);
      AtspiStateSet *states = atspi_accessible_get_state_set (button);
      ready = atspi_state_set_contains (states, ATSPI_STATE_SENSITIVE);
      g_object_unref (states);
      if (!ready)
        g_usleep (POLL_US);
    }
  ck_assert_msg (ready, "“%s” can't be done", verb);
  /* Focus follows on the next turn of the loop. */
  g_usleep (3 * POLL_US);
}

/* A person's vehicle with no open job: its plate. */
static char *
free_plate (void)
{
  return book_text ("SELECT plate FROM vehicles v JOIN customers c ON c.id = v.customer_id"
                    " WHERE c.kind = 'person' AND plate IS NOT NULL AND v.family_id IS NOT NULL"
                    " AND EXISTS (SELECT 1 FROM jobs j WHERE j.vehicle_id = v.id)"
                    " AND NOT EXISTS (SELECT 1 FROM jobs j WHERE j.vehicle_id = v.id"
                    "  AND j.status NOT IN ('done', 'invoiced', 'paid'))"
                    " ORDER BY v.id LIMIT 1");
}

START_TEST (a_returning_customer_by_keyboard_alone)
{
  Desk *desk = advisor_desk ();
  g_autofree char *plate = free_plate ();
  g_autofree char *before = book_text ("SELECT max (number) FROM jobs");
  g_autofree char *service = g_strdup_printf (
      "SELECT (SELECT service_id FROM jobs WHERE number = %s + 1) ="
      " (SELECT service_id FROM jobs j JOIN vehicles v ON v.id = j.vehicle_id"
      "  WHERE v.plate = '%s' AND j.number <= %s ORDER BY j.number DESC LIMIT 1)",
      before, plate, before);
  g_autofree char *status
      = g_strdup_printf ("SELECT status FROM jobs WHERE number = %s + 1", before);
  g_autofree char *whose = g_strdup_printf (
      "SELECT v.plate FROM jobs j JOIN vehicles v ON v.id = j.vehicle_id WHERE number = %s + 1",
      before);
  g_autofree char *word
      = g_strdup_printf ("SELECT a.how || (a.amount_minor = e.total_minor) FROM authorisations a"
                         " JOIN estimates e ON e.id = a.estimate_id JOIN jobs j ON j.id = a.job_id"
                         " WHERE j.number = %s + 1",
                         before);
  g_autofree char *held = g_strdup_printf (
      "SELECT count (*) > 0 AND min (b.bay_id) > 0 AND min (b.machine_id) > 0"
      " AND min (b.technician_id) > 0 FROM bookings b"
      " JOIN booking_adapters a ON a.booking_id = b.id JOIN jobs j ON j.id = b.job_id"
      " WHERE j.number = %s + 1 AND b.state = 'planned'",
      before);
  g_autofree char *clash = g_strdup_printf (
      "SELECT count (*) FROM bookings b JOIN bookings o ON o.id <> b.id AND o.state <> 'dropped'"
      " AND o.starts_at < b.ends_at AND o.ends_at > b.starts_at AND (o.bay_id = b.bay_id"
      "  OR o.machine_id = b.machine_id OR o.technician_id = b.technician_id)"
      " JOIN jobs j ON j.id = b.job_id WHERE j.number = %s + 1",
      before);

  keys_pressed = 0;
  press (desk, "ctrl+k");
  type (desk, plate);
  g_object_unref (desk_find (desk, ATSPI_ROLE_LIST_ITEM, "Vehicles: "));
  press (desk, "ctrl+Return");
  desk_wait_title (desk, "New booking");
  wait_for_deed (desk, "Give the estimate");
  press (desk, "Return");
  wait_for_deed (desk, "Authorise");
  press (desk, "Return");
  wait_for_deed (desk, "Book");
  press (desk, "Return");
  desk_wait_title (desk, "Job ");
  g_print ("# a returning customer took %u keys\n", keys_pressed);
  ck_assert_uint_le (keys_pressed, MOST_KEYS);

  ck_book ("booked", "%s", status);
  ck_book (plate, "%s", whose);
  ck_book ("1", "%s", service);
  ck_book ("phone1", "%s", word);
  ck_book ("1", "%s", held);
  ck_book ("0", "%s", clash);
  ck_book ("0", "SELECT count (*) FROM drafts");
  desk_end (desk);
}
END_TEST

/* Types it into the find box; a line that says @wanted is found. */
static void
find (Desk *desk, const char *typed, const char *wanted)
{
  desk_key (desk, "ctrl+k");
  desk_key (desk, "ctrl+a");
  desk_type (desk, typed);
  g_object_unref (desk_find (desk, ATSPI_ROLE_LIST_ITEM, wanted));
}

/* Somebody on the telephone gives part of a name, a number, a plate, a fleet's number or the end of
 * a VIN: each leads to the vehicle, and it opens with what was done to it. */
START_TEST (found_by_whatever_is_said)
{
  static const char vehicle[]
      = "SELECT %s FROM vehicles v JOIN customers c ON c.id = v.customer_id JOIN customer_phones p"
        " ON p.customer_id = c.id WHERE v.unit_number IS NOT NULL AND v.plate IS NOT NULL AND"
        " EXISTS (SELECT 1 FROM jobs j WHERE j.vehicle_id = v.id AND j.status = 'paid')"
        " ORDER BY v.id, p.id LIMIT 1";
  Desk *desk = advisor_desk ();
  g_autofree char *plate = book_text (vehicle, "v.plate");
  g_autofree char *unit = book_text (vehicle, "'unit ' || v.unit_number");
  g_autofree char *vin = book_text (vehicle, "substr (v.vin, -6)");
  g_autofree char *customer = book_text (vehicle, "c.name");
  g_autofree char *part = book_text (vehicle, "substr (c.name, instr (c.name, ' ') + 1, 5)");
  g_autofree char *phone = book_text (vehicle, "substr (replace (p.number, ' ', ''), -7)");
  g_autofree char *job
      = book_text ("SELECT 'Job ' || max (j.number) FROM jobs j JOIN vehicles v ON v.id ="
                   " j.vehicle_id WHERE v.plate = '%s'",
                   plate);

  find (desk, part, customer);
  find (desk, phone, customer);
  find (desk, unit, plate);
  find (desk, vin, plate);
  find (desk, plate, plate);
  desk_key (desk, "Return");
  desk_wait_title (desk, plate);
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, job));
  desk_end (desk);
}
END_TEST

/* The VIN is the regulation's own example (49 CFR 565.15), with its check digit as computed there. */
START_TEST (somebody_new_with_a_vin)
{
  Desk *desk = advisor_desk ();

  press (desk, "ctrl+k");
  type (desk, "1G4AH59H45G118341");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "New vehicle with this VIN"));
  press (desk, "Return");
  desk_wait_title (desk, "New booking");
  type (desk, "Quill Ostrander");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "New customer “Quill Ostrander”"));
  press (desk, "Return");
  g_object_unref (
      desk_find (desk, ATSPI_ROLE_LABEL, "The check digit fits the other sixteen characters."));
  type (desk, "270 555 0188");
  /* Past the email and “Someone else” to the VIN and the plate; then on to the weight. */
  press_times (desk, "Tab", 4);
  type (desk, "8QZ 417");
  press_times (desk, "Tab", 7);
  type (desk, "13300");
  wait_for_deed (desk, "Give the estimate");
  press (desk, "ctrl+Return");
  wait_for_deed (desk, "Authorise");

  ck_book ("270 555 0188",
           "SELECT number FROM customer_phones p JOIN customers c ON c.id = p.customer_id"
           " WHERE c.name = 'Quill Ostrander'");
  ck_book ("1G4AH59H45G118341 8QZ 417 13300",
           "SELECT v.vin || ' ' || v.plate || ' ' || v.gvwr_lb FROM vehicles v"
           " JOIN customers c ON c.id = v.customer_id WHERE c.name = 'Quill Ostrander'");
  /* 2 L intake and 1 L fuel for a one-ton: common practice, no source. */
  ck_book ("1000 2000", "SELECT j.fuel_dose_ml || ' ' || j.intake_dose_ml FROM jobs j"
                        " JOIN customers c ON c.id = j.customer_id"
                        " WHERE c.name = 'Quill Ostrander' AND j.status = 'quoted'");
  desk_end (desk);
}
END_TEST

/* What was typed is there again after the program was killed. */
START_TEST (nothing_typed_is_lost)
{
  const char *const again[] = { "--demo", "--place", "booking", NULL };
  Desk *desk = advisor_desk ();

  /* Asked what is new: here a booking comes first. */
  press (desk, "ctrl+n");
  desk_focus (desk, "What is new");
  press (desk, "Return");
  desk_focus (desk, "Unsoot");
  desk_wait_title (desk, "New booking");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "New customer"));
  g_usleep (3 * POLL_US);
  type (desk, "Ysolde Marrant");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "New customer “Ysolde Marrant”"));
  press (desk, "Return");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Someone else"));
  ck_book ("1", "SELECT count (*) FROM drafts WHERE place = 'booking'"
                " AND text LIKE '%%Ysolde Marrant%%'");
  g_subprocess_force_exit (desk->process);
  g_subprocess_wait (desk->process, NULL, NULL);
  g_clear_object (&desk->application);
  g_clear_object (&desk->process);
  g_free (desk);

  desk = desk_start (again);
  desk_wait_title (desk, "New booking");
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, "did not carry out is here again"));
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Begin anew");
  ck_book ("0", "SELECT count (*) FROM drafts");
  desk_end (desk);
}
END_TEST

START_TEST (an_arrival_and_its_checks)
{
  g_autofree char *job = NULL, *sql = NULL, *record = NULL;
  const char *arguments[] = { "--demo", "--place", "job", "--record", NULL, NULL };
  Desk *desk = advisor_desk ();

  job = book_text ("SELECT j.id FROM jobs j WHERE status = 'booked' AND EXISTS (SELECT 1 FROM"
                   " meter_readings m WHERE m.vehicle_id = j.vehicle_id AND m.kind = 'odometer')"
                   " ORDER BY j.id LIMIT 1");
  desk_end (desk);
  arguments[4] = job;
  desk = desk_start (arguments);
  desk_wait_title (desk, "Job ");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Record the arrival");
  desk_wait_title (desk, "The vehicle is here");
  desk_focus (desk, "The vehicle is here");
  desk_type (desk, "999000");
  /* Past the unit, the hours, the new meter and the complaint. */
  press_times (desk, "Tab", 5);
  desk_type (desk, "P04O1");
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, "P04O1"));
  desk_key (desk, "ctrl+a");
  desk_type (desk, "p0401, P0299");
  press (desk, "Tab");
  desk_type (desk, "EGR cooler blanked off");
  desk_key (desk, "ctrl+Return");
  sql = g_strdup_printf ("SELECT status || ' ' || codes FROM jobs WHERE id = %s", job);
  ck_book ("arrived P0401 P0299", "%s", sql);
  g_free (sql);
  sql = g_strdup_printf ("SELECT emission_note FROM vehicles WHERE emission_altered = 1"
                         " AND id = (SELECT vehicle_id FROM jobs WHERE id = %s)",
                         job);
  ck_book ("EGR cooler blanked off", "%s", sql);
  g_free (sql);
  sql = g_strdup_printf ("SELECT typed FROM meter_readings WHERE job_id = %s", job);
  ck_book ("999000.0", "%s", sql);

  desk_focus (desk, "Unsoot");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Turbocharger shaft without play? No");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Override"));
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "The rest is as it should be");
  record = g_strdup_printf ("SELECT count (*) || ' ' || sum (answer = 'no') FROM prechecks"
                            " WHERE job_id = %s",
                            job);
  ck_book ("11 1", "%s", record);
  desk_end (desk);
}
END_TEST

static void
change_hands (Desk *desk, const char *name, const char *pin)
{
  desk_key (desk, "ctrl+l");
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, name);
  desk_focus (desk, "Who is at the desk");
  desk_type (desk, pin);
  desk_key (desk, "Return");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, name));
  desk_focus (desk, "Unsoot");
}

/* Before and after under other conditions show nothing, and that is said while the vehicle is
 * still here. */
START_TEST (an_unlike_pair_is_refused_at_once)
{
  g_autofree char *job = NULL, *sql = NULL;
  const char *arguments[] = { "--demo", "--place", "job", "--record", NULL, NULL };
  Desk *desk = advisor_desk ();

  job = book_text (
      "SELECT job_id FROM readings WHERE stage = 'before' AND kind = 'air-idle' AND job_id"
      " IN (SELECT id FROM jobs WHERE status = 'in-bay') ORDER BY job_id LIMIT 1");
  desk_end (desk);
  arguments[4] = job;
  desk = desk_start (arguments);
  desk_wait_title (desk, "Job ");
  desk_focus (desk, "Unsoot");
  change_hands (desk, "Ines Farrow", "5555");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Add a reading");
  desk_wait_title (desk, "A reading");
  desk_focus (desk, "A reading");
  /* The first that lacks its after is proposed, and the last condition remembered. */
  desk_type (desk, "16.1");
  press_times (desk, "Tab", 2);
  desk_key (desk, "ctrl+a");
  desk_type (desk, "1900");
  desk_key (desk, "ctrl+Return");
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, "readings compare within 50 rpm"));
  sql = g_strdup_printf ("SELECT count (*) FROM readings WHERE stage = 'after' AND job_id = %s",
                         job);
  ck_book ("0", "%s", sql);
  desk_key (desk, "ctrl+a");
  desk_type (desk, "700");
  desk_key (desk, "ctrl+Return");
  ck_book ("1", "%s", sql);
  g_free (sql);
  sql = g_strdup_printf ("SELECT kind || ' ' || typed || ' ' || rpm FROM readings"
                         " WHERE stage = 'after' AND job_id = %s",
                         job);
  ck_book ("air-idle 16.1 700.0", "%s", sql);
  desk_end (desk);
}
END_TEST

/* Each walk has a shop of its own: another's booking, left as it was, would be here again. */
static void
forget_shop (void)
{
  book_forget ("demo-");
}

static Suite *
desk_advisor_suite (void)
{
  Suite *suite = suite_create ("desk advisor");
  TCase *calls = tcase_create ("calls");

  tcase_add_checked_fixture (calls, forget_shop, forget_shop);
  tcase_add_test (calls, a_returning_customer_by_keyboard_alone);
  tcase_add_test (calls, found_by_whatever_is_said);
  tcase_add_test (calls, somebody_new_with_a_vin);
  tcase_add_test (calls, nothing_typed_is_lost);
  tcase_add_test (calls, an_arrival_and_its_checks);
  tcase_add_test (calls, an_unlike_pair_is_refused_at_once);
  suite_add_tcase (suite, calls);
  return suite;
}

UNSOOT_TEST_MAIN (desk_advisor_suite)
