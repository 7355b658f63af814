/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bay-task.h"

/* How the bay puts things. Every returned string is the caller's to free. */

/* "12:40", "1:02:40": minutes and seconds of a timer, hours where there are any; without sign. */
char *unsoot_bay_clock (gint64 seconds);

/* "12:40 left", "over by 0:35". */
char *unsoot_bay_remaining (gint64 seconds);

/* "now", "3 min late": how late an alarm is heard. */
char *unsoot_bay_late (gint64 seconds);

/* What stands above the big words: "Step 8 of 76", "The way back: 2 acts"; may be empty. */
char *unsoot_bay_kicker (const UnsootBayTask *task, const UnsootRun *run);

/* The big words, and the quieter line under them (NULL: none). */
char *unsoot_bay_title (const UnsootBayTask *task);
char *unsoot_bay_why (const UnsootBayTask *task);

/* What stands on the main button. */
const char *unsoot_bay_verb (const UnsootBayTask *task);

/* What leads into the bay: "Start", "Open in bay", "Take up again"; NULL for a job in that status
 * that has nothing to do there. */
const char *unsoot_bay_way_in (const char *job_status);

/* "6–10 psi": the window of a pressure that is asked for; NULL without one. */
char *unsoot_bay_window (const UnsootAsk *ask);
