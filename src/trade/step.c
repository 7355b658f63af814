/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "step.h"

#include <math.h>

UnsootStep *
unsoot_step_new (UnsootAct act, UnsootSubject subject, const char *name)
{
  UnsootStep *step = g_new0 (UnsootStep, 1);

  step->phase = -1;
  step->act = act;
  step->subject = subject;
  step->name = g_strdup (name);
  step->value = step->share = step->minutes = (double) NAN;
  return step;
}

UnsootStep *
unsoot_step_copy (const UnsootStep *step)
{
  UnsootStep *copy = g_memdup2 (step, sizeof *step);

  copy->name = g_strdup (step->name);
  copy->place = g_strdup (step->place);
  copy->unit = g_strdup (step->unit);
  copy->wording = g_strdup (step->wording);
  copy->why = g_strdup (step->why);
  return copy;
}

static gboolean
same_number (double a, double b)
{
  return isnan (a) ? isnan (b) : a == b;
}

static gboolean
same_text (const char *a, const char *b)
{
  return g_strcmp0 (a, b) == 0;
}

gboolean
unsoot_step_equal (const UnsootStep *a, const UnsootStep *b)
{
  return a->phase == b->phase && a->act == b->act && a->subject == b->subject
         && same_text (a->name, b->name) && same_text (a->place, b->place) && a->side == b->side
         && a->fluid == b->fluid && same_number (a->value, b->value)
         && same_number (a->share, b->share) && same_number (a->minutes, b->minutes)
         && !a->low_level == !b->low_level && !a->until_clear == !b->until_clear
         && !a->new_gasket == !b->new_gasket && !a->closes == !b->closes
         && same_text (a->unit, b->unit) && same_text (a->wording, b->wording)
         && same_text (a->why, b->why);
}

void
unsoot_step_free (UnsootStep *step)
{
  if (step == NULL)
    return;
  g_free (step->name);
  g_free (step->place);
  g_free (step->unit);
  g_free (step->wording);
  g_free (step->why);
  g_free (step);
}

/* What is named stands for itself; "idle" alone would not. */
static void
append_object (GString *words, const UnsootStep *step)
{
  UnsootLine line;

  if (step->subject == UNSOOT_SUBJECT_LINE && unsoot_line_from_slug (step->name, &line))
    g_string_append (words, unsoot_line_label (line));
  else if (step->name != NULL && step->subject != UNSOOT_SUBJECT_SPEED)
    g_string_append (words, step->name);
  else
    g_string_append (words, unsoot_subject_label (step->subject));
  if (step->name != NULL && step->subject == UNSOOT_SUBJECT_SPEED)
    g_string_append_printf (words, ", %s", step->name);
}

char *
unsoot_step_words (const UnsootStep *step)
{
  GString *words;

  if (step->wording != NULL && *step->wording != '\0')
    return g_strdup (step->wording);
  words = g_string_new (unsoot_act_label (step->act));
  g_string_append (words, ": ");
  append_object (words, step);
  if (step->side != UNSOOT_SIDE_NONE)
    g_string_append_printf (words, ", %s", unsoot_side_label (step->side));
  if (step->place != NULL)
    g_string_append_printf (words, " (%s)", step->place);
  return g_string_free (words, FALSE);
}
