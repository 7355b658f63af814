/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "program.h"

/* One job by command, from a customer's vehicle to the payment. After each deed the book is looked
 * into by SQLite's own library: what was posted, how much, by whom. */

#define PLATE_OF_A_FREE_VEHICLE                                                                    \
  "SELECT v.plate FROM vehicles v JOIN families f ON f.id = v.family_id"                           \
  " JOIN customers c ON c.id = v.customer_id WHERE f.make = 'Brindle' AND f.fuel_dose_ml IS NULL"  \
  " AND c.po_required = 0 AND v.plate IS NOT NULL AND v.gvwr_lb BETWEEN 8501 AND 14000"            \
  " AND NOT EXISTS (SELECT 1 FROM jobs j WHERE j.vehicle_id = v.id AND j.status NOT IN"            \
  " ('paid', 'invoiced', 'declined', 'cancelled')) ORDER BY v.id LIMIT 1"

static char *plate;
static gint64 job;
static gint64 job_id;

static gint64
staff (const char *initials)
{
  return raw_int ("SELECT id FROM staff WHERE initials = '%s'", initials);
}

static void
check_status (const char *wanted)
{
  ck_raw (wanted, "SELECT status FROM jobs WHERE id = " NUMBER, job_id);
  ck_raw (wanted,
          "SELECT status FROM job_status WHERE job_id = " NUMBER " ORDER BY id DESC LIMIT 1",
          job_id);
}

/* Dose by size: common practice, no source (1 L and 2 L for ¾-ton and one-ton). */
static void
ask_for_a_quote (void)
{
  gint64 before = raw_int ("SELECT count (*) FROM jobs");
  g_auto (Told) told = asked_of ("estimate --as MQ --vehicle '%s' --service 'Both sides' "
                                 "--preview --json",
                                 plate);
  g_autoptr (JsonNode) quote = json_told (&told);

  ck_assert_int_eq (json_int (quote, "fuel_dose_ml"), 1000);
  ck_assert_int_eq (json_int (quote, "intake_dose_ml"), 2000);
  ck_contains (json_text (quote, "fuel_dose_reason"), "1 L: class ");
  ck_contains (json_text (quote, "intake_dose_reason"), "2 L: class ");
  ck_assert_int_eq (raw_int ("SELECT count (*) FROM jobs"), before);
}

static void
make_the_estimate (void)
{
  g_auto (Told) told = asked_of ("estimate --as MQ --vehicle '%s' --service 'Both sides' "
                                 "--complaint 'Rough idle' --json",
                                 plate);
  g_autoptr (JsonNode) made = json_told (&told);

  job = json_int (made, "job");
  job_id = raw_int ("SELECT id FROM jobs WHERE number = " NUMBER, job);
  check_status ("quoted");
  ck_raw ("Rough idle", "SELECT complaint FROM jobs WHERE id = " NUMBER, job_id);
  ck_assert_int_eq (raw_int ("SELECT staff_id FROM estimates WHERE job_id = " NUMBER, job_id),
                    staff ("MQ"));
}

/* EN 16931: line nets add up (BR-CO-10), tax is taxable × rate for each category, rounded half up
 * to two decimals (BR-CO-17), and the total is their sum (BR-CO-15). Reckoned by SQLite alone. */
#define BILL                                                                                       \
  "WITH net AS (SELECT t.category AS category, t.rate_milli_percent AS rate,"                      \
  " (l.quantity_milli * l.unit_price_minor + 500) / 1000 AS minor FROM job_lines l"                \
  " JOIN tax_rules t ON t.line_kind = l.kind WHERE l.job_id = " NUMBER                             \
  " AND l.state <> 'declined'), row AS (SELECT SUM (minor) AS taxable,"                            \
  " (SUM (minor) * rate + 50000) / 100000 AS tax FROM net GROUP BY category, rate) "

static void
check_the_bill (const char *table)
{
  g_autofree char *sql = g_strdup_printf (BILL "SELECT SUM (taxable) || ' ' || SUM (tax) || ' ' || "
                                               "(SUM (taxable) + SUM (tax)) FROM row",
                                          job_id);
  g_autofree char *wanted = raw ("%s", sql);

  ck_raw (wanted,
          "SELECT net_minor || ' ' || tax_minor || ' ' || total_minor FROM %s"
          " WHERE job_id = " NUMBER " ORDER BY id LIMIT 1",
          table, job_id);
}

static void
take_the_word (void)
{
  g_auto (Told) told
      = asked_of ("authorise " NUMBER " --as MQ --by 'Rin Calloway' --how phone", job);

  ck_done (told);
  ck_raw ("Rin Calloway phone 1",
          "SELECT a.by_name || ' ' || a.how || ' ' || (a.amount_minor = e.total_minor)"
          " FROM authorisations a JOIN estimates e ON e.id = a.estimate_id"
          " WHERE a.job_id = " NUMBER,
          job_id);
  ck_raw ("0", "SELECT count (*) FROM job_lines WHERE state <> 'authorised' AND job_id = " NUMBER,
          job_id);
}

/* The first half hour of the next days at which nobody objects. */
static void
book_it (void)
{
  gint64 start = walk_now - walk_now % 1800 + 86400;

  for (int i = 0; i < 7 * 48; i++, start += 1800)
    {
      g_auto (Told) told = asked_of ("book " NUMBER " --as MQ --start " NUMBER
                                     " --bay 'Bay 2' --machine 'Cart B' --technician IF",
                                     job, start);
      if (told.status == 0)
        break;
      ck_assert_int_eq (told.status, 1);
    }
  check_status ("booked");
  ck_raw ("1",
          "SELECT count (*) FROM bookings WHERE state = 'planned' AND job_id = " NUMBER
          " AND technician_id = (SELECT id FROM staff WHERE initials = 'IF')",
          job_id);
  ck_assert_int_gt (raw_int ("SELECT count (*) FROM booking_adapters a JOIN bookings b"
                             " ON b.id = a.booking_id WHERE b.job_id = " NUMBER,
                             job_id),
                    0);
  walk_now = raw_int ("SELECT starts_at FROM bookings WHERE job_id = " NUMBER, job_id);
}

static void
let_it_arrive (void)
{
  gint64 metres = raw_int ("SELECT MAX (m.metres) FROM meter_readings m JOIN jobs j"
                           " ON j.vehicle_id = m.vehicle_id WHERE j.id = " NUMBER,
                           job_id);
  g_auto (Told) told
      = asked_of ("arrive " NUMBER " --as MQ --odometer '" NUMBER " km' --codes 'p0401, P0299'",
                  job, metres / 1000 + 100);

  ck_done (told);
  check_status ("arrived");
  ck_raw ("P0401 P0299", "SELECT codes FROM jobs WHERE id = " NUMBER, job_id);
  ck_raw ("km", "SELECT unit FROM meter_readings WHERE job_id = " NUMBER " AND kind = 'odometer'",
          job_id);
}

static void
measure (const char *stage, const char *value)
{
  g_auto (Told) told = asked_of ("reading " NUMBER " idle-scatter %s --as IF --stage %s --unit rpm "
                                 "--instrument 'scan tool' --rpm 700 --coolant '86 °C' --egr shut",
                                 job, value, stage);

  ck_done (told);
  ck_raw (value,
          "SELECT typed FROM readings WHERE stage = '%s' AND kind = 'idle-scatter'"
          " AND job_id = " NUMBER,
          stage, job_id);
}

/* Nothing begins before every check is answered, and a bare no keeps it so. */
static void
look_first (void)
{
  g_auto (Told) early = asked_of ("run begin " NUMBER " --as IF", job);
  ck_refused (early, 1, "Not answered");
  g_auto (Told) bad = asked_of ("check " NUMBER " --as IF --answer turbo=no --rest", job);
  ck_done (bad);
  g_auto (Told) still = asked_of ("run begin " NUMBER " --as IF", job);
  ck_refused (still, 1, "shaft without play? No.");
  g_auto (Told) over = asked_of ("check " NUMBER " --as IF --answer turbo=no --override"
                                 " --reason 'within its limit'",
                                 job);
  ck_refused (over, 1, "lead technician");
  g_auto (Told) done = asked_of ("check " NUMBER " --as IF --answer turbo=yes", job);
  ck_done (done);
  ck_raw ("12", "SELECT count (*) FROM prechecks WHERE job_id = " NUMBER, job_id);
  check_status ("arrived");
}

static void
begin_the_run (void)
{
  g_auto (Told) told = asked_of ("run begin " NUMBER " --as IF", job);

  ck_done (told);
  check_status ("in-bay");
  ck_raw ("began",
          "SELECT e.kind FROM run_events e JOIN runs r ON r.id = e.run_id"
          " WHERE r.job_id = " NUMBER " ORDER BY e.seq LIMIT 1",
          job_id);
}

/* A lot of the fluid that the job is to be done with. */
static char *
lot_for (const char *side)
{
  return raw ("SELECT f.code || ' ' || l.code FROM lots l JOIN fluids f ON f.id = l.fluid_id"
              " JOIN job_lines j ON j.fluid_id = f.id WHERE j.job_id = " NUMBER
              " AND f.side = '%s' AND l.stop_reason IS NULL"
              " AND (l.expires_on IS NULL OR l.expires_on > '2025-12-31')"
              " AND (SELECT SUM (m.ml) FROM stock_moves m WHERE m.lot_id = l.id) >= 2000"
              " ORDER BY l.id LIMIT 1",
              job_id, side);
}

/* What a technician would enter for the step that is offered. */
static char *
entry_for (JsonNode *offer)
{
  const char *act = json_text (offer, "act"), *subject = json_text (offer, "subject");
  const char *side = json_text (offer, "side");

  if (g_str_equal (act, "fill"))
    {
      g_autofree char *lot = lot_for (side);
      ck_assert_msg (lot != NULL, "no lot for the %s side", side);
      return g_strdup_printf ("--volume '" NUMBER " mL' --lot '%s'", json_int (offer, "volume_ml"),
                              lot);
    }
  if (g_str_equal (act, "measure") && g_str_equal (subject, "tank"))
    return g_strdup ("--volume '60 mL'");
  if (g_str_equal (subject, "oil"))
    return g_strdup ("--value ok");
  return g_strdup ("");
}

/* Does what the run asks for, and sees that exactly that was posted. */
static gboolean
take_a_step (void)
{
  g_auto (Told) shown = asked_of ("run show " NUMBER " --json", job);
  g_autoptr (JsonNode) offer = json_told (&shown);
  g_autofree char *entry = NULL;
  const char *next = json_text (offer, "next");
  const char *kind;

  if (!g_str_equal (json_text (offer, "run"), "running"))
    return FALSE;
  walk_now += 30;
  if (g_str_equal (next, "cautions") || g_str_equal (next, "start"))
    entry = g_strdup_printf ("--%s", next);
  else if (g_str_equal (next, "end"))
    {
      walk_now += 240;
      entry = json_text (offer, "side")[0] != '\0'
                  ? g_strdup_printf ("--volume '" NUMBER " mL'", json_int (offer, "volume_ml"))
                  : g_strdup ("");
    }
  else
    entry = entry_for (offer);
  g_auto (Told) told = asked_of ("run step " NUMBER " " NUMBER " --as IF %s", job,
                                 json_int (offer, "step"), entry);
  ck_assert_msg (told.status == 0, "step " NUMBER " (%s): %s", json_int (offer, "step"), shown.out,
                 told.err);
  ck_assert_str_ne (next, "");
  kind = g_str_equal (next, "cautions") ? "caution"
         : g_str_equal (next, "start")  ? "started"
         : g_str_equal (next, "end")    ? "ended"
                                        : "confirm";
  g_autofree char *wanted = g_strdup_printf ("%s " NUMBER, kind, walk_now);
  ck_raw (wanted,
          "SELECT e.kind || ' ' || e.at FROM run_events e JOIN runs r ON r.id = e.run_id"
          " WHERE r.job_id = " NUMBER " ORDER BY e.seq DESC LIMIT 1",
          job_id);
  return TRUE;
}

static void
take_every_step (void)
{
  gint64 steps = raw_int ("SELECT count (*) FROM procedure_steps s JOIN runs r"
                          " ON r.procedure_id = s.procedure_id WHERE r.job_id = " NUMBER,
                          job_id);

  while (take_a_step ())
    continue;
  ck_assert_int_eq (raw_int ("SELECT count (DISTINCT e.step) FROM run_events e JOIN runs r"
                             " ON r.id = e.run_id WHERE r.job_id = " NUMBER
                             " AND e.kind IN ('confirm', 'ended')",
                             job_id),
                    steps);
  ck_raw ("0 0",
          "SELECT SUM (e.seq IS NULL) || ' ' || (MAX (e.seq) - count (*)) FROM run_events e"
          " JOIN runs r ON r.id = e.run_id WHERE r.job_id = " NUMBER,
          job_id);
}

/* The fluid poured is out of its lots; what each tank holds is recorded. */
static void
finish_it (void)
{
  g_auto (Told) told = asked_of ("finish " NUMBER " --as IF --signature 'Ines Farrow'", job);

  ck_done (told);
  check_status ("done");
  ck_raw ("fuel -1000,intake -2000",
          "SELECT group_concat (u) FROM (SELECT f.side || ' ' || SUM (m.ml) AS u"
          " FROM stock_moves m JOIN lots l ON l.id = m.lot_id JOIN fluids f ON f.id = l.fluid_id"
          " WHERE m.kind = 'use' AND m.job_id = " NUMBER " GROUP BY f.side ORDER BY f.side)",
          job_id);
  ck_raw ("finished Ines Farrow",
          "SELECT outcome || ' ' || signature FROM runs WHERE job_id = " NUMBER, job_id);
  ck_raw ("fuel held 60,intake clean 0",
          "SELECT group_concat (u) FROM (SELECT t.side || ' ' || e.contents || ' ' || e.ml AS u"
          " FROM tanks t JOIN runs r ON r.machine_id = t.machine_id JOIN tank_events e"
          " ON e.id = (SELECT MAX (x.id) FROM tank_events x WHERE x.tank_id = t.id)"
          " WHERE r.job_id = " NUMBER " ORDER BY t.side)",
          job_id);
  ck_raw ("1", "SELECT next_due_on > '2025-12-01' FROM jobs WHERE id = " NUMBER, job_id);
}

static gint64
invoice_it (void)
{
  gint64 last = raw_int ("SELECT COALESCE (MAX (number), 0) FROM invoices");
  g_auto (Told) told = asked_of ("invoice " NUMBER " --as MQ --json", job);
  g_autoptr (JsonNode) made = json_told (&told);

  ck_assert_int_eq (json_int (made, "number"), last + 1);
  check_status ("invoiced");
  check_the_bill ("invoices");
  ck_raw ("1",
          "SELECT SUM (l.net_minor) = i.net_minor FROM invoice_lines l JOIN invoices i"
          " ON i.id = l.invoice_id WHERE i.job_id = " NUMBER,
          job_id);
  return last + 1;
}

static void
pay_it (gint64 invoice)
{
  gint64 total = raw_int ("SELECT total_minor FROM invoices WHERE number = " NUMBER, invoice);
  g_auto (Told) part = asked_of ("pay " NUMBER " --as MQ --method cash --amount 100.00", invoice);
  ck_done (part);
  check_status ("invoiced");
  g_auto (Told) rest = asked_of ("pay " NUMBER " --as MQ --method card --json", invoice);
  g_autoptr (JsonNode) paid = json_told (&rest);

  g_autofree char *wanted
      = g_strdup_printf (NUMBER ".%02d", (total - 10000) / 100, (int) ((total - 10000) % 100));
  ck_assert_str_eq (json_text (paid, "paid"), wanted);
  ck_assert_str_eq (json_text (paid, "open"), "0.00");
  check_status ("paid");
  ck_raw ("1 2",
          "SELECT (SUM (p.amount_minor) = i.total_minor) || ' ' || count (*) FROM payments p"
          " JOIN invoices i ON i.id = p.invoice_id WHERE i.number = " NUMBER,
          invoice);
}

/* Each paper names the job's number, and the VIN as it stands in the book. */
static void
print_the_papers (void)
{
  static const char *const kinds[] = { "estimate", "work-order", "customer-report", "invoice" };
  g_autofree char *vin = raw ("SELECT v.vin FROM vehicles v JOIN jobs j ON j.vehicle_id = v.id"
                              " WHERE j.id = " NUMBER,
                              job_id);

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autofree char *path = g_build_filename (walk_folder, "paper.pdf", NULL);
      g_auto (Told) told = asked_of ("paper %s " NUMBER " -o '%s'", kinds[i], job, path);
      ck_done (told);
      g_autofree char *text = text_of_pdf (path);
      g_autofree char *number = g_strdup_printf (NUMBER, job);
      ck_contains (text, number);
      ck_contains (text, plate);
      if (i < 3)
        ck_contains (text, vin);
      g_unlink (path);
    }
}

START_TEST (one_job_from_the_question_to_the_payment)
{
  plate = raw (PLATE_OF_A_FREE_VEHICLE);
  ck_assert_ptr_nonnull (plate);

  ask_for_a_quote ();
  make_the_estimate ();
  check_the_bill ("estimates");
  take_the_word ();
  book_it ();
  let_it_arrive ();
  measure ("before", "21");
  look_first ();
  begin_the_run ();
  take_every_step ();
  measure ("after", "8");
  finish_it ();
  gint64 invoice = invoice_it ();
  pay_it (invoice);
  print_the_papers ();

  g_auto (Told) sound = asked_of ("verify");
  ck_done (sound);
}
END_TEST

static Suite *
job_suite (void)
{
  Suite *suite = suite_create ("command-job");
  TCase *tcase = tcase_create ("command-job");

  tcase_add_unchecked_fixture (tcase, make_walk, forget_walk);
  tcase_add_checked_fixture (tcase, open_walk, close_walk);
  tcase_set_timeout (tcase, 240);
  tcase_add_test (tcase, one_job_from_the_question_to_the_payment);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (job_suite)
