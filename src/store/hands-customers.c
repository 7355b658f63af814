/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hands.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "attention.h"
#include "civil-words.h"
#include "money.h"

static const char unpaid_sql[]
    = "SELECT o.id, o.number, o.name, o.currency, o.due_on, o.open FROM (SELECT i.id, i.number,"
      " c.name, i.currency, i.due_on, i.total_minor"
      " - COALESCE ((SELECT sum (p.amount_minor) FROM payments p WHERE p.invoice_id = i.id), 0)"
      " + COALESCE ((SELECT sum (n.total_minor) FROM invoices n WHERE n.credits_id = i.id), 0)"
      " AS open FROM invoices i JOIN customers c ON c.id = i.customer_id"
      " WHERE i.kind = 'invoice' AND i.due_on < $1) AS o WHERE o.open > 0 ORDER BY o.number";

/* The last service of each vehicle whose owner wants to be told, unless it is coming anyway. */
static const char due_sql[]
    = "SELECT j.vehicle_id, j.next_due_on, c.name FROM jobs j"
      " JOIN vehicles v ON v.id = j.vehicle_id JOIN customers c ON c.id = v.customer_id"
      " WHERE j.next_due_on >= $1 AND j.next_due_on <= $2 AND c.reminders_ok = 1 AND c.active = 1"
      " AND v.active = 1 AND NOT EXISTS (SELECT 1 FROM jobs x WHERE x.vehicle_id = j.vehicle_id"
      "  AND x.number > j.number AND x.status NOT IN ('declined', 'cancelled'))"
      " ORDER BY j.next_due_on, j.id";

static gboolean
tell_unpaid (UnsootHandRound *round, GError **error)
{
  g_autoptr (UnsootQuery) row
      = unsoot_db_query (round->db, error, unpaid_sql, unsoot_text (round->date));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (row != NULL && (step = unsoot_query_step (row, error)) == UNSOOT_STEP_ROW)
    {
      int over = round->today - unsoot_hand_day (unsoot_query_get_text (row, 4));
      g_autofree char *open = unsoot_money_format (
          unsoot_query_get_int (row, 5), unsoot_query_get_text (row, 3), UNSOOT_MONEY_POINT);
      unsoot_hand_add (
          round, UNSOOT_HAND_UNPAID, over, UNSOOT_TARGET_INVOICE, unsoot_query_get_int (row, 0),
          _ ("Call"), g_strdup_printf (_ ("Invoice %" PRId64), unsoot_query_get_int (row, 1)),
          g_strdup_printf (ngettext ("of %s is %d day overdue with %s open",
                                     "of %s is %d days overdue with %s open", (gulong) over),
                           unsoot_query_get_text (row, 2), over, open));
    }
  return step == UNSOOT_STEP_DONE;
}

static gboolean
tell_due (UnsootHandRound *round, UnsootQuery *row, GError **error)
{
  gint64 vehicle = unsoot_query_get_int (row, 0);
  int due = unsoot_hand_day (unsoot_query_get_text (row, 1));
  g_autofree char *when = unsoot_day_near_words (due, round->today);
  char *thing = unsoot_hand_vehicle_of (round, vehicle, error);

  if (thing == NULL)
    return FALSE;
  unsoot_hand_add (round, UNSOOT_HAND_REMINDER, round->today - due, UNSOOT_TARGET_VEHICLE, vehicle,
                   _ ("Remind"), thing,
                   due < round->today ? g_strdup_printf (_ ("of %s was due for service %s"),
                                                         unsoot_query_get_text (row, 2), when)
                                      : g_strdup_printf (_ ("of %s is due for service %s"),
                                                         unsoot_query_get_text (row, 2), when));
  return TRUE;
}

static gboolean
tell_reminders (UnsootHandRound *round, GError **error)
{
  g_autofree char *from = unsoot_day_iso (round->today - UNSOOT_ATTENTION_SERVICE_GONE);
  g_autofree char *to = unsoot_day_iso (round->today + UNSOOT_ATTENTION_SERVICE);
  g_autoptr (UnsootQuery) row
      = unsoot_db_query (round->db, error, due_sql, unsoot_text (from), unsoot_text (to));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (row != NULL && (step = unsoot_query_step (row, error)) == UNSOOT_STEP_ROW)
    if (!tell_due (round, row, error))
      return FALSE;
  return step == UNSOOT_STEP_DONE;
}

gboolean
unsoot_hands_customers (UnsootHandRound *round, GError **error)
{
  return tell_unpaid (round, error) && tell_reminders (round, error);
}
