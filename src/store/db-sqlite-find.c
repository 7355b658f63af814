/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "db-sqlite.h"

/* Words are folded and cut before they get here, so the simplest tokenizer sees exactly
   what C saw. detail=none keeps the index small; inside a code the order of letters
   counts, so that one has positions. found_terms has every word once. */
const char *const unsoot_sqlite_find_schema
    = "CREATE TABLE IF NOT EXISTS found ("
      "  key INTEGER PRIMARY KEY,"
      "  title TEXT NOT NULL,"
      "  detail TEXT,"
      "  folded TEXT NOT NULL,"
      "  compact TEXT NOT NULL"
      ") STRICT;"
      "CREATE TABLE IF NOT EXISTS found_terms (term TEXT PRIMARY KEY) STRICT, WITHOUT ROWID;"
      "CREATE VIRTUAL TABLE IF NOT EXISTS found_words USING fts5 (folded, content = 'found',"
      "  content_rowid = 'key', detail = 'none', columnsize = 0, prefix = '1 2 3 4 5',"
      "  tokenize = 'ascii');"
      "CREATE VIRTUAL TABLE IF NOT EXISTS found_inside USING fts5 (compact, content = 'found',"
      "  content_rowid = 'key', columnsize = 0, tokenize = 'trigram case_sensitive 1');";

/* Longer beginnings than the index holds are looked up among the words there are. */
#define LONGEST_PREFIX 5
/* With more words than this each of them is rare, and the engine may gather them itself. */
#define MOST_TERMS 32

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

/* Words that no row has any more stay: they find nothing and cost little. */
static gboolean
learn_terms (UnsootDb *db, const char *folded, GError **error)
{
  g_auto (GStrv) words = g_strsplit (folded, " ", -1);
  for (guint i = 0; words[i] != NULL; i++)
    if (g_utf8_strlen (words[i], -1) > LONGEST_PREFIX
        && !run_native (db, error,
                        "INSERT INTO found_terms (term) VALUES ($1) ON CONFLICT DO NOTHING",
                        UNSOOT_VALUES (unsoot_text (words[i]))))
      return FALSE;
  return TRUE;
}

static gboolean
learn_words (UnsootDb *db, gint64 key, const char *folded, const char *compact, GError **error)
{
  return learn_terms (db, folded, error)
         && run_native (db, error, "INSERT INTO found_words (rowid, folded) VALUES ($1, $2)",
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

/* Letters and digits only reach these, so quoting is all the escaping there is. */
static void
append_prefix (GString *match, const char *word)
{
  g_string_append_printf (match, "\"%s\"*", word);
}

/* Appends what finds the words that begin with @word. Beyond the index's prefixes the
   engine would gather every row of every such word before it shows the first. */
static gboolean
append_start (UnsootDb *db, GString *match, const char *word, GError **error)
{
  if (g_utf8_strlen (word, -1) <= LONGEST_PREFIX)
    {
      append_prefix (match, word);
      return TRUE;
    }
  g_autoptr (UnsootQuery) query = unsoot_db_prepare_native (
      db, "SELECT term FROM found_terms WHERE term >= $1 AND term < $2 ORDER BY term LIMIT $3",
      error);
  if (query == NULL)
    return FALSE;
  g_autofree char *end = g_strconcat (word, "\xf4\x8f\xbf\xbf", NULL);
  g_autoptr (GString) terms = g_string_new (NULL);
  int n = 0;
  UnsootQueryStep step;
  unsoot_query_bind (query, 1, unsoot_text (word));
  unsoot_query_bind (query, 2, unsoot_text (end));
  unsoot_query_bind (query, 3, unsoot_int (MOST_TERMS + 1));
  for (; (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW; n++)
    g_string_append_printf (terms, "%s\"%s\"", n > 0 ? " OR " : "",
                            unsoot_query_get_text (query, 0));
  if (n > MOST_TERMS)
    append_prefix (match, word);
  else
    g_string_append_printf (match, "(%s)", n > 0 ? terms->str : "\"\"");
  return step == UNSOOT_STEP_DONE;
}

static gboolean
append_word (UnsootDb *db, GString *match, UnsootFoundFit fit, const char *word, GError **error)
{
  if (fit == UNSOOT_FOUND_START)
    return append_start (db, match, word, error);
  g_string_append_printf (match, "\"%s\"", word);
  return TRUE;
}

static char *
match_text (UnsootDb *db, UnsootFoundFit fit, const char *const *words, const char *compact,
            GError **error)
{
  if (fit == UNSOOT_FOUND_INSIDE)
    return g_strdup_printf ("\"%s\"", compact);

  g_autoptr (GString) match = g_string_new ("(");
  for (guint i = 0; words[i] != NULL; i++)
    {
      g_string_append (match, i > 0 ? " AND " : "");
      if (!append_word (db, match, fit, words[i], error))
        return NULL;
    }
  g_string_append_c (match, ')');
  /* A plate typed with a space in it is one code. */
  if (words[1] != NULL)
    {
      g_string_append (match, " OR ");
      if (!append_word (db, match, fit, compact, error))
        return NULL;
    }
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
  g_autofree char *match = match_text (db, fit, words, compact, error);
  g_autoptr (UnsootQuery) query = match != NULL ? unsoot_db_prepare_native (db, sql, error) : NULL;
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
