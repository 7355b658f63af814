/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <atspi/atspi.h>
#include <gio/gio.h>

/* What an application shows on the bus, read a level at a time: all questions about a level are
 * asked before the first answer is waited for. One by one, a page costs thousands of turns between
 * two processes, and is another page before it is read. */

typedef struct
{
  char *path;
  char *name; /* "" where there is none */
  AtspiRole role;
  guint64 states;
  int parent; /* its place in the array; -1: a window of the application */
  int index;  /* among its siblings */
  int depth;
} DeskNode;

/* Depth first; windows first to last. Nodes that went away meanwhile are left out, and the cells of
 * all but the first rows of a table, which are made as those are. */
GPtrArray *desk_tree_read (AtspiAccessible *application);

/* Whether @state is set. */
gboolean desk_node_is (const DeskNode *node, AtspiStateType state);

/* The thing itself, to be acted on. */
AtspiAccessible *desk_node_get (AtspiAccessible *application, const DeskNode *node);
