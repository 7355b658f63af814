/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "session.h"
#include "store-call.h"

G_BEGIN_DECLS

/* What every place and record has in common: it reads its data on the store's worker when it is
 * first seen, and again when something was written while it is seen; it says so where reading
 * takes long or fails. Properties: "session" and "record" (the id) at construction, "slug" (which
 * place it is), "content" (what is shown once there is data), "title".
 * Signal "shown": fresh data are on the screen. Action "view.reload". */
#define UNSOOT_TYPE_VIEW (unsoot_view_get_type ())
G_DECLARE_DERIVABLE_TYPE (UnsootView, unsoot_view, UNSOOT, VIEW, AdwBin)

/* What a reading is asked for: handed to the worker, so it refers to nothing. */
typedef struct
{
  gint64 record;
  gint64 now; /* Unix seconds */
  char slug[16];
  /* of lists: */
  gconstpointer list; /* the class, which lasts as long as the program */
  char filter[24];    /* "" for all */
  guint limit;
  gboolean down; /* sorted from the end */
} UnsootViewQuery;

struct _UnsootViewClass
{
  AdwBinClass parent_class;

  /* Adds to the query what only this kind of view knows; may be NULL. */
  void (*ask) (UnsootView *self, UnsootViewQuery *query);
  /* On the worker; its data is an UnsootViewQuery. */
  UnsootStoreFunc read;
  GDestroyNotify free_result;
  /* On the main loop; takes @result. */
  void (*show) (UnsootView *self, gpointer result);
};

UnsootSession *unsoot_view_get_session (UnsootView *self);
gint64 unsoot_view_get_record (UnsootView *self);
const char *unsoot_view_get_slug (UnsootView *self);

/* What the window is called while this is in front. */
const char *unsoot_view_get_title (UnsootView *self);
void unsoot_view_set_title (UnsootView *self, const char *title);

/* Whether data have been shown (or the reason why not) since it was made. */
gboolean unsoot_view_is_settled (UnsootView *self);

/* Reads again; what was on its way is dropped. */
void unsoot_view_reload (UnsootView *self);

G_END_DECLS
