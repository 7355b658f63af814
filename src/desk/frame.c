/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "frame.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "alarm-banner.h"
#include "find-box.h"
#include "person-button.h"
#include "place-row.h"
#include "today-page.h"

struct _UnsootFrame
{
  AdwBin parent_instance;

  /* template */
  AdwFlap *flap;
  GtkLabel *shop_name;
  GtkListBox *places;
  UnsootPersonButton *person;
  UnsootFindBox *find_box;
  UnsootAlarmBanner *alarm;
  GtkMenuButton *menu_button;
  GtkToggleButton *places_button;
  GtkStack *stack;

  /* owned */
  UnsootSession *session;

  UnsootView *record; /* borrowed from the stack */
  gboolean wide;      /* without the places */
};

G_DEFINE_FINAL_TYPE (UnsootFrame, unsoot_frame, ADW_TYPE_BIN)

static void
unsoot_frame_dispose (GObject *object)
{
  UnsootFrame *self = UNSOOT_FRAME (object);

  g_clear_object (&self->session);
  G_OBJECT_CLASS (unsoot_frame_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_FRAME);
}

static void
place_activated_cb (GtkListBox *places, GtkListBoxRow *row, UnsootFrame *self)
{
  const UnsootDeskPlace *place = unsoot_place_row_get_place (UNSOOT_PLACE_ROW (row));

  gtk_widget_activate_action (GTK_WIDGET (self), "win.open", "(sx)", place->slug, (gint64) 0);
  if (adw_flap_get_folded (self->flap))
    adw_flap_set_reveal_flap (self->flap, FALSE);
}

static void
unsoot_frame_class_init (UnsootFrameClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_frame_dispose;
  g_type_ensure (UNSOOT_TYPE_ALARM_BANNER);
  g_type_ensure (UNSOOT_TYPE_FIND_BOX);
  g_type_ensure (UNSOOT_TYPE_PERSON_BUTTON);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/frame.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootFrame, flap);
  gtk_widget_class_bind_template_child (widget_class, UnsootFrame, shop_name);
  gtk_widget_class_bind_template_child (widget_class, UnsootFrame, places);
  gtk_widget_class_bind_template_child (widget_class, UnsootFrame, person);
  gtk_widget_class_bind_template_child (widget_class, UnsootFrame, find_box);
  gtk_widget_class_bind_template_child (widget_class, UnsootFrame, alarm);
  gtk_widget_class_bind_template_child (widget_class, UnsootFrame, menu_button);
  gtk_widget_class_bind_template_child (widget_class, UnsootFrame, places_button);
  gtk_widget_class_bind_template_child (widget_class, UnsootFrame, stack);
  gtk_widget_class_bind_template_callback (widget_class, place_activated_cb);
}

static void
unsoot_frame_init (UnsootFrame *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  unsoot_access_stack (self->stack);
  unsoot_access_name (GTK_WIDGET (gtk_menu_button_get_popover (self->menu_button)),
                      _ ("Main menu"));
}

static UnsootPlaceRow *
row_of (UnsootFrame *self, const char *slug)
{
  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->places)); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    if (g_str_equal (unsoot_place_row_get_place (UNSOOT_PLACE_ROW (row))->slug, slug))
      return UNSOOT_PLACE_ROW (row);
  return NULL;
}

static void
light_place (UnsootFrame *self, const char *slug)
{
  UnsootPlaceRow *row = row_of (self, slug);

  gtk_list_box_select_row (self->places, row != NULL ? GTK_LIST_BOX_ROW (row) : NULL);
}

static void
hands_changed_cb (UnsootTodayPage *today, GParamSpec *pspec, UnsootFrame *self)
{
  UnsootPlaceRow *row = row_of (self, "today");

  if (row != NULL)
    unsoot_place_row_set_count (row, unsoot_today_page_get_hands (today));
}

static void
fill_places (UnsootFrame *self)
{
  const UnsootDeskPlace *places;
  GtkWidget *row;
  UnsootRole role;
  gsize n;

  while ((row = gtk_widget_get_first_child (GTK_WIDGET (self->places))) != NULL)
    gtk_list_box_remove (self->places, row);
  if (!unsoot_session_get_role (self->session, &role))
    return;
  places = unsoot_desk_places (&n);
  for (gsize i = 0; i < n; i++)
    if (unsoot_desk_place_is_of (&places[i], role))
      gtk_list_box_append (self->places, unsoot_place_row_new (&places[i]));
}

static void
person_changed_cb (UnsootSession *session, GParamSpec *pspec, UnsootFrame *self)
{
  UnsootView *today = unsoot_frame_find (self, unsoot_desk_place_find ("today"));
  const char *shown = gtk_stack_get_visible_child_name (self->stack);

  fill_places (self);
  if (today != NULL)
    hands_changed_cb (UNSOOT_TODAY_PAGE (today), NULL, self);
  if (shown != NULL)
    light_place (self, shown);
}

GtkWidget *
unsoot_frame_new (UnsootSession *session)
{
  UnsootFrame *self = g_object_new (UNSOOT_TYPE_FRAME, NULL);

  self->session = g_object_ref (session);
  gtk_label_set_text (self->shop_name, unsoot_session_get_shop (session)->name);
  unsoot_person_button_set_session (self->person, session);
  unsoot_find_box_set_session (self->find_box, session);
  unsoot_alarm_banner_set_session (self->alarm, session);
  g_signal_connect_object (session, "notify::person", G_CALLBACK (person_changed_cb), self, 0);
  fill_places (self);
  return GTK_WIDGET (self);
}

UnsootView *
unsoot_frame_find (UnsootFrame *self, const UnsootDeskPlace *place)
{
  GtkWidget *child = gtk_stack_get_child_by_name (self->stack, place->slug);

  return child != NULL ? UNSOOT_VIEW (child) : NULL;
}

UnsootView *
unsoot_frame_get_view (UnsootFrame *self)
{
  GtkWidget *child = gtk_stack_get_visible_child (self->stack);

  return child != NULL ? UNSOOT_VIEW (child) : NULL;
}

static void
add_view (UnsootFrame *self, const UnsootDeskPlace *place, UnsootView *view)
{
  if (UNSOOT_IS_TODAY_PAGE (view))
    g_signal_connect_object (view, "notify::hands", G_CALLBACK (hands_changed_cb), self, 0);
  gtk_stack_add_named (self->stack, GTK_WIDGET (view), place->under == NULL ? place->slug : NULL);
}

/* The bay is read from an arm's length and takes the whole width. */
static void
make_room (UnsootFrame *self, gboolean wide)
{
  if (wide == self->wide)
    return;
  self->wide = wide;
  /* Unlocked, it would come back by itself as soon as there is room. */
  adw_flap_set_locked (self->flap, wide);
  adw_flap_set_reveal_flap (self->flap, !wide && !adw_flap_get_folded (self->flap));
}

void
unsoot_frame_show (UnsootFrame *self, const UnsootDeskPlace *place, UnsootView *view)
{
  UnsootView *former = self->record;

  if (gtk_widget_get_parent (GTK_WIDGET (view)) == NULL)
    add_view (self, place, view);
  make_room (self, g_str_equal (place->slug, "bay"));
  gtk_stack_set_visible_child (self->stack, GTK_WIDGET (view));
  self->record = place->under != NULL ? view : NULL;
  if (former != NULL && former != view)
    gtk_stack_remove (self->stack, GTK_WIDGET (former));
  light_place (self, place->under != NULL ? place->under : place->slug);
}

void
unsoot_frame_focus_places (UnsootFrame *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->places);

  if (row != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (row));
}

const UnsootDeskPlace *
unsoot_frame_get_nth (UnsootFrame *self, guint n)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->places, (int) n);

  return row != NULL ? unsoot_place_row_get_place (UNSOOT_PLACE_ROW (row)) : NULL;
}

void
unsoot_frame_focus_find (UnsootFrame *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->find_box));
}

void
unsoot_frame_open_menu (UnsootFrame *self)
{
  gtk_menu_button_popup (self->menu_button);
}

void
unsoot_frame_toggle_places (UnsootFrame *self)
{
  adw_flap_set_reveal_flap (self->flap, !adw_flap_get_reveal_flap (self->flap));
}
