/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum
{
  UNSOOT_STRIP_PLANNED, /* booked, not here yet */
  UNSOOT_STRIP_HERE,    /* arrived, waits for the bay */
  UNSOOT_STRIP_RUNNING,
  UNSOOT_STRIP_DONE,
  UNSOOT_STRIP_STOPPED, /* in pieces */
} UnsootStripState;

/* One job on the strip of the day. Strings are borrowed for the length of the call. */
typedef struct
{
  gint64 job_id;
  gint64 from; /* Unix seconds */
  gint64 to;
  int lane;
  const char *title;  /* plate or unit */
  const char *detail; /* make, model, engine */
  const char *sides;  /* "fuel", "intake" or "both" */
  const char *name;   /* the whole for a screen reader and the tooltip */
  UnsootStripState state;
  double progress; /* share of the steps that are confirmed, 0 to 1 */
} UnsootStripItem;

/* A button that opens the job. */
#define UNSOOT_TYPE_STRIP_BLOCK (unsoot_strip_block_get_type ())
G_DECLARE_FINAL_TYPE (UnsootStripBlock, unsoot_strip_block, UNSOOT, STRIP_BLOCK, GtkButton)

/* @low: there is room for one line only. */
GtkWidget *unsoot_strip_block_new (const UnsootStripItem *item, gboolean low);
double unsoot_strip_block_get_progress (UnsootStripBlock *self);

G_END_DECLS
