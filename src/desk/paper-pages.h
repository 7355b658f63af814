/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gdk/gdk.h>

/* One page of a paper, as a picture and as the words on it. */
typedef struct
{
  GdkTexture *picture;
  char *words;
} UnsootPaperPage;

void unsoot_paper_page_free (UnsootPaperPage *page);

/**
 * unsoot_paper_pages_async:
 * @pdf: the file's bytes
 * @scale: pixels to a point (1/72 in)
 *
 * Draws every page on a thread of its own.
 */
void unsoot_paper_pages_async (GBytes *pdf, double scale, GCancellable *cancellable,
                               GAsyncReadyCallback callback, gpointer user_data);

/* UnsootPaperPage in order. */
GPtrArray *unsoot_paper_pages_finish (GAsyncResult *result, GError **error);
