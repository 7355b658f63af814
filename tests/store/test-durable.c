/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What was acknowledged is there after the program is killed, and after the power fails.
   A killed program proves little, since the system still has its writes: so a second test
   keeps, of every file, only what was synced. */
#include "book.h"

#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#define SECTOR 512

static const char *const add
    = "INSERT INTO things (version, name, amount, active) VALUES (1, $1, 0, 1)";

static gboolean
add_number (UnsootDb *db, int number)
{
  g_autofree char *name = g_strdup_printf ("%d", number);
  g_autoptr (UnsootTransaction) deed = unsoot_db_begin (db, NULL);
  return deed != NULL && unsoot_db_run (db, NULL, add, unsoot_text (name))
         && unsoot_transaction_commit (g_steal_pointer (&deed), NULL);
}

G_GNUC_NORETURN static void
write_until_killed (const char *path, int acknowledge)
{
  UnsootDb *db = test_book (path);
  for (int i = 1;; i++)
    if (!add_number (db, i) || write (acknowledge, &i, sizeof i) != sizeof i)
      _exit (1);
}

START_TEST (test_killed_program)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  int ends[2];
  int last = 0;
  ck_assert_int_eq (pipe (ends), 0);
  pid_t child = fork ();
  if (child == 0)
    write_until_killed (path, ends[1]);
  close (ends[1]);
  while (last < 100 && read (ends[0], &last, sizeof last) == sizeof last)
    ;
  kill (child, SIGKILL);
  waitpid (child, NULL, 0);
  while (read (ends[0], &last, sizeof last) == sizeof last)
    ;
  close (ends[0]);
  ck_assert_int_ge (last, 100);

  g_autoptr (UnsootDb) db = test_book (path);
  gint64 n = 0;
  unsoot_db_int (db, &n, NULL, "SELECT count (*) FROM things");
  ck_assert_int_ge (n, last);
  ck_assert_int_le (n, last + 1);
}
END_TEST

/* SQLite's own file methods, but for a look at each sync. */
static sqlite3_vfs shadow_vfs;
static sqlite3_vfs *real_vfs;
static sqlite3_io_methods shadow_methods[2]; /* of books; of the files beside them */
static int (*real_sync) (sqlite3_file *file, int flags);
static GHashTable *paths;  /* open file → its path */
static GHashTable *synced; /* path → GBytes as of the last sync */

static GBytes *
contents_of (const char *path)
{
  char *text = NULL;
  gsize length = 0;
  if (!g_file_get_contents (path, &text, &length, NULL))
    return g_bytes_new (NULL, 0);
  return g_bytes_new_take (text, length);
}

static int
shadow_sync (sqlite3_file *file, int flags)
{
  const char *path = g_hash_table_lookup (paths, file);
  int code = real_sync (file, flags);
  if (path != NULL)
    g_hash_table_replace (synced, g_strdup (path), contents_of (path));
  return code;
}

static int
shadow_open (sqlite3_vfs *vfs, const char *name, sqlite3_file *file, int flags, int *flags_out)
{
  int code = real_vfs->xOpen (real_vfs, name, file, flags, flags_out);
  g_hash_table_remove (paths, file);
  if (code != SQLITE_OK || name == NULL)
    return code;
  sqlite3_io_methods *methods = &shadow_methods[(flags & SQLITE_OPEN_MAIN_DB) != 0 ? 0 : 1];
  real_sync = file->pMethods->xSync;
  *methods = *file->pMethods;
  methods->xSync = shadow_sync;
  file->pMethods = methods;
  g_hash_table_replace (paths, file, g_strdup (name));
  return code;
}

static void
install_shadow (void)
{
  real_vfs = sqlite3_vfs_find (NULL);
  shadow_vfs = *real_vfs;
  shadow_vfs.zName = "shadow";
  shadow_vfs.xOpen = shadow_open;
  paths = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  synced = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) g_bytes_unref);
  ck_assert_int_eq (sqlite3_vfs_register (&shadow_vfs, 1), SQLITE_OK);
}

/* What a disk may hold after the power failed: each sector as it was synced or, where
   @chance says so, as it was written since. */
static void
cut_power (const char *path, const char *after, GRand *chance)
{
  g_autoptr (GBytes) now = contents_of (path);
  GBytes *then = g_hash_table_lookup (synced, path);
  gsize n_then = 0;
  const guint8 *kept = then != NULL ? g_bytes_get_data (then, &n_then) : NULL;
  g_autofree guint8 *disk = g_malloc0 (MAX (n_then, g_bytes_get_size (now)) + 1);
  gsize length = chance != NULL ? MAX (n_then, g_bytes_get_size (now)) : n_then;

  if (n_then > 0)
    memcpy (disk, kept, n_then);
  for (gsize at = 0; chance != NULL && at < g_bytes_get_size (now); at += SECTOR)
    if (g_rand_boolean (chance))
      memcpy (disk + at, (const guint8 *) g_bytes_get_data (now, NULL) + at,
              MIN (SECTOR, g_bytes_get_size (now) - at));
  ck_assert (g_file_set_contents (after, (const char *) disk, (gssize) length, NULL));
}

static void
check_after_cut (const char *path, int acknowledged, GRand *chance)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *after = g_build_filename (folder, "book.unsoot", NULL);
  g_autofree char *after_wal = g_strconcat (after, "-wal", NULL);
  g_autofree char *wal = g_strconcat (path, "-wal", NULL);
  g_autofree char *wanted = g_strdup_printf ("%d", acknowledged);
  cut_power (path, after, chance);
  cut_power (wal, after_wal, chance);
  ck_raw (after, "PRAGMA integrity_check", "ok");
  ck_raw (after, "SELECT count (*) FROM things", wanted);
}

/* 400 rows pass the 1000 pages after which the log is written back into the file. */
START_TEST (test_power_cut)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  GRand *chance = g_rand_new_with_seed (20310101);
  install_shadow ();
  UnsootDb *db = test_book (path);
  for (int i = 1; i <= 400; i++)
    {
      ck_assert (add_number (db, i));
      if (i % 8 != 0 && i > 20)
        continue;
      check_after_cut (path, i, NULL);
      check_after_cut (path, i, chance);
    }
  unsoot_db_close (db);
  g_rand_free (chance);
}
END_TEST

static Suite *
durable_suite (void)
{
  Suite *suite = suite_create ("durable");
  TCase *tcase = tcase_create ("durable");
  tcase_add_test (tcase, test_killed_program);
  tcase_add_test (tcase, test_power_cut);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (durable_suite)
