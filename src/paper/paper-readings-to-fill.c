/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-readings.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "page-table.h"
#include "page-text.h"
#include "paper-words.h"

/* Offered where nothing has been measured yet. Common practice, no source. */
static const UnsootReadingKind usual[] = {
  UNSOOT_READING_OPACITY,    UNSOOT_READING_AIR_IDLE, UNSOOT_READING_BOOST,
  UNSOOT_READING_EGR_COOLER, UNSOOT_READING_DPF,      UNSOOT_READING_IDLE_SCATTER,
};

/* What a reading depends on, in the order it is written down. */
static const struct
{
  const char *name;
  UnsootUnit unit;
  gsize offset; /* of a double in UnsootReadingRow */
} conditions[] = {
  { N_ ("Engine speed"), UNSOOT_UNIT_RPM, offsetof (UnsootReadingRow, rpm) },
  { N_ ("Load"), UNSOOT_UNIT_PERCENT, offsetof (UnsootReadingRow, load_percent) },
  { N_ ("Coolant"), UNSOOT_UNIT_CELSIUS, offsetof (UnsootReadingRow, coolant_c) },
  { N_ ("Barometer"), UNSOOT_UNIT_KPA, offsetof (UnsootReadingRow, barometer_pa) },
  { N_ ("Outside"), UNSOOT_UNIT_CELSIUS, offsetof (UnsootReadingRow, ambient_c) },
};

static GArray *
pairs_to_fill (const UnsootJobFile *file)
{
  GArray *pairs = unsoot_paper_reading_pairs (file);

  for (guint i = 0; pairs->len == i && i < G_N_ELEMENTS (usual); i++)
    {
      const UnsootReadingPair pair = { usual[i], NULL, NULL };
      g_array_append_val (pairs, pair);
    }
  return pairs;
}

static char *
figure (const UnsootReadingRow *row, UnsootUnit unit)
{
  return row != NULL ? unsoot_paper_number (unsoot_unit_from_si (unit, row->value),
                                            unsoot_unit_decimals (unit))
                     : NULL;
}

static void
draw_values (UnsootPageKit *kit, const GArray *pairs)
{
  const UnsootColumn columns[] = {
    { _ ("Reading"), -1, UNSOOT_ALIGN_LEFT },     { _ ("Before"), 96, UNSOOT_ALIGN_RIGHT },
    { _ ("After"), 96, UNSOOT_ALIGN_RIGHT },      { NULL, 6, UNSOOT_ALIGN_LEFT },
    { _ ("Instrument"), 120, UNSOOT_ALIGN_LEFT },
  };
  UnsootTable table;

  unsoot_table_begin (&table, kit, columns, G_N_ELEMENTS (columns), TRUE);
  for (guint i = 0; i < pairs->len; i++)
    {
      const UnsootReadingPair *pair = &g_array_index (pairs, UnsootReadingPair, i);
      const UnsootReadingRow *known = pair->before != NULL ? pair->before : pair->after;
      const UnsootUnit unit = unsoot_reading_facts (pair->kind).shown;
      const char *instrument = known != NULL ? known->instrument : NULL;
      g_autofree char *before = figure (pair->before, unit);
      g_autofree char *after = figure (pair->after, unit);
      const UnsootCell cells[] = {
        { UNSOOT_CELL_TEXT, .text = unsoot_slug_words (unsoot_reading_kinds, (int) pair->kind) },
        { UNSOOT_CELL_FILL, .text = before, .unit = unsoot_unit_symbol (unit) },
        { UNSOOT_CELL_FILL, .text = after, .unit = unsoot_unit_symbol (unit) },
        { UNSOOT_CELL_TEXT },
        { instrument != NULL ? UNSOOT_CELL_TEXT : UNSOOT_CELL_FILL, .text = instrument },
      };
      unsoot_table_row (&table, cells);
    }
  unsoot_table_end (&table);
}

static const UnsootReadingRow *
any_of_stage (const GArray *pairs, gboolean after)
{
  for (guint i = 0; i < pairs->len; i++)
    {
      const UnsootReadingPair *pair = &g_array_index (pairs, UnsootReadingPair, i);
      const UnsootReadingRow *row = after ? pair->after : pair->before;
      if (row != NULL)
        return row;
    }
  return NULL;
}

static char *
condition_figure (const UnsootReadingRow *row, guint index)
{
  const double value
      = row != NULL
            ? *(const double *) (const void *) ((const char *) row + conditions[index].offset)
            : (double) NAN;

  return isfinite (value)
             ? unsoot_paper_number (unsoot_unit_from_si (conditions[index].unit, value),
                                    unsoot_unit_decimals (conditions[index].unit))
             : NULL;
}

static const char *
egr_words (const UnsootReadingRow *row)
{
  int state;

  return row != NULL && unsoot_slug_find (unsoot_egr_states, row->egr_state, &state)
                 && state != UNSOOT_EGR_UNKNOWN
             ? unsoot_slug_words (unsoot_egr_states, state)
             : NULL;
}

static const char *
regeneration_words (const UnsootReadingRow *row)
{
  if (row == NULL)
    return NULL;
  return row->regeneration ? _ ("yes") : _ ("no");
}

static void
condition_row (UnsootTable *table, const char *name, const char *before, const char *after,
               const char *unit)
{
  const UnsootCell cells[] = {
    { UNSOOT_CELL_TEXT, .text = name },
    { UNSOOT_CELL_FILL, .text = before, .unit = unit },
    { UNSOOT_CELL_FILL, .text = after, .unit = unit },
    { UNSOOT_CELL_TEXT },
    { UNSOOT_CELL_TEXT },
  };

  unsoot_table_row (table, cells);
}

static void
draw_conditions (UnsootPageKit *kit, const GArray *pairs)
{
  const UnsootColumn columns[] = {
    { _ ("Taken at"), -1, UNSOOT_ALIGN_LEFT }, { _ ("Before"), 96, UNSOOT_ALIGN_RIGHT },
    { _ ("After"), 96, UNSOOT_ALIGN_RIGHT },   { NULL, 6, UNSOOT_ALIGN_LEFT },
    { NULL, 120, UNSOOT_ALIGN_LEFT },
  };
  const UnsootReadingRow *before = any_of_stage (pairs, FALSE), *after = any_of_stage (pairs, TRUE);
  UnsootTable table;

  unsoot_table_begin (&table, kit, columns, G_N_ELEMENTS (columns), TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (conditions); i++)
    {
      g_autofree char *first = condition_figure (before, i);
      g_autofree char *second = condition_figure (after, i);

      condition_row (&table, _ (conditions[i].name), first, second,
                     unsoot_unit_symbol (conditions[i].unit));
    }
  condition_row (&table, _ ("EGR valve: shut, regulated, open"), egr_words (before),
                 egr_words (after), NULL);
  condition_row (&table, _ ("Regeneration running"), regeneration_words (before),
                 regeneration_words (after), NULL);
  unsoot_table_end (&table);
}

void
unsoot_paper_readings_to_fill (UnsootPageKit *kit, const UnsootJobFile *file)
{
  g_autoptr (GArray) pairs = pairs_to_fill (file);

  draw_values (kit, pairs);
  draw_conditions (kit, pairs);
  unsoot_page_paragraph (
      kit, &unsoot_text_small,
      _ ("Readings compare only where both were taken alike: same speed, load and temperature, the "
         "EGR valve in the same state, no regeneration between."));
}
