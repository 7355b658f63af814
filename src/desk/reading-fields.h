/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "job-file.h"
#include "session.h"

G_BEGIN_DECLS

/* A reading with the condition it was taken under. Signal "edited" is not needed: it is saved as
 * a whole, and what differs from its other half is said while the vehicle is still here. */
#define UNSOOT_TYPE_READING_FIELDS (unsoot_reading_fields_get_type ())
G_DECLARE_FINAL_TYPE (UnsootReadingFields, unsoot_reading_fields, UNSOOT, READING_FIELDS, GtkBox)

/* Asks for one over the window of @over and records it. The condition is remembered from the
 * job's last reading; @stage: "before" or "after". */
void unsoot_reading_open (GtkWidget *over, UnsootSession *session, const UnsootJobFile *file,
                          const char *stage);

G_END_DECLS
