/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "drawing.h"

G_BEGIN_DECLS

/* Values along an edge: @low stands at @start and @high at @end, which may be the lesser of the
 * two, as it is for a scale that goes up. */
typedef struct
{
  double low, high;
  double start, end;
} UnsootScale;

/* Where @value stands; what is off the scale stands at its end. */
double unsoot_scale_at (const UnsootScale *scale, double value);

/* 1, 2 or 5 times a power of ten: the least that parts @span into @most pieces or fewer. */
double unsoot_scale_step (double span, int most);

/* From the values' own lowest and highest to a scale that begins and ends on a step. */
UnsootScale unsoot_scale_round (double low, double high, int most, double start, double end);

/* Text of a value on the scale. Newly allocated. */
typedef char *(*UnsootScaleWords) (double value, gconstpointer data);

/* Lines across from @left to @right with their figures before @left. */
void unsoot_scale_draw_lines (UnsootDrawing *drawing, const UnsootScale *up, int most, double left,
                              double right, UnsootScaleWords words, gconstpointer data);

/* A line up for each month, quarter or year, as they have room, with its name under @bottom. The
 * scale is in days as civil.h counts them. */
void unsoot_scale_draw_days (UnsootDrawing *drawing, const UnsootScale *along, double top,
                             double bottom);

G_END_DECLS
