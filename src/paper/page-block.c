/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page-block.h"

#include "page-draw.h"
#include "page-mark.h"

#define GUTTER 18.0
#define PAD 9.0
#define ICON 14.0

static const UnsootTextStyle title_style = { 10, 14, TRUE, &unsoot_tone_ink };
static const UnsootTextStyle danger_style = { 11, 15, TRUE, &unsoot_tone_danger };

static double
write_part (UnsootPageKit *kit, const UnsootTextStyle *style, const char *text, double x,
            double top, double width)
{
  g_autoptr (GPtrArray) lines = unsoot_page_wrap (kit, style, text, width);

  return unsoot_page_write_lines (kit, style, UNSOOT_ALIGN_LEFT, x, top, lines);
}

static double
write_fact (UnsootPageKit *kit, const UnsootFact *fact, double x, double top, double width)
{
  double y = top;

  y += write_part (kit, &unsoot_text_small, fact->label, x, y, width);
  y += write_part (kit, &unsoot_text_body, fact->value, x, y, width);
  y += write_part (kit, &unsoot_text_small, fact->note, x, y, width);
  return y - top;
}

typedef struct
{
  const UnsootFact **facts;
  guint count, columns;
} FactRow;

static void
draw_fact_row (UnsootPageKit *kit, gconstpointer data)
{
  const FactRow *row = data;
  const double width
      = (unsoot_page_width (kit) - GUTTER * (row->columns - 1)) / (double) row->columns;
  double height = 0;

  for (guint i = 0; i < row->count; i++)
    height = MAX (height,
                  write_fact (kit, row->facts[i], kit->left + i * (width + GUTTER), kit->y, width));
  kit->y += height + 6;
}

void
unsoot_page_facts (UnsootPageKit *kit, const UnsootFact *facts, guint n_facts, guint columns)
{
  g_autofree const UnsootFact **known = g_new0 (const UnsootFact *, n_facts + 1);
  guint count = 0;

  for (guint i = 0; i < n_facts; i++)
    if (facts[i].value != NULL && *facts[i].value != '\0')
      known[count++] = &facts[i];
  for (guint i = 0; i < count; i += columns)
    {
      const FactRow row = { known + i, MIN (columns, count - i), columns };
      unsoot_page_keep (kit, draw_fact_row, &row, 0);
    }
}

static double
notice_inset (const UnsootNotice *notice)
{
  return notice->level == UNSOOT_NOTICE_PLAIN ? PAD : PAD + ICON + 8;
}

static const UnsootTextStyle *
notice_title_style (const UnsootNotice *notice)
{
  return notice->level == UNSOOT_NOTICE_DANGER ? &danger_style : &title_style;
}

/* Writes the notice's text and gives its height with the padding. */
static double
write_notice (UnsootPageKit *kit, const UnsootNotice *notice, double x, double top, double width)
{
  const double inset = notice_inset (notice);
  const double room = width - inset - PAD;
  double y = top + PAD - 2;

  y += write_part (kit, notice_title_style (notice), notice->title, x + inset, y, room);
  for (guint i = 0; i < notice->sentences->len; i++)
    y += write_part (kit, &unsoot_text_body, g_ptr_array_index (notice->sentences, i), x + inset,
                     y + (i > 0 ? 2 * i : 0), room);
  y += notice->sentences->len > 1 ? 2 * (notice->sentences->len - 1) : 0;
  if (notice->closing != NULL)
    y += 3 + write_part (kit, &title_style, notice->closing, x + inset, y + 3, room);
  return y + PAD - 2 - top;
}

static void
draw_notice (UnsootPageKit *kit, const UnsootNotice *notice, double x, double width, double height)
{
  const double top = kit->y;

  switch (notice->level)
    {
    case UNSOOT_NOTICE_PLAIN:
      unsoot_page_box (kit, x, top, width, height, 3, &unsoot_tone_tint, NULL, 0);
      break;
    case UNSOOT_NOTICE_CAUTION:
      unsoot_page_box (kit, x, top, width, height, 3, &unsoot_tone_tint, NULL, 0);
      unsoot_page_box (kit, x, top, 2.5, height, 0, &unsoot_tone_ink, NULL, 0);
      unsoot_page_warning_mark (kit, x + PAD, top + PAD - 2, ICON, &unsoot_tone_ink);
      break;
    case UNSOOT_NOTICE_DANGER:
      unsoot_page_box (kit, x, top, width, height, 3, NULL, &unsoot_tone_danger, 1.8);
      unsoot_page_warning_mark (kit, x + PAD, top + PAD - 2, ICON, &unsoot_tone_danger);
      break;
    }
  write_notice (kit, notice, x, top, width);
}

static double
measure_notice (UnsootPageKit *kit, const UnsootNotice *notice, double width)
{
  double height;

  kit->measuring++;
  height = write_notice (kit, notice, kit->left, kit->y, width);
  kit->measuring--;
  return height;
}

double
unsoot_page_notice_height (UnsootPageKit *kit, const UnsootNotice *notice)
{
  return measure_notice (kit, notice, unsoot_page_width (kit)) + 9;
}

void
unsoot_page_notice (UnsootPageKit *kit, const UnsootNotice *notice)
{
  const double width = unsoot_page_width (kit);
  const double height = measure_notice (kit, notice, width);

  if (notice->sentences->len == 0 && notice->title == NULL)
    return;
  unsoot_page_need (kit, height);
  draw_notice (kit, notice, kit->left, width, height);
  kit->y += height + 9;
}

void
unsoot_page_notice_pair (UnsootPageKit *kit, const UnsootNotice *left, const UnsootNotice *right)
{
  const double width = (unsoot_page_width (kit) - 12) / 2.0;
  const double height = MAX (measure_notice (kit, left, width), measure_notice (kit, right, width));

  unsoot_page_need (kit, height);
  draw_notice (kit, left, kit->left, width, height);
  draw_notice (kit, right, kit->left + width + 12, width, height);
  kit->y += height + 9;
}

static void
draw_sign_line (UnsootPageKit *kit, const UnsootSignLine *line, double x, double width)
{
  const double baseline = kit->y + 28;
  g_autofree char *value = unsoot_page_clip (kit, &unsoot_text_lead, line->value, width - 4);
  g_autofree char *label = unsoot_page_clip (kit, &unsoot_text_small, line->label, width);

  unsoot_page_write (kit, &unsoot_text_lead, UNSOOT_ALIGN_LEFT, x + 2, baseline - 3, value);
  unsoot_page_rule (kit, x, x + width, baseline, 0.7, &unsoot_tone_ink);
  unsoot_page_write (kit, &unsoot_text_small, UNSOOT_ALIGN_LEFT, x, baseline + 11, label);
}

void
unsoot_page_sign (UnsootPageKit *kit, const UnsootSignLine *lines, guint n_lines)
{
  double shares = 0, x = kit->left;
  const double room = unsoot_page_width (kit) - GUTTER * (n_lines - 1);

  unsoot_page_need (kit, UNSOOT_PAGE_SIGN_HEIGHT);
  for (guint i = 0; i < n_lines; i++)
    shares += lines[i].share;
  for (guint i = 0; i < n_lines; i++)
    {
      const double width = room * lines[i].share / shares;

      draw_sign_line (kit, &lines[i], x, width);
      x += width + GUTTER;
    }
  kit->y += UNSOOT_PAGE_SIGN_HEIGHT;
}
