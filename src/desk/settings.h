/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

/* How the window looks, as it is remembered on this computer; NULL where the settings' schema is
 * not installed, and then nothing is remembered. */
GSettings *unsoot_settings_new (void);
