/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk-shop.h"

#include <glib/gstdio.h>

#include "demo.h"
#include "migrate.h"
#include "shops.h"
#include "staff.h"
#include "suite.h"
#include "unsoot-resources.h"

/* 2026-03-04T16:40:00Z, a Wednesday. */
#define MOMENT G_GINT64_CONSTANT (1772642400)

enum
{
  PATIENCE_US = 60 * G_USEC_PER_SEC
};

static char *folder;
static char *path;

void
desk_shop_make (void)
{
  g_autoptr (GError) error = NULL;
  UnsootDb *db;

  folder = g_dir_make_tmp ("unsoot-desk-XXXXXX", &error);
  ck_no_error (error);
  path = g_build_filename (folder, "demo.unsoot", NULL);
  db = unsoot_db_open (path, UNSOOT_DB_CREATE, &error);
  ck_no_error (error);
  unsoot_migrate (db, MOMENT, &error);
  ck_no_error (error);
  unsoot_demo_make (db, MOMENT, NULL, NULL, NULL, &error);
  ck_no_error (error);
  unsoot_db_close (db);
}

void
desk_shop_remove (void)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *file = g_build_filename (folder, name, NULL);
      g_unlink (file);
    }
  g_rmdir (folder);
}

void
desk_shop_start_toolkit (void)
{
  g_resources_register (unsoot_desk_get_resource ());
  adw_init ();
  gtk_icon_theme_add_resource_path (gtk_icon_theme_get_for_display (gdk_display_get_default ()),
                                    "/org/unsoot/Unsoot/icons");
}

static gpointer
load_shop (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_shop_load (db, error);
}

static gpointer
find_advisor (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_staff_find (db, "Mara Quillen", error);
}

UnsootSession *
desk_shop_open (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (UnsootStore) store = unsoot_store_open (path, 0, &error);
  g_autoptr (UnsootStaffRow) advisor = NULL;
  UnsootSession *session;
  UnsootShopRow *shop;

  ck_no_error (error);
  shop = unsoot_store_call (store, load_shop, NULL, NULL, &error);
  ck_no_error (error);
  advisor = unsoot_store_call (store, find_advisor, NULL, NULL, &error);
  ck_no_error (error);
  session = unsoot_session_new (store, shop, TRUE);
  unsoot_session_stop_clock (session, MOMENT);
  unsoot_session_set_person (session, advisor);
  return session;
}

gint64
desk_shop_now (void)
{
  return MOMENT;
}

const char *
desk_shop_path (void)
{
  return path;
}

static gboolean
nothing_cb (gpointer data)
{
  return G_SOURCE_CONTINUE;
}

void
desk_shop_wait (gboolean (*done) (gpointer data), gpointer data, const char *what)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_US;
  /* So that an idle loop comes round to look again. */
  const guint turning = g_timeout_add (10, nothing_cb, NULL);

  while (!done (data) && g_get_monotonic_time () < last)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (turning);
  ck_assert_msg (done (data), "waited in vain for %s", what);
}

void
desk_shop_settle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    continue;
}

typedef gboolean (*Matches) (GtkWidget *widget, gconstpointer data);

static GtkWidget *
search (GtkWidget *root, Matches matches, gconstpointer data)
{
  if (matches (root, data))
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = search (child, matches, data);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
has_type (GtkWidget *widget, gconstpointer data)
{
  return G_TYPE_CHECK_INSTANCE_TYPE (widget, *(const GType *) data);
}

GtkWidget *
desk_shop_widget (GtkWidget *root, GType type)
{
  return search (root, has_type, &type);
}

guint
desk_shop_count (GtkWidget *root, GType type)
{
  guint n = G_TYPE_CHECK_INSTANCE_TYPE (root, type) ? 1 : 0;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += desk_shop_count (child, type);
  return n;
}

static gboolean
says (GtkWidget *widget, gconstpointer text)
{
  return GTK_IS_LABEL (widget) && g_str_equal (gtk_label_get_text (GTK_LABEL (widget)), text);
}

GtkWidget *
desk_shop_label (GtkWidget *root, const char *text)
{
  return search (root, says, text);
}
