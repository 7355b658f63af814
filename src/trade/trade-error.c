/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade-error.h"

G_DEFINE_QUARK (unsoot - trade - error - quark, unsoot_trade_error)
