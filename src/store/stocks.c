/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "stocks.h"

#include <glib/gi18n-lib.h>

#include "deed.h"
#include "dose.h"
#include "indexing.h"
#include "lots.h"
#include "run-postings.h"
#include "shops.h"

GPtrArray *
unsoot_stock_moves (UnsootDb *db, gint64 lot_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_stock_move_row_type, error, "WHERE lot_id = $1 ORDER BY id",
                           unsoot_int (lot_id));
}

gboolean
unsoot_lot_on_hand (UnsootDb *db, gint64 lot_id, gint64 *ml, GError **error)
{
  return unsoot_db_int (db, ml, error,
                        "SELECT COALESCE (sum (ml), 0) FROM stock_moves WHERE lot_id = $1",
                        unsoot_int (lot_id));
}

/* What each kind of move may be: its sign, and who may post it. */
typedef struct
{
  const char *kind;
  int sign; /* 0: either */
  UnsootDeed deed;
} MoveKind;

static const MoveKind move_kinds[] = {
  { "delivery", 1, UNSOOT_DEED_RECEIVE_DELIVERY }, { "use", -1, UNSOOT_DEED_POST_STOCK },
  { "count", 0, UNSOOT_DEED_ADJUST_STOCK },        { "spill", -1, UNSOOT_DEED_RECORD_WASTE },
  { "waste", -1, UNSOOT_DEED_RECORD_WASTE },       { "return", 0, UNSOOT_DEED_POST_STOCK },
  { "opening", 1, UNSOOT_DEED_ADJUST_STOCK },      { "correction", 0, UNSOOT_DEED_ADJUST_STOCK },
};

static const MoveKind *
find_kind (const char *kind, GError **error)
{
  for (gsize i = 0; i < G_N_ELEMENTS (move_kinds); i++)
    if (g_strcmp0 (move_kinds[i].kind, kind) == 0)
      return &move_kinds[i];
  unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("“%s” is no kind of stock move."),
                    kind != NULL ? kind : "");
  return NULL;
}

static gboolean
check_move (const UnsootStockMoveRow *move, const MoveKind *kind, GError **error)
{
  gboolean plain = g_str_equal (kind->kind, "delivery") || g_str_equal (kind->kind, "use");

  if (move->ml == 0 || (kind->sign != 0 && (move->ml > 0) != (kind->sign > 0)))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             kind->sign > 0 ? _ ("A %s brings fluid in: enter more than nothing.")
                                            : _ ("A %s takes fluid out: enter more than nothing."),
                             kind->kind);
  if (!plain && unsoot_deed_blank (move->reason))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say why: the move stays in the book."));
  return TRUE;
}

static gboolean
check_enough (UnsootDb *db, const UnsootStockMoveRow *move, GError **error)
{
  g_autoptr (UnsootLotRow) lot = unsoot_lot_load (db, move->lot_id, error);
  gint64 left = 0;

  if (lot == NULL || !unsoot_run_lot_left (db, move->lot_id, &left, error))
    return FALSE;
  if (left + move->ml < 0)
    {
      g_autofree char *there = unsoot_dose_volume_words (left);
      g_autofree char *wanted = unsoot_dose_volume_words (-move->ml);
      return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                               _ ("Lot %s holds %s, so %s can't be taken out of it. Count the lot "
                                  "if the book is wrong."),
                               lot->code, there, wanted);
    }
  return TRUE;
}

static gboolean
post (UnsootDb *db, const UnsootActing *who, UnsootStockMoveRow *move, GError **error)
{
  move->id = 0;
  move->at = who->now;
  move->staff_id = who->staff_id;
  return (move->ml > 0 || check_enough (db, move, error))
         && unsoot_rows_post (db, &unsoot_stock_move_row_type, move, error);
}

gboolean
unsoot_stock_post (UnsootDb *db, const UnsootActing *who, UnsootStockMoveRow *move, GError **error)
{
  const MoveKind *kind = find_kind (move->kind, error);

  if (kind == NULL || !check_move (move, kind, error))
    return FALSE;
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, kind->deed, error);
  if (deed == NULL)
    return FALSE;
  return unsoot_deed_end (&deed, post (db, who, move, error), error);
}

/* A lot that came before is the same making: its dates have to agree. */
static gboolean
keep_lot (UnsootDb *db, const UnsootActing *who, UnsootLotRow *lot, GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootLotRow) known = unsoot_rows_maybe (
      db, &unsoot_lot_row_type, &failed, "WHERE fluid_id = $1 AND code = $2 ORDER BY id LIMIT 1",
      unsoot_int (lot->fluid_id), unsoot_text (lot->code));

  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  if (known == NULL)
    return unsoot_rows_insert (db, &unsoot_lot_row_type, lot, who, error)
           && unsoot_index_lot (db, lot->id, error);
  if (g_strcmp0 (known->expires_on, lot->expires_on) != 0)
    return unsoot_deed_fail (
        error, UNSOOT_STORE_ERROR_CONSTRAINT,
        _ ("Lot %s is in the book with another expiry, %s. Look at the label again."), lot->code,
        known->expires_on != NULL ? known->expires_on : _ ("none"));
  lot->id = known->id;
  lot->version = known->version;
  return TRUE;
}

static gboolean
set_received (UnsootDb *db, const UnsootActing *who, UnsootLotRow *lot, GError **error)
{
  if (lot->received_on != NULL)
    return TRUE;
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  if (shop == NULL)
    return FALSE;
  lot->received_on = unsoot_shop_date (shop, who->now);
  return TRUE;
}

gboolean
unsoot_stock_deliver (UnsootDb *db, const UnsootActing *who, UnsootLotRow *lot, gint64 ml,
                      GError **error)
{
  g_autoptr (UnsootStockMoveRow) move = unsoot_stock_move_row_new ();

  if (unsoot_deed_blank (lot->code))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Enter the lot's number from the label: a recall goes by it."));
  if (ml <= 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("A delivery brings in more than nothing."));
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_RECEIVE_DELIVERY, error);
  if (deed == NULL)
    return FALSE;
  lot->id = 0;
  gboolean done = set_received (db, who, lot, error) && keep_lot (db, who, lot, error);
  if (done)
    {
      move->lot_id = lot->id;
      move->kind = g_strdup ("delivery");
      move->ml = ml;
      done = post (db, who, move, error);
    }
  if (unsoot_deed_end (&deed, done, error))
    return TRUE;
  lot->id = 0;
  return FALSE;
}

gboolean
unsoot_stock_reverse (UnsootDb *db, const UnsootActing *who, gint64 move_id, const char *reason,
                      GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_ADJUST_STOCK, error);
  g_autoptr (UnsootStockMoveRow) move
      = deed != NULL ? unsoot_rows_get (db, &unsoot_stock_move_row_type, move_id, error) : NULL;
  gint64 reversed = 0;

  if (move == NULL
      || !unsoot_db_int (db, &reversed, error,
                         "SELECT count (*) FROM stock_moves WHERE reverses_id = $1",
                         unsoot_int (move_id)))
    return FALSE;
  if (reversed > 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("This move was taken back already."));
  if (unsoot_deed_blank (reason))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say why the move is taken back."));
  move->reverses_id = move->id;
  move->ml = -move->ml;
  g_free (move->kind);
  move->kind = g_strdup ("correction");
  g_free (move->reason);
  move->reason = g_strdup (reason);
  return unsoot_deed_end (&deed, post (db, who, move, error), error);
}

gboolean
unsoot_stock_count (UnsootDb *db, const UnsootActing *who, gint64 lot_id, gint64 ml,
                    const char *reason, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_ADJUST_STOCK, error);
  g_autoptr (UnsootStockMoveRow) move = unsoot_stock_move_row_new ();
  gint64 left = 0;

  if (deed == NULL || !unsoot_run_lot_left (db, lot_id, &left, error))
    return FALSE;
  if (ml < 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("A lot can't hold less than nothing."));
  move->lot_id = lot_id;
  move->kind = g_strdup ("count");
  move->ml = ml - left;
  move->reason = g_strdup (unsoot_deed_blank (reason) ? _ ("counted") : reason);
  return unsoot_deed_end (&deed, move->ml == 0 || post (db, who, move, error), error);
}
