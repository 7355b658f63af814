/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "invoices.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "deed.h"
#include "invoice-rows.h"
#include "job-status.h"
#include "jobs.h"
#include "money.h"
#include "shops.h"

/* Lines of an invoice that are taken back, by their position: those of its credit notes. */
static gboolean
is_credited (UnsootDb *db, gint64 invoice_id, gint64 position, gboolean *credited, GError **error)
{
  gint64 lines = 0;

  if (!unsoot_db_int (db, &lines, error,
                      "SELECT count (*) FROM invoice_lines l JOIN invoices c ON c.id = l.invoice_id"
                      " WHERE c.credits_id = $1 AND l.position = $2",
                      unsoot_int (invoice_id), unsoot_int (position)))
    return FALSE;
  *credited = lines > 0;
  return TRUE;
}

static UnsootInvoiceLineRow *
at_position (GPtrArray *lines, gint64 position)
{
  for (guint i = 0; i < lines->len; i++)
    if (((UnsootInvoiceLineRow *) lines->pdata[i])->position == position)
      return lines->pdata[i];
  return NULL;
}

/* What takes a line back: all its amounts with their signs turned, its price as it was. */
static UnsootInvoiceLineRow *
turned (const UnsootInvoiceLineRow *from)
{
  UnsootInvoiceLineRow *line = unsoot_record_copy (&unsoot_invoice_line_row_type, from);

  line->id = 0;
  line->quantity_milli = -from->quantity_milli;
  line->net_minor = -from->net_minor;
  return line;
}

static gboolean
take_line (UnsootDb *db, const UnsootInvoiceFile *file, gint64 position, GPtrArray *taken,
           GError **error)
{
  const UnsootInvoiceLineRow *line = at_position (file->lines, position);
  gboolean credited;

  if (line == NULL)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Invoice %" PRId64 " has no line %d."), file->invoice->number,
                             (int) position);
  if (!is_credited (db, file->invoice->id, position, &credited, error))
    return FALSE;
  if (credited || at_position (taken, position) != NULL)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("Line %d, “%s”, was credited before."), (int) position, line->text);
  g_ptr_array_add (taken, turned (line));
  return TRUE;
}

/* The lines asked for; where none are named, all that are left. */
static gboolean
take_lines (UnsootDb *db, const UnsootInvoiceFile *file, const gint64 *positions, gsize n,
            GPtrArray *taken, GError **error)
{
  for (gsize i = 0; positions != NULL && i < n; i++)
    if (!take_line (db, file, positions[i], taken, error))
      return FALSE;
  for (guint i = 0; positions == NULL && i < file->lines->len; i++)
    {
      const UnsootInvoiceLineRow *line = file->lines->pdata[i];
      gboolean credited;
      if (!is_credited (db, file->invoice->id, line->position, &credited, error))
        return FALSE;
      if (!credited)
        g_ptr_array_add (taken, turned (line));
    }
  if (taken->len == 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("Nothing of invoice %" PRId64 " is left to credit."),
                             file->invoice->number);
  return TRUE;
}

/* Tax of what is taken back, by the invoice's own frozen rates. What completes a row of tax
 * takes back all that is left of it, so that rounding never leaves a cent. */
static gboolean
tax_of (UnsootDb *db, const UnsootInvoiceFile *file, const UnsootInvoiceTaxRow *from,
        GPtrArray *taken, UnsootInvoiceTaxRow *tax, GError **error)
{
  gint64 taxable = 0;
  gint64 before = 0;
  gint64 tax_before = 0;

  for (guint i = 0; i < taken->len; i++)
    {
      const UnsootInvoiceLineRow *line = taken->pdata[i];
      if (g_strcmp0 (line->category, from->category) == 0
          && line->rate_milli_percent == from->rate_milli_percent)
        taxable += line->net_minor;
    }
  if (!unsoot_db_int (db, &before, error,
                      "SELECT COALESCE (sum (t.taxable_minor), 0) FROM invoice_taxes t"
                      " JOIN invoices c ON c.id = t.invoice_id WHERE c.credits_id = $1"
                      " AND t.category = $2 AND t.rate_milli_percent = $3",
                      unsoot_int (file->invoice->id), unsoot_text (from->category),
                      unsoot_int (from->rate_milli_percent))
      || !unsoot_db_int (db, &tax_before, error,
                         "SELECT COALESCE (sum (t.tax_minor), 0) FROM invoice_taxes t"
                         " JOIN invoices c ON c.id = t.invoice_id WHERE c.credits_id = $1"
                         " AND t.category = $2 AND t.rate_milli_percent = $3",
                         unsoot_int (file->invoice->id), unsoot_text (from->category),
                         unsoot_int (from->rate_milli_percent)))
    return FALSE;
  tax->taxable_minor = taxable;
  if (from->taxable_minor + before + taxable == 0)
    tax->tax_minor = -from->tax_minor - tax_before;
  else if (!unsoot_money_rate (taxable, from->rate_milli_percent, &tax->tax_minor, error))
    return FALSE;
  tax->category = g_strdup (from->category);
  tax->rate_milli_percent = from->rate_milli_percent;
  tax->label = g_strdup (from->label);
  return TRUE;
}

static gboolean
taxes_of (UnsootDb *db, const UnsootInvoiceFile *file, GPtrArray *taken, GPtrArray *taxes,
          GError **error)
{
  for (guint i = 0; i < file->taxes->len; i++)
    {
      g_autoptr (UnsootInvoiceTaxRow) tax = unsoot_invoice_tax_row_new ();
      if (!tax_of (db, file, file->taxes->pdata[i], taken, tax, error))
        return FALSE;
      if (tax->taxable_minor != 0 || tax->tax_minor != 0)
        g_ptr_array_add (taxes, g_steal_pointer (&tax));
    }
  return TRUE;
}

static UnsootInvoiceRow *
head_of (UnsootDb *db, const UnsootActing *who, const UnsootInvoiceFile *file, GPtrArray *lines,
         GPtrArray *taxes, const char *reason, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  if (shop == NULL)
    return NULL;

  UnsootInvoiceRow *note = unsoot_record_copy (&unsoot_invoice_row_type, file->invoice);
  note->id = 0;
  note->credits_id = file->invoice->id;
  g_free (note->kind);
  note->kind = g_strdup ("credit");
  g_free (note->issued_on);
  note->issued_on = unsoot_shop_date (shop, who->now);
  g_free (note->due_on);
  note->due_on = g_strdup (note->issued_on);
  g_free (note->note);
  note->note = g_strdup (reason);
  note->net_minor = 0;
  note->tax_minor = 0;
  for (guint i = 0; i < lines->len; i++)
    note->net_minor += ((UnsootInvoiceLineRow *) lines->pdata[i])->net_minor;
  for (guint i = 0; i < taxes->len; i++)
    note->tax_minor += ((UnsootInvoiceTaxRow *) taxes->pdata[i])->tax_minor;
  note->total_minor = note->net_minor + note->tax_minor;
  return note;
}

/* A job whose whole invoice was taken back is done, to be invoiced anew; else it may be paid
 * by what is left. */
static gboolean
move_job (UnsootDb *db, const UnsootActing *who, const UnsootInvoiceFile *file, gboolean whole,
          const char *reason, GError **error)
{
  if (!whole)
    return unsoot_invoice_settle (db, who, file->invoice->id, error);
  if (file->invoice->job_id == 0)
    return TRUE;
  g_autoptr (UnsootJobRow) job = unsoot_job_load (db, file->invoice->job_id, error);
  if (job == NULL)
    return FALSE;
  if (unsoot_job_row_status (job) == UNSOOT_JOB_INVOICED)
    return unsoot_job_move (db, who, job, UNSOOT_JOB_DONE, reason, error);
  return TRUE;
}

static gboolean
check_invoice (const UnsootInvoiceFile *file, const char *reason, GError **error)
{
  if (g_strcmp0 (file->invoice->kind, "invoice") != 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("%" PRId64 " is a credit note itself."), file->invoice->number);
  if (unsoot_deed_blank (reason))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say why it is credited: the reason is printed."));
  return TRUE;
}

static gint64
credit (UnsootDb *db, const UnsootActing *who, const UnsootInvoiceFile *file,
        const gint64 *positions, gsize n, const char *reason, GError **error)
{
  g_autoptr (GPtrArray) lines
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_invoice_line_row_free);
  g_autoptr (GPtrArray) taxes
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_invoice_tax_row_free);
  gint64 left = 0;

  if (!take_lines (db, file, positions, n, lines, error)
      || !taxes_of (db, file, lines, taxes, error))
    return 0;
  g_autoptr (UnsootInvoiceRow) note = head_of (db, who, file, lines, taxes, reason, error);
  if (note == NULL || !unsoot_invoice_post (db, who, note, lines, taxes, error)
      || !unsoot_db_int (db, &left, error,
                         "SELECT (SELECT count (*) FROM invoice_lines WHERE invoice_id = $1)"
                         " - (SELECT count (*) FROM invoice_lines l JOIN invoices c"
                         "  ON c.id = l.invoice_id WHERE c.credits_id = $1)",
                         unsoot_int (file->invoice->id))
      || !move_job (db, who, file, left == 0, reason, error))
    return 0;
  return note->id;
}

gint64
unsoot_invoice_credit (UnsootDb *db, const UnsootActing *who, gint64 invoice_id,
                       const gint64 *positions, gsize n_positions, const char *reason,
                       GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_CREDIT, error);
  g_autoptr (UnsootInvoiceFile) file
      = deed != NULL ? unsoot_invoice_load (db, invoice_id, error) : NULL;

  if (file == NULL || !check_invoice (file, reason, error))
    return 0;
  gint64 id = credit (db, who, file, positions, n_positions, reason, error);
  return unsoot_deed_end (&deed, id != 0, error) ? id : 0;
}
