/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reorder.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "trade-error.h"

/* Halving is slower than a fitted formula and exact to the last digit. */
double
unsoot_normal_quantile (double p)
{
  g_return_val_if_fail (p > 0 && p < 1, NAN);
  double low = -40, high = 40;
  for (;;)
    {
      double middle = (low + high) / 2;
      if (middle <= low || middle >= high)
        return middle;
      if (erfc (-middle / G_SQRT2) / 2 < p)
        low = middle;
      else
        high = middle;
    }
}

static gboolean
is_amount (double value)
{
  return isfinite (value) && value >= 0;
}

static gboolean
check_reorder (const UnsootReorder *r, GError **error)
{
  const char *fault = NULL;
  if (!is_amount (r->demand) || !is_amount (r->demand_sd))
    fault = _ ("The use a day and its spread can't be below zero.");
  else if (!is_amount (r->lead) || !is_amount (r->lead_sd))
    fault = _ ("The lead time and its spread can't be below zero.");
  else if (!(r->service > 0 && r->service < 1))
    fault = _ ("The service level must be above 0 and below 100 %.");
  if (fault)
    g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE, fault);
  return fault == NULL;
}

gboolean
unsoot_reorder_safety (const UnsootReorder *r, double *safety, GError **error)
{
  if (!check_reorder (r, error))
    return FALSE;
  double spread = sqrt (r->lead * r->demand_sd * r->demand_sd
                        + r->demand * r->demand * r->lead_sd * r->lead_sd);
  *safety = fmax (0, unsoot_normal_quantile (r->service) * spread);
  return TRUE;
}

gboolean
unsoot_reorder_point (const UnsootReorder *r, double *point, GError **error)
{
  double safety;
  if (!unsoot_reorder_safety (r, &safety, error))
    return FALSE;
  *point = r->lead * r->demand + safety;
  return TRUE;
}

gboolean
unsoot_order_quantity (double order_cost, double yearly_demand, double holding_cost,
                       double *quantity, GError **error)
{
  if (!(order_cost > 0 && yearly_demand > 0 && holding_cost > 0))
    {
      g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE,
                           _ ("An order quantity needs the cost of an order, the use of a year and "
                              "the cost of holding, each above zero."));
      return FALSE;
    }
  *quantity = sqrt (2 * order_cost * yearly_demand / holding_cost);
  return TRUE;
}
