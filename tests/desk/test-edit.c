/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calls.h"
#include "conflict-box.h"
#include "customer-edit.h"
#include "customers.h"
#include "deed-dialog.h"
#include "desk-hand.h"
#include "form-dialog.h"
#include "hand-row.h"
#include "suite.h"
#include "vehicle-edit.h"
#include "vehicles.h"

/* A customer and a vehicle are changed at two desks at once: the form in this process, and a
 * second handle on the same file. */

static UnsootSession *session;
static UnsootWindow *window;

static void
begin (void)
{
  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  window = desk_hand_window (session);
}

static void
end (void)
{
  desk_hand_leave (window, session);
}

static UnsootDb *
other_desk (void)
{
  g_autoptr (GError) error = NULL;
  UnsootDb *db = unsoot_db_open (desk_shop_path (), 0, &error);

  ck_no_error (error);
  return db;
}

/* What stands under that label; a conflict has lines that are called so, too. */
static GtkWidget *
find_field (GtkWidget *root, const char *label)
{
  GtkWidget *next = gtk_widget_get_next_sibling (root);

  if (GTK_IS_LABEL (root) && next != NULL && !GTK_IS_LABEL (next)
      && g_str_equal (gtk_label_get_text (GTK_LABEL (root)), label))
    return next;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_field (child, label);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static GtkWidget *
field (GtkWidget *root, const char *label)
{
  GtkWidget *found = find_field (root, label);

  ck_assert_msg (found != NULL, "no field %s", label);
  return found;
}

static const char *
text_of (GtkWidget *root, const char *label)
{
  return gtk_editable_get_text (GTK_EDITABLE (field (root, label)));
}

static void
type (GtkWidget *root, const char *label, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (field (root, label)), text);
}

typedef struct
{
  GtkWidget *form;
  const char *label;
} Filled;

static gboolean
is_filled (gpointer data)
{
  const Filled *filled = data;

  return *text_of (filled->form, filled->label) != '\0';
}

static GtkWidget *
open_form (const char *slug, const char *label)
{
  GType form_type = UNSOOT_TYPE_FORM_DIALOG;
  GtkWidget *over = adw_toast_overlay_get_child (
      ADW_TOAST_OVERLAY (desk_shop_widget (GTK_WIDGET (window), ADW_TYPE_TOAST_OVERLAY)));
  Filled filled = { .label = label };

  if (g_str_equal (slug, "customer"))
    unsoot_customer_edit_open (over, session, 1);
  else
    unsoot_vehicle_edit_open (over, session, 1, 0);
  desk_hand_wait_dialog (form_type);
  filled.form = desk_hand_dialog (form_type);
  desk_shop_wait (is_filled, &filled, "the record in the form");
  return filled.form;
}

static gboolean
conflict_is_shown (gpointer form)
{
  GtkWidget *box = desk_shop_widget (form, UNSOOT_TYPE_CONFLICT_BOX);

  return gtk_widget_get_visible (box);
}

static void
wait_closed (void)
{
  GType form_type = UNSOOT_TYPE_FORM_DIALOG;

  desk_hand_wait_no_dialog (form_type);
}

/* Someone else gives the customer another note, and one phone more. */
static void
save_elsewhere (const char *new_note, const char *new_phone)
{
  g_autoptr (GError) error = NULL;
  UnsootDb *db = other_desk ();
  const UnsootActing owner = { .staff_id = 0, .now = desk_shop_now () };
  g_autoptr (UnsootCustomerRow) customer = unsoot_customer_load (db, 1, &error);
  g_autoptr (GPtrArray) phones = unsoot_customer_phones (db, 1, &error);
  g_autoptr (GPtrArray) addresses = unsoot_customer_addresses (db, 1, &error);
  UnsootPhoneRow *phone = unsoot_phone_row_new ();

  ck_no_error (error);
  g_free (customer->note);
  customer->note = g_strdup (new_note);
  phone->number = g_strdup (new_phone);
  g_ptr_array_add (phones, phone);
  unsoot_customer_save (db, &owner, customer, phones, addresses, &error);
  ck_no_error (error);
  unsoot_db_close (db);
}

START_TEST (both_versions_are_shown_and_mine_may_stand)
{
  GtkWidget *form;

  begin ();
  form = open_form ("customer", "Name");
  type (form, "Note", "typed here");
  save_elsewhere ("saved there", "555 010 4477");
  desk_hand_press (form, "Save");
  desk_shop_wait (conflict_is_shown, form, "both versions");
  ck_assert_ptr_nonnull (desk_shop_label (form, "typed here"));
  ck_assert_ptr_nonnull (desk_shop_label (form, "saved there"));
  ck_assert_ptr_nonnull (desk_shop_label (form, "Phones"));
  desk_hand_press (form, "Keep what I typed");
  wait_closed ();
  desk_hand_wait_text ("typed here", "SELECT note FROM customers WHERE id = 1");
  /* What they added is not lost with it, and the log of changes has what their note was. */
  desk_hand_wait_text ("1",
                       "SELECT CAST (count (*) AS TEXT) FROM customer_phones WHERE customer_id = 1"
                       " AND number = '555 010 4477'");
  desk_hand_wait_text ("saved there",
                       "SELECT was FROM changes WHERE record = 'customers' AND row_id = 1"
                       " AND field = 'note' ORDER BY id DESC LIMIT 1");
  end ();
}
END_TEST

START_TEST (theirs_may_stand)
{
  GtkWidget *form;

  begin ();
  form = open_form ("customer", "Name");
  type (form, "Note", "mine again");
  save_elsewhere ("theirs again", "555 010 4478");
  desk_hand_press (form, "Save");
  desk_shop_wait (conflict_is_shown, form, "both versions");
  desk_hand_press (form, "Take theirs");
  ck_assert_str_eq (text_of (form, "Note"), "theirs again");
  ck_assert (!conflict_is_shown (form));
  desk_hand_press (form, "Save");
  wait_closed ();
  desk_hand_wait_text ("theirs again", "SELECT note FROM customers WHERE id = 1");
  desk_hand_wait_text ("0", "SELECT CAST (count (*) AS TEXT) FROM drafts WHERE place = 'customer'");
  end ();
}
END_TEST

START_TEST (a_draft_never_takes_back_what_someone_saved_since)
{
  GType form_type = UNSOOT_TYPE_FORM_DIALOG;
  GtkWidget *form;
  g_autofree char *wanted = NULL;

  begin ();
  form = open_form ("customer", "Name");
  type (form, "Whom to ask for", "Typed Before");
  desk_hand_wait_text ("1", "SELECT CAST (count (*) AS TEXT) FROM drafts WHERE place = 'customer'");
  gtk_window_close (GTK_WINDOW (form));
  desk_hand_wait_no_dialog (form_type);
  {
    g_autoptr (GError) error = NULL;
    UnsootDb *db = other_desk ();
    const UnsootActing owner = { .staff_id = 0, .now = desk_shop_now () };
    g_autoptr (UnsootCustomerRow) customer = unsoot_customer_load (db, 1, &error);

    g_free (customer->contact);
    customer->contact = g_strdup ("Saved Since");
    g_free (customer->note);
    customer->note = g_strdup ("a note since");
    unsoot_customer_save (db, &owner, customer, NULL, NULL, &error);
    ck_no_error (error);
    unsoot_db_close (db);
  }
  form = open_form ("customer", "Name");
  desk_shop_wait ((gboolean (*) (gpointer)) gtk_widget_get_visible,
                  desk_shop_widget (form, UNSOOT_TYPE_FORM_DRAFT), "what was kept");
  ck_assert_str_eq (text_of (form, "Whom to ask for"), "Typed Before");
  ck_assert_str_eq (text_of (form, "Note"), "a note since");
  ck_assert_ptr_nonnull (desk_shop_label (
      form, "Kept from 10:40. Saved by someone else since: Whom to ask for: Saved Since."));
  end ();
}
END_TEST

START_TEST (a_vehicle_shows_both_versions_in_words)
{
  g_autoptr (GError) error = NULL;
  const UnsootActing owner = { .staff_id = 0, .now = desk_shop_now () };
  g_autoptr (UnsootVehicleRow) vehicle = NULL;
  UnsootDb *db;
  GtkWidget *form;

  begin ();
  form = open_form ("vehicle", "Make");
  type (form, "Unit number", "77");
  db = other_desk ();
  vehicle = unsoot_vehicle_load (db, 1, &error);
  g_free (vehicle->unit_number);
  vehicle->unit_number = g_strdup ("88");
  vehicle->has_egr = !vehicle->has_egr;
  unsoot_vehicle_save (db, &owner, vehicle, NULL, &error);
  ck_no_error (error);
  unsoot_db_close (db);
  desk_hand_press (form, "Save");
  desk_shop_wait (conflict_is_shown, form, "both versions");
  ck_assert_ptr_nonnull (desk_shop_label (form, "77"));
  ck_assert_ptr_nonnull (desk_shop_label (form, "88"));
  ck_assert_ptr_nonnull (desk_shop_label (form, vehicle->has_egr ? "yes" : "no"));
  desk_hand_press (form, "Keep what I typed");
  wait_closed ();
  desk_hand_wait_text ("77", "SELECT unit_number FROM vehicles WHERE id = 1");
  end ();
}
END_TEST

/* The line of Today about an overdue invoice. */
static GtkWidget *
invoice_line (void)
{
  GtkWidget *list
      = gtk_widget_get_parent (desk_shop_widget (GTK_WIDGET (window), UNSOOT_TYPE_HAND_ROW));

  for (GtkWidget *row = gtk_widget_get_first_child (list); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    {
      GtkWidget *label = desk_shop_widget (row, GTK_TYPE_LABEL);
      if (g_str_has_prefix (gtk_label_get_text (GTK_LABEL (label)), "Invoice ")
          && desk_shop_label (row, "Call") != NULL)
        return row;
    }
  return NULL;
}

static guint n_lines;

static gboolean
has_lines (gpointer data)
{
  return desk_shop_count (GTK_WIDGET (window), UNSOOT_TYPE_HAND_ROW) == n_lines;
}

static gboolean
has_hands (gpointer data)
{
  return desk_shop_widget (GTK_WIDGET (window), UNSOOT_TYPE_HAND_ROW) != NULL;
}

static void
fill_deed (GtkWidget *form, const char *label, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (desk_shop_widget (field (form, label), GTK_TYPE_ENTRY)),
                         text);
}

START_TEST (a_call_is_noted_rests_and_is_taken_back)
{
  GType form_type = UNSOOT_TYPE_DEED_DIALOG;
  GtkWidget *row, *form;
  guint before;

  begin ();
  desk_shop_wait (has_hands, NULL, "Today");
  before = desk_shop_count (GTK_WIDGET (window), UNSOOT_TYPE_HAND_ROW);
  row = invoice_line ();
  ck_assert_msg (row != NULL, "no overdue invoice in Today");
  desk_hand_press (row, "Call");
  desk_hand_wait_dialog (form_type);
  form = desk_hand_dialog (form_type);
  fill_deed (form, "Spoke with", "Dana");
  desk_hand_press (form, "Note the call");
  ck_assert_ptr_nonnull (desk_shop_label (form, "“What was said” is needed"));
  fill_deed (form, "What was said", "Pays on Friday");
  desk_hand_press (form, "Note the call");
  desk_hand_wait_no_dialog (form_type);
  desk_hand_wait_text ("Dana", "SELECT spoke_with FROM calls WHERE about = 'invoice'"
                               " AND said = 'Pays on Friday'");
  n_lines = before - 1;
  desk_shop_wait (has_lines, NULL, "the line to rest");
  desk_hand_press (GTK_WIDGET (window), "Undo");
  desk_hand_wait_text ("2", "SELECT CAST (count (*) AS TEXT) FROM calls");
  n_lines = before;
  desk_shop_wait (has_lines, NULL, "the line again");
  end ();
}
END_TEST

static Suite *
edit_suite (void)
{
  Suite *suite = suite_create ("edit");
  TCase *tcase = tcase_create ("two desks");

  tcase_set_timeout (tcase, 120);
  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_add_test (tcase, both_versions_are_shown_and_mine_may_stand);
  tcase_add_test (tcase, theirs_may_stand);
  tcase_add_test (tcase, a_draft_never_takes_back_what_someone_saved_since);
  tcase_add_test (tcase, a_vehicle_shows_both_versions_in_words);
  tcase_add_test (tcase, a_call_is_noted_rests_and_is_taken_back);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (edit_suite)
