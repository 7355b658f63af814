/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The notation's smallest pieces, for its reader. */
#include "procedure-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "procedure-text.h"

G_DEFINE_QUARK (unsoot_procedure_text_error, unsoot_procedure_text_error)

gboolean
unsoot_word_fail (GError **error, int line, const char *format, ...)
{
  va_list values;
  g_autofree char *reason = NULL;

  va_start (values, format);
  reason = g_strdup_vprintf (format, values);
  va_end (values);
  /* Translators: number of the line, then what is wrong there */
  g_set_error (error, UNSOOT_PROCEDURE_TEXT_ERROR, line, _ ("Line %d: %s"), line, reason);
  return FALSE;
}

char
unsoot_word_unescaped (char c)
{
  return c == 'n' ? '\n' : c;
}

char *
unsoot_word_unescape (const char *text)
{
  GString *plain;

  if (text == NULL || *text == '\0')
    return NULL;
  plain = g_string_new (NULL);
  for (const char *p = text; *p != '\0'; p++)
    g_string_append_c (plain, *p == '\\' && p[1] != '\0' ? unsoot_word_unescaped (*++p) : *p);
  return g_string_free (plain, FALSE);
}

gboolean
unsoot_word_number (const char *text, double *number)
{
  char *end = NULL;

  if (!g_ascii_isdigit (*text))
    return FALSE;
  *number = g_ascii_strtod (text, &end);
  return *end == '\0' && isfinite (*number);
}

static gboolean
is_escaped (const char *text, gsize at)
{
  gsize slashes = 0;

  while (slashes < at && text[at - slashes - 1] == '\\')
    slashes++;
  return slashes % 2 == 1;
}

char *
unsoot_word_strip (char *text)
{
  gsize length = strlen (g_strchug (text));

  while (length > 0 && g_ascii_isspace (text[length - 1]) && !is_escaped (text, length - 1))
    text[--length] = '\0';
  return text;
}
