/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "job-view-file.h"
#include "paper.h"

/* A paper made on a thread of its own, so that the window never waits for it. */
typedef struct
{
  GBytes *pdf;
  char *remark; /* what could not be shown as written; NULL: nothing */
} UnsootPaperMade;

void unsoot_paper_made_free (UnsootPaperMade *made);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootPaperMade, unsoot_paper_made_free)

/* @invoice: index in the file's invoices for that paper; -1 for the latest. */
void unsoot_paper_task_async (UnsootJobViewFile *file, UnsootPaper paper, int invoice,
                              GCancellable *cancellable, GAsyncReadyCallback callback,
                              gpointer user_data);
UnsootPaperMade *unsoot_paper_task_finish (GAsyncResult *result, GError **error);

/* Whether the job has got what the paper is made from. */
gboolean unsoot_paper_task_possible (const UnsootJobFile *file, UnsootPaper paper);
