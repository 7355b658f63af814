/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From format to format, all or nothing; and the real schema against the descriptors. */
#include "book.h"

#include <string.h>

#include "all-rows.h"

#define FAMILY                                                                                     \
  "CREATE TABLE parents (id @KEY, name TEXT NOT NULL) @STRICT;"                                    \
  "CREATE TABLE children (id @KEY,"                                                                \
  " parent_id @INT64 NOT NULL REFERENCES parents (id) ON DELETE CASCADE) @STRICT;"                 \
  "INSERT INTO parents (id, name) VALUES (1, 'a');"                                                \
  "INSERT INTO children (id, parent_id) VALUES (1, 1), (2, 1);"

/* Dropping the old parents would take the children along: see the pragma foreign_keys. */
#define REBUILD                                                                                    \
  "CREATE TABLE parents_new (id @KEY, name TEXT NOT NULL, note TEXT) @STRICT;"                     \
  "INSERT INTO parents_new (id, name) SELECT id, name FROM parents;"                               \
  "DROP TABLE parents; ALTER TABLE parents_new RENAME TO parents;"

static const UnsootRecordType *const no_types[] = { NULL };
static const UnsootMigration one[] = { { 1, "0001-family", FAMILY }, { 0 } };
static const UnsootMigration two[]
    = { { 1, "0001-family", FAMILY }, { 2, "0002-note", REBUILD }, { 0 } };
static const UnsootMigration broken[]
    = { { 1, "0001-family", FAMILY },
        { 2, "0002-broken", "DELETE FROM children; CREATE TABLE x (id @KEY); SELECT nonsense;" },
        { 0 } };
static const UnsootMigration orphaning[]
    = { { 1, "0001-family", FAMILY }, { 2, "0002-orphan", "DELETE FROM parents;" }, { 0 } };

static UnsootDb *
open_with (const char *path, const UnsootMigration *migrations)
{
  GError *error = NULL;
  UnsootDb *db = unsoot_db_open (path, UNSOOT_DB_CREATE, &error);
  ck_no_error (error);
  unsoot_migrate_with (db, migrations, no_types, 1700000000, &error);
  ck_no_error (error);
  return db;
}

static void
refuse_with (const char *path, const UnsootMigration *migrations, UnsootStoreError code,
             const char *words)
{
  GError *error = NULL;
  g_autoptr (UnsootDb) db = unsoot_db_open (path, 0, &error);
  ck_no_error (error);
  ck_assert (!unsoot_migrate_with (db, migrations, no_types, 1700000000, &error));
  ck_store_error (error, code, words);
  g_autofree char *enforced = unsoot_db_text (db, NULL, "PRAGMA foreign_keys");
  ck_assert_str_eq (enforced, "1");
}

START_TEST (test_upgrade_keeps_children_and_a_copy)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  unsoot_db_close (open_with (path, one));
  ck_raw (path, "PRAGMA user_version", "1");

  g_autoptr (UnsootDb) db = open_with (path, two);
  ck_raw (path, "PRAGMA user_version", "2");
  ck_raw (path, "SELECT count (*) FROM children", "2");
  ck_raw (path, "SELECT count (note IS NULL) FROM parents", "1");
  g_autofree char *enforced = unsoot_db_text (db, NULL, "PRAGMA foreign_keys");
  ck_assert_str_eq (enforced, "1");

  /* 1700000000 is 2023-11-14 22:13:20 UTC: date(1) -u -d @1700000000. */
  g_autofree char *copy
      = g_build_filename (folder, "backups", "book-20231114T221320Z-upgrade.unsoot", NULL);
  ck_raw (copy, "PRAGMA user_version", "1");
  ck_raw (copy, "PRAGMA application_id", "1433293684");
  ck_raw (copy, "SELECT count (*) FROM children", "2");
}
END_TEST

START_TEST (test_present_format_is_left_alone)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  g_autofree char *backups = g_build_filename (folder, "backups", NULL);
  unsoot_db_close (open_with (path, two));
  unsoot_db_close (open_with (path, two));
  ck_assert (!g_file_test (backups, G_FILE_TEST_EXISTS));
  ck_raw (path, "SELECT count (*) FROM children", "2");
}
END_TEST

START_TEST (test_failure_changes_nothing)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  unsoot_db_close (open_with (path, one));

  refuse_with (path, broken, UNSOOT_STORE_ERROR_FAILED, "0002-broken");
  refuse_with (path, orphaning, UNSOOT_STORE_ERROR_DAMAGED, "“children”");
  ck_raw (path, "PRAGMA user_version", "1");
  ck_raw (path, "SELECT count (*) FROM children", "2");
  ck_raw (path, "SELECT count (*) FROM parents", "1");
  ck_raw (path, "SELECT count (*) FROM sqlite_schema WHERE name = 'x'", "0");
}
END_TEST

START_TEST (test_newer_format_is_refused_untouched)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  gsize n_before;
  gsize n_after;

  unsoot_db_close (open_with (path, two));
  ck_raw (path, "PRAGMA journal_mode = DELETE", "delete");
  ck_assert (g_file_get_contents (path, &before, &n_before, NULL));
  refuse_with (path, one, UNSOOT_STORE_ERROR_NEWER_FORMAT, "format 2; this one knows 1");
  ck_assert (g_file_get_contents (path, &after, &n_after, NULL));
  ck_assert_uint_eq (n_before, n_after);
  ck_assert (memcmp (before, after, n_before) == 0);
}
END_TEST

/* A copy is made in the old journal mode; where it becomes the book it gets a log again. */
START_TEST (test_restored_copy_is_safe_again)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  unsoot_db_close (open_with (path, one));
  ck_raw (path, "PRAGMA journal_mode = DELETE", "delete");
  g_autoptr (UnsootDb) db = open_with (path, one);
  g_autofree char *mode = unsoot_db_text (db, NULL, "PRAGMA journal_mode");
  ck_assert_str_eq (mode, "wal");
}
END_TEST

START_TEST (test_id_is_never_used_twice)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  gint64 id = 0;
  const char *add = "INSERT INTO things (version, name, amount, active) "
                    "VALUES (1, 'a', 0, 1) RETURNING id";
  ck_assert (unsoot_db_int (db, &id, NULL, add));
  ck_assert_int_eq (id, 1);
  ck_assert (unsoot_db_run (db, NULL, "DELETE FROM things"));
  ck_assert (unsoot_db_int (db, &id, NULL, add));
  ck_assert_int_eq (id, 2);
}
END_TEST

static char *
columns_of (const char *path, const char *table)
{
  g_autofree char *sql
      = g_strdup_printf ("SELECT group_concat (name, ' ') FROM pragma_table_info ('%s')", table);
  return raw_text (path, sql);
}

static char *
fields_of (const UnsootRecordType *type)
{
  g_autoptr (GString) names = g_string_new (NULL);
  for (gsize i = 0; i < type->n_fields; i++)
    g_string_append_printf (names, "%s%s", i > 0 ? " " : "", type->fields[i].name);
  return g_string_free (g_steal_pointer (&names), FALSE);
}

START_TEST (test_every_record_fits_its_table)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  GError *error = NULL;
  UnsootDb *db = unsoot_db_open (path, UNSOOT_DB_CREATE, &error);
  ck_assert (unsoot_migrate (db, 0, &error));
  unsoot_db_close (db);
  int n_postings = 0;
  int n = 0;

  for (; unsoot_all_records[n] != NULL; n++)
    {
      const UnsootRecordType *type = unsoot_all_records[n];
      g_autofree char *columns = columns_of (path, type->table);
      g_autofree char *fields = fields_of (type);
      ck_assert_msg (g_strcmp0 (columns, fields) == 0, "%s: %s / %s", type->table, columns, fields);
      ck_assert_msg (type->posting == (strstr (fields, " version") == NULL), "%s", type->table);
      n_postings += type->posting;
    }
  g_autofree char *guards = g_strdup_printf ("%d", 2 * n_postings);
  g_autofree char *tables = g_strdup_printf ("%d", n);
  ck_assert_int_ge (n_postings, 10);
  ck_raw (path, "SELECT count (*) FROM sqlite_schema WHERE type = 'trigger'", guards);
  /* All that the schema makes is described, and strict. */
  ck_raw (path,
          "SELECT count (*) FROM pragma_table_list WHERE type = 'table' AND schema = 'main' "
          "AND strict = 1 AND name NOT LIKE 'found%'",
          tables);
  ck_raw (path,
          "SELECT group_concat (name) FROM pragma_table_list WHERE type = 'table' AND "
          "schema = 'main' AND strict = 0 AND name NOT LIKE 'sqlite_%'",
          NULL);
}
END_TEST

/* A book of the first format, as its own migration makes it, is brought up with what is in it. */
START_TEST (test_the_first_format_is_brought_up)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  g_autofree char *file
      = g_build_filename (g_getenv ("UNSOOT_SOURCE_DIR"), "data/schema/0001-book.sql", NULL);
  g_autofree char *sql = NULL;
  GError *error = NULL;

  ck_assert_msg (g_file_get_contents (file, &sql, NULL, &error), "%s", file);
  const UnsootMigration first[] = { { 1, "0001-book", sql }, { 0 } };
  UnsootDb *db = open_with (path, first);
  unsoot_db_run (db, &error, "INSERT INTO bays (name, position, active) VALUES ('Bay 1', 1, 1)");
  ck_no_error (error);
  unsoot_db_close (db);
  ck_raw (path, "SELECT count (*) FROM sqlite_schema WHERE name = 'prechecks'", "0");

  g_autoptr (UnsootDb) upgraded = unsoot_db_open (path, 0, &error);
  ck_assert (unsoot_migrate (upgraded, 1700000000, &error));
  g_autofree char *newest = g_strdup_printf ("%d", unsoot_migrate_newest ());
  ck_raw (path, "PRAGMA user_version", newest);
  ck_raw (path, "SELECT name FROM bays", "Bay 1");
  ck_raw (path, "SELECT count (*) FROM prechecks", "0");
  ck_raw (path, "SELECT count (*) FROM drafts", "0");
}
END_TEST

/* One of the second format too, with a tank's event in it that has no reason. */
START_TEST (test_the_second_format_is_brought_up)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  static const char *const names[] = { "0001-book.sql", "0002-advisor.sql" };
  UnsootMigration migrations[G_N_ELEMENTS (names) + 1] = { 0 };
  char *texts[G_N_ELEMENTS (names)] = { NULL };
  GError *error = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *file
          = g_build_filename (g_getenv ("UNSOOT_SOURCE_DIR"), "data/schema", names[i], NULL);
      ck_assert_msg (g_file_get_contents (file, &texts[i], NULL, &error), "%s", file);
      migrations[i] = (UnsootMigration){ (int) i + 1, names[i], texts[i] };
    }
  UnsootDb *db = open_with (path, migrations);
  unsoot_db_run (db, &error, "INSERT INTO machines (name, active) VALUES ('Cart A', 1)");
  unsoot_db_run (db, &error,
                 "INSERT INTO tanks (machine_id, side, capacity_ml, low_ml)"
                 " VALUES (1, 'fuel', 6000, 150)");
  unsoot_db_run (db, &error,
                 "INSERT INTO tank_events (tank_id, kind, ml, contents, at)"
                 " VALUES (1, 'found', 300, 'fresh', 1700000000)");
  ck_no_error (error);
  unsoot_db_close (db);

  g_autoptr (UnsootDb) upgraded = unsoot_db_open (path, 0, &error);
  ck_assert (unsoot_migrate (upgraded, 1700000000, &error));
  ck_raw (path, "SELECT ml || contents FROM tank_events WHERE reason IS NULL", "300fresh");
  ck_raw (path, "SELECT count (*) FROM supply_orders", "0");
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    g_free (texts[i]);
}
END_TEST

static Suite *
migrate_suite (void)
{
  Suite *suite = suite_create ("migrate");
  TCase *tcase = tcase_create ("formats");
  tcase_add_test (tcase, test_upgrade_keeps_children_and_a_copy);
  tcase_add_test (tcase, test_present_format_is_left_alone);
  tcase_add_test (tcase, test_failure_changes_nothing);
  tcase_add_test (tcase, test_newer_format_is_refused_untouched);
  tcase_add_test (tcase, test_restored_copy_is_safe_again);
  tcase_add_test (tcase, test_id_is_never_used_twice);
  tcase_add_test (tcase, test_every_record_fits_its_table);
  tcase_add_test (tcase, test_the_first_format_is_brought_up);
  tcase_add_test (tcase, test_the_second_format_is_brought_up);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (migrate_suite)
