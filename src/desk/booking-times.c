/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-times.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "booking-row.h"
#include "civil-words.h"
#include "civil.h"
#include "entry-form.h"
#include "format.h"
#include "machine-row.h"

/* One of the three that may be asked for by name. */
typedef struct
{
  GtkWidget *choice; /* borrowed */
  GArray *ids;       /* gint64; the first is any */
} Limit;

enum
{
  BAY,
  MACHINE,
  TECHNICIAN,
  N_LIMITS
};

struct _UnsootBookingTimes
{
  GtkBox parent_instance;

  /* borrowed children */
  GtkWidget *days;
  GtkWidget *back;
  GtkWidget *times;
  GtkWidget *chosen;
  GtkWidget *taken;
  GtkWidget *troubles;
  GtkWidget *clock;
  GtkWidget *clock_note;
  Limit limits[N_LIMITS];

  /* owned */
  UnsootSession *session;
  char *day; /* that is looked at */

  gboolean filling;
};

enum
{
  PICKED,
  WALK_IN,
  WEEK,
  LIMITED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBookingTimes, unsoot_booking_times, GTK_TYPE_BOX)

static void
clear (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    if (GTK_IS_FLOW_BOX (box))
      gtk_flow_box_remove (GTK_FLOW_BOX (box), child);
    else
      gtk_box_remove (GTK_BOX (box), child);
}

static void
time_cb (GtkToggleButton *button, UnsootBookingTimes *self)
{
  const gint64 *at = g_object_get_data (G_OBJECT (button), "at");

  if (!self->filling && gtk_toggle_button_get_active (button))
    g_signal_emit (self, signals[PICKED], 0, *at);
}

static void
day_cb (GtkToggleButton *button, UnsootBookingTimes *self)
{
  const gint64 *at = g_object_get_data (G_OBJECT (button), "at");

  if (self->filling || !gtk_toggle_button_get_active (button))
    return;
  g_free (self->day);
  self->day = g_strdup (g_object_get_data (G_OBJECT (button), "day"));
  /* The first of the day, so that a day is one key. */
  g_signal_emit (self, signals[PICKED], 0, *at);
}

static void
now_cb (GtkButton *button, UnsootBookingTimes *self)
{
  g_clear_pointer (&self->day, g_free);
  g_signal_emit (self, signals[WALK_IN], 0);
}

static void
week_cb (GtkButton *button, UnsootBookingTimes *self)
{
  g_clear_pointer (&self->day, g_free);
  g_signal_emit (self, signals[WEEK], 0, GTK_WIDGET (button) == self->back ? -1 : 1);
}

static void
limited_cb (UnsootBookingTimes *self)
{
  if (!self->filling)
    g_signal_emit (self, signals[LIMITED], 0);
}

/* "14:30" on the day that is looked at. */
static void
clock_cb (GtkEntry *entry, UnsootBookingTimes *self)
{
  g_autofree char *typed = unsoot_form_dup_text (self->clock);
  g_autofree char *moment = NULL;
  g_autoptr (GDateTime) at = NULL;
  g_auto (GStrv) parts = g_strsplit (typed != NULL ? typed : "", ":", 2);

  if (self->day != NULL && g_strv_length (parts) == 2)
    moment = g_strdup_printf ("%sT%02d:%02d:00", self->day, atoi (parts[0]), atoi (parts[1]));
  at = moment != NULL ? g_date_time_new_from_iso8601 (moment, unsoot_session_zone (self->session))
                      : NULL;
  unsoot_form_say (self->clock_note,
                   at == NULL ? _ ("Type a time of the day that is chosen, as 14:30.") : NULL,
                   TRUE);
  if (at != NULL)
    g_signal_emit (self, signals[PICKED], 0, g_date_time_to_unix (at));
}

static void
unsoot_booking_times_dispose (GObject *object)
{
  UnsootBookingTimes *self = UNSOOT_BOOKING_TIMES (object);

  g_clear_object (&self->session);
  g_clear_pointer (&self->day, g_free);
  for (int i = 0; i < N_LIMITS; i++)
    g_clear_pointer (&self->limits[i].ids, g_array_unref);
  G_OBJECT_CLASS (unsoot_booking_times_parent_class)->dispose (object);
}

static void
unsoot_booking_times_class_init (UnsootBookingTimesClass *klass)
{
  const GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_booking_times_dispose;
  signals[PICKED] = g_signal_new ("picked", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_INT64);
  signals[WALK_IN]
      = g_signal_new ("walk-in", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[WEEK] = g_signal_new ("week", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                1, G_TYPE_INT);
  signals[LIMITED]
      = g_signal_new ("limited", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
unsoot_booking_times_init (UnsootBookingTimes *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
}

static GtkWidget *
arrow_new (UnsootBookingTimes *self, const char *icon, const char *name)
{
  GtkWidget *arrow = gtk_button_new_from_icon_name (icon);

  gtk_widget_add_css_class (arrow, "flat");
  gtk_widget_set_tooltip_text (arrow, name);
  gtk_widget_set_valign (arrow, GTK_ALIGN_CENTER);
  unsoot_form_name (arrow, name);
  g_signal_connect (arrow, "clicked", G_CALLBACK (week_cb), self);
  return arrow;
}

static void
build_days (UnsootBookingTimes *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->back = arrow_new (self, "go-previous-symbolic", _ ("A week earlier"));
  self->days = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_widget_add_css_class (self->days, "linked");
  gtk_box_set_homogeneous (GTK_BOX (self->days), TRUE);
  gtk_widget_set_hexpand (self->days, TRUE);
  gtk_box_append (GTK_BOX (row), self->back);
  gtk_box_append (GTK_BOX (row), self->days);
  gtk_box_append (GTK_BOX (row), arrow_new (self, "go-next-symbolic", _ ("A week later")));
  gtk_box_append (GTK_BOX (self), row);
}

static GtkWidget *
label_new (const char *css)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css);
  return label;
}

static void
build_chosen (UnsootBookingTimes *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  self->chosen = label_new ("heading");
  gtk_widget_add_css_class (self->chosen, "figures");
  self->taken = label_new ("dim-label");
  self->troubles = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (box), self->chosen);
  gtk_box_append (GTK_BOX (box), self->taken);
  gtk_box_append (GTK_BOX (self), box);
  gtk_box_append (GTK_BOX (self), self->troubles);
}

static void
build_limits (UnsootBookingTimes *self)
{
  const char *const names[] = { _ ("Bay"), _ ("Machine"), _ ("Technician") };
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  const gint64 any = 0;

  gtk_box_set_homogeneous (GTK_BOX (row), TRUE);
  for (int i = 0; i < N_LIMITS; i++)
    {
      self->limits[i].choice = gtk_drop_down_new_from_strings ((const char *const[]){ NULL });
      self->limits[i].ids = g_array_new (FALSE, FALSE, sizeof (gint64));
      g_array_append_val (self->limits[i].ids, any);
      gtk_widget_add_css_class (self->limits[i].choice, "small-choice");
      unsoot_form_name (self->limits[i].choice, names[i]);
      g_signal_connect_swapped (self->limits[i].choice, "notify::selected", G_CALLBACK (limited_cb),
                                self);
      gtk_box_append (GTK_BOX (row), self->limits[i].choice);
    }
  gtk_box_append (GTK_BOX (self), row);
}

static void
build_exact (UnsootBookingTimes *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *now = gtk_button_new_with_label (_ ("Walk-in: now"));

  unsoot_access_name (now, _ ("Walk-in: now"));
  g_signal_connect (now, "clicked", G_CALLBACK (now_cb), self);
  self->clock = gtk_entry_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (self->clock), 12);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->clock), _ ("or exactly at 14:30"));
  unsoot_form_name (self->clock, _ ("Exactly at"));
  g_signal_connect (self->clock, "activate", G_CALLBACK (clock_cb), self);
  self->clock_note = label_new ("caption");
  gtk_widget_set_visible (self->clock_note, FALSE);
  gtk_box_append (GTK_BOX (row), now);
  gtk_box_append (GTK_BOX (row), self->clock);
  gtk_box_append (GTK_BOX (self), row);
  gtk_box_append (GTK_BOX (self), self->clock_note);
}

GtkWidget *
unsoot_booking_times_new (UnsootSession *session)
{
  UnsootBookingTimes *self = g_object_new (UNSOOT_TYPE_BOOKING_TIMES, NULL);

  self->session = g_object_ref (session);
  build_limits (self);
  build_days (self);
  self->times = gtk_flow_box_new ();
  gtk_flow_box_set_selection_mode (GTK_FLOW_BOX (self->times), GTK_SELECTION_NONE);
  gtk_flow_box_set_max_children_per_line (GTK_FLOW_BOX (self->times), 8);
  gtk_flow_box_set_column_spacing (GTK_FLOW_BOX (self->times), 3);
  gtk_flow_box_set_row_spacing (GTK_FLOW_BOX (self->times), 3);
  unsoot_access_name (self->times, _ ("Free times"));
  gtk_box_append (GTK_BOX (self), self->times);
  build_exact (self);
  build_chosen (self);
  return GTK_WIDGET (self);
}

static void
set_at (GtkWidget *button, gint64 at)
{
  g_object_set_data_full (G_OBJECT (button), "at", g_memdup2 (&at, sizeof at), g_free);
}

/* "today", else "Tue 25": there is room for no more. */
static char *
day_name (UnsootBookingTimes *self, const char *iso)
{
  g_autofree char *today = unsoot_session_today (self->session);
  g_autofree char *noon = g_strconcat (iso, "T12:00:00Z", NULL);
  g_autoptr (GDateTime) date = g_date_time_new_from_iso8601 (noon, NULL);
  int day = 0, now = 0;

  if (date == NULL || !unsoot_day_parse (iso, &day, NULL) || !unsoot_day_parse (today, &now, NULL))
    return g_strdup (iso);
  return day == now ? unsoot_day_near_words (day, now) : g_date_time_format (date, "%a %-d");
}

/* The day, and how many times of it are free. */
static GtkWidget *
day_button_new (UnsootBookingTimes *self, const UnsootFreeDay *day)
{
  GtkWidget *button = gtk_toggle_button_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *near = day_name (self, day->day);
  g_autofree char *exact = unsoot_format_exact_day (day->day);
  g_autofree char *count = g_strdup_printf (
      ngettext ("%d free", "%d free", (gulong) day->times->len), (int) day->times->len);
  g_autofree char *name = g_strdup_printf ("%s, %s", exact, count);
  GtkWidget *title = gtk_label_new (near), *free = gtk_label_new (count);

  gtk_label_set_ellipsize (GTK_LABEL (title), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (button, "day-choice");
  gtk_widget_add_css_class (free, "caption");
  gtk_widget_add_css_class (free, "dim-label");
  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), free);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_set_tooltip_text (button, exact);
  unsoot_access_name (button, name);
  g_object_set_data_full (G_OBJECT (button), "day", g_strdup (day->day), g_free);
  set_at (button, day->times->len > 0
                      ? ((const UnsootFreeTime *) g_ptr_array_index (day->times, 0))->starts_at
                      : 0);
  return button;
}

static gboolean
has_time (const UnsootFreeDay *day, gint64 at)
{
  for (guint i = 0; i < day->times->len; i++)
    if (((const UnsootFreeTime *) g_ptr_array_index (day->times, i))->starts_at == at)
      return TRUE;
  return FALSE;
}

/* The day that is looked at: that of the chosen time, else the one looked at before, else the
 * first with something free. */
static const UnsootFreeDay *
day_of (UnsootBookingTimes *self, const UnsootBookingFile *file)
{
  const gint64 at = file->time != NULL ? file->time->starts_at : 0;
  g_autofree char *iso
      = at != 0 ? unsoot_format_iso_day (at, unsoot_session_zone (self->session)) : NULL;
  const UnsootFreeDay *first = NULL;

  for (guint i = 0; i < file->days->len; i++)
    {
      const UnsootFreeDay *day = g_ptr_array_index (file->days, i);
      if (g_strcmp0 (day->day, self->day) == 0 && (at == 0 || g_strcmp0 (iso, day->day) == 0))
        return day;
      if (has_time (day, at) || g_strcmp0 (iso, day->day) == 0)
        return day;
      if (first == NULL && day->times->len > 0)
        first = day;
    }
  return first != NULL ? first : file->days->len > 0 ? g_ptr_array_index (file->days, 0) : NULL;
}

static void
show_days (UnsootBookingTimes *self, const UnsootBookingFile *file, const UnsootFreeDay *shown)
{
  GtkToggleButton *group = NULL;

  clear (self->days);
  for (guint i = 0; i < file->days->len; i++)
    {
      const UnsootFreeDay *day = g_ptr_array_index (file->days, i);
      GtkWidget *button = day_button_new (self, day);
      if (group == NULL)
        group = GTK_TOGGLE_BUTTON (button);
      else
        gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), group);
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), day == shown);
      g_signal_connect (button, "toggled", G_CALLBACK (day_cb), self);
      gtk_box_append (GTK_BOX (self->days), button);
    }
  gtk_widget_set_sensitive (self->back, file->plan->days_on > 0);
}

static void
show_times (UnsootBookingTimes *self, const UnsootFreeDay *day, gint64 at)
{
  GTimeZone *zone = unsoot_session_zone (self->session);
  GtkToggleButton *group = NULL;

  clear (self->times);
  for (guint i = 0; day != NULL && i < day->times->len; i++)
    {
      const UnsootFreeTime *time = g_ptr_array_index (day->times, i);
      g_autofree char *clock = unsoot_format_clock (time->starts_at, zone);
      g_autofree char *what
          = g_strdup_printf ("%s · %s · %s", time->bay, time->machine, time->technician);
      GtkWidget *button = gtk_toggle_button_new_with_label (clock);

      if (group == NULL)
        group = GTK_TOGGLE_BUTTON (button);
      else
        gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), group);
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), time->starts_at == at);
      gtk_widget_add_css_class (button, "time-choice");
      gtk_widget_set_tooltip_text (button, what);
      unsoot_access_name (button, clock);
      set_at (button, time->starts_at);
      g_signal_connect (button, "toggled", G_CALLBACK (time_cb), self);
      gtk_flow_box_append (GTK_FLOW_BOX (self->times), button);
      GtkWidget *cell = gtk_widget_get_parent (button);
      gtk_widget_set_focusable (cell, FALSE);
      unsoot_access_name (cell, clock);
    }
}

static void
say_troubles (UnsootBookingTimes *self, const GPtrArray *sentences)
{
  for (guint i = 0; sentences != NULL && i < sentences->len; i++)
    {
      GtkWidget *label = label_new ("trouble");
      gtk_label_set_text (GTK_LABEL (label), g_ptr_array_index (sentences, i));
      gtk_box_append (GTK_BOX (self->troubles), label);
    }
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
  g_autofree char *when = NULL, *taken = NULL;

  if (file->time != NULL)
    {
      when = unsoot_format_from_to (file->time->starts_at, file->time->ends_at,
                                    unsoot_session_now (self->session),
                                    unsoot_session_zone (self->session));
      taken = taken_text (file->time);
    }
  gtk_label_set_text (GTK_LABEL (self->chosen), when != NULL ? when : _ ("No time chosen yet"));
  gtk_label_set_text (GTK_LABEL (self->taken), taken != NULL ? taken : "");
}

static void
fill_limit (Limit *limit, const char *label, const char *any, const GPtrArray *rows, gsize name,
            gint64 chosen)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  guint selected = 0;

  if (limit->ids->len != rows->len + 1)
    {
      g_array_set_size (limit->ids, 1);
      g_ptr_array_add (words, (gpointer) any);
      for (guint i = 0; i < rows->len; i++)
        {
          const UnsootRecordHead *row = g_ptr_array_index (rows, i);
          g_array_append_val (limit->ids, row->id);
          g_ptr_array_add (words, G_STRUCT_MEMBER (char *, row, name));
        }
      g_ptr_array_add (words, NULL);
      unsoot_form_set_words (limit->choice, (const char *const *) words->pdata);
      unsoot_form_name (limit->choice, label);
    }
  for (guint i = 0; i < limit->ids->len; i++)
    if (g_array_index (limit->ids, gint64, i) == chosen)
      selected = i;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (limit->choice), selected);
}

static void
show_limits (UnsootBookingTimes *self, const UnsootBookingFile *file)
{
  fill_limit (&self->limits[BAY], _ ("Bay"), _ ("Any bay"), file->bays,
              G_STRUCT_OFFSET (UnsootBayRow, name), file->plan->bay_id);
  fill_limit (&self->limits[MACHINE], _ ("Machine"), _ ("Any machine"), file->machines,
              G_STRUCT_OFFSET (UnsootMachineRow, name), file->plan->machine_id);
  fill_limit (&self->limits[TECHNICIAN], _ ("Technician"), _ ("Anyone"), file->people,
              G_STRUCT_OFFSET (UnsootStaffRow, name), file->plan->technician_id);
}

void
unsoot_booking_times_show (UnsootBookingTimes *self, const UnsootBookingFile *file)
{
  const UnsootFreeDay *day = file->days != NULL ? day_of (self, file) : NULL;

  self->filling = TRUE;
  show_limits (self, file);
  clear (self->troubles);
  if (file->days != NULL)
    {
      g_free (self->day);
      self->day = day != NULL ? g_strdup (day->day) : NULL;
      show_days (self, file, day);
      show_times (self, day, file->time != NULL ? file->time->starts_at : 0);
    }
  show_chosen (self, file);
  say_troubles (self, file->why);
  if (day != NULL && day->times->len == 0 && (file->why == NULL || file->why->len == 0))
    say_troubles (self, day->why);
  self->filling = FALSE;
}

static gint64
limit_id (const Limit *limit)
{
  const guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (limit->choice));

  return selected < limit->ids->len ? g_array_index (limit->ids, gint64, selected) : 0;
}

gint64
unsoot_booking_times_get_bay (UnsootBookingTimes *self)
{
  return limit_id (&self->limits[BAY]);
}

gint64
unsoot_booking_times_get_machine (UnsootBookingTimes *self)
{
  return limit_id (&self->limits[MACHINE]);
}

gint64
unsoot_booking_times_get_technician (UnsootBookingTimes *self)
{
  return limit_id (&self->limits[TECHNICIAN]);
}
