/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-next.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "arrival-fields.h"
#include "deed-dialog.h"
#include "entry-form.h"
#include "job-book.h"
#include "job-deeds.h"
#include "path.h"
#include "precheck.h"

struct _UnsootJobNext
{
  GtkBox parent_instance;

  /* owned */
  UnsootSession *session;
  UnsootJobViewFile *file;
};

G_DEFINE_FINAL_TYPE (UnsootJobNext, unsoot_job_next, GTK_TYPE_BOX)

/* One thing that may be done: what stands on it, whose it is, and how it is begun. */
typedef struct
{
  const char *verb; /* N_ () */
  UnsootDeed deed;
  void (*begin) (UnsootJobNext *self);
} Deed;

static gint64
job_id (UnsootJobNext *self)
{
  return self->file->file->job->id;
}

static void
begin_booking (UnsootJobNext *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "win.open", "(sx)", "booking-job", job_id (self));
}

static void
begin_arrival (UnsootJobNext *self)
{
  unsoot_arrival_open (GTK_WIDGET (self), self->session, self->file->file);
}

/* Asks for what the form needs; carries it out where it needs nothing. */
static void
begin_form (UnsootJobNext *self, const UnsootDeedForm *form)
{
  UnsootDeedDialog *dialog;

  if (form->n_fields == 0)
    {
      unsoot_deed_do (GTK_WIDGET (self), self->session, form, job_id (self));
      return;
    }
  dialog = unsoot_deed_dialog_new (GTK_WIDGET (self), self->session, form, job_id (self));
  unsoot_deed_dialog_open (dialog);
}

/* The sentence about an overrun is what the customer is asked with. */
static void
begin_word (UnsootJobNext *self)
{
  const UnsootJobFile *file = self->file->file;
  UnsootDeedDialog *dialog = unsoot_deed_dialog_new (GTK_WIDGET (self), self->session,
                                                     &unsoot_job_authorise_form, job_id (self));
  g_autofree char *total = self->file->bill != NULL
                               ? unsoot_session_money (self->session, self->file->bill->with_tax)
                               : NULL;
  g_autofree char *about
      = self->file->overrun != NULL
            ? g_strdup (self->file->overrun)
            /* Translators: an amount, then who is asked */
            : g_strdup_printf (_ ("The lines come to %s, for %s."), total, file->customer->name);

  unsoot_deed_dialog_say (dialog, about);
  unsoot_deed_dialog_set_text (dialog, UNSOOT_WORD_BY,
                               file->customer->contact != NULL ? file->customer->contact
                                                               : file->customer->name);
  unsoot_deed_dialog_set_text (dialog, UNSOOT_WORD_ORDER, file->job->po_number);
  unsoot_deed_dialog_open (dialog);
}

static void
begin_decline (UnsootJobNext *self)
{
  begin_form (self, &unsoot_job_decline_form);
}

static void
begin_cancel (UnsootJobNext *self)
{
  begin_form (self, &unsoot_job_cancel_form);
}

static void
begin_unbook (UnsootJobNext *self)
{
  begin_form (self, &unsoot_job_unbook_form);
}

static void
begin_again (UnsootJobNext *self)
{
  begin_form (self, &unsoot_job_quote_again_form);
}

static void
begin_estimate (UnsootJobNext *self)
{
  begin_form (self, &unsoot_job_estimate_form);
}

static void
begin_line (UnsootJobNext *self)
{
  begin_form (self, &unsoot_job_line_form);
}

static const Deed book = { N_ ("Book…"), UNSOOT_DEED_BOOK, begin_booking };
static const Deed move = { N_ ("Move the booking…"), UNSOOT_DEED_MOVE_BOOKING, begin_booking };
static const Deed word = { N_ ("Authorise…"), UNSOOT_DEED_AUTHORISE, begin_word };
static const Deed arrive = { N_ ("Record the arrival…"), UNSOOT_DEED_ARRIVE, begin_arrival };
static const Deed unbook
    = { N_ ("Take the booking back…"), UNSOOT_DEED_MOVE_BOOKING, begin_unbook };
static const Deed decline = { N_ ("Record as declined…"), UNSOOT_DEED_DECLINE, begin_decline };
static const Deed cancel = { N_ ("Cancel the job…"), UNSOOT_DEED_CANCEL, begin_cancel };
static const Deed again = { N_ ("Quote again"), UNSOOT_DEED_ESTIMATE, begin_again };
static const Deed estimate = { N_ ("Estimate anew"), UNSOOT_DEED_ESTIMATE, begin_estimate };
static const Deed line = { N_ ("Add a line…"), UNSOOT_DEED_ESTIMATE, begin_line };

#define MOST_DEEDS 8

/* In order, the usual one first; the order of the path, and what belongs to it besides. Where the
 * usual one is the bay's or the till's, *@usual is FALSE: those have their own buttons. */
static gsize
deeds_for (const UnsootJobViewFile *file, const Deed **deeds, gboolean *usual)
{
  const gboolean asks = file->asks;
  UnsootJobStatus status = UNSOOT_JOB_QUOTED;
  gsize n = 0;

  unsoot_job_status_find (file->file->job->status, &status);
  switch (status)
    {
    case UNSOOT_JOB_QUOTED:
      deeds[n++] = asks ? &word : &book;
      deeds[n++] = asks ? &book : &word;
      deeds[n++] = &line;
      deeds[n++] = &estimate;
      deeds[n++] = &decline;
      deeds[n++] = &cancel;
      return n;
    case UNSOOT_JOB_BOOKED:
      deeds[n++] = asks ? &word : &arrive;
      deeds[n++] = asks ? &arrive : &word;
      deeds[n++] = &move;
      deeds[n++] = &line;
      deeds[n++] = &estimate;
      deeds[n++] = &unbook;
      deeds[n++] = &cancel;
      return n;
    case UNSOOT_JOB_ARRIVED:
      *usual = asks;
      deeds[n++] = &word;
      deeds[n++] = &move;
      deeds[n++] = &line;
      deeds[n++] = &estimate;
      deeds[n++] = &cancel;
      return n;
    case UNSOOT_JOB_IN_BAY:
    case UNSOOT_JOB_STOPPED:
      *usual = asks;
      deeds[n++] = &word;
      deeds[n++] = &line;
      deeds[n++] = &estimate;
      return n;
    case UNSOOT_JOB_DONE:
      *usual = asks;
      if (asks)
        deeds[n++] = &word;
      deeds[n++] = &line;
      deeds[n++] = &estimate;
      return n;
    case UNSOOT_JOB_DECLINED:
    case UNSOOT_JOB_CANCELLED:
      deeds[n++] = &again;
      return n;
    case UNSOOT_JOB_INVOICED:
    case UNSOOT_JOB_PAID:
      return 0;
    }
  g_return_val_if_reached (0);
}

static void
deed_cb (GtkWidget *button, UnsootJobNext *self)
{
  const Deed *deed = g_object_get_data (G_OBJECT (button), "deed");
  GtkWidget *popover = gtk_widget_get_ancestor (button, GTK_TYPE_POPOVER);

  if (popover != NULL)
    gtk_popover_popdown (GTK_POPOVER (popover));
  deed->begin (self);
}

static GtkWidget *
button_new (UnsootJobNext *self, const Deed *deed)
{
  GtkWidget *button = gtk_button_new_with_label (_ (deed->verb));
  g_autofree char *refusal = unsoot_session_refusal (self->session, deed->deed);

  g_object_set_data (G_OBJECT (button), "deed", (gpointer) deed);
  gtk_widget_set_sensitive (button, refusal == NULL);
  gtk_widget_set_tooltip_text (button, refusal);
  unsoot_access_name (button, _ (deed->verb));
  g_signal_connect (button, "clicked", G_CALLBACK (deed_cb), self);
  return button;
}

static GtkWidget *
menu_new (UnsootJobNext *self, const Deed *const *deeds, gsize n)
{
  GtkWidget *menu = gtk_menu_button_new (), *popover = gtk_popover_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  for (gsize i = 0; i < n; i++)
    {
      GtkWidget *button = button_new (self, deeds[i]);
      gtk_widget_add_css_class (button, "flat");
      gtk_widget_add_css_class (button, "menu-deed");
      gtk_label_set_xalign (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), 0);
      gtk_box_append (GTK_BOX (box), button);
    }
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  unsoot_access_name (popover, _ ("What else may happen"));
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (menu), popover);
  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (menu), "view-more-symbolic");
  gtk_widget_set_tooltip_text (menu, _ ("What else may happen"));
  unsoot_form_name (menu, _ ("What else may happen"));
  return menu;
}

static void
clear (UnsootJobNext *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_box_remove (GTK_BOX (self), child);
}

static void
fill (UnsootJobNext *self)
{
  const Deed *deeds[MOST_DEEDS];
  gboolean usual = TRUE;
  const gsize n = deeds_for (self->file, deeds, &usual);
  const gsize first = usual ? 1 : 0;

  clear (self);
  if (n > 0 && usual)
    {
      GtkWidget *button = button_new (self, deeds[0]);
      if (gtk_widget_get_sensitive (button))
        gtk_widget_add_css_class (button, "suggested-action");
      gtk_box_append (GTK_BOX (self), button);
    }
  if (n > first)
    gtk_box_append (GTK_BOX (self), menu_new (self, deeds + first, n - first));
}

static void
unsoot_job_next_dispose (GObject *object)
{
  UnsootJobNext *self = UNSOOT_JOB_NEXT (object);

  g_clear_object (&self->session);
  g_clear_pointer (&self->file, unsoot_job_view_file_unref);
  G_OBJECT_CLASS (unsoot_job_next_parent_class)->dispose (object);
}

static void
unsoot_job_next_class_init (UnsootJobNextClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = unsoot_job_next_dispose;
}

static void
unsoot_job_next_init (UnsootJobNext *self)
{
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
}

void
unsoot_job_next_show (UnsootJobNext *self, UnsootJobViewFile *file, UnsootSession *session)
{
  if (self->session == NULL)
    g_signal_connect_object (session, "notify::person", G_CALLBACK (fill), self, G_CONNECT_SWAPPED);
  g_set_object (&self->session, session);
  g_clear_pointer (&self->file, unsoot_job_view_file_unref);
  self->file = unsoot_job_view_file_ref (file);
  fill (self);
}
