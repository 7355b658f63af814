/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "booking-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* A block in the strip of the day. */
typedef struct
{
  gint64 booking_id;
  gint64 job_id;
  gint64 job_number;
  gint64 bay_id;
  gint64 starts_at;
  gint64 ends_at;
  char *status; /* of the job */
  char *title;  /* the vehicle, as it is called */
  char *plate;
  char *engine;
  char *customer;
  char *machine;
  char *technician;
  char *sides;     /* fuel, intake or both */
  double progress; /* share of steps confirmed, 0 to 1; NAN: no run */
  gboolean halted; /* a run that waits for someone */
} UnsootDayBlock;

/* What a line of Needs a hand is about; the order is that of severity, worst first. */
typedef enum
{
  UNSOOT_HAND_HALTED,     /* a run stopped or interrupted */
  UNSOOT_HAND_RELEASED,   /* a vehicle out in pieces */
  UNSOOT_HAND_WAITING,    /* here, and no bay yet */
  UNSOOT_HAND_SETUP,      /* a new shop that lacks something to work with */
  UNSOOT_HAND_SHORT,      /* fluid short for a booking */
  UNSOOT_HAND_LATE,       /* an order that should have come */
  UNSOOT_HAND_REORDER,    /* fluid at its reorder point, and nothing on order */
  UNSOOT_HAND_LOAN,       /* adapter overdue */
  UNSOOT_HAND_GAUGE,      /* gauge check due */
  UNSOOT_HAND_HOSES,      /* hoses due */
  UNSOOT_HAND_UNINVOICED, /* done, not invoiced */
  UNSOOT_HAND_ESTIMATE,   /* waiting for an answer, or running out */
  UNSOOT_HAND_UNPAID,     /* invoice overdue */
  UNSOOT_HAND_EXPIRY,     /* lot near its date */
  UNSOOT_HAND_REMINDER,   /* next service due, customer consented */
} UnsootHandKind;

/* What a line's button leads to. */
typedef enum
{
  UNSOOT_TARGET_JOB,
  UNSOOT_TARGET_FLUID,
  UNSOOT_TARGET_LOT,
  UNSOOT_TARGET_LOAN,
  UNSOOT_TARGET_MACHINE,
  UNSOOT_TARGET_INVOICE,
  UNSOOT_TARGET_VEHICLE,
  UNSOOT_TARGET_PREFERENCES, /* its id is an UnsootSetup */
} UnsootTargetKind;

/* A part of what the shop settles for itself. */
typedef enum
{
  UNSOOT_SETUP_HOURS = 1,
  UNSOOT_SETUP_BAYS,
  UNSOOT_SETUP_STAFF,
  UNSOOT_SETUP_TAXES,
  UNSOOT_SETUP_SERVICES,
  UNSOOT_SETUP_MACHINES,
  UNSOOT_SETUP_FLUIDS,
  UNSOOT_SETUP_FAMILIES,
} UnsootSetup;

/* "**Intake fluid R** is 3 L short for tomorrow 10:00 · Order". */
typedef struct
{
  UnsootHandKind kind;
  gint64 urgency; /* among its kind: more is worse */
  char *thing;    /* set bold */
  char *rest;     /* of the sentence */
  char *verb;     /* on the button */
  UnsootTargetKind target;
  gint64 target_id;
} UnsootHand;

typedef struct
{
  char *date;       /* ISO, the shop's */
  gint64 starts_at; /* of the day, Unix seconds */
  gint64 ends_at;
  gint64 opens_at; /* 0: shut all day */
  gint64 closes_at;
  char *shut_reason; /* holiday's name; NULL: none */
  int utc_offset_minutes;
  GPtrArray *bays;   /* UnsootBayRow in order */
  GPtrArray *blocks; /* UnsootDayBlock by start */
  GPtrArray *hands;  /* UnsootHand, what hurts first at the top */
} UnsootDay;

void unsoot_day_block_free (UnsootDayBlock *block);
void unsoot_hand_free (UnsootHand *hand);
void unsoot_day_free (UnsootDay *day);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootDay, unsoot_day_free)

/**
 * unsoot_day_load:
 * @date: (nullable): ISO date, %NULL is the shop's date at @now
 * @now: Unix seconds: what is late, due or running out is told by it
 */
UnsootDay *unsoot_day_load (UnsootDb *db, const char *date, gint64 now, GError **error);

/* What is called about in a line of that kind: "invoice"; NULL: nobody is. */
const char *unsoot_hand_call_about (UnsootHandKind kind);

G_END_DECLS
