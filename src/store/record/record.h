/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A record is a plain C struct whose first two members are `gint64 id` and, for
 * kinds that people edit, `gint64 version`. Its UnsootRecordType lists the columns,
 * so that reading, writing, the log of changes and export are written once. */

typedef enum
{
  UNSOOT_FIELD_INT64, /* gint64: money, mL, seconds, and references to other rows */
  UNSOOT_FIELD_BOOL,  /* gboolean, stored as 0 or 1 */
  UNSOOT_FIELD_REAL,  /* double, SI; NAN is NULL */
  UNSOOT_FIELD_TEXT,  /* char *, owned; NULL is NULL */
  UNSOOT_FIELD_BYTES, /* GBytes *, owned */
} UnsootFieldType;

typedef enum
{
  UNSOOT_FIELD_PLAIN = 0,
  UNSOOT_FIELD_REF = 1 << 0,      /* id of another row: 0 in C is NULL in the store */
  UNSOOT_FIELD_SECRET = 1 << 1,   /* the log of changes says that it changed, never to what */
  UNSOOT_FIELD_OPTIONAL = 1 << 2, /* any other number of which 0 means none: likewise NULL */
} UnsootFieldFlags;

typedef struct
{
  const char *name; /* the column's name */
  UnsootFieldType type;
  gsize offset; /* in the struct */
  UnsootFieldFlags flags;
} UnsootField;

typedef struct
{
  const char *table;
  const char *noun; /* one such thing, for sentences and the log; N_() marked */
  gsize size;       /* of the struct, in bytes */
  gboolean posting; /* append-only: no version, never updated */
  const UnsootField *fields;
  gsize n_fields;
  GDestroyNotify free; /* of such a record, for arrays that own theirs */
} UnsootRecordType;

/* Common head of every record kept by people; a posting has the id only. */
typedef struct
{
  gint64 id;
  gint64 version;
} UnsootRecordHead;

/* unsoot_record_new: a record of @type with every member zero, NULL or NAN.
 * unsoot_record_free: frees it and what it owns; NULL is allowed.
 * unsoot_record_copy: a deep copy. */
gpointer unsoot_record_new (const UnsootRecordType *type);
void unsoot_record_free (const UnsootRecordType *type, gpointer record);
gpointer unsoot_record_copy (const UnsootRecordType *type, gconstpointer record);

/* Whether a 0 of this field is NULL in the store. */
static inline gboolean
unsoot_field_zero_is_null (const UnsootField *field)
{
  return (field->flags & (UNSOOT_FIELD_REF | UNSOOT_FIELD_OPTIONAL)) != 0;
}

/* A field's value as text, as the log of changes and CSV write it: decimal point,
 * no grouping, "" for NULL. The caller frees it. */
char *unsoot_record_field_text (gconstpointer record, const UnsootField *field);

/* Declares TypeName's descriptor, constructor, free and autoptr support. */
#define UNSOOT_DECLARE_RECORD(TypeName, type_name)                                                 \
  extern const UnsootRecordType type_name##_type;                                                  \
  static inline TypeName *type_name##_new (void)                                                   \
  {                                                                                                \
    return unsoot_record_new (&type_name##_type);                                                  \
  }                                                                                                \
  static inline void type_name##_free (TypeName *record)                                           \
  {                                                                                                \
    unsoot_record_free (&type_name##_type, record);                                                \
  }                                                                                                \
  G_DEFINE_AUTOPTR_CLEANUP_FUNC (TypeName, type_name##_free)

/* One column of a descriptor's table: UNSOOT_COLUMN (UnsootVehicle, vin, TEXT, PLAIN). */
#define UNSOOT_COLUMN(TypeName, member, kind, flag)                                                \
  {                                                                                                \
    .name = #member, .type = UNSOOT_FIELD_##kind, .offset = offsetof (TypeName, member),           \
    .flags = UNSOOT_FIELD_##flag                                                                   \
  }

/* Defines a descriptor over a static array `columns`. */
#define UNSOOT_DEFINE_RECORD(TypeName, type_name, table_name, noun_text, is_posting, columns)      \
  const UnsootRecordType type_name##_type = { .table = table_name,                                 \
                                              .noun = noun_text,                                   \
                                              .size = sizeof (TypeName),                           \
                                              .posting = is_posting,                               \
                                              .fields = columns,                                   \
                                              .n_fields = G_N_ELEMENTS (columns),                  \
                                              .free = (GDestroyNotify) type_name##_free };

G_END_DECLS
