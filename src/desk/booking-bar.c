/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-bar.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "access.h"
#include "booking-estimate.h"
#include "booking-word.h"
#include "deed-call.h"
#include "format.h"
#include "job-book.h"
#include "job-deeds.h"
#include "store-call.h"

enum
{
  N_STOPS = 3
};

struct _UnsootBookingBar
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *trouble;
  GtkLabel *about;
  GtkBox *stops;
  GtkLabel *sum;
  GtkLabel *detail;
  UnsootBookingWord *word;
  GtkButton *past_word;
  GtkButton *verb;

  /* owned */
  UnsootBookingTalk *talk;
  UnsootStoreSlot slot;

  gboolean without_word; /* booked though nobody has given their word yet */
  gboolean may;
  gboolean busy;
  gboolean waits; /* a deed was asked for of what is not read yet */
  UnsootBookingStage stage_waited;
};

G_DEFINE_FINAL_TYPE (UnsootBookingBar, unsoot_booking_bar, GTK_TYPE_BOX)

/* While a deed is under way nothing else is begun. */
static void
set_busy (UnsootBookingBar *self, gboolean busy)
{
  self->busy = busy;
  gtk_widget_set_sensitive (GTK_WIDGET (self->verb), !busy && self->may);
}

/* A deed has come back: what went wrong is said, and nothing else is. */
static gboolean
is_done (UnsootBookingBar *self, const GError *error)
{
  set_busy (self, FALSE);
  unsoot_booking_bar_say (self, error != NULL ? error->message : NULL);
  return error == NULL;
}

static void
toast (UnsootBookingBar *self, const char *text)
{
  GtkWidget *toasts = gtk_widget_get_ancestor (GTK_WIDGET (self), ADW_TYPE_TOAST_OVERLAY);
  g_autofree char *title = g_markup_escape_text (text, -1);

  if (toasts != NULL)
    adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (toasts), adw_toast_new (title));
}

static void
estimate_given (gpointer owner, gpointer result, const GError *error)
{
  UnsootBookingBar *self = owner;
  g_autofree gint64 *job_id = result;

  if (!is_done (self, error))
    {
      unsoot_booking_talk_hold (self->talk, FALSE);
      unsoot_booking_bar_focus (self);
      return;
    }
  toast (self, _ ("The estimate is given"));
  unsoot_booking_talk_quoted (self->talk, *job_id);
}

static void
give_estimate (UnsootBookingBar *self, const UnsootBookingFile *file)
{
  UnsootSession *session = unsoot_booking_talk_get_session (self->talk);
  const UnsootActing who = unsoot_session_acting (session);
  UnsootBookingEstimate *estimate = unsoot_booking_estimate_new (
      &who, file->plan, file->time != NULL ? file->time->starts_at : 0,
      unsoot_booking_talk_dup_draft (self->talk));

  set_busy (self, TRUE);
  unsoot_booking_talk_hold (self->talk, TRUE);
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (session),
                          unsoot_booking_estimate_give, estimate, unsoot_booking_estimate_free,
                          g_free, estimate_given, self);
}

static void
authorised (GtkWidget *owner, const GError *error)
{
  UnsootBookingBar *self = UNSOOT_BOOKING_BAR (owner);

  if (is_done (self, error))
    {
      unsoot_booking_word_given (self->word);
      unsoot_booking_talk_go_on (self->talk);
    }
  else
    unsoot_booking_talk_read (self->talk);
}

static void
authorise (UnsootBookingBar *self)
{
  UnsootSession *session = unsoot_booking_talk_get_session (self->talk);
  g_autoptr (GError) error = NULL;
  UnsootDeedOrder *order = unsoot_booking_word_read (self->word, session, &error);

  if (order == NULL)
    {
      unsoot_booking_bar_say (self, error->message);
      return;
    }
  set_busy (self, TRUE);
  unsoot_deed_call (GTK_WIDGET (self), session, &unsoot_job_authorise_form, order, authorised,
                    GTK_WIDGET (self));
}

static void
booked (GtkWidget *owner, const GError *error)
{
  UnsootBookingBar *self = UNSOOT_BOOKING_BAR (owner);

  if (is_done (self, error))
    gtk_widget_activate_action (owner, "win.open", "(sx)", "job",
                                unsoot_booking_talk_get_plan (self->talk)->job_id);
  else
    unsoot_booking_talk_read (self->talk);
}

static void
book (UnsootBookingBar *self, const UnsootBookingFile *file)
{
  const gboolean moves = file->stage == UNSOOT_BOOKING_BOOKED;

  set_busy (self, TRUE);
  unsoot_deed_call (GTK_WIDGET (self), unsoot_booking_talk_get_session (self->talk),
                    moves ? &unsoot_job_move_form : &unsoot_job_book_form,
                    unsoot_job_book_order (file->job->id, file->time), booked, GTK_WIDGET (self));
}

static void
verb_cb (UnsootBookingBar *self)
{
  unsoot_booking_bar_do (self);
}

static void
past_word_cb (UnsootBookingBar *self)
{
  self->without_word = TRUE;
  unsoot_booking_bar_show (self, unsoot_booking_talk_get_file (self->talk));
  unsoot_booking_bar_focus (self);
}

static void
unsoot_booking_bar_dispose (GObject *object)
{
  UnsootBookingBar *self = UNSOOT_BOOKING_BAR (object);

  unsoot_store_slot_clear (&self->slot);
  g_clear_object (&self->talk);
  G_OBJECT_CLASS (unsoot_booking_bar_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BOOKING_BAR);
}

static void
unsoot_booking_bar_class_init (UnsootBookingBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_booking_bar_dispose;
  g_type_ensure (UNSOOT_TYPE_BOOKING_WORD);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/booking-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, about);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, stops);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, sum);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, detail);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, word);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, past_word);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, verb);
  gtk_widget_class_bind_template_callback (widget_class, verb_cb);
  gtk_widget_class_bind_template_callback (widget_class, past_word_cb);
}

static void
unsoot_booking_bar_init (UnsootBookingBar *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
unsoot_booking_bar_begin (UnsootBookingBar *self, UnsootBookingTalk *talk)
{
  self->talk = g_object_ref (talk);
}

/* The stops with where it stands: passed, here, ahead. */
static void
show_stops (UnsootBookingBar *self, UnsootBookingStage stage)
{
  const char *const names[N_STOPS] = { _ ("Estimate"), _ ("Word"), _ ("Booking") };
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->stops))) != NULL)
    gtk_box_remove (self->stops, child);
  for (int i = 0; i < N_STOPS; i++)
    {
      const gboolean passed = i < (int) stage, here = i == (int) stage;
      g_autofree char *text = passed ? g_strdup_printf ("✓ %s", names[i]) : g_strdup (names[i]);
      GtkWidget *label = gtk_label_new (text);

      gtk_widget_add_css_class (label, "status-mark");
      gtk_widget_add_css_class (label, here ? "now" : passed ? "done" : "ahead");
      gtk_box_append (self->stops, label);
    }
}

static void
show_sum (UnsootBookingBar *self, const UnsootBookingFile *file)
{
  UnsootSession *session = unsoot_booking_talk_get_session (self->talk);
  const UnsootBill *bill = file->bill != NULL    ? file->bill
                           : file->quote != NULL ? file->quote->bill
                                                 : NULL;
  g_autofree char *money = bill != NULL ? unsoot_session_money (session, bill->with_tax) : NULL;
  g_autofree char *when = NULL;

  if (file->time != NULL)
    when = unsoot_format_from_to (file->time->starts_at, file->time->ends_at,
                                  unsoot_session_now (session), unsoot_session_zone (session));
  gtk_label_set_text (self->sum, money != NULL ? money : "–");
  gtk_label_set_text (self->detail, when != NULL ? when : "");
}

static const char *
verb_for (const UnsootBookingFile *file, gboolean without_word)
{
  switch (file->stage)
    {
    case UNSOOT_BOOKING_ASKED:
      return _ ("Give the estimate");
    case UNSOOT_BOOKING_QUOTED:
      return without_word ? _ ("Book") : _ ("Authorise");
    case UNSOOT_BOOKING_AUTHORISED:
      return _ ("Book");
    case UNSOOT_BOOKING_BOOKED:
      return _ ("Move the booking");
    }
  g_return_val_if_reached (NULL);
}

static gboolean
can_do (const UnsootBookingFile *file, gboolean without_word)
{
  const gboolean bookable = file->time != NULL && file->why->len == 0;

  switch (file->stage)
    {
    case UNSOOT_BOOKING_ASKED:
      return file->quote != NULL && (file->customer != NULL || file->plan->customer != NULL);
    case UNSOOT_BOOKING_QUOTED:
      return !without_word || bookable;
    case UNSOOT_BOOKING_AUTHORISED:
      return bookable;
    case UNSOOT_BOOKING_BOOKED:
      return bookable && file->time->starts_at != file->booking->starts_at;
    }
  g_return_val_if_reached (FALSE);
}

static void
show_word (UnsootBookingBar *self, const UnsootBookingFile *file, gboolean asks)
{
  if (asks)
    unsoot_booking_word_show (self->word, unsoot_booking_talk_get_session (self->talk), file,
                              gtk_label_get_text (self->sum));
  gtk_widget_set_visible (GTK_WIDGET (self->word), asks);
  gtk_widget_set_visible (GTK_WIDGET (self->past_word), asks);
  /* Where a word is asked for there is no room for the time too. */
  gtk_widget_set_visible (GTK_WIDGET (self->detail), !asks && file->time != NULL);
}

void
unsoot_booking_bar_show (UnsootBookingBar *self, const UnsootBookingFile *file)
{
  const char *verb = verb_for (file, self->without_word);

  show_stops (self, file->stage);
  show_sum (self, file);
  show_word (self, file, file->stage == UNSOOT_BOOKING_QUOTED && !self->without_word);
  gtk_label_set_text (self->about, file->overrun != NULL ? file->overrun : "");
  gtk_widget_set_visible (GTK_WIDGET (self->about), file->overrun != NULL);
  gtk_button_set_label (self->verb, verb);
  unsoot_access_name (GTK_WIDGET (self->verb), verb);
  self->may = can_do (file, self->without_word);
  set_busy (self, self->busy);
  /* It waits again where more was typed since. */
  const gboolean waited = self->waits && file->stage == self->stage_waited;
  self->waits = FALSE;
  if (waited)
    unsoot_booking_bar_do (self);
}

gboolean
unsoot_booking_bar_is_busy (UnsootBookingBar *self)
{
  return self->busy;
}

void
unsoot_booking_bar_say (UnsootBookingBar *self, const char *trouble)
{
  gtk_label_set_text (self->trouble, trouble != NULL ? trouble : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), trouble != NULL);
}

void
unsoot_booking_bar_do (UnsootBookingBar *self)
{
  const UnsootBookingFile *file = unsoot_booking_talk_get_file (self->talk);

  if (file == NULL || !gtk_widget_get_sensitive (GTK_WIDGET (self->verb)))
    return;
  /* What was said last belongs to it; and what is done already is not done twice. */
  if (unsoot_booking_talk_is_behind (self->talk))
    {
      self->waits = TRUE;
      self->stage_waited = file->stage;
      return;
    }
  unsoot_booking_bar_say (self, NULL);
  if (file->stage == UNSOOT_BOOKING_ASKED)
    give_estimate (self, file);
  else if (file->stage == UNSOOT_BOOKING_QUOTED && !self->without_word)
    authorise (self);
  else
    book (self, file);
}

void
unsoot_booking_bar_focus (UnsootBookingBar *self)
{
  if (!gtk_widget_get_visible (GTK_WIDGET (self->word)) || !unsoot_booking_word_focus (self->word))
    gtk_widget_grab_focus (GTK_WIDGET (self->verb));
}
