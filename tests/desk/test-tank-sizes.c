/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "deed-dialog.h"
#include "desk-hand.h"
#include "machines.h"
#include "suite.h"

/* A tank's size is changed in the preferences, by the form in this process; what came of it is read
 * by another handle. */

/* Nobody works with it. */
#define IDLE_MACHINE                                                                               \
  "(SELECT max (id) FROM machines WHERE active = 1 AND id NOT IN"                                  \
  " (SELECT machine_id FROM runs WHERE outcome IS NULL))"

#define FUEL_TANK                                                                                  \
  " FROM tanks t JOIN machines m ON m.id = t.machine_id WHERE t.side = 'fuel'"                     \
  " AND m.id = " IDLE_MACHINE

static UnsootSession *session;
static UnsootWindow *window;

static gpointer
find_in_tank (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  UnsootActing who = { .now = desk_shop_now () };
  gint64 machine = 0;

  if (unsoot_db_int (db, &machine, error, "SELECT " IDLE_MACHINE))
    unsoot_tank_post (db, &who, machine, "fuel", "found", 800, "returned", NULL, error);
  return NULL;
}

static gboolean
is_settled (gpointer data)
{
  return unsoot_view_is_settled (unsoot_window_get_view (window));
}

static void
begin (void)
{
  GError *error = NULL;

  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  unsoot_store_call (unsoot_session_get_store (session), find_in_tank, NULL, NULL, &error);
  ck_no_error (error);
  desk_hand_take (session, "owner");
  window = desk_hand_window (session);
  ck_assert (unsoot_window_open (window, "preferences", 0));
  desk_shop_wait (is_settled, NULL, "the preferences");
}

/* The row of that tank. */
static GtkWidget *
tank_row (void)
{
  g_autofree char *title = desk_hand_text ("SELECT m.name || ', tank: Fuel side'" FUEL_TANK);
  GtkWidget *words = desk_shop_label (GTK_WIDGET (window), title);

  ck_assert_msg (words != NULL, "no row %s", title);
  return gtk_widget_get_ancestor (words, ADW_TYPE_ACTION_ROW);
}

static gboolean
shows (gpointer detail)
{
  return desk_shop_label (tank_row (), detail) != NULL;
}

static GtkWidget *
open_form (void)
{
  desk_hand_press (tank_row (), "Change…");
  return desk_hand_wait_dialog (UNSOOT_TYPE_DEED_DIALOG);
}

static gboolean
is_refused (gpointer form)
{
  GtkWidget *label
      = GTK_WIDGET (gtk_widget_get_template_child (form, UNSOOT_TYPE_DEED_DIALOG, "trouble"));

  return gtk_widget_get_visible (label);
}

static void
ck_refused_with (GtkWidget *form, const char *words)
{
  desk_shop_wait (is_refused, form, "the sentence");
  const char *said = gtk_label_get_text (
      GTK_LABEL (gtk_widget_get_template_child (form, UNSOOT_TYPE_DEED_DIALOG, "trouble")));
  ck_assert_msg (strstr (said, words) != NULL, "“%s” does not say “%s”", said, words);
}

START_TEST (a_tank_is_made_bigger)
{
  begin ();
  GtkWidget *form = open_form ();

  gtk_editable_set_text (desk_hand_field (form, "It holds"), "6 L");
  gtk_editable_set_text (desk_hand_field (form, "Low mark"), "350 mL");
  desk_hand_press (form, "Save");
  desk_hand_wait_no_dialog (UNSOOT_TYPE_DEED_DIALOG);
  desk_hand_wait_text ("6000 350", "SELECT t.capacity_ml || ' ' || t.low_ml" FUEL_TANK);
  char wanted[] = "holds 6 L, low mark 0.35 L";
  desk_shop_wait (shows, wanted, wanted);
  desk_hand_leave (window, session);
}
END_TEST

START_TEST (it_is_never_smaller_than_what_is_in_it)
{
  begin ();
  g_autofree char *before = desk_hand_text ("SELECT t.capacity_ml || ' ' || t.low_ml" FUEL_TANK);
  GtkWidget *form = open_form ();

  gtk_editable_set_text (desk_hand_field (form, "It holds"), "0.7 L");
  gtk_editable_set_text (desk_hand_field (form, "Low mark"), "100 mL");
  desk_hand_press (form, "Save");
  ck_refused_with (form, "The tank holds 800 mL by the book, so it can't be one for 700 mL");
  /* What was typed stays, to be mended. */
  ck_assert_str_eq (gtk_editable_get_text (desk_hand_field (form, "It holds")), "0.7 L");
  gtk_editable_set_text (desk_hand_field (form, "It holds"), "0.8 L");
  gtk_editable_set_text (desk_hand_field (form, "Low mark"), "0.8 L");
  desk_hand_press (form, "Save");
  desk_shop_settle ();
  ck_refused_with (form, "low mark below it");
  desk_hand_wait_text (before, "SELECT t.capacity_ml || ' ' || t.low_ml" FUEL_TANK);
  gtk_window_destroy (GTK_WINDOW (form));
  desk_hand_leave (window, session);
}
END_TEST

static Suite *
tank_sizes_suite (void)
{
  Suite *suite = suite_create ("tank sizes");
  TCase *tcase = tcase_create ("preferences");

  tcase_set_timeout (tcase, 120);
  tcase_add_checked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_add_test (tcase, a_tank_is_made_bigger);
  tcase_add_test (tcase, it_is_never_smaller_than_what_is_in_it);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (tank_sizes_suite)
