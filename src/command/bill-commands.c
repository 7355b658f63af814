/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "commands.h"

#include <glib/gi18n-lib.h>

#include "finishes.h"
#include "invoices.h"
#include "pick.h"
#include "show.h"
#include "when.h"

/* From the whole engine to the last payment. */

static gboolean
run_finish (UnsootCall *call, GError **error)
{
  g_autofree char *signature = NULL;
  gint64 job_id = 0;
  const GOptionEntry options[] = { { "signature", 's', 0, G_OPTION_ARG_STRING, &signature,
                                     N_ ("Who signs that the engine is whole"), N_ ("NAME") },
                                   { NULL } };

  return unsoot_call_begin (call, options, 1, 1, error)
         && unsoot_call_wants (signature, "--signature", error)
         && unsoot_pick_job (call, call->args[0], &job_id, error)
         && unsoot_job_finish (call->db, &call->who, job_id, signature, error)
         && unsoot_show_deed (call, job_id,
                              g_strdup (_ ("The job is done: signed, fluid and tanks posted.")),
                              error);
}

static gboolean
run_release (UnsootCall *call, GError **error)
{
  g_autofree char *signature = NULL, *reason = NULL;
  gint64 job_id = 0;
  const GOptionEntry options[] = { { "signature", 's', 0, G_OPTION_ARG_STRING, &signature,
                                     N_ ("Who takes it on"), N_ ("NAME") },
                                   { "reason", 'r', 0, G_OPTION_ARG_STRING, &reason,
                                     N_ ("Why it leaves, or stays, in pieces"), N_ ("TEXT") },
                                   { NULL } };

  return unsoot_call_begin (call, options, 1, 1, error)
         && unsoot_call_wants (signature, "--signature", error)
         && unsoot_call_wants (reason, "--reason", error)
         && unsoot_pick_job (call, call->args[0], &job_id, error)
         && unsoot_job_release (call->db, &call->who, job_id, signature, reason, error)
         && unsoot_show_deed (call, job_id,
                              g_strdup (_ ("Released incomplete. Print its tag and hang it where "
                                           "nobody can miss it.")),
                              error);
}

static const UnsootAnswerColumn tax_columns[] = {
  { "label", N_ ("Tax"), FALSE },
  { "taxable", N_ ("On"), TRUE },
  { "tax", N_ ("Amount"), TRUE },
  { NULL },
};

static gboolean
show_invoice (UnsootCall *call, gint64 invoice_id, GError **error)
{
  g_autoptr (UnsootInvoiceFile) file = unsoot_invoice_load (call->db, invoice_id, error);

  if (file == NULL)
    return FALSE;
  unsoot_answer_put (call->answer, "number", _ ("Number"),
                     unsoot_cell_int (file->invoice->number, NULL));
  unsoot_answer_put (call->answer, "issued_on", _ ("Of"),
                     unsoot_call_date (file->invoice->issued_on));
  unsoot_answer_put (call->answer, "due_on", _ ("Due"), unsoot_call_date (file->invoice->due_on));
  unsoot_answer_put (call->answer, "currency", _ ("Currency"),
                     unsoot_cell_text (file->invoice->currency));
  unsoot_answer_put (call->answer, "net", _ ("Net"),
                     unsoot_call_money (call, file->invoice->net_minor));
  unsoot_answer_put (call->answer, "total", _ ("Total"),
                     unsoot_call_money (call, file->invoice->total_minor));
  UnsootAnswerTable *table = unsoot_answer_table (call->answer, "taxes", _ ("Taxes"), tax_columns);
  for (guint i = 0; i < file->taxes->len; i++)
    {
      const UnsootInvoiceTaxRow *tax = file->taxes->pdata[i];

      unsoot_answer_cell (table, unsoot_cell_text (tax->label));
      unsoot_answer_cell (table, unsoot_call_money (call, tax->taxable_minor));
      unsoot_answer_cell (table, unsoot_call_money (call, tax->tax_minor));
    }
  return TRUE;
}

static gboolean
run_invoice (UnsootCall *call, GError **error)
{
  gint64 job_id = 0, invoice_id = 0;

  return unsoot_call_begin (call, NULL, 1, 1, error)
         && unsoot_pick_job (call, call->args[0], &job_id, error)
         && (invoice_id = unsoot_job_invoice (call->db, &call->who, job_id, error)) != 0
         && unsoot_show_deed (call, job_id, g_strdup (_ ("Invoiced.")), error)
         && show_invoice (call, invoice_id, error);
}

/* Without an amount, all that is open. */
static gboolean
read_amount (UnsootCall *call, const char *text, gint64 invoice_id, gint64 *minor, GError **error)
{
  return text != NULL ? unsoot_call_read_money (call, text, minor, error)
                      : unsoot_invoice_open_minor (call->db, invoice_id, minor, error);
}

static gboolean
run_pay (UnsootCall *call, GError **error)
{
  g_autofree char *amount = NULL, *method = NULL, *reference = NULL, *typed = NULL, *day = NULL;
  gint64 invoice_id = 0, minor = 0, open = 0;
  const GOptionEntry options[] = { { "method", 'm', 0, G_OPTION_ARG_STRING, &method,
                                     N_ ("cash, card, transfer or cheque"), N_ ("METHOD") },
                                   { "amount", 0, 0, G_OPTION_ARG_STRING, &amount,
                                     N_ ("Part of what is open; without it, all"), N_ ("AMOUNT") },
                                   { "reference", 'r', 0, G_OPTION_ARG_STRING, &reference,
                                     N_ ("What the bank or the slip says"), N_ ("TEXT") },
                                   { "received", 0, 0, G_OPTION_ARG_STRING, &typed,
                                     N_ ("On which day; without it, today"), N_ ("DATE") },
                                   { NULL } };

  if (!unsoot_call_begin (call, options, 1, 1, error)
      || !unsoot_call_wants (method, "--method", error)
      || (typed != NULL
          && (day = unsoot_when_date (call->shop, call->who.now, typed, error)) == NULL)
      || !unsoot_pick_invoice (call, call->args[0], &invoice_id, error)
      || !read_amount (call, amount, invoice_id, &minor, error)
      || unsoot_invoice_pay (call->db, &call->who, invoice_id, minor, method, reference, day, error)
             == 0
      || !unsoot_invoice_open_minor (call->db, invoice_id, &open, error))
    return FALSE;
  unsoot_answer_say (call->answer, g_strdup (_ ("The payment is recorded.")));
  unsoot_answer_put (call->answer, "currency", _ ("Currency"),
                     unsoot_cell_text (call->shop->currency));
  unsoot_answer_put (call->answer, "paid", _ ("Paid"), unsoot_call_money (call, minor));
  unsoot_answer_put (call->answer, "open", _ ("Still open"), unsoot_call_money (call, open));
  return TRUE;
}

static gboolean
read_positions (char **typed, GArray *positions, GError **error)
{
  for (guint i = 0; typed != NULL && typed[i] != NULL; i++)
    {
      gint64 position = 0;

      if (!unsoot_pick_number (typed[i], "--line", 0, &position, error))
        return FALSE;
      g_array_append_val (positions, position);
    }
  return TRUE;
}

static gboolean
run_credit (UnsootCall *call, GError **error)
{
  g_autofree char *reason = NULL;
  g_auto (GStrv) lines = NULL;
  g_autoptr (GArray) positions = g_array_new (FALSE, FALSE, sizeof (gint64));
  gint64 invoice_id = 0, credit_id = 0;
  const GOptionEntry options[]
      = { { "reason", 'r', 0, G_OPTION_ARG_STRING, &reason, N_ ("Why: it is printed"),
            N_ ("TEXT") },
          { "line", 'l', 0, G_OPTION_ARG_STRING_ARRAY, &lines,
            N_ ("A line to take back, by its position; may be repeated. Without it, the whole"),
            N_ ("POSITION") },
          { NULL } };

  if (!unsoot_call_begin (call, options, 1, 1, error)
      || !unsoot_call_wants (reason, "--reason", error) || !read_positions (lines, positions, error)
      || !unsoot_pick_invoice (call, call->args[0], &invoice_id, error))
    return FALSE;
  credit_id = unsoot_invoice_credit (
      call->db, &call->who, invoice_id,
      positions->len > 0 ? (const gint64 *) (gconstpointer) positions->data : NULL, positions->len,
      reason, error);
  if (credit_id == 0)
    return FALSE;
  unsoot_answer_say (call->answer, g_strdup (_ ("The credit note is made.")));
  return show_invoice (call, credit_id, error);
}

const UnsootCommand unsoot_bill_commands[] = {
  { "finish", N_ ("JOB"), N_ ("Sign a job off: the engine is whole"),
    N_ ("Refused while a part is off, a tool on, something disabled, a tank unaccounted for, the "
        "leak look outdated or the road test missing: everything is named."),
    UNSOOT_NEEDS_PERSON, run_finish },
  { "release", N_ ("JOB"), N_ ("Release a vehicle incomplete, with a signature and a tag"), NULL,
    UNSOOT_NEEDS_PERSON, run_release },
  { "invoice", N_ ("JOB"), N_ ("Invoice a job that is done"), NULL, UNSOOT_NEEDS_PERSON,
    run_invoice },
  { "pay", N_ ("INVOICE"), N_ ("Record a payment"), NULL, UNSOOT_NEEDS_PERSON, run_pay },
  { "credit", N_ ("INVOICE"), N_ ("Take an invoice, or lines of it, back"), NULL,
    UNSOOT_NEEDS_PERSON, run_credit },
  { NULL },
};
