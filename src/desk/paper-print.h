/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* The job by itself, for whoever runs it: its pages are the paper's, on the paper's own sheet.
 * Errors: what is no PDF. */
GtkPrintOperation *unsoot_paper_print_new (GBytes *pdf, const char *name, GError **error);

/**
 * unsoot_paper_print:
 * @pdf: the file's bytes
 * @name: what the job is called in the printer's queue
 *
 * Asks which printer, and prints. The sheet is the paper's own, unscaled. Returns FALSE and sets
 * a sentence where it can't be printed; a person who changes their mind is no error.
 */
gboolean unsoot_paper_print (GtkWindow *over, GBytes *pdf, const char *name, GError **error);
