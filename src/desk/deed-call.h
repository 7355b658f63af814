/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "deed-form.h"
#include "session.h"

/* @error: NULL where it was done. */
typedef void (*UnsootDeedDone) (GtkWidget *owner, const GError *error);

/**
 * unsoot_deed_call:
 * @over: a widget of the window that shows the toast
 * @order: (transfer full)
 * @owner: told through @done; may be gone by then
 *
 * Carries out a deed as the person at the desk. Where it is done, a toast says so and offers
 * Undo if the deed left something that can be taken back.
 */
void unsoot_deed_call (GtkWidget *over, UnsootSession *session, const UnsootDeedForm *form,
                       UnsootDeedOrder *order, UnsootDeedDone done, GtkWidget *owner);
