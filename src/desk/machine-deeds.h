/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "machines.h"
#include "session.h"

/* What is done with a tank outside a run. */
typedef enum
{
  UNSOOT_TANK_DRAIN,
  UNSOOT_TANK_FLUSH,
  UNSOOT_TANK_HOLD,
  UNSOOT_TANK_FOUND,
} UnsootTankDeed;
#define UNSOOT_TANK_DEEDS 4

/* A button for it, without a handler; @side names the tank for a screen reader. */
GtkWidget *unsoot_tank_deed_button_new (UnsootTankDeed deed, UnsootSession *session,
                                        const char *side);

/* Dialogs, filled from what is there now. */
void unsoot_tank_deed_open (UnsootTankDeed deed, GtkWidget *over, UnsootSession *session,
                            const UnsootMachineRow *machine, const UnsootTankState *tank);

/* Asks why an event of a tank is taken back; @what: it in words. */
void unsoot_tank_correct_open (GtkWidget *over, UnsootSession *session, gint64 event_id,
                               const char *what);

/* @gauge: (nullable): the name of the gauge that is due. */
void unsoot_gauge_check_open (GtkWidget *over, UnsootSession *session,
                              const UnsootMachineRow *machine, const char *gauge);
void unsoot_hoses_open (GtkWidget *over, UnsootSession *session, const UnsootMachineRow *machine);
