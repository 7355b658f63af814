/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-page.h"

#include <glib/gi18n-lib.h>

#include "bay-order.h"
#include "bay-over.h"
#include "bay-release.h"
#include "bay-run.h"
#include "bay-start.h"
#include "bay-stop.h"
#include "bay-watch.h"
#include "first-record.h"
#include "path.h"
#include "scan-burst.h"

struct _UnsootBayPage
{
  UnsootView parent_instance;

  /* template */
  GtkStack *stack;
  UnsootBayStart *start;
  UnsootBayRun *run;
  UnsootBayStop *stop;
  UnsootBayRelease *release;
  UnsootBayOver *over;

  /* owned */
  UnsootBayFile *file; /* NULL until it was read */
  char *before;        /* what stood in the field when a scan began */

  UnsootStoreSlot deed;
  UnsootStoreSlot scan;
  UnsootScanBurst burst;
  GtkEditable *field; /* borrowed, only during a burst */
  guint tick_id;
};

G_DEFINE_FINAL_TYPE (UnsootBayPage, unsoot_bay_page, UNSOOT_TYPE_VIEW)

static UnsootSession *
session_of (UnsootBayPage *self)
{
  return unsoot_view_get_session (UNSOOT_VIEW (self));
}

static gint64
now_of (UnsootBayPage *self)
{
  return unsoot_session_now (session_of (self));
}

static gpointer
read_bay (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;
  const gint64 id = unsoot_first_record (db, query, "bay", error);

  return id != 0 ? unsoot_bay_file_load (db, id, query->now, error) : NULL;
}

/* The runs that were seen going on while this program ran: those it has not been cut off from. */
static GHashTable *
live_runs (UnsootBayPage *self)
{
  GObject *session = G_OBJECT (session_of (self));
  GHashTable *live = g_object_get_data (session, "unsoot-bay-live");

  if (live == NULL)
    {
      live = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
      g_object_set_data_full (session, "unsoot-bay-live", live,
                              (GDestroyNotify) g_hash_table_unref);
    }
  return live;
}

static void
is_live (UnsootBayPage *self)
{
  const gint64 run_id = self->file->run_id;

  if (run_id == 0)
    return;
  g_hash_table_add (live_runs (self), g_memdup2 (&run_id, sizeof run_id));
  unsoot_bay_watch_follow (unsoot_bay_watch_of (session_of (self)), run_id);
}

static gboolean
is_cut_off (UnsootBayPage *self)
{
  return self->file->last != UNSOOT_RUN_ASKED_AGAIN
         && !g_hash_table_contains (live_runs (self), &self->file->run_id);
}

static const char *
shown_page (UnsootBayPage *self)
{
  return gtk_stack_get_visible_child_name (self->stack);
}

/* A sentence, on whichever page asked for the deed. */
static void
say (UnsootBayPage *self, const char *sentence)
{
  const char *page = shown_page (self);

  if (g_str_equal (page, "start"))
    unsoot_bay_start_say (self->start, sentence);
  else if (g_str_equal (page, "stop"))
    unsoot_bay_stop_say (self->stop, sentence);
  else if (g_str_equal (page, "release"))
    unsoot_bay_release_say (self->release, sentence);
  else if (g_str_equal (page, "over"))
    unsoot_bay_over_say (self->over, sentence);
  else
    unsoot_bay_card_say (unsoot_bay_run_get_card (self->run), sentence);
}

static void
set_busy (UnsootBayPage *self, gboolean busy)
{
  unsoot_bay_start_set_busy (self->start, busy);
  if (unsoot_bay_card_get_task (unsoot_bay_run_get_card (self->run)) != NULL)
    unsoot_bay_card_set_busy (unsoot_bay_run_get_card (self->run), busy);
}

static void
deed_done (gpointer owner, gpointer result, const GError *error)
{
  UnsootBayPage *self = owner;

  if (error != NULL)
    {
      set_busy (self, FALSE);
      say (self, error->message);
      return;
    }
  is_live (self);
  if (g_str_equal (shown_page (self), "stop") || g_str_equal (shown_page (self), "release"))
    gtk_stack_set_visible_child_name (self->stack, "run");
  unsoot_view_reload (UNSOOT_VIEW (self));
}

static void
carry_out (UnsootBayPage *self, UnsootBayOrder *order)
{
  set_busy (self, TRUE);
  unsoot_store_slot_call (&self->deed, unsoot_session_get_store (session_of (self)),
                          unsoot_bay_order_carry_out, order, (GDestroyNotify) unsoot_bay_order_free,
                          NULL, deed_done, self);
}

static UnsootBayOrder *
order_new (UnsootBayPage *self, UnsootBayDeed deed)
{
  return unsoot_bay_order_new (deed, unsoot_session_acting (session_of (self)),
                               self->file->view->file->job->id, self->file->run_id);
}

static void
post (UnsootBayPage *self, const UnsootRunEvent *event)
{
  UnsootBayOrder *order;

  if (unsoot_store_slot_busy (&self->deed))
    return;
  order = order_new (self, UNSOOT_ORDER_POST);
  order->event = unsoot_run_event_copy (event);
  carry_out (self, order);
}

static void
event_cb (UnsootBayCard *card, const UnsootRunEvent *event, UnsootBayPage *self)
{
  post (self, event);
}

static void
begin_cb (UnsootBayStart *start, gint64 machine_id, UnsootBayPage *self)
{
  UnsootBayOrder *order;

  if (unsoot_store_slot_busy (&self->deed))
    return;
  order = order_new (self, UNSOOT_ORDER_BEGIN);
  order->machine_id = machine_id;
  carry_out (self, order);
}

static void
resume (UnsootBayPage *self)
{
  if (!unsoot_store_slot_busy (&self->deed))
    carry_out (self, order_new (self, UNSOOT_ORDER_RESUME));
}

static void
go_on_cb (GtkWidget *widget, UnsootBayPage *self)
{
  resume (self);
}

static void
sign_cb (UnsootBayCard *card, const char *who, UnsootBayPage *self)
{
  UnsootBayOrder *order;

  if (unsoot_store_slot_busy (&self->deed))
    return;
  order = order_new (self, UNSOOT_ORDER_FINISH);
  order->signature = g_strdup (who);
  carry_out (self, order);
}

static void
release_cb (UnsootBayRelease *release, const char *signature, const char *reason,
            UnsootBayPage *self)
{
  UnsootBayOrder *order;

  if (unsoot_store_slot_busy (&self->deed))
    return;
  order = order_new (self, UNSOOT_ORDER_RELEASE);
  order->signature = g_strdup (signature);
  order->reason = g_strdup (reason);
  carry_out (self, order);
}

static gboolean
goes_on (UnsootBayPage *self)
{
  return self->file != NULL && unsoot_bay_file_goes_on (self->file);
}

static void
open_stop (UnsootBayPage *self)
{
  if (!goes_on (self) || g_str_equal (shown_page (self), "stop"))
    return;
  gtk_stack_set_visible_child_name (self->stack, "stop");
  unsoot_bay_stop_open (self->stop, now_of (self));
}

static void
stop_cb (GtkWidget *widget, UnsootBayPage *self)
{
  open_stop (self);
}

static void
record_cb (UnsootBayStop *stop, const UnsootRunEvent *event, UnsootBayPage *self)
{
  post (self, event);
}

static void
back_cb (GtkWidget *widget, UnsootBayPage *self)
{
  gtk_stack_set_visible_child_name (self->stack, "run");
  unsoot_bay_card_focus (unsoot_bay_run_get_card (self->run));
}

static void
open_release_cb (UnsootBayRun *run, UnsootBayPage *self)
{
  const UnsootStaffRow *person = unsoot_session_get_person (session_of (self));

  gtk_stack_set_visible_child_name (self->stack, "release");
  unsoot_bay_release_open (self->release, self->file->run, person != NULL ? person->name : NULL);
}

static void
scan_done (gpointer owner, gpointer result, const GError *error)
{
  UnsootBayPage *self = owner;
  g_autoptr (UnsootLotRow) lot = result;

  if (error != NULL)
    say (self, error->message);
  else
    unsoot_bay_card_choose_lot (unsoot_bay_run_get_card (self->run), lot->id, lot->code);
}

static void
scanned_cb (UnsootBayCard *card, const char *code, UnsootBayPage *self)
{
  const UnsootBayTask *task = unsoot_bay_card_get_task (card);
  UnsootBayScan *scan
      = unsoot_bay_scan_new (code, task->ask.side, unsoot_session_today (session_of (self)));

  unsoot_store_slot_call (&self->scan, unsoot_session_get_store (session_of (self)),
                          unsoot_bay_scan_look_up, scan, (GDestroyNotify) unsoot_bay_scan_free,
                          (GDestroyNotify) unsoot_lot_row_free, scan_done, self);
}

/* What the scanner typed into a field is taken out of it again. */
static void
take_scan (UnsootBayPage *self, const char *code)
{
  g_autofree char *sentence = NULL;

  if (self->field != NULL && self->before != NULL)
    gtk_editable_set_text (self->field, self->before);
  self->field = NULL;
  if (g_str_equal (shown_page (self), "run")
      && unsoot_bay_card_scan (unsoot_bay_run_get_card (self->run), code))
    return;
  sentence
      = g_strdup_printf (_ ("“%s” was scanned, but nothing is asked for that is scanned."), code);
  say (self, sentence);
}

static void
note_field (UnsootBayPage *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  g_clear_pointer (&self->before, g_free);
  self->field = GTK_IS_EDITABLE (focus) ? GTK_EDITABLE (focus) : NULL;
  if (self->field != NULL)
    self->before = g_strdup (gtk_editable_get_text (self->field));
}

static gboolean
key_cb (GtkEventControllerKey *keys, guint keyval, guint keycode, GdkModifierType modifiers,
        UnsootBayPage *self)
{
  const guint32 when = gtk_event_controller_get_current_event_time (GTK_EVENT_CONTROLLER (keys));
  const gunichar letter = gdk_keyval_to_unicode (keyval);
  g_autofree char *code = NULL;

  if (keyval == GDK_KEY_Return || keyval == GDK_KEY_KP_Enter || keyval == GDK_KEY_Linefeed)
    {
      code = unsoot_scan_burst_return (&self->burst, when);
      if (code != NULL)
        take_scan (self, code);
      return code != NULL;
    }
  if (letter != 0 && g_unichar_isgraph (letter)
      && (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK)) == 0)
    {
      if (unsoot_scan_burst_is_idle (&self->burst, when))
        note_field (self);
      unsoot_scan_burst_letter (&self->burst, letter, when);
    }
  return GDK_EVENT_PROPAGATE;
}

static gboolean
stop_key_cb (GtkWidget *widget, GVariant *arguments, gpointer user_data)
{
  UnsootBayPage *self = UNSOOT_BAY_PAGE (widget);

  if (!gtk_widget_get_mapped (widget))
    return FALSE;
  open_stop (self);
  return TRUE;
}

static gboolean
tick_cb (gpointer user_data)
{
  UnsootBayPage *self = user_data;

  if (goes_on (self))
    unsoot_bay_run_tick (self->run, self->file, now_of (self));
  return G_SOURCE_CONTINUE;
}

static void
unsoot_bay_page_map (GtkWidget *widget)
{
  UnsootBayPage *self = UNSOOT_BAY_PAGE (widget);

  GTK_WIDGET_CLASS (unsoot_bay_page_parent_class)->map (widget);
  self->tick_id = g_timeout_add_seconds (1, tick_cb, self);
  tick_cb (self);
}

static void
unsoot_bay_page_unmap (GtkWidget *widget)
{
  g_clear_handle_id (&UNSOOT_BAY_PAGE (widget)->tick_id, g_source_remove);
  GTK_WIDGET_CLASS (unsoot_bay_page_parent_class)->unmap (widget);
}

static void
show_run (UnsootBayPage *self)
{
  const gboolean cut_off = is_cut_off (self);
  UnsootBayCard *card = unsoot_bay_run_get_card (self->run);

  /* STOP and the release stay until they are recorded or left. */
  if (!g_str_equal (shown_page (self), "stop") && !g_str_equal (shown_page (self), "release"))
    gtk_stack_set_visible_child_name (self->stack, "run");
  unsoot_bay_run_show (self->run, self->file, session_of (self), cut_off);
  if (!cut_off || unsoot_bay_card_get_task (card)->kind != UNSOOT_TASK_AGAIN)
    is_live (self);
}

static gboolean
may_begin (const UnsootBayFile *file)
{
  return file->run == NULL
         && g_strcmp0 (file->view->file->job->status, unsoot_job_status_slug (UNSOOT_JOB_ARRIVED))
                == 0;
}

static void
show_bay (UnsootView *view, gpointer result)
{
  UnsootBayPage *self = UNSOOT_BAY_PAGE (view);
  g_autofree char *title = NULL;

  g_clear_pointer (&self->file, unsoot_bay_file_free);
  self->file = result;
  title = g_strdup_printf (_ ("Bay, job %d"), (int) self->file->view->file->job->number);
  unsoot_view_set_title (view, title);
  if (unsoot_bay_file_goes_on (self->file))
    {
      show_run (self);
    }
  else if (may_begin (self->file))
    {
      gtk_stack_set_visible_child_name (self->stack, "start");
      unsoot_bay_start_show (self->start, self->file);
    }
  else
    {
      gtk_stack_set_visible_child_name (self->stack, "over");
      unsoot_bay_over_show (self->over, self->file);
    }
  set_busy (self, unsoot_store_slot_busy (&self->deed));
}

static void
unsoot_bay_page_dispose (GObject *object)
{
  UnsootBayPage *self = UNSOOT_BAY_PAGE (object);

  unsoot_store_slot_clear (&self->deed);
  unsoot_store_slot_clear (&self->scan);
  G_OBJECT_CLASS (unsoot_bay_page_parent_class)->dispose (object);
  g_clear_pointer (&self->file, unsoot_bay_file_free);
  g_clear_pointer (&self->before, g_free);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BAY_PAGE);
}

static void
bind_template (GtkWidgetClass *klass)
{
  gtk_widget_class_set_template_from_resource (klass, "/org/unsoot/Unsoot/ui/bay-page.ui");
  gtk_widget_class_bind_template_child (klass, UnsootBayPage, stack);
  gtk_widget_class_bind_template_child (klass, UnsootBayPage, start);
  gtk_widget_class_bind_template_child (klass, UnsootBayPage, run);
  gtk_widget_class_bind_template_child (klass, UnsootBayPage, stop);
  gtk_widget_class_bind_template_child (klass, UnsootBayPage, release);
  gtk_widget_class_bind_template_child (klass, UnsootBayPage, over);
  gtk_widget_class_bind_template_callback (klass, begin_cb);
  gtk_widget_class_bind_template_callback (klass, stop_cb);
  gtk_widget_class_bind_template_callback (klass, record_cb);
  gtk_widget_class_bind_template_callback (klass, back_cb);
  gtk_widget_class_bind_template_callback (klass, open_release_cb);
  gtk_widget_class_bind_template_callback (klass, release_cb);
  gtk_widget_class_bind_template_callback (klass, go_on_cb);
  gtk_widget_class_bind_template_callback (klass, key_cb);
}

static void
unsoot_bay_page_class_init (UnsootBayPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_bay_page_dispose;
  widget_class->map = unsoot_bay_page_map;
  widget_class->unmap = unsoot_bay_page_unmap;
  view_class->read = read_bay;
  view_class->free_result = (GDestroyNotify) unsoot_bay_file_free;
  view_class->show = show_bay;
  g_type_ensure (UNSOOT_TYPE_BAY_OVER);
  g_type_ensure (UNSOOT_TYPE_BAY_RELEASE);
  g_type_ensure (UNSOOT_TYPE_BAY_RUN);
  g_type_ensure (UNSOOT_TYPE_BAY_START);
  g_type_ensure (UNSOOT_TYPE_BAY_STOP);
  bind_template (widget_class);
}

static void
unsoot_bay_page_init (UnsootBayPage *self)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();
  UnsootBayCard *card;

  gtk_widget_init_template (GTK_WIDGET (self));
  card = unsoot_bay_run_get_card (self->run);
  g_signal_connect (card, "event", G_CALLBACK (event_cb), self);
  g_signal_connect (card, "scanned", G_CALLBACK (scanned_cb), self);
  g_signal_connect (card, "go-on", G_CALLBACK (go_on_cb), self);
  g_signal_connect (card, "sign", G_CALLBACK (sign_cb), self);
  g_signal_connect (card, "not-so", G_CALLBACK (stop_cb), self);
  /* Wherever the keyboard is in the window. */
  gtk_shortcut_controller_set_scope (GTK_SHORTCUT_CONTROLLER (keys), GTK_SHORTCUT_SCOPE_GLOBAL);
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_F8, 0),
                        gtk_callback_action_new (stop_key_cb, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}
