/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "session.h"

G_BEGIN_DECLS

/* Asks who is at the desk, and for that person's PIN. */
#define UNSOOT_TYPE_HANDS_DIALOG (unsoot_hands_dialog_get_type ())
G_DECLARE_FINAL_TYPE (UnsootHandsDialog, unsoot_hands_dialog, UNSOOT, HANDS_DIALOG, AdwWindow)

/* Shows itself once it knows who works here, and closes once hands have changed in @session. */
GtkWindow *unsoot_hands_dialog_open (GtkWindow *over, UnsootSession *session);

G_END_DECLS
