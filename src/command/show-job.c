/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "show.h"

#include <glib/gi18n-lib.h>

#include "invoices.h"
#include "job-files.h"
#include "jobs.h"
#include "reading.h"
#include "vehicles.h"

static void
put_what (UnsootCall *call, const UnsootJobFile *file)
{
  const UnsootJobRow *job = file->job;
  g_autofree char *vehicle = unsoot_vehicle_title (file->vehicle);

  unsoot_answer_put (call->answer, "job", _ ("Job"), unsoot_cell_int (job->number, NULL));
  unsoot_answer_put (call->answer, "status", _ ("Stands"), unsoot_show_status_cell (job->status));
  unsoot_answer_put (call->answer, "customer", _ ("Customer"),
                     unsoot_cell_text (file->customer->name));
  unsoot_answer_put (call->answer, "vehicle", _ ("Vehicle"), unsoot_cell_text (vehicle));
  unsoot_answer_put (call->answer, "vin", _ ("VIN"), unsoot_cell_text (file->vehicle->vin));
  unsoot_answer_put (call->answer, "family", _ ("Family"),
                     unsoot_cell_text (file->family != NULL ? file->family->name : NULL));
  unsoot_answer_put (call->answer, "service", _ ("Service"),
                     unsoot_cell_text (file->service->name));
  unsoot_answer_put (call->answer, "complaint", _ ("Complaint"), unsoot_cell_text (job->complaint));
  unsoot_answer_put (call->answer, "codes", _ ("Trouble codes"), unsoot_cell_text (job->codes));
  unsoot_answer_put (call->answer, "po_number", _ ("Order"), unsoot_cell_text (job->po_number));
  unsoot_answer_put (call->answer, "fuel_dose_ml", _ ("Fuel side"),
                     unsoot_call_volume (job->fuel_dose_ml));
  unsoot_answer_put (call->answer, "intake_dose_ml", _ ("Intake side"),
                     unsoot_call_volume (job->intake_dose_ml));
  unsoot_answer_put (call->answer, "dose_reason", _ ("Dose by"),
                     unsoot_cell_text (job->dose_reason));
  unsoot_answer_put (call->answer, "made_at", _ ("Made"), unsoot_call_moment (call, job->made_at));
  unsoot_answer_put (call->answer, "arrived_at", _ ("Arrived"),
                     unsoot_call_moment (call, job->arrived_at));
  unsoot_answer_put (call->answer, "next_due_on", _ ("Next due"),
                     unsoot_call_date (job->next_due_on));
  unsoot_answer_put (call->answer, "next_due_reason", _ ("Because"),
                     unsoot_cell_text (job->next_due_reason));
  unsoot_answer_put (call->answer, "note", _ ("Note"), unsoot_cell_text (job->note));
}

static void
put_booking (UnsootCall *call, const UnsootJobFile *file)
{
  if (file->booking == NULL)
    return;
  unsoot_answer_put (call->answer, "starts_at", _ ("Booked from"),
                     unsoot_call_moment (call, file->booking->starts_at));
  unsoot_answer_put (call->answer, "ends_at", _ ("to"),
                     unsoot_call_moment (call, file->booking->ends_at));
  unsoot_answer_put (call->answer, "bay", _ ("Bay"),
                     unsoot_cell_text (file->bay != NULL ? file->bay->name : NULL));
  unsoot_answer_put (call->answer, "machine", _ ("Machine"),
                     unsoot_cell_text (file->machine != NULL ? file->machine->name : NULL));
  unsoot_answer_put (call->answer, "technician", _ ("Technician"),
                     unsoot_cell_text (file->technician != NULL ? file->technician->name : NULL));
}

static gboolean
put_word (UnsootCall *call, const UnsootJobFile *file, GError **error)
{
  gint64 authorised = 0;

  if (!unsoot_job_authorised_minor (call->db, file->job->id, &authorised, error))
    return FALSE;
  unsoot_answer_put (call->answer, "currency", _ ("Currency"),
                     unsoot_cell_text (call->shop->currency));
  if (file->estimates->len > 0)
    {
      const UnsootEstimateRow *estimate = file->estimates->pdata[file->estimates->len - 1];

      unsoot_answer_put (call->answer, "estimate", _ ("Estimate"),
                         unsoot_cell_int (estimate->number, NULL));
      unsoot_answer_put (call->answer, "estimated", _ ("of"),
                         unsoot_call_money (call, estimate->total_minor));
      unsoot_answer_put (call->answer, "valid_until", _ ("valid until"),
                         unsoot_call_date (estimate->valid_until));
    }
  if (file->authorisations->len > 0)
    unsoot_answer_put (call->answer, "authorised", _ ("Authorised"),
                       unsoot_call_money (call, authorised));
  return TRUE;
}

static const UnsootAnswerColumn adapter_columns[] = {
  { "side", N_ ("Side"), FALSE }, { "code", N_ ("Code"), FALSE }, { "name", N_ ("Adapter"), FALSE },
  { "label", N_ ("Tag"), FALSE }, { "bin", N_ ("Bin"), FALSE },   { NULL },
};

static void
put_adapters (UnsootCall *call, const UnsootJobFile *file)
{
  UnsootAnswerTable *table
      = unsoot_answer_table (call->answer, "adapters", _ ("Adapters"), adapter_columns);

  for (guint i = 0; i < file->adapters->len; i++)
    {
      const UnsootJobAdapter *adapter = file->adapters->pdata[i];
      const UnsootAdapterItemRow *item = adapter->item;

      unsoot_answer_cell (table, unsoot_cell_text (adapter->type->side));
      unsoot_answer_cell (table, unsoot_cell_text (adapter->type->code));
      unsoot_answer_cell (table, unsoot_cell_text (adapter->type->name));
      unsoot_answer_cell (table, unsoot_cell_text (item != NULL ? item->label : NULL));
      unsoot_answer_cell (table, unsoot_cell_text (item != NULL ? item->bin : NULL));
    }
}

static const UnsootAnswerColumn reading_columns[] = {
  { "stage", N_ ("When"), FALSE },    { "kind", N_ ("Reading"), FALSE },
  { "value", N_ ("Value"), TRUE },    { "unit", N_ ("Unit"), FALSE },
  { "instrument", N_ ("By"), FALSE }, { NULL },
};

static UnsootCell
unit_cell (const char *slug)
{
  UnsootUnit unit;

  if (slug == NULL || !unsoot_unit_find (slug, &unit))
    return unsoot_cell_text (slug);
  return unsoot_cell_both (slug, g_strdup (unsoot_unit_symbol (unit)));
}

/* As typed, in the unit that was typed: the store keeps both. */
static void
put_readings (UnsootCall *call, const UnsootJobFile *file)
{
  UnsootAnswerTable *table
      = unsoot_answer_table (call->answer, "readings", _ ("Readings"), reading_columns);

  for (guint i = 0; i < file->readings->len; i++)
    {
      const UnsootReadingRow *reading = file->readings->pdata[i];
      int kind = 0;
      gboolean known = unsoot_slug_find (unsoot_reading_kinds, reading->kind, &kind);
      const char *words = known ? unsoot_slug_words (unsoot_reading_kinds, kind) : reading->kind;
      gboolean after = g_strcmp0 (reading->stage, "after") == 0;

      unsoot_answer_cell (
          table, unsoot_cell_both (reading->stage, g_strdup (after ? _ ("after") : _ ("before"))));
      unsoot_answer_cell (table, unsoot_cell_both (reading->kind, g_strdup (words)));
      unsoot_answer_cell (table, unsoot_cell_text (reading->typed));
      unsoot_answer_cell (table, unit_cell (reading->unit));
      unsoot_answer_cell (table, unsoot_cell_text (reading->instrument));
    }
}

static const UnsootAnswerColumn invoice_columns[] = {
  { "number", N_ ("No."), TRUE },
  { "kind", N_ ("Kind"), FALSE },
  { "issued_on", N_ ("Of"), FALSE },
  { "due_on", N_ ("Due"), FALSE },
  { "total", N_ ("Total"), TRUE },
  { "open", N_ ("Open"), TRUE },
  { NULL },
};

static gboolean
put_invoices (UnsootCall *call, const UnsootJobFile *file, GError **error)
{
  UnsootAnswerTable *table
      = unsoot_answer_table (call->answer, "invoices", _ ("Invoices"), invoice_columns);

  for (guint i = 0; i < file->invoices->len; i++)
    {
      const UnsootInvoiceRow *invoice = ((UnsootInvoiceFile *) file->invoices->pdata[i])->invoice;
      gboolean credit = g_strcmp0 (invoice->kind, "credit") == 0;
      gint64 open = 0;

      if (!credit && !unsoot_invoice_open_minor (call->db, invoice->id, &open, error))
        return FALSE;
      unsoot_answer_cell (table, unsoot_cell_int (invoice->number, NULL));
      unsoot_answer_cell (
          table,
          unsoot_cell_both (invoice->kind, g_strdup (credit ? _ ("credit note") : _ ("invoice"))));
      unsoot_answer_cell (table, unsoot_call_date (invoice->issued_on));
      unsoot_answer_cell (table, unsoot_call_date (invoice->due_on));
      unsoot_answer_cell (table, unsoot_call_money (call, invoice->total_minor));
      unsoot_answer_cell (table, unsoot_call_money (call, open));
    }
  return TRUE;
}

static const UnsootAnswerColumn status_columns[] = {
  { "at", N_ ("When"), FALSE },
  { "status", N_ ("Became"), FALSE },
  { "note", N_ ("Note"), FALSE },
  { NULL },
};

static void
put_history (UnsootCall *call, const UnsootJobFile *file)
{
  UnsootAnswerTable *table
      = unsoot_answer_table (call->answer, "history", _ ("History"), status_columns);

  for (guint i = 0; i < file->status->len; i++)
    {
      const UnsootJobStatusRow *status = file->status->pdata[i];

      unsoot_answer_cell (table, unsoot_call_moment (call, status->at));
      unsoot_answer_cell (table, unsoot_show_status_cell (status->status));
      unsoot_answer_cell (table, unsoot_cell_text (status->note));
    }
}

gboolean
unsoot_show_job (UnsootCall *call, gint64 job_id, GError **error)
{
  g_autoptr (UnsootJobFile) file = unsoot_job_file_load (call->db, job_id, error);

  if (file == NULL)
    return FALSE;
  put_what (call, file);
  put_booking (call, file);
  if (!put_word (call, file, error))
    return FALSE;
  unsoot_show_lines (call, file->lines);
  put_adapters (call, file);
  put_readings (call, file);
  if (!put_invoices (call, file, error))
    return FALSE;
  put_history (call, file);
  return TRUE;
}
