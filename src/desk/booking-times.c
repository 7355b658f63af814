/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-times.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "booking-days.h"
#include "booking-limits.h"
#include "clock-text.h"
#include "entry-form.h"
#include "format.h"

enum
{
  DAYS_A_WEEK = 7
};

struct _UnsootBookingTimes
{
  GtkBox parent_instance;

  /* template */
  UnsootBookingLimits *limits;
  UnsootBookingDays *days;
  GtkFlowBox *times;
  GtkEntry *clock;
  GtkWidget *clock_note;
  GtkLabel *chosen;
  GtkLabel *taken;
  GtkBox *troubles;

  /* owned */
  UnsootBookingTalk *talk;
  char *day; /* that is looked at */

  gboolean filling;
};

G_DEFINE_FINAL_TYPE (UnsootBookingTimes, unsoot_booking_times, GTK_TYPE_BOX)

static void
pick (UnsootBookingTimes *self, gint64 at)
{
  unsoot_booking_plan_pick (unsoot_booking_talk_get_plan (self->talk), at);
  unsoot_booking_talk_changed (self->talk);
}

static void
time_cb (GtkToggleButton *button, UnsootBookingTimes *self)
{
  const gint64 *at = g_object_get_data (G_OBJECT (button), "at");

  if (!self->filling && gtk_toggle_button_get_active (button))
    pick (self, *at);
}

static const UnsootFreeDay *
find_day (const UnsootBookingFile *file, const char *iso)
{
  for (guint i = 0; iso != NULL && i < file->days->len; i++)
    {
      const UnsootFreeDay *day = g_ptr_array_index (file->days, i);
      if (g_str_equal (day->day, iso))
        return day;
    }
  return NULL;
}

/* Takes the first of the day, so that a day is one key; of a day that is full nothing can be
 * taken, but what stands in the way of it is said. */
static void
day_cb (UnsootBookingDays *days, const char *iso, UnsootBookingTimes *self)
{
  const UnsootBookingFile *file = unsoot_booking_talk_get_file (self->talk);
  const UnsootFreeDay *day = find_day (file, iso);

  g_free (self->day);
  self->day = g_strdup (iso);
  if (day != NULL && day->times->len > 0)
    pick (self, ((const UnsootFreeTime *) g_ptr_array_index (day->times, 0))->starts_at);
  else
    unsoot_booking_times_show (self, file);
}

static void
week_cb (UnsootBookingDays *widget, int step, UnsootBookingTimes *self)
{
  UnsootBookingPlan *plan = unsoot_booking_talk_get_plan (self->talk);
  const int days = (int) plan->days_on + step * DAYS_A_WEEK;

  g_clear_pointer (&self->day, g_free);
  plan->days_on = (guint) MAX (days, 0);
  pick (self, 0);
}

static void
now_cb (UnsootBookingTimes *self)
{
  g_clear_pointer (&self->day, g_free);
  unsoot_booking_plan_walk_in (unsoot_booking_talk_get_plan (self->talk));
  unsoot_booking_talk_changed (self->talk);
}

/* "14:30" on the day that is looked at; NULL where it is no time. */
static GDateTime *
read_clock (UnsootBookingTimes *self)
{
  g_autofree char *typed = unsoot_form_dup_text (GTK_WIDGET (self->clock));
  g_autofree char *moment = NULL;
  int minute;

  if (self->day == NULL || typed == NULL || !unsoot_clock_parse (typed, &minute, NULL))
    return NULL;
  moment = g_strdup_printf ("%sT%02d:%02d:00", self->day, minute / 60, minute % 60);
  return g_date_time_new_from_iso8601 (
      moment, unsoot_session_zone (unsoot_booking_talk_get_session (self->talk)));
}

static void
clock_cb (UnsootBookingTimes *self)
{
  g_autoptr (GDateTime) at = read_clock (self);

  unsoot_form_say (self->clock_note,
                   at == NULL ? _ ("Type a time of the day that is chosen, as 14:30.") : NULL,
                   TRUE);
  if (at != NULL)
    pick (self, g_date_time_to_unix (at));
}

static void
unsoot_booking_times_dispose (GObject *object)
{
  UnsootBookingTimes *self = UNSOOT_BOOKING_TIMES (object);

  g_clear_object (&self->talk);
  g_clear_pointer (&self->day, g_free);
  G_OBJECT_CLASS (unsoot_booking_times_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BOOKING_TIMES);
}

static void
unsoot_booking_times_class_init (UnsootBookingTimesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_booking_times_dispose;
  g_type_ensure (UNSOOT_TYPE_BOOKING_DAYS);
  g_type_ensure (UNSOOT_TYPE_BOOKING_LIMITS);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/booking-times.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingTimes, limits);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingTimes, days);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingTimes, times);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingTimes, clock);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingTimes, clock_note);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingTimes, chosen);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingTimes, taken);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingTimes, troubles);
  gtk_widget_class_bind_template_callback (widget_class, day_cb);
  gtk_widget_class_bind_template_callback (widget_class, week_cb);
  gtk_widget_class_bind_template_callback (widget_class, now_cb);
  gtk_widget_class_bind_template_callback (widget_class, clock_cb);
}

static void
unsoot_booking_times_init (UnsootBookingTimes *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  unsoot_form_name (GTK_WIDGET (self->clock), _ ("Exactly at"));
}

void
unsoot_booking_times_begin (UnsootBookingTimes *self, UnsootBookingTalk *talk)
{
  self->talk = g_object_ref (talk);
  unsoot_booking_limits_begin (self->limits, talk);
}

/* The day that is looked at: one that was asked for though it is full; that of the chosen time;
 * the one looked at before; the first with something free. */
static const UnsootFreeDay *
day_of (UnsootBookingTimes *self, const UnsootBookingFile *file)
{
  UnsootSession *session = unsoot_booking_talk_get_session (self->talk);
  const UnsootFreeDay *before = find_day (file, self->day);
  g_autofree char *iso = file->time != NULL ? unsoot_format_iso_day (file->time->starts_at,
                                                                     unsoot_session_zone (session))
                                            : NULL;
  const UnsootFreeDay *chosen = find_day (file, iso);

  if (before != NULL && before->times->len == 0)
    return before;
  if (chosen != NULL)
    return chosen;
  for (guint i = 0; before == NULL && i < file->days->len; i++)
    {
      const UnsootFreeDay *day = g_ptr_array_index (file->days, i);
      if (day->times->len > 0)
        return day;
    }
  return before != NULL || file->days->len == 0 ? before : g_ptr_array_index (file->days, 0);
}

static GtkToggleButton *
time_button_new (UnsootBookingTimes *self, const UnsootFreeTime *time, const char *clock)
{
  GtkWidget *button = gtk_toggle_button_new_with_label (clock);
  g_autofree char *what
      = g_strdup_printf ("%s · %s · %s", time->bay, time->machine, time->technician);

  gtk_widget_add_css_class (button, "time-choice");
  gtk_widget_set_tooltip_text (button, what);
  unsoot_access_name (button, clock);
  g_object_set_data_full (G_OBJECT (button), "at",
                          g_memdup2 (&time->starts_at, sizeof time->starts_at), g_free);
  return GTK_TOGGLE_BUTTON (button);
}

static void
show_times (UnsootBookingTimes *self, const UnsootFreeDay *day, gint64 at)
{
  GTimeZone *zone = unsoot_session_zone (unsoot_booking_talk_get_session (self->talk));
  GtkToggleButton *group = NULL;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->times))) != NULL)
    gtk_flow_box_remove (self->times, child);
  for (guint i = 0; day != NULL && i < day->times->len; i++)
    {
      const UnsootFreeTime *time = g_ptr_array_index (day->times, i);
      g_autofree char *clock = unsoot_format_clock (time->starts_at, zone);
      GtkToggleButton *button = time_button_new (self, time, clock);

      gtk_toggle_button_set_group (button, group);
      group = group != NULL ? group : button;
      gtk_toggle_button_set_active (button, time->starts_at == at);
      g_signal_connect (button, "toggled", G_CALLBACK (time_cb), self);
      gtk_flow_box_append (self->times, GTK_WIDGET (button));
      child = gtk_widget_get_parent (GTK_WIDGET (button));
      gtk_widget_set_focusable (child, FALSE);
      unsoot_access_name (child, clock);
    }
}

static void
say_troubles (UnsootBookingTimes *self, const GPtrArray *sentences)
{
  for (guint i = 0; sentences != NULL && i < sentences->len; i++)
    {
      GtkWidget *label = gtk_label_new (g_ptr_array_index (sentences, i));
      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_widget_add_css_class (label, "trouble");
      gtk_box_append (self->troubles, label);
    }
}

/* What stands in the way of the chosen time, else of the day that is looked at. */
static void
show_troubles (UnsootBookingTimes *self, const UnsootBookingFile *file, const UnsootFreeDay *day)
{
  const gboolean full = day != NULL && day->times->len == 0;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->troubles))) != NULL)
    gtk_box_remove (self->troubles, child);
  say_troubles (self, file->why);
  if (full && (file->why == NULL || file->why->len == 0))
    say_troubles (self, day->why);
}

static char *
taken_text (const UnsootFreeTime *time)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new ();
  const char *const all[] = { time->bay, time->machine, time->technician, time->adapters };

  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    if (all[i] != NULL)
      g_ptr_array_add (parts, (gpointer) all[i]);
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (" · ", (char **) parts->pdata);
}

static void
show_chosen (UnsootBookingTimes *self, const UnsootBookingFile *file)
{
  UnsootSession *session = unsoot_booking_talk_get_session (self->talk);
  g_autofree char *when = NULL, *taken = NULL;

  if (file->time != NULL)
    {
      when = unsoot_format_from_to (file->time->starts_at, file->time->ends_at,
                                    unsoot_session_now (session), unsoot_session_zone (session));
      taken = taken_text (file->time);
    }
  gtk_label_set_text (self->chosen, when != NULL                 ? when
                                    : file->days_trouble != NULL ? file->days_trouble
                                                                 : _ ("No time chosen yet"));
  gtk_label_set_text (self->taken, taken != NULL ? taken : "");
}

void
unsoot_booking_times_show (UnsootBookingTimes *self, const UnsootBookingFile *file)
{
  const UnsootFreeDay *day = file->days != NULL ? day_of (self, file) : NULL;

  self->filling = TRUE;
  unsoot_booking_limits_show (self->limits, file);
  if (file->days != NULL)
    {
      g_free (self->day);
      self->day = day != NULL ? g_strdup (day->day) : NULL;
      unsoot_booking_days_show (self->days, unsoot_booking_talk_get_session (self->talk),
                                file->days, day, file->plan->days_on > 0);
      show_times (self, day, file->time != NULL ? file->time->starts_at : 0);
    }
  show_chosen (self, file);
  show_troubles (self, file, day);
  self->filling = FALSE;
}
