/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "lots.h"
#include "session.h"

/* A row of a link list for a lot: code, expiry, opened containers, what is left; it opens the
 * lot. @containers: UnsootContainerRow that are open, of any lot. */
GtkWidget *unsoot_lot_link_new (const UnsootLotStock *stock, GPtrArray *containers,
                                UnsootSession *session);
