/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk-kit.h"

#include <string.h>

#include "suite.h"

enum
{
  PATIENCE_S = 90,
  POLL_US = 50000,
  DEAF_US = 260000, /* GTK's button: "clicked" a quarter second after its action, none between */
  LONGEST_MESSAGE = 4000,
  MOST_ESCAPES = 3
};

static char *shell (const char *format, ...) G_GNUC_PRINTF (1, 2);

static char *
shell (const char *format, ...)
{
  const char *argv[] = { "sh", "-c", NULL, NULL };
  g_autofree char *line = NULL;
  char *out = NULL;
  GError *error = NULL;
  va_list arguments;

  va_start (arguments, format);
  line = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  argv[2] = line;
  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_STDERR_TO_DEV_NULL, NULL,
                NULL, &out, NULL, NULL, &error);
  ck_no_error (error);
  return g_strchomp (out);
}

/* Told by its process: one that was just ended may still be on the bus, under the same name. */
static AtspiAccessible *
find_application (GSubprocess *process)
{
  const char *identifier = g_subprocess_get_identifier (process);
  g_autoptr (AtspiAccessible) desktop = atspi_get_desktop (0);
  const int n = atspi_accessible_get_child_count (desktop, NULL);

  ck_assert_msg (identifier != NULL, "the program ended before it was on the bus");
  for (int i = 0; i < n; i++)
    {
      g_autoptr (AtspiAccessible) child = atspi_accessible_get_child_at_index (desktop, i, NULL);
      if (child != NULL
          && atspi_accessible_get_process_id (child, NULL)
                 == g_ascii_strtoull (identifier, NULL, 10))
        return g_steal_pointer (&child);
    }
  return NULL;
}

static gboolean
is_frame (AtspiAccessible *window)
{
  return atspi_accessible_get_role (window, NULL) == ATSPI_ROLE_FRAME;
}

/* The window whose title is @title, or else contains it; NULL: the toolkit's own dialogs are not on
 * the bus as frames. */
static AtspiAccessible *
window_called (AtspiAccessible *application, const char *title)
{
  const int n = atspi_accessible_get_child_count (application, NULL);
  g_autoptr (AtspiAccessible) found = NULL;

  for (int i = 0; i < n; i++)
    {
      g_autoptr (AtspiAccessible) window
          = atspi_accessible_get_child_at_index (application, i, NULL);
      g_autofree char *name = window != NULL ? atspi_accessible_get_name (window, NULL) : NULL;

      if (name == NULL || strstr (name, title) == NULL || !is_frame (window))
        continue;
      if (g_str_equal (name, title))
        return g_steal_pointer (&window);
      if (found == NULL)
        found = g_steal_pointer (&window);
    }
  return g_steal_pointer (&found);
}

static gboolean
is_active (AtspiAccessible *window)
{
  g_autoptr (AtspiStateSet) states = atspi_accessible_get_state_set (window);

  return states != NULL && atspi_state_set_contains (states, ATSPI_STATE_ACTIVE);
}

/* For xdotool, which looks for an expression and not for the case of its letters: "Fluid" would be
 * found in "Intake fluid". */
static char *
just_called (const char *title)
{
  g_autoptr (GString) pattern = g_string_new ("^");

  for (const char *p = title; *p != '\0'; p++)
    g_string_append_c (pattern, g_ascii_ispunct (*p) ? '.' : *p);
  g_string_append_c (pattern, '$');
  return g_shell_quote (pattern->str);
}

static gboolean
ask_for_keyboard (const char *title)
{
  g_autofree char *pattern = just_called (title);
  g_autofree char *done = shell (
      "timeout 5 xdotool search --sync --onlyvisible --name %s windowfocus && echo done", pattern);

  return strstr (done, "done") != NULL;
}

void
desk_focus (Desk *desk, const char *title)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;

  while (g_get_monotonic_time () < last)
    {
      g_autoptr (AtspiAccessible) window = window_called (desk->application, title);
      g_autofree char *whole = window != NULL ? atspi_accessible_get_name (window, NULL) : NULL;

      if (window != NULL && is_active (window))
        return;
      if (ask_for_keyboard (whole != NULL ? whole : title) && window == NULL)
        return;
      g_usleep (POLL_US);
    }
  ck_abort_msg ("“%s” does not take the keyboard", title);
}

static gboolean
is_open (const char *title)
{
  g_autofree char *pattern = just_called (title);
  g_autofree char *found = shell ("xdotool search --onlyvisible --name %s", pattern);

  return *found != '\0';
}

void
desk_wait_closed (const char *title)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;

  while (is_open (title) && g_get_monotonic_time () < last)
    g_usleep (POLL_US);
  ck_assert_msg (!is_open (title), "“%s” is still open", title);
}

void
desk_escape (Desk *desk, const char *title)
{
  for (int i = 0; i < MOST_ESCAPES && is_open (title); i++)
    {
      desk_focus (desk, title);
      desk_key (desk, "Escape");
      g_usleep (10 * POLL_US);
    }
  desk_wait_closed (title);
}

Desk *
desk_start (const char *const *arguments)
{
  Desk *desk = g_new0 (Desk, 1);
  g_autoptr (GStrvBuilder) line = g_strv_builder_new ();
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  GError *error = NULL;

  atspi_init ();
  /* Beyond 0.8 seconds, which a busy machine takes, an answer would count as none. */
  atspi_set_timeout (PATIENCE_S * 1000, PATIENCE_S * 1000);
  /* Nobody listens for changes here, so nothing that was read is good a second time. */
  g_autoptr (AtspiAccessible) desktop = atspi_get_desktop (0);
  atspi_accessible_set_cache_mask (desktop, ATSPI_CACHE_NONE);
  g_strv_builder_add (line, g_getenv ("UNSOOT_PROGRAM"));
  g_strv_builder_addv (line, (const char **) arguments);
  g_auto (GStrv) argv = g_strv_builder_end (line);
  desk->process = g_subprocess_newv ((const char *const *) argv, G_SUBPROCESS_FLAGS_NONE, &error);
  ck_no_error (error);
  while (desk->application == NULL && g_get_monotonic_time () < last)
    {
      desk->application = find_application (desk->process);
      g_usleep (POLL_US);
    }
  ck_assert_msg (desk->application != NULL, "the program is not on the bus");
  /* The desktop's mask is taken over only where its root is known already, which is a race. */
  atspi_accessible_set_cache_mask (desk->application, ATSPI_CACHE_NONE);
  desk_focus (desk, "Unsoot");
  return desk;
}

Desk *
desk_start_demo (void)
{
  const char *const arguments[] = { "--demo", NULL };
  Desk *desk = desk_start (arguments);

  desk_wait_title (desk, "Today");
  return desk;
}

void
desk_end (Desk *desk)
{
  GError *error = NULL;

  desk_key (desk, "ctrl+q");
  g_subprocess_wait (desk->process, NULL, &error);
  ck_no_error (error);
  ck_assert_msg (g_subprocess_get_if_exited (desk->process)
                     && g_subprocess_get_exit_status (desk->process) == 0,
                 "the program did not end well");
  g_clear_object (&desk->application);
  g_clear_object (&desk->process);
  g_free (desk);
}

/* What was read before is stale: news of it waits in this program's own main loop. */
static void
look_again (Desk *desk)
{
  while (g_main_context_iteration (NULL, FALSE))
    continue;
  atspi_accessible_clear_cache (desk->application);
}

GPtrArray *
desk_tree (Desk *desk)
{
  return desk_tree_read (desk->application);
}

AtspiAccessible *
desk_find_now (Desk *desk, DeskMatch match, gconstpointer data)
{
  g_autoptr (GPtrArray) tree = desk_tree (desk);

  for (guint i = 0; i < tree->len; i++)
    if (match (tree->pdata[i], data))
      return desk_node_get (desk->application, tree->pdata[i]);
  return NULL;
}

typedef struct
{
  AtspiRole role;
  const char *name;
} Wanted;

static gboolean
is_wanted (const DeskNode *node, gconstpointer data)
{
  const Wanted *wanted = data;

  return (wanted->role == ATSPI_ROLE_INVALID || wanted->role == node->role)
         && strstr (node->name, wanted->name) != NULL;
}

static AtspiAccessible *
find_now (Desk *desk, AtspiRole role, const char *name)
{
  const Wanted wanted = { role, name };

  return desk_find_now (desk, is_wanted, &wanted);
}

gboolean
desk_has (Desk *desk, AtspiRole role, const char *name)
{
  const Wanted wanted = { role, name };
  g_autoptr (GPtrArray) tree = desk_tree (desk);

  for (guint i = 0; i < tree->len; i++)
    if (is_wanted (tree->pdata[i], &wanted))
      return TRUE;
  return FALSE;
}

AtspiAccessible *
desk_find (Desk *desk, AtspiRole role, const char *name)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  AtspiAccessible *thing = NULL;

  while ((thing = find_now (desk, role, name)) == NULL && g_get_monotonic_time () < last)
    g_usleep (POLL_US);
  if (thing == NULL)
    {
      g_autofree char *shown = desk_dump (desk);
      ck_abort_msg ("nothing called “%s”; shown is:\n%.*s", name, LONGEST_MESSAGE, shown);
    }
  return thing;
}

gboolean
desk_can_press (AtspiAccessible *thing)
{
  g_autoptr (AtspiStateSet) states = atspi_accessible_get_state_set (thing);

  return states != NULL && atspi_state_set_contains (states, ATSPI_STATE_SENSITIVE);
}

static gboolean
place_of (AtspiAccessible *thing, AtspiRect *place)
{
  g_autoptr (AtspiComponent) component = atspi_accessible_get_component_iface (thing);
  AtspiRect *found = component != NULL
                         ? atspi_component_get_extents (component, ATSPI_COORD_TYPE_WINDOW, NULL)
                         : NULL;
  const gboolean any = found != NULL && found->width > 0;

  if (any)
    *place = *found;
  g_free (found);
  return any;
}

/* Rows have no action of their own: the mouse goes to their middle, once what is read before them
 * has moved them where they stay. Without a window manager every window stands in the display's
 * corner. */
static void
click_with_mouse (AtspiAccessible *thing, const char *name)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
  AtspiRect place = { 0 }, before = { -1, -1, -1, -1 };
  g_autofree char *done = NULL;

  while ((!place_of (thing, &place) || memcmp (&place, &before, sizeof place) != 0)
         && g_get_monotonic_time () < last)
    {
      before = place;
      g_usleep (2 * POLL_US);
    }
  ck_assert_msg (place.width > 0, "“%s” can't be pressed", name);
  done = shell ("xdotool mousemove %d %d click 1", place.x + place.width / 2,
                place.y + place.height / 2);
}

static void
wait_can_press (AtspiAccessible *thing, const char *name)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;

  while (!desk_can_press (thing) && g_get_monotonic_time () < last)
    g_usleep (POLL_US);
  ck_assert_msg (desk_can_press (thing), "“%s” can't be pressed now", name);
}

void
desk_click (Desk *desk, AtspiRole role, const char *name)
{
  g_autoptr (AtspiAccessible) thing = desk_find (desk, role, name);
  g_autoptr (AtspiAction) action = atspi_accessible_get_action_iface (thing);
  const int n = action != NULL ? atspi_action_get_n_actions (action, NULL) : 0;

  wait_can_press (thing, name);
  for (int i = 0; i < n; i++)
    {
      g_autofree char *its_name = atspi_action_get_action_name (action, i, NULL);
      if (g_strcmp0 (its_name, "click") == 0 || g_strcmp0 (its_name, "activate") == 0)
        {
          ck_assert (atspi_action_do_action (action, i, NULL));
          g_usleep (DEAF_US);
          return;
        }
    }
  click_with_mouse (thing, name);
}

void
desk_key (Desk *desk, const char *keys)
{
  g_autofree char *done = shell ("xdotool key --clearmodifiers --delay 40 %s", keys);
}

void
desk_type (Desk *desk, const char *text)
{
  g_autofree char *quoted = g_shell_quote (text);
  g_autofree char *done = shell ("xdotool type --delay 120 %s", quoted);
}

static gboolean
has_window (Desk *desk, const char *title)
{
  g_autoptr (AtspiAccessible) window = window_called (desk->application, title);

  return window != NULL;
}

void
desk_wait_title (Desk *desk, const char *title)
{
  const gint64 last = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;

  look_again (desk);
  while (!has_window (desk, title) && g_get_monotonic_time () < last)
    {
      g_usleep (POLL_US);
      look_again (desk);
    }
  if (!has_window (desk, title))
    {
      g_autofree char *shown = desk_dump (desk);
      ck_abort_msg ("no window is called “%s”; shown is:\n%.*s", title, LONGEST_MESSAGE, shown);
    }
}

char *
desk_dump (Desk *desk)
{
  GString *text = g_string_new (NULL);
  g_autoptr (GPtrArray) tree = desk_tree (desk);

  for (guint i = 0; i < tree->len; i++)
    {
      const DeskNode *node = tree->pdata[i];
      g_autofree char *role = atspi_role_get_name (node->role);

      if (*node->name != '\0')
        g_string_append_printf (text, "%*s%s “%s”\n", node->depth, "", role, node->name);
    }
  return g_string_free (text, FALSE);
}
