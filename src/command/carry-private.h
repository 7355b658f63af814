/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "call.h"
#include "staff-row.h"

G_BEGIN_DECLS

/* A job of the demo shop on its way; call->who says who acts, and when by the demo's own clock. */
typedef struct
{
  UnsootCall *call;
  UnsootAnswerTable *deeds; /* only for scripts */
  const char *folder;
  GPtrArray *papers; /* char *: those written */
  UnsootStaffRow *advisor;
  UnsootStaffRow *technician;
  char *contact; /* who gives the word */
  gint64 vehicle_id;
  gint64 job_id;
  gint64 invoice_id;
  gint64 starts_at;
  gboolean intake; /* that side is done too */
} UnsootCarry;

/* From now on @person acts, @seconds later. */
void unsoot_carry_act (UnsootCarry *carry, const UnsootStaffRow *person, gint64 seconds);

/* Tells a deed (taken) with the time and who did it. */
void unsoot_carry_tell (UnsootCarry *carry, const UnsootStaffRow *by, char *deed);

/* Parts of the way, in order. */
gboolean unsoot_carry_quote (UnsootCarry *carry, GError **error);
gboolean unsoot_carry_book (UnsootCarry *carry, GError **error);
gboolean unsoot_carry_arrive (UnsootCarry *carry, GError **error);
gboolean unsoot_carry_readings (UnsootCarry *carry, gboolean after, GError **error);
gboolean unsoot_carry_run (UnsootCarry *carry, GError **error);

G_END_DECLS
