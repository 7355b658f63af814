/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <sqlite3.h>

/* The statements that the store runs, to be run again through SQLite's own library. */

/* From here on every connection that is opened is listened to. */
void replay_listen (void);
/* Connections that are opened from here on are left alone. */
void replay_ignore (void);

/* Texts with their values are added to @statements (char *); NULL: none. */
void replay_record (GPtrArray *statements);

/* A connection with the store's own pragmas. */
sqlite3 *replay_open (const char *path);

/* The statements made ready to run: an array that owns them. */
GPtrArray *replay_prepare (sqlite3 *raw, GPtrArray *statements);

/* Runs them, and reads every column of every row. */
void replay_run (GPtrArray *prepared);
