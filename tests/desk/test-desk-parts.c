/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "board-tag-widget.h"
#include "deed-button.h"
#include "deed-dialog.h"
#include "deed-entry.h"
#include "deed-form.h"
#include "desk-shop.h"
#include "fluid-shelf-row.h"
#include "fluid-words.h"
#include "machine-card.h"
#include "staff.h"
#include "stock-picture.h"
#include "stocks.h"
#include "suite.h"
#include "supply-orders.h"
#include "tank-picture.h"
#include "window.h"

/* What the parts clerk reads, and what the forms make of what is typed. */

static UnsootDeedField
field (UnsootAskKind kind, gboolean optional)
{
  return (UnsootDeedField){ .label = "How much", .kind = kind, .optional = optional };
}

static void
check_read (UnsootAskKind kind, const char *text, gint64 number, const char *kept)
{
  const UnsootDeedField asked = field (kind, FALSE);
  g_autoptr (UnsootDeedOrder) order = unsoot_deed_order_new (1);
  GError *error = NULL;

  ck_assert_msg (unsoot_deed_field_read (&asked, text, "USD", &order->values[0], &error), "%s: %s",
                 text, error != NULL ? error->message : "");
  ck_assert_int_eq (order->values[0].number, number);
  ck_assert_str_eq (order->values[0].text, kept);
}

static void
check_wrong (UnsootAskKind kind, const char *text, const char *words)
{
  const UnsootDeedField asked = field (kind, FALSE);
  g_autoptr (UnsootDeedOrder) order = unsoot_deed_order_new (1);
  g_autoptr (GError) error = NULL;

  ck_assert_msg (!unsoot_deed_field_read (&asked, text, "USD", &order->values[0], &error), "%s",
                 text);
  ck_assert_msg (strstr (error->message, words) != NULL, "%s", error->message);
}

START_TEST (forms_read_what_people_type)
{
  const UnsootDeedField free = field (UNSOOT_ASK_VOLUME, TRUE);
  g_autoptr (UnsootDeedOrder) order = unsoot_deed_order_new (1);

  check_read (UNSOOT_ASK_VOLUME, " 2 x 5 L ", 10000, "2 x 5 L");
  check_read (UNSOOT_ASK_VOLUME, "1 qt", 946, "1 qt"); /* NIST SP 811 */
  check_read (UNSOOT_ASK_MONEY, "$1,234.50", 123450, "$1,234.50");
  check_read (UNSOOT_ASK_DAY, "2027-02", 0, "2027-02-28");
  check_read (UNSOOT_ASK_COUNT, "12", 12, "12");
  check_wrong (UNSOOT_ASK_VOLUME, "lots", "lots");
  check_wrong (UNSOOT_ASK_VOLUME, "", "How much");
  check_wrong (UNSOOT_ASK_TEXT, "   ", "How much");
  check_wrong (UNSOOT_ASK_COUNT, "1.5", "1.5");
  check_wrong (UNSOOT_ASK_DAY, "soon", "soon");
  check_wrong (UNSOOT_ASK_PRESSURE, "8 L", "does not measure a pressure");
  ck_assert (unsoot_deed_field_read (&free, "", "USD", &order->values[0], NULL));
  ck_assert_ptr_null (unsoot_deed_text (order, 0));
}
END_TEST

START_TEST (volumes_with_their_sign)
{
  g_autofree char *whole = unsoot_volume_markup (12500);
  g_autofree char *less = unsoot_volume_change_markup (-500);
  g_autofree char *more = unsoot_volume_change_markup (5000);
  g_autofree char *none = unsoot_volume_change_markup (0);

  ck_assert (g_str_has_prefix (whole, "12.5 <"));
  ck_assert (g_str_has_prefix (less, "−0.5 <"));
  ck_assert (g_str_has_prefix (more, "+5 <"));
  ck_assert (g_str_has_prefix (none, "0 <"));
  ck_assert_str_eq (unsoot_move_kind_words ("spill"), "Spilled");
  ck_assert_str_eq (unsoot_move_kind_words ("other"), "other");
}
END_TEST

static UnsootWindow *
open_window (UnsootSession *session)
{
  UnsootWindow *window = g_object_new (UNSOOT_TYPE_WINDOW, NULL);

  unsoot_window_set_session (window, session);
  gtk_window_present (GTK_WINDOW (window));
  return window;
}

static gboolean
is_settled (gpointer data)
{
  UnsootView *view = unsoot_window_get_view (data);

  return view != NULL && unsoot_view_is_settled (view);
}

static UnsootView *
go (UnsootWindow *window, const char *slug, gint64 record)
{
  ck_assert (unsoot_window_open (window, slug, record));
  desk_shop_wait (is_settled, window, slug);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return unsoot_window_get_view (window);
}

static gint64
raw_count (const char *sql)
{
  g_autoptr (GError) error = NULL;
  UnsootDb *db = unsoot_db_open (desk_shop_path (), UNSOOT_DB_READ_ONLY, &error);
  gint64 n = 0;

  ck_no_error (error);
  ck_assert (unsoot_db_int (db, &n, &error, sql));
  unsoot_db_close (db);
  return n;
}

static gpointer
find_clerk (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_staff_find (db, "Tobin Esker", error);
}

static void
sit_clerk (UnsootSession *session)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (UnsootStaffRow) clerk
      = unsoot_store_call (unsoot_session_get_store (session), find_clerk, NULL, NULL, &error);

  ck_no_error (error);
  unsoot_session_set_person (session, clerk);
}

START_TEST (each_place_shows_what_the_book_has)
{
  desk_shop_start_toolkit ();
  g_autoptr (UnsootSession) session = desk_shop_open ();
  UnsootWindow *window = open_window (session);
  GtkWidget *view;

  sit_clerk (session);
  view = GTK_WIDGET (go (window, "fluids", 0));
  ck_assert_uint_eq (desk_shop_count (view, UNSOOT_TYPE_FLUID_SHELF_ROW),
                     raw_count ("SELECT count (*) FROM fluids WHERE active = 1"));
  view = GTK_WIDGET (go (window, "adapters", 0));
  ck_assert_uint_eq (desk_shop_count (view, UNSOOT_TYPE_BOARD_TAG_WIDGET),
                     raw_count ("SELECT count (*) FROM adapter_items WHERE state <> 'retired'"));
  view = GTK_WIDGET (go (window, "machines", 0));
  ck_assert_uint_eq (desk_shop_count (view, UNSOOT_TYPE_MACHINE_CARD),
                     raw_count ("SELECT count (*) FROM machines WHERE active = 1"));
  ck_assert_uint_eq (desk_shop_count (view, UNSOOT_TYPE_TANK_PICTURE),
                     raw_count ("SELECT count (*) FROM tanks"));
  view = GTK_WIDGET (go (window, "kits", 0));
  ck_assert_ptr_nonnull (desk_shop_label (view, "Crossover gasket"));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (each_record_opens)
{
  desk_shop_start_toolkit ();
  g_autoptr (UnsootSession) session = desk_shop_open ();
  UnsootWindow *window = open_window (session);

  sit_clerk (session);
  ck_assert_ptr_nonnull (
      desk_shop_widget (GTK_WIDGET (go (window, "fluid", 1)), UNSOOT_TYPE_STOCK_PICTURE));
  ck_assert_ptr_nonnull (desk_shop_label (GTK_WIDGET (go (window, "lot", 1)), "Jobs that had it"));
  ck_assert_ptr_nonnull (desk_shop_label (GTK_WIDGET (go (window, "adapter", 1)), "What it fits"));
  go (window, "loan", raw_count ("SELECT min (id) FROM loans WHERE back_at IS NULL"));
  ck_assert_ptr_nonnull (
      desk_shop_label (GTK_WIDGET (unsoot_window_get_view (window)), "Take back…"));
  ck_assert_uint_eq (
      desk_shop_count (GTK_WIDGET (go (window, "machine", 1)), UNSOOT_TYPE_TANK_PICTURE), 2);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* Whoever may not do a deed finds its button insensitive, with the reason; hands change it. */
START_TEST (buttons_follow_the_role)
{
  desk_shop_start_toolkit ();
  g_autoptr (UnsootSession) session = desk_shop_open ();
  GtkWidget *button = g_object_ref_sink (
      unsoot_deed_button_new (session, UNSOOT_DEED_ADJUST_STOCK, "Count", "A"));

  ck_assert (!gtk_widget_get_sensitive (button));
  ck_assert_ptr_nonnull (strstr (gtk_widget_get_tooltip_text (button), "service advisor"));
  unsoot_deed_button_suggest (button, TRUE);
  ck_assert (!gtk_widget_has_css_class (button, "suggested-action"));
  sit_clerk (session);
  ck_assert (gtk_widget_get_sensitive (button));
  ck_assert_ptr_null (gtk_widget_get_tooltip_text (button));
  unsoot_deed_button_bar (button, "lent to Osier Garage");
  ck_assert (!gtk_widget_get_sensitive (button));
  ck_assert_str_eq (gtk_widget_get_tooltip_text (button), "lent to Osier Garage");
  g_object_unref (button);
}
END_TEST

static gboolean
spill (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootStockMoveRow) move = unsoot_stock_move_row_new ();

  move->lot_id = order->record;
  move->kind = g_strdup ("spill");
  move->ml = -order->values[0].number;
  move->reason = g_strdup (order->values[1].text);
  return unsoot_stock_post (db, who, move, error);
}

static const UnsootDeedForm spill_form
    = { .slug = "test-spill",
        .title = "Spill",
        .verb = "Spill it",
        .done = "Spilled",
        .deed = UNSOOT_DEED_RECORD_WASTE,
        .n_fields = 2,
        .fields = { { .label = "How much", .kind = UNSOOT_ASK_VOLUME },
                    { .label = "Why", .kind = UNSOOT_ASK_TEXT } },
        .carry_out = spill };

typedef struct
{
  const char *words;
  GtkWidget *dialog;
} Said;

static GtkWidget *
label_with (GtkWidget *root, const char *words)
{
  if (GTK_IS_LABEL (root) && gtk_widget_get_visible (root)
      && strstr (gtk_label_get_text (GTK_LABEL (root)), words) != NULL)
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = label_with (child, words);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
is_said (gpointer data)
{
  const Said *said = data;

  return label_with (said->dialog, said->words) != NULL;
}

static void
press (GtkWidget *dialog, const char *label)
{
  GtkWidget *words = desk_shop_label (dialog, label);

  g_signal_emit_by_name (gtk_widget_get_ancestor (words, GTK_TYPE_BUTTON), "clicked");
}

/* What is wrong is said at the field; what the store refuses, below; everything typed stays, and
 * is there again after Cancel. */
START_TEST (nothing_typed_is_lost)
{
  desk_shop_start_toolkit ();
  g_autoptr (UnsootSession) session = desk_shop_open ();
  UnsootWindow *window = open_window (session);
  const gint64 before = raw_count ("SELECT count (*) FROM stock_moves");
  UnsootDeedDialog *dialog;
  Said said = { "900000", NULL };

  sit_clerk (session);
  go (window, "fluids", 0);
  dialog = unsoot_deed_dialog_new (GTK_WIDGET (unsoot_window_get_view (window)), session,
                                   &spill_form, 1);
  unsoot_deed_dialog_open (dialog);
  unsoot_deed_dialog_set_text (dialog, 0, "a few");
  press (GTK_WIDGET (dialog), "Spill it");
  ck_assert_ptr_nonnull (label_with (GTK_WIDGET (dialog), "a few"));
  ck_assert_ptr_nonnull (label_with (GTK_WIDGET (dialog), "“Why” is needed"));
  unsoot_deed_dialog_set_text (dialog, 0, "900 L");
  unsoot_deed_dialog_set_text (dialog, 1, "knocked over");
  press (GTK_WIDGET (dialog), "Spill it");
  said.dialog = GTK_WIDGET (dialog);
  said.words = "can't be taken out of it";
  desk_shop_wait (is_said, &said, "the store's refusal");
  gtk_window_close (GTK_WINDOW (dialog));
  ck_assert_int_eq (raw_count ("SELECT count (*) FROM stock_moves"), before);

  dialog = unsoot_deed_dialog_new (GTK_WIDGET (unsoot_window_get_view (window)), session,
                                   &spill_form, 1);
  unsoot_deed_dialog_open (dialog);
  said.dialog = GTK_WIDGET (dialog);
  said.words = "Kept from";
  desk_shop_wait (is_said, &said, "the draft");
  press (GTK_WIDGET (dialog), "Spill it");
  said.words = "can't be taken out of it";
  desk_shop_wait (is_said, &said, "the same refusal of the same text");
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* The clerk may add what stands in the store; a service advisor finds out whom to ask. */
START_TEST (what_there_is_can_be_added)
{
  static const struct
  {
    const char *slug;
    gint64 record;
    const char *button;
  } adds[] = { { "fluids", 0, "Add a fluid…" },       { "fluids", 0, "Add a supplier…" },
               { "fluid", 1, "Add a pack…" },         { "fluid", 1, "Change the fluid…" },
               { "fluid", 1, "Change the hazards…" }, { "fluid", 1, "Order…" },
               { "adapters", 0, "Add an adapter…" },  { "adapters", 0, "Add a kind…" },
               { "adapter", 1, "Add what it fits…" }, { "adapter", 1, "Change the kind…" } };

  desk_shop_start_toolkit ();
  g_autoptr (UnsootSession) session = desk_shop_open ();
  UnsootWindow *window = open_window (session);

  for (gsize i = 0; i < G_N_ELEMENTS (adds); i++)
    {
      GtkWidget *view = GTK_WIDGET (go (window, adds[i].slug, adds[i].record));
      GtkWidget *words = desk_shop_label (view, adds[i].button);
      ck_assert_msg (words != NULL, "%s", adds[i].button);
      ck_assert_msg (!gtk_widget_is_sensitive (words), "%s", adds[i].button);
    }
  sit_clerk (session);
  for (gsize i = 0; i < G_N_ELEMENTS (adds); i++)
    {
      GtkWidget *view = GTK_WIDGET (go (window, adds[i].slug, adds[i].record));
      ck_assert_msg (gtk_widget_is_sensitive (desk_shop_label (view, adds[i].button)), "%s",
                     adds[i].button);
    }
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

static gpointer
order_one (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootActing *who = data;
  g_autoptr (UnsootSupplyOrderRow) order = unsoot_supply_order_row_new ();

  order->fluid_id = 1;
  order->packs = 2;
  order->pack_ml = 5000;
  unsoot_supply_order_place (db, who, order, error);
  return NULL;
}

/* What is on order stands on the fluid's page with its deeds, and in the table of all. */
START_TEST (an_order_is_seen_until_it_is_here)
{
  desk_shop_start_toolkit ();
  g_autoptr (UnsootSession) session = desk_shop_open ();
  UnsootWindow *window = open_window (session);
  UnsootActing who = { .now = unsoot_session_now (session) };
  g_autoptr (GError) error = NULL;
  GtkWidget *view;

  sit_clerk (session);
  view = GTK_WIDGET (go (window, "fluid", 1));
  ck_assert_ptr_nonnull (desk_shop_label (view, "Nothing is on order."));
  unsoot_store_call (unsoot_session_get_store (session), order_one, &who, NULL, &error);
  ck_no_error (error);
  go (window, "fluids", 0);
  view = GTK_WIDGET (go (window, "fluid", 1));
  ck_assert_ptr_nonnull (label_with (view, "Order 1: 2 × 5 L from"));
  ck_assert_ptr_nonnull (desk_shop_label (view, "Other day…"));
  ck_assert_ptr_null (desk_shop_label (view, "Nothing is on order."));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

static Suite *
desk_parts_suite (void)
{
  Suite *suite = suite_create ("desk parts");
  TCase *words = tcase_create ("words");
  TCase *pages = tcase_create ("pages");

  tcase_add_test (words, forms_read_what_people_type);
  tcase_add_test (words, volumes_with_their_sign);
  tcase_add_unchecked_fixture (pages, desk_shop_make, desk_shop_remove);
  tcase_set_timeout (pages, 120);
  tcase_add_test (pages, each_place_shows_what_the_book_has);
  tcase_add_test (pages, each_record_opens);
  tcase_add_test (pages, buttons_follow_the_role);
  tcase_add_test (pages, what_there_is_can_be_added);
  tcase_add_test (pages, nothing_typed_is_lost);
  tcase_add_test (pages, an_order_is_seen_until_it_is_here);
  suite_add_tcase (suite, words);
  suite_add_tcase (suite, pages);
  return suite;
}

UNSOOT_TEST_MAIN (desk_parts_suite)
