/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdlib.h>

#include "book-kit.h"
#include "desk-keys.h"
#include "suite.h"

/* The planner at the real program, by keyboard and by mouse. What came of each deed is read from
 * the book by SQLite. */

enum
{
  POLL_US = 100000,
  PADDING = 7 /* pixels, of a block with its border */
};

/* The last booking of the day, a quarter of an hour later and longer, and back: what is stretched
 * comes onto the quarters of the hour. */
START_TEST (a_booking_is_moved_by_keyboard)
{
  Desk *desk = desk_start_demo ();
  g_autofree char *id = book_text (
      "SELECT b.id FROM bookings b JOIN jobs j ON j.id = b.job_id WHERE j.status = 'booked'"
      " AND b.state = 'planned' AND b.starts_at < 21600 + (SELECT min (a.starts_at)"
      "  FROM bookings a JOIN jobs k ON k.id = a.job_id WHERE k.status = 'booked')"
      " ORDER BY b.starts_at DESC LIMIT 1");
  g_autofree char *number = book_text (
      "SELECT j.number FROM jobs j JOIN bookings b ON b.job_id = j.id WHERE b.id = %s", id);
  g_autofree char *before = book_text ("SELECT starts_at FROM bookings WHERE id = %s", id);
  g_autofree char *later = book_text ("SELECT starts_at + 900 FROM bookings WHERE id = %s", id);
  g_autofree char *longer = book_text (
      "SELECT (ends_at + 900 + 900 + 450) / 900 * 900 FROM bookings WHERE id = %s", id);
  g_autofree char *starts = g_strdup_printf ("SELECT starts_at FROM bookings WHERE id = %s", id);
  g_autofree char *ends = g_strdup_printf ("SELECT ends_at FROM bookings WHERE id = %s", id);
  g_autofree char *block = g_strdup_printf ("job %s,", number);

  desk_key (desk, "ctrl+2");
  desk_wait_title (desk, "Planner");
  desk_tab_to (desk, block);
  desk_key (desk, "ctrl+Right");
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "Nothing stands in the way"));
  /* Held is not moved. */
  ck_book (before, "%s", starts);
  desk_key (desk, "ctrl+shift+Right");
  desk_key (desk, "Return");
  ck_book (later, "%s", starts);
  ck_book (longer, "%s", ends);
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Undo");
  ck_book (before, "%s", starts);
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
  g_autofree char *length
      = book_text ("SELECT ends_at - starts_at FROM bookings WHERE id = %s", id);

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
  Desk *desk = desk_start_demo ();

  desk_key (desk, "ctrl+2");
  desk_wait_title (desk, "Planner");
  return desk;
}

START_TEST (a_booking_is_dragged_and_stretched)
{
  Desk *desk = planner_desk ();
  g_autofree char *id = book_text (PLANNED);
  g_autofree char *number = book_text (
      "SELECT j.number FROM jobs j JOIN bookings b ON b.job_id = j.id WHERE b.id = %s", id);
  g_autofree char *times
      = g_strdup_printf ("SELECT starts_at || ' ' || ends_at FROM bookings WHERE id = %s", id);
  g_autofree char *before = book_text ("%s", times);
  g_autofree char *later = book_text (
      "SELECT (starts_at + 900) || ' ' || (ends_at + 900) FROM bookings WHERE id = %s", id);
  g_autofree char *longer = NULL;
  AtspiRect place = place_of (desk, number);

  drag (place.x + place.width / 2, place.y + place.height / 2, pixels (&place, id, 900), 0);
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "Nothing stands in the way"));
  ck_book (before, "%s", times);
  mouse ("mouseup 1");
  ck_book (later, "%s", times);
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Undo");
  ck_book (before, "%s", times);

  /* By its end: what is stretched comes onto the quarters of the hour. */
  g_usleep (5 * POLL_US);
  place = place_of (desk, number);
  longer = book_text ("SELECT starts_at || ' ' || ((ends_at + 900 + 450) / 900 * 900) FROM bookings"
                      " WHERE id = %s",
                      id);
  drag (place.x + place.width - 4, place.y + place.height / 2, pixels (&place, id, 900), 0);
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "Nothing stands in the way"));
  mouse ("mouseup 1");
  ck_book (longer, "%s", times);
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Undo");
  ck_book (before, "%s", times);
  desk_end (desk);
}
END_TEST

/* Another bay in which nothing stands at that time; its place among the lanes is its place among
 * the bays. */
START_TEST (a_booking_is_dragged_to_another_bay)
{
  Desk *desk = planner_desk ();
  g_autofree char *id = book_text (PLANNED);
  g_autofree char *number = book_text (
      "SELECT j.number FROM jobs j JOIN bookings b ON b.job_id = j.id WHERE b.id = %s", id);
  g_autofree char *bay = book_text (
      "SELECT y.id FROM bays y, bookings b WHERE b.id = %s AND y.active = 1"
      " AND y.id <> b.bay_id AND NOT EXISTS (SELECT 1 FROM bookings o WHERE o.bay_id = y.id"
      "  AND o.state <> 'dropped' AND o.starts_at < b.ends_at + 900"
      "  AND o.ends_at > b.starts_at - 900) ORDER BY y.position LIMIT 1",
      id);
  g_autofree char *lanes
      = book_text ("SELECT (SELECT count (*) FROM bays x WHERE x.active = 1"
                   "  AND x.position < y.position) - (SELECT count (*) FROM bays x"
                   "  WHERE x.active = 1 AND x.position < z.position)"
                   " FROM bays y, bays z, bookings b WHERE y.id = %s AND b.id = %s"
                   " AND z.id = b.bay_id",
                   bay, id);
  g_autofree char *where
      = g_strdup_printf ("SELECT bay_id || ' ' || starts_at FROM bookings WHERE id = %s", id);
  g_autofree char *before = book_text ("%s", where);
  g_autofree char *after
      = book_text ("SELECT '%s ' || starts_at FROM bookings WHERE id = %s", bay, id);
  const AtspiRect place = place_of (desk, number);

  ck_assert_ptr_nonnull (bay);
  /* A lane is a block high, and a little. */
  drag (place.x + place.width / 2, place.y + place.height / 2, 0,
        atoi (lanes) * (place.height + place.height / 8));
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "Nothing stands in the way"));
  ck_book (before, "%s", where);
  mouse ("mouseup 1");
  ck_book (after, "%s", where);
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Undo");
  ck_book (before, "%s", where);
  desk_end (desk);
}
END_TEST

/* Over another job of the day: said while it is held, and letting go moves nothing. */
START_TEST (what_a_drag_would_break)
{
  Desk *desk = planner_desk ();
  g_autofree char *id = book_text (PLANNED);
  g_autofree char *number = book_text (
      "SELECT j.number FROM jobs j JOIN bookings b ON b.job_id = j.id WHERE b.id = %s", id);
  g_autofree char *other = book_text (
      "SELECT j.number FROM bookings o JOIN jobs j ON j.id = o.job_id, bookings b WHERE b.id = %s"
      " AND o.id <> b.id AND o.bay_id <> b.bay_id AND o.state <> 'dropped'"
      " AND o.starts_at / 86400 = b.starts_at / 86400 ORDER BY o.starts_at DESC LIMIT 1",
      id);
  g_autofree char *all = g_strdup_printf (
      "SELECT bay_id || ' ' || starts_at || ' ' || ends_at || ' ' || version FROM bookings"
      " WHERE id = %s",
      id);
  g_autofree char *before = book_text ("%s", all);
  g_autofree char *named = g_strdup_printf ("job %s", other);
  const AtspiRect from = place_of (desk, number), to = place_of (desk, other);

  drag (from.x + from.width / 2, from.y + from.height / 2, to.x - from.x, to.y - from.y);
  g_object_unref (desk_find (desk, ATSPI_ROLE_STATUS_BAR, named));
  mouse ("mouseup 1");
  g_usleep (20 * POLL_US);
  ck_book (before, "%s", all);
  ck_assert (!desk_has (desk, ATSPI_ROLE_PUSH_BUTTON, "Undo"));
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
desk_planner_suite (void)
{
  Suite *suite = suite_create ("desk planner");

  add_case (suite, "by keyboard", a_booking_is_moved_by_keyboard);
  add_case (suite, "by mouse", a_booking_is_dragged_and_stretched);
  add_case (suite, "another bay", a_booking_is_dragged_to_another_bay);
  add_case (suite, "in the way", what_a_drag_would_break);
  return suite;
}

UNSOOT_TEST_MAIN (desk_planner_suite)
