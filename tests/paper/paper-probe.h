/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* What qpdf and poppler, neither of them ours, see in a PDF file. Failures end the test. */

typedef struct
{
  guint page;                      /* from 1 */
  double left, top, right, bottom; /* points, from the page's top left */
  char *text;
} ProbeWord;

typedef struct
{
  guint pages;
  double width, height; /* of the first page, as poppler reads it */
  GPtrArray *words;     /* ProbeWord */
} Probe;

/* qpdf --check has nothing to say. */
void probe_is_sound (GBytes *pdf);

/* Words with their boxes. */
Probe *probe_words (GBytes *pdf);
void probe_free (Probe *probe);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Probe, probe_free)

/* The text of @page (0: of all) in reading order, with single spaces for every gap. */
char *probe_text (GBytes *pdf, guint page);

/* A page as pixels of red, green and blue, @dpi dots an inch, edges not smoothed. */
guint8 *probe_pixels (GBytes *pdf, guint page, int dpi, int *width, int *height);
