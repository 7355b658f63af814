/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a key in the find box costs in a large shop, without painting, beside the same MATCH
 * statements run raw on the same file. Names, numbers and makes are made up from syllables. */
#include <glib/gstdio.h>
#include <string.h>

#include "bench.h"
#include "customers.h"
#include "find.h"
#include "migrate.h"
#include "replay.h"
#include "vehicles.h"

#define CUSTOMERS 100000
#define VEHICLES 200000
/* As many of a kind as the box shows. */
#define LIMIT 5
/* Things typed of each sort, letter by letter. */
#define TYPED 40
#define FRAME "p99 within a frame, 16.7 ms"

static const UnsootActing program = { 0, 1700000000 };

static char *
syllables (GRand *random, int n)
{
  static const char *const parts[]
      = { "al",  "bren", "cor", "dan",  "el",   "fen", "gar", "hol", "il", "jor", "kel", "lun",
          "mar", "nor",  "os",  "pell", "quin", "rad", "sel", "tor", "ul", "ver", "win", "yar" };
  GString *word = g_string_new (NULL);
  for (int i = 0; i < n; i++)
    {
      /* The lesser of two makes some names common, as they are. */
      int a = g_rand_int_range (random, 0, G_N_ELEMENTS (parts));
      int b = g_rand_int_range (random, 0, G_N_ELEMENTS (parts));
      g_string_append (word, parts[MIN (a, b)]);
    }
  word->str[0] = g_ascii_toupper (word->str[0]);
  return g_string_free (word, FALSE);
}

static char *
code (GRand *random, const char *form)
{
  static const char letters[] = "ABCDEFGHJKLMNPRSTUVWXYZ";
  char *text = g_strdup (form);
  for (char *p = text; *p != '\0'; p++)
    if (*p == '#')
      *p = (char) g_rand_int_range (random, '0', '9' + 1);
    else if (*p == '@')
      *p = letters[g_rand_int_range (random, 0, (int) strlen (letters))];
  return text;
}

/* What people will type, by sort. */
typedef struct
{
  GPtrArray *name, *phone, *plate, *vin, *unit;
} Sorts;

static void
keep (GPtrArray *sort, const char *text, int i, int n)
{
  if (i % (n / TYPED) == 0)
    g_ptr_array_add (sort, g_strdup (text));
}

static gint64
add_customer (UnsootDb *db, GRand *random, Sorts *sorts, int i)
{
  g_autoptr (UnsootCustomerRow) row = unsoot_customer_row_new ();
  g_autoptr (GPtrArray) phones
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_phone_row_free);
  UnsootPhoneRow *phone = unsoot_phone_row_new ();
  g_autofree char *first = syllables (random, 2), *last = syllables (random, 3);
  GError *error = NULL;

  row->kind = g_strdup (i % 50 == 0 ? "fleet" : "person");
  row->name = g_strdup_printf ("%s %s", first, last);
  row->active = TRUE;
  /* No area code begins with 0, so these are nobody's. */
  phone->number = code (random, "(0##) ###-####");
  g_ptr_array_add (phones, phone);
  keep (sorts->name, row->name, i, CUSTOMERS);
  keep (sorts->phone, phone->number, i, CUSTOMERS);
  bench_need (unsoot_customer_save (db, &program, row, phones, NULL, &error), error);
  return row->id;
}

static void
add_vehicle (UnsootDb *db, GRand *random, Sorts *sorts, gint64 customer, int i)
{
  static const char *const makes[] = { "Brindle", "Fenmoor", "Harrow", "Skelder", "Tolver" };
  g_autoptr (UnsootVehicleRow) row = unsoot_vehicle_row_new ();
  GError *error = NULL;

  row->customer_id = customer;
  row->make = g_strdup (makes[g_rand_int_range (random, 0, G_N_ELEMENTS (makes))]);
  row->model = code (random, "@#");
  row->engine = code (random, "#.#");
  row->year = g_rand_int_range (random, 1995, 2026);
  row->vin = code (random, "9ZZ@@##@#@@######");
  row->plate = code (random, "#@@ ###");
  row->unit_number = g_strdup_printf ("%d", g_rand_int_range (random, 1, 20000));
  row->active = TRUE;
  keep (sorts->vin, row->vin, i, VEHICLES);
  keep (sorts->plate, row->plate, i, VEHICLES);
  keep (sorts->unit, row->unit_number, i, VEHICLES);
  bench_need (unsoot_vehicle_save (db, &program, row, NULL, &error), error);
}

static void
fill (UnsootDb *db, Sorts *sorts)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (17);
  GError *error = NULL;

  for (int i = 0; i < CUSTOMERS;)
    {
      UnsootTransaction *deed = unsoot_db_begin (db, &error);
      bench_need (deed != NULL, error);
      for (int end = i + 1000; i < end; i++)
        {
          gint64 customer = add_customer (db, random, sorts, i);
          for (int k = 0; k < VEHICLES / CUSTOMERS; k++)
            add_vehicle (db, random, sorts, customer, i * (VEHICLES / CUSTOMERS) + k);
        }
      bench_need (unsoot_transaction_commit (deed, &error), error);
    }
}

static double
time_ours (UnsootDb *db, const char *typed)
{
  GError *error = NULL;
  double start = bench_work ();
  g_autoptr (GPtrArray) found = unsoot_find (db, typed, LIMIT, &error);
  double end = bench_work ();
  bench_need (found != NULL, error);
  return end - start;
}

/* The statements that this key leads to, prepared beforehand. */
static double
time_raw (UnsootDb *db, sqlite3 *raw, const char *typed)
{
  g_autoptr (GPtrArray) statements = g_ptr_array_new_with_free_func (g_free);
  replay_record (statements);
  time_ours (db, typed);
  replay_record (NULL);
  g_autoptr (GPtrArray) prepared = replay_prepare (raw, statements);
  double start = bench_work ();
  replay_run (prepared);
  return bench_work () - start;
}

static void
report (const char *sort, const char *what, GArray *ours, GArray *raw, double share)
{
  g_autofree char *name = g_strdup_printf ("find, %s, %s", sort, what);
  bench_report (name, bench_within (ours, share), bench_within (raw, share), FRAME);
}

static void
measure (UnsootDb *db, sqlite3 *raw, const char *sort, GPtrArray *texts, GArray *all_ours,
         GArray *all_raw)
{
  g_autoptr (GArray) ours = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) theirs = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i < texts->len; i++)
    for (gsize length = 1; length <= strlen (texts->pdata[i]); length++)
      {
        g_autofree char *typed = g_strndup (texts->pdata[i], length);
        double raw_time = time_raw (db, raw, typed), our_time = time_ours (db, typed);
        g_array_append_val (ours, our_time);
        g_array_append_val (theirs, raw_time);
      }
  g_array_append_vals (all_ours, ours->data, ours->len);
  g_array_append_vals (all_raw, theirs->data, theirs->len);
  report (sort, "p50", ours, theirs, 0.5);
  report (sort, "p99", ours, theirs, 0.99);
}

static void
measure_all (UnsootDb *db, sqlite3 *raw, const Sorts *sorts)
{
  g_autoptr (GArray) ours = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) theirs = g_array_new (FALSE, FALSE, sizeof (double));

  measure (db, raw, "name", sorts->name, ours, theirs);
  measure (db, raw, "phone", sorts->phone, ours, theirs);
  measure (db, raw, "plate", sorts->plate, ours, theirs);
  measure (db, raw, "VIN", sorts->vin, ours, theirs);
  measure (db, raw, "unit", sorts->unit, ours, theirs);
  report ("every key", "p50", ours, theirs, 0.5);
  report ("every key", "p99", ours, theirs, 0.99);
  report ("every key", "longest", ours, theirs, 1.0);
}

static void
remove_book (const char *folder, const char *path)
{
  static const char *const ends[] = { "", "-wal", "-shm" };
  for (gsize i = 0; i < G_N_ELEMENTS (ends); i++)
    {
      g_autofree char *file = g_strconcat (path, ends[i], NULL);
      g_unlink (file);
    }
  g_rmdir (folder);
}

int
main (void)
{
  GError *error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("unsoot-bench-XXXXXX", &error);
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  Sorts sorts = { g_ptr_array_new (), g_ptr_array_new (), g_ptr_array_new (), g_ptr_array_new (),
                  g_ptr_array_new () };

  replay_listen ();
  UnsootDb *db = unsoot_db_open (path, UNSOOT_DB_CREATE, &error);
  replay_ignore ();
  bench_need (db != NULL && unsoot_migrate (db, 0, &error), error);
  double start = bench_now ();
  fill (db, &sorts);
  g_print ("%d customers and %d vehicles entered in %.0f s\n", CUSTOMERS, VEHICLES,
           (bench_now () - start) / 1000.0);
  sqlite3 *raw = replay_open (path);
  measure_all (db, raw, &sorts);
  sqlite3_close (raw);
  unsoot_db_close (db);
  remove_book (folder, path);
  return 0;
}
