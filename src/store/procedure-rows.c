/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "procedure-rows.h"

#include <glib/gi18n-lib.h>

#include "deed.h"

static UnsootSide
side_of (const char *slug)
{
  UnsootSide side = UNSOOT_SIDE_NONE;

  unsoot_side_from_slug (slug, &side);
  return side;
}

static char *
slug_of_side (UnsootSide side)
{
  return side != UNSOOT_SIDE_NONE ? g_strdup (unsoot_side_to_slug (side)) : NULL;
}

static guint
cautions_of (const char *text)
{
  g_auto (GStrv) slugs = g_strsplit (text != NULL ? text : "", " ", -1);
  guint cautions = 0;

  for (char **slug = slugs; *slug != NULL; slug++)
    {
      UnsootCaution caution;
      if (unsoot_caution_from_slug (*slug, &caution))
        cautions |= caution;
    }
  return cautions;
}

static char *
slugs_of_cautions (guint cautions)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (int i = 0; i < UNSOOT_CAUTIONS; i++)
    if ((cautions & (1u << i)) != 0)
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "",
                              unsoot_caution_to_slug ((UnsootCaution) (1u << i)));
  return text->len > 0 ? g_strdup (text->str) : NULL;
}

static UnsootStep *
step_from_row (const UnsootStepRow *row, GError **error)
{
  UnsootAct act;
  UnsootSubject subject;

  if (!unsoot_act_from_slug (row->act, &act) || !unsoot_subject_from_slug (row->subject, &subject))
    {
      unsoot_deed_fail (error, UNSOOT_STORE_ERROR_DAMAGED,
                        _ ("Step %d says “%s %s”, which this program does not know."),
                        (int) row->position + 1, row->act, row->subject);
      return NULL;
    }
  UnsootStep *step = unsoot_step_new (act, subject, row->name);
  step->phase = (int) row->phase;
  step->place = g_strdup (row->place);
  step->side = side_of (row->side);
  step->fluid = side_of (row->fluid);
  step->value = row->value;
  step->share = row->share;
  step->minutes = row->minutes;
  step->low_level = row->low_level;
  step->until_clear = row->until_clear;
  step->new_gasket = row->new_gasket;
  step->closes = row->closes;
  step->unit = g_strdup (row->unit);
  step->wording = *row->wording != '\0' ? g_strdup (row->wording) : NULL;
  step->why = g_strdup (row->why);
  return step;
}

UnsootProcedure *
unsoot_procedure_from_rows (const UnsootProcedureRow *row, GPtrArray *phases, GPtrArray *steps,
                            GError **error)
{
  g_autoptr (UnsootProcedure) procedure = unsoot_procedure_new (row->title);

  procedure->cleans[UNSOOT_SIDE_FUEL] = g_strcmp0 (row->sides, "intake") != 0;
  procedure->cleans[UNSOOT_SIDE_INTAKE] = g_strcmp0 (row->sides, "fuel") != 0;
  for (guint i = 0; i < phases->len; i++)
    {
      const UnsootPhaseRow *phase = phases->pdata[i];
      unsoot_procedure_add_phase (procedure, phase->title, cautions_of (phase->cautions));
    }
  for (guint i = 0; i < steps->len; i++)
    {
      UnsootStep *step = step_from_row (steps->pdata[i], error);
      if (step == NULL)
        return NULL;
      unsoot_procedure_add_step (procedure, step);
    }
  return g_steal_pointer (&procedure);
}

static gboolean
insert_phase (UnsootDb *db, const UnsootActing *who, gint64 procedure_id, guint position,
              const UnsootPhase *phase, GError **error)
{
  g_autoptr (UnsootPhaseRow) row = unsoot_phase_row_new ();

  row->procedure_id = procedure_id;
  row->position = position;
  row->title = g_strdup (phase->title);
  row->cautions = slugs_of_cautions (phase->cautions);
  return unsoot_rows_insert (db, &unsoot_phase_row_type, row, who, error);
}

static gboolean
insert_step (UnsootDb *db, const UnsootActing *who, gint64 procedure_id, guint position,
             const UnsootStep *step, GError **error)
{
  g_autoptr (UnsootStepRow) row = unsoot_step_row_new ();

  row->procedure_id = procedure_id;
  row->position = position;
  row->phase = step->phase;
  row->act = g_strdup (unsoot_act_to_slug (step->act));
  row->subject = g_strdup (unsoot_subject_to_slug (step->subject));
  row->name = g_strdup (step->name);
  row->place = g_strdup (step->place);
  row->side = slug_of_side (step->side);
  row->fluid = slug_of_side (step->fluid);
  row->value = step->value;
  row->unit = g_strdup (step->unit);
  row->share = step->share;
  row->minutes = step->minutes;
  row->low_level = step->low_level;
  row->until_clear = step->until_clear;
  row->new_gasket = step->new_gasket;
  row->closes = step->closes;
  row->wording = g_strdup (step->wording != NULL ? step->wording : "");
  row->why = g_strdup (step->why);
  return unsoot_rows_insert (db, &unsoot_step_row_type, row, who, error);
}

gboolean
unsoot_procedure_rows_insert (UnsootDb *db, const UnsootActing *who, gint64 procedure_id,
                              const UnsootProcedure *procedure, GError **error)
{
  for (guint i = 0; i < procedure->phases->len; i++)
    if (!insert_phase (db, who, procedure_id, i, procedure->phases->pdata[i], error))
      return FALSE;
  for (guint i = 0; i < procedure->steps->len; i++)
    if (!insert_step (db, who, procedure_id, i, procedure->steps->pdata[i], error))
      return FALSE;
  return TRUE;
}
