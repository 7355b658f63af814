/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A second opinion on a procedure, written from the eight rules without the
 * checker: it keeps no state at all. Whatever it wants to know it finds by
 * looking back through the steps done so far. Slow, and meant to be simple. */
#pragma once

#include "procedure.h"

#include <math.h>
#include <string.h>

typedef struct
{
  const UnsootProcedure *procedure;
  const UnsootFamilyFacts *facts;
} Judge;

#define A(name) UNSOOT_ACT_##name
#define S(name) UNSOOT_SUBJECT_##name

static const UnsootStep *
at (const Judge *j, int i)
{
  return j->procedure->steps->pdata[i];
}

/* The latest step before END that does ACT to SUBJECT named NAME (NULL: any); -1: never. */
static int
last (const Judge *j, int end, UnsootAct act, UnsootSubject subject, const char *name)
{
  for (int i = end - 1; i >= 0; i--)
    if (at (j, i)->act == act && at (j, i)->subject == subject
        && (name == NULL || g_strcmp0 (at (j, i)->name, name) == 0))
      return i;
  return -1;
}

static int
last_side (const Judge *j, int end, UnsootAct act, UnsootSubject subject, UnsootSide side)
{
  for (int i = end - 1; i >= 0; i--)
    if (at (j, i)->act == act && at (j, i)->subject == subject && at (j, i)->side == side)
      return i;
  return -1;
}

static gboolean
on (const Judge *j, int end, UnsootSubject subject)
{
  return last (j, end, A (START), subject, NULL) > last (j, end, A (STOP), subject, NULL);
}

static gboolean
joined (const Judge *j, int end, const char *line)
{
  int join = last (j, end, A (JOIN), S (LINE), line),
      part = last (j, end, A (PART), S (LINE), line);

  return join == part ? g_str_has_prefix (line, "vehicle") : join > part;
}

/* Done and not undone since: a part off, a tool on, a lead off, a valve open. */
static gboolean
outstanding (const Judge *j, int end, UnsootAct act, UnsootAct undo, UnsootSubject subject,
             const char *name)
{
  return last (j, end, act, subject, name) > last (j, end, undo, subject, name);
}

static double
set_to (const Judge *j, int end, UnsootSubject subject)
{
  int i = last (j, end, A (SET), subject, NULL);

  return i < 0 ? 0 : at (j, i)->value;
}

static gboolean
on_machine (const Judge *j, int end)
{
  return joined (j, end, "machine-supply") && joined (j, end, "machine-return");
}

static gboolean
on_vehicle (const Judge *j, int end)
{
  return joined (j, end, "vehicle-supply") && joined (j, end, "vehicle-return");
}

static gboolean
lift_unplugged (const Judge *j, int end)
{
  return outstanding (j, end, A (DISCONNECT), A (RECONNECT), S (LEAD), "lift-pump");
}

static gboolean
lift_live (const Judge *j, int end)
{
  return j->facts->has_lift_pump && on (j, end, S (KEY)) && !lift_unplugged (j, end);
}

static gboolean
air_is_bled (const Judge *j, int end)
{
  for (int i = end - 1; i >= 0; i--)
    if (at (j, i)->act == A (BLEED) && at (j, i)->subject == S (AIR))
      return TRUE;
    else if (at (j, i)->act == A (SET) && at (j, i)->subject == S (AIR) && at (j, i)->value > 0)
      return FALSE;
  return TRUE;
}

static gboolean
fuel_is_bled (const Judge *j, int end)
{
  for (int i = end - 1; i >= 0; i--)
    {
      const UnsootStep *s = at (j, i);
      if (s->act == A (BLEED) && s->subject == S (PRESSURE))
        return TRUE;
      if (s->act == A (START) && (s->subject == S (PUMP) || s->subject == S (ENGINE)))
        return FALSE;
      if (s->act == A (START) && s->subject == S (KEY) && lift_live (j, i + 1))
        return FALSE;
    }
  return FALSE; /* it came in on its own wheels, with pressure in its lines */
}

static gboolean
primed (const Judge *j, int end)
{
  for (int i = end - 1; i >= 0; i--)
    {
      const UnsootStep *s = at (j, i);
      if (s->act == A (PRIME) && s->subject == S (PUMP))
        return TRUE;
      if (s->subject == S (LINE) && s->act != A (PRIME) && g_str_has_prefix (s->name, "machine"))
        return FALSE;
      if (s->act == A (DRAIN) && s->subject == S (TANK) && s->side == UNSOOT_SIDE_FUEL)
        return FALSE;
    }
  return FALSE;
}

/* 'u'nknown, 'e'mpty, 'c'lean, 'f'resh, 'r'eturned, 'h'eld. */
static char
in_tank (const Judge *j, int end, UnsootSide side)
{
  for (int i = end - 1; i >= 0; i--)
    {
      const UnsootStep *s = at (j, i);
      if (s->act == A (START) && s->subject == S (ENGINE) && side == UNSOOT_SIDE_FUEL
          && on_machine (j, i))
        return 'r';
      if (s->subject != S (TANK) || s->side != side)
        continue;
      if (s->act == A (HOLD))
        return 'h';
      if (s->act == A (FILL))
        return 'f';
      if (s->act == A (FLUSH))
        return 'c';
      if (s->act == A (DRAIN))
        return in_tank (j, i, side) == 'c' ? 'c' : 'e';
    }
  return 'u';
}

/* How much of the dose has been run since the tank was last filled from clean. */
static double
share_run (const Judge *j, int end, UnsootSide side)
{
  for (int i = end - 1; i >= 0; i--)
    {
      const UnsootStep *s = at (j, i);
      if (s->act == A (RUN) && s->side == side)
        return s->share;
      if (s->act == A (FILL) && s->side == side && in_tank (j, i, side) == 'c')
        return 0;
    }
  return 0;
}

static double
ml_in_tank (const Judge *j, int end, UnsootSide side)
{
  double ml = 0, dose = (double) j->facts->dose_ml[side];

  for (int i = 0; i < end; i++)
    {
      const UnsootStep *s = at (j, i);
      if (s->side != side)
        continue;
      if (s->act == A (DRAIN) && s->subject == S (TANK))
        ml = 0;
      else if (s->act == A (FILL))
        ml += round (dose * (isnan (s->share) ? 1 : s->share));
      else if (s->act == A (RUN))
        ml -= round (dose * (s->share - share_run (j, i, side)));
    }
  return ml;
}

static gboolean
part_of (const Judge *j, int end, const char *name, UnsootSide side)
{
  int i = last (j, end, A (TAKE_OFF), S (PART), name);

  return i >= 0 && at (j, i)->side == side;
}

static gboolean
adapter_of (const Judge *j, int end, const char *name, UnsootSide side)
{
  int i = last (j, end, A (FIT), S (ADAPTER), name);

  return i >= 0 && at (j, i)->side == side;
}

/* Does step I touch the fuel lines, or raise their pressure? */
static gboolean
touches_fuel (const Judge *j, int i)
{
  const UnsootStep *s = at (j, i);

  if (s->act == A (JOIN) || s->act == A (PART))
    return TRUE;
  if (s->act == A (START) && s->subject == S (PUMP))
    return TRUE;
  if (s->act == A (SET) && s->subject == S (PRESSURE))
    return s->value > set_to (j, i, S (PRESSURE));
  if (s->act == A (REPLACE) && s->subject == S (FILTER))
    return s->side == UNSOOT_SIDE_FUEL;
  if (s->act == A (TAKE_OFF))
    return s->side == UNSOOT_SIDE_FUEL;
  if (s->act == A (REFIT))
    return part_of (j, i, s->name, UNSOOT_SIDE_FUEL);
  if (s->subject == S (ADAPTER))
    return s->act == A (FIT) ? s->side == UNSOOT_SIDE_FUEL
                             : adapter_of (j, i, s->name, UNSOOT_SIDE_FUEL);
  return FALSE;
}

static gboolean
fuel_look_due (const Judge *j, int end)
{
  for (int i = end - 1; i >= 0; i--)
    if (at (j, i)->act == A (LOOK) && at (j, i)->side == UNSOOT_SIDE_FUEL)
      return FALSE;
    else if (touches_fuel (j, i))
      return TRUE;
  return FALSE;
}

static gboolean
intake_adapter_on (const Judge *j, int end)
{
  for (int i = end - 1; i >= 0; i--)
    if (at (j, i)->act == A (FIT) && at (j, i)->subject == S (ADAPTER)
        && at (j, i)->side == UNSOOT_SIDE_INTAKE
        && last (j, end, A (REMOVE), S (ADAPTER), at (j, i)->name) < i)
      return TRUE;
  return FALSE;
}

static gboolean
air_look_due (const Judge *j, int end)
{
  for (int i = end - 1; i >= 0; i--)
    {
      const UnsootStep *s = at (j, i);
      if (s->act == A (LOOK) && s->side == UNSOOT_SIDE_INTAKE)
        return FALSE;
      if (s->act == A (SET) && s->subject == S (AIR) && s->value > set_to (j, i, S (AIR)))
        return TRUE;
      if (s->subject != S (ADAPTER) || !adapter_of (j, i + 1, s->name, UNSOOT_SIDE_INTAKE))
        continue;
      return s->act == A (FIT) || intake_adapter_on (j, i + 1);
    }
  return FALSE;
}

/* The latest moment that left liquid in the intake: mist, or a soak in place. */
static int
last_wet (const Judge *j, int end)
{
  for (int i = end - 1; i >= 0; i--)
    {
      const UnsootStep *s = at (j, i);
      if (s->act == A (START) && s->subject == S (ATOMISER))
        return i;
      if (s->act == A (SOAK) && !outstanding (j, i, A (TAKE_OFF), A (REFIT), S (PART), s->name))
        return i;
    }
  return -1;
}

static gboolean
drained (const Judge *j, int end)
{
  for (guint p = 0; p < j->facts->low_points->len; p++)
    if (last (j, end, A (DRAIN), S (LOW_POINT), j->facts->low_points->pdata[p]) < last_wet (j, end))
      return FALSE;
  return TRUE;
}

static gboolean
oil_read (const Judge *j, int end)
{
  int read = last (j, end, A (MEASURE), S (OIL), NULL);

  return read >= last_wet (j, end) && read >= last (j, end, A (REPLACE), S (OIL), NULL);
}

static gboolean
raised (const Judge *j, int end)
{
  int speed = last (j, end, A (SET), S (SPEED), NULL);

  return on (j, end, S (ENGINE)) && speed > last (j, end, A (START), S (ENGINE), NULL)
         && g_str_equal (at (j, speed)->name, "raised");
}

static gboolean
idled (const Judge *j, int end)
{
  int wet = last_wet (j, end);

  if (wet < 0)
    return TRUE;
  for (int i = end - 1; i > wet; i--)
    if (at (j, i)->act == A (RUN) && at (j, i)->side == UNSOOT_SIDE_NONE && !raised (j, i)
        && drained (j, i) && oil_read (j, i))
      return TRUE;
  return FALSE;
}

static gboolean
raised_since_wet (const Judge *j, int end)
{
  return last_wet (j, end) < 0 || last (j, end, A (SET), S (SPEED), "raised") > last_wet (j, end);
}

static gboolean
stopped (const Judge *j, int end)
{
  return !on (j, end, S (ATOMISER)) && !on (j, end, S (ENGINE)) && !on (j, end, S (KEY));
}

static gboolean
machine_off (const Judge *j, int end)
{
  return stopped (j, end) && !on (j, end, S (PUMP)) && set_to (j, end, S (AIR)) <= 0
         && air_is_bled (j, end);
}

static gboolean
at_rest (const Judge *j, int end)
{
  return machine_off (j, end) && set_to (j, end, S (PRESSURE)) <= 0 && fuel_is_bled (j, end);
}

static gboolean
rest_for (const Judge *j, int end, UnsootSide side)
{
  if (side == UNSOOT_SIDE_FUEL)
    return at_rest (j, end);
  return side == UNSOOT_SIDE_INTAKE ? machine_off (j, end) : stopped (j, end);
}

/* Is anything fitted at PLACE? */
static gboolean
carries (const Judge *j, int end, const char *place)
{
  for (int i = 0; i < end; i++)
    if (at (j, i)->act == A (FIT) && g_strcmp0 (at (j, i)->place, place) == 0
        && last (j, end, A (REMOVE), at (j, i)->subject, at (j, i)->name) < i)
      return TRUE;
  return FALSE;
}

static gboolean
gasket_is_new (const Judge *j, int end, const char *part)
{
  int off = last (j, end, A (TAKE_OFF), S (PART), part);

  if (!at (j, off)->new_gasket)
    return TRUE;
  for (int i = off; i < end; i++)
    if (at (j, i)->act == A (REPLACE) && at (j, i)->subject == S (GASKET)
        && g_str_equal (at (j, i)->place != NULL ? at (j, i)->place : at (j, i)->name, part))
      return TRUE;
  return FALSE;
}

static gboolean
fuel_part_off (const Judge *j, int end)
{
  for (int i = 0; i < end; i++)
    if (at (j, i)->act == A (TAKE_OFF) && at (j, i)->side == UNSOOT_SIDE_FUEL
        && outstanding (j, end, A (TAKE_OFF), A (REFIT), S (PART), at (j, i)->name))
      return TRUE;
  return FALSE;
}

static gboolean
breathes (const Judge *j, int end)
{
  for (int i = 0; i < end; i++)
    {
      const UnsootStep *s = at (j, i);
      if (s->side != UNSOOT_SIDE_INTAKE)
        continue;
      if (s->act == A (FIT) && s->subject == S (GUARD) && s->closes
          && last (j, end, A (REMOVE), S (GUARD), s->name) < i)
        return FALSE;
      if (s->act == A (TAKE_OFF) && !carries (j, end, s->name)
          && last (j, end, A (REFIT), S (PART), s->name) < i)
        return FALSE;
    }
  return TRUE;
}

static gboolean
under_pressure (const Judge *j, int end)
{
  if (on_machine (j, end))
    return on (j, end, S (PUMP)) && set_to (j, end, S (PRESSURE)) > 0
           && (lift_live (j, end) || !joined (j, end, "bypass"));
  return on_vehicle (j, end) && (lift_live (j, end) || on (j, end, S (ENGINE)));
}

static gboolean
looks_done (const Judge *j, int end)
{
  return !fuel_look_due (j, end) && !(air_look_due (j, end) && set_to (j, end, S (AIR)) > 0);
}

static gboolean
has (const char *text)
{
  return text != NULL && *text != '\0';
}

/* Whether the vehicle is as it came in. */
static gboolean
all_back (const Judge *j, int end)
{
  for (int i = 0; i < end; i++)
    {
      const UnsootStep *s = at (j, i);
      UnsootAct undo = s->act == A (TAKE_OFF)     ? A (REFIT)
                       : s->act == A (FIT)        ? A (REMOVE)
                       : s->act == A (DISCONNECT) ? A (RECONNECT)
                       : s->act == A (DISABLE)    ? A (ENABLE)
                       : s->act == A (OPEN)       ? A (CLOSE)
                                                  : s->act;
      if (undo != s->act && last (j, end, undo, s->subject, s->name) < i)
        return FALSE;
    }
  return on_vehicle (j, end) && !joined (j, end, "bypass") && drained (j, end);
}

static gboolean
judge_line (const Judge *j, int i)
{
  const UnsootStep *s = at (j, i);
  const char *n = s->name != NULL ? s->name : "";
  gboolean vs = joined (j, i, "vehicle-supply"), vr = joined (j, i, "vehicle-return");
  gboolean ms = joined (j, i, "machine-supply"), mr = joined (j, i, "machine-return");
  gboolean by = joined (j, i, "bypass");

  if (!g_str_equal (n, "vehicle-supply") && !g_str_equal (n, "vehicle-return")
      && !g_str_equal (n, "machine-supply") && !g_str_equal (n, "machine-return")
      && !g_str_equal (n, "bypass"))
    return FALSE;
  if (s->act == A (PRIME))
    return joined (j, i, n) && !on (j, i, S (ENGINE));
  if (!at_rest (j, i) || joined (j, i, n) == (s->act == A (JOIN)))
    return FALSE;
  if (s->act == A (PART))
    return TRUE;
  if (g_str_equal (n, "bypass"))
    return j->facts->has_lift_pump && j->facts->lift_pump_bypass_allowed && !vs && !vr;
  if (g_str_equal (n, "vehicle-supply"))
    return !ms && !by;
  if (g_str_equal (n, "vehicle-return"))
    return !mr && !by;
  return g_str_equal (n, "machine-supply") ? !vs : !vr;
}

static gboolean
judge_tank (const Judge *j, int i)
{
  const UnsootStep *s = at (j, i);
  char held = in_tank (j, i, s->side);
  gboolean drawn = s->side == UNSOOT_SIDE_FUEL ? on (j, i, S (PUMP)) : on (j, i, S (ATOMISER));

  if (s->side == UNSOOT_SIDE_NONE)
    return FALSE;
  if (s->act == A (MEASURE))
    return TRUE;
  if (drawn)
    return FALSE;
  if (s->act == A (FILL))
    return (s->fluid == UNSOOT_SIDE_NONE || s->fluid == s->side) && strchr ("cf", held) != NULL
           && (isnan (s->share) ? 1 : s->share) * (double) j->facts->dose_ml[s->side] >= 1;
  if (s->act == A (FLUSH))
    return strchr ("ec", held) != NULL;
  return s->act == A (DRAIN) || strchr ("fr", held) != NULL;
}

static gboolean
judge_start (const Judge *j, int i)
{
  UnsootSubject subject = at (j, i)->subject;
  gboolean machine = on_machine (j, i);
  double fuel = share_run (j, i, UNSOOT_SIDE_FUEL);
  char tank = in_tank (j, i, UNSOOT_SIDE_FUEL);

  if (on (j, i, subject))
    return FALSE;
  if (subject == S (KEY))
    return !j->facts->has_lift_pump || lift_unplugged (j, i)
           || ((on_vehicle (j, i) || joined (j, i, "bypass")) && !fuel_part_off (j, i));
  if (subject == S (PUMP))
    return machine && (tank == 'f' || tank == 'r') && fuel < 1 && set_to (j, i, S (PRESSURE)) <= 0
           && !fuel_part_off (j, i);
  if (subject == S (ATOMISER))
    return on (j, i, S (ENGINE)) && !raised (j, i) && intake_adapter_on (j, i)
           && in_tank (j, i, UNSOOT_SIDE_INTAKE) == 'f' && share_run (j, i, UNSOOT_SIDE_INTAKE) < 1
           && set_to (j, i, S (AIR)) > 0 && looks_done (j, i) && !(machine && fuel >= 1)
           && (!j->facts->has_heater
               || outstanding (j, i, A (DISABLE), A (ENABLE), S (HEATER), NULL))
           && (!j->facts->has_regeneration
               || outstanding (j, i, A (DISABLE), A (ENABLE), S (REGENERATION), NULL));
  if (!on (j, i, S (KEY)) || !drained (j, i) || !oil_read (j, i) || fuel_part_off (j, i)
      || !breathes (j, i))
    return FALSE;
  if (fuel_look_due (j, i) && (on (j, i, S (PUMP)) || lift_live (j, i)))
    return FALSE;
  if (machine)
    return on (j, i, S (PUMP)) && primed (j, i) && set_to (j, i, S (PRESSURE)) > 0 && fuel < 1;
  return on_vehicle (j, i) && !lift_unplugged (j, i);
}

static gboolean
judge_stop (const Judge *j, int i)
{
  UnsootSubject subject = at (j, i)->subject;

  if (!on (j, i, subject))
    return FALSE;
  if (subject == S (ENGINE))
    return !on (j, i, S (ATOMISER)) && set_to (j, i, S (AIR)) <= 0 && air_is_bled (j, i);
  return subject == S (ATOMISER) || !on (j, i, S (ENGINE));
}

static gboolean
judge_set (const Judge *j, int i)
{
  const UnsootStep *s = at (j, i);
  const UnsootFamilyFacts *f = j->facts;

  if (s->subject == S (SPEED) && g_strcmp0 (s->name, "idle") == 0)
    return on (j, i, S (ENGINE));
  if (s->subject == S (SPEED))
    return g_strcmp0 (s->name, "raised") == 0 && on (j, i, S (ENGINE)) && drained (j, i)
           && oil_read (j, i) && idled (j, i) && looks_done (j, i);
  if (isnan (s->value))
    return FALSE;
  if (s->subject == S (AIR))
    return s->value <= 0 ? !on (j, i, S (ATOMISER))
                         : s->value > 35.99 * 6894.757 && s->value < 44.01 * 6894.757;
  if (s->value <= 0)
    return !(on (j, i, S (ENGINE)) && on_machine (j, i));
  return on (j, i, S (PUMP)) && s->value > f->window_min_pa - 2 && s->value < f->window_max_pa + 2;
}

static gboolean
judge_run (const Judge *j, int i)
{
  const UnsootStep *s = at (j, i);
  gboolean limited = s->low_level && s->minutes > 0;
  double fuel = share_run (j, i, UNSOOT_SIDE_FUEL);

  if (s->act == A (SOAK))
    return has (s->name) && s->minutes > 0 && stopped (j, i);
  if (!on (j, i, S (ENGINE)) || !looks_done (j, i))
    return FALSE;
  if (on_machine (j, i) && (!limited || fuel >= 1))
    return FALSE;
  if (s->side == UNSOOT_SIDE_NONE)
    return !on (j, i, S (ATOMISER)) && (s->minutes > 0 || s->until_clear);
  if (isnan (s->share) || s->share > 1 || s->share <= share_run (j, i, s->side)
      || round ((s->share - share_run (j, i, s->side)) * (double) j->facts->dose_ml[s->side])
             > ml_in_tank (j, i, s->side))
    return FALSE;
  if (s->side == UNSOOT_SIDE_INTAKE)
    return on (j, i, S (ATOMISER));
  return on_machine (j, i) && !(on (j, i, S (ATOMISER)) && s->share >= 1);
}

static gboolean
judge_thing (const Judge *j, int i)
{
  const UnsootStep *s = at (j, i);
  const char *part = s->place != NULL ? s->place : s->name;
  gboolean burner = s->subject == S (HEATER) || s->subject == S (REGENERATION);
  gboolean off;
  int fitted;

  if (s->subject == S (OIL))
    return stopped (j, i);
  if (!burner && !has (s->name))
    return FALSE;
  switch ((int) s->act)
    {
    case A (TAKE_OFF):
      return !outstanding (j, i, A (TAKE_OFF), A (REFIT), S (PART), s->name)
             && rest_for (j, i, s->side);
    case A (REFIT):
      if (!outstanding (j, i, A (TAKE_OFF), A (REFIT), S (PART), s->name))
        return FALSE;
      return gasket_is_new (j, i, s->name) && !carries (j, i, s->name)
             && rest_for (j, i, at (j, last (j, i, A (TAKE_OFF), S (PART), s->name))->side);
    case A (REPLACE):
      return s->subject == S (FILTER) ? rest_for (j, i, s->side)
                                      : outstanding (j, i, A (TAKE_OFF), A (REFIT), S (PART), part);
    case A (FIT):
    case A (REMOVE):
      fitted = last (j, i, A (FIT), s->subject, s->name);
      if (outstanding (j, i, A (FIT), A (REMOVE), s->subject, s->name) == (s->act == A (FIT)))
        return FALSE;
      if (s->subject != S (ADAPTER))
        return stopped (j, i);
      return (s->act == A (FIT) ? s->side : at (j, fitted)->side) == UNSOOT_SIDE_FUEL
                 ? at_rest (j, i)
                 : machine_off (j, i);
    case A (DISCONNECT):
    case A (RECONNECT):
      off = outstanding (j, i, A (DISCONNECT), A (RECONNECT), S (LEAD), s->name);
      return stopped (j, i) && off == (s->act == A (RECONNECT))
             && (j->facts->has_lift_pump || !g_str_equal (s->name, "lift-pump"));
    case A (OPEN):
    case A (CLOSE):
      off = outstanding (j, i, A (OPEN), A (CLOSE), S (VALVE), s->name);
      return off == (s->act == A (CLOSE));
    default:
      off = outstanding (j, i, A (DISABLE), A (ENABLE), s->subject, NULL);
      return (s->subject == S (HEATER) ? j->facts->has_heater : j->facts->has_regeneration)
             && off == (s->act == A (ENABLE)) && !(s->act == A (ENABLE) && on (j, i, S (ATOMISER)));
    }
}

static gboolean
judge_low_point (const Judge *j, int i)
{
  for (guint p = 0; p < j->facts->low_points->len; p++)
    if (g_strcmp0 (j->facts->low_points->pdata[p], at (j, i)->name) == 0)
      return machine_off (j, i);
  return FALSE;
}

static gboolean
any_lead_off (const Judge *j, int end)
{
  for (int i = 0; i < end; i++)
    if (at (j, i)->act == A (DISCONNECT)
        && last (j, end, A (RECONNECT), S (LEAD), at (j, i)->name) < i)
      return TRUE;
  return FALSE;
}

static gboolean
judge_step (const Judge *j, int i)
{
  const UnsootStep *s = at (j, i);

  switch ((int) s->act)
    {
    case A (JOIN):
    case A (PART):
      return judge_line (j, i);
    case A (PRIME):
      return s->subject == S (PUMP) ? on (j, i, S (PUMP)) : judge_line (j, i);
    case A (BLEED):
      if (s->subject == S (AIR))
        return !on (j, i, S (ATOMISER)) && set_to (j, i, S (AIR)) <= 0;
      return stopped (j, i) && !on (j, i, S (PUMP)) && set_to (j, i, S (PRESSURE)) <= 0;
    case A (FILL):
    case A (FLUSH):
    case A (HOLD):
      return judge_tank (j, i);
    case A (DRAIN):
      return s->subject == S (TANK) ? judge_tank (j, i) : judge_low_point (j, i);
    case A (START):
      return judge_start (j, i);
    case A (STOP):
      return judge_stop (j, i);
    case A (SET):
      return judge_set (j, i);
    case A (RUN):
    case A (SOAK):
      return judge_run (j, i);
    case A (LOOK):
      return s->side == UNSOOT_SIDE_FUEL     ? under_pressure (j, i)
             : s->side == UNSOOT_SIDE_INTAKE ? set_to (j, i, S (AIR)) > 0
                                             : FALSE;
    case A (MEASURE):
      if (s->subject == S (OIL))
        return !on (j, i, S (ENGINE));
      return s->subject == S (TANK) ? judge_tank (j, i) : has (s->name);
    case A (CLEAR):
      return on (j, i, S (KEY)) && !any_lead_off (j, i);
    case A (DRIVE):
      return j->facts->has_road == (s->subject == S (ROAD)) && all_back (j, i)
             && on (j, i, S (ENGINE)) && looks_done (j, i) && idled (j, i)
             && raised_since_wet (j, i);
    default:
      return judge_thing (j, i);
    }
}

/* Whether step I leaves the vehicle other than it was driven. */
static gboolean
touches_vehicle (const UnsootStep *s)
{
  return strstr ("take-off refit replace fit remove join part disconnect reconnect disable enable "
                 "open close soak",
                 unsoot_act_to_slug (s->act))
             != NULL
         || (s->act == A (DRAIN) && s->subject == S (LOW_POINT))
         || (s->act == A (START) && (s->subject == S (PUMP) || s->subject == S (ATOMISER)));
}

static gboolean
driven_last (const Judge *j, int end)
{
  for (int i = end - 1; i >= 0; i--)
    if (at (j, i)->act == A (DRIVE))
      return TRUE;
    else if (touches_vehicle (at (j, i)))
      return FALSE;
  return FALSE;
}

static gboolean
tank_is_accounted (const Judge *j, int end, UnsootSide side)
{
  gboolean used = last_side (j, end, A (FILL), S (TANK), side) >= 0;

  return !used || strchr ("ech", in_tank (j, end, side)) != NULL;
}

static gboolean
side_is_run (const Judge *j, int end, UnsootSide side)
{
  return !j->procedure->cleans[side] || share_run (j, end, side) > 0;
}

static gboolean
judge_end (const Judge *j)
{
  int end = (int) j->procedure->steps->len;

  return stopped (j, end) && machine_off (j, end) && set_to (j, end, S (PRESSURE)) <= 0
         && all_back (j, end) && !joined (j, end, "machine-supply")
         && !joined (j, end, "machine-return") && tank_is_accounted (j, end, UNSOOT_SIDE_FUEL)
         && tank_is_accounted (j, end, UNSOOT_SIDE_INTAKE) && !fuel_look_due (j, end)
         && !air_look_due (j, end) && oil_read (j, end) && idled (j, end)
         && raised_since_wet (j, end) && driven_last (j, end)
         && last (j, end, A (CLEAR), S (CODES), NULL)
                >= last (j, end, A (DISCONNECT), S (LEAD), NULL)
         && side_is_run (j, end, UNSOOT_SIDE_FUEL) && side_is_run (j, end, UNSOOT_SIDE_INTAKE);
}

/* The step that is refused; the count of steps for the end; -1: nothing is. */
static int
naive_judge (const UnsootProcedure *procedure, const UnsootFamilyFacts *facts)
{
  const Judge judge = { procedure, facts };

  for (int i = 0; i < (int) procedure->steps->len; i++)
    if (!judge_step (&judge, i))
      return i;
  return judge_end (&judge) ? -1 : (int) procedure->steps->len;
}

#undef A
#undef S
