/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gio/gio.h>
#include <stdlib.h>

/* From exec to the first frame that shows the demo shop's day, against a bare libadwaita window
 * on the same display in the same run. Both programs print the monotonic time of their frame.
 * Arguments: the bare program, ours. The goal is a ratio of 2.0 or less between the medians. */

enum
{
  WARM_UPS = 2,
  RUNS = 15
};

static const double goal = 2.0;

/* Milliseconds from exec to the frame. */
static double
measure (const char *const *argv)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *out = NULL;
  int status;
  const gint64 start = g_get_monotonic_time ();

  if (!g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, &out, NULL, &status,
                     &error))
    g_error ("%s", error->message);
  if (!g_spawn_check_wait_status (status, &error))
    g_error ("%s: %s", argv[0], error->message);
  return (double) (g_ascii_strtoll (out, NULL, 10) - start) / 1000.0;
}

static int
compare (const void *a, const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
median (double *values)
{
  qsort (values, RUNS, sizeof *values, compare);
  return values[RUNS / 2];
}

int
main (int argc, char **argv)
{
  double bare[RUNS], ours[RUNS], ratio;

  if (argc != 3)
    g_error ("usage: first-frame BARE UNSOOT");
  const char *const bare_line[] = { argv[1], NULL };
  const char *const our_line[] = { argv[2], "--demo", "--first-frame", NULL };

  /* The first run makes the demo shop. */
  for (int i = 0; i < WARM_UPS; i++)
    {
      measure (bare_line);
      measure (our_line);
    }
  for (int i = 0; i < RUNS; i++)
    {
      bare[i] = measure (bare_line);
      ours[i] = measure (our_line);
    }
  ratio = median (ours) / median (bare);
  g_print ("bare window %.0f ms (%.0f to %.0f), demo shop %.0f ms (%.0f to %.0f), ratio %.2f, "
           "goal %.1f\n",
           median (bare), bare[0], bare[RUNS - 1], median (ours), ours[0], ours[RUNS - 1], ratio,
           goal);
  return ratio <= goal ? EXIT_SUCCESS : EXIT_FAILURE;
}
