/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-deeds.h"

#include <glib/gi18n-lib.h>

#include "jobs.h"
#include "quotes.h"
#include "unit-text.h"

const char *const unsoot_word_slugs[] = { "phone", "in-person", "email", "text", "signed", NULL };
const char *const unsoot_word_ways[]
    = { N_ ("by phone"), N_ ("in person"), N_ ("by email"), N_ ("by text"), N_ ("signed"), NULL };

static gboolean
do_authorise (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  const gint64 how = order->values[UNSOOT_WORD_HOW].number;

  return unsoot_job_authorise (db, who, order->record, order->values[UNSOOT_WORD_BY].text,
                               unsoot_word_slugs[how], order->values[UNSOOT_WORD_AMOUNT].number,
                               unsoot_deed_text (order, UNSOOT_WORD_ORDER),
                               unsoot_deed_text (order, UNSOOT_WORD_NOTE), error);
}

const UnsootDeedForm unsoot_job_authorise_form = {
  .slug = "authorise",
  .title = N_ ("Who allowed the work?"),
  .verb = N_ ("Authorise"),
  .done = N_ ("The word is recorded"),
  .deed = UNSOOT_DEED_AUTHORISE,
  .n_fields = 5,
  .fields = { { N_ ("Who gave their word"), UNSOOT_ASK_TEXT, FALSE, NULL, NULL },
              { N_ ("How"), UNSOOT_ASK_CHOICE, FALSE, NULL, unsoot_word_ways },
              { N_ ("Up to which total"), UNSOOT_ASK_MONEY, TRUE,
                N_ ("Empty: the newest estimate's total"), NULL },
              { N_ ("Purchase order"), UNSOOT_ASK_TEXT, TRUE, NULL, NULL },
              { N_ ("Note"), UNSOOT_ASK_TEXT, TRUE, NULL, NULL } },
  .carry_out = do_authorise,
};

static gboolean
undo_quote_again (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_job_quote_again (db, who, order->undo_id, error);
}

static gboolean
do_decline (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  order->undo_id = order->record;
  return unsoot_job_decline (db, who, order->record, order->values[0].text, error);
}

const UnsootDeedForm unsoot_job_decline_form = {
  .slug = "decline-job",
  .title = N_ ("The customer does not want it"),
  .verb = N_ ("Record as declined"),
  .done = N_ ("Declined; it is offered again next time"),
  .deed = UNSOOT_DEED_DECLINE,
  .n_fields = 1,
  .fields = { { N_ ("Why"), UNSOOT_ASK_TEXT, FALSE, NULL, NULL } },
  .carry_out = do_decline,
  .undo = undo_quote_again,
};

static gboolean
do_cancel (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  order->undo_id = order->record;
  return unsoot_job_cancel (db, who, order->record, order->values[0].text, error);
}

const UnsootDeedForm unsoot_job_cancel_form = {
  .slug = "cancel-job",
  .title = N_ ("Cancel the job"),
  .verb = N_ ("Cancel the job"),
  .done = N_ ("The job is cancelled"),
  .deed = UNSOOT_DEED_CANCEL,
  .destroys = TRUE,
  .n_fields = 1,
  .fields = { { N_ ("Why"), UNSOOT_ASK_TEXT, FALSE, NULL, NULL } },
  .carry_out = do_cancel,
  .undo = undo_quote_again,
};

static gboolean
do_quote_again (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_job_quote_again (db, who, order->record, error);
}

const UnsootDeedForm unsoot_job_quote_again_form = {
  .slug = "quote-again",
  .title = N_ ("Quote again"),
  .verb = N_ ("Quote again"),
  .done = N_ ("Offered again, with a new estimate"),
  .deed = UNSOOT_DEED_ESTIMATE,
  .carry_out = do_quote_again,
};

static gboolean
do_estimate (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_job_estimate (db, who, order->record, error) != 0;
}

const UnsootDeedForm unsoot_job_estimate_form = {
  .slug = "estimate",
  .title = N_ ("Estimate anew"),
  .verb = N_ ("Estimate anew"),
  .done = N_ ("A new estimate over the lines that stand now"),
  .deed = UNSOOT_DEED_ESTIMATE,
  .carry_out = do_estimate,
};

static const char *const line_kinds[] = { "labour", "fluid", "kit", "disposal", "other", NULL };
static const char *const line_words[]
    = { N_ ("Labour"), N_ ("Fluid"), N_ ("Kit"), N_ ("Disposal"), N_ ("Other"), NULL };

/* A new line asks for a new word: it stands in a new estimate at once. */
static gboolean
do_line (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootJobLineRow) line = unsoot_job_line_row_new ();
  g_autoptr (UnsootTransaction) deed = NULL;
  double quantity = 1.0;

  if (unsoot_deed_text (order, 2) != NULL
      && !unsoot_number_parse (order->values[2].text, &quantity, error))
    return FALSE;
  line->job_id = order->record;
  line->kind = g_strdup (line_kinds[order->values[0].number]);
  line->text = g_strdup (order->values[1].text);
  line->quantity_milli = (gint64) (quantity * 1000.0 + 0.5);
  line->unit = g_strdup (unsoot_deed_text (order, 3) != NULL ? order->values[3].text : _ ("each"));
  line->unit_price_minor = order->values[4].number;
  deed = unsoot_db_begin (db, error);
  return deed != NULL && unsoot_job_line_save (db, who, line, error)
         && unsoot_job_estimate (db, who, order->record, error) != 0
         && unsoot_transaction_commit (g_steal_pointer (&deed), error);
}

const UnsootDeedForm unsoot_job_line_form = {
  .slug = "job-line",
  .title = N_ ("Add a line"),
  .verb = N_ ("Add and estimate anew"),
  .done = N_ ("Added; ask the customer for their word on the new estimate"),
  .deed = UNSOOT_DEED_ESTIMATE,
  .n_fields = 5,
  .fields = { { N_ ("Kind"), UNSOOT_ASK_CHOICE, FALSE, NULL, line_words },
              { N_ ("What it is for"), UNSOOT_ASK_TEXT, FALSE, NULL, NULL },
              { N_ ("Quantity"), UNSOOT_ASK_TEXT, TRUE, N_ ("Empty: one"), NULL },
              { N_ ("Unit"), UNSOOT_ASK_TEXT, TRUE, N_ ("h, L, each …"), NULL },
              { N_ ("Price of one"), UNSOOT_ASK_MONEY, FALSE, NULL, NULL } },
  .carry_out = do_line,
};

/* Where the order says afterwards whether a word covered the line. */
#define DECLINED_AUTHORISED 1

/* The newest estimate is what a word is given on: it has no declined line in it. */
static gboolean
do_line_decline (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_db_begin (db, error);
  g_autoptr (UnsootJobLineRow) line
      = deed != NULL ? unsoot_rows_get (db, &unsoot_job_line_row_type, order->record, error) : NULL;

  if (line == NULL
      || !unsoot_job_line_decline (db, who, line->id, unsoot_deed_text (order, 0), error)
      || unsoot_job_estimate (db, who, line->job_id, error) == 0
      || !unsoot_transaction_commit (g_steal_pointer (&deed), error))
    return FALSE;
  order->undo_id = line->id;
  order->values[DECLINED_AUTHORISED].number = g_strcmp0 (line->state, "authorised") == 0;
  return TRUE;
}

static gboolean
undo_line_decline (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_db_begin (db, error);
  g_autoptr (UnsootJobLineRow) line
      = deed != NULL ? unsoot_rows_get (db, &unsoot_job_line_row_type, order->undo_id, error)
                     : NULL;

  return line != NULL
         && unsoot_job_line_stand (db, who, line->id,
                                   order->values[DECLINED_AUTHORISED].number != 0, error)
         && unsoot_job_estimate (db, who, line->job_id, error) != 0
         && unsoot_transaction_commit (g_steal_pointer (&deed), error);
}

const UnsootDeedForm unsoot_job_line_decline_form = {
  .slug = "decline-line",
  .title = N_ ("Decline this line"),
  .verb = N_ ("Record as declined"),
  .done = N_ ("Declined; it is offered again next time"),
  .deed = UNSOOT_DEED_DECLINE,
  .n_fields = 1,
  .fields = { { N_ ("Why"), UNSOOT_ASK_TEXT, TRUE, NULL, NULL } },
  .carry_out = do_line_decline,
  .undo = undo_line_decline,
};

static gboolean
do_line_offer (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_db_begin (db, error);
  g_autoptr (UnsootJobLineRow) line
      = deed != NULL ? unsoot_rows_get (db, &unsoot_job_line_row_type, order->record, error) : NULL;

  return line != NULL && unsoot_job_line_stand (db, who, line->id, FALSE, error)
         && unsoot_job_estimate (db, who, line->job_id, error) != 0
         && unsoot_transaction_commit (g_steal_pointer (&deed), error);
}

const UnsootDeedForm unsoot_job_line_offer_form = {
  .slug = "offer-line",
  .title = N_ ("Offer it again"),
  .verb = N_ ("Offer again"),
  .done = N_ ("Offered again; ask the customer for their word on the new estimate"),
  .deed = UNSOOT_DEED_ESTIMATE,
  .carry_out = do_line_offer,
};
