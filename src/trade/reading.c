/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reading.h"

#include <glib/gi18n-lib.h>

const UnsootSlug unsoot_reading_kinds[] = {
  { UNSOOT_READING_OPACITY, "opacity", N_ ("Smoke opacity") },
  { UNSOOT_READING_AIR_IDLE, "air-idle", N_ ("Air flow at idle") },
  { UNSOOT_READING_AIR_2000, "air-2000", N_ ("Air flow at 2,000 rpm") },
  { UNSOOT_READING_MANIFOLD, "manifold", N_ ("Manifold pressure") },
  { UNSOOT_READING_BOOST, "boost", N_ ("Boost under load") },
  { UNSOOT_READING_EGR_COMMANDED, "egr-commanded", N_ ("EGR commanded") },
  { UNSOOT_READING_EGR_ACTUAL, "egr-actual", N_ ("EGR actual") },
  { UNSOOT_READING_EGR_ERROR, "egr-error", N_ ("EGR error") },
  { UNSOOT_READING_EGR_COOLER, "egr-cooler", N_ ("EGR cooler outlet temperature") },
  { UNSOOT_READING_DPF, "dpf", N_ ("DPF pressure difference") },
  { UNSOOT_READING_RAIL, "rail", N_ ("Rail pressure") },
  { UNSOOT_READING_RAIL_DUTY, "rail-duty", N_ ("Rail regulator duty") },
  { UNSOOT_READING_IDLE_SCATTER, "idle-scatter", N_ ("Idle speed scatter") },
  { UNSOOT_READING_BALANCE, "balance", N_ ("Cylinder balance") },
  { UNSOOT_READING_RETURN_FLOW, "return-flow", N_ ("Injector return flow") },
  { UNSOOT_READING_CRANK, "crank", N_ ("Crank time") },
  { UNSOOT_READING_OIL, "oil", N_ ("Oil level") },
  { UNSOOT_READING_FUEL_USE, "fuel-use", N_ ("Fuel use") },
  { 0, NULL, NULL },
};

#define RPM UNSOOT_DEPENDS_RPM
#define LOAD UNSOOT_DEPENDS_LOAD
#define COOLANT UNSOOT_DEPENDS_COOLANT
#define EGR UNSOOT_DEPENDS_EGR
#define REGENERATION UNSOOT_DEPENDS_REGENERATION
#define BAROMETER UNSOOT_DEPENDS_BAROMETER
#define AMBIENT UNSOOT_DEPENDS_AMBIENT

/* Tolerances are from memory: what such instruments commonly claim. A shop
 * enters its own instrument's. */
static const UnsootReadingFacts facts[UNSOOT_READING_KINDS] = {
  [UNSOOT_READING_OPACITY]
  = { UNSOOT_UNIT_PERCENT, UNSOOT_BETTER_LOWER, 2, 0, COOLANT, REGENERATION | BAROMETER | AMBIENT,
      N_ ("Behind a particulate filter opacity is near zero whatever was done.") },
  [UNSOOT_READING_AIR_IDLE]
  = { UNSOOT_UNIT_G_S, UNSOOT_BETTER_HIGHER, 0, 0.03, RPM | EGR,
      COOLANT | REGENERATION | BAROMETER | AMBIENT,
      N_ ("Air follows the weather and what the EGR valve lets in; a dirty sensor reads wrong "
          "before and after.") },
  [UNSOOT_READING_AIR_2000]
  = { UNSOOT_UNIT_G_S, UNSOOT_BETTER_HIGHER, 0, 0.03, RPM | EGR,
      LOAD | COOLANT | REGENERATION | BAROMETER | AMBIENT,
      N_ ("Air follows the weather, the load and what the EGR valve lets in.") },
  [UNSOOT_READING_MANIFOLD]
  = { UNSOOT_UNIT_KPA, UNSOOT_BETTER_NONE, 1e3, 0, RPM, LOAD | EGR | REGENERATION | BAROMETER,
      N_ ("Manifold pressure is regulated: higher is neither better nor worse by itself.") },
  [UNSOOT_READING_BOOST]
  = { UNSOOT_UNIT_PSI, UNSOOT_BETTER_HIGHER, 2e3, 0, RPM | LOAD, REGENERATION | BAROMETER | AMBIENT,
      N_ ("A turbocharger that already reached its target shows no more after cleaning.") },
  [UNSOOT_READING_EGR_COMMANDED]
  = { UNSOOT_UNIT_PERCENT, UNSOOT_BETTER_NONE, 0.4, 0, RPM, LOAD | COOLANT | REGENERATION,
      N_ ("What the computer asks for is no measure of what flows.") },
  [UNSOOT_READING_EGR_ACTUAL]
  = { UNSOOT_UNIT_PERCENT, UNSOOT_BETTER_NONE, 0.4, 0, RPM, LOAD | COOLANT | REGENERATION,
      N_ ("It says where the valve stands, not how much gas passes it.") },
  [UNSOOT_READING_EGR_ERROR]
  = { UNSOOT_UNIT_PERCENT, UNSOOT_BETTER_NEARER_ZERO, 0.8, 0, RPM, LOAD | COOLANT | REGENERATION,
      N_ ("A valve that follows well may still pass little gas through a blocked cooler.") },
  [UNSOOT_READING_EGR_COOLER]
  = { UNSOOT_UNIT_CELSIUS, UNSOOT_BETTER_LOWER, 2, 0, RPM | LOAD | EGR | COOLANT,
      REGENERATION | AMBIENT,
      N_ ("With the valve shut no gas flows, and the temperature says nothing of the cooler.") },
  [UNSOOT_READING_DPF]
  = { UNSOOT_UNIT_KPA, UNSOOT_BETTER_LOWER, 100, 0.02, RPM | REGENERATION, LOAD | COOLANT,
      N_ ("A regeneration between the readings empties the filter without any cleaning; ash "
          "stays.") },
  [UNSOOT_READING_RAIL]
  = { UNSOOT_UNIT_MPA, UNSOOT_BETTER_NONE, 1e6, 0, RPM, LOAD | COOLANT | REGENERATION,
      N_ ("Rail pressure is regulated: it shows faults of the pump, not deposits.") },
  [UNSOOT_READING_RAIL_DUTY]
  = { UNSOOT_UNIT_PERCENT, UNSOOT_BETTER_NONE, 0.5, 0, RPM, LOAD | COOLANT | REGENERATION,
      N_ ("A changed duty may be wear, leakage or fuel temperature.") },
  [UNSOOT_READING_IDLE_SCATTER]
  = { UNSOOT_UNIT_RPM, UNSOOT_BETTER_LOWER, 2, 0, COOLANT, RPM | LOAD | REGENERATION,
      N_ ("The computer evens idle out; mounts and compression shake an engine as well.") },
  [UNSOOT_READING_BALANCE]
  = { UNSOOT_UNIT_PERCENT, UNSOOT_BETTER_NEARER_ZERO, 1, 0, COOLANT, RPM | REGENERATION,
      N_ ("Uneven compression or a worn injector stays uneven after cleaning.") },
  [UNSOOT_READING_RETURN_FLOW]
  = { UNSOOT_UNIT_L_H, UNSOOT_BETTER_LOWER, 0, 0.05, RPM, LOAD | COOLANT,
      N_ ("Return flow shows wear; cleaning does not mend worn injectors.") },
  [UNSOOT_READING_CRANK]
  = { UNSOOT_UNIT_S, UNSOOT_BETTER_LOWER, 0.2, 0, COOLANT, AMBIENT,
      N_ ("Battery, glow plugs and air in the fuel lengthen cranking as well.") },
  [UNSOOT_READING_OIL]
  = { UNSOOT_UNIT_PERCENT, UNSOOT_BETTER_NONE, 5, 0, 0, COOLANT,
      N_ ("Share of the way between the marks. A level that rose means fuel or cleaner in the oil: "
          "change it.") },
  [UNSOOT_READING_FUEL_USE]
  = { UNSOOT_UNIT_L_H, UNSOOT_BETTER_LOWER, 0, 0.03, RPM | LOAD, COOLANT | REGENERATION | AMBIENT,
      N_ ("Route, load, tyres, weather and driver change fuel use more than cleaning does.") },
};

UnsootReadingFacts
unsoot_reading_facts (UnsootReadingKind kind)
{
  UnsootReadingFacts copy = facts[kind];
  copy.limits = _ (copy.limits);
  return copy;
}

UnsootQuantity
unsoot_reading_quantity (UnsootReadingKind kind)
{
  return unsoot_unit_quantity (facts[kind].shown);
}

char *
unsoot_reading_format (UnsootReadingKind kind, double value)
{
  UnsootUnit unit = facts[kind].shown;
  return unsoot_unit_format (value, unit, unsoot_unit_decimals (unit));
}
