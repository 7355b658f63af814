/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "page-kit.h"
#include "side.h"

G_BEGIN_DECLS

/* The colour of a side; ink for none. */
const UnsootTone *unsoot_page_side_tone (UnsootSide side);

/* A side's mark in a square: the fuel side's solid drop, the intake side's three waves.
 * Nothing for no side. */
void unsoot_page_side_mark (UnsootPageKit *kit, UnsootSide side, double x, double y, double square);

/* A band along a panel's edge: solid for the fuel side, hatched for the intake side. */
void unsoot_page_side_band (UnsootPageKit *kit, UnsootSide side, double x, double y, double width,
                            double height);

/* A triangle with an exclamation mark. */
void unsoot_page_warning_mark (UnsootPageKit *kit, double x, double y, double square,
                               const UnsootTone *tone);

G_END_DECLS
