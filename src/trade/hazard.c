/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hazard.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "hazard-statements.h"
#include "trade-error.h"

const UnsootSlug unsoot_pictograms[] = {
  { UNSOOT_GHS01, "ghs01", N_ ("Exploding bomb: explosive") },
  { UNSOOT_GHS02, "ghs02", N_ ("Flame: flammable") },
  { UNSOOT_GHS03, "ghs03", N_ ("Flame over circle: oxidising") },
  { UNSOOT_GHS04, "ghs04", N_ ("Gas cylinder: gas under pressure") },
  { UNSOOT_GHS05, "ghs05", N_ ("Corrosion: burns skin, eyes or metal") },
  { UNSOOT_GHS06, "ghs06", N_ ("Skull and crossbones: toxic") },
  { UNSOOT_GHS07, "ghs07", N_ ("Exclamation mark: harmful or irritating") },
  { UNSOOT_GHS08, "ghs08", N_ ("Person with star: lasting harm to health") },
  { UNSOOT_GHS09, "ghs09", N_ ("Tree and fish: harmful to waters") },
  { 0, NULL, NULL },
};

const UnsootSlug unsoot_signals[] = {
  { UNSOOT_SIGNAL_NONE, "none", N_ ("No signal word") },
  { UNSOOT_SIGNAL_WARNING, "warning", N_ ("Warning") },
  { UNSOOT_SIGNAL_DANGER, "danger", N_ ("Danger") },
  { 0, NULL, NULL },
};

const UnsootStatement *
unsoot_statement_find (const char *code)
{
  for (const UnsootStatement *s = unsoot_statements; s->code; s++)
    if (g_strcmp0 (s->code, code) == 0)
      return s;
  return NULL;
}

const char *
unsoot_statement_text (const char *code)
{
  const UnsootStatement *statement = unsoot_statement_find (code);
  return statement ? _ (statement->text) : NULL;
}

void
unsoot_label_clear (UnsootLabel *label)
{
  g_clear_pointer (&label->hazards, g_ptr_array_unref);
  g_clear_pointer (&label->advice, g_ptr_array_unref);
}

static void
add_once (GPtrArray *list, const UnsootStatement *statement)
{
  if (!g_ptr_array_find (list, statement, NULL))
    g_ptr_array_add (list, (gpointer) statement);
}

static gboolean
has_code (const GPtrArray *list, const char *code)
{
  for (guint i = 0; i < list->len; i++)
    if (strcmp (((const UnsootStatement *) list->pdata[i])->code, code) == 0)
      return TRUE;
  return FALSE;
}

/* Article 26: the skull makes the exclamation mark needless, the corrosion sign
 * that of irritated skin and eyes, the star of H334 that of skin besides. */
static gboolean
gives_way (const UnsootLabel *label, const UnsootStatement *hazard)
{
  static const char *const irritating[] = { "H315", "H319", NULL };
  if (hazard->pictogram != UNSOOT_GHS07)
    return FALSE;
  gboolean skin_or_eyes = g_strv_contains (irritating, hazard->code);
  if (label->pictograms[UNSOOT_GHS06] || (label->pictograms[UNSOOT_GHS05] && skin_or_eyes))
    return TRUE;
  return has_code (label->hazards, "H334") && (skin_or_eyes || strcmp (hazard->code, "H317") == 0);
}

static void
choose_signs (UnsootLabel *label)
{
  for (guint i = 0; i < label->hazards->len; i++)
    {
      const UnsootStatement *hazard = label->hazards->pdata[i];
      if (hazard->pictogram != UNSOOT_GHS_NONE && hazard->pictogram != UNSOOT_GHS07)
        label->pictograms[hazard->pictogram] = TRUE;
      label->signal = MAX (label->signal, hazard->signal);
    }
  for (guint i = 0; i < label->hazards->len; i++)
    {
      const UnsootStatement *hazard = label->hazards->pdata[i];
      if (hazard->pictogram == UNSOOT_GHS07 && !gives_way (label, hazard))
        label->pictograms[UNSOOT_GHS07] = TRUE;
    }
}

static void
add_advice (UnsootLabel *label)
{
  for (guint i = 0; i < label->hazards->len; i++)
    {
      const UnsootStatement *hazard = label->hazards->pdata[i];
      g_auto (GStrv) codes = g_strsplit (hazard->advice ? hazard->advice : "", " ", -1);
      for (guint k = 0; codes[k] && *codes[k]; k++)
        add_once (label->advice, unsoot_statement_find (codes[k]));
    }
}

gboolean
unsoot_label_read (const char *codes, UnsootLabel *label, GError **error)
{
  g_auto (UnsootLabel) read = { .hazards = g_ptr_array_new (), .advice = g_ptr_array_new () };
  g_auto (GStrv) words = g_strsplit_set (codes, " ,;\t\n", -1);
  for (guint i = 0; words[i]; i++)
    {
      g_autofree char *code = g_ascii_strup (words[i], -1);
      const UnsootStatement *statement = unsoot_statement_find (code);
      if (*code == '\0')
        continue;
      if (statement == NULL)
        {
          g_autofree char *shown = g_utf8_make_valid (words[i], -1);
          g_set_error (
              error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_UNKNOWN,
              _ ("“%s” is no hazard or precaution code that is known here. Compare it with "
                 "section 2 of the safety data sheet."),
              shown);
          return FALSE;
        }
      add_once (*code == 'P' ? read.advice : read.hazards, statement);
    }
  choose_signs (&read);
  add_advice (&read);
  *label = read;
  read.hazards = NULL;
  read.advice = NULL;
  return TRUE;
}
