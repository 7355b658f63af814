/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "commands.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "adapters.h"
#include "pick.h"
#include "shops.h"
#include "stocks.h"
#include "supply-orders.h"
#include "unit.h"
#include "when.h"

/* Fluids on the shelf, and adapters out of the house. */

static const UnsootAnswerColumn stock_columns[] = {
  { "side", N_ ("Side"), FALSE },
  { "code", N_ ("Code"), FALSE },
  { "fluid", N_ ("Fluid"), FALSE },
  { "on_hand_ml", N_ ("On hand"), TRUE },
  { "unusable_ml", N_ ("unusable"), TRUE },
  { "promised_ml", N_ ("promised"), TRUE },
  { "free_ml", N_ ("free"), TRUE },
  { "on_order_ml", N_ ("on order"), TRUE },
  { "days_left", N_ ("Days left"), TRUE },
  { "next_expiry", N_ ("Next expiry"), FALSE },
  { NULL },
};

/* Below zero is short, and the dose's words know no sign. */
static UnsootCell
volume_cell (gint64 ml)
{
  g_autofree char *words = unsoot_unit_format ((double) ml / 1e6, UNSOOT_UNIT_L, 2);

  return unsoot_cell_int (ml, g_steal_pointer (&words));
}

static gboolean
run_stock (UnsootCall *call, GError **error)
{
  if (!unsoot_call_begin (call, NULL, 0, 0, error))
    return FALSE;
  g_autoptr (GPtrArray) stocks = unsoot_fluid_stock_list (call->db, call->who.now, error);
  if (stocks == NULL)
    return FALSE;
  UnsootAnswerTable *table
      = unsoot_answer_table (call->answer, "stock", _ ("Stock"), stock_columns);
  for (guint i = 0; i < stocks->len; i++)
    {
      const UnsootFluidStock *stock = stocks->pdata[i];
      gboolean used = isfinite (stock->days_left);

      unsoot_answer_cell (table, unsoot_cell_text (stock->side));
      unsoot_answer_cell (table, unsoot_cell_text (stock->code));
      unsoot_answer_cell (table, unsoot_cell_text (stock->name));
      unsoot_answer_cell (table, volume_cell (stock->on_hand_ml));
      unsoot_answer_cell (table, volume_cell (stock->unusable_ml));
      unsoot_answer_cell (table, volume_cell (stock->promised_ml));
      unsoot_answer_cell (table, volume_cell (stock->free_ml));
      unsoot_answer_cell (table, volume_cell (stock->on_order_ml));
      unsoot_answer_cell (
          table, unsoot_cell_real (stock->days_left,
                                   used ? g_strdup_printf ("%.0f", stock->days_left) : NULL));
      unsoot_answer_cell (table, unsoot_call_date (stock->next_expiry));
    }
  return TRUE;
}

static gboolean
read_day (UnsootCall *call, const char *text, char **iso, GError **error)
{
  if (text == NULL)
    return TRUE;
  *iso = unsoot_when_date (call->shop, call->who.now, text, error);
  return *iso != NULL;
}

/* @order: (nullable): the number of the order that it is of */
static gboolean
take_delivery (UnsootCall *call, const char *order, UnsootLotRow *lot, gint64 ml, GError **error)
{
  gint64 number = 0, order_id = 0;

  if (order == NULL)
    return unsoot_stock_deliver (call->db, &call->who, lot, ml, error);
  if (!unsoot_pick_number (order, "--order", 1, &number, error)
      || !unsoot_supply_order_id_of (call->db, number, &order_id, error))
    return FALSE;
  g_autoptr (UnsootSupplyOrder) ordered = unsoot_supply_order_load (call->db, order_id, error);
  if (ordered == NULL)
    return FALSE;
  if (ordered->order->fluid_id != lot->fluid_id)
    {
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_INVALID, _ ("Order %s is of %s."),
                   order, ordered->fluid);
      return FALSE;
    }
  return unsoot_supply_order_receive (call->db, &call->who, order_id, lot, ml, error);
}

static gboolean
run_deliver (UnsootCall *call, GError **error)
{
  g_autofree char *expires = NULL, *received = NULL, *cost = NULL, *order = NULL;
  g_autoptr (UnsootLotRow) lot = unsoot_lot_row_new ();
  gint64 ml = 0, on_hand = 0;
  const GOptionEntry options[] = {
    { "expires", 'e', 0, G_OPTION_ARG_STRING, &expires, N_ ("The lot's date"), N_ ("DATE") },
    { "received", 0, 0, G_OPTION_ARG_STRING, &received, N_ ("Without it, today"), N_ ("DATE") },
    { "cost", 'c', 0, G_OPTION_ARG_STRING, &cost, N_ ("What a litre cost"), N_ ("AMOUNT") },
    { "order", 'o', 0, G_OPTION_ARG_STRING, &order, N_ ("Of which order it is"), N_ ("NUMBER") },
    { NULL }
  };

  if (!unsoot_call_begin (call, options, 3, 3, error)
      || !unsoot_pick_fluid (call, call->args[0], &lot->fluid_id, error)
      || !unsoot_call_read_volume (call->args[2], &ml, error)
      || !read_day (call, expires, &lot->expires_on, error)
      || !read_day (call, received, &lot->received_on, error)
      || (cost != NULL && !unsoot_call_read_money (call, cost, &lot->cost_minor_per_litre, error)))
    return FALSE;
  lot->code = g_strdup (call->args[1]);
  if (!take_delivery (call, order, lot, ml, error)
      || !unsoot_lot_on_hand (call->db, lot->id, &on_hand, error))
    return FALSE;
  unsoot_answer_say (call->answer, g_strdup (_ ("The delivery is in stock.")));
  unsoot_answer_put (call->answer, "lot", _ ("Lot"), unsoot_cell_text (lot->code));
  unsoot_answer_put (call->answer, "delivered_ml", _ ("Delivered"), volume_cell (ml));
  unsoot_answer_put (call->answer, "on_hand_ml", _ ("Of it on hand"), volume_cell (on_hand));
  return TRUE;
}

static gboolean
run_lend (UnsootCall *call, GError **error)
{
  g_autofree char *due = NULL, *job = NULL;
  g_autoptr (UnsootLoanRow) loan = unsoot_loan_row_new ();
  const GOptionEntry options[]
      = { { "to", 't', 0, G_OPTION_ARG_STRING, &loan->to_name, N_ ("Who takes it"), N_ ("NAME") },
          { "kind", 'k', 0, G_OPTION_ARG_STRING, &loan->to_kind,
            N_ ("job, colleague or shop; without it, shop"), N_ ("KIND") },
          { "phone", 'p', 0, G_OPTION_ARG_STRING, &loan->phone, N_ ("Where they are reached"),
            N_ ("NUMBER") },
          { "due", 'd', 0, G_OPTION_ARG_STRING, &due, N_ ("When it is to be back"), N_ ("DATE") },
          { "job", 'j', 0, G_OPTION_ARG_STRING, &job, N_ ("For which job"), N_ ("JOB") },
          { NULL } };

  if (!unsoot_call_begin (call, options, 1, 1, error)
      || !unsoot_call_wants (loan->to_name, "--to", error)
      || !read_day (call, due, &loan->due_on, error)
      || (job != NULL && !unsoot_pick_job (call, job, &loan->job_id, error))
      || !unsoot_pick_item (call, call->args[0], &loan->item_id, error))
    return FALSE;
  if (loan->to_kind == NULL)
    loan->to_kind = g_strdup ("shop");
  if (!unsoot_adapter_lend (call->db, &call->who, loan, error))
    return FALSE;
  unsoot_answer_say (call->answer, g_strdup (_ ("Lent.")));
  unsoot_answer_put (call->answer, "adapter", _ ("Adapter"), unsoot_cell_text (call->args[0]));
  unsoot_answer_put (call->answer, "to", _ ("To"), unsoot_cell_text (loan->to_name));
  unsoot_answer_put (call->answer, "due_on", _ ("Back by"), unsoot_call_date (loan->due_on));
  return TRUE;
}

/* The loan by which an item is out. */
static gboolean
pick_loan (UnsootCall *call, const char *label, gint64 *loan_id, GError **error)
{
  gint64 item_id = 0;

  if (!unsoot_pick_item (call, label, &item_id, error))
    return FALSE;
  g_autoptr (GPtrArray) loans = unsoot_loan_list (call->db, error);
  if (loans == NULL)
    return FALSE;
  for (guint i = 0; i < loans->len; i++)
    {
      const UnsootLoanRow *loan = loans->pdata[i];

      if (loan->item_id == item_id)
        {
          *loan_id = loan->id;
          return TRUE;
        }
    }
  g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
               _ ("%s is not lent to anyone."), label);
  return FALSE;
}

static gboolean
run_back (UnsootCall *call, GError **error)
{
  g_autofree char *condition = NULL, *bin = NULL;
  gint64 loan_id = 0;
  const GOptionEntry options[] = { { "condition", 'c', 0, G_OPTION_ARG_STRING, &condition,
                                     N_ ("How it came back"), N_ ("TEXT") },
                                   { "bin", 'b', 0, G_OPTION_ARG_STRING, &bin,
                                     N_ ("Where it is put; without it, where it was"), N_ ("BIN") },
                                   { NULL } };

  if (!unsoot_call_begin (call, options, 1, 1, error)
      || !pick_loan (call, call->args[0], &loan_id, error)
      || !unsoot_adapter_back (call->db, &call->who, loan_id, condition, bin, error))
    return FALSE;
  unsoot_answer_say (call->answer, g_strdup (_ ("It is back.")));
  unsoot_answer_put (call->answer, "adapter", _ ("Adapter"), unsoot_cell_text (call->args[0]));
  return TRUE;
}

const UnsootCommand unsoot_stores_commands[] = {
  { "stock", NULL, N_ ("Fluids: on hand, promised, free, and for how long"), NULL,
    UNSOOT_NEEDS_BOOK, run_stock },
  { "deliver", N_ ("FLUID LOT VOLUME"), N_ ("Take a delivery into stock"), NULL,
    UNSOOT_NEEDS_PERSON, run_deliver },
  { "lend", N_ ("TAG"), N_ ("Lend an adapter"), NULL, UNSOOT_NEEDS_PERSON, run_lend },
  { "back", N_ ("TAG"), N_ ("An adapter is back"), NULL, UNSOOT_NEEDS_PERSON, run_back },
  { NULL },
};
