/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "adapter-deeds.h"

#include <glib/gi18n-lib.h>

#include "deed-dialog.h"
#include "lists.h"

/* In the order of the choices. */
static const char *const loan_kinds[] = { "job", "colleague", "shop" };

/* The job of that number; 0 with an error where there is none. */
static gint64
find_job (UnsootDb *db, gint64 number, GError **error)
{
  /* Lists run by number: the one before the next number. */
  const UnsootListPage page = { .after_id = number + 1, .limit = 1, .order = UNSOOT_LIST_DOWN };
  g_autoptr (GPtrArray) jobs = unsoot_job_page (db, &page, NULL, 0, 0, error);
  const UnsootJobLine *job = jobs != NULL && jobs->len > 0 ? g_ptr_array_index (jobs, 0) : NULL;

  if (job != NULL && job->number == number)
    return job->id;
  if (jobs != NULL)
    g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND, _ ("There is no job %d."),
                 (int) number);
  return 0;
}

static gboolean
lend (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootLoanRow) loan = unsoot_loan_row_new ();
  const gint64 number = order->values[2].number;

  loan->item_id = order->record;
  loan->to_kind = g_strdup (loan_kinds[order->values[0].number]);
  loan->to_name = g_strdup (unsoot_deed_text (order, 1));
  loan->phone = g_strdup (unsoot_deed_text (order, 3));
  loan->due_on = g_strdup (unsoot_deed_text (order, 4));
  if (unsoot_deed_text (order, 2) != NULL)
    {
      loan->job_id = find_job (db, number, error);
      if (loan->job_id == 0)
        return FALSE;
      if (loan->to_name == NULL)
        loan->to_name = g_strdup_printf (_ ("job %d"), (int) number);
    }
  if (!unsoot_adapter_lend (db, who, loan, error))
    return FALSE;
  order->undo_id = loan->id;
  return TRUE;
}

static gboolean
undo_lend (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_adapter_back (db, who, order->undo_id, NULL, NULL, error);
}

static gboolean
take_back (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_adapter_back (db, who, order->record, unsoot_deed_text (order, 0),
                              unsoot_deed_text (order, 1), error);
}

static gboolean
inspect (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_adapter_inspected (db, who, order->record, order->values[0].number == 0,
                                   unsoot_deed_text (order, 1), error);
}

static gboolean
retire (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_adapter_retire (db, who, order->record, order->values[0].text, error);
}

static gboolean
revive (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_adapter_retire (db, who, order->record, NULL, error);
}

static const char *const loan_words[]
    = { N_ ("A job"), N_ ("A colleague"), N_ ("Another shop"), NULL };
static const char *const found_words[] = { N_ ("Passed"), N_ ("Set aside"), NULL };

static const UnsootDeedForm lend_form
    = { .slug = "lend",
        .title = N_ ("Lend an adapter"),
        .verb = N_ ("Lend"),
        .done = N_ ("Lent"),
        .deed = UNSOOT_DEED_LEND_ADAPTER,
        .n_fields = 5,
        .fields = { { .label = N_ ("To"), .kind = UNSOOT_ASK_CHOICE, .words = loan_words },
                    { .label = N_ ("Who takes it"),
                      .kind = UNSOOT_ASK_TEXT,
                      .optional = TRUE,
                      .hint = N_ ("A name; for a job its number below is enough") },
                    { .label = N_ ("Job number"), .kind = UNSOOT_ASK_COUNT, .optional = TRUE },
                    { .label = N_ ("Their phone"), .kind = UNSOOT_ASK_TEXT, .optional = TRUE },
                    { .label = N_ ("Due back"),
                      .kind = UNSOOT_ASK_DAY,
                      .optional = TRUE,
                      .hint = N_ ("2026-03-31") } },
        .carry_out = lend,
        .undo = undo_lend };
static const UnsootDeedForm back_form
    = { .slug = "take-back",
        .title = N_ ("Take an adapter back"),
        .verb = N_ ("Take back"),
        .done = N_ ("Back in its bin"),
        .deed = UNSOOT_DEED_RETURN_ADAPTER,
        .n_fields = 2,
        .fields = { { .label = N_ ("Its condition"),
                      .kind = UNSOOT_ASK_TEXT,
                      .optional = TRUE,
                      .hint = N_ ("Good, seal worn …") },
                    { .label = N_ ("Into bin"), .kind = UNSOOT_ASK_TEXT, .optional = TRUE } },
        .carry_out = take_back };
static const UnsootDeedForm inspect_form
    = { .slug = "inspect",
        .title = N_ ("Inspect an adapter"),
        .verb = N_ ("Record"),
        .done = N_ ("Inspection recorded"),
        .deed = UNSOOT_DEED_EDIT_ADAPTER,
        .n_fields = 2,
        .fields = { { .label = N_ ("It is"), .kind = UNSOOT_ASK_CHOICE, .words = found_words },
                    { .label = N_ ("What was seen"),
                      .kind = UNSOOT_ASK_TEXT,
                      .optional = TRUE,
                      .hint = N_ ("Needed where it is set aside") } },
        .carry_out = inspect };
static const UnsootDeedForm retire_form = {
  .slug = "retire",
  .title = N_ ("Retire an adapter"),
  .verb = N_ ("Retire"),
  .done = N_ ("Retired: it is no longer offered"),
  .deed = UNSOOT_DEED_EDIT_ADAPTER,
  .n_fields = 1,
  .fields
  = { { .label = N_ ("Why"), .kind = UNSOOT_ASK_TEXT, .hint = N_ ("Thread stripped, lost …") } },
  .carry_out = retire
};
static const UnsootDeedForm revive_form = { .slug = "revive",
                                            .title = N_ ("Bring an adapter back"),
                                            .verb = N_ ("Bring back"),
                                            .done = N_ ("Back, and to be inspected first"),
                                            .deed = UNSOOT_DEED_EDIT_ADAPTER,
                                            .carry_out = revive };

static UnsootDeedDialog *
dialog_new (GtkWidget *over, UnsootSession *session, const UnsootDeedForm *form, gint64 record,
            const UnsootBoardTag *tag)
{
  UnsootDeedDialog *dialog = unsoot_deed_dialog_new (over, session, form, record);
  /* Translators: what an adapter's tag says, what it is, and where it is */
  g_autofree char *about
      = g_strdup_printf (_ ("%s · %s · %s"), tag->item->label, tag->type->name, tag->words);

  unsoot_deed_dialog_say (dialog, about);
  return dialog;
}

void
unsoot_adapter_lend_open (GtkWidget *over, UnsootSession *session, const UnsootBoardTag *tag)
{
  UnsootDeedDialog *dialog = dialog_new (over, session, &lend_form, tag->item->id, tag);

  unsoot_deed_dialog_set_choice (dialog, 0, 2);
  unsoot_deed_dialog_open (dialog);
}

void
unsoot_adapter_back_open (GtkWidget *over, UnsootSession *session, const UnsootBoardTag *tag)
{
  UnsootDeedDialog *dialog = dialog_new (over, session, &back_form, tag->loan->id, tag);

  unsoot_deed_dialog_set_text (dialog, 1, tag->item->bin);
  unsoot_deed_dialog_open (dialog);
}

void
unsoot_adapter_inspect_open (GtkWidget *over, UnsootSession *session, const UnsootBoardTag *tag)
{
  unsoot_deed_dialog_open (dialog_new (over, session, &inspect_form, tag->item->id, tag));
}

void
unsoot_adapter_retire_open (GtkWidget *over, UnsootSession *session, const UnsootBoardTag *tag)
{
  unsoot_deed_dialog_open (dialog_new (over, session, &retire_form, tag->item->id, tag));
}

void
unsoot_adapter_revive (GtkWidget *over, UnsootSession *session, const UnsootBoardTag *tag)
{
  unsoot_deed_do (over, session, &revive_form, tag->item->id);
}
