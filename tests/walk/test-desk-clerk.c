/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book-kit.h"
#include "desk-kit.h"
#include "suite.h"

/* The parts clerk's day at the real program: a delivery, an opened container, a count, an adapter
 * lent and taken back, a tank drained. What came of each is read from the book by SQLite. */

static Desk *
clerk_desk (void)
{
  const char *const arguments[] = { "--demo", NULL };
  Desk *desk = desk_start (arguments);

  desk_wait_title (desk, "Today");
  desk_key (desk, "ctrl+l");
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Tobin Esker");
  desk_focus (desk, "Who is at the desk");
  desk_type (desk, "3333");
  desk_key (desk, "Return");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Tobin Esker"));
  desk_focus (desk, "Unsoot");
  return desk;
}

/* Opens a place by the list at the side. */
static void
open_place (Desk *desk, const char *place)
{
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, place);
  desk_wait_title (desk, place);
}

/* Opens a deed's dialog, where the keyboard then is. */
static void
open_deed (Desk *desk, const char *button, const char *title)
{
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, button);
  desk_wait_title (desk, title);
  desk_focus (desk, title);
}

START_TEST (a_delivery_is_received_opened_and_counted)
{
  Desk *desk = clerk_desk ();

  open_place (desk, "Fluids");
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Intake fluid R:");
  desk_wait_title (desk, "Intake fluid R");
  open_deed (desk, "Receive…", "Receive a delivery");
  desk_type (desk, "QX-77");
  desk_key (desk, "Tab");
  desk_key (desk, "ctrl+a");
  desk_type (desk, "a lot");
  desk_key (desk, "Return");
  /* What is wrong is said there, and the rest is not lost. */
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, "a lot"));
  desk_key (desk, "ctrl+a");
  desk_type (desk, "2 x 5 L");
  desk_key (desk, "Tab");
  desk_type (desk, "2028-02");
  desk_key (desk, "Return");
  ck_book ("2028-02-29", "SELECT expires_on FROM lots WHERE code = 'QX-77'");
  ck_book ("10000delivery",
           "SELECT m.ml || m.kind FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
           " WHERE l.code = 'QX-77'");
  ck_book ("Tobin Esker", "SELECT s.name FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
                          " JOIN staff s ON s.id = m.staff_id WHERE l.code = 'QX-77'");

  desk_focus (desk, "Unsoot");
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Lot QX-77");
  desk_wait_title (desk, "Lot QX-77");
  open_deed (desk, "Open a container…", "Open a container");
  desk_key (desk, "Tab");
  desk_type (desk, "Can 4");
  desk_key (desk, "Tab");
  desk_type (desk, "5");
  desk_key (desk, "Return");
  ck_book ("Can 45000",
           "SELECT c.label || c.size_ml FROM containers c JOIN lots l ON l.id = c.lot_id"
           " WHERE l.code = 'QX-77'");

  desk_focus (desk, "Unsoot");
  open_deed (desk, "Count…", "Count a lot");
  desk_key (desk, "Tab");
  desk_type (desk, "9.5 L");
  desk_key (desk, "Tab");
  desk_type (desk, "can leaked");
  desk_key (desk, "Return");
  ck_book ("-500can leaked",
           "SELECT m.ml || m.reason FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
           " WHERE l.code = 'QX-77' AND m.kind = 'count'");
  /* The toast's Undo posts the opposite; both stay. */
  desk_focus (desk, "Unsoot");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Undo");
  ck_book ("10000/3",
           "SELECT sum (m.ml) || '/' || count (*) FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
           " WHERE l.code = 'QX-77'");
  ck_book ("0", "SELECT count (*) FROM drafts");
  desk_end (desk);
}
END_TEST

/* Ordered from the page of the fluid, received in part, and the rest cancelled. */
START_TEST (a_fluid_is_ordered_and_comes)
{
  Desk *desk = clerk_desk ();

  open_place (desk, "Fluids");
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Intake fluid R:");
  desk_wait_title (desk, "Intake fluid R");
  open_deed (desk, "Order…", "Order a fluid");
  desk_key (desk, "Tab");
  desk_key (desk, "ctrl+a");
  desk_type (desk, "2");
  desk_key (desk, "Tab");
  desk_key (desk, "ctrl+a");
  desk_type (desk, "5 L");
  desk_key (desk, "Tab");
  desk_key (desk, "ctrl+a");
  desk_type (desk, "85.00");
  desk_key (desk, "Return");
  ck_book ("2/5000/8500/Intake fluid R/Tobin Esker",
           "SELECT o.packs || '/' || o.pack_ml || '/' || o.pack_cost_minor || '/' || f.name || '/'"
           " || s.name FROM supply_orders o JOIN fluids f ON f.id = o.fluid_id"
           " JOIN staff s ON s.id = o.staff_id");

  desk_focus (desk, "Unsoot");
  open_deed (desk, "Receive…: order 1", "Receive a delivery");
  desk_key (desk, "Tab");
  desk_type (desk, "QX-78");
  desk_key (desk, "Tab");
  desk_key (desk, "ctrl+a");
  desk_type (desk, "5 L");
  desk_key (desk, "Return");
  ck_book ("5000received",
           "SELECT m.ml || e.kind FROM supply_order_events e JOIN stock_moves m ON m.id = e.move_id"
           " JOIN lots l ON l.id = m.lot_id WHERE l.code = 'QX-78'");
  desk_focus (desk, "Unsoot");
  g_object_unref (desk_find (desk, ATSPI_ROLE_LABEL, "5 L received, 5 L to come"));
  open_deed (desk, "Cancel…: order 1", "Cancel an order");
  desk_type (desk, "out of stock there");
  /* Return does nothing that can't be undone at once. */
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Cancel the order");
  ck_book ("out of stock there", "SELECT reason FROM supply_order_events WHERE kind = 'cancelled'");
  desk_focus (desk, "Unsoot");
  desk_end (desk);
}
END_TEST

START_TEST (an_adapter_is_added_and_fits)
{
  Desk *desk = clerk_desk ();

  open_place (desk, "Adapters");
  open_deed (desk, "Add an adapter…", "Details of an adapter");
  desk_key (desk, "Tab");
  desk_type (desk, "ZZ-1");
  desk_key (desk, "Tab");
  desk_type (desk, "Q7");
  desk_key (desk, "Return");
  ck_book ("Q7here", "SELECT bin || state FROM adapter_items WHERE label = 'ZZ-1'");
  desk_focus (desk, "Unsoot");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "ZZ-1");
  desk_wait_title (desk, "Adapter ZZ-1");
  open_deed (desk, "Add what it fits…", "Something that it fits");
  desk_key (desk, "Tab");
  desk_key (desk, "Tab");
  desk_type (desk, "Brindle");
  desk_key (desk, "Tab");
  desk_type (desk, "T4");
  desk_key (desk, "Return");
  ck_book ("Brindle/T4",
           "SELECT f.make || '/' || f.model FROM adapter_fits f JOIN adapter_items i"
           " ON i.type_id = f.type_id WHERE i.label = 'ZZ-1' ORDER BY f.id DESC LIMIT 1");
  desk_focus (desk, "Unsoot");
  desk_end (desk);
}
END_TEST

START_TEST (an_adapter_is_lent_and_comes_back)
{
  Desk *desk = clerk_desk ();

  open_place (desk, "Adapters");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "F-12/2");
  desk_wait_title (desk, "Adapter F-12/2");
  open_deed (desk, "Lend…: F-12/2", "Lend an adapter");
  desk_key (desk, "Tab");
  desk_type (desk, "Osier Garage");
  desk_key (desk, "Tab");
  desk_key (desk, "Tab");
  desk_type (desk, "555-0103");
  desk_key (desk, "Tab");
  desk_type (desk, "2099-12-31");
  desk_key (desk, "Return");
  ck_book ("shop/Osier Garage/555-0103/2099-12-31",
           "SELECT l.to_kind || '/' || l.to_name || '/' || l.phone || '/' || l.due_on FROM loans l"
           " JOIN adapter_items i ON i.id = l.item_id WHERE i.label = 'F-12/2'"
           " ORDER BY l.id DESC LIMIT 1");

  desk_focus (desk, "Unsoot");
  open_deed (desk, "Take back…: F-12/2", "Take an adapter back");
  desk_type (desk, "seal worn");
  desk_key (desk, "Tab");
  desk_key (desk, "ctrl+a");
  desk_type (desk, "Z9");
  desk_key (desk, "Return");
  ck_book ("1", "SELECT l.back_at IS NOT NULL AND l.back_condition = 'seal worn' FROM loans l"
                " JOIN adapter_items i ON i.id = l.item_id WHERE i.label = 'F-12/2'"
                " ORDER BY l.id DESC LIMIT 1");
  ck_book ("Z9seal worn", "SELECT bin || condition FROM adapter_items WHERE label = 'F-12/2'");
  desk_end (desk);
}
END_TEST

/* Tanks that a run has are tended by the run. */
#define FREE_CART                                                                                  \
  "SELECT m.name FROM machines m WHERE NOT EXISTS"                                                 \
  " (SELECT 1 FROM runs r WHERE r.machine_id = m.id AND r.outcome IS NULL) ORDER BY m.name LIMIT 1"

START_TEST (a_tank_is_measured_and_drained)
{
  Desk *desk = clerk_desk ();
  g_autofree char *cart = book_text (FREE_CART);
  g_autofree char *sql = g_strdup_printf (
      "SELECT e.kind || '/' || e.contents || '/' || e.ml || '/' || s.name FROM tank_events e"
      " JOIN tanks t ON t.id = e.tank_id JOIN machines m ON m.id = t.machine_id"
      " JOIN staff s ON s.id = e.staff_id WHERE m.name = '%s' AND t.side = 'fuel'"
      " ORDER BY e.id DESC LIMIT 1",
      cart);

  ck_assert_ptr_nonnull (cart);
  open_place (desk, "Machines");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, cart);
  desk_wait_title (desk, cart);
  open_deed (desk, "Found…: Fuel side", "Record what is in a tank");
  /* Unknown, empty, clean, fresh. */
  desk_key (desk, "space");
  desk_key (desk, "Down");
  desk_key (desk, "Down");
  desk_key (desk, "Down");
  desk_key (desk, "Return");
  desk_key (desk, "Tab");
  desk_type (desk, "0.3 L");
  desk_key (desk, "Return");
  ck_book ("found/fresh/300/Tobin Esker", "%s", sql);
  desk_focus (desk, "Unsoot");
  open_deed (desk, "Drain…: Fuel side", "Drain a tank");
  /* Cancel has the keyboard first: Return does nothing that can't be undone. */
  desk_key (desk, "Tab");
  desk_key (desk, "space");
  ck_book ("drain/empty/0/Tobin Esker", "%s", sql);
  desk_focus (desk, "Unsoot");
  /* It was the other cart's: both stay, and the tank holds again what it held. */
  open_deed (desk, "Take back: Drained: Fuel side", "Take back what was recorded");
  desk_type (desk, "other cart");
  desk_key (desk, "Return");
  ck_book ("correction/fresh/300/Tobin Esker", "%s", sql);
  ck_book ("other cart/drain",
           "SELECT c.reason || '/' || o.kind FROM tank_events c"
           " JOIN tank_events o ON o.id = c.reverses_id ORDER BY c.id DESC LIMIT 1");
  desk_focus (desk, "Unsoot");
  desk_end (desk);
}
END_TEST

static Suite *
desk_clerk_suite (void)
{
  Suite *suite = suite_create ("desk clerk");
  TCase *clerk = tcase_create ("clerk");

  tcase_set_timeout (clerk, 300);
  tcase_add_test (clerk, a_delivery_is_received_opened_and_counted);
  tcase_add_test (clerk, a_fluid_is_ordered_and_comes);
  tcase_add_test (clerk, an_adapter_is_added_and_fits);
  tcase_add_test (clerk, an_adapter_is_lent_and_comes_back);
  tcase_add_test (clerk, a_tank_is_measured_and_drained);
  suite_add_tcase (suite, clerk);
  return suite;
}

UNSOOT_TEST_MAIN (desk_clerk_suite)
