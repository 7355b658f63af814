/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bill.h"
#include "dose.h"
#include "job-files.h"

G_BEGIN_DECLS

/* What the page of one job shows: its file, what the rules say of it, and what its plan would
 * break. Shared with the thread that makes papers, so it is counted and never changed. */
typedef struct
{
  UnsootJobFile *file;
  UnsootDose *doses[UNSOOT_SIDES]; /* by side; NULL where that side is not done */
  UnsootBill *bill;                /* NULL where it can't be reckoned */
  char *bill_trouble;              /* why not */
  GPtrArray *conflicts;            /* char *: sentences */
  GPtrArray *traces;               /* UnsootRunTrace: its own run first; empty before that */
  GPtrArray *calls;                /* UnsootCallLine, the newest first */
  GPtrArray *prechecks;            /* UnsootPrecheckRow that count */
  gint64 authorised_minor;         /* the latest word; 0: none */
  char *overrun;                   /* how far they run over it; NULL: they do not */
  gboolean asks;                   /* for a word: there is none, or it runs over too far */
} UnsootJobViewFile;

/* @now: Unix seconds. Errors: NOT_FOUND. */
UnsootJobViewFile *unsoot_job_view_file_load (UnsootDb *db, gint64 job_id, gint64 now,
                                              GError **error);

UnsootJobViewFile *unsoot_job_view_file_ref (UnsootJobViewFile *self);
void unsoot_job_view_file_unref (UnsootJobViewFile *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootJobViewFile, unsoot_job_view_file_unref)

G_END_DECLS
