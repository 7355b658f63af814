/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk-hand.h"

#include "staff.h"
#include "suite.h"

UnsootWindow *
desk_hand_window_sized (UnsootSession *session, int width, int height)
{
  UnsootWindow *window = g_object_new (UNSOOT_TYPE_WINDOW, NULL);

  unsoot_window_set_session (window, session);
  if (width > 0)
    gtk_window_set_default_size (GTK_WINDOW (window), width, height);
  gtk_window_present (GTK_WINDOW (window));
  return window;
}

UnsootWindow *
desk_hand_window (UnsootSession *session)
{
  return desk_hand_window_sized (session, 0, 0);
}

void
desk_hand_load_style (void)
{
  g_autoptr (GtkCssProvider) style = gtk_css_provider_new ();

  gtk_css_provider_load_from_resource (style, "/org/unsoot/Unsoot/style.css");
  gtk_style_context_add_provider_for_display (gdk_display_get_default (),
                                              GTK_STYLE_PROVIDER (style),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
}

void
desk_hand_leave (UnsootWindow *window, UnsootSession *session)
{
  gtk_window_destroy (GTK_WINDOW (window));
  desk_shop_settle ();
  g_object_unref (session);
}

static gpointer
find_role (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  g_autoptr (GPtrArray) staff = unsoot_staff_list (db, error);

  for (guint i = 0; staff != NULL && i < staff->len; i++)
    {
      const UnsootStaffRow *person = g_ptr_array_index (staff, i);
      if (g_str_equal (person->role, data))
        return unsoot_record_copy (&unsoot_staff_row_type, person);
    }
  return NULL;
}

void
desk_hand_take (UnsootSession *session, const char *role)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (UnsootStaffRow) person = unsoot_store_call (unsoot_session_get_store (session),
                                                         find_role, (gpointer) role, NULL, &error);

  ck_no_error (error);
  unsoot_session_set_person (session, person);
}

char *
desk_hand_text (const char *sql)
{
  g_autoptr (GError) error = NULL;
  UnsootDb *db = unsoot_db_open (desk_shop_path (), UNSOOT_DB_READ_ONLY, &error);
  char *text;

  ck_no_error (error);
  text = unsoot_db_text (db, &error, sql);
  unsoot_db_close (db);
  return text != NULL ? text : g_strdup ("");
}

typedef struct
{
  const char *sql;
  const char *wanted;
} Says;

static gboolean
says (gpointer data)
{
  const Says *want = data;
  g_autofree char *text = desk_hand_text (want->sql);

  return g_str_equal (text, want->wanted);
}

void
desk_hand_wait_text (const char *wanted, const char *sql)
{
  Says want = { sql, wanted };

  desk_shop_wait (says, &want, sql);
}

GtkWidget *
desk_hand_dialog (GType type)
{
  g_autoptr (GList) windows = gtk_window_list_toplevels ();

  for (GList *l = windows; l != NULL; l = l->next)
    if (G_TYPE_CHECK_INSTANCE_TYPE (l->data, type) && gtk_widget_get_mapped (l->data))
      return l->data;
  return NULL;
}

static gboolean
is_open (gpointer type)
{
  return desk_hand_dialog (*(GType *) type) != NULL;
}

static gboolean
is_closed (gpointer type)
{
  return !is_open (type);
}

GtkWidget *
desk_hand_wait_dialog (GType type)
{
  desk_shop_wait (is_open, &type, g_type_name (type));
  return desk_hand_dialog (type);
}

void
desk_hand_wait_no_dialog (GType type)
{
  desk_shop_wait (is_closed, &type, "a closed dialog");
}

void
desk_hand_press (GtkWidget *root, const char *label)
{
  GtkWidget *words = desk_shop_label (root, label);

  ck_assert_msg (words != NULL, "no button %s", label);
  g_signal_emit_by_name (gtk_widget_get_ancestor (words, GTK_TYPE_BUTTON), "clicked");
}

GtkEditable *
desk_hand_field (GtkWidget *form, const char *label)
{
  GtkWidget *words = desk_shop_label (form, label);

  ck_assert_msg (words != NULL, "no field %s", label);
  return GTK_EDITABLE (desk_shop_widget (gtk_widget_get_next_sibling (words), GTK_TYPE_ENTRY));
}
