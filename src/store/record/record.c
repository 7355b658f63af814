/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "record.h"

#include <math.h>

#define MEMBER(record, field, Type) (G_STRUCT_MEMBER (Type, record, (field)->offset))

static void
clear_field (gpointer record, const UnsootField *field)
{
  switch (field->type)
    {
    case UNSOOT_FIELD_INT64:
    case UNSOOT_FIELD_BOOL:
    case UNSOOT_FIELD_REAL:
      break;
    case UNSOOT_FIELD_TEXT:
      g_free (MEMBER (record, field, char *));
      break;
    case UNSOOT_FIELD_BYTES:
      g_clear_pointer (&MEMBER (record, field, GBytes *), g_bytes_unref);
      break;
    }
}

static void
copy_field (gpointer copy, gconstpointer record, const UnsootField *field)
{
  switch (field->type)
    {
    case UNSOOT_FIELD_INT64:
      MEMBER (copy, field, gint64) = MEMBER (record, field, gint64);
      break;
    case UNSOOT_FIELD_BOOL:
      MEMBER (copy, field, gboolean) = MEMBER (record, field, gboolean);
      break;
    case UNSOOT_FIELD_REAL:
      MEMBER (copy, field, double) = MEMBER (record, field, double);
      break;
    case UNSOOT_FIELD_TEXT:
      MEMBER (copy, field, char *) = g_strdup (MEMBER (record, field, char *));
      break;
    case UNSOOT_FIELD_BYTES:
      if (MEMBER (record, field, GBytes *) != NULL)
        MEMBER (copy, field, GBytes *) = g_bytes_ref (MEMBER (record, field, GBytes *));
      break;
    }
}

gpointer
unsoot_record_new (const UnsootRecordType *type)
{
  gpointer record = g_malloc0 (type->size);
  for (gsize i = 0; i < type->n_fields; i++)
    if (type->fields[i].type == UNSOOT_FIELD_REAL)
      MEMBER (record, &type->fields[i], double) = (double) NAN;
  return record;
}

void
unsoot_record_free (const UnsootRecordType *type, gpointer record)
{
  if (record == NULL)
    return;
  for (gsize i = 0; i < type->n_fields; i++)
    clear_field (record, &type->fields[i]);
  g_free (record);
}

gpointer
unsoot_record_copy (const UnsootRecordType *type, gconstpointer record)
{
  gpointer copy = unsoot_record_new (type);
  for (gsize i = 0; i < type->n_fields; i++)
    copy_field (copy, record, &type->fields[i]);
  return copy;
}

/* The fewest digits that read back as the same double. */
static char *
real_text (double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  if (isnan (value))
    return g_strdup ("");
  for (int digits = 15; digits <= 17; digits++)
    {
      g_autofree char *format = g_strdup_printf ("%%.%dg", digits);
      g_ascii_formatd (text, sizeof text, format, value);
      if (g_ascii_strtod (text, NULL) == value)
        break;
    }
  return g_strdup (text);
}

static char *
bytes_text (GBytes *bytes)
{
  gsize length = 0;
  const guchar *data = bytes != NULL ? g_bytes_get_data (bytes, &length) : NULL;
  return length > 0 ? g_base64_encode (data, length) : g_strdup ("");
}

char *
unsoot_record_field_text (gconstpointer record, const UnsootField *field)
{
  switch (field->type)
    {
    case UNSOOT_FIELD_INT64:
      if (unsoot_field_zero_is_null (field) && MEMBER (record, field, gint64) == 0)
        return g_strdup ("");
      return g_strdup_printf ("%" G_GINT64_FORMAT, MEMBER (record, field, gint64));
    case UNSOOT_FIELD_BOOL:
      return g_strdup (MEMBER (record, field, gboolean) ? "1" : "0");
    case UNSOOT_FIELD_REAL:
      return real_text (MEMBER (record, field, double));
    case UNSOOT_FIELD_TEXT:
      return g_strdup (MEMBER (record, field, char *) != NULL ? MEMBER (record, field, char *)
                                                              : "");
    case UNSOOT_FIELD_BYTES:
      return bytes_text (MEMBER (record, field, GBytes *));
    }
  g_assert_not_reached ();
}
