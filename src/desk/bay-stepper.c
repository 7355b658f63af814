/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-stepper.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "access.h"
#include "unit-text.h"

struct _UnsootBayStepper
{
  GtkBox parent_instance;

  /* template */
  GtkButton *less;
  GtkButton *more;
  GtkText *text;
  GtkLabel *unit;

  double stride;
  double least;
  double most;
  int decimals;
};

enum
{
  CHANGED,
  ACTIVATE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBayStepper, unsoot_bay_stepper, GTK_TYPE_BOX)

static void
write_value (UnsootBayStepper *self, double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  const double scale = pow (10, self->decimals);

  /* Ungrouped: it is read back, and "1,000" could be either. */
  g_ascii_formatd (text, sizeof text, "%g", round (value * scale) / scale);
  gtk_editable_set_text (GTK_EDITABLE (self->text), text);
}

/* On the grid of strides, so that 7.3 goes to 7.5 and not to 7.8. */
static void
step_by (UnsootBayStepper *self, int direction)
{
  double value = self->least;

  if (unsoot_bay_stepper_read (self, &value, NULL))
    value = direction > 0 ? floor (value / self->stride + 1e-6) * self->stride + self->stride
                          : ceil (value / self->stride - 1e-6) * self->stride - self->stride;
  write_value (self, CLAMP (value, self->least, self->most));
}

static void
less_cb (GtkButton *button, UnsootBayStepper *self)
{
  step_by (self, -1);
}

static void
more_cb (GtkButton *button, UnsootBayStepper *self)
{
  step_by (self, 1);
}

static void
changed_cb (GtkEditable *editable, UnsootBayStepper *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
activate_cb (GtkText *text, UnsootBayStepper *self)
{
  g_signal_emit (self, signals[ACTIVATE], 0);
}

static gboolean
key_cb (GtkEventControllerKey *keys, guint keyval, guint keycode, GdkModifierType modifiers,
        UnsootBayStepper *self)
{
  if (keyval == GDK_KEY_Up || keyval == GDK_KEY_KP_Up)
    step_by (self, 1);
  else if (keyval == GDK_KEY_Down || keyval == GDK_KEY_KP_Down)
    step_by (self, -1);
  else
    return GDK_EVENT_PROPAGATE;
  return GDK_EVENT_STOP;
}

static void
unsoot_bay_stepper_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_bay_stepper_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BAY_STEPPER);
}

static void
unsoot_bay_stepper_class_init (UnsootBayStepperClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_bay_stepper_dispose;
  signals[CHANGED]
      = g_signal_new ("changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[ACTIVATE]
      = g_signal_new ("activate", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/bay-stepper.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStepper, less);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStepper, more);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStepper, text);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStepper, unit);
  gtk_widget_class_bind_template_callback (widget_class, less_cb);
  gtk_widget_class_bind_template_callback (widget_class, more_cb);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, key_cb);
}

static void
unsoot_bay_stepper_init (UnsootBayStepper *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->stride = 1;
}

void
unsoot_bay_stepper_set_up (UnsootBayStepper *self, const char *name, const char *unit, double value,
                           double stride, double least, double most, int decimals)
{
  g_autofree char *less = g_strdup_printf (_ ("%s, less"), name);
  g_autofree char *more = g_strdup_printf (_ ("%s, more"), name);

  g_return_if_fail (UNSOOT_IS_BAY_STEPPER (self) && stride > 0);
  self->stride = stride;
  self->least = least;
  self->most = most;
  self->decimals = decimals;
  gtk_label_set_text (self->unit, unit);
  unsoot_access_name (GTK_WIDGET (self->text), name);
  unsoot_access_name (GTK_WIDGET (self->less), less);
  unsoot_access_name (GTK_WIDGET (self->more), more);
  if (!isnan (value))
    write_value (self, value);
}

gboolean
unsoot_bay_stepper_read (UnsootBayStepper *self, double *value, GError **error)
{
  return unsoot_number_parse (gtk_editable_get_text (GTK_EDITABLE (self->text)), value, error);
}

void
unsoot_bay_stepper_focus (UnsootBayStepper *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->text));
  gtk_editable_select_region (GTK_EDITABLE (self->text), 0, -1);
}
