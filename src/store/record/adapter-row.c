/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "adapter-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField adapter_type_columns[] = {
  UNSOOT_COLUMN (UnsootAdapterTypeRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterTypeRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterTypeRow, code, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterTypeRow, name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterTypeRow, side, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterTypeRow, inspect_days, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootAdapterTypeRow, price_minor, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootAdapterTypeRow, note, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootAdapterTypeRow, unsoot_adapter_type_row, "adapter_types",
                      N_ ("adapter type"), FALSE, adapter_type_columns)

static const UnsootField adapter_item_columns[] = {
  UNSOOT_COLUMN (UnsootAdapterItemRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterItemRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterItemRow, type_id, INT64, REF),
  UNSOOT_COLUMN (UnsootAdapterItemRow, label, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterItemRow, bin, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterItemRow, state, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterItemRow, inspected_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterItemRow, condition, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootAdapterItemRow, unsoot_adapter_item_row, "adapter_items",
                      N_ ("adapter"), FALSE, adapter_item_columns)

static const UnsootField adapter_fit_columns[] = {
  UNSOOT_COLUMN (UnsootAdapterFitRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterFitRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterFitRow, type_id, INT64, REF),
  UNSOOT_COLUMN (UnsootAdapterFitRow, family_id, INT64, REF),
  UNSOOT_COLUMN (UnsootAdapterFitRow, make, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterFitRow, model, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterFitRow, year_from, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootAdapterFitRow, year_to, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootAdapterFitRow, engine, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAdapterFitRow, note, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootAdapterFitRow, unsoot_adapter_fit_row, "adapter_fits",
                      N_ ("adapter fit"), FALSE, adapter_fit_columns)

static const UnsootField loan_columns[] = {
  UNSOOT_COLUMN (UnsootLoanRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootLoanRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootLoanRow, item_id, INT64, REF),
  UNSOOT_COLUMN (UnsootLoanRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootLoanRow, to_kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootLoanRow, to_name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootLoanRow, phone, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootLoanRow, out_at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootLoanRow, due_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootLoanRow, out_by, INT64, REF),
  UNSOOT_COLUMN (UnsootLoanRow, back_at, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootLoanRow, back_by, INT64, REF),
  UNSOOT_COLUMN (UnsootLoanRow, back_condition, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootLoanRow, unsoot_loan_row, "loans", N_ ("loan"), FALSE, loan_columns)
