/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "booking-draft.h"
#include "booking-file.h"
#include "session.h"

G_BEGIN_DECLS

/* A talk with a customer about a booking: what was said so far (the plan), and what follows from
 * it out of the shop's book (the file). Whatever is changed in the plan is reckoned anew and kept
 * as a draft, so that neither leaving nor a crash loses it.
 * Signals: "read", a fresh file is there; "failed" (text), it could not be read; "held" (gboolean),
 * nothing more may be said for now. */
#define UNSOOT_TYPE_BOOKING_TALK (unsoot_booking_talk_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingTalk, unsoot_booking_talk, UNSOOT, BOOKING_TALK, GObject)

/* @slug, @record: of the page, as drafts are kept by them. */
UnsootBookingTalk *unsoot_booking_talk_new (UnsootSession *session, const char *slug,
                                            gint64 record);

UnsootSession *unsoot_booking_talk_get_session (UnsootBookingTalk *self);

/* NULL until it has begun; whoever changes it says so. */
UnsootBookingPlan *unsoot_booking_talk_get_plan (UnsootBookingTalk *self);

/* NULL until it was read. */
const UnsootBookingFile *unsoot_booking_talk_get_file (UnsootBookingTalk *self);

/* Takes @plan, and reads what follows from it. */
void unsoot_booking_talk_begin (UnsootBookingTalk *self, UnsootBookingPlan *plan);

/* Forgets all that was said; so does the draft. */
void unsoot_booking_talk_begin_anew (UnsootBookingTalk *self);

/* The plan was changed: in something from which nothing follows; in something that is still being
 * typed; for good; for good, and the keyboard is wanted where the next thing is asked. */
void unsoot_booking_talk_touched (UnsootBookingTalk *self);
void unsoot_booking_talk_changing (UnsootBookingTalk *self);
void unsoot_booking_talk_changed (UnsootBookingTalk *self);
void unsoot_booking_talk_go_on (UnsootBookingTalk *self);

/* While it is carried out nothing more is said: it would be in neither. */
void unsoot_booking_talk_hold (UnsootBookingTalk *self, gboolean held);

/* Whether the keyboard is wanted there; it is wanted once. */
gboolean unsoot_booking_talk_goes_on (UnsootBookingTalk *self);

/* Whether the file is behind what was said: it is being read, or will be in a moment. */
gboolean unsoot_booking_talk_is_behind (UnsootBookingTalk *self);

/* Reads again, because the book was written. */
void unsoot_booking_talk_read (UnsootBookingTalk *self);

/* Who said it: the draft is theirs. 0: nobody yet. */
gint64 unsoot_booking_talk_get_staff_id (UnsootBookingTalk *self);

/* The page is left: what was not kept yet is kept now. */
void unsoot_booking_talk_leave (UnsootBookingTalk *self);

/* An empty draft of the page, to be put when it was carried out. Free it. */
UnsootBookingDraft *unsoot_booking_talk_dup_draft (UnsootBookingTalk *self);

/* It is quoted as that job from here on, and its draft is gone. */
void unsoot_booking_talk_quoted (UnsootBookingTalk *self, gint64 job_id);

G_END_DECLS
