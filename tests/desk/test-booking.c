/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "booking-page.h"
#include "booking-service.h"
#include "booking-times.h"
#include "booking-who.h"
#include "deed-dialog.h"
#include "desk-shop.h"
#include "jobs.h"
#include "quotes.h"
#include "suite.h"
#include "window.h"

/* A booking from the call to its place on the planner, in the window's process. What came of it
 * is read from the book. */

typedef struct
{
  UnsootSession *session;
  UnsootWindow *window;
} Desk;

static void
begin (Desk *desk)
{
  desk_shop_start_toolkit ();
  desk->session = desk_shop_open ();
  desk->window = g_object_new (UNSOOT_TYPE_WINDOW, NULL);
  unsoot_window_set_session (desk->window, desk->session);
  gtk_window_present (GTK_WINDOW (desk->window));
}

static void
end (Desk *desk)
{
  gtk_window_destroy (GTK_WINDOW (desk->window));
  g_object_unref (desk->session);
}

static gint64
raw (const char *sql, gint64 id)
{
  g_autoptr (GError) error = NULL;
  UnsootDb *db = unsoot_db_open (desk_shop_path (), UNSOOT_DB_READ_ONLY, &error);
  gint64 n = 0;

  ck_no_error (error);
  unsoot_db_int (db, &n, &error, sql, unsoot_int (id));
  ck_no_error (error);
  unsoot_db_close (db);
  return n;
}

/* A person's vehicle with no open job; each test takes another, because the book is one. */
static gint64
free_vehicle (gint64 nth)
{
  return raw ("SELECT id FROM vehicles v WHERE family_id IS NOT NULL AND EXISTS (SELECT 1 FROM"
              " customers c WHERE c.id = v.customer_id AND c.kind = 'person')"
              " AND EXISTS (SELECT 1 FROM jobs j WHERE j.vehicle_id = v.id)"
              " AND NOT EXISTS (SELECT 1 FROM jobs j WHERE j.vehicle_id = v.id"
              "  AND j.status NOT IN ('done', 'invoiced', 'paid')) ORDER BY id LIMIT 1 OFFSET $1",
              nth);
}

static gpointer
quote (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootActing who = { 1, desk_shop_now () };
  const gint64 *vehicle = data;
  UnsootQuoteWish wish = { .vehicle_id = *vehicle };
  gint64 id;

  ck_assert (unsoot_db_int (db, &wish.service_id, error,
                            "SELECT id FROM services WHERE sides = 'fuel' LIMIT 1"));
  id = unsoot_job_quote (db, &who, &wish, error);
  return g_memdup2 (&id, sizeof id);
}

static gpointer
authorise (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootActing who = { 1, desk_shop_now () };
  const gint64 *job = data;

  unsoot_job_authorise (db, &who, *job, "Somebody", "phone", 0, NULL, NULL, error);
  return NULL;
}

static gint64
quoted_job (Desk *desk, gint64 nth)
{
  GError *error = NULL;
  gint64 vehicle = free_vehicle (nth);
  g_autofree gint64 *id
      = unsoot_store_call (unsoot_session_get_store (desk->session), quote, &vehicle, NULL, &error);

  ck_no_error (error);
  return *id;
}

static gint64
authorised_job (Desk *desk, gint64 nth)
{
  GError *error = NULL;
  gint64 id = quoted_job (desk, nth);

  unsoot_store_call (unsoot_session_get_store (desk->session), authorise, &id, NULL, &error);
  ck_no_error (error);
  return id;
}

/* What is waited for: something under any window of the desk. */
typedef struct
{
  const char *text; /* part of what a label says */
  gboolean as_button;
  GtkWidget *found;
} Wanted;

static gboolean
can_be_seen (GtkWidget *widget)
{
  return gtk_widget_get_mapped (widget) && gtk_widget_get_sensitive (widget);
}

static void
look (GtkWidget *widget, Wanted *wanted)
{
  if (wanted->found != NULL || !gtk_widget_get_mapped (widget))
    return;
  if (GTK_IS_LABEL (widget)
      && strstr (gtk_label_get_text (GTK_LABEL (widget)), wanted->text) != NULL)
    {
      GtkWidget *button = gtk_widget_get_ancestor (widget, GTK_TYPE_BUTTON);
      if (!wanted->as_button)
        wanted->found = widget;
      else if (button != NULL && can_be_seen (button)
               && strcmp (gtk_label_get_text (GTK_LABEL (widget)), wanted->text) == 0)
        wanted->found = button;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    look (child, wanted);
}

static gboolean
is_there (gpointer data)
{
  Wanted *wanted = data;
  GListModel *windows = gtk_window_get_toplevels ();

  wanted->found = NULL;
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);
      look (window, wanted);
    }
  return wanted->found != NULL;
}

static GtkWidget *
wait_label (const char *text)
{
  Wanted wanted = { text, FALSE, NULL };

  desk_shop_wait (is_there, &wanted, text);
  return wanted.found;
}

static void
press (const char *label)
{
  Wanted wanted = { label, TRUE, NULL };

  desk_shop_wait (is_there, &wanted, label);
  g_signal_emit_by_name (wanted.found, "clicked");
}

static void
wait_button (const char *label)
{
  Wanted wanted = { label, TRUE, NULL };

  desk_shop_wait (is_there, &wanted, label);
}

static gboolean
has_button (const char *label)
{
  Wanted wanted = { label, TRUE, NULL };

  return is_there (&wanted);
}

static gboolean
is_settled (gpointer data)
{
  UnsootView *view = unsoot_window_get_view (data);

  return view != NULL && unsoot_view_is_settled (view);
}

static void
go (Desk *desk, const char *slug, gint64 record)
{
  ck_assert (unsoot_window_open (desk->window, slug, record));
  desk_shop_wait (is_settled, desk->window, slug);
}

typedef struct
{
  const char *sql;
  gint64 id;
  gint64 wanted;
} Said;

static gboolean
book_says (gpointer data)
{
  const Said *said = data;

  return raw (said->sql, said->id) == said->wanted;
}

static void
wait_book (const char *sql, gint64 id, gint64 wanted)
{
  Said said = { sql, id, wanted };

  desk_shop_wait (book_says, &said, sql);
}

static GtkWidget *
in (Desk *desk, GType type)
{
  return desk_shop_widget (GTK_WIDGET (unsoot_window_get_view (desk->window)), type);
}

START_TEST (a_draft_is_kept_and_restored)
{
  static const char kept[] = "SELECT count (*) FROM drafts WHERE place = 'booking'"
                             " AND text LIKE '%Ysolde Marrant%' AND $1 = 0";
  Desk desk;

  begin (&desk);
  go (&desk, "booking", 0);
  wait_label ("Say first who is calling");
  unsoot_booking_page_begin_with (UNSOOT_BOOKING_PAGE (unsoot_window_get_view (desk.window)),
                                  "Ysolde Marrant");
  wait_label ("Someone else");
  /* Left before the pause after which it is kept by itself. */
  go (&desk, "jobs", 0);
  wait_book (kept, 0, 1);
  end (&desk);

  begin (&desk);
  go (&desk, "booking", 0);
  wait_label ("did not carry out is here again");
  ck_assert_ptr_nonnull (in (&desk, UNSOOT_TYPE_BOOKING_WHO));
  press ("Begin anew");
  wait_label ("Say first who is calling");
  wait_book (kept, 0, 0);
  end (&desk);
}
END_TEST

/* The shop opens at 7:00: three in the morning is named, and nothing is booked. */
START_TEST (a_conflict_is_named)
{
  Desk desk;
  gint64 job;
  GtkWidget *clock;

  begin (&desk);
  job = authorised_job (&desk, 0);
  go (&desk, "booking-job", job);
  wait_label ("Book");
  clock = desk_shop_widget (in (&desk, UNSOOT_TYPE_BOOKING_TIMES), GTK_TYPE_ENTRY);
  gtk_editable_set_text (GTK_EDITABLE (clock), "soon");
  g_signal_emit_by_name (clock, "activate");
  wait_label ("Type a time of the day");
  ck_assert (has_button ("Book"));
  gtk_editable_set_text (GTK_EDITABLE (clock), "3:00");
  g_signal_emit_by_name (clock, "activate");
  wait_label ("is outside opening hours");
  ck_assert (!has_button ("Book"));
  ck_assert_int_eq (raw ("SELECT count (*) FROM bookings WHERE job_id = $1", job), 0);
  end (&desk);
}
END_TEST

static const char disposal[] = "Disposal of used fluid";
static const char total[] = "SELECT total_minor FROM estimates WHERE job_id = $1"
                            " ORDER BY number DESC LIMIT 1";

/* The deed in the row of the job's lines that begins with @text. */
static GtkWidget *
deed_of_line (const char *text)
{
  GtkWidget *cell = wait_label (text);

  while (cell != NULL && !GTK_IS_BUTTON (cell))
    cell = gtk_widget_get_next_sibling (cell);
  ck_assert_ptr_nonnull (cell);
  return cell;
}

static void
decline (const char *text, const char *why)
{
  GtkWidget *dialog;

  g_signal_emit_by_name (deed_of_line (text), "clicked");
  dialog = GTK_WIDGET (gtk_widget_get_root (wait_label ("The customer does not want this line")));
  unsoot_deed_dialog_set_text (UNSOOT_DEED_DIALOG (dialog), 0, why);
  press ("Record as declined");
}

/* The word is given on the newest estimate: a declined line is not in it, and is again where the
 * decline was a slip. */
START_TEST (a_line_is_declined_and_stands_again)
{
  static const char state[] = "SELECT state = 'declined' AND declined_reason = 'They have a tank'"
                              " FROM job_lines WHERE job_id = $1 AND kind = 'disposal'";
  Desk desk;
  gint64 job, before, price;

  begin (&desk);
  job = quoted_job (&desk, 1);
  before = raw (total, job);
  price
      = raw ("SELECT unit_price_minor FROM job_lines WHERE job_id = $1 AND kind = 'disposal'", job);
  go (&desk, "job", job);
  decline (disposal, "They have a tank");
  wait_book (state, job, 1);
  ck_assert_int_le (raw (total, job), before - price);
  press ("Undo");
  wait_book ("SELECT state = 'offered' FROM job_lines WHERE job_id = $1 AND kind = 'disposal'", job,
             1);
  wait_book (total, job, before);
  end (&desk);
}
END_TEST

START_TEST (a_declined_line_is_offered_next_time)
{
  static const char again[] = "SELECT count (*) FROM job_lines l JOIN jobs j ON j.id = l.job_id"
                              " WHERE j.vehicle_id = $1 AND l.kind = 'disposal'"
                              " AND l.state = 'offered'";
  Desk desk;
  gint64 job, vehicle;
  GtkWidget *check;

  begin (&desk);
  job = quoted_job (&desk, 2);
  vehicle = raw ("SELECT vehicle_id FROM jobs WHERE id = $1", job);
  go (&desk, "job", job);
  decline (disposal, "They have a tank");
  wait_book (again, vehicle, 0);
  go (&desk, "booking-vehicle", vehicle);
  wait_label ("Declined before; offer it again?");
  check = gtk_widget_get_ancestor (wait_label ("Disposal of used fluid · "), GTK_TYPE_CHECK_BUTTON);
  ck_assert_ptr_nonnull (check);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  press ("Give the estimate");
  /* Its own, and the declined one besides. */
  wait_book (again, vehicle, 2);
  end (&desk);
}
END_TEST

static gpointer
add_line (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootActing who = { 1, desk_shop_now () };
  g_autoptr (UnsootJobLineRow) line = unsoot_job_line_row_new ();

  line->job_id = *(const gint64 *) data;
  line->kind = g_strdup ("labour");
  line->text = g_strdup ("A seized bolt");
  line->quantity_milli = 1000;
  line->unit = g_strdup ("job");
  line->unit_price_minor = 90000;
  ck_assert (unsoot_job_line_save (db, &who, line, error));
  ck_assert_int_ne (unsoot_job_estimate (db, &who, line->job_id, error), 0);
  return NULL;
}

/* Beyond the limit the next deed is to ask, on both pages; the word then covers it. */
START_TEST (an_overrun_asks_again)
{
  GError *error = NULL;
  Desk desk;
  gint64 job;

  begin (&desk);
  job = authorised_job (&desk, 3);
  go (&desk, "booking-job", job);
  wait_label ("Book");
  ck_assert (!has_button ("Authorise"));
  unsoot_store_call (unsoot_session_get_store (desk.session), add_line, &job, NULL, &error);
  ck_no_error (error);
  wait_label ("ask the customer again");
  ck_assert (!has_button ("Book"));
  press ("Authorise");
  wait_book ("SELECT count (*) FROM authorisations a WHERE job_id = $1 AND amount_minor ="
             " (SELECT total_minor FROM estimates e WHERE e.id = a.estimate_id)",
             job, 2);
  press ("Book");
  wait_book ("SELECT count (*) FROM bookings WHERE job_id = $1 AND state = 'planned'", job, 1);
  end (&desk);
}
END_TEST

static gboolean
is_job_page (gpointer data)
{
  UnsootView *view = unsoot_window_get_view (data);

  return g_strcmp0 (unsoot_view_get_slug (view), "job") == 0 && unsoot_view_is_settled (view);
}

/* The last time of the day that is shown. */
static void
pick_last (Desk *desk)
{
  GtkWidget *flow = desk_shop_widget (in (desk, UNSOOT_TYPE_BOOKING_TIMES), GTK_TYPE_FLOW_BOX);
  GtkWidget *cell = gtk_widget_get_last_child (flow);

  ck_assert_ptr_nonnull (cell);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (gtk_widget_get_first_child (cell)), TRUE);
}

START_TEST (a_booking_made_or_moved_is_undone)
{
  static const char planned[]
      = "SELECT count (*) FROM bookings WHERE job_id = $1 AND state = 'planned'";
  static const char starts[]
      = "SELECT starts_at FROM bookings WHERE job_id = $1 AND state = 'planned'";
  static const char held[]
      = "SELECT sum (item_id * item_id) FROM booking_adapters a JOIN bookings b"
        " ON b.id = a.booking_id WHERE b.job_id = $1 AND b.state = 'planned'";
  Desk desk;
  gint64 job, before, items;

  begin (&desk);
  job = authorised_job (&desk, 4);
  go (&desk, "booking-job", job);
  press ("Book");
  wait_book (planned, job, 1);
  press ("Undo");
  wait_book (planned, job, 0);
  wait_book ("SELECT status = 'quoted' FROM jobs WHERE id = $1", job, 1);

  go (&desk, "booking-job", job);
  press ("Book");
  wait_book (planned, job, 1);
  desk_shop_wait (is_job_page, desk.window, "the job");
  before = raw (starts, job);
  items = raw (held, job);
  go (&desk, "booking-job", job);
  wait_label ("Move the booking");
  pick_last (&desk);
  press ("Move the booking");
  desk_shop_wait (is_job_page, desk.window, "the job");
  ck_assert_int_ne (raw (starts, job), before);
  press ("Undo");
  wait_book (starts, job, before);
  ck_assert_int_eq (raw (held, job), items);
  end (&desk);
}
END_TEST

/* Said and carried out at once, while the answer to another service is on its way: the
 * estimate waits for the last word, and is given with it. */
START_TEST (what_was_typed_last_is_in_the_estimate)
{
  static const char smokes[]
      = "SELECT count (*) FROM jobs WHERE vehicle_id = $1 AND complaint = 'Smokes uphill'";
  Desk desk;
  gint64 vehicle;
  GtkWidget *service, *choice;

  begin (&desk);
  vehicle = free_vehicle (5);
  go (&desk, "booking-vehicle", vehicle);
  wait_button ("Give the estimate");
  service = in (&desk, UNSOOT_TYPE_BOOKING_SERVICE);
  choice = desk_shop_widget (service, GTK_TYPE_DROP_DOWN);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice),
                              gtk_drop_down_get_selected (GTK_DROP_DOWN (choice)) == 0 ? 1 : 0);
  gtk_editable_set_text (GTK_EDITABLE (desk_shop_widget (service, GTK_TYPE_ENTRY)),
                         "Smokes uphill");
  ck_assert (gtk_widget_activate_action (service, "booking.deed", NULL));
  wait_book (smokes, vehicle, 1);
  end (&desk);
}
END_TEST

static Suite *
booking_suite (void)
{
  Suite *suite = suite_create ("booking");
  TCase *tcase = tcase_create ("booking");

  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_set_timeout (tcase, 120);
  tcase_add_test (tcase, a_draft_is_kept_and_restored);
  tcase_add_test (tcase, a_conflict_is_named);
  tcase_add_test (tcase, a_line_is_declined_and_stands_again);
  tcase_add_test (tcase, a_declined_line_is_offered_next_time);
  tcase_add_test (tcase, an_overrun_asks_again);
  tcase_add_test (tcase, a_booking_made_or_moved_is_undone);
  tcase_add_test (tcase, what_was_typed_last_is_in_the_estimate);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (booking_suite)
