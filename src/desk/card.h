/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A titled card: a box on a raised ground, its title above what is put into it. Property
 * "title". The title names the card for a screen reader. */
#define UNSOOT_TYPE_CARD (unsoot_card_get_type ())
G_DECLARE_FINAL_TYPE (UnsootCard, unsoot_card, UNSOOT, CARD, GtkBox)

/* Takes out everything but the title. */
void unsoot_card_clear (UnsootCard *self);

/* A quiet sentence in place of what is not there yet. */
void unsoot_card_say (UnsootCard *self, const char *sentence);

G_END_DECLS
