/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Kinds of adapter. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *code;
  char *name;
  char *side;
  gint64 inspect_days; /* between inspections; NULL: none */
  gint64 price_minor;
  char *note;
} UnsootAdapterTypeRow;
UNSOOT_DECLARE_RECORD (UnsootAdapterTypeRow, unsoot_adapter_type_row)

/* The adapters themselves, each with its tag. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 type_id; /* of adapter types */
  char *label;    /* on the tag: V-07/2 */
  char *bin;
  char *
      state; /* here, inspection or retired; where it is lent or on a job is said by loans and bookings */
  char *inspected_on; /* ISO date */
  char *condition;
} UnsootAdapterItemRow;
UNSOOT_DECLARE_RECORD (UnsootAdapterItemRow, unsoot_adapter_item_row)

/* Which adapters fit what; NULL matches all. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 type_id;   /* of adapter types */
  gint64 family_id; /* of families */
  char *make;
  char *model;
  gint64 year_from;
  gint64 year_to;
  char *engine;
  char *note;
} UnsootAdapterFitRow;
UNSOOT_DECLARE_RECORD (UnsootAdapterFitRow, unsoot_adapter_fit_row)

/* Adapters out and back. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 item_id; /* of adapter items */
  gint64 job_id;  /* of jobs */
  char *to_kind;  /* job, colleague or shop */
  char *to_name;
  char *phone;
  gint64 out_at;  /* Unix seconds */
  char *due_on;   /* ISO date */
  gint64 out_by;  /* of staff */
  gint64 back_at; /* NULL: still out */
  gint64 back_by; /* of staff */
  char *back_condition;
} UnsootLoanRow;
UNSOOT_DECLARE_RECORD (UnsootLoanRow, unsoot_loan_row)

G_END_DECLS
