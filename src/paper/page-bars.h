/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "page-kit.h"

G_BEGIN_DECLS

/* Before and after on one scale. Lengths are in the unit shown. */
typedef struct
{
  const char *title;
  const char *note; /* under the title: instrument, condition; NULL: none */
  double before, after;
  double before_tolerance, after_tolerance; /* either way; 0: not known, no whisker */
  const char *before_text, *after_text;     /* the figures as printed */
  const char *unit;
} UnsootBars;

/* Two bars at kit->y: before outlined and hatched, after solid, each with its figure and
 * whiskers as wide as the instrument may err. Values below zero grow to the left of zero. */
double unsoot_page_bars_height (UnsootPageKit *kit, const UnsootBars *bars);
void unsoot_page_bars (UnsootPageKit *kit, const UnsootBars *bars);

G_END_DECLS
