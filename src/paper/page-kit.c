/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page-kit.h"

#include <glib/gi18n-lib.h>

#include "page-head.h"
#include "page-text.h"
#include "paper-error.h"
#include "pdf-unicode.h"

#define MARGIN (18.0 * UNSOOT_MM)

#define TONE(red, green, blue)                                                                     \
  {                                                                                                \
    (red) / 255.0f, (green) / 255.0f, (blue) / 255.0f                                              \
  }

const UnsootTone unsoot_tone_ink = TONE (0x1B, 0x23, 0x26);
const UnsootTone unsoot_tone_grey = TONE (0x59, 0x66, 0x6A);
const UnsootTone unsoot_tone_rule = TONE (0xCB, 0xD4, 0xD5);
const UnsootTone unsoot_tone_tint = TONE (0xF1, 0xF5, 0xF5);
const UnsootTone unsoot_tone_accent = TONE (0x0F, 0x6E, 0x78);
const UnsootTone unsoot_tone_fuel = TONE (0x9A, 0x5B, 0x00);
const UnsootTone unsoot_tone_intake = TONE (0x6A, 0x3F, 0xA0);
const UnsootTone unsoot_tone_danger = TONE (0xB0, 0x1E, 0x1E);
const UnsootTone unsoot_tone_white = TONE (0xFF, 0xFF, 0xFF);

/* Errors of the library stick: the first one tells what happened. */
static void
remember_failure (HPDF_STATUS status, HPDF_STATUS detail, void *data)
{
  UnsootPageKit *kit = data;

  if (kit->failure == 0)
    kit->failure = status;
}

static gboolean
load_face (UnsootPageKit *kit, int index, GError **error)
{
  const char *name;

  if (!unsoot_page_font_find (&kit->faces[index], index == 1, error))
    return FALSE;
  name = HPDF_LoadTTFontFromFile (kit->doc, kit->faces[index].file, HPDF_TRUE);
  if (name != NULL)
    kit->fonts[index] = HPDF_GetFont (kit->doc, name, "UTF-8");
  if (kit->fonts[index] != NULL)
    return TRUE;
  g_set_error (error, UNSOOT_PAPER_ERROR, UNSOOT_PAPER_ERROR_FONT,
               /* Translators: the font's file */
               _ ("The font “%s” can't be read; install the package fonts-noto-core again."),
               kit->faces[index].file);
  return FALSE;
}

static void
set_document_facts (UnsootPageKit *kit)
{
  g_autofree char *title = g_strdup_printf ("%s %s", kit->head.title, kit->head.number);
  g_autoptr (GDateTime) at = g_date_time_new_from_unix_utc (kit->head.at);
  HPDF_Date date = { .ind = 'Z' };

  HPDF_SetCurrentEncoder (kit->doc, "UTF-8");
  HPDF_SetInfoAttr (kit->doc, HPDF_INFO_TITLE, title);
  HPDF_SetInfoAttr (kit->doc, HPDF_INFO_CREATOR, "Unsoot");
  if (kit->head.shop->name != NULL && g_utf8_validate (kit->head.shop->name, -1, NULL))
    HPDF_SetInfoAttr (kit->doc, HPDF_INFO_AUTHOR, kit->head.shop->name);
  if (at == NULL)
    return;
  g_date_time_get_ymd (at, &date.year, &date.month, &date.day);
  date.hour = g_date_time_get_hour (at);
  date.minutes = g_date_time_get_minute (at);
  date.seconds = (int) g_date_time_get_second (at);
  HPDF_SetInfoDateAttr (kit->doc, HPDF_INFO_CREATION_DATE, date);
  HPDF_SetInfoDateAttr (kit->doc, HPDF_INFO_MOD_DATE, date);
}

static void
add_page (UnsootPageKit *kit)
{
  kit->page = HPDF_AddPage (kit->doc);
  HPDF_Page_SetWidth (kit->page, (HPDF_REAL) kit->width);
  HPDF_Page_SetHeight (kit->page, (HPDF_REAL) kit->height);
  g_ptr_array_add (kit->pages, kit->page);
  if (kit->pages->len == 1)
    unsoot_page_draw_first_head (kit);
  else
    unsoot_page_draw_later_head (kit);
  kit->top = kit->y;
}

UnsootPageKit *
unsoot_page_kit_new (UnsootPaperSize size, UnsootPageHead head, GError **error)
{
  g_autoptr (UnsootPageKit) kit = g_new0 (UnsootPageKit, 1);

  kit->head = head;
  kit->pages = g_ptr_array_new ();
  kit->remarks = g_ptr_array_new_with_free_func (g_free);
  kit->lacking = g_hash_table_new (NULL, NULL);
  kit->width = unsoot_paper_size_width (size);
  kit->height = unsoot_paper_size_height (size);
  kit->left = MARGIN;
  kit->right = kit->width - MARGIN;
  kit->bottom = kit->height - MARGIN;
  kit->doc = HPDF_New (remember_failure, kit);
  if (kit->doc == NULL)
    {
      g_set_error (error, UNSOOT_PAPER_ERROR, UNSOOT_PAPER_ERROR_PDF,
                   _ ("The paper could not be begun: there is not enough memory."));
      return NULL;
    }
  HPDF_SetCompressionMode (kit->doc, HPDF_COMP_ALL);
  HPDF_UseUTFEncodings (kit->doc);
  if (!load_face (kit, 0, error) || !load_face (kit, 1, error))
    return NULL;
  set_document_facts (kit);
  add_page (kit);
  return g_steal_pointer (&kit);
}

void
unsoot_page_kit_free (UnsootPageKit *kit)
{
  if (kit->doc != NULL)
    HPDF_Free (kit->doc);
  unsoot_page_font_clear (&kit->faces[0]);
  unsoot_page_font_clear (&kit->faces[1]);
  g_free (kit->head.title);
  g_free (kit->head.number);
  g_free (kit->head.subject);
  g_free (kit->head.date);
  g_free (kit->head.code);
  g_ptr_array_unref (kit->pages);
  g_ptr_array_unref (kit->remarks);
  g_hash_table_unref (kit->lacking);
  g_free (kit);
}

static int
compare_characters (gconstpointer a, gconstpointer b)
{
  return GPOINTER_TO_INT (a) - GPOINTER_TO_INT (b);
}

/* "“漢” (U+6F22), “字” (U+5B57)" */
static char *
lacking_list (const UnsootPageKit *kit)
{
  g_autoptr (GList) characters
      = g_list_sort (g_hash_table_get_keys (kit->lacking), compare_characters);
  GString *list = g_string_new (NULL);

  for (const GList *item = characters; item != NULL; item = item->next)
    {
      const gunichar character = (gunichar) GPOINTER_TO_UINT (item->data);

      g_string_append (list, list->len > 0 ? ", " : "");
      if (g_unichar_isgraph (character) && !g_unichar_ismark (character))
        {
          g_string_append (list, "“");
          g_string_append_unichar (list, character);
          g_string_append_printf (list, "” (U+%04X)", character);
        }
      else
        g_string_append_printf (list, "U+%04X", character);
    }
  return g_string_free (list, FALSE);
}

static char *
remark_text (UnsootPageKit *kit)
{
  if (kit->malformed)
    unsoot_page_remark (
        kit,
        g_strdup (_ ("Some text is damaged (it is not UTF-8); the damage is shown as a mark.")));
  if (g_hash_table_size (kit->lacking) > 0)
    {
      g_autofree char *list = lacking_list (kit);

      /* Translators: the characters, each with its code */
      unsoot_page_remark (
          kit,
          g_strdup_printf (_ ("The paper's font lacks %s; a mark stands in their place."), list));
    }
  if (kit->remarks->len == 0)
    return NULL;
  g_ptr_array_add (kit->remarks, NULL);
  return g_strjoinv (" ", (char **) kit->remarks->pdata);
}

static gboolean
check_failure (const UnsootPageKit *kit, GError **error)
{
  if (kit->failure == 0)
    return TRUE;
  g_set_error (
      error, UNSOOT_PAPER_ERROR, UNSOOT_PAPER_ERROR_PDF,
      /* Translators: the paper's title and number, the PDF library's error code */
      _ ("%s %s could not be made: the PDF library stopped with error 0x%04lX. Nothing was "
         "written."),
      kit->head.title, kit->head.number, kit->failure);
  return FALSE;
}

static GBytes *
read_file (UnsootPageKit *kit, GError **error)
{
  g_autoptr (GBytes) written = NULL;
  HPDF_UINT32 size;
  guint8 *data;

  HPDF_SaveToStream (kit->doc);
  if (!check_failure (kit, error))
    return NULL;
  size = HPDF_GetStreamSize (kit->doc);
  data = g_malloc (size);
  HPDF_ReadFromStream (kit->doc, data, &size);
  written = g_bytes_new_take (data, size);
  return unsoot_pdf_mend_unicode (written);
}

GBytes *
unsoot_page_kit_finish (UnsootPageKit *kit, char **remark, GError **error)
{
  g_autofree char *sentence = NULL;

  for (guint i = 0; kit->failure == 0 && i < kit->pages->len; i++)
    {
      kit->page = g_ptr_array_index (kit->pages, i);
      unsoot_page_draw_foot (kit, i + 1);
    }
  sentence = remark_text (kit);
  if (remark != NULL)
    *remark = g_steal_pointer (&sentence);
  return check_failure (kit, error) ? read_file (kit, error) : NULL;
}

gboolean
unsoot_page_draws (const UnsootPageKit *kit)
{
  return kit->measuring == 0 && kit->failure == 0;
}

double
unsoot_page_width (const UnsootPageKit *kit)
{
  return kit->right - kit->left;
}

void
unsoot_page_break (UnsootPageKit *kit)
{
  if (unsoot_page_draws (kit))
    add_page (kit);
}

gboolean
unsoot_page_need (UnsootPageKit *kit, double height)
{
  if (!unsoot_page_draws (kit) || kit->y + height <= kit->bottom || kit->y <= kit->top)
    return FALSE;
  unsoot_page_break (kit);
  return TRUE;
}

void
unsoot_page_skip (UnsootPageKit *kit, double height)
{
  /* Room above a block is of no use at the head of a page. */
  if (kit->measuring > 0 || kit->y > kit->top)
    kit->y += height;
}

double
unsoot_page_measure (UnsootPageKit *kit, UnsootPageBlock block, gconstpointer data)
{
  const double y = kit->y;
  double height;

  kit->measuring++;
  block (kit, data);
  kit->measuring--;
  height = kit->y - y;
  kit->y = y;
  return height;
}

void
unsoot_page_keep (UnsootPageKit *kit, UnsootPageBlock block, gconstpointer data, double after)
{
  unsoot_page_need (kit, unsoot_page_measure (kit, block, data) + after);
  block (kit, data);
}

void
unsoot_page_remark (UnsootPageKit *kit, char *sentence)
{
  g_ptr_array_add (kit->remarks, sentence);
}
