/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Exhaust smoke seen through paths of different lengths. Opacity in percent,
 * lengths in metres. Every function refuses with UNSOOT_TRADE_ERROR_RANGE what
 * no smoke meter can show. */

/* Opacity as it would be over the standard path: 40 CFR 86.884-14,
 * Ns = 100·(1 − (1 − Nm/100)^(Ls/Lm)). */
gboolean unsoot_smoke_correct (double opacity, double measured_path, double standard_path,
                               double *corrected, GError **error);

/* Light absorption coefficient in 1/m: UN Regulation 49, k = −ln(1 − N/100)/L.
 * Opacity must be below 100. */
gboolean unsoot_smoke_k (double opacity, double path, double *k, GError **error);

/* Standard exhaust pipe in metres for an engine's rated horsepower: 40 CFR 86.884-8. */
gboolean unsoot_smoke_pipe (double rated_hp, double *pipe, GError **error);
