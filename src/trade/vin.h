/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "weight-class.h"

#define UNSOOT_VIN_LENGTH 17
/* Leading characters that say the maker, and the maker with model and engine. */
#define UNSOOT_VIN_MAKER 3
#define UNSOOT_VIN_MODEL 8

/**
 * UnsootVinVerdict:
 * @UNSOOT_VIN_VALID: form and check digit are right
 * @UNSOOT_VIN_UNCHECKED: form is right, the check digit is not, and the maker is
 *   not North American, so that it may carry none: a warning, never a refusal
 * @UNSOOT_VIN_WRONG_LENGTH: not 17 characters
 * @UNSOOT_VIN_WRONG_CHARACTER: a character that no VIN has in that position
 * @UNSOOT_VIN_WRONG_CHECK_DIGIT: position 9 isn't what the other sixteen give
 */
typedef enum
{
  UNSOOT_VIN_VALID,
  UNSOOT_VIN_UNCHECKED,
  UNSOOT_VIN_WRONG_LENGTH,
  UNSOOT_VIN_WRONG_CHARACTER,
  UNSOOT_VIN_WRONG_CHECK_DIGIT,
} UnsootVinVerdict;

/**
 * UnsootVinCheck:
 * @verdict: what was found, the first of what is wrong
 * @vin: as typed, in capitals, without spaces and dashes
 * @position: of the wrong character, 1 to 17 (9 for the check digit), else 0
 * @shown: the check digit that the VIN shows, or 0 when it can't be told
 * @calculated: the check digit that follows from the rest, or 0
 * @sentence: what is wrong, for a person; %NULL when valid
 */
typedef struct
{
  UnsootVinVerdict verdict;
  char *vin;
  int position;
  char shown;
  char calculated;
  char *sentence;
} UnsootVinCheck;

/* Checks @text after 49 CFR 565.15 and 565.13. Free with unsoot_vin_check_free (). */
UnsootVinCheck *unsoot_vin_check (const char *text);
void unsoot_vin_check_free (UnsootVinCheck *check);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootVinCheck, unsoot_vin_check_free)

/* Capitals, without spaces and dashes; %NULL where @text is not UTF-8. */
char *unsoot_vin_normalise (const char *text);

/* Sum of value × weight over a normalised VIN, whatever stands in position 9; -1 if malformed. */
int unsoot_vin_weighted_sum (const char *vin);

/* '0' … '9' or 'X' for a normalised VIN, whatever stands in position 9; 0 if malformed. */
char unsoot_vin_check_digit (const char *vin);

/* Whether the maker's region must use a check digit: first character 1 to 5, or 7. */
gboolean unsoot_vin_is_north_american (const char *vin);

/* The first @length characters of @text once normalised, or NULL if it has fewer. */
char *unsoot_vin_leading (const char *text, guint length);

/**
 * UnsootVinYears:
 * @n: how many model years are possible: 0, 1 or 2
 * @years: those years, ascending
 */
typedef struct
{
  guint n;
  int years[2];
} UnsootVinYears;

/**
 * unsoot_vin_model_years:
 * @vin: normalised, 17 characters
 * @weight_class: GVWR class if known; up to class H, position 7 tells the cycle
 * @current_year: a model year may run one ahead of it
 *
 * Years that position 10 can mean (49 CFR 565.15, table VII). For a maker outside
 * North America position 7 is not relied on.
 */
UnsootVinYears unsoot_vin_model_years (const char *vin, UnsootWeightClass weight_class,
                                       int current_year);

/* "2014", "1984 or 2014", or NULL for none. Free it. */
char *unsoot_vin_years_words (const UnsootVinYears *years);
