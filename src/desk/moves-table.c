/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "moves-table.h"

#include <glib/gi18n-lib.h>

#include "deed-button.h"
#include "fluid-deeds.h"
#include "fluid-words.h"
#include "format.h"
#include "table.h"

/* What a button that takes a move back has to know. */
typedef struct
{
  UnsootSession *session;
  gint64 move_id;
  char *what;
} Back;

static void
back_free (gpointer data, GClosure *closure)
{
  Back *back = data;

  g_object_unref (back->session);
  g_free (back->what);
  g_free (back);
}

static void
back_cb (GtkWidget *button, Back *back)
{
  unsoot_move_back_open (button, back->session, back->move_id, back->what);
}

static GtkWidget *
back_button_new (const UnsootMoveLine *line, UnsootSession *session)
{
  g_autofree char *what = unsoot_move_words (line);
  GtkWidget *button
      = unsoot_deed_button_new (session, UNSOOT_DEED_ADJUST_STOCK, _ ("Take back"), what);
  Back *back = g_new0 (Back, 1);

  back->session = g_object_ref (session);
  back->move_id = line->move->id;
  back->what = g_steal_pointer (&what);
  unsoot_deed_button_draw (button, "edit-undo-symbolic", _ ("Take back"));
  gtk_widget_add_css_class (button, "small");
  g_signal_connect_data (button, "clicked", G_CALLBACK (back_cb), back, back_free, 0);
  return button;
}

/* "Used · job 2417 · lot 7714"; the reason in a lighter tone. */
static char *
what_markup (const UnsootMoveLine *line, gboolean with_lot)
{
  g_autoptr (GString) text = g_string_new (unsoot_move_kind_words (line->move->kind));
  g_autofree char *head = NULL, *reason = NULL;

  if (line->job_number != 0)
    g_string_append_printf (text, " · %s %d", _ ("job"), (int) line->job_number);
  if (with_lot)
    g_string_append_printf (text, " · %s %s", _ ("lot"), line->lot);
  if (line->taken_back)
    g_string_append_printf (text, " · %s", _ ("taken back"));
  head = g_markup_escape_text (text->str, -1);
  if (line->move->reason == NULL)
    return g_steal_pointer (&head);
  reason = g_markup_escape_text (line->move->reason, -1);
  return g_strdup_printf ("%s\n<span size=\"small\" alpha=\"72%%\">%s</span>", head, reason);
}

static void
add_line (UnsootTable *table, const UnsootMoveLine *line, gboolean with_lot, UnsootSession *session)
{
  g_autofree char *when = unsoot_format_stamp (line->move->at, unsoot_session_now (session),
                                               unsoot_session_zone (session));
  g_autofree char *exact = unsoot_format_exact (line->move->at, unsoot_session_zone (session));
  g_autofree char *what = what_markup (line, with_lot);
  g_autofree char *volume = unsoot_volume_change_markup (line->move->ml);
  const char *const cells[] = { when, what, volume, line->staff, NULL };
  const int row = unsoot_table_add (table, cells);
  GtkWidget *cell = gtk_grid_get_child_at (GTK_GRID (table), 0, row);

  gtk_widget_set_tooltip_text (cell, exact);
  if (line->move->reverses_id == 0 && !line->taken_back)
    unsoot_table_put (table, row, 4, back_button_new (line, session));
}

GtkWidget *
unsoot_moves_table_new (GPtrArray *lines, guint limit, gboolean with_lot, UnsootSession *session)
{
  const UnsootTableColumn columns[] = {
    { _ ("When"), FALSE, FALSE }, { _ ("What"), FALSE, TRUE }, { _ ("How much"), TRUE, FALSE },
    { _ ("Who"), FALSE, FALSE },  { "", FALSE, FALSE },        { NULL, FALSE, FALSE }
  };
  GtkWidget *table = unsoot_table_new (_ ("Stock moves"), columns);

  for (guint i = 0; i < lines->len && i < limit; i++)
    add_line (UNSOOT_TABLE (table), g_ptr_array_index (lines, lines->len - 1 - i), with_lot,
              session);
  return table;
}
