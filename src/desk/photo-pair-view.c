/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "photo-pair-view.h"

#include <glib/gi18n-lib.h>

#include "access.h"

#define STEP 0.05
#define MOST_HEIGHT 340
#define LEAST_WIDTH 180
#define USUAL_WIDTH 440
#define CHIP_PAD 6

typedef struct
{
  GBytes *jpeg; /* NULL: there is none */
  GdkTexture *texture;
} Half;

struct _UnsootPhotoPairView
{
  GtkWidget parent_instance;

  Half before, after;
  GCancellable *cancellable;
  double aspect; /* height to width of the taller one */
  double split;
  double from; /* where a drag began */
};

G_DEFINE_FINAL_TYPE (UnsootPhotoPairView, unsoot_photo_pair_view, GTK_TYPE_WIDGET)

static gboolean
has_both (UnsootPhotoPairView *self)
{
  return self->before.jpeg != NULL && self->after.jpeg != NULL;
}

static void
tell_split (UnsootPhotoPairView *self)
{
  const int percent = (int) (self->split * 100 + 0.5);
  /* Translators: how much of a picture is shown as it was before the work */
  g_autofree char *text = g_strdup_printf (_ ("%d %% before, the rest after"), percent);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_VALUE_MIN, 0.0,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MAX, 100.0,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_NOW, (double) percent,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, text, -1);
}

void
unsoot_photo_pair_view_set_split (UnsootPhotoPairView *self, double split)
{
  self->split = CLAMP (split, 0.0, 1.0);
  tell_split (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

double
unsoot_photo_pair_view_get_split (UnsootPhotoPairView *self)
{
  return self->split;
}

gboolean
unsoot_photo_pair_view_is_ready (UnsootPhotoPairView *self)
{
  return (self->before.jpeg == NULL || self->before.texture != NULL)
         && (self->after.jpeg == NULL || self->after.texture != NULL);
}

static void
decode (GTask *task, gpointer source, gpointer jpeg, GCancellable *cancellable)
{
  GError *error = NULL;
  GdkTexture *texture = gdk_texture_new_from_bytes (jpeg, &error);

  if (texture != NULL)
    g_task_return_pointer (task, texture, g_object_unref);
  else
    g_task_return_error (task, error);
}

static void
decoded_cb (GObject *source, GAsyncResult *result, gpointer half)
{
  UnsootPhotoPairView *self = UNSOOT_PHOTO_PAIR_VIEW (source);
  g_autoptr (GError) error = NULL;
  GdkTexture *texture = g_task_propagate_pointer (G_TASK (result), &error);

  if (texture == NULL)
    {
      if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
        g_warning ("picture: %s", error->message);
      return;
    }
  ((Half *) half)->texture = texture;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
take (UnsootPhotoPairView *self, Half *half, const UnsootPhotoRow *photo)
{
  g_autoptr (GTask) task = NULL;

  if (photo == NULL)
    return;
  half->jpeg = g_bytes_ref (photo->jpeg);
  if (photo->width > 0)
    self->aspect = MAX (self->aspect, (double) photo->height / (double) photo->width);
  task = g_task_new (self, self->cancellable, decoded_cb, half);
  g_task_set_task_data (task, g_bytes_ref (half->jpeg), (GDestroyNotify) g_bytes_unref);
  g_task_run_in_thread (task, decode);
}

/* As large as it fits, in the middle. */
static graphene_rect_t
place_of (GdkTexture *texture, double width, double height)
{
  const double scale
      = MIN (width / gdk_texture_get_width (texture), height / gdk_texture_get_height (texture));
  const double w = gdk_texture_get_width (texture) * scale;
  const double h = gdk_texture_get_height (texture) * scale;

  return GRAPHENE_RECT_INIT ((float) ((width - w) / 2), (float) ((height - h) / 2), (float) w,
                             (float) h);
}

static void
draw_half (GtkSnapshot *snapshot, const Half *half, double from, double to, double width,
           double height)
{
  graphene_rect_t place;

  if (half->texture == NULL || to <= from)
    return;
  place = place_of (half->texture, width, height);
  gtk_snapshot_push_clip (
      snapshot, &GRAPHENE_RECT_INIT ((float) from, 0, (float) (to - from), (float) height));
  gtk_snapshot_append_texture (snapshot, half->texture, &place);
  gtk_snapshot_pop (snapshot);
}

/* White on a dark ground: readable over any picture. */
static void
draw_chip (UnsootPhotoPairView *self, GtkSnapshot *snapshot, const char *words,
           graphene_rect_t place, gboolean right)
{
  const GdkRGBA ground = { 0, 0, 0, 0.72F }, ink = { 1, 1, 1, 1 };
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), words);
  GskRoundedRect shape;
  int width, height;
  float x;

  pango_layout_get_pixel_size (layout, &width, &height);
  x = right ? place.origin.x + place.size.width - (float) width - 2 * CHIP_PAD
            : place.origin.x + 2 * CHIP_PAD;
  gsk_rounded_rect_init_from_rect (&shape,
                                   &GRAPHENE_RECT_INIT (x - CHIP_PAD, CHIP_PAD,
                                                        (float) width + 2 * CHIP_PAD,
                                                        (float) height + CHIP_PAD),
                                   CHIP_PAD);
  gtk_snapshot_push_rounded_clip (snapshot, &shape);
  gtk_snapshot_append_color (snapshot, &ground, &shape.bounds);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (x, CHIP_PAD * 1.5F));
  gtk_snapshot_append_layout (snapshot, layout, &ink);
  gtk_snapshot_restore (snapshot);
}

static void
draw_divider (UnsootPhotoPairView *self, GtkSnapshot *snapshot, double x, double height)
{
  const GdkRGBA white = { 1, 1, 1, 1 }, edge = { 0, 0, 0, 0.6F };
  GskRoundedRect handle;

  gtk_snapshot_append_color (snapshot, &edge,
                             &GRAPHENE_RECT_INIT ((float) x - 2, 0, 4, (float) height));
  gtk_snapshot_append_color (snapshot, &white,
                             &GRAPHENE_RECT_INIT ((float) x - 1, 0, 2, (float) height));
  gsk_rounded_rect_init_from_rect (
      &handle, &GRAPHENE_RECT_INIT ((float) x - 12, (float) height / 2 - 12, 24, 24), 12);
  gtk_snapshot_push_rounded_clip (snapshot, &handle);
  gtk_snapshot_append_color (snapshot, &white, &handle.bounds);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_append_border (snapshot, &handle, (float[4]){ 2, 2, 2, 2 },
                              (GdkRGBA[4]){ edge, edge, edge, edge });
}

static void
unsoot_photo_pair_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  UnsootPhotoPairView *self = UNSOOT_PHOTO_PAIR_VIEW (widget);
  const double width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  const double x = has_both (self) ? width * self->split : self->before.jpeg != NULL ? width : 0;

  draw_half (snapshot, &self->before, 0, x, width, height);
  draw_half (snapshot, &self->after, x, width, width, height);
  if (self->before.texture != NULL)
    draw_chip (self, snapshot, _ ("Before"), place_of (self->before.texture, width, height), FALSE);
  if (self->after.texture != NULL)
    draw_chip (self, snapshot, _ ("After"), place_of (self->after.texture, width, height), TRUE);
  if (has_both (self))
    draw_divider (self, snapshot, x, height);
}

static GtkSizeRequestMode
unsoot_photo_pair_view_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
unsoot_photo_pair_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                                int *minimum, int *natural, int *minimum_baseline,
                                int *natural_baseline)
{
  UnsootPhotoPairView *self = UNSOOT_PHOTO_PAIR_VIEW (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = LEAST_WIDTH;
      *natural = USUAL_WIDTH;
    }
  else
    *minimum = *natural
        = MIN (MOST_HEIGHT, (int) ((for_size > 0 ? for_size : USUAL_WIDTH) * self->aspect));
}

static void
drag_begin_cb (UnsootPhotoPairView *self, double x, double y)
{
  self->from = x;
  gtk_widget_grab_focus (GTK_WIDGET (self));
  unsoot_photo_pair_view_set_split (self, x / gtk_widget_get_width (GTK_WIDGET (self)));
}

static void
drag_update_cb (UnsootPhotoPairView *self, double dx, double dy)
{
  unsoot_photo_pair_view_set_split (self,
                                    (self->from + dx) / gtk_widget_get_width (GTK_WIDGET (self)));
}

/* By a step, or to an end. */
static gboolean
key_cb (GtkWidget *widget, GVariant *where, gpointer data)
{
  UnsootPhotoPairView *self = UNSOOT_PHOTO_PAIR_VIEW (widget);
  const double by = g_variant_get_double (where);

  if (!has_both (self))
    return FALSE;
  unsoot_photo_pair_view_set_split (self, self->split + by);
  return TRUE;
}

static void
half_clear (Half *half)
{
  g_clear_pointer (&half->jpeg, g_bytes_unref);
  g_clear_object (&half->texture);
}

static void
unsoot_photo_pair_view_dispose (GObject *object)
{
  UnsootPhotoPairView *self = UNSOOT_PHOTO_PAIR_VIEW (object);

  g_cancellable_cancel (self->cancellable);
  half_clear (&self->before);
  half_clear (&self->after);
  G_OBJECT_CLASS (unsoot_photo_pair_view_parent_class)->dispose (object);
}

static void
unsoot_photo_pair_view_finalize (GObject *object)
{
  g_clear_object (&UNSOOT_PHOTO_PAIR_VIEW (object)->cancellable);
  G_OBJECT_CLASS (unsoot_photo_pair_view_parent_class)->finalize (object);
}

static void
unsoot_photo_pair_view_class_init (UnsootPhotoPairViewClass *klass)
{
  static const struct
  {
    guint key;
    double by;
  } keys[] = {
    { GDK_KEY_Left, -STEP }, { GDK_KEY_Right, STEP }, { GDK_KEY_Home, -1.0 }, { GDK_KEY_End, 1.0 }
  };
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_photo_pair_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = unsoot_photo_pair_view_finalize;
  widget_class->snapshot = unsoot_photo_pair_view_snapshot;
  widget_class->measure = unsoot_photo_pair_view_measure;
  widget_class->get_request_mode = unsoot_photo_pair_view_get_request_mode;
  gtk_widget_class_set_css_name (widget_class, "photopair");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_SLIDER);
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding (widget_class, keys[i].key, 0, key_cb, "d", keys[i].by);
}

static void
unsoot_photo_pair_view_init (UnsootPhotoPairView *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();

  self->cancellable = g_cancellable_new ();
  self->split = 0.5;
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

GtkWidget *
unsoot_photo_pair_view_new (const UnsootPhotoPair *pair)
{
  UnsootPhotoPairView *self = g_object_new (UNSOOT_TYPE_PHOTO_PAIR_VIEW, NULL);

  take (self, &self->before, pair->before);
  take (self, &self->after, pair->after);
  gtk_widget_set_focusable (GTK_WIDGET (self), has_both (self));
  if (has_both (self))
    gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "ew-resize");
  unsoot_access_name (GTK_WIDGET (self), pair->angle);
  tell_split (self);
  return GTK_WIDGET (self);
}
