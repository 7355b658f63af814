/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "paper.h"
#include "session.h"

G_BEGIN_DECLS

/* A paper as it will be printed: its pages, with Save and Print. It is made and drawn off the
 * main loop. */
#define UNSOOT_TYPE_PAPER_VIEW (unsoot_paper_view_get_type ())
G_DECLARE_FINAL_TYPE (UnsootPaperView, unsoot_paper_view, UNSOOT, PAPER_VIEW, AdwWindow)

/**
 * unsoot_paper_view_open:
 * @over: any widget of the window it stands over
 * @job_id: whose paper
 * @invoice_id: for UNSOOT_PAPER_INVOICE which invoice or credit note; 0: the job's latest
 */
UnsootPaperView *unsoot_paper_view_open (GtkWidget *over, UnsootSession *session, gint64 job_id,
                                         UnsootPaper paper, gint64 invoice_id);

/* A customer's statement of account, as of now; likewise. */
UnsootPaperView *unsoot_paper_view_open_statement (GtkWidget *over, UnsootSession *session,
                                                   gint64 customer_id);

/* The paper of an order from a supplier. */
UnsootPaperView *unsoot_paper_view_open_order (GtkWidget *over, UnsootSession *session,
                                               gint64 order_id);

/* Asks which printer as soon as the paper is there. */
void unsoot_paper_view_print (UnsootPaperView *self);

/* How many pages are shown; 0 while it is being made. */
guint unsoot_paper_view_get_n_pages (UnsootPaperView *self);

G_END_DECLS
