/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* What somebody typed and has not carried out yet. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 staff_id; /* of staff */
  char *place;     /* which page */
  gint64 record;   /* what it is about; 0: something new */
  char *text;      /* JSON, the page's own */
  gint64 at;       /* Unix seconds */
} UnsootDraftRow;
UNSOOT_DECLARE_RECORD (UnsootDraftRow, unsoot_draft_row)

G_END_DECLS
