/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

/* Finds a customer, or a vehicle and so its customer, as one types; Down and Up move, Return
 * takes. What nobody is called can be somebody new.
 * Signals "customer" and "vehicle" (gint64 id), "somebody-new" (what was typed). */
#define UNSOOT_TYPE_PARTY_BOX (unsoot_party_box_get_type ())
G_DECLARE_FINAL_TYPE (UnsootPartyBox, unsoot_party_box, UNSOOT, PARTY_BOX, GtkBox)

GtkWidget *unsoot_party_box_new (UnsootSession *session);
void unsoot_party_box_focus (UnsootPartyBox *self);

G_END_DECLS
