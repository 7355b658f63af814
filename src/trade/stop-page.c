/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "stop-page.h"

#include <glib/gi18n-lib.h>

#define MOST_LINES 7

const UnsootSlug unsoot_stop_pages[] = {
  { UNSOOT_STOP_PAGE_ORDINARY, "ordinary", N_ ("Stop the run") },
  { UNSOOT_STOP_PAGE_RUNAWAY, "runaway", N_ ("Engine runs away") },
  { UNSOOT_STOP_PAGE_LEAK, "leak", N_ ("Leak or fire") },
  { UNSOOT_STOP_PAGE_STALLED, "stalled", N_ ("Engine stalled") },
  { 0, NULL, NULL },
};

static const char *const lines[UNSOOT_STOP_PAGES][MOST_LINES] = {
  [UNSOOT_STOP_PAGE_ORDINARY] = {
    N_ ("Atomiser off."),
    N_ ("Air to zero; bleed the air line."),
    N_ ("Engine off, key off."),
    N_ ("Pump off, only when the engine stands still."),
    N_ ("Pressure at minimum; bleed the line before it is touched."),
  },
  [UNSOOT_STOP_PAGE_RUNAWAY] = {
    N_ ("Everybody away from the engine's front and sides."),
    N_ ("Atomiser off, pump off."),
    N_ ("The key does not help: the engine burns what it breathes in. Take its air."),
    N_ ("Press the rated plate on the intake, or CO2 into it from the side."),
    N_ ("Hold until the engine stands still. Can't reach it safely? Leave."),
    N_ ("No restart: drain the low pipes and the charge cooler, check the oil, have the engine looked at."),
  },
  [UNSOOT_STOP_PAGE_LEAK] = {
    N_ ("Pump and engine off together; atomiser and air off."),
    N_ ("Fire: everybody out, call the fire service."),
    N_ ("Use the extinguisher only on a small fire, with a way out behind you."),
    N_ ("No fire: no spark, doors open, wait until pressure is gone."),
    N_ ("Look for the leak with card and light."),
    N_ ("Fluid under the skin is an emergency even if it looks small: to hospital at once."),
  },
  [UNSOOT_STOP_PAGE_STALLED] = {
    N_ ("Atomiser off at once; air to zero."),
    N_ ("Do not crank: liquid may stand above a piston."),
    N_ ("Key off, pump off."),
    N_ ("Drain the low pipes and the charge cooler, and sign for it."),
    N_ ("Check the oil level; if it has risen, change the oil first."),
    N_ ("Only then start again, at idle, without cleaner."),
  },
};

static const char *const nevers[UNSOOT_STOP_PAGES] = {
  [UNSOOT_STOP_PAGE_ORDINARY] = N_ ("Never stop the pump under a running engine."),
  [UNSOOT_STOP_PAGE_RUNAWAY] = N_ ("Never a hand, a rag or a board over the intake."),
  [UNSOOT_STOP_PAGE_LEAK] = N_ ("Never feel for a leak by hand. Never open a high-pressure line."),
  [UNSOOT_STOP_PAGE_STALLED]
  = N_ ("Never restart before the drain. Never atomise into a stopped engine."),
};

static const char *const lock_lines[] = {
  N_ ("Liquid does not compress: a piston that meets it bends the rod or breaks the engine."),
  N_ ("Drain the low pipes and the charge cooler before the intake side starts."),
  N_ ("Never pour cleaner in; never atomise into a stopped engine."),
  N_ ("After a stall, or a soak in place, drain before any restart."),
  N_ ("After the intake side: engine off, low pipes and charge cooler drained and signed, oil level checked; then idle, and raise the speed gently."),
  NULL,
};

const char *
unsoot_stop_line (UnsootStopPage page, guint index)
{
  const char *line = index < MOST_LINES ? lines[page][index] : NULL;
  return line ? _ (line) : NULL;
}

const char *
unsoot_stop_never (UnsootStopPage page)
{
  return _ (nevers[page]);
}

const char *
unsoot_lock_line (guint index)
{
  return index < G_N_ELEMENTS (lock_lines) && lock_lines[index] ? _ (lock_lines[index]) : NULL;
}
