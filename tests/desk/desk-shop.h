/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "session.h"

/* The demo shop for tests of the desk. The book is made once, before check forks; every test
 * opens it again, because threads don't survive a fork. */

/* Unchecked fixtures: make the book, take it away. */
void desk_shop_make (void);
void desk_shop_remove (void);

/* GTK and libadwaita on this test's own display; inside the test, never before the fork. */
void desk_shop_start_toolkit (void);

/* A session on the book: its clock stands at the moment for which the day was arranged, its
 * first advisor is at the desk. */
UnsootSession *desk_shop_open (void);

/* That moment. */
gint64 desk_shop_now (void);
const char *desk_shop_path (void);

/* Turns the main loop until @done says TRUE, or fails after a while. */
void desk_shop_wait (gboolean (*done) (gpointer data), gpointer data, const char *what);

/* Lets everything happen that is waiting to. */
void desk_shop_settle (void);

/* The first widget of @type under @root; NULL if there is none. */
GtkWidget *desk_shop_widget (GtkWidget *root, GType type);
/* How many there are. */
guint desk_shop_count (GtkWidget *root, GType type);
/* The first label with that text. */
GtkWidget *desk_shop_label (GtkWidget *root, const char *text);
