/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "booking-plan.h"
#include "booking-row.h"
#include "free-times.h"
#include "lists.h"
#include "quotes.h"

G_BEGIN_DECLS

/* How far a booking has come. */
typedef enum
{
  UNSOOT_BOOKING_ASKED,  /* nothing is posted yet */
  UNSOOT_BOOKING_QUOTED, /* an estimate waits for a word */
  UNSOOT_BOOKING_AUTHORISED,
  UNSOOT_BOOKING_BOOKED, /* only the time can change */
} UnsootBookingStage;

/* What follows from a plan: read from the shop's book in one go. */
typedef struct
{
  UnsootBookingPlan *plan; /* with everything filled in that follows by itself */
  UnsootBookingStage stage;
  UnsootCustomerRow *customer; /* who is kept already; NULL: nobody or somebody new */
  char *phone;                 /* the first */
  GPtrArray *vehicles;         /* UnsootVehicleRow of that customer */
  UnsootVehicleRow *vehicle;   /* the one that is chosen; NULL: none, or a new one */
  GPtrArray *past;             /* UnsootJobLine of the chosen vehicle, the newest few */
  char *next_due_on;           /* ISO date of its next service; NULL: not reckoned */
  GPtrArray *services;         /* UnsootServiceRow that are sold */
  GPtrArray *families;         /* UnsootFamilyRow */
  GPtrArray *bays;             /* UnsootBayRow, likewise the next two */
  GPtrArray *machines;
  GPtrArray *people; /* UnsootStaffRow who carry jobs out */
  UnsootQuote *quote;
  char *quote_trouble; /* why there is none; NULL: nothing was asked */
  GPtrArray *days;     /* UnsootFreeDay */
  char *days_trouble;
  UnsootFreeTime *time; /* what is chosen; NULL: none */
  GPtrArray *why;       /* char *: what stands in the way of it */
  UnsootJobRow *job;    /* once it is quoted */
  GPtrArray *lines;     /* UnsootJobLineRow of the quote or the job */
  UnsootBill *bill;
  gint64 authorised_minor;
  char *overrun; /* how what it comes to stands to the word that was given; NULL: covered */
  UnsootBookingRow *booking; /* that stands */
} UnsootBookingFile;

void unsoot_booking_file_free (UnsootBookingFile *file);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootBookingFile, unsoot_booking_file_free)

/* @plan is copied. What can't be quoted or found free is said, and no error. */
UnsootBookingFile *unsoot_booking_file_load (UnsootDb *db, const UnsootBookingPlan *plan,
                                             gint64 now, GError **error);

G_END_DECLS
