/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "book-kit.h"
#include "desk-keys.h"
#include "run-kit.h"
#include "suite.h"

/* Everything that a screen reader stops at, and everything that takes the keyboard, has a name of
 * its own: not empty, not a class of the toolkit, not a label with its mnemonic's mark. Looked for
 * in each role's places, on the records, in whatever their buttons open, and in the bay. One run
 * of the program for each role; all faults are told together at its end. */

enum
{
  PATIENCE_S = 60,
  POLL_US = 30000
};

static gboolean
is_read_out (AtspiRole role)
{
  static const AtspiRole roles[] = {
    ATSPI_ROLE_PUSH_BUTTON, ATSPI_ROLE_TOGGLE_BUTTON, ATSPI_ROLE_ENTRY,     ATSPI_ROLE_TEXT,
    ATSPI_ROLE_COMBO_BOX,   ATSPI_ROLE_PASSWORD_TEXT, ATSPI_ROLE_LIST_ITEM, ATSPI_ROLE_LIST,
    ATSPI_ROLE_LIST_BOX,    ATSPI_ROLE_TABLE,         ATSPI_ROLE_TABLE_ROW, ATSPI_ROLE_TABLE_CELL,
    ATSPI_ROLE_TREE_TABLE,  ATSPI_ROLE_IMAGE,         ATSPI_ROLE_CHECK_BOX, ATSPI_ROLE_LINK,
    ATSPI_ROLE_DIALOG,      ATSPI_ROLE_FRAME,         ATSPI_ROLE_MENU_ITEM, ATSPI_ROLE_PROGRESS_BAR,
    ATSPI_ROLE_SPIN_BUTTON, ATSPI_ROLE_SLIDER,        ATSPI_ROLE_ALERT,     ATSPI_ROLE_RADIO_BUTTON,
  };

  for (gsize i = 0; i < G_N_ELEMENTS (roles); i++)
    if (roles[i] == role)
      return TRUE;
  return FALSE;
}

static gboolean
is_no_name (const char *name)
{
  return *name == '\0' || *name == '_'
         || g_regex_match_simple ("^(Gtk|Adw|Unsoot)[A-Z]", name, 0, 0);
}

/* A scroll pane hands the keyboard on to what is in it. */
static gboolean
is_nameless (const DeskNode *node)
{
  return is_no_name (node->name)
         && (is_read_out (node->role)
             || (node->role != ATSPI_ROLE_SCROLL_PANE
                 && desk_node_is (node, ATSPI_STATE_FOCUSABLE)));
}

/* The names of what it is in, for whoever looks for it. */
static char *
way_to (GPtrArray *tree, const DeskNode *node)
{
  GString *way = g_string_new (NULL);

  for (int at = node->parent; at >= 0; at = ((DeskNode *) tree->pdata[at])->parent)
    {
      const DeskNode *above = tree->pdata[at];
      if (*above->name != '\0')
        g_string_append_printf (way, " < %s", above->name);
    }
  return g_string_free (way, FALSE);
}

/* What of a role's desk was looked at. */
static GString *all_faults;
static guint n_looked_at;

static void
check_names (Desk *desk, const char *where)
{
  g_autoptr (GPtrArray) tree = desk_tree (desk);

  n_looked_at++;
  for (guint i = 0; i < tree->len; i++)
    {
      const DeskNode *node = tree->pdata[i];
      g_autofree char *role = NULL, *way = NULL;

      if (!is_nameless (node))
        continue;
      role = atspi_role_get_name (node->role);
      way = way_to (tree, node);
      g_string_append_printf (all_faults, "in %s: %s “%s”%s\n", where, role, node->name, way);
    }
}

static Desk *
begin (const char *name, const char *pin)
{
  Desk *desk = desk_start_demo ();

  all_faults = g_string_new (NULL);
  n_looked_at = 0;
  if (name != NULL)
    desk_change_hands (desk, name, pin);
  return desk;
}

static void
end (Desk *desk, guint least)
{
  desk_end (desk);
  ck_assert_msg (all_faults->len == 0, "%s", all_faults->str);
  ck_assert_msg (n_looked_at >= least, "only %u looked at", n_looked_at);
  g_string_free (all_faults, TRUE);
}

/* The titles of what is open, front to back as they were opened. */
static GPtrArray *
windows (Desk *desk)
{
  const int n = atspi_accessible_get_child_count (desk->application, NULL);
  GPtrArray *titles = g_ptr_array_new_with_free_func (g_free);

  for (int i = 0; i < n; i++)
    {
      g_autoptr (AtspiAccessible) window
          = atspi_accessible_get_child_at_index (desk->application, i, NULL);
      char *name = window != NULL ? atspi_accessible_get_name (window, NULL) : NULL;
      if (name != NULL)
        g_ptr_array_add (titles, name);
    }
  return titles;
}

/* The title of the window that is there beside those @before; NULL: none came. */
static char *
new_window (Desk *desk, GPtrArray *before)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;

  do
    {
      g_autoptr (GPtrArray) now = windows (desk);
      for (guint i = 0; i < now->len; i++)
        if (!g_ptr_array_find_with_equal_func (before, now->pdata[i], g_str_equal, NULL))
          return g_strdup (now->pdata[i]);
      g_usleep (POLL_US);
    }
  while (g_get_monotonic_time () < last);
  return NULL;
}

static gboolean
is_gone (Desk *desk, const char *title)
{
  g_autoptr (GPtrArray) now = windows (desk);

  return !g_ptr_array_find_with_equal_func (now, title, g_str_equal, NULL);
}

static void
close_window (Desk *desk, const char *title, const char *what)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;

  desk_focus (desk, title);
  desk_key (desk, "Escape");
  while (!is_gone (desk, title) && g_get_monotonic_time () < last)
    g_usleep (POLL_US);
  ck_assert_msg (is_gone (desk, title), "%s does not go away", what);
  desk_focus (desk, "Unsoot");
}

/* The list or panel that it stands in: "Change…" is another form in another list. */
static int
group_of (GPtrArray *tree, const DeskNode *node)
{
  int at = node->parent;

  while (at >= 0 && ((DeskNode *) tree->pdata[at])->role != ATSPI_ROLE_LIST
         && ((DeskNode *) tree->pdata[at])->parent >= 0)
    at = ((DeskNode *) tree->pdata[at])->parent;
  return at;
}

/* The verb of a button of a row, which is called "Change…: Bay 2". */
static char *
form_of (GPtrArray *tree, const DeskNode *node)
{
  const char *rest = strstr (node->name, "…: ");
  g_autofree char *verb
      = rest != NULL ? g_strndup (node->name, (gsize) (rest - node->name)) : g_strdup (node->name);

  return g_strdup_printf ("%d %s", group_of (tree, node), verb);
}

/* A name with an ellipsis asks for more before anything is done: it opens a window. Of the rows
 * that are alike the first. */
static GPtrArray *
openers (Desk *desk)
{
  g_autoptr (GPtrArray) tree = desk_tree (desk);
  g_autoptr (GHashTable) forms = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < tree->len; i++)
    {
      const DeskNode *node = tree->pdata[i];

      if (node->role == ATSPI_ROLE_PUSH_BUTTON && strstr (node->name, "…") != NULL
          && desk_node_is (node, ATSPI_STATE_SENSITIVE)
          && g_hash_table_add (forms, form_of (tree, node)))
        g_ptr_array_add (names, g_strdup (node->name));
    }
  return names;
}

static void
check_opened (Desk *desk, const char *where, const char *button)
{
  g_autoptr (GPtrArray) before = windows (desk);
  g_autofree char *what = g_strdup_printf ("%s, after “%s”", where, button);
  g_autofree char *title = NULL;

  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, button);
  title = new_window (desk, before);
  ck_assert_msg (title != NULL, "%s: no window", what);
  check_names (desk, what);
  close_window (desk, title, what);
}

/* The page that is shown, and every window that its buttons open. */
static void
check_page (Desk *desk, const char *title)
{
  g_autoptr (GPtrArray) names = NULL;

  desk_wait_title (desk, title);
  check_names (desk, title);
  names = openers (desk);
  for (guint i = 0; i < names->len; i++)
    check_opened (desk, title, names->pdata[i]);
}

/* The places at the side of this role, and nothing that is not its own. */
static void
check_places (Desk *desk, guint wanted)
{
  static const char *const places[] = { "Today",    "Planner", "Bays",     "Jobs",     "Customers",
                                        "Vehicles", "Fluids",  "Adapters", "Machines", "Invoices" };
  guint found = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    if (desk_has (desk, ATSPI_ROLE_LIST_ITEM, places[i]))
      {
        found++;
        desk_click (desk, ATSPI_ROLE_LIST_ITEM, places[i]);
        desk_wait_title (desk, places[i]);
        check_names (desk, places[i]);
      }
  ck_assert_msg (found == wanted, "%u places, not %u", found, wanted);
}

static void
check_job (Desk *desk, const char *status)
{
  g_autofree char *number = book_text ("SELECT min (number) FROM jobs WHERE status = '%s'", status);
  g_autofree char *title = g_strdup_printf ("Job %s", number);

  desk_open_job (desk, number);
  check_page (desk, title);
}

static void
open_row (Desk *desk, const char *place, AtspiRole role, const char *row)
{
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, place);
  desk_wait_title (desk, place);
  desk_click (desk, role, row);
}

static void
check_key (Desk *desk, const char *keys, const char *shows)
{
  desk_key (desk, keys);
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, shows));
  check_names (desk, keys);
}

static void
check_window_of_key (Desk *desk, const char *keys, const char *shows)
{
  g_autoptr (GPtrArray) before = windows (desk);
  g_autofree char *title = NULL;

  check_key (desk, keys, shows);
  title = new_window (desk, before);
  ck_assert_msg (title != NULL, "%s opens nothing", keys);
  close_window (desk, title, keys);
}

/* What stands over the page and belongs to its window. */
static void
check_popover_of_key (Desk *desk, const char *keys, const char *shows)
{
  check_key (desk, keys, shows);
  desk_key (desk, "Escape");
}

static void
check_paper (Desk *desk, const char *title)
{
  g_autoptr (GPtrArray) before = windows (desk);
  g_autofree char *paper = NULL;

  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Show, save or print");
  paper = new_window (desk, before);
  ck_assert_msg (paper != NULL, "no paper of %s", title);
  g_object_unref (desk_find (desk, ATSPI_ROLE_IMAGE, "Page 1 of"));
  check_names (desk, paper);
  close_window (desk, paper, paper);
}

START_TEST (the_advisors_desk)
{
  Desk *desk = begin (NULL, NULL);

  check_places (desk, 8);
  check_window_of_key (desk, "ctrl+l", "Take the desk");
  check_window_of_key (desk, "F1", "Help");
  check_window_of_key (desk, "ctrl+question", "Find anything");
  check_popover_of_key (desk, "F10", "Preferences");
  desk_key (desk, "ctrl+k");
  desk_wait_keyboard (desk, "Find anything");
  desk_type (desk, "har");
  g_object_unref (desk_find (desk, ATSPI_ROLE_LIST_ITEM, "Customers: "));
  check_names (desk, "what was found");
  desk_key (desk, "Escape");
  check_job (desk, "arrived");
  open_row (desk, "Customers", ATSPI_ROLE_TABLE_ROW, "Ferry Line Shuttles");
  check_page (desk, "Ferry Line Shuttles");
  open_row (desk, "Vehicles", ATSPI_ROLE_TABLE_ROW, "Brindle T4 5.1");
  check_page (desk, "Brindle T4 5.1");
  check_window_of_key (desk, "ctrl+n", "What is new?");
  end (desk, 20);
}
END_TEST

START_TEST (what_the_advisor_books_and_bills)
{
  Desk *desk = begin (NULL, NULL);

  desk_key (desk, "ctrl+n");
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "What is new?"));
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Booking");
  desk_focus (desk, "Unsoot");
  check_page (desk, "New booking");
  check_job (desk, "booked");
  check_job (desk, "done");
  open_row (desk, "Invoices", ATSPI_ROLE_TABLE_ROW, " over");
  check_page (desk, "Invoice ");
  check_paper (desk, "Invoice ");
  end (desk, 10);
}
END_TEST

START_TEST (the_clerks_desk)
{
  Desk *desk = begin ("Tobin Esker", "3333");

  check_places (desk, 5);
  open_row (desk, "Fluids", ATSPI_ROLE_LIST_ITEM, "Intake fluid R:");
  check_page (desk, "Intake fluid R");
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Lot ");
  check_page (desk, "Lot ");
  open_row (desk, "Adapters", ATSPI_ROLE_PUSH_BUTTON, "Kits");
  check_page (desk, "Kits");
  end (desk, 15);
}
END_TEST

static void
open_bay (Desk *desk, const char *book)
{
  g_autofree char *job = book_text_in (book, "SELECT number FROM jobs WHERE status = 'arrived'");

  run_answer_checks (book, job);
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "Bays");
  run_press (desk, "Start: ");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Begin the run"));
}

/* The other answers to a step. */
static void
check_bay_answers (Desk *desk)
{
  static const char *const answers[] = { "Done earlier", "Not applicable" };

  for (gsize i = 0; i < G_N_ELEMENTS (answers); i++)
    {
      run_press (desk, answers[i]);
      g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Back to the step"));
      check_names (desk, answers[i]);
      run_press (desk, "Back to the step");
      g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, answers[i]));
    }
}

static void
check_stop (Desk *desk)
{
  desk_key (desk, "F8");
  run_is_shown (desk, "Nothing was stopped");
  check_names (desk, "STOP");
  desk_click (desk, ATSPI_ROLE_INVALID, "Engine runs away");
  run_is_shown (desk, "Never a hand, a rag or a board over the intake.");
  check_names (desk, "STOP, runaway");
  run_press (desk, "Nothing was stopped");
  run_is_shown (desk, "Confirm: ");
}

static void
check_release (Desk *desk)
{
  run_press (desk, "Release incomplete");
  run_is_shown (desk, "A tag is printed for the vehicle");
  check_names (desk, "the release");
  desk_type (desk, "gasket");
  run_press (desk, "Release the vehicle incomplete");
  g_object_unref (desk_find (desk, ATSPI_ROLE_IMAGE, "Page 1 of"));
  check_names (desk, "the tag");
  close_window (desk, "Incomplete tag", "the tag");
  run_is_shown (desk, "Take the run up again");
  check_names (desk, "the bay after a release");
}

START_TEST (the_technicians_desk_and_bay)
{
  Desk *desk = begin ("Ines Farrow", "5555");
  g_autofree char *book = book_path ();

  check_places (desk, 7);
  open_bay (desk, book);
  check_names (desk, "the bay before a run");
  run_press (desk, "Begin the run");
  run_is_shown (desk, "Read, and kept: ");
  check_names (desk, "the cautions of a part");
  run_press (desk, "Read, and kept: ");
  run_is_shown (desk, "Confirm: ");
  check_names (desk, "a step");
  check_bay_answers (desk);
  check_stop (desk);
  check_release (desk);
  end (desk, 17);
}
END_TEST

START_TEST (the_leads_desk)
{
  Desk *desk = begin ("Dov Hallet", "4444");

  check_places (desk, 10);
  open_row (desk, "Fluids", ATSPI_ROLE_LIST_ITEM, "Fluids");
  check_page (desk, "Fluids");
  open_row (desk, "Adapters", ATSPI_ROLE_LIST_ITEM, "Adapters");
  check_page (desk, "Adapters");
  end (desk, 15);
}
END_TEST

START_TEST (the_owners_desk_and_preferences)
{
  Desk *desk = begin ("Oona Brask", "1111");

  check_places (desk, 9);
  desk_key (desk, "ctrl+comma");
  check_page (desk, "Preferences");
  end (desk, 25);
}
END_TEST

START_TEST (the_first_start)
{
  const char *const arguments[] = { NULL };
  Desk *desk = NULL;

  book_forget ("");
  desk = desk_start (arguments);
  all_faults = g_string_new (NULL);
  n_looked_at = 0;
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "Demo shop"));
  check_names (desk, "the first start");
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, "New shop");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, "Open the book"));
  check_names (desk, "a new shop");
  end (desk, 2);
}
END_TEST

static void
add_case (Suite *suite, const char *name, const TTest *test)
{
  TCase *tcase = tcase_create (name);

  tcase_set_timeout (tcase, 300);
  tcase_add_test (tcase, test);
  suite_add_tcase (suite, tcase);
}

static Suite *
desk_names_suite (void)
{
  Suite *suite = suite_create ("desk names");

  add_case (suite, "advisor", the_advisors_desk);
  add_case (suite, "booking", what_the_advisor_books_and_bills);
  add_case (suite, "clerk", the_clerks_desk);
  add_case (suite, "technician", the_technicians_desk_and_bay);
  add_case (suite, "lead", the_leads_desk);
  add_case (suite, "owner", the_owners_desk_and_preferences);
  add_case (suite, "first start", the_first_start);
  return suite;
}

UNSOOT_TEST_MAIN (desk_names_suite)
