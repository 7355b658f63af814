/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "paper-fixture.h"
#include "paper-probe.h"
#include "paper.h"

/* The papers of one long invented job, made and read back. Failures end the test. */

#define MARGIN (18.0 / 25.4 * 72.0)

extern UnsootJobFile *printed_job;

/* Before and after each test. */
void printed_setup (void);
void printed_teardown (void);

/* The paper, about which there is nothing to remark. @invoice: index, -1 is the latest. */
GBytes *printed_make (UnsootPaper paper, UnsootPaperSize size, int invoice);

void printed_has (const char *text, const char *wanted);
void printed_has_all (const char *text, const char *const *wanted);

/* Every word lies between the margins; only head and foot stand in the upper and lower one. */
void printed_stays_on_the_sheet (const Probe *probe);
