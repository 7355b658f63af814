/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fluid-deeds.h"

#include <glib/gi18n-lib.h>

#include "deed-button.h"
#include "deed-dialog.h"
#include "format.h"
#include "lots.h"
#include "money.h"
#include "run-postings.h"
#include "shops.h"
#include "stocks.h"
#include "trade-error.h"

#define VOLUME_HINT N_ ("As you have it: 5 L, 1 qt, 2 x 5 L")

/* The newest move of a lot can be taken back at once. */
static gboolean
note_undo (UnsootDb *db, UnsootDeedOrder *order, gint64 lot_id, GError **error)
{
  g_autoptr (GPtrArray) moves = unsoot_stock_moves (db, lot_id, error);

  if (moves == NULL)
    return FALSE;
  if (moves->len > 0)
    order->undo_id = ((UnsootStockMoveRow *) g_ptr_array_index (moves, moves->len - 1))->id;
  return TRUE;
}

static gboolean
take_back (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_stock_reverse (db, who, order->undo_id, _ ("taken back at once"), error);
}

static gboolean
receive (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootLotRow) lot = unsoot_lot_row_new ();
  const gint64 ml = order->values[1].number;
  g_autofree char *volume = unsoot_format_litres (ml);

  lot->fluid_id = order->record;
  lot->code = g_strdup (order->values[0].text);
  lot->expires_on = g_strdup (unsoot_deed_text (order, 2));
  if (unsoot_deed_text (order, 3) != NULL && ml > 0
      && !unsoot_money_ratio (order->values[3].number, 1000, ml, &lot->cost_minor_per_litre, error))
    return FALSE;
  if (!unsoot_stock_deliver (db, who, lot, ml, error))
    return FALSE;
  /* Translators: a volume and the code of a lot */
  order->said = g_strdup_printf (_ ("%s received, lot %s"), volume, lot->code);
  return note_undo (db, order, lot->id, error);
}

static gboolean
open_container (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  g_autofree char *today = shop != NULL ? unsoot_shop_date (shop, who->now) : NULL;

  return today != NULL
         && unsoot_container_open (db, who, order->values[0].number, order->values[1].text,
                                   order->values[2].number, today, error)
                != 0;
}

static gboolean
count (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  const gint64 lot_id = order->values[0].number, counted = order->values[1].number;
  gint64 before = 0;

  if (!unsoot_run_lot_left (db, lot_id, &before, error)
      || !unsoot_stock_count (db, who, lot_id, counted, unsoot_deed_text (order, 2), error))
    return FALSE;
  if (before == counted)
    {
      order->said = g_strdup (_ ("Counted: as the book says"));
      return TRUE;
    }
  g_autofree char *by = unsoot_format_litres (ABS (counted - before));
  order->said = counted > before
                    /* Translators: a volume */
                    ? g_strdup_printf (_ ("Counted: %s more than the book said"), by)
                    : g_strdup_printf (_ ("Counted: %s less than the book said"), by);
  return note_undo (db, order, lot_id, error);
}

/* @sign: −1 takes out. */
static gboolean
post (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, const char *kind, gint64 sign,
      GError **error)
{
  g_autoptr (UnsootStockMoveRow) move = unsoot_stock_move_row_new ();

  move->lot_id = order->values[0].number;
  move->kind = g_strdup (kind);
  move->ml = sign * order->values[2].number;
  move->reason = g_strdup (order->values[3].text);
  if (!unsoot_stock_post (db, who, move, error))
    return FALSE;
  order->undo_id = move->id;
  return TRUE;
}

static gboolean
waste (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return post (db, who, order, order->values[1].number == 0 ? "spill" : "waste", -1, error);
}

static gboolean
adjust (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return post (db, who, order, "correction", order->values[1].number == 0 ? -1 : 1, error);
}

static gboolean
stop_lot (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_lot_stop (db, who, order->record, order->values[0].text, error);
}

static gboolean
release_lot (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_lot_stop (db, who, order->record, NULL, error);
}

static gboolean
move_back (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_stock_reverse (db, who, order->record, order->values[0].text, error);
}

static gboolean
emptied (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_container_emptied (db, who, order->record, error);
}

static const char *const waste_kinds[] = { N_ ("Spilled"), N_ ("To waste"), NULL };
static const char *const signs[] = { N_ ("Less"), N_ ("More"), NULL };

static const UnsootDeedForm forms[UNSOOT_FLUID_DEEDS] = {
  [UNSOOT_FLUID_RECEIVE]
  = { .slug = "receive",
      .title = N_ ("Receive a delivery"),
      .verb = N_ ("Receive"),
      .done = N_ ("Received"),
      .deed = UNSOOT_DEED_RECEIVE_DELIVERY,
      .n_fields = 4,
      .fields = { { .label = N_ ("Lot"),
                    .kind = UNSOOT_ASK_TEXT,
                    .hint = N_ ("The maker's number, from the label") },
                  { .label = N_ ("How much"), .kind = UNSOOT_ASK_VOLUME, .hint = VOLUME_HINT },
                  { .label = N_ ("Expires"),
                    .kind = UNSOOT_ASK_DAY,
                    .optional = TRUE,
                    .hint = N_ ("2027-03-31; a month alone, 2027-03, means its last day") },
                  { .label = N_ ("Cost of all of it"),
                    .kind = UNSOOT_ASK_MONEY,
                    .optional = TRUE,
                    .hint = N_ ("Left out where it is not known yet") } },
      .carry_out = receive,
      .undo = take_back },
  [UNSOOT_FLUID_OPEN]
  = { .slug = "open-container",
      .title = N_ ("Open a container"),
      .verb = N_ ("Open"),
      .done = N_ ("Opened: its own date runs from today"),
      .deed = UNSOOT_DEED_POST_STOCK,
      .n_fields = 3,
      .fields
      = { { .label = N_ ("Of lot"), .kind = UNSOOT_ASK_CHOICE },
          { .label = N_ ("What is written on it"), .kind = UNSOOT_ASK_TEXT, .hint = N_ ("Can 4") },
          { .label = N_ ("Its size"), .kind = UNSOOT_ASK_VOLUME, .hint = VOLUME_HINT } },
      .carry_out = open_container },
  [UNSOOT_FLUID_COUNT]
  = { .slug = "count",
      .title = N_ ("Count a lot"),
      .verb = N_ ("Post the count"),
      .done = N_ ("Counted"),
      .deed = UNSOOT_DEED_ADJUST_STOCK,
      .n_fields = 3,
      .fields = { { .label = N_ ("Lot"), .kind = UNSOOT_ASK_CHOICE },
                  { .label = N_ ("What is there"),
                    .kind = UNSOOT_ASK_VOLUME,
                    .hint = N_ ("All of it, opened containers too: 12.5 L. The difference to the "
                                "book is posted.") },
                  { .label = N_ ("Why it differs"), .kind = UNSOOT_ASK_TEXT, .optional = TRUE } },
      .carry_out = count,
      .undo = take_back },
  [UNSOOT_FLUID_WASTE]
  = { .slug = "waste",
      .title = N_ ("Spill or waste"),
      .verb = N_ ("Take out"),
      .done = N_ ("Taken out of the lot"),
      .deed = UNSOOT_DEED_RECORD_WASTE,
      .n_fields = 4,
      .fields
      = { { .label = N_ ("Of lot"), .kind = UNSOOT_ASK_CHOICE },
          { .label = N_ ("What happened"), .kind = UNSOOT_ASK_CHOICE, .words = waste_kinds },
          { .label = N_ ("How much"), .kind = UNSOOT_ASK_VOLUME, .hint = VOLUME_HINT },
          { .label = N_ ("Why"),
            .kind = UNSOOT_ASK_TEXT,
            .hint = N_ ("Knocked over, expired … Dispose of it by local rules.") } },
      .carry_out = waste,
      .undo = take_back },
  [UNSOOT_FLUID_ADJUST]
  = { .slug = "adjust",
      .title = N_ ("Correct a lot"),
      .verb = N_ ("Post the correction"),
      .done = N_ ("Corrected"),
      .deed = UNSOOT_DEED_ADJUST_STOCK,
      .n_fields = 4,
      .fields = { { .label = N_ ("Lot"), .kind = UNSOOT_ASK_CHOICE },
                  { .label = N_ ("There is"), .kind = UNSOOT_ASK_CHOICE, .words = signs },
                  { .label = N_ ("By how much"), .kind = UNSOOT_ASK_VOLUME, .hint = VOLUME_HINT },
                  { .label = N_ ("Why"), .kind = UNSOOT_ASK_TEXT } },
      .carry_out = adjust,
      .undo = take_back },
};

static const UnsootDeedForm stop_form
    = { .slug = "stop-lot",
        .title = N_ ("Stop the use of a lot"),
        .verb = N_ ("Stop its use"),
        .done = N_ ("Nobody is offered this lot any more"),
        .deed = UNSOOT_DEED_HOLD_LOT,
        .n_fields = 1,
        .fields = { { .label = N_ ("Why"),
                      .kind = UNSOOT_ASK_TEXT,
                      .hint = N_ ("Recalled by the maker, cloudy …") } },
        .carry_out = stop_lot };
static const UnsootDeedForm release_form = { .slug = "release-lot",
                                             .title = N_ ("Release a lot"),
                                             .verb = N_ ("Release"),
                                             .done = N_ ("The lot may be used again"),
                                             .deed = UNSOOT_DEED_HOLD_LOT,
                                             .carry_out = release_lot };
static const UnsootDeedForm back_form = {
  .slug = "move-back",
  .title = N_ ("Take a move back"),
  .verb = N_ ("Take back"),
  .done = N_ ("Taken back by a counter-posting; both stay in the book"),
  .deed = UNSOOT_DEED_ADJUST_STOCK,
  .n_fields = 1,
  .fields
  = { { .label = N_ ("Why"), .kind = UNSOOT_ASK_TEXT, .hint = N_ ("Wrong lot, entered twice …") } },
  .carry_out = move_back
};
static const UnsootDeedForm empty_form = { .slug = "container-empty",
                                           .title = N_ ("Container empty"),
                                           .verb = N_ ("Empty"),
                                           .done = N_ ("The container is empty"),
                                           .deed = UNSOOT_DEED_POST_STOCK,
                                           .carry_out = emptied };

GtkWidget *
unsoot_fluid_deed_button_new (UnsootFluidDeed deed, UnsootSession *session)
{
  static const char *const labels[UNSOOT_FLUID_DEEDS]
      = { N_ ("Receive…"), N_ ("Open a container…"), N_ ("Count…"), N_ ("Spill or waste…"),
          N_ ("Correct…") };

  return unsoot_deed_button_new (session, forms[deed].deed, _ (labels[deed]), NULL);
}

static void
add_lots (UnsootDeedDialog *dialog, GPtrArray *lots, gint64 lot_id)
{
  for (guint i = 0; i < lots->len; i++)
    {
      const UnsootLotStock *stock = g_ptr_array_index (lots, i);
      g_autofree char *volume = unsoot_format_litres (stock->left_ml);
      /* Translators: the code of a lot and what is left of it */
      g_autofree char *words = g_strdup_printf (_ ("%s, %s left"), stock->lot->code, volume);
      unsoot_deed_dialog_add_choice (dialog, 0, stock->lot->id, words);
    }
  if (lot_id != 0)
    {
      g_autofree char *part = g_strdup_printf ("%" G_GINT64_FORMAT, lot_id);
      unsoot_deed_dialog_set_choice (dialog, 0, lot_id);
      unsoot_deed_dialog_set_part (dialog, part);
    }
}

void
unsoot_fluid_deed_open (UnsootFluidDeed deed, GtkWidget *over, UnsootSession *session,
                        const UnsootFluidRow *fluid, GPtrArray *lots, gint64 lot_id,
                        const char *text)
{
  UnsootDeedDialog *dialog = unsoot_deed_dialog_new (over, session, &forms[deed], fluid->id);

  unsoot_deed_dialog_say (dialog, fluid->name);
  if (deed != UNSOOT_FLUID_RECEIVE)
    add_lots (dialog, lots, lot_id);
  else if (text != NULL)
    unsoot_deed_dialog_set_text (dialog, 1, text);
  unsoot_deed_dialog_open (dialog);
}

static char *
lot_words (const UnsootLotRow *lot)
{
  return g_strdup_printf (_ ("Lot %s"), lot->code);
}

void
unsoot_lot_stop_open (GtkWidget *over, UnsootSession *session, const UnsootLotRow *lot)
{
  UnsootDeedDialog *dialog = unsoot_deed_dialog_new (over, session, &stop_form, lot->id);
  g_autofree char *words = lot_words (lot);

  unsoot_deed_dialog_say (dialog, words);
  unsoot_deed_dialog_open (dialog);
}

void
unsoot_lot_release (GtkWidget *over, UnsootSession *session, const UnsootLotRow *lot)
{
  unsoot_deed_do (over, session, &release_form, lot->id);
}

void
unsoot_move_back_open (GtkWidget *over, UnsootSession *session, gint64 move_id, const char *what)
{
  UnsootDeedDialog *dialog = unsoot_deed_dialog_new (over, session, &back_form, move_id);

  unsoot_deed_dialog_say (dialog, what);
  unsoot_deed_dialog_open (dialog);
}

void
unsoot_container_empty (GtkWidget *over, UnsootSession *session, gint64 container_id)
{
  unsoot_deed_do (over, session, &empty_form, container_id);
}
