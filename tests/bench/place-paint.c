/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gio/gio.h>
#include <stdlib.h>

/* From exec to the first frame that shows a place of the demo shop with its data, place by place,
 * against a bare libadwaita window on the same display in the same run. Both programs print the
 * monotonic time of their frame. Arguments: the bare program, ours, places. Reported only: there is
 * no goal to miss. */

enum
{
  WARM_UPS = 1,
  RUNS = 5
};

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

/* The bare window is measured between, so that both see the same machine. */
static void
report (const char *const *bare_line, const char *program, const char *place)
{
  const char *const line[] = { program, "--demo", "--first-frame", "--place", place, NULL };
  double bare[RUNS], ours[RUNS];

  for (int i = 0; i < WARM_UPS; i++)
    measure (line);
  for (int i = 0; i < RUNS; i++)
    {
      bare[i] = measure (bare_line);
      ours[i] = measure (line);
    }
  g_print ("%-12s %5.0f ms, ratio to the bare window %.2f\n", place, median (ours),
           median (ours) / median (bare));
}

int
main (int argc, char **argv)
{
  if (argc < 4)
    g_error ("usage: place-paint BARE UNSOOT PLACE…");
  const char *const bare_line[] = { argv[1], NULL };

  measure (bare_line);
  for (int i = 3; i < argc; i++)
    report (bare_line, argv[2], argv[i]);
  return EXIT_SUCCESS;
}
