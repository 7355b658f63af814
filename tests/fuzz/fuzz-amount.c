/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "fuzz.h"
#include "targets.h"
#include "unit-text.h"

static void
check_number (const char *text)
{
  GError *error = NULL;
  double number = 4711, again = 4712;
  g_autofree char *around = g_strdup_printf ("  %s\t", text);
  gboolean good = unsoot_number_parse (text, &number, &error);
  fuzz_answer (good, &error);
  FUZZ_CHECK (good || number == 4711, "“%s” is refused and taken", text);
  FUZZ_CHECK (!good || (isfinite (number) && fabs (number) < 1e15), "“%s” is %g", text, number);
  FUZZ_CHECK (unsoot_number_parse (around, &again, NULL) == good, "“%s”", around);
  FUZZ_CHECK (!good || again == number, "“%s” is %g or %g", text, number, again);
}

/* What is shown can be typed, as far as its decimals go; digits beyond fifteen are refused. */
static void
check_shown (const UnsootTyped *typed)
{
  UnsootTyped again = { 0 };
  GError *error = NULL;
  UnsootQuantity quantity = unsoot_unit_quantity (typed->unit);
  g_autofree char *shown = unsoot_unit_format (typed->si, typed->unit, 6);
  gboolean good = unsoot_typed_parse (shown, quantity, UNSOOT_UNIT_NONE, &again, &error);
  fuzz_answer (good, &error);
  if (fabs (typed->value) >= 1e9)
    return;
  double size
      = fabs (unsoot_unit_to_si (typed->unit, 5.01e-7) - unsoot_unit_to_si (typed->unit, 0));
  /* A temperature may be rounded to below the coldest there is. */
  FUZZ_CHECK (good || quantity == UNSOOT_QUANTITY_TEMPERATURE, "“%s” can't be read", shown);
  FUZZ_CHECK (!good || again.unit == typed->unit, "“%s” is in other units", shown);
  FUZZ_CHECK (!good || fabs (again.si - typed->si) <= size + fabs (typed->si) * 1e-12,
              "“%s” is %.17g, not %.17g", shown, again.si, typed->si);
}

static void
check_typed (const char *text, UnsootQuantity quantity, UnsootUnit assumed)
{
  GError *error = NULL;
  UnsootTyped typed = { -1, UNSOOT_UNIT_NONE, -1 };
  gboolean good = unsoot_typed_parse (text, quantity, assumed, &typed, &error);
  fuzz_answer (good, &error);
  if (!good)
    {
      FUZZ_CHECK (typed.unit == UNSOOT_UNIT_NONE && typed.si == -1, "“%s” is refused and taken",
                  text);
      return;
    }
  FUZZ_CHECK (typed.unit != UNSOOT_UNIT_NONE && unsoot_unit_quantity (typed.unit) == quantity,
              "“%s” is of other units", text);
  FUZZ_CHECK (isfinite (typed.si), "“%s” is %g", text, typed.si);
  FUZZ_CHECK (typed.si == unsoot_unit_to_si (typed.unit, typed.value), "“%s”", text);
  check_shown (&typed);
}

static void
check_volume (const char *text, UnsootUnit assumed)
{
  GError *error = NULL;
  UnsootTyped typed = { 0 };
  gint64 ml = -1;
  gboolean good = unsoot_volume_parse (text, assumed, &typed, &ml, &error);
  fuzz_answer (good, &error);
  FUZZ_CHECK (good == (ml != -1), "“%s” is refused and taken", text);
  if (good)
    FUZZ_CHECK (ml >= 0 && ml <= 10000000000 && fabs ((double) ml - typed.si * 1e6) <= 0.5001,
                "“%s” is %" G_GINT64_FORMAT " mL", text, ml);
}

void
fuzz_amount (const guint8 *data, gsize size)
{
  guint8 choice = fuzz_byte (&data, &size);
  UnsootUnit assumed = (UnsootUnit) (choice % UNSOOT_N_UNITS);
  UnsootQuantity quantity
      = assumed != UNSOOT_UNIT_NONE ? unsoot_unit_quantity (assumed) : UNSOOT_QUANTITY_VOLUME;
  g_autofree char *text = fuzz_text (data, size);

  check_number (text);
  check_typed (text, quantity, assumed);
  check_typed (text, quantity, UNSOOT_UNIT_NONE);
  check_volume (text, assumed);
  FUZZ_CHECK (assumed == UNSOOT_UNIT_NONE
                  || unsoot_unit_from_words (unsoot_unit_symbol (assumed)) == assumed,
              "%s", unsoot_unit_symbol (assumed));
}
