/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-order.h"

#include <glib/gi18n-lib.h>

#include "page-block.h"
#include "page-kit.h"
#include "page-table.h"
#include "paper-words.h"

static char *
litres (gint64 ml)
{
  g_autofree char *number = unsoot_paper_quantity (ml);

  return g_strdup_printf (_ ("%s L"), number);
}

/* Where it is to be brought: the shop's name and address on lines of their own. */
static char *
place_of (const UnsootShopRow *shop)
{
  g_autofree char *town = unsoot_paper_join (" ", shop->town != NULL ? shop->town : "",
                                             shop->region != NULL ? shop->region : "",
                                             shop->postcode != NULL ? shop->postcode : "", NULL);

  return unsoot_paper_join ("\n", shop->name, shop->street != NULL ? shop->street : "",
                            town != NULL ? town : "", NULL);
}

static void
draw_facts (UnsootPageKit *kit, const UnsootOrderFile *file)
{
  const UnsootSupplierRow *supplier = file->supplier;
  g_autofree char *to
      = unsoot_paper_join ("\n", supplier->name, supplier->phone != NULL ? supplier->phone : "",
                           supplier->email != NULL ? supplier->email : "", NULL);
  g_autofree char *place = place_of (file->shop);
  g_autofree char *date = unsoot_paper_day (file->date);
  g_autofree char *expected
      = file->expected_on != NULL ? unsoot_paper_day (file->expected_on) : NULL;
  const UnsootFact who[] = { { _ ("To"), to, NULL }, { _ ("Deliver to"), place, NULL } };
  const UnsootFact what[] = {
    { _ ("Ordered"), date, NULL },
    { _ ("Expected"), expected != NULL ? expected : _ ("as soon as you can"), NULL },
    { _ ("Ordered by"), file->ordered_by, NULL },
    { _ ("Our tax number"), file->shop->tax_number, NULL },
  };

  unsoot_page_facts (kit, who, G_N_ELEMENTS (who), 2);
  unsoot_page_facts (kit, what, G_N_ELEMENTS (what), 5);
}

static void
draw_line (UnsootPageKit *kit, const UnsootOrderFile *file)
{
  const UnsootSupplyOrderRow *order = file->order;
  const UnsootColumn columns[] = {
    { _ ("Fluid"), -1, UNSOOT_ALIGN_LEFT },      { _ ("Packs"), 50, UNSOOT_ALIGN_RIGHT },
    { _ ("Each"), 60, UNSOOT_ALIGN_RIGHT },      { _ ("In all"), 60, UNSOOT_ALIGN_RIGHT },
    { _ ("A pack at"), 76, UNSOOT_ALIGN_RIGHT }, { _ ("Sum"), 84, UNSOOT_ALIGN_RIGHT },
  };
  g_autofree char *packs = unsoot_paper_whole (order->packs);
  g_autofree char *pack = litres (order->pack_ml);
  g_autofree char *all = litres (order->packs * order->pack_ml);
  g_autofree char *un = file->fluid->un_number != NULL
                            ? g_strdup_printf (_ ("UN %s"), file->fluid->un_number)
                            : NULL;
  const gboolean agreed = order->pack_cost_minor > 0;
  g_autofree char *price = agreed
                               ? unsoot_paper_money (order->pack_cost_minor, file->shop->currency)
                               : g_strdup (_ ("to be told"));
  g_autofree char *sum
      = agreed ? unsoot_paper_money (order->packs * order->pack_cost_minor, file->shop->currency)
               : g_strdup ("");
  const UnsootCell cells[] = {
    { UNSOOT_CELL_TEXT, .text = file->fluid->name, .note = un },
    { UNSOOT_CELL_TEXT, .text = packs },
    { UNSOOT_CELL_TEXT, .text = pack },
    { UNSOOT_CELL_TEXT, .text = all },
    { UNSOOT_CELL_TEXT, .text = price },
    { UNSOOT_CELL_TEXT, .text = sum },
  };
  UnsootTable table;

  unsoot_table_begin (&table, kit, columns, G_N_ELEMENTS (columns), TRUE);
  unsoot_table_row (&table, cells);
  unsoot_table_end (&table);
}

static void
draw_notes (UnsootPageKit *kit, const UnsootOrderFile *file)
{
  g_autoptr (GPtrArray) sentences = g_ptr_array_new_with_free_func (g_free);
  const UnsootNotice notice
      = { file->cancelled != NULL ? UNSOOT_NOTICE_CAUTION : UNSOOT_NOTICE_PLAIN,
          file->cancelled != NULL ? _ ("This order is cancelled") : NULL, sentences, NULL };

  if (file->cancelled != NULL)
    g_ptr_array_add (sentences, g_strdup (file->cancelled));
  else
    {
      g_autofree char *number = unsoot_paper_serial (file->order->number);
      g_ptr_array_add (sentences,
                       g_strdup_printf (_ ("Please put our order number, %s, on your delivery note "
                                           "and your invoice, and tell us if price or day differ."),
                                        number));
      g_ptr_array_add (sentences,
                       g_strdup (_ ("Send the current safety data sheet with the first delivery of "
                                    "a lot; the lot and its expiry must be on every pack.")));
    }
  if (file->order->note != NULL)
    g_ptr_array_add (sentences, g_strdup (file->order->note));
  unsoot_page_notice (kit, &notice);
}

GBytes *
unsoot_paper_order (const UnsootOrderFile *file, UnsootPaperSize size, char **remark,
                    GError **error)
{
  g_autoptr (UnsootPageKit) kit
      = unsoot_page_kit_new (size,
                             (UnsootPageHead){ .shop = file->shop,
                                               .title = g_strdup (_ ("Purchase order")),
                                               .number = unsoot_paper_serial (file->order->number),
                                               .subject = g_strdup (file->supplier->name),
                                               .date = unsoot_paper_day (file->date),
                                               .at = file->order->at },
                             error);

  if (kit == NULL)
    return NULL;
  draw_facts (kit, file);
  unsoot_page_skip (kit, 6);
  draw_line (kit, file);
  unsoot_page_skip (kit, 12);
  draw_notes (kit, file);
  return unsoot_page_kit_finish (kit, remark, error);
}

char *
unsoot_paper_order_file_name (const UnsootOrderFile *file)
{
  return g_strdup_printf ("order-%d-%s.pdf", (int) file->order->number, file->date);
}
