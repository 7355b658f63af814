/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <adwaita.h>

/* The least that a libadwaita program shows: what the bench measures ours against. */

static void
painted_cb (GdkFrameClock *clock, GtkWindow *window)
{
  g_signal_handlers_disconnect_by_func (clock, painted_cb, window);
  g_print ("%" G_GINT64_FORMAT "\n", g_get_monotonic_time ());
  gtk_window_close (window);
}

static void
realized_cb (GtkWidget *window, gpointer user_data)
{
  g_signal_connect (gtk_widget_get_frame_clock (window), "after-paint", G_CALLBACK (painted_cb),
                    window);
}

static void
activate_cb (GtkApplication *application, gpointer user_data)
{
  GtkWidget *window = adw_application_window_new (application);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_append (GTK_BOX (box), adw_header_bar_new ());
  gtk_box_append (GTK_BOX (box), gtk_label_new ("Bare"));
  adw_application_window_set_content (ADW_APPLICATION_WINDOW (window), box);
  gtk_window_set_default_size (GTK_WINDOW (window), 1280, 800);
  g_signal_connect (window, "realize", G_CALLBACK (realized_cb), NULL);
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  g_autoptr (AdwApplication) application
      = adw_application_new ("org.unsoot.Bare", G_APPLICATION_NON_UNIQUE);

  g_signal_connect (application, "activate", G_CALLBACK (activate_cb), NULL);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
