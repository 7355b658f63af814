/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rig.h"

#include <glib/gi18n-lib.h>

#include "rig-check.h"
#include "slug.h"

static const UnsootSlug contents_kinds[] = {
  { UNSOOT_CONTENTS_UNKNOWN, "unknown", N_ ("not known: treat it as another vehicle's return") },
  { UNSOOT_CONTENTS_EMPTY, "empty", N_ ("drained, not flushed") },
  { UNSOOT_CONTENTS_CLEAN, "clean", N_ ("drained and flushed") },
  { UNSOOT_CONTENTS_FRESH, "fresh", N_ ("fresh fluid") },
  { UNSOOT_CONTENTS_RETURNED, "returned", N_ ("this vehicle's return: not fresh any more") },
  { UNSOOT_CONTENTS_HELD, "held", N_ ("kept under a label") },
  { 0, NULL, NULL },
};

const char *
unsoot_contents_to_slug (UnsootContents contents)
{
  return unsoot_slug_of (contents_kinds, (int) contents);
}

gboolean
unsoot_contents_from_slug (const char *slug, UnsootContents *contents)
{
  int value;

  if (!unsoot_slug_find (contents_kinds, slug, &value))
    return FALSE;
  *contents = (UnsootContents) value;
  return TRUE;
}

const char *
unsoot_contents_label (UnsootContents contents)
{
  return unsoot_slug_words (contents_kinds, (int) contents);
}

static void
free_change (gpointer data)
{
  UnsootChange *change = data;

  g_free (change->name);
  g_free (change->place);
  g_free (change);
}

UnsootRig *
unsoot_rig_new (void)
{
  UnsootRig *rig = g_new0 (UnsootRig, 1);

  rig->air_bled = TRUE;
  rig->joined[UNSOOT_LINE_VEHICLE_SUPPLY] = TRUE;
  rig->joined[UNSOOT_LINE_VEHICLE_RETURN] = TRUE;
  rig->changes = g_ptr_array_new_with_free_func (free_change);
  return rig;
}

UnsootRig *
unsoot_rig_copy (const UnsootRig *rig)
{
  UnsootRig *copy = g_memdup2 (rig, sizeof *rig);

  copy->changes = g_ptr_array_new_with_free_func (free_change);
  for (guint i = 0; i < rig->changes->len; i++)
    {
      UnsootChange *change = g_memdup2 (rig->changes->pdata[i], sizeof (UnsootChange));
      change->name = g_strdup (change->name);
      change->place = g_strdup (change->place);
      g_ptr_array_add (copy->changes, change);
    }
  return copy;
}

void
unsoot_rig_free (UnsootRig *rig)
{
  if (rig == NULL)
    return;
  g_ptr_array_unref (rig->changes);
  g_free (rig);
}

const UnsootChange *
unsoot_rig_change (const UnsootRig *rig, UnsootSubject subject, const char *name)
{
  for (guint i = 0; i < rig->changes->len; i++)
    {
      const UnsootChange *change = rig->changes->pdata[i];
      if (change->subject == subject && (name == NULL || g_strcmp0 (change->name, name) == 0))
        return change;
    }
  return NULL;
}

const UnsootChange *
unsoot_rig_at_place (const UnsootRig *rig, UnsootSubject subject, const char *place)
{
  for (guint i = 0; i < rig->changes->len; i++)
    {
      const UnsootChange *change = rig->changes->pdata[i];
      if (change->subject == subject && g_strcmp0 (change->place, place) == 0)
        return change;
    }
  return NULL;
}

gboolean
unsoot_rig_has_intake_adapter (const UnsootRig *rig)
{
  for (guint i = 0; i < rig->changes->len; i++)
    {
      const UnsootChange *change = rig->changes->pdata[i];
      if (change->subject == UNSOOT_SUBJECT_ADAPTER && change->side == UNSOOT_SIDE_INTAKE)
        return TRUE;
    }
  return FALSE;
}

static gint
compare_changes (gconstpointer a, gconstpointer b)
{
  const UnsootChange *one = *(UnsootChange *const *) a, *other = *(UnsootChange *const *) b;

  if (one->subject != other->subject)
    return (gint) one->subject - (gint) other->subject;
  return g_strcmp0 (one->name, other->name);
}

/* Kept in order, so that the way to a state doesn't show in it. */
UnsootChange *
unsoot_rig_add_change (UnsootRig *rig, UnsootSubject subject, const char *name)
{
  UnsootChange *change = g_new0 (UnsootChange, 1);

  change->subject = subject;
  change->name = g_strdup (name);
  g_ptr_array_add (rig->changes, change);
  g_ptr_array_sort (rig->changes, compare_changes);
  return change;
}

void
unsoot_rig_drop_change (UnsootRig *rig, UnsootSubject subject, const char *name)
{
  guint index;

  if (g_ptr_array_find (rig->changes, unsoot_rig_change (rig, subject, name), &index))
    g_ptr_array_remove_index (rig->changes, index);
}

gboolean
unsoot_rig_engine_runs (const UnsootRig *rig)
{
  return rig->engine != UNSOOT_ENGINE_OFF;
}

gboolean
unsoot_rig_on_machine (const UnsootRig *rig)
{
  return rig->joined[UNSOOT_LINE_MACHINE_SUPPLY] && rig->joined[UNSOOT_LINE_MACHINE_RETURN];
}

gboolean
unsoot_rig_on_vehicle (const UnsootRig *rig)
{
  return rig->joined[UNSOOT_LINE_VEHICLE_SUPPLY] && rig->joined[UNSOOT_LINE_VEHICLE_RETURN];
}

gboolean
unsoot_rig_lift_pump_live (const UnsootRig *rig, const UnsootFamilyFacts *facts)
{
  return rig->key && facts->has_lift_pump
         && unsoot_rig_change (rig, UNSOOT_SUBJECT_LEAD, UNSOOT_LEAD_LIFT_PUMP) == NULL;
}

/* All of the circuit that was touched, the bypass too, or a look would miss a part of it. */
gboolean
unsoot_rig_fuel_under_pressure (const UnsootRig *rig, const UnsootFamilyFacts *facts)
{
  gboolean live = unsoot_rig_lift_pump_live (rig, facts);

  if (unsoot_rig_on_machine (rig))
    return rig->pump && rig->pressure_pa > 0 && (!rig->joined[UNSOOT_LINE_BYPASS] || live);
  return unsoot_rig_on_vehicle (rig) && (live || unsoot_rig_engine_runs (rig));
}

gboolean
unsoot_rig_air_charged (const UnsootRig *rig)
{
  return rig->air_pa > 0 || !rig->air_bled;
}

gboolean
unsoot_rig_must_drain (const UnsootRig *rig)
{
  return rig->oil_due || rig->oil_risen
         || unsoot_rig_change (rig, UNSOOT_SUBJECT_LOW_POINT, NULL) != NULL;
}

gboolean
unsoot_rig_allows (const UnsootRig *rig, const UnsootFamilyFacts *facts, const UnsootStep *step,
                   const UnsootEntry *entry, UnsootFault *fault)
{
  const UnsootEntry none = UNSOOT_ENTRY_NONE;
  const UnsootCheck c = { rig, facts, step, entry != NULL ? entry : &none, fault };

  if (!unsoot_act_takes (step->act, step->subject))
    return unsoot_check_refuse (&c, UNSOOT_RULE_SENSE, N_ ("That can't be done to it."));
  switch (step->act)
    {
    case UNSOOT_ACT_TAKE_OFF:
    case UNSOOT_ACT_REFIT:
    case UNSOOT_ACT_REPLACE:
    case UNSOOT_ACT_FIT:
    case UNSOOT_ACT_REMOVE:
    case UNSOOT_ACT_DISCONNECT:
    case UNSOOT_ACT_RECONNECT:
    case UNSOOT_ACT_DISABLE:
    case UNSOOT_ACT_ENABLE:
    case UNSOOT_ACT_OPEN:
    case UNSOOT_ACT_CLOSE:
      return unsoot_check_vehicle (&c);
    case UNSOOT_ACT_JOIN:
    case UNSOOT_ACT_PART:
    case UNSOOT_ACT_BLEED:
    case UNSOOT_ACT_PRIME:
      return unsoot_check_line (&c);
    case UNSOOT_ACT_FILL:
    case UNSOOT_ACT_DRAIN:
    case UNSOOT_ACT_FLUSH:
    case UNSOOT_ACT_HOLD:
      return unsoot_check_tank (&c);
    case UNSOOT_ACT_SET:
      return unsoot_check_set (&c);
    case UNSOOT_ACT_START:
      return unsoot_check_start (&c);
    case UNSOOT_ACT_STOP:
      return unsoot_check_stop (&c);
    case UNSOOT_ACT_RUN:
    case UNSOOT_ACT_SOAK:
      return unsoot_check_run (&c);
    case UNSOOT_ACT_LOOK:
    case UNSOOT_ACT_MEASURE:
    case UNSOOT_ACT_CLEAR:
    case UNSOOT_ACT_DRIVE:
      return unsoot_check_others (&c);
    }
  g_assert_not_reached ();
}

gboolean
unsoot_rig_apply (UnsootRig *rig, const UnsootFamilyFacts *facts, const UnsootStep *step,
                  const UnsootEntry *entry, UnsootFault *fault)
{
  const UnsootEntry none = UNSOOT_ENTRY_NONE;

  if (!unsoot_rig_allows (rig, facts, step, entry, fault))
    return FALSE;
  unsoot_rig_do (rig, facts, step, entry != NULL ? entry : &none);
  return TRUE;
}

static void
digest_tank (GString *text, const UnsootRig *rig, UnsootSide side)
{
  const UnsootTank *tank = &rig->tank[side];

  g_string_append_printf (text,
                          " %s=%s:%" G_GINT64_FORMAT ":%" G_GINT64_FORMAT ":%d share %g used "
                          "%" G_GINT64_FORMAT " look %d",
                          unsoot_side_to_slug (side), unsoot_contents_to_slug (tank->contents),
                          tank->ml, tank->lot_id, tank->used, rig->share[side], rig->used_ml[side],
                          rig->look_due[side]);
}

char *
unsoot_rig_digest (const UnsootRig *rig)
{
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, "key %d engine %d pump %d atomiser %d pressure %g:%d:%d air %g:%d",
                          rig->key, (int) rig->engine, rig->pump, rig->atomiser, rig->pressure_pa,
                          rig->pressure_bled, rig->primed, rig->air_pa, rig->air_bled);
  g_string_append (text, " lines ");
  for (int line = 0; line < UNSOOT_LINES; line++)
    g_string_append_c (text, rig->joined[line] ? '1' : '0');
  digest_tank (text, rig, UNSOOT_SIDE_FUEL);
  digest_tank (text, rig, UNSOOT_SIDE_INTAKE);
  g_string_append_printf (text, " oil %d:%d idle %d raise %d codes %d driven %d", rig->oil_due,
                          rig->oil_risen, rig->idle_due, rig->raise_due, rig->codes_due,
                          rig->driven);
  for (guint i = 0; i < rig->changes->len; i++)
    {
      const UnsootChange *change = rig->changes->pdata[i];
      g_string_append_printf (text, " [%s %s@%s %d%d%d]", unsoot_subject_to_slug (change->subject),
                              change->name != NULL ? change->name : "",
                              change->place != NULL ? change->place : "", (int) change->side,
                              change->owes_gasket, change->closes);
    }
  return g_string_free (text, FALSE);
}
