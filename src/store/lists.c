/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "lists.h"

#include "rows.h"
#include "shops.h"
#include "vehicles.h"

/* A page goes on behind its last row: (key, id) is greater, spelled out so that an index
 * can be used. For the way down the same with the signs turned. At the start there is no key. */
#define PAGE(table, key, where, up, way)                                                           \
  {                                                                                                \
    "SELECT id FROM " table " WHERE " where " ORDER BY " key way ", id" way " LIMIT $1",           \
        "SELECT id FROM " table " WHERE " where " AND " key " " up "= $3 AND (" key " " up         \
        " $3 OR id " up " $4) ORDER BY " key way ", id" way " LIMIT $1"                            \
  }

static const char *const customers_up[] = PAGE ("customers", "name", "$2 = 0", ">", "");
static const char *const customers_down[] = PAGE ("customers", "name", "$2 = 0", "<", " DESC");

static const char customer_sql[]
    = "SELECT c.name, c.kind,"
      " (SELECT p.number FROM customer_phones p WHERE p.customer_id = c.id ORDER BY p.id LIMIT 1),"
      " (SELECT a.town FROM customer_addresses a WHERE a.customer_id = c.id ORDER BY a.id LIMIT 1),"
      " (SELECT count (*) FROM vehicles v WHERE v.customer_id = c.id AND v.active = 1),"
      " COALESCE ((SELECT sum (i.total_minor) FROM invoices i WHERE i.customer_id = c.id), 0)"
      " - COALESCE ((SELECT sum (y.amount_minor) FROM payments y WHERE y.customer_id = c.id), 0)"
      " FROM customers c WHERE c.id = $1";

#define VEHICLE_KEY                                                                                \
  "COALESCE (make, '') || ' ' || COALESCE (model, '') || ' ' || COALESCE (unit_number, '')"

static const char *const vehicles_up[]
    = PAGE ("vehicles", VEHICLE_KEY, "($2 = 0 OR customer_id = $2)", ">", "");
static const char *const vehicles_down[]
    = PAGE ("vehicles", VEHICLE_KEY, "($2 = 0 OR customer_id = $2)", "<", " DESC");

static const char vehicle_sql[]
    = "SELECT " VEHICLE_KEY ","
      " (SELECT c.name FROM customers c WHERE c.id = v.customer_id),"
      " (SELECT j.next_due_on FROM jobs j WHERE j.vehicle_id = v.id AND j.next_due_on IS NOT NULL"
      "  ORDER BY j.number DESC LIMIT 1),"
      " (SELECT max (r.ended_at) FROM runs r JOIN jobs j ON j.id = r.job_id"
      "  WHERE j.vehicle_id = v.id AND r.outcome = 'finished')"
      " FROM vehicles v WHERE v.id = $1";

static const char jobs_up[] = "SELECT id FROM jobs WHERE number > $1 AND ($3 = '' OR status = $3)"
                              " AND ($4 = 0 OR customer_id = $4) AND ($5 = 0 OR vehicle_id = $5)"
                              " ORDER BY number LIMIT $2";
static const char jobs_down[]
    = "SELECT id FROM jobs WHERE ($1 = 0 OR number < $1) AND ($3 = '' OR status = $3)"
      " AND ($4 = 0 OR customer_id = $4) AND ($5 = 0 OR vehicle_id = $5)"
      " ORDER BY number DESC LIMIT $2";

static const char job_sql[]
    = "SELECT j.number, j.vehicle_id, j.customer_id, j.status, c.name, s.name, s.sides, j.made_at,"
      " COALESCE ((SELECT b.starts_at FROM bookings b WHERE b.job_id = j.id"
      "  AND b.state <> 'dropped' ORDER BY b.id DESC LIMIT 1), 0),"
      " COALESCE ((SELECT e.total_minor FROM estimates e WHERE e.job_id = j.id"
      "  ORDER BY e.number DESC LIMIT 1), 0)"
      " FROM jobs j JOIN customers c ON c.id = j.customer_id"
      " JOIN services s ON s.id = j.service_id WHERE j.id = $1";

#define INVOICE_OPEN                                                                               \
  "i.total_minor - COALESCE ((SELECT sum (p.amount_minor) FROM payments p"                         \
  " WHERE p.invoice_id = i.id), 0) + COALESCE ((SELECT sum (c.total_minor) FROM invoices c"        \
  " WHERE c.credits_id = i.id), 0)"

/* $3 is an UnsootInvoicesWanted, $5 today. */
#define INVOICE_WANTED                                                                             \
  " AND ($3 = 0 OR (i.kind = 'invoice' AND " INVOICE_OPEN " > 0"                                   \
  " AND ($3 = 1 OR i.due_on < $5)))"

static const char invoices_up[]
    = "SELECT i.id FROM invoices i WHERE i.number > $1"
      " AND ($4 = 0 OR i.customer_id = $4)" INVOICE_WANTED " ORDER BY i.number LIMIT $2";
static const char invoices_down[]
    = "SELECT i.id FROM invoices i WHERE ($1 = 0 OR i.number < $1)"
      " AND ($4 = 0 OR i.customer_id = $4)" INVOICE_WANTED " ORDER BY i.number DESC LIMIT $2";

static const char invoice_sql[]
    = "SELECT i.number, COALESCE (i.job_id, 0), i.customer_id, i.kind, u.name, i.issued_on,"
      " i.due_on, i.currency, i.total_minor,"
      " CASE WHEN i.kind = 'invoice' THEN " INVOICE_OPEN " ELSE 0 END,"
      " COALESCE ((SELECT j.number FROM jobs j WHERE j.id = i.job_id), 0)"
      " FROM invoices i JOIN customers u ON u.id = i.customer_id WHERE i.id = $1";

void
unsoot_customer_line_free (UnsootCustomerLine *line)
{
  if (line == NULL)
    return;
  g_free (line->name);
  g_free (line->kind);
  g_free (line->phone);
  g_free (line->town);
  g_free (line);
}

void
unsoot_vehicle_line_free (UnsootVehicleLine *line)
{
  if (line == NULL)
    return;
  g_free (line->title);
  g_free (line->sort);
  g_free (line->customer);
  g_free (line->plate);
  g_free (line->unit_number);
  g_free (line->vin);
  g_free (line->next_due_on);
  g_free (line->last_done_on);
  g_free (line);
}

void
unsoot_job_line_free (UnsootJobLine *line)
{
  if (line == NULL)
    return;
  g_free (line->status);
  g_free (line->vehicle);
  g_free (line->customer);
  g_free (line->service);
  g_free (line->sides);
  g_free (line);
}

void
unsoot_invoice_line_free (UnsootInvoiceLine *line)
{
  if (line == NULL)
    return;
  g_free (line->kind);
  g_free (line->customer);
  g_free (line->issued_on);
  g_free (line->due_on);
  g_free (line->currency);
  g_free (line);
}

/* The one row that @sql tells of @id. */
static UnsootQuery *
one (UnsootDb *db, const char *sql, gint64 id, GError **error)
{
  g_autoptr (UnsootQuery) query = unsoot_db_query (db, error, sql, unsoot_int (id));

  if (query == NULL || unsoot_query_step (query, error) != UNSOOT_STEP_ROW)
    return NULL;
  return g_steal_pointer (&query);
}

static gpointer
customer_line (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootQuery) query = one (db, customer_sql, id, error);
  if (query == NULL)
    return NULL;

  UnsootCustomerLine *line = g_new0 (UnsootCustomerLine, 1);
  line->id = id;
  line->name = unsoot_query_dup_text (query, 0);
  line->kind = unsoot_query_dup_text (query, 1);
  line->phone = unsoot_query_dup_text (query, 2);
  line->town = unsoot_query_dup_text (query, 3);
  line->vehicles = unsoot_query_get_int (query, 4);
  line->owes_minor = unsoot_query_get_int (query, 5);
  return line;
}

/* The shop's day, whatever the clock of this computer; NULL where it was never done. */
static gboolean
date_of (UnsootDb *db, gint64 at, char **date, GError **error)
{
  if (at == 0)
    return TRUE;
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  if (shop == NULL)
    return FALSE;
  *date = unsoot_shop_date (shop, at);
  return TRUE;
}

static gpointer
vehicle_line (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootVehicleRow) vehicle = unsoot_vehicle_load (db, id, error);
  g_autoptr (UnsootQuery) query = vehicle != NULL ? one (db, vehicle_sql, id, error) : NULL;
  char *done_on = NULL;
  if (query == NULL || !date_of (db, unsoot_query_get_int (query, 3), &done_on, error))
    return NULL;

  UnsootVehicleLine *line = g_new0 (UnsootVehicleLine, 1);
  line->id = id;
  line->customer_id = vehicle->customer_id;
  line->title = unsoot_vehicle_title (vehicle);
  line->sort = unsoot_query_dup_text (query, 0);
  line->customer = unsoot_query_dup_text (query, 1);
  line->plate = g_strdup (vehicle->plate);
  line->unit_number = g_strdup (vehicle->unit_number);
  line->vin = g_strdup (vehicle->vin);
  line->next_due_on = unsoot_query_dup_text (query, 2);
  line->last_done_on = done_on;
  return line;
}

static gpointer
job_line (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootQuery) query = one (db, job_sql, id, error);
  g_autoptr (UnsootVehicleRow) vehicle
      = query != NULL ? unsoot_vehicle_load (db, unsoot_query_get_int (query, 1), error) : NULL;
  if (vehicle == NULL)
    return NULL;

  UnsootJobLine *line = g_new0 (UnsootJobLine, 1);
  line->id = id;
  line->number = unsoot_query_get_int (query, 0);
  line->vehicle_id = vehicle->id;
  line->customer_id = unsoot_query_get_int (query, 2);
  line->status = unsoot_query_dup_text (query, 3);
  line->vehicle = unsoot_vehicle_title (vehicle);
  line->customer = unsoot_query_dup_text (query, 4);
  line->service = unsoot_query_dup_text (query, 5);
  line->sides = unsoot_query_dup_text (query, 6);
  line->made_at = unsoot_query_get_int (query, 7);
  line->starts_at = unsoot_query_get_int (query, 8);
  line->total_minor = unsoot_query_get_int (query, 9);
  return line;
}

static gpointer
invoice_line (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootQuery) query = one (db, invoice_sql, id, error);
  if (query == NULL)
    return NULL;

  UnsootInvoiceLine *line = g_new0 (UnsootInvoiceLine, 1);
  line->id = id;
  line->number = unsoot_query_get_int (query, 0);
  line->job_id = unsoot_query_get_int (query, 1);
  line->customer_id = unsoot_query_get_int (query, 2);
  line->kind = unsoot_query_dup_text (query, 3);
  line->customer = unsoot_query_dup_text (query, 4);
  line->issued_on = unsoot_query_dup_text (query, 5);
  line->due_on = unsoot_query_dup_text (query, 6);
  line->currency = unsoot_query_dup_text (query, 7);
  line->total_minor = unsoot_query_get_int (query, 8);
  line->open_minor = unsoot_query_get_int (query, 9);
  line->job_number = unsoot_query_get_int (query, 10);
  return line;
}

typedef gpointer (*LineOf) (UnsootDb *db, gint64 id, GError **error);

/* Consumes @query. The lines are read after it, as it may not be run within itself. */
static GPtrArray *
page_of (UnsootDb *db, UnsootQuery *taken, LineOf line_of, GDestroyNotify free_line, GError **error)
{
  g_autoptr (UnsootQuery) query = taken;
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (free_line);
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    {
      gint64 id = unsoot_query_get_int (query, 0);
      g_array_append_val (ids, id);
    }
  if (step == UNSOOT_STEP_FAILED)
    return NULL;
  for (guint i = 0; i < ids->len; i++)
    {
      gpointer line = line_of (db, g_array_index (ids, gint64, i), error);
      if (line == NULL)
        return NULL;
      g_ptr_array_add (lines, line);
    }
  return g_steal_pointer (&lines);
}

#define AFTER(page) unsoot_int ((page)->after_id)
#define LIMIT(page) unsoot_int ((page)->limit)

/* The ids of one page of a list sorted by text; @sql as PAGE makes it. */
static UnsootQuery *
page_query (UnsootDb *db, const char *const *sql, const UnsootListPage *page, gint64 of,
            GError **error)
{
  if (page->after_id == 0)
    return unsoot_db_query (db, error, sql[0], LIMIT (page), unsoot_int (of));
  return unsoot_db_query (db, error, sql[1], LIMIT (page), unsoot_int (of),
                          unsoot_text (page->after_text != NULL ? page->after_text : ""),
                          AFTER (page));
}

GPtrArray *
unsoot_customer_page (UnsootDb *db, const UnsootListPage *page, GError **error)
{
  const char *const *sql = page->order == UNSOOT_LIST_UP ? customers_up : customers_down;

  return page_of (db, page_query (db, sql, page, 0, error), customer_line,
                  (GDestroyNotify) unsoot_customer_line_free, error);
}

GPtrArray *
unsoot_vehicle_page (UnsootDb *db, const UnsootListPage *page, gint64 customer_id, GError **error)
{
  const char *const *sql = page->order == UNSOOT_LIST_UP ? vehicles_up : vehicles_down;

  return page_of (db, page_query (db, sql, page, customer_id, error), vehicle_line,
                  (GDestroyNotify) unsoot_vehicle_line_free, error);
}

/* Lists by number go on behind the number of the row whose id is given. */
static gboolean
number_after (UnsootDb *db, const char *sql, const UnsootListPage *page, gint64 *number,
              GError **error)
{
  *number = 0;
  return page->after_id == 0 || unsoot_db_int (db, number, error, sql, AFTER (page));
}

GPtrArray *
unsoot_job_page (UnsootDb *db, const UnsootListPage *page, const char *status, gint64 customer_id,
                 gint64 vehicle_id, GError **error)
{
  const char *sql = page->order == UNSOOT_LIST_UP ? jobs_up : jobs_down;
  gint64 number;

  if (!number_after (db, "SELECT number FROM jobs WHERE id = $1", page, &number, error))
    return NULL;
  return page_of (db,
                  unsoot_db_query (db, error, sql, unsoot_int (number), LIMIT (page),
                                   unsoot_text (status != NULL ? status : ""),
                                   unsoot_int (customer_id), unsoot_int (vehicle_id)),
                  job_line, (GDestroyNotify) unsoot_job_line_free, error);
}

GPtrArray *
unsoot_invoice_page (UnsootDb *db, const UnsootListPage *page, UnsootInvoicesWanted wanted,
                     const char *today, gint64 customer_id, GError **error)
{
  const char *sql = page->order == UNSOOT_LIST_UP ? invoices_up : invoices_down;
  gint64 number;

  if (!number_after (db, "SELECT number FROM invoices WHERE id = $1", page, &number, error))
    return NULL;
  return page_of (db,
                  unsoot_db_query (db, error, sql, unsoot_int (number), LIMIT (page),
                                   unsoot_int (wanted), unsoot_int (customer_id),
                                   unsoot_text (today != NULL ? today : "")),
                  invoice_line, (GDestroyNotify) unsoot_invoice_line_free, error);
}
