/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "opening.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "shops.h"
#include "staff.h"

typedef struct
{
  char *path;
  gboolean demo;
  UnsootStoreFunc prepare;
  gpointer data;
  GDestroyNotify free_data;
  UnsootStore *store;
} Opening;

typedef struct
{
  UnsootShopRow *shop;
  UnsootStaffRow *person; /* NULL: nobody yet */
} Shop;

static void
opening_free (gpointer data)
{
  Opening *opening = data;

  if (opening->data != NULL && opening->free_data != NULL)
    opening->free_data (opening->data);
  g_clear_object (&opening->store);
  g_free (opening->path);
  g_free (opening);
}

static void
shop_free (gpointer data)
{
  Shop *shop = data;

  g_clear_pointer (&shop->shop, unsoot_shop_row_free);
  g_clear_pointer (&shop->person, unsoot_staff_row_free);
  g_free (shop);
}

static UnsootStaffRow *
first_of (UnsootRole role, UnsootDb *db, GError **error)
{
  g_autoptr (GPtrArray) staff = unsoot_staff_list (db, error);

  for (guint i = 0; staff != NULL && i < staff->len; i++)
    {
      const UnsootStaffRow *person = g_ptr_array_index (staff, i);
      if (person->active && g_str_equal (person->role, unsoot_role_slug (role)))
        return unsoot_record_copy (&unsoot_staff_row_type, person);
    }
  return NULL;
}

static gpointer
read_shop (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Opening *opening = data;
  GError *trouble = NULL;
  Shop *shop;

  if (opening->prepare != NULL)
    opening->prepare (db, opening->data, cancellable, &trouble);
  if (trouble != NULL)
    {
      g_propagate_error (error, trouble);
      return NULL;
    }
  shop = g_new0 (Shop, 1);
  shop->shop = unsoot_shop_load (db, &trouble);
  /* Whoever has just made the book has also just chosen its PIN. */
  if (shop->shop != NULL && opening->demo)
    shop->person = first_of (UNSOOT_ROLE_ADVISOR, db, &trouble);
  else if (shop->shop != NULL && opening->prepare != NULL)
    shop->person = first_of (UNSOOT_ROLE_OWNER, db, &trouble);
  if (trouble == NULL)
    return shop;
  g_propagate_error (error, trouble);
  shop_free (shop);
  return NULL;
}

/* What a file that was just made leaves when making it failed. */
static void
take_away (const Opening *opening)
{
  static const char *const endings[] = { "", "-wal", "-shm" };

  unsoot_store_close (opening->store);
  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++)
    {
      g_autofree char *file = g_strconcat (opening->path, endings[i], NULL);
      g_unlink (file);
    }
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (GTask) task = user_data;
  Opening *opening = g_task_get_task_data (task);
  GError *error = NULL;
  Shop *shop = unsoot_store_call_finish (UNSOOT_STORE (source), result, &error);
  UnsootSession *session;

  if (shop == NULL)
    {
      if (opening->prepare != NULL)
        take_away (opening);
      g_task_return_error (task, error);
      return;
    }
  session = unsoot_session_new (opening->store, g_steal_pointer (&shop->shop), opening->demo);
  if (shop->person != NULL)
    unsoot_session_set_person (session, shop->person);
  shop_free (shop);
  g_task_return_pointer (task, session, g_object_unref);
}

static void
opened_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (GTask) task = user_data;
  Opening *opening = g_task_get_task_data (task);
  GError *error = NULL;

  opening->store = unsoot_store_open_finish (result, &error);
  if (opening->store == NULL)
    {
      g_task_return_error (task, error);
      return;
    }
  unsoot_store_call_async (opening->store, read_shop, opening, NULL, shop_free,
                           g_task_get_cancellable (task), read_cb, g_object_ref (task));
}

void
unsoot_opening_async (const char *path, UnsootDbFlags flags, gboolean demo, UnsootStoreFunc prepare,
                      gpointer data, GDestroyNotify free_data, GCancellable *cancellable,
                      GAsyncReadyCallback callback, gpointer user_data)
{
  GTask *task = g_task_new (NULL, cancellable, callback, user_data);
  Opening *opening = g_new0 (Opening, 1);

  opening->path = g_strdup (path);
  opening->demo = demo;
  opening->prepare = prepare;
  opening->data = data;
  opening->free_data = free_data;
  g_task_set_task_data (task, opening, opening_free);
  /* A deed that was stopped says so itself, and its file is to be taken away. */
  g_task_set_check_cancellable (task, FALSE);
  unsoot_store_open_async (path, flags, cancellable, opened_cb, task);
}

UnsootSession *
unsoot_opening_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
