/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "machine-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* A tank and what it holds by its last event. */
typedef struct
{
  UnsootTankRow *tank;
  UnsootTankEventRow *last; /* NULL: nothing was ever recorded, contents are unknown */
  char *words;              /* "0.4 L fresh, fluid K, lot 7714" */
} UnsootTankState;

void unsoot_tank_state_free (UnsootTankState *state);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootTankState, unsoot_tank_state_free)

/* UnsootMachineRow by name, those in use first. */
GPtrArray *unsoot_machine_list (UnsootDb *db, GError **error);
UnsootMachineRow *unsoot_machine_load (UnsootDb *db, gint64 id, GError **error);

/* Saves a machine, added with two tanks where its id is 0.
 * @fuel, @intake: (nullable): the tanks; needed for a new machine. */
gboolean unsoot_machine_save (UnsootDb *db, const UnsootActing *who, UnsootMachineRow *machine,
                              UnsootTankRow *fuel, UnsootTankRow *intake, GError **error);

/**
 * unsoot_tank_save:
 * @tank: one of a machine's, with its new capacity and low mark in mL
 *
 * Another size of tank, or another low-level switch.
 * Errors: NOT_ALLOWED; CONFLICT; INVALID for a low mark that is not below the capacity; CONSTRAINT
 * for less than what is in it by the book, or while a run has the machine.
 */
gboolean unsoot_tank_save (UnsootDb *db, const UnsootActing *who, UnsootTankRow *tank,
                           GError **error);

/* UnsootTankRow of every machine: by machine, fuel first. */
GPtrArray *unsoot_tank_list (UnsootDb *db, GError **error);

/* UnsootTankState, fuel first. */
GPtrArray *unsoot_machine_tanks (UnsootDb *db, gint64 machine_id, GError **error);
UnsootTankState *unsoot_machine_tank (UnsootDb *db, gint64 machine_id, const char *side,
                                      GError **error);

/**
 * unsoot_tank_post:
 * @kind: found (measured, contents as they are), drain, flush or hold
 * @ml: what is in the tank afterwards, where it was measured: found and hold
 * @contents: for found: unknown, empty, clean, fresh, returned or held; else %NULL
 * @label: for hold: what the label says
 *
 * Records what was done with a tank outside a run, where the trade's rules allow it.
 * Errors: NOT_ALLOWED; INVALID; CONSTRAINT with the rule, or while a run has the machine.
 *
 * Returns: the event's id, 0 on error.
 */
gint64 unsoot_tank_post (UnsootDb *db, const UnsootActing *who, gint64 machine_id, const char *side,
                         const char *kind, gint64 ml, const char *contents, const char *label,
                         GError **error);

/**
 * unsoot_tank_correct:
 *
 * The counter-posting of an event that was a mistake: the tank holds again what it held before.
 * Only the last that stands can be taken back, and then the one before it.
 *
 * Errors: NOT_ALLOWED; INVALID without a reason; CONSTRAINT where it was taken back already,
 * something was done since, or while a run has the machine.
 *
 * Returns: the correction's id, 0 on error.
 */
gint64 unsoot_tank_correct (UnsootDb *db, const UnsootActing *who, gint64 event_id,
                            const char *reason, GError **error);

/* Of the events of one tank, oldest first, the last that is no correction and has none; NULL:
 * there is none. */
const UnsootTankEventRow *unsoot_tank_standing (const GPtrArray *events);

/* UnsootTankEventRow of a tank, oldest first. */
GPtrArray *unsoot_tank_events (UnsootDb *db, gint64 tank_id, GError **error);

/* A gauge against a reference; id, at and staff are set. */
gboolean unsoot_gauge_check_post (UnsootDb *db, const UnsootActing *who, UnsootGaugeCheckRow *check,
                                  GError **error);

/* The hoses were replaced; the next are due on @due_on (ISO date, nullable). */
gboolean unsoot_machine_hoses (UnsootDb *db, const UnsootActing *who, gint64 machine_id,
                               const char *due_on, GError **error);

/* UnsootGaugeCheckRow, oldest first. */
GPtrArray *unsoot_gauge_checks (UnsootDb *db, gint64 machine_id, GError **error);

G_END_DECLS
