/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Work orders, from the first question to the last payment. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 number;
  gint64 customer_id;  /* of customers */
  gint64 vehicle_id;   /* of vehicles */
  gint64 service_id;   /* of services */
  gint64 family_id;    /* of families */
  gint64 procedure_id; /* the version it is run by */
  char *status;
  char *complaint;
  char *codes; /* trouble codes, a space between */
  char *po_number;
  gint64 fuel_dose_ml; /* as reasoned when quoted; NULL: side not done */
  gint64 intake_dose_ml;
  char *dose_reason;
  gint64 wanted_at;   /* when the customer would like it */
  gint64 arrived_at;  /* Unix seconds */
  gint64 comeback_of; /* of jobs */
  char *next_due_on;  /* ISO date */
  gint64 next_due_metres;
  char *next_due_reason;
  gint64 made_at; /* Unix seconds */
  char *note;
} UnsootJobRow;
UNSOOT_DECLARE_RECORD (UnsootJobRow, unsoot_job_row)

/* What a job charges, line by line. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 job_id; /* of jobs */
  gint64 position;
  char *kind;
  char *text;
  gint64 quantity_milli; /* thousandths of the unit */
  char *unit;
  gint64 unit_price_minor;
  gint64 fluid_id; /* of fluids */
  char *state;     /* offered, authorised or declined */
  char *declined_reason;
} UnsootJobLineRow;
UNSOOT_DECLARE_RECORD (UnsootJobLineRow, unsoot_job_line_row)

/* The way a job has gone. */
typedef struct
{
  gint64 id;
  gint64 job_id; /* of jobs */
  char *status;
  gint64 at;       /* Unix seconds */
  gint64 staff_id; /* of staff */
  char *note;
} UnsootJobStatusRow;
UNSOOT_DECLARE_RECORD (UnsootJobStatusRow, unsoot_job_status_row)

/* Written estimates as they were given. */
typedef struct
{
  gint64 id;
  gint64 job_id; /* of jobs */
  gint64 number;
  gint64 at;       /* Unix seconds */
  gint64 staff_id; /* of staff */
  gint64 net_minor;
  gint64 tax_minor;
  gint64 total_minor;
  char *valid_until; /* ISO date */
  char *text;        /* the lines as they were given */
} UnsootEstimateRow;
UNSOOT_DECLARE_RECORD (UnsootEstimateRow, unsoot_estimate_row)

/* Who allowed what, when and how. */
typedef struct
{
  gint64 id;
  gint64 job_id;      /* of jobs */
  gint64 estimate_id; /* of estimates */
  char *by_name;      /* who gave their word */
  char *how;
  gint64 amount_minor;
  gint64 at;       /* Unix seconds */
  gint64 staff_id; /* of staff */
  char *note;
} UnsootAuthorisationRow;
UNSOOT_DECLARE_RECORD (UnsootAuthorisationRow, unsoot_authorisation_row)

G_END_DECLS
