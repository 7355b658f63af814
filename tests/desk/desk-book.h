/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk-shop.h"
#include "window.h"

/* What the tests of a booking share: the desk with the first advisor at it, jobs that have come
 * so far, what is on the screen, and what came of it in the book. */
typedef struct
{
  UnsootSession *session;
  UnsootWindow *window;
} DeskBook;

void desk_book_begin (DeskBook *desk);
void desk_book_end (DeskBook *desk);

/* A number out of the book, by another handle than the program's; $1 is @id. */
gint64 desk_book_raw (const char *sql, gint64 id);
/* Waits until that is @wanted. */
void desk_book_wait_book (const char *sql, gint64 id, gint64 wanted);

/* A person's vehicle with no open job; each test takes another, because the book is one. */
gint64 desk_book_free_vehicle (gint64 nth);
/* A job of its fuel side, given as an estimate; and with the word for it. */
gint64 desk_book_quoted_job (DeskBook *desk, gint64 nth);
gint64 desk_book_authorised_job (DeskBook *desk, gint64 nth);

/* Opens a page and waits until it has its data. */
void desk_book_go (DeskBook *desk, const char *slug, gint64 record);
/* The first of that type on the page. */
GtkWidget *desk_book_in (DeskBook *desk, GType type);

/* Under any window: a label with that in it; a button that can be pressed. */
GtkWidget *desk_book_wait_label (const char *text);
void desk_book_wait_button (const char *label);
gboolean desk_book_has_button (const char *label);
void desk_book_press (const char *label);
