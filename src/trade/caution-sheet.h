/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "caution.h"
#include "side.h"

/* Where each caution is shown. Screen and paper ask here, so that they agree. */
typedef enum
{
  UNSOOT_SHEET_WORK_ORDER,
  UNSOOT_SHEET_BAY,
  UNSOOT_SHEET_TAG,      /* on a vehicle that leaves or stays in pieces */
  UNSOOT_SHEET_CUSTOMER, /* report and invoice: what the owner should know */
} UnsootSheet;

#define UNSOOT_SHEETS 4

/* Two or three words to head the caution with, translated. */
const char *unsoot_caution_title (UnsootCaution caution);

/* UnsootCaution bits for work on @side on @sheet; NONE for work on both or neither. */
guint unsoot_caution_sheet (UnsootSheet sheet, UnsootSide side);

/* The sentence that closes every sheet of cautions, translated. */
const char *unsoot_caution_closing (void);
