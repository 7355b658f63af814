/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "paper-fixture.h"

/* What the invented jobs are put together from. */

#define PAPER_FIXTURE_MORNING 1794664800 /* 14 Nov 2026 08:00 at UTC−6 */

/* A shop, a vehicle, the intake side's fluid and tax rules. */
UnsootJobFile *paper_fixture_make_base (void);
void paper_fixture_add_line (UnsootJobFile *file, const char *kind, const char *text,
                             gint64 quantity_milli, const char *unit, gint64 price,
                             const char *state);
UnsootFluidRow *paper_fixture_make_fluid (const char *side, const char *name, const char *code,
                                          const char *pictograms, const char *signal,
                                          const char *h);
UnsootLotRow *paper_fixture_make_lot (gint64 id, const char *code);
void paper_fixture_add_phase (UnsootJobFile *file, const char *title, const char *cautions);
UnsootStepRow *paper_fixture_add_step (UnsootJobFile *file, const char *act, const char *subject,
                                       const char *side, const char *wording, const char *why);
void paper_fixture_add_estimate (UnsootJobFile *file, gint64 number, gint64 net, gint64 tax);

/* Invoice 1031 over 35 lines, partly paid, and credit note 1032 over one of them. */
void paper_fixture_fill_invoices (UnsootJobFile *file);
