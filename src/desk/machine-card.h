/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "machine-file.h"

G_BEGIN_DECLS

/* A machine as a card that opens it: its tanks drawn, what is in them in words, what is due. */
#define UNSOOT_TYPE_MACHINE_CARD (unsoot_machine_card_get_type ())
G_DECLARE_FINAL_TYPE (UnsootMachineCard, unsoot_machine_card, UNSOOT, MACHINE_CARD, GtkButton)

GtkWidget *unsoot_machine_card_new (const UnsootMachineFile *file, const char *today);

G_END_DECLS
