/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-deeds.h"

#include <glib/gi18n-lib.h>

#include "bookings.h"
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
do_unbook (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootBookingRow) booking = unsoot_job_booking (db, order->record, &failed);

  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  return unsoot_booking_drop (db, who, booking != NULL ? booking->id : 0, order->values[0].text,
                              error);
}

const UnsootDeedForm unsoot_job_unbook_form = {
  .slug = "unbook-job",
  .title = N_ ("Take the booking back"),
  .verb = N_ ("Take it back"),
  .done = N_ ("The time is free again"),
  .deed = UNSOOT_DEED_MOVE_BOOKING,
  .n_fields = 1,
  .fields = { { N_ ("Why"), UNSOOT_ASK_TEXT, FALSE, NULL, NULL } },
  .carry_out = do_unbook,
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

static gboolean
do_line_decline (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_job_line_decline (db, who, order->record, unsoot_deed_text (order, 0), error);
}

const UnsootDeedForm unsoot_job_line_decline_form = {
  .slug = "decline-line",
  .title = N_ ("The customer does not want this line"),
  .verb = N_ ("Record as declined"),
  .done = N_ ("Declined; it is offered again next time"),
  .deed = UNSOOT_DEED_DECLINE,
  .n_fields = 1,
  .fields = { { N_ ("Why"), UNSOOT_ASK_TEXT, TRUE, NULL, NULL } },
  .carry_out = do_line_decline,
};

/* Where a booking's parts lie in its order. */
enum
{
  BOOK_BAY,
  BOOK_MACHINE,
  BOOK_TECHNICIAN,
  BOOK_STARTS,
  BOOK_ENDS,
  BOOK_ITEMS, /* ids with commas between */
  BOOK_MOVES,
};

UnsootDeedOrder *
unsoot_job_book_order (gint64 job_id, const UnsootFreeTime *time, gboolean moves)
{
  UnsootDeedOrder *order = unsoot_deed_order_new (job_id);
  GString *items = g_string_new (NULL);

  for (guint i = 0; i < time->items->len; i++)
    g_string_append_printf (items, "%s%" G_GINT64_FORMAT, i > 0 ? "," : "",
                            g_array_index (time->items, gint64, i));
  order->values[BOOK_BAY].number = time->bay_id;
  order->values[BOOK_MACHINE].number = time->machine_id;
  order->values[BOOK_TECHNICIAN].number = time->technician_id;
  order->values[BOOK_STARTS].number = time->starts_at;
  order->values[BOOK_ENDS].number = time->ends_at;
  order->values[BOOK_ITEMS].text = g_string_free (items, FALSE);
  order->values[BOOK_MOVES].number = moves;
  return order;
}

static GArray *
read_items (const char *text)
{
  g_auto (GStrv) ids = g_strsplit (text, ",", -1);
  GArray *items = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; ids[i] != NULL; i++)
    {
      const gint64 id = g_ascii_strtoll (ids[i], NULL, 10);
      if (id != 0)
        g_array_append_val (items, id);
    }
  return items;
}

static gboolean
do_book (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (GArray) items = read_items (order->values[BOOK_ITEMS].text);
  const UnsootBookingWish wish
      = { .job_id = order->record,
          .bay_id = order->values[BOOK_BAY].number,
          .machine_id = order->values[BOOK_MACHINE].number,
          .technician_id = order->values[BOOK_TECHNICIAN].number,
          .starts_at = order->values[BOOK_STARTS].number,
          .ends_at = order->values[BOOK_ENDS].number,
          .items = items->len > 0 ? (const gint64 *) (gconstpointer) items->data : NULL,
          .n_items = items->len };
  const gint64 id = unsoot_job_book (db, who, &wish, error);

  /* A booking that was moved is not taken back as a whole. */
  order->undo_id = order->values[BOOK_MOVES].number != 0 ? 0 : id;
  return id != 0;
}

static gboolean
undo_book (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_booking_drop (db, who, order->undo_id, _ ("Taken back at once"), error);
}

const UnsootDeedForm unsoot_job_book_form = {
  .slug = "book",
  .title = N_ ("Book"),
  .verb = N_ ("Book"),
  .done = N_ ("Booked"),
  .deed = UNSOOT_DEED_BOOK,
  .carry_out = do_book,
  .undo = undo_book,
};
