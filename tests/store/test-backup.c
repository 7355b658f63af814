/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book.h"

#include <string.h>
#include <sys/stat.h>

#include "backup.h"
#include "find.h"

static UnsootDb *
book_with_one (const char *path)
{
  UnsootDb *db = test_book (path);
  ck_assert (unsoot_db_run (
      db, NULL, "INSERT INTO things (version, name, amount, active) VALUES (1, 'a', 0, 1)"));
  ck_assert (unsoot_find_put (db, UNSOOT_FOUND_JOB, 1, "wrench", NULL, NULL, NULL, NULL));
  return db;
}

static int
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  int n = 0;
  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

START_TEST (test_copy_is_whole_and_private)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  g_autofree char *copy = g_build_filename (folder, "away", "copy.unsoot", NULL);
  g_autofree char *away = g_path_get_dirname (copy);
  g_autoptr (UnsootDb) db = book_with_one (path);
  GError *error = NULL;
  struct stat about;

  ck_assert (unsoot_backup_to (db, copy, &error));
  ck_no_error (error);
  ck_assert_int_eq (count_files (away), 1);
  ck_assert_int_eq (stat (copy, &about), 0);
  ck_assert_int_eq (about.st_mode & 07777, 0600);
  ck_assert_int_eq (stat (away, &about), 0);
  ck_assert_int_eq (about.st_mode & 07777, 0700);
  ck_raw (copy, "SELECT name FROM things", "a");
  ck_raw (copy, "PRAGMA integrity_check", "ok");

  /* It opens as a book, search and guards included. */
  g_autoptr (UnsootDb) restored = test_book (copy);
  g_autoptr (GPtrArray) found = unsoot_find (restored, "wrench", 5, &error);
  ck_assert_int_eq (found->len, 1);

  ck_assert (!unsoot_backup_to (db, copy, &error));
  ck_store_error (error, UNSOOT_STORE_ERROR_NOT_ALLOWED, "exists already");
}
END_TEST

START_TEST (test_failure_leaves_no_file)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  g_autofree char *away = g_build_filename (folder, "away", NULL);
  g_autofree char *copy = g_build_filename (away, "copy.unsoot", NULL);
  g_autoptr (UnsootDb) db = book_with_one (path);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  GError *error = NULL;

  ck_assert (unsoot_db_run (db, &error,
                            "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n "
                            "WHERE i < 20000) INSERT INTO things (version, name, amount, active) "
                            "SELECT 1, CAST (i AS TEXT), 0, 1 FROM n"));
  g_cancellable_cancel (cancellable);
  unsoot_db_set_cancellable (db, cancellable);
  ck_assert (!unsoot_backup_to (db, copy, &error));
  ck_store_error (error, UNSOOT_STORE_ERROR_CANCELLED, "Stopped");
  ck_assert_int_eq (count_files (away), 0);
  unsoot_db_set_cancellable (db, NULL);
}
END_TEST

START_TEST (test_newest_ten_stay)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  g_autoptr (UnsootDb) db = book_with_one (path);
  g_autofree char *backups = unsoot_backup_folder (db);
  g_autofree char *foreign = g_build_filename (backups, "notes.txt", NULL);
  GError *error = NULL;

  for (int i = 0; i < 13; i++)
    {
      g_autofree char *copy
          = unsoot_backup_keep (db, backups, i % 2 ? "daily" : "restore", 86400 * i, &error);
      ck_no_error (error);
      ck_assert (g_file_test (copy, G_FILE_TEST_EXISTS));
      if (i == 0)
        ck_assert (g_file_set_contents (foreign, "mine", -1, NULL));
    }
  ck_assert_int_eq (count_files (backups), 11);
  ck_assert (g_file_test (foreign, G_FILE_TEST_EXISTS));
  g_autofree char *oldest = g_build_filename (backups, "book-19700104T000000Z-daily.unsoot", NULL);
  g_autofree char *gone = g_build_filename (backups, "book-19700103T000000Z-restore.unsoot", NULL);
  ck_assert (g_file_test (oldest, G_FILE_TEST_EXISTS));
  ck_assert (!g_file_test (gone, G_FILE_TEST_EXISTS));
}
END_TEST

static char *
findings_of (UnsootDb *db)
{
  GError *error = NULL;
  g_autoptr (GPtrArray) findings = NULL;
  ck_assert (unsoot_verify (db, &findings, &error));
  g_ptr_array_add (findings, NULL);
  return g_strjoinv ("|", (char **) findings->pdata);
}

START_TEST (test_one_copy_a_day)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  g_autofree char *copies = g_build_filename (folder, "backups", NULL);
  g_autoptr (UnsootDb) db = book_with_one (path);
  const gint64 midnight = 20000 * G_GINT64_CONSTANT (86400);
  GError *error = NULL;

  g_autofree char *other = unsoot_backup_keep (db, copies, "upgrade", midnight, &error);
  ck_no_error (error);
  ck_assert (unsoot_backup_daily (db, midnight + 60, &error));
  ck_assert_int_eq (count_files (copies), 2);
  ck_assert (unsoot_backup_daily (db, midnight + 86399, &error));
  ck_assert_int_eq (count_files (copies), 2);
  ck_assert (unsoot_backup_daily (db, midnight + 86400, &error));
  ck_assert_int_eq (count_files (copies), 3);
  ck_no_error (error);
}
END_TEST

START_TEST (test_verify_finds_what_is_wrong)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  g_autoptr (UnsootDb) db = book_with_one (path);
  g_autofree char *sound = findings_of (db);
  ck_assert_str_eq (sound, "");

  /* By another program, which enforces nothing. */
  ck_raw (path, "INSERT INTO moves (id, thing_id, ml) VALUES (5, 77, 1)", NULL);
  ck_raw (path, "UPDATE found SET folded = 'spanner'", NULL);
  g_autofree char *unsound = findings_of (db);
  ck_assert_msg (strstr (unsound, "Entry 5 of “moves” refers to one of “things”") != NULL, "%s",
                 unsound);
  ck_assert_msg (strstr (unsound, "Search does not know") != NULL, "%s", unsound);
}
END_TEST

START_TEST (test_verify_finds_damage)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  unsoot_db_close (book_with_one (path));
  /* An index that lost its entry: the schema's own text says that it is another column. */
  sqlite3 *raw = NULL;
  ck_assert_int_eq (sqlite3_open (path, &raw), SQLITE_OK);
  sqlite3_exec (raw,
                "CREATE INDEX by_amount ON things (amount); PRAGMA writable_schema = ON;"
                "UPDATE sqlite_schema SET sql = 'CREATE INDEX by_amount ON things (version)' "
                "WHERE name = 'by_amount'",
                NULL, NULL, NULL);
  sqlite3_close (raw);
  g_autoptr (UnsootDb) db = unsoot_db_open (path, 0, NULL);
  g_autofree char *unsound = findings_of (db);
  ck_assert_msg (strstr (unsound, "The file is damaged: ") != NULL, "%s", unsound);
  ck_assert_msg (strstr (unsound, "by_amount") != NULL, "%s", unsound);
}
END_TEST

static Suite *
backup_suite (void)
{
  Suite *suite = suite_create ("backup");
  TCase *tcase = tcase_create ("backup");
  tcase_add_test (tcase, test_copy_is_whole_and_private);
  tcase_add_test (tcase, test_failure_leaves_no_file);
  tcase_add_test (tcase, test_newest_ten_stay);
  tcase_add_test (tcase, test_one_copy_a_day);
  tcase_add_test (tcase, test_verify_finds_what_is_wrong);
  tcase_add_test (tcase, test_verify_finds_damage);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (backup_suite)
