/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "bay-release.h"
#include "bay-run.h"
#include "credit-dialog.h"
#include "desk-hand.h"
#include "families.h"
#include "first-start.h"
#include "form-draft.h"
#include "invoice-view.h"
#include "procedure-dialog.h"
#include "suite.h"

/* What is typed and not carried out where there is no plain form: the credit note, the steps of a
 * procedure, the bay and its release, the first start. Each is left, and found again. */

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

static gboolean
kept_is_shown (gpointer root)
{
  GtkWidget *line = desk_shop_widget (root, UNSOOT_TYPE_FORM_DRAFT);

  return line != NULL && gtk_widget_get_visible (line);
}

static void
leave (GType type)
{
  gtk_window_close (GTK_WINDOW (desk_hand_dialog (type)));
  desk_hand_wait_no_dialog (type);
}

static gint64
number (const char *sql)
{
  g_autofree char *text = desk_hand_text (sql);

  return g_ascii_strtoll (text, NULL, 10);
}

static GtkWidget *
over (void)
{
  GtkWidget *toasts = desk_shop_widget (GTK_WIDGET (window), ADW_TYPE_TOAST_OVERLAY);

  return adw_toast_overlay_get_child (ADW_TOAST_OVERLAY (toasts));
}

static gpointer
load_invoice (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_invoice_view_load (db, *(const gint64 *) data, error);
}

static GtkWidget *
open_credit (void)
{
  g_autoptr (GError) error = NULL;
  gint64 id = number ("SELECT CAST (min (id) AS TEXT) FROM invoices i WHERE kind = 'invoice'"
                      " AND NOT EXISTS (SELECT 1 FROM invoices c WHERE c.credits_id = i.id)");
  g_autoptr (UnsootInvoiceView) view
      = unsoot_store_call (unsoot_session_get_store (session), load_invoice, &id, NULL, &error);

  ck_no_error (error);
  unsoot_credit_dialog_open (over (), session, view);
  return desk_hand_wait_dialog (UNSOOT_TYPE_CREDIT_DIALOG);
}

static GtkWidget *
reason_of (GtkWidget *dialog)
{
  return desk_shop_widget (dialog, GTK_TYPE_ENTRY);
}

START_TEST (a_credit_note_that_is_not_issued)
{
  GtkWidget *dialog;

  begin ();
  dialog = open_credit ();
  gtk_check_button_set_active (GTK_CHECK_BUTTON (desk_shop_widget (dialog, GTK_TYPE_CHECK_BUTTON)),
                               FALSE);
  gtk_editable_set_text (GTK_EDITABLE (reason_of (dialog)), "Charged for a gasket we never fitted");
  leave (UNSOOT_TYPE_CREDIT_DIALOG);
  desk_hand_wait_text ("1", N_DRAFTS " WHERE place = 'credit' AND text LIKE '%never fitted%'");

  dialog = open_credit ();
  desk_shop_wait (kept_is_shown, dialog, "the line that says so");
  ck_assert_str_eq (gtk_editable_get_text (GTK_EDITABLE (reason_of (dialog))),
                    "Charged for a gasket we never fitted");
  ck_assert (!gtk_check_button_get_active (
      GTK_CHECK_BUTTON (desk_shop_widget (dialog, GTK_TYPE_CHECK_BUTTON))));
  g_signal_emit_by_name (
      gtk_widget_get_ancestor (desk_shop_label (dialog, "Issue the credit note"), GTK_TYPE_BUTTON),
      "clicked");
  /* Closed at once: it waits for the answer, and nothing stale is kept. */
  gtk_window_close (GTK_WINDOW (dialog));
  desk_hand_wait_no_dialog (UNSOOT_TYPE_CREDIT_DIALOG);
  desk_hand_wait_text ("1", "SELECT CAST (count (*) AS TEXT) FROM invoices"
                            " WHERE note = 'Charged for a gasket we never fitted'");
  desk_hand_wait_text ("0", N_DRAFTS);
  end ();
}
END_TEST

static gpointer
load_family (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  g_autoptr (GPtrArray) families = unsoot_family_list (db, error);

  return unsoot_record_copy (&unsoot_family_row_type, g_ptr_array_index (families, 0));
}

static GtkTextBuffer *
steps_of (GtkWidget *dialog)
{
  return gtk_text_view_get_buffer (GTK_TEXT_VIEW (desk_shop_widget (dialog, GTK_TYPE_TEXT_VIEW)));
}

static char *
steps_text (GtkWidget *dialog)
{
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (steps_of (dialog), &start, &end);
  return gtk_text_buffer_get_text (steps_of (dialog), &start, &end, FALSE);
}

static gboolean
has_steps (gpointer dialog)
{
  return gtk_text_buffer_get_char_count (steps_of (dialog)) > 0
         && gtk_text_view_get_editable (
             GTK_TEXT_VIEW (desk_shop_widget (dialog, GTK_TYPE_TEXT_VIEW)));
}

static GtkWidget *
open_procedure (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (UnsootFamilyRow) family
      = unsoot_store_call (unsoot_session_get_store (session), load_family, NULL, NULL, &error);
  GtkWidget *dialog;

  ck_no_error (error);
  unsoot_procedure_dialog_open (over (), session, family);
  dialog = desk_hand_wait_dialog (UNSOOT_TYPE_PROCEDURE_DIALOG);
  desk_shop_wait (has_steps, dialog, "the steps");
  return dialog;
}

static gboolean
is_marked (gpointer dialog)
{
  g_autofree char *text = steps_text (dialog);

  return g_str_has_suffix (text, "# half a thought");
}

static gboolean
is_not_marked (gpointer dialog)
{
  return has_steps (dialog) && !is_marked (dialog);
}

/* The steps of each side are a text of their own. */
START_TEST (a_procedure_that_is_not_in_use_yet)
{
  GtkWidget *dialog, *sides;
  GtkTextIter end_of;

  begin ();
  desk_hand_take (session, "lead");
  dialog = open_procedure ();
  sides = desk_shop_widget (dialog, GTK_TYPE_DROP_DOWN);
  gtk_text_buffer_get_end_iter (steps_of (dialog), &end_of);
  gtk_text_buffer_insert (steps_of (dialog), &end_of, "# half a thought", -1);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (sides), 1);
  desk_hand_wait_text ("1", N_DRAFTS " WHERE place = 'procedure both' AND text LIKE '%thought%'");
  desk_shop_wait (is_not_marked, dialog, "the steps of the fuel side");
  ck_assert (!kept_is_shown (dialog));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (sides), 0);
  desk_shop_wait (is_marked, dialog, "what was typed for both sides");
  leave (UNSOOT_TYPE_PROCEDURE_DIALOG);

  dialog = open_procedure ();
  desk_shop_wait (is_marked, dialog, "what was typed");
  ck_assert (kept_is_shown (dialog));
  desk_hand_wait_text ("1", N_DRAFTS);
  end ();
}
END_TEST

START_TEST (the_usual_steps_can_be_taken_back)
{
  GtkWidget *dialog, *usual;
  GtkTextIter end_of;

  begin ();
  dialog = open_procedure ();
  gtk_text_buffer_get_end_iter (steps_of (dialog), &end_of);
  gtk_text_buffer_insert (steps_of (dialog), &end_of, "# half a thought", -1);
  usual = desk_shop_label (dialog, "Begin with the usual steps");
  g_signal_emit_by_name (gtk_widget_get_ancestor (usual, GTK_TYPE_BUTTON), "clicked");
  ck_assert (!is_marked (dialog));
  gtk_text_buffer_undo (steps_of (dialog));
  ck_assert (is_marked (dialog));
  end ();
}
END_TEST

static gboolean
bay_is_there (gpointer data)
{
  UnsootView *view = unsoot_window_get_view (window);

  return view != NULL && unsoot_view_is_settled (view)
         && desk_shop_widget (GTK_WIDGET (view), UNSOOT_TYPE_BAY_RUN) != NULL;
}

static GtkWidget *
open_bay (void)
{
  ck_assert (unsoot_window_open (
      window, "bay",
      number ("SELECT CAST (min (job_id) AS TEXT) FROM runs WHERE outcome IS NULL")));
  desk_shop_wait (bay_is_there, NULL, "the bay");
  return GTK_WIDGET (unsoot_window_get_view (window));
}

/* Why a step does not apply, as the card asks it. */
static GtkEditable *
why (GtkWidget *page)
{
  GtkWidget *card = desk_shop_widget (page, UNSOOT_TYPE_BAY_CARD);
  GtkWidget *words = desk_shop_label (card, "Why does it not apply here?");

  return GTK_EDITABLE (gtk_widget_get_next_sibling (words));
}

START_TEST (what_is_written_in_the_bay)
{
  GtkWidget *page;

  begin ();
  desk_hand_take (session, "technician");
  page = open_bay ();
  gtk_editable_set_text (why (page), "This engine has none");
  /* Locked at once. */
  unsoot_session_set_person (session, NULL);
  desk_hand_wait_text ("1", N_DRAFTS " WHERE place LIKE 'bay %' AND text LIKE '%has none%'");
  desk_hand_take (session, "technician");
  page = open_bay ();
  desk_shop_wait (kept_is_shown, page, "the line that says so");
  ck_assert_str_eq (gtk_editable_get_text (why (page)), "This engine has none");
  end ();
}
END_TEST

static gboolean
why_is_empty (gpointer data)
{
  return bay_is_there (NULL)
         && *gtk_editable_get_text (why (GTK_WIDGET (unsoot_window_get_view (window)))) == '\0';
}

START_TEST (in_the_bay_other_hands_write_their_own)
{
  GtkWidget *page;

  begin ();
  desk_hand_take (session, "technician");
  page = open_bay ();
  gtk_editable_set_text (why (page), "The first one's words");
  desk_hand_take (session, "lead");
  desk_hand_wait_text ("technician", "SELECT role FROM staff s JOIN drafts d ON d.staff_id = s.id"
                                     " WHERE d.text LIKE '%first one%'");
  desk_shop_wait (why_is_empty, NULL, "an empty field");
  end ();
}
END_TEST

static GtkWidget *
open_release (GtkWidget *page)
{
  g_signal_emit_by_name (desk_shop_widget (page, UNSOOT_TYPE_BAY_RUN), "release");
  return desk_shop_widget (page, UNSOOT_TYPE_BAY_RELEASE);
}

START_TEST (why_a_vehicle_leaves_in_pieces)
{
  GtkWidget *release;

  begin ();
  desk_hand_take (session, "technician");
  release = open_release (open_bay ());
  gtk_editable_set_text (GTK_EDITABLE (desk_shop_widget (release, GTK_TYPE_ENTRY)),
                         "The gasket comes on Friday");
  ck_assert (unsoot_window_open (window, "today", 0));
  desk_hand_wait_text ("1", N_DRAFTS " WHERE place = 'release' AND text LIKE '%on Friday%'");
  release = open_release (open_bay ());
  desk_shop_wait (kept_is_shown, release, "the line that says so");
  ck_assert_str_eq (
      gtk_editable_get_text (GTK_EDITABLE (desk_shop_widget (release, GTK_TYPE_ENTRY))),
      "The gasket comes on Friday");
  end ();
}
END_TEST

static GtkWidget *
row_of (const char *title)
{
  GtkWidget *words = desk_shop_label (GTK_WIDGET (window), title);

  ck_assert_ptr_nonnull (words);
  return gtk_widget_get_ancestor (words, ADW_TYPE_ENTRY_ROW);
}

/* There is no book yet to keep it in. */
START_TEST (a_new_shop_that_is_not_made_yet)
{
  g_autofree char *path
      = g_build_filename (g_get_user_state_dir (), "unsoot", "new-shop.json", NULL);
  g_autofree char *kept = NULL;

  begin ();
  unsoot_window_show_start (window, NULL);
  gtk_editable_set_text (GTK_EDITABLE (row_of ("Name")), "Alder Lane Diesel");
  gtk_editable_set_text (GTK_EDITABLE (row_of ("PIN")), "80317");
  /* Gone at once, as by the end of the program. */
  gtk_window_destroy (GTK_WINDOW (window));
  ck_assert (g_file_get_contents (path, &kept, NULL, NULL));
  ck_assert_ptr_nonnull (strstr (kept, "Alder Lane Diesel"));
  ck_assert_ptr_null (strstr (kept, "80317"));

  window = desk_hand_window (session);
  unsoot_window_show_start (window, NULL);
  ck_assert_str_eq (gtk_editable_get_text (GTK_EDITABLE (row_of ("Name"))), "Alder Lane Diesel");
  ck_assert_str_eq (gtk_editable_get_text (GTK_EDITABLE (row_of ("PIN"))), "");
  end ();
}
END_TEST

static Suite *
suite (void)
{
  Suite *all = suite_create ("draft places");
  TCase *tcase = tcase_create ("typed elsewhere");

  tcase_set_timeout (tcase, 120);
  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_add_test (tcase, a_credit_note_that_is_not_issued);
  tcase_add_test (tcase, a_procedure_that_is_not_in_use_yet);
  tcase_add_test (tcase, the_usual_steps_can_be_taken_back);
  tcase_add_test (tcase, what_is_written_in_the_bay);
  tcase_add_test (tcase, in_the_bay_other_hands_write_their_own);
  tcase_add_test (tcase, why_a_vehicle_leaves_in_pieces);
  tcase_add_test (tcase, a_new_shop_that_is_not_made_yet);
  suite_add_tcase (all, tcase);
  return all;
}

UNSOOT_TEST_MAIN (suite)
