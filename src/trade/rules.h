/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* The rules a step is checked against. Each serves one of the eight numbered
 * rules that protect people and engines. */
typedef enum
{
  UNSOOT_RULE_NONE,
  UNSOOT_RULE_FLUIDS_APART,
  UNSOOT_RULE_ATOMISER_NEEDS_ENGINE,
  UNSOOT_RULE_LINES_AT_REST,
  UNSOOT_RULE_HIGH_PRESSURE,
  UNSOOT_RULE_LEAK_LOOK,
  UNSOOT_RULE_WINDOW,
  UNSOOT_RULE_LIFT_PUMP,
  UNSOOT_RULE_EVERYTHING_BACK,
  UNSOOT_RULE_AIR_PATH,
  UNSOOT_RULE_STOP_ORDER,
  UNSOOT_RULE_FUEL_SUPPLY,
  UNSOOT_RULE_TANK_RUNS_DRY,
  UNSOOT_RULE_DRAIN_BEFORE_START,
  UNSOOT_RULE_IDLE_FIRST,
  UNSOOT_RULE_IGNITION_OUT,
  UNSOOT_RULE_ROAD_TEST_LAST,
  UNSOOT_RULE_SENSE, /* no danger, but the act has no meaning where things stand */
} UnsootRule;

#define UNSOOT_RULES (UNSOOT_RULE_SENSE + 1)

/* "stop-order": for storage, scripts and tests. */
const char *unsoot_rule_to_slug (UnsootRule rule);
gboolean unsoot_rule_from_slug (const char *slug, UnsootRule *rule);

/* The rule in one sentence for a person, translated. */
const char *unsoot_rule_text (UnsootRule rule);

/* Which of the eight numbered rules it serves; 0 for NONE and SENSE. */
int unsoot_rule_number (UnsootRule rule);

/* One refusal: where, by which rule and why. */
typedef struct
{
  int step; /* index into the procedure's steps; their count for the end; -1 off the list */
  UnsootRule rule;
  char *reason; /* a sentence for a person, translated */
} UnsootFault;

#define UNSOOT_FAULT_INIT                                                                          \
  {                                                                                                \
    -1, UNSOOT_RULE_NONE, NULL                                                                     \
  }

void unsoot_fault_clear (UnsootFault *fault);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (UnsootFault, unsoot_fault_clear)

/* An empty array of UnsootFault whose elements are cleared with it. */
GArray *unsoot_faults_new (void);

/* The sentence a person reads: reason, then the rule ("… Rule 5: …"). */
char *unsoot_fault_sentence (const UnsootFault *fault);
