/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* Asks what is to be new: what the place in front has comes first, so that Enter takes it; what the
 * person at the desk may not begin is left out. */
#define UNSOOT_TYPE_NEW_CHOICE (unsoot_new_choice_get_type ())
G_DECLARE_FINAL_TYPE (UnsootNewChoice, unsoot_new_choice, UNSOOT, NEW_CHOICE, AdwWindow)

/* Over the place in front. Where only one thing may be new it is begun at once. A sentence to free
 * where nothing may; else NULL. */
char *unsoot_new_choice_ask (UnsootView *view);

G_END_DECLS
