/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk-shop.h"
#include "window.h"

/* What a test does at the desk again and again: sits down at it, waits for a dialog, and reads in
 * the book, by another handle than the program's, what came of it. */

/* A window on @session, in front. */
UnsootWindow *desk_hand_window (UnsootSession *session);
UnsootWindow *desk_hand_window_sized (UnsootSession *session, int width, int height);

/* The desk's own style, which the application loads in the program. */
void desk_hand_load_style (void);

/* Takes both away, once what is under way has ended. */
void desk_hand_leave (UnsootWindow *window, UnsootSession *session);

/* Somebody of that role is at the desk. */
void desk_hand_take (UnsootSession *session, const char *role);

/* The first value of @sql as text, "" where there is none. */
char *desk_hand_text (const char *sql);
/* Waits until that is @wanted. */
void desk_hand_wait_text (const char *wanted, const char *sql);

/* The open dialog of that type; NULL: none. */
GtkWidget *desk_hand_dialog (GType type);
/* Waits until there is one, or is none. */
GtkWidget *desk_hand_wait_dialog (GType type);
void desk_hand_wait_no_dialog (GType type);

/* Presses the button that says so. */
void desk_hand_press (GtkWidget *root, const char *label);

/* What is typed under that label of a deed's form. */
GtkEditable *desk_hand_field (GtkWidget *form, const char *label);
