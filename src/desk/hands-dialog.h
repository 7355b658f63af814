/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "session.h"

G_BEGIN_DECLS

/* Asks who is at the desk, and for that person's PIN. */
#define UNSOOT_TYPE_HANDS_DIALOG (unsoot_hands_dialog_get_type ())
G_DECLARE_FINAL_TYPE (UnsootHandsDialog, unsoot_hands_dialog, UNSOOT, HANDS_DIALOG, AdwWindow)

/* Closes itself once hands have changed in @session. */
GtkWidget *unsoot_hands_dialog_new (GtkWindow *over, UnsootSession *session);

G_END_DECLS
