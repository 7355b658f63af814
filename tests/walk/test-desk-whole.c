/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <string.h>

#include "bay-kit.h"
#include "book-kit.h"
#include "desk-keys.h"
#include "suite.h"

/* One vehicle through the whole shop, by the screen alone: called in, estimated, allowed, booked,
 * here, looked at, measured, run and signed for, measured again, its fluid out of stock, invoiced,
 * paid in two parts, one line taken back. What came of it is read from the book by SQLite and from
 * the papers by pdftotext. */

/* An invented maker's number; the check digit by the weights of 49 CFR 565.15: sum 305, mod 11
 * is 8. */
#define VIN "A0BA5DET8KF777123"
#define NUMBER "%" G_GINT64_FORMAT

/* The invented shop's prices in cents, as its catalogue has them. */
enum
{
  LABOUR = 34900,
  GASKET = 950,
  DISPOSAL = 1800,
  TAX_MILLI_PERCENT = 7250, /* on fluids and kits; work and disposal are taxed at zero */
  FIRST_PAYMENT = 20000
};

/* Millilitres. The doses for a ¾-ton are common practice, no source. */
enum
{
  FUEL_DOSE = 1000,
  INTAKE_DOSE = 2000,
  FUEL_POURED = 1100, /* a cupful more than the rule says */
  FUEL_USED = 950,    /* the procedure's fuel step ends at 0.95 of the dose */
};

typedef struct
{
  Desk *desk;
  gint64 job; /* its number */
  char *title;
  gint64 total; /* cents, reckoned here */
} Walk;

static gint64
price_of_litre (const char *code)
{
  static const struct
  {
    const char *code;
    gint64 cents;
  } prices[] = { { "A", 4200 }, { "B", 4800 }, { "C", 5600 },
                 { "R", 3900 }, { "S", 4400 }, { "T", 5200 } };

  for (gsize i = 0; i < G_N_ELEMENTS (prices); i++)
    if (g_str_equal (prices[i].code, code))
      return prices[i].cents;
  ck_abort_msg ("no fluid is called %s", code);
}

static char *
fluid_code (gint64 job, const char *side)
{
  return book_text ("SELECT f.code FROM job_lines l JOIN fluids f ON f.id = l.fluid_id"
                    " JOIN jobs j ON j.id = l.job_id WHERE j.number = " NUMBER " AND f.side = '%s'",
                    job, side);
}

/* One gasket and both fluids are taxed, rounded once, half up (EN 16931, BR-CO-17). */
static gint64
reckon_total (gint64 job)
{
  g_autofree char *fuel = fluid_code (job, "fuel"), *intake = fluid_code (job, "intake");
  const gint64 fluids
      = price_of_litre (fuel) * FUEL_DOSE / 1000 + price_of_litre (intake) * INTAKE_DOSE / 1000;
  const gint64 taxed = fluids + GASKET;
  const gint64 tax = (taxed * TAX_MILLI_PERCENT + 50000) / 100000;

  return LABOUR + DISPOSAL + taxed + tax;
}

static char *
dollars (gint64 cents)
{
  return g_strdup_printf (NUMBER ".%02d", cents / 100, (int) (cents % 100));
}

static void
is_shown (Walk *walk, const char *name)
{
  g_object_unref (desk_find (walk->desk, ATSPI_ROLE_INVALID, name));
}

static void
press (Walk *walk, const char *name)
{
  desk_click (walk->desk, ATSPI_ROLE_PUSH_BUTTON, name);
}

/* Presses the button of a deed; its window has the keyboard then. */
static void
open_deed (Walk *walk, const char *button, const char *title)
{
  press (walk, button);
  desk_wait_title (walk->desk, title);
  desk_focus (walk->desk, title);
}

static void
back_at_desk (Walk *walk)
{
  desk_focus (walk->desk, "Unsoot");
}

static void
open_job (Walk *walk)
{
  g_autofree char *number = g_strdup_printf (NUMBER, walk->job);

  desk_open_job (walk->desk, number);
}

static void
somebody_new_calls (Walk *walk)
{
  desk_key (walk->desk, "ctrl+k");
  desk_wait_keyboard (walk->desk, "Find anything");
  desk_type (walk->desk, VIN);
  g_object_unref (desk_find (walk->desk, ATSPI_ROLE_PUSH_BUTTON, "New vehicle with this VIN"));
  desk_key (walk->desk, "Return");
  desk_wait_title (walk->desk, "New booking");
  desk_wait_keyboard (walk->desk, "Who is calling");
  desk_type (walk->desk, "Tilda Arkwright");
  g_object_unref (desk_find (walk->desk, ATSPI_ROLE_PUSH_BUTTON, "New customer “Tilda Arkwright”"));
  desk_key (walk->desk, "Return");
  desk_wait_keyboard (walk->desk, "Phone");
  desk_fill (walk->desk, "Phone", "270 555 0177");
  /* The shop has seen such a number before, and knows what it was. */
  desk_tab_to (walk->desk, "Brindle T4 5.1");
  desk_key (walk->desk, "space");
  desk_fill (walk->desk, "Plate", "4TA 906");
  desk_fill (walk->desk, "Complaint", "Smokes uphill");
}

/* Estimate, the customer's word, the first free time. */
static void
estimate_and_book (Walk *walk)
{
  static const char *const deeds[] = { "Give the estimate", "Authorise", "Book" };

  for (gsize i = 0; i < G_N_ELEMENTS (deeds); i++)
    {
      desk_wait_ready (walk->desk, ATSPI_ROLE_PUSH_BUTTON, deeds[i]);
      desk_key (walk->desk, "ctrl+Return");
    }
  desk_wait_title (walk->desk, "Job ");
  walk->job = book_int ("SELECT max (number) FROM jobs");
  walk->title = g_strdup_printf ("Job " NUMBER, walk->job);
  walk->total = reckon_total (walk->job);
}

static void
check_booking (Walk *walk)
{
  g_autofree char *total = g_strdup_printf (NUMBER "/" NUMBER, walk->total, walk->total);

  ck_book ("Tilda Arkwright/270 555 0177/" VIN "/4TA 906/Brindle/T4/9900",
           "SELECT c.name || '/' || p.number || '/' || v.vin || '/' || v.plate || '/' || v.make"
           " || '/' || v.model || '/' || v.gvwr_lb FROM jobs j JOIN customers c ON c.id ="
           " j.customer_id JOIN customer_phones p ON p.customer_id = c.id JOIN vehicles v ON v.id"
           " = j.vehicle_id WHERE j.number = " NUMBER,
           walk->job);
  ck_book ("Brindle T4 5.1/1000/2000/booked/Smokes uphill",
           "SELECT f.name || '/' || j.fuel_dose_ml || '/' || j.intake_dose_ml || '/' || j.status"
           " || '/' || j.complaint FROM jobs j JOIN families f ON f.id = j.family_id"
           " WHERE j.number = " NUMBER,
           walk->job);
  ck_book (total,
           "SELECT e.total_minor || '/' || a.amount_minor FROM estimates e JOIN authorisations a"
           " ON a.estimate_id = e.id JOIN jobs j ON j.id = e.job_id WHERE j.number = " NUMBER,
           walk->job);
  /* Bay, machine and technician, and every adapter: nobody else has them at that time. */
  ck_book ("0",
           "SELECT count (*) FROM bookings b JOIN jobs j ON j.id = b.job_id JOIN bookings o ON"
           " o.id <> b.id AND o.state <> 'dropped' AND o.starts_at < b.ends_at AND o.ends_at >"
           " b.starts_at WHERE j.number = " NUMBER " AND (o.bay_id = b.bay_id OR o.machine_id ="
           " b.machine_id OR o.technician_id = b.technician_id OR EXISTS (SELECT 1 FROM"
           " booking_adapters x JOIN booking_adapters y ON y.item_id = x.item_id WHERE"
           " x.booking_id = b.id AND y.booking_id = o.id))",
           walk->job);
}

static void
vehicle_arrives (Walk *walk)
{
  open_deed (walk, "Record the arrival", "The vehicle is here");
  desk_fill (walk->desk, "Odometer", "84210");
  desk_fill (walk->desk, "Trouble codes", "p0401");
  desk_key (walk->desk, "ctrl+Return");
  ck_book ("arrived/P0401", "SELECT status || '/' || codes FROM jobs WHERE number = " NUMBER,
           walk->job);
  /* 84,210 miles of 1609.344 m (NIST SP 811): 135,522,858.24 m. */
  ck_book ("135522858",
           "SELECT m.metres FROM meter_readings m JOIN jobs j ON j.id = m.job_id"
           " WHERE j.number = " NUMBER,
           walk->job);
  back_at_desk (walk);
  press (walk, "The rest is as it should be");
  ck_book ("11/11",
           "SELECT count (*) || '/' || sum (p.answer = 'yes') FROM prechecks p JOIN jobs j ON"
           " j.id = p.job_id WHERE j.number = " NUMBER,
           walk->job);
}

/* Smoke, with the engine warm both times; the second half is proposed with its condition. */
static void
measure (Walk *walk, const char *stage, const char *opacity)
{
  open_deed (walk, "Add a reading", "A reading");
  desk_wait_keyboard (walk->desk, "Value");
  desk_fill (walk->desk, "Value", opacity);
  if (g_str_equal (stage, "before"))
    {
      desk_fill (walk->desk, "Read with", "opacity meter");
      desk_fill (walk->desk, "Coolant", "86");
    }
  desk_key (walk->desk, "ctrl+Return");
  ck_book (opacity,
           "SELECT r.typed FROM readings r JOIN jobs j ON j.id = r.job_id WHERE j.number = " NUMBER
           " AND r.kind = 'opacity' AND r.stage = '%s'",
           walk->job, stage);
  back_at_desk (walk);
}

/* A cupful more goes into the fuel tank than the dose. */
static void
enter (Desk *desk, const char *deed, gpointer data)
{
  bay_enter_usual (desk, deed, data);
  if (strstr (deed, "Fill the fuel tank") == NULL)
    return;
  for (int ml = FUEL_DOSE; ml < FUEL_POURED; ml += 50)
    desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Poured, more");
}

static void
technician_runs_it (Walk *walk)
{
  g_autofree char *cart
      = book_text ("SELECT m.name FROM machines m WHERE NOT EXISTS (SELECT 1 FROM runs r WHERE"
                   " r.machine_id = m.id AND r.outcome IS NULL) ORDER BY m.name LIMIT 1");
  int presses;

  /* By keyboard, which never goes to a page that is not in front. */
  desk_tab_to (walk->desk, "Start");
  desk_key (walk->desk, "Return");
  desk_wait_title (walk->desk, "Bay, job ");
  desk_tab_to (walk->desk, cart);
  desk_key (walk->desk, "space");
  press (walk, "Begin the run");
  presses = bay_carry (walk->desk, "Sign off: ", enter, NULL);
  g_print ("# the run took %d presses of the main button\n", presses);
  press (walk, "Sign off: Sign that the engine is whole");
  is_shown (walk, "Signed off");
}

static void
check_run (Walk *walk)
{
  ck_book ("done/finished/Ines Farrow",
           "SELECT j.status || '/' || r.outcome || '/' || r.signature FROM jobs j JOIN runs r ON"
           " r.job_id = j.id WHERE j.number = " NUMBER,
           walk->job);
  /* Every step of the version it was run by is done, none passed over. */
  ck_book ("0",
           "SELECT (SELECT count (*) FROM procedure_steps s WHERE s.procedure_id = r.procedure_id)"
           " - (SELECT count (DISTINCT e.step) FROM run_events e WHERE e.run_id = r.id AND e.kind"
           " IN ('confirm', 'ended')) FROM runs r JOIN jobs j ON j.id = r.job_id"
           " WHERE j.number = " NUMBER,
           walk->job);
  ck_book ("fuel -1100, intake -2000",
           "SELECT group_concat (words, ', ') FROM (SELECT f.side || ' ' || sum (m.ml) AS words"
           " FROM stock_moves m JOIN lots l ON l.id = m.lot_id JOIN fluids f ON f.id = l.fluid_id"
           " JOIN jobs j ON j.id = m.job_id WHERE j.number = " NUMBER
           " GROUP BY f.side ORDER BY f.side)",
           walk->job);
  /* What is left is kept and labelled; the other tank is flushed. */
  ck_book ("fuel held 150, intake clean 0",
           "SELECT group_concat (words, ', ') FROM (SELECT t.side || ' ' || e.contents || ' ' ||"
           " e.ml AS words FROM tank_events e JOIN tanks t ON t.id = e.tank_id WHERE e.id IN"
           " (SELECT max (x.id) FROM tank_events x JOIN tanks y ON y.id = x.tank_id JOIN runs r ON"
           " r.machine_id = y.machine_id JOIN jobs j ON j.id = r.job_id WHERE j.number = " NUMBER
           " GROUP BY x.tank_id) ORDER BY t.side)",
           walk->job);
}

static void
clerk_looks (Walk *walk)
{
  g_autofree char *code = fluid_code (walk->job, "fuel");
  g_autofree char *fluid = book_text ("SELECT name FROM fluids WHERE code = '%s'", code);
  g_autofree char *row = g_strdup_printf ("%s:", fluid);

  desk_click (walk->desk, ATSPI_ROLE_LIST_ITEM, "Fluids");
  desk_wait_title (walk->desk, "Fluids");
  desk_click (walk->desk, ATSPI_ROLE_LIST_ITEM, row);
  desk_wait_title (walk->desk, fluid);
  is_shown (walk, "1.1 L used, dose 1 L");
  is_shown (walk, walk->title);
}

static char *
save_paper (Walk *walk, const char *title)
{
  g_autofree char *file = g_build_filename (g_get_user_cache_dir (), "p.pdf", NULL);
  char *text;

  g_unlink (file);
  desk_wait_title (walk->desk, title);
  g_object_unref (desk_find (walk->desk, ATSPI_ROLE_IMAGE, "Page 1 of"));
  press (walk, "Save…");
  desk_focus (walk->desk, "Save the paper");
  desk_key (walk->desk, "ctrl+a");
  desk_type (walk->desk, file);
  desk_key (walk->desk, "Return");
  text = paper_text (file);
  desk_wait_closed ("Save the paper");
  desk_escape (walk->desk, title);
  back_at_desk (walk);
  return text;
}

static void
says (const char *text, const char *words)
{
  ck_assert_msg (strstr (text, words) != NULL, "“%s” is not on the paper:\n%s", words, text);
}

static void
advisor_invoices (Walk *walk)
{
  const gint64 number = book_int ("SELECT max (number) + 1 FROM invoices");
  g_autofree char *invoice = g_strdup_printf ("Invoice " NUMBER, number);
  g_autofree char *digits = g_strdup_printf (NUMBER, number);
  g_autofree char *total = dollars (walk->total), *cents = g_strdup_printf (NUMBER, walk->total);
  g_autofree char *rest = dollars (walk->total - FIRST_PAYMENT), *text = NULL;

  open_job (walk);
  open_deed (walk, "Invoice…", "Invoice this job");
  desk_key (walk->desk, "Return");
  ck_book (cents, "SELECT total_minor FROM invoices WHERE number = " NUMBER, number);
  back_at_desk (walk);
  desk_open_invoice (walk->desk, digits);

  open_deed (walk, "Take payment…", "Take a payment");
  desk_fill (walk->desk, "Amount", "200");
  desk_key (walk->desk, "Return");
  back_at_desk (walk);
  is_shown (walk, rest);
  ck_book ("invoiced", "SELECT status FROM jobs WHERE number = " NUMBER, walk->job);
  open_deed (walk, "Take payment…", "Take a payment");
  desk_key (walk->desk, "Return");
  ck_book ("paid", "SELECT status FROM jobs WHERE number = " NUMBER, walk->job);
  ck_book (cents,
           "SELECT sum (p.amount_minor) FROM payments p JOIN invoices i ON i.id = p.invoice_id"
           " WHERE i.number = " NUMBER,
           number);
  back_at_desk (walk);

  press (walk, "Show, save or print");
  text = save_paper (walk, invoice);
  says (text, "Tilda Arkwright");
  says (text, VIN);
  says (text, "84 210 mi on ");
  says (text, total);
}

/* The customer takes the used fluid along: its disposal is taken back, and nothing else. */
static void
advisor_credits (Walk *walk)
{
  static const char *const kept[] = { "Both sides, ", "Fuel fluid ", "Intake fluid ", "gasket, " };
  const gint64 number = book_int ("SELECT max (number) + 1 FROM invoices");

  open_deed (walk, "Credit note…", "Credit note");
  for (gsize i = 0; i < G_N_ELEMENTS (kept); i++)
    {
      desk_tab_to (walk->desk, kept[i]);
      desk_key (walk->desk, "space");
    }
  desk_fill (walk->desk, "Why", "Took the used fluid along");
  press (walk, "Issue the credit note");
  ck_book ("-1800/0",
           "SELECT total_minor || '/' || tax_minor FROM invoices WHERE kind = 'credit'"
           " AND number = " NUMBER,
           number);
  back_at_desk (walk);
}

static void
customer_gets_report (Walk *walk)
{
  g_autofree char *text = NULL;

  open_job (walk);
  press (walk, "Show: Service report");
  text = save_paper (walk, "Service report");
  says (text, walk->title);
  says (text, VIN);
  says (text, "31.5");
  says (text, "9.0");
}

START_TEST (one_vehicle_through_the_whole_shop)
{
  const char *const arguments[] = { "--demo", NULL };
  Walk walk = { .desk = desk_start (arguments) };

  desk_wait_title (walk.desk, "Today");
  back_at_desk (&walk);
  somebody_new_calls (&walk);
  estimate_and_book (&walk);
  check_booking (&walk);
  vehicle_arrives (&walk);

  desk_change_hands (walk.desk, "Ines Farrow", "5555");
  measure (&walk, "before", "31.5");
  technician_runs_it (&walk);
  check_run (&walk);
  open_job (&walk);
  measure (&walk, "after", "9.0");
  is_shown (&walk, "better");

  desk_change_hands (walk.desk, "Tobin Esker", "3333");
  clerk_looks (&walk);

  desk_change_hands (walk.desk, "Mara Quillen", "2222");
  advisor_invoices (&walk);
  advisor_credits (&walk);
  customer_gets_report (&walk);
  ck_book ("0", "SELECT count (*) FROM drafts");
  desk_end (walk.desk);
  g_free (walk.title);
}
END_TEST

static void
forget_book (void)
{
  g_autofree char *book = book_path ();

  if (book != NULL)
    g_unlink (book);
}

static Suite *
desk_whole_suite (void)
{
  Suite *suite = suite_create ("desk whole");
  TCase *whole = tcase_create ("whole");

  tcase_set_timeout (whole, 400);
  tcase_add_checked_fixture (whole, forget_book, forget_book);
  tcase_add_test (whole, one_vehicle_through_the_whole_shop);
  suite_add_tcase (suite, whole);
  return suite;
}

UNSOOT_TEST_MAIN (desk_whole_suite)
