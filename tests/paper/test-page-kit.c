/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The kit under the papers: sheets, text, tables. What comes out is read by poppler and qpdf. */
#include "page-kit.h"

#include <fontconfig/fontconfig.h>
#include <string.h>

#include "page-table.h"
#include "page-text.h"
#include "paper-error.h"
#include "paper-probe.h"
#include "pdf-unicode.h"
#include "suite.h"

static UnsootShopRow *shop;

static UnsootPageKit *
new_kit (UnsootPaperSize size)
{
  GError *error = NULL;
  const UnsootPageHead head = { .shop = shop,
                                .title = g_strdup ("Trial"),
                                .number = g_strdup ("7"),
                                .subject = g_strdup ("what it is about"),
                                .at = 1794664800 };
  UnsootPageKit *kit = unsoot_page_kit_new (size, head, &error);

  ck_no_error (error);
  return kit;
}

static GBytes *
finish (UnsootPageKit *kit, char **remark)
{
  GError *error = NULL;
  GBytes *pdf = unsoot_page_kit_finish (kit, remark, &error);

  ck_no_error (error);
  return pdf;
}

static void
setup (void)
{
  shop = unsoot_shop_row_new ();
  shop->name = g_strdup ("Larkmoor Diesel Cleaning");
}

static void
teardown (void)
{
  unsoot_shop_row_free (shop);
}

/* ISO 216: A4 is 210 × 297 mm; ANSI/ASME Y14.1: size A is 8.5 × 11 in. 72 points an inch. */
START_TEST (sheets_have_their_standard_size)
{
  g_autoptr (UnsootPageKit) a4 = new_kit (UNSOOT_PAPER_A4);
  g_autoptr (UnsootPageKit) letter = new_kit (UNSOOT_PAPER_LETTER);
  g_autoptr (GBytes) first = finish (a4, NULL);
  g_autoptr (GBytes) second = finish (letter, NULL);
  g_autoptr (Probe) one = probe_words (first);
  g_autoptr (Probe) two = probe_words (second);

  probe_is_sound (first);
  ck_near (one->width, 210.0 / 25.4 * 72.0, 0.01);
  ck_near (one->height, 297.0 / 25.4 * 72.0, 0.01);
  ck_near (two->width, 612.0, 0.001);
  ck_near (two->height, 792.0, 0.001);
}
END_TEST

START_TEST (sizes_are_found_by_slug)
{
  UnsootPaperSize size = UNSOOT_PAPER_LETTER;

  ck_assert (unsoot_paper_size_find ("a4", &size));
  ck_assert_int_eq (size, UNSOOT_PAPER_A4);
  ck_assert (!unsoot_paper_size_find ("a5", &size));
  ck_assert_str_eq (unsoot_paper_size_slug (UNSOOT_PAPER_LETTER), "letter");
}
END_TEST

/* The measured width is what poppler finds on the page. */
START_TEST (text_is_as_wide_as_measured)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);
  const char *word = "Þórðardóttir-Ñandú-0123456789";
  const double width = unsoot_page_text_width (kit, &unsoot_text_title, word);
  g_autoptr (GBytes) pdf = NULL;
  g_autoptr (Probe) probe = NULL;
  guint found = 0;

  unsoot_page_write (kit, &unsoot_text_title, UNSOOT_ALIGN_LEFT, 100, 300, word);
  unsoot_page_write (kit, &unsoot_text_title, UNSOOT_ALIGN_RIGHT, 500, 400, word);
  pdf = finish (kit, NULL);
  probe = probe_words (pdf);
  for (guint i = 0; i < probe->words->len; i++)
    {
      const ProbeWord *seen = g_ptr_array_index (probe->words, i);
      if (g_strcmp0 (seen->text, word) != 0)
        continue;
      found++;
      ck_near (seen->right - seen->left, width, 0.1);
      ck_near (seen->top < 350 ? seen->left : seen->right, seen->top < 350 ? 100 : 500, 0.1);
    }
  ck_assert_uint_eq (found, 2);
}
END_TEST

START_TEST (figures_have_one_width)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);

  for (char digit = '1'; digit <= '9'; digit++)
    {
      const char text[] = { digit, '\0' };
      ck_near (unsoot_page_text_width (kit, &unsoot_text_body, text),
               unsoot_page_text_width (kit, &unsoot_text_body, "0"), 0.0001);
      ck_near (unsoot_page_text_width (kit, &unsoot_text_body_bold, text),
               unsoot_page_text_width (kit, &unsoot_text_body_bold, "0"), 0.0001);
    }
}
END_TEST

static char *
joined (const GPtrArray *lines)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < lines->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "|" : "",
                            (const char *) g_ptr_array_index (lines, i));
  return g_string_free (text, FALSE);
}

START_TEST (lines_break_where_they_may)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);
  const struct
  {
    const char *text, *widest, *lines;
  } cases[] = {
    { "drain the low pipe", "drain the low", "drain the low|pipe" },
    { "fill 2\u00A0L now", "fill 22", "fill|2\u00A0L|now" },
    { "high-temperature", "temperature", "high-|temperature" },
    { "no 12-34/56 here", "no 12-34", "no|12-34/56|here" },
    { "1M8GDM9AXKP042788", "1M8GDM9AX", "1M8GDM9AX|KP042788" },
    { "first\n\nthird", "thirds", "first||third" },
    { "", "x", "" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const double width = unsoot_page_text_width (kit, &unsoot_text_body, cases[i].widest) + 0.5;
      g_autoptr (GPtrArray) lines = unsoot_page_wrap (kit, &unsoot_text_body, cases[i].text, width);
      g_autofree char *text = joined (lines);

      ck_assert_str_eq (text, cases[i].lines);
    }
}
END_TEST

START_TEST (clipping_never_cuts_a_figure)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);
  const char *text = "Total 1,234.50 for unit 12";
  const double whole = unsoot_page_text_width (kit, &unsoot_text_body, text);

  for (double width = whole; width > 20; width -= 0.7)
    {
      g_autofree char *clipped = unsoot_page_clip (kit, &unsoot_text_body, text, width);

      ck_assert (unsoot_page_text_width (kit, &unsoot_text_body, clipped) <= width + 0.01);
      if (g_str_equal (clipped, text))
        continue;
      ck_assert (g_str_has_suffix (clipped, "…"));
      if (strpbrk (clipped, "0123456789") != NULL)
        ck_assert_msg (strstr (clipped, "1,234.50") != NULL, "%s", clipped);
    }
}
END_TEST

/* Neither CJK nor an emoji is in the font; an accent that stands alone is composed first. */
START_TEST (what_the_font_lacks_is_named)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);
  g_autofree char *remark = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GBytes) pdf = NULL;

  unsoot_page_paragraph (kit, &unsoot_text_body, "Zo\u0301\u0142c 漢 and 😬 stay told");
  pdf = finish (kit, &remark);
  text = probe_text (pdf, 1);
  ck_assert_ptr_nonnull (remark);
  ck_assert_ptr_nonnull (strstr (remark, "“漢” (U+6F22), “😬” (U+1F62C)"));
  ck_assert_ptr_null (strstr (remark, "U+0301"));
  ck_assert_ptr_nonnull (strstr (text, "Zółc"));
  ck_assert_ptr_nonnull (strstr (text, "stay told"));
  ck_assert_ptr_nonnull (strstr (text, "could not be printed"));
}
END_TEST

/* A mark with no composed letter is in the font's file, and would stand beside its letter. */
START_TEST (what_needs_shaping_is_named)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);
  g_autofree char *remark = NULL;
  g_autoptr (GBytes) pdf = NULL;

  ck_assert (FcCharSetHasChar (kit->faces[0].charset, 0x0302));
  unsoot_page_paragraph (kit, &unsoot_text_body, "q\u0302");
  pdf = finish (kit, &remark);
  ck_assert_ptr_nonnull (remark);
  ck_assert_ptr_nonnull (strstr (remark, "U+0302"));
}
END_TEST

START_TEST (a_page_begins_at_its_top)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);

  unsoot_page_skip (kit, 18);
  ck_near (kit->y, kit->top, 0.0001);
  kit->y += 10;
  unsoot_page_skip (kit, 18);
  ck_near (kit->y, kit->top + 28, 0.0001);
}
END_TEST

START_TEST (text_that_is_not_utf8_is_said)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);
  g_autofree char *remark = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GBytes) pdf = NULL;

  unsoot_page_paragraph (kit, &unsoot_text_body, "before \xC3\x28 after");
  pdf = finish (kit, &remark);
  probe_is_sound (pdf);
  text = probe_text (pdf, 1);
  ck_assert_ptr_nonnull (strstr (remark, "not UTF-8"));
  ck_assert_ptr_nonnull (strstr (text, "before"));
  ck_assert_ptr_nonnull (strstr (text, "after"));
}
END_TEST

START_TEST (all_well_is_no_remark)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);
  char *remark = (char *) "unset";
  g_autoptr (GBytes) pdf = NULL;

  unsoot_page_paragraph (
      kit, &unsoot_text_body,
      "Żółć, Ærø, Señor Ñandú, Þórðardóttir, Čeněk, Őrs, Σίγμα, Щука, ½ ¾ ° ± × µ "
      "€ £ ¥ “ ” – — … · − inH₂O");
  pdf = finish (kit, &remark);
  ck_assert_msg (remark == NULL, "%s", remark);
}
END_TEST

START_TEST (a_missing_font_names_its_package)
{
  GError *error = NULL;
  const UnsootPageHead head = {
    .shop = shop, .title = g_strdup ("Trial"), .number = g_strdup ("7"), .subject = g_strdup ("")
  };
  UnsootPageKit *kit;
  FcConfig *none = FcConfigCreate ();

  FcConfigSetCurrent (none);
  kit = unsoot_page_kit_new (UNSOOT_PAPER_A4, head, &error);
  ck_assert_ptr_null (kit);
  ck_assert (g_error_matches (error, UNSOOT_PAPER_ERROR, UNSOOT_PAPER_ERROR_FONT));
  ck_assert_ptr_nonnull (strstr (error->message, "fonts-noto-core"));
  g_clear_error (&error);
}
END_TEST

/* Rows of one to nine lines, 80 of them: each whole on one page, the head on every page. */
START_TEST (a_row_is_never_cut)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);
  const UnsootColumn columns[]
      = { { "Sequence", 60, UNSOOT_ALIGN_RIGHT }, { "Wording", 120, UNSOOT_ALIGN_LEFT } };
  UnsootTable table;
  g_autoptr (GBytes) pdf = NULL;
  g_autoptr (Probe) probe = NULL;

  unsoot_table_begin (&table, kit, columns, G_N_ELEMENTS (columns), TRUE);
  for (int row = 0; row < 80; row++)
    {
      g_autofree char *number = g_strdup_printf ("n%d", row);
      GString *text = g_string_new (NULL);

      for (int line = 0; line <= row % 9; line++)
        g_string_append_printf (text, "%sr%d", line > 0 ? "\n" : "", row);
      const UnsootCell cells[]
          = { { UNSOOT_CELL_TEXT, .text = number }, { UNSOOT_CELL_TEXT, .text = text->str } };
      unsoot_table_row (&table, cells);
      g_string_free (text, TRUE);
    }
  pdf = finish (kit, NULL);
  probe = probe_words (pdf);
  ck_assert_uint_ge (probe->pages, 5);
  for (guint page = 1; page <= probe->pages; page++)
    {
      g_autofree char *text = probe_text (pdf, page);
      g_autofree char *count = g_strdup_printf ("Page %u of %u", page, probe->pages);

      ck_assert_ptr_nonnull (strstr (text, "Sequence"));
      ck_assert_ptr_nonnull (strstr (text, count));
    }
  for (int row = 0; row < 80; row++)
    {
      g_autofree char *word = g_strdup_printf ("r%d", row);
      guint seen = 0, page = 0;

      for (guint i = 0; i < probe->words->len; i++)
        {
          const ProbeWord *at = g_ptr_array_index (probe->words, i);
          if (g_strcmp0 (at->text, word) != 0)
            continue;
          ck_assert_msg (page == 0 || page == at->page, "row %d is cut", row);
          page = at->page;
          seen++;
        }
      ck_assert_uint_eq (seen, (guint) row % 9 + 1);
    }
}
END_TEST

/* The one row that has to be cut: nothing of it is lost. */
START_TEST (a_row_taller_than_a_page_goes_on)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);
  const UnsootColumn columns[] = { { "Wording", -1, UNSOOT_ALIGN_LEFT } };
  GString *text = g_string_new (NULL);
  UnsootTable table;
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *seen = NULL;

  for (int line = 0; line < 120; line++)
    g_string_append_printf (text, "%sline%d", line > 0 ? "\n" : "", line);
  unsoot_table_begin (&table, kit, columns, 1, TRUE);
  const UnsootCell cell = { UNSOOT_CELL_TEXT, .text = text->str };
  unsoot_table_row (&table, &cell);
  pdf = finish (kit, NULL);
  seen = probe_text (pdf, 0);
  for (int line = 0; line < 120; line++)
    {
      g_autofree char *word = g_strdup_printf ("line%d ", line);
      ck_assert_ptr_nonnull (strstr (seen, word));
    }
  g_string_free (text, TRUE);
}
END_TEST

/* A figure ends where its column ends, its unit included. */
START_TEST (figures_stand_at_the_right)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);
  const UnsootColumn columns[]
      = { { "Reading", -1, UNSOOT_ALIGN_LEFT }, { "Value", 90, UNSOOT_ALIGN_RIGHT } };
  const UnsootCell first[]
      = { { UNSOOT_CELL_TEXT, .text = "a" }, { UNSOOT_CELL_TEXT, .text = "38.0", .unit = "psi" } };
  const UnsootCell second[] = { { UNSOOT_CELL_TEXT, .text = "b" },
                                { UNSOOT_CELL_TEXT, .text = "1,038.0", .unit = "psi" } };
  UnsootTable table;
  g_autoptr (GBytes) pdf = NULL;
  g_autoptr (Probe) probe = NULL;
  guint found = 0;

  unsoot_table_begin (&table, kit, columns, 2, TRUE);
  unsoot_table_row (&table, first);
  unsoot_table_row (&table, second);
  unsoot_table_end (&table);
  pdf = finish (kit, NULL);
  probe = probe_words (pdf);
  for (guint i = 0; i < probe->words->len; i++)
    {
      const ProbeWord *word = g_ptr_array_index (probe->words, i);
      if (g_str_has_suffix (word->text, "psi"))
        {
          ck_near (word->right, 612 - 18 * 72 / 25.4, 0.1);
          found++;
        }
    }
  ck_assert_uint_eq (found, 2);
}
END_TEST

/* ISO 32000-1, 9.10.3: a font's map is made of "bfrange"; poppler warns of anything else. */
START_TEST (fonts_say_what_their_codes_are)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);
  g_autoptr (GBytes) pdf = NULL;
  g_autoptr (GBytes) other = g_bytes_new_static ("%PDF-1.7 of another make", 24);
  g_autoptr (GBytes) same = unsoot_pdf_mend_unicode (other);
  g_autofree char *text = NULL;

  unsoot_page_paragraph (kit, &unsoot_text_body, "Żółć ½ Σίγμα Щука");
  pdf = finish (kit, NULL);
  probe_is_sound (pdf);
  text = probe_text (pdf, 1);
  ck_assert_ptr_nonnull (strstr (text, "Żółć ½ Σίγμα Щука"));
  ck_assert (g_bytes_equal (same, other));
}
END_TEST

static void
tall_block (UnsootPageKit *kit, gconstpointer data)
{
  unsoot_page_paragraph (kit, &unsoot_text_body, data);
}

START_TEST (a_kept_block_is_measured_without_a_trace)
{
  g_autoptr (UnsootPageKit) kit = new_kit (UNSOOT_PAPER_LETTER);
  const double y = kit->y;
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *text = NULL;

  ck_near (unsoot_page_measure (kit, tall_block, "one\ntwo\nthree"), 3 * 14.0, 0.001);
  ck_near (kit->y, y, 0.0001);
  kit->y = kit->bottom - 30;
  unsoot_page_keep (kit, tall_block, "one\ntwo\nthree", 0);
  pdf = finish (kit, NULL);
  text = probe_text (pdf, 1);
  ck_assert_ptr_null (strstr (text, "one"));
  g_clear_pointer (&text, g_free);
  text = probe_text (pdf, 2);
  ck_assert_ptr_nonnull (strstr (text, "one two three"));
}
END_TEST

static Suite *
page_kit_suite (void)
{
  Suite *suite = suite_create ("page-kit");
  TCase *tests = tcase_create ("kit");

  tcase_add_checked_fixture (tests, setup, teardown);
  tcase_add_test (tests, sheets_have_their_standard_size);
  tcase_add_test (tests, sizes_are_found_by_slug);
  tcase_add_test (tests, text_is_as_wide_as_measured);
  tcase_add_test (tests, figures_have_one_width);
  tcase_add_test (tests, lines_break_where_they_may);
  tcase_add_test (tests, clipping_never_cuts_a_figure);
  tcase_add_test (tests, what_the_font_lacks_is_named);
  tcase_add_test (tests, what_needs_shaping_is_named);
  tcase_add_test (tests, text_that_is_not_utf8_is_said);
  tcase_add_test (tests, all_well_is_no_remark);
  tcase_add_test (tests, a_missing_font_names_its_package);
  tcase_add_test (tests, a_page_begins_at_its_top);
  tcase_add_test (tests, a_row_is_never_cut);
  tcase_add_test (tests, a_row_taller_than_a_page_goes_on);
  tcase_add_test (tests, figures_stand_at_the_right);
  tcase_add_test (tests, fonts_say_what_their_codes_are);
  tcase_add_test (tests, a_kept_block_is_measured_without_a_trace);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (page_kit_suite)
