/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "slug.h"

/* What a fluid's label must say. The supplier's safety data sheet and local
 * rules win over everything here. */

/* The nine signs of the globally harmonised system. */
typedef enum
{
  UNSOOT_GHS_NONE,
  UNSOOT_GHS01,
  UNSOOT_GHS02,
  UNSOOT_GHS03,
  UNSOOT_GHS04,
  UNSOOT_GHS05,
  UNSOOT_GHS06,
  UNSOOT_GHS07,
  UNSOOT_GHS08,
  UNSOOT_GHS09,
} UnsootPictogram;

#define UNSOOT_PICTOGRAMS 10

/* "ghs02" … with what the sign shows and what it stands for: "Flame: flammable". */
extern const UnsootSlug unsoot_pictograms[];

typedef enum
{
  UNSOOT_SIGNAL_NONE,
  UNSOOT_SIGNAL_WARNING,
  UNSOOT_SIGNAL_DANGER,
} UnsootSignal;

extern const UnsootSlug unsoot_signals[];

/**
 * UnsootStatement:
 * @code: "H226", "P301+P310"
 * @text: the standard wording, marked for translation
 * @pictogram, @signal: of an H statement
 * @advice: the P codes that go with an H statement, apart by spaces, or NULL
 */
typedef struct
{
  const char *code;
  const char *text;
  UnsootPictogram pictogram;
  UnsootSignal signal;
  const char *advice;
} UnsootStatement;

/* The statement for a code, or NULL for a code that is not in the set. */
const UnsootStatement *unsoot_statement_find (const char *code);

/* Its wording, translated; NULL as above. */
const char *unsoot_statement_text (const char *code);

/**
 * UnsootLabel:
 * @pictograms: by #UnsootPictogram, TRUE where the sign is shown
 * @signal: the stronger of all
 * @hazards, @advice: (element-type UnsootStatement): H and P statements, each once
 */
typedef struct
{
  gboolean pictograms[UNSOOT_PICTOGRAMS];
  UnsootSignal signal;
  GPtrArray *hazards;
  GPtrArray *advice;
} UnsootLabel;

/**
 * unsoot_label_read:
 * @codes: H and P codes, apart by spaces, commas or semicolons; P codes given here
 *   are shown before those that go with the H codes
 *
 * Signs give way to stronger ones as Regulation (EC) 1272/2008, article 26, says.
 * Errors: UNSOOT_TRADE_ERROR_UNKNOWN, naming the code.
 */
gboolean unsoot_label_read (const char *codes, UnsootLabel *label, GError **error);

void unsoot_label_clear (UnsootLabel *label);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (UnsootLabel, unsoot_label_clear)
