/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-incomplete-tag.h"

#include <glib/gi18n-lib.h>

#include "page-block.h"
#include "page-draw.h"
#include "page-mark.h"
#include "paper-cautions.h"
#include "paper-error.h"
#include "paper-words.h"
#include "run.h"

/* Type at full scale. Letters of 20 points and more can be read at two metres, of 46 with
 * ease: an inch of height for 25 feet, or for 10. Common practice, no source. */
#define WARNING_SIZE 50.0
#define ITEM_SIZE 28.0
#define HEADING_SIZE 17.0
#define LEAST_SCALE 0.4
#define SCALE_STEP 0.05

#define BULLET_INDENT 0.9 /* in ems */

/* The tag's text, a line each: a heading ends in a colon, an item is what follows. */
typedef struct
{
  const UnsootJobFile *file;
  char **lines;
  double scale;
} Tag;

static UnsootTextStyle
scaled (double size, double scale, gboolean bold, const UnsootTone *tone)
{
  const UnsootTextStyle style = { size * scale, size * scale * 1.25, bold, tone };

  return style;
}

/* A block of large lines; each may begin a page of its own where one page is not enough. */
static void
write_large (UnsootPageKit *kit, const UnsootTextStyle *style, double indent, const char *text)
{
  g_autoptr (GPtrArray) lines
      = unsoot_page_wrap (kit, style, text, unsoot_page_width (kit) - indent);

  for (guint i = 0; i < lines->len; i++)
    {
      unsoot_page_need (kit, style->leading);
      unsoot_page_write (kit, style, UNSOOT_ALIGN_LEFT, kit->left + indent,
                         kit->y + unsoot_text_baseline (style), g_ptr_array_index (lines, i));
      kit->y += style->leading;
    }
}

static void
draw_warning (UnsootPageKit *kit, double scale)
{
  const UnsootTextStyle style = scaled (WARNING_SIZE, scale, TRUE, &unsoot_tone_white);
  const double mark = style.size;
  g_autoptr (GPtrArray) lines
      = unsoot_page_wrap (kit, &style, _ ("Do not start"), unsoot_page_width (kit) - mark - 36);
  const double height = MAX (lines->len * style.leading, mark) + 12;

  unsoot_page_box (kit, kit->left, kit->y, unsoot_page_width (kit), height, 4, &unsoot_tone_danger,
                   NULL, 0);
  unsoot_page_warning_mark (kit, kit->left + 12, kit->y + (height - mark) / 2, mark,
                            &unsoot_tone_white);
  unsoot_page_write_lines (kit, &style, UNSOOT_ALIGN_LEFT, kit->left + mark + 24, kit->y + 6,
                           lines);
  kit->y += height + 12 * scale;
}

static void
draw_vehicle (UnsootPageKit *kit, const Tag *tag)
{
  const UnsootTextStyle style = scaled (ITEM_SIZE, tag->scale, TRUE, &unsoot_tone_ink);
  g_autofree char *vehicle = unsoot_paper_vehicle (tag->file->vehicle);

  write_large (kit, &style, 0, vehicle);
  kit->y += 6 * tag->scale;
}

/* The text after a list's dash, NULL for a line of another kind. */
static const char *
item_of (const char *line)
{
  static const char *const dashes[] = { "– ", "- ", "• " };

  for (gsize i = 0; i < G_N_ELEMENTS (dashes); i++)
    if (g_str_has_prefix (line, dashes[i]))
      return line + strlen (dashes[i]);
  return NULL;
}

static void
draw_item (UnsootPageKit *kit, const char *text, double scale)
{
  const UnsootTextStyle style = scaled (ITEM_SIZE, scale, FALSE, &unsoot_tone_ink);
  const double bullet = style.size * 0.22;

  unsoot_page_need (kit, style.leading);
  unsoot_page_box (kit, kit->left + 2, kit->y + (style.leading - bullet) / 2, bullet, bullet, 0,
                   &unsoot_tone_ink, NULL, 0);
  write_large (kit, &style, style.size * BULLET_INDENT, text);
}

static void
draw_heading (UnsootPageKit *kit, const char *text, double scale)
{
  const UnsootTextStyle style = scaled (HEADING_SIZE, scale, TRUE, &unsoot_tone_danger);

  kit->y += 10 * scale;
  unsoot_page_need (kit, style.leading + ITEM_SIZE * scale * 1.25);
  write_large (kit, &style, 0, text);
}

/* "– EGR valve", "In the tanks:" or "Next safe step: drain": what stands before a colon heads
 * what follows, but for the colons within an item. */
static void
draw_line (UnsootPageKit *kit, const char *line, double scale)
{
  const char *item = item_of (line);
  const char *colon = item == NULL ? strchr (line, ':') : NULL;
  g_autofree char *heading = NULL;

  if (colon == NULL)
    {
      draw_item (kit, item != NULL ? item : line, scale);
      return;
    }
  heading = g_strndup (line, (gsize) (colon - line));
  draw_heading (kit, heading, scale);
  for (colon++; *colon == ' ';)
    colon++;
  if (*colon != '\0')
    draw_item (kit, colon, scale);
}

/* Why it was released, as the run keeps it. */
static const char *
reason_of (const UnsootJobFile *file)
{
  for (guint i = file->run_events->len; i > 0; i--)
    {
      const UnsootRunEventRow *event = g_ptr_array_index (file->run_events, i - 1);
      UnsootRunEventKind kind;

      if (unsoot_run_event_from_slug (event->kind, &kind) && kind == UNSOOT_RUN_RELEASED)
        return event->text;
    }
  return NULL;
}

static void
draw_foot (UnsootPageKit *kit, const Tag *tag)
{
  const UnsootRunRow *run = tag->file->run;
  g_autofree char *when = unsoot_paper_moment (tag->file, run->ended_at);
  const UnsootSignLine lines[] = {
    { _ ("Taken on by"), run->signature, 2 },
    { _ ("Signature"), NULL, 2 },
    { _ ("Released"), when, 1.5 },
  };

  kit->y += 9;
  if (reason_of (tag->file) != NULL)
    {
      /* Translators: the reason for which a vehicle was released in pieces */
      g_autofree char *why = g_strdup_printf (_ ("Why: %s"), reason_of (tag->file));
      unsoot_page_paragraph (kit, &unsoot_text_lead_bold, why);
      kit->y += 6;
    }
  unsoot_paper_cautions (kit, UNSOOT_SHEET_TAG, UNSOOT_SIDE_NONE);
  unsoot_page_sign (kit, lines, G_N_ELEMENTS (lines));
}

static void
draw_tag (UnsootPageKit *kit, gconstpointer data)
{
  const Tag *tag = data;

  draw_warning (kit, tag->scale);
  draw_vehicle (kit, tag);
  for (guint i = 0; tag->lines[i] != NULL; i++)
    if (*tag->lines[i] != '\0')
      draw_line (kit, tag->lines[i], tag->scale);
  draw_foot (kit, tag);
}

/* The largest type with which everything stands on one page. */
static void
choose_scale (UnsootPageKit *kit, Tag *tag)
{
  for (tag->scale = 1.0; tag->scale > LEAST_SCALE + 0.001; tag->scale -= SCALE_STEP)
    if (kit->y + unsoot_page_measure (kit, draw_tag, tag) <= kit->bottom)
      return;
}

GBytes *
unsoot_paper_incomplete_tag (const UnsootJobFile *file, UnsootPaperSize size, char **remark,
                             GError **error)
{
  g_autoptr (UnsootPageKit) kit = NULL;
  g_auto (GStrv) lines = NULL;
  g_autofree char *serial = NULL;
  Tag tag = { .file = file };

  if (!unsoot_paper_check (file, error))
    return NULL;
  serial = unsoot_paper_serial (file->job->number);
  if (file->run == NULL || file->run->tag == NULL)
    {
      g_set_error (error, UNSOOT_PAPER_ERROR, UNSOOT_PAPER_ERROR_RECORD,
                   /* Translators: a job's number */
                   _ ("Job %s was not released in pieces: there is no tag to print."), serial);
      return NULL;
    }
  kit = unsoot_page_kit_new (size,
                             unsoot_paper_head (file, g_strdup (_ ("Incomplete")),
                                                /* Translators: a job's number */
                                                g_strdup_printf (_ ("· job %s"), serial),
                                                unsoot_paper_moment (file, file->run->ended_at),
                                                file->run->ended_at),
                             error);
  if (kit == NULL)
    return NULL;
  lines = g_strsplit (file->run->tag, "\n", -1);
  tag.lines = lines;
  choose_scale (kit, &tag);
  draw_tag (kit, &tag);
  return unsoot_page_kit_finish (kit, remark, error);
}
