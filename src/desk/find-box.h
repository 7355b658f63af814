/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "session.h"

G_BEGIN_DECLS

/* The one box that finds anything from anywhere. Results stand beneath it grouped by kind, the
 * best one chosen; up and down move, Return opens it with win.open, Escape leaves. */
#define UNSOOT_TYPE_FIND_BOX (unsoot_find_box_get_type ())
G_DECLARE_FINAL_TYPE (UnsootFindBox, unsoot_find_box, UNSOOT, FIND_BOX, AdwBin)

void unsoot_find_box_set_session (UnsootFindBox *self, UnsootSession *session);

/* As if it had been typed. */
void unsoot_find_box_type (UnsootFindBox *self, const char *text);

/* Whether the answer to what was typed last is shown; how many results; the chosen one's title,
 * NULL for none. */
gboolean unsoot_find_box_has_answer (UnsootFindBox *self);
guint unsoot_find_box_get_n_results (UnsootFindBox *self);
const char *unsoot_find_box_get_chosen (UnsootFindBox *self);

G_END_DECLS
