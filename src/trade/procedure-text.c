/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reads a procedure. The grammar is in the header. */
#include "procedure-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "procedure-words.h"

typedef struct
{
  int line;
  UnsootProcedure *procedure;
  UnsootFamilyFacts *facts;
  GHashTable *seen; /* header words that may stand only once */
} Reader;

static gboolean
read_yes_no (const char *text, gboolean *flag, int line, GError **error)
{
  *flag = g_str_equal (text, "yes");
  if (!*flag && !g_str_equal (text, "no"))
    return unsoot_word_fail (error, line, _ ("yes or no is expected, not “%s”"), text);
  return TRUE;
}

static gboolean
read_sides (const char *text, UnsootProcedure *procedure, int line, GError **error)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);

  for (char **word = words; *word != NULL; word++)
    {
      UnsootSide side;
      if (!unsoot_side_from_slug (*word, &side) || side == UNSOOT_SIDE_NONE)
        return unsoot_word_fail (error, line, _ ("“%s” is no side: fuel or intake"), *word);
      if (procedure->cleans[side])
        return unsoot_word_fail (error, line, _ ("“%s” stands twice"), *word);
      procedure->cleans[side] = TRUE;
    }
  return TRUE;
}

static gboolean
read_lift_pump (const char *text, UnsootFamilyFacts *facts, int line, GError **error)
{
  facts->has_lift_pump = !g_str_equal (text, "none");
  facts->lift_pump_bypass_allowed = g_str_equal (text, "bypass");
  if (facts->has_lift_pump && !facts->lift_pump_bypass_allowed && !g_str_equal (text, "unplug"))
    return unsoot_word_fail (error, line, _ ("bypass, unplug or none is expected, not “%s”"), text);
  return TRUE;
}

static gboolean
read_window (const char *text, UnsootFamilyFacts *facts, int line, GError **error)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  double least, most;
  UnsootUnit unit;

  if (g_str_equal (text, "none"))
    return TRUE;
  if (g_strv_length (words) != 4 || !g_str_equal (words[1], "to")
      || !unsoot_word_number (words[0], &least) || !unsoot_word_number (words[2], &most))
    return unsoot_word_fail (error, line, _ ("a window reads “6 to 10 psi” or “none”, not “%s”"),
                             text);
  unit = unsoot_pressure_unit (words[3]);
  if (unit == UNSOOT_UNIT_NONE)
    return unsoot_word_fail (error, line, _ ("“%s” is no unit of pressure: psi, bar, kPa or Pa"),
                             words[3]);
  if (!(least > 0 && least <= most))
    return unsoot_word_fail (error, line,
                             _ ("the window's lower edge is above zero and below the upper"));
  facts->window_min_pa = unsoot_unit_to_si (unit, least);
  facts->window_max_pa = unsoot_unit_to_si (unit, most);
  if (!isfinite (facts->window_max_pa))
    return unsoot_word_fail (error, line, _ ("no pressure is as high as %g %s"), most, words[3]);
  return TRUE;
}

static gboolean
read_egr (const char *text, UnsootFamilyFacts *facts, int line, GError **error)
{
  facts->has_egr = !g_str_equal (text, "none");
  facts->has_egr_cooler = g_str_equal (text, "valve cooler");
  if (facts->has_egr && !facts->has_egr_cooler && !g_str_equal (text, "valve"))
    return unsoot_word_fail (error, line,
                             _ ("“valve cooler”, “valve” or “none” is expected, not “%s”"), text);
  return TRUE;
}

static gboolean
read_dose (const char *text, UnsootFamilyFacts *facts, int line, GError **error)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  UnsootSide side;
  guint64 ml;

  if (g_strv_length (words) != 3 || !unsoot_side_from_slug (words[0], &side)
      || side == UNSOOT_SIDE_NONE || !g_str_equal (words[2], "ml")
      || !g_ascii_string_to_unsigned (words[1], 10, 1, 1000000, &ml, NULL))
    return unsoot_word_fail (error, line, _ ("a dose reads “fuel 1000 ml”, not “%s”"), text);
  if (facts->dose_ml[side] != 0)
    return unsoot_word_fail (error, line, _ ("“%s” stands twice"), words[0]);
  facts->dose_ml[side] = (gint64) ml;
  return TRUE;
}

static gboolean
read_caution (const char *text, UnsootProcedure *procedure, int line, GError **error)
{
  UnsootPhase *phase;
  g_auto (GStrv) words = g_strsplit (text, " ", -1);

  if (procedure->phases->len == 0)
    return unsoot_word_fail (error, line, _ ("cautions follow a phase"));
  phase = procedure->phases->pdata[procedure->phases->len - 1];
  for (char **word = words; *word != NULL; word++)
    {
      UnsootCaution caution;
      if (!unsoot_caution_from_slug (*word, &caution))
        return unsoot_word_fail (error, line, _ ("“%s” is no caution"), *word);
      if (phase->cautions & (guint) caution)
        return unsoot_word_fail (error, line, _ ("“%s” stands twice"), *word);
      phase->cautions |= (guint) caution;
    }
  return TRUE;
}

static gboolean
read_low_point (const char *text, UnsootFamilyFacts *facts, int line, GError **error)
{
  for (guint i = 0; i < facts->low_points->len; i++)
    if (g_str_equal (facts->low_points->pdata[i], text))
      return unsoot_word_fail (error, line, _ ("“%s” stands twice"), text);
  unsoot_family_facts_add_low_point (facts, text);
  return TRUE;
}

static gboolean
read_step_line (Reader *reader, const char *text, GError **error)
{
  UnsootStep *step;

  if (reader->procedure->phases->len == 0)
    return unsoot_word_fail (error, reader->line,
                             _ ("steps follow a phase, or this is no word of a heading"));
  step = unsoot_step_parse_at (text, reader->line, error);
  if (step == NULL)
    return FALSE;
  unsoot_procedure_add_step (reader->procedure, step);
  return TRUE;
}

/* Whether the line opens with HEAD; *REST is then what follows. */
static gboolean
opens_with (const char *line, const char *head, const char **rest)
{
  gsize length = strlen (head);

  if (!g_str_has_prefix (line, head) || (line[length] != ' ' && line[length] != '\0'))
    return FALSE;
  *rest = line + length + (line[length] == ' ');
  return TRUE;
}

static const char *const once[] = { "procedure", "sides",  "family",       "lift-pump", "window",
                                    "egr",       "heater", "regeneration", "road" };

static gboolean
read_once (Reader *reader, const char *head, const char *rest, GError **error)
{
  UnsootFamilyFacts *facts = reader->facts;

  if (!g_hash_table_add (reader->seen, (gpointer) head))
    return unsoot_word_fail (error, reader->line, _ ("“%s” stands twice"), head);
  if (*rest == '\0')
    return unsoot_word_fail (error, reader->line, _ ("“%s” says nothing"), head);
  if (g_str_equal (head, "procedure"))
    reader->procedure->title = unsoot_word_unescape (rest);
  else if (g_str_equal (head, "family"))
    facts->name = unsoot_word_unescape (rest);
  else if (g_str_equal (head, "sides"))
    return read_sides (rest, reader->procedure, reader->line, error);
  else if (g_str_equal (head, "lift-pump"))
    return read_lift_pump (rest, facts, reader->line, error);
  else if (g_str_equal (head, "window"))
    return read_window (rest, facts, reader->line, error);
  else if (g_str_equal (head, "egr"))
    return read_egr (rest, facts, reader->line, error);
  else if (g_str_equal (head, "heater"))
    return read_yes_no (rest, &facts->has_heater, reader->line, error);
  else if (g_str_equal (head, "regeneration"))
    return read_yes_no (rest, &facts->has_regeneration, reader->line, error);
  else
    return read_yes_no (rest, &facts->has_road, reader->line, error);
  return TRUE;
}

static gboolean
read_line (Reader *reader, const char *line, GError **error)
{
  const char *rest;

  if (*line == '\0' || *line == '#')
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (once); i++)
    if (opens_with (line, once[i], &rest))
      return read_once (reader, once[i], rest, error);
  if (opens_with (line, "low-point", &rest) && *rest != '\0')
    {
      g_autofree char *name = unsoot_word_unescape (rest);
      return read_low_point (name, reader->facts, reader->line, error);
    }
  if (opens_with (line, "dose", &rest))
    return read_dose (rest, reader->facts, reader->line, error);
  if (opens_with (line, "phase", &rest))
    {
      g_autofree char *title = unsoot_word_unescape (rest);
      if (title == NULL)
        return unsoot_word_fail (error, reader->line, _ ("“%s” says nothing"), "phase");
      unsoot_procedure_add_phase (reader->procedure, title, 0);
      return TRUE;
    }
  if (opens_with (line, "caution", &rest))
    return read_caution (rest, reader->procedure, reader->line, error);
  return read_step_line (reader, line, error);
}

static gboolean
read_lines (Reader *reader, const char *text, GError **error)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  if (!g_utf8_validate (text, -1, NULL))
    return unsoot_word_fail (error, 1, _ ("the text is not UTF-8"));
  for (char **line = lines; *line != NULL; line++)
    {
      reader->line++;
      if (!read_line (reader, unsoot_word_strip (*line), error))
        return FALSE;
    }
  for (guint i = 0; i < G_N_ELEMENTS (once); i++)
    if (!g_hash_table_contains (reader->seen, once[i]))
      return unsoot_word_fail (error, reader->line, _ ("the text ends, and “%s” was not said"),
                               once[i]);
  return TRUE;
}

gboolean
unsoot_procedure_parse (const char *text, UnsootProcedure **procedure, UnsootFamilyFacts **facts,
                        GError **error)
{
  g_autoptr (UnsootProcedure) read_procedure = unsoot_procedure_new (NULL);
  g_autoptr (UnsootFamilyFacts) read_facts = unsoot_family_facts_new (NULL);
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  Reader reader = { 0, read_procedure, read_facts, seen };

  if (!read_lines (&reader, text, error))
    return FALSE;
  *procedure = g_steal_pointer (&read_procedure);
  *facts = g_steal_pointer (&read_facts);
  return TRUE;
}
