/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "job-file.h"
#include "session.h"

G_BEGIN_DECLS

/* What is noted when a vehicle comes in: meters, complaint, codes, and what is altered on it. */
#define UNSOOT_TYPE_ARRIVAL_FIELDS (unsoot_arrival_fields_get_type ())
G_DECLARE_FINAL_TYPE (UnsootArrivalFields, unsoot_arrival_fields, UNSOOT, ARRIVAL_FIELDS, GtkBox)

/* Asks for it over the window of @over and records the arrival of the job. */
void unsoot_arrival_open (GtkWidget *over, UnsootSession *session, const UnsootJobFile *file);

G_END_DECLS
