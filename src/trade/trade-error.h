/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/**
 * UnsootTradeError:
 * @UNSOOT_TRADE_ERROR_INVALID: what was typed or read is not in the expected form
 * @UNSOOT_TRADE_ERROR_RANGE: the form is right, the value is outside what makes sense
 * @UNSOOT_TRADE_ERROR_UNKNOWN: a word or code that stands for nothing known
 * @UNSOOT_TRADE_ERROR_REFUSED: a rule of the trade or a role forbids it
 *
 * What a caller can do about it; the message is a sentence for a person.
 */
typedef enum
{
  UNSOOT_TRADE_ERROR_INVALID,
  UNSOOT_TRADE_ERROR_RANGE,
  UNSOOT_TRADE_ERROR_UNKNOWN,
  UNSOOT_TRADE_ERROR_REFUSED,
} UnsootTradeError;

#define UNSOOT_TRADE_ERROR (unsoot_trade_error_quark ())

GQuark unsoot_trade_error_quark (void);
