/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "new-shop-draft.h"

#include <glib/gstdio.h>

enum
{
  KEEP_AFTER_MS = 600
};

struct _UnsootNewShopDraft
{
  GObject parent_instance;

  UnsootDraftFields *fields; /* owned */
  guint keep_id;
};

G_DEFINE_FINAL_TYPE (UnsootNewShopDraft, unsoot_new_shop_draft, G_TYPE_OBJECT)

static char *
path_of (void)
{
  return g_build_filename (g_get_user_state_dir (), "unsoot", "new-shop.json", NULL);
}

/* NULL: nothing any more. */
static void
put (const char *json)
{
  g_autofree char *path = path_of ();
  g_autofree char *folder = g_path_get_dirname (path);
  g_autoptr (GError) error = NULL;

  if (json == NULL)
    {
      g_unlink (path);
      return;
    }
  /* A few hundred bytes: written as soon as a worker could be asked to. */
  g_mkdir_with_parents (folder, 0700);
  if (!g_file_set_contents_full (path, json, -1, G_FILE_SET_CONTENTS_CONSISTENT, 0600, &error))
    g_warning ("%s", error->message);
}

static gboolean
keep_cb (gpointer user_data)
{
  unsoot_new_shop_draft_leave (user_data);
  return G_SOURCE_REMOVE;
}

static void
changed_cb (UnsootNewShopDraft *self)
{
  if (self->keep_id == 0)
    self->keep_id = g_timeout_add (KEEP_AFTER_MS, keep_cb, self);
}

static void
unsoot_new_shop_draft_finalize (GObject *object)
{
  UnsootNewShopDraft *self = UNSOOT_NEW_SHOP_DRAFT (object);

  g_clear_handle_id (&self->keep_id, g_source_remove);
  unsoot_draft_fields_free (self->fields);
  G_OBJECT_CLASS (unsoot_new_shop_draft_parent_class)->finalize (object);
}

static void
unsoot_new_shop_draft_class_init (UnsootNewShopDraftClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = unsoot_new_shop_draft_finalize;
}

static void
unsoot_new_shop_draft_init (UnsootNewShopDraft *self)
{
  self->fields = unsoot_draft_fields_new ();
}

UnsootNewShopDraft *
unsoot_new_shop_draft_new (void)
{
  return g_object_new (UNSOOT_TYPE_NEW_SHOP_DRAFT, NULL);
}

void
unsoot_new_shop_draft_watch (UnsootNewShopDraft *self, const char *name, GtkWidget *field,
                             const UnsootFieldWays *ways)
{
  unsoot_draft_fields_add (self->fields, name, "", field, ways, G_CALLBACK (changed_cb), self);
}

void
unsoot_new_shop_draft_begin (UnsootNewShopDraft *self)
{
  g_autofree char *path = path_of (), *kept = NULL;
  g_autoptr (GString) theirs = g_string_new (NULL);

  unsoot_draft_fields_settle (self->fields);
  if (g_file_get_contents (path, &kept, NULL, NULL))
    unsoot_draft_fields_put_back (self->fields, kept, theirs);
  g_clear_handle_id (&self->keep_id, g_source_remove);
}

void
unsoot_new_shop_draft_leave (UnsootNewShopDraft *self)
{
  g_autofree char *json = NULL;

  if (self->keep_id == 0)
    return;
  g_clear_handle_id (&self->keep_id, g_source_remove);
  json = unsoot_draft_fields_dup_typed (self->fields);
  put (json);
}

void
unsoot_new_shop_draft_done (UnsootNewShopDraft *self)
{
  g_clear_handle_id (&self->keep_id, g_source_remove);
  put (NULL);
}
