/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "role.h"
#include "rows.h"
#include "shop-row.h"
#include "staff-row.h"
#include "store.h"

G_BEGIN_DECLS

/* One opened shop at one desk: the store, the shop's own row, its clock, and the person who sits
 * there. Every page holds it. Signal "notify::person" when hands change. */
#define UNSOOT_TYPE_SESSION (unsoot_session_get_type ())
G_DECLARE_FINAL_TYPE (UnsootSession, unsoot_session, UNSOOT, SESSION, GObject)

/* Takes @shop. @demo: the invented shop, whose PINs are no secret. */
UnsootSession *unsoot_session_new (UnsootStore *store, UnsootShopRow *shop, gboolean demo);

UnsootStore *unsoot_session_get_store (UnsootSession *self);
const UnsootShopRow *unsoot_session_get_shop (UnsootSession *self);
gboolean unsoot_session_is_demo (UnsootSession *self);

/* The shop's clock: Unix seconds, its zone, and today as an ISO date (the caller's to free). */
gint64 unsoot_session_now (UnsootSession *self);
GTimeZone *unsoot_session_zone (UnsootSession *self);
char *unsoot_session_today (UnsootSession *self);

/* Stops the clock at a moment, for pictures and tests. 0 lets it run again. */
void unsoot_session_stop_clock (UnsootSession *self, gint64 at);

/* Who is at the desk, NULL where nobody is. The setter copies. */
const UnsootStaffRow *unsoot_session_get_person (UnsootSession *self);
void unsoot_session_set_person (UnsootSession *self, const UnsootStaffRow *person);

/* That person's role; FALSE where nobody is at the desk. */
gboolean unsoot_session_get_role (UnsootSession *self, UnsootRole *role);

/* That person, now: who a deed is done by. */
UnsootActing unsoot_session_acting (UnsootSession *self);

/* Why the person at the desk can't do @deed, a sentence to free; NULL where they may. */
char *unsoot_session_refusal (UnsootSession *self, UnsootDeed deed);

/* An amount in the shop's currency as it is written here; the caller's to free. */
char *unsoot_session_money (UnsootSession *self, gint64 minor);

/* The amount that a person typed. Errors: as unsoot_money_parse (). */
gboolean unsoot_session_parse_money (UnsootSession *self, const char *text, gint64 *minor,
                                     GError **error);

/* The shop's own row was saved: takes @shop, and its clock and currency hold from here on. */
void unsoot_session_set_shop (UnsootSession *self, UnsootShopRow *shop);

G_END_DECLS
