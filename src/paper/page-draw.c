/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page-draw.h"

#define ROUND 0.5523 /* control points of a quarter circle */

/* Version 2.4 of the library has fractions of a point here. */
#if HPDF_MAJOR_VERSION > 2 || HPDF_MINOR_VERSION >= 4
typedef HPDF_REAL Dash;
#else
typedef HPDF_UINT16 Dash;
#endif

static HPDF_REAL
up (const UnsootPageKit *kit, double y)
{
  return (HPDF_REAL) (kit->height - y);
}

static void
set_stroke (UnsootPageKit *kit, const UnsootTone *tone, double weight)
{
  HPDF_Page_SetRGBStroke (kit->page, tone->red, tone->green, tone->blue);
  HPDF_Page_SetLineWidth (kit->page, (HPDF_REAL) weight);
}

static void
set_fill (UnsootPageKit *kit, const UnsootTone *tone)
{
  HPDF_Page_SetRGBFill (kit->page, tone->red, tone->green, tone->blue);
}

void
unsoot_page_line (UnsootPageKit *kit, double x1, double y1, double x2, double y2, double weight,
                  const UnsootTone *tone)
{
  if (!unsoot_page_draws (kit))
    return;
  set_stroke (kit, tone, weight);
  HPDF_Page_MoveTo (kit->page, (HPDF_REAL) x1, up (kit, y1));
  HPDF_Page_LineTo (kit->page, (HPDF_REAL) x2, up (kit, y2));
  HPDF_Page_Stroke (kit->page);
}

void
unsoot_page_rule (UnsootPageKit *kit, double from, double to, double y, double weight,
                  const UnsootTone *tone)
{
  unsoot_page_line (kit, from, y, to, y, weight, tone);
}

static void
move_to (UnsootPageKit *kit, double x, double y)
{
  HPDF_Page_MoveTo (kit->page, (HPDF_REAL) x, up (kit, y));
}

static void
line_to (UnsootPageKit *kit, double x, double y)
{
  HPDF_Page_LineTo (kit->page, (HPDF_REAL) x, up (kit, y));
}

static void
curve_to (UnsootPageKit *kit, double x1, double y1, double x2, double y2, double x, double y)
{
  HPDF_Page_CurveTo (kit->page, (HPDF_REAL) x1, up (kit, y1), (HPDF_REAL) x2, up (kit, y2),
                     (HPDF_REAL) x, up (kit, y));
}

static void
trace_box (UnsootPageKit *kit, double x, double y, double width, double height, double radius)
{
  const double r = MIN (radius, MIN (width, height) / 2.0);
  const double c = r * (1.0 - ROUND);
  const double right = x + width, bottom = y + height;

  move_to (kit, x + r, y);
  line_to (kit, right - r, y);
  curve_to (kit, right - c, y, right, y + c, right, y + r);
  line_to (kit, right, bottom - r);
  curve_to (kit, right, bottom - c, right - c, bottom, right - r, bottom);
  line_to (kit, x + r, bottom);
  curve_to (kit, x + c, bottom, x, bottom - c, x, bottom - r);
  line_to (kit, x, y + r);
  curve_to (kit, x, y + c, x + c, y, x + r, y);
  HPDF_Page_ClosePath (kit->page);
}

void
unsoot_page_box (UnsootPageKit *kit, double x, double y, double width, double height, double radius,
                 const UnsootTone *fill, const UnsootTone *stroke, double weight)
{
  if (!unsoot_page_draws (kit) || width <= 0 || height <= 0)
    return;
  if (fill != NULL)
    set_fill (kit, fill);
  if (stroke != NULL)
    set_stroke (kit, stroke, weight);
  trace_box (kit, x, y, width, height, radius);
  if (fill != NULL && stroke != NULL)
    HPDF_Page_FillStroke (kit->page);
  else if (fill != NULL)
    HPDF_Page_Fill (kit->page);
  else
    HPDF_Page_Stroke (kit->page);
}

static void
trace_points (UnsootPageKit *kit, const UnsootPoint *points, gsize n)
{
  move_to (kit, points[0].x, points[0].y);
  for (gsize i = 1; i < n; i++)
    line_to (kit, points[i].x, points[i].y);
}

void
unsoot_page_path (UnsootPageKit *kit, const UnsootPoint *points, gsize n, double weight,
                  gboolean dashed, const UnsootTone *tone)
{
  const Dash dashes[] = { 4, 3 };

  if (!unsoot_page_draws (kit) || n < 2)
    return;
  HPDF_Page_GSave (kit->page);
  set_stroke (kit, tone, weight);
  HPDF_Page_SetLineJoin (kit->page, HPDF_ROUND_JOIN);
  if (dashed)
    HPDF_Page_SetDash (kit->page, dashes, G_N_ELEMENTS (dashes), 0);
  trace_points (kit, points, n);
  HPDF_Page_Stroke (kit->page);
  HPDF_Page_GRestore (kit->page);
}

void
unsoot_page_area (UnsootPageKit *kit, const UnsootPoint *points, gsize n, const UnsootTone *fill)
{
  if (!unsoot_page_draws (kit) || n < 3)
    return;
  set_fill (kit, fill);
  trace_points (kit, points, n);
  HPDF_Page_ClosePath (kit->page);
  HPDF_Page_Fill (kit->page);
}

/* Slanting lines over the box around @points; all of it but what they enclose is cut away. */
void
unsoot_page_hatch_area (UnsootPageKit *kit, const UnsootPoint *points, gsize n, double gap,
                        double weight, const UnsootTone *tone)
{
  UnsootPoint low, high;

  if (!unsoot_page_draws (kit) || n < 3)
    return;
  low = high = points[0];
  for (gsize i = 1; i < n; i++)
    {
      low = (UnsootPoint){ MIN (low.x, points[i].x), MIN (low.y, points[i].y) };
      high = (UnsootPoint){ MAX (high.x, points[i].x), MAX (high.y, points[i].y) };
    }
  HPDF_Page_GSave (kit->page);
  trace_points (kit, points, n);
  HPDF_Page_ClosePath (kit->page);
  HPDF_Page_Clip (kit->page);
  HPDF_Page_EndPath (kit->page);
  set_stroke (kit, tone, weight);
  for (double start = low.x - (high.y - low.y); start < high.x; start += gap)
    {
      move_to (kit, start, high.y);
      line_to (kit, start + high.y - low.y, low.y);
    }
  HPDF_Page_Stroke (kit->page);
  HPDF_Page_GRestore (kit->page);
}

void
unsoot_page_hatch (UnsootPageKit *kit, double x, double y, double width, double height, double gap,
                   double weight, const UnsootTone *tone)
{
  const UnsootPoint corners[]
      = { { x, y }, { x + width, y }, { x + width, y + height }, { x, y + height } };

  if (width > 0 && height > 0)
    unsoot_page_hatch_area (kit, corners, G_N_ELEMENTS (corners), gap, weight, tone);
}

/* Numbers of one command; FALSE where the text has fewer. */
static gboolean
read_numbers (const char **at, double *numbers, int count)
{
  for (int i = 0; i < count; i++)
    {
      char *end;

      numbers[i] = g_ascii_strtod (*at, &end);
      if (end == *at)
        return FALSE;
      *at = end;
    }
  return TRUE;
}

static void
trace_figure (UnsootPageKit *kit, const char *path, double x, double y, double side)
{
  const double scale = side / 100.0;
  double n[6];

  for (const char *at = path; *at != '\0';)
    {
      const char command = *at++;

      if (command == 'M' && read_numbers (&at, n, 2))
        move_to (kit, x + n[0] * scale, y + n[1] * scale);
      else if (command == 'L' && read_numbers (&at, n, 2))
        line_to (kit, x + n[0] * scale, y + n[1] * scale);
      else if (command == 'C' && read_numbers (&at, n, 6))
        curve_to (kit, x + n[0] * scale, y + n[1] * scale, x + n[2] * scale, y + n[3] * scale,
                  x + n[4] * scale, y + n[5] * scale);
      else if (command == 'Z')
        HPDF_Page_ClosePath (kit->page);
      else if (command != ' ')
        g_critical ("path text is wrong at “%s”", at - 1);
    }
}

void
unsoot_page_figure (UnsootPageKit *kit, const char *path, double x, double y, double side,
                    const UnsootTone *fill)
{
  if (!unsoot_page_draws (kit))
    return;
  set_fill (kit, fill);
  trace_figure (kit, path, x, y, side);
  HPDF_Page_Eofill (kit->page);
}

void
unsoot_page_outline (UnsootPageKit *kit, const char *path, double x, double y, double side,
                     double weight, const UnsootTone *tone)
{
  if (!unsoot_page_draws (kit))
    return;
  set_stroke (kit, tone, weight * side / 100.0);
  HPDF_Page_SetLineCap (kit->page, HPDF_ROUND_END);
  HPDF_Page_SetLineJoin (kit->page, HPDF_ROUND_JOIN);
  trace_figure (kit, path, x, y, side);
  HPDF_Page_Stroke (kit->page);
  HPDF_Page_SetLineCap (kit->page, HPDF_BUTT_END);
  HPDF_Page_SetLineJoin (kit->page, HPDF_MITER_JOIN);
}
