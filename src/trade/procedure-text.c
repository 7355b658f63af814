/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reads a procedure. The grammar is in the header. */
#include "procedure-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "procedure-words.h"

G_DEFINE_QUARK (unsoot - procedure - text - error - quark, unsoot_procedure_text_error)

typedef struct
{
  int line;
  UnsootProcedure *procedure;
  UnsootFamilyFacts *facts;
  GHashTable *seen; /* header words that may stand only once */
} Reader;

static gboolean fail (GError **error, int line, const char *format, ...) G_GNUC_PRINTF (3, 4);

static gboolean
fail (GError **error, int line, const char *format, ...)
{
  va_list values;
  g_autofree char *reason = NULL;

  va_start (values, format);
  reason = g_strdup_vprintf (format, values);
  va_end (values);
  /* Translators: number of the line, then what is wrong there */
  g_set_error (error, UNSOOT_PROCEDURE_TEXT_ERROR, line, _ ("Line %d: %s"), line, reason);
  return FALSE;
}

/* One word, bare or quoted; *CURSOR moves past it and the blanks behind it. */
typedef struct
{
  char *text;
  gboolean quoted;
} Word;

static char
unescaped (char c)
{
  return c == 'n' ? '\n' : c;
}

static gboolean
take_word (const char **cursor, Word *word, int line, GError **error)
{
  g_autoptr (GString) text = g_string_new (NULL);
  const char *p = *cursor;

  word->quoted = *p == '"';
  p += word->quoted;
  while (*p != '\0' && (word->quoted ? *p != '"' : *p != ' ' && *p != '\t'))
    {
      if (*p == '\\' && p[1] != '\0')
        g_string_append_c (text, unescaped (*++p));
      else
        g_string_append_c (text, *p);
      p++;
    }
  if (word->quoted && *p++ != '"')
    return fail (error, line, _ ("a quotation mark is not closed"));
  while (*p == ' ' || *p == '\t')
    p++;
  *cursor = p;
  word->text = g_string_free (g_steal_pointer (&text), FALSE);
  return TRUE;
}

/* Cuts LINE at its first two bars that stand outside quotes and behind no backslash. */
static void
cut_at_bars (const char *line, char *part[3])
{
  const char *start = line;
  gboolean quoted = FALSE;
  int n = 0;

  for (const char *p = line; *p != '\0'; p++)
    if (*p == '\\' && p[1] != '\0')
      p++;
    else if (*p == '"' && n == 0)
      quoted = !quoted;
    else if (*p == '|' && !quoted && n < 2)
      {
        part[n++] = g_strndup (start, (gsize) (p - start));
        start = p + 1;
      }
  part[n] = g_strdup (start);
  for (int i = 0; i <= n; i++)
    g_strstrip (part[i]);
}

/* Wording and why: NULL where nothing is written. */
static char *
unescape (const char *text)
{
  GString *plain;

  if (text == NULL || *text == '\0')
    return NULL;
  plain = g_string_new (NULL);
  for (const char *p = text; *p != '\0'; p++)
    g_string_append_c (plain, *p == '\\' && p[1] != '\0' ? unescaped (*++p) : *p);
  return g_string_free (plain, FALSE);
}

static gboolean
read_number (const char *text, double *number)
{
  char *end = NULL;

  if (!g_ascii_isdigit (*text))
    return FALSE;
  *number = g_ascii_strtod (text, &end);
  return *end == '\0' && isfinite (*number);
}

static gboolean
take_number (const char **rest, const char *key, double *number, int line, GError **error)
{
  Word word = { NULL };
  g_autofree char *text = NULL;

  if (!isnan (*number))
    return fail (error, line, _ ("“%s” stands twice"), key);
  if (!take_word (rest, &word, line, error))
    return FALSE;
  text = word.text;
  if (word.quoted || !read_number (text, number))
    return fail (error, line, _ ("“%s” needs a number, not “%s”"), key, text);
  return TRUE;
}

static gboolean
take_value (const char **rest, double number, UnsootStep *step, int line, GError **error)
{
  Word word = { NULL };
  UnsootUnit pressure;
  g_autofree char *unit = NULL;

  if (!take_word (rest, &word, line, error))
    return FALSE;
  unit = word.text;
  pressure = unsoot_pressure_unit (unit);
  if (pressure == UNSOOT_UNIT_NONE)
    return fail (error, line, _ ("“%s” is no unit of pressure: psi, bar, kPa or Pa"), unit);
  step->value = unsoot_unit_to_si (pressure, number);
  step->unit = g_steal_pointer (&unit);
  return TRUE;
}

static gboolean
take_text (const char **rest, const char *key, char **text, int line, GError **error)
{
  Word word = { NULL };

  if (*text != NULL)
    return fail (error, line, _ ("“%s” stands twice"), key);
  if (**rest == '\0')
    return fail (error, line, _ ("“%s” needs a name behind it"), key);
  if (!take_word (rest, &word, line, error))
    return FALSE;
  *text = word.text;
  return TRUE;
}

static gboolean
take_fluid (const char **rest, UnsootStep *step, int line, GError **error)
{
  g_autofree char *slug = NULL;

  if (!take_text (rest, "with", &slug, line, error))
    return FALSE;
  if (!unsoot_side_from_slug (slug, &step->fluid) || step->fluid == UNSOOT_SIDE_NONE)
    return fail (error, line, _ ("“with” is followed by fuel or intake, not “%s”"), slug);
  return TRUE;
}

static gboolean
set_flag (gboolean *flag, const char *key, int line, GError **error)
{
  if (*flag)
    return fail (error, line, _ ("“%s” stands twice"), key);
  *flag = TRUE;
  return TRUE;
}

static gboolean
set_value (UnsootStep *step, const char *text, double number, const char **rest, int line,
           GError **error)
{
  if (!isnan (step->value))
    return fail (error, line, _ ("a second value: “%s”"), text);
  if (g_str_equal (text, UNSOOT_WORD_MINIMUM))
    {
      step->value = 0;
      return TRUE;
    }
  return take_value (rest, number, step, line, error);
}

static gboolean
set_name (UnsootStep *step, const Word *word, int line, GError **error)
{
  if (step->name != NULL)
    return fail (error, line, _ ("“%s” can't be placed: the step is named “%s”"), word->text,
                 step->name);
  if (!word->quoted && !unsoot_word_is_bare (word->text))
    return fail (error, line, _ ("“%s” is no word of this notation; a name like it is quoted"),
                 word->text);
  step->name = g_strdup (word->text);
  return TRUE;
}

static gboolean
read_word (UnsootStep *step, const Word *word, const char **rest, int line, GError **error)
{
  const char *text = word->text;
  double number = 0;
  UnsootSide side;

  if (word->quoted)
    return set_name (step, word, line, error);
  if (unsoot_side_from_slug (text, &side) && side != UNSOOT_SIDE_NONE)
    {
      if (step->side != UNSOOT_SIDE_NONE)
        return fail (error, line, _ ("a second side: “%s”"), text);
      step->side = side;
      return TRUE;
    }
  if (g_str_equal (text, UNSOOT_WORD_AT))
    return take_text (rest, text, &step->place, line, error);
  if (g_str_equal (text, UNSOOT_WORD_WITH))
    return take_fluid (rest, step, line, error);
  if (g_str_equal (text, UNSOOT_WORD_SHARE))
    return take_number (rest, text, &step->share, line, error);
  if (g_str_equal (text, UNSOOT_WORD_MINUTES))
    return take_number (rest, text, &step->minutes, line, error);
  if (g_str_equal (text, UNSOOT_WORD_LOW_LEVEL))
    return set_flag (&step->low_level, text, line, error);
  if (g_str_equal (text, UNSOOT_WORD_UNTIL_CLEAR))
    return set_flag (&step->until_clear, text, line, error);
  if (g_str_equal (text, UNSOOT_WORD_NEW_GASKET))
    return set_flag (&step->new_gasket, text, line, error);
  if (g_str_equal (text, UNSOOT_WORD_CLOSES))
    return set_flag (&step->closes, text, line, error);
  if (g_str_equal (text, UNSOOT_WORD_MINIMUM) || read_number (text, &number))
    return set_value (step, text, number, rest, line, error);
  return set_name (step, word, line, error);
}

static UnsootStep *
begin_step (const char **rest, int line, GError **error)
{
  Word act_word = { NULL }, subject_word = { NULL };
  g_autofree char *act_slug = NULL, *subject_slug = NULL;
  UnsootAct act;
  UnsootSubject subject;

  if (!take_word (rest, &act_word, line, error))
    return NULL;
  act_slug = act_word.text;
  if (!unsoot_act_from_slug (act_slug, &act))
    {
      fail (error, line, _ ("“%s” is no act"), act_slug);
      return NULL;
    }
  if (!take_word (rest, &subject_word, line, error))
    return NULL;
  subject_slug = subject_word.text;
  if (*subject_slug == '\0')
    {
      fail (error, line, _ ("“%s” doesn't say what it is done to"), act_slug);
      return NULL;
    }
  if (!unsoot_subject_from_slug (subject_slug, &subject) || !unsoot_act_takes (act, subject))
    {
      fail (error, line, _ ("“%s” can't be done to “%s”"), act_slug, subject_slug);
      return NULL;
    }
  return unsoot_step_new (act, subject, NULL);
}

static UnsootStep *
parse_step (const char *text, int line, GError **error)
{
  char *part[3] = { NULL };
  g_autofree char *words = NULL, *wording = NULL, *why = NULL;
  g_autoptr (UnsootStep) step = NULL;
  const char *rest;

  cut_at_bars (text, part);
  words = part[0];
  wording = part[1];
  why = part[2];
  rest = words;
  step = begin_step (&rest, line, error);
  while (step != NULL && *rest != '\0')
    {
      Word word = { NULL };
      g_autofree char *owned = NULL;
      if (!take_word (&rest, &word, line, error))
        return NULL;
      owned = word.text;
      if (!read_word (step, &word, &rest, line, error))
        return NULL;
    }
  if (step == NULL)
    return NULL;
  step->wording = unescape (wording);
  step->why = unescape (why);
  return g_steal_pointer (&step);
}

UnsootStep *
unsoot_step_parse (const char *line, GError **error)
{
  return parse_step (line, 1, error);
}

static gboolean
read_yes_no (const char *text, gboolean *flag, int line, GError **error)
{
  *flag = g_str_equal (text, "yes");
  if (!*flag && !g_str_equal (text, "no"))
    return fail (error, line, _ ("yes or no is expected, not “%s”"), text);
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
        return fail (error, line, _ ("“%s” is no side: fuel or intake"), *word);
      if (procedure->cleans[side])
        return fail (error, line, _ ("“%s” stands twice"), *word);
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
    return fail (error, line, _ ("bypass, unplug or none is expected, not “%s”"), text);
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
  if (g_strv_length (words) != 4 || !g_str_equal (words[1], "to") || !read_number (words[0], &least)
      || !read_number (words[2], &most))
    return fail (error, line, _ ("a window reads “6 to 10 psi” or “none”, not “%s”"), text);
  unit = unsoot_pressure_unit (words[3]);
  if (unit == UNSOOT_UNIT_NONE)
    return fail (error, line, _ ("“%s” is no unit of pressure: psi, bar, kPa or Pa"), words[3]);
  if (!(least > 0 && least <= most))
    return fail (error, line, _ ("the window's lower edge is above zero and below the upper"));
  facts->window_min_pa = unsoot_unit_to_si (unit, least);
  facts->window_max_pa = unsoot_unit_to_si (unit, most);
  return TRUE;
}

static gboolean
read_egr (const char *text, UnsootFamilyFacts *facts, int line, GError **error)
{
  facts->has_egr = !g_str_equal (text, "none");
  facts->has_egr_cooler = g_str_equal (text, "valve cooler");
  if (facts->has_egr && !facts->has_egr_cooler && !g_str_equal (text, "valve"))
    return fail (error, line, _ ("“valve cooler”, “valve” or “none” is expected, not “%s”"), text);
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
    return fail (error, line, _ ("a dose reads “fuel 1000 ml”, not “%s”"), text);
  if (facts->dose_ml[side] != 0)
    return fail (error, line, _ ("“%s” stands twice"), words[0]);
  facts->dose_ml[side] = (gint64) ml;
  return TRUE;
}

static gboolean
read_caution (const char *text, UnsootProcedure *procedure, int line, GError **error)
{
  UnsootPhase *phase;
  g_auto (GStrv) words = g_strsplit (text, " ", -1);

  if (procedure->phases->len == 0)
    return fail (error, line, _ ("cautions follow a phase"));
  phase = procedure->phases->pdata[procedure->phases->len - 1];
  for (char **word = words; *word != NULL; word++)
    {
      UnsootCaution caution;
      if (!unsoot_caution_from_slug (*word, &caution))
        return fail (error, line, _ ("“%s” is no caution"), *word);
      if (phase->cautions & (guint) caution)
        return fail (error, line, _ ("“%s” stands twice"), *word);
      phase->cautions |= (guint) caution;
    }
  return TRUE;
}

static gboolean
read_low_point (const char *text, UnsootFamilyFacts *facts, int line, GError **error)
{
  for (guint i = 0; i < facts->low_points->len; i++)
    if (g_str_equal (facts->low_points->pdata[i], text))
      return fail (error, line, _ ("“%s” stands twice"), text);
  unsoot_family_facts_add_low_point (facts, text);
  return TRUE;
}

static gboolean
read_step_line (Reader *reader, const char *text, GError **error)
{
  UnsootStep *step;

  if (reader->procedure->phases->len == 0)
    return fail (error, reader->line, _ ("steps follow a phase, or this is no word of a heading"));
  step = parse_step (text, reader->line, error);
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
    return fail (error, reader->line, _ ("“%s” stands twice"), head);
  if (*rest == '\0')
    return fail (error, reader->line, _ ("“%s” says nothing"), head);
  if (g_str_equal (head, "procedure"))
    reader->procedure->title = unescape (rest);
  else if (g_str_equal (head, "family"))
    facts->name = unescape (rest);
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
      g_autofree char *name = unescape (rest);
      return read_low_point (name, reader->facts, reader->line, error);
    }
  if (opens_with (line, "dose", &rest))
    return read_dose (rest, reader->facts, reader->line, error);
  if (opens_with (line, "phase", &rest))
    {
      g_autofree char *title = unescape (rest);
      if (title == NULL)
        return fail (error, reader->line, _ ("“%s” says nothing"), "phase");
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
    return fail (error, 1, _ ("the text is not UTF-8"));
  for (char **line = lines; *line != NULL; line++)
    {
      reader->line++;
      if (!read_line (reader, g_strstrip (*line), error))
        return FALSE;
    }
  for (guint i = 0; i < G_N_ELEMENTS (once); i++)
    if (!g_hash_table_contains (reader->seen, once[i]))
      return fail (error, reader->line, _ ("the text ends, and “%s” was not said"), once[i]);
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
