/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

/* Who is at the desk; a click changes hands. */
#define UNSOOT_TYPE_PERSON_BUTTON (unsoot_person_button_get_type ())
G_DECLARE_FINAL_TYPE (UnsootPersonButton, unsoot_person_button, UNSOOT, PERSON_BUTTON, GtkButton)

void unsoot_person_button_set_session (UnsootPersonButton *self, UnsootSession *session);

G_END_DECLS
