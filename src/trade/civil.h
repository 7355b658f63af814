/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/*
 * A day is a number: 1 is 0001-01-01 of the Gregorian calendar, each next day one
 * more, so that adding days and counting between them is plain arithmetic. 0 is no
 * day; days run to 9999-12-31.
 */
#define UNSOOT_DAY_MAX 3652059
#define UNSOOT_DAY_1970 719163

/* A moment by the clock on the shop's wall. */
typedef struct
{
  int day;
  int hour;
  int minute;
  int second;
} UnsootLocal;

/* 0 where there is no such day. */
int unsoot_day (int year, int month, int day_of_month);
void unsoot_day_split (int day, int *year, int *month, int *day_of_month);

/**
 * unsoot_day_parse:
 * @iso: "2025-02-28"
 *
 * Errors: UNSOOT_TRADE_ERROR_INVALID (not of that form) or RANGE (no such day),
 * naming @iso.
 */
gboolean unsoot_day_parse (const char *iso, int *day, GError **error);

/* "2025-02-28". Free it. */
char *unsoot_day_iso (int day);

/* Same day of the month, or the month's last where it is shorter; 0 out of the calendar. */
int unsoot_day_add_months (int day, int months);

/* 1 Monday to 7 Sunday, as ISO 8601. */
int unsoot_day_weekday (int day);

/**
 * unsoot_local_from_unix:
 * @offset_minutes: of the shop's clock from UTC at that moment, east positive
 *
 * A moment outside the calendar gives day 0.
 */
UnsootLocal unsoot_local_from_unix (gint64 unix_seconds, int offset_minutes);
gint64 unsoot_local_to_unix (const UnsootLocal *local, int offset_minutes);
