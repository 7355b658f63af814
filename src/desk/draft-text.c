/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draft-text.h"

#include <json-glib/json-glib.h>

struct UnsootDraftText
{
  JsonObject *fields;
};

enum
{
  BASE,
  TYPED,
  N_TEXTS
};

static UnsootDraftText *
wrap (JsonObject *fields)
{
  UnsootDraftText *self = g_new (UnsootDraftText, 1);

  self->fields = fields;
  return self;
}

UnsootDraftText *
unsoot_draft_text_new (void)
{
  return wrap (json_object_new ());
}

void
unsoot_draft_text_free (UnsootDraftText *self)
{
  if (self == NULL)
    return;
  json_object_unref (self->fields);
  g_free (self);
}

void
unsoot_draft_text_add (UnsootDraftText *self, const char *name, const char *base, const char *typed)
{
  JsonArray *texts = json_array_sized_new (N_TEXTS);

  json_array_add_string_element (texts, base);
  json_array_add_string_element (texts, typed);
  json_object_set_array_member (self->fields, name, texts);
}

static const char *
text_at (JsonArray *texts, guint i)
{
  JsonNode *node = json_array_get_element (texts, i);

  return JSON_NODE_HOLDS_VALUE (node) ? json_node_get_string (node) : NULL;
}

gboolean
unsoot_draft_text_find (const UnsootDraftText *self, const char *name, const char **base,
                        const char **typed)
{
  JsonNode *node = json_object_get_member (self->fields, name);
  JsonArray *texts;

  if (node == NULL || !JSON_NODE_HOLDS_ARRAY (node))
    return FALSE;
  texts = json_node_get_array (node);
  if (json_array_get_length (texts) != N_TEXTS)
    return FALSE;
  *base = text_at (texts, BASE);
  *typed = text_at (texts, TYPED);
  return *base != NULL && *typed != NULL;
}

char *
unsoot_draft_text_to_json (const UnsootDraftText *self)
{
  g_autoptr (JsonNode) root = json_node_alloc ();

  json_node_init_object (root, self->fields);
  return json_to_string (root, FALSE);
}

UnsootDraftText *
unsoot_draft_text_from_json (const char *json)
{
  g_autoptr (JsonNode) root = json_from_string (json, NULL);

  return root != NULL && JSON_NODE_HOLDS_OBJECT (root) ? wrap (json_node_dup_object (root)) : NULL;
}
