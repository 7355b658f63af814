/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "meter-words.h"

#include "format.h"

char *
unsoot_meter_markup (const UnsootMeterReadingRow *meter)
{
  g_autofree char *number = unsoot_format_number (meter->typed, 1);

  return unsoot_format_with_unit (number, meter->unit);
}
