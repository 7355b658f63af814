/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "usual-procedure.h"

#include <glib/gi18n-lib.h>

#include "procedure-text.h"

/* What the facts and the sides have to say for a line to stand. */
enum
{
  FUEL = 1 << 0,
  INTAKE = 1 << 1,
  HEATER = 1 << 2,
  REGENERATION = 1 << 3,
  BYPASS = 1 << 4,
  UNPLUG = 1 << 5,
  NO_LIFT_PUMP = 1 << 6,
  EGR = 1 << 7,
  NO_EGR = 1 << 8,
  COOLER = 1 << 9,
  NO_COOLER = 1 << 10,
  ROAD = 1 << 11,
  NO_ROAD = 1 << 12,
  LIFT_PUMP = 1 << 13 /* in either way */
};

/* A step as procedure-text.h writes it; or, without one, a phase with its cautions. */
typedef struct
{
  guint needs;
  const char *step;
  const char *words;
  const char *why;
  guint cautions;
} Line;

#define EVERY_LOW_POINT "every low point"
#define WORKING_PRESSURE "working pressure"

#define GET_READY                                                                                  \
  (UNSOOT_CAUTION_MAKER | UNSOOT_CAUTION_VENTILATION | UNSOOT_CAUTION_EYES_SKIN                    \
   | UNSOOT_CAUTION_FUEL_FIRE | UNSOOT_CAUTION_IN_REACH | UNSOOT_CAUTION_HOT_PARTS                 \
   | UNSOOT_CAUTION_CHOCKS)
#define AT_WORK (UNSOOT_CAUTION_VENTILATION | UNSOOT_CAUTION_FUEL_FIRE | UNSOOT_CAUTION_MOVING)
#define MIST (AT_WORK | UNSOOT_CAUTION_IN_REACH | UNSOOT_CAUTION_HOT_PARTS)
#define OPENED                                                                                     \
  (UNSOOT_CAUTION_FUEL_FIRE | UNSOOT_CAUTION_HOT_PARTS | UNSOOT_CAUTION_MOVING                     \
   | UNSOOT_CAUTION_DISPOSAL)

static const Line lines[] = {
  { 0, NULL, N_ ("Get ready"), NULL, GET_READY },
  { 0, "measure oil", N_ ("Check the oil level"), N_ ("A rise later is only seen against this"),
    0 },
  { HEATER, "disable heater", N_ ("Disable the intake heater"),
    N_ ("Mist must not find a glowing wire"), 0 },
  { REGENERATION, "disable regeneration", N_ ("Disable regeneration"), NULL, 0 },
  { FUEL, "drain tank fuel", N_ ("Drain the fuel tank"),
    N_ ("What is in it may be another vehicle’s"), 0 },
  { FUEL, "flush tank fuel", N_ ("Flush the fuel tank"), NULL, 0 },
  { FUEL, "fill tank fuel", N_ ("Fill the fuel tank with the dose"), NULL, 0 },
  { INTAKE, "drain tank intake", N_ ("Drain the intake tank"), NULL, 0 },
  { INTAKE, "flush tank intake", N_ ("Flush the intake tank"), NULL, 0 },
  { INTAKE, "fill tank intake", N_ ("Fill the intake tank with the dose"), NULL, 0 },
  { FUEL, NULL, N_ ("Connect"), NULL, OPENED },
  { FUEL | UNPLUG, "disconnect lead lift-pump", N_ ("Unplug the lift pump"),
    N_ ("Its maker forbids the bypass"), 0 },
  { FUEL, "bleed pressure", N_ ("Bleed the fuel line"), N_ ("Residual pressure sprays"), 0 },
  { FUEL, "part line vehicle-supply", N_ ("Part the vehicle’s supply line"), NULL, 0 },
  { FUEL, "part line vehicle-return", N_ ("Part the vehicle’s return line"), NULL, 0 },
  { FUEL | BYPASS, "join line bypass", N_ ("Join the bypass hose"),
    N_ ("The lift pump circulates through it"), 0 },
  { FUEL, "join line machine-supply", N_ ("Join the machine’s supply hose"), NULL, 0 },
  { FUEL, "join line machine-return", N_ ("Join the machine’s return hose"), NULL, 0 },
  { FUEL, NULL, N_ ("Fuel side"), NULL, AT_WORK },
  { FUEL, "start pump", N_ ("Start the pump at minimum pressure"), NULL, 0 },
  { FUEL, "prime pump", N_ ("Prime until no air comes back"), NULL, 0 },
  { FUEL, WORKING_PRESSURE, N_ ("Set the supply to the middle of the window"), NULL, 0 },
  { FUEL, "start key", N_ ("Key on"), NULL, 0 },
  { FUEL, "look leaks fuel", N_ ("Look for leaks: card and light"),
    N_ ("Never feel for a leak by hand"), 0 },
  { FUEL, "start engine", N_ ("Start the engine, let it idle"), NULL, 0 },
  { FUEL, "run engine fuel share 0.95 minutes 22 low-level", N_ ("Idle on cleaner"), NULL, 0 },
  { FUEL, "stop engine", N_ ("Engine off"), NULL, 0 },
  { FUEL, "stop key", N_ ("Key off"), NULL, 0 },
  { FUEL, "stop pump", N_ ("Pump off"), N_ ("Never under a running engine"), 0 },
  { FUEL, "set pressure minimum", N_ ("Pressure to minimum"), NULL, 0 },
  { FUEL, "bleed pressure", N_ ("Bleed the fuel line"), NULL, 0 },
  { FUEL, "part line machine-supply", N_ ("Part the machine’s supply hose"), NULL, 0 },
  { FUEL, "part line machine-return", N_ ("Part the machine’s return hose"), NULL, 0 },
  { FUEL | BYPASS, "part line bypass", N_ ("Part the bypass hose"), NULL, 0 },
  { FUEL, "join line vehicle-supply", N_ ("Join the vehicle’s supply line"), NULL, 0 },
  { FUEL, "join line vehicle-return", N_ ("Join the vehicle’s return line"), NULL, 0 },
  { FUEL | UNPLUG, "reconnect lead lift-pump", N_ ("Plug in the lift pump"), NULL, 0 },
  { FUEL | NO_LIFT_PUMP, "prime line vehicle-supply", N_ ("Prime by hand until it is firm"),
    N_ ("There is no lift pump"), 0 },
  { INTAKE, NULL, N_ ("Intake side"), NULL, MIST },
  { INTAKE, "take-off part intake \"intake hose\"",
    N_ ("Take the hose off behind the charge cooler"), NULL, 0 },
  { INTAKE, "fit adapter intake \"intake adapter\" at \"intake hose\"",
    N_ ("Fit the adapter in the hose’s place"), NULL, 0 },
  { INTAKE, "start key", N_ ("Key on"), NULL, 0 },
  { FUEL | INTAKE | LIFT_PUMP, "look leaks fuel", N_ ("Look for leaks: card and light"), NULL, 0 },
  { INTAKE, "start engine", N_ ("Start the engine, let it idle"), NULL, 0 },
  { FUEL | INTAKE | NO_LIFT_PUMP, "look leaks fuel", N_ ("Look for leaks as soon as it runs"), NULL,
    0 },
  { INTAKE, "set air 40 psi", N_ ("Set the air to 40 psi"), NULL, 0 },
  { INTAKE, "look leaks intake", N_ ("Look at air hose and adapter"), NULL, 0 },
  { INTAKE, "start atomiser", N_ ("Atomiser on"), N_ ("Only into a running engine"), 0 },
  { INTAKE | EGR, "run engine intake share 0.5 minutes 20",
    N_ ("Mist the first half, through the EGR valve"), NULL, 0 },
  { INTAKE | NO_EGR, "run engine intake share 0.5 minutes 20", N_ ("Mist the first half"), NULL,
    0 },
  { INTAKE | COOLER, "run engine intake share 1 minutes 20",
    N_ ("Mist the rest, through the EGR cooler"), NULL, 0 },
  { INTAKE | NO_COOLER, "run engine intake share 1 minutes 20", N_ ("Mist the rest"), NULL, 0 },
  { INTAKE, "stop atomiser", N_ ("Atomiser off"), NULL, 0 },
  { INTAKE, "set air minimum", N_ ("Air to zero"), NULL, 0 },
  { INTAKE, "bleed air", N_ ("Bleed the air"), NULL, 0 },
  { INTAKE, "stop engine", N_ ("Engine off"), NULL, 0 },
  { INTAKE, "stop key", N_ ("Key off"), NULL, 0 },
  { 0, NULL, N_ ("Put back"), NULL, OPENED },
  { INTAKE, EVERY_LOW_POINT, N_ ("Drain it"), N_ ("Liquid there locks a piston"), 0 },
  { INTAKE, "measure oil", N_ ("Check the oil level"), N_ ("Risen: change it first"), 0 },
  { INTAKE, "remove adapter \"intake adapter\"", N_ ("Take the adapter out"), NULL, 0 },
  { INTAKE, "refit part \"intake hose\"", N_ ("Refit the intake hose"), NULL, 0 },
  { HEATER, "enable heater", N_ ("Enable the intake heater"), NULL, 0 },
  { REGENERATION, "enable regeneration", N_ ("Enable regeneration"), NULL, 0 },
  { 0, NULL, N_ ("Prove it"), NULL, AT_WORK | UNSOOT_CAUTION_DISPOSAL },
  { 0, "start key", N_ ("Key on"), NULL, 0 },
  { FUEL | LIFT_PUMP, "look leaks fuel", N_ ("Look for leaks: card and light"), NULL, 0 },
  { 0, "clear codes", N_ ("Clear the codes"), NULL, 0 },
  { 0, "start engine", N_ ("Start the engine, let it idle"), NULL, 0 },
  { FUEL | NO_LIFT_PUMP, "look leaks fuel", N_ ("Look for leaks as soon as it runs"), NULL, 0 },
  { 0, "run engine minutes 5 until-clear", N_ ("Idle until the exhaust is clear"), NULL, 0 },
  { 0, "set speed raised", N_ ("Raise the speed gently"), NULL, 0 },
  { 0, "run engine minutes 3", N_ ("Hold it there"), NULL, 0 },
  { 0, "set speed idle", N_ ("Back to idle"), NULL, 0 },
  { ROAD, "drive road", N_ ("Road test, gently at first"), NULL, 0 },
  { NO_ROAD, "drive load", N_ ("Run it under load, gently at first"), NULL, 0 },
  { 0, "stop engine", N_ ("Engine off"), NULL, 0 },
  { 0, "stop key", N_ ("Key off"), NULL, 0 },
  { FUEL, "measure tank fuel", N_ ("Measure what is left in the fuel tank"), NULL, 0 },
  { FUEL, "hold tank fuel", N_ ("Keep it, labelled"), N_ ("It is never fresh again"), 0 },
  { INTAKE, "drain tank intake", N_ ("Drain the intake tank"), NULL, 0 },
  { INTAKE, "flush tank intake", N_ ("Flush the intake tank"), NULL, 0 },
};

static guint
given (const UnsootFamilyFacts *facts, gboolean fuel, gboolean intake)
{
  guint bits = 0;

  bits |= fuel ? FUEL : 0;
  bits |= intake ? INTAKE : 0;
  /* What only mist could find is left alone where there is none. */
  bits |= facts->has_heater && intake ? HEATER : 0;
  bits |= facts->has_regeneration ? REGENERATION : 0;
  bits |= !facts->has_lift_pump ? NO_LIFT_PUMP : facts->lift_pump_bypass_allowed ? BYPASS : UNPLUG;
  bits |= facts->has_lift_pump ? LIFT_PUMP : 0;
  bits |= facts->has_egr ? EGR : NO_EGR;
  bits |= facts->has_egr_cooler ? COOLER : NO_COOLER;
  bits |= facts->has_road ? ROAD : NO_ROAD;
  return bits;
}

static void
add_step (UnsootProcedure *procedure, UnsootStep *step, const Line *line)
{
  step->wording = g_strdup (_ (line->words));
  step->why = line->why != NULL ? g_strdup (_ (line->why)) : NULL;
  unsoot_procedure_add_step (procedure, step);
}

static void
add_low_points (UnsootProcedure *procedure, const UnsootFamilyFacts *facts, const Line *line)
{
  for (guint i = 0; i < facts->low_points->len; i++)
    {
      const char *name = g_ptr_array_index (facts->low_points, i);
      UnsootStep *step = unsoot_step_new (UNSOOT_ACT_DRAIN, UNSOOT_SUBJECT_LOW_POINT, name);

      /* Translators: the name of a low pipe or charge cooler */
      step->wording = g_strdup_printf (_ ("Drain: %s"), name);
      step->why = g_strdup (_ (line->why));
      unsoot_procedure_add_step (procedure, step);
    }
}

static UnsootStep *
working_pressure (const UnsootFamilyFacts *facts)
{
  UnsootStep *step = unsoot_step_new (UNSOOT_ACT_SET, UNSOOT_SUBJECT_PRESSURE, NULL);

  step->value = (facts->window_min_pa + facts->window_max_pa) / 2.0;
  step->unit = g_strdup ("psi");
  return step;
}

static const char *
title_of (gboolean fuel, gboolean intake)
{
  if (fuel && intake)
    return _ ("Both sides, fuel side first");
  return fuel ? _ ("Fuel side") : _ ("Intake side");
}

UnsootProcedure *
unsoot_usual_procedure (const UnsootFamilyFacts *facts, gboolean fuel, gboolean intake)
{
  UnsootProcedure *procedure = unsoot_procedure_new (title_of (fuel, intake));
  const guint bits = given (facts, fuel, intake);

  procedure->cleans[UNSOOT_SIDE_FUEL] = fuel;
  procedure->cleans[UNSOOT_SIDE_INTAKE] = intake;
  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      const Line *line = &lines[i];
      if ((line->needs & bits) != line->needs)
        continue;
      if (line->step == NULL)
        unsoot_procedure_add_phase (procedure, _ (line->words), line->cautions);
      else if (g_str_equal (line->step, EVERY_LOW_POINT))
        add_low_points (procedure, facts, line);
      else if (g_str_equal (line->step, WORKING_PRESSURE))
        add_step (procedure, working_pressure (facts), line);
      else
        add_step (procedure, unsoot_step_parse (line->step, NULL), line);
    }
  return procedure;
}
