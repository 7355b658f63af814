/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "job-view-file.h"
#include "paper.h"

G_BEGIN_DECLS

/* One paper of a job, with a button that shows it; there it is saved and printed. It is made when
 * it is asked for. */
#define UNSOOT_TYPE_PAPER_ROW (unsoot_paper_row_get_type ())
G_DECLARE_FINAL_TYPE (UnsootPaperRow, unsoot_paper_row, UNSOOT, PAPER_ROW, AdwActionRow)

/* @invoice: which of the file's invoices, -1 for other papers. */
GtkWidget *unsoot_paper_row_new (UnsootJobViewFile *file, UnsootPaper paper, int invoice);

G_END_DECLS
