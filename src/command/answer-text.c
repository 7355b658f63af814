/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "answer-private.h"

#include <glib/gi18n-lib.h>

#define GAP 2

/* Columns that a terminal takes for @text. */
static int
width_of (const char *text)
{
  int width = 0;

  for (const char *c = text; *c != '\0'; c = g_utf8_next_char (c))
    {
      gunichar letter = g_utf8_get_char (c);

      if (!g_unichar_iszerowidth (letter))
        width += g_unichar_iswide (letter) ? 2 : 1;
    }
  return width;
}

static void
append_spaces (GString *text, int n)
{
  for (int i = 0; i < n; i++)
    g_string_append_c (text, ' ');
}

/* Lines of @shown after the first begin under the first. */
static void
append_hanging (GString *text, const char *shown, int indent)
{
  g_auto (GStrv) lines = g_strsplit (shown, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      if (i > 0)
        append_spaces (text, indent);
      g_string_append (text, lines[i]);
      g_string_append_c (text, '\n');
    }
}

static gboolean
is_shown_value (const UnsootAnswerItem *item)
{
  return item->kind == UNSOOT_ANSWER_VALUE && item->cell.shown != NULL;
}

/* Values that follow one another are set as one block, aligned behind the longest label. */
static guint
append_values (GString *text, const UnsootAnswer *answer, guint from)
{
  int widest = 0;
  guint until = from;

  for (; until < answer->items->len; until++)
    {
      const UnsootAnswerItem *item = answer->items->pdata[until];

      if (item->kind != UNSOOT_ANSWER_VALUE)
        break;
      if (is_shown_value (item))
        widest = MAX (widest, width_of (item->label));
    }
  for (guint i = from; i < until; i++)
    {
      const UnsootAnswerItem *item = answer->items->pdata[i];

      if (!is_shown_value (item))
        continue;
      g_string_append (text, item->label);
      append_spaces (text, widest - width_of (item->label) + GAP);
      append_hanging (text, item->cell.shown, widest + GAP);
    }
  return until;
}

static void
append_list (GString *text, const UnsootAnswerItem *item)
{
  if (item->sentences->len == 0)
    return;
  g_string_append_printf (text, "%s:\n", item->label);
  for (guint i = 0; i < item->sentences->len; i++)
    {
      g_string_append (text, "  - ");
      append_hanging (text, item->sentences->pdata[i], 4);
    }
}

static const char *
cell_shown (const UnsootAnswerTable *table, guint index)
{
  const char *shown = g_array_index (table->cells, UnsootCell, index).shown;

  return shown != NULL ? shown : "";
}

static void
append_row (GString *text, const UnsootAnswerTable *table, const int *widths,
            const char *const *shown)
{
  for (guint i = 0; i < table->n_columns; i++)
    {
      int spaces = widths[i] - width_of (shown[i]);

      append_spaces (text, i > 0 ? GAP : 0);
      if (table->columns[i].right)
        append_spaces (text, spaces);
      g_string_append (text, shown[i]);
      if (!table->columns[i].right)
        append_spaces (text, spaces);
    }
  while (text->len > 0 && text->str[text->len - 1] == ' ')
    g_string_truncate (text, text->len - 1);
  g_string_append_c (text, '\n');
}

static void
append_table (GString *text, const UnsootAnswerItem *item)
{
  const UnsootAnswerTable *table = &item->table;
  g_autofree int *widths = g_new0 (int, table->n_columns);
  g_autofree const char **shown = g_new0 (const char *, table->n_columns);

  if (table->cells->len == 0)
    {
      /* Translators: a heading, then that there is nothing under it */
      g_string_append_printf (text, _ ("%s: none\n"), item->label);
      return;
    }
  for (guint i = 0; i < table->n_columns; i++)
    {
      shown[i] = _ (table->columns[i].label);
      widths[i] = width_of (shown[i]);
    }
  for (guint i = 0; i < table->cells->len; i++)
    {
      guint column = i % table->n_columns;

      widths[column] = MAX (widths[column], width_of (cell_shown (table, i)));
    }
  g_string_append_printf (text, "%s\n", item->label);
  append_row (text, table, widths, shown);
  for (guint i = 0; i + table->n_columns <= table->cells->len; i += table->n_columns)
    {
      for (guint column = 0; column < table->n_columns; column++)
        shown[column] = cell_shown (table, i + column);
      append_row (text, table, widths, shown);
    }
}

/* Returns where the next block begins. */
static guint
append_block (GString *text, const UnsootAnswer *answer, guint from)
{
  const UnsootAnswerItem *item = answer->items->pdata[from];

  switch (item->kind)
    {
    case UNSOOT_ANSWER_VALUE:
      return append_values (text, answer, from);
    case UNSOOT_ANSWER_LIST:
      append_list (text, item);
      break;
    case UNSOOT_ANSWER_TABLE:
      append_table (text, item);
      break;
    case UNSOOT_ANSWER_DRAWING:
      g_string_append (text, item->cell.shown);
      break;
    }
  return from + 1;
}

char *
unsoot_answer_to_text (UnsootAnswer *answer)
{
  GString *text = g_string_new (answer->message->str);

  if (text->len > 0)
    g_string_append_c (text, '\n');
  for (guint i = 0; i < answer->items->len;)
    {
      gsize before = text->len;
      gboolean apart
          = i > 0
            || ((const UnsootAnswerItem *) answer->items->pdata[i])->kind != UNSOOT_ANSWER_VALUE;

      i = append_block (text, answer, i);
      if (apart && before > 0 && text->len > before)
        g_string_insert_c (text, (gssize) before, '\n');
    }
  return g_string_free (text, FALSE);
}
