/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* Told with a sentence when the file was written, or why not; never after @over is gone, and not
 * when the person changed their mind. */
typedef void (*UnsootPaperSaved) (gpointer over, const char *sentence);

/**
 * unsoot_paper_save:
 * @pdf: the file's bytes
 * @name: proposed for the file
 *
 * Asks where, and writes it there. One dialog at a time.
 */
void unsoot_paper_save (GtkWindow *over, GBytes *pdf, const char *name, GCancellable *cancellable,
                        UnsootPaperSaved saved);

/* Takes the dialog away where it stands: for dispose, since it keeps its window alive. */
void unsoot_paper_save_close (GtkWindow *over);
