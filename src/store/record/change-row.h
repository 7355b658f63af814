/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Who changed what from what to what. */
typedef struct
{
  gint64 id;
  gint64 at;       /* Unix seconds */
  gint64 staff_id; /* of staff */
  char *record;    /* the table */
  gint64 row_id;
  char *field;
  char *was;
  char *now;
} UnsootChangeRow;
UNSOOT_DECLARE_RECORD (UnsootChangeRow, unsoot_change_row)

G_END_DECLS
