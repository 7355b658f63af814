/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-kit.h"

#include <string.h>

#include "suite.h"

enum
{
  PATIENCE_S = 90,
  POLL_US = 10000,
  MOST_STEPS = 140,
  LONGEST_MESSAGE = 4000
};

static gint64
deadline (void)
{
  return g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC;
}

static void
give_up (Desk *desk, const char *sentence, const char *deed)
{
  g_autofree char *shown = desk_dump (desk);
  const gsize length = strlen (shown);

  /* The bay stands last: the pages under it come first. */
  ck_abort_msg ("“%s” %s; shown is:\n…%s", deed, sentence,
                shown + (length > LONGEST_MESSAGE ? length - LONGEST_MESSAGE : 0));
}

static gboolean
is_deed (const char *name)
{
  static const char *const verbs[]
      = { "Confirm: ", "Read, and kept",  "Start the timer: ", "End the step: ",
          "Go on: ",   "Yes, it is so: ", "Sign off: " };

  for (gsize i = 0; i < G_N_ELEMENTS (verbs); i++)
    if (g_str_has_prefix (name, verbs[i]))
      return TRUE;
  return FALSE;
}

static gboolean
is_main_button (const DeskNode *node, gconstpointer data)
{
  return node->role == ATSPI_ROLE_PUSH_BUTTON && is_deed (node->name);
}

/* It is one button from the first step to the signature; only its words change. */
static AtspiAccessible *
main_button (Desk *desk)
{
  const gint64 last = deadline ();
  AtspiAccessible *button = NULL;

  while ((button = desk_find_now (desk, is_main_button, NULL)) == NULL
         && g_get_monotonic_time () < last)
    g_usleep (POLL_US);
  if (button == NULL)
    give_up (desk, "is not offered", "a step");
  return button;
}

char *
bay_deed_of (Desk *desk)
{
  g_autoptr (AtspiAccessible) button = main_button (desk);

  return atspi_accessible_get_name (button, NULL);
}

void
bay_enter_usual (Desk *desk, const char *deed, gpointer data)
{
  if (strstr (deed, "oil") != NULL)
    desk_click (desk, ATSPI_ROLE_INVALID, "As it was");
  if (strstr (deed, "Note how") != NULL)
    desk_type (desk, "steady");
}

static void
press (Desk *desk, AtspiAccessible *button, const char *deed)
{
  const gint64 last = deadline ();
  g_autoptr (AtspiAction) action = atspi_accessible_get_action_iface (button);

  while (!desk_can_press (button) && g_get_monotonic_time () < last)
    g_usleep (POLL_US);
  if (!desk_can_press (button) || !atspi_action_do_action (action, 0, NULL))
    give_up (desk, "can't be pressed", deed);
}

/* Until something else is asked for: then it is stored. */
static char *
next_deed (Desk *desk, AtspiAccessible *button, const char *deed)
{
  const gint64 last = deadline ();
  g_autofree char *next = atspi_accessible_get_name (button, NULL);

  while (g_strcmp0 (next, deed) == 0 && g_get_monotonic_time () < last)
    {
      g_usleep (POLL_US);
      atspi_accessible_clear_cache (button);
      g_free (next);
      next = atspi_accessible_get_name (button, NULL);
    }
  if (g_strcmp0 (next, deed) == 0)
    give_up (desk, "does not go on", deed);
  return g_steal_pointer (&next);
}

int
bay_carry (Desk *desk, const char *wanted, BayEnter enter, gpointer data)
{
  g_autoptr (AtspiAccessible) button = main_button (desk);
  g_autofree char *deed = atspi_accessible_get_name (button, NULL);

  for (int presses = 0; presses < MOST_STEPS; presses++)
    {
      char *next;

      if (strstr (deed, wanted) != NULL)
        return presses;
      enter (desk, deed, data);
      press (desk, button, deed);
      next = next_deed (desk, button, deed);
      g_free (deed);
      deed = next;
    }
  ck_abort_msg ("“%s” did not come", wanted);
  return 0;
}
