/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-word.h"

#include <glib/gi18n-lib.h>

#include "entry-form.h"
#include "form-draft.h"
#include "job-deeds.h"

struct _UnsootBookingWord
{
  GtkBox parent_instance;

  /* template */
  GtkWidget *order;
  GtkWidget *by;
  GtkWidget *how;
  GtkWidget *amount;
  GtkWidget *order_cell;
  UnsootFormDraft *draft;

  gint64 job_id; /* whose word it is */
};

enum
{
  ACTIVATE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBookingWord, unsoot_booking_word, GTK_TYPE_BOX)

static void
activate_cb (UnsootBookingWord *self)
{
  g_signal_emit (self, signals[ACTIVATE], 0);
}

/* What one has typed is kept for them; the next one begins anew. */
static void
hands_changed_cb (UnsootBookingWord *self)
{
  self->job_id = 0;
}

static void
unsoot_booking_word_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_booking_word_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BOOKING_WORD);
}

static void
unsoot_booking_word_class_init (UnsootBookingWordClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_booking_word_dispose;
  signals[ACTIVATE] = g_signal_new ("activate", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                    NULL, NULL, NULL, G_TYPE_NONE, 0);
  g_type_ensure (UNSOOT_TYPE_FORM_DRAFT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/booking-word.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingWord, order);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingWord, by);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingWord, how);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingWord, amount);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingWord, order_cell);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingWord, draft);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
}

static void
unsoot_booking_word_init (UnsootBookingWord *self)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  for (gsize i = 0; unsoot_word_ways[i] != NULL; i++)
    g_ptr_array_add (words, (gpointer) _ (unsoot_word_ways[i]));
  g_ptr_array_add (words, NULL);
  unsoot_form_set_words (self->how, (const char *const *) words->pdata);
  unsoot_form_name (self->order, _ ("Purchase order"));
  unsoot_form_name (self->by, _ ("Who gave their word"));
  unsoot_form_name (self->how, _ ("How"));
  unsoot_form_name (self->amount, _ ("Up to"));
  g_signal_connect_swapped (self->draft, "hands-changed", G_CALLBACK (hands_changed_cb), self);
  unsoot_form_draft_watch (self->draft, "order", _ ("Purchase order"), self->order);
  unsoot_form_draft_watch (self->draft, "by", _ ("Who gave their word"), self->by);
  unsoot_form_draft_watch (self->draft, "how", _ ("How"), self->how);
  unsoot_form_draft_watch (self->draft, "amount", _ ("Up to"), self->amount);
}

void
unsoot_booking_word_show (UnsootBookingWord *self, UnsootSession *session,
                          const UnsootBookingFile *file, const char *total)
{
  const UnsootCustomerRow *customer = file->customer;

  gtk_entry_set_placeholder_text (GTK_ENTRY (self->amount), total);
  if (self->job_id == file->job->id)
    return;
  self->job_id = file->job->id;
  unsoot_form_set_text (self->by, customer->contact != NULL ? customer->contact : customer->name);
  unsoot_form_set_text (self->order, file->job->po_number);
  gtk_widget_set_visible (self->order_cell, customer->po_required || file->job->po_number != NULL);
  unsoot_form_draft_leave (self->draft);
  unsoot_form_draft_begin (self->draft, session, "booking-word", self->job_id);
}

void
unsoot_booking_word_given (UnsootBookingWord *self)
{
  unsoot_form_draft_done (self->draft);
}

UnsootDeedOrder *
unsoot_booking_word_read (UnsootBookingWord *self, UnsootSession *session, GError **error)
{
  g_autoptr (UnsootDeedOrder) word = unsoot_deed_order_new (self->job_id);
  g_autofree char *amount = unsoot_form_dup_text (self->amount);

  word->values[UNSOOT_WORD_BY].text = unsoot_form_dup_text (self->by);
  word->values[UNSOOT_WORD_HOW].number = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->how));
  word->values[UNSOOT_WORD_ORDER].text
      = gtk_widget_get_visible (self->order_cell) ? unsoot_form_dup_text (self->order) : NULL;
  if (amount != NULL
      && !unsoot_session_parse_money (session, amount, &word->values[UNSOOT_WORD_AMOUNT].number,
                                      error))
    {
      gtk_widget_grab_focus (self->amount);
      return NULL;
    }
  return g_steal_pointer (&word);
}

gboolean
unsoot_booking_word_focus (UnsootBookingWord *self)
{
  g_autofree char *order = unsoot_form_dup_text (self->order);
  g_autofree char *by = unsoot_form_dup_text (self->by);

  if (gtk_widget_get_visible (self->order_cell) && order == NULL)
    return gtk_widget_grab_focus (self->order);
  return by == NULL && gtk_widget_grab_focus (self->by);
}
