/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo.h"
#include "migrate.h"
#include "run-traces.h"
#include "suite.h"
#include "vin.h"

/* The demo shop against what it promises, each promise asked of the book by plain SQL. */

#define NOW G_GINT64_CONSTANT (1781174400) /* 2026-06-11, a Thursday, 10:40 UTC */

static UnsootDb *
book_new (void)
{
  GError *error = NULL;
  UnsootDb *db = unsoot_db_open (NULL, UNSOOT_DB_CREATE, &error);

  ck_no_error (error);
  unsoot_migrate (db, NOW, &error);
  ck_no_error (error);
  return db;
}

static UnsootDb *
demo_new (gint64 now)
{
  GError *error = NULL;
  UnsootDb *db = book_new ();

  unsoot_demo_make (db, now, NULL, NULL, NULL, &error);
  ck_no_error (error);
  return db;
}

/* One shop in memory for every test that only asks. */
static UnsootDb *shared;

static void
make_shared (void)
{
  shared = demo_new (NOW);
}

static void
close_shared (void)
{
  g_clear_pointer (&shared, unsoot_db_close);
}

static gint64
ask (UnsootDb *db, const char *sql)
{
  GError *error = NULL;
  gint64 value = -1;

  unsoot_db_int (db, &value, &error, sql);
  ck_no_error (error);
  return value;
}

#define ck_between(value, low, high)                                                               \
  do                                                                                               \
    {                                                                                              \
      gint64 found = (value);                                                                      \
      ck_assert_msg (found >= (low) && found <= (high), "%s is %" G_GINT64_FORMAT, #value, found); \
    }                                                                                              \
  while (0)

START_TEST (test_people)
{
  UnsootDb *db = shared;

  ck_assert_int_eq (ask (db, "SELECT count(*) FROM customers"), 60);
  ck_assert_int_eq (ask (db, "SELECT count(*) FROM customers WHERE kind = 'fleet'"), 3);
  ck_between (ask (db, "SELECT count(*) FROM vehicles"), 110, 130);
  ck_assert_int_eq (ask (db, "SELECT count(*) FROM (SELECT vin FROM vehicles GROUP BY vin) v"),
                    ask (db, "SELECT count(*) FROM vehicles"));
  ck_assert_int_eq (ask (db, "SELECT count(*) FROM (SELECT name FROM customers GROUP BY name) c"),
                    60);
}
END_TEST

START_TEST (test_vins)
{
  GError *error = NULL;
  UnsootDb *db = shared;
  g_autoptr (UnsootQuery) query
      = unsoot_db_query (db, &error, "SELECT vin, year FROM vehicles ORDER BY id");

  ck_no_error (error);
  while (unsoot_query_step (query, &error) == UNSOOT_STEP_ROW)
    {
      const char *vin = unsoot_query_get_text (query, 0);
      g_autoptr (UnsootVinCheck) check = unsoot_vin_check (vin);
      UnsootVinYears years = unsoot_vin_model_years (vin, UNSOOT_WEIGHT_H, 2026);

      ck_assert_msg (check->verdict == UNSOOT_VIN_VALID, "%s: %s", vin, check->sentence);
      /* ISO 3780 gives codes from A0 to no country (from memory). */
      ck_assert_msg (g_str_has_prefix (vin, "A0"), "%s", vin);
      ck_assert_msg (years.n > 0
                         && (years.years[0] == unsoot_query_get_int (query, 1)
                             || years.years[years.n - 1] == unsoot_query_get_int (query, 1)),
                     "%s of %d", vin, (int) unsoot_query_get_int (query, 1));
    }
  ck_no_error (error);
}
END_TEST

START_TEST (test_stores)
{
  UnsootDb *db = shared;

  ck_assert_int_eq (ask (db, "SELECT count(*) FROM families"), 5);
  ck_assert_int_eq (ask (db, "SELECT count(*) FROM procedures WHERE state = 'in-use'"), 5);
  ck_assert_int_eq (ask (db, "SELECT count(*) FROM adapter_types"), 20);
  ck_assert_int_eq (ask (db, "SELECT count(*) FROM (SELECT type_id FROM adapter_items "
                             "GROUP BY type_id HAVING count(*) BETWEEN 2 AND 3) t"),
                    20);
  ck_assert_int_eq (ask (db, "SELECT count(*) FROM fluids WHERE side = 'fuel'"), 3);
  ck_assert_int_eq (ask (db, "SELECT count(*) FROM fluids WHERE side = 'intake'"), 3);
  ck_assert_int_eq (ask (db, "SELECT count(*) FROM machines"), 3);
  ck_assert_int_eq (ask (db, "SELECT count(*) FROM (SELECT lot_id FROM stock_moves GROUP BY lot_id "
                             "HAVING sum(ml) < 0) s"),
                    0);
  /* Lots that go off within two weeks, and several lots a fluid. */
  ck_between (ask (db, "SELECT count(*) FROM lots WHERE expires_on BETWEEN '2026-06-11' AND "
                       "'2026-06-25'"),
              1, 3);
  ck_assert_int_eq (
      ask (db, "SELECT count(*) FROM (SELECT fluid_id FROM lots GROUP BY fluid_id) f"), 6);
}
END_TEST

START_TEST (test_history)
{
  UnsootDb *db = shared;

  ck_between (ask (db, "SELECT min(arrived_at) FROM jobs"), NOW - 440 * 86400, NOW - 400 * 86400);
  ck_between (ask (db, "SELECT count(*) FROM jobs WHERE status = 'paid'"), 150, 500);
  ck_between (ask (db, "SELECT count(*) FROM jobs WHERE status = 'declined'"), 3, 40);
  ck_between (ask (db, "SELECT count(*) FROM jobs WHERE comeback_of IS NOT NULL"), 1, 3);
  ck_assert_int_eq (ask (db, "SELECT count(*) FROM jobs j JOIN jobs was ON was.id = j.comeback_of "
                             "WHERE was.vehicle_id <> j.vehicle_id"),
                    0);
  /* Of late jobs that are done there are pictures from both sides of the work. */
  ck_between (ask (db, "SELECT count(*) FROM photos a JOIN photos b ON b.job_id = a.job_id AND "
                       "b.angle = a.angle WHERE a.stage = 'before' AND b.stage = 'after'"),
              5, 20);
  /* Numbers without gaps. */
  ck_assert_int_eq (ask (db, "SELECT max(number) - min(number) + 1 - count(*) FROM invoices"), 0);
}
END_TEST

/* Unpaid invoices by how long they are over their date. */
START_TEST (test_unpaid_of_several_ages)
{
  UnsootDb *db = shared;
  static const char *const spans[][2] = { { "2026-05-12", "2026-06-11" },
                                          { "2026-03-13", "2026-05-11" },
                                          { "2026-01-01", "2026-03-12" } };

  for (gsize i = 0; i < G_N_ELEMENTS (spans); i++)
    {
      g_autofree char *sql = g_strdup_printf (
          "SELECT count(*) FROM invoices i WHERE i.due_on BETWEEN '%s' AND '%s' AND i.total_minor > "
          "(SELECT COALESCE (sum(amount_minor), 0) FROM payments p WHERE p.invoice_id = i.id)",
          spans[i][0], spans[i][1]);
      ck_assert_msg (ask (db, sql) > 0, "none due from %s to %s", spans[i][0], spans[i][1]);
    }
}
END_TEST

START_TEST (test_today_is_busy)
{
  static const gint64 hours[] = { 5, 11, 20 };

  for (gsize i = 0; i < G_N_ELEMENTS (hours); i++)
    {
      gint64 now = NOW + hours[i] * 3600 + 86400 * (gint64) i;
      g_autoptr (UnsootDb) db = demo_new (now);
      gint64 local = now + unsoot_demo_offset (now) * 60;
      gint64 start = local / 86400 * 86400 - unsoot_demo_offset (now) * 60;
      g_autofree char *bookings = g_strdup_printf (
          "SELECT count(*) FROM bookings WHERE state <> 'dropped' AND starts_at BETWEEN %" G_GINT64_FORMAT
          " AND %" G_GINT64_FORMAT,
          start, start + 86399);

      ck_assert_int_eq (local / 3600 % 24, 10);
      ck_assert_int_ge (ask (db, bookings), 7);
      ck_assert_int_eq (ask (db, "SELECT count(*) FROM jobs WHERE status = 'in-bay'"), 2);
      ck_assert_int_eq (ask (db, "SELECT count(*) FROM jobs WHERE status = 'arrived'"), 1);
      ck_assert_int_eq (ask (db, "SELECT count(*) FROM jobs WHERE status = 'stopped'"), 1);
      ck_assert_int_eq (ask (db, "SELECT count(*) FROM jobs WHERE status = 'quoted'"), 3);
      ck_assert_int_eq (ask (db, "SELECT count(*) FROM loans WHERE back_at IS NULL"), 3);
      g_autofree char *late
          = g_strdup_printf ("SELECT count(*) FROM run_events WHERE at > %" G_GINT64_FORMAT, now);
      ck_assert_int_eq (ask (db, late), 0);
    }
}
END_TEST

/* Every row of every table, as text. */
static char *
digest (UnsootDb *db)
{
  static const char *const tables[]
      = { "customers",  "vehicles", "jobs",     "job_lines", "stock_moves",
          "run_events", "readings", "invoices", "payments" };
  GChecksum *sum = g_checksum_new (G_CHECKSUM_SHA256);

  for (gsize i = 0; i < G_N_ELEMENTS (tables); i++)
    {
      GError *error = NULL;
      g_autofree char *sql = g_strdup_printf ("SELECT * FROM %s ORDER BY id", tables[i]);
      g_autoptr (UnsootQuery) query = unsoot_db_query (db, &error, sql);

      while (unsoot_query_step (query, &error) == UNSOOT_STEP_ROW)
        for (guint column = 0; column < 8; column++)
          {
            const char *text = unsoot_query_get_text (query, column);
            g_checksum_update (sum, (const guchar *) (text != NULL ? text : "-"), -1);
          }
      ck_no_error (error);
    }
  char *result = g_strdup (g_checksum_get_string (sum));
  g_checksum_free (sum);
  return result;
}

START_TEST (test_same_seed_same_shop)
{
  g_autoptr (UnsootDb) again = demo_new (NOW);
  g_autofree char *first = digest (shared);
  g_autofree char *second = digest (again);

  ck_assert_str_eq (first, second);
}
END_TEST

static void
stop_soon (double share, gpointer cancellable)
{
  if (share > 0.3)
    g_cancellable_cancel (cancellable);
}

START_TEST (test_stopped_leaves_nothing)
{
  GError *error = NULL;
  g_autoptr (UnsootDb) db = book_new ();
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();

  ck_assert (!unsoot_demo_make (db, NOW, stop_soon, cancellable, cancellable, &error));
  ck_assert (g_error_matches (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CANCELLED));
  g_clear_error (&error);
  ck_assert_int_eq (ask (db, "SELECT count(*) FROM shop"), 0);
  ck_assert_int_eq (ask (db, "SELECT count(*) FROM changes"), 0);
}
END_TEST

static gint64
ask_of (UnsootDb *db, const char *sql, gint64 id)
{
  GError *error = NULL;
  gint64 value = -1;

  unsoot_db_int (db, &value, &error, sql, unsoot_int (id));
  ck_no_error (error);
  return value;
}

/* What went into a tank during the run. */
static gint64
poured (const UnsootRunTrace *trace, UnsootSide side)
{
  gint64 sum = 0;

  for (guint i = 1; i < trace->points->len; i++)
    sum += MAX (g_array_index (trace->points, UnsootTracePoint, i).ml[side]
                    - g_array_index (trace->points, UnsootTracePoint, i - 1).ml[side],
                0);
  return sum;
}

/* A run's trace rises by what its events say was poured, and the ones it is seen against are of its
 * kind and before it, newest first. */
START_TEST (test_traces)
{
  GError *error = NULL;
  UnsootDb *db = shared;
  const gint64 own = ask (db, "SELECT max(id) FROM runs WHERE outcome = 'finished'");
  g_autoptr (GPtrArray) traces = unsoot_run_traces (db, own, 3, &error);
  const UnsootRunTrace *first, *last;

  ck_no_error (error);
  ck_assert_uint_eq (traces->len, 4);
  first = g_ptr_array_index (traces, 0);
  ck_assert_int_eq (first->job_number,
                    ask_of (db,
                            "SELECT j.number FROM runs r JOIN jobs j ON j.id = r.job_id"
                            " WHERE r.id = $1",
                            own));
  ck_assert_int_eq (poured (first, UNSOOT_SIDE_INTAKE),
                    ask_of (db,
                            "SELECT COALESCE(sum(ml), 0) FROM run_events WHERE run_id = $1"
                            " AND lot_id IS NOT NULL AND fluid = 'intake'",
                            own));
  ck_assert_int_gt (poured (first, UNSOOT_SIDE_INTAKE), 0);
  for (guint i = 1; i < traces->len; i++, first = last)
    {
      last = g_ptr_array_index (traces, i);
      ck_assert_int_lt (last->began_at, first->began_at);
      ck_assert_int_eq (
          ask_of (db,
                  "SELECT p.family_id FROM runs r JOIN procedures p ON p.id = r.procedure_id"
                  " JOIN jobs j ON j.id = r.job_id WHERE j.number = $1",
                  last->job_number),
          ask_of (db,
                  "SELECT p.family_id FROM runs r JOIN procedures p ON p.id = r.procedure_id"
                  " WHERE r.id = $1",
                  own));
    }
}
END_TEST

static Suite *
demo_suite (void)
{
  Suite *suite = suite_create ("demo");
  TCase *tcase = tcase_create ("demo");

  tcase_add_unchecked_fixture (tcase, make_shared, close_shared);
  tcase_add_test (tcase, test_people);
  tcase_add_test (tcase, test_vins);
  tcase_add_test (tcase, test_traces);
  tcase_add_test (tcase, test_stores);
  tcase_add_test (tcase, test_history);
  tcase_add_test (tcase, test_unpaid_of_several_ages);
  tcase_add_test (tcase, test_today_is_busy);
  tcase_add_test (tcase, test_same_seed_same_shop);
  tcase_add_test (tcase, test_stopped_leaves_nothing);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (demo_suite)
