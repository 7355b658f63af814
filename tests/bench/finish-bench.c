/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What finishing a job costs, beside the same statements run raw in a copy of the same book:
 * the demo shop, with a job in the bay that has every step behind it. */
#include <gio/gio.h>
#include <glib/gstdio.h>

#include "bench.h"
#include "demo-run.h"
#include "demo.h"
#include "finishes.h"
#include "migrate.h"
#include "replay.h"

#define NOW G_GINT64_CONSTANT (1700000000)
#define SAMPLES 40
/* A file system in memory, where a commit waits for no disk. */
#define MEMORY "/dev/shm"

typedef struct
{
  char *folder;
  char *book; /* as it is before the finish */
  char *ours; /* a copy for each sample */
  char *raw;  /* likewise */
  gint64 job;
  UnsootActing who;
} Bench;

/* The lot that the run's last filling took of a side's fluid, or the newest there is. */
static gint64
lot_for (UnsootDb *db, const char *side)
{
  GError *error = NULL;
  gint64 lot = 0;
  bench_need (unsoot_db_int (db, &lot, &error,
                             "SELECT l.id FROM lots AS l JOIN fluids AS f ON f.id = l.fluid_id "
                             "WHERE f.side = $1 ORDER BY l.id DESC LIMIT 1",
                             unsoot_text (side)),
              error);
  return lot;
}

/* The first job in the bay whose run can be carried to its end. */
static gboolean
carry_one (UnsootDb *db, Bench *bench)
{
  GError *error = NULL;
  g_autoptr (UnsootQuery) query = unsoot_db_query (
      db, &error,
      "SELECT r.id, r.job_id, b.technician_id FROM runs AS r "
      "JOIN bookings AS b ON b.job_id = r.job_id WHERE r.outcome IS NULL ORDER BY r.id");
  bench_need (query != NULL, error);
  while (unsoot_query_step (query, &error) == UNSOOT_STEP_ROW)
    {
      gint64 run = unsoot_query_get_int (query, 0), ends_at = 0;
      UnsootDemoPace pace = { .share = 1.0 };
      pace.lot_id[UNSOOT_SIDE_FUEL] = lot_for (db, "fuel");
      pace.lot_id[UNSOOT_SIDE_INTAKE] = lot_for (db, "intake");
      bench->job = unsoot_query_get_int (query, 1);
      bench->who = (UnsootActing){ unsoot_query_get_int (query, 2), NOW + 7200 };
      if (unsoot_demo_carry (db, &bench->who, run, &pace, &ends_at, &error))
        {
          bench->who.now = ends_at + 60;
          return TRUE;
        }
      g_printerr ("run %" G_GINT64_FORMAT ": %s\n", run, error->message);
      g_clear_error (&error);
    }
  return FALSE;
}

static void
make_book (Bench *bench)
{
  GError *error = NULL;
  bench->folder = g_dir_make_tmp ("unsoot-bench-XXXXXX", &error);
  bench->book = g_build_filename (bench->folder, "book.unsoot", NULL);
  g_autoptr (UnsootDb) db = unsoot_db_open (bench->book, UNSOOT_DB_CREATE, &error);
  bench_need (db != NULL && unsoot_migrate (db, NOW, &error), error);
  bench_need (unsoot_demo_make (db, NOW, NULL, NULL, NULL, &error), error);
  if (!carry_one (db, bench))
    g_error ("the demo shop has no job that can be carried to its end");
}

static void
copy_book (const Bench *bench, const char *to)
{
  GError *error = NULL;
  g_autoptr (GFile) from = g_file_new_for_path (bench->book);
  g_autoptr (GFile) copy = g_file_new_for_path (to);
  bench_need (g_file_copy (from, copy, G_FILE_COPY_OVERWRITE, NULL, NULL, NULL, &error), error);
}

static void
finish (UnsootDb *db, const Bench *bench)
{
  GError *error = NULL;
  bench_need (unsoot_job_finish (db, &bench->who, bench->job, "Signed", &error), error);
}

/* Once for nothing, so that statements are prepared and pages read, as in a day's work. */
static void
rehearse (UnsootDb *db, const Bench *bench)
{
  GError *error = NULL;
  UnsootTransaction *deed = unsoot_db_begin (db, &error);
  bench_need (deed != NULL, error);
  finish (db, bench);
  unsoot_transaction_rollback (deed);
}

static double
time_ours (const Bench *bench, GPtrArray *statements)
{
  GError *error = NULL;
  copy_book (bench, bench->ours);
  replay_listen ();
  g_autoptr (UnsootDb) db = unsoot_db_open (bench->ours, 0, &error);
  replay_ignore ();
  bench_need (db != NULL && unsoot_migrate (db, NOW, &error), error);
  rehearse (db, bench);
  replay_record (statements);
  double start = bench_now ();
  finish (db, bench);
  double end = bench_now ();
  replay_record (NULL);
  return end - start;
}

/* The same statements, from BEGIN to COMMIT, prepared and rehearsed likewise. */
static double
time_raw (const Bench *bench, GPtrArray *statements)
{
  copy_book (bench, bench->raw);
  sqlite3 *raw = replay_open (bench->raw);
  GPtrArray *prepared = replay_prepare (raw, statements);
  g_autoptr (GPtrArray) all_but_commit = g_ptr_array_new ();
  for (guint i = 0; i + 1 < prepared->len; i++)
    g_ptr_array_add (all_but_commit, prepared->pdata[i]);
  replay_run (all_but_commit);
  sqlite3_exec (raw, "ROLLBACK", NULL, NULL, NULL);
  double start = bench_now ();
  replay_run (prepared);
  double end = bench_now ();
  g_ptr_array_unref (prepared);
  sqlite3_close (raw);
  return end - start;
}

/* Both copies hold the same afterwards, or they did not do the same. */
static gint64
sum_of (const char *path)
{
  sqlite3 *raw = replay_open (path);
  sqlite3_stmt *statement = NULL;
  sqlite3_prepare_v2 (raw,
                      "SELECT (SELECT count(*) FROM changes) + (SELECT count(*) FROM tank_events)"
                      " + (SELECT -sum(ml) FROM stock_moves)",
                      -1, &statement, NULL);
  gint64 sum = sqlite3_step (statement) == SQLITE_ROW ? sqlite3_column_int64 (statement, 0) : -1;
  sqlite3_finalize (statement);
  sqlite3_close (raw);
  return sum;
}

static void
clear (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_unlink (path);
    }
  g_rmdir (folder);
}

static void
measure (Bench *bench, const char *folder, const char *where, GPtrArray *statements)
{
  g_autoptr (GArray) ours = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) raw = g_array_new (FALSE, FALSE, sizeof (double));
  g_autofree char *name = g_strdup_printf ("finish a job, %s", where);
  g_autofree char *slow = g_strdup_printf ("finish a job, %s, p90", where);

  bench->ours = g_build_filename (folder, "ours.unsoot", NULL);
  bench->raw = g_build_filename (folder, "raw.unsoot", NULL);
  if (statements->len == 0)
    time_ours (bench, statements);
  for (int i = 0; i < SAMPLES; i++)
    {
      double our_time = time_ours (bench, NULL), raw_time = time_raw (bench, statements);
      g_array_append_val (ours, our_time);
      g_array_append_val (raw, raw_time);
      g_assert (sum_of (bench->ours) == sum_of (bench->raw));
    }
  bench_report (name, bench_within (ours, 0.5), bench_within (raw, 0.5), "none");
  bench_report (slow, bench_within (ours, 0.9), bench_within (raw, 0.9), "none");
  g_clear_pointer (&bench->ours, g_free);
  g_clear_pointer (&bench->raw, g_free);
}

int
main (void)
{
  Bench bench = { 0 };
  g_autoptr (GPtrArray) statements = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *memory = g_strdup (MEMORY "/unsoot-bench-XXXXXX");

  make_book (&bench);
  measure (&bench, bench.folder, "on disk", statements);
  if (g_mkdtemp (memory) != NULL)
    {
      measure (&bench, memory, "in memory", statements);
      clear (memory);
    }
  g_print ("%u statements\n", statements->len);
  clear (bench.folder);
  return 0;
}
