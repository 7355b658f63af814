/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture.h"

#include <glib/gi18n-lib.h>

static const char FRAMELESS[] = "window, window.solid-csd { margin: 0; padding: 0; border: none;"
                                " border-radius: 0; box-shadow: none; }";

void
unsoot_picture_prepare (GtkWindow *window)
{
  g_autoptr (GtkCssProvider) provider = gtk_css_provider_new ();

  gtk_css_provider_load_from_data (provider, FRAMELESS, -1);
  gtk_style_context_add_provider_for_display (gtk_widget_get_display (GTK_WIDGET (window)),
                                              GTK_STYLE_PROVIDER (provider),
                                              GTK_STYLE_PROVIDER_PRIORITY_USER);
}

static GskRenderNode *
render_node_of (GtkWidget *widget)
{
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (widget);
  GtkSnapshot *snapshot = gtk_snapshot_new ();

  gdk_paintable_snapshot (paintable, snapshot, gtk_widget_get_width (widget),
                          gtk_widget_get_height (widget));
  return gtk_snapshot_free_to_node (snapshot);
}

gboolean
unsoot_picture_save (GtkWindow *window, const char *file, GError **error)
{
  GskRenderer *renderer = gtk_native_get_renderer (GTK_NATIVE (window));
  GskRenderNode *node = renderer ? render_node_of (GTK_WIDGET (window)) : NULL;
  g_autoptr (GdkTexture) texture = NULL;

  if (node == NULL)
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_NOT_INITIALIZED,
                           _ ("The window is not drawn yet, so there is nothing to picture."));
      return FALSE;
    }
  texture = gsk_renderer_render_texture (renderer, node, NULL);
  gsk_render_node_unref (node);
  if (!gdk_texture_save_to_png (texture, file))
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED,
                   _ ("The picture could not be written to “%s”. Check the folder and its rights."),
                   file);
      return FALSE;
    }
  return TRUE;
}
