/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "window.h"

G_BEGIN_DECLS

/* Keeps a verified copy of @session's book for every day on which it is open: a moment after
 * it was opened, and again when the day turns. A failure is said in @window. */
void unsoot_daily_copy_start (UnsootWindow *window, UnsootSession *session);

G_END_DECLS
