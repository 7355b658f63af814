/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* When to order and how much, from demand and lead time. Any unit of volume,
 * as long as it is one; days for time. */

/**
 * UnsootReorder:
 * @demand: mean use a day
 * @demand_sd: its standard deviation
 * @lead: mean days from order to shelf
 * @lead_sd: their standard deviation, 0 where deliveries keep their time
 * @service: the share of order cycles that must not run short, above 0, below 1
 */
typedef struct
{
  double demand;
  double demand_sd;
  double lead;
  double lead_sd;
  double service;
} UnsootReorder;

/* The standard normal deviate with probability p below it; 0 < p < 1. */
double unsoot_normal_quantile (double p);

/* z·√(L·σd² + d²·σL²); never below zero, though a service under one half asks for less. */
gboolean unsoot_reorder_safety (const UnsootReorder *reorder, double *safety, GError **error);

/* L·d and the safety stock. */
gboolean unsoot_reorder_point (const UnsootReorder *reorder, double *point, GError **error);

/* √(2KD/h): K the cost of one order, D the use of a year, h the cost of holding one
 * unit for a year. FALSE with RANGE unless all three are above zero. */
gboolean unsoot_order_quantity (double order_cost, double yearly_demand, double holding_cost,
                                double *quantity, GError **error);
