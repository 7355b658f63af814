/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"

/* A statement of account, read and made on the store's worker: it is a page or two. */
typedef struct
{
  GBytes *pdf;
  char *remark;    /* what could not be shown as written; NULL: nothing */
  char *file_name; /* to save it under */
  char *customer;
} UnsootStatementMade;

void unsoot_statement_made_free (UnsootStatementMade *made);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootStatementMade, unsoot_statement_made_free)

/* What unsoot_statement_make () is asked; freed with g_free (). */
gpointer unsoot_statement_ask_new (gint64 customer_id, gint64 now);

/* On the worker: returns an UnsootStatementMade. */
gpointer unsoot_statement_make (UnsootDb *db, gpointer ask, GCancellable *cancellable,
                                GError **error);
