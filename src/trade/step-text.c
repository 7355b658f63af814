/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reads one step line. The grammar is in procedure-text.h. */
#include "procedure-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "procedure-words.h"

/* One word, bare or quoted; *CURSOR moves past it and the blanks behind it. */
typedef struct
{
  char *text;
  gboolean quoted;
} Word;

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
        g_string_append_c (text, unsoot_word_unescaped (*++p));
      else
        g_string_append_c (text, *p);
      p++;
    }
  if (word->quoted && *p++ != '"')
    return unsoot_word_fail (error, line, _ ("a quotation mark is not closed"));
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
    unsoot_word_strip (part[i]);
}

static gboolean
take_number (const char **rest, const char *key, double *number, int line, GError **error)
{
  Word word = { NULL };
  g_autofree char *text = NULL;

  if (!isnan (*number))
    return unsoot_word_fail (error, line, _ ("“%s” stands twice"), key);
  if (!take_word (rest, &word, line, error))
    return FALSE;
  text = word.text;
  if (word.quoted || !unsoot_word_number (text, number))
    return unsoot_word_fail (error, line, _ ("“%s” needs a number, not “%s”"), key, text);
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
    return unsoot_word_fail (error, line, _ ("“%s” is no unit of pressure: psi, bar, kPa or Pa"),
                             unit);
  step->value = unsoot_unit_to_si (pressure, number);
  if (!isfinite (step->value))
    return unsoot_word_fail (error, line, _ ("no pressure is as high as %g %s"), number, unit);
  step->unit = g_steal_pointer (&unit);
  return TRUE;
}

static gboolean
take_text (const char **rest, const char *key, char **text, int line, GError **error)
{
  Word word = { NULL };

  if (*text != NULL)
    return unsoot_word_fail (error, line, _ ("“%s” stands twice"), key);
  if (**rest == '\0')
    return unsoot_word_fail (error, line, _ ("“%s” needs a name behind it"), key);
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
    return unsoot_word_fail (error, line, _ ("“with” is followed by fuel or intake, not “%s”"),
                             slug);
  return TRUE;
}

static gboolean
set_flag (gboolean *flag, const char *key, int line, GError **error)
{
  if (*flag)
    return unsoot_word_fail (error, line, _ ("“%s” stands twice"), key);
  *flag = TRUE;
  return TRUE;
}

static gboolean
set_value (UnsootStep *step, const char *text, double number, const char **rest, int line,
           GError **error)
{
  if (!isnan (step->value))
    return unsoot_word_fail (error, line, _ ("a second value: “%s”"), text);
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
    return unsoot_word_fail (error, line, _ ("“%s” can't be placed: the step is named “%s”"),
                             word->text, step->name);
  if (!word->quoted && !unsoot_word_is_bare (word->text))
    return unsoot_word_fail (
        error, line, _ ("“%s” is no word of this notation; a name like it is quoted"), word->text);
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
        return unsoot_word_fail (error, line, _ ("a second side: “%s”"), text);
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
  if (g_str_equal (text, UNSOOT_WORD_MINIMUM) || unsoot_word_number (text, &number))
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
      unsoot_word_fail (error, line, _ ("“%s” is no act"), act_slug);
      return NULL;
    }
  if (!take_word (rest, &subject_word, line, error))
    return NULL;
  subject_slug = subject_word.text;
  if (*subject_slug == '\0')
    {
      unsoot_word_fail (error, line, _ ("“%s” doesn't say what it is done to"), act_slug);
      return NULL;
    }
  if (!unsoot_subject_from_slug (subject_slug, &subject) || !unsoot_act_takes (act, subject))
    {
      unsoot_word_fail (error, line, _ ("“%s” can't be done to “%s”"), act_slug, subject_slug);
      return NULL;
    }
  return unsoot_step_new (act, subject, NULL);
}

UnsootStep *
unsoot_step_parse_at (const char *text, int line, GError **error)
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
  step->wording = unsoot_word_unescape (wording);
  step->why = unsoot_word_unescape (why);
  return g_steal_pointer (&step);
}

UnsootStep *
unsoot_step_parse (const char *line, GError **error)
{
  if (g_utf8_validate (line, -1, NULL))
    return unsoot_step_parse_at (line, 1, error);
  unsoot_word_fail (error, 1, _ ("the text is not UTF-8"));
  return NULL;
}
