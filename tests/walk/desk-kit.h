/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <atspi/atspi.h>
#include <gio/gio.h>

#include "desk-tree.h"

G_DEFINE_AUTOPTR_CLEANUP_FUNC (AtspiAccessible, g_object_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (AtspiAction, g_object_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (AtspiComponent, g_object_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (AtspiStateSet, g_object_unref)

/* The real program on the session's display, driven as a person drives it: what it shows is read
 * and pressed through AT-SPI, keys come from XTest (xdotool). Everything waits for what it needs
 * and fails with what was on the screen. */

typedef struct
{
  GSubprocess *process;
  AtspiAccessible *application;
} Desk;

/* Starts the program (UNSOOT_PROGRAM) with these arguments, NULL-terminated, and waits until its
 * window is on the bus and has the keyboard. */
Desk *desk_start (const char *const *arguments);

/* The same with the invented shop, once Today is shown. */
Desk *desk_start_demo (void);

/* Closes it and checks that it ended well. */
void desk_end (Desk *desk);

/* The first accessible thing of @role (ATSPI_ROLE_INVALID: any) whose name contains @name, waited
 * for. Newly referenced. */
AtspiAccessible *desk_find (Desk *desk, AtspiRole role, const char *name);

/* Whether there is such a thing now. */
gboolean desk_has (Desk *desk, AtspiRole role, const char *name);

/* Whether it is there and can be pressed now. */
gboolean desk_can_press (AtspiAccessible *thing);

/* Presses it as soon as it can be: by its action "click", or with the mouse where it has none and
 * once it stands still. */
void desk_click (Desk *desk, AtspiRole role, const char *name);

/* Keys as xdotool names them: "ctrl+k", "Return". Text is typed letter by letter. */
void desk_key (Desk *desk, const char *keys);
void desk_type (Desk *desk, const char *text);

/* Gives the keyboard to the window called so (exactly so, where there is one), and waits until it says that it has it: nothing else
 * does where there is no window manager. */
void desk_focus (Desk *desk, const char *title);

/* Waits until no window is called exactly so any more. */
void desk_wait_closed (const char *title);

/* Escape in the window called exactly so, until it is closed: the first one may end something that
 * stands over it. */
void desk_escape (Desk *desk, const char *title);

/* Waits until the window is called so. */
void desk_wait_title (Desk *desk, const char *title);

/* Everything that is shown now. */
GPtrArray *desk_tree (Desk *desk);

/* The first for which @match says TRUE; NULL: none now. */
typedef gboolean (*DeskMatch) (const DeskNode *node, gconstpointer data);
AtspiAccessible *desk_find_now (Desk *desk, DeskMatch match, gconstpointer data);

/* Everything that is shown and has a name, a line each with its role; for messages. */
char *desk_dump (Desk *desk);
