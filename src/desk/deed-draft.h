/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "deed-form.h"
#include "session.h"
#include "store-call.h"

/* What was typed into a deed's form and is not carried out, kept in the store by person, form
 * and record, so that neither leaving nor a crash loses it. */

/* Tells @done the texts (a GStrv, the receiver's; NULL: nothing was kept). */
void unsoot_deed_draft_load (UnsootStoreSlot *slot, UnsootSession *session,
                             const UnsootDeedForm *form, gint64 record, UnsootStoreDone done,
                             gpointer owner);

/* Takes @texts, one for each field. Nothing is kept of nobody. */
void unsoot_deed_draft_keep (UnsootSession *session, const UnsootDeedForm *form, gint64 record,
                             GStrv texts);
void unsoot_deed_draft_drop (UnsootSession *session, const UnsootDeedForm *form, gint64 record);
