/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Prints a procedure in the notation of procedure-text.h. */
#include <math.h>
#include <string.h>

#include "procedure-text.h"
#include "procedure-words.h"

static const char *const keywords[] = { UNSOOT_WORD_AT,
                                        UNSOOT_WORD_WITH,
                                        UNSOOT_WORD_SHARE,
                                        UNSOOT_WORD_MINUTES,
                                        UNSOOT_WORD_MINIMUM,
                                        UNSOOT_WORD_LOW_LEVEL,
                                        UNSOOT_WORD_UNTIL_CLEAR,
                                        UNSOOT_WORD_NEW_GASKET,
                                        UNSOOT_WORD_CLOSES,
                                        "fuel",
                                        "intake" };

/* A window is printed in the first of these that says it in whole hundredths. */
static const UnsootUnit window_units[]
    = { UNSOOT_UNIT_PSI, UNSOOT_UNIT_BAR, UNSOOT_UNIT_KPA, UNSOOT_UNIT_PA };

UnsootUnit
unsoot_pressure_unit (const char *text)
{
  UnsootUnit unit = text != NULL ? unsoot_unit_from_words (text) : UNSOOT_UNIT_NONE;

  if (unit == UNSOOT_UNIT_NONE || unsoot_unit_quantity (unit) != UNSOOT_QUANTITY_PRESSURE)
    return UNSOOT_UNIT_NONE;
  return unit;
}

gboolean
unsoot_word_is_bare (const char *text)
{
  if (!g_ascii_islower (*text))
    return FALSE;
  for (const char *p = text; *p != '\0'; p++)
    if (!g_ascii_islower (*p) && !g_ascii_isdigit (*p) && *p != '-')
      return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (keywords); i++)
    if (g_str_equal (keywords[i], text))
      return FALSE;
  return TRUE;
}

/* A blank at either end would be taken for one around the text. */
static gboolean
is_outer_blank (const char *text, const char *p)
{
  return g_ascii_isspace (*p) && (p == text || p[1] == '\0');
}

static void
append_escaped (GString *out, const char *text, const char *escaped)
{
  for (const char *p = text; *p != '\0'; p++)
    if (*p == '\n')
      g_string_append (out, "\\n");
    else
      {
        if (strchr (escaped, *p) != NULL || is_outer_blank (text, p))
          g_string_append_c (out, '\\');
        g_string_append_c (out, *p);
      }
}

static void
append_quoted (GString *out, const char *text)
{
  g_string_append_c (out, '"');
  append_escaped (out, text, "\"\\");
  g_string_append_c (out, '"');
}

static void
append_name (GString *out, const char *name)
{
  if (unsoot_word_is_bare (name))
    g_string_append (out, name);
  else
    append_quoted (out, name);
}

/* As typed: "psi", but also "in Hg". */
static void
append_unit (GString *out, const char *unit)
{
  if (strpbrk (unit, " \t\n\v\f\r\"\\|") == NULL)
    g_string_append (out, unit);
  else
    append_quoted (out, unit);
}

/* What is typed in UNIT to give VALUE. The way there and back can miss it by the last bit. */
static double
typed_for (double value, UnsootUnit unit)
{
  double shown = unit == UNSOOT_UNIT_NONE ? value : unsoot_unit_from_si (unit, value);

  if (unit == UNSOOT_UNIT_NONE || unsoot_unit_to_si (unit, shown) == value)
    return shown;
  if (unsoot_unit_to_si (unit, nextafter (shown, INFINITY)) == value)
    return nextafter (shown, INFINITY);
  return nextafter (shown, 0);
}

/* The shortest decimal that reads as VALUE again; UNIT may be none. */
static void
append_number (GString *out, double value, UnsootUnit unit)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  gboolean plain = unit == UNSOOT_UNIT_NONE;
  double shown = typed_for (value, unit);

  for (int digits = 1; digits <= 17; digits++)
    {
      char format[8];
      double again;
      g_snprintf (format, sizeof format, "%%.%dg", digits);
      again = g_ascii_strtod (g_ascii_formatd (text, sizeof text, format, shown), NULL);
      if (strchr (text, 'e') == NULL && (plain ? again : unsoot_unit_to_si (unit, again)) == value)
        break;
    }
  g_string_append (out, text);
}

static void
append_value (GString *out, const UnsootStep *step)
{
  UnsootUnit unit = unsoot_pressure_unit (step->unit);

  g_string_append_c (out, ' ');
  if (step->unit == NULL && step->value == 0)
    {
      g_string_append (out, UNSOOT_WORD_MINIMUM);
      return;
    }
  append_number (out, step->value, unit);
  g_string_append_c (out, ' ');
  append_unit (out, unit == UNSOOT_UNIT_NONE ? "Pa" : step->unit);
}

static void
append_key_number (GString *out, const char *key, double number)
{
  if (isnan (number))
    return;
  g_string_append_printf (out, " %s ", key);
  append_number (out, number, UNSOOT_UNIT_NONE);
}

static void
append_flag (GString *out, gboolean flag, const char *word)
{
  if (flag)
    g_string_append_printf (out, " %s", word);
}

static void
append_comment (GString *out, const UnsootStep *step)
{
  if (step->wording != NULL || step->why != NULL)
    g_string_append (out, " |");
  if (step->wording != NULL)
    {
      g_string_append_c (out, ' ');
      append_escaped (out, step->wording, "|\\");
    }
  if (step->why != NULL)
    {
      g_string_append (out, " | ");
      append_escaped (out, step->why, "|\\");
    }
}

char *
unsoot_step_print (const UnsootStep *step)
{
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, "%s %s", unsoot_act_to_slug (step->act),
                          unsoot_subject_to_slug (step->subject));
  if (step->side != UNSOOT_SIDE_NONE)
    g_string_append_printf (out, " %s", unsoot_side_to_slug (step->side));
  if (step->name != NULL)
    {
      g_string_append_c (out, ' ');
      append_name (out, step->name);
    }
  if (step->place != NULL)
    {
      g_string_append (out, " " UNSOOT_WORD_AT " ");
      append_name (out, step->place);
    }
  if (step->fluid != UNSOOT_SIDE_NONE)
    g_string_append_printf (out, " " UNSOOT_WORD_WITH " %s", unsoot_side_to_slug (step->fluid));
  if (!isnan (step->value))
    append_value (out, step);
  append_key_number (out, UNSOOT_WORD_SHARE, step->share);
  append_key_number (out, UNSOOT_WORD_MINUTES, step->minutes);
  append_flag (out, step->low_level, UNSOOT_WORD_LOW_LEVEL);
  append_flag (out, step->until_clear, UNSOOT_WORD_UNTIL_CLEAR);
  append_flag (out, step->new_gasket, UNSOOT_WORD_NEW_GASKET);
  append_flag (out, step->closes, UNSOOT_WORD_CLOSES);
  append_comment (out, step);
  return g_string_free (out, FALSE);
}

static const char *
yes_no (gboolean flag)
{
  return flag ? "yes" : "no";
}

static const char *
lift_pump (const UnsootFamilyFacts *facts)
{
  if (!facts->has_lift_pump)
    return "none";
  return facts->lift_pump_bypass_allowed ? "bypass" : "unplug";
}

static const char *
egr (const UnsootFamilyFacts *facts)
{
  if (!facts->has_egr)
    return "none";
  return facts->has_egr_cooler ? "valve cooler" : "valve";
}

static gboolean
is_whole_in (double pa, UnsootUnit unit)
{
  double hundredths = round (unsoot_unit_from_si (unit, pa) * 100);

  return unsoot_unit_to_si (unit, hundredths / 100) == pa;
}

static UnsootUnit
window_unit (const UnsootFamilyFacts *facts)
{
  for (guint i = 0; i < G_N_ELEMENTS (window_units); i++)
    if (is_whole_in (facts->window_min_pa, window_units[i])
        && is_whole_in (facts->window_max_pa, window_units[i]))
      return window_units[i];
  return UNSOOT_UNIT_PA;
}

static void
append_window (GString *out, const UnsootFamilyFacts *facts)
{
  UnsootUnit unit;

  if (isnan (facts->window_min_pa) || isnan (facts->window_max_pa))
    {
      g_string_append (out, "window none\n");
      return;
    }
  unit = window_unit (facts);
  g_string_append (out, "window ");
  append_number (out, facts->window_min_pa, unit);
  g_string_append (out, " to ");
  append_number (out, facts->window_max_pa, unit);
  g_string_append_printf (out, " %s\n", unsoot_unit_symbol (unit));
}

static void
append_heading (GString *out, const char *word, const char *text)
{
  g_string_append_printf (out, "%s ", word);
  append_escaped (out, text != NULL ? text : "", "\\");
  g_string_append_c (out, '\n');
}

static void
append_facts (GString *out, const UnsootFamilyFacts *facts)
{
  append_heading (out, "family", facts->name);
  g_string_append_printf (out, "lift-pump %s\n", lift_pump (facts));
  append_window (out, facts);
  g_string_append_printf (out, "egr %s\nheater %s\nregeneration %s\nroad %s\n", egr (facts),
                          yes_no (facts->has_heater), yes_no (facts->has_regeneration),
                          yes_no (facts->has_road));
  for (guint i = 0; i < facts->low_points->len; i++)
    append_heading (out, "low-point", facts->low_points->pdata[i]);
  for (int side = UNSOOT_SIDE_FUEL; side < UNSOOT_SIDES; side++)
    if (facts->dose_ml[side] > 0)
      g_string_append_printf (out, "dose %s %" G_GINT64_FORMAT " ml\n",
                              unsoot_side_to_slug ((UnsootSide) side), facts->dose_ml[side]);
}

static void
append_phase (GString *out, const UnsootPhase *phase)
{
  g_string_append_c (out, '\n');
  append_heading (out, "phase", phase->title);
  if (phase->cautions == 0)
    return;
  g_string_append (out, "caution");
  for (int i = 0; i < UNSOOT_CAUTIONS; i++)
    if (phase->cautions & (1u << i))
      g_string_append_printf (out, " %s", unsoot_caution_to_slug ((UnsootCaution) (1u << i)));
  g_string_append_c (out, '\n');
}

char *
unsoot_procedure_print (const UnsootProcedure *procedure, const UnsootFamilyFacts *facts)
{
  GString *out = g_string_new (NULL);
  int phase = -1;

  append_heading (out, "procedure", procedure->title);
  g_string_append (out, "sides");
  for (int side = UNSOOT_SIDE_FUEL; side < UNSOOT_SIDES; side++)
    append_flag (out, procedure->cleans[side], unsoot_side_to_slug ((UnsootSide) side));
  g_string_append_c (out, '\n');
  append_facts (out, facts);
  for (guint i = 0; i < procedure->steps->len; i++)
    {
      const UnsootStep *step = procedure->steps->pdata[i];
      g_autofree char *line = unsoot_step_print (step);
      while (phase < step->phase)
        append_phase (out, procedure->phases->pdata[++phase]);
      g_string_append_printf (out, "%s\n", line);
    }
  while (phase + 1 < (int) procedure->phases->len)
    append_phase (out, procedure->phases->pdata[++phase]);
  return g_string_free (out, FALSE);
}
