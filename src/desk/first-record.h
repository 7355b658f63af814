/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

/* The record that a view is asked for; where it is asked for none in particular (a picture of
 * the place), one that shows much: the job in the bay, and its vehicle and customer. On the
 * worker. @slug is "job", "vehicle" or "customer". Returns 0 on error. */
gint64 unsoot_first_record (UnsootDb *db, const UnsootViewQuery *query, const char *slug,
                            GError **error);

/* The shop's date at @now, ISO text to free. On the worker. */
char *unsoot_first_record_today (UnsootDb *db, gint64 now, GError **error);
