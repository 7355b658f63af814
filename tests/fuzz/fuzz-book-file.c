/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <string.h>

#include "backup.h"
#include "fuzz.h"
#include "migrate.h"
#include "targets.h"

/* The header of an SQLite file that is ours, so that most inputs get past the first look:
   https://www.sqlite.org/fileformat2.html#the_database_header */
#define HEADER_MAGIC "SQLite format 3"
#define HEADER_APPLICATION_ID 68
static const guint8 application_id[] = { 'U', 'n', 'S', 't' };

static const char *
folder (void)
{
  static char *path = NULL;
  if (path == NULL)
    path = g_dir_make_tmp ("unsoot-fuzz-XXXXXX", NULL);
  return path;
}

static void
empty_folder (const char *path)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *inside = g_build_filename (path, name, NULL);
      if (g_file_test (inside, G_FILE_TEST_IS_DIR))
        empty_folder (inside);
      g_remove (inside);
    }
}

/* A sound book or a reason, never a crash. */
static gboolean
look (const char *path, UnsootDbFlags flags)
{
  GError *error = NULL;
  g_autoptr (UnsootDb) db = unsoot_db_open (path, flags, &error);
  if (!fuzz_answer (db != NULL, &error))
    return FALSE;
  GPtrArray *findings = NULL;
  gboolean looked = unsoot_verify (db, &findings, &error);
  fuzz_answer (looked, &error);
  g_clear_pointer (&findings, g_ptr_array_unref);
  if ((flags & UNSOOT_DB_READ_ONLY) == 0)
    fuzz_answer (unsoot_migrate (db, 0, &error), &error);
  return TRUE;
}

/* A file that somebody hands in as the shop's book. */
void
fuzz_book_file (const guint8 *data, gsize size)
{
  g_autofree char *path = g_build_filename (folder (), "book.unsoot", NULL);
  gboolean ours = (fuzz_byte (&data, &size) & 1) != 0 && size > 100;
  g_autofree guint8 *bytes = g_memdup2 (data, size);
  g_autofree char *after = NULL;
  gsize after_size = 0;

  if (ours)
    {
      memcpy (bytes, HEADER_MAGIC, sizeof HEADER_MAGIC);
      memcpy (bytes + HEADER_APPLICATION_ID, application_id, sizeof application_id);
    }
  g_file_set_contents (path, (const char *) bytes, (gssize) size, NULL);
  gboolean opened = look (path, UNSOOT_DB_READ_ONLY | UNSOOT_DB_ELSEWHERE);
  FUZZ_CHECK (g_file_get_contents (path, &after, &after_size, NULL), "the file is gone");
  FUZZ_CHECK (after_size == size && (size == 0 || memcmp (after, bytes, size) == 0),
              "a file that was only looked at has changed");
  if (opened)
    look (path, UNSOOT_DB_ELSEWHERE);
  empty_folder (folder ());
}
