/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gstdio.h>
#include <json-glib/json-glib.h>
#include <sqlite3.h>
#include <string.h>

#include "suite.h"

/* The program as a person or a script starts it, and the book looked into without it. */

/* A number in a line of words or SQL. */
#define NUMBER "%" G_GINT64_FORMAT

/* The clock of these walks: 2025-11-24T16:00:00Z. */
#define WALK_NOW G_GINT64_CONSTANT (1764000000)

/* What the program told. */
typedef struct
{
  int status;
  char *out;
  char *err;
} Told;

static inline void
told_clear (Told *told)
{
  g_free (told->out);
  g_free (told->err);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Told, told_clear)

/* A folder of the walk's own, with the demo shop's book in it. */
static char *walk_folder;
static char *walk_book;
static gint64 walk_now = WALK_NOW;

static inline Told
run_program (char **args)
{
  Told told = { 0 };
  g_autoptr (GStrvBuilder) line = g_strv_builder_new ();
  g_auto (GStrv) environment = g_get_environ ();
  GError *error = NULL;
  int wait_status = 0;

  g_strv_builder_add (line, g_getenv ("UNSOOT_PROGRAM"));
  g_strv_builder_addv (line, (const char **) args);
  g_auto (GStrv) argv = g_strv_builder_end (line);
  environment = g_environ_setenv (environment, "LC_ALL", "C.UTF-8", TRUE);
  environment = g_environ_setenv (environment, "XDG_DATA_HOME", walk_folder, TRUE);
  g_spawn_sync (walk_folder, argv, environment, G_SPAWN_DEFAULT, NULL, NULL, &told.out, &told.err,
                &wait_status, &error);
  ck_no_error (error);
  ck_assert_msg (WIFEXITED (wait_status), "the program died: %s", told.err);
  told.status = WEXITSTATUS (wait_status);
  return told;
}

/* The program with these words, quoted as in a shell. */
static inline Told told_by (const char *format, ...) G_GNUC_PRINTF (1, 2);

static inline Told
told_by (const char *format, ...)
{
  va_list arguments;
  g_auto (GStrv) args = NULL;
  GError *error = NULL;

  va_start (arguments, format);
  g_autofree char *line = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_shell_parse_argv (line, NULL, &args, &error);
  ck_no_error (error);
  return run_program (args);
}

/* The same on the walk's book, at the walk's time. */
static inline Told asked_of (const char *format, ...) G_GNUC_PRINTF (1, 2);

static inline Told
asked_of (const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_autofree char *line = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  return told_by ("%s --file '%s' --now " NUMBER, line, walk_book != NULL ? walk_book : "nowhere",
                  walk_now);
}

#define ck_done(told)                                                                              \
  ck_assert_msg ((told).status == 0 && (told).err[0] == '\0', "exit %d: %s", (told).status,        \
                 (told).err)

/* Refused: exit status, nothing on the output, a sentence with these words. */
#define ck_refused(told, wanted, words)                                                            \
  G_STMT_START                                                                                     \
  {                                                                                                \
    ck_assert_msg ((told).status == (wanted), "exit %d: %s%s", (told).status, (told).err,          \
                   (told).out);                                                                    \
    ck_assert_str_eq ((told).out, "");                                                             \
    ck_assert_msg (strstr ((told).err, words) != NULL, "other sentence: %s", (told).err);          \
  }                                                                                                \
  G_STMT_END

#define ck_contains(text, words)                                                                   \
  ck_assert_msg (strstr ((text), (words)) != NULL, "“%s” is not in: %s", (words), (text))

/* The object that was told, the caller's to free. */
static inline JsonNode *
json_told (const Told *told)
{
  GError *error = NULL;
  JsonNode *node;

  ck_assert_msg (told->status == 0, "exit %d: %s", told->status, told->err);
  node = json_from_string (told->out, &error);
  ck_no_error (error);
  ck_assert_msg (node != NULL && JSON_NODE_HOLDS_OBJECT (node), "no object: %s", told->out);
  return node;
}

/* A member of it; "" for null and what is not there. */
static inline const char *
json_text (JsonNode *node, const char *key)
{
  JsonObject *object = json_node_get_object (node);

  return json_object_has_member (object, key) && !json_object_get_null_member (object, key)
             ? json_object_get_string_member (object, key)
             : "";
}

static inline gint64
json_int (JsonNode *node, const char *key)
{
  JsonObject *object = json_node_get_object (node);

  ck_assert_msg (json_object_has_member (object, key), "no “%s”", key);
  return json_object_get_int_member (object, key);
}

/* The first column of the first row, by SQLite's own library; NULL where there is none. */
static inline char *raw (const char *format, ...) G_GNUC_PRINTF (1, 2);

static inline char *
raw (const char *format, ...)
{
  va_list arguments;
  sqlite3 *db = NULL;
  sqlite3_stmt *statement = NULL;

  va_start (arguments, format);
  g_autofree char *sql = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  ck_assert_int_eq (sqlite3_open_v2 (walk_book, &db, SQLITE_OPEN_READWRITE, NULL), SQLITE_OK);
  ck_assert_msg (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL) == SQLITE_OK, "%s: %s",
                 sqlite3_errmsg (db), sql);
  char *text = sqlite3_step (statement) == SQLITE_ROW
                   ? g_strdup ((const char *) sqlite3_column_text (statement, 0))
                   : NULL;
  sqlite3_finalize (statement);
  sqlite3_close (db);
  return text;
}

#define ck_raw(wanted, ...)                                                                        \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autofree char *raw_answer = raw (__VA_ARGS__);                                               \
    ck_assert_pstr_eq (raw_answer, wanted);                                                        \
  }                                                                                                \
  G_STMT_END

static inline gint64 raw_int (const char *format, ...) G_GNUC_PRINTF (1, 2);

static inline gint64
raw_int (const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_autofree char *sql = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_autofree char *text = raw ("%s", sql);
  ck_assert_msg (text != NULL, "nothing: %s", sql);
  return g_ascii_strtoll (text, NULL, 10);
}

/* What a paper says, by poppler's pdftotext. */
static inline char *
text_of_pdf (const char *path)
{
  char *args[] = { (char *) "pdftotext", (char *) "-layout", (char *) path, (char *) "-", NULL };
  GError *error = NULL;
  char *text = NULL;
  int wait_status = 0;

  g_spawn_sync (NULL, args, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &text, NULL, &wait_status,
                &error);
  ck_no_error (error);
  ck_assert_int_eq (wait_status, 0);
  return text;
}

static inline void
remove_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      if (g_file_test (path, G_FILE_TEST_IS_DIR))
        remove_folder (path);
      else
        g_unlink (path);
    }
  g_rmdir (folder);
}

/* Fixtures: the demo shop is made once for a program, by the program, and each test has a copy of it
 * in a folder of its own. */
static char *walk_made;

static inline void
make_walk (void)
{
  walk_made = g_dir_make_tmp ("unsoot-walk-XXXXXX", NULL);
  walk_folder = walk_made;
  g_auto (Told) told = told_by ("demo --at 2025-11-24T16:00:00Z --file shop.unsoot");
  ck_done (told);
}

static inline void
forget_walk (void)
{
  remove_folder (walk_made);
}

static inline void
open_walk (void)
{
  g_autofree char *made = g_build_filename (walk_made, "shop.unsoot", NULL);
  g_autofree char *bytes = NULL;
  gsize length = 0;

  walk_folder = g_dir_make_tmp ("unsoot-walk-XXXXXX", NULL);
  walk_book = g_build_filename (walk_folder, "shop.unsoot", NULL);
  ck_assert (g_file_get_contents (made, &bytes, &length, NULL));
  ck_assert (g_file_set_contents (walk_book, bytes, (gssize) length, NULL));
}

static inline void
close_walk (void)
{
  remove_folder (walk_folder);
}
