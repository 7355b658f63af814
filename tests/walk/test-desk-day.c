/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <sqlite3.h>

#include "desk-kit.h"
#include "suite.h"

/* A person at the real program: what is found and opened is compared with the book, which is
 * read here by SQLite itself. */

/* The only shop's file under the data folder whose name begins so; waited for. */
static char *
book_path (const char *prefix)
{
  g_autofree char *folder = g_build_filename (g_get_user_data_dir (), "unsoot", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_prefix (name, prefix) && g_str_has_suffix (name, ".unsoot"))
      return g_build_filename (folder, name, NULL);
  return NULL;
}

/* The first column of the first row as text. */
static char *
raw (const char *book, const char *sql)
{
  sqlite3 *db = NULL;
  sqlite3_stmt *statement = NULL;
  char *text = NULL;

  ck_assert_int_eq (sqlite3_open_v2 (book, &db, SQLITE_OPEN_READONLY, NULL), SQLITE_OK);
  ck_assert_msg (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL) == SQLITE_OK, "%s",
                 sqlite3_errmsg (db));
  if (sqlite3_step (statement) == SQLITE_ROW)
    text = g_strdup ((const char *) sqlite3_column_text (statement, 0));
  sqlite3_finalize (statement);
  sqlite3_close (db);
  return text;
}

static Desk *
demo_desk (void)
{
  const char *const arguments[] = { "--demo", NULL };
  Desk *desk = desk_start (arguments);

  desk_wait_title (desk, "Today");
  return desk;
}

/* Typed letter by letter, the last three of the name; the best result is opened with Return. */
START_TEST (a_customer_by_part_of_the_name_then_vehicle_then_job)
{
  Desk *desk = demo_desk ();
  g_autofree char *book = book_path ("demo-");
  g_autofree char *name
      = raw (book, "SELECT c.name FROM customers c JOIN vehicles v ON v.customer_id = c.id JOIN "
                   "jobs j ON j.vehicle_id = v.id WHERE c.name = 'Harrow Creek Gravel' LIMIT 1");
  g_autofree char *phone
      = raw (book, "SELECT number FROM customer_phones p JOIN customers c ON c.id = "
                   "p.customer_id WHERE c.name = 'Harrow Creek Gravel' ORDER BY p.id LIMIT 1");
  g_autofree char *plate
      = raw (book, "SELECT v.plate FROM vehicles v JOIN jobs j ON j.vehicle_id = v.id WHERE "
                   "v.plate IS NOT NULL ORDER BY j.number DESC LIMIT 1");
  g_autofree char *number
      = raw (book, "SELECT j.number FROM vehicles v JOIN jobs j ON j.vehicle_id = v.id WHERE "
                   "v.plate IS NOT NULL ORDER BY j.number DESC LIMIT 1");
  g_autofree char *job = g_strdup_printf ("Job %s", number);

  ck_assert_str_eq (name, "Harrow Creek Gravel");
  desk_key (desk, "ctrl+k");
  desk_type (desk, "creek gr");
  g_object_unref (desk_find (desk, ATSPI_ROLE_LIST_ITEM, name));
  desk_key (desk, "Return");
  desk_wait_title (desk, name);
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, phone));

  desk_key (desk, "ctrl+k");
  desk_type (desk, plate);
  g_object_unref (desk_find (desk, ATSPI_ROLE_LIST_ITEM, plate));
  desk_key (desk, "Return");
  desk_wait_title (desk, plate);
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, "Its check"));

  desk_click (desk, ATSPI_ROLE_LIST_ITEM, job);
  desk_wait_title (desk, job);
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "The path of this job"));

  desk_key (desk, "alt+Left");
  desk_wait_title (desk, plate);
  desk_end (desk);
}
END_TEST

START_TEST (a_block_of_the_strip_opens_its_job)
{
  Desk *desk = demo_desk ();
  g_autofree char *book = book_path ("demo-");
  g_autofree char *number
      = raw (book, "SELECT number FROM jobs WHERE status = 'in-bay' ORDER BY number LIMIT 1");
  g_autofree char *block = g_strdup_printf ("Job %s,", number);
  g_autofree char *title = g_strdup_printf ("Job %s", number);

  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, block);
  desk_wait_title (desk, title);
  desk_end (desk);
}
END_TEST

/* A wrong PIN changes nothing and says so; the right one narrows the places. */
START_TEST (hands_change_by_pin)
{
  Desk *desk = demo_desk ();

  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Mara Quillen"));
  g_object_unref (desk_find (desk, ATSPI_ROLE_LIST_ITEM, "Customers"));
  desk_key (desk, "ctrl+l");
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Tobin Esker");
  desk_focus (desk, "Who is at the desk");
  desk_type (desk, "9999");
  desk_key (desk, "Return");
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, "not the PIN of Tobin Esker"));
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Mara Quillen"));
  desk_type (desk, "3333");
  desk_key (desk, "Return");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Tobin Esker, Parts clerk"));
  ck_assert (!desk_has (desk, ATSPI_ROLE_LIST_ITEM, "Customers"));
  desk_focus (desk, "Unsoot");
  desk_end (desk);
}
END_TEST

/* A new shop's owner is at its desk at once, and the book holds what was typed. */
START_TEST (a_new_shop)
{
  const char *const arguments[] = { NULL };
  Desk *desk = desk_start (arguments);
  g_autofree char *book = NULL, *shop = NULL, *owner = NULL, *pin = NULL;

  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "New shop");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Open the book"));
  desk_type (desk, "Quay Diesel");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Open the book");
  /* The owner's name is missing: nothing is made, the sentence stands in the form. */
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, "needs a name"));
  ck_assert_ptr_null (book_path ("shop"));
  desk_click (desk, ATSPI_ROLE_TEXT, "Your name");
  desk_type (desk, "Ada Brook");
  desk_click (desk, ATSPI_ROLE_TEXT, "PIN");
  desk_type (desk, "4711");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Open the book");
  desk_wait_title (desk, "Today");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Ada Brook, Shop owner"));
  book = book_path ("shop");
  shop = raw (book, "SELECT name || '/' || currency FROM shop");
  owner = raw (book, "SELECT name || '/' || initials || '/' || role FROM staff");
  pin = raw (book, "SELECT pin_hash FROM staff");
  ck_assert_str_eq (shop, "Quay Diesel/USD");
  ck_assert_str_eq (owner, "Ada Brook/AB/owner");
  ck_assert (g_str_has_prefix (pin, "$argon2id$"));
  desk_end (desk);
}
END_TEST

static void
forget_books (void)
{
  char *book;

  while ((book = book_path ("")) != NULL)
    {
      g_unlink (book);
      g_free (book);
    }
}

static Suite *
desk_day_suite (void)
{
  Suite *suite = suite_create ("desk day");
  TCase *tcase = tcase_create ("day");

  tcase_add_checked_fixture (tcase, NULL, forget_books);
  tcase_add_test (tcase, a_customer_by_part_of_the_name_then_vehicle_then_job);
  tcase_add_test (tcase, a_block_of_the_strip_opens_its_job);
  tcase_add_test (tcase, hands_change_by_pin);
  tcase_add_test (tcase, a_new_shop);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (desk_day_suite)
