/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-hold.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "format.h"
#include "path.h"
#include "planner-move.h"
#include "store-call.h"

enum
{
  ASK_AFTER_MS = 120, /* while something is dragged it is not asked for every pixel */
  UNDO_SECONDS = 10
};

struct _UnsootPlannerHold
{
  GObject parent_instance;

  /* owned */
  UnsootSession *session;
  char *idle; /* said while nothing is held */
  UnsootStoreSlot ask_slot;
  UnsootStoreSlot move_slot;
  UnsootPlannerMove *former; /* where the last one moved came from, for Undo */

  UnsootPlannerBoard *board; /* borrowed */
  GtkLabel *verdict;
  const UnsootPlannerFile *file;
  const GArray *items;

  guint ask_id;
  gint64 focus_job; /* whose block gets the keyboard once the day is read again */
  gboolean idle_dim;
  gboolean drop_waits;
};

G_DEFINE_FINAL_TYPE (UnsootPlannerHold, unsoot_planner_hold, G_TYPE_OBJECT)

static void
say (UnsootPlannerHold *self, const char *sentence, const char *css_class)
{
  gtk_label_set_text (self->verdict, sentence);
  gtk_widget_remove_css_class (GTK_WIDGET (self->verdict), "error");
  gtk_widget_remove_css_class (GTK_WIDGET (self->verdict), "dim-label");
  if (css_class != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (self->verdict), css_class);
}

static void
say_idle (UnsootPlannerHold *self)
{
  say (self, self->idle != NULL ? self->idle : "", self->idle_dim ? "dim-label" : NULL);
}

static void
stop_asking (UnsootPlannerHold *self)
{
  g_clear_handle_id (&self->ask_id, g_source_remove);
  unsoot_store_slot_clear (&self->ask_slot);
}

/* The booking that is held, where it would go. NULL where none is. */
static UnsootPlannerMove *
held_move (UnsootPlannerHold *self, const UnsootPlannerItem **item, const UnsootPlannerLane **to)
{
  const UnsootActing who = unsoot_session_acting (self->session);
  UnsootStripSpan span;
  UnsootPlannerMove *move;
  guint block;

  if (self->board == NULL || self->file == NULL
      || !unsoot_planner_board_get_held (self->board, &block, &span) || block >= self->items->len)
    return NULL;
  *item = &g_array_index (self->items, UnsootPlannerItem, block);
  *to = g_ptr_array_index (self->file->lanes, (guint) span.lane);
  move = unsoot_planner_move_new ((*item)->booking, &who);
  unsoot_planner_move_to (move, (*item)->lane, *to, &span);
  return move;
}

static void
moved (gpointer owner, gpointer result, const GError *error)
{
  UnsootPlannerHold *self = owner;

  if (error == NULL)
    return;
  unsoot_planner_board_give_up (self->board);
  say (self, error->message, "error");
}

static void
undo_cb (AdwToast *toast, UnsootPlannerHold *self)
{
  UnsootPlannerMove *back = g_steal_pointer (&self->former);

  if (back == NULL)
    return;
  back->who = unsoot_session_acting (self->session);
  self->focus_job = back->wish.job_id;
  unsoot_store_slot_call (&self->move_slot, unsoot_session_get_store (self->session),
                          unsoot_planner_move_do, back, g_free, NULL, moved, self);
}

static void
moved_with_toast (gpointer owner, gpointer result, const GError *error)
{
  UnsootPlannerHold *self = owner;
  GtkWidget *toasts = gtk_widget_get_ancestor (GTK_WIDGET (self->board), ADW_TYPE_TOAST_OVERLAY);
  AdwToast *toast;

  moved (owner, result, error);
  if (error != NULL || toasts == NULL)
    return;
  toast = adw_toast_new (_ ("The booking is moved"));
  adw_toast_set_button_label (toast, _ ("Undo"));
  adw_toast_set_timeout (toast, UNDO_SECONDS);
  g_signal_connect_object (toast, "button-clicked", G_CALLBACK (undo_cb), self, 0);
  adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (toasts), toast);
}

static void
carry_out (UnsootPlannerHold *self)
{
  const UnsootPlannerItem *item;
  const UnsootPlannerLane *to;
  UnsootPlannerMove *move = held_move (self, &item, &to);

  self->drop_waits = FALSE;
  if (move == NULL)
    return;
  g_free (self->former);
  self->former = unsoot_planner_move_new (item->booking, &move->who);
  self->focus_job = move->wish.job_id;
  unsoot_store_slot_call (&self->move_slot, unsoot_session_get_store (self->session),
                          unsoot_planner_move_do, move, g_free, NULL, moved_with_toast, self);
}

/* The sentence under the board while something is held: where to, and what speaks against it. */
static void
say_verdict (UnsootPlannerHold *self, const UnsootPlannerMove *move, const UnsootPlannerLane *to,
             const GPtrArray *sentences, gboolean breaks)
{
  g_autofree char *where = unsoot_format_from_to (move->wish.starts_at, move->wish.ends_at,
                                                  unsoot_session_now (self->session),
                                                  unsoot_session_zone (self->session));
  g_autoptr (GString) text = g_string_new (NULL);

  g_string_append_printf (text, "%s, %s. ", where, to->name);
  for (guint i = 0; sentences != NULL && i < sentences->len; i++)
    g_string_append_printf (text, "%s ", (const char *) g_ptr_array_index (sentences, i));
  if (sentences != NULL && sentences->len == 0)
    g_string_append (text, _ ("Nothing stands in the way. Return or letting go moves it there."));
  say (self, text->str, breaks ? "error" : NULL);
}

static void
refuse (UnsootPlannerHold *self, const char *sentence)
{
  /* Giving up says how it is done; what went wrong is said after that. */
  if (self->drop_waits)
    unsoot_planner_board_give_up (self->board);
  else
    unsoot_planner_board_set_verdict (self->board, UNSOOT_VERDICT_BREAKS);
  say (self, sentence, "error");
}

static void
answered (gpointer owner, gpointer result, const GError *error)
{
  UnsootPlannerHold *self = owner;
  UnsootPlannerVerdict *verdict = result;
  const UnsootPlannerItem *item;
  const UnsootPlannerLane *to;
  g_autofree UnsootPlannerMove *move = held_move (self, &item, &to);
  gboolean breaks;

  if (error != NULL)
    {
      refuse (self, error->message);
      return;
    }
  breaks = verdict->breaks->len > 0;
  if (move != NULL)
    {
      const gboolean waits = self->drop_waits;
      say_verdict (self, move, to, breaks ? verdict->breaks : verdict->warnings, breaks);
      unsoot_planner_board_set_verdict (self->board,
                                        breaks ? UNSOOT_VERDICT_BREAKS : UNSOOT_VERDICT_FREE);
      self->drop_waits = FALSE;
      if (waits && !breaks)
        carry_out (self);
      else if (waits)
        {
          g_autofree char *sentence = g_strdup (gtk_label_get_text (self->verdict));
          unsoot_planner_board_give_up (self->board);
          say (self, sentence, "error");
        }
    }
  unsoot_planner_verdict_free (verdict);
}

/* Why this booking stays where it is; NULL where it may go. */
static char *
stays (UnsootPlannerHold *self, const UnsootPlannerItem *item)
{
  char *refusal = unsoot_session_refusal (self->session, UNSOOT_DEED_MOVE_BOOKING);
  UnsootJobStatus status = UNSOOT_JOB_BOOKED;

  if (refusal != NULL)
    return refusal;
  unsoot_job_status_find (item->booking->block->status, &status);
  if (status == UNSOOT_JOB_BOOKED || status == UNSOOT_JOB_ARRIVED || status == UNSOOT_JOB_STOPPED)
    return NULL;
  return g_strdup_printf (_ ("Job %d is %s: its time stays as it is."),
                          (int) item->booking->block->job_number, unsoot_job_status_words (status));
}

static gboolean
ask_cb (gpointer user_data)
{
  UnsootPlannerHold *self = user_data;
  const UnsootPlannerItem *item;
  const UnsootPlannerLane *to;
  UnsootPlannerMove *move = held_move (self, &item, &to);

  self->ask_id = 0;
  if (move != NULL)
    unsoot_store_slot_call (&self->ask_slot, unsoot_session_get_store (self->session),
                            unsoot_planner_move_ask, move, g_free,
                            (GDestroyNotify) unsoot_planner_verdict_free, answered, self);
  return G_SOURCE_REMOVE;
}

static void
proposed_cb (UnsootPlannerBoard *board, guint block, UnsootPlannerHold *self)
{
  const UnsootPlannerItem *item;
  const UnsootPlannerLane *to;
  g_autofree UnsootPlannerMove *move = held_move (self, &item, &to);
  g_autofree char *why = NULL;

  stop_asking (self);
  if (move == NULL)
    {
      say_idle (self);
      return;
    }
  why = stays (self, item);
  if (why != NULL)
    {
      refuse (self, why);
      return;
    }
  say_verdict (self, move, to, NULL, FALSE);
  self->ask_id = g_timeout_add (ASK_AFTER_MS, ask_cb, self);
}

/* Let go: at once where the answer is there, else as soon as it comes. */
static void
dropped_cb (UnsootPlannerBoard *board, guint block, UnsootPlannerHold *self)
{
  const UnsootPlannerItem *item;
  const UnsootPlannerLane *to;
  g_autofree UnsootPlannerMove *move = held_move (self, &item, &to);
  g_autofree char *why = move != NULL ? stays (self, item) : NULL;

  if (why != NULL)
    {
      unsoot_planner_board_give_up (board);
      say (self, why, "error");
      return;
    }
  self->drop_waits = TRUE;
  g_clear_handle_id (&self->ask_id, g_source_remove);
  ask_cb (self);
}

static void
given_up_cb (UnsootPlannerBoard *board, UnsootPlannerHold *self)
{
  self->drop_waits = FALSE;
  stop_asking (self);
  say_idle (self);
}

void
unsoot_planner_hold_close (UnsootPlannerHold *self)
{
  stop_asking (self);
  unsoot_store_slot_clear (&self->move_slot);
  if (self->board != NULL)
    g_signal_handlers_disconnect_by_data (self->board, self);
  self->board = NULL;
  self->verdict = NULL;
  self->file = NULL;
  self->items = NULL;
}

static void
unsoot_planner_hold_dispose (GObject *object)
{
  UnsootPlannerHold *self = UNSOOT_PLANNER_HOLD (object);

  unsoot_planner_hold_close (self);
  g_clear_object (&self->session);
  g_clear_pointer (&self->former, g_free);
  g_clear_pointer (&self->idle, g_free);
  G_OBJECT_CLASS (unsoot_planner_hold_parent_class)->dispose (object);
}

static void
unsoot_planner_hold_class_init (UnsootPlannerHoldClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = unsoot_planner_hold_dispose;
}

static void
unsoot_planner_hold_init (UnsootPlannerHold *self)
{
}

UnsootPlannerHold *
unsoot_planner_hold_new (UnsootSession *session, UnsootPlannerBoard *board, GtkLabel *verdict)
{
  UnsootPlannerHold *self = g_object_new (UNSOOT_TYPE_PLANNER_HOLD, NULL);

  self->session = g_object_ref (session);
  self->board = board;
  self->verdict = verdict;
  g_signal_connect (board, "proposed", G_CALLBACK (proposed_cb), self);
  g_signal_connect (board, "dropped", G_CALLBACK (dropped_cb), self);
  g_signal_connect (board, "given-up", G_CALLBACK (given_up_cb), self);
  return self;
}

void
unsoot_planner_hold_set_day (UnsootPlannerHold *self, const UnsootPlannerFile *file,
                             const GArray *items)
{
  stop_asking (self);
  self->file = file;
  self->items = items;
}

void
unsoot_planner_hold_set_idle (UnsootPlannerHold *self, const char *sentence, gboolean dim)
{
  g_free (self->idle);
  self->idle = g_strdup (sentence);
  self->idle_dim = dim;
  say_idle (self);
}

void
unsoot_planner_hold_restore_focus (UnsootPlannerHold *self)
{
  for (guint i = 0; self->focus_job != 0 && i < self->items->len; i++)
    if (g_array_index (self->items, UnsootPlannerItem, i).booking->block->job_id == self->focus_job)
      {
        unsoot_planner_board_focus (self->board, i);
        break;
      }
  self->focus_job = 0;
}
