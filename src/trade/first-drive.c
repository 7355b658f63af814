/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "first-drive.h"

#include <glib/gi18n-lib.h>

static const char *const lines[] = {
  N_ ("Drive gently until the engine is warm, then raise the load step by step."),
  N_ ("Some smoke or smell may show at first. If it stays, or a warning lamp comes on, call us."),
  N_ ("A smell of fuel, a drop under the vehicle: switch off, don't drive, call us."),
  N_ ("If the engine races by itself: stop where it is safe, everybody out and away, call for help."),
  N_ ("Look at the oil level before the second drive. If it has risen, don't start: call us."),
};

const char *
unsoot_first_drive_line (guint index)
{
  return index < G_N_ELEMENTS (lines) ? _ (lines[index]) : NULL;
}
