/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* What a walk left behind, looked at without the program: the book by SQLite's own library, papers
 * by poppler's pdftotext. */

/* The book under the data folder whose name begins so; NULL: none. */
char *book_named (const char *prefix);

/* The invented shop's, or else the one that there is; NULL: none. */
char *book_path (void);

/* Takes away the books whose names begin so. */
void book_forget (const char *prefix);

/* The first column of the first row in that book, NULL where there is none. Fails where the words
 * are no SQL or there is no book. */
char *book_text_in (const char *book, const char *sql);

/* The same in the book of book_path (). */
char *book_text (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* The same as a number; fails where there is none. */
gint64 book_int (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* The book says @wanted, soon. */
void ck_book (const char *wanted, const char *format, ...) G_GNUC_PRINTF (2, 3);

/* What a paper says, as it stands on the sheet; waited for until it is written whole. */
char *paper_text (const char *file);
