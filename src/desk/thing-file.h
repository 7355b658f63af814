/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "lists.h"

G_BEGIN_DECLS

/* One line about a thing. */
typedef struct
{
  char *what;
  char *value;
  gboolean warns;
} UnsootThingFact;

/* What is known of a fluid, a lot, an adapter, a loan or a machine, in words. */
typedef struct
{
  char *title;
  char *subtitle;
  GPtrArray *facts; /* UnsootThingFact */
  GPtrArray *jobs;  /* UnsootJobLine that it was used on; NULL: none are told */
} UnsootThingFile;

void unsoot_thing_file_free (UnsootThingFile *file);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootThingFile, unsoot_thing_file_free)

/* @slug: "fluid", "lot", "adapter", "loan" or "machine"; @now in Unix seconds. */
UnsootThingFile *unsoot_thing_file_load (UnsootDb *db, const char *slug, gint64 id, gint64 now,
                                         GError **error);

G_END_DECLS
