/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-readings.h"

UnsootReading
unsoot_paper_reading (const UnsootReadingRow *row)
{
  int egr = UNSOOT_EGR_UNKNOWN;

  unsoot_slug_find (unsoot_egr_states, row->egr_state, &egr);
  return (UnsootReading){
    .value = row->value,
    .tolerance = row->tolerance,
    .condition = { row->rpm, row->load_percent, row->coolant_c, (UnsootEgrState) egr,
                   row->regeneration, row->barometer_pa, row->ambient_c },
  };
}

static const UnsootReadingRow *
latest (const UnsootJobFile *file, int kind, const char *stage)
{
  const UnsootReadingRow *found = NULL;

  for (guint i = 0; i < file->readings->len; i++)
    {
      const UnsootReadingRow *row = g_ptr_array_index (file->readings, i);
      int its_kind;

      if (unsoot_slug_find (unsoot_reading_kinds, row->kind, &its_kind) && its_kind == kind
          && g_strcmp0 (row->stage, stage) == 0 && (found == NULL || row->at >= found->at))
        found = row;
    }
  return found;
}

GArray *
unsoot_paper_reading_pairs (const UnsootJobFile *file)
{
  GArray *pairs = g_array_new (FALSE, FALSE, sizeof (UnsootReadingPair));

  for (int kind = 0; kind < UNSOOT_READING_KINDS; kind++)
    {
      const UnsootReadingPair pair = { (UnsootReadingKind) kind, latest (file, kind, "before"),
                                       latest (file, kind, "after") };

      if (pair.before != NULL || pair.after != NULL)
        g_array_append_val (pairs, pair);
    }
  return pairs;
}
