/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-page.h"

#include <glib/gi18n-lib.h>

#include "booking-bar.h"
#include "booking-draft.h"
#include "booking-quote.h"
#include "booking-service.h"
#include "booking-times.h"
#include "booking-vehicle.h"
#include "booking-who.h"
#include "card.h"
#include "columns.h"
#include "format.h"
#include "title-block.h"
#include "vehicles.h"

struct _UnsootBookingPage
{
  UnsootView parent_instance;

  /* template */
  UnsootTitleBlock *head;
  GtkBox *draft;
  GtkLabel *draft_words;
  GtkWidget *said;
  UnsootBookingWho *who;
  UnsootBookingVehicle *vehicle;
  UnsootBookingService *service;
  UnsootCard *when;
  UnsootBookingTimes *times;
  UnsootCard *quote;
  UnsootBookingBar *bar;

  /* owned */
  UnsootBookingTalk *talk;
  char *begins_with;
};

G_DEFINE_FINAL_TYPE (UnsootBookingPage, unsoot_booking_page, UNSOOT_TYPE_VIEW)

/* The person goes with the question, because the worker has no session. */
static void
ask (UnsootView *view, UnsootViewQuery *query)
{
  const UnsootStaffRow *person = unsoot_session_get_person (unsoot_view_get_session (view));

  g_snprintf (query->filter, sizeof query->filter, "%" G_GINT64_FORMAT,
              person != NULL ? person->id : 0);
}

static gpointer
read_start (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;

  return unsoot_booking_start_load (db, g_ascii_strtoll (query->filter, NULL, 10), query->slug,
                                    query->record, error);
}

static void
offer_draft (UnsootBookingPage *self, gint64 kept_at)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  g_autofree char *when
      = unsoot_format_moment (kept_at, unsoot_session_now (session), unsoot_session_zone (session));
  g_autofree char *words
      /* Translators: when a draft was kept: “today 14:30” */
      = g_strdup_printf (_ ("What you typed %s and did not carry out is here again."), when);

  gtk_label_set_text (self->draft_words, words);
  gtk_widget_set_visible (GTK_WIDGET (self->draft), kept_at != 0);
}

/* Later readings only say that the shop's book has changed: what is typed here stays. */
static void
show_start (UnsootView *view, gpointer result)
{
  UnsootBookingPage *self = UNSOOT_BOOKING_PAGE (view);
  g_autoptr (UnsootBookingStart) start = result;

  if (unsoot_booking_talk_get_plan (self->talk) != NULL)
    {
      unsoot_booking_talk_read (self->talk);
      return;
    }
  offer_draft (self, start->kept_at);
  if (self->begins_with != NULL)
    unsoot_booking_plan_begin (start->plan, self->begins_with);
  unsoot_booking_service_show_plan (self->service, start->plan);
  /* What a job says is not said anew. */
  unsoot_booking_talk_hold (self->talk, start->plan->job_id != 0);
  unsoot_booking_talk_begin (self->talk, g_steal_pointer (&start->plan));
}

static void
begin_anew_cb (UnsootBookingPage *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->draft), FALSE);
  unsoot_booking_talk_begin_anew (self->talk);
  unsoot_booking_service_show_plan (self->service, unsoot_booking_talk_get_plan (self->talk));
}

static void
show_head (UnsootBookingPage *self, const UnsootBookingFile *file)
{
  const UnsootVehicleRow *vehicle
      = file->plan->vehicle != NULL ? file->plan->vehicle : file->vehicle;
  g_autofree char *subtitle = vehicle != NULL ? unsoot_vehicle_title (vehicle) : NULL;
  g_autofree char *title = file->job != NULL
                               ? g_strdup_printf (_ ("Booking of job %d"), (int) file->job->number)
                               : g_strdup (_ ("New booking"));

  unsoot_view_set_title (UNSOOT_VIEW (self), title);
  unsoot_title_block_show (self->head, title, subtitle);
  if (file->vehicle != NULL)
    unsoot_title_block_link (self->head, "unsoot-vehicle-symbolic", _ ("Vehicle"), "vehicle",
                             file->vehicle->id);
  if (file->job != NULL)
    unsoot_title_block_link (self->head, "unsoot-job-symbolic", _ ("Job"), "job", file->job->id);
}

static void
again_changed (gpointer owner, gint64 line_id, gboolean again)
{
  UnsootBookingPage *self = owner;

  unsoot_booking_plan_offer_again (unsoot_booking_talk_get_plan (self->talk), line_id, again);
  unsoot_booking_talk_changed (self->talk);
}

static void
read_cb (UnsootBookingPage *self)
{
  const UnsootBookingFile *file = unsoot_booking_talk_get_file (self->talk);
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));

  show_head (self, file);
  unsoot_booking_talk_hold (self->talk, unsoot_booking_bar_is_busy (self->bar));
  if (file->job != NULL)
    gtk_widget_set_visible (GTK_WIDGET (self->draft), FALSE);
  unsoot_booking_who_show (self->who, file);
  unsoot_booking_vehicle_show (self->vehicle, file);
  unsoot_booking_service_show (self->service, file);
  unsoot_card_clear (self->quote);
  unsoot_booking_quote_show (self->quote, file, session, again_changed, self);
  gtk_widget_set_visible (GTK_WIDGET (self->when), file->quote != NULL);
  unsoot_booking_times_show (self->times, file);
  unsoot_booking_bar_show (self->bar, file);
  if (unsoot_booking_talk_goes_on (self->talk))
    unsoot_booking_page_focus (self);
}

static void
held_cb (UnsootBookingTalk *talk, gboolean held, UnsootBookingPage *self)
{
  gtk_widget_set_sensitive (self->said, !held);
}

/* The page is the one's who spoke; whoever comes finds their own. */
static void
person_changed_cb (UnsootBookingPage *self)
{
  UnsootView *view = UNSOOT_VIEW (self);
  const UnsootStaffRow *person = unsoot_session_get_person (unsoot_view_get_session (view));
  const gint64 staff_id = unsoot_booking_talk_get_staff_id (self->talk);

  unsoot_booking_talk_leave (self->talk);
  if (person != NULL && staff_id != 0 && person->id != staff_id
      && gtk_widget_get_mapped (GTK_WIDGET (self)))
    gtk_widget_activate_action (GTK_WIDGET (self), "win.open", "(sx)", unsoot_view_get_slug (view),
                                unsoot_view_get_record (view));
}

static void
failed_cb (UnsootBookingTalk *talk, const char *sentence, UnsootBookingPage *self)
{
  unsoot_booking_bar_say (self->bar, sentence);
}

static void
deed_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  unsoot_booking_bar_do (UNSOOT_BOOKING_PAGE (widget)->bar);
}

static void
unsoot_booking_page_unmap (GtkWidget *widget)
{
  unsoot_booking_talk_leave (UNSOOT_BOOKING_PAGE (widget)->talk);
  GTK_WIDGET_CLASS (unsoot_booking_page_parent_class)->unmap (widget);
}

static void
unsoot_booking_page_dispose (GObject *object)
{
  UnsootBookingPage *self = UNSOOT_BOOKING_PAGE (object);

  g_clear_pointer (&self->begins_with, g_free);
  G_OBJECT_CLASS (unsoot_booking_page_parent_class)->dispose (object);
  g_clear_object (&self->talk);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BOOKING_PAGE);
}

/* The session is there only now; the parent begins to read. */
static void
unsoot_booking_page_constructed (GObject *object)
{
  UnsootBookingPage *self = UNSOOT_BOOKING_PAGE (object);
  UnsootView *view = UNSOOT_VIEW (self);

  self->talk = unsoot_booking_talk_new (unsoot_view_get_session (view), unsoot_view_get_slug (view),
                                        unsoot_view_get_record (view));
  g_signal_connect_object (self->talk, "read", G_CALLBACK (read_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->talk, "failed", G_CALLBACK (failed_cb), self, 0);
  g_signal_connect_object (self->talk, "held", G_CALLBACK (held_cb), self, 0);
  g_signal_connect_object (unsoot_view_get_session (view), "notify::person",
                           G_CALLBACK (person_changed_cb), self, G_CONNECT_SWAPPED);
  unsoot_booking_who_begin (self->who, self->talk);
  unsoot_booking_vehicle_begin (self->vehicle, self->talk);
  unsoot_booking_service_begin (self->service, self->talk);
  unsoot_booking_times_begin (self->times, self->talk);
  unsoot_booking_bar_begin (self->bar, self->talk);
  G_OBJECT_CLASS (unsoot_booking_page_parent_class)->constructed (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  g_type_ensure (UNSOOT_TYPE_BOOKING_BAR);
  g_type_ensure (UNSOOT_TYPE_BOOKING_SERVICE);
  g_type_ensure (UNSOOT_TYPE_BOOKING_TIMES);
  g_type_ensure (UNSOOT_TYPE_BOOKING_VEHICLE);
  g_type_ensure (UNSOOT_TYPE_BOOKING_WHO);
  g_type_ensure (UNSOOT_TYPE_CARD);
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  g_type_ensure (UNSOOT_TYPE_TITLE_BLOCK);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/booking-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, head);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, draft);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, draft_words);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, said);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, who);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, vehicle);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, service);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, when);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, times);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, quote);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, bar);
  gtk_widget_class_bind_template_callback (widget_class, begin_anew_cb);
}

static void
unsoot_booking_page_class_init (UnsootBookingPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->constructed = unsoot_booking_page_constructed;
  G_OBJECT_CLASS (klass)->dispose = unsoot_booking_page_dispose;
  widget_class->unmap = unsoot_booking_page_unmap;
  view_class->ask = ask;
  view_class->read = read_start;
  view_class->free_result = (GDestroyNotify) unsoot_booking_start_free;
  view_class->show = show_start;
  bind_template (widget_class);
  gtk_widget_class_install_action (widget_class, "booking.deed", NULL, deed_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Return, GDK_CONTROL_MASK,
                                       "booking.deed", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_KP_Enter, GDK_CONTROL_MASK,
                                       "booking.deed", NULL);
}

static void
unsoot_booking_page_init (UnsootBookingPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
unsoot_booking_page_begin_with (UnsootBookingPage *self, const char *typed)
{
  UnsootBookingPlan *plan = unsoot_booking_talk_get_plan (self->talk);

  g_free (self->begins_with);
  self->begins_with = g_strdup (typed);
  if (plan == NULL)
    return;
  unsoot_booking_plan_begin (plan, typed);
  unsoot_booking_talk_go_on (self->talk);
}

void
unsoot_booking_page_focus (UnsootBookingPage *self)
{
  const UnsootBookingFile *file = unsoot_booking_talk_get_file (self->talk);
  const UnsootBookingPlan *plan = file != NULL ? file->plan : NULL;

  if (plan == NULL)
    return;
  if (file->customer == NULL && (plan->customer == NULL || plan->customer->name == NULL))
    unsoot_booking_who_focus (self->who);
  else if (plan->customer != NULL && plan->phone == NULL)
    unsoot_booking_who_focus (self->who);
  else if (plan->vehicle != NULL || plan->vehicle_id == 0)
    unsoot_booking_vehicle_focus (self->vehicle);
  else
    unsoot_booking_bar_focus (self->bar);
}
