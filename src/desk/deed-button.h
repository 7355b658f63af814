/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "role.h"
#include "session.h"

/* A button for a deed. Whoever may not do it finds it insensitive, with the reason; it follows
 * when hands change. @about (nullable) is added to its name for a screen reader. */
GtkWidget *unsoot_deed_button_new (UnsootSession *session, UnsootDeed deed, const char *label,
                                   const char *about);

/* The one that is next. */
void unsoot_deed_button_suggest (GtkWidget *button, gboolean suggest);

/* Not possible now, for a reason other than the role's; NULL: possible again. */
void unsoot_deed_button_bar (GtkWidget *button, const char *reason);
/* Shows @icon in place of its words, which are said where it is pointed at and by a reader. */
void unsoot_deed_button_draw (GtkWidget *button, const char *icon, const char *label);
