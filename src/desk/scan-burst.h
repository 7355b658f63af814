/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* A scanner that types: letters faster than fingers, closed by Return. Fed with every key, it
 * tells such a burst from what a person types, so that a scan never presses a button. */
typedef struct
{
  char text[64];
  gsize length;
  guint32 last;      /* milliseconds of the last letter */
  gboolean no_field; /* what is typed goes nowhere: at whatever pace, it is no finger's */
} UnsootScanBurst;

/* A printable letter typed at @when (milliseconds of the event). */
void unsoot_scan_burst_letter (UnsootScanBurst *self, gunichar letter, guint32 when);

/* Return was typed at @when: the scanned text, NULL where it was no scan. Starts anew. */
char *unsoot_scan_burst_return (UnsootScanBurst *self, guint32 when);

/* Whether the next letter would begin a burst. */
gboolean unsoot_scan_burst_is_idle (const UnsootScanBurst *self, guint32 when);
