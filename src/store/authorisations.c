/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "jobs.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>
#include <math.h>

#include "contact.h"
#include "customers.h"
#include "deed.h"
#include "indexing.h"
#include "job-status.h"
#include "money.h"
#include "shops.h"

/* The newest estimate, which is what a word is given on. */
static UnsootEstimateRow *
newest_estimate (UnsootDb *db, const UnsootJobRow *job, gint64 now, GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  if (shop == NULL)
    return NULL;

  g_autofree char *today = unsoot_shop_date (shop, now);
  g_autoptr (UnsootEstimateRow) estimate
      = unsoot_rows_maybe (db, &unsoot_estimate_row_type, &failed,
                           "WHERE job_id = $1 ORDER BY number DESC LIMIT 1", unsoot_int (job->id));
  if (failed != NULL)
    g_propagate_error (error, g_steal_pointer (&failed));
  else if (estimate == NULL)
    unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                      _ ("Job %" PRId64 " has no estimate to give a word on."), job->number);
  else if (estimate->valid_until != NULL && g_strcmp0 (estimate->valid_until, today) < 0)
    unsoot_deed_fail (
        error, UNSOOT_STORE_ERROR_CONSTRAINT,
        _ ("Estimate %" PRId64 " was valid until %s. Give a new one, then ask again."),
        estimate->number, estimate->valid_until);
  else
    return g_steal_pointer (&estimate);
  return NULL;
}

static gboolean
check_order (UnsootDb *db, const UnsootJobRow *job, gint64 amount, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  g_autoptr (UnsootCustomerRow) customer
      = shop != NULL ? unsoot_customer_load (db, job->customer_id, error) : NULL;

  return customer != NULL
         && unsoot_po_number_check (job->po_number, customer->po_required, customer->name, error)
         && (!customer->po_required
             || unsoot_po_limit_check (customer->po_limit_minor, amount, shop->currency,
                                       customer->name, error));
}

static gboolean
check_may_be_given (const UnsootJobRow *job, GError **error)
{
  UnsootJobStatus status = unsoot_job_row_status (job);

  if (status == UNSOOT_JOB_DECLINED || status == UNSOOT_JOB_CANCELLED)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("Job %" PRId64 " is %s. Quote it again first."), job->number,
                             unsoot_job_status_words (status));
  return unsoot_job_check_open (job, error);
}

static gboolean
check_word (const char *by_name, gint64 amount, GError **error)
{
  if (unsoot_deed_blank (by_name))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("Enter who gave their word."));
  if (amount < 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("An amount that is authorised can't be below zero."));
  return TRUE;
}

static gboolean
post_word (UnsootDb *db, const UnsootActing *who, UnsootJobRow *job, const char *by_name,
           const char *how, gint64 amount, const char *note, GError **error)
{
  g_autoptr (UnsootEstimateRow) estimate = newest_estimate (db, job, who->now, error);
  g_autoptr (UnsootAuthorisationRow) word = unsoot_authorisation_row_new ();

  if (estimate == NULL)
    return FALSE;
  word->job_id = job->id;
  word->estimate_id = estimate->id;
  word->by_name = g_strdup (by_name);
  word->how = g_strdup (how);
  word->amount_minor = amount != 0 ? amount : estimate->total_minor;
  word->at = who->now;
  word->staff_id = who->staff_id;
  word->note = g_strdup (note);
  return check_order (db, job, word->amount_minor, error)
         && unsoot_rows_post (db, &unsoot_authorisation_row_type, word, error)
         && unsoot_job_lines_authorise (db, who, job->id, error);
}

static gboolean
set_po (UnsootDb *db, const UnsootActing *who, UnsootJobRow *job, const char *po_number,
        GError **error)
{
  if (po_number == NULL)
    return TRUE;
  g_free (job->po_number);
  job->po_number = unsoot_deed_blank (po_number) ? NULL : g_strdup (po_number);
  return unsoot_rows_update (db, &unsoot_job_row_type, job, who, error)
         && unsoot_index_job (db, job->id, error);
}

static gboolean
check_how (const char *how, GError **error)
{
  const char *const ways[] = { "in-person", "phone", "email", "text", "signed", NULL };

  if (how != NULL && g_strv_contains (ways, how))
    return TRUE;
  return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                           _ ("“%s” is no way to give a word. Use in-person, phone, email, text or "
                              "signed."),
                           how != NULL ? how : "");
}

gboolean
unsoot_job_authorise (UnsootDb *db, const UnsootActing *who, gint64 job_id, const char *by_name,
                      const char *how, gint64 amount_minor, const char *po_number, const char *note,
                      GError **error)
{
  if (!check_word (by_name, amount_minor, error) || !check_how (how, error))
    return FALSE;
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_AUTHORISE, error);
  g_autoptr (UnsootJobRow) job = deed != NULL ? unsoot_job_load (db, job_id, error) : NULL;
  if (job == NULL)
    return FALSE;
  gboolean done = check_may_be_given (job, error) && set_po (db, who, job, po_number, error)
                  && post_word (db, who, job, by_name, how, amount_minor, note, error);
  return unsoot_deed_end (&deed, done, error);
}

gboolean
unsoot_job_authorised_minor (UnsootDb *db, gint64 job_id, gint64 *amount, GError **error)
{
  return unsoot_db_int (
      db, amount, error,
      "SELECT COALESCE ((SELECT amount_minor FROM authorisations WHERE job_id = $1"
      " ORDER BY id DESC LIMIT 1), 0)",
      unsoot_int (job_id));
}

gboolean
unsoot_job_authority (UnsootDb *db, gint64 job_id, gint64 total, UnsootAuthorityResult *result,
                      GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  UnsootAuthorised authorised = { 0 };
  gint64 words = 0;

  if (shop == NULL
      || !unsoot_db_int (db, &words, error,
                         "SELECT count (*) FROM authorisations WHERE job_id = $1",
                         unsoot_int (job_id))
      || !unsoot_job_authorised_minor (db, job_id, &authorised.authorised, error)
      || !unsoot_db_int (db, &authorised.estimate, error,
                         "SELECT COALESCE ((SELECT total_minor FROM estimates WHERE job_id = $1"
                         " ORDER BY number DESC LIMIT 1), 0)",
                         unsoot_int (job_id)))
    return FALSE;
  const UnsootOverrunLimit limit
      = { isnan (shop->estimate_over_percent)
              ? UNSOOT_NO_LIMIT
              : (gint64) llround (shop->estimate_over_percent * 1000.0),
          shop->estimate_over_minor > 0 ? shop->estimate_over_minor : UNSOOT_NO_LIMIT };
  authorised.given = words > 0;
  return unsoot_authorise_check (&authorised, total, &limit, shop->currency, UNSOOT_MONEY_POINT,
                                 result, error);
}

gboolean
unsoot_job_set_po (UnsootDb *db, const UnsootActing *who, gint64 job_id, const char *po_number,
                   GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_AUTHORISE, error);
  g_autoptr (UnsootJobRow) job = deed != NULL ? unsoot_job_load (db, job_id, error) : NULL;

  if (job == NULL || !unsoot_job_check_open (job, error))
    return FALSE;
  return unsoot_deed_end (&deed, set_po (db, who, job, po_number != NULL ? po_number : "", error),
                          error);
}
