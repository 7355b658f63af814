/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <stdlib.h>

#include "picture.h"
#include "unsoot-resources.h"

enum
{
  DEFAULT_WIDTH = 1280,
  DEFAULT_HEIGHT = 800,
  FRAMES_UNTIL_STILL = 3
};

typedef struct
{
  char *picture;
  char *size;
  gboolean dark;
  guint frames;
  int status;
} Desk;

static gboolean
picture_when_still_cb (GtkWidget *window, GdkFrameClock *clock, gpointer user_data)
{
  Desk *desk = user_data;
  g_autoptr (GError) error = NULL;

  if (++desk->frames < FRAMES_UNTIL_STILL)
    {
      gdk_frame_clock_request_phase (clock, GDK_FRAME_CLOCK_PHASE_PAINT);
      return G_SOURCE_CONTINUE;
    }
  if (!unsoot_picture_save (GTK_WINDOW (window), desk->picture, &error))
    {
      g_printerr ("%s\n", error->message);
      desk->status = EXIT_FAILURE;
    }
  gtk_window_close (GTK_WINDOW (window));
  return G_SOURCE_REMOVE;
}

static void
set_size (GtkWindow *window, const char *size)
{
  int width = DEFAULT_WIDTH, height = DEFAULT_HEIGHT;

  if (size != NULL && sscanf (size, "%dx%d", &width, &height) != 2)
    g_printerr (_ ("“%s” is not a size: write it as 1280x800.\n"), size);
  gtk_window_set_default_size (window, width, height);
}

static void
activate_cb (GApplication *application, gpointer user_data)
{
  Desk *desk = user_data;
  GtkWidget *window = adw_application_window_new (GTK_APPLICATION (application));
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *page = adw_status_page_new ();

  adw_status_page_set_icon_name (ADW_STATUS_PAGE (page), "org.unsoot.Unsoot");
  adw_status_page_set_title (ADW_STATUS_PAGE (page), "Unsoot");
  gtk_widget_set_vexpand (page, TRUE);
  gtk_box_append (GTK_BOX (box), adw_header_bar_new ());
  gtk_box_append (GTK_BOX (box), page);
  adw_application_window_set_content (ADW_APPLICATION_WINDOW (window), box);
  gtk_window_set_title (GTK_WINDOW (window), "Unsoot");
  set_size (GTK_WINDOW (window), desk->size);
  if (desk->dark)
    adw_style_manager_set_color_scheme (adw_style_manager_get_default (),
                                        ADW_COLOR_SCHEME_FORCE_DARK);
  if (desk->picture != NULL)
    {
      unsoot_picture_prepare (GTK_WINDOW (window));
      gtk_widget_add_tick_callback (window, picture_when_still_cb, desk, NULL);
    }
  gtk_window_present (GTK_WINDOW (window));
}

int
unsoot_desk_main (int argc, char **argv)
{
  Desk desk = { 0 };
  g_autofree char *place = NULL, *file = NULL;
  gboolean demo = FALSE;
  const GOptionFlags hidden = G_OPTION_FLAG_HIDDEN;
  const GOptionEntry options[]
      = { { "demo", 0, 0, G_OPTION_ARG_NONE, &demo, N_ ("Open an invented shop"), NULL },
          { "file", 0, 0, G_OPTION_ARG_FILENAME, &file, N_ ("Open the shop kept in FILE"),
            N_ ("FILE") },
          { "place", 0, hidden, G_OPTION_ARG_STRING, &place, NULL, NULL },
          { "picture", 0, hidden, G_OPTION_ARG_FILENAME, &desk.picture, NULL, NULL },
          { "size", 0, hidden, G_OPTION_ARG_STRING, &desk.size, NULL, NULL },
          { "dark", 0, hidden, G_OPTION_ARG_NONE, &desk.dark, NULL, NULL },
          { NULL } };
  g_autoptr (AdwApplication) application = NULL;
  int status;

  g_resources_register (unsoot_desk_get_resource ());
  application = adw_application_new ("org.unsoot.Unsoot", G_APPLICATION_NON_UNIQUE);
  g_application_add_main_option_entries (G_APPLICATION (application), options);
  g_signal_connect (application, "activate", G_CALLBACK (activate_cb), &desk);
  status = g_application_run (G_APPLICATION (application), argc, argv);
  g_free (desk.picture);
  g_free (desk.size);
  return status != EXIT_SUCCESS ? status : desk.status;
}
