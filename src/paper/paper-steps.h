/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-file.h"
#include "page-kit.h"

/* The procedure's steps by phase: cautions above the first step of each, a square to tick, a
 * line for the value with its unit, one for the time. What the run recorded is filled in. */
void unsoot_paper_steps (UnsootPageKit *kit, const UnsootJobFile *file);
