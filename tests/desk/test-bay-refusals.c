/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "bay-entry.h"
#include "bay-hand.h"
#include "bay-lots.h"
#include "machines.h"
#include "stocks.h"
#include "suite.h"

/* What may not be poured, and into what: refused on the screen, with the reason in sight, at the
 * smallest size that the bay has to fit into. Rule 1: fluids never mix; any doubt is drained,
 * flushed, recorded, and starts over. */

#define WIDTH 1024
#define HEIGHT 600

#define FILLS "SELECT count (*) FROM run_events WHERE run_id = " BAY_RUN " AND lot_id IS NOT NULL"

static void
open_small (Bay *bay)
{
  bay->width = WIDTH;
  bay->height = HEIGHT;
  bay_open (bay);
  desk_hand_load_style ();
  gtk_test_widget_wait_for_draw (GTK_WIDGET (bay->window));
  ck_assert_int_le (gtk_widget_get_width (GTK_WIDGET (bay->window)), WIDTH);
  ck_assert_int_le (gtk_widget_get_height (GTK_WIDGET (bay->window)), HEIGHT);
}

/* The label that contains @words and is shown. */
static GtkWidget *
sentence (GtkWidget *root, const char *words)
{
  GtkWidget *found = NULL;

  if (GTK_IS_LABEL (root) && gtk_widget_get_mapped (root)
      && strstr (gtk_label_get_text (GTK_LABEL (root)), words) != NULL)
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = sentence (child, words);
  return found;
}

/* All of it, where nobody has to scroll. */
static void
ck_in_sight (Bay *bay, const char *words)
{
  GtkWidget *label, *around;
  graphene_rect_t place;

  gtk_test_widget_wait_for_draw (GTK_WIDGET (bay->window));
  label = sentence (GTK_WIDGET (bay->card), words);
  ck_assert_msg (label != NULL, "nothing says “%s”", words);
  around = gtk_widget_get_ancestor (label, GTK_TYPE_SCROLLED_WINDOW);
  around = around != NULL && gtk_widget_is_ancestor (around, GTK_WIDGET (bay->card))
               ? around
               : GTK_WIDGET (bay->card);
  ck_assert (gtk_widget_compute_bounds (label, around, &place));
  ck_assert_msg (place.origin.y >= 0
                     && place.origin.y + place.size.height
                            <= (float) gtk_widget_get_height (around),
                 "“%s” stands at %.0f, %.0f high, in %d", words, (double) place.origin.y,
                 (double) place.size.height, gtk_widget_get_height (around));
}

/* Before the vehicle comes in, by the shop itself. */
static void
prepare (Bay *bay, UnsootStoreFunc deed, gpointer data)
{
  GError *error = NULL;

  if (bay->session == NULL)
    bay_sit (bay);
  unsoot_store_call (unsoot_session_get_store (bay->session), deed, data, NULL, &error);
  ck_no_error (error);
}

static gpointer
deliver_expired (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  UnsootActing who = { .now = desk_shop_now () };
  g_autoptr (UnsootLotRow) lot = unsoot_lot_row_new ();

  lot->code = g_strdup (data);
  lot->expires_on = g_strdup ("2020-01-31");
  if (unsoot_db_int (db, &lot->fluid_id, error, "SELECT min (id) FROM fluids WHERE side = 'fuel'"))
    unsoot_stock_deliver (db, &who, lot, 5000, error);
  return NULL;
}

static char *
lot_of_side (const char *where)
{
  g_autofree char *sql
      = g_strdup_printf ("SELECT l.code FROM lots l JOIN fluids f ON f.id = l.fluid_id WHERE %s"
                         " ORDER BY l.id LIMIT 1",
                         where);
  char *code = desk_hand_text (sql);

  ck_assert_msg (*code != '\0', "the demo shop has no such lot: %s", where);
  return code;
}

/* Scanned, refused, and still not the lot that is poured. */
static void
ck_lot_is_refused (Bay *bay, const char *where, const char *words)
{
  g_autofree char *code = lot_of_side (where);
  UnsootBayLots *lots
      = UNSOOT_BAY_LOTS (desk_shop_widget (GTK_WIDGET (bay->card), UNSOOT_TYPE_BAY_LOTS));
  g_autofree char *chosen_sql
      = g_strdup_printf ("SELECT code FROM lots WHERE id = %d", (int) unsoot_bay_lots_get (lots));
  g_autofree char *chosen = desk_hand_text (chosen_sql);

  unsoot_bay_card_say (bay->card, NULL);
  ck_assert (unsoot_bay_card_scan (bay->card, code));
  bay_ck_refused (bay, words);
  bay_ck_refused (bay, code);
  ck_in_sight (bay, words);
  ck_assert_str_ne (chosen, code);
}

START_TEST (the_wrong_lot_is_refused)
{
  Bay bay = { 0 };
  char old[] = "OLD-1";
  int before;

  prepare (&bay, deliver_expired, old);
  open_small (&bay);
  bay_go_to (&bay, UNSOOT_ACT_FILL, UNSOOT_SUBJECT_TANK);
  ck_assert_int_eq (unsoot_bay_card_get_task (bay.card)->ask.side, UNSOOT_SIDE_FUEL);
  before = bay_events ();
  ck_lot_is_refused (&bay, "f.side = 'intake'", "It never enters the fuel-side tank.");
  ck_lot_is_refused (&bay, "l.code = 'OLD-1'", "was good until");
  ck_assert_int_eq (bay_events (), before);
  bay_close (&bay);
}
END_TEST

static void
pass_over (Bay *bay)
{
  bay_note_asked (bay);
  bay_press (bay_part (bay, "pass_over"));
  gtk_editable_set_text (GTK_EDITABLE (bay_part (bay, "reason")), "done at the last job");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (bay->window));
  bay_press (bay_button (GTK_WIDGET (bay->card), "Pass over"));
  bay_wait_next (bay);
}

/* The screen asks for @act on the fuel tank, not for the fill, and says why. */
static void
ck_waits_for (Bay *bay, UnsootAct act, const char *reason)
{
  ck_assert (bay_asks (bay, act, UNSOOT_SUBJECT_TANK));
  ck_assert_int_eq (unsoot_bay_card_get_task (bay->card)->kind, UNSOOT_TASK_ACT);
  ck_assert_ptr_null (desk_shop_widget (GTK_WIDGET (bay->card), UNSOOT_TYPE_BAY_LOTS));
  ck_in_sight (bay, reason);
  ck_assert_int_eq ((int) bay_book (FILLS), 0);
}

static void
ck_starts_over (Bay *bay)
{
  ck_assert (bay_asks (bay, UNSOOT_ACT_FILL, UNSOOT_SUBJECT_TANK));
  ck_assert_ptr_nonnull (desk_shop_widget (GTK_WIDGET (bay->card), UNSOOT_TYPE_BAY_LOTS));
  bay_step_on (bay);
  ck_assert_int_eq ((int) bay_book (FILLS), 1);
}

#define MACHINE                                                                                    \
  "SELECT machine_id FROM bookings WHERE state = 'planned' AND job_id ="                           \
  " (SELECT min (id) FROM jobs WHERE status = 'arrived')"

/* What somebody found in the fuel tank of the machine that is booked. */
static gpointer
find_in_tank (UnsootDb *db, gpointer contents, GCancellable *cancellable, GError **error)
{
  UnsootActing who = { .now = desk_shop_now () };
  gint64 machine = 0;

  if (unsoot_db_int (db, &machine, error, MACHINE))
    unsoot_tank_post (db, &who, machine, "fuel", "found", 300, contents, NULL, error);
  return NULL;
}

/* The drain is passed over with that in the tank, and so is the flush, which is refused too. */
static void
ck_drained_first (char *contents, const char *reason)
{
  Bay bay = { 0 };

  prepare (&bay, find_in_tank, contents);
  open_small (&bay);
  bay_go_to (&bay, UNSOOT_ACT_DRAIN, UNSOOT_SUBJECT_TANK);
  pass_over (&bay);
  ck_in_sight (&bay, "Drain the tank before it is flushed.");
  ck_assert (!gtk_widget_is_sensitive (bay_part (&bay, "main")));
  pass_over (&bay);
  ck_waits_for (&bay, UNSOOT_ACT_DRAIN, reason);
  bay_step_on (&bay);
  ck_waits_for (&bay, UNSOOT_ACT_FLUSH, "The tank is drained but not flushed.");
  bay_step_on (&bay);
  ck_starts_over (&bay);
  bay_close (&bay);
}

START_TEST (an_unflushed_tank_is_not_filled)
{
  Bay bay = { 0 };
  char returned[] = "returned";

  prepare (&bay, find_in_tank, returned);
  open_small (&bay);
  bay_go_to (&bay, UNSOOT_ACT_FLUSH, UNSOOT_SUBJECT_TANK);
  pass_over (&bay);
  ck_waits_for (&bay, UNSOOT_ACT_FLUSH, "The tank is drained but not flushed.");
  bay_step_on (&bay);
  ck_starts_over (&bay);
  bay_close (&bay);
}
END_TEST

START_TEST (a_dirty_tank_is_not_filled)
{
  char returned[] = "returned";

  ck_drained_first (returned, "The tank holds returned fluid");
}
END_TEST

START_TEST (an_unknown_tank_is_not_filled)
{
  char unknown[] = "unknown";

  ck_drained_first (unknown, "What is in the tank is not known");
}
END_TEST

/* Less than the demo's smallest dose. */
static gpointer
shrink_tank (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  UnsootActing who = { .now = desk_shop_now () };
  g_autoptr (UnsootTankState) state = NULL;
  gint64 machine = 0;

  if (unsoot_db_int (db, &machine, error, MACHINE))
    state = unsoot_machine_tank (db, machine, "fuel", error);
  if (state == NULL)
    return NULL;
  state->tank->capacity_ml = 400;
  state->tank->low_ml = 100;
  unsoot_tank_save (db, &who, state->tank, error);
  return NULL;
}

START_TEST (a_tank_is_not_overfilled)
{
  Bay bay = { 0 };

  prepare (&bay, shrink_tank, NULL);
  open_small (&bay);
  bay_go_to (&bay, UNSOOT_ACT_FILL, UNSOOT_SUBJECT_TANK);
  ck_in_sight (&bay, "The tank doesn't hold that much.");
  ck_assert_ptr_null (desk_shop_widget (GTK_WIDGET (bay.card), UNSOOT_TYPE_BAY_LOTS));
  ck_assert (!gtk_widget_is_sensitive (bay_part (&bay, "main")));
  bay_close (&bay);
}
END_TEST

static Suite *
bay_refusals_suite (void)
{
  Suite *suite = suite_create ("bay refusals");
  TCase *tcase = tcase_create ("demo shop");

  tcase_set_timeout (tcase, 120);
  /* A book for each: a run that was begun stays begun. */
  tcase_add_checked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_add_test (tcase, the_wrong_lot_is_refused);
  tcase_add_test (tcase, an_unflushed_tank_is_not_filled);
  tcase_add_test (tcase, a_dirty_tank_is_not_filled);
  tcase_add_test (tcase, an_unknown_tank_is_not_filled);
  tcase_add_test (tcase, a_tank_is_not_overfilled);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (bay_refusals_suite)
