/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "commands.h"

#include <glib/gi18n-lib.h>

#include "adapters.h"
#include "job-files.h"
#include "jobs.h"
#include "pick.h"
#include "quotes.h"
#include "show.h"
#include "vehicles.h"
#include "when.h"

/* From the question to the customer's word. */

/* What was typed for a quote. */
typedef struct
{
  char *vehicle;
  char *service;
  char *fuel_fluid;
  char *intake_fluid;
  char *fuel_dose;
  char *intake_dose;
  char *wanted;
  char *complaint;
  char *po_number;
  char *note;
  char *comeback_of;
} Typed;

static void
typed_clear (Typed *typed)
{
  g_free (typed->vehicle);
  g_free (typed->service);
  g_free (typed->fuel_fluid);
  g_free (typed->intake_fluid);
  g_free (typed->fuel_dose);
  g_free (typed->intake_dose);
  g_free (typed->wanted);
  g_free (typed->complaint);
  g_free (typed->po_number);
  g_free (typed->note);
  g_free (typed->comeback_of);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Typed, typed_clear)

/* Borrows the texts of @typed. */
static gboolean
read_wish (UnsootCall *call, const Typed *typed, UnsootQuoteWish *wish, GError **error)
{
  wish->complaint = typed->complaint;
  wish->po_number = typed->po_number;
  wish->note = typed->note;
  return unsoot_call_wants (typed->vehicle, "--vehicle", error)
         && unsoot_call_wants (typed->service, "--service", error)
         && unsoot_pick_vehicle (call, typed->vehicle, &wish->vehicle_id, error)
         && unsoot_pick_service (call, typed->service, &wish->service_id, error)
         && (typed->fuel_fluid == NULL
             || unsoot_pick_fluid (call, typed->fuel_fluid, &wish->fuel_fluid_id, error))
         && (typed->intake_fluid == NULL
             || unsoot_pick_fluid (call, typed->intake_fluid, &wish->intake_fluid_id, error))
         && (typed->fuel_dose == NULL
             || unsoot_call_read_volume (typed->fuel_dose, &wish->fuel_ml, error))
         && (typed->intake_dose == NULL
             || unsoot_call_read_volume (typed->intake_dose, &wish->intake_ml, error))
         && (typed->wanted == NULL
             || unsoot_when_moment (call->shop, call->who.now, typed->wanted, &wish->wanted_at,
                                    error))
         && (typed->comeback_of == NULL
             || unsoot_pick_job (call, typed->comeback_of, &wish->comeback_of, error));
}

static const UnsootAnswerColumn fit_columns[] = {
  { "side", N_ ("Side"), FALSE },
  { "code", N_ ("Code"), FALSE },
  { "name", N_ ("Adapter"), FALSE },
  { "label", N_ ("Tag"), FALSE },
  { "where", N_ ("Where"), FALSE },
  { "reason", N_ ("Fits by"), FALSE },
  { NULL },
};

/* Each kind with the item that would be taken: the first is free if any is. */
static void
put_fits (UnsootCall *call, GPtrArray *fits)
{
  UnsootAnswerTable *table
      = unsoot_answer_table (call->answer, "adapters", _ ("Adapters"), fit_columns);

  for (guint i = 0; i < fits->len; i++)
    {
      const UnsootAdapterFit *fit = fits->pdata[i];
      const UnsootItemState *state = fit->items->len > 0 ? fit->items->pdata[0] : NULL;

      unsoot_answer_cell (table, unsoot_cell_text (fit->type->side));
      unsoot_answer_cell (table, unsoot_cell_text (fit->type->code));
      unsoot_answer_cell (table, unsoot_cell_text (fit->type->name));
      unsoot_answer_cell (table, unsoot_cell_text (state != NULL ? state->item->label : NULL));
      unsoot_answer_cell (table, unsoot_cell_text (state != NULL ? state->words : NULL));
      unsoot_answer_cell (table, unsoot_cell_text (fit->reason));
    }
}

static void
put_dose (UnsootCall *call, const UnsootQuoteDose *dose, const char *side, const char *label)
{
  g_autofree char *ml_key = g_strconcat (side, "_dose_ml", NULL);
  g_autofree char *reason_key = g_strconcat (side, "_dose_reason", NULL);
  g_autofree char *fluid_key = g_strconcat (side, "_fluid", NULL);

  if (dose->ml == 0)
    return;
  unsoot_answer_put (call->answer, ml_key, label, unsoot_call_volume (dose->ml));
  unsoot_answer_put (call->answer, reason_key, _ ("because"), unsoot_cell_text (dose->reason));
  unsoot_answer_put (call->answer, fluid_key, _ ("of"), unsoot_cell_text (dose->fluid));
}

static void
show_quote (UnsootCall *call, const UnsootQuote *quote)
{
  g_autofree char *vehicle = unsoot_vehicle_title (quote->vehicle);

  unsoot_answer_put (call->answer, "vehicle", _ ("Vehicle"), unsoot_cell_text (vehicle));
  unsoot_answer_put (call->answer, "service", _ ("Service"),
                     unsoot_cell_text (quote->service->name));
  put_dose (call, &quote->fuel, "fuel", _ ("Fuel side"));
  put_dose (call, &quote->intake, "intake", _ ("Intake side"));
  unsoot_answer_put (call->answer, "planned_minutes", _ ("Planned minutes"),
                     unsoot_cell_int (quote->planned_minutes, NULL));
  unsoot_show_bill (call, quote->bill);
  unsoot_answer_put (call->answer, "valid_until", _ ("Valid until"),
                     unsoot_call_date (quote->valid_until));
  unsoot_answer_list (call->answer, "reasons", _ ("Because"), quote->reasons);
  unsoot_answer_list (call->answer, "warnings", _ ("In the way of running it"), quote->warnings);
  unsoot_show_lines (call, quote->lines);
  put_fits (call, quote->adapters);
}

static gboolean
preview (UnsootCall *call, const UnsootQuoteWish *wish, GError **error)
{
  g_autoptr (UnsootQuote) quote = unsoot_quote_preview (call->db, wish, call->who.now, error);

  if (quote == NULL)
    return FALSE;
  show_quote (call, quote);
  return TRUE;
}

/* The bill over what is offered and authorised, as the newest estimate has it. */
static gboolean
show_estimated (UnsootCall *call, gint64 job_id, GError **error)
{
  g_autoptr (UnsootBill) bill = unsoot_job_bill (call->db, job_id, TRUE, error);

  if (bill == NULL
      || !unsoot_show_deed (call, job_id, g_strdup (_ ("The estimate is made.")), error))
    return FALSE;
  unsoot_show_bill (call, bill);
  return TRUE;
}

static gboolean
make_estimate (UnsootCall *call, const Typed *typed, gboolean only_preview, GError **error)
{
  UnsootQuoteWish wish = { 0 };

  if (!read_wish (call, typed, &wish, error))
    return FALSE;
  if (only_preview)
    return preview (call, &wish, error);
  gint64 job_id = unsoot_job_quote (call->db, &call->who, &wish, error);
  return job_id != 0 && show_estimated (call, job_id, error);
}

static gboolean
renew_estimate (UnsootCall *call, GError **error)
{
  gint64 job_id = 0;

  return unsoot_pick_job (call, call->args[0], &job_id, error)
         && unsoot_job_estimate (call->db, &call->who, job_id, error) != 0
         && show_estimated (call, job_id, error);
}

static gboolean
run_estimate (UnsootCall *call, GError **error)
{
  g_auto (Typed) typed = { 0 };
  gboolean only_preview = FALSE;
  const GOptionEntry options[]
      = { { "vehicle", 'v', 0, G_OPTION_ARG_STRING, &typed.vehicle,
            N_ ("Plate, VIN, unit number or what else finds it alone"), N_ ("WORDS") },
          { "service", 's', 0, G_OPTION_ARG_STRING, &typed.service, N_ ("What is asked for"),
            N_ ("NAME") },
          { "fuel-fluid", 0, 0, G_OPTION_ARG_STRING, &typed.fuel_fluid,
            N_ ("Fluid of the fuel side; without it, the one with most on hand"), N_ ("CODE") },
          { "intake-fluid", 0, 0, G_OPTION_ARG_STRING, &typed.intake_fluid,
            N_ ("Fluid of the intake side, likewise"), N_ ("CODE") },
          { "fuel-dose", 0, 0, G_OPTION_ARG_STRING, &typed.fuel_dose,
            N_ ("Entered by the lead technician; without it, by family or rule"), N_ ("VOLUME") },
          { "intake-dose", 0, 0, G_OPTION_ARG_STRING, &typed.intake_dose, N_ ("Likewise"),
            N_ ("VOLUME") },
          { "wanted", 'w', 0, G_OPTION_ARG_STRING, &typed.wanted,
            N_ ("When: decides which adapters are free"), N_ ("TIME") },
          { "complaint", 'c', 0, G_OPTION_ARG_STRING, &typed.complaint,
            N_ ("In the customer's words"), N_ ("TEXT") },
          { "po", 0, 0, G_OPTION_ARG_STRING, &typed.po_number, N_ ("The customer's order number"),
            N_ ("NUMBER") },
          { "note", 0, 0, G_OPTION_ARG_STRING, &typed.note, N_ ("For the shop alone"),
            N_ ("TEXT") },
          { "comeback-of", 0, 0, G_OPTION_ARG_STRING, &typed.comeback_of,
            N_ ("The job after which the vehicle is back"), N_ ("JOB") },
          { "preview", 0, 0, G_OPTION_ARG_NONE, &only_preview,
            N_ ("Show it with reasons, keep nothing"), NULL },
          { NULL } };

  if (!unsoot_call_begin (call, options, 0, 1, error))
    return FALSE;
  return call->n_args == 1 ? renew_estimate (call, error)
                           : make_estimate (call, &typed, only_preview, error);
}

static gboolean
run_authorise (UnsootCall *call, GError **error)
{
  g_autofree char *by = NULL, *how = NULL, *amount = NULL, *po = NULL, *note = NULL;
  const GOptionEntry options[]
      = { { "by", 'b', 0, G_OPTION_ARG_STRING, &by, N_ ("Who gave their word"), N_ ("NAME") },
          { "how", 0, 0, G_OPTION_ARG_STRING, &how, N_ ("in-person, phone, email, text or signed"),
            N_ ("HOW") },
          { "amount", 0, 0, G_OPTION_ARG_STRING, &amount,
            N_ ("Up to which total with tax; without it, the newest estimate's"), N_ ("AMOUNT") },
          { "po", 0, 0, G_OPTION_ARG_STRING, &po, N_ ("The customer's order number"),
            N_ ("NUMBER") },
          { "note", 0, 0, G_OPTION_ARG_STRING, &note, N_ ("What was said besides"), N_ ("TEXT") },
          { NULL } };
  gint64 job_id = 0, minor = 0;

  if (!unsoot_call_begin (call, options, 1, 1, error) || !unsoot_call_wants (by, "--by", error)
      || !unsoot_call_wants (how, "--how", error)
      || (amount != NULL && !unsoot_call_read_money (call, amount, &minor, error))
      || !unsoot_pick_job (call, call->args[0], &job_id, error)
      || !unsoot_job_authorise (call->db, &call->who, job_id, by, how, minor, po, note, error)
      || !unsoot_job_authorised_minor (call->db, job_id, &minor, error))
    return FALSE;
  g_autofree char *words = unsoot_call_money_words (call, minor);
  /* Translators: an amount, then a person's name */
  char *sentence = g_strdup_printf (_ ("Authorised up to %s by %s."), words, by);
  if (!unsoot_show_deed (call, job_id, sentence, error))
    return FALSE;
  unsoot_answer_put (call->answer, "authorised", _ ("Authorised"), unsoot_call_money (call, minor));
  return TRUE;
}

/* The id of the line that stands at this position of the job. */
static gboolean
pick_line (UnsootCall *call, gint64 job_id, gint64 position, gint64 *line_id, GError **error)
{
  g_autoptr (UnsootJobFile) file = unsoot_job_file_load (call->db, job_id, error);

  if (file == NULL)
    return FALSE;
  for (guint i = 0; i < file->lines->len; i++)
    {
      const UnsootJobLineRow *line = file->lines->pdata[i];

      if (line->position == position)
        {
          *line_id = line->id;
          return TRUE;
        }
    }
  return unsoot_call_misused (error, _ ("The job has no line %d."), (int) position);
}

static gboolean
run_decline (UnsootCall *call, GError **error)
{
  g_autofree char *reason = NULL;
  int position = 0;
  const GOptionEntry options[]
      = { { "reason", 'r', 0, G_OPTION_ARG_STRING, &reason, N_ ("Why, in the customer's words"),
            N_ ("TEXT") },
          { "line", 'l', 0, G_OPTION_ARG_INT, &position,
            N_ ("Only the line at this position; without it, the whole job"), N_ ("POSITION") },
          { NULL } };
  gint64 job_id = 0, line_id = 0;

  if (!unsoot_call_begin (call, options, 1, 1, error)
      || !unsoot_call_wants (reason, "--reason", error)
      || !unsoot_pick_job (call, call->args[0], &job_id, error))
    return FALSE;
  if (position == 0)
    return unsoot_job_decline (call->db, &call->who, job_id, reason, error)
           && unsoot_show_deed (call, job_id, g_strdup (_ ("The job is declined.")), error);
  return pick_line (call, job_id, position, &line_id, error)
         && unsoot_job_line_decline (call->db, &call->who, line_id, reason, error)
         && unsoot_show_deed (call, job_id,
                              g_strdup (_ ("The line is declined. It is kept, and offered again "
                                           "when the vehicle comes next time.")),
                              error);
}

const UnsootCommand unsoot_quote_commands[] = {
  { "estimate", N_ ("[JOB]"), N_ ("Make an estimate: dose, adapters, time and price"),
    N_ ("With a JOB, a new estimate over the lines that stand now; without, a new job for "
        "--vehicle and --service."),
    UNSOOT_NEEDS_PERSON, run_estimate },
  { "authorise", N_ ("JOB"), N_ ("Record the customer's word"), NULL, UNSOOT_NEEDS_PERSON,
    run_authorise },
  { "decline", N_ ("JOB"), N_ ("Record what the customer does not want"), NULL, UNSOOT_NEEDS_PERSON,
    run_decline },
  { NULL },
};
