/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "fuzz.h"
#include "hazard.h"
#include "targets.h"

static void
check_statements (const GPtrArray *list, char first, GString *codes)
{
  for (guint i = 0; i < list->len; i++)
    {
      const UnsootStatement *statement = list->pdata[i];
      FUZZ_CHECK (statement != NULL, "%u of %c", i, first);
      FUZZ_CHECK ((*statement->code == 'P') == (first == 'P'), "%s among %c", statement->code,
                  first);
      FUZZ_CHECK (unsoot_statement_text (statement->code) != NULL, "%s", statement->code);
      for (guint k = 0; k < i; k++)
        FUZZ_CHECK (list->pdata[k] != statement, "%s twice", statement->code);
      g_string_append_printf (codes, "%s; ", statement->code);
    }
}

static void
check_same_signs (const UnsootLabel *a, const char *codes)
{
  g_auto (UnsootLabel) b = { 0 };
  GError *error = NULL;
  fuzz_answer (unsoot_label_read (codes, &b, &error), &error);
  FUZZ_CHECK (b.hazards != NULL, "%s is refused", codes);
  FUZZ_CHECK (a->signal == b.signal, "%s", codes);
  FUZZ_CHECK (memcmp (a->pictograms, b.pictograms, sizeof a->pictograms) == 0, "%s", codes);
  FUZZ_CHECK (a->advice->len == b.advice->len && a->hazards->len == b.hazards->len, "%s", codes);
}

/* The same codes the other way round. */
static char *
turned (const char *codes)
{
  g_auto (GStrv) words = g_strsplit (codes, ";", -1);
  guint n = g_strv_length (words);
  for (guint i = 0; i < n / 2; i++)
    {
      char *word = words[i];
      words[i] = words[n - 1 - i];
      words[n - 1 - i] = word;
    }
  return g_strjoinv (";", words);
}

/* A strong word needs a hazard with it, and the label says the strongest. */
static void
check_signal (const UnsootLabel *label)
{
  UnsootSignal strongest = UNSOOT_SIGNAL_NONE;
  gboolean any = FALSE;
  for (guint i = 0; i < label->hazards->len; i++)
    {
      const UnsootStatement *hazard = label->hazards->pdata[i];
      strongest = MAX (strongest, hazard->signal);
      any = any || hazard->pictogram != UNSOOT_GHS_NONE;
    }
  FUZZ_CHECK (label->signal == strongest, "%d", (int) label->signal);
  gboolean shown = FALSE;
  for (int i = 0; i < UNSOOT_PICTOGRAMS; i++)
    shown = shown || label->pictograms[i];
  FUZZ_CHECK (shown == any && !label->pictograms[UNSOOT_GHS_NONE], "signs");
}

void
fuzz_label (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  g_auto (UnsootLabel) label = { 0 };
  g_autoptr (GString) codes = g_string_new (NULL);
  GError *error = NULL;

  if (!fuzz_answer (unsoot_label_read (text, &label, &error), &error))
    {
      FUZZ_CHECK (label.hazards == NULL && label.advice == NULL, "“%s” is refused and taken", text);
      return;
    }
  check_statements (label.hazards, 'H', codes);
  check_statements (label.advice, 'P', codes);
  check_signal (&label);
  check_same_signs (&label, codes->str);
  g_autofree char *other_way = turned (codes->str);
  check_same_signs (&label, other_way);
}
