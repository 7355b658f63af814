/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is not as it came in, in words. */
#include <glib/gi18n-lib.h>

#include "rig-check.h"

char *
unsoot_rig_change_words (const UnsootChange *change)
{
  const char *name = change->name != NULL ? change->name : unsoot_subject_label (change->subject);

  if (change->subject == UNSOOT_SUBJECT_PART)
    return g_strdup_printf (_ ("“%s” is still off."), name);
  if (change->subject == UNSOOT_SUBJECT_LEAD)
    return g_strdup_printf (_ ("The lead “%s” is still off."), name);
  if (change->subject == UNSOOT_SUBJECT_VALVE)
    return g_strdup_printf (_ ("The valve “%s” is still open."), name);
  if (change->subject == UNSOOT_SUBJECT_LOW_POINT)
    return g_strdup_printf (_ ("“%s” is not drained."), name);
  if (change->subject == UNSOOT_SUBJECT_HEATER || change->subject == UNSOOT_SUBJECT_REGENERATION)
    return g_strdup_printf (_ ("Still disabled: %s."), name);
  return g_strdup_printf (_ ("“%s” is still on the vehicle."), name);
}

char *
unsoot_rig_line_words (const UnsootRig *rig, UnsootLine line)
{
  gboolean own = line == UNSOOT_LINE_VEHICLE_SUPPLY || line == UNSOOT_LINE_VEHICLE_RETURN;

  if (!rig->joined[line] == !own)
    return NULL;
  return g_strdup_printf (own ? _ ("Not joined: %s.") : _ ("Still joined: %s."),
                          unsoot_line_label (line));
}
