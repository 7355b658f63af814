/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book-kit.h"

#include <gio/gio.h>
#include <glib/gstdio.h>
#include <sqlite3.h>

#include "suite.h"

enum
{
  PATIENCE_S = 90,
  POLL_US = 50000
};

char *
book_named (const char *prefix)
{
  g_autofree char *folder = g_build_filename (g_get_user_data_dir (), "unsoot", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_prefix (name, prefix) && g_str_has_suffix (name, ".unsoot"))
      return g_build_filename (folder, name, NULL);
  return NULL;
}

char *
book_path (void)
{
  char *demo = book_named ("demo-");

  return demo != NULL ? demo : book_named ("");
}

void
book_forget (const char *prefix)
{
  char *book;

  while ((book = book_named (prefix)) != NULL)
    {
      g_unlink (book);
      g_free (book);
    }
}

char *
book_text_in (const char *book, const char *sql)
{
  sqlite3 *db = NULL;
  sqlite3_stmt *statement = NULL;
  char *text = NULL;

  ck_assert_msg (book != NULL, "there is no book");
  ck_assert_int_eq (sqlite3_open_v2 (book, &db, SQLITE_OPEN_READONLY, NULL), SQLITE_OK);
  sqlite3_busy_timeout (db, PATIENCE_S * 1000);
  ck_assert_msg (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL) == SQLITE_OK, "%s: %s",
                 sqlite3_errmsg (db), sql);
  if (sqlite3_step (statement) == SQLITE_ROW)
    text = g_strdup ((const char *) sqlite3_column_text (statement, 0));
  sqlite3_finalize (statement);
  sqlite3_close (db);
  return text;
}

static char *
answer (const char *sql)
{
  g_autofree char *book = book_path ();

  return book_text_in (book, sql);
}

char *
book_text (const char *format, ...)
{
  g_autofree char *sql = NULL;
  va_list arguments;

  va_start (arguments, format);
  sql = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  return answer (sql);
}

gint64
book_int (const char *format, ...)
{
  g_autofree char *sql = NULL, *text = NULL;
  va_list arguments;

  va_start (arguments, format);
  sql = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  text = answer (sql);
  ck_assert_msg (text != NULL, "nothing: %s", sql);
  return g_ascii_strtoll (text, NULL, 10);
}

void
ck_book (const char *wanted, const char *format, ...)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  g_autofree char *sql = NULL, *text = NULL;
  va_list arguments;

  va_start (arguments, format);
  sql = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  text = answer (sql);
  while (g_strcmp0 (text, wanted) != 0 && g_get_monotonic_time () < last)
    {
      g_usleep (POLL_US);
      g_free (text);
      text = answer (sql);
    }
  ck_assert_msg (g_strcmp0 (text, wanted) == 0, "%s: %s, not %s", sql, text, wanted);
}

/* NULL until the whole of it is there. */
static char *
try_text (const char *file)
{
  const char *const argv[] = { "pdftotext", "-layout", file, "-", NULL };
  g_autofree char *out = NULL;
  GError *error = NULL;
  int status = 0;

  if (!g_file_test (file, G_FILE_TEST_EXISTS))
    return NULL;
  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_STDERR_TO_DEV_NULL, NULL,
                NULL, &out, NULL, &status, &error);
  ck_no_error (error);
  return g_spawn_check_wait_status (status, NULL) ? g_steal_pointer (&out) : NULL;
}

char *
paper_text (const char *file)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  char *text = try_text (file);

  while (text == NULL && g_get_monotonic_time () < last)
    {
      g_usleep (POLL_US);
      text = try_text (file);
    }
  ck_assert_msg (text != NULL, "no paper in %s", file);
  return text;
}
