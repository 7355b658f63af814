/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "job-file.h"
#include "page-kit.h"

G_BEGIN_DECLS

/* How days, amounts and things read on paper: exact, never relative. Every returned string
 * is the caller's to free; NULL where there is nothing to say. */

/* "14 Nov 2026" of an ISO date; what is no date is given back as it stands. */
char *unsoot_paper_day (const char *iso);
/* "14 Nov 2026 08:30" by the shop's clock; NULL for 0. */
char *unsoot_paper_moment (const UnsootJobFile *file, gint64 at);
char *unsoot_paper_moment_day (const UnsootJobFile *file, gint64 at);
char *unsoot_paper_clock (const UnsootJobFile *file, gint64 at);

/* An amount with its currency's symbol, by the computer's decimal sign. */
char *unsoot_paper_money (gint64 minor, const char *currency);
/* "1.5": thousandths, with no more digits than there are. */
char *unsoot_paper_quantity (gint64 milli);
/* "6.0", "−2.5": with that many decimals. */
char *unsoot_paper_number (double value, int decimals);
/* "7.25 %" */
char *unsoot_paper_rate (gint64 milli_percent);
/* "2417": a number that names something, never grouped. */
char *unsoot_paper_serial (gint64 number);
/* "120 400": whole, grouped in threes by a no-break space. */
char *unsoot_paper_whole (gint64 number);

/* The filled ones of a NULL-terminated list, with @separator between. */
char *unsoot_paper_join (const char *separator, ...) G_GNUC_NULL_TERMINATED;

/* "2014 Brindle T4 5.1 · unit 12 · plate 7KD 204" */
char *unsoot_paper_vehicle (const UnsootVehicleRow *vehicle);
/* "120 400 mi on 14 Nov 2026": the meter of that kind as this job found it, or else as it was last
 * read; NULL: never. */
char *unsoot_paper_meter (const UnsootJobFile *file, const char *kind);
/* The same, of this job alone: what stays so on a later print. */
char *unsoot_paper_meter_of_job (const UnsootJobFile *file, const char *kind);
/* Name, contact and billing address (or the first) on lines of their own. */
char *unsoot_paper_customer (const UnsootJobFile *file);
char *unsoot_paper_phones (const UnsootJobFile *file);

/* The head of a paper about the job. @title is taken; @number may be NULL for the job's. */
UnsootPageHead unsoot_paper_head (const UnsootJobFile *file, char *title, char *number, char *date,
                                  gint64 at);

/* The latest moment that the file tells of: what the paper shows is as of then. */
gint64 unsoot_paper_as_of (const UnsootJobFile *file);

/* FALSE and UNSOOT_PAPER_ERROR_RECORD unless shop, job, customer and vehicle are there. */
gboolean unsoot_paper_check (const UnsootJobFile *file, GError **error);

G_END_DECLS
