/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "call-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* Calls about a job, a loan, an invoice or a vehicle that waits for a word. A note is a posting:
 * taken back, it stays in the book and no longer counts. */

/* One note as it is read. */
typedef struct
{
  UnsootCallRow *row;
  char *by; /* who noted it; NULL: the program */
} UnsootCallLine;

void unsoot_phone_call_line_free (UnsootCallLine *line);

/* Whom to call about something, and what was said before. */
typedef struct
{
  gint64 customer_id; /* 0: another shop, or a colleague */
  char *name;
  char *ask_for;     /* NULL: nobody in particular */
  char *phones;      /* a line each; NULL: none is known */
  GPtrArray *before; /* UnsootCallLine that count, the newest first */
} UnsootCallFile;

void unsoot_phone_call_file_free (UnsootCallFile *file);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootCallFile, unsoot_phone_call_file_free)

/**
 * unsoot_phone_call_file_load:
 * @about: job, loan, invoice or vehicle
 *
 * Errors: NOT_FOUND.
 */
UnsootCallFile *unsoot_phone_call_file_load (UnsootDb *db, const char *about, gint64 record,
                                             GError **error);

/* UnsootCallLine that count, the newest first. */
GPtrArray *unsoot_calls_about (UnsootDb *db, const char *about, gint64 record, GError **error);
GPtrArray *unsoot_calls_of_customer (UnsootDb *db, gint64 customer_id, guint limit, GError **error);

/**
 * unsoot_calls_shown_on:
 * @page: job, vehicle, invoice or adapter (one item of it)
 *
 * UnsootCallLine that count and are looked for there, the newest first: about a job also those
 * about its invoices, about a vehicle also those about its jobs, about an adapter those about its
 * loans.
 */
GPtrArray *unsoot_calls_shown_on (UnsootDb *db, const char *page, gint64 id, GError **error);

/**
 * unsoot_phone_call_note:
 * @spoke_with: (nullable): nobody answered
 * @again_on: (nullable): ISO date agreed on, not before today
 *
 * The id of the note; 0 on error: NOT_ALLOWED, NOT_FOUND, INVALID where nothing was said or the
 * day is past.
 */
gint64 unsoot_phone_call_note (UnsootDb *db, const UnsootActing *who, const char *about,
                               gint64 record, const char *spoke_with, const char *said,
                               const char *again_on, GError **error);

/* Errors: CONSTRAINT for one that is taken back already. */
gboolean unsoot_phone_call_take_back (UnsootDb *db, const UnsootActing *who, gint64 call_id,
                                      GError **error);

G_END_DECLS
