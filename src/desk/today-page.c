/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "today-page.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "day-strip.h"
#include "days.h"
#include "format.h"
#include "hand-row.h"
#include "path.h"

enum
{
  HOUR = 3600,
  USUAL_OPENING = 8 * HOUR, /* of a day on which the shop is shut, so that there is a strip */
  USUAL_CLOSING = 17 * HOUR,
  SECONDS_A_TICK = 20,
  TICKS_A_READING = 6 /* what is late changes with the time alone */
};

struct _UnsootTodayPage
{
  UnsootView parent_instance;

  /* template */
  GtkLabel *date;
  GtkLabel *hours;
  UnsootDayStrip *strip;
  GtkLabel *nothing_booked;
  GtkLabel *hands_title;
  GtkListBox *hands;
  GtkLabel *nothing;

  guint n_hands;
  guint tick_id;
  guint ticks;
};

enum
{
  PROP_HANDS = 1,
  N_PROPS
};
static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (UnsootTodayPage, unsoot_today_page, UNSOOT_TYPE_VIEW)

static gpointer
read_day (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;

  return unsoot_day_load (db, NULL, query->now, error);
}

static UnsootStripState
block_state (const UnsootDayBlock *block, UnsootJobStatus status)
{
  switch (status)
    {
    case UNSOOT_JOB_QUOTED:
    case UNSOOT_JOB_BOOKED:
    case UNSOOT_JOB_DECLINED:
    case UNSOOT_JOB_CANCELLED:
      return UNSOOT_STRIP_PLANNED;
    case UNSOOT_JOB_ARRIVED:
      return UNSOOT_STRIP_HERE;
    case UNSOOT_JOB_IN_BAY:
      return block->halted ? UNSOOT_STRIP_STOPPED : UNSOOT_STRIP_RUNNING;
    case UNSOOT_JOB_STOPPED:
      return UNSOOT_STRIP_STOPPED;
    case UNSOOT_JOB_DONE:
    case UNSOOT_JOB_INVOICED:
    case UNSOOT_JOB_PAID:
      return UNSOOT_STRIP_DONE;
    }
  g_return_val_if_reached (UNSOOT_STRIP_PLANNED);
}

/* A finished job is full anyway; only one under way shows how far it is. */
static double
shown_progress (const UnsootDayBlock *block, UnsootJobStatus status)
{
  const gboolean under_way = status == UNSOOT_JOB_IN_BAY || status == UNSOOT_JOB_STOPPED;

  return under_way && !isnan (block->progress) ? block->progress : 0;
}

/* The lane of a bay; behind the last for a booking that has none. */
static int
lane_of (const UnsootDay *day, gint64 bay_id)
{
  for (guint i = 0; i < day->bays->len; i++)
    if (((const UnsootBayRow *) g_ptr_array_index (day->bays, i))->id == bay_id)
      return (int) i;
  return (int) day->bays->len;
}

static GStrv
lane_names (const UnsootDay *day)
{
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();
  gboolean without = FALSE;

  for (guint i = 0; i < day->bays->len; i++)
    g_strv_builder_add (names, ((const UnsootBayRow *) g_ptr_array_index (day->bays, i))->name);
  for (guint i = 0; i < day->blocks->len; i++)
    {
      const UnsootDayBlock *block = g_ptr_array_index (day->blocks, i);
      without |= lane_of (day, block->bay_id) == (int) day->bays->len;
    }
  if (without)
    g_strv_builder_add (names, _ ("No bay"));
  return g_strv_builder_end (names);
}

static char *
block_name (UnsootTodayPage *self, const UnsootDayBlock *block, UnsootJobStatus status)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  g_autofree char *from = unsoot_format_clock (block->starts_at, unsoot_session_zone (session));
  g_autofree char *to = unsoot_format_clock (block->ends_at, unsoot_session_zone (session));

  /* Translators: a job on the strip of the day: number, vehicle, customer, from and to, where it
     stands */
  return g_strdup_printf (_ ("Job %d, %s, %s, %s to %s, %s"), (int) block->job_number, block->title,
                          block->customer, from, to, unsoot_job_status_words (status));
}

static void
show_strip (UnsootTodayPage *self, const UnsootDay *day)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  g_autofree UnsootStripItem *items = g_new0 (UnsootStripItem, day->blocks->len);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_auto (GStrv) lanes = lane_names (day);
  const gboolean shut = day->opens_at == 0;

  for (guint i = 0; i < day->blocks->len; i++)
    {
      const UnsootDayBlock *block = g_ptr_array_index (day->blocks, i);
      UnsootJobStatus status = UNSOOT_JOB_BOOKED;

      unsoot_job_status_find (block->status, &status);
      g_ptr_array_add (names, block_name (self, block, status));
      items[i] = (UnsootStripItem){
        .job_id = block->job_id,
        .from = block->starts_at,
        .to = block->ends_at,
        .lane = lane_of (day, block->bay_id),
        .title = block->plate != NULL ? block->plate : block->title,
        .detail = block->plate != NULL ? block->title : block->customer,
        .sides = block->sides,
        .name = g_ptr_array_index (names, i),
        .state = block_state (block, status),
        .progress = shown_progress (block, status),
      };
    }
  unsoot_day_strip_set_day (self->strip, (const char *const *) lanes, day->starts_at,
                            shut ? day->starts_at + USUAL_OPENING : day->opens_at,
                            shut ? day->starts_at + USUAL_CLOSING : day->closes_at,
                            unsoot_session_zone (session), items, day->blocks->len);
  unsoot_day_strip_set_now (self->strip, unsoot_session_now (session));
  gtk_widget_set_visible (GTK_WIDGET (self->nothing_booked), day->blocks->len == 0);
}

static void
show_hours (UnsootTodayPage *self, const UnsootDay *day)
{
  GTimeZone *zone = unsoot_session_zone (unsoot_view_get_session (UNSOOT_VIEW (self)));
  g_autofree char *date = unsoot_format_exact_day (day->date);
  g_autofree char *from = unsoot_format_clock (day->opens_at, zone);
  g_autofree char *to = unsoot_format_clock (day->closes_at, zone);
  g_autofree char *hours = NULL;

  if (day->opens_at != 0)
    /* Translators: the shop's hours of a day */
    hours = g_strdup_printf (_ ("open %s–%s"), from, to);
  else if (day->shut_reason != NULL)
    hours = g_strdup_printf (_ ("shut: %s"), day->shut_reason);
  else
    hours = g_strdup (_ ("shut today"));
  gtk_label_set_text (self->date, date);
  gtk_label_set_text (self->hours, hours);
}

static void
show_hands (UnsootTodayPage *self, const UnsootDay *day)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (self->hands, 0)) != NULL)
    gtk_list_box_remove (self->hands, GTK_WIDGET (row));
  for (guint i = 0; i < day->hands->len; i++)
    gtk_list_box_append (self->hands,
                         unsoot_hand_row_new (g_ptr_array_index (day->hands, i), session));
  gtk_widget_set_visible (GTK_WIDGET (self->hands), day->hands->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->nothing), day->hands->len == 0);
  if (self->n_hands == day->hands->len)
    return;
  self->n_hands = day->hands->len;
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_HANDS]);
}

static void
show_day (UnsootView *view, gpointer result)
{
  UnsootTodayPage *self = UNSOOT_TODAY_PAGE (view);
  g_autoptr (UnsootDay) day = result;

  show_hours (self, day);
  show_strip (self, day);
  show_hands (self, day);
}

static gboolean
tick_cb (gpointer user_data)
{
  UnsootTodayPage *self = user_data;
  UnsootView *view = UNSOOT_VIEW (self);

  unsoot_day_strip_set_now (self->strip, unsoot_session_now (unsoot_view_get_session (view)));
  if (++self->ticks % TICKS_A_READING == 0)
    unsoot_view_reload (view);
  return G_SOURCE_CONTINUE;
}

static void
unsoot_today_page_map (GtkWidget *widget)
{
  UnsootTodayPage *self = UNSOOT_TODAY_PAGE (widget);

  GTK_WIDGET_CLASS (unsoot_today_page_parent_class)->map (widget);
  self->tick_id = g_timeout_add_seconds (SECONDS_A_TICK, tick_cb, self);
}

static void
unsoot_today_page_unmap (GtkWidget *widget)
{
  UnsootTodayPage *self = UNSOOT_TODAY_PAGE (widget);

  g_clear_handle_id (&self->tick_id, g_source_remove);
  GTK_WIDGET_CLASS (unsoot_today_page_parent_class)->unmap (widget);
}

static void
unsoot_today_page_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  switch (id)
    {
    case PROP_HANDS:
      g_value_set_uint (value, UNSOOT_TODAY_PAGE (object)->n_hands);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
unsoot_today_page_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_today_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_TODAY_PAGE);
}

static void
unsoot_today_page_class_init (UnsootTodayPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  object_class->get_property = unsoot_today_page_get_property;
  object_class->dispose = unsoot_today_page_dispose;
  widget_class->map = unsoot_today_page_map;
  widget_class->unmap = unsoot_today_page_unmap;
  view_class->read = read_day;
  view_class->free_result = (GDestroyNotify) unsoot_day_free;
  view_class->show = show_day;
  properties[PROP_HANDS]
      = g_param_spec_uint ("hands", NULL, NULL, 0, G_MAXUINT, 0,
                           G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  g_type_ensure (UNSOOT_TYPE_DAY_STRIP);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/today-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootTodayPage, date);
  gtk_widget_class_bind_template_child (widget_class, UnsootTodayPage, hours);
  gtk_widget_class_bind_template_child (widget_class, UnsootTodayPage, strip);
  gtk_widget_class_bind_template_child (widget_class, UnsootTodayPage, nothing_booked);
  gtk_widget_class_bind_template_child (widget_class, UnsootTodayPage, hands_title);
  gtk_widget_class_bind_template_child (widget_class, UnsootTodayPage, hands);
  gtk_widget_class_bind_template_child (widget_class, UnsootTodayPage, nothing);
}

static void
unsoot_today_page_init (UnsootTodayPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

guint
unsoot_today_page_get_hands (UnsootTodayPage *self)
{
  return self->n_hands;
}
