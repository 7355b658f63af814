/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <sqlite3.h>
#include <string.h>

#include "desk-hand.h"
#include "fluid-shelf-row.h"
#include "machine-card.h"
#include "stocks.h"
#include "suite.h"
#include "supply-orders.h"

/* The figures of the store, as its pages read, against the book as SQLite's own library reads it.
 * Each figure is a question of its own here, and none of them is the program's. */

enum
{
  MOST_COLUMNS = 6,
  USE_DAYS = 84, /* use is averaged over twelve weeks; common practice, no source */
  DAY = 86400,
  NEAR_DAYS = 14 /* a day so near is told by how far off it is */
};

/* A row of an answer; what is not there is NULL. */
typedef struct
{
  char *cell[MOST_COLUMNS];
} Row;

static void
row_free (gpointer data)
{
  for (gsize i = 0; i < MOST_COLUMNS; i++)
    g_free (((Row *) data)->cell[i]);
  g_free (data);
}

static void
bind (sqlite3_stmt *statement, const char *name, gint64 number, const char *text)
{
  const int at = sqlite3_bind_parameter_index (statement, name);

  if (at > 0 && text != NULL)
    sqlite3_bind_text (statement, at, text, -1, SQLITE_TRANSIENT);
  else if (at > 0)
    sqlite3_bind_int64 (statement, at, number);
}

/* The rows of @sql, which may name :id, :today and :now. */
static GPtrArray *
ask (const char *sql, gint64 id, UnsootSession *session)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func (row_free);
  g_autofree char *today = unsoot_session_today (session);
  sqlite3_stmt *statement = NULL;
  sqlite3 *db = NULL;

  ck_assert_int_eq (sqlite3_open_v2 (desk_shop_path (), &db, SQLITE_OPEN_READONLY, NULL),
                    SQLITE_OK);
  ck_assert_msg (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL) == SQLITE_OK, "%s: %s", sql,
                 sqlite3_errmsg (db));
  bind (statement, ":id", id, NULL);
  bind (statement, ":now", desk_shop_now (), NULL);
  bind (statement, ":today", 0, today);
  while (sqlite3_step (statement) == SQLITE_ROW)
    {
      Row *row = g_new0 (Row, 1);
      for (int i = 0; i < MIN (sqlite3_column_count (statement), MOST_COLUMNS); i++)
        row->cell[i] = g_strdup ((const char *) sqlite3_column_text (statement, i));
      g_ptr_array_add (rows, row);
    }
  sqlite3_finalize (statement);
  sqlite3_close (db);
  return rows;
}

static const char *
cell (const GPtrArray *rows, guint row, gsize column)
{
  ck_assert_uint_lt (row, rows->len);
  return ((const Row *) rows->pdata[row])->cell[column];
}

static gint64
number (const GPtrArray *rows, guint row, gsize column)
{
  const char *text = cell (rows, row, column);

  return text != NULL ? g_ascii_strtoll (text, NULL, 10) : 0;
}

/* As volumes are written: "12.5 L", "−0.05 L". */
static char *
litres (gint64 ml)
{
  g_autofree char *text
      = g_strdup_printf ("%d.%03d", (int) (ABS (ml) / 1000), (int) (ABS (ml) % 1000));
  gsize length = strlen (text);

  while (text[length - 1] == '0')
    text[--length] = '\0';
  if (text[length - 1] == '.')
    text[--length] = '\0';
  return g_strconcat (ml < 0 ? "−" : "", text, " L", NULL);
}

/* Every label in view under @root, in order, a bar around each. */
static void
read_labels (GtkWidget *root, GString *text)
{
  if (GTK_IS_LABEL (root) && gtk_widget_get_visible (root))
    g_string_append_printf (text, "%s|", gtk_label_get_text (GTK_LABEL (root)));
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    read_labels (child, text);
}

static char *
words_of (GtkWidget *root)
{
  GString *text = g_string_new ("|");

  read_labels (root, text);
  return g_string_free (text, FALSE);
}

/* The row or card of that type which has a label @name. */
static GtkWidget *
find_row (GtkWidget *root, GType type, const char *name)
{
  GtkWidget *found = NULL;

  if (G_TYPE_CHECK_INSTANCE_TYPE (root, type))
    return desk_shop_label (root, name) != NULL ? root : NULL;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_row (child, type, name);
  return found;
}

static void
ck_says (const char *words, const char *wanted, const char *what)
{
  ck_assert_msg (strstr (words, wanted) != NULL, "%s: %s, not in: %s", what, wanted, words);
}

static gboolean
is_settled (gpointer data)
{
  UnsootView *view = unsoot_window_get_view (data);

  return view != NULL && unsoot_view_is_settled (view);
}

static GtkWidget *
go (UnsootWindow *window, const char *slug, gint64 record)
{
  ck_assert (unsoot_window_open (window, slug, record));
  desk_shop_wait (is_settled, window, slug);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return GTK_WIDGET (unsoot_window_get_view (window));
}

/* Lots of a fluid: the last day of each is its own, or that of what is open of it. */
#define LOTS_OF_IT                                                                                 \
  "WITH open AS ("                                                                                 \
  "  SELECT lot_id, min (use_by) AS use_by FROM containers"                                        \
  "  WHERE empty = 0 AND opened_on IS NOT NULL GROUP BY lot_id),"                                  \
  " held AS ("                                                                                     \
  "  SELECT lot_id, sum (ml) AS ml FROM stock_moves GROUP BY lot_id),"                             \
  " lot AS ("                                                                                      \
  "  SELECT l.id, l.stop_reason, COALESCE (held.ml, 0) AS ml,"                                     \
  "   min (COALESCE (l.expires_on, '9999'), COALESCE (open.use_by, '9999')) AS last"               \
  "  FROM lots l LEFT JOIN open ON open.lot_id = l.id LEFT JOIN held ON held.lot_id = l.id"        \
  "  WHERE l.fluid_id = :id),"                                                                     \
  " usable AS ("                                                                                   \
  "  SELECT * FROM lot WHERE stop_reason IS NULL AND ml > 0 AND last >= :today)"

/* On hand, usable, the day of the first to go off. */
static const char shelf_sql[]
    = LOTS_OF_IT " SELECT (SELECT COALESCE (sum (ml), 0) FROM lot), COALESCE (sum (ml), 0),"
                 "  CASE WHEN min (last) < '9999' THEN min (last) END,"
                 "  julianday (min (last)) - julianday (:today)"
                 " FROM usable";

/* Doses of the fluid on jobs that are booked or here and have not taken it. */
static const char promised_sql[]
    = "WITH taken AS ("
      "  SELECT m.job_id FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
      "  WHERE l.fluid_id = :id AND m.kind = 'use' AND m.job_id IS NOT NULL)"
      " SELECT COALESCE (sum (d.quantity_milli), 0)"
      " FROM job_lines d JOIN jobs j ON j.id = d.job_id"
      " WHERE d.fluid_id = :id AND d.kind = 'fluid' AND d.unit = 'L' AND d.state <> 'declined'"
      "  AND j.status IN ('booked', 'arrived', 'in-bay') AND j.id NOT IN (SELECT job_id FROM taken)";

static const char ordered_sql[]
    = "SELECT sum (packs * pack_ml) FROM supply_orders WHERE fluid_id = :id";

static const char used_sql[]
    = "SELECT -COALESCE (sum (m.ml), 0) FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
      " WHERE l.fluid_id = :id AND m.kind = 'use' AND m.at > :now - 84 * 86400 AND m.at <= :now";

static gpointer
order_some (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  UnsootActing who = { .now = desk_shop_now () };
  g_autoptr (UnsootSupplyOrderRow) order = unsoot_supply_order_row_new ();

  order->fluid_id = *(const gint64 *) data;
  order->packs = 3;
  order->pack_ml = 2500;
  unsoot_supply_order_place (db, &who, order, error);
  return NULL;
}

/* The day of the first to go off, as a day is told. */
static char *
expiry_words (const GPtrArray *shelf)
{
  static const char *const months[]
      = { "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec" };
  int year, month, day;

  if (cell (shelf, 0, 2) == NULL)
    return g_strdup ("|–|");
  if (number (shelf, 0, 3) < NEAR_DAYS)
    return g_strdup_printf ("in %d days", (int) number (shelf, 0, 3));
  ck_assert_int_eq (sscanf (cell (shelf, 0, 2), "%d-%d-%d", &year, &month, &day), 3);
  return g_strdup_printf ("|%d %s", day, months[month - 1]);
}

static char *
days_words (gint64 unpromised, gint64 used)
{
  if (used == 0)
    return g_strdup ("|–|");
  return g_strdup_printf ("|%d days|", (int) (MAX (unpromised, 0) * USE_DAYS / used));
}

static void
check_fluid (UnsootSession *session, GtkWidget *page, gint64 id, const char *name)
{
  g_autoptr (GPtrArray) shelf = ask (shelf_sql, id, session);
  g_autoptr (GPtrArray) promised = ask (promised_sql, id, session);
  g_autoptr (GPtrArray) ordered = ask (ordered_sql, id, session);
  g_autoptr (GPtrArray) used = ask (used_sql, id, session);
  const gint64 unpromised = number (shelf, 0, 1) - number (promised, 0, 0);
  g_autofree char *here = litres (number (shelf, 0, 0)), *gone = litres (number (promised, 0, 0));
  g_autofree char *spare = litres (unpromised);
  g_autofree char *coming
      = cell (ordered, 0, 0) != NULL ? litres (number (ordered, 0, 0)) : g_strdup ("–");
  g_autofree char *volumes = g_strdup_printf ("|%s|%s|%s|%s|", here, gone, spare, coming);
  g_autofree char *days = days_words (unpromised, number (used, 0, 0));
  g_autofree char *expiry = expiry_words (shelf);
  GtkWidget *row = find_row (page, UNSOOT_TYPE_FLUID_SHELF_ROW, name);

  ck_assert_msg (row != NULL, "no row of %s", name);
  g_autofree char *words = words_of (row);
  ck_says (words, volumes, "on hand, promised, free, on order");
  ck_says (words, days, "days left");
  ck_says (words, expiry, "next expiry");
}

START_TEST (the_table_is_the_books)
{
  desk_shop_start_toolkit ();
  UnsootSession *session = desk_shop_open ();
  UnsootWindow *window = desk_hand_window (session);
  g_autoptr (GPtrArray) fluids
      = ask ("SELECT id, name FROM fluids WHERE active = 1 ORDER BY id", 0, session);
  g_autoptr (GError) error = NULL;
  gint64 first = number (fluids, 0, 0);

  unsoot_store_call (unsoot_session_get_store (session), order_some, &first, NULL, &error);
  ck_no_error (error);
  GtkWidget *page = go (window, "fluids", 0);
  for (guint i = 0; i < fluids->len; i++)
    check_fluid (session, page, number (fluids, i, 0), cell (fluids, i, 1));
  desk_hand_leave (window, session);
}
END_TEST

/* What each job took of the fluid, and what its lines say: the newest three. */
static const char uses_sql[]
    = "WITH took AS ("
      "  SELECT m.job_id, -sum (m.ml) AS ml, max (m.at) AS at"
      "  FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
      "  WHERE l.fluid_id = :id AND m.job_id IS NOT NULL GROUP BY m.job_id),"
      " dose AS ("
      "  SELECT job_id, sum (quantity_milli) AS ml FROM job_lines"
      "  WHERE fluid_id = :id AND kind = 'fluid' AND state <> 'declined' GROUP BY job_id)"
      " SELECT j.number, took.ml, COALESCE (dose.ml, 0)"
      " FROM took JOIN jobs j ON j.id = took.job_id LEFT JOIN dose ON dose.job_id = took.job_id"
      " ORDER BY took.at DESC, j.id DESC LIMIT 3";

static char *
difference_words (gint64 ml)
{
  g_autofree char *volume = litres (ml);

  return ml == 0 ? g_strdup ("as planned") : g_strconcat (ml > 0 ? "+" : "", volume, NULL);
}

START_TEST (what_was_used_stands_beside_the_rule)
{
  desk_shop_start_toolkit ();
  UnsootSession *session = desk_shop_open ();
  UnsootWindow *window = desk_hand_window (session);
  g_autofree char *words = words_of (go (window, "fluid", 1));
  g_autoptr (GPtrArray) uses = ask (uses_sql, 1, session);

  ck_assert_uint_eq (uses->len, 3);
  for (guint i = 0; i < uses->len; i++)
    {
      const gint64 took = number (uses, i, 1), dose = number (uses, i, 2);
      g_autofree char *used = litres (took), *planned = litres (dose);
      g_autofree char *more = difference_words (took - dose);
      g_autofree char *job = g_strdup_printf ("|Job %s · ", cell (uses, i, 0));
      g_autofree char *line = g_strdup_printf ("|%s used, dose %s|%s|", used, planned, more);
      const char *row = strstr (words, job);

      ck_assert_msg (row != NULL, "no row of %s", job);
      g_autofree char *of_it = g_strndup (row, strlen (job) + 120);
      ck_says (of_it, line, "used, beside the dose");
    }
  desk_hand_leave (window, session);
}
END_TEST

/* What the last word on each tank is: a correction is posted with what it restores. */
static const char tanks_sql[]
    = "WITH last AS (SELECT tank_id, max (id) AS id FROM tank_events GROUP BY tank_id)"
      " SELECT t.side, e.contents, e.ml, f.name, l.code, e.label"
      " FROM tanks t LEFT JOIN last ON last.tank_id = t.id LEFT JOIN tank_events e ON e.id = last.id"
      " LEFT JOIN lots l ON l.id = e.lot_id LEFT JOIN fluids f ON f.id = l.fluid_id"
      " WHERE t.machine_id = :id ORDER BY t.side";

/* Of each gauge the last check; of these the one whose next is due first. */
static const char gauges_sql[]
    = "WITH last AS (SELECT gauge, max (id) AS id FROM gauge_checks WHERE machine_id = :id"
      "  GROUP BY gauge)"
      " SELECT c.gauge, c.next_on < :today FROM gauge_checks c JOIN last ON last.id = c.id"
      " WHERE c.passed = 1 ORDER BY c.next_on LIMIT 1";

static const char hoses_sql[]
    = "SELECT hoses_due_on, hoses_due_on < :today FROM machines WHERE id = :id";

/* What a person reads for what the book says. */
static const char *
contents_words (const char *slug)
{
  static const struct
  {
    const char *slug;
    const char *words;
  } all[] = { { "empty", "drained, not flushed" }, { "clean", "drained and flushed" },
              { "fresh", "fresh fluid" },          { "returned", "this vehicle's return" },
              { "held", "kept under a label" },    { "unknown", "not known" } };

  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    if (g_str_equal (slug, all[i].slug))
      return all[i].words;
  ck_abort_msg ("no words for %s", slug);
  return NULL;
}

static void
check_tanks (UnsootSession *session, const char *words, gint64 id)
{
  g_autoptr (GPtrArray) tanks = ask (tanks_sql, id, session);

  ck_assert_uint_eq (tanks->len, 2);
  for (guint i = 0; i < tanks->len; i++)
    {
      const gboolean full = number (tanks, i, 2) > 0;
      const char *contents = cell (tanks, i, 1) != NULL ? cell (tanks, i, 1) : "unknown";
      g_autofree char *lot
          = g_strdup_printf (", %s, lot %s", cell (tanks, i, 3), cell (tanks, i, 4));

      ck_says (words, contents_words (contents), "what is in a tank");
      if (full && cell (tanks, i, 4) != NULL)
        ck_says (words, lot, "the lot in a tank");
      if (cell (tanks, i, 5) != NULL)
        ck_says (words, cell (tanks, i, 5), "the label of a tank");
    }
}

static void
check_dues (UnsootSession *session, const char *words, gint64 id)
{
  g_autoptr (GPtrArray) gauges = ask (gauges_sql, id, session);
  g_autoptr (GPtrArray) hoses = ask (hoses_sql, id, session);
  g_autofree char *gauge = gauges->len > 0
                               ? g_strdup_printf ("check of the %s gauge %s", cell (gauges, 0, 0),
                                                  number (gauges, 0, 1) ? "was due" : "due")
                               : g_strdup ("no gauge was ever checked");

  ck_says (words, gauge, "the next gauge check");
  if (cell (hoses, 0, 0) == NULL)
    ck_says (words, "no day for new hoses is entered", "hoses");
  else
    ck_says (words, number (hoses, 0, 1) ? "|new hoses were due " : "|new hoses due ", "hoses");
}

START_TEST (machines_tell_what_is_in_them_and_what_is_due)
{
  desk_shop_start_toolkit ();
  UnsootSession *session = desk_shop_open ();
  UnsootWindow *window = desk_hand_window (session);
  GtkWidget *page = go (window, "machines", 0);
  g_autoptr (GPtrArray) machines
      = ask ("SELECT id, name FROM machines WHERE active = 1", 0, session);

  ck_assert_uint_gt (machines->len, 1);
  for (guint i = 0; i < machines->len; i++)
    {
      GtkWidget *card = find_row (page, UNSOOT_TYPE_MACHINE_CARD, cell (machines, i, 1));
      ck_assert_msg (card != NULL, "no card of %s", cell (machines, i, 1));
      g_autofree char *words = words_of (card);
      check_tanks (session, words, number (machines, i, 0));
      check_dues (session, words, number (machines, i, 0));
    }
  desk_hand_leave (window, session);
}
END_TEST

enum
{
  LEFT = 1500
};

/* All of it in the lot that keeps longest, so that no booking is too late for it. */
static gpointer
count_down (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  UnsootActing who = { .now = desk_shop_now () };
  const GPtrArray *lots = data;

  for (guint i = 0; i < lots->len; i++)
    if (!unsoot_stock_count (db, &who, number (lots, i, 0), i == 0 ? LEFT : 0, "counted", error))
      return NULL;
  return NULL;
}

/* Each booking that still wants the fluid, not those whose run has poured it and will post it, and what is wanted up to it, in their order. */
static const char wants_sql[]
    = "WITH taken AS ("
      "  SELECT m.job_id FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
      "  WHERE l.fluid_id = :id AND m.kind = 'use' AND m.job_id IS NOT NULL),"
      " start AS ("
      "  SELECT job_id, min (starts_at) AS at FROM bookings WHERE state = 'planned'"
      "  GROUP BY job_id),"
      " poured AS ("
      "  SELECT r.job_id FROM run_events e JOIN runs r ON r.id = e.run_id"
      "  JOIN lots l ON l.id = e.lot_id WHERE r.outcome IS NULL AND l.fluid_id = :id),"
      " want AS ("
      "  SELECT j.id, j.number, start.at, sum (d.quantity_milli) AS ml"
      "  FROM jobs j JOIN start ON start.job_id = j.id JOIN job_lines d ON d.job_id = j.id"
      "  WHERE d.fluid_id = :id AND d.kind = 'fluid' AND d.unit = 'L' AND d.state <> 'declined'"
      "   AND j.status IN ('booked', 'arrived', 'in-bay')"
      "   AND j.id NOT IN (SELECT job_id FROM taken) AND j.id NOT IN (SELECT job_id FROM poured)"
      "  GROUP BY j.id)"
      " SELECT number, ml, sum (ml) OVER (ORDER BY at, id) FROM want ORDER BY at, id";

START_TEST (what_falls_short_for_which_job)
{
  desk_shop_start_toolkit ();
  UnsootSession *session = desk_shop_open ();
  UnsootWindow *window = desk_hand_window (session);
  g_autoptr (GPtrArray) lots = ask ("SELECT id FROM lots WHERE fluid_id = 1"
                                    " ORDER BY COALESCE (expires_on, '9999') DESC",
                                    0, session);
  g_autoptr (GPtrArray) wants = ask (wants_sql, 1, session);
  g_autoptr (GError) error = NULL;
  guint lacking = 0;

  unsoot_store_call (unsoot_session_get_store (session), count_down, lots, NULL, &error);
  ck_no_error (error);
  g_autofree char *words = words_of (go (window, "fluid", 1));
  for (guint i = 0; i < wants->len; i++)
    {
      const gint64 lack = MIN (number (wants, i, 1), number (wants, i, 2) - LEFT);
      g_autofree char *volume = litres (lack);
      g_autofree char *job = g_strdup_printf ("|Job %s · ", cell (wants, i, 0));
      g_autofree char *line = g_strdup_printf ("|%s short|", volume);

      if (lack <= 0)
        continue;
      const char *row = strstr (words, job);
      ck_assert_msg (row != NULL, "%s is not named: %s", job, words);
      g_autofree char *of_it = g_strndup (row, strlen (job) + 120);
      ck_says (of_it, line, "falls short");
      lacking++;
    }
  ck_assert_uint_gt (lacking, 0);
  desk_hand_leave (window, session);
}
END_TEST

static Suite *
desk_figures_suite (void)
{
  Suite *suite = suite_create ("desk figures");
  TCase *tcase = tcase_create ("figures");

  /* A book for each: what is counted down stays so. */
  tcase_add_checked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_set_timeout (tcase, 120);
  tcase_add_test (tcase, the_table_is_the_books);
  tcase_add_test (tcase, what_was_used_stands_beside_the_rule);
  tcase_add_test (tcase, machines_tell_what_is_in_them_and_what_is_due);
  tcase_add_test (tcase, what_falls_short_for_which_job);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (desk_figures_suite)
