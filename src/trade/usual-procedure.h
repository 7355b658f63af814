/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "procedure.h"

/**
 * unsoot_usual_procedure:
 * @fuel, @intake: which sides it cleans; at least one
 *
 * The usual order of work for a family of these facts, as a lead technician's starting point:
 * common practice, no source. It breaks no rule of the checker for any facts that have a pressure
 * window; what comes off and where the adapter sits is told in general words, to be replaced by
 * the engine's own from its maker's service information.
 */
UnsootProcedure *unsoot_usual_procedure (const UnsootFamilyFacts *facts, gboolean fuel,
                                         gboolean intake);
