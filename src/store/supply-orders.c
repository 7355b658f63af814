/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "supply-orders.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>
#include <math.h>

#include "civil.h"
#include "deed.h"
#include "fluids.h"
#include "money.h"
#include "shops.h"
#include "stocks.h"

/* A delivery that was taken back counts no more: its counter-posting is added to it. */
#define RECEIVED(order)                                                                            \
  "(SELECT COALESCE (sum (m.ml + COALESCE ((SELECT sum (r.ml) FROM stock_moves r"                  \
  " WHERE r.reverses_id = m.id), 0)), 0) FROM supply_order_events e"                               \
  " JOIN stock_moves m ON m.id = e.move_id WHERE e.order_id = " order ")"

#define STANDS                                                                                     \
  "NOT EXISTS (SELECT 1 FROM supply_order_events c WHERE c.order_id = supply_orders.id"            \
  " AND c.kind = 'cancelled' AND NOT EXISTS (SELECT 1 FROM supply_order_events u"                  \
  " WHERE u.order_id = c.order_id AND u.reverses_id = c.id))"

void
unsoot_supply_order_free (UnsootSupplyOrder *order)
{
  if (order == NULL)
    return;
  unsoot_supply_order_row_free (order->order);
  unsoot_supplier_row_free (order->supplier);
  g_free (order->fluid);
  g_free (order->expected_on);
  g_free (order->cancelled);
  g_free (order);
}

static void
apply_event (UnsootSupplyOrder *order, const UnsootSupplyOrderEventRow *event)
{
  if (g_str_equal (event->kind, "expected"))
    {
      g_free (order->expected_on);
      order->expected_on = g_strdup (event->expected_on);
    }
  else if (g_str_equal (event->kind, "cancelled"))
    {
      g_free (order->cancelled);
      order->cancelled = g_strdup (event->reason);
      order->cancelled_id = event->id;
    }
  else if (g_str_equal (event->kind, "reopened"))
    {
      g_clear_pointer (&order->cancelled, g_free);
      order->cancelled_id = 0;
    }
}

static gboolean
apply_events (UnsootDb *db, UnsootSupplyOrder *order, GError **error)
{
  g_autoptr (GPtrArray) events
      = unsoot_rows_list (db, &unsoot_supply_order_event_row_type, error,
                          "WHERE order_id = $1 ORDER BY id", unsoot_int (order->order->id));

  for (guint i = 0; events != NULL && i < events->len; i++)
    apply_event (order, events->pdata[i]);
  return events != NULL;
}

/* Takes nothing: @row is copied. */
static UnsootSupplyOrder *
order_of (UnsootDb *db, const UnsootSupplyOrderRow *row, GError **error)
{
  g_autoptr (UnsootSupplyOrder) order = g_new0 (UnsootSupplyOrder, 1);
  g_autoptr (UnsootFluidRow) fluid = unsoot_fluid_load (db, row->fluid_id, error);

  order->order = unsoot_record_copy (&unsoot_supply_order_row_type, row);
  order->expected_on = g_strdup (row->expected_on);
  order->supplier = fluid != NULL
                        ? unsoot_rows_get (db, &unsoot_supplier_row_type, row->supplier_id, error)
                        : NULL;
  if (order->supplier == NULL || !apply_events (db, order, error)
      || !unsoot_db_int (db, &order->received_ml, error, "SELECT " RECEIVED ("$1"),
                         unsoot_int (row->id)))
    return NULL;
  order->fluid = g_strdup (fluid->name);
  if (order->cancelled_id == 0)
    order->open_ml = MAX (row->packs * row->pack_ml - order->received_ml, 0);
  return g_steal_pointer (&order);
}

UnsootSupplyOrder *
unsoot_supply_order_load (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootSupplyOrderRow) row
      = unsoot_rows_get (db, &unsoot_supply_order_row_type, id, error);

  return row != NULL ? order_of (db, row, error) : NULL;
}

gboolean
unsoot_supply_order_id_of (UnsootDb *db, gint64 number, gint64 *id, GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootSupplyOrderRow) row
      = unsoot_rows_maybe (db, &unsoot_supply_order_row_type, &failed,
                           "WHERE number = $1 ORDER BY id LIMIT 1", unsoot_int (number));

  if (row != NULL)
    {
      *id = row->id;
      return TRUE;
    }
  if (failed != NULL)
    g_propagate_error (error, g_steal_pointer (&failed));
  else
    unsoot_deed_fail (error, UNSOOT_STORE_ERROR_NOT_FOUND, _ ("There is no order %" PRId64 "."),
                      number);
  return FALSE;
}

static GPtrArray *
orders_of (UnsootDb *db, const GPtrArray *rows, GError **error)
{
  g_autoptr (GPtrArray) orders
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_supply_order_free);

  for (guint i = 0; rows != NULL && i < rows->len; i++)
    {
      UnsootSupplyOrder *order = order_of (db, rows->pdata[i], error);
      if (order == NULL)
        return NULL;
      g_ptr_array_add (orders, order);
    }
  return rows != NULL ? g_steal_pointer (&orders) : NULL;
}

static int
soonest_first (gconstpointer a, gconstpointer b)
{
  const UnsootSupplyOrder *left = *(UnsootSupplyOrder *const *) a;
  const UnsootSupplyOrder *right = *(UnsootSupplyOrder *const *) b;

  if (left->expected_on == NULL || right->expected_on == NULL)
    return (left->expected_on == NULL) - (right->expected_on == NULL);
  return g_strcmp0 (left->expected_on, right->expected_on);
}

GPtrArray *
unsoot_supply_orders_open (UnsootDb *db, gint64 fluid_id, GError **error)
{
  g_autoptr (GPtrArray) rows
      = unsoot_rows_list (db, &unsoot_supply_order_row_type, error,
                          "WHERE ($1 = 0 OR fluid_id = $1) AND packs * pack_ml > " RECEIVED (
                              "supply_orders.id") " AND " STANDS " ORDER BY id",
                          unsoot_int (fluid_id));
  GPtrArray *orders = rows != NULL ? orders_of (db, rows, error) : NULL;

  if (orders != NULL)
    g_ptr_array_sort (orders, soonest_first);
  return orders;
}

GPtrArray *
unsoot_supply_orders (UnsootDb *db, gint64 fluid_id, guint limit, GError **error)
{
  g_autoptr (GPtrArray) rows = unsoot_rows_list (db, &unsoot_supply_order_row_type, error,
                                                 "WHERE fluid_id = $1 ORDER BY id DESC LIMIT $2",
                                                 unsoot_int (fluid_id), unsoot_int (limit));

  return rows != NULL ? orders_of (db, rows, error) : NULL;
}

gint64
unsoot_supply_orders_ml (const GPtrArray *orders)
{
  gint64 ml = 0;

  for (guint i = 0; i < orders->len; i++)
    ml += ((const UnsootSupplyOrder *) orders->pdata[i])->open_ml;
  return ml;
}

static gboolean
check_order (const UnsootSupplyOrderRow *order, GError **error)
{
  int day;

  if (order->pack_ml <= 0 || order->packs <= 0 || order->packs > G_MAXINT32
      || order->pack_ml > G_MAXINT32)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say how many packs are ordered, and how much is in each."));
  if (order->pack_cost_minor < 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("A pack can't cost less than nothing."));
  return order->expected_on == NULL || unsoot_day_parse (order->expected_on, &day, error);
}

/* By the supplier's usual days from today on. */
static gboolean
set_expected (UnsootDb *db, const UnsootActing *who, UnsootSupplyOrderRow *order, GError **error)
{
  g_autoptr (UnsootSupplierRow) supplier
      = unsoot_rows_get (db, &unsoot_supplier_row_type, order->supplier_id, error);
  g_autoptr (UnsootShopRow) shop = supplier != NULL ? unsoot_shop_load (db, error) : NULL;
  g_autofree char *today = shop != NULL ? unsoot_shop_date (shop, who->now) : NULL;
  int day = 0;

  if (today == NULL || !unsoot_day_parse (today, &day, error))
    return FALSE;
  if (order->expected_on == NULL && !isnan (supplier->lead_days) && supplier->lead_days > 0)
    order->expected_on = unsoot_day_iso (day + (int) MIN (ceil (supplier->lead_days), 3650));
  if (order->expected_on != NULL && g_strcmp0 (order->expected_on, today) < 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("It can't be expected on %s: that day is past."),
                             order->expected_on);
  return TRUE;
}

/* The fluid's own supplier where none is named. */
static gboolean
set_supplier (UnsootDb *db, UnsootSupplyOrderRow *order, GError **error)
{
  g_autoptr (UnsootFluidRow) fluid = unsoot_fluid_load (db, order->fluid_id, error);

  if (fluid == NULL)
    return FALSE;
  if (order->supplier_id == 0)
    order->supplier_id = fluid->supplier_id;
  if (order->supplier_id == 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("Nobody is entered who sends %s. Say from whom it is ordered."),
                             fluid->name);
  return TRUE;
}

gboolean
unsoot_supply_order_place (UnsootDb *db, const UnsootActing *who, UnsootSupplyOrderRow *order,
                           GError **error)
{
  if (!check_order (order, error))
    return FALSE;
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_ORDER, error);

  if (deed == NULL)
    return FALSE;
  order->id = 0;
  order->at = who->now;
  order->staff_id = who->staff_id;
  gboolean done = set_supplier (db, order, error) && set_expected (db, who, order, error)
                  && unsoot_db_int (db, &order->number, error,
                                    "SELECT COALESCE (max (number), 0) + 1 FROM supply_orders")
                  && unsoot_rows_post (db, &unsoot_supply_order_row_type, order, error);
  if (unsoot_deed_end (&deed, done, error))
    return TRUE;
  order->id = 0;
  return FALSE;
}

/* The order, where something of it is still to come. */
static UnsootSupplyOrder *
load_open (UnsootDb *db, gint64 order_id, GError **error)
{
  g_autoptr (UnsootSupplyOrder) order = unsoot_supply_order_load (db, order_id, error);

  if (order == NULL || order->open_ml > 0)
    return g_steal_pointer (&order);
  unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                    order->cancelled_id != 0 ? _ ("Order %" PRId64 " was cancelled.")
                                             : _ ("All of order %" PRId64 " is here already."),
                    order->order->number);
  return NULL;
}

static gboolean
post_event (UnsootDb *db, const UnsootActing *who, UnsootSupplyOrderEventRow *event, GError **error)
{
  event->at = who->now;
  event->staff_id = who->staff_id;
  return unsoot_rows_post (db, &unsoot_supply_order_event_row_type, event, error);
}

static gboolean
receive (UnsootDb *db, const UnsootActing *who, const UnsootSupplyOrder *order, UnsootLotRow *lot,
         gint64 ml, GError **error)
{
  g_autoptr (UnsootSupplyOrderEventRow) event = unsoot_supply_order_event_row_new ();
  const UnsootSupplyOrderRow *row = order->order;

  lot->fluid_id = row->fluid_id;
  if (lot->cost_minor_per_litre == 0 && row->pack_cost_minor > 0
      && !unsoot_money_ratio (row->pack_cost_minor, 1000, row->pack_ml, &lot->cost_minor_per_litre,
                              error))
    return FALSE;
  if (!unsoot_stock_deliver (db, who, lot, ml, error)
      || !unsoot_db_int (db, &event->move_id, error,
                         "SELECT max (id) FROM stock_moves WHERE lot_id = $1 AND kind = 'delivery'",
                         unsoot_int (lot->id)))
    return FALSE;
  event->order_id = row->id;
  event->kind = g_strdup ("received");
  return post_event (db, who, event, error);
}

gboolean
unsoot_supply_order_receive (UnsootDb *db, const UnsootActing *who, gint64 order_id,
                             UnsootLotRow *lot, gint64 ml, GError **error)
{
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_RECEIVE_DELIVERY, error);
  g_autoptr (UnsootSupplyOrder) order = deed != NULL ? load_open (db, order_id, error) : NULL;

  if (order == NULL)
    return FALSE;
  if (unsoot_deed_end (&deed, receive (db, who, order, lot, ml, error), error))
    return TRUE;
  lot->id = 0;
  return FALSE;
}

gboolean
unsoot_supply_order_expect (UnsootDb *db, const UnsootActing *who, gint64 order_id,
                            const char *expected_on, const char *reason, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_ORDER, error);
  g_autoptr (UnsootSupplyOrder) order = deed != NULL ? load_open (db, order_id, error) : NULL;
  g_autoptr (UnsootSupplyOrderEventRow) event = unsoot_supply_order_event_row_new ();
  int day;

  if (order == NULL)
    return FALSE;
  if (expected_on == NULL)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say on which day it is expected now."));
  if (!unsoot_day_parse (expected_on, &day, error))
    return FALSE;
  event->order_id = order_id;
  event->kind = g_strdup ("expected");
  event->expected_on = g_strdup (expected_on);
  event->reason = unsoot_deed_blank (reason) ? NULL : g_strdup (reason);
  return unsoot_deed_end (&deed, post_event (db, who, event, error), error);
}

gboolean
unsoot_supply_order_cancel (UnsootDb *db, const UnsootActing *who, gint64 order_id,
                            const char *reason, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_ORDER, error);
  g_autoptr (UnsootSupplyOrder) order = deed != NULL ? load_open (db, order_id, error) : NULL;
  g_autoptr (UnsootSupplyOrderEventRow) event = unsoot_supply_order_event_row_new ();

  if (order == NULL)
    return FALSE;
  if (unsoot_deed_blank (reason))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say why the order is cancelled: it stays in the book."));
  event->order_id = order_id;
  event->kind = g_strdup ("cancelled");
  event->reason = g_strdup (reason);
  return unsoot_deed_end (&deed, post_event (db, who, event, error), error);
}

gboolean
unsoot_supply_order_reopen (UnsootDb *db, const UnsootActing *who, gint64 order_id,
                            const char *reason, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_ORDER, error);
  g_autoptr (UnsootSupplyOrder) order
      = deed != NULL ? unsoot_supply_order_load (db, order_id, error) : NULL;
  g_autoptr (UnsootSupplyOrderEventRow) event = unsoot_supply_order_event_row_new ();

  if (order == NULL)
    return FALSE;
  if (order->cancelled_id == 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("Order %" PRId64 " is not cancelled."), order->order->number);
  event->order_id = order_id;
  event->kind = g_strdup ("reopened");
  event->reverses_id = order->cancelled_id;
  event->reason = unsoot_deed_blank (reason) ? NULL : g_strdup (reason);
  return unsoot_deed_end (&deed, post_event (db, who, event, error), error);
}
