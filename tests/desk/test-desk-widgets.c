/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card.h"
#include "columns.h"
#include "day-strip.h"
#include "desk-shop.h"
#include "facts.h"
#include "job-path.h"
#include "job-row.h"
#include "link-row.h"
#include "side-mark.h"
#include "status-mark.h"
#include "suite.h"
#include "table.h"

/* The small parts on their own: what they hold, what they are called, and that they go. */

enum
{
  HOUR = 3600
};

static GtkWidget *
shown (GtkWidget *child)
{
  GtkWidget *window = gtk_window_new ();

  gtk_window_set_default_size (GTK_WINDOW (window), 1000, 500);
  gtk_window_set_child (GTK_WINDOW (window), child);
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (window);
  return window;
}

static void
ck_name (GtkWidget *widget, const char *name)
{
  g_autofree char *fault = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget),
                                                               GTK_ACCESSIBLE_PROPERTY_LABEL, name);

  ck_assert_msg (fault == NULL, "not called “%s”: %s", name, fault);
}

static void
show_day (UnsootDayStrip *strip)
{
  static const char *const lanes[] = { "Bay 1", "Bay 2", NULL };
  g_autoptr (GTimeZone) zone = g_time_zone_new_utc ();
  const UnsootStripItem items[] = {
    { 7, 9 * HOUR, 10 * HOUR, 0, "7KD 204", "Brindle", "both", "Job 7", UNSOOT_STRIP_RUNNING, 0.5 },
    { 8, 11 * HOUR, 12 * HOUR, 1, "1AB 100", "Skelder", "fuel", "Job 8", UNSOOT_STRIP_PLANNED, 0 }
  };

  unsoot_day_strip_set_day (strip, lanes, 0, 8 * HOUR, 18 * HOUR, zone, items, 2);
}

/* What of that type can be seen. */
static guint
in_view (GtkWidget *root, GType type)
{
  guint n = G_TYPE_CHECK_INSTANCE_TYPE (root, type) && gtk_widget_get_mapped (root) ? 1 : 0;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += in_view (child, type);
  return n;
}

static gboolean
is_cut (GtkWidget *root)
{
  if (!gtk_widget_get_mapped (root))
    return FALSE;
  if (GTK_IS_LABEL (root) && pango_layout_is_ellipsized (gtk_label_get_layout (GTK_LABEL (root))))
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (is_cut (child))
      return TRUE;
  return FALSE;
}

/* Twenty minutes of ten hours are narrower than a plate: it is told on two lines, whole. */
START_TEST (a_short_job_is_told_in_fewer_words)
{
  static const char *const lanes[] = { "Bay 1", NULL };
  g_autoptr (GTimeZone) zone = g_time_zone_new_utc ();
  const UnsootStripItem items[] = { { 7, 9 * HOUR, 9 * HOUR + HOUR * 2 / 5, 0, "7KD 204", "Brindle",
                                      "fuel", "Job 7", UNSOOT_STRIP_PLANNED, 0 },
                                    { 8, 10 * HOUR, 13 * HOUR, 0, "1AB 100", "Skelder", "both",
                                      "Job 8", UNSOOT_STRIP_PLANNED, 0 } };
  GtkWidget *strip, *window, *narrow, *wide;

  desk_shop_start_toolkit ();
  strip = unsoot_day_strip_new ();
  unsoot_day_strip_set_day (UNSOOT_DAY_STRIP (strip), lanes, 0, 8 * HOUR, 18 * HOUR, zone, items,
                            2);
  window = shown (strip);
  narrow = desk_shop_widget (strip, UNSOOT_TYPE_STRIP_BLOCK);
  wide = gtk_widget_get_next_sibling (narrow);
  ck_assert_uint_eq (in_view (narrow, GTK_TYPE_LABEL), 1);
  ck_assert_uint_eq (in_view (narrow, UNSOOT_TYPE_SIDE_MARK), 1);
  ck_assert (!is_cut (narrow));
  ck_assert_uint_eq (in_view (wide, GTK_TYPE_LABEL), 2);
  ck_assert_uint_eq (in_view (wide, UNSOOT_TYPE_SIDE_MARK), 2);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (the_strip_holds_the_day)
{
  GtkWidget *strip, *window, *block;
  graphene_rect_t first, second;

  desk_shop_start_toolkit ();
  strip = unsoot_day_strip_new ();
  show_day (UNSOOT_DAY_STRIP (strip));
  unsoot_day_strip_set_now (UNSOOT_DAY_STRIP (strip), 13 * HOUR);
  window = shown (strip);
  ck_assert_uint_eq (desk_shop_count (strip, UNSOOT_TYPE_STRIP_BLOCK), 2);
  block = desk_shop_widget (strip, UNSOOT_TYPE_STRIP_BLOCK);
  ck_name (block, "Job 7");
  ck_assert (gtk_widget_get_focusable (block));
  ck_assert_uint_eq (in_view (block, UNSOOT_TYPE_SIDE_MARK), 2);
  ck_near (unsoot_strip_block_get_progress (UNSOOT_STRIP_BLOCK (block)), 0.5, 1e-9);
  ck_assert (gtk_widget_compute_bounds (block, strip, &first));
  ck_assert (gtk_widget_compute_bounds (gtk_widget_get_next_sibling (block), strip, &second));
  ck_assert (first.origin.x + first.size.width < second.origin.x);
  ck_assert (first.origin.y + first.size.height < second.origin.y);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (another_day_takes_the_old_blocks_away)
{
  GtkWidget *strip, *window;

  desk_shop_start_toolkit ();
  strip = unsoot_day_strip_new ();
  show_day (UNSOOT_DAY_STRIP (strip));
  show_day (UNSOOT_DAY_STRIP (strip));
  window = shown (strip);
  ck_assert_uint_eq (desk_shop_count (strip, UNSOOT_TYPE_STRIP_BLOCK), 2);
  g_object_add_weak_pointer (G_OBJECT (strip), (gpointer *) &strip);
  gtk_window_destroy (GTK_WINDOW (window));
  desk_shop_settle ();
  ck_assert_msg (strip == NULL, "the strip was not freed");
}
END_TEST

static void
add_status (GPtrArray *rows, const char *status, gint64 at)
{
  UnsootJobStatusRow *row = unsoot_job_status_row_new ();

  row->status = g_strdup (status);
  row->at = at;
  g_ptr_array_add (rows, row);
}

START_TEST (the_path_is_named_stop_by_stop)
{
  g_autoptr (GPtrArray) rows
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_job_status_row_free);
  g_autoptr (GTimeZone) zone = g_time_zone_new_utc ();
  GtkWidget *path, *window, *stop;

  desk_shop_start_toolkit ();
  add_status (rows, "quoted", 8 * HOUR);
  add_status (rows, "arrived", 9 * HOUR);
  path = unsoot_job_path_new ();
  unsoot_job_path_show (UNSOOT_JOB_PATH (path), "arrived", rows, 10 * HOUR, zone);
  window = shown (path);
  stop = gtk_widget_get_first_child (path);
  ck_name (stop, "Quoted, 08:00");
  ck_name (gtk_widget_get_next_sibling (stop), "Booked, left out");
  ck_name (gtk_widget_get_last_child (path), "Paid, to come");
  ck_assert_ptr_nonnull (desk_shop_label (path, "09:00"));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (sides_are_told_by_words_too)
{
  g_autoptr (GtkWidget) mark = NULL;

  desk_shop_start_toolkit ();
  mark = g_object_ref_sink (unsoot_side_mark_new (UNSOOT_SIDE_FUEL, 1500));
  ck_name (mark, "Fuel side: 1.5 L");
  ck_assert (gtk_widget_has_css_class (mark, "fuel-side"));
  ck_assert_str_eq (unsoot_sides_words ("both"), "Both sides");
  ck_assert_str_eq (unsoot_sides_words ("intake"), "Intake side");
}
END_TEST

START_TEST (a_link_is_read_once)
{
  g_autoptr (GtkWidget) row = NULL;

  desk_shop_start_toolkit ();
  row = g_object_ref_sink (unsoot_link_row_new ("job", 7, "Job <7>", "today"));
  ck_name (row, "Job <7>, today");
  ck_assert (!gtk_test_accessible_has_relation (GTK_ACCESSIBLE (row),
                                                GTK_ACCESSIBLE_RELATION_LABELLED_BY));
}
END_TEST

START_TEST (cards_and_facts)
{
  GtkWidget *card, *facts, *window;

  desk_shop_start_toolkit ();
  card = g_object_new (UNSOOT_TYPE_CARD, "title", "Readings", NULL);
  facts = unsoot_facts_new ();
  ck_assert (unsoot_facts_is_empty (UNSOOT_FACTS (facts)));
  ck_assert_ptr_null (unsoot_facts_add (UNSOOT_FACTS (facts), "Plate", NULL));
  ck_assert_ptr_null (unsoot_facts_add (UNSOOT_FACTS (facts), "Plate", ""));
  ck_assert_ptr_nonnull (unsoot_facts_add (UNSOOT_FACTS (facts), "Plate", "7KD <204>"));
  gtk_box_append (GTK_BOX (card), facts);
  window = shown (card);
  ck_name (card, "Readings");
  ck_assert_ptr_nonnull (desk_shop_label (card, "7KD <204>"));
  unsoot_card_clear (UNSOOT_CARD (card));
  ck_assert_ptr_null (desk_shop_label (card, "7KD <204>"));
  ck_assert_ptr_nonnull (desk_shop_label (card, "Readings"));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

static GtkWidget *
columns_with (int n)
{
  GtkWidget *columns = g_object_new (UNSOOT_TYPE_COLUMNS, NULL);

  for (int i = 0; i < n; i++)
    {
      GtkWidget *child = gtk_label_new ("x");
      gtk_widget_set_size_request (child, -1, 100);
      gtk_widget_set_parent (child, columns);
    }
  return columns;
}

START_TEST (columns_fold)
{
  GtkWidget *columns, *window;
  int wide, narrow;

  desk_shop_start_toolkit ();
  columns = columns_with (4);
  window = shown (columns);
  gtk_widget_measure (columns, GTK_ORIENTATION_VERTICAL, UNSOOT_COLUMNS_SPLIT, &wide, NULL, NULL,
                      NULL);
  gtk_widget_measure (columns, GTK_ORIENTATION_VERTICAL, UNSOOT_COLUMNS_SPLIT - 1, &narrow, NULL,
                      NULL, NULL);
  ck_assert_int_eq (wide, 212);
  ck_assert_int_eq (narrow, 436);
  /* One that needs more than half of it keeps them below one another. */
  gtk_widget_set_size_request (gtk_widget_get_last_child (columns), UNSOOT_COLUMNS_SPLIT / 2, 100);
  gtk_widget_measure (columns, GTK_ORIENTATION_VERTICAL, UNSOOT_COLUMNS_SPLIT, &wide, NULL, NULL,
                      NULL);
  ck_assert_int_eq (wide, 436);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (tables_and_status)
{
  static const UnsootTableColumn columns[]
      = { { "What", FALSE, TRUE }, { "Amount", TRUE, FALSE }, { "", FALSE, FALSE }, { NULL } };
  const char *const line[] = { "Labour", "<b>1</b>", NULL };
  int width;
  g_autoptr (GtkWidget) table = NULL, mark = NULL;
  int row;

  desk_shop_start_toolkit ();
  table = g_object_ref_sink (unsoot_table_new ("Lines", columns));
  row = unsoot_table_add (UNSOOT_TABLE (table), line);
  ck_assert_int_eq (row, 1);
  ck_name (table, "Lines");
  ck_assert_ptr_nonnull (desk_shop_label (table, "1"));
  /* The line above a total ends where the figures do, not in a column that nothing stands in. */
  row = unsoot_table_add_total (UNSOOT_TABLE (table), line);
  gtk_grid_query_child (GTK_GRID (table), gtk_grid_get_child_at (GTK_GRID (table), 0, row - 1),
                        NULL, NULL, &width, NULL);
  ck_assert_int_eq (width, 2);
  gtk_grid_remove (GTK_GRID (table), gtk_grid_get_child_at (GTK_GRID (table), 1, row));
  row = 1;
  unsoot_table_put (UNSOOT_TABLE (table), row, 1, gtk_label_new ("other"));
  ck_assert_ptr_null (desk_shop_label (table, "1"));
  mark = g_object_ref_sink (unsoot_status_mark_new ());
  unsoot_status_mark_set (mark, "in-bay");
  ck_assert (gtk_widget_has_css_class (mark, "now"));
  unsoot_status_mark_set (mark, "paid");
  ck_assert (!gtk_widget_has_css_class (mark, "now"));
}
END_TEST

static Suite *
desk_widgets_suite (void)
{
  Suite *suite = suite_create ("desk widgets");
  TCase *tcase = tcase_create ("widgets");

  tcase_add_test (tcase, a_short_job_is_told_in_fewer_words);
  tcase_add_test (tcase, the_strip_holds_the_day);
  tcase_add_test (tcase, another_day_takes_the_old_blocks_away);
  tcase_add_test (tcase, the_path_is_named_stop_by_stop);
  tcase_add_test (tcase, sides_are_told_by_words_too);
  tcase_add_test (tcase, a_link_is_read_once);
  tcase_add_test (tcase, cards_and_facts);
  tcase_add_test (tcase, columns_fold);
  tcase_add_test (tcase, tables_and_status);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (desk_widgets_suite)
