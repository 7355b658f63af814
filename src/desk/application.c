/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "application.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <stdlib.h>

#include "demo-making.h"
#include "first-start.h"
#include "opening.h"
#include "portrait.h"
#include "settings.h"
#include "shop-files.h"
#include "window.h"

enum
{
  BLANK_AFTER_MS = 400 /* a window that waits longer than this for its shop is shown empty */
};

struct _UnsootApplication
{
  AdwApplication parent_instance;

  /* options */
  gboolean demo;
  char *file;
  char *size;
  gboolean dark;
  UnsootPortrait portrait;

  /* owned */
  GSettings *settings; /* may be NULL */
  UnsootSession *session;
  GError *trouble;
  GCancellable *cancellable;

  UnsootWindow *window; /* borrowed from the application's list */
  UnsootSession *last;  /* weak: alive without a window while an alarm is due */
  guint blank_id;
  int status;
  gboolean opening; /* under way */
  gboolean no_shop; /* nothing to open yet: the first start */
};

G_DEFINE_FINAL_TYPE (UnsootApplication, unsoot_application, ADW_TYPE_APPLICATION)

static void
set_size (UnsootApplication *self)
{
  int width, height;

  if (self->size == NULL)
    return;
  if (sscanf (self->size, "%dx%d", &width, &height) == 2)
    gtk_window_set_default_size (GTK_WINDOW (self->window), width, height);
  else
    g_printerr (_ ("“%s” is not a size: write it as 1280x800.\n"), self->size);
}

/* Both are there now: the window, and what came of opening the shop. */
static void
fill_window (UnsootApplication *self)
{
  const gboolean sits = self->portrait.picture != NULL || self->portrait.first_frame;

  g_clear_handle_id (&self->blank_id, g_source_remove);
  if (self->session != NULL)
    {
      unsoot_window_set_session (self->window, self->session);
      g_set_weak_pointer (&self->last, self->session);
      g_clear_object (&self->session);
    }
  else
    unsoot_window_show_start (self->window, self->trouble != NULL ? self->trouble->message : NULL);
  if (sits && self->trouble != NULL)
    {
      g_printerr ("%s\n", self->trouble->message);
      self->status = EXIT_FAILURE;
      gtk_window_destroy (GTK_WINDOW (self->window));
      return;
    }
  if (sits)
    unsoot_portrait_begin (self->window, &self->portrait, &self->status);
  else if (self->portrait.place != NULL)
    unsoot_window_open (self->window, self->portrait.place, self->portrait.record);
  gtk_window_present (GTK_WINDOW (self->window));
}

static void
opened_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (UnsootApplication) self = user_data;

  self->opening = FALSE;
  self->session = unsoot_opening_finish (result, &self->trouble);
  if (self->window != NULL)
    fill_window (self);
}

static void
open_path (UnsootApplication *self, const char *path, UnsootDbFlags flags, gboolean demo,
           UnsootDemoMaking *making)
{
  self->opening = TRUE;
  unsoot_opening_async (path, flags, demo, making != NULL ? unsoot_demo_making_func : NULL, making,
                        (GDestroyNotify) unsoot_demo_making_unref, self->cancellable, opened_cb,
                        g_object_ref (self));
}

/* Pictures and the bench want the demo at once; a person gets the page with its progress. */
static void
open_demo (UnsootApplication *self)
{
  const gint64 now = g_get_real_time () / G_USEC_PER_SEC;
  g_autofree char *lately = unsoot_shop_files_demo (now);
  g_autofree char *fresh = NULL;

  if (lately != NULL)
    {
      open_path (self, lately, 0, TRUE, NULL);
      return;
    }
  if (self->portrait.picture == NULL && !self->portrait.first_frame && self->portrait.place == NULL)
    return;
  fresh = unsoot_shop_files_new_demo (now);
  open_path (self, fresh, UNSOOT_DB_CREATE, TRUE, unsoot_demo_making_new (now));
}

static void
open_usual (UnsootApplication *self)
{
  g_autofree char *path = unsoot_shop_files_usual ();

  self->no_shop = !g_file_test (path, G_FILE_TEST_EXISTS);
  if (!self->no_shop)
    open_path (self, path, 0, FALSE, NULL);
}

/* Runs before the toolkit starts, so that the worker reads the file meanwhile. */
static int
unsoot_application_handle_local_options (GApplication *application, GVariantDict *options)
{
  UnsootApplication *self = UNSOOT_APPLICATION (application);

  if (self->demo)
    open_demo (self);
  else if (self->file != NULL)
    open_path (self, self->file, 0, FALSE, NULL);
  else
    open_usual (self);
  return -1;
}

static gboolean
show_blank_cb (gpointer user_data)
{
  UnsootApplication *self = user_data;

  self->blank_id = 0;
  gtk_window_present (GTK_WINDOW (self->window));
  return G_SOURCE_REMOVE;
}

static void
begin_demo (UnsootApplication *self)
{
  AdwToastOverlay *content = ADW_TOAST_OVERLAY (
      adw_application_window_get_content (ADW_APPLICATION_WINDOW (self->window)));

  unsoot_first_start_demo (UNSOOT_FIRST_START (adw_toast_overlay_get_child (content)));
}

static void
unsoot_application_activate (GApplication *application)
{
  UnsootApplication *self = UNSOOT_APPLICATION (application);

  if (self->window != NULL)
    {
      gtk_window_present (GTK_WINDOW (self->window));
      return;
    }
  self->window = unsoot_window_new (GTK_APPLICATION (self));
  g_object_add_weak_pointer (G_OBJECT (self->window), (gpointer *) &self->window);
  set_size (self);
  if (self->opening)
    {
      self->blank_id = g_timeout_add (BLANK_AFTER_MS, show_blank_cb, self);
      return;
    }
  fill_window (self);
  if (self->demo && unsoot_window_get_session (self->window) == NULL && self->trouble == NULL)
    begin_demo (self);
}

static void
about_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  UnsootApplication *self = user_data;

  adw_show_about_window (GTK_WINDOW (self->window), "application-name", "Unsoot",
                         "application-icon", "org.unsoot.Unsoot", "version", UNSOOT_VERSION,
                         "license-type", GTK_LICENSE_GPL_3_0, "comments",
                         _ ("The working book of a shop that cleans diesel fuel systems, intakes "
                            "and EGR coolers."),
                         NULL);
}

static void
quit_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  UnsootApplication *self = user_data;

  if (self->window != NULL)
    gtk_window_close (GTK_WINDOW (self->window));
}

/* From the notification of an alarm, with or without a window. */
static void
bay_action (GSimpleAction *action, GVariant *job, gpointer user_data)
{
  UnsootApplication *self = user_data;

  if (self->window == NULL && self->last != NULL)
    {
      self->window = unsoot_window_new (GTK_APPLICATION (self));
      g_object_add_weak_pointer (G_OBJECT (self->window), (gpointer *) &self->window);
      unsoot_window_set_session (self->window, self->last);
    }
  if (self->window == NULL)
    return;
  unsoot_window_open (self->window, "bay", g_variant_get_int64 (job));
  gtk_window_present (GTK_WINDOW (self->window));
}

static void
use_scheme (const char *scheme)
{
  AdwColorScheme wanted = ADW_COLOR_SCHEME_DEFAULT;

  if (g_str_equal (scheme, "light"))
    wanted = ADW_COLOR_SCHEME_FORCE_LIGHT;
  else if (g_str_equal (scheme, "dark"))
    wanted = ADW_COLOR_SCHEME_FORCE_DARK;
  adw_style_manager_set_color_scheme (adw_style_manager_get_default (), wanted);
}

static void
scheme_action (GSimpleAction *action, GVariant *state, gpointer user_data)
{
  UnsootApplication *self = user_data;
  const char *scheme = g_variant_get_string (state, NULL);

  use_scheme (scheme);
  g_simple_action_set_state (action, state);
  if (self->settings != NULL)
    g_settings_set_string (self->settings, "colour-scheme", scheme);
}

static void
add_actions (UnsootApplication *self, const char *scheme)
{
  static const GActionEntry entries[]
      = { { .name = "about", .activate = about_action },
          { .name = "bay", .activate = bay_action, .parameter_type = "x" },
          { .name = "quit", .activate = quit_action } };
  static const char *const quit_keys[] = { "<Control>q", NULL };
  g_autoptr (GSimpleAction) colour = g_simple_action_new_stateful (
      "colour-scheme", G_VARIANT_TYPE_STRING, g_variant_new_string (scheme));

  g_signal_connect (colour, "change-state", G_CALLBACK (scheme_action), self);
  g_action_map_add_action (G_ACTION_MAP (self), G_ACTION (colour));
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  gtk_application_set_accels_for_action (GTK_APPLICATION (self), "app.quit", quit_keys);
}

static void
unsoot_application_startup (GApplication *application)
{
  UnsootApplication *self = UNSOOT_APPLICATION (application);
  g_autofree char *scheme = NULL;

  G_APPLICATION_CLASS (unsoot_application_parent_class)->startup (application);
  self->settings = unsoot_settings_new ();
  if (self->dark)
    scheme = g_strdup ("dark");
  else if (self->settings != NULL)
    scheme = g_settings_get_string (self->settings, "colour-scheme");
  else
    scheme = g_strdup ("system");
  use_scheme (scheme);
  add_actions (self, scheme);
}

static void
unsoot_application_dispose (GObject *object)
{
  UnsootApplication *self = UNSOOT_APPLICATION (object);

  g_clear_handle_id (&self->blank_id, g_source_remove);
  g_clear_weak_pointer (&self->window);
  g_clear_weak_pointer (&self->last);
  g_clear_object (&self->settings);
  g_clear_object (&self->session);
  g_clear_object (&self->cancellable);
  g_clear_error (&self->trouble);
  G_OBJECT_CLASS (unsoot_application_parent_class)->dispose (object);
}

static void
unsoot_application_finalize (GObject *object)
{
  UnsootApplication *self = UNSOOT_APPLICATION (object);

  g_free (self->file);
  g_free (self->size);
  g_free (self->portrait.place);
  g_free (self->portrait.picture);
  G_OBJECT_CLASS (unsoot_application_parent_class)->finalize (object);
}

static void
unsoot_application_class_init (UnsootApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_application_dispose;
  G_OBJECT_CLASS (klass)->finalize = unsoot_application_finalize;
  application_class->handle_local_options = unsoot_application_handle_local_options;
  application_class->startup = unsoot_application_startup;
  application_class->activate = unsoot_application_activate;
}

static void
unsoot_application_init (UnsootApplication *self)
{
  const GOptionFlags hidden = G_OPTION_FLAG_HIDDEN;
  UnsootPortrait *portrait = &self->portrait;
  const GOptionEntry options[]
      = { { "demo", 0, 0, G_OPTION_ARG_NONE, &self->demo, N_ ("Open an invented shop"), NULL },
          { "file", 0, 0, G_OPTION_ARG_FILENAME, &self->file, N_ ("Open the shop kept in FILE"),
            N_ ("FILE") },
          { "place", 0, hidden, G_OPTION_ARG_STRING, &portrait->place, NULL, NULL },
          { "record", 0, hidden, G_OPTION_ARG_INT64, &portrait->record, NULL, NULL },
          { "picture", 0, hidden, G_OPTION_ARG_FILENAME, &portrait->picture, NULL, NULL },
          { "first-frame", 0, hidden, G_OPTION_ARG_NONE, &portrait->first_frame, NULL, NULL },
          { "size", 0, hidden, G_OPTION_ARG_STRING, &self->size, NULL, NULL },
          { "dark", 0, hidden, G_OPTION_ARG_NONE, &self->dark, NULL, NULL },
          { NULL } };

  g_application_add_main_option_entries (G_APPLICATION (self), options);
  self->cancellable = g_cancellable_new ();
  self->status = EXIT_SUCCESS;
}

UnsootApplication *
unsoot_application_new (void)
{
  return g_object_new (UNSOOT_TYPE_APPLICATION, "application-id", "org.unsoot.Unsoot", "flags",
                       G_APPLICATION_NON_UNIQUE, NULL);
}

int
unsoot_application_get_status (UnsootApplication *self)
{
  return self->status;
}
