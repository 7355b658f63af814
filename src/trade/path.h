/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/**
 * UnsootJobStatus:
 * @UNSOOT_JOB_STOPPED: in pieces: halted, or released incomplete with its tag
 *
 * Where a job stands. The first seven are its path; the rest stand off it.
 */
typedef enum
{
  UNSOOT_JOB_QUOTED,
  UNSOOT_JOB_BOOKED,
  UNSOOT_JOB_ARRIVED,
  UNSOOT_JOB_IN_BAY,
  UNSOOT_JOB_DONE,
  UNSOOT_JOB_INVOICED,
  UNSOOT_JOB_PAID,
  UNSOOT_JOB_DECLINED,
  UNSOOT_JOB_CANCELLED,
  UNSOOT_JOB_STOPPED,
} UnsootJobStatus;

#define UNSOOT_PATH_LENGTH (UNSOOT_JOB_PAID + 1)

/* One move that may happen, with the verb that a button or menu shows for it. */
typedef struct
{
  UnsootJobStatus from;
  UnsootJobStatus to;
  const char *verb; /* not translated: N_ (); unsoot_path_verb () translates */
} UnsootPathMove;

const char *unsoot_job_status_slug (UnsootJobStatus status);
const char *unsoot_job_status_words (UnsootJobStatus status);
gboolean unsoot_job_status_find (const char *slug, UnsootJobStatus *status);

/* 0 for quoted to 6 for paid; -1 off the path. */
int unsoot_path_position (UnsootJobStatus status);

/* Whether a job may go from one status to the other in one deed. The order only: what the move
   asks for besides (a whole engine before it leaves the bay) is checked by its deed. */
gboolean unsoot_path_may (UnsootJobStatus from, UnsootJobStatus to);

/* Why not, and where it can go instead; NULL where it may. Free it. */
char *unsoot_path_refusal (UnsootJobStatus from, UnsootJobStatus to);

/* As unsoot_path_may (), with that sentence as UNSOOT_TRADE_ERROR_REFUSED. */
gboolean unsoot_path_check (UnsootJobStatus from, UnsootJobStatus to, GError **error);

/* The moves from @from, the usual one first; @n_moves may be 0. Owned by the trade. */
const UnsootPathMove *unsoot_path_next (UnsootJobStatus from, gsize *n_moves);

/* "Book", "Take payment": the move's verb in the reader's language. */
const char *unsoot_path_verb (const UnsootPathMove *move);
