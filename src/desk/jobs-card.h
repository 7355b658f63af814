/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "card.h"
#include "session.h"

/* Fills a card with links to jobs (UnsootJobLine), or says @nothing where there is none. */
void unsoot_jobs_card_fill (UnsootCard *card, GPtrArray *jobs, UnsootSession *session,
                            const char *nothing);
