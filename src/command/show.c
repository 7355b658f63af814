/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "show.h"

#include <glib/gi18n-lib.h>

#include "jobs.h"
#include "path.h"

UnsootCell
unsoot_show_status_cell (const char *slug)
{
  UnsootJobStatus status;

  if (slug == NULL || !unsoot_job_status_find (slug, &status))
    return unsoot_cell_text (slug);
  return unsoot_cell_both (slug, g_strdup (unsoot_job_status_words (status)));
}

gboolean
unsoot_show_job_number (UnsootCall *call, gint64 job_id, gint64 *number, GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_job_load (call->db, job_id, error);

  if (job == NULL)
    return FALSE;
  *number = job->number;
  return TRUE;
}

gboolean
unsoot_show_deed (UnsootCall *call, gint64 job_id, char *sentence, GError **error)
{
  g_autofree char *taken = sentence;
  g_autoptr (UnsootJobRow) job = unsoot_job_load (call->db, job_id, error);

  if (job == NULL)
    return FALSE;
  unsoot_answer_say (call->answer, g_steal_pointer (&taken));
  unsoot_answer_put (call->answer, "job", _ ("Job"), unsoot_cell_int (job->number, NULL));
  unsoot_answer_put (call->answer, "status", _ ("Stands"), unsoot_show_status_cell (job->status));
  return TRUE;
}

static const UnsootAnswerColumn line_columns[] = {
  { "position", N_ ("No."), TRUE },
  { "text", N_ ("What"), FALSE },
  { "quantity", N_ ("Quantity"), TRUE },
  { "unit", N_ ("Unit"), FALSE },
  { "price", N_ ("Price"), TRUE },
  { "state", N_ ("Word"), FALSE },
  { NULL },
};

/* Thousandths with no more digits than there are. */
static UnsootCell
quantity_cell (gint64 milli)
{
  double quantity = (double) milli / 1000.0;

  return unsoot_cell_real (quantity, g_strdup_printf ("%.*f",
                                                      milli % 1000 == 0  ? 0
                                                      : milli % 100 == 0 ? 1
                                                      : milli % 10 == 0  ? 2
                                                                         : 3,
                                                      quantity));
}

static UnsootCell
line_state_cell (const UnsootJobLineRow *line)
{
  if (g_strcmp0 (line->state, "authorised") == 0)
    return unsoot_cell_both (line->state, g_strdup (_ ("authorised")));
  if (g_strcmp0 (line->state, "offered") == 0)
    return unsoot_cell_both (line->state, g_strdup (_ ("offered")));
  if (line->declined_reason == NULL)
    return unsoot_cell_both (line->state, g_strdup (_ ("declined")));
  /* Translators: a line of a job, and why the customer did not want it */
  return unsoot_cell_both (line->state,
                           g_strdup_printf (_ ("declined: %s"), line->declined_reason));
}

void
unsoot_show_lines (UnsootCall *call, GPtrArray *lines)
{
  UnsootAnswerTable *table = unsoot_answer_table (call->answer, "lines", _ ("Lines"), line_columns);

  for (guint i = 0; i < lines->len; i++)
    {
      const UnsootJobLineRow *line = lines->pdata[i];

      unsoot_answer_cell (table, unsoot_cell_int (line->position, NULL));
      unsoot_answer_cell (table, unsoot_cell_text (line->text));
      unsoot_answer_cell (table, quantity_cell (line->quantity_milli));
      unsoot_answer_cell (table, unsoot_cell_text (line->unit));
      unsoot_answer_cell (table, unsoot_call_money (call, line->unit_price_minor));
      unsoot_answer_cell (table, line_state_cell (line));
    }
}

void
unsoot_show_bill (UnsootCall *call, const UnsootBill *bill)
{
  unsoot_answer_put (call->answer, "currency", _ ("Currency"),
                     unsoot_cell_text (call->shop->currency));
  unsoot_answer_put (call->answer, "net", _ ("Net"), unsoot_call_money (call, bill->without_tax));
  unsoot_answer_put (call->answer, "tax", _ ("Tax"), unsoot_call_money (call, bill->tax));
  unsoot_answer_put (call->answer, "total", _ ("Total"), unsoot_call_money (call, bill->with_tax));
}
