/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "arrival-fields.h"
#include "deed-dialog.h"
#include "desk-hand.h"
#include "form-dialog.h"
#include "hands-dialog.h"
#include "job-files.h"
#include "machine-deeds.h"
#include "pin-dialog.h"
#include "staff.h"
#include "suite.h"

/* What is typed into a form and not carried out: read back from the book by a second handle, and
 * found again when the form is opened anew. */

static UnsootSession *session;
static UnsootWindow *window;

static gpointer
forget_all (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  unsoot_db_run (db, error, "DELETE FROM drafts");
  return NULL;
}

static void
begin (void)
{
  g_autoptr (GError) error = NULL;

  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  unsoot_store_call (unsoot_session_get_store (session), forget_all, NULL, NULL, &error);
  ck_no_error (error);
  window = desk_hand_window (session);
}

static void
end (void)
{
  desk_hand_leave (window, session);
}

#define N_DRAFTS "SELECT CAST (count (*) AS TEXT) FROM drafts"

static void
leave (GType type)
{
  gtk_window_close (GTK_WINDOW (desk_hand_dialog (type)));
  desk_hand_wait_no_dialog (type);
}

/* What stands under that label. */
static GtkWidget *
field (GtkWidget *root, const char *label)
{
  GtkWidget *title = desk_shop_label (root, label);

  ck_assert_msg (title != NULL, "no field %s", label);
  return gtk_widget_get_next_sibling (title);
}

static void
type (GtkWidget *root, const char *label, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (field (root, label)), text);
}

static gboolean
kept_is_shown (gpointer root)
{
  GtkWidget *line = desk_shop_widget (root, UNSOOT_TYPE_FORM_DRAFT);

  return line != NULL && gtk_widget_get_visible (line);
}

#define COMPLAINT "Complaint, in the customer's words"

static gpointer
load_file (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_job_file_load (db, *(const gint64 *) data, error);
}

/* The nth booked job. */
static gint64
booked (guint n)
{
  g_autofree char *sql
      = g_strdup_printf ("SELECT CAST (id AS TEXT) FROM jobs WHERE status = 'booked'"
                         " ORDER BY id LIMIT 1 OFFSET %u",
                         n);
  g_autofree char *id = desk_hand_text (sql);

  ck_assert_ptr_nonnull (id);
  return g_ascii_strtoll (id, NULL, 10);
}

static void
begin_arrival (gint64 job_id)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (UnsootJobFile) file
      = unsoot_store_call (unsoot_session_get_store (session), load_file, &job_id, NULL, &error);

  ck_no_error (error);
  unsoot_arrival_open (gtk_widget_get_first_child (GTK_WIDGET (window)), session, file);
}

static GtkWidget *
open_arrival (gint64 job_id)
{
  GtkWidget *form;

  begin_arrival (job_id);
  form = desk_hand_wait_dialog (UNSOOT_TYPE_FORM_DIALOG);
  gtk_test_widget_wait_for_draw (form);
  return form;
}

static const char *
text_of (GtkWidget *root, const char *label)
{
  return gtk_editable_get_text (GTK_EDITABLE (field (root, label)));
}

START_TEST (a_moment_after_typing_it_is_in_the_book)
{
  GtkWidget *form;
  gint64 job;

  begin ();
  job = booked (0);
  form = open_arrival (job);
  type (form, COMPLAINT, "Loses power on the hill");
  desk_hand_wait_text ("1", N_DRAFTS
                       " WHERE place = 'arrival' AND text LIKE '%Loses power on the hill%'");
  leave (UNSOOT_TYPE_FORM_DIALOG);
  form = open_arrival (job);
  desk_shop_wait (kept_is_shown, form, "the line that says so");
  ck_assert_str_eq (text_of (form, COMPLAINT), "Loses power on the hill");
  /* The demo's clock stands at 16:40 UTC, and the town's at UTC−6. */
  ck_assert_ptr_nonnull (desk_shop_label (form, "Kept from 10:40"));
  end ();
}
END_TEST

/* The main loop has not turned since the form was made: what was kept is still on its way. */
START_TEST (what_is_typed_before_it_is_read_stands)
{
  GtkWidget *form;
  gint64 job;

  begin ();
  job = booked (0);
  form = open_arrival (job);
  type (form, COMPLAINT, "typed first");
  type (form, "Engine hours", "12");
  leave (UNSOOT_TYPE_FORM_DIALOG);
  desk_hand_wait_text ("1", N_DRAFTS);
  begin_arrival (job);
  form = desk_hand_dialog (UNSOOT_TYPE_FORM_DIALOG);
  ck_assert_ptr_nonnull (form);
  type (form, COMPLAINT, "typed at once");
  desk_shop_wait (kept_is_shown, form, "the line that says so");
  ck_assert_str_eq (text_of (form, COMPLAINT), "typed at once");
  ck_assert_str_eq (text_of (form, "Engine hours"), "12");
  end ();
}
END_TEST

START_TEST (it_can_be_dropped_and_put_back)
{
  GtkWidget *form;
  g_autofree char *first = NULL;
  gint64 job;

  begin ();
  job = booked (0);
  form = open_arrival (job);
  first = g_strdup (text_of (form, COMPLAINT));
  type (form, COMPLAINT, "Smokes when cold");
  leave (UNSOOT_TYPE_FORM_DIALOG);
  desk_hand_wait_text ("1", N_DRAFTS);
  form = open_arrival (job);
  desk_shop_wait (kept_is_shown, form, "the line that says so");
  desk_hand_press (form, "Drop it");
  ck_assert_str_eq (text_of (form, COMPLAINT), first);
  desk_hand_wait_text ("0", N_DRAFTS);
  desk_hand_press (form, "Put it back");
  ck_assert_str_eq (text_of (form, COMPLAINT), "Smokes when cold");
  desk_hand_wait_text ("1", N_DRAFTS);
  end ();
}
END_TEST

START_TEST (leaving_at_once_keeps_it_and_so_does_the_end_of_the_window)
{
  GtkWidget *form;

  begin ();
  form = open_arrival (booked (0));
  type (form, COMPLAINT, "first");
  leave (UNSOOT_TYPE_FORM_DIALOG);
  desk_hand_wait_text ("1", N_DRAFTS " WHERE text LIKE '%first%'");
  form = open_arrival (booked (1));
  type (form, COMPLAINT, "second");
  gtk_window_destroy (GTK_WINDOW (window));
  desk_hand_wait_text ("1", N_DRAFTS " WHERE text LIKE '%second%'");
  g_object_unref (session);
}
END_TEST

START_TEST (another_record_never_gets_it)
{
  GtkWidget *form;

  begin ();
  form = open_arrival (booked (0));
  type (form, COMPLAINT, "of the first");
  leave (UNSOOT_TYPE_FORM_DIALOG);
  desk_hand_wait_text ("1", N_DRAFTS);
  form = open_arrival (booked (1));
  type (form, "Engine hours", "12");
  /* The one draft was asked for before this one was kept. */
  desk_hand_wait_text ("2", N_DRAFTS);
  ck_assert_str_ne (text_of (form, COMPLAINT), "of the first");
  ck_assert (!kept_is_shown (form));
  end ();
}
END_TEST

START_TEST (typed_back_to_what_it_was_nothing_is_kept)
{
  GtkWidget *form;
  g_autofree char *first = NULL;

  begin ();
  form = open_arrival (booked (0));
  first = g_strdup (text_of (form, COMPLAINT));
  type (form, COMPLAINT, "a slip");
  desk_hand_wait_text ("1", N_DRAFTS);
  type (form, COMPLAINT, first);
  desk_hand_wait_text ("0", N_DRAFTS);
  end ();
}
END_TEST

static gpointer
find_other (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  g_autoptr (GPtrArray) staff = unsoot_staff_list (db, error);

  for (guint i = 0; i < staff->len; i++)
    {
      const UnsootStaffRow *person = g_ptr_array_index (staff, i);
      if (g_str_equal (person->role, "owner"))
        return unsoot_record_copy (&unsoot_staff_row_type, person);
    }
  return NULL;
}

START_TEST (when_hands_change_the_form_goes_and_the_text_stays_its_writers)
{
  g_autoptr (UnsootStaffRow) writer = NULL, other = NULL;
  GType type_of_form;
  GtkWidget *form;
  gint64 job;

  begin ();
  job = booked (0);
  type_of_form = UNSOOT_TYPE_FORM_DIALOG;
  writer = unsoot_record_copy (&unsoot_staff_row_type, unsoot_session_get_person (session));
  other = unsoot_store_call (unsoot_session_get_store (session), find_other, NULL, NULL, NULL);
  form = open_arrival (job);
  type (form, COMPLAINT, "the writer's");
  unsoot_session_set_person (session, other);
  desk_hand_wait_no_dialog (type_of_form);
  desk_hand_wait_text ("1", N_DRAFTS
                       " WHERE staff_id = (SELECT id FROM staff WHERE name = 'Mara Quillen')");
  form = open_arrival (job);
  type (form, "Engine hours", "12");
  desk_hand_wait_text ("2", N_DRAFTS);
  ck_assert_str_ne (text_of (form, COMPLAINT), "the writer's");
  unsoot_session_set_person (session, writer);
  desk_hand_wait_no_dialog (type_of_form);
  form = open_arrival (job);
  desk_shop_wait (kept_is_shown, form, "the line that says so");
  ck_assert_str_eq (text_of (form, COMPLAINT), "the writer's");
  end ();
}
END_TEST

START_TEST (the_desk_is_handed_over_from_inside_a_form)
{
  GtkWidget *form;

  begin ();
  form = open_arrival (booked (0));
  type (form, COMPLAINT, "half a sentence");
  gtk_widget_activate_action (form, "form.hands", NULL);
  desk_hand_wait_dialog (UNSOOT_TYPE_HANDS_DIALOG);
  ck_assert_ptr_null (desk_hand_dialog (UNSOOT_TYPE_FORM_DIALOG));
  desk_hand_wait_text ("1", N_DRAFTS " WHERE text LIKE '%half a sentence%'");
  end ();
}
END_TEST

START_TEST (carried_out_it_is_kept_no_more)
{
  GtkWidget *form;
  GType type_of_form = UNSOOT_TYPE_FORM_DIALOG;

  begin ();
  form = open_arrival (booked (2));
  type (form, COMPLAINT, "It is here now");
  desk_hand_wait_text ("1", N_DRAFTS);
  desk_hand_press (form, "Record the arrival");
  desk_hand_wait_no_dialog (type_of_form);
  desk_hand_wait_text ("0", N_DRAFTS);
  desk_hand_wait_text ("arrived", "SELECT status FROM jobs WHERE complaint = 'It is here now'");
  end ();
}
END_TEST

START_TEST (left_while_it_is_carried_out_nothing_stale_is_kept)
{
  GtkWidget *form;
  GType type_of_form = UNSOOT_TYPE_FORM_DIALOG;

  begin ();
  form = open_arrival (booked (2));
  type (form, COMPLAINT, "Left at once");
  desk_hand_wait_text ("1", N_DRAFTS);
  desk_hand_press (form, "Record the arrival");
  gtk_window_close (GTK_WINDOW (form));
  desk_hand_wait_no_dialog (type_of_form);
  desk_hand_wait_text ("arrived", "SELECT status FROM jobs WHERE complaint = 'Left at once'");
  desk_hand_wait_text ("0", N_DRAFTS);
  end ();
}
END_TEST

/* Two gauges of one machine are two things. */
START_TEST (a_deed_keeps_it_for_the_part_that_it_is_about)
{
  g_autoptr (UnsootMachineRow) machine = unsoot_machine_row_new ();
  GtkWidget *over, *form;

  begin ();
  machine->id = 1;
  machine->name = g_strdup ("Cart A");
  over = gtk_widget_get_first_child (GTK_WIDGET (window));
  while (!ADW_IS_TOAST_OVERLAY (over))
    over = gtk_widget_get_first_child (over);
  over = gtk_widget_get_first_child (over);
  unsoot_gauge_check_open (over, session, machine, "supply");
  form = desk_hand_wait_dialog (UNSOOT_TYPE_DEED_DIALOG);
  gtk_editable_set_text (
      GTK_EDITABLE (desk_shop_widget (
          gtk_widget_get_next_sibling (desk_shop_label (form, "It reads")), GTK_TYPE_ENTRY)),
      "8.2 psi");
  leave (UNSOOT_TYPE_DEED_DIALOG);
  desk_hand_wait_text ("1", N_DRAFTS " WHERE place = 'gauge supply' AND record = 1");
  unsoot_gauge_check_open (over, session, machine, "air");
  form = desk_hand_wait_dialog (UNSOOT_TYPE_DEED_DIALOG);
  gtk_editable_set_text (
      GTK_EDITABLE (desk_shop_widget (
          gtk_widget_get_next_sibling (desk_shop_label (form, "The reference reads")),
          GTK_TYPE_ENTRY)),
      "40");
  leave (UNSOOT_TYPE_DEED_DIALOG);
  desk_hand_wait_text ("1", N_DRAFTS " WHERE place = 'gauge air' AND text NOT LIKE '%8.2 psi%'");
  unsoot_gauge_check_open (over, session, machine, "supply");
  form = desk_hand_wait_dialog (UNSOOT_TYPE_DEED_DIALOG);
  desk_shop_wait (kept_is_shown, form, "the line that says so");
  ck_assert_str_eq (
      gtk_editable_get_text (GTK_EDITABLE (desk_shop_widget (
          gtk_widget_get_next_sibling (desk_shop_label (form, "It reads")), GTK_TYPE_ENTRY))),
      "8.2 psi");
  end ();
}
END_TEST

START_TEST (a_pin_is_never_kept)
{
  UnsootFormDraft *draft;

  begin ();
  draft = g_object_ref_sink (UNSOOT_FORM_DRAFT (unsoot_form_draft_new ()));
  g_test_expect_message ("unsoot", G_LOG_LEVEL_CRITICAL, "*is_secret*");
  unsoot_form_draft_watch (draft, "pin", "PIN", gtk_password_entry_new ());
  g_test_assert_expected_messages ();
  g_object_unref (draft);
  end ();
}
END_TEST

static Suite *
suite (void)
{
  Suite *all = suite_create ("drafts");
  TCase *tcase = tcase_create ("typed and not carried out");

  tcase_set_timeout (tcase, 120);
  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_add_test (tcase, a_moment_after_typing_it_is_in_the_book);
  tcase_add_test (tcase, what_is_typed_before_it_is_read_stands);
  tcase_add_test (tcase, it_can_be_dropped_and_put_back);
  tcase_add_test (tcase, leaving_at_once_keeps_it_and_so_does_the_end_of_the_window);
  tcase_add_test (tcase, another_record_never_gets_it);
  tcase_add_test (tcase, typed_back_to_what_it_was_nothing_is_kept);
  tcase_add_test (tcase, when_hands_change_the_form_goes_and_the_text_stays_its_writers);
  tcase_add_test (tcase, the_desk_is_handed_over_from_inside_a_form);
  tcase_add_test (tcase, carried_out_it_is_kept_no_more);
  tcase_add_test (tcase, left_while_it_is_carried_out_nothing_stale_is_kept);
  tcase_add_test (tcase, a_deed_keeps_it_for_the_part_that_it_is_about);
  tcase_add_test (tcase, a_pin_is_never_kept);
  suite_add_tcase (all, tcase);
  return all;
}

UNSOOT_TEST_MAIN (suite)
