/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hands.h"

#include <glib/gi18n-lib.h>

#include "calls.h"

static const struct
{
  UnsootHandKind kind;
  const char *about;
} called[] = { { UNSOOT_HAND_LOAN, "loan" },
               { UNSOOT_HAND_ESTIMATE, "job" },
               { UNSOOT_HAND_UNPAID, "invoice" },
               { UNSOOT_HAND_REMINDER, "vehicle" } };

const char *
unsoot_hand_call_about (UnsootHandKind kind)
{
  for (gsize i = 0; i < G_N_ELEMENTS (called); i++)
    if (called[i].kind == kind)
      return called[i].about;
  return NULL;
}

/* After a call the line rests until the day that was agreed on, else for the rest of its day. */
static gboolean
rests (const UnsootHandRound *round, const UnsootCallRow *call)
{
  if (call->again_on != NULL)
    return unsoot_hand_day (call->again_on) > round->today;
  return unsoot_hand_day_of (round, call->at) == round->today;
}

static void
add_call (const UnsootHandRound *round, UnsootHand *hand, const UnsootCallRow *call)
{
  g_autofree char *former = hand->rest;
  g_autofree char *when = unsoot_hand_when (round, call->at);

  /* Translators: what needs a hand, then when somebody was called about it: "yesterday 14:30" */
  hand->rest = g_strdup_printf (_ ("%s; called %s"), former, when);
}

gboolean
unsoot_hands_calls (UnsootHandRound *round, GError **error)
{
  for (guint i = round->hands->len; i-- > 0;)
    {
      UnsootHand *hand = round->hands->pdata[i];
      const char *about = unsoot_hand_call_about (hand->kind);
      g_autoptr (GPtrArray) calls = NULL;
      const UnsootCallRow *last;

      if (about == NULL)
        continue;
      calls = unsoot_calls_about (round->db, about, hand->target_id, error);
      if (calls == NULL)
        return FALSE;
      if (calls->len == 0)
        continue;
      last = ((const UnsootCallLine *) calls->pdata[0])->row;
      if (rests (round, last))
        g_ptr_array_remove_index (round->hands, i);
      else
        add_call (round, hand, last);
    }
  return TRUE;
}
