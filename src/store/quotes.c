/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "quotes.h"

#include <glib/gi18n-lib.h>

#include "customers.h"
#include "civil.h"
#include "deed.h"
#include "indexing.h"
#include "job-bills.h"
#include "job-status.h"
#include "jobs.h"
#include "money.h"
#include "shops.h"
#include "vehicles.h"

UnsootBill *
unsoot_job_bill (UnsootDb *db, gint64 job_id, gboolean offered, GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_job_load (db, job_id, error);
  g_autoptr (UnsootCustomerRow) customer
      = job != NULL ? unsoot_customer_load (db, job->customer_id, error) : NULL;
  g_autoptr (UnsootShopTerms) terms
      = customer != NULL ? unsoot_shop_terms_load (db, customer, error) : NULL;
  g_autoptr (GPtrArray) lines
      = terms != NULL ? unsoot_job_lines_standing (db, job_id, offered, error) : NULL;

  return lines != NULL ? unsoot_job_lines_bill (lines, terms, error) : NULL;
}

/* "Intake fluid R, 2 L at 41.00: 82.00", a line each: as it was given. */
static char *
as_given (GPtrArray *lines, const UnsootBill *bill, const char *currency)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < lines->len; i++)
    {
      const UnsootJobLineRow *line = lines->pdata[i];
      g_autofree char *price = unsoot_money_plain (line->unit_price_minor, currency);
      g_autofree char *net = unsoot_money_plain (g_array_index (bill->nets, gint64, i), currency);
      char quantity[G_ASCII_DTOSTR_BUF_SIZE];
      g_ascii_formatd (quantity, sizeof quantity, "%.15g", (double) line->quantity_milli / 1000.0);
      g_string_append_printf (text, "%s%s, %s %s × %s = %s", i > 0 ? "\n" : "", line->text,
                              quantity, line->unit, price, net);
    }
  return g_string_free (text, FALSE);
}

static gboolean
set_valid_until (UnsootEstimateRow *estimate, const UnsootShopRow *shop, GError **error)
{
  g_autofree char *today = unsoot_shop_date (shop, estimate->at);
  int day;

  if (!unsoot_day_parse (today, &day, error))
    return FALSE;
  estimate->valid_until = unsoot_day_iso (day + (int) shop->estimate_valid_days);
  return TRUE;
}

/* In the caller's deed. */
static gint64
post_estimate (UnsootDb *db, const UnsootActing *who, gint64 job_id, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  g_autoptr (UnsootBill) bill = shop != NULL ? unsoot_job_bill (db, job_id, TRUE, error) : NULL;
  g_autoptr (GPtrArray) lines
      = bill != NULL ? unsoot_job_lines_standing (db, job_id, TRUE, error) : NULL;
  g_autoptr (UnsootEstimateRow) estimate = unsoot_estimate_row_new ();

  if (lines == NULL
      || !unsoot_db_int (db, &estimate->number, error,
                         "SELECT COALESCE (max (number), 0) + 1 FROM estimates"))
    return 0;
  estimate->job_id = job_id;
  estimate->at = who->now;
  estimate->staff_id = who->staff_id;
  estimate->net_minor = bill->without_tax;
  estimate->tax_minor = bill->tax;
  estimate->total_minor = bill->with_tax;
  estimate->text = as_given (lines, bill, shop->currency);
  if (!set_valid_until (estimate, shop, error)
      || !unsoot_rows_post (db, &unsoot_estimate_row_type, estimate, error)
      || !unsoot_index_estimate (db, estimate->id, error))
    return 0;
  return estimate->id;
}

static UnsootJobRow *
new_job (UnsootDb *db, const UnsootActing *who, const UnsootQuoteWish *wish,
         const UnsootQuote *quote, GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_job_row_new ();
  gboolean both = quote->fuel.reason != NULL && quote->intake.reason != NULL;

  if (!unsoot_db_int (db, &job->number, error, "SELECT COALESCE (max (number), 0) + 1 FROM jobs"))
    return NULL;
  job->customer_id = quote->vehicle->customer_id;
  job->vehicle_id = quote->vehicle->id;
  job->service_id = quote->service->id;
  job->family_id = quote->vehicle->family_id;
  job->status = g_strdup (unsoot_job_status_slug (UNSOOT_JOB_QUOTED));
  job->complaint = g_strdup (wish->complaint);
  job->po_number = g_strdup (wish->po_number);
  job->note = g_strdup (wish->note);
  job->fuel_dose_ml = quote->fuel.ml;
  job->intake_dose_ml = quote->intake.ml;
  job->dose_reason
      = both ? g_strdup_printf ("%s\n%s", quote->fuel.reason, quote->intake.reason)
             : g_strdup (quote->fuel.reason != NULL ? quote->fuel.reason : quote->intake.reason);
  job->wanted_at = wish->wanted_at;
  job->comeback_of = wish->comeback_of;
  job->made_at = who->now;
  return g_steal_pointer (&job);
}

static gboolean
insert_lines (UnsootDb *db, const UnsootActing *who, gint64 job_id, GPtrArray *lines,
              GError **error)
{
  for (guint i = 0; i < lines->len; i++)
    {
      UnsootJobLineRow *line = lines->pdata[i];
      line->job_id = job_id;
      if (!unsoot_rows_insert (db, &unsoot_job_line_row_type, line, who, error))
        return FALSE;
    }
  return TRUE;
}

/* A dose that is not reasoned from data is the lead technician's to enter. */
static gboolean
may_enter (UnsootDb *db, const UnsootActing *who, const UnsootQuoteWish *wish, GError **error)
{
  return (wish->fuel_ml == 0 && wish->intake_ml == 0)
         || unsoot_deed_allowed (db, who, UNSOOT_DEED_ENTER_DOSE, error);
}

gint64
unsoot_job_quote (UnsootDb *db, const UnsootActing *who, const UnsootQuoteWish *wish,
                  GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_ESTIMATE, error);
  g_autoptr (UnsootQuote) quote = deed != NULL && may_enter (db, who, wish, error)
                                      ? unsoot_quote_preview (db, wish, who->now, error)
                                      : NULL;
  g_autoptr (UnsootJobRow) job = quote != NULL ? new_job (db, who, wish, quote, error) : NULL;

  if (job == NULL)
    return 0;
  gboolean done = unsoot_rows_insert (db, &unsoot_job_row_type, job, who, error)
                  && insert_lines (db, who, job->id, quote->lines, error)
                  && unsoot_job_post_status (db, who, job, NULL, error)
                  && unsoot_index_job (db, job->id, error)
                  && post_estimate (db, who, job->id, error) != 0;
  return unsoot_deed_end (&deed, done, error) ? job->id : 0;
}

/* Keeps what is new; @whole is the wish by ids alone. */
static gboolean
keep_new (UnsootDb *db, const UnsootActing *who, const UnsootQuoteWish *wish, GPtrArray *phones,
          UnsootQuoteWish *whole, GError **error)
{
  g_autoptr (UnsootVehicleRow) vehicle
      = wish->vehicle != NULL ? unsoot_record_copy (&unsoot_vehicle_row_type, wish->vehicle) : NULL;

  *whole = *wish;
  if (wish->customer != NULL && vehicle != NULL)
    {
      g_autoptr (UnsootCustomerRow) customer
          = unsoot_record_copy (&unsoot_customer_row_type, wish->customer);
      if (!unsoot_customer_save (db, who, customer, phones, NULL, error))
        return FALSE;
      vehicle->customer_id = customer->id;
    }
  if (vehicle != NULL && !unsoot_vehicle_save (db, who, vehicle, NULL, error))
    return FALSE;
  whole->customer = NULL;
  whole->vehicle = NULL;
  whole->vehicle_id = vehicle != NULL ? vehicle->id : wish->vehicle_id;
  return TRUE;
}

gint64
unsoot_job_quote_first (UnsootDb *db, const UnsootActing *who, const UnsootQuoteWish *wish,
                        GPtrArray *phones, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_ESTIMATE, error);
  UnsootQuoteWish whole;

  if (deed == NULL || !keep_new (db, who, wish, phones, &whole, error))
    return 0;
  gint64 id = unsoot_job_quote (db, who, &whole, error);
  return unsoot_deed_end (&deed, id != 0, error) ? id : 0;
}

gint64
unsoot_job_estimate (UnsootDb *db, const UnsootActing *who, gint64 job_id, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_ESTIMATE, error);
  g_autoptr (UnsootJobRow) job = deed != NULL ? unsoot_job_load (db, job_id, error) : NULL;

  if (job == NULL || !unsoot_job_check_open (job, error))
    return 0;
  gint64 id = post_estimate (db, who, job_id, error);
  return unsoot_deed_end (&deed, id != 0, error) ? id : 0;
}
