/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page-head.h"

#include <glib/gi18n-lib.h>

#include "page-block.h"
#include "page-draw.h"
#include "page-text.h"

/* A fifth more to the shop: its address runs longer than a paper's title. */
#define SHOP_SHARE 0.6
#define GUTTER 12.0
#define BARCODE_HEIGHT 24.0

static char *
join_filled (const char *separator, const char *a, const char *b, const char *c)
{
  const char *parts[] = { a, b, c };
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (parts[i] != NULL && *parts[i] != '\0')
      g_string_append_printf (text, "%s%s", text->len > 0 ? separator : "", parts[i]);
  return g_string_free (text, FALSE);
}

static double
write_wrapped (UnsootPageKit *kit, const UnsootTextStyle *style, UnsootAlign align, double x,
               double top, double width, const char *text)
{
  g_autoptr (GPtrArray) lines = unsoot_page_wrap (kit, style, text, width);

  return unsoot_page_write_lines (kit, style, align, x, top, lines);
}

static double
write_shop (UnsootPageKit *kit, double top, double width)
{
  const UnsootShopRow *shop = kit->head.shop;
  g_autofree char *place = join_filled (" ", shop->town, shop->region, shop->postcode);
  g_autofree char *address = join_filled (" · ", shop->street, place, NULL);
  g_autofree char *reach = join_filled (" · ", shop->phone, shop->email, NULL);
  double y = top;

  y += write_wrapped (kit, &unsoot_text_head, UNSOOT_ALIGN_LEFT, kit->left, y, width, shop->name);
  y += write_wrapped (kit, &unsoot_text_small, UNSOOT_ALIGN_LEFT, kit->left, y, width, address);
  y += write_wrapped (kit, &unsoot_text_small, UNSOOT_ALIGN_LEFT, kit->left, y, width, reach);
  return y;
}

/* The bar code ends at the margin, the date stands before it; gives the height of both. */
static double
write_date (UnsootPageKit *kit, double top, double width)
{
  g_autoptr (GError) error = NULL;
  double right = kit->right;

  if (kit->head.code == NULL)
    return write_wrapped (kit, &unsoot_text_small, UNSOOT_ALIGN_RIGHT, right, top, width,
                          kit->head.date);
  if (!unsoot_page_barcode (kit, kit->head.code, right, top + 4, BARCODE_HEIGHT, &error))
    unsoot_page_remark (kit, g_strdup (error->message));
  right -= unsoot_page_barcode_width (kit->head.code);
  unsoot_page_write (kit, &unsoot_text_small, UNSOOT_ALIGN_RIGHT, right, top + 4 + BARCODE_HEIGHT,
                     kit->head.date);
  return BARCODE_HEIGHT + 4;
}

void
unsoot_page_draw_first_head (UnsootPageKit *kit)
{
  const double width = unsoot_page_width (kit) - GUTTER;
  const double title_width = width * (1.0 - SHOP_SHARE);
  g_autofree char *title = join_filled (" ", kit->head.title, kit->head.number, NULL);
  double right = kit->left * 0.75;
  double left = right + 2.0;

  left = write_shop (kit, left, width * SHOP_SHARE);
  right += write_wrapped (kit, &unsoot_text_title, UNSOOT_ALIGN_RIGHT, kit->right, right,
                          title_width, title);
  right += write_date (kit, right, title_width);
  kit->y = MAX (left, right) + 6;
  unsoot_page_rule (kit, kit->left, kit->right, kit->y, 1.4, &unsoot_tone_accent);
  kit->y += 12;
}

void
unsoot_page_draw_later_head (UnsootPageKit *kit)
{
  const double baseline = 13.0 * UNSOOT_MM;
  const double width = unsoot_page_width (kit) - GUTTER;
  g_autofree char *title = join_filled (" ", kit->head.title, kit->head.number, NULL);
  g_autofree char *subject = NULL;
  g_autofree char *shop = NULL;
  const double used = unsoot_page_text_width (kit, &unsoot_text_small_bold, title) + GUTTER;

  shop = unsoot_page_clip (kit, &unsoot_text_small, kit->head.shop->name, (width - used) * 0.4);
  subject = unsoot_page_clip (kit, &unsoot_text_small, kit->head.subject, (width - used) * 0.6);
  unsoot_page_write (kit, &unsoot_text_small_bold, UNSOOT_ALIGN_LEFT, kit->left, baseline, title);
  unsoot_page_write (kit, &unsoot_text_small, UNSOOT_ALIGN_LEFT, kit->left + used, baseline,
                     subject);
  unsoot_page_write (kit, &unsoot_text_small, UNSOOT_ALIGN_RIGHT, kit->right, baseline, shop);
  unsoot_page_rule (kit, kit->left, kit->right, baseline + 5, 1.4, &unsoot_tone_accent);
  kit->y = baseline + 5 + 12;
}

/* What could not be shown is said where the reader sees the mark. */
static char *
foot_text (UnsootPageKit *kit)
{
  if (g_hash_table_size (kit->lacking) > 0 || kit->malformed)
    return g_strdup (_ ("A mark in the text stands for a sign that could not be printed."));
  return join_filled (" · ", kit->head.shop->name, kit->head.shop->phone, NULL);
}

void
unsoot_page_draw_foot (UnsootPageKit *kit, guint number)
{
  const double baseline = kit->height - 10.0 * UNSOOT_MM;
  /* Translators: number of this page, number of pages */
  g_autofree char *count = g_strdup_printf (_ ("Page %u of %u"), number, kit->pages->len);
  g_autofree char *whole = foot_text (kit);
  g_autofree char *left
      = unsoot_page_clip (kit, &unsoot_text_small, whole, unsoot_page_width (kit) * 0.75);

  unsoot_page_rule (kit, kit->left, kit->right, baseline - 12, 0.6, &unsoot_tone_rule);
  unsoot_page_write (kit, &unsoot_text_small, UNSOOT_ALIGN_LEFT, kit->left, baseline, left);
  unsoot_page_write (kit, &unsoot_text_small, UNSOOT_ALIGN_RIGHT, kit->right, baseline, count);
}
