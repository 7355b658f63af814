/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "session.h"

G_BEGIN_DECLS

/* Asks twice for someone's new PIN, and sets it. */
#define UNSOOT_TYPE_PIN_DIALOG (unsoot_pin_dialog_get_type ())
G_DECLARE_FINAL_TYPE (UnsootPinDialog, unsoot_pin_dialog, UNSOOT, PIN_DIALOG, AdwWindow)

/* @over: any widget of the window. Shows it. */
void unsoot_pin_dialog_open (GtkWidget *over, UnsootSession *session, gint64 staff_id,
                             const char *name);

G_END_DECLS
