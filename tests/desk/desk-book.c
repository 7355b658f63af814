/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk-book.h"

#include <string.h>

#include "jobs.h"
#include "quotes.h"
#include "suite.h"

void
desk_book_begin (DeskBook *desk)
{
  desk_shop_start_toolkit ();
  desk->session = desk_shop_open ();
  desk->window = g_object_new (UNSOOT_TYPE_WINDOW, NULL);
  unsoot_window_set_session (desk->window, desk->session);
  gtk_window_present (GTK_WINDOW (desk->window));
}

void
desk_book_end (DeskBook *desk)
{
  gtk_window_destroy (GTK_WINDOW (desk->window));
  g_object_unref (desk->session);
}

gint64
desk_book_raw (const char *sql, gint64 id)
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
gint64
desk_book_free_vehicle (gint64 nth)
{
  return desk_book_raw (
      "SELECT id FROM vehicles v WHERE family_id IS NOT NULL AND EXISTS (SELECT 1 FROM"
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

gint64
desk_book_quoted_job (DeskBook *desk, gint64 nth)
{
  GError *error = NULL;
  gint64 vehicle = desk_book_free_vehicle (nth);
  g_autofree gint64 *id
      = unsoot_store_call (unsoot_session_get_store (desk->session), quote, &vehicle, NULL, &error);

  ck_no_error (error);
  return *id;
}

gint64
desk_book_authorised_job (DeskBook *desk, gint64 nth)
{
  GError *error = NULL;
  gint64 id = desk_book_quoted_job (desk, nth);

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

GtkWidget *
desk_book_wait_label (const char *text)
{
  Wanted wanted = { text, FALSE, NULL };

  desk_shop_wait (is_there, &wanted, text);
  return wanted.found;
}

void
desk_book_press (const char *label)
{
  Wanted wanted = { label, TRUE, NULL };

  desk_shop_wait (is_there, &wanted, label);
  g_signal_emit_by_name (wanted.found, "clicked");
}

void
desk_book_wait_button (const char *label)
{
  Wanted wanted = { label, TRUE, NULL };

  desk_shop_wait (is_there, &wanted, label);
}

gboolean
desk_book_has_button (const char *label)
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

void
desk_book_go (DeskBook *desk, const char *slug, gint64 record)
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

  return desk_book_raw (said->sql, said->id) == said->wanted;
}

void
desk_book_wait_book (const char *sql, gint64 id, gint64 wanted)
{
  Said said = { sql, id, wanted };

  desk_shop_wait (book_says, &said, sql);
}

GtkWidget *
desk_book_in (DeskBook *desk, GType type)
{
  return desk_shop_widget (GTK_WIDGET (unsoot_window_get_view (desk->window)), type);
}
