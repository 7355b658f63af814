/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk-keys.h"

#include <string.h>

#include "suite.h"

G_DEFINE_AUTOPTR_CLEANUP_FUNC (AtspiText, g_object_unref)

enum
{
  PATIENCE_S = 90,
  POLL_US = 30000,
  MOST_TABS = 60,
  DEEPEST = 60
};

typedef struct
{
  AtspiAccessible *thing; /* NULL: nothing has the keyboard */
  char *name;
} Focus;

/* The innermost: an entry's text is focused inside the entry. Of the windows, which each keep a
 * focus of their own, the one is asked that has the keyboard. */
static gboolean
find_focus_in (AtspiAccessible *thing, int depth, Focus *focus)
{
  const int n = depth < DEEPEST ? atspi_accessible_get_child_count (thing, NULL) : 0;

  for (int i = 0; i < n; i++)
    {
      g_autoptr (AtspiAccessible) child = atspi_accessible_get_child_at_index (thing, i, NULL);
      g_autoptr (AtspiStateSet) states
          = child != NULL ? atspi_accessible_get_state_set (child) : NULL;
      gboolean has;

      if (states == NULL || !atspi_state_set_contains (states, ATSPI_STATE_VISIBLE))
        continue;
      if (depth == 0 && !atspi_state_set_contains (states, ATSPI_STATE_ACTIVE))
        continue;
      has = depth > 0 && atspi_state_set_contains (states, ATSPI_STATE_FOCUSED);
      if (has)
        {
          g_set_object (&focus->thing, child);
          g_free (focus->name);
          focus->name = atspi_accessible_get_name (child, NULL);
        }
      if (find_focus_in (child, depth + 1, focus) || has)
        return TRUE;
    }
  return FALSE;
}

static Focus
find_focus (Desk *desk)
{
  Focus focus = { NULL, NULL };

  find_focus_in (desk->application, 0, &focus);
  return focus;
}

static void
focus_clear (Focus *focus)
{
  g_clear_object (&focus->thing);
  g_clear_pointer (&focus->name, g_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Focus, focus_clear)

gboolean
desk_has_keyboard (Desk *desk, const char *name)
{
  g_auto (Focus) focus = find_focus (desk);

  return focus.name != NULL && strstr (focus.name, name) != NULL;
}

void
desk_wait_keyboard (Desk *desk, const char *name)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  gboolean has = desk_has_keyboard (desk, name);

  while (!has && g_get_monotonic_time () < last)
    {
      g_usleep (POLL_US);
      has = desk_has_keyboard (desk, name);
    }
  if (!has)
    {
      g_auto (Focus) focus = find_focus (desk);
      ck_abort_msg ("the keyboard is at “%s”, not at “%s”", focus.name, name);
    }
}

typedef struct
{
  AtspiRole role;
  const char *name;
  gboolean ready;
} Ready;

static void
note_ready (AtspiAccessible *thing, AtspiRole role, const char *name, gpointer data)
{
  Ready *wanted = data;

  if (!wanted->ready && role == wanted->role && g_str_equal (name, wanted->name))
    wanted->ready = desk_can_press (thing);
}

void
desk_wait_ready (Desk *desk, AtspiRole role, const char *name)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  Ready wanted = { role, name, FALSE };

  desk_each (desk, note_ready, &wanted);
  while (!wanted.ready && g_get_monotonic_time () < last)
    {
      g_usleep (POLL_US);
      desk_each (desk, note_ready, &wanted);
    }
  if (!wanted.ready)
    {
      g_autofree char *shown = desk_dump (desk);
      ck_abort_msg ("“%s” can't be done; shown is:\n%.4000s", name, shown);
    }
}

static void
walk_to (Desk *desk, const char *name, const char *key)
{
  for (int i = 0; i < MOST_TABS; i++)
    {
      if (desk_has_keyboard (desk, name))
        return;
      desk_key (desk, key);
    }
  ck_abort_msg ("the keyboard does not come to “%s”", name);
}

void
desk_tab_to (Desk *desk, const char *name)
{
  walk_to (desk, name, "Tab");
}

void
desk_back_to (Desk *desk, const char *name)
{
  walk_to (desk, name, "shift+Tab");
}

static char *
text_at_keyboard (Desk *desk)
{
  g_auto (Focus) focus = find_focus (desk);
  g_autoptr (AtspiText) text
      = focus.thing != NULL ? atspi_accessible_get_text_iface (focus.thing) : NULL;
  int n;

  if (text == NULL)
    return NULL;
  n = atspi_text_get_character_count (text, NULL);
  return atspi_text_get_text (text, 0, n, NULL);
}

void
desk_fill (Desk *desk, const char *name, const char *text)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  g_autofree char *stands = NULL;

  desk_tab_to (desk, name);
  desk_key (desk, "ctrl+a");
  desk_type (desk, text);
  do
    {
      g_free (stands);
      stands = text_at_keyboard (desk);
    }
  while (g_strcmp0 (stands, text) != 0 && g_get_monotonic_time () < last);
  ck_assert_msg (g_strcmp0 (stands, text) == 0, "“%s” says “%s”, not “%s”", name, stands, text);
}

/* The list opens on its own time, and a key before that is lost. */
static void
wait_on_list (Desk *desk, const char *name)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;

  while (g_get_monotonic_time () < last)
    {
      g_auto (Focus) focus = find_focus (desk);
      if (focus.thing != NULL
          && atspi_accessible_get_role (focus.thing, NULL) == ATSPI_ROLE_LIST_ITEM)
        return;
      g_usleep (POLL_US);
    }
  ck_abort_msg ("the list of “%s” does not open", name);
}

void
desk_choose (Desk *desk, const char *name, int down)
{
  desk_wait_keyboard (desk, name);
  desk_key (desk, "space");
  wait_on_list (desk, name);
  for (int i = 0; i < down; i++)
    desk_key (desk, "Down");
  desk_key (desk, "Return");
  desk_wait_keyboard (desk, name);
}

void
desk_change_hands (Desk *desk, const char *name, const char *pin)
{
  desk_key (desk, "ctrl+l");
  desk_click (desk, ATSPI_ROLE_LIST_ITEM, name);
  desk_focus (desk, "Who is at the desk");
  desk_wait_keyboard (desk, "PIN");
  desk_type (desk, pin);
  desk_key (desk, "Return");
  g_object_unref (desk_find (desk, ATSPI_ROLE_PUSH_BUTTON, name));
  desk_focus (desk, "Unsoot");
}
