/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "authorise.h"
#include "job-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* What is noted when a vehicle comes in. */
typedef struct
{
  double odometer;           /* as read; NAN: none */
  const char *odometer_unit; /* mi or km */
  double hours;              /* NAN: none */
  gboolean new_meter;
  const char *complaint; /* NULL: as quoted */
  const char *codes;     /* trouble codes, spaces or commas between; NULL: none */
  const char *altered;   /* which emission parts are missing or altered; NULL: nothing new seen */
} UnsootArrival;

UnsootJobRow *unsoot_job_load (UnsootDb *db, gint64 id, GError **error);

/* The id of the job with this number. Errors: NOT_FOUND. */
gboolean unsoot_job_id_of (UnsootDb *db, gint64 number, gint64 *id, GError **error);

/**
 * unsoot_job_authorise:
 * @by_name: who gave their word
 * @how: in-person, phone, email, text or signed
 * @amount_minor: up to which total, tax included; 0: the newest estimate's total
 * @po_number: (nullable): the customer's order, where not given before
 *
 * Records the word, and the lines still offered are authorised. Errors: NOT_ALLOWED;
 * CONSTRAINT without an estimate or for one that has run out; UNSOOT_TRADE_ERROR_REFUSED without
 * the purchase-order number the customer's work needs, or beyond what one order covers.
 */
gboolean unsoot_job_authorise (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                               const char *by_name, const char *how, gint64 amount_minor,
                               const char *po_number, const char *note, GError **error);

/* The total that the latest word covers, tax included; 0: nobody gave one. */
gboolean unsoot_job_authorised_minor (UnsootDb *db, gint64 job_id, gint64 *amount, GError **error);

/* What it means that the work comes to @total, tax included: by the latest word, the newest
 * estimate and the shop's limits. @result: cleared by the caller. */
gboolean unsoot_job_authority (UnsootDb *db, gint64 job_id, gint64 total,
                               UnsootAuthorityResult *result, GError **error);

/* A line of the job, added where its id is 0: offered until a word is given. Errors:
 * CONFLICT; CONSTRAINT once the job is invoiced, or for a line that is authorised. */
gboolean unsoot_job_line_save (UnsootDb *db, const UnsootActing *who, UnsootJobLineRow *line,
                               GError **error);

/* Declined, kept, and offered when the vehicle comes again. Errors: CONSTRAINT for one that is
 * declined already, or once the job is invoiced. */
gboolean unsoot_job_line_decline (UnsootDb *db, const UnsootActing *who, gint64 line_id,
                                  const char *reason, GError **error);
/* The decline was a slip: the line stands as it did, @authorised or offered. */
gboolean unsoot_job_line_stand (UnsootDb *db, const UnsootActing *who, gint64 line_id,
                                gboolean authorised, GError **error);
gboolean unsoot_job_decline (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                             const char *reason, GError **error);

/* Offers again what was declined or cancelled: the job is quoted, with a new estimate. */
gboolean unsoot_job_quote_again (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                                 GError **error);

/* UnsootJobLineRow that were declined on this vehicle and not done since, newest first; of the
 * same work declined more than once only the newest. */
GPtrArray *unsoot_vehicle_declined (UnsootDb *db, gint64 vehicle_id, GError **error);

/* Errors: CONSTRAINT once the job is in the bay or beyond. */
gboolean unsoot_job_cancel (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                            const char *reason, GError **error);

/* The customer's order number. */
gboolean unsoot_job_set_po (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                            const char *po_number, GError **error);

/* The vehicle is here. Errors: NOT_ALLOWED; CONSTRAINT for a job that is not booked; INVALID
 * for a reading or code that can't be, naming it. */
gboolean unsoot_job_arrive (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                            const UnsootArrival *arrival, GError **error);

/* UnsootJobRow of one vehicle, newest first. */
GPtrArray *unsoot_vehicle_jobs (UnsootDb *db, gint64 vehicle_id, GError **error);

G_END_DECLS
