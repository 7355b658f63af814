/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hands.h"

#include <glib/gi18n-lib.h>

#include "adapters.h"
#include "attention.h"
#include "civil-words.h"
#include "machines.h"

static gboolean
tell_loan (UnsootHandRound *round, const UnsootLoanRow *loan, GError **error)
{
  int due = unsoot_hand_day (loan->due_on);
  g_autoptr (UnsootAdapterItemRow) item = NULL;

  if (due == 0 || due >= round->today)
    return TRUE;
  item = unsoot_rows_get (round->db, &unsoot_adapter_item_row_type, loan->item_id, error);
  if (item == NULL)
    return FALSE;
  g_autofree char *when = unsoot_day_near_words (due, round->today);
  unsoot_hand_add (round, UNSOOT_HAND_LOAN, round->today - due, UNSOOT_TARGET_LOAN, loan->id,
                   _ ("Call"), g_strdup_printf (_ ("Adapter %s"), item->label),
                   g_strdup_printf (_ ("was due back %s from %s"), when, loan->to_name));
  return TRUE;
}

static gboolean
tell_loans (UnsootHandRound *round, GError **error)
{
  g_autoptr (GPtrArray) loans = unsoot_loan_list (round->db, error);

  for (guint i = 0; loans != NULL && i < loans->len; i++)
    if (!tell_loan (round, loans->pdata[i], error))
      return FALSE;
  return loans != NULL;
}

static void
tell_hoses (UnsootHandRound *round, const UnsootMachineRow *machine)
{
  int due = unsoot_hand_day (machine->hoses_due_on);

  if (due == 0 || due - round->today > UNSOOT_ATTENTION_HOSES)
    return;
  g_autofree char *when = unsoot_day_near_words (due, round->today);
  unsoot_hand_add (round, UNSOOT_HAND_HOSES, round->today - due, UNSOOT_TARGET_MACHINE, machine->id,
                   _ ("Replace"), g_strdup (machine->name),
                   due < round->today ? g_strdup_printf (_ ("should have had new hoses %s"), when)
                                      : g_strdup_printf (_ ("is to get new hoses %s"), when));
}

static void
tell_gauge (UnsootHandRound *round, const UnsootMachineRow *machine,
            const UnsootGaugeCheckRow *check)
{
  int due = unsoot_hand_day (check->next_on);

  if (due == 0 || due - round->today > UNSOOT_ATTENTION_GAUGE)
    return;
  g_autofree char *when = unsoot_day_near_words (due, round->today);
  unsoot_hand_add (
      round, UNSOOT_HAND_GAUGE, round->today - due, UNSOOT_TARGET_MACHINE, machine->id, _ ("Check"),
      g_strdup (machine->name),
      due < round->today
          ? g_strdup_printf (_ ("was due for the check of its %s gauge %s"), check->gauge, when)
          : g_strdup_printf (_ ("is due for the check of its %s gauge %s"), check->gauge, when));
}

static gboolean
is_last_of_gauge (GPtrArray *checks, guint i)
{
  const UnsootGaugeCheckRow *check = checks->pdata[i];

  for (guint k = i + 1; k < checks->len; k++)
    if (g_strcmp0 (((UnsootGaugeCheckRow *) checks->pdata[k])->gauge, check->gauge) == 0)
      return FALSE;
  return TRUE;
}

static gboolean
tell_machine (UnsootHandRound *round, const UnsootMachineRow *machine, GError **error)
{
  g_autoptr (GPtrArray) checks = unsoot_gauge_checks (round->db, machine->id, error);

  tell_hoses (round, machine);
  for (guint i = 0; checks != NULL && i < checks->len; i++)
    if (is_last_of_gauge (checks, i))
      tell_gauge (round, machine, checks->pdata[i]);
  return checks != NULL;
}

static gboolean
tell_machines (UnsootHandRound *round, GError **error)
{
  g_autoptr (GPtrArray) machines = unsoot_machine_list (round->db, error);

  for (guint i = 0; machines != NULL && i < machines->len; i++)
    {
      const UnsootMachineRow *machine = machines->pdata[i];
      if (machine->active && !tell_machine (round, machine, error))
        return FALSE;
    }
  return machines != NULL;
}

gboolean
unsoot_hands_equipment (UnsootHandRound *round, GError **error)
{
  return tell_loans (round, error) && tell_machines (round, error);
}
