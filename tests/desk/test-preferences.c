/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "deed-dialog.h"
#include "desk-hand.h"
#include "pin-dialog.h"
#include "staff.h"
#include "suite.h"

/* What the owner sets for the shop: what is typed wrongly is refused at its field and stays there,
 * what is right stands in the book as SQLite reads it. */

static UnsootSession *session;
static UnsootWindow *window;

static gboolean
is_settled (gpointer data)
{
  return unsoot_view_is_settled (unsoot_window_get_view (window));
}

static void
begin (void)
{
  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  desk_hand_take (session, "owner");
  window = desk_hand_window (session);
  ck_assert (unsoot_window_open (window, "preferences", 0));
  desk_shop_wait (is_settled, NULL, "the preferences");
}

/* The form behind that button of the page; @row: a label in the row where it stands, NULL: where
 * there is but one. */
static GtkWidget *
open_form (const char *row, const char *button)
{
  GtkWidget *root = GTK_WIDGET (window);

  if (row != NULL)
    root = gtk_widget_get_ancestor (desk_shop_label (root, row), ADW_TYPE_ACTION_ROW);
  desk_hand_press (root, button);
  return desk_hand_wait_dialog (UNSOOT_TYPE_DEED_DIALOG);
}

static gboolean
has_words (GtkWidget *root, const char *words)
{
  if (GTK_IS_LABEL (root) && gtk_widget_get_visible (root)
      && strstr (gtk_label_get_text (GTK_LABEL (root)), words) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (has_words (child, words))
      return TRUE;
  return FALSE;
}

typedef struct
{
  GtkWidget *form;
  const char *words;
} Refusal;

static gboolean
is_said (gpointer data)
{
  const Refusal *refusal = data;

  return has_words (refusal->form, refusal->words);
}

/* Typed there and saved it is refused with these words; the field still says it. */
static void
ck_refused (GtkWidget *form, const char *label, const char *typed, const char *words)
{
  Refusal refusal = { form, words };

  gtk_editable_set_text (desk_hand_field (form, label), typed);
  desk_hand_press (form, "Save");
  desk_shop_wait (is_said, &refusal, words);
  ck_assert_str_eq (gtk_editable_get_text (desk_hand_field (form, label)), typed);
}

START_TEST (a_holiday_is_a_day_of_the_calendar)
{
  begin ();
  GtkWidget *form = open_form (NULL, "Add a holiday…");

  gtk_editable_set_text (desk_hand_field (form, "Name"), "Founders’ day");
  ck_refused (form, "Day", "soon", "“soon”");
  ck_refused (form, "Day", "2027-02-30", "“2027-02-30” is no day");
  desk_hand_wait_text ("0", "SELECT count (*) FROM holidays");
  gtk_editable_set_text (desk_hand_field (form, "Day"), "2027-03-01");
  desk_hand_press (form, "Save");
  desk_hand_wait_text ("2027-03-01 Founders’ day", "SELECT day || ' ' || name FROM holidays");
  desk_hand_wait_no_dialog (UNSOOT_TYPE_DEED_DIALOG);
  desk_hand_leave (window, session);
}
END_TEST

START_TEST (hours_are_of_the_clock)
{
  begin ();
  GtkWidget *form = open_form ("Monday", "Change…");

  ck_refused (form, "Opens", "25:00", "25:00");
  ck_refused (form, "Opens", "18:00", "clos");
  desk_hand_wait_text ("450 1050", "SELECT opens_minute || ' ' || closes_minute FROM open_hours"
                                   " WHERE weekday = 1");
  gtk_editable_set_text (desk_hand_field (form, "Opens"), "06:45");
  desk_hand_press (form, "Save");
  desk_hand_wait_text ("405 1050", "SELECT opens_minute || ' ' || closes_minute FROM open_hours"
                                   " WHERE weekday = 1");
  desk_hand_wait_no_dialog (UNSOOT_TYPE_DEED_DIALOG);
  desk_hand_leave (window, session);
}
END_TEST

START_TEST (a_price_is_an_amount)
{
  begin ();
  GtkWidget *form = open_form ("Both sides", "Change…");
  static const char price[] = "SELECT price_minor FROM services WHERE name = 'Both sides'";

  ck_refused (form, "Labour", "a lot", "“a lot”");
  ck_refused (form, "Labour", "349.999", "349.999");
  desk_hand_wait_text ("34900", price);
  gtk_editable_set_text (desk_hand_field (form, "Labour"), "355.50");
  desk_hand_press (form, "Save");
  desk_hand_wait_text ("35550", price);
  desk_hand_wait_no_dialog (UNSOOT_TYPE_DEED_DIALOG);
  desk_hand_leave (window, session);
}
END_TEST

static GtkEditable *
pin_field (GtkWidget *dialog, const char *name)
{
  return GTK_EDITABLE (gtk_widget_get_template_child (dialog, UNSOOT_TYPE_PIN_DIALOG, name));
}

static gpointer
sign_in (UnsootDb *db, gpointer pin, GCancellable *cancellable, GError **error)
{
  gint64 id = 0;

  if (!unsoot_db_int (db, &id, error, "SELECT id FROM staff WHERE role = 'owner'"))
    return NULL;
  return unsoot_staff_sign_in (db, id, pin, error);
}

static gboolean
opens_with (const char *pin)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (UnsootStaffRow) person = unsoot_store_call (unsoot_session_get_store (session),
                                                         sign_in, (gpointer) pin, NULL, &error);

  ck_assert (person != NULL || error != NULL);
  return person != NULL;
}

/* Both must be the same; then the former one opens nothing any more. */
START_TEST (a_pin_is_changed)
{
  begin ();
  g_autofree char *owner = desk_hand_text ("SELECT name FROM staff WHERE role = 'owner'");
  GtkWidget *row
      = gtk_widget_get_ancestor (desk_shop_label (GTK_WIDGET (window), owner), ADW_TYPE_ACTION_ROW);
  GtkWidget *dialog;

  ck_assert (opens_with ("1111"));
  desk_hand_press (row, "Change PIN…");
  dialog = desk_hand_wait_dialog (UNSOOT_TYPE_PIN_DIALOG);
  gtk_editable_set_text (pin_field (dialog, "pin"), "90210");
  gtk_editable_set_text (pin_field (dialog, "again"), "90211");
  g_signal_emit_by_name (gtk_widget_get_template_child (dialog, UNSOOT_TYPE_PIN_DIALOG, "set"),
                         "clicked");
  ck_assert (has_words (dialog, "The two are not the same"));
  ck_assert (opens_with ("1111"));
  gtk_editable_set_text (pin_field (dialog, "again"), "90210");
  g_signal_emit_by_name (gtk_widget_get_template_child (dialog, UNSOOT_TYPE_PIN_DIALOG, "set"),
                         "clicked");
  desk_hand_wait_no_dialog (UNSOOT_TYPE_PIN_DIALOG);
  ck_assert (opens_with ("90210"));
  ck_assert (!opens_with ("1111"));
  desk_hand_leave (window, session);
}
END_TEST

static Suite *
preferences_suite (void)
{
  Suite *suite = suite_create ("preferences");
  TCase *tcase = tcase_create ("preferences");

  tcase_set_timeout (tcase, 120);
  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_add_test (tcase, a_holiday_is_a_day_of_the_calendar);
  tcase_add_test (tcase, hours_are_of_the_clock);
  tcase_add_test (tcase, a_price_is_an_amount);
  tcase_add_test (tcase, a_pin_is_changed);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (preferences_suite)
