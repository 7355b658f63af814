/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sql-log.h"

#include <fcntl.h>
#include <string.h>
#include <unistd.h>

void
unsoot_sql_log (const char *sql)
{
  const char *path = g_getenv ("UNSOOT_SQL_LOG");
  if (path == NULL)
    return;

  /* One write with O_APPEND, so that lines of several processes don't mix. */
  int file = open (path, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
  if (file < 0 || write (file, sql, strlen (sql) + 1) < 0)
    g_warning ("can't log SQL to %s", path);
  if (file >= 0)
    close (file);
}
