/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "find.h"
#include "fold.h"
#include "fuzz.h"
#include "migrate.h"
#include "targets.h"

#define LIMIT 100
/* find.h: more words than these are left out of the question. */
#define MOST_WORDS 12
/* The row that the input itself is put into. */
#define OWN_ROW 99

typedef struct
{
  UnsootFoundKind kind;
  gint64 row;
  const char *title;
  const char *words;
  const char *codes; /* with | between */
} Entry;

static const Entry entries[] = {
  { UNSOOT_FOUND_CUSTOMER, 1, "Łukasz Øster", "Groß-Straße 5", "(555) 010-2233" },
  { UNSOOT_FOUND_CUSTOMER, 2, "Ana Müller-Lind", NULL, "555 010 9944" },
  { UNSOOT_FOUND_CUSTOMER, 3, "O’Dell Haulage", "yard gate", NULL },
  { UNSOOT_FOUND_CUSTOMER, 4, "ΑΘΗΝΑ Ωμέγα", "Ясный 12", "+30 210 000" },
  { UNSOOT_FOUND_VEHICLE, 1, "Ox 300", "unit 17", "AB 12-CDE|1G4AH59H45G118341|17" },
  { UNSOOT_FOUND_VEHICLE, 2, "Ox 500", NULL, "XY 99" },
  { UNSOOT_FOUND_JOB, 12, "Job 12", NULL, "12" },
  { UNSOOT_FOUND_ESTIMATE, 3, "Estimate 3", "a b c d e f g h i j k l m n", "3" },
  { UNSOOT_FOUND_INVOICE, 7, "Invoice 2012-7", "Łukasz Øster", "2012-7" },
  { UNSOOT_FOUND_LOT, 4, "Lot QF/0117", NULL, "QF/0117" },
  { UNSOOT_FOUND_ADAPTER, 9, "A-17 banjo", NULL, "A-17" },
  { UNSOOT_FOUND_FLUID, 2, "Cleaner, 1 L", "intake", NULL },
};

static gboolean
put (UnsootDb *db, const Entry *entry)
{
  GError *error = NULL;
  g_auto (GStrv) codes = entry->codes != NULL ? g_strsplit (entry->codes, "|", -1) : NULL;
  gboolean done = unsoot_find_put (db, entry->kind, entry->row, entry->title, NULL, entry->words,
                                   (const char *const *) codes, &error);
  return fuzz_answer (done, &error);
}

static UnsootDb *
town (void)
{
  static UnsootDb *db = NULL;
  GError *error = NULL;
  if (db != NULL)
    return db;
  db = unsoot_db_open (NULL, UNSOOT_DB_CREATE, &error);
  FUZZ_CHECK (error == NULL && unsoot_migrate (db, 0, &error), "%s", error->message);
  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++)
    put (db, &entries[i]);
  return db;
}

/* The words of @text as a search sees them: letters and digits, folded; at most @most. */
static GPtrArray *
words_of (const char *text, guint most)
{
  GPtrArray *words = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *folded = unsoot_fold (text, NULL);
  GString *word = g_string_new (NULL);
  for (const char *p = folded;; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);
      if (c != 0 && g_unichar_isalnum (c))
        g_string_append_unichar (word, c);
      else if (word->len > 0 && words->len < most)
        g_ptr_array_add (words, g_strdup (word->str));
      if (c == 0)
        break;
      if (!g_unichar_isalnum (c))
        g_string_truncate (word, 0);
    }
  g_string_free (word, TRUE);
  return words;
}

static char *
joined (const GPtrArray *words)
{
  GString *all = g_string_new (NULL);
  for (guint i = 0; i < words->len; i++)
    g_string_append (all, words->pdata[i]);
  return g_string_free (all, FALSE);
}

static GPtrArray *
codes_of (const Entry *entry)
{
  GPtrArray *codes = g_ptr_array_new_with_free_func (g_free);
  g_auto (GStrv) typed = g_strsplit (entry->codes != NULL ? entry->codes : "", "|", -1);
  for (guint i = 0; typed[i] != NULL; i++)
    g_ptr_array_add (codes, unsoot_fold_compact (typed[i], NULL));
  return codes;
}

static gboolean
fits_a_word (const GPtrArray *words, const char *typed, gboolean whole)
{
  for (guint i = 0; i < words->len; i++)
    if (whole ? strcmp (words->pdata[i], typed) == 0 : g_str_has_prefix (words->pdata[i], typed))
      return TRUE;
  return FALSE;
}

static gboolean
fits_all (const GPtrArray *words, const GPtrArray *typed, const char *compact, gboolean whole)
{
  gboolean all = TRUE;
  for (guint i = 0; i < typed->len; i++)
    all = all && fits_a_word (words, typed->pdata[i], whole);
  return all || fits_a_word (words, compact, whole);
}

/* How well @entry fits by the words of find.h alone; -1: not at all. */
static int
expected_fit (const Entry *entry, const GPtrArray *typed, const char *compact)
{
  g_autofree char *all = g_strjoin (" ", entry->title, entry->words, NULL);
  g_autoptr (GPtrArray) words = words_of (all, G_MAXUINT);
  g_autoptr (GPtrArray) codes = codes_of (entry);
  for (guint i = 0; i < codes->len; i++)
    g_ptr_array_add (words, g_strdup (codes->pdata[i]));

  if (typed->len == 0)
    return -1;
  if (fits_all (words, typed, compact, TRUE))
    return UNSOOT_FOUND_WHOLE;
  if (fits_all (words, typed, compact, FALSE))
    return UNSOOT_FOUND_START;
  for (guint i = 0; i < codes->len && g_utf8_strlen (compact, -1) >= 3; i++)
    if (strstr (codes->pdata[i], compact) != NULL)
      return UNSOOT_FOUND_INSIDE;
  return -1;
}

static int
found_fit (const GPtrArray *found, UnsootFoundKind kind, gint64 row)
{
  for (guint i = 0; i < found->len; i++)
    {
      const UnsootFound *one = found->pdata[i];
      if (one->kind == kind && one->row == row)
        return one->fit;
    }
  return -1;
}

/* Groups hold together, in each the best come first; no row is shown twice. */
static void
check_order (const GPtrArray *found, const char *text)
{
  for (guint i = 1; i < found->len; i++)
    {
      const UnsootFound *one = found->pdata[i], *before = found->pdata[i - 1];
      for (guint k = 0; k < i; k++)
        {
          const UnsootFound *other = found->pdata[k];
          FUZZ_CHECK (other->kind != one->kind || other->row != one->row, "“%s”: twice", text);
          FUZZ_CHECK (other->kind != one->kind || before->kind == one->kind, "“%s”: apart", text);
        }
      FUZZ_CHECK (before->kind != one->kind || before->fit <= one->fit, "“%s”: order", text);
    }
}

static GPtrArray *
find (UnsootDb *db, const char *text)
{
  GError *error = NULL;
  GPtrArray *found = unsoot_find (db, text, LIMIT, &error);
  FUZZ_CHECK ((found != NULL) == g_utf8_validate (text, -1, NULL), "“%s”", text);
  fuzz_answer (found != NULL, &error);
  return found;
}

/* What was put is found by typing it, until it is taken away. */
static void
check_own (UnsootDb *db, const char *text, const GPtrArray *typed)
{
  const Entry own = { UNSOOT_FOUND_LOT, OWN_ROW, text, NULL, NULL };
  UnsootTransaction *deed = unsoot_db_begin (db, NULL);
  FUZZ_CHECK (put (db, &own), "“%s”", text);
  g_autoptr (GPtrArray) found = find (db, text);
  FUZZ_CHECK (found_fit (found, own.kind, own.row) == (typed->len > 0 ? UNSOOT_FOUND_WHOLE : -1),
              "“%s” does not find itself", text);
  FUZZ_CHECK (unsoot_find_remove (db, own.kind, own.row, NULL), "“%s”", text);
  g_autoptr (GPtrArray) later = find (db, text);
  FUZZ_CHECK (found_fit (later, own.kind, own.row) == -1, "“%s” is still found", text);
  unsoot_transaction_rollback (deed);
}

void
fuzz_find (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  UnsootDb *db = town ();
  g_autoptr (GPtrArray) found = find (db, text);

  if (found == NULL)
    return;
  g_autoptr (GPtrArray) typed = words_of (text, MOST_WORDS);
  g_autofree char *compact = joined (typed);
  check_order (found, text);
  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      int fit = found_fit (found, entries[i].kind, entries[i].row);
      FUZZ_CHECK (fit == expected_fit (&entries[i], typed, compact), "“%s” and “%s”: %d, not %d",
                  text, entries[i].title, fit, expected_fit (&entries[i], typed, compact));
    }
  check_own (db, text, typed);
}
