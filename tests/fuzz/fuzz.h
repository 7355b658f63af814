/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <stdio.h>
#include <stdlib.h>

/* A property that does not hold ends the program, so that the fuzzer keeps the input. */
#define FUZZ_CHECK(condition, ...)                                                                 \
  G_STMT_START                                                                                     \
  {                                                                                                \
    if (!(condition))                                                                              \
      {                                                                                            \
        fprintf (stderr, "%s:%d: %s: ", __FILE__, __LINE__, #condition);                           \
        fprintf (stderr, __VA_ARGS__);                                                             \
        fputc ('\n', stderr);                                                                      \
        abort ();                                                                                  \
      }                                                                                            \
  }                                                                                                \
  G_STMT_END

/* The bytes as text, which ends at the first zero. Free it. */
static inline char *
fuzz_text (const guint8 *data, gsize size)
{
  return g_strndup ((const char *) data, size);
}

/* Takes the first byte off; 0 where there is none. */
static inline guint8
fuzz_byte (const guint8 **data, gsize *size)
{
  if (*size == 0)
    return 0;
  (*size)--;
  return *(*data)++;
}

/* Takes the first eight bytes off as a number. */
static inline gint64
fuzz_int64 (const guint8 **data, gsize *size)
{
  guint64 number = 0;
  for (int i = 0; i < 8; i++)
    number = number << 8 | fuzz_byte (data, size);
  return (gint64) number;
}

/* A reader says no with a sentence that can be shown, and only then; gives back @done. */
static inline gboolean
fuzz_answer (gboolean done, GError **error)
{
  FUZZ_CHECK (done == (*error == NULL), "answer and error disagree");
  FUZZ_CHECK (done || (*error)->message[0] != '\0', "a refusal without a reason");
  FUZZ_CHECK (done || g_utf8_validate ((*error)->message, -1, NULL), "damaged: %s",
              (*error)->message);
  g_clear_error (error);
  return done;
}
