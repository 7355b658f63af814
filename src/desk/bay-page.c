/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-page.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "bay-over.h"
#include "bay-queue.h"
#include "bay-release.h"
#include "bay-run.h"
#include "bay-start.h"
#include "bay-stop.h"
#include "bay-watch.h"
#include "first-record.h"
#include "paper-view.h"
#include "scan-keys.h"

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

  UnsootBayQueue queue;
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

static void
is_live (UnsootBayPage *self)
{
  if (self->file->run_id != 0)
    unsoot_bay_watch_follow (unsoot_bay_watch_of (session_of (self)), self->file->run_id);
}

/* Whether the run has gone on without this program having seen it. */
static gboolean
is_cut_off (UnsootBayPage *self)
{
  return self->file->last != UNSOOT_RUN_ASKED_AGAIN
         && !unsoot_bay_watch_follows (unsoot_bay_watch_of (session_of (self)), self->file->run_id);
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

/* STOP and the release have come to their end when they are recorded; a step that was on its way
 * when they were opened closes neither. */
static void
deed_done (gpointer owner, UnsootBayDone what, const GError *error)
{
  UnsootBayPage *self = owner;

  set_busy (self, unsoot_bay_queue_is_busy (&self->queue));
  if (error != NULL)
    {
      say (self, error->message);
      return;
    }
  is_live (self);
  if (what != UNSOOT_DONE_STEP)
    gtk_stack_set_visible_child_name (self->stack, "run");
  if (what == UNSOOT_DONE_RELEASE)
    unsoot_bay_release_done (self->release);
  if (what == UNSOOT_DONE_RELEASE)
    unsoot_paper_view_open (GTK_WIDGET (self), session_of (self), self->file->view->file->job->id,
                            UNSOOT_PAPER_INCOMPLETE_TAG, 0);
  unsoot_view_reload (UNSOOT_VIEW (self));
}

/* Takes @order. */
static void
carry_out (UnsootBayPage *self, UnsootBayOrder *order)
{
  set_busy (self, TRUE);
  unsoot_bay_queue_add (&self->queue, unsoot_session_get_store (session_of (self)), order);
}

static UnsootBayOrder *
order_new (UnsootBayPage *self, UnsootBayDeed deed)
{
  return unsoot_bay_order_new (deed, unsoot_session_acting (session_of (self)),
                               self->file->view->file->job->id, self->file->run_id);
}

static void
post_cb (GtkWidget *widget, const UnsootRunEvent *event, UnsootBayPage *self)
{
  UnsootBayOrder *order = order_new (self, UNSOOT_ORDER_POST);

  order->event = unsoot_run_event_copy (event);
  carry_out (self, order);
}

static void
begin_cb (UnsootBayStart *start, gint64 machine_id, UnsootBayPage *self)
{
  UnsootBayOrder *order = order_new (self, UNSOOT_ORDER_BEGIN);

  order->machine_id = machine_id;
  carry_out (self, order);
}

static void
go_on_cb (GtkWidget *widget, UnsootBayPage *self)
{
  carry_out (self, order_new (self, UNSOOT_ORDER_RESUME));
}

static void
sign_cb (UnsootBayCard *card, const char *who, UnsootBayPage *self)
{
  UnsootBayOrder *order = order_new (self, UNSOOT_ORDER_FINISH);

  order->signature = g_strdup (who);
  carry_out (self, order);
}

static void
release_cb (UnsootBayRelease *release, const char *signature, const char *reason,
            UnsootBayPage *self)
{
  UnsootBayOrder *order = order_new (self, UNSOOT_ORDER_RELEASE);

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
back_cb (GtkWidget *widget, UnsootBayPage *self)
{
  gtk_stack_set_visible_child_name (self->stack, "run");
  unsoot_bay_card_focus (unsoot_bay_run_get_card (self->run));
}

static void
open_release_cb (UnsootBayRun *run, UnsootBayPage *self)
{
  gtk_stack_set_visible_child_name (self->stack, "release");
  unsoot_bay_release_open (self->release, self->file->run, self->file->view->file->job->id,
                           session_of (self));
}

/* What is typed on the page is the one's who typed it. */
static void
person_changed_cb (UnsootBayPage *self)
{
  unsoot_bay_release_forget (self->release);
  unsoot_bay_card_forget (unsoot_bay_run_get_card (self->run));
  if (g_str_equal (shown_page (self), "release"))
    gtk_stack_set_visible_child_name (self->stack, "run");
  if (unsoot_session_get_person (session_of (self)) != NULL)
    unsoot_view_reload (UNSOOT_VIEW (self));
}

static void
take_scan (const char *code, gpointer user_data)
{
  UnsootBayPage *self = user_data;
  g_autofree char *sentence = NULL;

  if (g_str_equal (shown_page (self), "run")
      && unsoot_bay_card_scan (unsoot_bay_run_get_card (self->run), code))
    return;
  sentence
      = g_strdup_printf (_ ("“%s” was scanned, but nothing is asked for that is scanned."), code);
  say (self, sentence);
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
  else if (unsoot_bay_file_may_begin (self->file))
    {
      gtk_stack_set_visible_child_name (self->stack, "start");
      unsoot_bay_start_show (self->start, self->file);
    }
  else
    {
      gtk_stack_set_visible_child_name (self->stack, "over");
      unsoot_bay_over_show (self->over, self->file);
    }
  set_busy (self, unsoot_bay_queue_is_busy (&self->queue));
}

/* The session is there only now. */
static void
unsoot_bay_page_constructed (GObject *object)
{
  g_signal_connect_object (session_of (UNSOOT_BAY_PAGE (object)), "notify::person",
                           G_CALLBACK (person_changed_cb), object, G_CONNECT_SWAPPED);
  G_OBJECT_CLASS (unsoot_bay_page_parent_class)->constructed (object);
}

static void
unsoot_bay_page_dispose (GObject *object)
{
  UnsootBayPage *self = UNSOOT_BAY_PAGE (object);

  unsoot_bay_queue_clear (&self->queue);
  G_OBJECT_CLASS (unsoot_bay_page_parent_class)->dispose (object);
  g_clear_pointer (&self->file, unsoot_bay_file_free);
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
  gtk_widget_class_bind_template_callback (klass, post_cb);
  gtk_widget_class_bind_template_callback (klass, back_cb);
  gtk_widget_class_bind_template_callback (klass, open_release_cb);
  gtk_widget_class_bind_template_callback (klass, release_cb);
  gtk_widget_class_bind_template_callback (klass, go_on_cb);
}

static void
unsoot_bay_page_class_init (UnsootBayPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->constructed = unsoot_bay_page_constructed;
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

  self->queue.owner = self;
  self->queue.done = deed_done;
  gtk_widget_init_template (GTK_WIDGET (self));
  unsoot_access_stack (self->stack);
  card = unsoot_bay_run_get_card (self->run);
  g_signal_connect (card, "event", G_CALLBACK (post_cb), self);
  g_signal_connect (card, "go-on", G_CALLBACK (go_on_cb), self);
  g_signal_connect (card, "sign", G_CALLBACK (sign_cb), self);
  g_signal_connect (card, "not-so", G_CALLBACK (stop_cb), self);
  unsoot_scan_keys_listen (GTK_WIDGET (self), take_scan, self);
  /* Wherever the keyboard is in the window. */
  gtk_shortcut_controller_set_scope (GTK_SHORTCUT_CONTROLLER (keys), GTK_SHORTCUT_SCOPE_GLOBAL);
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_F8, 0),
                        gtk_callback_action_new (stop_key_cb, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}
