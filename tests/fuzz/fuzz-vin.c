/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "fuzz.h"
#include "targets.h"
#include "vin.h"

/* Values and weights of 49 CFR 565.15, tables III and IV, written down another way: a
   character's place in this line, modulo ten, is its value. */
static const char line[] = "0123456789.ABCDEFGH..JKLMN.P.R..STUVWXYZ";
static const char weights[] = "8765432X098765432";

static char
expected_digit (const char *vin)
{
  int sum = 0;
  for (int i = 0; i < UNSOOT_VIN_LENGTH; i++)
    sum += (int) (strchr (line, vin[i]) - line) % 10
           * (weights[i] == 'X' ? 10 : g_ascii_digit_value (weights[i]));
  return "0123456789X"[sum % 11];
}

static void
check_years (const char *vin)
{
  for (int c = UNSOOT_WEIGHT_UNKNOWN; c <= UNSOOT_WEIGHT_8; c++)
    {
      UnsootVinYears years = unsoot_vin_model_years (vin, (UnsootWeightClass) c, 2025);
      g_autofree char *words = unsoot_vin_years_words (&years);
      FUZZ_CHECK (years.n <= 2 && (words != NULL) == (years.n > 0), "%s", vin);
      for (guint i = 0; i < years.n; i++)
        FUZZ_CHECK (years.years[i] >= 1980 && years.years[i] <= 2026, "%s: %d", vin,
                    years.years[i]);
      FUZZ_CHECK (years.n < 2 || years.years[1] == years.years[0] + 30, "%s", vin);
    }
}

static void
check_leading (const char *text, const char *vin)
{
  for (guint n = 0; n <= UNSOOT_VIN_LENGTH; n++)
    {
      g_autofree char *leading = unsoot_vin_leading (text, n);
      FUZZ_CHECK (leading == NULL || g_str_has_prefix (vin, leading), "%u of %s", n, vin);
      FUZZ_CHECK ((leading != NULL) == (g_utf8_strlen (vin, -1) >= (glong) n), "%u of %s", n, vin);
    }
}

/* Of the right form: whatever stands in position 9, the calculated digit makes it valid. */
static void
check_digit (const UnsootVinCheck *check)
{
  g_autofree char *mended = g_strdup (check->vin);
  char expected = expected_digit (check->vin);
  FUZZ_CHECK (check->calculated == expected && check->shown == check->vin[8], "%s", check->vin);
  FUZZ_CHECK ((check->verdict == UNSOOT_VIN_VALID) == (check->shown == expected), "%s", check->vin);
  mended[8] = expected;
  g_autoptr (UnsootVinCheck) again = unsoot_vin_check (mended);
  FUZZ_CHECK (again->verdict == UNSOOT_VIN_VALID, "%s", mended);
}

void
fuzz_vin (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  g_autofree char *vin = unsoot_vin_normalise (text);
  g_autoptr (UnsootVinCheck) check = unsoot_vin_check (text);

  FUZZ_CHECK ((vin != NULL) == g_utf8_validate (text, -1, NULL), "%s", text);
  FUZZ_CHECK (g_utf8_validate (check->vin, -1, NULL), "%s", check->vin);
  FUZZ_CHECK ((check->sentence == NULL) == (check->verdict == UNSOOT_VIN_VALID), "%s", text);
  FUZZ_CHECK (check->sentence == NULL || g_utf8_validate (check->sentence, -1, NULL), "%s", text);
  if (vin == NULL)
    return;
  g_autofree char *twice = unsoot_vin_normalise (vin);
  FUZZ_CHECK (strcmp (twice, vin) == 0, "%s becomes %s", vin, twice);
  check_leading (text, vin);
  check_years (vin);
  gboolean allowed = strspn (vin, "0123456789ABCDEFGHJKLMNPRSTUVWXYZ") == strlen (vin);
  gboolean formed
      = check->verdict != UNSOOT_VIN_WRONG_CHARACTER && check->verdict != UNSOOT_VIN_WRONG_LENGTH;
  FUZZ_CHECK (!formed || (allowed && strlen (vin) == UNSOOT_VIN_LENGTH), "%s", vin);
  FUZZ_CHECK (check->position >= 0 && check->position <= (int) g_utf8_strlen (vin, -1), "%s", vin);
  if (formed)
    check_digit (check);
}
