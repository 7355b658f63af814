/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bill.h"
#include "customer-row.h"
#include "family-row.h"
#include "job-row.h"
#include "procedure-row.h"
#include "rows.h"
#include "service-row.h"
#include "vehicle-row.h"

G_BEGIN_DECLS

/* What a quote is asked for. Zeros and NULLs leave the choice to the shop's data. */
typedef struct
{
  gint64 vehicle_id;
  const UnsootVehicleRow *vehicle;   /* one that is not kept yet, in place of the id */
  const UnsootCustomerRow *customer; /* whose it will be, where they aren't kept yet either */
  gint64 service_id;
  gint64 fuel_fluid_id; /* 0: the fluid of that side with most on hand */
  gint64 intake_fluid_id;
  gint64 fuel_ml; /* entered by the lead technician; 0: by family or rule */
  gint64 intake_ml;
  gint64 wanted_at; /* when: decides which adapters are free; 0: now */
  gint64 job_id;    /* already quoted: what is promised to it does not count against it; 0: none */
  gint64 comeback_of;
  const gint64 *again; /* lines declined earlier on this vehicle that are offered again */
  gsize n_again;
  const char *complaint;
  const char *po_number;
  const char *note;
} UnsootQuoteWish;

typedef struct
{
  gint64 ml;    /* 0: that side is not done */
  char *reason; /* "1 L: class 3, one-ton" */
  gint64 fluid_id;
  char *fluid;     /* its name */
  gint64 short_ml; /* what the shop lacks of it for this job; 0: enough */
} UnsootQuoteDose;

/* What a job on a vehicle would need and cost, with every reason. */
typedef struct
{
  UnsootVehicleRow *vehicle;
  UnsootFamilyRow *family; /* NULL: not settled */
  UnsootServiceRow *service;
  UnsootProcedureRow *procedure; /* the version in use; NULL: none */
  UnsootQuoteDose fuel;
  UnsootQuoteDose intake;
  GPtrArray *adapters; /* UnsootAdapterFit of adapters.h */
  gint64 planned_minutes;
  GPtrArray *lines; /* UnsootJobLineRow, not stored */
  UnsootBill *bill;
  char *currency;
  char *valid_until;   /* ISO date */
  GPtrArray *reasons;  /* char *: how each figure came about */
  GPtrArray *warnings; /* char *: what stands in the way of running it */
  GPtrArray *declined; /* UnsootJobLineRow that were declined earlier, to be offered again */
} UnsootQuote;

void unsoot_quote_free (UnsootQuote *quote);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootQuote, unsoot_quote_free)

/**
 * unsoot_quote_preview:
 * @now: Unix seconds
 *
 * Nothing is stored. Errors: CONSTRAINT where a dose can't be told (below ¾-ton the lead
 * technician enters it), a side has no fluid or no adapter rule to go by, or
 * the fluid that was chosen is out of use.
 */
UnsootQuote *unsoot_quote_preview (UnsootDb *db, const UnsootQuoteWish *wish, gint64 now,
                                   GError **error);

/* Stores the job with its lines and its first estimate. Returns its id, 0 on error. */
gint64 unsoot_job_quote (UnsootDb *db, const UnsootActing *who, const UnsootQuoteWish *wish,
                         GError **error);

/**
 * unsoot_job_quote_first:
 * @phones: (nullable): UnsootPhoneRow of the wish's new customer
 *
 * The first call of somebody new, or about a vehicle that is new: what of the wish's customer
 * and vehicle is not kept yet is kept, and the job is quoted, all of it or nothing. Errors: as
 * unsoot_customer_save (), unsoot_vehicle_save () and unsoot_job_quote ().
 */
gint64 unsoot_job_quote_first (UnsootDb *db, const UnsootActing *who, const UnsootQuoteWish *wish,
                               GPtrArray *phones, GError **error);

/* A new estimate over the lines that stand now. Returns its id, 0 on error. */
gint64 unsoot_job_estimate (UnsootDb *db, const UnsootActing *who, gint64 job_id, GError **error);

/* The bill over the job's lines: those authorised, and where @offered those offered too. */
UnsootBill *unsoot_job_bill (UnsootDb *db, gint64 job_id, gboolean offered, GError **error);

G_END_DECLS
