/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "adapters.h"

#include <glib/gi18n-lib.h>

#include "deed.h"
#include "indexing.h"

GPtrArray *
unsoot_adapter_type_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_adapter_type_row_type, error, "ORDER BY code, id");
}

GPtrArray *
unsoot_adapter_item_list (UnsootDb *db, gint64 type_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_adapter_item_row_type, error,
                           "WHERE type_id = $1 ORDER BY label, id", unsoot_int (type_id));
}

GPtrArray *
unsoot_adapter_fit_list (UnsootDb *db, gint64 type_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_adapter_fit_row_type, error,
                           "WHERE type_id = $1 ORDER BY id", unsoot_int (type_id));
}

GPtrArray *
unsoot_loan_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_loan_row_type, error,
                           "WHERE back_at IS NULL ORDER BY due_on NULLS LAST, id");
}

gboolean
unsoot_adapter_type_save (UnsootDb *db, const UnsootActing *who, UnsootAdapterTypeRow *type,
                          GError **error)
{
  if (unsoot_deed_blank (type->code) || unsoot_deed_blank (type->name))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("A kind of adapter needs a code and a name."));
  return unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_ADAPTER, &unsoot_adapter_type_row_type, type,
                           NULL, error);
}

gboolean
unsoot_adapter_item_save (UnsootDb *db, const UnsootActing *who, UnsootAdapterItemRow *item,
                          GError **error)
{
  if (unsoot_deed_blank (item->label))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("The adapter needs what its tag says."));
  return unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_ADAPTER, &unsoot_adapter_item_row_type, item,
                           unsoot_index_adapter, error);
}

gboolean
unsoot_adapter_fit_save (UnsootDb *db, const UnsootActing *who, UnsootAdapterFitRow *fit,
                         GError **error)
{
  if (fit->year_from > 0 && fit->year_to > 0 && fit->year_to < fit->year_from)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("The years %d to %d are the wrong way round."),
                             (int) fit->year_from, (int) fit->year_to);
  return unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_ADAPTER, &unsoot_adapter_fit_row_type, fit,
                           NULL, error);
}

gboolean
unsoot_adapter_fit_drop (UnsootDb *db, const UnsootActing *who, gint64 fit_id, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_ADAPTER, error);
  g_autoptr (UnsootAdapterFitRow) fit
      = deed != NULL ? unsoot_rows_get (db, &unsoot_adapter_fit_row_type, fit_id, error) : NULL;

  if (fit == NULL)
    return FALSE;
  return unsoot_deed_end (
      &deed, unsoot_rows_delete (db, &unsoot_adapter_fit_row_type, fit, who, error), error);
}

static gboolean
check_here (UnsootDb *db, const UnsootLoanRow *loan, gint64 now, GError **error)
{
  g_autoptr (UnsootItemState) state
      = unsoot_adapter_item_state (db, loan->item_id, now, now + 1, loan->job_id, error);

  if (state == NULL)
    return FALSE;
  if (state->place != UNSOOT_ITEM_HERE)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("Adapter %s can't be handed out: %s."), state->item->label,
                             state->words);
  return TRUE;
}

gboolean
unsoot_adapter_lend (UnsootDb *db, const UnsootActing *who, UnsootLoanRow *loan, GError **error)
{
  if (unsoot_deed_blank (loan->to_name))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("Say who takes the adapter."));
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_LEND_ADAPTER, error);
  if (deed == NULL)
    return FALSE;

  loan->id = 0;
  loan->version = 0;
  loan->out_at = who->now;
  loan->out_by = who->staff_id;
  loan->back_at = 0;
  gboolean done = check_here (db, loan, who->now, error)
                  && unsoot_rows_insert (db, &unsoot_loan_row_type, loan, who, error);
  if (unsoot_deed_end (&deed, done, error))
    return TRUE;
  loan->id = 0;
  return FALSE;
}

static gboolean
put_away (UnsootDb *db, const UnsootActing *who, gint64 item_id, const char *condition,
          const char *bin, GError **error)
{
  g_autoptr (UnsootAdapterItemRow) item
      = unsoot_rows_get (db, &unsoot_adapter_item_row_type, item_id, error);

  if (item == NULL)
    return FALSE;
  if (condition != NULL)
    {
      g_free (item->condition);
      item->condition = g_strdup (condition);
    }
  if (bin != NULL)
    {
      g_free (item->bin);
      item->bin = g_strdup (bin);
    }
  return unsoot_rows_update (db, &unsoot_adapter_item_row_type, item, who, error)
         && unsoot_index_adapter (db, item_id, error);
}

gboolean
unsoot_adapter_back (UnsootDb *db, const UnsootActing *who, gint64 loan_id, const char *condition,
                     const char *bin, GError **error)
{
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_RETURN_ADAPTER, error);
  g_autoptr (UnsootLoanRow) loan
      = deed != NULL ? unsoot_rows_get (db, &unsoot_loan_row_type, loan_id, error) : NULL;

  if (loan == NULL)
    return FALSE;
  if (loan->back_at != 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("This adapter is back already."));
  loan->back_at = who->now;
  loan->back_by = who->staff_id;
  g_free (loan->back_condition);
  loan->back_condition = g_strdup (condition);
  gboolean done = unsoot_rows_update (db, &unsoot_loan_row_type, loan, who, error)
                  && put_away (db, who, loan->item_id, condition, bin, error);
  return unsoot_deed_end (&deed, done, error);
}
