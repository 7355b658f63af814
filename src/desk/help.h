/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* A page of help: what the place in front is for, and how it is worked with the keyboard. */
#define UNSOOT_TYPE_HELP (unsoot_help_get_type ())
G_DECLARE_FINAL_TYPE (UnsootHelp, unsoot_help, UNSOOT, HELP, AdwWindow)

/* @view NULL: no shop is open yet. */
void unsoot_help_open (GtkWindow *over, UnsootView *view);

/* What is said of the place called @slug, translated; NULL: nothing of its own. */
const char *unsoot_help_words (const char *slug);

G_END_DECLS
