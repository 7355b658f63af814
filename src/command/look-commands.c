/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "commands.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "days.h"
#include "find.h"
#include "show.h"
#include "pick.h"
#include "shops.h"
#include "strip.h"
#include "when.h"

/* Looking things up: nothing here changes the book. */

static const char *
found_slug (UnsootFoundKind kind)
{
  switch (kind)
    {
    case UNSOOT_FOUND_CUSTOMER:
      return "customer";
    case UNSOOT_FOUND_VEHICLE:
      return "vehicle";
    case UNSOOT_FOUND_JOB:
      return "job";
    case UNSOOT_FOUND_ESTIMATE:
      return "estimate";
    case UNSOOT_FOUND_INVOICE:
      return "invoice";
    case UNSOOT_FOUND_LOT:
      return "lot";
    case UNSOOT_FOUND_ADAPTER:
      return "adapter";
    case UNSOOT_FOUND_FLUID:
      return "fluid";
    }
  g_return_val_if_reached (NULL);
}

static const char *
found_words (UnsootFoundKind kind)
{
  switch (kind)
    {
    case UNSOOT_FOUND_CUSTOMER:
      return _ ("customer");
    case UNSOOT_FOUND_VEHICLE:
      return _ ("vehicle");
    case UNSOOT_FOUND_JOB:
      return _ ("job");
    case UNSOOT_FOUND_ESTIMATE:
      return _ ("estimate");
    case UNSOOT_FOUND_INVOICE:
      return _ ("invoice");
    case UNSOOT_FOUND_LOT:
      return _ ("lot");
    case UNSOOT_FOUND_ADAPTER:
      return _ ("adapter");
    case UNSOOT_FOUND_FLUID:
      return _ ("fluid");
    }
  g_return_val_if_reached (NULL);
}

static const UnsootAnswerColumn found_columns[] = {
  { "kind", N_ ("Kind"), FALSE },
  { "title", N_ ("Title"), FALSE },
  { "detail", N_ ("More"), FALSE },
  { NULL },
};

static gboolean
run_find (UnsootCall *call, GError **error)
{
  int limit = 10;
  const GOptionEntry options[] = { { "limit", 'l', 0, G_OPTION_ARG_INT, &limit,
                                     N_ ("The most results of a kind"), N_ ("NUMBER") },
                                   { NULL } };

  if (!unsoot_call_begin (call, options, 1, G_MAXUINT, error))
    return FALSE;
  if (limit < 1)
    return unsoot_call_misused (error, _ ("--limit has to be 1 or more."));
  g_autofree char *typed = g_strjoinv (" ", call->args);
  g_autoptr (GPtrArray) found = unsoot_find (call->db, typed, (guint) limit, error);
  if (found == NULL)
    return FALSE;
  UnsootAnswerTable *table
      = unsoot_answer_table (call->answer, "found", _ ("Found"), found_columns);
  for (guint i = 0; i < found->len; i++)
    {
      const UnsootFound *one = found->pdata[i];

      unsoot_answer_cell (
          table, unsoot_cell_both (found_slug (one->kind), g_strdup (found_words (one->kind))));
      unsoot_answer_cell (table, unsoot_cell_text (one->title));
      unsoot_answer_cell (table, unsoot_cell_text (one->detail));
    }
  return TRUE;
}

static const UnsootAnswerColumn block_columns[] = {
  { "bay", N_ ("Bay"), FALSE },
  { "starts_at", N_ ("From"), FALSE },
  { "ends_at", N_ ("To"), FALSE },
  { "job", N_ ("Job"), TRUE },
  { "status", N_ ("Stands"), FALSE },
  { "progress", N_ ("Steps"), TRUE },
  { "vehicle", N_ ("Vehicle"), FALSE },
  { "customer", N_ ("Customer"), FALSE },
  { "technician", N_ ("Technician"), FALSE },
  { NULL },
};

static UnsootCell
clock_cell (UnsootCall *call, gint64 at)
{
  g_autofree char *iso = unsoot_when_iso (call->shop, at);

  return unsoot_cell_both (iso, unsoot_strip_clock (call->shop, at));
}

static void
tell_block (UnsootCall *call, UnsootAnswerTable *table, const UnsootDay *day,
            const UnsootDayBlock *block)
{
  gboolean runs = !isnan (block->progress);

  unsoot_answer_cell (table, unsoot_cell_text (unsoot_strip_bay_name (day, block->bay_id)));
  unsoot_answer_cell (table, clock_cell (call, block->starts_at));
  unsoot_answer_cell (table, clock_cell (call, block->ends_at));
  unsoot_answer_cell (table, unsoot_cell_int (block->job_number, NULL));
  unsoot_answer_cell (table, unsoot_show_status_cell (block->status));
  unsoot_answer_cell (
      table, unsoot_cell_real (block->progress,
                               runs ? g_strdup_printf ("%.0f %%", 100.0 * block->progress) : NULL));
  unsoot_answer_cell (table, unsoot_cell_text (block->title));
  unsoot_answer_cell (table, unsoot_cell_text (block->customer));
  unsoot_answer_cell (table, unsoot_cell_text (block->technician));
}

static const UnsootAnswerColumn hand_columns[] = {
  { "thing", N_ ("What"), FALSE },
  { "rest", N_ ("Why"), FALSE },
  { "verb", N_ ("Next"), FALSE },
  { NULL },
};

static void
tell_hands (UnsootCall *call, const UnsootDay *day)
{
  UnsootAnswerTable *table
      = unsoot_answer_table (call->answer, "needs_a_hand", _ ("Needs a hand"), hand_columns);

  for (guint i = 0; i < day->hands->len; i++)
    {
      const UnsootHand *hand = day->hands->pdata[i];

      unsoot_answer_cell (table, unsoot_cell_text (hand->thing));
      unsoot_answer_cell (table, unsoot_cell_text (hand->rest));
      unsoot_answer_cell (table, unsoot_cell_text (hand->verb));
    }
}

static void
tell_day (UnsootCall *call, const UnsootDay *day)
{
  g_autofree char *strip = unsoot_strip_draw (call->shop, day);

  unsoot_answer_put (call->answer, "date", _ ("Day"), unsoot_call_date (day->date));
  unsoot_answer_put (call->answer, "opens_at", _ ("Opens"),
                     unsoot_call_moment (call, day->opens_at));
  unsoot_answer_put (call->answer, "closes_at", _ ("Closes"),
                     unsoot_call_moment (call, day->closes_at));
  unsoot_answer_put (call->answer, "shut", _ ("Shut"), unsoot_cell_text (day->shut_reason));
  unsoot_answer_drawing (call->answer, strip);
  UnsootAnswerTable *table
      = unsoot_answer_table (call->answer, "blocks", _ ("Booked"), block_columns);
  for (guint i = 0; i < day->blocks->len; i++)
    tell_block (call, table, day, day->blocks->pdata[i]);
  tell_hands (call, day);
}

static gboolean
run_day (UnsootCall *call, GError **error)
{
  g_autofree char *typed = NULL, *date = NULL;
  const GOptionEntry options[] = { { "date", 'd', 0, G_OPTION_ARG_STRING, &typed,
                                     N_ ("Another day than today"), N_ ("DATE") },
                                   { NULL } };

  if (!unsoot_call_begin (call, options, 0, 0, error))
    return FALSE;
  if (typed != NULL && (date = unsoot_when_date (call->shop, call->who.now, typed, error)) == NULL)
    return FALSE;
  g_autoptr (UnsootDay) day = unsoot_day_load (call->db, date, call->who.now, error);
  if (day == NULL)
    return FALSE;
  tell_day (call, day);
  return TRUE;
}

static gboolean
run_job (UnsootCall *call, GError **error)
{
  gint64 job_id = 0;

  return unsoot_call_begin (call, NULL, 1, 1, error)
         && unsoot_pick_job (call, call->args[0], &job_id, error)
         && unsoot_show_job (call, job_id, error);
}

const UnsootCommand unsoot_look_commands[] = {
  { "find", N_ ("WORDS…"), N_ ("Find any customer, vehicle, job, paper, lot or adapter"), NULL,
    UNSOOT_NEEDS_BOOK, run_find },
  { "day", NULL, N_ ("The day's bookings, and what needs a hand"), NULL, UNSOOT_NEEDS_BOOK,
    run_day },
  { "job", N_ ("JOB"), N_ ("Show a job"), NULL, UNSOOT_NEEDS_BOOK, run_job },
  { NULL },
};
