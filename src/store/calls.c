/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calls.h"

#include <glib/gi18n-lib.h>

#include "adapter-row.h"
#include "customer-row.h"
#include "customers.h"
#include "deed.h"
#include "shops.h"

#define COUNTING                                                                                   \
  " AND reverses_id IS NULL"                                                                       \
  " AND NOT EXISTS (SELECT 1 FROM calls b WHERE b.reverses_id = calls.id)"

/* Whose it is; a loan's is nobody's that has a row. */
static const struct
{
  const char *about;
  const char *customer_sql; /* NULL: a loan */
} kinds[] = { { "job", "SELECT customer_id FROM jobs WHERE id = $1" },
              { "invoice", "SELECT customer_id FROM invoices WHERE id = $1" },
              { "vehicle", "SELECT customer_id FROM vehicles WHERE id = $1" },
              { "loan", NULL } };

void
unsoot_phone_call_line_free (UnsootCallLine *line)
{
  if (line == NULL)
    return;
  unsoot_call_row_free (line->row);
  g_free (line->by);
  g_free (line);
}

void
unsoot_phone_call_file_free (UnsootCallFile *file)
{
  if (file == NULL)
    return;
  g_free (file->name);
  g_free (file->ask_for);
  g_free (file->phones);
  g_clear_pointer (&file->before, g_ptr_array_unref);
  g_free (file);
}

static gboolean
load_customer (UnsootDb *db, UnsootCallFile *file, GError **error)
{
  g_autoptr (UnsootCustomerRow) customer = unsoot_customer_load (db, file->customer_id, error);
  g_autoptr (GPtrArray) phones
      = customer != NULL ? unsoot_customer_phones (db, customer->id, error) : NULL;
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);

  if (phones == NULL)
    return FALSE;
  file->name = g_strdup (customer->name);
  file->ask_for = g_strdup (customer->contact);
  for (guint i = 0; i < phones->len; i++)
    {
      const UnsootPhoneRow *phone = phones->pdata[i];
      g_ptr_array_add (lines, unsoot_deed_blank (phone->label)
                                  ? g_strdup (phone->number)
                                  : g_strdup_printf ("%s %s", phone->number, phone->label));
    }
  if (lines->len > 0)
    file->phones = unsoot_deed_lines (lines);
  return TRUE;
}

static gboolean
load_loan (UnsootDb *db, UnsootCallFile *file, gint64 loan_id, GError **error)
{
  g_autoptr (UnsootLoanRow) loan = unsoot_rows_get (db, &unsoot_loan_row_type, loan_id, error);

  if (loan == NULL)
    return FALSE;
  file->name = g_strdup (loan->to_name);
  file->phones = unsoot_deed_blank (loan->phone) ? NULL : g_strdup (loan->phone);
  return TRUE;
}

static gboolean
load_whom (UnsootDb *db, UnsootCallFile *file, const char *about, gint64 record, GError **error)
{
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      if (g_strcmp0 (kinds[i].about, about) != 0)
        continue;
      if (kinds[i].customer_sql == NULL)
        return load_loan (db, file, record, error);
      return unsoot_db_int (db, &file->customer_id, error, kinds[i].customer_sql,
                            unsoot_int (record))
             && load_customer (db, file, error);
    }
  return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("Nobody is called about “%s”."),
                           about);
}

UnsootCallFile *
unsoot_phone_call_file_load (UnsootDb *db, const char *about, gint64 record, GError **error)
{
  g_autoptr (UnsootCallFile) file = g_new0 (UnsootCallFile, 1);

  if (!load_whom (db, file, about, record, error)
      || (file->before = unsoot_calls_about (db, about, record, error)) == NULL)
    return NULL;
  return g_steal_pointer (&file);
}

/* Takes @rows, which may be NULL. */
static GPtrArray *
lines_of (UnsootDb *db, GPtrArray *rows, GError **error)
{
  g_autoptr (GPtrArray) taken = rows;
  g_autoptr (GPtrArray) lines
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_phone_call_line_free);

  for (guint i = 0; rows != NULL && i < rows->len; i++)
    {
      UnsootCallLine *line = g_new0 (UnsootCallLine, 1);

      g_ptr_array_add (lines, line);
      line->row = unsoot_record_copy (&unsoot_call_row_type, rows->pdata[i]);
      if (line->row->staff_id == 0)
        continue;
      line->by = unsoot_db_text (db, error, "SELECT name FROM staff WHERE id = $1",
                                 unsoot_int (line->row->staff_id));
      if (line->by == NULL)
        return NULL;
    }
  return rows != NULL ? g_steal_pointer (&lines) : NULL;
}

GPtrArray *
unsoot_calls_about (UnsootDb *db, const char *about, gint64 record, GError **error)
{
  return lines_of (db,
                   unsoot_rows_list (db, &unsoot_call_row_type, error,
                                     "WHERE about = $1 AND record = $2" COUNTING
                                     " ORDER BY id DESC",
                                     unsoot_text (about), unsoot_int (record)),
                   error);
}

GPtrArray *
unsoot_calls_of_customer (UnsootDb *db, gint64 customer_id, guint limit, GError **error)
{
  return lines_of (db,
                   unsoot_rows_list (db, &unsoot_call_row_type, error,
                                     "WHERE customer_id = $1" COUNTING " ORDER BY id DESC LIMIT $2",
                                     unsoot_int (customer_id), unsoot_int (limit)),
                   error);
}

enum
{
  MOST_SHOWN = 50
};

static const struct
{
  const char *page;
  const char *where;
} shown[]
    = { { "job", "WHERE ((about = 'job' AND record = $1)"
                 " OR (about = 'invoice'"
                 " AND record IN (SELECT i.id FROM invoices i WHERE i.job_id = $1)))" },
        { "vehicle", "WHERE ((about = 'vehicle' AND record = $1)"
                     " OR (about = 'job'"
                     " AND record IN (SELECT j.id FROM jobs j WHERE j.vehicle_id = $1))"
                     " OR (about = 'invoice'"
                     " AND record IN (SELECT i.id FROM invoices i JOIN jobs j ON j.id = i.job_id"
                     " WHERE j.vehicle_id = $1)))" },
        { "invoice", "WHERE (about = 'invoice' AND record = $1)" },
        { "adapter", "WHERE (about = 'loan'"
                     " AND record IN (SELECT l.id FROM loans l WHERE l.item_id = $1))" } };

GPtrArray *
unsoot_calls_shown_on (UnsootDb *db, const char *page, gint64 id, GError **error)
{
  for (gsize i = 0; i < G_N_ELEMENTS (shown); i++)
    if (g_str_equal (shown[i].page, page))
      {
        g_autofree char *tail
            = g_strconcat (shown[i].where, COUNTING " ORDER BY id DESC LIMIT $2", NULL);
        return lines_of (db,
                         unsoot_rows_list (db, &unsoot_call_row_type, error, tail, unsoot_int (id),
                                           unsoot_int (MOST_SHOWN)),
                         error);
      }
  g_return_val_if_reached (NULL);
}

static gboolean
check_words (UnsootDb *db, const UnsootActing *who, const char *said, const char *again_on,
             GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  g_autofree char *today = shop != NULL ? unsoot_shop_date (shop, who->now) : NULL;

  if (shop == NULL)
    return FALSE;
  if (unsoot_deed_blank (said))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("Note what was said."));
  if (again_on != NULL && g_strcmp0 (again_on, today) < 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("The day to call again is past: %s."), again_on);
  return TRUE;
}

gint64
unsoot_phone_call_note (UnsootDb *db, const UnsootActing *who, const char *about, gint64 record,
                        const char *spoke_with, const char *said, const char *again_on,
                        GError **error)
{
  g_autoptr (UnsootCallRow) call = unsoot_call_row_new ();
  g_autoptr (UnsootCallFile) file = NULL;

  if (!check_words (db, who, said, again_on, error))
    return 0;
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_CUSTOMER, error);
  if (deed == NULL || (file = unsoot_phone_call_file_load (db, about, record, error)) == NULL)
    return 0;
  call->about = g_strdup (about);
  call->record = record;
  call->customer_id = file->customer_id;
  call->spoke_with = unsoot_deed_blank (spoke_with) ? NULL : g_strdup (spoke_with);
  call->said = g_strdup (said);
  call->again_on = g_strdup (again_on);
  call->at = who->now;
  call->staff_id = who->staff_id;
  return unsoot_deed_end (&deed, unsoot_rows_post (db, &unsoot_call_row_type, call, error), error)
             ? call->id
             : 0;
}

gboolean
unsoot_phone_call_take_back (UnsootDb *db, const UnsootActing *who, gint64 call_id, GError **error)
{
  gint64 taken = 0;

  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_CUSTOMER, error);
  g_autoptr (UnsootCallRow) call
      = deed != NULL ? unsoot_rows_get (db, &unsoot_call_row_type, call_id, error) : NULL;
  if (call == NULL
      || !unsoot_db_int (db, &taken, error, "SELECT count (*) FROM calls WHERE reverses_id = $1",
                         unsoot_int (call_id)))
    return FALSE;
  if (taken > 0 || call->reverses_id != 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("This note is taken back already."));
  call->id = 0;
  call->reverses_id = call_id;
  call->at = who->now;
  call->staff_id = who->staff_id;
  return unsoot_deed_end (&deed, unsoot_rows_post (db, &unsoot_call_row_type, call, error), error);
}
