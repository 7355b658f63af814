/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "slug.h"

/* The kinds of part in a kit, as they are stored and read; their values count from 0. */
extern const UnsootSlug unsoot_kit_kinds[];
