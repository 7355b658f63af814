/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "db-sqlite.h"

/* Words are folded and cut before they get here, so the simplest tokenizer sees exactly
   what C saw. detail=none keeps the index small; inside a code the order of letters
   counts, so that one has positions. */
const char *const unsoot_sqlite_find_schema
    = "CREATE TABLE IF NOT EXISTS found ("
      "  key INTEGER PRIMARY KEY,"
      "  title TEXT NOT NULL,"
      "  detail TEXT,"
      "  folded TEXT NOT NULL,"
      "  compact TEXT NOT NULL"
      ") STRICT;"
      "CREATE VIRTUAL TABLE IF NOT EXISTS found_words USING fts5 (folded, content = 'found',"
      "  content_rowid = 'key', detail = 'none', columnsize = 0, prefix = '1 2 3 4 5',"
      "  tokenize = 'ascii');"
      "CREATE VIRTUAL TABLE IF NOT EXISTS found_inside USING fts5 (compact, content = 'found',"
      "  content_rowid = 'key', columnsize = 0, tokenize = 'trigram case_sensitive 1');";

#define FIND(index)                                                                                \
  "SELECT f.key, f.title, f.detail FROM " index " AS i JOIN found AS f ON f.key = i.rowid "        \
  "WHERE i." index " MATCH $1 AND i.rowid BETWEEN $2 AND $3 ORDER BY i.rowid DESC LIMIT $4"

static gboolean
run_native (UnsootDb *db, GError **error, const char *sql, gsize n, const UnsootValue *values)
{
  g_autoptr (UnsootQuery) query = unsoot_db_prepare_native (db, sql, error);
  if (query == NULL)
    return FALSE;
  for (guint i = 0; i < n; i++)
    unsoot_query_bind (query, i + 1, values[i]);
  return unsoot_query_step (query, error) == UNSOOT_STEP_DONE;
}

/* Takes the words out of both indices, which must be told what they were. */
static gboolean
forget_words (UnsootDb *db, gint64 key, const char *folded, const char *compact, GError **error)
{
  return run_native (db, error,
                     "INSERT INTO found_words (found_words, rowid, folded) "
                     "VALUES ('delete', $1, $2)",
                     UNSOOT_VALUES (unsoot_int (key), unsoot_text (folded)))
         && run_native (db, error,
                        "INSERT INTO found_inside (found_inside, rowid, compact) "
                        "VALUES ('delete', $1, $2)",
                        UNSOOT_VALUES (unsoot_int (key), unsoot_text (compact)));
}

static gboolean
learn_words (UnsootDb *db, gint64 key, const char *folded, const char *compact, GError **error)
{
  return run_native (db, error, "INSERT INTO found_words (rowid, folded) VALUES ($1, $2)",
                     UNSOOT_VALUES (unsoot_int (key), unsoot_text (folded)))
         && run_native (db, error, "INSERT INTO found_inside (rowid, compact) VALUES ($1, $2)",
                        UNSOOT_VALUES (unsoot_int (key), unsoot_text (compact)));
}

/* The words kept for @key, both NULL where there are none. */
static gboolean
known_words (UnsootDb *db, gint64 key, char **folded, char **compact, GError **error)
{
  g_autoptr (UnsootQuery) query
      = unsoot_db_prepare_native (db, "SELECT folded, compact FROM found WHERE key = $1", error);
  if (query == NULL)
    return FALSE;
  unsoot_query_bind (query, 1, unsoot_int (key));
  UnsootQueryStep step = unsoot_query_step (query, error);
  if (step == UNSOOT_STEP_ROW)
    {
      *folded = unsoot_query_dup_text (query, 0);
      *compact = unsoot_query_dup_text (query, 1);
    }
  return step != UNSOOT_STEP_FAILED;
}

gboolean
unsoot_sqlite_find_put (UnsootDb *db, gint64 key, const char *title, const char *detail,
                        const char *folded, const char *compact, GError **error)
{
  g_autofree char *old_folded = NULL;
  g_autofree char *old_compact = NULL;

  if (!known_words (db, key, &old_folded, &old_compact, error))
    return FALSE;
  gboolean same = g_strcmp0 (old_folded, folded) == 0 && g_strcmp0 (old_compact, compact) == 0;
  if (!same && old_folded != NULL && !forget_words (db, key, old_folded, old_compact, error))
    return FALSE;
  if (!run_native (db, error,
                   "INSERT INTO found (key, title, detail, folded, compact) "
                   "VALUES ($1, $2, $3, $4, $5) ON CONFLICT (key) DO UPDATE SET "
                   "title = excluded.title, detail = excluded.detail, "
                   "folded = excluded.folded, compact = excluded.compact",
                   UNSOOT_VALUES (unsoot_int (key), unsoot_text (title), unsoot_text (detail),
                                  unsoot_text (folded), unsoot_text (compact))))
    return FALSE;
  return same || learn_words (db, key, folded, compact, error);
}

gboolean
unsoot_sqlite_find_remove (UnsootDb *db, gint64 key, GError **error)
{
  g_autofree char *folded = NULL;
  g_autofree char *compact = NULL;

  if (!known_words (db, key, &folded, &compact, error))
    return FALSE;
  return folded == NULL
         || (forget_words (db, key, folded, compact, error)
             && run_native (db, error, "DELETE FROM found WHERE key = $1",
                            UNSOOT_VALUES (unsoot_int (key))));
}

/* Letters and digits only reach this, so quoting is all the escaping there is. */
static char *
match_text (UnsootFoundFit fit, const char *const *words, const char *compact)
{
  const char *star = fit == UNSOOT_FOUND_START ? "*" : "";
  if (fit == UNSOOT_FOUND_INSIDE)
    return g_strdup_printf ("\"%s\"", compact);

  g_autoptr (GString) match = g_string_new ("(");
  for (guint i = 0; words[i] != NULL; i++)
    g_string_append_printf (match, "%s\"%s\"%s", i > 0 ? " AND " : "", words[i], star);
  g_string_append_c (match, ')');
  /* A plate typed with a space in it is one code. */
  if (words[1] != NULL)
    g_string_append_printf (match, " OR \"%s\"%s", compact, star);
  return g_string_free (g_steal_pointer (&match), FALSE);
}

static void
take_row (UnsootQuery *query, UnsootFoundFit fit, GHashTable *seen, GPtrArray *found)
{
  gint64 key = unsoot_query_get_int (query, 0);
  if (g_hash_table_contains (seen, &key))
    return;
  UnsootFound *one = g_new0 (UnsootFound, 1);
  one->kind = (UnsootFoundKind) (key >> 40);
  one->row = key & ((G_GINT64_CONSTANT (1) << 40) - 1);
  one->title = unsoot_query_dup_text (query, 1);
  one->detail = unsoot_query_dup_text (query, 2);
  one->fit = fit;
  g_ptr_array_add (found, one);
  g_hash_table_add (seen, g_memdup2 (&key, sizeof key));
}

gboolean
unsoot_sqlite_find (UnsootDb *db, UnsootFoundFit fit, const char *const *words, const char *compact,
                    gint64 first, gint64 last, guint limit, GHashTable *seen, GPtrArray *found,
                    GError **error)
{
  const char *sql = fit == UNSOOT_FOUND_INSIDE ? FIND ("found_inside") : FIND ("found_words");
  g_autofree char *match = match_text (fit, words, compact);
  g_autoptr (UnsootQuery) query = unsoot_db_prepare_native (db, sql, error);
  guint wanted = found->len + limit;
  UnsootQueryStep step;

  if (query == NULL)
    return FALSE;
  unsoot_query_bind (query, 1, unsoot_text (match));
  unsoot_query_bind (query, 2, unsoot_int (first));
  unsoot_query_bind (query, 3, unsoot_int (last));
  /* Better fits are met again here, and at most so many. */
  unsoot_query_bind (query, 4, unsoot_int ((gint64) limit + g_hash_table_size (seen)));
  while ((step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW && found->len < wanted)
    take_row (query, fit, seen, found);
  return step != UNSOOT_STEP_FAILED;
}
