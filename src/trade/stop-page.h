/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "slug.h"

/* What STOP shows in the bay: one page at once, nothing asked, recorded
 * afterwards. The same lines are printed on the work order. */
typedef enum
{
  UNSOOT_STOP_PAGE_ORDINARY,
  UNSOOT_STOP_PAGE_RUNAWAY,
  UNSOOT_STOP_PAGE_LEAK, /* leak or fire */
  UNSOOT_STOP_PAGE_STALLED,
} UnsootStopPage;

#define UNSOOT_STOP_PAGES 4

/* "ordinary", "runaway", "leak", "stalled", with the page's heading. */
extern const UnsootSlug unsoot_stop_pages[];

/* What to do, in order: the line at @index from 0, translated, NULL after the last. */
const char *unsoot_stop_line (UnsootStopPage page, guint index);

/* What must never be done then, translated. */
const char *unsoot_stop_never (UnsootStopPage page);

/* How liquid locks an engine and how that is kept from happening: printed where the
 * intake side is worked on. Line at @index, translated, NULL after the last. */
const char *unsoot_lock_line (guint index);
