/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-page.h"
#include "booking-service.h"
#include "booking-word.h"
#include "desk-book.h"
#include "desk-hand.h"
#include "suite.h"

/* What is said of a booking and not carried out yet: nothing of it is lost by a slow store, by
 * leaving the page, by a lock, by other hands, nor by a crash. */

#define KEPT                                                                                       \
  "SELECT count (*) FROM drafts d JOIN staff s ON s.id = d.staff_id"                               \
  " WHERE s.name = 'Mara Quillen' AND d.record = $1 AND d.text LIKE "

static UnsootView *
view_of (DeskBook *desk)
{
  return unsoot_window_get_view (desk->window);
}

static GtkWidget *
complaint (DeskBook *desk)
{
  GtkWidget *service = desk_book_in (desk, UNSOOT_TYPE_BOOKING_SERVICE);

  return service != NULL ? desk_shop_widget (service, GTK_TYPE_ENTRY) : NULL;
}

static const char *
complaint_text (DeskBook *desk)
{
  return gtk_editable_get_text (GTK_EDITABLE (complaint (desk)));
}

static void
complain (DeskBook *desk, const char *words)
{
  gtk_editable_set_text (GTK_EDITABLE (complaint (desk)), words);
}

static gint64
open_vehicle (DeskBook *desk, gint64 nth)
{
  const gint64 vehicle = desk_book_free_vehicle (nth);

  desk_book_go (desk, "booking-vehicle", vehicle);
  desk_book_wait_button ("Give the estimate");
  return vehicle;
}

START_TEST (a_draft_is_kept_and_restored)
{
  static const char kept[] = KEPT "'%Ysolde Marrant%'";
  DeskBook desk;

  desk_book_begin (&desk);
  desk_book_go (&desk, "booking", 0);
  desk_book_wait_label ("Say first who is calling");
  unsoot_booking_page_begin_with (UNSOOT_BOOKING_PAGE (view_of (&desk)), "Ysolde Marrant");
  desk_book_wait_label ("Someone else");
  /* Gone before the pause after which it is kept by itself. */
  gtk_window_destroy (GTK_WINDOW (desk.window));
  desk_book_wait_book (kept, 0, 1);
  g_object_unref (desk.session);

  desk_book_begin (&desk);
  desk_book_go (&desk, "booking", 0);
  desk_book_wait_label ("did not carry out is here again");
  desk_book_press ("Begin anew");
  desk_book_wait_label ("Say first who is calling");
  desk_book_wait_book (kept, 0, 0);
  desk_book_end (&desk);
}
END_TEST

/* Until the page has its beginning there is no field; from then on what follows from it, which
 * is still to come, wipes nothing. */
START_TEST (what_is_typed_before_the_shop_has_answered_stands)
{
  DeskBook desk;
  gint64 vehicle;

  desk_book_begin (&desk);
  vehicle = desk_book_free_vehicle (0);
  ck_assert (unsoot_window_open (desk.window, "booking-vehicle", vehicle));
  while (!unsoot_view_is_settled (view_of (&desk)))
    {
      ck_assert_ptr_null (complaint (&desk));
      g_main_context_iteration (NULL, TRUE);
    }
  ck_assert (!desk_book_has_button ("Give the estimate"));
  complain (&desk, "Rattles at idle");
  desk_book_wait_button ("Give the estimate");
  ck_assert_str_eq (complaint_text (&desk), "Rattles at idle");
  desk_book_wait_book (KEPT "'%Rattles at idle%'", vehicle, 1);
  ck_assert_str_eq (complaint_text (&desk), "Rattles at idle");
  desk_book_end (&desk);
}
END_TEST

/* The complaint of a job that is quoted is the job's: nothing can be typed that its reading would
 * wipe. */
START_TEST (of_a_quoted_job_nothing_is_said_anew)
{
  DeskBook desk;
  gint64 job;

  desk_book_begin (&desk);
  job = desk_book_quoted_job (&desk, 0);
  desk_book_go (&desk, "booking-job", job);
  ck_assert (!desk_book_has_button ("Authorise"));
  ck_assert (!gtk_widget_is_sensitive (complaint (&desk)));
  desk_book_wait_button ("Authorise");
  ck_assert (!gtk_widget_is_sensitive (complaint (&desk)));
  desk_book_end (&desk);
}
END_TEST

START_TEST (while_the_estimate_is_given_nothing_more_is_said)
{
  static const char quoted[] = "SELECT count (*) FROM jobs WHERE vehicle_id = $1"
                               " AND status = 'quoted' AND complaint = 'Said before'";
  DeskBook desk;
  gint64 vehicle;

  desk_book_begin (&desk);
  vehicle = open_vehicle (&desk, 1);
  complain (&desk, "Said before");
  desk_book_wait_book (KEPT "'%Said before%'", vehicle, 1);
  desk_book_wait_button ("Give the estimate");
  ck_assert (gtk_widget_is_sensitive (complaint (&desk)));
  desk_book_press ("Give the estimate");
  ck_assert (!gtk_widget_is_sensitive (complaint (&desk)));
  desk_book_wait_book (quoted, vehicle, 1);
  desk_book_wait_button ("Authorise");
  ck_assert_str_eq (complaint_text (&desk), "Said before");
  desk_book_end (&desk);
}
END_TEST

typedef struct
{
  DeskBook *desk;
  gint64 vehicle;
  int letters;
} Typist;

static GtkWidget *
whose_word (DeskBook *desk)
{
  GtkWidget *word = desk_book_in (desk, UNSOOT_TYPE_BOOKING_WORD);

  return GTK_WIDGET (gtk_widget_get_template_child (word, UNSOOT_TYPE_BOOKING_WORD, "by"));
}

/* The word that is being typed outlives the window; once it is given nothing is kept. */
START_TEST (the_word_is_kept_until_it_is_given)
{
  static const char kept[] = KEPT "'%Her brother Ned%'";
  DeskBook desk;
  gint64 job;

  desk_book_begin (&desk);
  job = desk_book_quoted_job (&desk, 5);
  desk_book_go (&desk, "booking-job", job);
  desk_book_wait_button ("Authorise");
  gtk_editable_set_text (GTK_EDITABLE (whose_word (&desk)), "Her brother Ned");
  gtk_window_destroy (GTK_WINDOW (desk.window));
  desk_book_wait_book (kept, job, 1);
  g_object_unref (desk.session);

  desk_book_begin (&desk);
  desk_book_go (&desk, "booking-job", job);
  desk_book_wait_button ("Authorise");
  desk_book_wait_button ("Drop it");
  ck_assert_str_eq (gtk_editable_get_text (GTK_EDITABLE (whose_word (&desk))), "Her brother Ned");
  desk_book_press ("Authorise");
  desk_book_wait_book ("SELECT count (*) FROM authorisations WHERE by_name = 'Her brother Ned'"
                       " AND job_id = $1",
                       job, 1);
  desk_book_wait_book (kept, job, 0);
  desk_book_end (&desk);
}
END_TEST

/* Types one more letter each time it is asked. */
static gboolean
is_kept_while_typing (gpointer data)
{
  Typist *typist = data;
  GtkEditable *entry = GTK_EDITABLE (complaint (typist->desk));
  int end = typist->letters++;

  gtk_editable_insert_text (entry, "o", 1, &end);
  return desk_book_raw (KEPT "'%no%'", typist->vehicle) == 1;
}

START_TEST (who_types_on_and_on_is_kept_all_the_same)
{
  DeskBook desk;
  Typist typist = { .desk = &desk, .letters = 1 };

  desk_book_begin (&desk);
  typist.vehicle = open_vehicle (&desk, 2);
  complain (&desk, "n");
  desk_shop_wait (is_kept_while_typing, &typist, "a draft, though the typing never pauses");
  desk_book_end (&desk);
}
END_TEST

START_TEST (a_lock_keeps_it)
{
  DeskBook desk;
  gint64 vehicle;

  desk_book_begin (&desk);
  vehicle = open_vehicle (&desk, 3);
  complain (&desk, "Half a word");
  unsoot_session_set_person (desk.session, NULL);
  desk_book_wait_book (KEPT "'%Half a word%'", vehicle, 1);
  desk_hand_take (desk.session, "advisor");
  desk_book_go (&desk, "booking-vehicle", vehicle);
  desk_book_wait_label ("did not carry out is here again");
  ck_assert_str_eq (complaint_text (&desk), "Half a word");
  desk_book_end (&desk);
}
END_TEST

static gboolean
says_nothing (gpointer desk)
{
  GtkWidget *entry = complaint (desk);

  return entry != NULL && *gtk_editable_get_text (GTK_EDITABLE (entry)) == '\0';
}

START_TEST (other_hands_find_their_own)
{
  g_autoptr (UnsootStaffRow) mara = NULL;
  DeskBook desk;
  gint64 vehicle;

  desk_book_begin (&desk);
  mara = unsoot_record_copy (&unsoot_staff_row_type, unsoot_session_get_person (desk.session));
  vehicle = open_vehicle (&desk, 4);
  complain (&desk, "Mara heard it");
  desk_hand_take (desk.session, "owner");
  desk_book_wait_book (KEPT "'%Mara heard it%'", vehicle, 1);
  desk_shop_wait (says_nothing, &desk, "a page of their own");
  complain (&desk, "The owner heard it");
  unsoot_session_set_person (desk.session, mara);
  desk_book_wait_label ("did not carry out is here again");
  ck_assert_str_eq (complaint_text (&desk), "Mara heard it");
  desk_book_wait_book ("SELECT count (*) FROM drafts d JOIN staff s ON s.id = d.staff_id"
                       " WHERE s.role = 'owner' AND d.record = $1"
                       " AND d.text LIKE '%The owner heard it%'",
                       vehicle, 1);
  desk_book_end (&desk);
}
END_TEST

static Suite *
booking_drafts_suite (void)
{
  Suite *suite = suite_create ("booking drafts");
  TCase *tcase = tcase_create ("said and not carried out");

  tcase_add_unchecked_fixture (tcase, desk_shop_make, desk_shop_remove);
  tcase_set_timeout (tcase, 120);
  tcase_add_test (tcase, a_draft_is_kept_and_restored);
  tcase_add_test (tcase, what_is_typed_before_the_shop_has_answered_stands);
  tcase_add_test (tcase, of_a_quoted_job_nothing_is_said_anew);
  tcase_add_test (tcase, while_the_estimate_is_given_nothing_more_is_said);
  tcase_add_test (tcase, the_word_is_kept_until_it_is_given);
  tcase_add_test (tcase, who_types_on_and_on_is_kept_all_the_same);
  tcase_add_test (tcase, a_lock_keeps_it);
  tcase_add_test (tcase, other_hands_find_their_own);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (booking_drafts_suite)
