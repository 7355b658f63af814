/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "dose.h"

#include <glib/gi18n-lib.h>

#define COMMON_PRACTICE N_ ("common practice, no source")

static const UnsootDoseRule common_practice[] = {
  { UNSOOT_SIDE_FUEL, UNSOOT_SIZE_LIGHT, 1000, COMMON_PRACTICE },
  { UNSOOT_SIDE_FUEL, UNSOOT_SIZE_HEAVY, 2000, COMMON_PRACTICE },
  { UNSOOT_SIDE_INTAKE, UNSOOT_SIZE_LIGHT, 2000, COMMON_PRACTICE },
  { UNSOOT_SIDE_INTAKE, UNSOOT_SIZE_HEAVY, 4000, COMMON_PRACTICE },
};

const UnsootDoseRule *
unsoot_dose_common_practice (gsize *n_rules)
{
  *n_rules = G_N_ELEMENTS (common_practice);
  return common_practice;
}

char *
unsoot_dose_volume_words (gint64 ml)
{
  gint64 hundredths = ml % 1000 / 10;
  g_autofree char *number = NULL;

  if (ml < 1000 || ml % 10 != 0)
    number = g_strdup_printf ("%" G_GINT64_FORMAT, ml);
  else if (hundredths == 0)
    number = g_strdup_printf ("%" G_GINT64_FORMAT, ml / 1000);
  else if (hundredths % 10 == 0)
    number = g_strdup_printf ("%" G_GINT64_FORMAT ".%d", ml / 1000, (int) hundredths / 10);
  else
    number = g_strdup_printf ("%" G_GINT64_FORMAT ".%02d", ml / 1000, (int) hundredths);
  if (ml < 1000 || ml % 10 != 0)
    /* Translators: millilitres */
    return g_strdup_printf (_ ("%s mL"), number);
  /* Translators: litres */
  return g_strdup_printf (_ ("%s L"), number);
}

static const UnsootDoseRule *
rule_for (const UnsootDoseAsk *ask, UnsootSizeClass size)
{
  const UnsootDoseRule *rules = ask->rules != NULL ? ask->rules : common_practice;
  gsize n_rules = ask->rules != NULL ? ask->n_rules : G_N_ELEMENTS (common_practice);

  for (gsize i = 0; i < n_rules; i++)
    if (rules[i].side == ask->side && rules[i].size == size && rules[i].ml > 0)
      return &rules[i];
  return NULL;
}

static char *
size_words (const UnsootDoseAsk *ask, UnsootSizeClass size)
{
  if (ask->gvwr_lb > 0)
    return unsoot_weight_words (ask->gvwr_lb);
  return g_strdup (unsoot_size_class_words (size));
}

static char *
inputs_words (const UnsootDoseAsk *ask, UnsootSizeClass size)
{
  GString *inputs = g_string_new (unsoot_side_label (ask->side));

  if (ask->family_name != NULL)
    /* Translators: an engine family's name */
    g_string_append_printf (inputs, _ ("; family %s"), ask->family_name);
  else
    g_string_append (inputs, _ ("; engine family not settled"));
  if (ask->gvwr_lb > 0)
    /* Translators: rated gross weight in pounds */
    g_string_append_printf (inputs, _ ("; GVWR %d lb"), (int) MIN (ask->gvwr_lb, G_MAXINT));
  else
    g_string_append (inputs, _ ("; GVWR not known"));
  /* Translators: a size class, as in "¾-ton and one-ton" */
  g_string_append_printf (inputs, _ ("; size: %s"), unsoot_size_class_words (size));
  return g_string_free (inputs, FALSE);
}

static void
take_family (UnsootDose *dose, const UnsootDoseAsk *ask)
{
  g_autofree char *volume = unsoot_dose_volume_words (ask->family_ml);

  dose->origin = UNSOOT_DOSE_BY_FAMILY;
  dose->ml = ask->family_ml;
  if (ask->family_name != NULL)
    /* Translators: a volume, an engine family's name */
    dose->rule = g_strdup_printf (_ ("%s: the family's own dose, %s"), volume, ask->family_name);
  else
    dose->rule = g_strdup_printf (_ ("%s: the family's own dose"), volume);
  dose->source = g_strdup (_ ("the shop's record of the engine family"));
}

static void
take_rule (UnsootDose *dose, const UnsootDoseAsk *ask, const UnsootDoseRule *rule)
{
  g_autofree char *volume = unsoot_dose_volume_words (rule->ml);
  g_autofree char *size = size_words (ask, rule->size);

  dose->origin = UNSOOT_DOSE_BY_SIZE;
  dose->ml = rule->ml;
  dose->rule = g_strdup_printf ("%s: %s", volume, size);
  dose->source = g_strdup (ask->rules == NULL ? _ (rule->source) : rule->source);
}

static void
take_none (UnsootDose *dose, const UnsootDoseAsk *ask)
{
  g_autofree char *size = size_words (ask, dose->size);

  dose->origin = UNSOOT_DOSE_NONE;
  /* Translators: a weight or size class */
  dose->rule = g_strdup_printf (_ ("no default for %s: the lead technician enters it"), size);
  dose->source = g_strdup (_ ("no rule"));
}

UnsootDose *
unsoot_dose (const UnsootDoseAsk *ask)
{
  UnsootDose *dose = g_new0 (UnsootDose, 1);
  const UnsootDoseRule *rule = NULL;

  dose->side = ask->side;
  dose->size = ask->gvwr_lb > 0 ? unsoot_size_class (ask->gvwr_lb) : ask->family_size;
  dose->inputs = inputs_words (ask, dose->size);
  rule = rule_for (ask, dose->size);
  if (ask->family_ml > 0)
    take_family (dose, ask);
  else if (rule != NULL)
    take_rule (dose, ask, rule);
  else
    take_none (dose, ask);
  return dose;
}

void
unsoot_dose_free (UnsootDose *dose)
{
  g_free (dose->rule);
  g_free (dose->inputs);
  g_free (dose->source);
  g_free (dose);
}
