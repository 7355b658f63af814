/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "caution-sheet.h"
#include "page-kit.h"

G_BEGIN_DECLS

/* The cautions of a sheet, with its closing sentence, in one box. */
void unsoot_paper_cautions (UnsootPageKit *kit, UnsootSheet sheet, UnsootSide side);

/* The sentences for UnsootCaution bits, titled; (char *, owned). */
GPtrArray *unsoot_paper_caution_sentences (guint cautions);

/* UnsootCaution bits of names with spaces between, as a phase's row has them. A name that
 * is not known is added to @sentences as it stands, so that nothing is lost. */
guint unsoot_paper_caution_bits (const char *names, GPtrArray *sentences);

G_END_DECLS
