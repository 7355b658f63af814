/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "hazard.h"

/* The set of statements, closed by a row without a code. */
extern const UnsootStatement unsoot_statements[];
