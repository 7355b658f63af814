/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "adapter-board.h"

#include <glib/gi18n-lib.h>

#include "civil.h"
#include "deed.h"
#include "indexing.h"
#include "shops.h"
#include "slug.h"

static const UnsootSlug states[] = {
  { UNSOOT_BOARD_DUE, "due", N_ ("Due back") },
  { UNSOOT_BOARD_LENT, "lent", N_ ("Lent") },
  { UNSOOT_BOARD_ON_JOB, "on-job", N_ ("On a job") },
  { UNSOOT_BOARD_INSPECTION, "inspection", N_ ("Under inspection") },
  { UNSOOT_BOARD_HERE, "here", N_ ("Here") },
  { UNSOOT_BOARD_RETIRED, "retired", N_ ("Retired") },
  { 0, NULL, NULL },
};

const char *
unsoot_board_slug (UnsootBoardState state)
{
  return unsoot_slug_of (states, (int) state);
}

const char *
unsoot_board_words (UnsootBoardState state)
{
  return unsoot_slug_words (states, (int) state);
}

void
unsoot_board_tag_free (UnsootBoardTag *tag)
{
  if (tag == NULL)
    return;
  unsoot_adapter_item_row_free (tag->item);
  unsoot_adapter_type_row_free (tag->type);
  unsoot_loan_row_free (tag->loan);
  g_free (tag->words);
  g_free (tag->inspect_on);
  g_free (tag);
}

static UnsootBoardState
state_of (UnsootItemPlace place, const UnsootLoanRow *loan, const char *today)
{
  switch (place)
    {
    case UNSOOT_ITEM_HERE:
      return UNSOOT_BOARD_HERE;
    case UNSOOT_ITEM_BOOKED:
      return UNSOOT_BOARD_ON_JOB;
    case UNSOOT_ITEM_LENT:
      if (loan != NULL && loan->due_on != NULL && g_strcmp0 (loan->due_on, today) < 0)
        return UNSOOT_BOARD_DUE;
      return loan != NULL && g_strcmp0 (loan->to_kind, "job") == 0 ? UNSOOT_BOARD_ON_JOB
                                                                   : UNSOOT_BOARD_LENT;
    case UNSOOT_ITEM_INSPECTION:
      return UNSOOT_BOARD_INSPECTION;
    case UNSOOT_ITEM_RETIRED:
      return UNSOOT_BOARD_RETIRED;
    }
  g_return_val_if_reached (UNSOOT_BOARD_HERE);
}

static char *
next_inspection (const UnsootAdapterTypeRow *type, const UnsootAdapterItemRow *item,
                 const char *today)
{
  int day;

  if (type->inspect_days <= 0)
    return NULL;
  if (item->inspected_on == NULL || !unsoot_day_parse (item->inspected_on, &day, NULL))
    return g_strdup (today);
  return unsoot_day_iso (day + (int) type->inspect_days);
}

static gboolean
load_loan (UnsootDb *db, UnsootBoardTag *tag, GError **error)
{
  g_autoptr (GError) failed = NULL;

  tag->loan = unsoot_rows_maybe (db, &unsoot_loan_row_type, &failed,
                                 "WHERE item_id = $1 AND back_at IS NULL ORDER BY id DESC LIMIT 1",
                                 unsoot_int (tag->item->id));
  if (failed == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&failed));
  return FALSE;
}

static UnsootBoardTag *
tag_of (UnsootDb *db, gint64 item_id, const char *today, gint64 now, GError **error)
{
  g_autoptr (UnsootBoardTag) tag = g_new0 (UnsootBoardTag, 1);
  g_autoptr (UnsootItemState) state
      = unsoot_adapter_item_state (db, item_id, now, now + 1, 0, error);

  if (state == NULL)
    return NULL;
  tag->item = g_steal_pointer (&state->item);
  tag->words = g_steal_pointer (&state->words);
  tag->type = unsoot_rows_get (db, &unsoot_adapter_type_row_type, tag->item->type_id, error);
  if (tag->type == NULL || !load_loan (db, tag, error))
    return NULL;
  tag->state = state_of (state->place, tag->loan, today);
  tag->inspect_on = next_inspection (tag->type, tag->item, today);
  return g_steal_pointer (&tag);
}

static char *
date_of (UnsootDb *db, gint64 now, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);

  return shop != NULL ? unsoot_shop_date (shop, now) : NULL;
}

UnsootBoardTag *
unsoot_board_tag (UnsootDb *db, gint64 item_id, gint64 now, GError **error)
{
  g_autofree char *today = date_of (db, now, error);

  return today != NULL ? tag_of (db, item_id, today, now, error) : NULL;
}

GPtrArray *
unsoot_board (UnsootDb *db, gint64 now, GError **error)
{
  g_autofree char *today = date_of (db, now, error);
  g_autoptr (GPtrArray) board
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_board_tag_free);
  g_autoptr (GPtrArray) items
      = today != NULL ? unsoot_rows_list (db, &unsoot_adapter_item_row_type, error,
                                          "ORDER BY CASE WHEN state = 'retired' THEN 1 ELSE 0 END,"
                                          " bin NULLS LAST, label, id")
                      : NULL;

  for (guint i = 0; items != NULL && i < items->len; i++)
    {
      const UnsootAdapterItemRow *item = items->pdata[i];
      UnsootBoardTag *tag = tag_of (db, item->id, today, now, error);
      if (tag == NULL)
        return NULL;
      g_ptr_array_add (board, tag);
    }
  return items != NULL ? g_steal_pointer (&board) : NULL;
}

GPtrArray *
unsoot_adapter_loans (UnsootDb *db, gint64 item_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_loan_row_type, error,
                           "WHERE item_id = $1 ORDER BY out_at DESC, id DESC",
                           unsoot_int (item_id));
}

GArray *
unsoot_adapter_jobs (UnsootDb *db, gint64 item_id, guint limit, GError **error)
{
  g_autoptr (GArray) jobs = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr (UnsootQuery) query
      = unsoot_db_query (db, error,
                         "SELECT b.job_id FROM booking_adapters a"
                         " JOIN bookings b ON b.id = a.booking_id"
                         " WHERE a.item_id = $1 AND b.state <> 'dropped' GROUP BY b.job_id"
                         " ORDER BY max (b.starts_at) DESC, b.job_id DESC LIMIT $2",
                         unsoot_int (item_id), unsoot_int (limit));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    {
      const gint64 job = unsoot_query_get_int (query, 0);
      g_array_append_val (jobs, job);
    }
  return step == UNSOOT_STEP_DONE ? g_steal_pointer (&jobs) : NULL;
}

static void
set_text (char **field, const char *text)
{
  g_free (*field);
  *field = g_strdup (text);
}

static gboolean
save_item (UnsootDb *db, const UnsootActing *who, UnsootAdapterItemRow *item, GError **error)
{
  return unsoot_rows_update (db, &unsoot_adapter_item_row_type, item, who, error)
         && unsoot_index_adapter (db, item->id, error);
}

static gboolean
check_not_lent (const UnsootBoardTag *tag, GError **error)
{
  if (tag->loan == NULL)
    return TRUE;
  return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                           _ ("Adapter %s is %s. Take it back first."), tag->item->label,
                           tag->words);
}

gboolean
unsoot_adapter_inspected (UnsootDb *db, const UnsootActing *who, gint64 item_id, gboolean passed,
                          const char *condition, GError **error)
{
  if (!passed && unsoot_deed_blank (condition))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say what is wrong with the adapter."));
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_ADAPTER, error);
  g_autoptr (UnsootBoardTag) tag
      = deed != NULL ? unsoot_board_tag (db, item_id, who->now, error) : NULL;
  g_autofree char *today = tag != NULL ? date_of (db, who->now, error) : NULL;

  if (today == NULL || !check_not_lent (tag, error))
    return FALSE;
  set_text (&tag->item->inspected_on, today);
  set_text (&tag->item->state, passed ? "here" : "inspection");
  if (!unsoot_deed_blank (condition))
    set_text (&tag->item->condition, condition);
  return unsoot_deed_end (&deed, save_item (db, who, tag->item, error), error);
}

gboolean
unsoot_adapter_retire (UnsootDb *db, const UnsootActing *who, gint64 item_id, const char *reason,
                       GError **error)
{
  if (reason != NULL && unsoot_deed_blank (reason))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say why the adapter is retired."));
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_ADAPTER, error);
  g_autoptr (UnsootBoardTag) tag
      = deed != NULL ? unsoot_board_tag (db, item_id, who->now, error) : NULL;

  if (tag == NULL || !check_not_lent (tag, error))
    return FALSE;
  if (reason != NULL && tag->state == UNSOOT_BOARD_ON_JOB)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("Adapter %s is %s. Give the job another one first."),
                             tag->item->label, tag->words);
  set_text (&tag->item->state, reason != NULL ? "retired" : "inspection");
  if (reason != NULL)
    set_text (&tag->item->condition, reason);
  return unsoot_deed_end (&deed, save_item (db, who, tag->item, error), error);
}
