/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

typedef enum
{
  UNSOOT_PAPER_LETTER, /* 8.5 × 11 in */
  UNSOOT_PAPER_A4,     /* 210 × 297 mm */
} UnsootPaperSize;

/* "letter" or "a4", as the shop's record has it. */
const char *unsoot_paper_size_slug (UnsootPaperSize size);
gboolean unsoot_paper_size_find (const char *slug, UnsootPaperSize *size);

/* Width and height in points (1/72 in); A4 by ISO 216 in mm. */
double unsoot_paper_size_width (UnsootPaperSize size);
double unsoot_paper_size_height (UnsootPaperSize size);
