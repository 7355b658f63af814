/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* What the owner should know for the first drive after a service, printed on the report:
 * the line at @index from 0, translated, NULL after the last. Common practice, no source. */
const char *unsoot_first_drive_line (guint index);
