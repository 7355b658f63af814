/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "find.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "db-driver.h"
#include "fold.h"

/* Below three characters an inner match would fit nearly everything. */
#define SHORTEST_INSIDE 3
/* More than anybody types; the rest is left out of the question, not of the answer. */
#define MOST_WORDS 12

void
unsoot_found_free (UnsootFound *found)
{
  if (found == NULL)
    return;
  g_free (found->title);
  g_free (found->detail);
  g_free (found);
}

/* Folding's error as the store's own. */
static gboolean
refuse (GError **error, GError *reason)
{
  g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_INVALID, reason->message);
  g_error_free (reason);
  return FALSE;
}

/* Appends the words of @text, folded and parted by single spaces. */
static gboolean
append_words (GString *words, const char *text, GError **error)
{
  GError *reason = NULL;
  g_autofree char *folded = unsoot_fold (text != NULL ? text : "", &reason);
  if (folded == NULL)
    return refuse (error, reason);

  gboolean inside = FALSE;
  for (const char *p = folded; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);
      gboolean letter = g_unichar_isalnum (c);
      if (letter && !inside && words->len > 0)
        g_string_append_c (words, ' ');
      if (letter)
        g_string_append_unichar (words, c);
      inside = letter;
    }
  return TRUE;
}

static gboolean
append_codes (GString *compact, const char *const *codes, GError **error)
{
  for (; codes != NULL && *codes != NULL; codes++)
    {
      GError *reason = NULL;
      g_autofree char *code = unsoot_fold_compact (*codes, &reason);
      if (code == NULL)
        return refuse (error, reason);
      if (*code != '\0')
        g_string_append_printf (compact, "%s%s", compact->len > 0 ? " " : "", code);
    }
  return TRUE;
}

static gboolean
check_row (UnsootFoundKind kind, gint64 row, GError **error)
{
  if (row > 0 && row < G_GINT64_CONSTANT (1) << 40 && kind >= 1 && kind <= UNSOOT_FOUND_KINDS)
    return TRUE;
  g_autofree char *number = g_strdup_printf ("%" G_GINT64_FORMAT, row);
  g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_INVALID,
               _ ("Entry %s of kind %d can’t be made findable."), number, (int) kind);
  return FALSE;
}

gboolean
unsoot_find_put (UnsootDb *db, UnsootFoundKind kind, gint64 row, const char *title,
                 const char *detail, const char *words, const char *const *codes, GError **error)
{
  g_autoptr (GString) folded = g_string_new (NULL);
  g_autoptr (GString) compact = g_string_new (NULL);

  if (!check_row (kind, row, error) || !append_words (folded, title, error)
      || !append_words (folded, detail, error) || !append_words (folded, words, error)
      || !append_codes (compact, codes, error))
    return FALSE;
  if (compact->len > 0)
    g_string_append_printf (folded, " %s", compact->str);

  g_autoptr (UnsootTransaction) deed = unsoot_db_begin (db, error);
  return deed != NULL
         && db->driver->find_put (db, unsoot_find_key (kind, row), title, detail, folded->str,
                                  compact->str, error)
         && unsoot_transaction_commit (g_steal_pointer (&deed), error);
}

gboolean
unsoot_find_remove (UnsootDb *db, UnsootFoundKind kind, gint64 row, GError **error)
{
  if (!check_row (kind, row, error))
    return FALSE;
  g_autoptr (UnsootTransaction) deed = unsoot_db_begin (db, error);
  return deed != NULL && db->driver->find_remove (db, unsoot_find_key (kind, row), error)
         && unsoot_transaction_commit (g_steal_pointer (&deed), error);
}

/* One kind's results, best fit first. */
static GPtrArray *
find_kind (UnsootDb *db, UnsootFoundKind kind, const char *const *words, const char *compact,
           guint limit, GError **error)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_found_free);
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  gboolean inside = g_utf8_strlen (compact, -1) >= SHORTEST_INSIDE;

  for (UnsootFoundFit fit = UNSOOT_FOUND_WHOLE; fit <= UNSOOT_FOUND_INSIDE; fit++)
    if (found->len < limit && (fit != UNSOOT_FOUND_INSIDE || inside)
        && !db->driver->find (db, fit, words, compact, unsoot_find_key (kind, 0),
                              unsoot_find_key (kind + 1, 0) - 1, limit - found->len, seen, found,
                              error))
      return NULL;
  return g_steal_pointer (&found);
}

/* Moves @group into @found: in front of the others where it fits wholly and they don't. */
static void
add_group (GPtrArray *found, GPtrArray *group, guint *n_whole)
{
  gboolean whole
      = group->len > 0 && ((UnsootFound *) g_ptr_array_index (group, 0))->fit == UNSOOT_FOUND_WHOLE;
  for (guint i = 0; i < group->len; i++)
    g_ptr_array_insert (found, whole ? (int) (*n_whole + i) : -1, g_ptr_array_index (group, i));
  if (whole)
    *n_whole += group->len;
  g_ptr_array_set_free_func (group, NULL);
}

static char **
typed_words (const char *typed, char **compact, GError **error)
{
  g_autoptr (GString) folded = g_string_new (NULL);
  if (!append_words (folded, typed, error))
    return NULL;
  char **words = g_strsplit (folded->str, " ", MOST_WORDS);
  if (words[0] != NULL && g_strv_length (words) == MOST_WORDS)
    {
      char *rest = strchr (words[MOST_WORDS - 1], ' ');
      if (rest != NULL)
        *rest = '\0';
    }
  *compact = g_strjoinv ("", words);
  return words;
}

GPtrArray *
unsoot_find (UnsootDb *db, const char *typed, guint limit, GError **error)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_found_free);
  g_autofree char *compact = NULL;
  g_auto (GStrv) words = typed_words (typed, &compact, error);
  guint n_whole = 0;

  if (words == NULL)
    return NULL;
  for (int kind = 1; kind <= UNSOOT_FOUND_KINDS && words[0] != NULL; kind++)
    {
      g_autoptr (GPtrArray) group = find_kind (db, (UnsootFoundKind) kind,
                                               (const char *const *) words, compact, limit, error);
      if (group == NULL)
        return NULL;
      add_group (found, group, &n_whole);
    }
  return g_steal_pointer (&found);
}
