/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Records of any kind: saved and read alike, versions, the log of changes, postings. */
#include "book.h"

#include <math.h>
#include <string.h>

#include "all-rows.h"
#include "rows.h"

static const UnsootActing acting = { .staff_id = 7, .now = 1700000000 };

static TestThing *
thing_full (void)
{
  TestThing *thing = test_thing_new ();
  thing->name = g_strdup ("ströme");
  thing->amount = 12;
  thing->level = 0.1;
  thing->active = TRUE;
  thing->secret = g_strdup ("$argon2id$x");
  thing->picture = g_bytes_new_static ("\1\0\2", 3);
  return thing;
}

static void
save_new (UnsootDb *db, TestThing *thing)
{
  GError *error = NULL;
  unsoot_rows_insert (db, &test_thing_type, thing, &acting, &error);
  ck_no_error (error);
}

/* The whole log, a line an entry: at staff record row field was→now. */
static char *
log_of (UnsootDb *db)
{
  g_autoptr (GString) lines = g_string_new (NULL);
  g_autoptr (GPtrArray) rows = unsoot_rows_list (db, &unsoot_change_row_type, NULL, "ORDER BY id");
  for (guint i = 0; i < rows->len; i++)
    {
      UnsootChangeRow *change = g_ptr_array_index (rows, i);
      g_string_append_printf (lines, "%d %d %s %d %s %s→%s\n", (int) change->at,
                              (int) change->staff_id, change->record, (int) change->row_id,
                              change->field, change->was ? change->was : "",
                              change->now ? change->now : "");
    }
  return g_string_free (g_steal_pointer (&lines), FALSE);
}

START_TEST (test_what_is_saved_comes_back)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  g_autoptr (TestThing) thing = thing_full ();
  g_autoptr (TestThing) bare = test_thing_new ();
  bare->name = g_strdup ("");
  save_new (db, thing);
  bare->owner_id = thing->id;
  save_new (db, bare);

  g_autoptr (TestThing) read = unsoot_rows_get (db, &test_thing_type, thing->id, NULL);
  ck_assert_int_eq (read->id, 1);
  ck_assert_int_eq (read->version, 1);
  ck_assert_str_eq (read->name, "ströme");
  ck_assert_int_eq (read->owner_id, 0);
  ck_assert_int_eq (read->amount, 12);
  ck_assert (read->level == 0.1);
  ck_assert_int_eq (read->active, TRUE);
  ck_assert (g_bytes_equal (read->picture, thing->picture));

  g_autoptr (TestThing) other = unsoot_rows_get (db, &test_thing_type, bare->id, NULL);
  ck_assert_str_eq (other->name, "");
  ck_assert_int_eq (other->owner_id, thing->id);
  ck_assert (isnan (other->level));
  ck_assert_ptr_null (other->secret);
  ck_assert_ptr_null (other->picture);
}
END_TEST

START_TEST (test_lists)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  GError *error = NULL;
  for (int i = 0; i < 5; i++)
    {
      g_autoptr (TestThing) thing = test_thing_new ();
      thing->name = g_strdup_printf ("thing %d", i);
      thing->amount = i;
      save_new (db, thing);
    }
  g_autoptr (GPtrArray) some = unsoot_rows_list (
      db, &test_thing_type, &error, "WHERE amount >= $1 AND amount < $2 ORDER BY amount DESC",
      unsoot_int (1), unsoot_int (4));
  ck_no_error (error);
  ck_assert_int_eq (some->len, 3);
  ck_assert_str_eq (((TestThing *) g_ptr_array_index (some, 0))->name, "thing 3");

  ck_assert_ptr_null (unsoot_rows_get (db, &test_thing_type, 99, &error));
  ck_store_error (error, UNSOOT_STORE_ERROR_NOT_FOUND, "no such thing");
}
END_TEST

START_TEST (test_log_says_who_what_and_when)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  g_autoptr (TestThing) thing = thing_full ();
  const UnsootActing later = { .staff_id = 8, .now = 1700000060 };
  GError *error = NULL;
  save_new (db, thing);

  g_free (thing->name);
  thing->name = g_strdup ("strom");
  thing->level = NAN;
  thing->active = FALSE;
  thing->owner_id = 1;
  g_free (thing->secret);
  thing->secret = g_strdup ("$argon2id$y");
  g_bytes_unref (thing->picture);
  thing->picture = g_bytes_new_static ("abc", 3);
  ck_assert (unsoot_rows_update (db, &test_thing_type, thing, &later, &error));
  ck_no_error (error);
  ck_assert_int_eq (thing->version, 2);
  ck_assert (unsoot_rows_update (db, &test_thing_type, thing, &later, &error));
  ck_assert_int_eq (thing->version, 2);

  /* SHA-256 of "abc": FIPS 180-4's example (B.1); that of 01 00 02: sha256sum(1). */
  g_autofree char *log = log_of (db);
  ck_assert_str_eq (
      log, "1700000000 7 things 1 version →1\n"
           "1700000060 8 things 1 name ströme→strom\n"
           "1700000060 8 things 1 owner_id →1\n"
           "1700000060 8 things 1 level 0.1→\n"
           "1700000060 8 things 1 active 1→0\n"
           "1700000060 8 things 1 secret ***→***\n"
           "1700000060 8 things 1 picture "
           "3 bytes, sha256 16305a6b2292e931665a34089864ee3fcc24171c81551f152cf4d1db0dd6122d→"
           "3 bytes, sha256 ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad\n");
}
END_TEST

START_TEST (test_second_save_is_a_conflict)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  g_autoptr (TestThing) mine = thing_full ();
  GError *error = NULL;
  save_new (db, mine);
  g_autoptr (TestThing) theirs = unsoot_rows_get (db, &test_thing_type, mine->id, NULL);

  theirs->amount = 99;
  ck_assert (unsoot_rows_update (db, &test_thing_type, theirs, &acting, &error));
  mine->amount = 5;
  ck_assert (!unsoot_rows_update (db, &test_thing_type, mine, &acting, &error));
  ck_store_error (error, UNSOOT_STORE_ERROR_CONFLICT, "Someone else changed this thing");
  ck_assert (!unsoot_rows_delete (db, &test_thing_type, mine, &acting, &error));
  ck_store_error (error, UNSOOT_STORE_ERROR_CONFLICT, "Someone else changed this thing");

  /* Neither is lost. */
  ck_assert_int_eq (mine->amount, 5);
  ck_assert_int_eq (mine->version, 1);
  g_autoptr (TestThing) stored = unsoot_rows_get (db, &test_thing_type, mine->id, NULL);
  ck_assert_int_eq (stored->amount, 99);
  ck_assert_int_eq (stored->version, 2);
}
END_TEST

START_TEST (test_delete_keeps_every_value_in_the_log)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  g_autoptr (TestThing) thing = test_thing_new ();
  GError *error = NULL;
  thing->name = g_strdup ("a");
  thing->amount = 3;
  save_new (db, thing);
  ck_assert (unsoot_rows_delete (db, &test_thing_type, thing, &acting, &error));
  ck_assert_ptr_null (unsoot_rows_get (db, &test_thing_type, thing->id, &error));
  ck_store_error (error, UNSOOT_STORE_ERROR_NOT_FOUND, "no such thing");
  g_autofree char *log = log_of (db);
  ck_assert_str_eq (log, "1700000000 7 things 1 version →1\n"
                         "1700000000 7 things 1 name a→\n"
                         "1700000000 7 things 1 amount 3→0\n"
                         "1700000000 7 things 1 version 1→\n");
}
END_TEST

START_TEST (test_failed_save_leaves_no_log)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  g_autoptr (TestThing) first = thing_full ();
  g_autoptr (TestThing) second = thing_full ();
  GError *error = NULL;
  save_new (db, first);
  ck_assert (!unsoot_rows_insert (db, &test_thing_type, second, &acting, &error));
  ck_store_error (error, UNSOOT_STORE_ERROR_CONSTRAINT, "things.name");
  ck_assert_int_eq (second->id, 0);
  first->amount = -1;
  ck_assert (!unsoot_rows_update (db, &test_thing_type, first, &acting, &error));
  ck_store_error (error, UNSOOT_STORE_ERROR_CONSTRAINT, "amount");
  ck_assert_int_eq (first->version, 1);
  g_autofree char *log = log_of (db);
  ck_assert_str_eq (log, "1700000000 7 things 1 version →1\n");
}
END_TEST

static void
post_one (UnsootDb *db)
{
  g_autoptr (TestThing) thing = thing_full ();
  g_autoptr (TestMove) move = test_move_new ();
  GError *error = NULL;
  save_new (db, thing);
  move->thing_id = thing->id;
  move->ml = 500;
  ck_assert (unsoot_rows_post (db, &test_move_type, move, &error));
  ck_assert_int_eq (move->id, 1);
}

static void
refuse_sql (UnsootDb *db, const char *sql, const char *words)
{
  GError *error = NULL;
  ck_assert (!unsoot_db_run (db, &error, sql));
  ck_store_error (error, UNSOOT_STORE_ERROR_NOT_ALLOWED, words);
}

/* The triggers are dropped behind its back: this program still refuses. */
START_TEST (test_authorizer_alone_keeps_postings)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  g_autoptr (UnsootDb) db = test_book (path);
  post_one (db);
  ck_raw (path, "DROP TRIGGER moves_no_update", NULL);
  ck_raw (path, "DROP TRIGGER moves_no_delete", NULL);
  refuse_sql (db, "UPDATE moves SET ml = 1", "not authorized");
  refuse_sql (db, "DELETE FROM moves", "not authorized");
  refuse_sql (db,
              "INSERT INTO moves (id, thing_id, ml) VALUES (1, 1, 2) "
              "ON CONFLICT (id) DO UPDATE SET ml = 2",
              "not authorized");
  ck_raw (path, "SELECT ml FROM moves", "500");
}
END_TEST

/* Another program, without the authorizer: the file itself refuses. */
START_TEST (test_triggers_alone_keep_postings)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  UnsootDb *db = test_book (path);
  post_one (db);
  /* REPLACE deletes without asking the authorizer; the trigger sees it. */
  refuse_sql (db, "INSERT OR REPLACE INTO moves (id, thing_id, ml) VALUES (1, 1, 2)",
              "append-only: moves");
  unsoot_db_close (db);
  ck_raw (path, "UPDATE moves SET ml = 1", "error: postings are append-only: moves");
  ck_raw (path, "DELETE FROM moves", "error: postings are append-only: moves");
  ck_raw (path, "SELECT ml FROM moves", "500");
}
END_TEST

START_TEST (test_log_itself_is_append_only)
{
  GError *error = NULL;
  g_autoptr (UnsootDb) db = unsoot_db_open (NULL, UNSOOT_DB_CREATE, &error);
  ck_assert (unsoot_migrate (db, 0, &error));
  refuse_sql (db, "DELETE FROM changes", "not authorized");
  refuse_sql (db, "UPDATE changes SET now = 'x'", "not authorized");
}
END_TEST

/* Every kind of the real book can be read, empty as it is, by its own statement. */
START_TEST (test_every_kind_reads)
{
  GError *error = NULL;
  g_autoptr (UnsootDb) db = unsoot_db_open (NULL, UNSOOT_DB_CREATE, &error);
  ck_assert (unsoot_migrate (db, 0, &error));
  for (int i = 0; unsoot_all_records[i] != NULL; i++)
    {
      g_autoptr (GPtrArray) rows
          = unsoot_rows_list (db, unsoot_all_records[i], &error, "ORDER BY id");
      ck_no_error (error);
      ck_assert_int_eq (rows->len, 0);
    }

  g_autoptr (UnsootStaffRow) staff = unsoot_staff_row_new ();
  const UnsootActing program = { .now = 5 };
  staff->name = g_strdup ("Ann Ample");
  staff->initials = g_strdup ("AA");
  staff->role = g_strdup ("owner");
  staff->pin_hash = g_strdup ("$argon2id$secret");
  staff->active = TRUE;
  ck_assert (unsoot_rows_insert (db, &unsoot_staff_row_type, staff, &program, &error));
  g_free (staff->pin_hash);
  staff->pin_hash = g_strdup ("$argon2id$other");
  ck_assert (unsoot_rows_update (db, &unsoot_staff_row_type, staff, &program, &error));
  g_autofree char *log = log_of (db);
  ck_assert_str_eq (log, "5 0 staff 1 version →1\n"
                         "5 0 staff 1 pin_hash ***→***\n");
}
END_TEST

/* 0.1 needs 17 digits only where fewer don't read back: IEEE 754 doubles, from memory. */
START_TEST (test_field_text)
{
  g_autoptr (TestThing) thing = thing_full ();
  static const struct
  {
    double value;
    const char *text;
  } reals[] = { { 0.1, "0.1" },   { 1619.725275, "1619.725275" },
                { NAN, "" },      { 0.1 + 0.2, "0.30000000000000004" },
                { -40.0, "-40" }, { 1e300, "1e+300" } };
  for (gsize i = 0; i < G_N_ELEMENTS (reals); i++)
    {
      thing->level = reals[i].value;
      g_autofree char *text = unsoot_record_field_text (thing, &test_thing_columns[5]);
      ck_assert_str_eq (text, reals[i].text);
    }
  /* RFC 4648's alphabet: 01 00 02 is AQAC. */
  g_autofree char *picture = unsoot_record_field_text (thing, &test_thing_columns[8]);
  ck_assert_str_eq (picture, "AQAC");
  g_autofree char *owner = unsoot_record_field_text (thing, &test_thing_columns[3]);
  ck_assert_str_eq (owner, "");
}
END_TEST

START_TEST (test_copy_is_deep)
{
  TestThing *thing = thing_full ();
  g_autoptr (TestThing) copy = unsoot_record_copy (&test_thing_type, thing);
  thing->name[0] = 'X';
  test_thing_free (thing);
  ck_assert_str_eq (copy->name, "ströme");
  ck_assert_int_eq (g_bytes_get_size (copy->picture), 3);
}
END_TEST

static Suite *
rows_suite (void)
{
  Suite *suite = suite_create ("rows");
  TCase *tcase = tcase_create ("kept");
  tcase_add_test (tcase, test_what_is_saved_comes_back);
  tcase_add_test (tcase, test_lists);
  tcase_add_test (tcase, test_log_says_who_what_and_when);
  tcase_add_test (tcase, test_second_save_is_a_conflict);
  tcase_add_test (tcase, test_delete_keeps_every_value_in_the_log);
  tcase_add_test (tcase, test_failed_save_leaves_no_log);
  tcase_add_test (tcase, test_every_kind_reads);
  tcase_add_test (tcase, test_field_text);
  tcase_add_test (tcase, test_copy_is_deep);
  suite_add_tcase (suite, tcase);

  tcase = tcase_create ("postings");
  tcase_add_test (tcase, test_authorizer_alone_keeps_postings);
  tcase_add_test (tcase, test_triggers_alone_keep_postings);
  tcase_add_test (tcase, test_log_itself_is_append_only);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (rows_suite)
