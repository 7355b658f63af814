/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-days.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "civil-words.h"
#include "civil.h"
#include "format.h"

struct _UnsootBookingDays
{
  GtkBox parent_instance;

  /* template */
  GtkWidget *back;
  GtkBox *days;
  GtkWidget *on;

  gboolean filling;
};

enum
{
  DAY,
  WEEK,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBookingDays, unsoot_booking_days, GTK_TYPE_BOX)

static void
day_cb (GtkToggleButton *button, UnsootBookingDays *self)
{
  if (!self->filling && gtk_toggle_button_get_active (button))
    g_signal_emit (self, signals[DAY], 0, g_object_get_data (G_OBJECT (button), "day"));
}

static void
back_cb (UnsootBookingDays *self)
{
  g_signal_emit (self, signals[WEEK], 0, -1);
}

static void
on_cb (UnsootBookingDays *self)
{
  g_signal_emit (self, signals[WEEK], 0, 1);
}

static void
unsoot_booking_days_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_booking_days_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BOOKING_DAYS);
}

static void
unsoot_booking_days_class_init (UnsootBookingDaysClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_booking_days_dispose;
  signals[DAY] = g_signal_new ("day", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                               G_TYPE_STRING);
  signals[WEEK] = g_signal_new ("week", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                1, G_TYPE_INT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/booking-days.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingDays, back);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingDays, days);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingDays, on);
  gtk_widget_class_bind_template_callback (widget_class, back_cb);
  gtk_widget_class_bind_template_callback (widget_class, on_cb);
}

static void
unsoot_booking_days_init (UnsootBookingDays *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  unsoot_access_name_inside (self->back, _ ("A week earlier"));
  unsoot_access_name_inside (self->on, _ ("A week later"));
}

/* "today", else "Tue 25": there is room for no more. */
static char *
day_name (const char *iso, const char *today)
{
  g_autofree char *noon = g_strconcat (iso, "T12:00:00Z", NULL);
  g_autoptr (GDateTime) date = g_date_time_new_from_iso8601 (noon, NULL);
  int day = 0, now = 0;

  if (date == NULL || !unsoot_day_parse (iso, &day, NULL) || !unsoot_day_parse (today, &now, NULL))
    return g_strdup (iso);
  return day == now ? unsoot_day_near_words (day, now) : g_date_time_format (date, "%a %-d");
}

static GtkWidget *
day_words_new (const char *near, const char *count)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *title = gtk_label_new (near), *free = gtk_label_new (count);

  gtk_label_set_ellipsize (GTK_LABEL (title), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (free, "caption");
  gtk_widget_add_css_class (free, "dim-label");
  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), free);
  return box;
}

/* The day, and how many times of it are free. */
static GtkWidget *
day_button_new (const UnsootFreeDay *day, const char *today)
{
  GtkWidget *button = gtk_toggle_button_new ();
  g_autofree char *near = day_name (day->day, today);
  g_autofree char *exact = unsoot_format_exact_day (day->day);
  g_autofree char *count = g_strdup_printf (
      ngettext ("%d free", "%d free", (gulong) day->times->len), (int) day->times->len);
  g_autofree char *name = g_strdup_printf ("%s, %s", exact, count);

  gtk_widget_add_css_class (button, "day-choice");
  gtk_button_set_child (GTK_BUTTON (button), day_words_new (near, count));
  gtk_widget_set_tooltip_text (button, exact);
  unsoot_access_name (button, name);
  g_object_set_data_full (G_OBJECT (button), "day", g_strdup (day->day), g_free);
  return button;
}

static void
clear (UnsootBookingDays *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->days))) != NULL)
    gtk_box_remove (self->days, child);
}

void
unsoot_booking_days_show (UnsootBookingDays *self, UnsootSession *session, const GPtrArray *days,
                          const UnsootFreeDay *shown, gboolean back)
{
  g_autofree char *today = unsoot_session_today (session);
  GtkToggleButton *group = NULL;

  self->filling = TRUE;
  clear (self);
  for (guint i = 0; i < days->len; i++)
    {
      const UnsootFreeDay *day = g_ptr_array_index (days, i);
      GtkWidget *button = day_button_new (day, today);
      if (group == NULL)
        group = GTK_TOGGLE_BUTTON (button);
      else
        gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), group);
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), day == shown);
      g_signal_connect (button, "toggled", G_CALLBACK (day_cb), self);
      gtk_box_append (self->days, button);
    }
  gtk_widget_set_sensitive (self->back, back);
  self->filling = FALSE;
}
