/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Student's distribution, for bands and intervals from few values. */

/* P(T ≤ t) with @freedom ≥ 1 degrees of freedom. Source: the finite sums of Abramowitz and Stegun,
 * Handbook of Mathematical Functions, 26.7.3 and 26.7.4. */
double unsoot_student_share (double t, int freedom);

/* The t below which the share @p lies, 0 < p < 1. */
double unsoot_student_quantile (double p, int freedom);
