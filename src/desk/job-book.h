/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "deed-form.h"
#include "free-times.h"

/* A job's booking made, moved and taken back, as forms that can be undone: a new one is taken
 * back, a moved one goes back to where it was, one taken back is made again. */
extern const UnsootDeedForm unsoot_job_book_form;   /* asks for nothing */
extern const UnsootDeedForm unsoot_job_move_form;   /* likewise */
extern const UnsootDeedForm unsoot_job_unbook_form; /* asks why */

/* What is booked: an order for the first two. */
UnsootDeedOrder *unsoot_job_book_order (gint64 job_id, const UnsootFreeTime *time);
