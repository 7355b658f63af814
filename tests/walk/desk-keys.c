/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk-keys.h"

#include <string.h>

#include "suite.h"

G_DEFINE_AUTOPTR_CLEANUP_FUNC (AtspiText, g_object_unref)

enum
{
  PATIENCE_S = 90,
  POLL_US = 30000,
  MOST_TABS = 60
};

/* Of the windows, which each keep a focus of their own, the one is asked that has the keyboard;
 * in it the innermost: an entry's text is focused inside the entry. */
static const DeskNode *
focus_in (GPtrArray *tree)
{
  const DeskNode *focus = NULL;
  gboolean active = FALSE;

  for (guint i = 0; i < tree->len; i++)
    {
      const DeskNode *node = tree->pdata[i];

      if (node->parent < 0)
        active = desk_node_is (node, ATSPI_STATE_ACTIVE);
      else if (active && desk_node_is (node, ATSPI_STATE_FOCUSED)
               && (focus == NULL || node->depth > focus->depth))
        focus = node;
    }
  return focus;
}

/* What the thing at the keyboard is called; NULL: nothing has it. */
static char *
name_at_keyboard (Desk *desk)
{
  g_autoptr (GPtrArray) tree = desk_tree (desk);
  const DeskNode *focus = focus_in (tree);

  return focus != NULL ? g_strdup (focus->name) : NULL;
}

gboolean
desk_has_keyboard (Desk *desk, const char *name)
{
  g_autofree char *at = name_at_keyboard (desk);

  return at != NULL && strstr (at, name) != NULL;
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
      g_autofree char *at = name_at_keyboard (desk);
      ck_abort_msg ("the keyboard is at “%s”, not at “%s”", at, name);
    }
}

static gboolean
is_ready (Desk *desk, AtspiRole role, const char *name)
{
  g_autoptr (GPtrArray) tree = desk_tree (desk);

  for (guint i = 0; i < tree->len; i++)
    {
      const DeskNode *node = tree->pdata[i];
      if (node->role == role && g_str_equal (node->name, name)
          && desk_node_is (node, ATSPI_STATE_SENSITIVE))
        return TRUE;
    }
  return FALSE;
}

void
desk_wait_ready (Desk *desk, AtspiRole role, const char *name)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  gboolean ready = is_ready (desk, role, name);

  while (!ready && g_get_monotonic_time () < last)
    {
      g_usleep (POLL_US);
      ready = is_ready (desk, role, name);
    }
  if (!ready)
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
  g_autoptr (GPtrArray) tree = desk_tree (desk);
  const DeskNode *focus = focus_in (tree);
  g_autoptr (AtspiAccessible) thing
      = focus != NULL ? desk_node_get (desk->application, focus) : NULL;
  g_autoptr (AtspiText) text = thing != NULL ? atspi_accessible_get_text_iface (thing) : NULL;
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
      g_autoptr (GPtrArray) tree = desk_tree (desk);
      const DeskNode *focus = focus_in (tree);
      if (focus != NULL && focus->role == ATSPI_ROLE_LIST_ITEM)
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

/* Its line in the find box has the kind before it, as nothing on a page has. */
static void
open_found (Desk *desk, const char *title)
{
  g_autofree char *line = g_strdup_printf (": %s", title);

  desk_key (desk, "ctrl+k");
  desk_wait_keyboard (desk, "Find anything");
  desk_type (desk, title);
  g_object_unref (desk_find (desk, ATSPI_ROLE_LIST_ITEM, line));
  desk_key (desk, "Return");
  desk_wait_title (desk, title);
}

void
desk_open_job (Desk *desk, const char *number)
{
  /* The number alone may be in a plate too. */
  g_autofree char *title = g_strdup_printf ("Job %s", number);

  open_found (desk, title);
}

void
desk_open_invoice (Desk *desk, const char *number)
{
  g_autofree char *title = g_strdup_printf ("Invoice %s", number);

  open_found (desk, title);
}
