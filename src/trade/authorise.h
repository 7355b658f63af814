/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "money.h"

/* Whether what the work comes to is covered by what the customer authorised. How
 * far a final amount may run over is set by the shop's state and kept as a
 * setting; check local rules. */

#define UNSOOT_NO_LIMIT (-1)

/**
 * UnsootOverrunLimit:
 * @percent: thousandths of a percent, or UNSOOT_NO_LIMIT where the state names none
 * @amount: minor units, or UNSOOT_NO_LIMIT
 *
 * Where both are named the smaller one counts; where neither is, any overrun asks.
 */
typedef struct
{
  gint64 percent;
  gint64 amount;
} UnsootOverrunLimit;

typedef enum
{
  UNSOOT_AUTHORITY_NONE,    /* nobody authorised the work: don't start */
  UNSOOT_AUTHORITY_COVERED, /* not above what was authorised */
  UNSOOT_AUTHORITY_WITHIN,  /* above it, within the state's limit: tell the customer */
  UNSOOT_AUTHORITY_ASK,     /* a new authorisation is needed first */
} UnsootAuthority;

/**
 * UnsootAuthorised:
 * @estimate: the written estimate's total
 * @authorised: what the customer agreed to, which may be less or more
 * @given: whether there is an authorisation at all
 */
typedef struct
{
  gint64 estimate;
  gint64 authorised;
  gboolean given;
} UnsootAuthorised;

/**
 * UnsootAuthorityResult:
 * @overrun: how far the final amount is above the authorised one; 0 if it is not
 * @allowed: how far it may be, of the smaller of estimate and authorised amount,
 *   rounded down so that the limit is never passed
 * @sentence: (transfer full): what this means, for a person
 */
typedef struct
{
  UnsootAuthority verdict;
  gint64 overrun;
  gint64 allowed;
  char *sentence;
} UnsootAuthorityResult;

gboolean unsoot_authorise_check (const UnsootAuthorised *authorised, gint64 final_amount,
                                 const UnsootOverrunLimit *limit, const char *currency,
                                 UnsootMoneyStyle style, UnsootAuthorityResult *result,
                                 GError **error);

void unsoot_authority_result_clear (UnsootAuthorityResult *result);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (UnsootAuthorityResult, unsoot_authority_result_clear)
