/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draft-file.h"

#include "drafts.h"

typedef struct
{
  UnsootActing who;
  char *place;
  gint64 record;
  char *text;
} Draft;

static void
draft_free (gpointer data)
{
  Draft *draft = data;

  g_free (draft->place);
  g_free (draft->text);
  g_free (draft);
}

static Draft *
draft_new (UnsootSession *session, gint64 staff_id, const char *place, gint64 record, char *text)
{
  Draft *draft = g_new0 (Draft, 1);

  draft->who = (UnsootActing){ .staff_id = staff_id, .now = unsoot_session_now (session) };
  draft->place = g_strdup (place);
  draft->record = record;
  draft->text = text;
  return draft;
}

static gpointer
load (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Draft *draft = data;

  return unsoot_draft_load (db, draft->who.staff_id, draft->place, draft->record, error);
}

static gpointer
put (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Draft *draft = data;

  if (draft->text != NULL)
    unsoot_draft_keep (db, &draft->who, draft->place, draft->record, draft->text, error);
  else
    unsoot_draft_drop (db, &draft->who, draft->place, draft->record, error);
  return NULL;
}

void
unsoot_draft_file_load (UnsootStoreSlot *slot, UnsootSession *session, gint64 staff_id,
                        const char *place, gint64 record, UnsootStoreDone done, gpointer owner)
{
  unsoot_store_slot_call (slot, unsoot_session_get_store (session), load,
                          draft_new (session, staff_id, place, record, NULL), draft_free,
                          (GDestroyNotify) unsoot_draft_row_free, done, owner);
}

static void
put_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (GError) error = NULL;

  unsoot_store_call_finish (UNSOOT_STORE (source), result, &error);
  /* The form still has it; only leaving it would lose it now. */
  if (error != NULL)
    g_warning ("%s", error->message);
}

void
unsoot_draft_file_put (UnsootSession *session, gint64 staff_id, const char *place, gint64 record,
                       char *text)
{
  unsoot_store_call_async (unsoot_session_get_store (session), put,
                           draft_new (session, staff_id, place, record, text), draft_free, NULL,
                           NULL, put_cb, NULL);
}
