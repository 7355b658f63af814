/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "deed.h"

#include <glib/gi18n-lib.h>

#include "staff-row.h"

#define HEAD(row) ((UnsootRecordHead *) (row))

gboolean
unsoot_deed_fail (GError **error, UnsootStoreError code, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_autofree char *sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error_literal (error, UNSOOT_STORE_ERROR, (int) code, sentence);
  return FALSE;
}

gboolean
unsoot_deed_allowed (UnsootDb *db, const UnsootActing *who, UnsootDeed deed, GError **error)
{
  if (who->staff_id == 0)
    return TRUE;

  g_autoptr (UnsootStaffRow) person
      = unsoot_rows_get (db, &unsoot_staff_row_type, who->staff_id, error);
  UnsootRole role;
  if (person == NULL)
    return FALSE;
  if (!person->active)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_NOT_ALLOWED,
                             _ ("%s no longer works here. Someone who does has to do this."),
                             person->name);
  if (!unsoot_role_find (person->role, &role))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_DAMAGED,
                             _ ("%s has a role that this program does not know: %s."), person->name,
                             person->role);

  g_autofree char *refusal = unsoot_role_refusal (role, deed);
  if (refusal != NULL)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_NOT_ALLOWED, "%s", refusal);
  return TRUE;
}

UnsootTransaction *
unsoot_deed_begin (UnsootDb *db, const UnsootActing *who, UnsootDeed deed, GError **error)
{
  g_autoptr (UnsootTransaction) transaction = unsoot_db_begin (db, error);

  if (transaction == NULL || !unsoot_deed_allowed (db, who, deed, error))
    return NULL;
  return g_steal_pointer (&transaction);
}

gboolean
unsoot_deed_keep (UnsootDb *db, const UnsootRecordType *type, gpointer row, const UnsootActing *who,
                  GError **error)
{
  return HEAD (row)->id == 0 ? unsoot_rows_insert (db, type, row, who, error)
                             : unsoot_rows_update (db, type, row, who, error);
}

static gboolean
contains_id (GPtrArray *rows, gint64 id)
{
  for (guint i = 0; i < rows->len; i++)
    if (HEAD (rows->pdata[i])->id == id)
      return TRUE;
  return FALSE;
}

gboolean
unsoot_deed_keep_all (UnsootDb *db, const UnsootRecordType *type, GPtrArray *kept,
                      GPtrArray *wanted, gsize owner_column, gint64 owner_id,
                      const UnsootActing *who, GError **error)
{
  if (wanted == NULL)
    return TRUE;

  for (guint i = 0; i < kept->len; i++)
    if (!contains_id (wanted, HEAD (kept->pdata[i])->id)
        && !unsoot_rows_delete (db, type, kept->pdata[i], who, error))
      return FALSE;
  for (guint i = 0; i < wanted->len; i++)
    {
      gpointer row = unsoot_record_copy (type, wanted->pdata[i]);
      G_STRUCT_MEMBER (gint64, row, owner_column) = owner_id;
      gboolean saved = unsoot_deed_keep (db, type, row, who, error);
      unsoot_record_free (type, row);
      if (!saved)
        return FALSE;
    }
  return TRUE;
}

gboolean
unsoot_deed_end (UnsootTransaction **deed, gboolean done, GError **error)
{
  if (done)
    return unsoot_transaction_commit (g_steal_pointer (deed), error);
  unsoot_transaction_rollback (g_steal_pointer (deed));
  return FALSE;
}

gboolean
unsoot_deed_save (UnsootDb *db, const UnsootActing *who, UnsootDeed deed,
                  const UnsootRecordType *type, gpointer row, UnsootDeedIndex index, GError **error)
{
  g_autoptr (UnsootTransaction) transaction = unsoot_deed_begin (db, who, deed, error);
  UnsootRecordHead before = *HEAD (row);

  if (transaction == NULL)
    return FALSE;
  gboolean done = unsoot_deed_keep (db, type, row, who, error)
                  && (index == NULL || index (db, HEAD (row)->id, error));
  if (unsoot_deed_end (&transaction, done, error))
    return TRUE;
  *HEAD (row) = before;
  return FALSE;
}

gpointer
unsoot_rows_maybe_values (UnsootDb *db, const UnsootRecordType *type, GError **error,
                          const char *tail, gsize n, const UnsootValue *values)
{
  g_autoptr (GPtrArray) rows = unsoot_rows_list_values (db, type, error, tail, n, values);

  if (rows == NULL || rows->len == 0)
    return NULL;
  return unsoot_record_copy (type, rows->pdata[0]);
}

gboolean
unsoot_deed_blank (const char *text)
{
  if (text == NULL)
    return TRUE;
  while (g_ascii_isspace (*text))
    text++;
  return *text == '\0';
}

char *
unsoot_deed_lines (GPtrArray *sentences)
{
  GString *lines = g_string_new (NULL);

  for (guint i = 0; i < sentences->len; i++)
    g_string_append_printf (lines, "%s%s", i > 0 ? "\n" : "", (char *) sentences->pdata[i]);
  return g_string_free (lines, FALSE);
}
