/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* The program with a screen: reads its options, opens the shop while the toolkit starts, and
 * shows the window. */
#define UNSOOT_TYPE_APPLICATION (unsoot_application_get_type ())
G_DECLARE_FINAL_TYPE (UnsootApplication, unsoot_application, UNSOOT, APPLICATION, AdwApplication)

UnsootApplication *unsoot_application_new (void);

/* The exit status where something went wrong after the start, else EXIT_SUCCESS. */
int unsoot_application_get_status (UnsootApplication *self);

G_END_DECLS
