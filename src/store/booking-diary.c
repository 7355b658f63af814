/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-diary.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "adapters.h"
#include "civil.h"
#include "fluid-needs.h"
#include "shops.h"

/* Bookings this long before a wish may still reach into it. */
#define LONGEST_SECONDS (7 * (gint64) 86400)

struct _UnsootBookingDiary
{
  UnsootDb *db;
  UnsootShopRow *shop;
  GStringChunk *words; /* what the trade's diary borrows */
  GArray *slots;
  GPtrArray *held; /* GArray of UnsootNamed, one for each slot */
  GArray *openings;
  GArray *holidays;
  GArray *aways;
  GArray *shorts;
};

typedef UnsootBookingDiary Book;

void
unsoot_booking_diary_free (Book *book)
{
  if (book == NULL)
    return;
  unsoot_shop_row_free (book->shop);
  g_string_chunk_free (book->words);
  g_array_unref (book->slots);
  g_ptr_array_unref (book->held);
  g_array_unref (book->openings);
  g_array_unref (book->holidays);
  g_array_unref (book->aways);
  g_array_unref (book->shorts);
  g_free (book);
}

Book *
unsoot_booking_diary_new (UnsootDb *db, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  if (shop == NULL)
    return NULL;

  Book *book = g_new0 (Book, 1);
  book->db = db;
  book->shop = g_steal_pointer (&shop);
  book->words = g_string_chunk_new (1024);
  book->slots = g_array_new (FALSE, TRUE, sizeof (UnsootSlot));
  book->held = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  book->openings = g_array_new (FALSE, TRUE, sizeof (UnsootOpening));
  book->holidays = g_array_new (FALSE, TRUE, sizeof (UnsootHoliday));
  book->aways = g_array_new (FALSE, TRUE, sizeof (UnsootAway));
  book->shorts = g_array_new (FALSE, TRUE, sizeof (UnsootShort));
  return book;
}

gint64
unsoot_booking_diary_wall (const Book *book, gint64 at)
{
  UnsootLocal local = unsoot_local_from_unix (at, unsoot_shop_utc_offset (book->shop, at));

  return unsoot_wall_minute (&local);
}

/* The id with its name; id 0 for none. */
static gboolean
named (Book *book, const char *sql, gint64 id, UnsootNamed *result, GError **error)
{
  *result = (UnsootNamed){ id, NULL };
  if (id == 0)
    return TRUE;
  g_autofree char *name = unsoot_db_text (book->db, error, sql, unsoot_int (id));
  if (name == NULL)
    return FALSE;
  result->label = g_string_chunk_insert_const (book->words, name);
  return TRUE;
}

static gboolean
name_items (Book *book, const gint64 *items, gsize n, UnsootSlot *slot, GError **error)
{
  GArray *held = g_array_new (FALSE, TRUE, sizeof (UnsootNamed));

  g_ptr_array_add (book->held, held);
  for (gsize i = 0; i < n; i++)
    {
      UnsootNamed item;
      if (!named (book, "SELECT label FROM adapter_items WHERE id = $1", items[i], &item, error))
        return FALSE;
      g_array_append_val (held, item);
    }
  slot->items = (const UnsootNamed *) (gconstpointer) held->data;
  slot->n_items = held->len;
  return TRUE;
}

gboolean
unsoot_booking_diary_slot (Book *book, const UnsootBookingWish *wish, UnsootSlot *slot,
                           GError **error)
{
  gint64 number = 0;

  if (wish->job_id != 0
      && !unsoot_db_int (book->db, &number, error, "SELECT number FROM jobs WHERE id = $1",
                         unsoot_int (wish->job_id)))
    return FALSE;
  g_autofree char *title
      = number != 0 ? g_strdup_printf (_ ("job %" PRId64), number) : g_strdup (_ ("this job"));
  *slot = (UnsootSlot){ .id = wish->booking_id,
                        .title = g_string_chunk_insert_const (book->words, title),
                        .starts = unsoot_booking_diary_wall (book, wish->starts_at),
                        .ends = unsoot_booking_diary_wall (book, wish->ends_at) };
  return named (book, "SELECT name FROM bays WHERE id = $1", wish->bay_id, &slot->bay, error)
         && named (book, "SELECT name FROM machines WHERE id = $1", wish->machine_id,
                   &slot->machine, error)
         && named (book, "SELECT name FROM staff WHERE id = $1", wish->technician_id,
                   &slot->technician, error)
         && name_items (book, wish->items, wish->n_items, slot, error);
}

static gboolean
read_slot (Book *book, const UnsootBookingRow *booking, GError **error)
{
  g_autoptr (GPtrArray) rows
      = unsoot_rows_list (book->db, &unsoot_booking_adapter_row_type, error,
                          "WHERE booking_id = $1 ORDER BY id", unsoot_int (booking->id));
  g_autoptr (GArray) items = g_array_new (FALSE, TRUE, sizeof (gint64));
  UnsootSlot slot;

  for (guint i = 0; rows != NULL && i < rows->len; i++)
    g_array_append_val (items, ((UnsootBookingAdapterRow *) rows->pdata[i])->item_id);
  UnsootBookingWish wish = { .booking_id = booking->id,
                             .job_id = booking->job_id,
                             .bay_id = booking->bay_id,
                             .machine_id = booking->machine_id,
                             .technician_id = booking->technician_id,
                             .starts_at = booking->starts_at,
                             .ends_at = booking->ends_at,
                             .items = (const gint64 *) (gconstpointer) items->data,
                             .n_items = items->len };
  if (rows == NULL || !unsoot_booking_diary_slot (book, &wish, &slot, error))
    return FALSE;
  g_array_append_val (book->slots, slot);
  return TRUE;
}

static gboolean
read_slots (Book *book, gint64 from, gint64 to, GError **error)
{
  g_autoptr (GPtrArray) bookings
      = unsoot_booking_list (book->db, from - LONGEST_SECONDS, to, error);

  for (guint i = 0; bookings != NULL && i < bookings->len; i++)
    {
      const UnsootBookingRow *booking = bookings->pdata[i];
      if (booking->ends_at > from && !read_slot (book, booking, error))
        return FALSE;
    }
  return bookings != NULL;
}

static gboolean
read_hours (Book *book, GError **error)
{
  g_autoptr (GPtrArray) hours = unsoot_open_hours_list (book->db, error);
  g_autoptr (GPtrArray) holidays = hours != NULL ? unsoot_holiday_list (book->db, error) : NULL;

  if (holidays == NULL)
    return FALSE;
  for (guint i = 0; i < hours->len; i++)
    {
      const UnsootOpenHoursRow *row = hours->pdata[i];
      UnsootOpening opening
          = { (int) row->weekday, (int) row->opens_minute, (int) row->closes_minute };
      g_array_append_val (book->openings, opening);
    }
  for (guint i = 0; i < holidays->len; i++)
    {
      const UnsootHolidayRow *row = holidays->pdata[i];
      UnsootHoliday holiday = { 0, g_string_chunk_insert_const (book->words, row->name) };
      if (unsoot_day_parse (row->day, &holiday.day, NULL))
        g_array_append_val (book->holidays, holiday);
    }
  return TRUE;
}

/* When a loan is over: nobody knows once its date has passed. */
static gint64
back_by (const Book *book, const UnsootLoanRow *loan, gint64 now)
{
  int day;

  if (loan->due_on == NULL || !unsoot_day_parse (loan->due_on, &day, NULL))
    return G_MAXINT64;
  gint64 until = (gint64) (day + 1) * UNSOOT_DAY_MINUTES;
  return until > unsoot_booking_diary_wall (book, now) ? until : G_MAXINT64;
}

static gboolean
read_loans (Book *book, gint64 item_id, gint64 to, gint64 job_id, gint64 now, GError **error)
{
  g_autoptr (GPtrArray) loans
      = unsoot_rows_list (book->db, &unsoot_loan_row_type, error,
                          "WHERE item_id = $1 AND back_at IS NULL AND out_at < $2"
                          " AND COALESCE (job_id, 0) <> $3 ORDER BY id",
                          unsoot_int (item_id), unsoot_int (to), unsoot_int (job_id));

  for (guint i = 0; loans != NULL && i < loans->len; i++)
    {
      const UnsootLoanRow *loan = loans->pdata[i];
      UnsootAway away = { item_id, UNSOOT_AWAY_LOAN, back_by (book, loan, now),
                          g_string_chunk_insert_const (book->words, loan->to_name) };
      g_array_append_val (book->aways, away);
    }
  return loans != NULL;
}

gboolean
unsoot_booking_diary_read_items (Book *book, const gint64 *items, gsize n, gint64 from, gint64 to,
                                 gint64 job_id, gint64 now, GError **error)
{
  for (gsize i = 0; i < n; i++)
    {
      g_autoptr (UnsootItemState) state
          = unsoot_adapter_item_state (book->db, items[i], from, to, job_id, error);
      UnsootAway away = { items[i], UNSOOT_AWAY_INSPECTION, G_MAXINT64, NULL };
      if (state == NULL || !read_loans (book, items[i], to, job_id, now, error))
        return FALSE;
      if (state->place == UNSOOT_ITEM_INSPECTION || state->place == UNSOOT_ITEM_RETIRED)
        g_array_append_val (book->aways, away);
    }
  return TRUE;
}

gboolean
unsoot_booking_diary_read (Book *book, gint64 from, gint64 to, GError **error)
{
  return read_slots (book, from, to, error) && read_hours (book, error);
}

gboolean
unsoot_booking_diary_read_shorts (Book *book, const UnsootBookingWish *wish, gint64 now,
                                  GError **error)
{
  g_autoptr (GPtrArray) needs
      = unsoot_fluid_needs (book->db, book->shop, now, wish->job_id, wish->starts_at, error);

  for (guint i = 0; needs != NULL && i < needs->len; i++)
    {
      const UnsootFluidNeed *need = needs->pdata[i];
      UnsootShort lack = { g_string_chunk_insert_const (book->words, need->fluid), need->short_ml };
      if (need->job_id == wish->job_id && need->short_ml > 0)
        g_array_append_val (book->shorts, lack);
    }
  return needs != NULL;
}

#define ROWS(array, Type) (const Type *) (gconstpointer) (array)->data, (array)->len

UnsootDiary
unsoot_booking_diary_get (const Book *book)
{
  return (UnsootDiary){ ROWS (book->slots, UnsootSlot), ROWS (book->openings, UnsootOpening),
                        ROWS (book->holidays, UnsootHoliday), ROWS (book->aways, UnsootAway),
                        ROWS (book->shorts, UnsootShort) };
}

gint64
unsoot_booking_diary_unix (const Book *book, gint64 minute)
{
  return unsoot_shop_instant (book->shop, (int) (minute / UNSOOT_DAY_MINUTES),
                              (int) (minute % UNSOOT_DAY_MINUTES));
}

const UnsootShopRow *
unsoot_booking_diary_shop (const Book *book)
{
  return book->shop;
}

const char *
unsoot_booking_diary_keep (Book *book, const char *name)
{
  return g_string_chunk_insert_const (book->words, name);
}
