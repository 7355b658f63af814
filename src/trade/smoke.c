/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "smoke.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "trade-error.h"

#define METRES_PER_INCH 0.0254

static gboolean
refuse (GError **error, const char *sentence)
{
  g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE, sentence);
  return FALSE;
}

static gboolean
check_path (double path, GError **error)
{
  if (isfinite (path) && path > 0)
    return TRUE;
  return refuse (error, _ ("The smoke meter's path must be longer than nothing."));
}

gboolean
unsoot_smoke_correct (double opacity, double measured_path, double standard_path, double *corrected,
                      GError **error)
{
  if (!(opacity >= 0 && opacity <= 100))
    return refuse (error, _ ("Opacity must be between 0 and 100 %."));
  if (!check_path (measured_path, error) || !check_path (standard_path, error))
    return FALSE;
  *corrected = 100 * (1 - pow (1 - opacity / 100, standard_path / measured_path));
  return TRUE;
}

gboolean
unsoot_smoke_k (double opacity, double path, double *k, GError **error)
{
  if (!(opacity >= 0 && opacity < 100))
    return refuse (error, _ ("Opacity must be at least 0 and below 100 % for a coefficient."));
  if (!check_path (path, error))
    return FALSE;
  *k = fabs (log1p (-opacity / 100)) / path;
  return TRUE;
}

gboolean
unsoot_smoke_pipe (double rated_hp, double *pipe, GError **error)
{
  static const double steps[][2]
      = { { 50, 1.5 }, { 100, 2 }, { 200, 3 }, { 300, 4 }, { 500, 5 }, { HUGE_VAL, 6 } };
  if (!(isfinite (rated_hp) && rated_hp > 0))
    return refuse (error, _ ("The engine's rated horsepower must be above zero."));
  gsize i = 0;
  while (rated_hp >= steps[i][0])
    i++;
  *pipe = steps[i][1] * METRES_PER_INCH;
  return TRUE;
}
