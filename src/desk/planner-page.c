/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-page.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "civil.h"
#include "format.h"
#include "path.h"
#include "planner-board.h"
#include "planner-file.h"
#include "planner-move.h"
#include "planner-words.h"
#include "service-row.h"
#include "window.h"

enum
{
  ASK_AFTER_MS = 120, /* while something is dragged it is not asked for every pixel */
  HOUR = 3600,
  USUAL_OPENING = 8 * HOUR, /* of a day on which the shop is shut */
  USUAL_CLOSING = 17 * HOUR,
  UNDO_SECONDS = 10
};

struct _UnsootPlannerPage
{
  UnsootView parent_instance;

  /* template */
  GtkLabel *date;
  GtkLabel *hours;
  GtkToggleButton *more;
  GtkDropDown *service;
  UnsootPlannerBoard *board;
  GtkLabel *verdict;

  /* owned */
  char *day; /* ISO date; NULL: today */
  UnsootPlannerFile *file;
  GArray *items; /* Item, as the board's blocks */
  UnsootStoreSlot ask_slot;
  UnsootStoreSlot move_slot;
  UnsootPlannerMove *former; /* where the last one moved came from, for Undo */

  guint ask_id;
  gint64 focus_job; /* whose block gets the keyboard once the day is read again */
  gint64 service_id;
  gboolean filling; /* the list of services is being filled */
  gboolean drop_waits;
};

G_DEFINE_FINAL_TYPE (UnsootPlannerPage, unsoot_planner_page, UNSOOT_TYPE_VIEW)

/* What a block of the board stands for. */
typedef struct
{
  const UnsootPlannerBooking *booking;
  const UnsootPlannerLane *lane;
} Item;

static void
planner_ask (UnsootView *view, UnsootViewQuery *query)
{
  UnsootPlannerPage *self = UNSOOT_PLANNER_PAGE (view);

  if (self->day != NULL)
    g_strlcpy (query->filter, self->day, sizeof query->filter);
  query->record = self->service_id;
}

static gpointer
read_planner (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;

  return unsoot_planner_file_load (db, *query->filter != '\0' ? query->filter : NULL, query->record,
                                   query->now, error);
}

static void
show_hours (UnsootPlannerPage *self)
{
  const UnsootDay *day = self->file->day;
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  g_autofree char *date = unsoot_format_exact_day (day->date);
  g_autofree char *hours = unsoot_planner_hours_words (day, unsoot_session_zone (session));
  g_autofree char *title = g_strdup_printf ("%s, %s", _ ("Planner"), date);

  gtk_label_set_text (self->date, date);
  gtk_label_set_text (self->hours, hours);
  unsoot_view_set_title (UNSOOT_VIEW (self), title);
}

static guint
n_lanes (UnsootPlannerPage *self)
{
  guint n = 0;

  if (gtk_toggle_button_get_active (self->more))
    return self->file->lanes->len;
  while (n < self->file->lanes->len
         && ((const UnsootPlannerLane *) g_ptr_array_index (self->file->lanes, n))->kind
                == UNSOOT_LANE_BAY)
    n++;
  return n;
}

static void
collect_items (UnsootPlannerPage *self, GArray *strip_items, GPtrArray *names)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const guint n = n_lanes (self);

  g_array_set_size (self->items, 0);
  for (guint i = 0; i < self->file->bookings->len; i++)
    for (guint lane = 0; lane < n; lane++)
      {
        const Item item = { g_ptr_array_index (self->file->bookings, i),
                            g_ptr_array_index (self->file->lanes, lane) };
        UnsootStripItem strip_item;
        char *name;

        if (!unsoot_planner_holds (item.booking, item.lane))
          continue;
        name = unsoot_planner_block_name (item.booking->block, item.lane->name,
                                          unsoot_session_zone (session));
        g_ptr_array_add (names, name);
        strip_item = unsoot_planner_strip_item (item.booking->block, (int) lane, name);
        g_array_append_val (self->items, item);
        g_array_append_val (strip_items, strip_item);
      }
}

static void
show_free (UnsootPlannerPage *self)
{
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (UnsootStripSpan));

  for (guint i = 0; i < self->file->free->len; i++)
    {
      const UnsootPlannerFree *free = &g_array_index (self->file->free, UnsootPlannerFree, i);
      for (guint lane = 0; lane < n_lanes (self); lane++)
        {
          const UnsootPlannerLane *its = g_ptr_array_index (self->file->lanes, lane);
          const UnsootStripSpan span = { free->from, free->to, (int) lane };
          if (its->kind == UNSOOT_LANE_BAY && its->id == free->bay_id)
            g_array_append_val (spans, span);
        }
    }
  unsoot_planner_board_set_free (self->board, (const UnsootStripSpan *) (gconstpointer) spans->data,
                                 spans->len);
}

static void
restore_focus (UnsootPlannerPage *self)
{
  for (guint i = 0; self->focus_job != 0 && i < self->items->len; i++)
    if (g_array_index (self->items, Item, i).booking->block->job_id == self->focus_job)
      {
        unsoot_planner_board_focus (self->board, i);
        break;
      }
  self->focus_job = 0;
}

static void
say (UnsootPlannerPage *self, const char *sentence, const char *css_class)
{
  gtk_label_set_text (self->verdict, sentence);
  gtk_widget_remove_css_class (GTK_WIDGET (self->verdict), "error");
  gtk_widget_remove_css_class (GTK_WIDGET (self->verdict), "dim-label");
  if (css_class != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (self->verdict), css_class);
}

static void
say_how (UnsootPlannerPage *self)
{
  g_autofree char *free = NULL;

  if (self->service_id != 0 && self->file != NULL)
    free = unsoot_planner_free_words (
        self->file->free, self->file->lanes,
        unsoot_session_zone (unsoot_view_get_session (UNSOOT_VIEW (self))));
  say (self,
       free != NULL           ? free
       : self->items->len > 0 ? _ (
             "Drag a block to move it, its ends to stretch it. By keyboard: Ctrl and the arrows, "
             "Shift as well to stretch; Return lets go, Escape gives up.")
                              : _ ("Nothing is booked for this day."),
       free != NULL ? NULL : "dim-label");
}

static void
show_board (UnsootPlannerPage *self)
{
  const UnsootDay *day = self->file->day;
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const gboolean shut = day->opens_at == 0;
  g_autoptr (GStrvBuilder) lanes = g_strv_builder_new ();
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GArray) items = g_array_new (FALSE, FALSE, sizeof (UnsootStripItem));
  g_auto (GStrv) lane_names = NULL;

  for (guint i = 0; i < n_lanes (self); i++)
    g_strv_builder_add (
        lanes, ((const UnsootPlannerLane *) g_ptr_array_index (self->file->lanes, i))->name);
  lane_names = g_strv_builder_end (lanes);
  collect_items (self, items, names);
  unsoot_planner_board_set_day (self->board, (const char *const *) lane_names, day->starts_at,
                                shut ? day->starts_at + USUAL_OPENING : day->opens_at,
                                shut ? day->starts_at + USUAL_CLOSING : day->closes_at,
                                unsoot_session_zone (session),
                                (const UnsootStripItem *) (gconstpointer) items->data, items->len);
  unsoot_planner_board_set_now (self->board, unsoot_session_now (session));
  show_free (self);
  say_how (self);
  restore_focus (self);
}

static void
fill_services (UnsootPlannerPage *self)
{
  GtkStringList *words = gtk_string_list_new (NULL);
  guint chosen = 0;

  self->filling = TRUE;
  gtk_string_list_append (words, _ ("Free times: none shown"));
  for (guint i = 0; i < self->file->services->len; i++)
    {
      const UnsootServiceRow *service = g_ptr_array_index (self->file->services, i);
      /* Translators: a service for which free times are shown */
      g_autofree char *text = g_strdup_printf (_ ("Free for: %s"), service->name);
      gtk_string_list_append (words, text);
      if (service->id == self->service_id)
        chosen = i + 1;
    }
  gtk_drop_down_set_model (self->service, G_LIST_MODEL (words));
  gtk_drop_down_set_selected (self->service, chosen);
  g_object_unref (words);
  self->filling = FALSE;
}

static void
show_planner (UnsootView *view, gpointer result)
{
  UnsootPlannerPage *self = UNSOOT_PLANNER_PAGE (view);

  g_clear_handle_id (&self->ask_id, g_source_remove);
  unsoot_store_slot_clear (&self->ask_slot);
  /* The blocks refer to the former file until they are made anew. */
  g_array_set_size (self->items, 0);
  g_clear_pointer (&self->file, unsoot_planner_file_free);
  self->file = result;
  show_hours (self);
  fill_services (self);
  show_board (self);
}

/* The booking that is held, where it would go. NULL where none is. */
static UnsootPlannerMove *
held_move (UnsootPlannerPage *self, const Item **item, const UnsootPlannerLane **to)
{
  const UnsootActing who = unsoot_session_acting (unsoot_view_get_session (UNSOOT_VIEW (self)));
  UnsootStripSpan span;
  UnsootPlannerMove *move;
  guint block;

  if (!unsoot_planner_board_get_held (self->board, &block, &span) || block >= self->items->len)
    return NULL;
  *item = &g_array_index (self->items, Item, block);
  *to = g_ptr_array_index (self->file->lanes, (guint) span.lane);
  move = unsoot_planner_move_new ((*item)->booking, &who);
  unsoot_planner_move_to (move, (*item)->lane, *to, &span);
  return move;
}

static void
moved (gpointer owner, gpointer result, const GError *error)
{
  UnsootPlannerPage *self = owner;

  if (error == NULL)
    return;
  unsoot_planner_board_give_up (self->board);
  say (self, error->message, "error");
}

static void
undo_cb (AdwToast *toast, UnsootPlannerPage *self)
{
  UnsootPlannerMove *back = g_steal_pointer (&self->former);

  if (back == NULL)
    return;
  back->who = unsoot_session_acting (unsoot_view_get_session (UNSOOT_VIEW (self)));
  self->focus_job = back->wish.job_id;
  unsoot_store_slot_call (&self->move_slot,
                          unsoot_session_get_store (unsoot_view_get_session (UNSOOT_VIEW (self))),
                          unsoot_planner_move_do, back, g_free, NULL, moved, self);
}

static void
moved_with_toast (gpointer owner, gpointer result, const GError *error)
{
  UnsootPlannerPage *self = owner;
  GtkWidget *toasts = gtk_widget_get_ancestor (GTK_WIDGET (self), ADW_TYPE_TOAST_OVERLAY);
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
carry_out (UnsootPlannerPage *self)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const Item *item;
  const UnsootPlannerLane *to;
  UnsootPlannerMove *move = held_move (self, &item, &to);

  self->drop_waits = FALSE;
  if (move == NULL)
    return;
  g_free (self->former);
  self->former = unsoot_planner_move_new (item->booking, &move->who);
  self->focus_job = move->wish.job_id;
  unsoot_store_slot_call (&self->move_slot, unsoot_session_get_store (session),
                          unsoot_planner_move_do, move, g_free, NULL, moved_with_toast, self);
}

/* The sentence under the board while something is held: where to, and what speaks against it. */
static void
say_verdict (UnsootPlannerPage *self, const UnsootPlannerMove *move, const UnsootPlannerLane *to,
             const GPtrArray *sentences, gboolean breaks)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  g_autofree char *where
      = unsoot_format_from_to (move->wish.starts_at, move->wish.ends_at,
                               unsoot_session_now (session), unsoot_session_zone (session));
  g_autoptr (GString) text = g_string_new (NULL);

  g_string_append_printf (text, "%s, %s. ", where, to->name);
  for (guint i = 0; sentences != NULL && i < sentences->len; i++)
    g_string_append_printf (text, "%s ", (const char *) g_ptr_array_index (sentences, i));
  if (sentences != NULL && sentences->len == 0)
    g_string_append (text, _ ("Nothing stands in the way. Return or letting go moves it there."));
  say (self, text->str, breaks ? "error" : NULL);
}

static void
refuse (UnsootPlannerPage *self, const char *sentence)
{
  unsoot_planner_board_set_verdict (self->board, UNSOOT_VERDICT_BREAKS);
  say (self, sentence, "error");
  if (self->drop_waits)
    unsoot_planner_board_give_up (self->board);
}

static void
answered (gpointer owner, gpointer result, const GError *error)
{
  UnsootPlannerPage *self = owner;
  UnsootPlannerVerdict *verdict = result;
  const Item *item;
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
stays (UnsootPlannerPage *self, const Item *item)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  char *refusal = unsoot_session_refusal (session, UNSOOT_DEED_MOVE_BOOKING);
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
  UnsootPlannerPage *self = user_data;
  const Item *item;
  const UnsootPlannerLane *to;
  UnsootPlannerMove *move = held_move (self, &item, &to);

  self->ask_id = 0;
  if (move != NULL)
    unsoot_store_slot_call (&self->ask_slot,
                            unsoot_session_get_store (unsoot_view_get_session (UNSOOT_VIEW (self))),
                            unsoot_planner_move_ask, move, g_free,
                            (GDestroyNotify) unsoot_planner_verdict_free, answered, self);
  return G_SOURCE_REMOVE;
}

static void
proposed_cb (UnsootPlannerBoard *board, guint block, UnsootPlannerPage *self)
{
  const Item *item;
  const UnsootPlannerLane *to;
  g_autofree UnsootPlannerMove *move = held_move (self, &item, &to);
  g_autofree char *why = NULL;

  g_clear_handle_id (&self->ask_id, g_source_remove);
  unsoot_store_slot_clear (&self->ask_slot);
  if (move == NULL)
    {
      say_how (self);
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
dropped_cb (UnsootPlannerBoard *board, guint block, UnsootPlannerPage *self)
{
  const Item *item;
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
given_up_cb (UnsootPlannerBoard *board, UnsootPlannerPage *self)
{
  self->drop_waits = FALSE;
  g_clear_handle_id (&self->ask_id, g_source_remove);
  unsoot_store_slot_clear (&self->ask_slot);
  say_how (self);
}

/* Takes @day. */
static void
go_to (UnsootPlannerPage *self, char *day)
{
  g_free (self->day);
  self->day = day;
  unsoot_view_reload (UNSOOT_VIEW (self));
}

static void
turn (UnsootPlannerPage *self, int days)
{
  g_autofree char *today = unsoot_session_today (unsoot_view_get_session (UNSOOT_VIEW (self)));
  int day;

  if (unsoot_day_parse (self->day != NULL ? self->day : today, &day, NULL))
    go_to (self, unsoot_day_iso (day + days));
}

static void
before_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  turn (UNSOOT_PLANNER_PAGE (widget), -1);
}

static void
after_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  turn (UNSOOT_PLANNER_PAGE (widget), 1);
}

static void
today_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  go_to (UNSOOT_PLANNER_PAGE (widget), NULL);
}

static void
more_cb (GtkToggleButton *button, UnsootPlannerPage *self)
{
  if (self->file != NULL)
    show_board (self);
}

static void
service_cb (GtkDropDown *chooser, GParamSpec *pspec, UnsootPlannerPage *self)
{
  const guint chosen = gtk_drop_down_get_selected (chooser);

  if (self->filling || self->file == NULL)
    return;
  self->service_id
      = chosen > 0 && chosen <= self->file->services->len
            ? ((const UnsootServiceRow *) g_ptr_array_index (self->file->services, chosen - 1))->id
            : 0;
  unsoot_view_reload (UNSOOT_VIEW (self));
}

static void
unsoot_planner_page_dispose (GObject *object)
{
  UnsootPlannerPage *self = UNSOOT_PLANNER_PAGE (object);

  g_clear_handle_id (&self->ask_id, g_source_remove);
  unsoot_store_slot_clear (&self->ask_slot);
  unsoot_store_slot_clear (&self->move_slot);
  g_clear_pointer (&self->former, g_free);
  g_clear_pointer (&self->items, g_array_unref);
  g_clear_pointer (&self->file, unsoot_planner_file_free);
  g_clear_pointer (&self->day, g_free);
  G_OBJECT_CLASS (unsoot_planner_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_PLANNER_PAGE);
}

static void
unsoot_planner_page_class_init (UnsootPlannerPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_planner_page_dispose;
  view_class->ask = planner_ask;
  view_class->read = read_planner;
  view_class->free_result = (GDestroyNotify) unsoot_planner_file_free;
  view_class->show = show_planner;
  g_type_ensure (UNSOOT_TYPE_PLANNER_BOARD);
  gtk_widget_class_install_action (widget_class, "planner.before", NULL, before_action);
  gtk_widget_class_install_action (widget_class, "planner.after", NULL, after_action);
  gtk_widget_class_install_action (widget_class, "planner.today", NULL, today_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Page_Up, GDK_ALT_MASK,
                                       "planner.before", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Page_Down, GDK_ALT_MASK,
                                       "planner.after", NULL);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/planner-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootPlannerPage, date);
  gtk_widget_class_bind_template_child (widget_class, UnsootPlannerPage, hours);
  gtk_widget_class_bind_template_child (widget_class, UnsootPlannerPage, more);
  gtk_widget_class_bind_template_child (widget_class, UnsootPlannerPage, service);
  gtk_widget_class_bind_template_child (widget_class, UnsootPlannerPage, board);
  gtk_widget_class_bind_template_child (widget_class, UnsootPlannerPage, verdict);
  gtk_widget_class_bind_template_callback (widget_class, more_cb);
  gtk_widget_class_bind_template_callback (widget_class, service_cb);
  gtk_widget_class_bind_template_callback (widget_class, proposed_cb);
  gtk_widget_class_bind_template_callback (widget_class, dropped_cb);
  gtk_widget_class_bind_template_callback (widget_class, given_up_cb);
}

static void
unsoot_planner_page_init (UnsootPlannerPage *self)
{
  self->items = g_array_new (FALSE, FALSE, sizeof (Item));
  gtk_widget_init_template (GTK_WIDGET (self));
  unsoot_access_name_inside (GTK_WIDGET (self->service), _ ("Free times for which service"));
}
