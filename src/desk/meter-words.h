/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "vehicle-row.h"

/* "128,400 mi" as it was read, the unit in a lighter tone; markup, the caller's to free. */
char *unsoot_meter_markup (const UnsootMeterReadingRow *meter);
