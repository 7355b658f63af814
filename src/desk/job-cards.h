/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "card.h"
#include "job-view-file.h"
#include "session.h"

/* The cards of a job's page. Each fills an emptied card from the file. */
void unsoot_job_card_what (UnsootCard *card, const UnsootJobViewFile *file, UnsootSession *session);
void unsoot_job_card_when (UnsootCard *card, const UnsootJobViewFile *file, UnsootSession *session);
void unsoot_job_card_checks (UnsootCard *card, const UnsootJobViewFile *file,
                             UnsootSession *session);
void unsoot_job_card_readings (UnsootCard *card, UnsootJobViewFile *file, UnsootSession *session);
/* Pairs before and after. */
void unsoot_job_card_photos (UnsootCard *card, UnsootJobViewFile *file, UnsootSession *session);
void unsoot_job_card_lines (UnsootCard *card, const UnsootJobViewFile *file,
                            UnsootSession *session);
/* Goes on where the lines end: invoices, and at a job that is done the deeds towards one. */
void unsoot_job_card_bill (UnsootCard *card, const UnsootJobViewFile *file, UnsootSession *session);
/* Asks for the invoice of a job that is done and whose bill can be reckoned. */
void unsoot_job_invoice_open (GtkWidget *over, UnsootSession *session,
                              const UnsootJobViewFile *file);
/* What the machine went through. Hidden where the work has not begun. */
void unsoot_job_card_run (UnsootCard *card, UnsootJobViewFile *file);
void unsoot_job_card_papers (UnsootCard *card, UnsootJobViewFile *file);
