/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "page-kit.h"

G_BEGIN_DECLS

/* How a text looks. */
typedef struct
{
  double size;    /* points */
  double leading; /* from baseline to baseline */
  gboolean bold;
  const UnsootTone *tone;
} UnsootTextStyle;

extern const UnsootTextStyle unsoot_text_small; /* 9, grey: notes and labels */
extern const UnsootTextStyle unsoot_text_small_ink;
extern const UnsootTextStyle unsoot_text_small_bold;
extern const UnsootTextStyle unsoot_text_body; /* 10 */
extern const UnsootTextStyle unsoot_text_body_bold;
extern const UnsootTextStyle unsoot_text_grey;
extern const UnsootTextStyle unsoot_text_lead; /* 11 */
extern const UnsootTextStyle unsoot_text_lead_bold;
extern const UnsootTextStyle unsoot_text_head;  /* 13 bold accent: headings */
extern const UnsootTextStyle unsoot_text_title; /* 17 bold */

typedef enum
{
  UNSOOT_ALIGN_LEFT,
  UNSOOT_ALIGN_RIGHT,
  UNSOOT_ALIGN_CENTRE,
} UnsootAlign;

/* What is really printed for @text: composed (NFC), without control characters, with a
 * mark for whatever can't be shown, which is remembered in the kit. Line feeds stay. */
char *unsoot_page_clean (UnsootPageKit *kit, const char *text, gboolean bold);

/* Width of one line. */
double unsoot_page_text_width (UnsootPageKit *kit, const UnsootTextStyle *style, const char *text);

/* Breaks @text into lines no wider than @width: at spaces and after hyphens, and inside a
 * word only where the word alone is wider. NULL or "" is no line. */
GPtrArray *unsoot_page_wrap (UnsootPageKit *kit, const UnsootTextStyle *style, const char *text,
                             double width);

/* @text, or as much of it as fits with "…" at its end: never cut inside a figure. */
char *unsoot_page_clip (UnsootPageKit *kit, const UnsootTextStyle *style, const char *text,
                        double width);

/* Distance from a line's top to its baseline. */
double unsoot_text_baseline (const UnsootTextStyle *style);

/* One line at a baseline. @x is its left end, right end or middle by @align. */
void unsoot_page_write (UnsootPageKit *kit, const UnsootTextStyle *style, UnsootAlign align,
                        double x, double baseline, const char *text);

/* A figure with its unit after it in the lighter tone; both may be NULL. */
void unsoot_page_write_figure (UnsootPageKit *kit, const UnsootTextStyle *style, UnsootAlign align,
                               double x, double baseline, const char *figure, const char *unit);

/* Lines as wrapped, from @top; gives the height they take. */
double unsoot_page_write_lines (UnsootPageKit *kit, const UnsootTextStyle *style, UnsootAlign align,
                                double x, double top, const GPtrArray *lines);

/* Wrapped text over the whole width at kit->y, which it moves on; pages break between
 * lines. NULL or "" takes no room. */
void unsoot_page_paragraph (UnsootPageKit *kit, const UnsootTextStyle *style, const char *text);

/* A heading with its rule, kept with @after points of what follows. */
void unsoot_page_heading (UnsootPageKit *kit, const char *text, double after);

G_END_DECLS
