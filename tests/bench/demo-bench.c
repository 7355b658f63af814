/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long the demo shop takes to make, and how large its file is. */
#include <glib/gstdio.h>

#include "bench.h"
#include "demo.h"
#include "migrate.h"

int
main (void)
{
  GError *error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("unsoot-bench-XXXXXX", &error);
  g_autofree char *path = g_build_filename (folder, "demo.unsoot", NULL);
  GStatBuf about;

  double start = bench_now ();
  UnsootDb *db = unsoot_db_open (path, UNSOOT_DB_CREATE, &error);
  bench_need (db != NULL && unsoot_migrate (db, 1700000000, &error), error);
  double opened = bench_now ();
  bench_need (unsoot_demo_make (db, 1700000000, NULL, NULL, NULL, &error), error);
  double made = bench_now ();
  unsoot_db_close (db);
  bench_need (g_stat (path, &about) == 0, NULL);
  g_print ("%-28s %9.0f ms   target: none\n", "new book", opened - start);
  g_print ("%-28s %9.0f ms   target: none\n", "demo shop", made - opened);
  g_print ("%-28s %9.1f MB   target: none\n", "demo shop's file", (double) about.st_size / 1e6);
  g_unlink (path);
  g_rmdir (folder);
  return 0;
}
