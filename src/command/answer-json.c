/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "answer-private.h"

static JsonNode *
list_node (GPtrArray *sentences)
{
  JsonArray *array = json_array_sized_new (sentences->len);
  JsonNode *node = json_node_new (JSON_NODE_ARRAY);

  for (guint i = 0; i < sentences->len; i++)
    json_array_add_string_element (array, sentences->pdata[i]);
  json_node_take_array (node, array);
  return node;
}

static JsonNode *
table_node (const UnsootAnswerTable *table)
{
  JsonArray *rows = json_array_new ();
  JsonNode *node = json_node_new (JSON_NODE_ARRAY);

  for (guint i = 0; i < table->cells->len; i++)
    {
      guint column = i % table->n_columns;
      JsonNode *value = g_array_index (table->cells, UnsootCell, i).node;

      if (column == 0)
        json_array_add_object_element (rows, json_object_new ());
      json_object_set_member (
          json_array_get_object_element (rows, json_array_get_length (rows) - 1),
          table->columns[column].key, json_node_copy (value));
    }
  json_node_take_array (node, rows);
  return node;
}

static void
add_member (JsonObject *object, const UnsootAnswerItem *item)
{
  switch (item->kind)
    {
    case UNSOOT_ANSWER_VALUE:
      json_object_set_member (object, item->key, json_node_copy (item->cell.node));
      break;
    case UNSOOT_ANSWER_LIST:
      json_object_set_member (object, item->key, list_node (item->sentences));
      break;
    case UNSOOT_ANSWER_TABLE:
      json_object_set_member (object, item->key, table_node (&item->table));
      break;
    case UNSOOT_ANSWER_DRAWING:
      break;
    }
}

char *
unsoot_answer_to_json (UnsootAnswer *answer)
{
  g_autoptr (JsonGenerator) generator = json_generator_new ();
  g_autoptr (JsonNode) root = json_node_new (JSON_NODE_OBJECT);
  JsonObject *object = json_object_new ();
  g_autofree char *text = NULL;

  json_node_take_object (root, object);
  if (answer->message->len > 0)
    json_object_set_string_member (object, "message", answer->message->str);
  for (guint i = 0; i < answer->items->len; i++)
    add_member (object, answer->items->pdata[i]);
  json_generator_set_pretty (generator, TRUE);
  json_generator_set_root (generator, root);
  text = json_generator_to_data (generator, NULL);
  return g_strconcat (text, "\n", NULL);
}
