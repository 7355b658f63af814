/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk-tree.h"

#include "suite.h"

#define ACCESSIBLE "org.a11y.atspi.Accessible"

enum
{
  PATIENCE_MS = 60000,
  DEEPEST = 60,
  ROWS_READ_WHOLE = 24
};

static GDBusConnection *
connect_to_bus (void)
{
  GError *error = NULL;
  g_autoptr (GDBusConnection) session = g_bus_get_sync (G_BUS_TYPE_SESSION, NULL, &error);
  g_autoptr (GVariant) answer = NULL;
  const char *address = NULL;
  GDBusConnection *bus;

  ck_no_error (error);
  answer = g_dbus_connection_call_sync (session, "org.a11y.Bus", "/org/a11y/bus", "org.a11y.Bus",
                                        "GetAddress", NULL, G_VARIANT_TYPE ("(s)"),
                                        G_DBUS_CALL_FLAGS_NONE, PATIENCE_MS, NULL, &error);
  ck_no_error (error);
  g_variant_get (answer, "(&s)", &address);
  bus = g_dbus_connection_new_for_address_sync (
      address,
      G_DBUS_CONNECTION_FLAGS_AUTHENTICATION_CLIENT
          | G_DBUS_CONNECTION_FLAGS_MESSAGE_BUS_CONNECTION,
      NULL, NULL, &error);
  ck_no_error (error);
  return bus;
}

/* One for the test's process. */
static GDBusConnection *
bus (void)
{
  static GDBusConnection *connection;

  if (connection == NULL)
    connection = connect_to_bus ();
  return connection;
}

typedef struct
{
  const char *application; /* its name on the bus */
  GMainContext *context;
  guint waiting;
} Reading;

typedef struct
{
  Reading *reading;
  GVariant *answer; /* NULL: the thing is gone */
} Question;

static void
answered_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Question *question = data;

  question->answer = g_dbus_connection_call_finish (G_DBUS_CONNECTION (source), result, NULL);
  question->reading->waiting--;
}

static void
ask (Question *question, Reading *reading, const char *path, const char *interface,
     const char *method, GVariant *arguments)
{
  question->reading = reading;
  reading->waiting++;
  g_dbus_connection_call (bus (), reading->application, path, interface, method, arguments, NULL,
                          G_DBUS_CALL_FLAGS_NONE, PATIENCE_MS, NULL, answered_cb, question);
}

static void
await (Reading *reading)
{
  while (reading->waiting > 0)
    g_main_context_iteration (reading->context, TRUE);
}

enum
{
  NAME,
  ROLE,
  STATE,
  CHILDREN,
  N_QUESTIONS
};

typedef struct
{
  DeskNode *node;
  GPtrArray *children; /* of Twig */
  Question questions[N_QUESTIONS];
} Twig;

static void
node_free (gpointer data)
{
  DeskNode *node = data;

  g_free (node->path);
  g_free (node->name);
  g_free (node);
}

static void
twig_free (gpointer data)
{
  Twig *twig = data;

  for (int i = 0; i < N_QUESTIONS; i++)
    g_clear_pointer (&twig->questions[i].answer, g_variant_unref);
  g_clear_pointer (&twig->node, node_free);
  g_ptr_array_unref (twig->children);
  g_free (twig);
}

static Twig *
twig_new (const char *path, int index, int depth)
{
  Twig *twig = g_new0 (Twig, 1);

  twig->node = g_new0 (DeskNode, 1);
  twig->node->path = g_strdup (path);
  twig->node->index = index;
  twig->node->depth = depth;
  twig->children = g_ptr_array_new_with_free_func (twig_free);
  return twig;
}

static void
ask_about (Twig *twig, Reading *reading)
{
  const char *path = twig->node->path;

  ask (&twig->questions[NAME], reading, path, "org.freedesktop.DBus.Properties", "Get",
       g_variant_new ("(ss)", ACCESSIBLE, "Name"));
  ask (&twig->questions[ROLE], reading, path, ACCESSIBLE, "GetRole", NULL);
  ask (&twig->questions[STATE], reading, path, ACCESSIBLE, "GetState", NULL);
  ask (&twig->questions[CHILDREN], reading, path, ACCESSIBLE, "GetChildren", NULL);
}

static void
read_answers (Twig *twig)
{
  g_autoptr (GVariant) name = NULL, states = NULL;
  guint32 role = 0, low = 0, high = 0;

  g_variant_get (twig->questions[NAME].answer, "(v)", &name);
  twig->node->name = g_variant_dup_string (name, NULL);
  g_variant_get (twig->questions[ROLE].answer, "(u)", &role);
  twig->node->role = role;
  states = g_variant_get_child_value (twig->questions[STATE].answer, 0);
  g_variant_get_child (states, 0, "u", &low);
  g_variant_get_child (states, 1, "u", &high);
  twig->node->states = low | (guint64) high << 32;
}

static gboolean
is_answered (const Twig *twig)
{
  for (int i = 0; i < N_QUESTIONS; i++)
    if (twig->questions[i].answer == NULL)
      return FALSE;
  return TRUE;
}

static void
grow (Twig *twig, GVariant *answer, GPtrArray *level)
{
  g_autoptr (GVariant) list = g_variant_get_child_value (answer, 0);
  const gsize n = g_variant_n_children (list);

  for (gsize i = 0; i < n; i++)
    {
      const char *path = NULL;
      Twig *child;

      g_variant_get_child (list, i, "(&s&o)", NULL, &path);
      child = twig_new (path, (int) i, twig->node->depth + 1);
      g_ptr_array_add (twig->children, child);
      g_ptr_array_add (level, child);
    }
}

static gboolean
is_read_further (const DeskNode *node)
{
  return node->depth < DEEPEST
         && (node->role != ATSPI_ROLE_TABLE_ROW || node->index < ROWS_READ_WHOLE);
}

/* What is gone stays without a name, and without children. */
static GPtrArray *
read_level (GPtrArray *level, Reading *reading)
{
  GPtrArray *next = g_ptr_array_new ();

  for (guint i = 0; i < level->len; i++)
    ask_about (level->pdata[i], reading);
  await (reading);
  for (guint i = 0; i < level->len; i++)
    {
      Twig *twig = level->pdata[i];
      if (!is_answered (twig))
        continue;
      read_answers (twig);
      if (is_read_further (twig->node))
        grow (twig, twig->questions[CHILDREN].answer, next);
    }
  return next;
}

static void
lay_out (Twig *twig, int parent, GPtrArray *tree)
{
  for (guint i = 0; i < twig->children->len; i++)
    {
      Twig *child = twig->children->pdata[i];
      const int place = (int) tree->len;

      if (child->node->name == NULL)
        continue;
      child->node->parent = parent;
      g_ptr_array_add (tree, g_steal_pointer (&child->node));
      lay_out (child, place, tree);
    }
}

GPtrArray *
desk_tree_read (AtspiAccessible *application)
{
  GPtrArray *tree = g_ptr_array_new_with_free_func (node_free);
  Reading reading = { application->parent.app->bus_name, g_main_context_default (), 0 };
  Twig *root = twig_new (application->parent.path, 0, -1);
  g_autoptr (GPtrArray) level = g_ptr_array_new ();

  ask (&root->questions[CHILDREN], &reading, root->node->path, ACCESSIBLE, "GetChildren", NULL);
  await (&reading);
  if (root->questions[CHILDREN].answer != NULL)
    grow (root, root->questions[CHILDREN].answer, level);
  while (level->len > 0)
    {
      GPtrArray *next = read_level (level, &reading);
      g_ptr_array_unref (level);
      level = next;
    }
  lay_out (root, -1, tree);
  twig_free (root);
  return tree;
}

gboolean
desk_node_is (const DeskNode *node, AtspiStateType state)
{
  return (node->states >> state & 1) != 0;
}

AtspiAccessible *
desk_node_get (AtspiAccessible *application, const DeskNode *node)
{
  AtspiAccessible *thing = g_object_new (ATSPI_TYPE_ACCESSIBLE, NULL);

  /* The library makes one only for a child that it asks for by its place, and places change. */
  thing->parent.app = g_object_ref (application->parent.app);
  thing->parent.path = g_strdup (node->path);
  return thing;
}
