/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pay-method.h"

#include <glib/gi18n-lib.h>

const UnsootSlug unsoot_pay_methods[] = {
  { UNSOOT_PAY_CASH, "cash", N_ ("cash") },
  { UNSOOT_PAY_CARD, "card", N_ ("card") },
  { UNSOOT_PAY_TRANSFER, "transfer", N_ ("bank transfer") },
  { UNSOOT_PAY_CHEQUE, "cheque", N_ ("cheque") },
  { 0, NULL, NULL },
};
