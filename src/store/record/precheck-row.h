/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* What was found before the work, check by check; the newest answer of each counts. */
typedef struct
{
  gint64 id;
  gint64 job_id;       /* of jobs */
  char *kind;          /* oil, coolant, … */
  char *answer;        /* yes, no or not-applicable */
  gboolean overridden; /* it may run in spite of a no */
  char *reason;
  gint64 at;       /* Unix seconds */
  gint64 staff_id; /* of staff */
} UnsootPrecheckRow;
UNSOOT_DECLARE_RECORD (UnsootPrecheckRow, unsoot_precheck_row)

G_END_DECLS
