/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "backup.h"

#include <string.h>

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "db-driver.h"
#include "place.h"

#define COPIES_KEPT 10
#define COPY_PREFIX "book-"
#define COPY_SUFFIX ".unsoot"

/* Opens the copy as a stranger's file, which looks at every page. */
static gboolean
check_copy (const char *path, GError **error)
{
  g_autoptr (UnsootDb) copy
      = unsoot_db_open (path, UNSOOT_DB_READ_ONLY | UNSOOT_DB_ELSEWHERE, error);
  return copy != NULL;
}

static gboolean
put_in_place (const char *part, const char *path, GError **error)
{
  if (g_rename (part, path) == 0)
    return unsoot_place_sync (path, error);
  g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_FAILED,
               _ ("The backup “%s” can’t be put in its place: %s."), path, g_strerror (errno));
  return FALSE;
}

gboolean
unsoot_backup_to (UnsootDb *db, const char *path, GError **error)
{
  g_autofree char *part = g_strconcat (path, ".part", NULL);

  if (g_file_test (path, G_FILE_TEST_EXISTS))
    {
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_ALLOWED,
                   _ ("“%s” exists already and was left as it is."), path);
      return FALSE;
    }
  g_unlink (part);
  if (!unsoot_place_create (part, error))
    return FALSE;
  gboolean done = db->driver->copy (db->connection, part, error) && unsoot_place_sync (part, error)
                  && check_copy (part, error) && put_in_place (part, path, error);
  if (!done)
    g_unlink (part);
  return done;
}

char *
unsoot_backup_folder (UnsootDb *db)
{
  if (db->path == NULL)
    return NULL;
  g_autofree char *folder = g_path_get_dirname (db->path);
  return g_build_filename (folder, "backups", NULL);
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return g_strcmp0 (*(const char *const *) a, *(const char *const *) b);
}

/* The names begin with the time, so the oldest come first. */
static void
remove_oldest (const char *folder)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_prefix (name, COPY_PREFIX) && g_str_has_suffix (name, COPY_SUFFIX))
      g_ptr_array_add (names, g_strdup (name));
  g_ptr_array_sort (names, compare_names);
  for (guint i = 0; i + COPIES_KEPT < names->len; i++)
    {
      g_autofree char *path = g_build_filename (folder, g_ptr_array_index (names, i), NULL);
      g_unlink (path);
    }
}

/* A second copy in the same second gets a number. */
static char *
free_path (const char *folder, const char *stamp, const char *reason)
{
  for (int n = 1;; n++)
    {
      g_autofree char *number = n > 1 ? g_strdup_printf ("-%d", n) : g_strdup ("");
      g_autofree char *name
          = g_strconcat (COPY_PREFIX, stamp, "-", reason, number, COPY_SUFFIX, NULL);
      g_autofree char *path = g_build_filename (folder, name, NULL);
      if (!g_file_test (path, G_FILE_TEST_EXISTS))
        return g_steal_pointer (&path);
    }
}

char *
unsoot_backup_keep (UnsootDb *db, const char *folder, const char *reason, gint64 now,
                    GError **error)
{
  g_autoptr (GDateTime) time = g_date_time_new_from_unix_utc (now);
  g_autofree char *stamp = g_date_time_format (time, "%Y%m%dT%H%M%SZ");
  g_autofree char *path = free_path (folder, stamp, reason);

  if (!unsoot_backup_to (db, path, error))
    return NULL;
  remove_oldest (folder);
  return g_steal_pointer (&path);
}

static gboolean
has_copy_of (const char *folder, const char *day, const char *reason)
{
  g_autofree char *prefix = g_strconcat (COPY_PREFIX, day, "T", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_prefix (name, prefix) && strstr (name, reason) != NULL)
      return TRUE;
  return FALSE;
}

gboolean
unsoot_backup_daily (UnsootDb *db, gint64 now, GError **error)
{
  g_autofree char *folder = unsoot_backup_folder (db);
  g_autoptr (GDateTime) time = g_date_time_new_from_unix_utc (now);
  g_autofree char *day = g_date_time_format (time, "%Y%m%d");

  if (folder == NULL || has_copy_of (folder, day, "-daily"))
    return TRUE;
  g_autofree char *path = unsoot_backup_keep (db, folder, "daily", now, error);
  return path != NULL;
}

gboolean
unsoot_verify (UnsootDb *db, GPtrArray **findings, GError **error)
{
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func (g_free);
  if (!db->driver->verify (db->connection, list, error))
    return FALSE;
  *findings = g_steal_pointer (&list);
  return TRUE;
}
