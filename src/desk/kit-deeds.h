/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "family-row.h"
#include "session.h"

/* Dialogs for the parts of a family's kit, which the lead technician keeps. */
void unsoot_kit_add_open (GtkWidget *over, UnsootSession *session, const UnsootFamilyRow *family);
void unsoot_kit_edit_open (GtkWidget *over, UnsootSession *session, const UnsootFamilyRow *family,
                           const UnsootKitItemRow *item);
void unsoot_kit_remove (GtkWidget *over, UnsootSession *session, const UnsootKitItemRow *item);
