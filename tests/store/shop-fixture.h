/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <string.h>

#include "rows.h"
#include "runs.h"
#include "suite.h"

/* A small shop made by hand, whose every figure is known: what its deeds must come to is
 * reckoned beside each test. It opens on Tuesday, 18 November 2025, 08:00 UTC. */

#define SHOP_NOW G_GINT64_CONSTANT (1763452800)
#define SHOP_HOUR 3600
#define SHOP_DAY 86400

typedef struct
{
  UnsootDb *db;
  char *folder; /* NULL: the book is in memory */
  char *path;
  gint64 owner;
  gint64 advisor;
  gint64 clerk;
  gint64 technician;
  gint64 lead;
  gint64 person; /* a customer who pays at once */
  gint64 fleet;  /* needs an order, up to 1,000.00; 30 days to pay */
  gint64 exempt; /* not taxed */
  gint64 family;
  gint64 procedure;
  gint64 both; /* service: labour 240.00, 100 minutes, disposal 15.00 */
  gint64 fuel_only;
  gint64 vehicle;       /* the person's */
  gint64 fleet_vehicle; /* the fleet's, unit 12 */
  gint64 exempt_vehicle;
  gint64 fuel_fluid;   /* K, 26.00 a litre */
  gint64 intake_fluid; /* R, 31.00 a litre */
  gint64 fuel_lot;     /* 10 L until 31 December */
  gint64 intake_lot;   /* 20 L until 1 March */
  gint64 expired_lot;  /* of R, 5 L, until 1 November */
  gint64 cart;
  gint64 other_cart;
  gint64 bay;
  gint64 other_bay;
  gint64 fuel_adapter;   /* F-01/1, one of two */
  gint64 intake_adapter; /* V-07/1, the only one */
} TestShop;

TestShop *test_shop_new (void);
/* In a file, so that it can be looked at from outside. */
TestShop *test_shop_new_file (void);
void test_shop_free (TestShop *shop);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TestShop, test_shop_free)

/* A person of the shop, @seconds after it opened. */
static inline UnsootActing
test_as (gint64 staff_id, gint64 seconds)
{
  return (UnsootActing){ .staff_id = staff_id, .now = SHOP_NOW + seconds };
}

/* What one number of the book is; the test fails where there is none. */
gint64 test_ask (TestShop *shop, const char *sql);
char *test_ask_text (TestShop *shop, const char *sql);

#define ck_ask(shop, sql, wanted) ck_assert_int_eq (test_ask (shop, sql), wanted)
#define ck_ask_text(shop, sql, wanted)                                                             \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autofree char *answer = test_ask_text (shop, sql);                                           \
    ck_assert_pstr_eq (answer, wanted);                                                            \
  }                                                                                                \
  G_STMT_END

/* Runs @sql on the shop's file by SQLite's own library, beside the store. */
void test_outside (TestShop *shop, const char *sql);

/* An error is set, of this code, and its sentence contains @words. */
#define ck_refused(error, domain, wanted, words)                                                   \
  G_STMT_START                                                                                     \
  {                                                                                                \
    ck_assert_msg ((error) != NULL, "no error where one was due");                                 \
    ck_assert_msg (strstr ((error)->message, words) != NULL, "other sentence: %s",                 \
                   (error)->message);                                                              \
    ck_assert_msg (g_error_matches (error, domain, (int) wanted), "other error: %d %s",            \
                   (error)->code, (error)->message);                                               \
    g_clear_error (&(error));                                                                      \
  }                                                                                                \
  G_STMT_END
#define ck_not_allowed(error, words)                                                               \
  ck_refused (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_ALLOWED, words)
#define ck_constraint(error, words)                                                                \
  ck_refused (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONSTRAINT, words)
#define ck_invalid(error, words)                                                                   \
  ck_refused (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_INVALID, words)

/* The steps of a job, each of which has to succeed. Times are seconds after the opening. */
gint64 test_quote (TestShop *shop, gint64 vehicle, const char *po_number);
void test_authorise (TestShop *shop, gint64 job);
gint64 test_book_job (TestShop *shop, gint64 job, gint64 bay, gint64 cart, gint64 starts);
void test_arrive (TestShop *shop, gint64 job, double miles);
gint64 test_begin (TestShop *shop, gint64 job);
/* Confirms step after step, a minute each, until @step is the next; G_MAXINT: all. */
void test_walk (TestShop *shop, gint64 run, int step);
void test_finish (TestShop *shop, gint64 job);
/* A job carried from quote to done. */
gint64 test_done (TestShop *shop, gint64 vehicle, const char *po_number);

/* The index of the first step that does @act to @subject. */
int test_find_step (TestShop *shop, gint64 run, UnsootAct act, UnsootSubject subject);
