/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "page-text.h"
#include "side.h"

G_BEGIN_DECLS

/* A label with what is known under it; without a value the fact is left out. */
typedef struct
{
  const char *label;
  const char *value; /* may have line feeds */
  const char *note;  /* under it, lighter */
} UnsootFact;

/* Facts side by side in @columns columns, row by row; a row is never cut. */
void unsoot_page_facts (UnsootPageKit *kit, const UnsootFact *facts, guint n_facts, guint columns);

/* How a notice shows how much it matters, without colour: danger has a thick frame and a
 * mark, caution a bar and a mark, plain a quiet ground. */
typedef enum
{
  UNSOOT_NOTICE_PLAIN,
  UNSOOT_NOTICE_CAUTION,
  UNSOOT_NOTICE_DANGER,
} UnsootNoticeLevel;

/* A box with a heading (may be NULL) and a sentence a line; kept whole. */
typedef struct
{
  UnsootNoticeLevel level;
  const char *title;
  const GPtrArray *sentences; /* char * */
  const char *closing;        /* in bold after them; NULL: none */
} UnsootNotice;

void unsoot_page_notice (UnsootPageKit *kit, const UnsootNotice *notice);
/* Two beside each other, as high as the higher one. */
void unsoot_page_notice_pair (UnsootPageKit *kit, const UnsootNotice *left,
                              const UnsootNotice *right);
double unsoot_page_notice_height (UnsootPageKit *kit, const UnsootNotice *notice);

/* Lines to write on, each with its label below; NULL-terminated, shares of the width. */
typedef struct
{
  const char *label;
  const char *value; /* what is known already, on the line */
  double share;
} UnsootSignLine;

void unsoot_page_sign (UnsootPageKit *kit, const UnsootSignLine *lines, guint n_lines);
#define UNSOOT_PAGE_SIGN_HEIGHT 46.0

/* The bars of @text (Code 128, ISO/IEC 15417), ending at @right. Error: what can't be coded. */
gboolean unsoot_page_barcode (UnsootPageKit *kit, const char *text, double right, double top,
                              double height, GError **error);
/* With the quiet zones; 0 for what can't be coded. */
double unsoot_page_barcode_width (const char *text);

G_END_DECLS
