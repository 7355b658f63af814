/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "supply-deeds.h"

#include <glib/gi18n-lib.h>

#include "deed-dialog.h"
#include "format.h"
#include "money.h"
#include "stocks.h"

#define VOLUME_HINT N_ ("As you have it: 5 L, 1 qt, 2 x 5 L")

char *
unsoot_supply_packs_words (gint64 packs, gint64 pack_ml)
{
  g_autofree char *each = unsoot_format_litres (pack_ml);

  return packs == 1 ? g_steal_pointer (&each) : g_strdup_printf ("%d × %s", (int) packs, each);
}

char *
unsoot_supply_order_words (const UnsootSupplyOrder *order)
{
  g_autofree char *packs = unsoot_supply_packs_words (order->order->packs, order->order->pack_ml);

  /* Translators: number of an order, “2 × 5 L”, a supplier */
  return g_strdup_printf (_ ("Order %d: %s from %s"), (int) order->order->number, packs,
                          order->supplier->name);
}

static gboolean
place (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *deed, GError **error)
{
  g_autoptr (UnsootSupplyOrderRow) row = unsoot_supply_order_row_new ();
  g_autoptr (UnsootSupplyOrder) order = NULL;

  row->fluid_id = deed->record;
  row->supplier_id = deed->values[0].number;
  row->packs = deed->values[1].number;
  row->pack_ml = deed->values[2].number;
  row->pack_cost_minor = deed->values[3].number;
  row->expected_on = g_strdup (unsoot_deed_text (deed, 4));
  row->note = g_strdup (unsoot_deed_text (deed, 5));
  if (!unsoot_supply_order_place (db, who, row, error))
    return FALSE;
  deed->undo_id = row->id;
  order = unsoot_supply_order_load (db, row->id, NULL);
  deed->said = order != NULL ? unsoot_supply_order_words (order) : NULL;
  return TRUE;
}

static gboolean
take_back_order (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *deed, GError **error)
{
  return unsoot_supply_order_cancel (db, who, deed->undo_id, _ ("taken back at once"), error);
}

static gboolean
note_undo (UnsootDb *db, UnsootDeedOrder *deed, gint64 lot_id, GError **error)
{
  g_autoptr (GPtrArray) moves = unsoot_stock_moves (db, lot_id, error);

  if (moves != NULL && moves->len > 0)
    deed->undo_id = ((UnsootStockMoveRow *) g_ptr_array_index (moves, moves->len - 1))->id;
  return moves != NULL;
}

static gboolean
receive (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *deed, GError **error)
{
  g_autoptr (UnsootLotRow) lot = unsoot_lot_row_new ();
  const gint64 order_id = deed->values[0].number, ml = deed->values[2].number;
  g_autofree char *volume = unsoot_format_litres (ml);

  lot->fluid_id = deed->record;
  lot->code = g_strdup (deed->values[1].text);
  lot->expires_on = g_strdup (unsoot_deed_text (deed, 3));
  if (unsoot_deed_text (deed, 4) != NULL && ml > 0
      && !unsoot_money_ratio (deed->values[4].number, 1000, ml, &lot->cost_minor_per_litre, error))
    return FALSE;
  if (!(order_id != 0 ? unsoot_supply_order_receive (db, who, order_id, lot, ml, error)
                      : unsoot_stock_deliver (db, who, lot, ml, error)))
    return FALSE;
  /* Translators: a volume and the code of a lot */
  deed->said = g_strdup_printf (_ ("%s received, lot %s"), volume, lot->code);
  return note_undo (db, deed, lot->id, error);
}

static gboolean
take_back_delivery (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *deed, GError **error)
{
  return unsoot_stock_reverse (db, who, deed->undo_id, _ ("taken back at once"), error);
}

static gboolean
expect (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *deed, GError **error)
{
  return unsoot_supply_order_expect (db, who, deed->record, unsoot_deed_text (deed, 0),
                                     unsoot_deed_text (deed, 1), error);
}

static gboolean
cancel (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *deed, GError **error)
{
  deed->undo_id = deed->record;
  return unsoot_supply_order_cancel (db, who, deed->record, deed->values[0].text, error);
}

static gboolean
reopen (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *deed, GError **error)
{
  return unsoot_supply_order_reopen (db, who, deed->undo_id, _ ("taken back at once"), error);
}

static const UnsootDeedForm place_form
    = { .slug = "supply-place",
        .title = N_ ("Order a fluid"),
        .verb = N_ ("Order"),
        .done = N_ ("Ordered"),
        .deed = UNSOOT_DEED_ORDER,
        .n_fields = 6,
        .fields = { { .label = N_ ("From"), .kind = UNSOOT_ASK_CHOICE },
                    { .label = N_ ("How many packs"), .kind = UNSOOT_ASK_COUNT },
                    { .label = N_ ("In each"), .kind = UNSOOT_ASK_VOLUME },
                    { .label = N_ ("Price of each"), .kind = UNSOOT_ASK_MONEY, .optional = TRUE },
                    { .label = N_ ("Expected"),
                      .kind = UNSOOT_ASK_DAY,
                      .optional = TRUE,
                      .hint = N_ ("Left out, it is reckoned from the supplier's usual days") },
                    { .label = N_ ("Note"),
                      .kind = UNSOOT_ASK_TEXT,
                      .optional = TRUE,
                      .hint = N_ ("Who took the call, their number for it …") } },
        .carry_out = place,
        .undo = take_back_order };
static const UnsootDeedForm receive_form
    = { .slug = "supply-receive",
        .title = N_ ("Receive a delivery"),
        .verb = N_ ("Receive"),
        .done = N_ ("Received"),
        .deed = UNSOOT_DEED_RECEIVE_DELIVERY,
        .n_fields = 5,
        .fields = { { .label = N_ ("Of order"), .kind = UNSOOT_ASK_CHOICE },
                    { .label = N_ ("Lot"),
                      .kind = UNSOOT_ASK_TEXT,
                      .hint = N_ ("The maker's number, from the label") },
                    { .label = N_ ("How much of this lot"),
                      .kind = UNSOOT_ASK_VOLUME,
                      .hint = N_ ("Less than ordered: the rest stays on order") },
                    { .label = N_ ("Expires"),
                      .kind = UNSOOT_ASK_DAY,
                      .optional = TRUE,
                      .hint = N_ ("2027-03-31; a month alone, 2027-03, means its last day") },
                    { .label = N_ ("Cost of all of it"),
                      .kind = UNSOOT_ASK_MONEY,
                      .optional = TRUE,
                      .hint = N_ ("Left out, it is as agreed with the order") } },
        .carry_out = receive,
        .undo = take_back_delivery };
static const UnsootDeedForm expect_form
    = { .slug = "supply-expect",
        .title = N_ ("Another day for an order"),
        .verb = N_ ("Record"),
        .done = N_ ("The new day is recorded"),
        .deed = UNSOOT_DEED_ORDER,
        .n_fields = 2,
        .fields
        = { { .label = N_ ("Expected now"), .kind = UNSOOT_ASK_DAY, .hint = N_ ("2027-03-31") },
            { .label = N_ ("Why"), .kind = UNSOOT_ASK_TEXT, .optional = TRUE } },
        .carry_out = expect };
static const UnsootDeedForm cancel_form
    = { .slug = "supply-cancel",
        .title = N_ ("Cancel an order"),
        .verb = N_ ("Cancel the order"),
        .done = N_ ("Cancelled: nothing of it counts as on order any more"),
        .deed = UNSOOT_DEED_ORDER,
        .destroys = TRUE,
        .n_fields = 1,
        .fields
        = { { .label = N_ ("Why"), .kind = UNSOOT_ASK_TEXT, .hint = N_ ("Out of stock there …") } },
        .carry_out = cancel,
        .undo = reopen };

/* What is suggested, else one of its first pack. */
static void
set_packs (UnsootDeedDialog *dialog, const UnsootFluidSupply *supply, UnsootSession *session)
{
  const char *currency = unsoot_session_get_shop (session)->currency;
  const gsize at = supply->has_order ? supply->order.pack : 0;
  const UnsootPackRow *pack = supply->packs->len > at ? supply->packs->pdata[at] : NULL;
  g_autofree char *count
      = g_strdup_printf ("%d", supply->has_order ? (int) supply->order.count : 1);
  g_autofree char *each = pack != NULL ? unsoot_format_litres (pack->ml) : NULL;
  g_autofree char *price = pack != NULL ? unsoot_money_plain (pack->cost_minor, currency) : NULL;

  unsoot_deed_dialog_set_text (dialog, 1, count);
  unsoot_deed_dialog_set_text (dialog, 2, each);
  unsoot_deed_dialog_set_text (dialog, 3, price);
}

void
unsoot_supply_place_open (GtkWidget *over, UnsootSession *session, const UnsootFluidSupply *supply,
                          const GPtrArray *suppliers)
{
  UnsootDeedDialog *dialog = unsoot_deed_dialog_new (over, session, &place_form, supply->fluid->id);
  g_autofree char *coming = unsoot_format_litres (supply->stock->on_order_ml);
  g_autofree char *unpromised = unsoot_format_litres (supply->stock->free_ml);
  /* Translators: a fluid, what of it is free, and what is on order */
  g_autofree char *about
      = g_strdup_printf (_ ("%s · %s free, %s on order"), supply->fluid->name, unpromised, coming);

  unsoot_deed_dialog_say (dialog, about);
  for (guint i = 0; i < suppliers->len; i++)
    {
      const UnsootSupplierRow *supplier = suppliers->pdata[i];
      unsoot_deed_dialog_add_choice (dialog, 0, supplier->id, supplier->name);
    }
  if (supply->fluid->supplier_id != 0)
    unsoot_deed_dialog_set_choice (dialog, 0, supply->fluid->supplier_id);
  set_packs (dialog, supply, session);
  unsoot_deed_dialog_open (dialog);
}

void
unsoot_supply_receive_open (GtkWidget *over, UnsootSession *session,
                            const UnsootFluidSupply *supply, gint64 order_id)
{
  UnsootDeedDialog *dialog
      = unsoot_deed_dialog_new (over, session, &receive_form, supply->fluid->id);
  const UnsootSupplyOrder *chosen = NULL;
  g_autofree char *volume = NULL;

  unsoot_deed_dialog_say (dialog, supply->fluid->name);
  for (guint i = 0; i < supply->orders->len; i++)
    {
      const UnsootSupplyOrder *order = supply->orders->pdata[i];
      g_autofree char *words = unsoot_supply_order_words (order);
      unsoot_deed_dialog_add_choice (dialog, 0, order->order->id, words);
      if (chosen == NULL || order->order->id == order_id)
        chosen = order;
    }
  unsoot_deed_dialog_add_choice (dialog, 0, 0, _ ("None: it was not ordered here"));
  unsoot_deed_dialog_set_choice (dialog, 0, chosen != NULL ? chosen->order->id : 0);
  volume = chosen != NULL ? unsoot_format_litres (chosen->open_ml) : NULL;
  unsoot_deed_dialog_set_text (dialog, 2, volume);
  unsoot_deed_dialog_open (dialog);
}

static void
open_for (GtkWidget *over, UnsootSession *session, const UnsootDeedForm *form,
          const UnsootSupplyOrder *order)
{
  UnsootDeedDialog *dialog = unsoot_deed_dialog_new (over, session, form, order->order->id);
  g_autofree char *words = unsoot_supply_order_words (order);

  unsoot_deed_dialog_say (dialog, words);
  unsoot_deed_dialog_open (dialog);
}

void
unsoot_supply_expect_open (GtkWidget *over, UnsootSession *session, const UnsootSupplyOrder *order)
{
  open_for (over, session, &expect_form, order);
}

void
unsoot_supply_cancel_open (GtkWidget *over, UnsootSession *session, const UnsootSupplyOrder *order)
{
  open_for (over, session, &cancel_form, order);
}
