/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Where shops' files lie when nobody says otherwise. Every path is the caller's to free. */

/* Ends every shop's file: ".unsoot". */
#define UNSOOT_SHOP_ENDING ".unsoot"

/* The shop of this computer's person: the one opened last if it is still there, else
 * unsoot_place_usual (), whether it exists or not. */
char *unsoot_shop_files_usual (void);

/* A name under $XDG_DATA_HOME/unsoot that no file has yet. */
char *unsoot_shop_files_new (void);

/* Remembers which one was opened last. Forgetting is no harm, so there is no error. */
void unsoot_shop_files_remember (const char *path);

/* The demo shop's file if one was made lately enough for its busy day to be going on; NULL for
 * none. @now in Unix seconds. */
char *unsoot_shop_files_demo (gint64 now);

/* The name for one made at @now; those made before are taken away. */
char *unsoot_shop_files_new_demo (gint64 now);
