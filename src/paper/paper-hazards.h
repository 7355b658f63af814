/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "paper-sides.h"

/* A fluid's hazards as its label has them: pictograms, signal word, H and P statements. @heading
 * (may be NULL) stands above it, on the same page. The fluid's own record (its safety data sheet) wins over what follows from the statements. */
void unsoot_paper_hazards (UnsootPageKit *kit, const UnsootPaperSide *side, const char *heading);
