/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "machine-plan.h"

/* The lines and levels of the drawn machine, under its parts. */

typedef struct
{
  GdkRGBA plain;
  GdkRGBA faint;
  GdkRGBA side[UNSOOT_SIDES];
} UnsootMachineInks;

/* The bay's own colours, as the widget's style has them now. */
void unsoot_machine_inks_find (GtkWidget *widget, UnsootMachineInks *inks);

/* Hoses and what is in the tanks. @offset: how far what flows has moved, in pixels. */
void unsoot_machine_paint (cairo_t *cr, const UnsootMachinePlan *plan,
                           const UnsootMachineState *state, const UnsootMachineInks *inks,
                           int offset);
