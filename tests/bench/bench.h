/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <time.h>

/* Times of one thing done many times are an array of double, in milliseconds. */

static inline double
bench_now (void)
{
  return (double) g_get_monotonic_time () / 1000.0;
}

/* What this thread has reckoned: the same on a machine that is busy with other things. */
static inline double
bench_work (void)
{
  struct timespec spent;
  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &spent);
  return (double) spent.tv_sec * 1000.0 + (double) spent.tv_nsec / 1e6;
}

static inline int
bench_compare (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

/* The time that @share of all were within: 0.5 the median, 1 the longest. Sorts them. */
static inline double
bench_within (GArray *times, double share)
{
  g_assert (times->len > 0);
  g_array_sort (times, bench_compare);
  guint index = (guint) (share * (double) times->len);
  return g_array_index (times, double, MIN (index, times->len - 1));
}

/* One measure a line: its name, ours over raw, both times, what it should be. */
static inline void
bench_report (const char *name, double ours, double raw, const char *target)
{
  g_print ("%-28s ratio %6.2f   %9.3f ms   raw %9.3f ms   target: %s\n", name, ours / raw, ours,
           raw, target);
}

/* Ends the bench: there is nothing to measure without it. */
static inline void
bench_need (gboolean done, const GError *error)
{
  if (!done)
    g_error ("%s", error != NULL ? error->message : "failed");
}
