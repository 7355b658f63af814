/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window.h"

#include <glib/gi18n-lib.h>

#include "daily-copy.h"
#include "booking-page.h"
#include "desk-place.h"
#include "empty-page.h"
#include "first-start.h"
#include "frame.h"
#include "hands-dialog.h"
#include "help.h"
#include "new-choice.h"
#include "settings.h"
#include "shortcuts.h"
#include "trail.h"

enum
{
  DEFAULT_WIDTH = 1280,
  DEFAULT_HEIGHT = 800,
  SHORTCUT_PLACES = 9
};

struct _UnsootWindow
{
  AdwApplicationWindow parent_instance;

  AdwToastOverlay *toasts; /* the content; borrowed */
  UnsootFrame *frame;      /* borrowed while it is the toasts' child */

  /* owned */
  UnsootSession *session;
  UnsootTrail *trail;
  GSettings *settings; /* may be NULL */
};

G_DEFINE_FINAL_TYPE (UnsootWindow, unsoot_window, ADW_TYPE_APPLICATION_WINDOW)

static void
set_content (UnsootWindow *self, GtkWidget *content)
{
  self->frame = UNSOOT_IS_FRAME (content) ? UNSOOT_FRAME (content) : NULL;
  adw_toast_overlay_set_child (self->toasts, content);
}

static void
update_title (UnsootWindow *self)
{
  UnsootView *view = unsoot_window_get_view (self);
  const char *title = view != NULL ? unsoot_view_get_title (view) : NULL;
  g_autofree char *whole = title != NULL ? g_strdup_printf ("%s – Unsoot", title) : NULL;

  gtk_window_set_title (GTK_WINDOW (self), whole != NULL ? whole : "Unsoot");
}

static void
title_changed_cb (UnsootView *view, GParamSpec *pspec, UnsootWindow *self)
{
  update_title (self);
}

static void
update_back (UnsootWindow *self)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.back",
                                 self->frame != NULL && unsoot_trail_can_back (self->trail));
}

static void
show (UnsootWindow *self, const UnsootDeskPlace *place, gint64 record)
{
  UnsootView *view = place->under == NULL ? unsoot_frame_find (self->frame, place) : NULL;

  if (view == NULL)
    {
      view = unsoot_desk_place_create (place, self->session, record);
      if (place->under == NULL)
        unsoot_view_set_title (view, _ (place->title));
      g_signal_connect_object (view, "notify::title", G_CALLBACK (title_changed_cb), self, 0);
    }
  unsoot_frame_show (self->frame, place, view);
  update_title (self);
  update_back (self);
}

gboolean
unsoot_window_open (UnsootWindow *self, const char *slug, gint64 record)
{
  const UnsootDeskPlace *place = unsoot_desk_place_find (slug);

  if (place == NULL || self->frame == NULL)
    return FALSE;
  unsoot_trail_go (self->trail, place->slug, record);
  show (self, place, record);
  return TRUE;
}

static void
open_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  const char *slug;
  gint64 record;

  g_variant_get (parameter, "(&sx)", &slug, &record);
  unsoot_window_open (UNSOOT_WINDOW (widget), slug, record);
}

/* Begins a booking with what was typed. */
static void
begin_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootWindow *self = UNSOOT_WINDOW (widget);

  if (unsoot_window_open (self, "booking", 0))
    unsoot_booking_page_begin_with (UNSOOT_BOOKING_PAGE (unsoot_window_get_view (self)),
                                    g_variant_get_string (parameter, NULL));
}

/* Asked what, knowing the place in front. */
static void
new_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootWindow *self = UNSOOT_WINDOW (widget);
  UnsootView *view = unsoot_window_get_view (self);
  g_autofree char *refusal = view != NULL ? unsoot_new_choice_ask (view) : NULL;

  if (refusal != NULL)
    unsoot_window_toast (self, refusal);
}

static void
help_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  unsoot_help_open (GTK_WINDOW (widget), unsoot_window_get_view (UNSOOT_WINDOW (widget)));
}

static void
back_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootWindow *self = UNSOOT_WINDOW (widget);
  const UnsootTrailStop *stop = self->frame != NULL ? unsoot_trail_back (self->trail) : NULL;

  if (stop != NULL)
    show (self, unsoot_desk_place_find (stop->slug), stop->record);
}

static void
nth_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootWindow *self = UNSOOT_WINDOW (widget);
  const UnsootDeskPlace *place = NULL;

  if (self->frame != NULL)
    place = unsoot_frame_get_nth (self->frame, g_variant_get_uint32 (parameter));
  if (place != NULL)
    unsoot_window_open (self, place->slug, 0);
}

static void
find_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootWindow *self = UNSOOT_WINDOW (widget);

  if (self->frame != NULL)
    unsoot_frame_focus_find (self->frame);
}

static void
menu_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootWindow *self = UNSOOT_WINDOW (widget);

  if (self->frame != NULL)
    unsoot_frame_open_menu (self->frame);
}

static void
places_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootWindow *self = UNSOOT_WINDOW (widget);

  if (self->frame != NULL)
    unsoot_frame_toggle_places (self->frame);
}

static void
hands_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootWindow *self = UNSOOT_WINDOW (widget);

  if (self->session != NULL)
    unsoot_hands_dialog_open (GTK_WINDOW (self), self->session);
}

static void
start_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  unsoot_window_show_start (UNSOOT_WINDOW (widget), NULL);
}

static void
shortcuts_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_window_present (GTK_WINDOW (unsoot_shortcuts_new (GTK_WINDOW (widget))));
}

/* The paper at hand is the view's own affair; most have none. */
static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootView *view = unsoot_window_get_view (UNSOOT_WINDOW (widget));

  if (view != NULL)
    gtk_widget_activate_action (GTK_WIDGET (view), "view.print", NULL);
}

/* The shop again, after a look at the first start. */
static void
return_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootWindow *self = UNSOOT_WINDOW (widget);
  g_autoptr (UnsootSession) session = self->session != NULL ? g_object_ref (self->session) : NULL;

  if (session != NULL)
    unsoot_window_set_session (self, session);
}

static void
remember_size (UnsootWindow *self)
{
  int width, height;

  if (self->settings == NULL)
    return;
  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  g_settings_set_int (self->settings, "window-width", width);
  g_settings_set_int (self->settings, "window-height", height);
  g_settings_set_boolean (self->settings, "window-maximised",
                          gtk_window_is_maximized (GTK_WINDOW (self)));
}

static gboolean
unsoot_window_close_request (GtkWindow *window)
{
  remember_size (UNSOOT_WINDOW (window));
  return GTK_WINDOW_CLASS (unsoot_window_parent_class)->close_request (window);
}

static void
unsoot_window_dispose (GObject *object)
{
  UnsootWindow *self = UNSOOT_WINDOW (object);

  self->frame = NULL;
  g_clear_object (&self->session);
  g_clear_object (&self->settings);
  g_clear_pointer (&self->trail, unsoot_trail_free);
  G_OBJECT_CLASS (unsoot_window_parent_class)->dispose (object);
}

static void
install_actions (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "win.open", "(sx)", open_action);
  gtk_widget_class_install_action (klass, "win.begin", "s", begin_action);
  gtk_widget_class_install_action (klass, "win.new", NULL, new_action);
  gtk_widget_class_install_action (klass, "win.back", NULL, back_action);
  gtk_widget_class_install_action (klass, "win.help", NULL, help_action);
  gtk_widget_class_install_action (klass, "win.nth", "u", nth_action);
  gtk_widget_class_install_action (klass, "win.find", NULL, find_action);
  gtk_widget_class_install_action (klass, "win.menu", NULL, menu_action);
  gtk_widget_class_install_action (klass, "win.places", NULL, places_action);
  gtk_widget_class_install_action (klass, "win.hands", NULL, hands_action);
  gtk_widget_class_install_action (klass, "win.print", NULL, print_action);
  gtk_widget_class_install_action (klass, "win.start", NULL, start_action);
  gtk_widget_class_install_action (klass, "win.return", NULL, return_action);
  gtk_widget_class_install_action (klass, "win.shortcuts", NULL, shortcuts_action);
}

static void
bind_keys (GtkWidgetClass *klass)
{
  const GdkModifierType ctrl = GDK_CONTROL_MASK;

  gtk_widget_class_add_binding_action (klass, GDK_KEY_k, ctrl, "win.find", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_f, ctrl, "win.find", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_l, ctrl, "win.hands", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_n, ctrl, "win.new", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_p, ctrl, "win.print", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_comma, ctrl, "win.open", "(sx)",
                                       "preferences", (gint64) 0);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Left, GDK_ALT_MASK, "win.back", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_F1, 0, "win.help", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_F9, 0, "win.places", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_F10, 0, "win.menu", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_question, ctrl, "win.shortcuts", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_question, ctrl | GDK_SHIFT_MASK,
                                       "win.shortcuts", NULL);
  for (guint i = 0; i < SHORTCUT_PLACES; i++)
    gtk_widget_class_add_binding_action (klass, GDK_KEY_1 + i, ctrl, "win.nth", "u", i);
}

static void
unsoot_window_class_init (UnsootWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = unsoot_window_close_request;
  install_actions (widget_class);
  bind_keys (widget_class);
}

static void
unsoot_window_init (UnsootWindow *self)
{
  int width = DEFAULT_WIDTH, height = DEFAULT_HEIGHT;

  self->trail = unsoot_trail_new ();
  self->settings = unsoot_settings_new ();
  self->toasts = ADW_TOAST_OVERLAY (adw_toast_overlay_new ());
  adw_application_window_set_content (ADW_APPLICATION_WINDOW (self), GTK_WIDGET (self->toasts));
  if (self->settings != NULL)
    {
      width = g_settings_get_int (self->settings, "window-width");
      height = g_settings_get_int (self->settings, "window-height");
      if (g_settings_get_boolean (self->settings, "window-maximised"))
        gtk_window_maximize (GTK_WINDOW (self));
    }
  gtk_window_set_default_size (GTK_WINDOW (self), width, height);
  gtk_window_set_title (GTK_WINDOW (self), "Unsoot");
  gtk_window_set_icon_name (GTK_WINDOW (self), "org.unsoot.Unsoot");
  update_back (self);
}

UnsootWindow *
unsoot_window_new (GtkApplication *application)
{
  return g_object_new (UNSOOT_TYPE_WINDOW, "application", application, NULL);
}

/* Whether what is open stands at the side of the person who is here now. */
static gboolean
may_stay (UnsootWindow *self)
{
  UnsootView *view = unsoot_frame_get_view (self->frame);
  const UnsootDeskPlace *place
      = view != NULL ? unsoot_desk_place_find (unsoot_view_get_slug (view)) : NULL;
  UnsootRole role;

  if (place != NULL && place->under != NULL)
    place = unsoot_desk_place_find (place->under);
  return place != NULL && unsoot_session_get_role (self->session, &role)
         && unsoot_desk_place_is_of (place, role);
}

/* Nothing of the shop is shown to nobody. */
static void
show_gate (UnsootWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *bar = adw_header_bar_new ();
  GtkWidget *page
      = unsoot_empty_page_new ("unsoot-key-symbolic", unsoot_session_get_shop (self->session)->name,
                               _ ("Nobody is at this desk. Say who you are, and the day opens."),
                               _ ("Take the desk"), "win.hands");

  gtk_widget_add_css_class (bar, "flat");
  gtk_widget_set_vexpand (page, TRUE);
  gtk_box_append (GTK_BOX (box), bar);
  gtk_box_append (GTK_BOX (box), page);
  set_content (self, box);
  update_title (self);
  update_back (self);
}

static void
person_changed_cb (UnsootSession *session, GParamSpec *pspec, UnsootWindow *self)
{
  if (session != self->session)
    return;
  if (unsoot_session_get_person (session) == NULL)
    {
      show_gate (self);
      return;
    }
  if (self->frame == NULL)
    set_content (self, unsoot_frame_new (session));
  if (!may_stay (self))
    {
      unsoot_trail_forget (self->trail);
      unsoot_window_open (self, "today", 0);
      unsoot_frame_focus_places (self->frame);
    }
}

void
unsoot_window_set_session (UnsootWindow *self, UnsootSession *session)
{
  g_return_if_fail (UNSOOT_IS_WINDOW (self));

  if (self->session != NULL)
    g_signal_handlers_disconnect_by_func (self->session, person_changed_cb, self);
  g_set_object (&self->session, session);
  unsoot_trail_forget (self->trail);
  set_content (self, NULL);
  g_signal_connect_object (session, "notify::person", G_CALLBACK (person_changed_cb), self, 0);
  person_changed_cb (session, NULL, self);
  if (!unsoot_session_is_demo (session))
    unsoot_daily_copy_start (self, session);
}

UnsootSession *
unsoot_window_get_session (UnsootWindow *self)
{
  return self->session;
}

void
unsoot_window_show_start (UnsootWindow *self, const char *trouble)
{
  g_return_if_fail (UNSOOT_IS_WINDOW (self));

  set_content (self, unsoot_first_start_new (self, trouble));
  update_title (self);
  update_back (self);
}

UnsootView *
unsoot_window_get_view (UnsootWindow *self)
{
  return self->frame != NULL ? unsoot_frame_get_view (self->frame) : NULL;
}

void
unsoot_window_toast (UnsootWindow *self, const char *text)
{
  /* A toast's title is markup. */
  g_autofree char *title = g_markup_escape_text (text, -1);

  adw_toast_overlay_add_toast (self->toasts, adw_toast_new (title));
}
