/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "arrival-fields.h"
#include "desk-hand.h"
#include "form-dialog.h"
#include "job-files.h"
#include "precheck.h"
#include "reading-fields.h"
#include "reading.h"
#include "staff.h"
#include "suite.h"

/* What is done before the engine starts, in this process: the arrival, the checks, and readings
 * that can be set against each other. */

static UnsootSession *session;
static UnsootWindow *window;

static void
begin (const char *role)
{
  desk_shop_start_toolkit ();
  session = desk_shop_open ();
  desk_hand_take (session, role);
  window = desk_hand_window (session);
}

static void
end (void)
{
  desk_hand_leave (window, session);
}

static gint64
job_with (const char *status)
{
  g_autofree char *sql
      = g_strdup_printf ("SELECT CAST (max (id) AS TEXT) FROM jobs WHERE status = '%s'", status);
  g_autofree char *id = desk_hand_text (sql);

  return g_ascii_strtoll (id, NULL, 10);
}

static GtkWidget *
form (void)
{
  g_autoptr (GList) windows = gtk_window_list_toplevels ();

  for (GList *l = windows; l != NULL; l = l->next)
    if (UNSOOT_IS_FORM_DIALOG (l->data) && gtk_widget_get_mapped (l->data))
      return l->data;
  return NULL;
}

/* What a form refused to do, it says. */
static GtkWidget *
trouble_in (GtkWidget *root)
{
  if (GTK_IS_LABEL (root) && gtk_widget_get_visible (root)
      && gtk_widget_has_css_class (root, "error"))
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = trouble_in (child);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
form_has_answered (gpointer data)
{
  return form () == NULL || trouble_in (form ()) != NULL;
}

static void
wait_recorded (void)
{
  desk_shop_wait (form_has_answered, NULL, "an answer");
  ck_assert_msg (form () == NULL, "refused: %s",
                 form () != NULL ? gtk_label_get_text (GTK_LABEL (trouble_in (form ()))) : "");
}

static GtkWidget *
field (const char *label)
{
  GtkWidget *title = desk_shop_label (form (), label);

  ck_assert_msg (title != NULL, "no field %s", label);
  return gtk_widget_get_next_sibling (title);
}

static void
type (const char *label, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (field (label)), text);
}

static const char *
text_of (const char *label)
{
  return gtk_editable_get_text (GTK_EDITABLE (field (label)));
}

/* The first label that is seen and has these words in it. */
static GtkWidget *
words_in (GtkWidget *root, const char *words)
{
  if (GTK_IS_LABEL (root) && gtk_widget_get_visible (root)
      && strstr (gtk_label_get_text (GTK_LABEL (root)), words) != NULL)
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = words_in (child, words);
      if (found != NULL)
        return found;
    }
  return NULL;
}

typedef struct
{
  GtkWidget *root;
  const char *words;
} Said;

static gboolean
is_said (gpointer data)
{
  const Said *said = data;

  return words_in (said->root, said->words) != NULL;
}

static void
wait_said (GtkWidget *root, const char *words)
{
  Said said = { root, words };

  desk_shop_wait (is_said, &said, words);
}

static gpointer
load_file (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_job_file_load (db, *(const gint64 *) data, error);
}

static UnsootJobFile *
file_of (gint64 job_id)
{
  g_autoptr (GError) error = NULL;
  UnsootJobFile *file
      = unsoot_store_call (unsoot_session_get_store (session), load_file, &job_id, NULL, &error);

  ck_no_error (error);
  return file;
}

static GtkWidget *
over (void)
{
  return adw_toast_overlay_get_child (
      ADW_TOAST_OVERLAY (desk_shop_widget (GTK_WIDGET (window), ADW_TYPE_TOAST_OVERLAY)));
}

START_TEST (an_arrival_is_looked_at_before_it_is_recorded)
{
  g_autoptr (UnsootJobFile) file = NULL;

  begin ("advisor");
  file = file_of (job_with ("booked"));
  unsoot_arrival_open (over (), session, file);
  type ("Odometer", "no idea");
  /* SAE J2012: five characters, P C B or U first, then 0 to 3. */
  type ("Trouble codes", "P0401, P04");
  ck_assert_ptr_nonnull (words_in (form (), "five characters"));
  type ("Trouble codes", "P0401, X0299");
  ck_assert_ptr_nonnull (words_in (form (), "P, C, B or U"));
  type ("Trouble codes", "p0401, P0299");
  ck_assert_ptr_null (words_in (form (), "is not a trouble code"));
  desk_hand_press (form (), "Record the arrival");
  wait_said (form (), "no idea");
  type ("Odometer", "999123");
  type ("Engine hours", "4100");
  type ("Complaint, in the customer's words", "smokes when it pulls");
  type ("Emission parts missing or altered", "EGR cooler bypassed");
  desk_hand_press (form (), "Record the arrival");
  wait_recorded ();
  desk_hand_wait_text ("arrived",
                       "SELECT status FROM jobs WHERE complaint = 'smokes when it pulls'");
  desk_hand_wait_text ("P0401 P0299",
                       "SELECT codes FROM jobs WHERE complaint = 'smokes when it pulls'");
  desk_hand_wait_text ("2",
                       "SELECT CAST (count (*) AS TEXT) FROM meter_readings m JOIN jobs j ON j.id ="
                       " m.job_id WHERE j.complaint = 'smokes when it pulls'"
                       " AND m.typed IN (999123, 4100)");
  desk_hand_wait_text ("EGR cooler bypassed",
                       "SELECT v.emission_note FROM vehicles v JOIN jobs j ON j.vehicle_id = v.id"
                       " WHERE j.complaint = 'smokes when it pulls' AND v.emission_altered = 1");
  end ();
}
END_TEST

static gboolean
is_settled (gpointer data)
{
  UnsootView *view = unsoot_window_get_view (window);

  return view != NULL && unsoot_view_is_settled (view);
}

/* The three answers stand beside their question. */
static GtkWidget *
answer (UnsootPrecheck check, const char *label)
{
  GtkWidget *question
      = desk_shop_label (GTK_WIDGET (window), unsoot_slug_words (unsoot_prechecks, (int) check));
  GtkWidget *line;

  ck_assert_msg (question != NULL, "no question %d", (int) check);
  line = gtk_widget_get_parent (gtk_widget_get_parent (question));
  return gtk_widget_get_ancestor (desk_shop_label (line, label), GTK_TYPE_TOGGLE_BUTTON);
}

START_TEST (every_check_is_answered_and_a_no_says_why)
{
  g_autofree char *count = NULL;
  gint64 job;

  begin ("technician");
  job = job_with ("arrived");
  unsoot_window_open (window, "job", job);
  desk_shop_wait (is_settled, NULL, "the job");
  for (int check = 0; check < UNSOOT_PRECHECKS; check++)
    {
      ck_assert_ptr_nonnull (answer ((UnsootPrecheck) check, "Yes"));
      ck_assert_int_eq (gtk_widget_get_sensitive (answer ((UnsootPrecheck) check, "N/A")),
                        unsoot_precheck_may_not_apply ((UnsootPrecheck) check));
    }
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (answer (UNSOOT_PRECHECK_TURBO, "No")), TRUE);
  wait_said (GTK_WIDGET (window), unsoot_precheck_why (UNSOOT_PRECHECK_TURBO));
  desk_hand_wait_text (
      "no", "SELECT answer FROM prechecks WHERE kind = 'turbo' ORDER BY id DESC LIMIT 1");
  ck_assert_ptr_nonnull (desk_shop_label (GTK_WIDGET (window), "Override…"));
  desk_hand_press (GTK_WIDGET (window), "The rest is as it should be");
  count = g_strdup_printf ("%d", UNSOOT_PRECHECKS);
  desk_hand_wait_text (count,
                       "SELECT CAST (count (DISTINCT kind) AS TEXT) FROM prechecks WHERE job_id ="
                       " (SELECT max (id) FROM jobs WHERE status = 'arrived')");
  /* What was answered by hand stands. */
  desk_hand_wait_text (
      "no", "SELECT answer FROM prechecks WHERE kind = 'turbo' ORDER BY id DESC LIMIT 1");
  end ();
}
END_TEST

static void
choose (const char *label, guint position)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (field (label)), position);
}

static void
record (void)
{
  desk_hand_press (form (), "Record");
  wait_recorded ();
}

START_TEST (unlike_pairs_are_refused_while_the_vehicle_is_here)
{
  g_autoptr (UnsootJobFile) first = NULL, second = NULL;
  gint64 job;

  begin ("technician");
  job = job_with ("arrived");
  first = file_of (job);
  unsoot_reading_open (over (), session, first, "before");
  ck_assert_uint_eq (
      g_list_model_get_n_items (gtk_drop_down_get_model (GTK_DROP_DOWN (field ("What is read")))),
      UNSOOT_READING_KINDS);
  choose ("What is read", UNSOOT_READING_OPACITY);
  ck_assert_ptr_nonnull (
      words_in (form (), "Behind a particulate filter opacity is near zero whatever was done."));
  ck_assert_ptr_nonnull (words_in (form (), "coolant"));
  type ("Value, with its unit if another", "38");
  type ("Read with", "Opacimeter 3");
  type ("Coolant in °C", "84");
  type ("Air pressure in kPa", "99.2");
  record ();
  desk_hand_wait_text ("38", "SELECT typed FROM readings WHERE instrument = 'Opacimeter 3'");
  second = file_of (job);
  unsoot_reading_open (over (), session, second, "after");
  ck_assert_str_eq (text_of ("Coolant in °C"), "84.0");
  type ("Value, with its unit if another", "12");
  type ("Coolant in °C", "60");
  desk_hand_press (form (), "Record");
  /* 5 °C apart and no more: common practice, no source. */
  wait_said (form (), "readings compare within 5");
  ck_assert_str_eq (text_of ("Value, with its unit if another"), "12");
  type ("Coolant in °C", "88");
  record ();
  desk_hand_wait_text ("2", "SELECT CAST (count (*) AS TEXT) FROM readings"
                            " WHERE instrument = 'Opacimeter 3'");
  end ();
}
END_TEST

START_TEST (what_was_typed_by_hand_is_not_filled_over)
{
  g_autoptr (UnsootJobFile) file = NULL;

  begin ("technician");
  file = file_of (job_with ("arrived"));
  ck_assert_uint_gt (file->readings->len, 0);
  unsoot_reading_open (over (), session, file, "after");
  choose ("What is read", UNSOOT_READING_OPACITY);
  ck_assert_str_eq (text_of ("Coolant in °C"), "84.0");
  type ("Coolant in °C", "71");
  type ("Engine speed in rpm", "1234");
  choose ("What is read", UNSOOT_READING_BALANCE);
  choose ("What is read", UNSOOT_READING_OPACITY);
  ck_assert_str_eq (text_of ("Coolant in °C"), "71");
  ck_assert_str_eq (text_of ("Engine speed in rpm"), "1234");
  ck_assert_str_eq (text_of ("Read with"), "Opacimeter 3");
  end ();
}
END_TEST

static Suite *
arrival_suite (void)
{
  Suite *suite = suite_create ("arrival");
  TCase *tcase = tcase_create ("before the work");

  tcase_set_timeout (tcase, 120);
  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_add_test (tcase, an_arrival_is_looked_at_before_it_is_recorded);
  tcase_add_test (tcase, every_check_is_answered_and_a_no_says_why);
  tcase_add_test (tcase, unlike_pairs_are_refused_while_the_vehicle_is_here);
  tcase_add_test (tcase, what_was_typed_by_hand_is_not_filled_over);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (arrival_suite)
