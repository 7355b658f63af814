/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "invoices.h"
#include "statement-file.h"

G_BEGIN_DECLS

/* What one customer owes at @now (Unix seconds), invoice by invoice. Errors: NOT_FOUND. */
UnsootStatementFile *unsoot_statement_load (UnsootDb *db, gint64 customer_id, gint64 now,
                                            GError **error);

/* A customer who owes something, or is owed. */
typedef struct
{
  gint64 customer_id;
  char *name;
  UnsootOwes owes;
} UnsootOwing;

void unsoot_owing_free (UnsootOwing *owing);

/* UnsootOwing on @today (ISO date), who owes most first. */
GPtrArray *unsoot_owing_list (UnsootDb *db, const char *today, GError **error);

G_END_DECLS
