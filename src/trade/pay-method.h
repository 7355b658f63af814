/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "slug.h"

/* How money comes in. */
typedef enum
{
  UNSOOT_PAY_CASH,
  UNSOOT_PAY_CARD,
  UNSOOT_PAY_TRANSFER,
  UNSOOT_PAY_CHEQUE,
} UnsootPayMethod;

#define UNSOOT_PAY_METHODS (UNSOOT_PAY_CHEQUE + 1)

/* "cash", "card", "transfer", "cheque", with their words. */
extern const UnsootSlug unsoot_pay_methods[];
