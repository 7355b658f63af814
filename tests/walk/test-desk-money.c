/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gio/gio.h>
#include <sqlite3.h>
#include <string.h>

#include "desk-kit.h"
#include "suite.h"

/* Money, the planner and the shop's own settings at the real program. What came of each deed is
 * read from the book by SQLite, and from the saved paper by pdftotext. */

enum
{
  PATIENCE_S = 30,
  POLL_US = 100000,
  MOST_TABS = 80,
  PADDING = 7 /* pixels, of a block with its border */
};

static char *
book_path (void)
{
  g_autofree char *folder = g_build_filename (g_get_user_data_dir (), "unsoot", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_prefix (name, "demo-") && g_str_has_suffix (name, ".unsoot"))
      return g_build_filename (folder, name, NULL);
  ck_abort_msg ("no demo book in %s", folder);
}

static char *raw (const char *format, ...) G_GNUC_PRINTF (1, 2);

static char *
raw (const char *format, ...)
{
  g_autofree char *book = book_path (), *sql = NULL;
  sqlite3 *db = NULL;
  sqlite3_stmt *statement = NULL;
  char *text = NULL;
  va_list arguments;

  va_start (arguments, format);
  sql = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  ck_assert_int_eq (sqlite3_open_v2 (book, &db, SQLITE_OPEN_READONLY, NULL), SQLITE_OK);
  ck_assert_msg (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL) == SQLITE_OK, "%s",
                 sqlite3_errmsg (db));
  if (sqlite3_step (statement) == SQLITE_ROW)
    text = g_strdup ((const char *) sqlite3_column_text (statement, 0));
  sqlite3_finalize (statement);
  sqlite3_close (db);
  return text;
}

/* The book says so, soon. */
static void
ck_book (const char *wanted, const char *sql)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  g_autofree char *text = raw ("%s", sql);

  while (g_strcmp0 (text, wanted) != 0 && g_get_monotonic_time () < last)
    {
      g_usleep (POLL_US);
      g_free (text);
      text = raw ("%s", sql);
    }
  ck_assert_msg (g_strcmp0 (text, wanted) == 0, "%s: %s, not %s", sql, text, wanted);
}

static Desk *
demo_desk (void)
{
  const char *const arguments[] = { "--demo", NULL };
  Desk *desk = desk_start (arguments);

  desk_wait_title (desk, "Today");
  return desk;
}

/* Opens a deed's dialog, where the keyboard then is. */
static void
open_deed (Desk *desk, const char *button, const char *title)
{
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, button);
  desk_wait_title (desk, title);
  desk_focus (desk, title);
}

typedef struct
{
  const char *name;
  gboolean found;
} Focus;

static void
note_focus (AtspiAccessible *thing, AtspiRole role, const char *name, gpointer data)
{
  Focus *focus = data;
  AtspiStateSet *states;

  if (focus->found || strstr (name, focus->name) == NULL)
    return;
  states = atspi_accessible_get_state_set (thing);
  focus->found = atspi_state_set_contains (states, ATSPI_STATE_FOCUSED);
  g_object_unref (states);
}

static gboolean
has_keyboard (Desk *desk, const char *name)
{
  Focus focus = { name, FALSE };

  desk_each (desk, note_focus, &focus);
  return focus.found;
}

/* Walks there as a person without a mouse does. */
static void
tab_to (Desk *desk, const char *name)
{
  for (int i = 0; i < MOST_TABS; i++)
    {
      if (has_keyboard (desk, name))
        return;
      desk_key (desk, "Tab");
    }
  ck_abort_msg ("the keyboard does not come to “%s”", name);
}

static char *
text_of_pdf (const char *file)
{
  const char *const argv[] = { "pdftotext", "-layout", file, "-", NULL };
  char *out = NULL;
  GError *error = NULL;

  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &out, NULL, NULL,
                &error);
  ck_no_error (error);
  return out;
}

static void
wait_for_file (const char *file)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;

  while (!g_file_test (file, G_FILE_TEST_EXISTS) && g_get_monotonic_time () < last)
    g_usleep (POLL_US);
  ck_assert_msg (g_file_test (file, G_FILE_TEST_EXISTS), "no %s", file);
}

/* A done job that nobody's order number holds up. */
#define DONE_JOB                                                                                   \
  "SELECT j.%s FROM jobs j JOIN customers c ON c.id = j.customer_id WHERE j.status = 'done'"       \
  " AND (c.po_required = 0 OR j.po_number IS NOT NULL) ORDER BY j.number LIMIT 1"

static void
open_job (Desk *desk, const char *number)
{
  g_autofree char *title = g_strdup_printf ("Job %s", number);

  desk_key (desk, "ctrl+k");
  desk_type (desk, number);
  g_object_unref (desk_find (desk, ATSPI_ROLE_LIST_ITEM, title));
  desk_key (desk, "Return");
  desk_wait_title (desk, title);
}

static void
save_paper (Desk *desk, const char *invoice, const char *number, const char *total)
{
  g_autofree char *file = g_build_filename (g_get_user_cache_dir (), "paper.pdf", NULL);
  g_autofree char *text = NULL;

  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Show, save or print");
  g_object_unref (desk_find (desk, ATSPI_ROLE_IMAGE, "Page 1 of"));
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Save…");
  /* The toolkit’s own dialog: waited for by its title, which is no frame’s name. */
  desk_focus (desk, "Save the paper");
  desk_key (desk, "ctrl+a");
  desk_type (desk, file);
  desk_key (desk, "Return");
  wait_for_file (file);
  text = text_of_pdf (file);
  ck_assert_ptr_nonnull (strstr (text, number));
  ck_assert_ptr_nonnull (strstr (text, total));
  desk_focus (desk, invoice);
  desk_key (desk, "Escape");
}

START_TEST (a_job_is_invoiced_paid_in_parts_and_credited)
{
  Desk *desk = demo_desk ();
  g_autofree char *job = raw (DONE_JOB, "number"), *id = raw (DONE_JOB, "id");
  g_autofree char *last = raw ("SELECT max (number) FROM invoices");
  g_autofree char *number = g_strdup_printf ("%d", atoi (last) + 1);
  g_autofree char *invoice = g_strdup_printf ("Invoice %s", number);
  g_autofree char *status = g_strdup_printf ("SELECT status FROM jobs WHERE id = %s", id);
  g_autofree char *paid = g_strdup_printf ("SELECT sum (amount_minor) FROM payments p JOIN invoices"
                                           " i ON i.id = p.invoice_id WHERE i.number = %s",
                                           number);
  g_autofree char *total = NULL, *written = NULL, *minus = NULL, *credit = NULL;

  open_job (desk, job);
  open_deed (desk, "Invoice…", "Invoice this job");
  desk_key (desk, "Return");
  ck_book ("invoiced", status);
  desk_focus (desk, "Unsoot");
  g_object_unref (desk_find (desk, ATSPI_ROLE_LIST_ITEM, invoice));
  tab_to (desk, invoice);
  desk_key (desk, "Return");
  desk_wait_title (desk, invoice);
  total = raw ("SELECT total_minor FROM invoices WHERE number = %s", number);
  written = g_strdup_printf ("%d.%02d", atoi (total) / 100, atoi (total) % 100);

  /* More than is open is refused where it is typed, and stays there to be mended. */
  open_deed (desk, "Take payment…", "Take a payment");
  desk_key (desk, "ctrl+a");
  desk_type (desk, "99999");
  desk_key (desk, "Return");
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "can't be taken on it"));
  desk_key (desk, "ctrl+a");
  desk_type (desk, "100");
  desk_key (desk, "Return");
  ck_book ("10000", paid);
  ck_book ("invoiced", status);
  /* The rest stands in the field already. */
  desk_focus (desk, "Unsoot");
  g_usleep (G_USEC_PER_SEC);
  open_deed (desk, "Take payment…", "Take a payment");
  desk_key (desk, "Return");
  ck_book (total, paid);
  ck_book ("paid", status);

  desk_focus (desk, "Unsoot");
  save_paper (desk, invoice, number, written);

  desk_focus (desk, "Unsoot");
  open_deed (desk, "Credit note…", "Credit note");
  desk_type (desk, "Agreed on the phone");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Issue the credit note");
  minus = g_strdup_printf ("-%s", total);
  credit = g_strdup_printf ("SELECT c.total_minor FROM invoices c JOIN invoices i ON i.id ="
                            " c.credits_id WHERE i.number = %s AND c.kind = 'credit'"
                            " AND c.note = 'Agreed on the phone'",
                            number);
  ck_book (minus, credit);
  desk_focus (desk, "Unsoot");
  desk_end (desk);
}
END_TEST

/* The last booking of the day, a quarter of an hour later and longer, and back: what is stretched
 * comes onto the quarters of the hour. */
START_TEST (a_booking_is_moved_by_keyboard)
{
  Desk *desk = demo_desk ();
  g_autofree char *id
      = raw ("SELECT b.id FROM bookings b JOIN jobs j ON j.id = b.job_id WHERE j.status = 'booked'"
             " AND b.state = 'planned' AND b.starts_at < 21600 + (SELECT min (a.starts_at)"
             "  FROM bookings a JOIN jobs k ON k.id = a.job_id WHERE k.status = 'booked')"
             " ORDER BY b.starts_at DESC LIMIT 1");
  g_autofree char *number
      = raw ("SELECT j.number FROM jobs j JOIN bookings b ON b.job_id = j.id WHERE b.id = %s", id);
  g_autofree char *before = raw ("SELECT starts_at FROM bookings WHERE id = %s", id);
  g_autofree char *later = raw ("SELECT starts_at + 900 FROM bookings WHERE id = %s", id);
  g_autofree char *longer
      = raw ("SELECT (ends_at + 900 + 900 + 450) / 900 * 900 FROM bookings WHERE id = %s", id);
  g_autofree char *starts = g_strdup_printf ("SELECT starts_at FROM bookings WHERE id = %s", id);
  g_autofree char *ends = g_strdup_printf ("SELECT ends_at FROM bookings WHERE id = %s", id);
  g_autofree char *block = g_strdup_printf ("job %s,", number);

  desk_key (desk, "ctrl+2");
  desk_wait_title (desk, "Planner");
  tab_to (desk, block);
  desk_key (desk, "ctrl+Right");
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "Nothing stands in the way"));
  /* Held is not moved. */
  ck_book (before, starts);
  desk_key (desk, "ctrl+shift+Right");
  desk_key (desk, "Return");
  ck_book (later, starts);
  ck_book (longer, ends);
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Undo");
  ck_book (before, starts);
  desk_end (desk);
}
END_TEST

static void mouse (const char *format, ...) G_GNUC_PRINTF (1, 2);

static void
mouse (const char *format, ...)
{
  g_autofree char *line = NULL, *command = NULL;
  GError *error = NULL;
  va_list arguments;

  va_start (arguments, format);
  line = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  command = g_strconcat ("xdotool ", line, NULL);
  g_spawn_command_line_sync (command, NULL, NULL, NULL, &error);
  ck_no_error (error);
  /* A hand takes its time, and the toolkit sees each place it passes. */
  g_usleep (POLL_US);
}

/* Where a block stands in the window, which stands in the display's corner. */
static AtspiRect
place_of (Desk *desk, const char *number)
{
  g_autofree char *name = g_strdup_printf ("job %s,", number);
  g_autoptr (AtspiAccessible) block = desk_find (desk, ATSPI_ROLE_INVALID, name);
  g_autoptr (AtspiComponent) component = atspi_accessible_get_component_iface (block);
  AtspiRect *found = atspi_component_get_extents (component, ATSPI_COORD_TYPE_WINDOW, NULL);
  AtspiRect place = *found;

  g_free (found);
  /* Told is where it begins, and how wide it is inside its padding and border. */
  place.width += 2 * PADDING;
  ck_assert_int_gt (place.width, 0);
  return place;
}

/* Held down from there to there, in steps. */
static void
drag (int x, int y, int dx, int dy)
{
  enum
  {
    STEPS = 4
  };

  mouse ("mousemove %d %d", x, y);
  mouse ("mousedown 1");
  for (int i = 1; i <= STEPS; i++)
    mouse ("mousemove %d %d", x + dx * i / STEPS, y + dy * i / STEPS);
}

/* Pixels for as many seconds, by the block's own length. */
static int
pixels (const AtspiRect *place, const char *id, int seconds)
{
  g_autofree char *length = raw ("SELECT ends_at - starts_at FROM bookings WHERE id = %s", id);

  return (int) ((double) place->width * seconds / atof (length) + 0.5);
}

/* The last booking of the day that is only planned. */
#define PLANNED                                                                                    \
  "SELECT b.id FROM bookings b JOIN jobs j ON j.id = b.job_id WHERE j.status = 'booked'"           \
  " AND b.state = 'planned' AND b.starts_at < 21600 + (SELECT min (a.starts_at)"                   \
  "  FROM bookings a JOIN jobs k ON k.id = a.job_id WHERE k.status = 'booked')"                    \
  " ORDER BY b.starts_at DESC LIMIT 1"

static Desk *
planner_desk (void)
{
  Desk *desk = demo_desk ();

  desk_key (desk, "ctrl+2");
  desk_wait_title (desk, "Planner");
  return desk;
}

START_TEST (a_booking_is_dragged_and_stretched)
{
  Desk *desk = planner_desk ();
  g_autofree char *id = raw (PLANNED);
  g_autofree char *number
      = raw ("SELECT j.number FROM jobs j JOIN bookings b ON b.job_id = j.id WHERE b.id = %s", id);
  g_autofree char *times
      = g_strdup_printf ("SELECT starts_at || ' ' || ends_at FROM bookings WHERE id = %s", id);
  g_autofree char *before = raw ("%s", times);
  g_autofree char *later
      = raw ("SELECT (starts_at + 900) || ' ' || (ends_at + 900) FROM bookings WHERE id = %s", id);
  g_autofree char *longer = NULL;
  AtspiRect place = place_of (desk, number);

  drag (place.x + place.width / 2, place.y + place.height / 2, pixels (&place, id, 900), 0);
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "Nothing stands in the way"));
  ck_book (before, times);
  mouse ("mouseup 1");
  ck_book (later, times);
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Undo");
  ck_book (before, times);

  /* By its end: what is stretched comes onto the quarters of the hour. */
  g_usleep (5 * POLL_US);
  place = place_of (desk, number);
  longer = raw ("SELECT starts_at || ' ' || ((ends_at + 900 + 450) / 900 * 900) FROM bookings"
                " WHERE id = %s",
                id);
  drag (place.x + place.width - 4, place.y + place.height / 2, pixels (&place, id, 900), 0);
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "Nothing stands in the way"));
  mouse ("mouseup 1");
  ck_book (longer, times);
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Undo");
  ck_book (before, times);
  desk_end (desk);
}
END_TEST

/* Another bay in which nothing stands at that time; its place among the lanes is its place among
 * the bays. */
START_TEST (a_booking_is_dragged_to_another_bay)
{
  Desk *desk = planner_desk ();
  g_autofree char *id = raw (PLANNED);
  g_autofree char *number
      = raw ("SELECT j.number FROM jobs j JOIN bookings b ON b.job_id = j.id WHERE b.id = %s", id);
  g_autofree char *bay
      = raw ("SELECT y.id FROM bays y, bookings b WHERE b.id = %s AND y.active = 1"
             " AND y.id <> b.bay_id AND NOT EXISTS (SELECT 1 FROM bookings o WHERE o.bay_id = y.id"
             "  AND o.state <> 'dropped' AND o.starts_at < b.ends_at + 900"
             "  AND o.ends_at > b.starts_at - 900) ORDER BY y.position LIMIT 1",
             id);
  g_autofree char *lanes = raw ("SELECT (SELECT count (*) FROM bays x WHERE x.active = 1"
                                "  AND x.position < y.position) - (SELECT count (*) FROM bays x"
                                "  WHERE x.active = 1 AND x.position < z.position)"
                                " FROM bays y, bays z, bookings b WHERE y.id = %s AND b.id = %s"
                                " AND z.id = b.bay_id",
                                bay, id);
  g_autofree char *where
      = g_strdup_printf ("SELECT bay_id || ' ' || starts_at FROM bookings WHERE id = %s", id);
  g_autofree char *before = raw ("%s", where);
  g_autofree char *after = raw ("SELECT '%s ' || starts_at FROM bookings WHERE id = %s", bay, id);
  const AtspiRect place = place_of (desk, number);

  ck_assert_ptr_nonnull (bay);
  /* A lane is a block high, and a little. */
  drag (place.x + place.width / 2, place.y + place.height / 2, 0,
        atoi (lanes) * (place.height + place.height / 8));
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "Nothing stands in the way"));
  ck_book (before, where);
  mouse ("mouseup 1");
  ck_book (after, where);
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Undo");
  ck_book (before, where);
  desk_end (desk);
}
END_TEST

/* Over another job of the day: said while it is held, and letting go moves nothing. */
START_TEST (what_a_drag_would_break)
{
  Desk *desk = planner_desk ();
  g_autofree char *id = raw (PLANNED);
  g_autofree char *number
      = raw ("SELECT j.number FROM jobs j JOIN bookings b ON b.job_id = j.id WHERE b.id = %s", id);
  g_autofree char *other = raw (
      "SELECT j.number FROM bookings o JOIN jobs j ON j.id = o.job_id, bookings b WHERE b.id = %s"
      " AND o.id <> b.id AND o.bay_id <> b.bay_id AND o.state <> 'dropped'"
      " AND o.starts_at / 86400 = b.starts_at / 86400 ORDER BY o.starts_at DESC LIMIT 1",
      id);
  g_autofree char *all = g_strdup_printf (
      "SELECT bay_id || ' ' || starts_at || ' ' || ends_at || ' ' || version FROM bookings"
      " WHERE id = %s",
      id);
  g_autofree char *before = raw ("%s", all);
  g_autofree char *named = g_strdup_printf ("job %s", other);
  const AtspiRect from = place_of (desk, number), to = place_of (desk, other);

  drag (from.x + from.width / 2, from.y + from.height / 2, to.x - from.x, to.y - from.y);
  g_object_unref (desk_find (desk, ATSPI_ROLE_STATUS_BAR, named));
  mouse ("mouseup 1");
  g_usleep (20 * POLL_US);
  ck_book (before, all);
  ck_assert (!desk_has (desk, ATSPI_ROLE_PUSH_BUTTON, "Undo"));
  desk_end (desk);
}
END_TEST

START_TEST (a_price_is_changed_by_the_owner_alone)
{
  Desk *desk = demo_desk ();
  g_autofree char *name = raw ("SELECT name FROM services WHERE active = 1 ORDER BY id LIMIT 1");
  g_autofree char *price = g_strdup_printf (
      "SELECT price_minor || '/' || version FROM services WHERE name = '%s'", name);
  g_autofree char *button = g_strdup_printf ("Change…: %s", name);
  g_autofree char *version = raw ("SELECT version + 1 FROM services WHERE name = '%s'", name);
  g_autofree char *wanted = g_strdup_printf ("36500/%s", version);

  desk_key (desk, "ctrl+l");
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Oona Brask");
  desk_focus (desk, "Who is at the desk");
  desk_type (desk, "1111");
  desk_key (desk, "Return");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Oona Brask"));
  desk_focus (desk, "Unsoot");
  desk_key (desk, "ctrl+comma");
  desk_wait_title (desk, "Preferences");
  open_deed (desk, button, "Service");
  tab_to (desk, "Labour");
  desk_key (desk, "ctrl+a");
  desk_type (desk, "365");
  desk_key (desk, "Return");
  ck_book (wanted, price);
  desk_focus (desk, "Unsoot");
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, "365.00"));
  desk_end (desk);
}
END_TEST

static void
add_case (Suite *suite, const char *name, const TTest *test)
{
  TCase *tcase = tcase_create (name);

  tcase_set_timeout (tcase, 240);
  tcase_add_test (tcase, test);
  suite_add_tcase (suite, tcase);
}

static Suite *
desk_money_suite (void)
{
  Suite *suite = suite_create ("desk money");

  add_case (suite, "invoice", a_job_is_invoiced_paid_in_parts_and_credited);
  add_case (suite, "planner", a_booking_is_moved_by_keyboard);
  add_case (suite, "planner by mouse", a_booking_is_dragged_and_stretched);
  add_case (suite, "planner, another bay", a_booking_is_dragged_to_another_bay);
  add_case (suite, "planner, in the way", what_a_drag_would_break);
  add_case (suite, "preferences", a_price_is_changed_by_the_owner_alone);
  return suite;
}

UNSOOT_TEST_MAIN (desk_money_suite)
