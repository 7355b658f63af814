/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "commands.h"

#include <glib/gi18n-lib.h>

#include "pick.h"
#include "supply-orders.h"
#include "when.h"

/* Orders from suppliers: placed, put off, cancelled. What comes of them is a delivery. */

static const UnsootAnswerColumn order_columns[] = {
  { "number", N_ ("Order"), TRUE },          { "fluid", N_ ("Fluid"), FALSE },
  { "supplier", N_ ("From"), FALSE },        { "packs", N_ ("Packs"), TRUE },
  { "pack_ml", N_ ("In each"), TRUE },       { "open_ml", N_ ("To come"), TRUE },
  { "expected_on", N_ ("Expected"), FALSE }, { NULL },
};

static gboolean
pick_order (UnsootCall *call, const char *text, gint64 *id, GError **error)
{
  gint64 number = 0;

  return unsoot_pick_number (text, _ ("NUMBER"), 1, &number, error)
         && unsoot_supply_order_id_of (call->db, number, id, error);
}

static gboolean
read_day (UnsootCall *call, const char *text, char **iso, GError **error)
{
  if (text == NULL)
    return TRUE;
  *iso = unsoot_when_date (call->shop, call->who.now, text, error);
  return *iso != NULL;
}

static gboolean
show_order (UnsootCall *call, gint64 id, char *said, GError **error)
{
  g_autoptr (UnsootSupplyOrder) order = unsoot_supply_order_load (call->db, id, error);

  unsoot_answer_say (call->answer, said);
  if (order == NULL)
    return FALSE;
  unsoot_answer_put (call->answer, "number", _ ("Order"),
                     unsoot_cell_int (order->order->number, NULL));
  unsoot_answer_put (call->answer, "fluid", _ ("Fluid"), unsoot_cell_text (order->fluid));
  unsoot_answer_put (call->answer, "supplier", _ ("From"),
                     unsoot_cell_text (order->supplier->name));
  unsoot_answer_put (call->answer, "open_ml", _ ("To come"), unsoot_call_volume (order->open_ml));
  unsoot_answer_put (call->answer, "expected_on", _ ("Expected"),
                     unsoot_call_date (order->expected_on));
  return TRUE;
}

static gboolean
run_place (UnsootCall *call, GError **error)
{
  g_autofree char *price = NULL, *expected = NULL, *from = NULL;
  g_autoptr (UnsootSupplyOrderRow) order = unsoot_supply_order_row_new ();
  const GOptionEntry options[]
      = { { "from", 'f', 0, G_OPTION_ARG_STRING, &from,
            N_ ("Who sends it; without it, the fluid's own supplier"), N_ ("SUPPLIER") },
          { "price", 'p', 0, G_OPTION_ARG_STRING, &price, N_ ("Of each pack"), N_ ("AMOUNT") },
          { "expected", 'e', 0, G_OPTION_ARG_STRING, &expected,
            N_ ("When; without it, by the supplier's usual days"), N_ ("DATE") },
          { "note", 'n', 0, G_OPTION_ARG_STRING, &order->note, N_ ("Kept with it"), N_ ("TEXT") },
          { NULL } };

  if (!unsoot_call_begin (call, options, 3, 3, error)
      || !unsoot_pick_fluid (call, call->args[0], &order->fluid_id, error)
      || !unsoot_pick_number (call->args[1], _ ("PACKS"), 1, &order->packs, error)
      || !unsoot_call_read_volume (call->args[2], &order->pack_ml, error)
      || (from != NULL && !unsoot_pick_supplier (call, from, &order->supplier_id, error))
      || (price != NULL && !unsoot_call_read_money (call, price, &order->pack_cost_minor, error))
      || !read_day (call, expected, &order->expected_on, error))
    return FALSE;
  return unsoot_supply_order_place (call->db, &call->who, order, error)
         && show_order (call, order->id, g_strdup (_ ("The order is in the book.")), error);
}

static gboolean
run_show (UnsootCall *call, GError **error)
{
  g_autoptr (GPtrArray) orders = NULL;
  UnsootAnswerTable *table;

  if (!unsoot_call_begin (call, NULL, 0, 0, error)
      || (orders = unsoot_supply_orders_open (call->db, 0, error)) == NULL)
    return FALSE;
  table = unsoot_answer_table (call->answer, "orders", _ ("On order"), order_columns);
  for (guint i = 0; i < orders->len; i++)
    {
      const UnsootSupplyOrder *order = orders->pdata[i];

      unsoot_answer_cell (table, unsoot_cell_int (order->order->number, NULL));
      unsoot_answer_cell (table, unsoot_cell_text (order->fluid));
      unsoot_answer_cell (table, unsoot_cell_text (order->supplier->name));
      unsoot_answer_cell (table, unsoot_cell_int (order->order->packs, NULL));
      unsoot_answer_cell (table, unsoot_call_volume (order->order->pack_ml));
      unsoot_answer_cell (table, unsoot_call_volume (order->open_ml));
      unsoot_answer_cell (table, unsoot_call_date (order->expected_on));
    }
  return TRUE;
}

static gboolean
run_expect (UnsootCall *call, GError **error)
{
  g_autofree char *reason = NULL, *day = NULL;
  gint64 id = 0;
  const GOptionEntry options[]
      = { { "reason", 'r', 0, G_OPTION_ARG_STRING, &reason, N_ ("Why"), N_ ("TEXT") }, { NULL } };

  return unsoot_call_begin (call, options, 2, 2, error)
         && pick_order (call, call->args[0], &id, error)
         && read_day (call, call->args[1], &day, error)
         && unsoot_supply_order_expect (call->db, &call->who, id, day, reason, error)
         && show_order (call, id, g_strdup (_ ("The new day is recorded.")), error);
}

static gboolean
run_cancel (UnsootCall *call, GError **error)
{
  g_autofree char *reason = NULL;
  gint64 id = 0;
  const GOptionEntry options[]
      = { { "reason", 'r', 0, G_OPTION_ARG_STRING, &reason, N_ ("Why"), N_ ("TEXT") }, { NULL } };

  return unsoot_call_begin (call, options, 1, 1, error)
         && unsoot_call_wants (reason, "--reason", error)
         && pick_order (call, call->args[0], &id, error)
         && unsoot_supply_order_cancel (call->db, &call->who, id, reason, error)
         && show_order (call, id, g_strdup (_ ("The order is cancelled.")), error);
}

static gboolean
run_reopen (UnsootCall *call, GError **error)
{
  gint64 id = 0;

  return unsoot_call_begin (call, NULL, 1, 1, error) && pick_order (call, call->args[0], &id, error)
         && unsoot_supply_order_reopen (call->db, &call->who, id, NULL, error)
         && show_order (call, id, g_strdup (_ ("The order stands again.")), error);
}

const UnsootCommand unsoot_supply_commands[] = {
  { "order place", N_ ("FLUID PACKS VOLUME"), N_ ("Order a fluid from its supplier"),
    N_ ("VOLUME is what is in each pack. The delivery names the order: deliver --order."),
    UNSOOT_NEEDS_PERSON, run_place },
  { "order show", NULL, N_ ("What is on order and not here yet"), NULL, UNSOOT_NEEDS_BOOK,
    run_show },
  { "order expect", N_ ("NUMBER DATE"), N_ ("The supplier names another day"), NULL,
    UNSOOT_NEEDS_PERSON, run_expect },
  { "order cancel", N_ ("NUMBER"), N_ ("What has not come will not come"), NULL,
    UNSOOT_NEEDS_PERSON, run_cancel },
  { "order reopen", N_ ("NUMBER"), N_ ("Take a cancelling back"), NULL, UNSOOT_NEEDS_PERSON,
    run_reopen },
  { NULL },
};
