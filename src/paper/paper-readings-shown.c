/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-readings.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "page-bars.h"
#include "page-block.h"
#include "paper-words.h"

/* What one pair shows; strings are owned. */
typedef struct
{
  UnsootBars bars;
  char *before, *after, *note, *sentence;
} Shown;

/* A tolerance is a width: the unit's zero (of degrees) falls out. */
static double
width_in (UnsootUnit unit, double tolerance)
{
  return fabs (unsoot_unit_from_si (unit, tolerance) - unsoot_unit_from_si (unit, 0));
}

static char *
note_words (const UnsootReadingPair *pair, const char *tolerance)
{
  const char *instrument
      = pair->after->instrument != NULL ? pair->after->instrument : pair->before->instrument;

  if (instrument != NULL && *instrument != '\0')
    /* Translators: the instrument, how far it may err either way */
    return g_strdup_printf (_ ("%s, ± %s"), instrument, tolerance);
  return g_strdup_printf (_ ("instrument ± %s"), tolerance);
}

static Shown
show_pair (const UnsootReadingPair *pair)
{
  const UnsootUnit unit = unsoot_reading_facts (pair->kind).shown;
  const UnsootReading before = unsoot_paper_reading (pair->before);
  const UnsootReading after = unsoot_paper_reading (pair->after);
  g_auto (UnsootReadingChange) change
      = unsoot_reading_change (pair->kind, &before, &after, &unsoot_alike_usual);
  const double tolerance = width_in (unit, unsoot_reading_tolerance (pair->kind, &after));
  g_autofree char *figure = unsoot_paper_number (tolerance, unsoot_unit_decimals (unit) + 1);
  g_autofree char *width = g_strconcat (figure, "\u00A0", unsoot_unit_symbol (unit), NULL);
  Shown shown = { .before = unsoot_paper_number (unsoot_unit_from_si (unit, before.value),
                                                 unsoot_unit_decimals (unit)),
                  .after = unsoot_paper_number (unsoot_unit_from_si (unit, after.value),
                                                unsoot_unit_decimals (unit)),
                  .note = note_words (pair, width),
                  .sentence = g_steal_pointer (&change.sentence) };

  shown.bars = (UnsootBars){ .title = unsoot_slug_words (unsoot_reading_kinds, (int) pair->kind),
                             .note = shown.note,
                             .before = unsoot_unit_from_si (unit, before.value),
                             .after = unsoot_unit_from_si (unit, after.value),
                             .before_tolerance
                             = width_in (unit, unsoot_reading_tolerance (pair->kind, &before)),
                             .after_tolerance = tolerance,
                             .before_text = shown.before,
                             .after_text = shown.after,
                             .unit = unsoot_unit_symbol (unit) };
  return shown;
}

static void
draw_shown (UnsootPageKit *kit, gconstpointer data)
{
  const Shown *shown = data;

  unsoot_page_bars (kit, &shown->bars);
  unsoot_page_paragraph (kit, &unsoot_text_small_ink, shown->sentence);
  kit->y += 12;
}

static void
draw_pair (UnsootPageKit *kit, const UnsootReadingPair *pair)
{
  Shown shown = show_pair (pair);

  unsoot_page_keep (kit, draw_shown, &shown, 0);
  g_free (shown.before);
  g_free (shown.after);
  g_free (shown.note);
  g_free (shown.sentence);
}

/* A reading without its counterpart is told, and proves nothing. */
static void
draw_single (UnsootPageKit *kit, const UnsootReadingPair *pair)
{
  const gboolean is_before = pair->before != NULL;
  const UnsootReadingRow *row = is_before ? pair->before : pair->after;
  g_autofree char *value = unsoot_reading_format (pair->kind, row->value);
  /* Translators: a reading's name and value */
  g_autofree char *sentence
      = g_strdup_printf (is_before ? _ ("%s: %s before, not measured after. It shows no change.")
                                   : _ ("%s: %s after, not measured before. It shows no change."),
                         unsoot_slug_words (unsoot_reading_kinds, (int) pair->kind), value);

  unsoot_page_paragraph (kit, &unsoot_text_small_ink, sentence);
  kit->y += 6;
}

static void
draw_limits (UnsootPageKit *kit, const GArray *pairs)
{
  g_autoptr (GPtrArray) sentences = g_ptr_array_new_with_free_func (g_free);
  const UnsootNotice notice
      = { UNSOOT_NOTICE_PLAIN, _ ("What these readings can't show"), sentences, NULL };

  for (guint i = 0; i < pairs->len; i++)
    {
      const UnsootReadingKind kind = g_array_index (pairs, UnsootReadingPair, i).kind;
      const char *limits = unsoot_reading_facts (kind).limits;

      if (limits != NULL)
        g_ptr_array_add (
            sentences, g_strdup_printf (
                           "%s: %s", unsoot_slug_words (unsoot_reading_kinds, (int) kind), limits));
    }
  g_ptr_array_add (sentences,
                   g_strdup (_ ("Wear, injector faults and what happens on later journeys are not "
                                "measured here.")));
  unsoot_page_notice (kit, &notice);
}

void
unsoot_paper_readings_shown (UnsootPageKit *kit, const UnsootJobFile *file)
{
  g_autoptr (GArray) pairs = unsoot_paper_reading_pairs (file);

  unsoot_page_heading (kit, _ ("Before and after"), 70);
  if (pairs->len == 0)
    {
      unsoot_page_paragraph (kit, &unsoot_text_body, _ ("Nothing was measured on this job."));
      return;
    }
  for (guint i = 0; i < pairs->len; i++)
    {
      const UnsootReadingPair *pair = &g_array_index (pairs, UnsootReadingPair, i);

      if (pair->before != NULL && pair->after != NULL)
        draw_pair (kit, pair);
      else
        draw_single (kit, pair);
    }
  draw_limits (kit, pairs);
}
