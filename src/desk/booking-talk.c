/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-talk.h"

#include "store-call.h"

enum
{
  PAUSE_MS = 250, /* in typing, before it is reckoned */
  KEEP_MS = 1000, /* after the first key, before the draft is kept */
};

struct _UnsootBookingTalk
{
  GObject parent_instance;

  /* owned */
  UnsootSession *session;
  char *slug;
  UnsootBookingPlan *plan;
  UnsootBookingFile *file;
  UnsootStoreSlot slot;

  gint64 record;
  gint64 staff_id; /* who said it, whoever is here by then */
  guint pause_id;
  guint keep_id;
  gboolean goes_on;
};

enum
{
  READ,
  FAILED,
  HELD,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBookingTalk, unsoot_booking_talk, G_TYPE_OBJECT)

static void
keep_draft (UnsootBookingTalk *self)
{
  const UnsootActing who
      = { .staff_id = self->staff_id, .now = unsoot_session_now (self->session) };

  g_clear_handle_id (&self->keep_id, g_source_remove);
  if (self->plan == NULL || self->staff_id == 0)
    return;
  unsoot_store_call_async (unsoot_session_get_store (self->session), unsoot_booking_draft_put,
                           unsoot_booking_draft_new (&who, self->slug, self->record, self->plan),
                           unsoot_booking_draft_free, NULL, NULL, NULL, NULL);
}

static gboolean
keep_cb (gpointer user_data)
{
  UnsootBookingTalk *self = user_data;

  self->keep_id = 0;
  keep_draft (self);
  return G_SOURCE_REMOVE;
}

static gboolean
pause_cb (gpointer user_data)
{
  UnsootBookingTalk *self = user_data;

  self->pause_id = 0;
  unsoot_booking_talk_read (self);
  return G_SOURCE_REMOVE;
}

static void
unsoot_booking_talk_dispose (GObject *object)
{
  UnsootBookingTalk *self = UNSOOT_BOOKING_TALK (object);

  g_clear_handle_id (&self->keep_id, g_source_remove);
  g_clear_handle_id (&self->pause_id, g_source_remove);
  unsoot_store_slot_clear (&self->slot);
  g_clear_pointer (&self->plan, unsoot_booking_plan_free);
  g_clear_pointer (&self->file, unsoot_booking_file_free);
  g_clear_pointer (&self->slug, g_free);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (unsoot_booking_talk_parent_class)->dispose (object);
}

static void
unsoot_booking_talk_class_init (UnsootBookingTalkClass *klass)
{
  const GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_booking_talk_dispose;
  signals[READ]
      = g_signal_new ("read", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[FAILED] = g_signal_new ("failed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[HELD] = g_signal_new ("held", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                1, G_TYPE_BOOLEAN);
}

static void
unsoot_booking_talk_init (UnsootBookingTalk *self)
{
}

UnsootBookingTalk *
unsoot_booking_talk_new (UnsootSession *session, const char *slug, gint64 record)
{
  UnsootBookingTalk *self = g_object_new (UNSOOT_TYPE_BOOKING_TALK, NULL);

  self->session = g_object_ref (session);
  self->slug = g_strdup (slug);
  self->record = record;
  return self;
}

UnsootSession *
unsoot_booking_talk_get_session (UnsootBookingTalk *self)
{
  return self->session;
}

UnsootBookingPlan *
unsoot_booking_talk_get_plan (UnsootBookingTalk *self)
{
  return self->plan;
}

const UnsootBookingFile *
unsoot_booking_talk_get_file (UnsootBookingTalk *self)
{
  return self->file;
}

void
unsoot_booking_talk_begin (UnsootBookingTalk *self, UnsootBookingPlan *plan)
{
  const UnsootStaffRow *person = unsoot_session_get_person (self->session);

  g_clear_pointer (&self->plan, unsoot_booking_plan_free);
  self->plan = plan;
  self->staff_id = person != NULL ? person->id : 0;
  self->goes_on = TRUE;
  unsoot_booking_talk_read (self);
}

void
unsoot_booking_talk_begin_anew (UnsootBookingTalk *self)
{
  unsoot_booking_talk_begin (self, unsoot_booking_plan_for (self->slug, self->record));
  keep_draft (self);
}

gint64
unsoot_booking_talk_get_staff_id (UnsootBookingTalk *self)
{
  return self->staff_id;
}

/* Not put off by the next key: who types on and on is kept all the same. */
void
unsoot_booking_talk_touched (UnsootBookingTalk *self)
{
  if (self->keep_id == 0)
    self->keep_id = g_timeout_add (KEEP_MS, keep_cb, self);
}

void
unsoot_booking_talk_hold (UnsootBookingTalk *self, gboolean held)
{
  g_signal_emit (self, signals[HELD], 0, held);
}

void
unsoot_booking_talk_changing (UnsootBookingTalk *self)
{
  unsoot_booking_talk_touched (self);
  g_clear_handle_id (&self->pause_id, g_source_remove);
  self->pause_id = g_timeout_add (PAUSE_MS, pause_cb, self);
}

void
unsoot_booking_talk_changed (UnsootBookingTalk *self)
{
  unsoot_booking_talk_touched (self);
  unsoot_booking_talk_read (self);
}

void
unsoot_booking_talk_go_on (UnsootBookingTalk *self)
{
  self->goes_on = TRUE;
  unsoot_booking_talk_changed (self);
}

gboolean
unsoot_booking_talk_goes_on (UnsootBookingTalk *self)
{
  const gboolean goes_on = self->goes_on;

  self->goes_on = FALSE;
  return goes_on;
}

/* What the worker is given: a copy, because the plan goes on changing. */
typedef struct
{
  UnsootBookingPlan *plan;
  gint64 now;
} Ask;

static void
ask_free (gpointer data)
{
  Ask *ask = data;

  unsoot_booking_plan_free (ask->plan);
  g_free (ask);
}

static gpointer
load (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Ask *ask = data;

  return unsoot_booking_file_load (db, ask->plan, ask->now, error);
}

static void
loaded (gpointer owner, gpointer result, const GError *error)
{
  UnsootBookingTalk *self = owner;

  if (error != NULL)
    {
      g_signal_emit (self, signals[FAILED], 0, error->message);
      return;
    }
  g_clear_pointer (&self->file, unsoot_booking_file_free);
  self->file = result;
  /* How far ahead the first free time was found. */
  self->plan->days_on = self->file->plan->days_on;
  g_signal_emit (self, signals[READ], 0);
}

void
unsoot_booking_talk_read (UnsootBookingTalk *self)
{
  Ask *ask;

  if (self->plan == NULL)
    return;
  g_clear_handle_id (&self->pause_id, g_source_remove);
  ask = g_new0 (Ask, 1);
  ask->plan = unsoot_booking_plan_copy (self->plan);
  ask->now = unsoot_session_now (self->session);
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (self->session), load, ask,
                          ask_free, (GDestroyNotify) unsoot_booking_file_free, loaded, self);
}

gboolean
unsoot_booking_talk_is_behind (UnsootBookingTalk *self)
{
  return self->pause_id != 0 || unsoot_store_slot_busy (&self->slot);
}

void
unsoot_booking_talk_leave (UnsootBookingTalk *self)
{
  if (self->keep_id != 0)
    keep_draft (self);
}

UnsootBookingDraft *
unsoot_booking_talk_dup_draft (UnsootBookingTalk *self)
{
  const UnsootActing who = unsoot_session_acting (self->session);

  return unsoot_booking_draft_new (&who, self->slug, self->record, NULL);
}

void
unsoot_booking_talk_quoted (UnsootBookingTalk *self, gint64 job_id)
{
  g_clear_handle_id (&self->keep_id, g_source_remove);
  self->plan->job_id = job_id;
  self->goes_on = TRUE;
  unsoot_booking_talk_read (self);
}
