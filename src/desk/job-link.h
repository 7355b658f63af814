/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "lists.h"
#include "session.h"

/* A job in a boxed list on another record's page: number and service, when, where it stands. */
GtkWidget *unsoot_job_link_new (const UnsootJobLine *line, UnsootSession *session,
                                gboolean with_vehicle);
