/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <hpdf.h>

#include "page-font.h"
#include "paper-size.h"
#include "shop-row.h"

G_BEGIN_DECLS

/* Points (1/72 inch) in a millimetre. */
#define UNSOOT_MM (72.0 / 25.4)

/* A colour, each part 0 to 1. */
typedef struct
{
  float red, green, blue;
} UnsootTone;

extern const UnsootTone unsoot_tone_ink;
extern const UnsootTone unsoot_tone_grey; /* labels, units, notes: 4.5:1 on white */
extern const UnsootTone unsoot_tone_rule;
extern const UnsootTone unsoot_tone_tint; /* quiet ground behind text */
extern const UnsootTone unsoot_tone_accent;
extern const UnsootTone unsoot_tone_fuel;
extern const UnsootTone unsoot_tone_intake;
extern const UnsootTone unsoot_tone_danger;
extern const UnsootTone unsoot_tone_white;

/* What stands at the head and foot of every page. */
typedef struct
{
  const UnsootShopRow *shop;
  char *title;   /* "Work order" */
  char *number;  /* "2417" */
  char *subject; /* what it is about, on the pages after the first */
  char *date;    /* as printed; NULL: none */
  char *code;    /* for a bar code beside it; NULL: none */
  gint64 at;     /* Unix seconds, for the file's own date */
} UnsootPageHead;

/* Pages being drawn. Lengths are points, y runs down from the page's top edge; @y is
 * where the next block begins. After the first failure of the PDF library nothing more
 * is drawn, and unsoot_page_kit_finish () says what failed. */
typedef struct
{
  HPDF_Doc doc;
  HPDF_Page page;   /* the current one */
  GPtrArray *pages; /* HPDF_Page, borrowed from doc */
  UnsootPageFont faces[2];
  HPDF_Font fonts[2]; /* regular, bold */
  double width, height;
  double left, right, top, bottom; /* where text may stand, below header and above footer */
  double y;
  int measuring; /* above 0: blocks only advance y */
  UnsootPageHead head;
  GHashTable *lacking; /* characters that could not be shown */
  gboolean malformed;  /* some text was not UTF-8 */
  GPtrArray *remarks;  /* further sentences for the person who prints */
  gulong failure;      /* first error of the PDF library, 0: none */
} UnsootPageKit;

/* A block of a paper, drawn at kit->y and moving it on. */
typedef void (*UnsootPageBlock) (UnsootPageKit *kit, gconstpointer data);

/* Starts the first page. Takes the strings of @head. Errors: UNSOOT_PAPER_ERROR. */
UnsootPageKit *unsoot_page_kit_new (UnsootPaperSize size, UnsootPageHead head, GError **error);
void unsoot_page_kit_free (UnsootPageKit *kit);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootPageKit, unsoot_page_kit_free)

/* Numbers the pages and gives the file. @remark, if not NULL, is set to a sentence about
 * what could not be shown as written, or to NULL. Errors: UNSOOT_PAPER_ERROR. */
GBytes *unsoot_page_kit_finish (UnsootPageKit *kit, char **remark, GError **error);

/* Whether drawing has an effect now. */
gboolean unsoot_page_draws (const UnsootPageKit *kit);
double unsoot_page_width (const UnsootPageKit *kit); /* between the margins */

void unsoot_page_break (UnsootPageKit *kit);
/* Starts a page unless @height fits on this one; TRUE if it did start one. */
gboolean unsoot_page_need (UnsootPageKit *kit, double height);
void unsoot_page_skip (UnsootPageKit *kit, double height);

/* Height of a block, without drawing it. */
double unsoot_page_measure (UnsootPageKit *kit, UnsootPageBlock block, gconstpointer data);
/* Draws a block, on a new page if it would not fit whole on this one together with
 * @after points of what follows. */
void unsoot_page_keep (UnsootPageKit *kit, UnsootPageBlock block, gconstpointer data, double after);

/* A sentence for the person who prints. Takes @sentence. */
void unsoot_page_remark (UnsootPageKit *kit, char *sentence);

G_END_DECLS
