/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop-files.h"

#include <gio/gio.h>
#include <glib/gstdio.h>
#include <stdio.h>

#include "place.h"

enum
{
  DEMO_LASTS = 6 * 3600, /* its day starts in the middle of the morning */
  PRIVATE_FOLDER = 0700
};

static char *
data_file (const char *name)
{
  return g_build_filename (g_get_user_data_dir (), "unsoot", name, NULL);
}

static char *
memory_file (void)
{
  return g_build_filename (g_get_user_state_dir (), "unsoot", "last-shop", NULL);
}

char *
unsoot_shop_files_usual (void)
{
  g_autofree char *memory = memory_file ();
  g_autofree char *last = NULL;

  if (g_file_get_contents (memory, &last, NULL, NULL) && g_file_test (last, G_FILE_TEST_EXISTS))
    return g_steal_pointer (&last);
  return unsoot_place_usual ();
}

char *
unsoot_shop_files_new (void)
{
  char *path = unsoot_place_usual ();

  for (int i = 2; g_file_test (path, G_FILE_TEST_EXISTS); i++)
    {
      g_autofree char *name = g_strdup_printf ("shop-%d" UNSOOT_SHOP_ENDING, i);
      g_free (path);
      path = data_file (name);
    }
  return path;
}

void
unsoot_shop_files_remember (const char *path)
{
  g_autofree char *memory = memory_file ();
  g_autofree char *folder = g_path_get_dirname (memory);
  g_autofree char *whole = g_canonicalize_filename (path, NULL);

  if (g_mkdir_with_parents (folder, PRIVATE_FOLDER) == 0)
    g_file_set_contents (memory, whole, -1, NULL);
}

/* Calls @found with every demo file and when it was made. */
static void
each_demo (void (*found) (const char *path, gint64 made, gpointer data), gpointer data)
{
  g_autofree char *folder = data_file (NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      gint64 made;

      if (g_str_has_prefix (name, "demo-")
          && sscanf (name, "demo-%" G_GINT64_FORMAT UNSOOT_SHOP_ENDING, &made) == 1)
        found (path, made, data);
    }
}

typedef struct
{
  gint64 made;
  char *path;
} Newest;

static void
keep_newest (const char *path, gint64 made, gpointer data)
{
  Newest *newest = data;

  if (!g_str_has_suffix (path, UNSOOT_SHOP_ENDING) || made <= newest->made)
    return;
  g_free (newest->path);
  newest->path = g_strdup (path);
  newest->made = made;
}

char *
unsoot_shop_files_demo (gint64 now)
{
  Newest newest = { 0 };

  each_demo (keep_newest, &newest);
  if (newest.path != NULL && ABS (now - newest.made) > DEMO_LASTS)
    g_clear_pointer (&newest.path, g_free);
  return newest.path;
}

static void
take_away (const char *path, gint64 made, gpointer data)
{
  g_unlink (path);
}

char *
unsoot_shop_files_new_demo (gint64 now)
{
  g_autofree char *name = g_strdup_printf ("demo-%" G_GINT64_FORMAT UNSOOT_SHOP_ENDING, now);

  each_demo (take_away, NULL);
  return data_file (name);
}
