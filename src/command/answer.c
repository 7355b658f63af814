/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "answer-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static JsonNode *
null_node (void)
{
  return json_node_new (JSON_NODE_NULL);
}

UnsootCell
unsoot_cell_none (void)
{
  return (UnsootCell){ null_node (), NULL };
}

UnsootCell
unsoot_cell_both (const char *machine, char *shown)
{
  JsonNode *node
      = machine != NULL ? json_node_init_string (json_node_alloc (), machine) : null_node ();

  return (UnsootCell){ node, shown };
}

UnsootCell
unsoot_cell_text (const char *text)
{
  return unsoot_cell_both (text, g_strdup (text));
}

UnsootCell
unsoot_cell_int (gint64 number, char *shown)
{
  return (UnsootCell){ json_node_init_int (json_node_alloc (), number),
                       shown != NULL ? shown : g_strdup_printf ("%" G_GINT64_FORMAT, number) };
}

UnsootCell
unsoot_cell_real (double number, char *shown)
{
  if (!isfinite (number))
    {
      g_free (shown);
      return unsoot_cell_none ();
    }
  return (UnsootCell){ json_node_init_double (json_node_alloc (), number),
                       shown != NULL ? shown : g_strdup_printf ("%g", number) };
}

UnsootCell
unsoot_cell_flag (gboolean flag)
{
  return (UnsootCell){ json_node_init_boolean (json_node_alloc (), flag),
                       g_strdup (flag ? _ ("yes") : _ ("no")) };
}

static void
cell_clear (UnsootCell *cell)
{
  g_clear_pointer (&cell->node, json_node_unref);
  g_clear_pointer (&cell->shown, g_free);
}

static void
item_free (UnsootAnswerItem *item)
{
  g_free (item->key);
  g_free (item->label);
  cell_clear (&item->cell);
  g_clear_pointer (&item->sentences, g_ptr_array_unref);
  g_clear_pointer (&item->table.cells, g_array_unref);
  g_free (item);
}

UnsootAnswer *
unsoot_answer_new (void)
{
  UnsootAnswer *answer = g_new0 (UnsootAnswer, 1);

  answer->message = g_string_new (NULL);
  answer->items = g_ptr_array_new_with_free_func ((GDestroyNotify) item_free);
  return answer;
}

void
unsoot_answer_free (UnsootAnswer *answer)
{
  g_string_free (answer->message, TRUE);
  g_ptr_array_unref (answer->items);
  g_free (answer);
}

static UnsootAnswerItem *
add_item (UnsootAnswer *answer, UnsootAnswerKind kind, const char *key, const char *label)
{
  UnsootAnswerItem *item = g_new0 (UnsootAnswerItem, 1);

  item->kind = kind;
  item->key = g_strdup (key);
  item->label = g_strdup (label);
  g_ptr_array_add (answer->items, item);
  return item;
}

void
unsoot_answer_say (UnsootAnswer *answer, char *sentence)
{
  if (answer->message->len > 0)
    g_string_append_c (answer->message, '\n');
  g_string_append (answer->message, sentence);
  g_free (sentence);
}

void
unsoot_answer_put (UnsootAnswer *answer, const char *key, const char *label, UnsootCell cell)
{
  add_item (answer, UNSOOT_ANSWER_VALUE, key, label)->cell = cell;
}

void
unsoot_answer_list (UnsootAnswer *answer, const char *key, const char *label, GPtrArray *sentences)
{
  UnsootAnswerItem *item = add_item (answer, UNSOOT_ANSWER_LIST, key, label);

  item->sentences = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; sentences != NULL && i < sentences->len; i++)
    g_ptr_array_add (item->sentences, g_strdup (sentences->pdata[i]));
}

void
unsoot_answer_drawing (UnsootAnswer *answer, const char *text)
{
  add_item (answer, UNSOOT_ANSWER_DRAWING, NULL, NULL)->cell = unsoot_cell_text (text);
}

UnsootAnswerTable *
unsoot_answer_table (UnsootAnswer *answer, const char *key, const char *label,
                     const UnsootAnswerColumn *columns)
{
  UnsootAnswerItem *item = add_item (answer, UNSOOT_ANSWER_TABLE, key, label);

  item->table.columns = columns;
  while (columns[item->table.n_columns].key != NULL)
    item->table.n_columns++;
  item->table.cells = g_array_new (FALSE, FALSE, sizeof (UnsootCell));
  g_array_set_clear_func (item->table.cells, (GDestroyNotify) cell_clear);
  return &item->table;
}

void
unsoot_answer_cell (UnsootAnswerTable *table, UnsootCell cell)
{
  g_array_append_val (table->cells, cell);
}
