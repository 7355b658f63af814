/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-page.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "booking-bar.h"
#include "booking-file.h"
#include "booking-quote.h"
#include "booking-times.h"
#include "booking-vehicle.h"
#include "booking-who.h"
#include "card.h"
#include "columns.h"
#include "deed-call.h"
#include "drafts.h"
#include "entry-form.h"
#include "format.h"
#include "job-deeds.h"
#include "side-mark.h"
#include "title-block.h"
#include "unit-text.h"
#include "vehicles.h"

enum
{
  PAUSE_MS = 250, /* in typing, before it is reckoned */
  KEEP_MS = 1000, /* after the last key, before the draft is kept */
  DAYS_A_WEEK = 7,
};

struct _UnsootBookingPage
{
  UnsootView parent_instance;

  /* template */
  UnsootTitleBlock *head;
  GtkBox *draft;
  GtkLabel *draft_words;
  UnsootCard *who;
  UnsootCard *vehicle;
  UnsootCard *service;
  UnsootCard *when;
  UnsootCard *quote;
  UnsootBookingBar *bar;

  /* borrowed children of the cards */
  UnsootBookingWho *caller;
  UnsootBookingVehicle *machine;
  UnsootBookingTimes *times;
  GtkWidget *services, *complaint, *order, *fuel_dose, *intake_dose, *service_note;

  /* owned */
  UnsootBookingPlan *plan; /* NULL until the page was read for the first time */
  UnsootBookingFile *file;
  UnsootStoreSlot slot;
  UnsootStoreSlot quote_slot;

  guint pause_id;
  guint keep_id;
  gboolean filling;
  gboolean without_word;
  gboolean wants_focus;
  char *begins_with;
};

G_DEFINE_FINAL_TYPE (UnsootBookingPage, unsoot_booking_page, UNSOOT_TYPE_VIEW)

static void refresh (UnsootBookingPage *self);

/* What the page begins with, read once. */
typedef struct
{
  UnsootBookingPlan *plan;
  gint64 kept_at; /* when the draft was kept; 0: it is none */
} Start;

static void
start_free (gpointer data)
{
  Start *start = data;

  unsoot_booking_plan_free (start->plan);
  g_free (start);
}

static UnsootBookingPlan *
plan_for (const UnsootViewQuery *query)
{
  UnsootBookingPlan *plan = unsoot_booking_plan_new ();

  if (g_str_equal (query->slug, "booking-party"))
    plan->customer_id = query->record;
  else if (g_str_equal (query->slug, "booking-vehicle"))
    plan->vehicle_id = query->record;
  else if (g_str_equal (query->slug, "booking-job"))
    plan->job_id = query->record;
  return plan;
}

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
  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootDraftRow) draft = unsoot_draft_load (
      db, g_ascii_strtoll (query->filter, NULL, 10), query->slug, query->record, &failed);
  Start *start;

  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return NULL;
    }
  start = g_new0 (Start, 1);
  start->plan = draft != NULL ? unsoot_booking_plan_from_text (draft->text) : NULL;
  if (start->plan != NULL)
    start->kept_at = draft->at;
  else
    start->plan = plan_for (query);
  return start;
}

/* A draft on its way to the store; it outlives the page. */
typedef struct
{
  UnsootActing who;
  char *place;
  gint64 record;
  char *text; /* NULL: there is nothing to keep any more */
} Draft;

static void
draft_free (gpointer data)
{
  Draft *draft = data;

  g_free (draft->place);
  g_free (draft->text);
  g_free (draft);
}

static gpointer
keep (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Draft *draft = data;

  if (draft->text != NULL)
    unsoot_draft_keep (db, &draft->who, draft->place, draft->record, draft->text, error);
  else
    unsoot_draft_drop (db, &draft->who, draft->place, draft->record, error);
  return NULL;
}

static Draft *
draft_new (UnsootBookingPage *self)
{
  UnsootView *view = UNSOOT_VIEW (self);
  Draft *draft = g_new0 (Draft, 1);

  draft->who = unsoot_session_acting (unsoot_view_get_session (view));
  draft->place = g_strdup (unsoot_view_get_slug (view));
  draft->record = unsoot_view_get_record (view);
  return draft;
}

static void
keep_draft (UnsootBookingPage *self)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  Draft *draft;

  g_clear_handle_id (&self->keep_id, g_source_remove);
  if (self->plan == NULL || unsoot_session_get_person (session) == NULL)
    return;
  draft = draft_new (self);
  if (!unsoot_booking_plan_is_empty (self->plan))
    draft->text = unsoot_booking_plan_to_text (self->plan);
  unsoot_store_call_async (unsoot_session_get_store (session), keep, draft, draft_free, NULL, NULL,
                           NULL, NULL);
}

static gboolean
keep_cb (gpointer user_data)
{
  UnsootBookingPage *self = user_data;

  self->keep_id = 0;
  keep_draft (self);
  return G_SOURCE_REMOVE;
}

/* Something was typed or chosen. */
static void
touched (UnsootBookingPage *self)
{
  g_clear_handle_id (&self->keep_id, g_source_remove);
  self->keep_id = g_timeout_add (KEEP_MS, keep_cb, self);
}

static gboolean
pause_cb (gpointer user_data)
{
  UnsootBookingPage *self = user_data;

  self->pause_id = 0;
  refresh (self);
  return G_SOURCE_REMOVE;
}

static void
refresh_soon (UnsootBookingPage *self)
{
  touched (self);
  g_clear_handle_id (&self->pause_id, g_source_remove);
  self->pause_id = g_timeout_add (PAUSE_MS, pause_cb, self);
}

static void
refresh_now (UnsootBookingPage *self)
{
  touched (self);
  refresh (self);
}

static void
show_head (UnsootBookingPage *self)
{
  const UnsootBookingFile *file = self->file;
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

  for (guint i = self->plan->again->len; i-- > 0;)
    if (g_array_index (self->plan->again, gint64, i) == line_id)
      g_array_remove_index (self->plan->again, i);
  if (again)
    g_array_append_val (self->plan->again, line_id);
  refresh_now (self);
}

static const UnsootServiceRow *
chosen_service (const UnsootBookingFile *file)
{
  for (guint i = 0; i < file->services->len; i++)
    {
      const UnsootServiceRow *service = g_ptr_array_index (file->services, i);
      if (service->id == file->plan->service_id)
        return service;
    }
  return NULL;
}

static void
fill_services (UnsootBookingPage *self)
{
  const UnsootBookingFile *file = self->file;
  GListModel *model = G_LIST_MODEL (gtk_drop_down_get_model (GTK_DROP_DOWN (self->services)));
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  if (g_list_model_get_n_items (model) != file->services->len)
    {
      for (guint i = 0; i < file->services->len; i++)
        g_ptr_array_add (words,
                         ((const UnsootServiceRow *) g_ptr_array_index (file->services, i))->name);
      g_ptr_array_add (words, NULL);
      unsoot_form_set_words (self->services, (const char *const *) words->pdata);
      unsoot_form_name (self->services, _ ("Service"));
    }
  for (guint i = 0; i < file->services->len; i++)
    if (g_ptr_array_index (file->services, i) == chosen_service (file))
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->services), i);
}

/* The lead technician enters a dose where no rule gives one. */
static gboolean
may_enter_dose (UnsootBookingPage *self)
{
  UnsootRole role;

  return unsoot_session_get_role (unsoot_view_get_session (UNSOOT_VIEW (self)), &role)
         && unsoot_role_may (role, UNSOOT_DEED_ENTER_DOSE);
}

static void
show_service (UnsootBookingPage *self)
{
  const UnsootBookingFile *file = self->file;
  const UnsootServiceRow *service = chosen_service (file);
  const gboolean open = file->job == NULL, doses = open && may_enter_dose (self);
  const char *sides = service != NULL ? service->sides : "";

  fill_services (self);
  if (!open)
    unsoot_form_set_text (self->complaint, file->job->complaint);
  gtk_widget_set_sensitive (self->services, open);
  gtk_widget_set_sensitive (self->complaint, open);
  gtk_widget_set_visible (self->order,
                          open && file->customer != NULL && file->customer->po_required);
  gtk_widget_set_visible (self->fuel_dose, doses && !g_str_equal (sides, "intake"));
  gtk_widget_set_visible (self->intake_dose, doses && !g_str_equal (sides, "fuel"));
}

static void
file_read (gpointer owner, gpointer result, const GError *error)
{
  UnsootBookingPage *self = owner;
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));

  if (error != NULL)
    {
      unsoot_booking_bar_say (self->bar, error->message);
      return;
    }
  g_clear_pointer (&self->file, unsoot_booking_file_free);
  self->file = result;
  self->plan->days_on = self->file->plan->days_on;
  self->filling = TRUE;
  show_head (self);
  unsoot_booking_who_show (self->caller, self->file);
  unsoot_booking_vehicle_show (self->machine, self->file);
  show_service (self);
  unsoot_card_clear (self->quote);
  unsoot_booking_quote_show (self->quote, self->file, session, again_changed, self);
  gtk_widget_set_visible (GTK_WIDGET (self->when), self->file->quote != NULL);
  unsoot_booking_times_show (self->times, self->file);
  unsoot_booking_bar_show (self->bar, self->file, self->without_word);
  self->filling = FALSE;
  if (self->wants_focus)
    unsoot_booking_page_focus (self);
}

/* What the worker is given: a copy, because the page goes on changing. */
typedef struct
{
  UnsootBookingPlan *plan;
  gint64 now;
} Ask;

static void
ask_free (gpointer data)
{
  Ask *question = data;

  unsoot_booking_plan_free (question->plan);
  g_free (question);
}

static gpointer
read_file (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Ask *question = data;

  return unsoot_booking_file_load (db, question->plan, question->now, error);
}

static void
refresh (UnsootBookingPage *self)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  Ask *question;

  if (self->plan == NULL)
    return;
  g_clear_handle_id (&self->pause_id, g_source_remove);
  question = g_new0 (Ask, 1);
  question->plan = unsoot_booking_plan_copy (self->plan);
  question->now = unsoot_session_now (session);
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (session), read_file, question,
                          ask_free, (GDestroyNotify) unsoot_booking_file_free, file_read, self);
}

static void
show_plan (UnsootBookingPage *self)
{
  self->filling = TRUE;
  unsoot_form_set_text (self->complaint, self->plan->complaint);
  unsoot_form_set_text (self->order, self->plan->po_number);
  self->filling = FALSE;
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
  Start *start = result;

  if (self->plan == NULL)
    {
      self->plan = g_steal_pointer (&start->plan);
      if (start->kept_at != 0)
        offer_draft (self, start->kept_at);
      if (self->begins_with != NULL)
        unsoot_booking_plan_begin (self->plan, self->begins_with);
      show_plan (self);
      self->wants_focus = TRUE;
    }
  refresh (self);
  start_free (start);
}

static void
begin_anew_cb (UnsootBookingPage *self)
{
  UnsootView *view = UNSOOT_VIEW (self);
  UnsootViewQuery query = { .record = unsoot_view_get_record (view) };

  g_strlcpy (query.slug, unsoot_view_get_slug (view), sizeof query.slug);
  g_clear_pointer (&self->plan, unsoot_booking_plan_free);
  self->plan = plan_for (&query);
  gtk_widget_set_visible (GTK_WIDGET (self->draft), FALSE);
  show_plan (self);
  keep_draft (self);
  self->wants_focus = TRUE;
  refresh (self);
}

static void
customer_cb (UnsootBookingWho *who, gint64 id, UnsootBookingPage *self)
{
  g_clear_pointer (&self->plan->customer, unsoot_customer_row_free);
  self->plan->customer_id = id;
  self->plan->vehicle_id = 0;
  self->wants_focus = TRUE;
  refresh_now (self);
}

static void
vehicle_found_cb (UnsootBookingWho *who, gint64 id, UnsootBookingPage *self)
{
  g_clear_pointer (&self->plan->customer, unsoot_customer_row_free);
  g_clear_pointer (&self->plan->vehicle, unsoot_vehicle_row_free);
  self->plan->vehicle_id = id;
  self->wants_focus = TRUE;
  refresh_now (self);
}

static void
somebody_new_cb (UnsootBookingWho *who, const char *typed, UnsootBookingPage *self)
{
  unsoot_booking_plan_new_customer (self->plan, typed);
  if (self->plan->vehicle == NULL)
    unsoot_booking_plan_new_vehicle (self->plan, NULL);
  self->wants_focus = TRUE;
  refresh_now (self);
}

static void
forget_cb (UnsootBookingPage *self)
{
  g_clear_pointer (&self->plan->customer, unsoot_customer_row_free);
  g_clear_pointer (&self->plan->phone, g_free);
  self->plan->customer_id = 0;
  self->plan->vehicle_id = 0;
  self->wants_focus = TRUE;
  refresh_now (self);
}

static void
who_edited_cb (UnsootBookingPage *self)
{
  unsoot_booking_who_read (self->caller, self->plan);
  refresh_soon (self);
}

static void
vehicle_cb (UnsootBookingVehicle *vehicle, gint64 id, UnsootBookingPage *self)
{
  g_clear_pointer (&self->plan->vehicle, unsoot_vehicle_row_free);
  self->plan->vehicle_id = id;
  self->plan->service_id = 0;
  refresh_now (self);
}

static void
new_vehicle_cb (UnsootBookingPage *self)
{
  unsoot_booking_plan_new_vehicle (self->plan, NULL);
  self->plan->customer_id = self->file != NULL ? self->file->plan->customer_id : 0;
  self->wants_focus = TRUE;
  refresh_now (self);
}

static void
vehicle_edited_cb (UnsootBookingPage *self)
{
  unsoot_booking_vehicle_read (self->machine, self->plan);
  refresh_soon (self);
}

static void
service_cb (UnsootBookingPage *self)
{
  const guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->services));

  if (self->filling || self->file == NULL || chosen >= self->file->services->len)
    return;
  self->plan->service_id
      = ((const UnsootServiceRow *) g_ptr_array_index (self->file->services, chosen))->id;
  refresh_now (self);
}

static void
texts_cb (UnsootBookingPage *self)
{
  if (self->filling || self->plan == NULL)
    return;
  g_free (self->plan->complaint);
  self->plan->complaint = unsoot_form_dup_text (self->complaint);
  g_free (self->plan->po_number);
  self->plan->po_number = unsoot_form_dup_text (self->order);
  touched (self);
}

static gboolean
read_dose (GtkWidget *entry, gint64 *ml, GError **error)
{
  g_autofree char *text = unsoot_form_dup_text (entry);
  UnsootTyped typed;

  *ml = 0;
  return text == NULL || unsoot_volume_parse (text, UNSOOT_UNIT_L, &typed, ml, error);
}

static void
dose_cb (UnsootBookingPage *self)
{
  g_autoptr (GError) error = NULL;

  if (self->filling || self->plan == NULL)
    return;
  if (!read_dose (self->fuel_dose, &self->plan->fuel_ml, &error)
      || !read_dose (self->intake_dose, &self->plan->intake_ml, &error))
    unsoot_form_say (self->service_note, error->message, TRUE);
  else
    unsoot_form_say (self->service_note, NULL, FALSE);
  refresh_soon (self);
}

static void
picked_cb (UnsootBookingTimes *times, gint64 at, UnsootBookingPage *self)
{
  self->plan->starts_at = at;
  self->plan->walks_in = FALSE;
  refresh_now (self);
}

static void
walk_in_cb (UnsootBookingPage *self)
{
  self->plan->walks_in = TRUE;
  self->plan->starts_at = 0;
  self->plan->days_on = 0;
  refresh_now (self);
}

static void
week_cb (UnsootBookingTimes *times, int step, UnsootBookingPage *self)
{
  const int days = (int) self->plan->days_on + step * DAYS_A_WEEK;

  self->plan->days_on = (guint) MAX (days, 0);
  self->plan->starts_at = 0;
  self->plan->walks_in = FALSE;
  refresh_now (self);
}

static void
limited_cb (UnsootBookingPage *self)
{
  self->plan->bay_id = unsoot_booking_times_get_bay (self->times);
  self->plan->machine_id = unsoot_booking_times_get_machine (self->times);
  self->plan->technician_id = unsoot_booking_times_get_technician (self->times);
  refresh_now (self);
}

/* The first deed: what is new is kept, and the job is quoted. */
typedef struct
{
  UnsootActing who;
  UnsootBookingPlan *plan;
  Draft *draft;
} Quoting;

static void
quoting_free (gpointer data)
{
  Quoting *quoting = data;

  unsoot_booking_plan_free (quoting->plan);
  draft_free (quoting->draft);
  g_free (quoting);
}

static GPtrArray *
phones_of (const UnsootBookingPlan *plan)
{
  GPtrArray *phones;

  if (plan->customer == NULL || plan->phone == NULL)
    return NULL;
  phones = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_phone_row_free);
  UnsootPhoneRow *phone = unsoot_phone_row_new ();
  phone->number = g_strdup (plan->phone);
  g_ptr_array_add (phones, phone);
  return phones;
}

static gpointer
give_estimate (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  Quoting *quoting = data;
  g_autoptr (GPtrArray) phones = phones_of (quoting->plan);
  UnsootQuoteWish wish;
  gint64 *job_id;

  unsoot_booking_plan_wish (quoting->plan, &wish);
  job_id = g_new (gint64, 1);
  *job_id = unsoot_job_quote_first (db, &quoting->who, &wish, phones, error);
  if (*job_id == 0)
    {
      g_free (job_id);
      return NULL;
    }
  keep (db, quoting->draft, cancellable, NULL);
  return job_id;
}

static void
toast (UnsootBookingPage *self, const char *text)
{
  GtkWidget *toasts = gtk_widget_get_ancestor (GTK_WIDGET (self), ADW_TYPE_TOAST_OVERLAY);
  g_autofree char *title = g_markup_escape_text (text, -1);

  if (toasts != NULL)
    adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (toasts), adw_toast_new (title));
}

static void
estimate_given (gpointer owner, gpointer result, const GError *error)
{
  UnsootBookingPage *self = owner;
  g_autofree gint64 *job_id = result;

  unsoot_booking_bar_set_busy (self->bar, FALSE);
  unsoot_booking_bar_say (self->bar, error != NULL ? error->message : NULL);
  if (error != NULL)
    return;
  g_clear_handle_id (&self->keep_id, g_source_remove);
  gtk_widget_set_visible (GTK_WIDGET (self->draft), FALSE);
  self->plan->job_id = *job_id;
  self->wants_focus = TRUE;
  toast (self, _ ("The estimate is given"));
  refresh (self);
}

static void
quote (UnsootBookingPage *self)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  Quoting *quoting = g_new0 (Quoting, 1);

  quoting->who = unsoot_session_acting (session);
  /* With the defaults that were shown. */
  quoting->plan = unsoot_booking_plan_copy (self->file->plan);
  if (quoting->plan->starts_at == 0 && self->file->time != NULL)
    quoting->plan->starts_at = self->file->time->starts_at;
  quoting->draft = draft_new (self);
  unsoot_booking_bar_set_busy (self->bar, TRUE);
  unsoot_store_slot_call (&self->quote_slot, unsoot_session_get_store (session), give_estimate,
                          quoting, quoting_free, g_free, estimate_given, self);
}

static void
authorised (GtkWidget *owner, const GError *error)
{
  UnsootBookingPage *self = UNSOOT_BOOKING_PAGE (owner);

  unsoot_booking_bar_set_busy (self->bar, FALSE);
  unsoot_booking_bar_say (self->bar, error != NULL ? error->message : NULL);
  self->wants_focus = error == NULL;
  refresh (self);
}

static void
booked (GtkWidget *owner, const GError *error)
{
  UnsootBookingPage *self = UNSOOT_BOOKING_PAGE (owner);

  unsoot_booking_bar_set_busy (self->bar, FALSE);
  unsoot_booking_bar_say (self->bar, error != NULL ? error->message : NULL);
  if (error == NULL)
    gtk_widget_activate_action (owner, "win.open", "(sx)", "job", self->plan->job_id);
  else
    refresh (self);
}

static void
authorise (UnsootBookingPage *self)
{
  UnsootDeedOrder *order = unsoot_booking_bar_word (self->bar, self->plan->job_id);

  if (order == NULL)
    return;
  unsoot_booking_bar_set_busy (self->bar, TRUE);
  unsoot_deed_call (GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                    &unsoot_job_authorise_form, order, authorised, GTK_WIDGET (self));
}

static void
book (UnsootBookingPage *self)
{
  const gboolean moves = self->file->stage == UNSOOT_BOOKING_BOOKED;

  unsoot_booking_bar_set_busy (self->bar, TRUE);
  unsoot_deed_call (GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                    &unsoot_job_book_form,
                    unsoot_job_book_order (self->plan->job_id, self->file->time, moves), booked,
                    GTK_WIDGET (self));
}

static void
deed_cb (UnsootBookingPage *self)
{
  if (self->file == NULL || unsoot_store_slot_busy (&self->quote_slot))
    return;
  unsoot_booking_bar_say (self->bar, NULL);
  switch (self->file->stage)
    {
    case UNSOOT_BOOKING_ASKED:
      quote (self);
      break;
    case UNSOOT_BOOKING_QUOTED:
      if (self->without_word)
        book (self);
      else
        authorise (self);
      break;
    case UNSOOT_BOOKING_AUTHORISED:
    case UNSOOT_BOOKING_BOOKED:
      book (self);
      break;
    }
}

static void
past_word_cb (UnsootBookingPage *self)
{
  self->without_word = TRUE;
  unsoot_booking_bar_show (self->bar, self->file, TRUE);
  unsoot_booking_bar_focus (self->bar);
}

static void
deed_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  deed_cb (UNSOOT_BOOKING_PAGE (widget));
}

static void
unsoot_booking_page_unmap (GtkWidget *widget)
{
  UnsootBookingPage *self = UNSOOT_BOOKING_PAGE (widget);

  if (self->keep_id != 0)
    keep_draft (self);
  GTK_WIDGET_CLASS (unsoot_booking_page_parent_class)->unmap (widget);
}

static void
unsoot_booking_page_dispose (GObject *object)
{
  UnsootBookingPage *self = UNSOOT_BOOKING_PAGE (object);

  g_clear_handle_id (&self->keep_id, g_source_remove);
  g_clear_handle_id (&self->pause_id, g_source_remove);
  unsoot_store_slot_clear (&self->slot);
  unsoot_store_slot_clear (&self->quote_slot);
  g_clear_pointer (&self->plan, unsoot_booking_plan_free);
  g_clear_pointer (&self->file, unsoot_booking_file_free);
  g_clear_pointer (&self->begins_with, g_free);
  G_OBJECT_CLASS (unsoot_booking_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BOOKING_PAGE);
}

static void
build_who (UnsootBookingPage *self, UnsootSession *session)
{
  self->caller = UNSOOT_BOOKING_WHO (unsoot_booking_who_new (session));
  g_signal_connect (self->caller, "customer", G_CALLBACK (customer_cb), self);
  g_signal_connect (self->caller, "vehicle", G_CALLBACK (vehicle_found_cb), self);
  g_signal_connect (self->caller, "somebody-new", G_CALLBACK (somebody_new_cb), self);
  g_signal_connect_swapped (self->caller, "forget", G_CALLBACK (forget_cb), self);
  g_signal_connect_swapped (self->caller, "edited", G_CALLBACK (who_edited_cb), self);
  gtk_box_append (GTK_BOX (self->who), GTK_WIDGET (self->caller));
  self->machine = UNSOOT_BOOKING_VEHICLE (unsoot_booking_vehicle_new (session));
  g_signal_connect (self->machine, "vehicle", G_CALLBACK (vehicle_cb), self);
  g_signal_connect_swapped (self->machine, "new-vehicle", G_CALLBACK (new_vehicle_cb), self);
  g_signal_connect_swapped (self->machine, "edited", G_CALLBACK (vehicle_edited_cb), self);
  gtk_box_append (GTK_BOX (self->vehicle), GTK_WIDGET (self->machine));
}

static void
build_service (UnsootBookingPage *self)
{
  GtkWidget *form = unsoot_form_new ();
  UnsootForm *fields = UNSOOT_FORM (form);

  self->services = unsoot_form_choice (fields, _ ("Service"), 2);
  g_signal_connect_swapped (self->services, "notify::selected", G_CALLBACK (service_cb), self);
  self->complaint = unsoot_form_entry (fields, _ ("Complaint, in the customer's words"), 2);
  g_signal_connect_swapped (self->complaint, "changed", G_CALLBACK (texts_cb), self);
  self->order = unsoot_form_entry (fields, _ ("Purchase order"), 1);
  g_signal_connect_swapped (self->order, "changed", G_CALLBACK (texts_cb), self);
  self->fuel_dose = unsoot_form_entry (fields, _ ("Fuel side, other than the rule"), 1);
  g_signal_connect_swapped (self->fuel_dose, "changed", G_CALLBACK (dose_cb), self);
  self->intake_dose = unsoot_form_entry (fields, _ ("Intake side, other than the rule"), 1);
  g_signal_connect_swapped (self->intake_dose, "changed", G_CALLBACK (dose_cb), self);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->fuel_dose), _ ("1.5 L"));
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->intake_dose), _ ("3 L"));
  self->service_note = unsoot_form_note (fields);
  gtk_box_append (GTK_BOX (self->service), form);
}

/* The session is there only now; the parent begins to read. */
static void
unsoot_booking_page_constructed (GObject *object)
{
  UnsootBookingPage *self = UNSOOT_BOOKING_PAGE (object);
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));

  build_who (self, session);
  build_service (self);
  self->times = UNSOOT_BOOKING_TIMES (unsoot_booking_times_new (session));
  g_signal_connect (self->times, "picked", G_CALLBACK (picked_cb), self);
  g_signal_connect_swapped (self->times, "walk-in", G_CALLBACK (walk_in_cb), self);
  g_signal_connect (self->times, "week", G_CALLBACK (week_cb), self);
  g_signal_connect_swapped (self->times, "limited", G_CALLBACK (limited_cb), self);
  gtk_box_append (GTK_BOX (self->when), GTK_WIDGET (self->times));
  gtk_widget_set_visible (GTK_WIDGET (self->when), FALSE);
  unsoot_booking_bar_set_session (self->bar, session);
  G_OBJECT_CLASS (unsoot_booking_page_parent_class)->constructed (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/booking-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, head);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, draft);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, draft_words);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, who);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, vehicle);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, service);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, when);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, quote);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingPage, bar);
  gtk_widget_class_bind_template_callback (widget_class, begin_anew_cb);
  gtk_widget_class_bind_template_callback (widget_class, deed_cb);
  gtk_widget_class_bind_template_callback (widget_class, past_word_cb);
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
  view_class->free_result = start_free;
  view_class->show = show_start;
  g_type_ensure (UNSOOT_TYPE_BOOKING_BAR);
  g_type_ensure (UNSOOT_TYPE_CARD);
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  g_type_ensure (UNSOOT_TYPE_TITLE_BLOCK);
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
  g_free (self->begins_with);
  self->begins_with = g_strdup (typed);
  if (self->plan == NULL)
    return;
  unsoot_booking_plan_begin (self->plan, typed);
  self->wants_focus = TRUE;
  refresh_now (self);
}

void
unsoot_booking_page_focus (UnsootBookingPage *self)
{
  const UnsootBookingPlan *plan = self->file != NULL ? self->file->plan : NULL;

  if (plan == NULL)
    return;
  self->wants_focus = FALSE;
  if (self->file->customer == NULL && (plan->customer == NULL || plan->customer->name == NULL))
    unsoot_booking_who_focus (self->caller);
  else if (plan->customer != NULL && plan->phone == NULL)
    unsoot_booking_who_focus (self->caller);
  else if (plan->vehicle != NULL || plan->vehicle_id == 0)
    unsoot_booking_vehicle_focus (self->machine);
  else
    unsoot_booking_bar_focus (self->bar);
}
