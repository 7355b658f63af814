/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "machine-drawing.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "format.h"
#include "machine-paint.h"
#include "side-mark.h"
#include "unit.h"

enum
{
  FRAME_MS = 120, /* slow: seen from the corner of an eye, cheap on an old computer */
  STRIDE = 3      /* px a frame */
};

struct _UnsootMachineDrawing
{
  GtkWidget parent_instance;

  GtkWidget *part[UNSOOT_MACHINE_PARTS]; /* buttons, children */
  GtkLabel *words[UNSOOT_MACHINE_PARTS]; /* in them; borrowed */
  GtkWidget *lock[UNSOOT_MACHINE_PARTS]; /* in them; borrowed */
  GtkWidget *bubble;                     /* child */
  GtkLabel *bubble_words;                /* in it; borrowed */

  char *reason[UNSOOT_MACHINE_PARTS]; /* owned; NULL: not locked */
  UnsootMachinePlan plan;
  UnsootMachineState state;
  guint frame_id;
  int offset;
};

G_DEFINE_FINAL_TYPE (UnsootMachineDrawing, unsoot_machine_drawing, GTK_TYPE_WIDGET)

static gboolean
next_frame_cb (gpointer user_data)
{
  UnsootMachineDrawing *self = user_data;

  self->offset += STRIDE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return G_SOURCE_CONTINUE;
}

static gboolean
has_animations (GtkWidget *widget)
{
  gboolean on = TRUE;

  g_object_get (gtk_widget_get_settings (widget), "gtk-enable-animations", &on, NULL);
  return on;
}

static void
follow_motion (UnsootMachineDrawing *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  const gboolean moves = gtk_widget_get_mapped (widget) && has_animations (widget)
                         && unsoot_machine_state_moves (&self->state);

  if (moves && self->frame_id == 0)
    self->frame_id = g_timeout_add (FRAME_MS, next_frame_cb, self);
  else if (!moves)
    g_clear_handle_id (&self->frame_id, g_source_remove);
}

gboolean
unsoot_machine_drawing_is_moving (UnsootMachineDrawing *self)
{
  return self->frame_id != 0;
}

static void
unsoot_machine_drawing_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (unsoot_machine_drawing_parent_class)->map (widget);
  follow_motion (UNSOOT_MACHINE_DRAWING (widget));
}

static void
unsoot_machine_drawing_unmap (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (unsoot_machine_drawing_parent_class)->unmap (widget);
  follow_motion (UNSOOT_MACHINE_DRAWING (widget));
}

static void
unsoot_machine_drawing_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                                int *minimum, int *natural, int *minimum_baseline,
                                int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? UNSOOT_MACHINE_LEAST_WIDTH
                                                                  : UNSOOT_MACHINE_LEAST_HEIGHT;
}

static void
unsoot_machine_drawing_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  UnsootMachineDrawing *self = UNSOOT_MACHINE_DRAWING (widget);

  unsoot_machine_plan ((float) width, (float) height, &self->plan);
  for (int i = 0; i < UNSOOT_MACHINE_PARTS; i++)
    {
      const graphene_rect_t *place = &self->plan.part[i];
      const GtkAllocation at = { (int) place->origin.x, (int) place->origin.y,
                                 (int) place->size.width, (int) place->size.height };
      gtk_widget_size_allocate (self->part[i], &at, -1);
    }
  gtk_popover_present (GTK_POPOVER (self->bubble));
}

static void
unsoot_machine_drawing_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  UnsootMachineDrawing *self = UNSOOT_MACHINE_DRAWING (widget);
  const graphene_rect_t all = GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                                                  (float) gtk_widget_get_height (widget));
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &all);
  UnsootMachineInks inks;

  unsoot_machine_inks_find (widget, &inks);
  unsoot_machine_paint (cr, &self->plan, &self->state, &inks, self->offset);
  cairo_destroy (cr);
  for (int i = 0; i < UNSOOT_MACHINE_PARTS; i++)
    gtk_widget_snapshot_child (widget, self->part[i], snapshot);
}

static void
touched_cb (GtkButton *button, UnsootMachineDrawing *self)
{
  int part = 0;

  while (self->part[part] != GTK_WIDGET (button))
    part++;
  g_autofree char *words = unsoot_machine_part_words (&self->state, (UnsootMachinePart) part);
  g_autofree char *whole
      = self->reason[part] != NULL
            /* Translators: a part of the machine, and why it must not be switched now */
            ? g_strdup_printf (_ ("%s. Locked: %s"), words, self->reason[part])
            : g_strdup_printf ("%s.", words);
  const graphene_rect_t *place = &self->plan.part[part];
  const GdkRectangle at = { (int) place->origin.x, (int) place->origin.y, (int) place->size.width,
                            (int) place->size.height };

  gtk_label_set_text (self->bubble_words, whole);
  gtk_popover_set_pointing_to (GTK_POPOVER (self->bubble), &at);
  gtk_popover_popup (GTK_POPOVER (self->bubble));
}

static GtkWidget *
tank_face_new (UnsootMachineDrawing *self, int part)
{
  GtkWidget *face = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  const UnsootSide side = part == UNSOOT_PART_FUEL_TANK ? UNSOOT_SIDE_FUEL : UNSOOT_SIDE_INTAKE;

  gtk_widget_set_halign (face, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (face), unsoot_side_mark_new_plain (side));
  gtk_box_append (GTK_BOX (face), GTK_WIDGET (self->words[part]));
  return face;
}

static GtkWidget *
engine_face_new (UnsootMachineDrawing *self, int part)
{
  GtkWidget *face = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *icon = gtk_image_new_from_icon_name ("unsoot-engine-symbolic");

  gtk_image_set_pixel_size (GTK_IMAGE (icon), 24);
  gtk_accessible_update_state (GTK_ACCESSIBLE (icon), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  gtk_widget_set_halign (face, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (face), icon);
  gtk_box_append (GTK_BOX (face), GTK_WIDGET (self->words[part]));
  return face;
}

static GtkWidget *
small_face_new (UnsootMachineDrawing *self, int part)
{
  static const char *const icons[UNSOOT_MACHINE_PARTS]
      = { [UNSOOT_PART_PUMP] = "unsoot-pump-symbolic",
          [UNSOOT_PART_ATOMISER] = "unsoot-intake-side-symbolic",
          [UNSOOT_PART_AIR] = "unsoot-air-symbolic" };
  GtkWidget *face = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *icon = gtk_image_new_from_icon_name (icons[part]);

  gtk_image_set_pixel_size (GTK_IMAGE (icon), 20);
  gtk_widget_set_valign (face, GTK_ALIGN_CENTER);
  gtk_accessible_update_state (GTK_ACCESSIBLE (icon), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  gtk_box_append (GTK_BOX (face), icon);
  gtk_box_append (GTK_BOX (face), GTK_WIDGET (self->words[part]));
  return face;
}

static GtkWidget *
face_new (UnsootMachineDrawing *self, int part)
{
  if (part == UNSOOT_PART_FUEL_TANK || part == UNSOOT_PART_INTAKE_TANK)
    return tank_face_new (self, part);
  return part == UNSOOT_PART_ENGINE ? engine_face_new (self, part) : small_face_new (self, part);
}

static void
make_part (UnsootMachineDrawing *self, int part)
{
  GtkWidget *overlay = gtk_overlay_new ();

  self->words[part] = GTK_LABEL (gtk_label_new (NULL));
  gtk_widget_add_css_class (GTK_WIDGET (self->words[part]), "figures");
  self->lock[part] = gtk_image_new_from_icon_name ("changes-prevent-symbolic");
  gtk_image_set_pixel_size (GTK_IMAGE (self->lock[part]), 12);
  gtk_widget_set_halign (self->lock[part], GTK_ALIGN_END);
  gtk_widget_set_valign (self->lock[part], GTK_ALIGN_START);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->lock[part]), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE,
                               -1);
  gtk_overlay_set_child (GTK_OVERLAY (overlay), face_new (self, part));
  gtk_overlay_add_overlay (GTK_OVERLAY (overlay), self->lock[part]);
  self->part[part] = gtk_button_new ();
  gtk_button_set_child (GTK_BUTTON (self->part[part]), overlay);
  gtk_widget_add_css_class (self->part[part], "part");
  if (part == UNSOOT_PART_FUEL_TANK || part == UNSOOT_PART_INTAKE_TANK)
    gtk_widget_add_css_class (self->part[part], "tank");
  g_signal_connect (self->part[part], "clicked", G_CALLBACK (touched_cb), self);
  gtk_widget_set_parent (self->part[part], GTK_WIDGET (self));
}

static void
unsoot_machine_drawing_dispose (GObject *object)
{
  UnsootMachineDrawing *self = UNSOOT_MACHINE_DRAWING (object);

  g_clear_handle_id (&self->frame_id, g_source_remove);
  for (int i = 0; i < UNSOOT_MACHINE_PARTS; i++)
    {
      g_clear_pointer (&self->part[i], gtk_widget_unparent);
      g_clear_pointer (&self->reason[i], g_free);
    }
  g_clear_pointer (&self->bubble, gtk_widget_unparent);
  G_OBJECT_CLASS (unsoot_machine_drawing_parent_class)->dispose (object);
}

static void
unsoot_machine_drawing_class_init (UnsootMachineDrawingClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_machine_drawing_dispose;
  widget_class->map = unsoot_machine_drawing_map;
  widget_class->unmap = unsoot_machine_drawing_unmap;
  widget_class->measure = unsoot_machine_drawing_measure;
  widget_class->size_allocate = unsoot_machine_drawing_size_allocate;
  widget_class->snapshot = unsoot_machine_drawing_snapshot;
  gtk_widget_class_set_css_name (widget_class, "machine");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
unsoot_machine_drawing_init (UnsootMachineDrawing *self)
{
  GtkWidget *words = gtk_label_new (NULL);

  for (int i = 0; i < UNSOOT_MACHINE_PARTS; i++)
    make_part (self, i);
  self->bubble = gtk_popover_new ();
  self->bubble_words = GTK_LABEL (words);
  gtk_label_set_wrap (self->bubble_words, TRUE);
  gtk_label_set_max_width_chars (self->bubble_words, 36);
  gtk_label_set_xalign (self->bubble_words, 0);
  gtk_popover_set_child (GTK_POPOVER (self->bubble), words);
  gtk_widget_set_parent (self->bubble, GTK_WIDGET (self));
  unsoot_access_name (GTK_WIDGET (self), _ ("The machine"));
}

/* What stands in the part itself: short. */
static char *
short_words (const UnsootMachineState *state, UnsootMachinePart part)
{
  switch (part)
    {
    case UNSOOT_PART_FUEL_TANK:
      return unsoot_format_litres (state->tank[UNSOOT_SIDE_FUEL].ml);
    case UNSOOT_PART_INTAKE_TANK:
      return unsoot_format_litres (state->tank[UNSOOT_SIDE_INTAKE].ml);
    case UNSOOT_PART_AIR:
    case UNSOOT_PART_PUMP:
      {
        const double pa = part == UNSOOT_PART_AIR ? state->air_pa : state->pressure_pa;
        g_autofree char *psi = unsoot_format_number (unsoot_unit_from_si (UNSOOT_UNIT_PSI, pa), 1);
        if (state->on[part] && pa > 0)
          return g_strdup_printf ("%s psi", psi);
      }
      return g_strdup (state->on[part] ? _ ("on") : _ ("off"));
    case UNSOOT_PART_ATOMISER:
      return g_strdup (state->on[part] ? _ ("on") : _ ("off"));
    case UNSOOT_PART_ENGINE:
      if (state->raised)
        return g_strdup (_ ("RAISED"));
      return g_strdup (state->on[part] ? _ ("RUNNING") : _ ("engine off"));
    }
  g_return_val_if_reached (g_strdup (""));
}

static void
show_part (UnsootMachineDrawing *self, const UnsootRun *run, UnsootMachinePart part)
{
  g_autofree char *words = unsoot_machine_part_words (&self->state, part);
  g_autofree char *little = short_words (&self->state, part);
  g_autofree char *name = NULL;

  g_free (self->reason[part]);
  self->reason[part] = unsoot_machine_lock (run, part);
  /* Translators: a part of the machine, for a screen reader: “Pump, off, locked” */
  name = self->reason[part] != NULL ? g_strdup_printf (_ ("%s, locked"), words) : g_strdup (words);
  gtk_label_set_text (self->words[part], little);
  gtk_widget_set_visible (self->lock[part], self->reason[part] != NULL);
  if (self->state.on[part])
    gtk_widget_add_css_class (self->part[part], "on");
  else
    gtk_widget_remove_css_class (self->part[part], "on");
  gtk_widget_set_tooltip_text (self->part[part], words);
  unsoot_access_name (self->part[part], name);
  unsoot_access_describe (self->part[part], self->reason[part] != NULL ? self->reason[part] : "");
}

void
unsoot_machine_drawing_show (UnsootMachineDrawing *self, const UnsootRun *run)
{
  g_return_if_fail (UNSOOT_IS_MACHINE_DRAWING (self));

  unsoot_machine_state (unsoot_run_rig (run), &self->state);
  for (int i = 0; i < UNSOOT_MACHINE_PARTS; i++)
    show_part (self, run, (UnsootMachinePart) i);
  follow_motion (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
