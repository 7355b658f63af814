/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing.h"

static void
stroke_free (gpointer data)
{
  UnsootStroke *stroke = data;

  g_free (stroke->text);
  g_free (stroke->points);
  g_free (stroke);
}

static void
spot_free (gpointer data)
{
  UnsootSpot *spot = data;

  g_free (spot->words);
  g_free (spot);
}

UnsootDrawing *
unsoot_drawing_new (double width, double height)
{
  UnsootDrawing *drawing = g_new0 (UnsootDrawing, 1);

  drawing->width = width;
  drawing->height = height;
  drawing->strokes = g_ptr_array_new_with_free_func (stroke_free);
  drawing->spots = g_ptr_array_new_with_free_func (spot_free);
  return drawing;
}

void
unsoot_drawing_free (UnsootDrawing *drawing)
{
  g_ptr_array_unref (drawing->strokes);
  g_ptr_array_unref (drawing->spots);
  g_free (drawing);
}

static UnsootStroke *
add_stroke (UnsootDrawing *drawing, UnsootStrokeKind kind, UnsootInk ink, double weight,
            const UnsootPoint *points, gsize n)
{
  UnsootStroke *stroke = g_new0 (UnsootStroke, 1);

  stroke->kind = kind;
  stroke->ink = ink;
  stroke->weight = weight;
  stroke->points = g_memdup2 (points, n * sizeof *points);
  stroke->n = n;
  g_ptr_array_add (drawing->strokes, stroke);
  return stroke;
}

void
unsoot_drawing_add (UnsootDrawing *drawing, UnsootStrokeKind kind, UnsootInk ink, double weight,
                    const UnsootPoint *points, gsize n)
{
  g_return_if_fail (kind <= UNSOOT_STROKE_HATCH);

  if (n > 1)
    add_stroke (drawing, kind, ink, weight, points, n);
}

void
unsoot_drawing_line (UnsootDrawing *drawing, UnsootStrokeKind kind, UnsootInk ink, double weight,
                     double x1, double y1, double x2, double y2)
{
  const UnsootPoint points[] = { { x1, y1 }, { x2, y2 } };

  unsoot_drawing_add (drawing, kind, ink, weight, points, G_N_ELEMENTS (points));
}

void
unsoot_drawing_box (UnsootDrawing *drawing, UnsootStrokeKind kind, UnsootInk ink, double weight,
                    double x, double y, double width, double height)
{
  const UnsootPoint points[]
      = { { x, y }, { x + width, y }, { x + width, y + height }, { x, y + height }, { x, y } };

  unsoot_drawing_add (drawing, kind, ink, weight, points, G_N_ELEMENTS (points));
}

void
unsoot_drawing_mark (UnsootDrawing *drawing, UnsootStrokeKind kind, UnsootInk ink, double weight,
                     double x, double y)
{
  const UnsootPoint point = { x, y };

  g_return_if_fail (kind >= UNSOOT_STROKE_DISC);

  add_stroke (drawing, kind, ink, weight, &point, 1);
}

void
unsoot_drawing_text (UnsootDrawing *drawing, UnsootInk ink, double align, double x, double y,
                     const char *text)
{
  const UnsootPoint point = { x, y };
  UnsootStroke *stroke = add_stroke (drawing, UNSOOT_STROKE_TEXT, ink, 1, &point, 1);

  stroke->align = align;
  stroke->text = g_strdup (text);
}

void
unsoot_drawing_spot (UnsootDrawing *drawing, double x, double y, double width, double height,
                     char *words)
{
  UnsootSpot *spot = g_new (UnsootSpot, 1);

  *spot = (UnsootSpot){ x, y, width, height, words };
  g_ptr_array_add (drawing->spots, spot);
}

const UnsootSpot *
unsoot_drawing_spot_at (const UnsootDrawing *drawing, double x, double y)
{
  for (guint i = drawing->spots->len; i > 0; i--)
    {
      const UnsootSpot *spot = g_ptr_array_index (drawing->spots, i - 1);
      if (x >= spot->x && x < spot->x + spot->width && y >= spot->y && y < spot->y + spot->height)
        return spot;
    }
  return NULL;
}

char *
unsoot_drawing_words (const UnsootDrawing *drawing)
{
  GString *words = g_string_new (NULL);

  for (guint i = 0; i < drawing->spots->len; i++)
    {
      const UnsootSpot *spot = g_ptr_array_index (drawing->spots, i);
      g_string_append_printf (words, "%s%s", i > 0 ? "\n" : "", spot->words);
    }
  return g_string_free (words, FALSE);
}
