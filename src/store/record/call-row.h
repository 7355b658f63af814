/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* A call about something that waits for a word, and what was said. */
typedef struct
{
  gint64 id;
  char *about;        /* job, loan, invoice or vehicle */
  gint64 record;      /* which one of them */
  gint64 customer_id; /* of customers; 0: another shop, or a colleague */
  char *spoke_with;   /* NULL: nobody answered */
  char *said;
  char *again_on;     /* ISO; NULL: no day agreed */
  gint64 at;          /* Unix seconds */
  gint64 staff_id;    /* of staff */
  gint64 reverses_id; /* of calls: a note that was taken back; 0: none */
} UnsootCallRow;
UNSOOT_DECLARE_RECORD (UnsootCallRow, unsoot_call_row)

G_END_DECLS
