/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page-text.h"

#include "page-draw.h"

#define NO_BREAK_SPACE 0x00A0
#define THIN_SPACE 0x2009
#define NARROW_NO_BREAK_SPACE 0x202F
#define EN_DASH 0x2013
#define MINUS 0x2212
#define REPLACEMENT 0xFFFD
#define CAP_HEIGHT 0.714 /* of Noto Sans, in ems */

const UnsootTextStyle unsoot_text_small = { 9, 12, FALSE, &unsoot_tone_grey };
const UnsootTextStyle unsoot_text_small_ink = { 9, 12, FALSE, &unsoot_tone_ink };
const UnsootTextStyle unsoot_text_small_bold = { 9, 12, TRUE, &unsoot_tone_ink };
const UnsootTextStyle unsoot_text_body = { 10, 14, FALSE, &unsoot_tone_ink };
const UnsootTextStyle unsoot_text_body_bold = { 10, 14, TRUE, &unsoot_tone_ink };
const UnsootTextStyle unsoot_text_grey = { 10, 14, FALSE, &unsoot_tone_grey };
const UnsootTextStyle unsoot_text_lead = { 11, 15, FALSE, &unsoot_tone_ink };
const UnsootTextStyle unsoot_text_lead_bold = { 11, 15, TRUE, &unsoot_tone_ink };
const UnsootTextStyle unsoot_text_head = { 13, 18, TRUE, &unsoot_tone_accent };
const UnsootTextStyle unsoot_text_title = { 17, 22, TRUE, &unsoot_tone_ink };

/* Signs that the typeface lacks and another one of it stands for without loss. */
static gunichar
stand_in (gunichar character)
{
  if (character == MINUS)
    return EN_DASH;
  if (character == '\t')
    return ' ';
  return character == THIN_SPACE || character == NARROW_NO_BREAK_SPACE ? NO_BREAK_SPACE : character;
}

static void
append_character (UnsootPageKit *kit, const UnsootPageFont *face, GString *clean,
                  gunichar character)
{
  if (!unsoot_page_font_has (face, character))
    character = stand_in (character);
  if (character == '\n' || unsoot_page_font_has (face, character))
    g_string_append_unichar (clean, character);
  else if (g_unichar_type (character) != G_UNICODE_CONTROL
           && g_unichar_type (character) != G_UNICODE_FORMAT)
    {
      g_hash_table_add (kit->lacking, GUINT_TO_POINTER (character));
      g_string_append_unichar (clean, unsoot_page_font_has (face, REPLACEMENT) ? REPLACEMENT
                                                                               : (gunichar) '?');
    }
}

char *
unsoot_page_clean (UnsootPageKit *kit, const char *text, gboolean bold)
{
  const UnsootPageFont *face = &kit->faces[bold ? 1 : 0];
  g_autofree char *valid = NULL;
  g_autofree char *composed = NULL;
  GString *clean = g_string_new (NULL);

  if (text == NULL || *text == '\0')
    return g_string_free (clean, FALSE);
  if (!g_utf8_validate (text, -1, NULL))
    kit->malformed = TRUE;
  valid = g_utf8_make_valid (text, -1);
  composed = g_utf8_normalize (valid, -1, G_NORMALIZE_DEFAULT_COMPOSE);
  for (const char *at = composed; *at != '\0'; at = g_utf8_next_char (at))
    append_character (kit, face, clean, g_utf8_get_char (at));
  return g_string_free (clean, FALSE);
}

static double
clean_width (UnsootPageKit *kit, const UnsootTextStyle *style, const char *text, gssize bytes)
{
  const HPDF_Font font = kit->fonts[style->bold ? 1 : 0];
  const char *end = bytes < 0 ? text + strlen (text) : text + bytes;
  double thousandths = 0;

  for (const char *at = text; at < end; at = g_utf8_next_char (at))
    thousandths += HPDF_Font_GetUnicodeWidth (font, (HPDF_UNICODE) g_utf8_get_char (at));
  return thousandths * style->size / 1000.0;
}

double
unsoot_page_text_width (UnsootPageKit *kit, const UnsootTextStyle *style, const char *text)
{
  g_autofree char *clean = unsoot_page_clean (kit, text, style->bold);

  return clean_width (kit, style, clean, -1);
}

static gboolean
is_space (gunichar character)
{
  return character != NO_BREAK_SPACE && g_unichar_isspace (character);
}

/* A hyphen or slash between letters; between digits it belongs to the figure. */
static gboolean
breaks_after (const char *at)
{
  const char *next = g_utf8_next_char (at);

  return (*at == '-' || *at == '/') && g_unichar_isalpha (g_utf8_get_char (next));
}

/* Where the first line of @text ends: the longest piece up to a break that fits, or as many
 * characters of a long word as fit, at least one. */
static const char *
line_end (UnsootPageKit *kit, const UnsootTextStyle *style, const char *text, double width)
{
  const HPDF_Font font = kit->fonts[style->bold ? 1 : 0];
  const double limit = width * 1000.0 / style->size + 0.01;
  const char *last = NULL;
  double used = 0;
  const char *at;

  for (at = text; *at != '\0'; at = g_utf8_next_char (at))
    {
      const gunichar character = g_utf8_get_char (at);

      if (is_space (character))
        last = at;
      used += HPDF_Font_GetUnicodeWidth (font, (HPDF_UNICODE) character);
      if (used > limit && at > text && !is_space (character))
        return last != NULL && last > text ? last : at;
      if (breaks_after (at) && at > text)
        last = g_utf8_next_char (at);
    }
  return at;
}

static void
wrap_paragraph (UnsootPageKit *kit, const UnsootTextStyle *style, const char *text, double width,
                GPtrArray *lines)
{
  do
    {
      const char *end = line_end (kit, style, text, width);

      g_ptr_array_add (lines, g_strchomp (g_strndup (text, (gsize) (end - text))));
      for (text = end; is_space (g_utf8_get_char (text));)
        text = g_utf8_next_char (text);
    }
  while (*text != '\0');
}

GPtrArray *
unsoot_page_wrap (UnsootPageKit *kit, const UnsootTextStyle *style, const char *text, double width)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *clean = unsoot_page_clean (kit, text, style->bold);
  g_auto (GStrv) paragraphs = g_strsplit (g_strchomp (clean), "\n", -1);

  for (guint i = 0; paragraphs[i] != NULL; i++)
    wrap_paragraph (kit, style, paragraphs[i], width, lines);
  return lines;
}

static gboolean
in_figure (const char *text, const char *at)
{
  const gunichar before = at > text ? g_utf8_get_char (g_utf8_prev_char (at)) : 0;
  const gunichar after = g_utf8_get_char (at);

  return g_unichar_isdigit (before)
             ? after != '\0' && !is_space (after)
             : g_unichar_isdigit (after) && before != 0 && !is_space (before);
}

/* Cut back to the end of a word rather than leave half a figure. */
static const char *
cut_before_figure (const char *text, const char *end)
{
  if (!in_figure (text, end))
    return end;
  while (end > text && !is_space (g_utf8_get_char (g_utf8_prev_char (end))))
    end = g_utf8_prev_char (end);
  return end;
}

char *
unsoot_page_clip (UnsootPageKit *kit, const UnsootTextStyle *style, const char *text, double width)
{
  g_autofree char *clean = unsoot_page_clean (kit, text, style->bold);
  const double room = width - unsoot_page_text_width (kit, style, "…");
  const char *end = clean;
  g_autofree char *kept = NULL;

  g_strdelimit (clean, "\n", ' ');
  if (clean_width (kit, style, clean, -1) <= width + 0.001)
    return g_steal_pointer (&clean);
  while (*end != '\0' && clean_width (kit, style, clean, g_utf8_next_char (end) - clean) <= room)
    end = g_utf8_next_char (end);
  end = cut_before_figure (clean, end);
  kept = g_strchomp (g_strndup (clean, (gsize) (end - clean)));
  return g_strconcat (kept, "…", NULL);
}

double
unsoot_text_baseline (const UnsootTextStyle *style)
{
  return (style->leading + CAP_HEIGHT * style->size) / 2.0;
}

static void
show (UnsootPageKit *kit, const UnsootTextStyle *style, const UnsootTone *tone, double x,
      double baseline, const char *clean)
{
  if (!unsoot_page_draws (kit) || *clean == '\0')
    return;
  HPDF_Page_SetRGBFill (kit->page, tone->red, tone->green, tone->blue);
  HPDF_Page_BeginText (kit->page);
  HPDF_Page_SetFontAndSize (kit->page, kit->fonts[style->bold ? 1 : 0], (HPDF_REAL) style->size);
  HPDF_Page_TextOut (kit->page, (HPDF_REAL) x, (HPDF_REAL) (kit->height - baseline), clean);
  HPDF_Page_EndText (kit->page);
}

static double
left_of (UnsootAlign align, double x, double width)
{
  switch (align)
    {
    case UNSOOT_ALIGN_RIGHT:
      return x - width;
    case UNSOOT_ALIGN_CENTRE:
      return x - width / 2.0;
    case UNSOOT_ALIGN_LEFT:
      break;
    }
  return x;
}

void
unsoot_page_write (UnsootPageKit *kit, const UnsootTextStyle *style, UnsootAlign align, double x,
                   double baseline, const char *text)
{
  unsoot_page_write_figure (kit, style, align, x, baseline, text, NULL);
}

void
unsoot_page_write_figure (UnsootPageKit *kit, const UnsootTextStyle *style, UnsootAlign align,
                          double x, double baseline, const char *figure, const char *unit)
{
  g_autofree char *clean = unsoot_page_clean (kit, figure, style->bold);
  g_autofree char *spaced
      = unit != NULL && *unit != '\0' ? g_strconcat ("\u00A0", unit, NULL) : g_strdup ("");
  UnsootTextStyle light = *style;
  g_autofree char *after = NULL;
  double width, whole;

  light.bold = FALSE;
  after = unsoot_page_clean (kit, spaced, FALSE);
  width = clean_width (kit, style, clean, -1);
  whole = width + clean_width (kit, &light, after, -1);
  x = left_of (align, x, whole);
  show (kit, style, style->tone, x, baseline, clean);
  show (kit, &light, &unsoot_tone_grey, x + width, baseline, after);
}

double
unsoot_page_write_lines (UnsootPageKit *kit, const UnsootTextStyle *style, UnsootAlign align,
                         double x, double top, const GPtrArray *lines)
{
  for (guint i = 0; i < lines->len; i++)
    unsoot_page_write (kit, style, align, x,
                       top + i * style->leading + unsoot_text_baseline (style),
                       g_ptr_array_index (lines, i));
  return lines->len * style->leading;
}

void
unsoot_page_paragraph (UnsootPageKit *kit, const UnsootTextStyle *style, const char *text)
{
  g_autoptr (GPtrArray) lines = unsoot_page_wrap (kit, style, text, unsoot_page_width (kit));

  for (guint i = 0; i < lines->len; i++)
    {
      unsoot_page_need (kit, style->leading);
      unsoot_page_write (kit, style, UNSOOT_ALIGN_LEFT, kit->left,
                         kit->y + unsoot_text_baseline (style), g_ptr_array_index (lines, i));
      kit->y += style->leading;
    }
}

void
unsoot_page_heading (UnsootPageKit *kit, const char *text, double after)
{
  unsoot_page_need (kit, 18 + unsoot_text_head.leading + 6 + after);
  unsoot_page_skip (kit, 18);
  unsoot_page_write (kit, &unsoot_text_head, UNSOOT_ALIGN_LEFT, kit->left,
                     kit->y + unsoot_text_baseline (&unsoot_text_head), text);
  kit->y += unsoot_text_head.leading;
  unsoot_page_rule (kit, kit->left, kit->right, kit->y + 1, 0.6, &unsoot_tone_rule);
  kit->y += 6;
}
