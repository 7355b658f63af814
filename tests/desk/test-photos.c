/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "deed-dialog.h"
#include "desk-hand.h"
#include "job-view-file.h"
#include "photo-intake.h"
#include "photo-pair-view.h"
#include "suite.h"

/* Pictures of a job: taken in from files and from what was copied, named, paired, and laid one over
 * the other. */

#define RUNNING "(SELECT min (id) FROM jobs WHERE status = 'in-bay')"
#define RED 0xff0000ff
#define BLUE 0x0000ffff

/* Exif (CIPA DC-008, 4.6.2 and 4.6.4 A): one field, orientation 6: row 0 is the right side. */
static const guint8 lying[]
    = { 0xFF, 0xE1, 0,    34,   'E', 'x', 'i', 'f', 0, 0, 'I', 'I', 42, 0, 8, 0, 0, 0,
        1,    0,    0x12, 0x01, 3,   0,   1,   0,   0, 0, 6,   0,   0,  0, 0, 0, 0, 0 };

/* A JPEG of one colour under that name in the test's own folder. */
static GFile *
picture_file (const char *name, int width, int height, guint32 colour, gboolean lies)
{
  g_autofree char *path = g_build_filename (g_get_user_cache_dir (), name, NULL);
  g_autoptr (GdkPixbuf) pixels = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, width, height);
  g_autoptr (GByteArray) file = g_byte_array_new ();
  g_autofree char *jpeg = NULL;
  gsize size = 0;
  GError *error = NULL;

  gdk_pixbuf_fill (pixels, colour);
  gdk_pixbuf_save_to_buffer (pixels, &jpeg, &size, "jpeg", &error, NULL);
  ck_no_error (error);
  g_byte_array_append (file, (guint8 *) jpeg, 2);
  if (lies)
    g_byte_array_append (file, lying, sizeof lying);
  g_byte_array_append (file, (guint8 *) jpeg + 2, (guint) size - 2);
  g_file_set_contents (path, (char *) file->data, file->len, &error);
  ck_no_error (error);
  return g_file_new_for_path (path);
}

static gint64
number_of (const char *sql)
{
  g_autofree char *text = desk_hand_text (sql);

  return g_ascii_strtoll (text, NULL, 10);
}

static gpointer
load (UnsootDb *db, gpointer job, GCancellable *cancellable, GError **error)
{
  return unsoot_job_view_file_load (db, *(gint64 *) job, desk_shop_now (), error);
}

static UnsootJobViewFile *
job_file (UnsootSession *session, gint64 job)
{
  GError *error = NULL;
  UnsootJobViewFile *file
      = unsoot_store_call (unsoot_session_get_store (session), load, &job, NULL, &error);

  ck_no_error (error);
  return file;
}

static gboolean
is_settled (gpointer window)
{
  UnsootView *view = unsoot_window_get_view (window);

  return view != NULL && unsoot_view_is_settled (view);
}

static GtkWidget *
job_page (UnsootWindow *window, gint64 job)
{
  ck_assert (unsoot_window_open (window, "job", job));
  desk_shop_wait (is_settled, window, "the job's page");
  return GTK_WIDGET (unsoot_window_get_view (window));
}

/* The first text field of a form. */
static GtkEditable *
words_of (GtkWidget *form)
{
  return GTK_EDITABLE (desk_shop_widget (form, GTK_TYPE_ENTRY));
}

static void
add_files (GtkWidget *over, UnsootSession *session, UnsootJobViewFile *file, GFile *first,
           GFile *second)
{
  g_autoptr (GListStore) files = g_list_store_new (G_TYPE_FILE);

  g_list_store_append (files, first);
  if (second != NULL)
    g_list_store_append (files, second);
  unsoot_photos_add_files (over, session, file, G_LIST_MODEL (files));
}

static gboolean
says_it (gpointer window)
{
  return desk_shop_label (window, "“notes.jpg” can't be read as a picture.") != NULL;
}

/* What is no picture is said by name, and the next is gone on with; that one lies on its side and
 * is larger than needed. */
START_TEST (files_are_taken_in)
{
  desk_shop_start_toolkit ();
  UnsootSession *session = desk_shop_open ();
  UnsootWindow *window = desk_hand_window (session);
  const gint64 job = number_of ("SELECT id FROM jobs WHERE status = 'done' ORDER BY id DESC");
  g_autoptr (GFile) notes = g_file_new_build_filename (g_get_user_cache_dir (), "notes.jpg", NULL);
  g_autoptr (GFile) large = picture_file ("large.jpg", 3000, 1500, RED, TRUE);
  g_autoptr (UnsootJobViewFile) file = NULL;
  g_autofree char *sql = g_strdup_printf (
      "SELECT stage || ' ' || width || ' ' || height || ' ' || chosen FROM photos"
      " WHERE job_id = %d AND angle = 'Throttle'",
      (int) job);
  GtkWidget *page, *form;

  desk_hand_take (session, "technician");
  file = job_file (session, job);
  page = job_page (window, job);
  ck_assert (g_file_replace_contents (notes, "no picture", 10, NULL, FALSE, 0, NULL, NULL, NULL));
  add_files (page, session, file, notes, large);
  desk_shop_wait (says_it, window, "the sentence");
  form = desk_hand_wait_dialog (UNSOOT_TYPE_DEED_DIALOG);
  ck_assert_ptr_nonnull (desk_shop_label (form, "large.jpg"));
  /* Without a word what it shows nothing is kept. */
  desk_hand_press (form, "Add");
  desk_shop_settle ();
  ck_assert_ptr_nonnull (desk_hand_dialog (UNSOOT_TYPE_DEED_DIALOG));
  gtk_editable_set_text (words_of (form), "Throttle");
  desk_hand_press (form, "Add");
  desk_hand_wait_text ("after 600 1200 1", sql);
  desk_hand_wait_no_dialog (UNSOOT_TYPE_DEED_DIALOG);
  desk_hand_leave (window, session);
}
END_TEST

static gboolean
is_ready (gpointer page)
{
  GtkWidget *view = desk_shop_widget (page, UNSOOT_TYPE_PHOTO_PAIR_VIEW);

  return view != NULL && gtk_widget_get_focusable (view) && gtk_widget_get_width (view) > 0
         && unsoot_photo_pair_view_is_ready (UNSOOT_PHOTO_PAIR_VIEW (view));
}

/* The colour at that share of the widget's width, in its middle. */
static guint32
colour_at (GtkWidget *widget, double share)
{
  g_autoptr (GtkSnapshot) snapshot = gtk_snapshot_new ();
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  g_autoptr (GskRenderNode) node = NULL;
  g_autoptr (GdkTexture) texture = NULL;
  g_autofree guint32 *pixels = g_new0 (guint32, (gsize) width * (gsize) height);

  GTK_WIDGET_GET_CLASS (widget)->snapshot (widget, snapshot);
  node = gtk_snapshot_to_node (snapshot);
  texture
      = gsk_renderer_render_texture (gtk_native_get_renderer (gtk_widget_get_native (widget)), node,
                                     &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  gdk_texture_download (texture, (guint8 *) pixels, (gsize) width * 4);
  return pixels[(gsize) (height / 4) * (gsize) width + (gsize) (width * share)] & 0xFFFFFF;
}

static void
ck_colour (GtkWidget *view, double share, gboolean red)
{
  const guint32 colour = colour_at (view, share);
  const int more = (int) (colour >> 16) - (int) (colour & 0xFF);

  ck_assert_msg (red ? more > 150 : more < -150, "at %g stands %06x", share, colour);
}

/* What was taken before proposes what the next one shows; then one lies over the other. */
START_TEST (the_other_half_is_proposed)
{
  desk_shop_start_toolkit ();
  UnsootSession *session = desk_shop_open ();
  UnsootWindow *window = desk_hand_window (session);
  const gint64 job = number_of ("SELECT " RUNNING);
  g_autoptr (GFile) blue = picture_file ("blue.jpg", 400, 300, BLUE, FALSE);
  g_autoptr (UnsootJobViewFile) file = NULL;
  GtkWidget *page, *form, *view;

  desk_hand_take (session, "technician");
  ck_assert_int_eq (number_of ("SELECT count (*) FROM photos WHERE job_id = " RUNNING), 1);
  page = job_page (window, job);
  file = job_file (session, job);
  add_files (page, session, file, blue, NULL);
  form = desk_hand_wait_dialog (UNSOOT_TYPE_DEED_DIALOG);
  ck_assert_str_eq (gtk_editable_get_text (words_of (form)), "Port of cylinder 1");
  desk_hand_press (form, "Add");
  desk_hand_wait_text ("2", "SELECT count (*) FROM photos WHERE job_id = " RUNNING
                            " AND angle = 'Port of cylinder 1'");
  desk_hand_wait_no_dialog (UNSOOT_TYPE_DEED_DIALOG);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  page = job_page (window, job);
  desk_shop_wait (is_ready, page, "the pair");
  view = desk_shop_widget (page, UNSOOT_TYPE_PHOTO_PAIR_VIEW);
  ck_colour (view, 0.9, FALSE);
  unsoot_photo_pair_view_set_split (UNSOOT_PHOTO_PAIR_VIEW (view), 0.25);
  ck_colour (view, 0.4, FALSE);
  unsoot_photo_pair_view_set_split (UNSOOT_PHOTO_PAIR_VIEW (view), 7);
  ck_assert_double_eq (unsoot_photo_pair_view_get_split (UNSOOT_PHOTO_PAIR_VIEW (view)), 1);
  desk_hand_leave (window, session);
}
END_TEST

START_TEST (one_lies_over_the_other)
{
  desk_shop_start_toolkit ();
  g_autoptr (GFile) red = picture_file ("red.jpg", 400, 300, RED, FALSE);
  g_autoptr (GFile) blue = picture_file ("blue.jpg", 400, 300, BLUE, FALSE);
  UnsootPhotoRow before = { .width = 400, .height = 300 }, after = { .width = 400, .height = 300 };
  const UnsootPhotoPair pair = { "Port", &before, &after };
  GtkWidget *window = gtk_window_new (), *view;

  before.jpeg = g_file_load_bytes (red, NULL, NULL, NULL);
  after.jpeg = g_file_load_bytes (blue, NULL, NULL, NULL);
  view = unsoot_photo_pair_view_new (&pair);
  gtk_window_set_child (GTK_WINDOW (window), view);
  gtk_window_present (GTK_WINDOW (window));
  desk_shop_wait (is_ready, window, "both halves");
  gtk_test_widget_wait_for_draw (window);
  ck_colour (view, 0.3, TRUE);
  ck_colour (view, 0.7, FALSE);
  unsoot_photo_pair_view_set_split (UNSOOT_PHOTO_PAIR_VIEW (view), 0.8);
  ck_colour (view, 0.7, TRUE);
  unsoot_photo_pair_view_set_split (UNSOOT_PHOTO_PAIR_VIEW (view), 0.2);
  ck_colour (view, 0.3, FALSE);
  gtk_window_destroy (GTK_WINDOW (window));
  g_bytes_unref (before.jpeg);
  g_bytes_unref (after.jpeg);
}
END_TEST

static gboolean
says_nothing_copied (gpointer window)
{
  return desk_shop_label (window, "Nothing that was copied is a picture.") != NULL;
}

START_TEST (what_was_copied_is_pasted)
{
  desk_shop_start_toolkit ();
  UnsootSession *session = desk_shop_open ();
  UnsootWindow *window = desk_hand_window (session);
  const gint64 job = number_of ("SELECT " RUNNING);
  g_autoptr (GFile) blue = picture_file ("blue.jpg", 400, 300, BLUE, FALSE);
  g_autoptr (GdkTexture) texture = gdk_texture_new_from_file (blue, NULL);
  g_autoptr (UnsootJobViewFile) file = NULL;
  GtkWidget *page, *form;

  desk_hand_take (session, "technician");
  page = job_page (window, job);
  file = job_file (session, job);
  gdk_clipboard_set_text (gtk_widget_get_clipboard (page), "4711");
  unsoot_photos_paste (page, session, file);
  desk_shop_wait (says_nothing_copied, window, "the sentence");
  gdk_clipboard_set_texture (gtk_widget_get_clipboard (page), texture);
  unsoot_photos_paste (page, session, file);
  form = desk_hand_wait_dialog (UNSOOT_TYPE_DEED_DIALOG);
  gtk_editable_set_text (words_of (form), "Cooler, gas side");
  desk_hand_press (form, "Add");
  desk_hand_wait_text ("400/300", "SELECT width || '/' || height FROM photos"
                                  " WHERE angle = 'Cooler, gas side'");
  desk_hand_wait_no_dialog (UNSOOT_TYPE_DEED_DIALOG);
  desk_hand_leave (window, session);
}
END_TEST

static Suite *
photos_suite (void)
{
  Suite *suite = suite_create ("photos");
  TCase *tcase = tcase_create ("photos");

  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_set_timeout (tcase, 120);
  tcase_add_test (tcase, files_are_taken_in);
  tcase_add_test (tcase, the_other_half_is_proposed);
  tcase_add_test (tcase, one_lies_over_the_other);
  tcase_add_test (tcase, what_was_copied_is_pasted);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (photos_suite)
