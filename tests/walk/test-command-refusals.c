/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "program.h"

/* What is refused says so by its exit status and a sentence, and leaves the book as it was. */

/* A job of the demo in this status, a vehicle's work for both sides where there is one. */
static gint64
job_in (const char *status)
{
  return raw_int ("SELECT number FROM jobs WHERE status = '%s' ORDER BY id DESC LIMIT 1", status);
}

/* Rows of every table that a deed posts to. */
static char *
book_digest (void)
{
  return raw ("SELECT (SELECT count (*) FROM jobs) || ' ' || (SELECT count (*) FROM job_status)"
              " || ' ' || (SELECT count (*) FROM run_events) || ' ' || (SELECT count (*) FROM"
              " stock_moves) || ' ' || (SELECT count (*) FROM invoices) || ' ' || (SELECT count"
              " (*) FROM payments) || ' ' || (SELECT count (*) FROM changes) || ' ' || (SELECT"
              " count (*) FROM bookings) || ' ' || (SELECT count (*) FROM loans) || ' ' || (SELECT"
              " count (*) FROM tank_events) || ' ' || (SELECT count (*) FROM authorisations)"
              " || ' ' || (SELECT count (*) FROM readings)");
}

#define refuse(wanted, words, ...)                                                                 \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autofree char *digest_before = book_digest ();                                               \
    g_auto (Told) refusal = asked_of (__VA_ARGS__);                                                \
    g_autofree char *digest_after = book_digest ();                                                \
    ck_refused (refusal, wanted, words);                                                           \
    ck_assert_str_eq (digest_after, digest_before);                                                \
  }                                                                                                \
  G_STMT_END

/* The role decides, whoever types (src/trade/role.c). */
START_TEST (roles_are_obeyed)
{
  gint64 quoted = job_in ("quoted"), booked = job_in ("booked"), done = job_in ("done");

  refuse (1, "parts clerk", "authorise " NUMBER " --as TE --by Someone --how phone", quoted);
  refuse (1, "parts clerk", "run begin " NUMBER " --as TE", booked);
  refuse (1, "echnician", "invoice " NUMBER " --as IF", done);
  refuse (1, "advisor", "release " NUMBER " --as MQ --signature MQ --reason x", job_in ("in-bay"));
  refuse (1, "parts clerk", "finish " NUMBER " --as TE --signature TE", job_in ("in-bay"));
}
END_TEST

START_TEST (someone_has_to_act)
{
  refuse (2, "--as", "invoice " NUMBER, job_in ("done"));
  refuse (1, "“XX”", "invoice " NUMBER " --as XX", job_in ("done"));
}
END_TEST

/* The order of a job's path (src/trade/path.h). */
START_TEST (nothing_is_skipped)
{
  refuse (1, "Nobody has authorised", "run begin " NUMBER " --as IF", job_in ("quoted"));
  refuse (1, "can't go to", "arrive " NUMBER " --as MQ", job_in ("quoted"));
  refuse (1, "can't go to", "invoice " NUMBER " --as MQ", job_in ("booked"));
  refuse (1, "no run that goes on", "finish " NUMBER " --as IF --signature 'Ines Farrow'",
          job_in ("arrived"));
  refuse (1, "can't go to", "arrive " NUMBER " --as MQ", job_in ("paid"));
  refuse (1, "paid already", "invoice " NUMBER " --as MQ", job_in ("paid"));
  refuse (1, "in pieces", "run begin " NUMBER " --as IF", job_in ("stopped"));
  refuse (1, "can't go to", "book " NUMBER " --as MQ --start 'tomorrow 9:00'", job_in ("done"));
  refuse (1, "can't go to", "decline " NUMBER " --as MQ --reason x", job_in ("in-bay"));
}
END_TEST

/* DESIGN: it can't be finished while something is off, and everything that forbids it is named. */
START_TEST (a_job_in_pieces_is_not_finished)
{
  gint64 job = job_in ("in-bay");
  g_autofree char *before = book_digest ();
  g_auto (Told) told = asked_of ("finish " NUMBER " --as IF --signature 'Ines Farrow'", job);
  g_autofree char *after = book_digest ();

  ck_refused (told, 1, "not done");
  ck_assert_str_eq (after, before);
}
END_TEST

START_TEST (a_step_is_done_in_its_turn)
{
  gint64 job = job_in ("in-bay");
  g_auto (Told) shown = asked_of ("run show " NUMBER " --json", job);
  g_autoptr (JsonNode) offer = json_told (&shown);
  gint64 step = json_int (offer, "step");

  refuse (1, "that comes now", "run step " NUMBER " " NUMBER " --as IF", job, step + 1);
  refuse (1, "that comes now", "run step " NUMBER " 1 --as IF", job);
  refuse (2, "STEP", "run step " NUMBER " next --as IF", job);
  refuse (2, "at a time", "run step " NUMBER " " NUMBER " --as IF --start --again", job, step);
  refuse (2, "--ago", "run step " NUMBER " " NUMBER " --as IF --ago -5", job, step);
  refuse (1, "can't be done to", "run extra " NUMBER " 'open line high-pressure' --as IF", job);
  refuse (1, "is no act", "run extra " NUMBER " 'dance' --as IF", job);
}
END_TEST

/* The atomiser into a stopped engine: rule 2, in the trade's own words. */
START_TEST (a_rule_is_named_with_its_reason)
{
  gint64 job = job_in ("in-bay");
  g_auto (Told) halted = asked_of ("run halt " NUMBER " --as IF", job);
  ck_done (halted);
  g_auto (Told) resumed = asked_of ("run resume " NUMBER " --as IF", job);
  ck_done (resumed);

  refuse (1, "Rule 2", "run extra " NUMBER " 'start atomiser' --as IF", job);
}
END_TEST

START_TEST (a_halt_asks_for_its_kind)
{
  gint64 job = job_in ("in-bay");

  refuse (2, "stall", "run halt " NUMBER " boredom --as IF", job);
  refuse (2, "KIND", "run happened " NUMBER " --as IF", job);
  refuse (1, "what happened", "run happened " NUMBER " stop --as IF", job);
}
END_TEST

/* STOP from the command: posted at once, the tag's words after it. */
START_TEST (a_stall_is_recorded_and_the_way_back_shown)
{
  gint64 job = job_in ("in-bay");
  g_auto (Told) told = asked_of ("run happened " NUMBER " stall --as IF", job);
  g_auto (Told) shown = asked_of ("run show " NUMBER " --json", job);
  g_autoptr (JsonNode) run = json_told (&shown);

  ck_done (told);
  ck_contains (told.out, "Do not crank");
  ck_assert_str_eq (json_text (run, "run"), "halted");
  ck_contains (json_text (run, "next_safe_step"), "Next:");
  ck_raw ("happened stall",
          "SELECT e.kind || ' ' || e.happening FROM run_events e JOIN runs r ON r.id = e.run_id"
          " JOIN jobs j ON j.id = r.job_id WHERE j.number = " NUMBER " ORDER BY e.id DESC LIMIT 1",
          job);
  refuse (1, "can't be done now", "run step " NUMBER " " NUMBER " --as IF", job,
          json_int (run, "step"));
}
END_TEST

START_TEST (what_is_named_has_to_be_there)
{
  g_autofree char *plate = raw ("SELECT plate FROM vehicles WHERE plate IS NOT NULL LIMIT 1");
  gint64 quoted = job_in ("quoted");

  refuse (1, "99999", "job 99999");
  refuse (2, "JOB", "job twelve");
  refuse (1, "zzqqy", "estimate --as MQ --vehicle zzqqy --service 'Both sides'");
  refuse (1, "Both sides", "estimate --as MQ --vehicle '%s' --service Polish", plate);
  refuse (1, "Type more", "estimate --as MQ --vehicle Brindle --service 'Both sides'");
  refuse (2, "--vehicle", "estimate --as MQ --service 'Both sides'");
  refuse (1, "in-person, phone", "authorise " NUMBER " --as MQ --by Someone --how smoke", quoted);
  refuse (2, "--start", "book " NUMBER " --as MQ", quoted);
  refuse (1, "half past", "book " NUMBER " --as MQ --start 'half past'", quoted);
  refuse (1, "V-99/9", "lend V-99/9 --as TE --to Someone");
  refuse (1, "not lent", "back F-01/1 --as TE");
  refuse (1, "no invoice 99999", "pay 99999 --as MQ --method cash");
  refuse (2, "estimate", "paper bill " NUMBER, quoted);
  refuse (1, "not been invoiced", "paper invoice " NUMBER " -o '%s/none.pdf'", quoted, walk_folder);
}
END_TEST

START_TEST (money_is_not_guessed)
{
  gint64 invoice = raw_int ("SELECT i.number FROM invoices i WHERE i.kind = 'invoice' AND NOT"
                            " EXISTS (SELECT 1 FROM payments p WHERE p.invoice_id = i.id)"
                            " ORDER BY i.id LIMIT 1");

  refuse (1, "ten", "pay " NUMBER " --as MQ --method cash --amount ten", invoice);
  refuse (1, "can't be taken", "pay " NUMBER " --as MQ --method cash --amount 99999.00", invoice);
  refuse (1, "no way to pay", "pay " NUMBER " --as MQ --method shells", invoice);
  refuse (2, "--method", "pay " NUMBER " --as MQ", invoice);
  refuse (2, "--reason", "credit " NUMBER " --as OB", invoice);
}
END_TEST

/* No file that was not asked for is made, and none that is there is written over. */
START_TEST (a_book_has_to_be_there)
{
  g_auto (Told) none = told_by ("day --file '%s/none.unsoot'", walk_folder);
  g_auto (Told) usual = told_by ("day");
  g_autofree char *other = g_build_filename (walk_folder, "letter.txt", NULL);

  ck_refused (none, 1, "none.unsoot");
  /* XDG_DATA_HOME is the walk's folder. */
  ck_refused (usual, 1, "unsoot/shop.unsoot");
  ck_assert (g_file_set_contents (other, "Dear customer,\n", -1, NULL));
  g_auto (Told) letter = told_by ("day --file '%s'", other);
  ck_refused (letter, 1, "letter.txt");
  g_auto (Told) demo = told_by ("demo --file '%s'", other);
  ck_refused (demo, 1, "letter.txt” is there already");
  g_auto (Told) over = told_by ("demo --file '%s'", walk_book);
  ck_refused (over, 1, "shop.unsoot” is there already");
  g_autofree char *text = NULL;
  ck_assert (g_file_get_contents (other, &text, NULL, NULL));
  ck_assert_str_eq (text, "Dear customer,\n");
  g_auto (Told) nowhere = told_by ("demo");
  ck_refused (nowhere, 2, "--file");
  g_auto (Told) both = told_by ("demo --carry '%s/x' --file y", walk_folder);
  ck_refused (both, 2, "--carry");
}
END_TEST

/* SQLite alone lets a row in that refers to nobody. */
START_TEST (a_reference_to_nothing_is_found)
{
  g_autofree char *nothing = raw (
      "INSERT INTO customer_phones (version, customer_id, number) VALUES (1, 999999, '555')");
  g_auto (Told) told = asked_of ("verify --json");
  g_autoptr (JsonNode) node = json_from_string (told.out, NULL);

  ck_assert_ptr_null (nothing);
  ck_assert_int_eq (told.status, 1);
  ck_contains (told.err, "1 thing in the book is wrong");
  ck_assert_ptr_nonnull (node);
  ck_assert (!json_object_get_boolean_member (json_node_get_object (node), "sound"));
  JsonArray *findings = json_object_get_array_member (json_node_get_object (node), "findings");
  ck_contains (json_array_get_string_element (findings, 0), "customer_phones");
}
END_TEST

/* A damaged page is found, and is not told as sound. */
START_TEST (damage_is_found)
{
  g_autofree char *copy = g_build_filename (walk_folder, "damaged.unsoot", NULL);
  g_autofree char *bytes = NULL;
  gsize length = 0;
  g_auto (Told) made = asked_of ("backup '%s' --as OB", copy);

  ck_done (made);
  g_auto (Told) sound = told_by ("verify --file '%s'", copy);
  ck_done (sound);
  ck_assert (g_file_get_contents (copy, &bytes, &length, NULL));
  for (gsize i = length / 2; i < length / 2 + 40000; i++)
    bytes[i] ^= 0x55;
  ck_assert (g_file_set_contents (copy, bytes, (gssize) length, NULL));
  g_auto (Told) told = told_by ("verify --file '%s'", copy);
  ck_assert_int_eq (told.status, 1);
  ck_assert_str_ne (told.err, "");
  g_auto (Told) again = asked_of ("backup '%s' --as OB", copy);
  ck_assert_int_eq (again.status, 1);
}
END_TEST

static Suite *
refusals_suite (void)
{
  Suite *suite = suite_create ("command-refusals");
  TCase *tcase = tcase_create ("command-refusals");

  tcase_add_unchecked_fixture (tcase, make_walk, forget_walk);
  tcase_add_checked_fixture (tcase, open_walk, close_walk);
  tcase_add_test (tcase, roles_are_obeyed);
  tcase_add_test (tcase, someone_has_to_act);
  tcase_add_test (tcase, nothing_is_skipped);
  tcase_add_test (tcase, a_job_in_pieces_is_not_finished);
  tcase_add_test (tcase, a_step_is_done_in_its_turn);
  tcase_add_test (tcase, a_rule_is_named_with_its_reason);
  tcase_add_test (tcase, a_halt_asks_for_its_kind);
  tcase_add_test (tcase, a_stall_is_recorded_and_the_way_back_shown);
  tcase_add_test (tcase, what_is_named_has_to_be_there);
  tcase_add_test (tcase, money_is_not_guessed);
  tcase_add_test (tcase, a_book_has_to_be_there);
  tcase_add_test (tcase, a_reference_to_nothing_is_found);
  tcase_add_test (tcase, damage_is_found);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (refusals_suite)
