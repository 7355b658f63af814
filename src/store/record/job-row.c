/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField job_columns[] = {
  UNSOOT_COLUMN (UnsootJobRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootJobRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootJobRow, number, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootJobRow, customer_id, INT64, REF),
  UNSOOT_COLUMN (UnsootJobRow, vehicle_id, INT64, REF),
  UNSOOT_COLUMN (UnsootJobRow, service_id, INT64, REF),
  UNSOOT_COLUMN (UnsootJobRow, family_id, INT64, REF),
  UNSOOT_COLUMN (UnsootJobRow, procedure_id, INT64, REF),
  UNSOOT_COLUMN (UnsootJobRow, status, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootJobRow, complaint, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootJobRow, codes, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootJobRow, po_number, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootJobRow, fuel_dose_ml, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootJobRow, intake_dose_ml, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootJobRow, dose_reason, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootJobRow, wanted_at, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootJobRow, arrived_at, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootJobRow, comeback_of, INT64, REF),
  UNSOOT_COLUMN (UnsootJobRow, next_due_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootJobRow, next_due_metres, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootJobRow, next_due_reason, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootJobRow, made_at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootJobRow, note, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootJobRow, unsoot_job_row, "jobs", N_ ("job"), FALSE, job_columns)

static const UnsootField job_line_columns[] = {
  UNSOOT_COLUMN (UnsootJobLineRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootJobLineRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootJobLineRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootJobLineRow, position, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootJobLineRow, kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootJobLineRow, text, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootJobLineRow, quantity_milli, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootJobLineRow, unit, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootJobLineRow, unit_price_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootJobLineRow, fluid_id, INT64, REF),
  UNSOOT_COLUMN (UnsootJobLineRow, state, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootJobLineRow, declined_reason, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootJobLineRow, unsoot_job_line_row, "job_lines", N_ ("line"), FALSE,
                      job_line_columns)

static const UnsootField job_status_columns[] = {
  UNSOOT_COLUMN (UnsootJobStatusRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootJobStatusRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootJobStatusRow, status, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootJobStatusRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootJobStatusRow, staff_id, INT64, REF),
  UNSOOT_COLUMN (UnsootJobStatusRow, note, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootJobStatusRow, unsoot_job_status_row, "job_status", N_ ("status"), TRUE,
                      job_status_columns)

static const UnsootField estimate_columns[] = {
  UNSOOT_COLUMN (UnsootEstimateRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootEstimateRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootEstimateRow, number, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootEstimateRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootEstimateRow, staff_id, INT64, REF),
  UNSOOT_COLUMN (UnsootEstimateRow, net_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootEstimateRow, tax_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootEstimateRow, total_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootEstimateRow, valid_until, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootEstimateRow, text, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootEstimateRow, unsoot_estimate_row, "estimates", N_ ("estimate"), TRUE,
                      estimate_columns)

static const UnsootField authorisation_columns[] = {
  UNSOOT_COLUMN (UnsootAuthorisationRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootAuthorisationRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootAuthorisationRow, estimate_id, INT64, REF),
  UNSOOT_COLUMN (UnsootAuthorisationRow, by_name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAuthorisationRow, how, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAuthorisationRow, amount_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootAuthorisationRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootAuthorisationRow, staff_id, INT64, REF),
  UNSOOT_COLUMN (UnsootAuthorisationRow, note, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootAuthorisationRow, unsoot_authorisation_row, "authorisations",
                      N_ ("authorisation"), TRUE, authorisation_columns)
