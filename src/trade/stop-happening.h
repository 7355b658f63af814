/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rig.h"
#include "stop-page.h"

/* The page of STOP that tells what to do when @happening has struck: lost air and the carbon
 * monoxide alarm ask for the ordinary order, a burst hose for that of a leak. */
UnsootStopPage unsoot_stop_page_of (UnsootHappening happening);

/* What a run records when it was stopped by @page. */
UnsootHappening unsoot_stop_page_happening (UnsootStopPage page);
