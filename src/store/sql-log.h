/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Appends @sql and a NUL to the file that UNSOOT_SQL_LOG names, where it names one: so a
 * test can show every statement of the common dialect to another engine. */
void unsoot_sql_log (const char *sql);
