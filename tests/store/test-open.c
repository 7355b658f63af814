/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which files are opened, how new ones are made, and what is left untouched. */
#include "book.h"

#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "place.h"

#define NOBODY 65534

static int
mode_of (const char *path)
{
  struct stat about;
  ck_assert_msg (stat (path, &about) == 0, "no %s", path);
  return about.st_mode & 07777;
}

static void
refuse (const char *path, UnsootDbFlags flags, UnsootStoreError code, const char *words)
{
  GError *error = NULL;
  UnsootDb *db = unsoot_db_open (path, flags, &error);
  ck_assert_ptr_null (db);
  ck_store_error (error, code, words);
}

START_TEST (test_new_file_is_private)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *inner = g_build_filename (folder, "shop", NULL);
  g_autofree char *path = g_build_filename (inner, "book.unsoot", NULL);
  g_autofree char *wal = g_strconcat (path, "-wal", NULL);
  umask (0);
  UnsootDb *db = test_book (path);
  ck_assert_int_eq (mode_of (path), 0600);
  ck_assert_int_eq (mode_of (wal), 0600);
  ck_assert_int_eq (mode_of (inner), 0700);
  unsoot_db_close (db);

  /* Offsets of the header: sqlite.org/fileformat2.html, 1.3; 2 is WAL. */
  g_autofree char *bytes = NULL;
  ck_assert (g_file_get_contents (path, &bytes, NULL, NULL));
  ck_assert_mem_eq (bytes + 68, "UnSt", 4);
  ck_assert_int_eq (bytes[18], 2);
}
END_TEST

/* The settings that hold for every connection, asked of SQLite itself. */
START_TEST (test_settings)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  g_autoptr (UnsootDb) db = test_book (path);
  static const struct
  {
    const char *sql;
    const char *value;
  } settings[] = {
    { "PRAGMA journal_mode", "wal" },
    { "PRAGMA synchronous", "2" },
    { "PRAGMA foreign_keys", "1" },
    { "PRAGMA trusted_schema", "0" },
    { "PRAGMA cell_size_check", "1" },
    { "PRAGMA recursive_triggers", "1" },
    { "PRAGMA application_id", "1433293684" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (settings); i++)
    {
      g_autofree char *value = unsoot_db_text (db, NULL, settings[i].sql);
      ck_assert_msg (g_strcmp0 (value, settings[i].value) == 0, "%s is %s", settings[i].sql, value);
    }

  /* Defensive: sqlite.org/c3ref/c_dbconfig_defensive.html, no writing to shadow tables. */
  GError *error = NULL;
  unsoot_db_run (db, &error, "DELETE FROM found_words_data");
  ck_store_error (error, UNSOOT_STORE_ERROR_FAILED, "may not be modified");
}
END_TEST

START_TEST (test_missing_file)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  refuse (path, 0, UNSOOT_STORE_ERROR_NOT_FOUND, "no shop’s book");
  ck_assert (!g_file_test (path, G_FILE_TEST_EXISTS));
}
END_TEST

static void
check_untouched (const char *folder, const char *path, UnsootDbFlags flags)
{
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  gsize n_before;
  gsize n_after;
  ck_assert (g_file_get_contents (path, &before, &n_before, NULL));
  refuse (path, flags, UNSOOT_STORE_ERROR_NOT_OURS, "not a shop’s book");
  ck_assert (g_file_get_contents (path, &after, &n_after, NULL));
  ck_assert_uint_eq (n_before, n_after);
  ck_assert (memcmp (before, after, n_before) == 0);

  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  int n = 0;
  while (g_dir_read_name (dir) != NULL)
    n++;
  ck_assert_int_eq (n, 1);
}

START_TEST (test_foreign_files_are_untouched)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "other.db", NULL);

  ck_assert (g_file_set_contents (path, "Dear customer,\n", -1, NULL));
  check_untouched (folder, path, UNSOOT_DB_CREATE);
  g_unlink (path);

  sqlite3 *raw = NULL;
  ck_assert_int_eq (sqlite3_open (path, &raw), SQLITE_OK);
  sqlite3_exec (raw, "PRAGMA journal_mode = WAL; CREATE TABLE t (a)", NULL, NULL, NULL);
  sqlite3_close (raw);
  check_untouched (folder, path, UNSOOT_DB_CREATE);
  check_untouched (folder, path, UNSOOT_DB_CREATE | UNSOOT_DB_ELSEWHERE);
}
END_TEST

/* Overwrites the middle of every page but the first. */
static void
damage (const char *path)
{
  g_autofree char *bytes = NULL;
  gsize length;
  ck_assert (g_file_get_contents (path, &bytes, &length, NULL));
  for (gsize page = 4096; page + 4096 <= length; page += 4096)
    memset (bytes + page, 0xA5, 600);
  ck_assert (g_file_set_contents (path, bytes, (gssize) length, NULL));
}

START_TEST (test_damage_is_seen_before_it_is_trusted)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  unsoot_db_close (test_book (path));
  unsoot_db_close (unsoot_db_open (path, UNSOOT_DB_ELSEWHERE, NULL));
  damage (path);
  refuse (path, UNSOOT_DB_ELSEWHERE, UNSOOT_STORE_ERROR_DAMAGED, "damaged");
}
END_TEST

START_TEST (test_read_only)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  GError *error = NULL;
  unsoot_db_close (test_book (path));
  g_autoptr (UnsootDb) db = unsoot_db_open (path, UNSOOT_DB_READ_ONLY, &error);
  ck_no_error (error);
  gint64 n = -1;
  ck_assert (unsoot_db_int (db, &n, &error, "SELECT count (*) FROM things"));
  unsoot_db_run (db, &error, "DELETE FROM things");
  ck_store_error (error, UNSOOT_STORE_ERROR_READ_ONLY, "not written");
}
END_TEST

/* Whether both are refused to somebody who may only read; root may write to anything, so
   where the tests run as root it is nobody who tries. */
static gboolean
is_refused_to_others (const char *path, const char *below)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GError) error_below = NULL;
  if (geteuid () == 0 && setresuid (NOBODY, NOBODY, NOBODY) != 0)
    return FALSE;
  return unsoot_db_open (path, UNSOOT_DB_CREATE, &error) == NULL
         && g_error_matches (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_READ_ONLY)
         && strstr (error->message, "not written") != NULL
         && unsoot_db_open (below, UNSOOT_DB_CREATE, &error_below) == NULL
         && g_error_matches (error_below, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_READ_ONLY)
         && strstr (error_below->message, "can’t be written") != NULL;
}

START_TEST (test_file_without_leave_to_write)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  g_autofree char *below = g_build_filename (folder, "new", "book.unsoot", NULL);
  int status = 1;
  unsoot_db_close (test_book (path));
  ck_assert_int_eq (chmod (path, 0444), 0);
  ck_assert_int_eq (chmod (folder, 0555), 0);
  pid_t child = fork ();
  if (child == 0)
    _exit (is_refused_to_others (path, below) ? 0 : 1);
  waitpid (child, &status, 0);
  ck_assert_int_eq (chmod (folder, 0755), 0);
  ck_assert_int_eq (status, 0);
}
END_TEST

/* f_type as in statfs(2) of the Linux man-pages. */
START_TEST (test_network_file_systems)
{
  ck_assert (unsoot_place_is_network (0x6969, "nfs4"));
  ck_assert (unsoot_place_is_network (0x517b, "smbfs"));
  ck_assert (unsoot_place_is_network (0xff534d42, "cifs"));
  ck_assert (unsoot_place_is_network (0xfe534d42, "smb3"));
  ck_assert (unsoot_place_is_network (0x01021997, "9p"));
  ck_assert (unsoot_place_is_network (0x73757245, "coda"));
  ck_assert (unsoot_place_is_network (0x00c36400, "ceph"));
  ck_assert (unsoot_place_is_network (0x65735546, "fuse.sshfs"));
  ck_assert (!unsoot_place_is_network (0x65735546, "fuseblk"));
  ck_assert (!unsoot_place_is_network (0x65735546, NULL));
  ck_assert (!unsoot_place_is_network (0xef53, "ext4"));
  ck_assert (!unsoot_place_is_network (0x9123683e, "btrfs"));
  ck_assert (!unsoot_place_is_network (0x01021994, "tmpfs"));
}
END_TEST

static Suite *
open_suite (void)
{
  Suite *suite = suite_create ("open");
  TCase *tcase = tcase_create ("files");
  tcase_add_test (tcase, test_new_file_is_private);
  tcase_add_test (tcase, test_settings);
  tcase_add_test (tcase, test_missing_file);
  tcase_add_test (tcase, test_foreign_files_are_untouched);
  tcase_add_test (tcase, test_damage_is_seen_before_it_is_trusted);
  tcase_add_test (tcase, test_read_only);
  tcase_add_test (tcase, test_file_without_leave_to_write);
  tcase_add_test (tcase, test_network_file_systems);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (open_suite)
