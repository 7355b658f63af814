/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "page-mark.h"
#include "page-text.h"

G_BEGIN_DECLS

/* A column: @width in points, or below zero a share of what the others leave. */
typedef struct
{
  const char *title; /* NULL: none */
  double width;
  UnsootAlign align;
} UnsootColumn;

typedef enum
{
  UNSOOT_CELL_TEXT,
  UNSOOT_CELL_TICK, /* an empty square to tick; ticked where text is not NULL */
  UNSOOT_CELL_FILL, /* a line to write on, with its unit; text is what is known already */
  UNSOOT_CELL_SIDE, /* a side's mark */
} UnsootCellKind;

typedef struct
{
  UnsootCellKind kind;
  const char *text;             /* NULL: empty */
  const char *unit;             /* after it, in the lighter tone */
  const char *note;             /* under it, small */
  const UnsootTextStyle *style; /* NULL: body */
  UnsootSide side;
} UnsootCell;

/* A table over the page's width. Its head comes again on every page that it reaches; a row
 * is never cut, unless it is taller than a page. */
typedef struct
{
  UnsootPageKit *kit;
  const UnsootColumn *columns;
  guint n_columns;
  double x[12], widths[12];
  double left, right;
  gboolean head_due;
} UnsootTable;

/* From kit->left to kit->right; draws nothing yet. @with_head: begin with the head, not
 * only on later pages. At most twelve columns. */
void unsoot_table_begin (UnsootTable *table, UnsootPageKit *kit, const UnsootColumn *columns,
                         guint n_columns, gboolean with_head);
/* A row of as many cells as there are columns. */
void unsoot_table_row (UnsootTable *table, const UnsootCell *cells);
/* How high the row will be, and the head with it where it is due. */
double unsoot_table_row_height (UnsootTable *table, const UnsootCell *cells);
double unsoot_table_head_height (const UnsootTable *table);
void unsoot_table_end (UnsootTable *table);

G_END_DECLS
