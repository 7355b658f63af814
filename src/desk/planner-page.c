/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-page.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "civil.h"
#include "format.h"
#include "planner-board.h"
#include "planner-file.h"
#include "planner-hold.h"
#include "planner-words.h"
#include "service-row.h"

enum
{
  HOUR = 3600,
  USUAL_OPENING = 8 * HOUR, /* of a day on which the shop is shut */
  USUAL_CLOSING = 17 * HOUR
};

struct _UnsootPlannerPage
{
  UnsootView parent_instance;

  /* template */
  GtkLabel *date;
  GtkLabel *hours;
  GtkToggleButton *more;
  GtkDropDown *service;
  UnsootPlannerBoard *board;
  GtkLabel *verdict;

  /* owned */
  char *day; /* ISO date; NULL: today */
  UnsootPlannerFile *file;
  GArray *items; /* UnsootPlannerItem, as the board's blocks */
  UnsootPlannerHold *hold;

  gint64 service_id;
  gboolean filling; /* the list of services is being filled */
};

G_DEFINE_FINAL_TYPE (UnsootPlannerPage, unsoot_planner_page, UNSOOT_TYPE_VIEW)

static void
planner_ask (UnsootView *view, UnsootViewQuery *query)
{
  UnsootPlannerPage *self = UNSOOT_PLANNER_PAGE (view);

  if (self->day != NULL)
    g_strlcpy (query->filter, self->day, sizeof query->filter);
  query->record = self->service_id;
}

static gpointer
read_planner (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;

  return unsoot_planner_file_load (db, *query->filter != '\0' ? query->filter : NULL, query->record,
                                   query->now, error);
}

static void
show_hours (UnsootPlannerPage *self)
{
  const UnsootDay *day = self->file->day;
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  g_autofree char *date = unsoot_format_exact_day (day->date);
  g_autofree char *hours = unsoot_planner_hours_words (day, unsoot_session_zone (session));
  g_autofree char *title = g_strdup_printf ("%s, %s", _ ("Planner"), date);

  gtk_label_set_text (self->date, date);
  gtk_label_set_text (self->hours, hours);
  unsoot_view_set_title (UNSOOT_VIEW (self), title);
}

static guint
n_lanes (UnsootPlannerPage *self)
{
  guint n = 0;

  if (gtk_toggle_button_get_active (self->more))
    return self->file->lanes->len;
  while (n < self->file->lanes->len
         && ((const UnsootPlannerLane *) g_ptr_array_index (self->file->lanes, n))->kind
                == UNSOOT_LANE_BAY)
    n++;
  return n;
}

static void
collect_items (UnsootPlannerPage *self, GArray *strip_items, GPtrArray *names)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const guint n = n_lanes (self);

  g_array_set_size (self->items, 0);
  for (guint i = 0; i < self->file->bookings->len; i++)
    for (guint lane = 0; lane < n; lane++)
      {
        const UnsootPlannerItem item = { g_ptr_array_index (self->file->bookings, i),
                                         g_ptr_array_index (self->file->lanes, lane) };
        UnsootStripItem strip_item;
        char *name;

        if (!unsoot_planner_holds (item.booking, item.lane))
          continue;
        name = unsoot_planner_block_name (item.booking->block, item.lane->name,
                                          unsoot_session_zone (session));
        g_ptr_array_add (names, name);
        strip_item = unsoot_planner_strip_item (item.booking->block, (int) lane, name);
        g_array_append_val (self->items, item);
        g_array_append_val (strip_items, strip_item);
      }
}

static void
show_free (UnsootPlannerPage *self)
{
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (UnsootStripSpan));

  for (guint i = 0; i < self->file->free->len; i++)
    {
      const UnsootPlannerFree *free = &g_array_index (self->file->free, UnsootPlannerFree, i);
      for (guint lane = 0; lane < n_lanes (self); lane++)
        {
          const UnsootPlannerLane *its = g_ptr_array_index (self->file->lanes, lane);
          const UnsootStripSpan span = { free->from, free->to, (int) lane };
          if (its->kind == UNSOOT_LANE_BAY && its->id == free->bay_id)
            g_array_append_val (spans, span);
        }
    }
  unsoot_planner_board_set_free (self->board, (const UnsootStripSpan *) (gconstpointer) spans->data,
                                 spans->len);
}

static void
say_how (UnsootPlannerPage *self)
{
  g_autofree char *free = NULL;

  if (self->service_id != 0)
    free = unsoot_planner_free_words (
        self->file->free, self->file->lanes,
        unsoot_session_zone (unsoot_view_get_session (UNSOOT_VIEW (self))));
  unsoot_planner_hold_set_idle (
      self->hold,
      free != NULL ? free
      : self->items->len > 0
          ? _ ("Drag a block to move it, its ends to stretch it. By keyboard: Ctrl and the arrows, "
               "Shift as well to stretch; Return lets go, Escape gives up.")
          : _ ("Nothing is booked for this day."),
      free == NULL);
}

static void
show_board (UnsootPlannerPage *self)
{
  const UnsootDay *day = self->file->day;
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const gboolean shut = day->opens_at == 0;
  g_autoptr (GStrvBuilder) lanes = g_strv_builder_new ();
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GArray) items = g_array_new (FALSE, FALSE, sizeof (UnsootStripItem));
  g_auto (GStrv) lane_names = NULL;

  for (guint i = 0; i < n_lanes (self); i++)
    g_strv_builder_add (
        lanes, ((const UnsootPlannerLane *) g_ptr_array_index (self->file->lanes, i))->name);
  lane_names = g_strv_builder_end (lanes);
  collect_items (self, items, names);
  unsoot_planner_hold_set_day (self->hold, self->file, self->items);
  unsoot_planner_board_set_day (self->board, (const char *const *) lane_names, day->starts_at,
                                shut ? day->starts_at + USUAL_OPENING : day->opens_at,
                                shut ? day->starts_at + USUAL_CLOSING : day->closes_at,
                                unsoot_session_zone (session),
                                (const UnsootStripItem *) (gconstpointer) items->data, items->len);
  unsoot_planner_board_set_now (self->board, unsoot_session_now (session));
  show_free (self);
  say_how (self);
  unsoot_planner_hold_restore_focus (self->hold);
}

static void
fill_services (UnsootPlannerPage *self)
{
  GtkStringList *words = gtk_string_list_new (NULL);
  guint chosen = 0;

  self->filling = TRUE;
  gtk_string_list_append (words, _ ("Free times: none shown"));
  for (guint i = 0; i < self->file->services->len; i++)
    {
      const UnsootServiceRow *service = g_ptr_array_index (self->file->services, i);
      /* Translators: a service for which free times are shown */
      g_autofree char *text = g_strdup_printf (_ ("Free for: %s"), service->name);
      gtk_string_list_append (words, text);
      if (service->id == self->service_id)
        chosen = i + 1;
    }
  gtk_drop_down_set_model (self->service, G_LIST_MODEL (words));
  gtk_drop_down_set_selected (self->service, chosen);
  g_object_unref (words);
  self->filling = FALSE;
}

static void
show_planner (UnsootView *view, gpointer result)
{
  UnsootPlannerPage *self = UNSOOT_PLANNER_PAGE (view);

  if (self->hold == NULL)
    self->hold
        = unsoot_planner_hold_new (unsoot_view_get_session (view), self->board, self->verdict);
  unsoot_planner_hold_set_day (self->hold, NULL, NULL);
  /* The blocks refer to the former file until they are made anew. */
  g_array_set_size (self->items, 0);
  g_clear_pointer (&self->file, unsoot_planner_file_free);
  self->file = result;
  show_hours (self);
  fill_services (self);
  show_board (self);
}

/* Takes @day. */
static void
go_to (UnsootPlannerPage *self, char *day)
{
  g_free (self->day);
  self->day = day;
  unsoot_view_reload (UNSOOT_VIEW (self));
}

static void
turn (UnsootPlannerPage *self, int days)
{
  g_autofree char *today = unsoot_session_today (unsoot_view_get_session (UNSOOT_VIEW (self)));
  int day;

  if (unsoot_day_parse (self->day != NULL ? self->day : today, &day, NULL))
    go_to (self, unsoot_day_iso (day + days));
}

static void
before_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  turn (UNSOOT_PLANNER_PAGE (widget), -1);
}

static void
after_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  turn (UNSOOT_PLANNER_PAGE (widget), 1);
}

static void
today_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  go_to (UNSOOT_PLANNER_PAGE (widget), NULL);
}

static void
more_cb (GtkToggleButton *button, UnsootPlannerPage *self)
{
  if (self->file != NULL)
    show_board (self);
}

static void
service_cb (GtkDropDown *chooser, GParamSpec *pspec, UnsootPlannerPage *self)
{
  const guint chosen = gtk_drop_down_get_selected (chooser);

  if (self->filling || self->file == NULL)
    return;
  self->service_id
      = chosen > 0 && chosen <= self->file->services->len
            ? ((const UnsootServiceRow *) g_ptr_array_index (self->file->services, chosen - 1))->id
            : 0;
  unsoot_view_reload (UNSOOT_VIEW (self));
}

static void
unsoot_planner_page_dispose (GObject *object)
{
  UnsootPlannerPage *self = UNSOOT_PLANNER_PAGE (object);

  if (self->hold != NULL)
    unsoot_planner_hold_close (self->hold);
  g_clear_object (&self->hold);
  g_clear_pointer (&self->items, g_array_unref);
  g_clear_pointer (&self->file, unsoot_planner_file_free);
  g_clear_pointer (&self->day, g_free);
  G_OBJECT_CLASS (unsoot_planner_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_PLANNER_PAGE);
}

static void
unsoot_planner_page_class_init (UnsootPlannerPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_planner_page_dispose;
  view_class->ask = planner_ask;
  view_class->read = read_planner;
  view_class->free_result = (GDestroyNotify) unsoot_planner_file_free;
  view_class->show = show_planner;
  g_type_ensure (UNSOOT_TYPE_PLANNER_BOARD);
  gtk_widget_class_install_action (widget_class, "planner.before", NULL, before_action);
  gtk_widget_class_install_action (widget_class, "planner.after", NULL, after_action);
  gtk_widget_class_install_action (widget_class, "planner.today", NULL, today_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Page_Up, GDK_ALT_MASK,
                                       "planner.before", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Page_Down, GDK_ALT_MASK,
                                       "planner.after", NULL);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/planner-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootPlannerPage, date);
  gtk_widget_class_bind_template_child (widget_class, UnsootPlannerPage, hours);
  gtk_widget_class_bind_template_child (widget_class, UnsootPlannerPage, more);
  gtk_widget_class_bind_template_child (widget_class, UnsootPlannerPage, service);
  gtk_widget_class_bind_template_child (widget_class, UnsootPlannerPage, board);
  gtk_widget_class_bind_template_child (widget_class, UnsootPlannerPage, verdict);
  gtk_widget_class_bind_template_callback (widget_class, more_cb);
  gtk_widget_class_bind_template_callback (widget_class, service_cb);
}

static void
unsoot_planner_page_init (UnsootPlannerPage *self)
{
  self->items = g_array_new (FALSE, FALSE, sizeof (UnsootPlannerItem));
  gtk_widget_init_template (GTK_WIDGET (self));
  unsoot_access_name_inside (GTK_WIDGET (self->service), _ ("Free times for which service"));
}
