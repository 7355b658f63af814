/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-hazards.h"

#include <glib/gi18n-lib.h>

#include "ghs-symbol.h"
#include "page-mark.h"
#include "page-text.h"
#include "paper-words.h"

#define SYMBOL 42.0
#define ACROSS 2 /* symbols beside each other; the others below */

/* A fluid's label, ready to draw. */
typedef struct
{
  const UnsootPaperSide *side;
  const char *heading; /* above the first; NULL: none */
  UnsootPictogram pictograms[UNSOOT_PICTOGRAMS];
  guint n_pictograms;
  const char *signal;
  char *hazards; /* H statements, one a line */
  char *advice;  /* P statements, run in */
} Label;

/* Pictograms by name from the record; those it names wrongly are left to the statements. */
static void
read_pictograms (Label *label, const UnsootLabel *derived)
{
  const char *names = label->side->fluid->pictograms;
  g_auto (GStrv) list = g_strsplit_set (names != NULL ? names : "", " ,;", -1);

  for (guint i = 0; list[i] != NULL && label->n_pictograms < UNSOOT_PICTOGRAMS; i++)
    {
      g_autofree char *slug = g_ascii_strdown (list[i], -1);
      int pictogram;

      if (unsoot_slug_find (unsoot_pictograms, slug, &pictogram))
        label->pictograms[label->n_pictograms++] = (UnsootPictogram) pictogram;
    }
  for (int i = 1; label->n_pictograms == 0 && derived != NULL && i < UNSOOT_PICTOGRAMS; i++)
    if (derived->pictograms[i])
      label->pictograms[label->n_pictograms++] = (UnsootPictogram) i;
}

static void
read_signal (Label *label, const UnsootLabel *derived)
{
  int signal = UNSOOT_SIGNAL_NONE;

  if (!unsoot_slug_find (unsoot_signals, label->side->fluid->signal_word, &signal)
      && derived != NULL)
    signal = (int) derived->signal;
  if (signal != UNSOOT_SIGNAL_NONE)
    label->signal = unsoot_slug_words (unsoot_signals, signal);
}

static char *
statements_text (const GPtrArray *statements, const char *separator)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < statements->len; i++)
    {
      const UnsootStatement *statement = g_ptr_array_index (statements, i);
      g_string_append_printf (text, "%s%s\u00A0%s", i > 0 ? separator : "", statement->code,
                              unsoot_statement_text (statement->code));
    }
  return g_string_free (text, FALSE);
}

/* A code that is not known is printed as it stands, never left out. */
static void
read_label (Label *label)
{
  const UnsootFluidRow *fluid = label->side->fluid;
  g_autofree char *codes
      = unsoot_paper_join (" ", fluid->h_statements != NULL ? fluid->h_statements : "",
                           fluid->p_statements != NULL ? fluid->p_statements : "", NULL);
  g_auto (UnsootLabel) derived = { 0 };
  const gboolean known = unsoot_label_read (codes, &derived, NULL);

  read_pictograms (label, known ? &derived : NULL);
  read_signal (label, known ? &derived : NULL);
  label->hazards = known ? statements_text (derived.hazards, "\n") : g_strdup (codes);
  label->advice = known ? statements_text (derived.advice, " ") : NULL;
}

static double
write_wrapped (UnsootPageKit *kit, const UnsootTextStyle *style, const char *text, double x,
               double y)
{
  g_autoptr (GPtrArray) lines = unsoot_page_wrap (kit, style, text, kit->right - x);

  return unsoot_page_write_lines (kit, style, UNSOOT_ALIGN_LEFT, x, y, lines);
}

static char *
title_words (const Label *label)
{
  const UnsootFluidRow *fluid = label->side->fluid;
  /* Translators: a United Nations number for goods in transport */
  g_autofree char *un = fluid->un_number != NULL && *fluid->un_number != '\0'
                            ? g_strdup_printf (_ ("UN %s"), fluid->un_number)
                            : g_strdup ("");
  g_autofree char *day = unsoot_paper_day (fluid->sds_on);
  g_autofree char *sheet
      = day != NULL ? g_strdup_printf (_ ("safety data sheet of %s"), day) : g_strdup ("");

  return unsoot_paper_join (" · ", fluid->name, un, sheet, NULL);
}

static void
draw_label (UnsootPageKit *kit, gconstpointer data)
{
  const Label *label = data;
  const double text = kit->left + ACROSS * (SYMBOL + 3) + 9;
  const guint rows = (label->n_pictograms + ACROSS - 1) / ACROSS;
  g_autofree char *title = title_words (label);
  double y;

  if (label->heading != NULL)
    unsoot_page_heading (kit, label->heading, 0);
  y = kit->y;
  for (guint i = 0; i < label->n_pictograms; i++)
    unsoot_page_ghs (kit, label->pictograms[i], kit->left + i % ACROSS * (SYMBOL + 3),
                     kit->y + 2 + i / ACROSS * (SYMBOL + 3), SYMBOL);
  unsoot_page_side_mark (kit, label->side->side, text, y + 2, 11);
  y += write_wrapped (kit, &unsoot_text_body_bold, title, text + 17, y);
  y += write_wrapped (kit, &unsoot_text_lead_bold, label->signal, text, y);
  y += write_wrapped (kit, &unsoot_text_small_ink, label->hazards, text, y);
  y += 3 + write_wrapped (kit, &unsoot_text_small, label->advice, text, y + 3);
  kit->y = MAX (y, kit->y + rows * (SYMBOL + 3) + 2) + 12;
}

void
unsoot_paper_hazards (UnsootPageKit *kit, const UnsootPaperSide *side, const char *heading)
{
  Label label = { .side = side, .heading = heading };

  if (side->fluid == NULL)
    return;
  read_label (&label);
  unsoot_page_keep (kit, draw_label, &label, 0);
  g_free (label.hazards);
  g_free (label.advice);
}
