/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"

/* A paper that belongs to no job, read and made on the store's worker: it is a page or two. */
typedef struct
{
  GBytes *pdf;
  char *remark;    /* what could not be shown as written; NULL: nothing */
  char *file_name; /* to save it under */
  char *title;     /* "Statement of account" */
  char *about;     /* whose it is, or whom it goes to */
} UnsootLoosePaper;

void unsoot_loose_paper_free (UnsootLoosePaper *paper);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootLoosePaper, unsoot_loose_paper_free)

/* What those below are asked: the customer or the order, and Unix seconds; freed with g_free (). */
gpointer unsoot_loose_paper_ask_new (gint64 id, gint64 now);

/* On the worker, each returns an UnsootLoosePaper: a customer's statement of account as of then,
 * and a purchase order. */
gpointer unsoot_loose_paper_statement (UnsootDb *db, gpointer ask, GCancellable *cancellable,
                                       GError **error);
gpointer unsoot_loose_paper_order (UnsootDb *db, gpointer ask, GCancellable *cancellable,
                                   GError **error);
