/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "record-json.h"

#define MEMBER(record, field, Type) (G_STRUCT_MEMBER (Type, record, (field)->offset))

JsonNode *
unsoot_record_to_json (const UnsootRecordType *type, gconstpointer record)
{
  JsonNode *node = json_node_new (JSON_NODE_OBJECT);
  JsonObject *object = json_object_new ();

  for (gsize i = 0; i < type->n_fields; i++)
    {
      g_autofree char *text = unsoot_record_field_text (record, &type->fields[i]);
      if (*text != '\0' && type->fields[i].type != UNSOOT_FIELD_BYTES)
        json_object_set_string_member (object, type->fields[i].name, text);
    }
  json_node_take_object (node, object);
  return node;
}

static void
set_field (gpointer record, const UnsootField *field, const char *text)
{
  switch (field->type)
    {
    case UNSOOT_FIELD_INT64:
      MEMBER (record, field, gint64) = g_ascii_strtoll (text, NULL, 10);
      break;
    case UNSOOT_FIELD_BOOL:
      MEMBER (record, field, gboolean) = g_ascii_strtoll (text, NULL, 10) != 0;
      break;
    case UNSOOT_FIELD_REAL:
      MEMBER (record, field, double) = g_ascii_strtod (text, NULL);
      break;
    case UNSOOT_FIELD_TEXT:
      g_free (MEMBER (record, field, char *));
      MEMBER (record, field, char *) = g_strdup (text);
      break;
    case UNSOOT_FIELD_BYTES:
      break;
    }
}

gpointer
unsoot_record_from_json (const UnsootRecordType *type, JsonNode *node)
{
  gpointer record = unsoot_record_new (type);
  JsonObject *object
      = node != NULL && JSON_NODE_HOLDS_OBJECT (node) ? json_node_get_object (node) : NULL;

  for (gsize i = 0; object != NULL && i < type->n_fields; i++)
    {
      const char *text
          = json_object_get_string_member_with_default (object, type->fields[i].name, NULL);
      if (text != NULL)
        set_field (record, &type->fields[i], text);
    }
  return record;
}
