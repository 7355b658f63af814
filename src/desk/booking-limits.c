/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-limits.h"

#include <glib/gi18n-lib.h>

#include "entry-form.h"
#include "machine-row.h"
#include "staff-row.h"

enum
{
  BAY,
  MACHINE,
  TECHNICIAN,
  N_LIMITS
};

struct _UnsootBookingLimits
{
  GtkBox parent_instance;

  /* template */
  GtkWidget *choices[N_LIMITS];

  /* owned */
  GArray *ids[N_LIMITS]; /* gint64; the first is any */
  UnsootBookingTalk *talk;

  gboolean filling;
};

G_DEFINE_FINAL_TYPE (UnsootBookingLimits, unsoot_booking_limits, GTK_TYPE_BOX)

static gint64
chosen_id (UnsootBookingLimits *self, int which)
{
  const guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->choices[which]));

  return selected < self->ids[which]->len ? g_array_index (self->ids[which], gint64, selected) : 0;
}

static void
limited_cb (UnsootBookingLimits *self)
{
  UnsootBookingPlan *plan = self->talk != NULL ? unsoot_booking_talk_get_plan (self->talk) : NULL;

  if (self->filling || plan == NULL)
    return;
  plan->bay_id = chosen_id (self, BAY);
  plan->machine_id = chosen_id (self, MACHINE);
  plan->technician_id = chosen_id (self, TECHNICIAN);
  unsoot_booking_talk_changed (self->talk);
}

static void
unsoot_booking_limits_dispose (GObject *object)
{
  UnsootBookingLimits *self = UNSOOT_BOOKING_LIMITS (object);

  g_clear_object (&self->talk);
  for (int i = 0; i < N_LIMITS; i++)
    g_clear_pointer (&self->ids[i], g_array_unref);
  G_OBJECT_CLASS (unsoot_booking_limits_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BOOKING_LIMITS);
}

static void
unsoot_booking_limits_class_init (UnsootBookingLimitsClass *klass)
{
  static const char *const names[N_LIMITS] = { "bay", "machine", "technician" };
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_booking_limits_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/booking-limits.ui");
  for (gsize i = 0; i < N_LIMITS; i++)
    gtk_widget_class_bind_template_child_full (
        widget_class, names[i], FALSE,
        (gssize) (G_STRUCT_OFFSET (UnsootBookingLimits, choices) + i * sizeof (GtkWidget *)));
  gtk_widget_class_bind_template_callback (widget_class, limited_cb);
}

static void
unsoot_booking_limits_init (UnsootBookingLimits *self)
{
  const gint64 any = 0;

  for (int i = 0; i < N_LIMITS; i++)
    {
      self->ids[i] = g_array_new (FALSE, FALSE, sizeof (gint64));
      g_array_append_val (self->ids[i], any);
    }
  self->filling = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  self->filling = FALSE;
}

void
unsoot_booking_limits_begin (UnsootBookingLimits *self, UnsootBookingTalk *talk)
{
  self->talk = g_object_ref (talk);
}

static void
fill_words (UnsootBookingLimits *self, int which, const char *any, const GPtrArray *rows,
            gsize name)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  g_array_set_size (self->ids[which], 1);
  g_ptr_array_add (words, (gpointer) any);
  for (guint i = 0; i < rows->len; i++)
    {
      const UnsootRecordHead *row = g_ptr_array_index (rows, i);
      g_array_append_val (self->ids[which], row->id);
      g_ptr_array_add (words, G_STRUCT_MEMBER (char *, row, name));
    }
  g_ptr_array_add (words, NULL);
  unsoot_form_set_words (self->choices[which], (const char *const *) words->pdata);
}

static void
fill (UnsootBookingLimits *self, int which, const char *label, const char *any,
      const GPtrArray *rows, gsize name, gint64 chosen)
{
  if (self->ids[which]->len != rows->len + 1)
    {
      fill_words (self, which, any, rows, name);
      unsoot_form_name (self->choices[which], label);
    }
  for (guint i = 0; i < self->ids[which]->len; i++)
    if (g_array_index (self->ids[which], gint64, i) == chosen)
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->choices[which]), i);
}

void
unsoot_booking_limits_show (UnsootBookingLimits *self, const UnsootBookingFile *file)
{
  self->filling = TRUE;
  fill (self, BAY, _ ("Bay"), _ ("Any bay"), file->bays, G_STRUCT_OFFSET (UnsootBayRow, name),
        file->plan->bay_id);
  fill (self, MACHINE, _ ("Machine"), _ ("Any machine"), file->machines,
        G_STRUCT_OFFSET (UnsootMachineRow, name), file->plan->machine_id);
  fill (self, TECHNICIAN, _ ("Technician"), _ ("Anyone"), file->people,
        G_STRUCT_OFFSET (UnsootStaffRow, name), file->plan->technician_id);
  self->filling = FALSE;
}
