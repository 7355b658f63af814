/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A number for gloved hands: a big minus, the figure with its unit, a big plus. It can be typed
 * as well; Return in it emits "activate". Signal "changed". */
#define UNSOOT_TYPE_BAY_STEPPER (unsoot_bay_stepper_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayStepper, unsoot_bay_stepper, UNSOOT, BAY_STEPPER, GtkBox)

/**
 * unsoot_bay_stepper_set_up:
 * @name: for a screen reader: "Pressure"
 * @unit: its symbol
 * @stride: what one touch changes
 * @least, @most: the buttons stop there; typing may go beyond, the trade says what it thinks
 */
void unsoot_bay_stepper_set_up (UnsootBayStepper *self, const char *name, const char *unit,
                                double value, double stride, double least, double most,
                                int decimals);

/* What is written there. Errors: a sentence where that is no number. */
gboolean unsoot_bay_stepper_read (UnsootBayStepper *self, double *value, GError **error);

void unsoot_bay_stepper_focus (UnsootBayStepper *self);

G_END_DECLS
