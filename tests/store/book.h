/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gstdio.h>
#include <sqlite3.h>

#include "db.h"
#include "migrate.h"
#include "suite.h"

/* For a test that must abort: GLib's last words would stop the whole report. */
static inline void
be_quiet (void)
{
  ck_assert_ptr_nonnull (freopen ("/dev/null", "w", stdout));
  ck_assert_ptr_nonnull (freopen ("/dev/null", "w", stderr));
}

/* A folder of the test's own, and the path of a book in it. */
static inline char *
test_folder (void)
{
  GError *error = NULL;
  char *folder = g_dir_make_tmp ("unsoot-test-XXXXXX", &error);
  ck_no_error (error);
  return folder;
}

static inline void
test_folder_remove (char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      char *path = g_build_filename (folder, name, NULL);
      if (g_file_test (path, G_FILE_TEST_IS_DIR))
        test_folder_remove (path);
      else
        {
          g_unlink (path);
          g_free (path);
        }
    }
  g_rmdir (folder);
  g_free (folder);
}

typedef char TestFolder;
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TestFolder, test_folder_remove)

/* Two tables: one that people edit, one of postings. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *name;
  gint64 owner_id; /* of things */
  gint64 amount;
  double level;
  gboolean active;
  char *secret;
  GBytes *picture;
} TestThing;
UNSOOT_DECLARE_RECORD (TestThing, test_thing)

typedef struct
{
  gint64 id;
  gint64 thing_id; /* of things */
  gint64 ml;
} TestMove;
UNSOOT_DECLARE_RECORD (TestMove, test_move)

static const UnsootField test_thing_columns[] = {
  UNSOOT_COLUMN (TestThing, id, INT64, PLAIN),
  UNSOOT_COLUMN (TestThing, version, INT64, PLAIN),
  UNSOOT_COLUMN (TestThing, name, TEXT, PLAIN),
  UNSOOT_COLUMN (TestThing, owner_id, INT64, REF),
  UNSOOT_COLUMN (TestThing, amount, INT64, PLAIN),
  UNSOOT_COLUMN (TestThing, level, REAL, PLAIN),
  UNSOOT_COLUMN (TestThing, active, BOOL, PLAIN),
  UNSOOT_COLUMN (TestThing, secret, TEXT, SECRET),
  UNSOOT_COLUMN (TestThing, picture, BYTES, PLAIN),
};
UNSOOT_DEFINE_RECORD (TestThing, test_thing, "things", "thing", FALSE, test_thing_columns)

static const UnsootField test_move_columns[] = {
  UNSOOT_COLUMN (TestMove, id, INT64, PLAIN),
  UNSOOT_COLUMN (TestMove, thing_id, INT64, REF),
  UNSOOT_COLUMN (TestMove, ml, INT64, PLAIN),
};
UNSOOT_DEFINE_RECORD (TestMove, test_move, "moves", "move", TRUE, test_move_columns)

static const UnsootRecordType *const test_types[] = { &test_thing_type, &test_move_type, NULL };

#define TEST_SCHEMA                                                                                \
  "CREATE TABLE things (id @KEY, version @INT64 NOT NULL, name TEXT NOT NULL,"                     \
  " owner_id @INT64 REFERENCES things (id), amount @INT64 NOT NULL CHECK (amount >= 0),"           \
  " level @REAL64, active @INT64 NOT NULL, secret TEXT, picture @BYTES, UNIQUE (name)) @STRICT;"   \
  "CREATE TABLE moves (id @KEY, thing_id @INT64 NOT NULL REFERENCES things (id),"                  \
  " ml @INT64 NOT NULL) @STRICT;"                                                                  \
  "CREATE TABLE changes (id @KEY, at @INT64 NOT NULL, staff_id @INT64, record TEXT NOT NULL,"      \
  " row_id @INT64 NOT NULL, field TEXT NOT NULL, was TEXT, now TEXT) @STRICT;"

static const UnsootMigration test_migrations[] = { { 1, "0001-test", TEST_SCHEMA }, { 0 } };

/* A book with the test's own tables; @path NULL: in memory. */
static inline UnsootDb *
test_book (const char *path)
{
  GError *error = NULL;
  UnsootDb *db = unsoot_db_open (path, UNSOOT_DB_CREATE, &error);
  ck_no_error (error);
  unsoot_migrate_with (db, test_migrations, test_types, 0, &error);
  ck_no_error (error);
  return db;
}

/* The store's code, and that the sentence contains @words. */
#define ck_store_error(error, wanted, words)                                                       \
  G_STMT_START                                                                                     \
  {                                                                                                \
    ck_assert_msg ((error) != NULL, "no error where one was due");                                 \
    ck_assert_msg (g_error_matches (error, UNSOOT_STORE_ERROR, wanted), "other error: %d %s",      \
                   (error)->code, (error)->message);                                               \
    ck_assert_msg (strstr ((error)->message, words) != NULL, "other sentence: %s",                 \
                   (error)->message);                                                              \
    g_clear_error (&(error));                                                                      \
  }                                                                                                \
  G_STMT_END

/* What the file says without the store: SQLite's own library. */
static inline char *
raw_text (const char *path, const char *sql)
{
  sqlite3 *raw = NULL;
  sqlite3_stmt *statement = NULL;
  ck_assert_int_eq (sqlite3_open_v2 (path, &raw, SQLITE_OPEN_READWRITE, NULL), SQLITE_OK);
  ck_assert_msg (sqlite3_prepare_v2 (raw, sql, -1, &statement, NULL) == SQLITE_OK, "%s",
                 sqlite3_errmsg (raw));
  int code = sqlite3_step (statement);
  char *text = code == SQLITE_ROW    ? g_strdup ((const char *) sqlite3_column_text (statement, 0))
               : code == SQLITE_DONE ? NULL
                                     : g_strdup_printf ("error: %s", sqlite3_errmsg (raw));
  sqlite3_finalize (statement);
  sqlite3_close (raw);
  return text;
}

#define ck_raw(path, sql, wanted)                                                                  \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autofree char *raw_answer = raw_text (path, sql);                                            \
    ck_assert_pstr_eq (raw_answer, wanted);                                                        \
  }                                                                                                \
  G_STMT_END
