/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  UNSOOT_VALUE_NULL,
  UNSOOT_VALUE_INT,
  UNSOOT_VALUE_REAL,
  UNSOOT_VALUE_TEXT,
  UNSOOT_VALUE_BYTES,
} UnsootValueType;

/* An argument of a statement. It borrows text and bytes for the length of the call. */
typedef struct
{
  UnsootValueType type;
  union
  {
    gint64 integer;
    double real;
    const char *text;
    GBytes *bytes;
  };
} UnsootValue;

static inline UnsootValue
unsoot_null (void)
{
  return (UnsootValue){ .type = UNSOOT_VALUE_NULL };
}

static inline UnsootValue
unsoot_int (gint64 integer)
{
  return (UnsootValue){ .type = UNSOOT_VALUE_INT, .integer = integer };
}

/* A reference to another row: 0 is NULL in the store. */
static inline UnsootValue
unsoot_key (gint64 id)
{
  return id != 0 ? unsoot_int (id) : unsoot_null ();
}

/* NAN is NULL in the store. */
static inline UnsootValue
unsoot_real (double real)
{
  return real == real ? (UnsootValue){ .type = UNSOOT_VALUE_REAL, .real = real } : unsoot_null ();
}

static inline UnsootValue
unsoot_text (const char *text)
{
  return text != NULL ? (UnsootValue){ .type = UNSOOT_VALUE_TEXT, .text = text } : unsoot_null ();
}

static inline UnsootValue
unsoot_bytes (GBytes *bytes)
{
  return bytes != NULL ? (UnsootValue){ .type = UNSOOT_VALUE_BYTES, .bytes = bytes }
                       : unsoot_null ();
}

/* A list of values as two arguments: how many, and where. */
#define UNSOOT_VALUES(...)                                                                         \
  (sizeof ((UnsootValue[]){ { UNSOOT_VALUE_NULL }, __VA_ARGS__ }) / sizeof (UnsootValue) - 1),     \
      ((const UnsootValue[]){ { UNSOOT_VALUE_NULL }, __VA_ARGS__ } + 1)

G_END_DECLS
