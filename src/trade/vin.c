/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "vin.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#define CHECK_AT 8
#define CYCLE_AT 6
#define YEAR_AT 9

/* 49 CFR 565.15, table IV: the weights by position; the check digit itself counts nothing. */
static const int weights[UNSOOT_VIN_LENGTH]
    = { 8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2 };

/* 49 CFR 565.15, table III: the values of A to Z, -1 for I, O and Q. */
static const int letter_values[]
    = { 1, 2, 3, 4, 5, 6, 7, 8, -1, 1, 2, 3, 4, 5, -1, 7, -1, 9, 2, 3, 4, 5, 6, 7, 8, 9 };

/* 49 CFR 565.15, table VII: thirty years, A is 1980 and 2010. */
static const char year_codes[] = "ABCDEFGHJKLMNPRSTVWXY123456789";
#define FIRST_YEAR 1980
#define CYCLE_YEARS 30

static int
value_of (char c)
{
  if (g_ascii_isdigit (c))
    return c - '0';
  return g_ascii_isupper (c) ? letter_values[c - 'A'] : -1;
}

char *
unsoot_vin_normalise (const char *text)
{
  g_autofree char *upper = NULL;
  GString *vin = NULL;

  if (!g_utf8_validate (text, -1, NULL))
    return NULL;
  upper = g_utf8_strup (text, -1);
  vin = g_string_new (NULL);
  for (const char *p = upper; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (!g_unichar_isspace (c) && g_unichar_type (c) != G_UNICODE_DASH_PUNCTUATION)
        g_string_append_unichar (vin, c);
    }
  return g_string_free (vin, FALSE);
}

int
unsoot_vin_weighted_sum (const char *vin)
{
  int sum = 0;

  if (strlen (vin) != UNSOOT_VIN_LENGTH)
    return -1;
  for (int i = 0; i < UNSOOT_VIN_LENGTH; i++)
    {
      int value = i == CHECK_AT ? 0 : value_of (vin[i]);

      if (value < 0)
        return -1;
      sum += value * weights[i];
    }
  return sum;
}

char
unsoot_vin_check_digit (const char *vin)
{
  int sum = unsoot_vin_weighted_sum (vin);

  return sum < 0 ? '\0' : "0123456789X"[sum % 11];
}

gboolean
unsoot_vin_is_north_american (const char *vin)
{
  return vin[0] != '\0' && strchr ("123457", vin[0]) != NULL;
}

char *
unsoot_vin_leading (const char *text, guint length)
{
  g_autofree char *vin = unsoot_vin_normalise (text);

  if (vin == NULL || g_utf8_strlen (vin, -1) < (glong) length)
    return NULL;
  return g_utf8_substring (vin, 0, (glong) length);
}

static void
refuse_character (UnsootVinCheck *check, int index, const char *at)
{
  g_autofree char *shown = g_utf8_substring (at, 0, 1);

  check->verdict = UNSOOT_VIN_WRONG_CHARACTER;
  check->position = index + 1;
  if (strchr ("IOQ", *at) != NULL)
    check->sentence = g_strdup_printf (
        _ ("position %d shows %s; no VIN has I, O or Q (look again: 1 or 0?)"), index + 1, shown);
  else
    check->sentence = g_strdup_printf (
        _ ("position %d shows %s; a VIN has only digits and the letters A to Z"), index + 1, shown);
}

static gboolean
characters_are_allowed (UnsootVinCheck *check)
{
  int index = 0;

  for (const char *p = check->vin; *p != '\0'; p = g_utf8_next_char (p), index++)
    if (value_of (*p) < 0)
      {
        refuse_character (check, index, p);
        return FALSE;
      }
  return TRUE;
}

static gboolean
length_is_right (UnsootVinCheck *check)
{
  int length = (int) strlen (check->vin);

  if (length == UNSOOT_VIN_LENGTH)
    return TRUE;
  check->verdict = UNSOOT_VIN_WRONG_LENGTH;
  check->sentence
      = g_strdup_printf (ngettext ("a VIN has 17 characters; this one has %d",
                                   "a VIN has 17 characters; this one has %d", (gulong) length),
                         length);
  return FALSE;
}

static gboolean
year_code_is_allowed (UnsootVinCheck *check)
{
  char code = check->vin[YEAR_AT];

  if (!unsoot_vin_is_north_american (check->vin) || strchr (year_codes, code) != NULL)
    return TRUE;
  check->verdict = UNSOOT_VIN_WRONG_CHARACTER;
  check->position = YEAR_AT + 1;
  check->sentence
      = g_strdup_printf (_ ("position 10 shows %c; U, Z and 0 stand for no model year"), code);
  return FALSE;
}

static void
compare_check_digit (UnsootVinCheck *check)
{
  check->shown = check->vin[CHECK_AT];
  check->calculated = unsoot_vin_check_digit (check->vin);
  if (check->shown == check->calculated)
    return;
  check->position = CHECK_AT + 1;
  if (unsoot_vin_is_north_american (check->vin))
    {
      check->verdict = UNSOOT_VIN_WRONG_CHECK_DIGIT;
      /* Translators: both are single characters of the vehicle's number */
      check->sentence
          = g_strdup_printf (_ ("position 9 shows %c, %c is calculated; the error may be anywhere"),
                             check->shown, check->calculated);
      return;
    }
  check->verdict = UNSOOT_VIN_UNCHECKED;
  check->sentence = g_strdup_printf (
      _ ("position 9 shows %c, %c is calculated; a vehicle built for a market outside North "
         "America may carry no check digit: compare every character"),
      check->shown, check->calculated);
}

UnsootVinCheck *
unsoot_vin_check (const char *text)
{
  UnsootVinCheck *check = g_new0 (UnsootVinCheck, 1);

  check->vin = unsoot_vin_normalise (text);
  if (check->vin == NULL)
    {
      check->vin = g_utf8_make_valid (text, -1);
      check->verdict = UNSOOT_VIN_WRONG_CHARACTER;
      check->sentence = g_strdup (_ ("the VIN is damaged text; type it again"));
    }
  else if (characters_are_allowed (check) && length_is_right (check)
           && year_code_is_allowed (check))
    compare_check_digit (check);
  return check;
}

void
unsoot_vin_check_free (UnsootVinCheck *check)
{
  g_free (check->vin);
  g_free (check->sentence);
  g_free (check);
}

static gboolean
cycle_is_possible (const char *vin, UnsootWeightClass weight_class, int cycle)
{
  gboolean light = weight_class != UNSOOT_WEIGHT_UNKNOWN && weight_class <= UNSOOT_WEIGHT_H;

  if (!light || !unsoot_vin_is_north_american (vin))
    return TRUE;
  /* Numeric in the first thirty years, a letter in the next. */
  return g_ascii_isdigit (vin[CYCLE_AT]) ? cycle == 0 : cycle == 1;
}

UnsootVinYears
unsoot_vin_model_years (const char *vin, UnsootWeightClass weight_class, int current_year)
{
  UnsootVinYears found = { 0 };
  const char *code = NULL;

  if (strlen (vin) != UNSOOT_VIN_LENGTH)
    return found;
  code = strchr (year_codes, vin[YEAR_AT]);
  for (int cycle = 0; code != NULL && cycle < 2; cycle++)
    {
      int year = FIRST_YEAR + CYCLE_YEARS * cycle + (int) (code - year_codes);

      if (year <= current_year + 1 && cycle_is_possible (vin, weight_class, cycle))
        found.years[found.n++] = year;
    }
  return found;
}

char *
unsoot_vin_years_words (const UnsootVinYears *years)
{
  if (years->n == 0)
    return NULL;
  if (years->n == 1)
    return g_strdup_printf ("%d", years->years[0]);
  /* Translators: two possible model years, as in "1984 or 2014" */
  return g_strdup_printf (_ ("%d or %d"), years->years[0], years->years[1]);
}
