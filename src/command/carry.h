/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "call.h"

G_BEGIN_DECLS

/* What the demo shop's book is called in the folder. */
#define UNSOOT_CARRY_BOOK "demo.unsoot"

/* Carries one job of the demo shop that @call has open from the question to the payment, by the
 * same deeds that people use, tells each and writes its papers to @folder. */
gboolean unsoot_carry (UnsootCall *call, const char *folder, GError **error);

G_END_DECLS
