/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-bar.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "entry-form.h"
#include "format.h"
#include "job-deeds.h"

enum
{
  N_STOPS = 3
};

struct _UnsootBookingBar
{
  GtkBox parent_instance;

  /* template */
  GtkBox *stops;
  GtkLabel *sum;
  GtkLabel *detail;
  GtkBox *word;
  GtkLabel *trouble;
  GtkButton *past_word;
  GtkButton *verb;

  /* borrowed children of the word */
  GtkWidget *by, *how, *amount, *order;

  /* owned */
  UnsootSession *session;

  gint64 word_for; /* the job whose word is asked for */
  gboolean may;
};

enum
{
  DEED,
  PAST_WORD,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBookingBar, unsoot_booking_bar, GTK_TYPE_BOX)

static void
verb_cb (UnsootBookingBar *self)
{
  if (gtk_widget_get_sensitive (GTK_WIDGET (self->verb)))
    g_signal_emit (self, signals[DEED], 0);
}

static void
past_word_cb (UnsootBookingBar *self)
{
  g_signal_emit (self, signals[PAST_WORD], 0);
}

static void
unsoot_booking_bar_dispose (GObject *object)
{
  g_clear_object (&UNSOOT_BOOKING_BAR (object)->session);
  G_OBJECT_CLASS (unsoot_booking_bar_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BOOKING_BAR);
}

static void
unsoot_booking_bar_class_init (UnsootBookingBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_booking_bar_dispose;
  signals[DEED] = g_signal_new ("deed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 0);
  signals[PAST_WORD] = g_signal_new ("past-word", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                     NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/booking-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, stops);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, sum);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, detail);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, word);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, past_word);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingBar, verb);
  gtk_widget_class_bind_template_callback (widget_class, verb_cb);
  gtk_widget_class_bind_template_callback (widget_class, past_word_cb);
}

static GtkWidget *
add_field (UnsootBookingBar *self, GtkWidget *field, const char *label)
{
  GtkWidget *cell = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2), *title = gtk_label_new (label);

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_add_css_class (title, "caption");
  gtk_widget_add_css_class (title, "dim-label");
  gtk_box_append (GTK_BOX (cell), title);
  gtk_box_append (GTK_BOX (cell), field);
  g_object_bind_property (field, "visible", cell, "visible", G_BINDING_SYNC_CREATE);
  unsoot_form_name (field, label);
  gtk_box_append (self->word, cell);
  return field;
}

static GtkWidget *
add_entry (UnsootBookingBar *self, const char *label, int chars)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), chars);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (verb_cb), self);
  return add_field (self, entry, label);
}

static void
unsoot_booking_bar_init (UnsootBookingBar *self)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  for (gsize i = 0; unsoot_word_ways[i] != NULL; i++)
    g_ptr_array_add (words, (gpointer) _ (unsoot_word_ways[i]));
  g_ptr_array_add (words, NULL);
  self->order = add_entry (self, _ ("Purchase order"), 8);
  self->by = add_entry (self, _ ("Who gave their word"), 12);
  self->how = add_field (self, gtk_drop_down_new_from_strings ((const char *const *) words->pdata),
                         _ ("How"));
  self->amount = add_entry (self, _ ("Up to"), 7);
}

void
unsoot_booking_bar_set_session (UnsootBookingBar *self, UnsootSession *session)
{
  g_set_object (&self->session, session);
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
  const UnsootBill *bill = file->bill != NULL    ? file->bill
                           : file->quote != NULL ? file->quote->bill
                                                 : NULL;
  g_autofree char *money
      = bill != NULL ? unsoot_session_money (self->session, bill->with_tax) : NULL;
  g_autofree char *when = NULL;

  if (file->time != NULL)
    when = unsoot_format_from_to (file->time->starts_at, file->time->ends_at,
                                  unsoot_session_now (self->session),
                                  unsoot_session_zone (self->session));
  gtk_label_set_text (self->sum, money != NULL ? money : "–");
  gtk_label_set_text (self->detail, when != NULL ? when : "");
}

static void
fill_word (UnsootBookingBar *self, const UnsootBookingFile *file)
{
  const UnsootCustomerRow *customer = file->customer;

  if (self->word_for == file->job->id)
    return;
  self->word_for = file->job->id;
  unsoot_form_set_text (self->by, customer->contact != NULL ? customer->contact : customer->name);
  unsoot_form_set_text (self->order, file->job->po_number);
  gtk_widget_set_visible (self->order, customer->po_required || file->job->po_number != NULL);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->amount), gtk_label_get_text (self->sum));
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

void
unsoot_booking_bar_show (UnsootBookingBar *self, const UnsootBookingFile *file,
                         gboolean without_word)
{
  const gboolean asks_word = file->stage == UNSOOT_BOOKING_QUOTED && !without_word;
  const char *verb = verb_for (file, without_word);

  show_stops (self, file->stage);
  show_sum (self, file);
  if (asks_word)
    fill_word (self, file);
  gtk_widget_set_visible (GTK_WIDGET (self->word), asks_word);
  /* Where a word is asked for there is no room for the time too. */
  gtk_widget_set_visible (GTK_WIDGET (self->detail), !asks_word && file->time != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->past_word), asks_word);
  gtk_button_set_label (self->verb, verb);
  unsoot_access_name (GTK_WIDGET (self->verb), verb);
  self->may = can_do (file, without_word);
  gtk_widget_set_sensitive (GTK_WIDGET (self->verb), self->may);
}

void
unsoot_booking_bar_say (UnsootBookingBar *self, const char *trouble)
{
  gtk_label_set_text (self->trouble, trouble != NULL ? trouble : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), trouble != NULL);
}

void
unsoot_booking_bar_set_busy (UnsootBookingBar *self, gboolean busy)
{
  gtk_widget_set_sensitive (GTK_WIDGET (self->verb), !busy && self->may);
}

UnsootDeedOrder *
unsoot_booking_bar_word (UnsootBookingBar *self, gint64 job_id)
{
  g_autoptr (UnsootDeedOrder) word = unsoot_deed_order_new (job_id);
  g_autoptr (GError) error = NULL;
  g_autofree char *amount = unsoot_form_dup_text (self->amount);

  word->values[UNSOOT_WORD_BY].text = unsoot_form_dup_text (self->by);
  word->values[UNSOOT_WORD_HOW].number = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->how));
  word->values[UNSOOT_WORD_ORDER].text
      = gtk_widget_get_visible (self->order) ? unsoot_form_dup_text (self->order) : NULL;
  if (amount != NULL
      && !unsoot_session_parse_money (self->session, amount,
                                      &word->values[UNSOOT_WORD_AMOUNT].number, &error))
    {
      unsoot_booking_bar_say (self, error->message);
      gtk_widget_grab_focus (self->amount);
      return NULL;
    }
  return g_steal_pointer (&word);
}

void
unsoot_booking_bar_focus (UnsootBookingBar *self)
{
  g_autofree char *order = unsoot_form_dup_text (self->order);
  g_autofree char *by = unsoot_form_dup_text (self->by);

  if (gtk_widget_get_visible (GTK_WIDGET (self->word)) && gtk_widget_get_visible (self->order)
      && order == NULL)
    gtk_widget_grab_focus (self->order);
  else if (gtk_widget_get_visible (GTK_WIDGET (self->word)) && by == NULL)
    gtk_widget_grab_focus (self->by);
  else
    gtk_widget_grab_focus (GTK_WIDGET (self->verb));
}
