/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "call.h"
#include "paper.h"

G_BEGIN_DECLS

/**
 * unsoot_paper_write:
 * @invoice_id: for an invoice or credit note; 0: the job's latest
 * @path: (nullable): the file; %NULL is the paper's own name in @folder
 * @remark: (out) (nullable): what could not be shown as written
 *
 * Makes a paper of the shop's size and writes it, whole or not at all.
 *
 * Returns: the file's path, NULL on error.
 */
char *unsoot_paper_write (UnsootCall *call, UnsootPaper paper, gint64 job_id, gint64 invoice_id,
                          const char *folder, const char *path, char **remark, GError **error);

G_END_DECLS
