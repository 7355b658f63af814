/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-file.h"

/* Invented jobs to print. Times are of 14 November 2026, the shop's clock is UTC−6. */

/* The intake side of one vehicle: few steps, few lines, nothing measured or photographed. */
UnsootJobFile *paper_fixture_short (void);

/* Both sides, 60 steps in six phases, 40 lines, readings, three pairs of pictures, invoices
 * and a credit note, long names with accents: what fills pages. */
UnsootJobFile *paper_fixture_long (void);

/* A picture in the colours of soot, or nearly clean: JPEG. */
GBytes *paper_fixture_picture (int width, int height, gboolean clean);
