/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page-table.h"

#include "page-draw.h"

#define GUTTER 8.0
#define PAD 3.0
#define TICK 10.0
#define MARK 11.0

static const UnsootTextStyle head_style = { 9, 12, FALSE, &unsoot_tone_grey };

void
unsoot_table_begin (UnsootTable *table, UnsootPageKit *kit, const UnsootColumn *columns,
                    guint n_columns, gboolean with_head)
{
  double fixed = GUTTER * (n_columns - 1), shares = 0, x = kit->left;

  g_return_if_fail (n_columns > 0 && n_columns <= G_N_ELEMENTS (table->x));
  *table = (UnsootTable){ .kit = kit,
                          .columns = columns,
                          .n_columns = n_columns,
                          .left = kit->left,
                          .right = kit->right,
                          .head_due = with_head };
  for (guint i = 0; i < n_columns; i++)
    if (columns[i].width >= 0)
      fixed += columns[i].width;
    else
      shares -= columns[i].width;
  for (guint i = 0; i < n_columns; i++)
    {
      table->x[i] = x;
      table->widths[i] = columns[i].width >= 0
                             ? columns[i].width
                             : -columns[i].width / shares * (table->right - table->left - fixed);
      x += table->widths[i] + GUTTER;
    }
}

static double
anchor (const UnsootTable *table, guint column)
{
  switch (table->columns[column].align)
    {
    case UNSOOT_ALIGN_RIGHT:
      return table->x[column] + table->widths[column];
    case UNSOOT_ALIGN_CENTRE:
      return table->x[column] + table->widths[column] / 2.0;
    case UNSOOT_ALIGN_LEFT:
      break;
    }
  return table->x[column];
}

static gboolean
has_titles (const UnsootTable *table)
{
  for (guint i = 0; i < table->n_columns; i++)
    if (table->columns[i].title != NULL)
      return TRUE;
  return FALSE;
}

static guint
head_lines (const UnsootTable *table)
{
  guint most = 1;

  for (guint i = 0; i < table->n_columns; i++)
    {
      g_autoptr (GPtrArray) lines
          = unsoot_page_wrap (table->kit, &head_style, table->columns[i].title, table->widths[i]);
      most = MAX (most, lines->len);
    }
  return most;
}

double
unsoot_table_head_height (const UnsootTable *table)
{
  return has_titles (table) ? head_lines (table) * head_style.leading + PAD + 1 : 1;
}

/* Titles stand on the rule: those of one line at the foot of those of two. */
static void
draw_head (UnsootTable *table)
{
  UnsootPageKit *kit = table->kit;
  const double height = unsoot_table_head_height (table);

  table->head_due = FALSE;
  for (guint i = 0; i < table->n_columns; i++)
    {
      g_autoptr (GPtrArray) lines
          = unsoot_page_wrap (kit, &head_style, table->columns[i].title, table->widths[i]);
      const double top = kit->y + height - PAD - 1 - lines->len * head_style.leading;

      unsoot_page_write_lines (kit, &head_style, table->columns[i].align, anchor (table, i), top,
                               lines);
    }
  kit->y += height;
  unsoot_page_rule (kit, table->left, table->right, kit->y, 0.8, &unsoot_tone_grey);
}

static const UnsootTextStyle *
cell_style (const UnsootCell *cell)
{
  return cell->style != NULL ? cell->style : &unsoot_text_body;
}

/* A cell as lines, the note's after the text's; @split says where the note begins. */
static GPtrArray *
cell_lines (UnsootTable *table, const UnsootCell *cell, guint column, guint *split)
{
  const gboolean plain = cell->kind == UNSOOT_CELL_TEXT;
  g_autofree char *text = plain && cell->unit != NULL && cell->text != NULL
                              ? g_strconcat (cell->text, "\u00A0", cell->unit, NULL)
                              : g_strdup (plain ? cell->text : NULL);
  GPtrArray *lines = unsoot_page_wrap (table->kit, cell_style (cell), text, table->widths[column]);
  GPtrArray *note
      = unsoot_page_wrap (table->kit, &unsoot_text_small, cell->note, table->widths[column]);

  *split = lines->len;
  g_ptr_array_extend_and_steal (lines, note);
  return lines;
}

static double
line_leading (const UnsootCell *cell, guint line, guint split)
{
  return line < split ? cell_style (cell)->leading : unsoot_text_small.leading;
}

/* All rows of text stand on one first baseline, whatever the sizes. */
static double
first_baseline (const UnsootTable *table, const UnsootCell *cells)
{
  double baseline = unsoot_text_baseline (&unsoot_text_body);

  for (guint i = 0; i < table->n_columns; i++)
    baseline = MAX (baseline, unsoot_text_baseline (cell_style (&cells[i])));
  return baseline;
}

typedef struct
{
  GPtrArray *lines[12];
  guint split[12];
  guint next[12]; /* first line that is not drawn yet */
  double baseline;
} Layout;

static void
lay_out (UnsootTable *table, const UnsootCell *cells, Layout *layout)
{
  layout->baseline = first_baseline (table, cells);
  for (guint i = 0; i < table->n_columns; i++)
    {
      layout->next[i] = 0;
      layout->lines[i] = cell_lines (table, &cells[i], i, &layout->split[i]);
    }
}

static void
clear_layout (const UnsootTable *table, Layout *layout)
{
  for (guint i = 0; i < table->n_columns; i++)
    g_ptr_array_unref (layout->lines[i]);
}

/* Height of a cell's lines from @next on, as many as fit into @room; @count tells how many. */
static double
cell_height (const UnsootCell *cell, const Layout *layout, guint column, double room, guint *count)
{
  double height = layout->baseline - unsoot_text_baseline (cell_style (cell));

  *count = 0;
  for (guint line = layout->next[column]; line < layout->lines[column]->len; line++)
    {
      const double leading = line_leading (cell, line, layout->split[column]);

      if (height + leading > room)
        break;
      height += leading;
      (*count)++;
    }
  return height;
}

static double
rest_height (const UnsootTable *table, const UnsootCell *cells, const Layout *layout, double room)
{
  double height = unsoot_text_body.leading;

  for (guint i = 0; i < table->n_columns; i++)
    {
      guint count;
      height = MAX (height, cell_height (&cells[i], layout, i, room, &count));
    }
  return height + 2 * PAD;
}

static gboolean
all_drawn (const UnsootTable *table, const Layout *layout)
{
  for (guint i = 0; i < table->n_columns; i++)
    if (layout->next[i] < layout->lines[i]->len)
      return FALSE;
  return TRUE;
}

static void
draw_text_line (UnsootTable *table, const UnsootCell *cell, guint column, const char *line,
                gboolean is_note, gboolean last, double baseline)
{
  const UnsootTextStyle *style = is_note ? &unsoot_text_small : cell_style (cell);
  const UnsootAlign align = table->columns[column].align;
  const double x = anchor (table, column);
  g_autofree char *tail = g_strconcat ("\u00A0", cell->unit != NULL ? cell->unit : "", NULL);

  if (!is_note && last && cell->unit != NULL && g_str_has_suffix (line, tail))
    {
      g_autofree char *figure = g_strndup (line, strlen (line) - strlen (tail));
      unsoot_page_write_figure (table->kit, style, align, x, baseline, figure, cell->unit);
    }
  else
    unsoot_page_write (table->kit, style, align, x, baseline, line);
}

static void
draw_cell_text (UnsootTable *table, const UnsootCell *cell, guint column, Layout *layout,
                double top, double room)
{
  double y = top + layout->baseline - unsoot_text_baseline (cell_style (cell));
  guint count;

  cell_height (cell, layout, column, room, &count);
  for (guint i = 0; i < count; i++)
    {
      const guint line = layout->next[column]++;
      const gboolean is_note = line >= layout->split[column];
      const UnsootTextStyle *style = is_note ? &unsoot_text_small : cell_style (cell);

      draw_text_line (table, cell, column, g_ptr_array_index (layout->lines[column], line), is_note,
                      line + 1 == layout->split[column], y + unsoot_text_baseline (style));
      y += style->leading;
    }
}

static void
draw_tick (UnsootTable *table, const UnsootCell *cell, guint column, double baseline)
{
  const double x = table->x[column], y = baseline - TICK + 1.2;

  unsoot_page_box (table->kit, x, y, TICK, TICK, 1.5, NULL, &unsoot_tone_ink, 0.8);
  if (cell->text != NULL)
    unsoot_page_outline (table->kit, "M 20 52 L 42 76 L 82 22", x, y, TICK, 15,
                         &unsoot_tone_accent);
}

static void
draw_fill (UnsootTable *table, const UnsootCell *cell, guint column, double baseline)
{
  UnsootPageKit *kit = table->kit;
  const double x = table->x[column], right = x + table->widths[column];
  const double unit
      = cell->unit != NULL ? unsoot_page_text_width (kit, &unsoot_text_grey, cell->unit) + 4 : 0;

  unsoot_page_rule (kit, x, right - unit, baseline + 2, 0.6, &unsoot_tone_grey);
  unsoot_page_write (kit, &unsoot_text_grey, UNSOOT_ALIGN_RIGHT, right, baseline, cell->unit);
  if (cell->text != NULL)
    unsoot_page_write (kit, &unsoot_text_body, UNSOOT_ALIGN_RIGHT, right - unit - 2, baseline,
                       cell->text);
}

static void
draw_cell (UnsootTable *table, const UnsootCell *cell, guint column, Layout *layout, double top,
           double room)
{
  const double baseline = top + layout->baseline;

  switch (cell->kind)
    {
    case UNSOOT_CELL_TICK:
      draw_tick (table, cell, column, baseline);
      break;
    case UNSOOT_CELL_FILL:
      draw_fill (table, cell, column, baseline);
      break;
    case UNSOOT_CELL_SIDE:
      unsoot_page_side_mark (table->kit, cell->side, table->x[column], baseline - MARK + 2, MARK);
      break;
    case UNSOOT_CELL_TEXT:
      break;
    }
  draw_cell_text (table, cell, column, layout, top, room);
}

/* What fits of the row; the rule under it closes a part as it closes a whole. */
static void
draw_part (UnsootTable *table, const UnsootCell *cells, Layout *layout, double room, gboolean first)
{
  UnsootPageKit *kit = table->kit;
  const double height = rest_height (table, cells, layout, room - 2 * PAD);
  static const UnsootCell blank = { UNSOOT_CELL_TEXT };

  for (guint i = 0; i < table->n_columns; i++)
    {
      const gboolean once = cells[i].kind != UNSOOT_CELL_TEXT && !first;
      draw_cell (table, once ? &blank : &cells[i], i, layout, kit->y + PAD, room - 2 * PAD);
    }
  kit->y += height;
  unsoot_page_rule (kit, table->left, table->right, kit->y, 0.4, &unsoot_tone_rule);
}

double
unsoot_table_row_height (UnsootTable *table, const UnsootCell *cells)
{
  Layout layout;
  double height;

  lay_out (table, cells, &layout);
  height = rest_height (table, cells, &layout, G_MAXDOUBLE);
  clear_layout (table, &layout);
  return height + (table->head_due ? unsoot_table_head_height (table) : 0);
}

void
unsoot_table_row (UnsootTable *table, const UnsootCell *cells)
{
  UnsootPageKit *kit = table->kit;
  gboolean first = TRUE;
  Layout layout;

  lay_out (table, cells, &layout);
  if (unsoot_page_need (kit, unsoot_table_row_height (table, cells)))
    table->head_due = TRUE;
  do
    {
      if (table->head_due)
        draw_head (table);
      draw_part (table, cells, &layout, kit->measuring > 0 ? G_MAXDOUBLE : kit->bottom - kit->y,
                 first);
      first = FALSE;
      if (all_drawn (table, &layout) || !unsoot_page_draws (kit))
        break;
      unsoot_page_break (kit);
      table->head_due = TRUE;
    }
  while (TRUE);
  clear_layout (table, &layout);
}

void
unsoot_table_end (UnsootTable *table)
{
  table->kit->y += 6;
}
