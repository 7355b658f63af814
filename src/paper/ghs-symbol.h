/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "hazard.h"
#include "page-kit.h"

/* A hazard pictogram of the GHS, in a square of @side points: the red diamond frame with its
 * black symbol. The symbols are those that annex 1 of the GHS names (exploding bomb, flame,
 * flame over circle, gas cylinder, corrosion, skull and crossbones, exclamation mark, health
 * hazard, environment), in our own drawing. Nothing for UNSOOT_GHS_NONE. */
void unsoot_page_ghs (UnsootPageKit *kit, UnsootPictogram pictogram, double x, double y,
                      double side);
