/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kit-words.h"

#include <glib/gi18n-lib.h>

const UnsootSlug unsoot_kit_kinds[] = { { 0, "gasket", N_ ("Gasket") },
                                        { 1, "o-ring", N_ ("O-ring") },
                                        { 2, "filter", N_ ("Filter") },
                                        { 0, NULL, NULL } };
