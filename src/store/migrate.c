/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "migrate.h"

#include <glib/gi18n-lib.h>

#include "all-rows.h"
#include "backup.h"
#include "db-driver.h"
#include "schema-resource.h"

#define SCHEMA_PATH "/org/unsoot/Unsoot/schema"

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return g_strcmp0 (*(const char *const *) a, *(const char *const *) b);
}

static void
add_migration (GArray *migrations, GResource *resource, const char *name)
{
  g_autofree char *path = g_strconcat (SCHEMA_PATH "/", name, NULL);
  /* A resource lives as long as the program, and its text ends with a NUL. */
  g_autoptr (GBytes) sql
      = g_resource_lookup_data (resource, path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  UnsootMigration migration
      = { (int) g_ascii_strtoll (name, NULL, 10), g_strdup (name), g_bytes_get_data (sql, NULL) };
  g_array_append_val (migrations, migration);
}

/* The files data/schema/NNNN-name.sql, ended by an empty row. */
static const UnsootMigration *
own_migrations (void)
{
  static gsize once = 0;
  if (g_once_init_enter (&once))
    {
      GResource *resource = unsoot_schema_get_resource ();
      g_auto (GStrv) names = g_resource_enumerate_children (resource, SCHEMA_PATH,
                                                            G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
      GArray *migrations = g_array_new (TRUE, TRUE, sizeof (UnsootMigration));
      qsort (names, g_strv_length (names), sizeof (char *), compare_names);
      for (guint i = 0; names[i] != NULL; i++)
        add_migration (migrations, resource, names[i]);
      g_once_init_leave (&once, (gsize) g_array_free (migrations, FALSE));
    }
  return (const UnsootMigration *) once;
}

static int
newest (const UnsootMigration *migrations)
{
  int number = 0;
  for (; migrations->name != NULL; migrations++)
    {
      g_assert (migrations->number == number + 1);
      number = migrations->number;
    }
  return number;
}

int
unsoot_migrate_newest (void)
{
  return newest (own_migrations ());
}

static gboolean
check_format (UnsootDb *db, int known, int *found, GError **error)
{
  if (!db->driver->get_format (db->connection, found, error))
    return FALSE;
  if (*found <= known)
    return TRUE;
  g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NEWER_FORMAT,
               _ ("“%s” was written by a newer Unsoot (format %d; this one knows %d). It was left "
                  "as it is; install the newer version."),
               db->path != NULL ? db->path : "", *found, known);
  return FALSE;
}

static gboolean
back_up (UnsootDb *db, gint64 now, GError **error)
{
  g_autofree char *folder = unsoot_backup_folder (db);
  if (folder == NULL)
    return TRUE;
  g_autofree char *path = unsoot_backup_keep (db, folder, "upgrade", now, error);
  return path != NULL;
}

/* Another program may have upgraded the book while this one waited, so the format is
   looked at again once nobody else can write. */
static gboolean
run_migrations (UnsootDb *db, const UnsootMigration *migrations, int known, GError **error)
{
  int found;
  if (!check_format (db, known, &found, error))
    return FALSE;
  for (; migrations->name != NULL; migrations++)
    if (migrations->number > found
        && !db->driver->run_schema (db->connection, migrations->sql, error))
      {
        g_prefix_error (error, "%s: ", migrations->name);
        return FALSE;
      }
  return TRUE;
}

gboolean
unsoot_migrate_with (UnsootDb *db, const UnsootMigration *migrations,
                     const UnsootRecordType *const *types, gint64 now, GError **error)
{
  int known = newest (migrations);
  int found;

  unsoot_db_assert_idle (db);
  if (!check_format (db, known, &found, error) || !db->driver->settle (db->connection, error))
    return FALSE;
  unsoot_db_guard_postings (db, types);
  if (found == known)
    return TRUE;
  if (found > 0 && !back_up (db, now, error))
    return FALSE;

  /* Statements prepared against the old tables are of no use any more. */
  g_hash_table_remove_all (db->statements);
  if (!db->driver->begin_schema (db->connection, error))
    return FALSE;
  if (!run_migrations (db, migrations, known, error))
    {
      db->driver->rollback_schema (db->connection);
      return FALSE;
    }
  return db->driver->commit_schema (db->connection, known, types, error);
}

gboolean
unsoot_migrate (UnsootDb *db, gint64 now, GError **error)
{
  return unsoot_migrate_with (db, own_migrations (), unsoot_all_records, now, error);
}
