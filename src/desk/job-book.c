/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-book.h"

#include <glib/gi18n-lib.h>

#include "bookings.h"

/* Where a booking's parts lie in its order. Once it is carried out they say how it was before. */
enum
{
  BOOK_BAY,
  BOOK_MACHINE,
  BOOK_TECHNICIAN,
  BOOK_STARTS, /* 0: it was not */
  BOOK_ENDS,
  BOOK_ITEMS, /* ids with commas between */
};

static char *
items_text (const GArray *ids)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < ids->len; i++)
    g_string_append_printf (text, "%s%" G_GINT64_FORMAT, i > 0 ? "," : "",
                            g_array_index (ids, gint64, i));
  return g_string_free (text, FALSE);
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

UnsootDeedOrder *
unsoot_job_book_order (gint64 job_id, const UnsootFreeTime *time)
{
  UnsootDeedOrder *order = unsoot_deed_order_new (job_id);

  order->values[BOOK_BAY].number = time->bay_id;
  order->values[BOOK_MACHINE].number = time->machine_id;
  order->values[BOOK_TECHNICIAN].number = time->technician_id;
  order->values[BOOK_STARTS].number = time->starts_at;
  order->values[BOOK_ENDS].number = time->ends_at;
  order->values[BOOK_ITEMS].text = items_text (time->items);
  return order;
}

static gint64
book (UnsootDb *db, const UnsootActing *who, const UnsootDeedOrder *order, gint64 booking_id,
      GError **error)
{
  g_autoptr (GArray) items = read_items (order->values[BOOK_ITEMS].text);
  const UnsootBookingWish wish
      = { .booking_id = booking_id,
          .job_id = order->record,
          .bay_id = order->values[BOOK_BAY].number,
          .machine_id = order->values[BOOK_MACHINE].number,
          .technician_id = order->values[BOOK_TECHNICIAN].number,
          .starts_at = order->values[BOOK_STARTS].number,
          .ends_at = order->values[BOOK_ENDS].number,
          .items = items->len > 0 ? (const gint64 *) (gconstpointer) items->data : NULL,
          .n_items = items->len };

  return unsoot_job_book (db, who, &wish, error);
}

/* The booking that stands, with what it holds; TRUE without one too. */
static gboolean
read_booking (UnsootDb *db, gint64 job_id, UnsootBookingRow **booking, GArray **items,
              GError **error)
{
  g_autoptr (GError) failed = NULL;

  *booking = unsoot_job_booking (db, job_id, &failed);
  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  *items = *booking != NULL ? unsoot_booking_items (db, (*booking)->id, error) : NULL;
  return *booking == NULL || *items != NULL;
}

static void
remember (UnsootDeedOrder *order, const UnsootBookingRow *former, const GArray *items)
{
  order->values[BOOK_BAY].number = former != NULL ? former->bay_id : 0;
  order->values[BOOK_MACHINE].number = former != NULL ? former->machine_id : 0;
  order->values[BOOK_TECHNICIAN].number = former != NULL ? former->technician_id : 0;
  order->values[BOOK_STARTS].number = former != NULL ? former->starts_at : 0;
  order->values[BOOK_ENDS].number = former != NULL ? former->ends_at : 0;
  g_free (order->values[BOOK_ITEMS].text);
  order->values[BOOK_ITEMS].text = items != NULL ? items_text (items) : g_strdup ("");
}

static gboolean
do_book (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_db_begin (db, error);
  g_autoptr (UnsootBookingRow) former = NULL, now = NULL;
  g_autoptr (GArray) items = NULL;
  gint64 id;

  if (deed == NULL || !read_booking (db, order->record, &former, &items, error))
    return FALSE;
  id = book (db, who, order, former != NULL ? former->id : 0, error);
  now = id != 0 ? unsoot_rows_get (db, &unsoot_booking_row_type, id, error) : NULL;
  if (now == NULL || !unsoot_transaction_commit (g_steal_pointer (&deed), error))
    return FALSE;
  order->undo_id = id;
  order->version = now->version;
  remember (order, former, items);
  return TRUE;
}

/* Only what nobody has changed since goes back to where it was. */
static gboolean
undo_book (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootBookingRow) now
      = unsoot_rows_get (db, &unsoot_booking_row_type, order->undo_id, error);

  if (now == NULL)
    return FALSE;
  if (now->version != order->version)
    {
      g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONFLICT,
                           _ ("The booking was changed again since, so it stays as it is now."));
      return FALSE;
    }
  if (order->values[BOOK_STARTS].number == 0)
    return unsoot_booking_drop (db, who, order->undo_id, _ ("Taken back at once"), error);
  return book (db, who, order, order->undo_id, error) != 0;
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

const UnsootDeedForm unsoot_job_move_form = {
  .slug = "move-booking",
  .title = N_ ("Move the booking"),
  .verb = N_ ("Move the booking"),
  .done = N_ ("The booking is moved"),
  .deed = UNSOOT_DEED_MOVE_BOOKING,
  .carry_out = do_book,
  .undo = undo_book,
};

static gboolean
do_unbook (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootBookingRow) booking = NULL;
  g_autoptr (GArray) items = NULL;

  if (!read_booking (db, order->record, &booking, &items, error)
      || !unsoot_booking_drop (db, who, booking != NULL ? booking->id : 0, order->values[0].text,
                               error))
    return FALSE;
  order->undo_id = booking->id;
  remember (order, booking, items);
  return TRUE;
}

static gboolean
undo_unbook (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return book (db, who, order, 0, error) != 0;
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
  .undo = undo_unbook,
};
