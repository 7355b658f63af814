/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "book-kit.h"
#include "desk-kit.h"
#include "suite.h"

/* A person at the real program: what is found and opened is compared with the book, which is
 * read here by SQLite itself. */

START_TEST (a_customer_by_part_of_the_name_then_vehicle_then_job)
{
  Desk *desk = desk_start_demo ();
  g_autofree char *book = book_named ("demo-");
  g_autofree char *name = book_text_in (
      book, "SELECT c.name FROM customers c JOIN vehicles v ON v.customer_id = c.id JOIN "
            "jobs j ON j.vehicle_id = v.id WHERE c.name = 'Harrow Creek Gravel' LIMIT 1");
  g_autofree char *phone = book_text_in (
      book, "SELECT number FROM customer_phones p JOIN customers c ON c.id = "
            "p.customer_id WHERE c.name = 'Harrow Creek Gravel' ORDER BY p.id LIMIT 1");
  g_autofree char *plate = book_text_in (
      book, "SELECT v.plate FROM vehicles v JOIN jobs j ON j.vehicle_id = v.id WHERE "
            "v.plate IS NOT NULL ORDER BY j.number DESC LIMIT 1");
  g_autofree char *number = book_text_in (
      book, "SELECT j.number FROM vehicles v JOIN jobs j ON j.vehicle_id = v.id WHERE "
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
  Desk *desk = desk_start_demo ();
  g_autofree char *book = book_named ("demo-");
  g_autofree char *number = book_text_in (
      book, "SELECT number FROM jobs WHERE status = 'in-bay' ORDER BY number LIMIT 1");
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
  Desk *desk = desk_start_demo ();

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
  ck_assert_ptr_null (book_named ("shop"));
  desk_click (desk, ATSPI_ROLE_TEXT, "Your name");
  desk_type (desk, "Ada Brook");
  desk_click (desk, ATSPI_ROLE_TEXT, "PIN");
  desk_type (desk, "4711");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Open the book");
  desk_wait_title (desk, "Today");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Ada Brook, Shop owner"));
  book = book_named ("shop");
  shop = book_text_in (book, "SELECT name || '/' || currency FROM shop");
  owner = book_text_in (book, "SELECT name || '/' || initials || '/' || role FROM staff");
  pin = book_text_in (book, "SELECT pin_hash FROM staff");
  ck_assert_str_eq (shop, "Quay Diesel/USD");
  ck_assert_str_eq (owner, "Ada Brook/AB/owner");
  ck_assert (g_str_has_prefix (pin, "$argon2id$"));
  desk_end (desk);
}
END_TEST

static void
forget_books (void)
{
  book_forget ("");
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
