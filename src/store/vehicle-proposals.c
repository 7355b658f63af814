/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "vehicles.h"

#include <string.h>

#include "vin.h"

static const char proposals_sql[]
    = "SELECT make, model, engine, COALESCE (family_id, 0),"
      " CASE WHEN min (gvwr_lb) = max (gvwr_lb) THEN min (gvwr_lb) ELSE 0 END, count (*)"
      " FROM vehicles WHERE vin >= $1 AND vin < $2 AND make IS NOT NULL"
      " GROUP BY make, model, engine, COALESCE (family_id, 0)"
      " ORDER BY count (*) DESC, make, model NULLS LAST, engine NULLS LAST, 4 LIMIT 8";

void
unsoot_vehicle_proposal_free (UnsootVehicleProposal *proposal)
{
  if (proposal == NULL)
    return;
  g_free (proposal->make);
  g_free (proposal->model);
  g_free (proposal->engine);
  g_free (proposal);
}

static gboolean
add_proposals (UnsootDb *db, GPtrArray *proposals, const char *leading, GError **error)
{
  /* A tilde sorts behind every character that a VIN can have. */
  g_autofree char *past = g_strconcat (leading, "~", NULL);
  g_autoptr (UnsootQuery) query
      = unsoot_db_query (db, error, proposals_sql, unsoot_text (leading), unsoot_text (past));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    {
      UnsootVehicleProposal *proposal = g_new0 (UnsootVehicleProposal, 1);
      proposal->make = unsoot_query_dup_text (query, 0);
      proposal->model = unsoot_query_dup_text (query, 1);
      proposal->engine = unsoot_query_dup_text (query, 2);
      proposal->family_id = unsoot_query_get_int (query, 3);
      proposal->gvwr_lb = unsoot_query_get_int (query, 4);
      proposal->vehicles = unsoot_query_get_int (query, 5);
      proposal->matched = (int) strlen (leading);
      g_ptr_array_add (proposals, proposal);
    }
  return step == UNSOOT_STEP_DONE;
}

GPtrArray *
unsoot_vehicle_proposals (UnsootDb *db, const char *vin, GError **error)
{
  static const guint lengths[] = { UNSOOT_VIN_MODEL, UNSOOT_VIN_MAKER };
  g_autoptr (GPtrArray) proposals
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_vehicle_proposal_free);

  for (guint i = 0; i < G_N_ELEMENTS (lengths) && proposals->len == 0; i++)
    {
      g_autofree char *leading = unsoot_vin_leading (vin, lengths[i]);
      if (leading != NULL && !add_proposals (db, proposals, leading, error))
        return NULL;
    }
  return g_steal_pointer (&proposals);
}
