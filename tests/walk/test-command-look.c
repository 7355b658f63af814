/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "program.h"

/* What is only looked at, the stores, and the demo that is carried through without a screen. */

static gint64
job_in (const char *status)
{
  return raw_int ("SELECT number FROM jobs WHERE status = '%s' ORDER BY id DESC LIMIT 1", status);
}

static guint
rows_of (JsonNode *node, const char *key)
{
  return json_array_get_length (json_object_get_array_member (json_node_get_object (node), key));
}

START_TEST (the_day_is_what_the_book_says)
{
  g_auto (Told) told = asked_of ("day --json");
  g_auto (Told) plain = asked_of ("day");
  g_autoptr (JsonNode) day = json_told (&told);

  ck_done (plain);
  ck_assert_str_eq (json_text (day, "date"), "2025-11-24");
  ck_assert_int_eq (rows_of (day, "blocks"),
                    raw_int ("SELECT count (*) FROM bookings b, (SELECT " NUMBER " AS at)"
                             " WHERE b.state <> 'dropped' AND b.starts_at < at + 14 * 3600"
                             " AND b.ends_at > at - 10 * 3600",
                             walk_now));
  ck_assert_uint_gt (rows_of (day, "needs_a_hand"), 5);
  ck_contains (plain.out, "Needs a hand");
  ck_contains (plain.out, "Bay 1       ..");
}
END_TEST

START_TEST (another_day_can_be_asked_for)
{
  g_auto (Told) told = asked_of ("day --date tomorrow --json");
  g_autoptr (JsonNode) day = json_told (&told);

  ck_assert_str_eq (json_text (day, "date"), "2025-11-25");
}
END_TEST

START_TEST (a_plate_is_found_and_a_job_shown)
{
  gint64 job = job_in ("paid");
  g_autofree char *plate = raw ("SELECT v.plate FROM vehicles v JOIN jobs j"
                                " ON j.vehicle_id = v.id WHERE v.plate IS NOT NULL LIMIT 1");
  g_auto (Told) found = asked_of ("find '%s' --json", plate);
  g_auto (Told) shown = asked_of ("job " NUMBER " --json", job);
  g_auto (Told) plain = asked_of ("job '#" NUMBER "'", job);
  g_autoptr (JsonNode) results = json_told (&found);
  g_autoptr (JsonNode) node = json_told (&shown);

  ck_contains (found.out, plate);
  ck_assert_uint_gt (rows_of (results, "found"), 0);
  ck_done (plain);
  ck_assert_int_eq (json_int (node, "job"), job);
  ck_assert_str_eq (json_text (node, "status"), "paid");
  ck_assert_int_eq (rows_of (node, "lines"),
                    raw_int ("SELECT count (*) FROM job_lines l JOIN jobs j ON j.id = l.job_id"
                             " WHERE j.number = " NUMBER,
                             job));
  ck_assert_int_eq (rows_of (node, "history"),
                    raw_int ("SELECT count (*) FROM job_status s JOIN jobs j ON j.id = s.job_id"
                             " WHERE j.number = " NUMBER,
                             job));
  ck_assert_uint_gt (rows_of (node, "readings"), 0);
  ck_assert_uint_gt (rows_of (node, "adapters"), 0);
}
END_TEST

/* What is on hand is the sum of the moves. */
START_TEST (stock_is_the_sum_of_its_moves)
{
  g_auto (Told) told = asked_of ("stock --json");
  g_autoptr (JsonNode) node = json_told (&told);
  JsonArray *rows = json_object_get_array_member (json_node_get_object (node), "stock");

  ck_assert_uint_eq (json_array_get_length (rows), 6);
  for (guint i = 0; i < json_array_get_length (rows); i++)
    {
      JsonObject *row = json_array_get_object_element (rows, i);

      ck_assert_int_eq (json_object_get_int_member (row, "on_hand_ml"),
                        raw_int ("SELECT SUM (m.ml) FROM stock_moves m JOIN lots l"
                                 " ON l.id = m.lot_id JOIN fluids f ON f.id = l.fluid_id"
                                 " WHERE f.code = '%s'",
                                 json_object_get_string_member (row, "code")));
    }
}
END_TEST

/* A quart is 0.946352946 L (NIST SP 811), rounded once, at entry. */
START_TEST (a_delivery_comes_in)
{
  g_auto (Told) told = asked_of ("deliver R 90001 '5 qt' --as TE --expires 2027-01-01 "
                                 "--cost 20.40");

  ck_done (told);
  ck_raw ("delivery 4732 2027-01-01 2040 TE",
          "SELECT m.kind || ' ' || m.ml || ' ' || l.expires_on || ' ' || l.cost_minor_per_litre"
          " || ' ' || s.initials FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
          " JOIN staff s ON s.id = m.staff_id WHERE l.code = '90001'");
}
END_TEST

/* 2 × 5 L ordered, 5 L of them come, the rest does not. */
START_TEST (an_order_is_placed_and_comes_in_part)
{
  g_auto (Told) placed = asked_of ("order place R 2 '5 L' --as TE --price 85.00 --expected"
                                   " 2025-12-01 --note 'by telephone'");
  g_auto (Told) by_technician = asked_of ("order place R 1 '5 L' --as NR");
  ck_done (placed);
  ck_assert_int_eq (by_technician.status, 1);
  ck_raw ("1 2 5000 8500 2025-12-01 by telephone TE",
          "SELECT o.number || ' ' || o.packs || ' ' || o.pack_ml || ' ' || o.pack_cost_minor || ' '"
          " || o.expected_on || ' ' || o.note || ' ' || s.initials FROM supply_orders o"
          " JOIN staff s ON s.id = o.staff_id");

  g_auto (Told) wrong = asked_of ("deliver A 90002 5 --as TE --order 1");
  ck_refused (wrong, 1, "Order 1 is of");
  g_auto (Told) came = asked_of ("deliver R 90002 '5 L' --as TE --order 1");
  ck_done (came);
  /* 85.00 for 5 L is 17.00 a litre. */
  ck_raw ("received 5000 1700",
          "SELECT e.kind || ' ' || m.ml || ' ' || l.cost_minor_per_litre FROM supply_order_events e"
          " JOIN stock_moves m ON m.id = e.move_id JOIN lots l ON l.id = m.lot_id");
  g_auto (Told) open = asked_of ("order show --json");
  g_autoptr (JsonNode) told = json_told (&open);
  JsonObject *row = json_array_get_object_element (
      json_object_get_array_member (json_node_get_object (told), "orders"), 0);
  ck_assert_int_eq (json_object_get_int_member (row, "open_ml"), 5000);

  g_auto (Told) later = asked_of ("order expect 1 2025-12-05 --as TE --reason 'van broke down'");
  g_auto (Told) silent = asked_of ("order cancel 1 --as TE");
  g_auto (Told) off = asked_of ("order cancel 1 --as TE --reason 'out of stock there'");
  g_auto (Told) none = asked_of ("deliver R 90003 5 --as TE --order 1");
  ck_done (later);
  ck_refused (silent, 2, "--reason");
  ck_done (off);
  ck_refused (none, 1, "cancelled");
  g_auto (Told) again = asked_of ("order reopen 1 --as TE");
  ck_done (again);
  ck_raw ("received,expected,cancelled,reopened",
          "SELECT group_concat (kind) FROM (SELECT kind FROM supply_order_events ORDER BY id)");
  g_auto (Told) no = asked_of ("order cancel 77 --as TE --reason x");
  ck_refused (no, 1, "no order 77");
}
END_TEST

START_TEST (an_adapter_goes_and_comes_back)
{
  g_auto (Told) lent = asked_of ("lend F-09/2 --as TE --to 'Osier Garage' --due 2025-12-01");
  g_auto (Told) twice = asked_of ("lend F-09/2 --as TE --to 'Ninebark Nursery'");
  ck_done (lent);
  ck_refused (twice, 1, "Osier Garage");
  ck_raw ("shop Osier Garage 2025-12-01",
          "SELECT l.to_kind || ' ' || l.to_name || ' ' || l.due_on FROM loans l"
          " JOIN adapter_items i ON i.id = l.item_id WHERE i.label = 'F-09/2'"
          " AND l.back_at IS NULL");

  g_auto (Told) back = asked_of ("back F-09/2 --as TE --condition 'seal worn' --bin Q9");
  ck_done (back);
  ck_raw ("1 seal worn Q9",
          "SELECT (l.back_at = " NUMBER ") || ' ' || l.back_condition || ' ' || i.bin FROM loans l"
          " JOIN adapter_items i ON i.id = l.item_id WHERE i.label = 'F-09/2'"
          " ORDER BY l.id DESC LIMIT 1",
          walk_now);
}
END_TEST

START_TEST (a_quote_is_declined_and_an_invoice_taken_back)
{
  gint64 quoted = job_in ("quoted");
  gint64 invoice
      = raw_int ("SELECT number FROM invoices WHERE kind = 'invoice' ORDER BY id LIMIT 1");
  g_auto (Told) declined = asked_of ("decline " NUMBER " --as MQ --reason 'Too dear'", quoted);
  g_auto (Told) credit
      = asked_of ("credit " NUMBER " --as OB --reason 'Billed twice' --json", invoice);
  g_autoptr (JsonNode) note = json_told (&credit);

  ck_done (declined);
  ck_raw ("declined", "SELECT status FROM jobs WHERE number = " NUMBER, quoted);
  ck_raw ("1 credit Billed twice",
          "SELECT (c.total_minor = -i.total_minor) || ' ' || c.kind || ' ' || c.note"
          " FROM invoices c JOIN invoices i ON i.id = c.credits_id WHERE i.number = " NUMBER
          " AND c.number = " NUMBER,
          invoice, json_int (note, "number"));
}
END_TEST

START_TEST (a_line_is_taken_back_once)
{
  gint64 invoice
      = raw_int ("SELECT number FROM invoices WHERE kind = 'invoice' ORDER BY id DESC LIMIT 1");
  g_auto (Told) once
      = asked_of ("credit " NUMBER " --as OB --line 2 --reason 'Spilt' --json", invoice);
  g_auto (Told) twice = asked_of ("credit " NUMBER " --as OB --line 2 --reason 'Spilt'", invoice);
  g_autoptr (JsonNode) note = json_told (&once);

  ck_raw ("1",
          "SELECT c.net_minor = -l.net_minor FROM invoices c JOIN invoice_lines l"
          " ON l.invoice_id = c.credits_id AND l.position = 2 WHERE c.number = " NUMBER,
          json_int (note, "number"));
  ck_refused (twice, 1, "credited before");
}
END_TEST

START_TEST (a_job_in_pieces_has_its_tag)
{
  gint64 job = job_in ("in-bay");
  g_auto (Told) running = asked_of ("release " NUMBER " --as IF --signature IF --reason x", job);
  ck_refused (running, 1, "go off first");
  g_auto (Told) halted = asked_of ("run halt " NUMBER " --as IF", job);
  ck_done (halted);
  g_auto (Told) released = asked_of ("release " NUMBER " --as IF --signature 'Ines Farrow' "
                                     "--reason 'A gasket is missing'",
                                     job);
  g_auto (Told) tag
      = asked_of ("paper incomplete-tag " NUMBER " -o '%s/tag.pdf'", job, walk_folder);
  g_autofree char *path = g_build_filename (walk_folder, "tag.pdf", NULL);

  ck_done (released);
  ck_done (tag);
  ck_raw ("stopped", "SELECT status FROM jobs WHERE number = " NUMBER, job);
  g_autofree char *text = text_of_pdf (path);
  ck_contains (text, "A gasket is missing");
}
END_TEST

/* A copy opens and holds the same; without a name it lies beside the book. */
START_TEST (a_copy_is_whole)
{
  g_auto (Told) told = asked_of ("backup --as OB --json");
  g_autoptr (JsonNode) node = json_told (&told);
  const char *copy = json_text (node, "copy");

  ck_assert (g_file_test (copy, G_FILE_TEST_IS_REGULAR));
  g_auto (Told) same = told_by ("job " NUMBER " --file '%s'", job_in ("paid"), copy);
  ck_done (same);
}
END_TEST

/* What ./setup run shows where there is no display. */
START_TEST (a_demo_job_is_carried_through)
{
  g_autofree char *folder = g_build_filename (walk_folder, "carried", NULL);
  g_auto (Told) told = told_by ("demo --at 2025-11-24 --carry '%s' --json", folder);
  g_autoptr (JsonNode) node = json_told (&told);
  JsonArray *papers = json_object_get_array_member (json_node_get_object (node), "papers");

  walk_book = g_build_filename (folder, "demo.unsoot", NULL);
  ck_assert_str_eq (json_text (node, "file"), walk_book);
  ck_assert_uint_eq (json_array_get_length (papers), 4);
  for (guint i = 0; i < 4; i++)
    {
      g_autofree char *text = text_of_pdf (json_array_get_string_element (papers, i));
      ck_contains (text, "Alder Ferry");
    }
  gint64 job = raw_int ("SELECT id FROM jobs ORDER BY id DESC LIMIT 1");
  ck_raw ("paid", "SELECT status FROM jobs WHERE id = " NUMBER, job);
  gint64 steps = raw_int ("SELECT count (*) FROM procedure_steps s JOIN runs r"
                          " ON r.procedure_id = s.procedure_id WHERE r.job_id = " NUMBER,
                          job);
  ck_assert_int_eq (rows_of (node, "deeds"), steps + 16);
  g_auto (Told) again = told_by ("demo --at 2025-11-24 --carry '%s'", folder);
  ck_done (again);
  ck_contains (again.out, "Paid by card");
}
END_TEST

static Suite *
look_suite (void)
{
  Suite *suite = suite_create ("command-look");
  TCase *tcase = tcase_create ("command-look");

  tcase_add_unchecked_fixture (tcase, make_walk, forget_walk);
  tcase_add_checked_fixture (tcase, open_walk, close_walk);
  tcase_add_test (tcase, the_day_is_what_the_book_says);
  tcase_add_test (tcase, another_day_can_be_asked_for);
  tcase_add_test (tcase, a_plate_is_found_and_a_job_shown);
  tcase_add_test (tcase, stock_is_the_sum_of_its_moves);
  tcase_add_test (tcase, a_delivery_comes_in);
  tcase_add_test (tcase, an_order_is_placed_and_comes_in_part);
  tcase_add_test (tcase, an_adapter_goes_and_comes_back);
  tcase_add_test (tcase, a_quote_is_declined_and_an_invoice_taken_back);
  tcase_add_test (tcase, a_line_is_taken_back_once);
  tcase_add_test (tcase, a_job_in_pieces_has_its_tag);
  tcase_add_test (tcase, a_copy_is_whole);
  tcase_add_test (tcase, a_demo_job_is_carried_through);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (look_suite)
