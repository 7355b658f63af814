/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk-kit.h"
#include "suite.h"

/* Everything that a screen reader stops at has a name of its own: not empty, not a class of the
 * toolkit, not a label with its mnemonic's mark. */

static gboolean
is_read_out (AtspiRole role)
{
  static const AtspiRole roles[] = {
    ATSPI_ROLE_PUSH_BUTTON, ATSPI_ROLE_TOGGLE_BUTTON, ATSPI_ROLE_ENTRY,     ATSPI_ROLE_TEXT,
    ATSPI_ROLE_COMBO_BOX,   ATSPI_ROLE_PASSWORD_TEXT, ATSPI_ROLE_LIST_ITEM, ATSPI_ROLE_LIST,
    ATSPI_ROLE_LIST_BOX,    ATSPI_ROLE_TABLE,         ATSPI_ROLE_TABLE_ROW, ATSPI_ROLE_TABLE_CELL,
    ATSPI_ROLE_TREE_TABLE,  ATSPI_ROLE_IMAGE,         ATSPI_ROLE_CHECK_BOX, ATSPI_ROLE_LINK,
    ATSPI_ROLE_DIALOG,      ATSPI_ROLE_FRAME,         ATSPI_ROLE_MENU_ITEM, ATSPI_ROLE_PROGRESS_BAR,
  };

  for (gsize i = 0; i < G_N_ELEMENTS (roles); i++)
    if (roles[i] == role)
      return TRUE;
  return FALSE;
}

static gboolean
is_toolkit_name (const char *name)
{
  return g_regex_match_simple ("^(Gtk|Adw|Unsoot)[A-Z]", name, 0, 0);
}

static void
note_nameless (AtspiAccessible *thing, AtspiRole role, const char *name, gpointer data)
{
  GString *faults = data;
  g_autofree char *words = NULL;

  if (!is_read_out (role) || (*name != '\0' && *name != '_' && !is_toolkit_name (name)))
    return;
  words = atspi_accessible_get_role_name (thing, NULL);
  g_string_append_printf (faults, "%s “%s”\n", words, name);
}

static void
check_names (Desk *desk, const char *where)
{
  g_autoptr (GString) faults = g_string_new (NULL);

  desk_each (desk, note_nameless, faults);
  ck_assert_msg (faults->len == 0, "nameless in %s:\n%s", where, faults->str);
}

START_TEST (every_place_and_record)
{
  static const char *const places[]
      = { "Today", "Planner", "Jobs", "Customers", "Vehicles", "Fluids", "Adapters", "Invoices" };
  const char *const arguments[] = { "--demo", NULL };
  Desk *desk = desk_start (arguments);

  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    {
      g_autofree char *keys = g_strdup_printf ("ctrl+%d", (int) i + 1);
      desk_wait_title (desk, "Today");
      desk_key (desk, keys);
      desk_wait_title (desk, places[i]);
      check_names (desk, places[i]);
      desk_key (desk, "ctrl+1");
    }
  desk_end (desk);
}
END_TEST

static void
check_record (const char *place, const char *title)
{
  const char *const arguments[] = { "--demo", "--place", place, NULL };
  Desk *desk = desk_start (arguments);

  desk_wait_title (desk, title);
  check_names (desk, place);
  desk_end (desk);
}

START_TEST (records)
{
  check_record ("job", "Job ");
  check_record ("vehicle", " · "); /* model, and unit or plate */
  check_record ("customer", "Ferry");
  check_record ("fluid", "Fuel fluid");
  check_record ("lot", "Lot ");
  check_record ("adapter", "Adapter ");
  check_record ("machines", "Machines");
  check_record ("machine", "Cart ");
  check_record ("kits", "Kits");
}
END_TEST

START_TEST (a_deed_is_asked_for_by_name)
{
  const char *const arguments[] = { "--demo", "--place", "fluid", NULL };
  Desk *desk = desk_start (arguments);

  desk_wait_title (desk, "Fuel fluid");
  desk_click (desk, ATSPI_ROLE_PUSH_BUTTON, "Receive…");
  desk_wait_title (desk, "Receive a delivery");
  check_names (desk, "the form of a delivery");
  desk_focus (desk, "Receive a delivery");
  desk_key (desk, "Escape");
  desk_focus (desk, "Unsoot");
  desk_end (desk);
}
END_TEST

START_TEST (change_of_hands)
{
  const char *const arguments[] = { "--demo", NULL };
  Desk *desk = desk_start (arguments);

  desk_wait_title (desk, "Today");
  desk_key (desk, "ctrl+l");
  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "Take the desk"));
  check_names (desk, "the change of hands");
  desk_key (desk, "Escape");
  desk_end (desk);
}
END_TEST

START_TEST (first_start)
{
  const char *const arguments[] = { NULL };
  Desk *desk = desk_start (arguments);

  g_object_unref (desk_find (desk, ATSPI_ROLE_INVALID, "Demo shop"));
  check_names (desk, "the first start");
  desk_end (desk);
}
END_TEST

static Suite *
desk_names_suite (void)
{
  Suite *suite = suite_create ("desk names");
  TCase *names = tcase_create ("names");

  tcase_set_timeout (names, 300);
  tcase_add_test (names, every_place_and_record);
  tcase_add_test (names, records);
  tcase_add_test (names, a_deed_is_asked_for_by_name);
  tcase_add_test (names, change_of_hands);
  tcase_add_test (names, first_start);
  suite_add_tcase (suite, names);
  return suite;
}

UNSOOT_TEST_MAIN (desk_names_suite)
