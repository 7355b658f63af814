/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "fit.h"

G_BEGIN_DECLS

/* A picture as a list of what is to be drawn, worked out once: the same list is painted on paper
 * (page-drawing.h) and on the screen. Lengths are points or pixels from the upper left, y down. */

/* What a stroke means; each painter has its own colour for it. */
typedef enum
{
  UNSOOT_INK_TEXT,
  UNSOOT_INK_LABEL, /* lighter: scales and notes */
  UNSOOT_INK_GRID,
  UNSOOT_INK_ACCENT,
  UNSOOT_INK_FUEL,
  UNSOOT_INK_INTAKE,
  UNSOOT_INK_WARNING,
} UnsootInk;

typedef enum
{
  UNSOOT_STROKE_LINE, /* open, through the points */
  UNSOOT_STROKE_DASHES,
  UNSOOT_STROKE_AREA,  /* closed and filled, see through by the weight: 0 to 1 */
  UNSOOT_STROKE_HATCH, /* closed and filled with slanting lines */
  UNSOOT_STROKE_TEXT,  /* one point: the middle of the line's height */
  UNSOOT_STROKE_DISC,  /* one point: the middle; the weight is the radius */
  UNSOOT_STROKE_RING,
  UNSOOT_STROKE_UP, /* an arrow head whose tip is the point; the weight is its height */
  UNSOOT_STROKE_DOWN,
} UnsootStrokeKind;

/**
 * UnsootStroke:
 * @weight: width of a line, or as the kind says; of a text, its size against the usual one
 * @align: of a text: 0 begins at the point, 0.5 is centred on it, 1 ends there
 */
typedef struct
{
  UnsootStrokeKind kind;
  UnsootInk ink;
  double weight;
  double align;
  char *text;
  UnsootPoint *points;
  gsize n;
} UnsootStroke;

/* What is at a place, for the pointer and for who can't see it. */
typedef struct
{
  double x, y, width, height;
  char *words;
} UnsootSpot;

typedef struct
{
  double width, height;
  GPtrArray *strokes; /* UnsootStroke, in the order of painting */
  GPtrArray *spots;   /* UnsootSpot, from left to right */
} UnsootDrawing;

UnsootDrawing *unsoot_drawing_new (double width, double height);
void unsoot_drawing_free (UnsootDrawing *drawing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootDrawing, unsoot_drawing_free)

/* Through or around @n points, which are copied. LINE, DASHES, AREA and HATCH. */
void unsoot_drawing_add (UnsootDrawing *drawing, UnsootStrokeKind kind, UnsootInk ink,
                         double weight, const UnsootPoint *points, gsize n);
void unsoot_drawing_line (UnsootDrawing *drawing, UnsootStrokeKind kind, UnsootInk ink,
                          double weight, double x1, double y1, double x2, double y2);
void unsoot_drawing_box (UnsootDrawing *drawing, UnsootStrokeKind kind, UnsootInk ink,
                         double weight, double x, double y, double width, double height);
/* DISC, RING, UP and DOWN. */
void unsoot_drawing_mark (UnsootDrawing *drawing, UnsootStrokeKind kind, UnsootInk ink,
                          double weight, double x, double y);
void unsoot_drawing_text (UnsootDrawing *drawing, UnsootInk ink, double align, double x, double y,
                          const char *text);

/* Takes @words. Spots may overlap: the last one added is on top. */
void unsoot_drawing_spot (UnsootDrawing *drawing, double x, double y, double width, double height,
                          char *words);

/* What is at @x, @y; NULL: nothing. */
const UnsootSpot *unsoot_drawing_spot_at (const UnsootDrawing *drawing, double x, double y);

/* All that the spots say, a line each. */
char *unsoot_drawing_words (const UnsootDrawing *drawing);

G_END_DECLS
