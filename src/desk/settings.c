/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "settings.h"

#define SCHEMA "org.unsoot.Unsoot"

GSettings *
unsoot_settings_new (void)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema = NULL;

  /* g_settings_new () aborts without one. */
  if (source != NULL)
    schema = g_settings_schema_source_lookup (source, SCHEMA, TRUE);
  return schema != NULL ? g_settings_new_full (schema, NULL, NULL) : NULL;
}
