/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "card.h"
#include "session.h"

/**
 * unsoot_phone_call_open:
 * @about: job, loan, invoice or vehicle
 * @thing: what it is called; plain
 *
 * Whom to call, what was said before, and a note of what is said now; its Undo takes the note
 * back.
 */
void unsoot_phone_call_open (GtkWidget *over, UnsootSession *session, const char *about,
                             gint64 record, const char *thing);

/* The notes (UnsootCallLine) in a card, which is hidden where there are none. */
void unsoot_phone_call_card (UnsootCard *card, const GPtrArray *calls, UnsootSession *session);
