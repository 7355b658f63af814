/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is drawn rather than written: bar code, pictograms, side marks, bars, pictures. Poppler
 * turns the page into pixels, and the pixels are looked at. */
#include "code128.h"
#include "ghs-symbol.h"
#include "page-bars.h"
#include "page-block.h"
#include "page-mark.h"
#include "page-picture.h"
#include "picture-file.h"
#include "paper-fixture.h"
#include "paper-probe.h"
#include "suite.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <string.h>

static UnsootShopRow *shop;

/* A page with the kit's own head out of the way of what the tests draw, from 200 points down. */
static UnsootPageKit *
new_kit (void)
{
  GError *error = NULL;
  const UnsootPageHead head = {
    .shop = shop, .title = g_strdup ("Trial"), .number = g_strdup ("7"), .subject = g_strdup ("")
  };
  UnsootPageKit *kit = unsoot_page_kit_new (UNSOOT_PAPER_LETTER, head, &error);

  ck_no_error (error);
  return kit;
}

static void
setup (void)
{
  shop = unsoot_shop_row_new ();
  shop->name = g_strdup ("Larkmoor");
}

static void
teardown (void)
{
  unsoot_shop_row_free (shop);
}

typedef struct
{
  guint8 *data;
  int width, height;
  double scale; /* pixels in a point */
} Pixels;

static Pixels
look (UnsootPageKit *kit, int dpi)
{
  GError *error = NULL;
  g_autoptr (GBytes) pdf = unsoot_page_kit_finish (kit, NULL, &error);
  Pixels pixels = { .scale = dpi / 72.0 };

  ck_no_error (error);
  probe_is_sound (pdf);
  pixels.data = probe_pixels (pdf, 1, dpi, &pixels.width, &pixels.height);
  return pixels;
}

static const guint8 *
at (const Pixels *pixels, double x, double y)
{
  const int column = (int) (x * pixels->scale), row = (int) (y * pixels->scale);

  ck_assert (column >= 0 && column < pixels->width && row >= 0 && row < pixels->height);
  return pixels->data + 3 * (row * pixels->width + column);
}

static gboolean
is_dark (const guint8 *pixel)
{
  return pixel[0] < 90 && pixel[1] < 90 && pixel[2] < 90;
}

static gboolean
is_red (const guint8 *pixel)
{
  return pixel[0] > 150 && pixel[1] < 80 && pixel[2] < 80;
}

static gboolean
is_white (const guint8 *pixel)
{
  return pixel[0] > 240 && pixel[1] > 240 && pixel[2] > 240;
}

/* Share of pixels in a rectangle for which @test holds. */
static double
share (const Pixels *pixels, gboolean (*test) (const guint8 *), double x, double y, double width,
       double height)
{
  guint hits = 0, all = 0;

  for (double row = y; row < y + height; row += 1 / pixels->scale)
    for (double column = x; column < x + width; column += 1 / pixels->scale, all++)
      hits += test (at (pixels, column, row));
  return (double) hits / (double) all;
}

/* The printed bars, measured as a scanner does, are the widths that ISO/IEC 15417 gives for
 * AIM1234: 104 33 41 45 99 12 34 87 106 (its annex A.1, as quoted by secondary sources). */
START_TEST (bars_scan_as_the_standard_says)
{
  static const guint8 symbols[] = { 104, 33, 41, 45, 99, 12, 34, 87, 106 };
  g_autoptr (UnsootPageKit) kit = new_kit ();
  g_autoptr (GByteArray) expected = g_byte_array_new ();
  g_autoptr (GByteArray) widths = NULL;
  GError *error = NULL;
  const double module = 0.33 / 25.4 * 72.0;
  double right = 500, left;

  g_byte_array_append (expected, symbols, sizeof symbols);
  widths = unsoot_code128_widths (expected);
  left = right - unsoot_code128_modules (expected) * module;
  ck_assert (unsoot_page_barcode (kit, "AIM1234", right, 300, 24, &error));
  const Pixels pixels = look (kit, 600);
  double edge = left + 0.02;
  for (guint i = 0; i < widths->len; i++)
    {
      const double middle = edge + widths->data[i] * module / 2;

      ck_assert_int_eq (is_dark (at (&pixels, middle, 312)), i % 2 == 0);
      ck_assert_int_eq (is_dark (at (&pixels, edge + 0.12, 312)), i % 2 == 0);
      edge += widths->data[i] * module;
    }
  /* Ten modules stay white on either side. */
  ck_near (share (&pixels, is_white, left - 10 * module, 302, 10 * module - 0.1, 20), 1.0, 0.0001);
  ck_near (share (&pixels, is_white, right + 0.1, 302, 10 * module, 20), 1.0, 0.0001);
  g_free (pixels.data);
}
END_TEST

START_TEST (what_cannot_be_coded_is_said)
{
  g_autoptr (UnsootPageKit) kit = new_kit ();
  GError *error = NULL;

  ck_assert (!unsoot_page_barcode (kit, "Ñ", 500, 300, 24, &error));
  ck_assert_ptr_nonnull (error);
  g_clear_error (&error);
  ck_near (unsoot_page_barcode_width ("Ñ"), 0, 0.0001);
}
END_TEST

/* How many of the pixels of two drawings differ, each 90 points square; in percent. */
static double
difference (const Pixels *pixels, double x1, double y1, double x2, double y2)
{
  guint differ = 0, all = 0;

  for (double y = 0; y < 90; y += 1 / pixels->scale)
    for (double x = 0; x < 90; x += 1 / pixels->scale, all++)
      differ += is_dark (at (pixels, x1 + x, y1 + y)) != is_dark (at (pixels, x2 + x, y2 + y));
  return 100.0 * differ / all;
}

/* GHS annex 1: a square set at a point, a red frame wide enough to be clearly visible, a black
 * symbol on a white ground. */
START_TEST (pictograms_are_red_diamonds_with_a_symbol_of_their_own)
{
  g_autoptr (UnsootPageKit) kit = new_kit ();
  double x[UNSOOT_PICTOGRAMS], y[UNSOOT_PICTOGRAMS];

  for (int i = 1; i < UNSOOT_PICTOGRAMS; i++)
    {
      x[i] = 60 + (i - 1) % 5 * 100;
      y[i] = 200 + (i - 1) / 5 * 100;
      unsoot_page_ghs (kit, (UnsootPictogram) i, x[i], y[i], 90);
    }
  const Pixels pixels = look (kit, 144);
  for (int i = 1; i < UNSOOT_PICTOGRAMS; i++)
    {
      const double ink = share (&pixels, is_dark, x[i], y[i], 90, 90);

      ck_assert (is_red (at (&pixels, x[i] + 45, y[i] + 4)));
      ck_assert (is_red (at (&pixels, x[i] + 4, y[i] + 45)));
      ck_assert (is_red (at (&pixels, x[i] + 45, y[i] + 86)));
      ck_assert (is_red (at (&pixels, x[i] + 86, y[i] + 45)));
      ck_assert (is_white (at (&pixels, x[i] + 4, y[i] + 4)));
      ck_assert_msg (ink > 0.03 && ink < 0.35, "GHS%02d has %.3f ink", i, ink);
      for (int other = 1; other < i; other++)
        ck_assert (difference (&pixels, x[i], y[i], x[other], y[other]) > 2);
    }
  g_free (pixels.data);
}
END_TEST

static gboolean
is_inked (const guint8 *pixel)
{
  return !is_white (pixel);
}

/* How many strokes a line down the page from @y crosses. */
static guint
strokes_across (const Pixels *pixels, double x, double y, double height)
{
  gboolean inside = FALSE;
  guint strokes = 0;

  for (double row = y; row < y + height; row += 1 / pixels->scale)
    {
      const gboolean inked = is_inked (at (pixels, x, row));

      strokes += inked && !inside;
      inside = inked;
    }
  return strokes;
}

/* Told apart in grey too: one is solid, the other has gaps. */
START_TEST (sides_differ_without_colour)
{
  g_autoptr (UnsootPageKit) kit = new_kit ();

  unsoot_page_side_band (kit, UNSOOT_SIDE_FUEL, 100, 200, 20, 100);
  unsoot_page_side_band (kit, UNSOOT_SIDE_INTAKE, 200, 200, 20, 100);
  unsoot_page_side_mark (kit, UNSOOT_SIDE_FUEL, 300, 200, 60);
  unsoot_page_side_mark (kit, UNSOOT_SIDE_INTAKE, 400, 200, 60);
  const Pixels pixels = look (kit, 300);
  ck_assert (share (&pixels, is_inked, 102, 202, 16, 96) > 0.999);
  const double hatch = share (&pixels, is_inked, 202, 202, 16, 96);
  ck_assert_msg (hatch > 0.25 && hatch < 0.75, "%f", hatch);
  ck_assert (is_inked (at (&pixels, 330, 240)));
  ck_assert_uint_eq (strokes_across (&pixels, 330, 202, 56), 1);
  ck_assert_uint_eq (strokes_across (&pixels, 430, 202, 56), 3);
  g_free (pixels.data);
}
END_TEST

/* 38 is drawn 38/14 as long as 14; the whisker reaches beyond the end of the bar. */
START_TEST (bars_are_as_long_as_what_they_say)
{
  g_autoptr (UnsootPageKit) kit = new_kit ();
  const UnsootBars bars = { .title = "Smoke opacity",
                            .before = 38,
                            .after = 14,
                            .before_tolerance = 2,
                            .after_tolerance = 2,
                            .before_text = "38.0",
                            .after_text = "14.0",
                            .unit = "%" };
  double ends[2] = { 0, 0 };

  kit->y = 200;
  unsoot_page_bars (kit, &bars);
  const Pixels pixels = look (kit, 288);
  const double zero = kit->left + unsoot_page_width (kit) * 0.30 + 42;
  for (int i = 0; i < 2; i++)
    /* Just above the lower edge: below the whisker. */
    for (double x = zero + 2; x < kit->right - 79; x += 0.25)
      if (is_inked (at (&pixels, x, 200 + i * 15 + (i == 0 ? 0.3 : 9.8))))
        ends[i] = x - zero;
  ck_near (ends[0] / ends[1], 38.0 / 14.0, 0.03);
  ck_assert (is_dark (at (&pixels, zero + ends[1] * 15.5 / 14, 200 + 15 + 5.5)));
  g_free (pixels.data);
}
END_TEST

START_TEST (pictures_come_through)
{
  g_autoptr (UnsootPageKit) kit = new_kit ();
  g_autoptr (GBytes) picture = paper_fixture_picture (300, 150, FALSE);

  unsoot_page_picture (kit, picture, "valve, before", 100, 200, 200, 200);
  const Pixels pixels = look (kit, 72);
  ck_assert (is_dark (at (&pixels, 110, 210)));
  ck_assert (is_dark (at (&pixels, 290, 290)));
  ck_assert (is_white (at (&pixels, 200, 310)));
  ck_assert_uint_eq (kit->remarks->len, 0);
  g_free (pixels.data);
}
END_TEST

/* Cut at every sixteenth byte, bits turned, empty, and no picture at all. */
START_TEST (damaged_pictures_are_said_and_never_crash)
{
  g_autoptr (GBytes) picture = paper_fixture_picture (64, 48, FALSE);
  gsize size;
  const guint8 *data = g_bytes_get_data (picture, &size);

  for (gsize cut = 0; cut < size - 16; cut += 16)
    {
      g_autoptr (GBytes) part = g_bytes_new (data, cut);
      UnsootPicture read = { NULL };

      ck_assert (!unsoot_picture_read (&read, part));
    }
  for (gsize turned = 0; turned < size; turned += 7)
    {
      guint8 *copy = g_memdup2 (data, size);
      UnsootPicture read = { NULL };
      g_autoptr (GBytes) bytes = NULL;

      copy[turned] ^= 0x55;
      bytes = g_bytes_new_take (copy, size);
      if (unsoot_picture_read (&read, bytes))
        ck_assert_uint_gt (read.width, 0);
      unsoot_picture_clear (&read);
    }
}
END_TEST

/* A file that breaks off is damaged, even where a reader would show what came so far. */
START_TEST (half_a_picture_is_damaged)
{
  g_autoptr (GdkPixbuf) pixels = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, 200, 150);
  UnsootPicture read = { NULL };
  char *buffer = NULL;
  gsize size = 0;

  gdk_pixbuf_fill (pixels, 0x336699ff);
  ck_assert (gdk_pixbuf_save_to_buffer (pixels, &buffer, &size, "png", NULL, NULL));
  g_autoptr (GBytes) half = g_bytes_new (buffer, size / 2);
  g_autoptr (GBytes) whole = g_bytes_new_take (buffer, size);
  ck_assert (!unsoot_picture_read (&read, half));
  ck_assert (unsoot_picture_read (&read, whole));
  ck_assert_uint_eq (read.width, 200);
  unsoot_picture_clear (&read);
}
END_TEST

START_TEST (a_damaged_picture_leaves_a_sentence)
{
  g_autoptr (UnsootPageKit) kit = new_kit ();
  g_autoptr (GBytes) noise = g_bytes_new_static ("\x89PNG\r\n\x1a\nnot a picture", 21);
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *remark = NULL;
  g_autofree char *text = NULL;

  unsoot_page_picture (kit, noise, "EGR valve, before", 100, 200, 200, 150);
  unsoot_page_picture (kit, NULL, "EGR valve, after", 320, 200, 200, 150);
  pdf = unsoot_page_kit_finish (kit, &remark, NULL);
  probe_is_sound (pdf);
  text = probe_text (pdf, 1);
  ck_assert_ptr_nonnull (strstr (remark, "“EGR valve, before” is damaged"));
  ck_assert_ptr_nonnull (strstr (remark, "“EGR valve, after” is damaged"));
  ck_assert_ptr_nonnull (strstr (text, "is damaged and can't be shown"));
}
END_TEST

static Suite *
page_marks_suite (void)
{
  Suite *suite = suite_create ("page-marks");
  TCase *tests = tcase_create ("marks");

  tcase_add_checked_fixture (tests, setup, teardown);
  tcase_add_test (tests, bars_scan_as_the_standard_says);
  tcase_add_test (tests, what_cannot_be_coded_is_said);
  tcase_add_test (tests, pictograms_are_red_diamonds_with_a_symbol_of_their_own);
  tcase_add_test (tests, sides_differ_without_colour);
  tcase_add_test (tests, bars_are_as_long_as_what_they_say);
  tcase_add_test (tests, pictures_come_through);
  tcase_add_test (tests, damaged_pictures_are_said_and_never_crash);
  tcase_add_test (tests, half_a_picture_is_damaged);
  tcase_add_test (tests, a_damaged_picture_leaves_a_sentence);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (page_marks_suite)
