/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "deed-draft.h"

#include <json-glib/json-glib.h>

#include "drafts.h"

typedef struct
{
  UnsootActing who;
  const UnsootDeedForm *form;
  gint64 record;
  GStrv texts; /* NULL: drop what is kept */
} Draft;

static void
draft_free (gpointer data)
{
  Draft *draft = data;

  g_strfreev (draft->texts);
  g_free (draft);
}

static Draft *
draft_new (UnsootSession *session, const UnsootDeedForm *form, gint64 record, GStrv texts)
{
  const UnsootStaffRow *person = unsoot_session_get_person (session);
  Draft *draft = g_new0 (Draft, 1);

  draft->who.staff_id = person != NULL ? person->id : 0;
  draft->who.now = unsoot_session_now (session);
  draft->form = form;
  draft->record = record;
  draft->texts = texts;
  return draft;
}

static char *
to_json (const char *const *texts)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  g_autoptr (JsonNode) root = NULL;

  json_builder_begin_array (builder);
  for (gsize i = 0; texts[i] != NULL; i++)
    json_builder_add_string_value (builder, texts[i]);
  json_builder_end_array (builder);
  root = json_builder_get_root (builder);
  return json_to_string (root, FALSE);
}

/* A draft that can't be read is no draft. */
static GStrv
from_json (const char *json)
{
  g_autoptr (JsonNode) root = json_from_string (json, NULL);
  g_autoptr (GStrvBuilder) texts = g_strv_builder_new ();
  JsonArray *array;

  if (root == NULL || !JSON_NODE_HOLDS_ARRAY (root))
    return NULL;
  array = json_node_get_array (root);
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      const char *text = json_node_get_string (json_array_get_element (array, i));
      g_strv_builder_add (texts, text != NULL ? text : "");
    }
  return g_strv_builder_end (texts);
}

static gpointer
load (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Draft *draft = data;
  g_autoptr (UnsootDraftRow) row
      = unsoot_draft_load (db, draft->who.staff_id, draft->form->slug, draft->record, error);

  return row != NULL ? from_json (row->text) : NULL;
}

static gpointer
keep (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Draft *draft = data;
  g_autofree char *text
      = draft->texts != NULL ? to_json ((const char *const *) draft->texts) : NULL;

  if (text != NULL)
    unsoot_draft_keep (db, &draft->who, draft->form->slug, draft->record, text, error);
  else
    unsoot_draft_drop (db, &draft->who, draft->form->slug, draft->record, error);
  return NULL;
}

void
unsoot_deed_draft_load (UnsootStoreSlot *slot, UnsootSession *session, const UnsootDeedForm *form,
                        gint64 record, UnsootStoreDone done, gpointer owner)
{
  unsoot_store_slot_call (slot, unsoot_session_get_store (session), load,
                          draft_new (session, form, record, NULL), draft_free,
                          (GDestroyNotify) g_strfreev, done, owner);
}

static void
kept_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (GError) error = NULL;

  unsoot_store_call_finish (UNSOOT_STORE (source), result, &error);
  /* The form still has it; only a crash would lose it now. */
  if (error != NULL)
    g_warning ("%s", error->message);
}

static void
put (UnsootSession *session, const UnsootDeedForm *form, gint64 record, GStrv texts)
{
  if (unsoot_session_get_person (session) == NULL)
    {
      g_strfreev (texts);
      return;
    }
  unsoot_store_call_async (unsoot_session_get_store (session), keep,
                           draft_new (session, form, record, texts), draft_free, NULL, NULL,
                           kept_cb, NULL);
}

void
unsoot_deed_draft_keep (UnsootSession *session, const UnsootDeedForm *form, gint64 record,
                        GStrv texts)
{
  put (session, form, record, texts);
}

void
unsoot_deed_draft_drop (UnsootSession *session, const UnsootDeedForm *form, gint64 record)
{
  put (session, form, record, NULL);
}
