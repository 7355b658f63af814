/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rows.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "change-row.h"

/* What the log says of a value that it must not keep. */
#define MASK "***"

#define MEMBER(record, field, Type) (G_STRUCT_MEMBER (Type, record, (field)->offset))

/* The statements of one kind of record, made once. */
typedef struct
{
  char *select; /* up to FROM table */
  char *insert;
  char *update;
} RowsSql;

/* Kept records have a version behind their id. */
static gsize
first_column (const UnsootRecordType *type)
{
  return type->posting ? 1 : 2;
}

static char *
select_sql (const UnsootRecordType *type)
{
  GString *sql = g_string_new ("SELECT ");
  for (gsize i = 0; i < type->n_fields; i++)
    g_string_append_printf (sql, "%s\"%s\"", i > 0 ? ", " : "", type->fields[i].name);
  g_string_append_printf (sql, " FROM %s ", type->table);
  return g_string_free (sql, FALSE);
}

static char *
insert_sql (const UnsootRecordType *type)
{
  g_autoptr (GString) names = g_string_new (type->posting ? "" : "version, ");
  g_autoptr (GString) values = g_string_new (type->posting ? "" : "1, ");
  gsize first = first_column (type);

  for (gsize i = first; i < type->n_fields; i++)
    {
      const char *comma = i > first ? ", " : "";
      g_string_append_printf (names, "%s\"%s\"", comma, type->fields[i].name);
      g_string_append_printf (values, "%s$%d", comma, (int) (i - first + 1));
    }
  return g_strdup_printf ("INSERT INTO %s (%s) VALUES (%s) RETURNING id", type->table, names->str,
                          values->str);
}

/* The fields as $1 …, then the id and the version that was read. */
static char *
update_sql (const UnsootRecordType *type)
{
  gsize first = first_column (type);
  int n = (int) (type->n_fields - first);
  GString *sql = g_string_new (NULL);

  g_string_append_printf (sql, "UPDATE %s SET version = version + 1", type->table);
  for (gsize i = first; i < type->n_fields; i++)
    g_string_append_printf (sql, ", \"%s\" = $%d", type->fields[i].name, (int) (i - first + 1));
  g_string_append_printf (sql, " WHERE id = $%d AND version = $%d", n + 1, n + 2);
  return g_string_free (sql, FALSE);
}

static const RowsSql *
sql_for (const UnsootRecordType *type)
{
  static GMutex mutex;
  static GHashTable *known;

  g_mutex_lock (&mutex);
  if (known == NULL)
    known = g_hash_table_new (NULL, NULL);
  RowsSql *sql = g_hash_table_lookup (known, type);
  if (sql == NULL)
    {
      sql = g_new0 (RowsSql, 1);
      sql->select = select_sql (type);
      sql->insert = insert_sql (type);
      sql->update = type->posting ? NULL : update_sql (type);
      g_hash_table_insert (known, (gpointer) type, sql);
    }
  g_mutex_unlock (&mutex);
  return sql;
}

static UnsootValue
field_value (gconstpointer record, const UnsootField *field)
{
  switch (field->type)
    {
    case UNSOOT_FIELD_INT64:
      return unsoot_field_zero_is_null (field) ? unsoot_key (MEMBER (record, field, gint64))
                                               : unsoot_int (MEMBER (record, field, gint64));
    case UNSOOT_FIELD_BOOL:
      return unsoot_int (MEMBER (record, field, gboolean) ? 1 : 0);
    case UNSOOT_FIELD_REAL:
      return unsoot_real (MEMBER (record, field, double));
    case UNSOOT_FIELD_TEXT:
      return unsoot_text (MEMBER (record, field, char *));
    case UNSOOT_FIELD_BYTES:
      return unsoot_bytes (MEMBER (record, field, GBytes *));
    }
  g_assert_not_reached ();
}

static void
read_field (gpointer record, const UnsootField *field, UnsootQuery *query, guint column)
{
  switch (field->type)
    {
    case UNSOOT_FIELD_INT64:
      MEMBER (record, field, gint64) = unsoot_query_get_int (query, column);
      break;
    case UNSOOT_FIELD_BOOL:
      MEMBER (record, field, gboolean) = unsoot_query_get_int (query, column) != 0;
      break;
    case UNSOOT_FIELD_REAL:
      MEMBER (record, field, double) = unsoot_query_get_real (query, column);
      break;
    case UNSOOT_FIELD_TEXT:
      MEMBER (record, field, char *) = unsoot_query_dup_text (query, column);
      break;
    case UNSOOT_FIELD_BYTES:
      MEMBER (record, field, GBytes *) = unsoot_query_get_bytes (query, column);
      break;
    }
}

static gpointer
read_record (const UnsootRecordType *type, UnsootQuery *query)
{
  gpointer record = unsoot_record_new (type);
  for (gsize i = 0; i < type->n_fields; i++)
    read_field (record, &type->fields[i], query, (guint) i);
  return record;
}

GPtrArray *
unsoot_rows_list_values (UnsootDb *db, const UnsootRecordType *type, GError **error,
                         const char *tail, gsize n, const UnsootValue *values)
{
  g_autofree char *sql = g_strconcat (sql_for (type)->select, tail, NULL);
  g_autoptr (UnsootQuery) query = unsoot_db_query_values (db, error, sql, n, values);
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func (type->free);
  UnsootQueryStep step;

  if (query == NULL)
    return NULL;
  while ((step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    g_ptr_array_add (rows, read_record (type, query));
  return step == UNSOOT_STEP_DONE ? g_steal_pointer (&rows) : NULL;
}

gpointer
unsoot_rows_first_values (UnsootDb *db, const UnsootRecordType *type, GError **error,
                          const char *tail, gsize n, const UnsootValue *values)
{
  g_autofree char *sql = g_strconcat (sql_for (type)->select, tail, NULL);
  g_autoptr (UnsootQuery) query = unsoot_db_query_values (db, error, sql, n, values);
  if (query == NULL)
    return NULL;

  UnsootQueryStep step = unsoot_query_step (query, error);
  if (step == UNSOOT_STEP_ROW)
    return read_record (type, query);
  if (step == UNSOOT_STEP_DONE)
    g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
                 /* Translators: %s is a kind of entry, as in "customer" */
                 _ ("There is no such %s in the book."), _ (type->noun));
  return NULL;
}

gpointer
unsoot_rows_get (UnsootDb *db, const UnsootRecordType *type, gint64 id, GError **error)
{
  return unsoot_rows_first (db, type, error, "WHERE id = $1", unsoot_int (id));
}

/* Pictures are too big for the log: their size and digest tell two of them apart. */
static char *
log_text (gconstpointer record, const UnsootField *field)
{
  g_autofree char *text = unsoot_record_field_text (record, field);
  if (*text == '\0')
    return NULL;
  if ((field->flags & UNSOOT_FIELD_SECRET) != 0)
    return g_strdup (MASK);
  if (field->type != UNSOOT_FIELD_BYTES)
    return g_steal_pointer (&text);

  GBytes *bytes = MEMBER (record, field, GBytes *);
  g_autofree char *digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, bytes);
  return g_strdup_printf ("%" G_GSIZE_FORMAT " bytes, sha256 %s", g_bytes_get_size (bytes), digest);
}

static gboolean
log_change (UnsootDb *db, const UnsootRecordType *type, gint64 id, const char *field,
            const char *was, const char *now, const UnsootActing *acting, GError **error)
{
  UnsootChangeRow change = { .at = acting->now,
                             .staff_id = acting->staff_id,
                             .record = (char *) type->table,
                             .row_id = id,
                             .field = (char *) field,
                             .was = (char *) was,
                             .now = (char *) now };
  return unsoot_rows_post (db, &unsoot_change_row_type, &change, error);
}

static gboolean
is_same (gconstpointer a, gconstpointer b, const UnsootField *field)
{
  switch (field->type)
    {
    case UNSOOT_FIELD_INT64:
      return MEMBER (a, field, gint64) == MEMBER (b, field, gint64);
    case UNSOOT_FIELD_BOOL:
      return !MEMBER (a, field, gboolean) == !MEMBER (b, field, gboolean);
    case UNSOOT_FIELD_REAL:
      return MEMBER (a, field, double) == MEMBER (b, field, double)
             || (isnan (MEMBER (a, field, double)) && isnan (MEMBER (b, field, double)));
    case UNSOOT_FIELD_TEXT:
      return g_strcmp0 (MEMBER (a, field, char *), MEMBER (b, field, char *)) == 0;
    case UNSOOT_FIELD_BYTES:
      if (MEMBER (a, field, GBytes *) == NULL || MEMBER (b, field, GBytes *) == NULL)
        return MEMBER (a, field, GBytes *) == MEMBER (b, field, GBytes *);
      return g_bytes_equal (MEMBER (a, field, GBytes *), MEMBER (b, field, GBytes *));
    }
  g_assert_not_reached ();
}

/* Logs every field in which @record differs from @stored; @n counts them. */
static gboolean
log_differences (UnsootDb *db, const UnsootRecordType *type, gconstpointer stored,
                 gconstpointer record, const UnsootActing *acting, guint *n, GError **error)
{
  gint64 id = ((const UnsootRecordHead *) stored)->id;
  for (gsize i = first_column (type); i < type->n_fields; i++)
    {
      const UnsootField *field = &type->fields[i];
      if (is_same (stored, record, field))
        continue;
      g_autofree char *was = log_text (stored, field);
      g_autofree char *now = log_text (record, field);
      if (!log_change (db, type, id, field->name, was, now, acting, error))
        return FALSE;
      (*n)++;
    }
  return TRUE;
}

/* The stored row, where it still has @record's version. */
static gpointer
get_unchanged (UnsootDb *db, const UnsootRecordType *type, gconstpointer record, GError **error)
{
  const UnsootRecordHead *head = record;
  UnsootRecordHead *stored = unsoot_rows_get (db, type, head->id, error);
  if (stored == NULL || stored->version == head->version)
    return stored;
  unsoot_record_free (type, stored);
  g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONFLICT,
               /* Translators: %s is a kind of entry, as in "customer" */
               _ ("Someone else changed this %s since you opened it. Compare both before you "
                  "save."),
               _ (type->noun));
  return NULL;
}

static gint64
insert_row (UnsootDb *db, const UnsootRecordType *type, gconstpointer record, GError **error)
{
  gsize first = first_column (type);
  g_autoptr (UnsootQuery) query = unsoot_db_prepare (db, sql_for (type)->insert, error);
  if (query == NULL)
    return 0;
  for (gsize i = first; i < type->n_fields; i++)
    unsoot_query_bind (query, (guint) (i - first + 1), field_value (record, &type->fields[i]));
  return unsoot_query_step (query, error) == UNSOOT_STEP_ROW ? unsoot_query_get_int (query, 0) : 0;
}

static gboolean
update_row (UnsootDb *db, const UnsootRecordType *type, gconstpointer record, GError **error)
{
  const UnsootRecordHead *head = record;
  gsize first = first_column (type);
  guint n = (guint) (type->n_fields - first);
  g_autoptr (UnsootQuery) query = unsoot_db_prepare (db, sql_for (type)->update, error);
  if (query == NULL)
    return FALSE;
  for (gsize i = first; i < type->n_fields; i++)
    unsoot_query_bind (query, (guint) (i - first + 1), field_value (record, &type->fields[i]));
  unsoot_query_bind (query, n + 1, unsoot_int (head->id));
  unsoot_query_bind (query, n + 2, unsoot_int (head->version));
  return unsoot_query_step (query, error) == UNSOOT_STEP_DONE;
}

gboolean
unsoot_rows_insert (UnsootDb *db, const UnsootRecordType *type, gpointer record,
                    const UnsootActing *acting, GError **error)
{
  UnsootRecordHead *head = record;
  g_assert (!type->posting);

  g_autoptr (UnsootTransaction) deed = unsoot_db_begin (db, error);
  gint64 id = deed != NULL ? insert_row (db, type, record, error) : 0;
  if (id == 0 || !log_change (db, type, id, "version", NULL, "1", acting, error)
      || !unsoot_transaction_commit (g_steal_pointer (&deed), error))
    return FALSE;
  head->id = id;
  head->version = 1;
  return TRUE;
}

gboolean
unsoot_rows_update (UnsootDb *db, const UnsootRecordType *type, gpointer record,
                    const UnsootActing *acting, GError **error)
{
  UnsootRecordHead *head = record;
  guint n = 0;
  g_assert (!type->posting);

  g_autoptr (UnsootTransaction) deed = unsoot_db_begin (db, error);
  gpointer stored = deed != NULL ? get_unchanged (db, type, record, error) : NULL;
  if (stored == NULL)
    return FALSE;
  gboolean saved = log_differences (db, type, stored, record, acting, &n, error)
                   && (n == 0 || update_row (db, type, record, error))
                   && unsoot_transaction_commit (g_steal_pointer (&deed), error);
  unsoot_record_free (type, stored);
  if (saved && n > 0)
    head->version++;
  return saved;
}

gboolean
unsoot_rows_delete (UnsootDb *db, const UnsootRecordType *type, gconstpointer record,
                    const UnsootActing *acting, GError **error)
{
  const UnsootRecordHead *head = record;
  g_autofree char *sql = g_strdup_printf ("DELETE FROM %s WHERE id = $1", type->table);
  g_autofree char *version = g_strdup_printf ("%" G_GINT64_FORMAT, head->version);
  guint n = 0;
  g_assert (!type->posting);

  g_autoptr (UnsootTransaction) deed = unsoot_db_begin (db, error);
  gpointer stored = deed != NULL ? get_unchanged (db, type, record, error) : NULL;
  if (stored == NULL)
    return FALSE;
  gpointer nothing = unsoot_record_new (type);
  gboolean gone = log_differences (db, type, stored, nothing, acting, &n, error)
                  && log_change (db, type, head->id, "version", version, NULL, acting, error)
                  && unsoot_db_run (db, error, sql, unsoot_int (head->id))
                  && unsoot_transaction_commit (g_steal_pointer (&deed), error);
  unsoot_record_free (type, nothing);
  unsoot_record_free (type, stored);
  return gone;
}

gboolean
unsoot_rows_post (UnsootDb *db, const UnsootRecordType *type, gpointer record, GError **error)
{
  UnsootRecordHead *head = record;
  g_assert (type->posting);

  gint64 id = insert_row (db, type, record, error);
  if (id != 0)
    head->id = id;
  return id != 0;
}
