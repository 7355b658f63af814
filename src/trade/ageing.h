/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "slug.h"

/* What is owed, by how long it has been owed. Days as in civil.h. */

typedef enum
{
  UNSOOT_AGED_NOT_DUE, /* only when counted from the due date */
  UNSOOT_AGED_30,
  UNSOOT_AGED_60,
  UNSOOT_AGED_90,
  UNSOOT_AGED_OVER,
} UnsootAged;

#define UNSOOT_AGES 5

/* "not-due", "0-30", "31-60", "61-90", "over-90", with the column's heading. */
extern const UnsootSlug unsoot_ages[];

typedef enum
{
  UNSOOT_AGED_FROM_DUE,    /* days past due */
  UNSOOT_AGED_FROM_ISSUED, /* days since the invoice */
} UnsootAgedFrom;

extern const UnsootSlug unsoot_aged_from[];

typedef struct
{
  int issued;
  int due;
  gint64 open; /* still owed, minor units; below zero is a credit */
} UnsootOpenItem;

typedef struct
{
  gint64 owed[UNSOOT_AGES];
  gint64 total;
} UnsootAgeing;

/* The day an invoice is due; 0 where that is outside the calendar or terms are below 0. */
int unsoot_ageing_due (int issued, int terms_days);

UnsootAged unsoot_ageing_of (const UnsootOpenItem *item, UnsootAgedFrom from, int today);

/* FALSE with UNSOOT_TRADE_ERROR_RANGE where the sums don't fit. */
gboolean unsoot_ageing_sum (const UnsootOpenItem *items, gsize n, UnsootAgedFrom from, int today,
                            UnsootAgeing *ageing, GError **error);
