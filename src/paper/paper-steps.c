/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-steps.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "act.h"
#include "dose.h"
#include "page-block.h"
#include "page-draw.h"
#include "page-table.h"
#include "paper-cautions.h"
#include "paper-words.h"
#include "run.h"
#include "unit.h"

#define N_COLUMNS 6

/* The unit of a step's value, as typed by whoever wrote the procedure. */
static UnsootUnit
unit_of (const UnsootStepRow *step)
{
  return step->unit != NULL ? unsoot_unit_from_words (step->unit) : UNSOOT_UNIT_NONE;
}

/* What a step asks to be written down: its unit, NULL where a tick is all. */
static const char *
value_unit (const UnsootStepRow *step)
{
  const UnsootUnit unit = unit_of (step);
  UnsootAct act;

  if (!unsoot_act_from_slug (step->act, &act))
    return NULL;
  if ((act == UNSOOT_ACT_SET || act == UNSOOT_ACT_MEASURE) && unit != UNSOOT_UNIT_NONE)
    return unsoot_unit_symbol (unit);
  if (act == UNSOOT_ACT_FILL || act == UNSOOT_ACT_DRAIN
      || (act == UNSOOT_ACT_RUN && isfinite (step->share)))
    return unsoot_unit_symbol (UNSOOT_UNIT_ML);
  if (act == UNSOOT_ACT_SOAK || act == UNSOOT_ACT_RUN)
    return unsoot_unit_symbol (UNSOOT_UNIT_MIN);
  return act == UNSOOT_ACT_MEASURE ? "" : NULL;
}

static void
add_part (GString *text, const char *separator, char *part)
{
  if (part != NULL && *part != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? separator : "", part);
  g_free (part);
}

static char *
share_words (const UnsootJobFile *file, const UnsootStepRow *step)
{
  const gboolean fuel = g_strcmp0 (step->side, "fuel") == 0;
  const gint64 dose = fuel ? file->job->fuel_dose_ml : file->job->intake_dose_ml;
  g_autofree char *share = NULL;
  g_autofree char *volume = NULL;

  if (!isfinite (step->share) || step->share <= 0 || dose <= 0)
    return NULL;
  share = unsoot_paper_rate (llround (step->share * 100000));
  volume = unsoot_dose_volume_words (llround (step->share * (double) dose));
  /* A run's share is what has been used of the dose by its end, a fill's what is poured. */
  if (g_strcmp0 (step->act, unsoot_act_to_slug (UNSOOT_ACT_RUN)) == 0)
    /* Translators: a share of the dose, and that as a volume */
    return g_strdup_printf (_ ("until %s of the dose is used: %s"), share, volume);
  /* Translators: a share of the dose, and that as a volume: "50 % of the dose: 1 L" */
  return g_strdup_printf (_ ("%s of the dose: %s"), share, volume);
}

/* What to set it to, unless the wording says so itself. */
static char *
target_words (const UnsootStepRow *step)
{
  const UnsootUnit unit = unit_of (step);
  g_autofree char *plain = NULL;

  if (!isfinite (step->value) || unit == UNSOOT_UNIT_NONE)
    return NULL;
  plain = g_strdup_printf ("%g", unsoot_unit_from_si (unit, step->value));
  if (step->wording != NULL && strstr (step->wording, plain) != NULL)
    return NULL;
  return unsoot_unit_format (step->value, unit, unsoot_unit_decimals (unit));
}

/* The engine family's window, in the step's own unit, where the supply's pressure is set. */
static char *
window_words (const UnsootJobFile *file, const UnsootStepRow *step)
{
  const UnsootFamilyRow *family = file->family;
  const UnsootUnit unit = unit_of (step);
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  if (family == NULL || !isfinite (family->window_min_pa) || unit == UNSOOT_UNIT_NONE
      || g_strcmp0 (step->subject, unsoot_subject_to_slug (UNSOOT_SUBJECT_PRESSURE)) != 0)
    return NULL;
  low = unsoot_paper_number (unsoot_unit_from_si (unit, family->window_min_pa),
                             unsoot_unit_decimals (unit));
  high = unsoot_paper_number (unsoot_unit_from_si (unit, family->window_max_pa),
                              unsoot_unit_decimals (unit));
  /* Translators: lowest and highest pressure, their unit */
  return g_strdup_printf (_ ("window %s to %s\u00A0%s"), low, high, unsoot_unit_symbol (unit));
}

static char *
minutes_words (const UnsootStepRow *step)
{
  g_autofree char *figure = NULL;

  if (!isfinite (step->minutes) || step->minutes <= 0)
    return NULL;
  figure = unsoot_paper_quantity (llround (step->minutes * 1000));
  return g_strdup_printf (_ ("at most %s\u00A0min"), figure);
}

/* Target, limits and reason of a step: the small print under its wording. */
static char *
step_note (const UnsootJobFile *file, const UnsootStepRow *step)
{
  GString *text = g_string_new (NULL);

  add_part (text, " · ", target_words (step));
  add_part (text, " · ", window_words (file, step));
  add_part (text, " · ", share_words (file, step));
  add_part (text, " · ", minutes_words (step));
  if (step->low_level)
    add_part (text, " · ", g_strdup (_ ("or until the low level")));
  if (step->until_clear)
    add_part (text, " · ", g_strdup (_ ("until the exhaust is clear")));
  if (step->new_gasket)
    add_part (text, " · ", g_strdup (_ ("needs a new gasket")));
  add_part (text, "\n", g_strdup (step->why));
  return g_string_free (text, FALSE);
}

/* The latest event that tells how a step ended. */
static const UnsootRunEventRow *
step_event (const UnsootJobFile *file, gint64 position)
{
  for (guint i = file->run_events->len; i > 0; i--)
    {
      const UnsootRunEventRow *event = g_ptr_array_index (file->run_events, i - 1);
      UnsootRunEventKind kind;

      if (event->step == position && unsoot_run_event_from_slug (event->kind, &kind)
          && (kind == UNSOOT_RUN_CONFIRM || kind == UNSOOT_RUN_ENDED
              || kind == UNSOOT_RUN_PASS_OVER))
        return event;
    }
  return NULL;
}

static char *
event_value (const UnsootStepRow *step, const UnsootRunEventRow *event)
{
  const UnsootUnit unit = unit_of (step);

  if (event == NULL)
    return NULL;
  if (event->ml >= 0)
    return unsoot_paper_whole (event->ml);
  if (isfinite (event->value) && unit != UNSOOT_UNIT_NONE)
    return unsoot_paper_number (unsoot_unit_from_si (unit, event->value),
                                unsoot_unit_decimals (unit));
  return NULL;
}

/* Everything a step's row shows; strings are owned. */
typedef struct
{
  char *number, *wording, *note, *value, *time;
  const char *unit;
  UnsootSide side;
  gboolean done;
} StepText;

static StepText
step_text (const UnsootJobFile *file, const UnsootStepRow *step)
{
  const UnsootRunEventRow *event = step_event (file, step->position);
  StepText text = { .number = g_strdup_printf ("%" G_GINT64_FORMAT, step->position + 1),
                    .wording = g_strdup (step->wording),
                    .note = step_note (file, step),
                    .value = event_value (step, event),
                    .unit = value_unit (step),
                    .done = event != NULL };

  if (event != NULL)
    text.time = unsoot_paper_clock (file, event->done_at);
  unsoot_side_from_slug (step->side, &text.side);
  return text;
}

static void
clear_step_text (StepText *text)
{
  g_free (text->number);
  g_free (text->wording);
  g_free (text->note);
  g_free (text->value);
  g_free (text->time);
}

static void
fill_cells (UnsootCell *cells, const StepText *text)
{
  const UnsootCellKind value = text->unit != NULL ? UNSOOT_CELL_FILL : UNSOOT_CELL_TEXT;

  cells[0] = (UnsootCell){ UNSOOT_CELL_TICK, .text = text->done ? "" : NULL };
  cells[1] = (UnsootCell){ UNSOOT_CELL_TEXT, .text = text->number, .style = &unsoot_text_grey };
  cells[2] = (UnsootCell){ UNSOOT_CELL_SIDE, .side = text->side };
  cells[3] = (UnsootCell){ UNSOOT_CELL_TEXT, .text = text->wording, .note = text->note };
  cells[4] = (UnsootCell){ value, .text = text->value, .unit = text->unit };
  cells[5] = (UnsootCell){ UNSOOT_CELL_FILL, .text = text->time };
}

static void
phase_heading (UnsootPageKit *kit, gconstpointer data)
{
  const UnsootPhaseRow *phase = data;
  g_autoptr (GPtrArray) unknown = g_ptr_array_new_with_free_func (g_free);
  const guint bits = unsoot_paper_caution_bits (phase->cautions, unknown);
  g_autoptr (GPtrArray) sentences = unsoot_paper_caution_sentences (bits);
  const UnsootNotice notice = { UNSOOT_NOTICE_CAUTION, NULL, sentences, NULL };
  /* Translators: number of a phase, its title */
  g_autofree char *title
      = g_strdup_printf (_ ("Phase %d · %s"), (int) phase->position + 1, phase->title);
  g_autoptr (GPtrArray) lines
      = unsoot_page_wrap (kit, &unsoot_text_lead_bold, title, unsoot_page_width (kit) - 16);

  g_ptr_array_extend_and_steal (sentences, g_steal_pointer (&unknown));
  unsoot_page_skip (kit, 12);
  unsoot_page_box (kit, kit->left, kit->y, unsoot_page_width (kit), lines->len * 15.0 + 6, 0,
                   &unsoot_tone_accent, NULL, 0);
  const UnsootTextStyle white = { 11, 15, TRUE, &unsoot_tone_white };
  kit->y += 3
            + unsoot_page_write_lines (kit, &white, UNSOOT_ALIGN_LEFT, kit->left + 8, kit->y + 3,
                                       lines);
  kit->y += 9;
  if (sentences->len > 0)
    unsoot_page_notice (kit, &notice);
}

static const UnsootPhaseRow *
phase_at (const UnsootJobFile *file, gint64 position)
{
  for (guint i = 0; i < file->phases->len; i++)
    {
      const UnsootPhaseRow *phase = g_ptr_array_index (file->phases, i);
      if (phase->position == position)
        return phase;
    }
  return NULL;
}

/* A phase's heading and cautions never stand at the foot of a page without a step. */
static void
begin_phase (UnsootPageKit *kit, UnsootTable *table, const UnsootColumn *columns,
             const UnsootPhaseRow *phase, const UnsootCell *first_step)
{
  double after;

  unsoot_table_begin (table, kit, columns, N_COLUMNS, TRUE);
  after = unsoot_table_row_height (table, first_step);
  if (phase != NULL)
    unsoot_page_keep (kit, phase_heading, phase, after);
}

void
unsoot_paper_steps (UnsootPageKit *kit, const UnsootJobFile *file)
{
  const UnsootColumn columns[N_COLUMNS] = {
    { NULL, 10, UNSOOT_ALIGN_LEFT },         { _ ("No."), 20, UNSOOT_ALIGN_RIGHT },
    { NULL, 11, UNSOOT_ALIGN_LEFT },         { _ ("Step"), -1, UNSOOT_ALIGN_LEFT },
    { _ ("Value"), 76, UNSOOT_ALIGN_RIGHT }, { _ ("Time, initials"), 62, UNSOOT_ALIGN_RIGHT },
  };
  UnsootCell cells[N_COLUMNS];
  UnsootTable table;
  gint64 phase = -1;

  for (guint i = 0; i < file->steps->len; i++)
    {
      const UnsootStepRow *step = g_ptr_array_index (file->steps, i);
      StepText text = step_text (file, step);

      fill_cells (cells, &text);
      if (i == 0 || step->phase != phase)
        begin_phase (kit, &table, columns, phase_at (file, step->phase), cells);
      phase = step->phase;
      unsoot_table_row (&table, cells);
      clear_step_text (&text);
    }
  if (file->steps->len > 0)
    unsoot_table_end (&table);
}
