/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <json-glib/json-glib.h>

#include "record.h"

/* A record of any kind as JSON, field by field: for drafts. Empty fields are left out. */
JsonNode *unsoot_record_to_json (const UnsootRecordType *type, gconstpointer record);

/* The other way; fields that @node does not have, or has in another form, stay empty. */
gpointer unsoot_record_from_json (const UnsootRecordType *type, JsonNode *node);
