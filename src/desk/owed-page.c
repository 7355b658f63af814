/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "owed-page.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "card.h"
#include "paper-view.h"
#include "statements.h"
#include "table.h"

enum
{
  AMOUNTS = 6,
  COLUMNS = AMOUNTS + 2 /* whose, and the statement */
};

struct _UnsootOwedPage
{
  UnsootView parent_instance;

  /* template */
  UnsootCard *card;
  GtkWidget *nothing;
};

G_DEFINE_FINAL_TYPE (UnsootOwedPage, unsoot_owed_page, UNSOOT_TYPE_VIEW)

static gpointer
read_owed (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;

  return unsoot_owing_list (db, query->filter, error);
}

/* The worker has no clock: the day goes along. */
static void
ask_owed (UnsootView *view, UnsootViewQuery *query)
{
  g_autofree char *today = unsoot_session_today (unsoot_view_get_session (view));

  g_strlcpy (query->filter, today, sizeof query->filter);
}

static void
statement_cb (GtkButton *button, UnsootOwedPage *self)
{
  const gint64 *id = g_object_get_data (G_OBJECT (button), "customer");

  unsoot_paper_view_open_statement (GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                                    *id);
}

static GtkWidget *
customer_button_new (const UnsootOwing *owing)
{
  GtkWidget *button = gtk_button_new_with_label (owing->name);
  GtkWidget *label = gtk_button_get_child (GTK_BUTTON (button));

  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "name-link");
  gtk_widget_set_tooltip_text (button, owing->name);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "(sx)", "customer",
                                    owing->customer_id);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.open");
  unsoot_access_name (button, owing->name);
  return button;
}

static GtkWidget *
statement_button_new (UnsootOwedPage *self, const UnsootOwing *owing)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("unsoot-papers-symbolic");
  g_autofree char *name = g_strdup_printf ("%s: %s", _ ("Statement"), owing->name);

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "small");
  gtk_widget_set_tooltip_text (button, _ ("Statement of account"));
  unsoot_access_name (button, name);
  g_object_set_data_full (G_OBJECT (button), "customer",
                          g_memdup2 (&owing->customer_id, sizeof owing->customer_id), g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (statement_cb), self);
  return button;
}

static void
amounts_of (const UnsootOwes *owes, gint64 amounts[AMOUNTS])
{
  amounts[0] = owes->total;
  amounts[1] = owes->not_due;
  amounts[2] = owes->to_30;
  amounts[3] = owes->to_60;
  amounts[4] = owes->to_90;
  amounts[5] = owes->over_90;
}

/* A nothing is left out, so that what is owed is seen. */
static void
fill_cells (UnsootSession *session, const gint64 amounts[AMOUNTS], gboolean heavy,
            char *cells[COLUMNS])
{
  for (int i = 0; i < AMOUNTS; i++)
    {
      g_autofree char *money = unsoot_session_money (session, amounts[i]);
      cells[1 + i] = amounts[i] == 0
                         ? NULL
                         : g_markup_printf_escaped (heavy || i == 0 ? "<b>%s</b>" : "%s", money);
    }
}

static void
add_owing (UnsootOwedPage *self, UnsootTable *table, const UnsootOwing *owing, gint64 sums[AMOUNTS])
{
  gint64 amounts[AMOUNTS];
  char *cells[COLUMNS] = { NULL };
  int row;

  amounts_of (&owing->owes, amounts);
  for (int i = 0; i < AMOUNTS; i++)
    sums[i] += amounts[i];
  fill_cells (unsoot_view_get_session (UNSOOT_VIEW (self)), amounts, FALSE, cells);
  row = unsoot_table_add (table, (const char *const *) cells);
  unsoot_table_put (table, row, 0, customer_button_new (owing));
  unsoot_table_put (table, row, COLUMNS - 1, statement_button_new (self, owing));
  for (int i = 0; i < COLUMNS; i++)
    g_free (cells[i]);
}

static void
add_sums (UnsootOwedPage *self, UnsootTable *table, const gint64 sums[AMOUNTS])
{
  char *cells[COLUMNS] = { NULL };

  fill_cells (unsoot_view_get_session (UNSOOT_VIEW (self)), sums, TRUE, cells);
  cells[0] = g_markup_printf_escaped ("<b>%s</b>", _ ("All together"));
  unsoot_table_add_total (table, (const char *const *) cells);
  for (int i = 0; i < COLUMNS; i++)
    g_free (cells[i]);
}

static void
show_owed (UnsootView *view, gpointer result)
{
  const UnsootTableColumn columns[] = { { _ ("Customer"), FALSE, TRUE },
                                        { _ ("Owed in all"), TRUE, FALSE },
                                        { _ ("Not due yet"), TRUE, FALSE },
                                        { _ ("1–30 days"), TRUE, FALSE },
                                        { _ ("31–60 days"), TRUE, FALSE },
                                        { _ ("61–90 days"), TRUE, FALSE },
                                        { _ ("Over 90"), TRUE, FALSE },
                                        { "", FALSE, FALSE },
                                        { NULL, FALSE, FALSE } };
  UnsootOwedPage *self = UNSOOT_OWED_PAGE (view);
  g_autoptr (GPtrArray) list = result;
  gint64 sums[AMOUNTS] = { 0 };
  GtkWidget *table = unsoot_table_new (_ ("Owed by customer"), columns);

  unsoot_view_set_title (view, _ ("Owed by customer"));
  unsoot_card_clear (self->card);
  for (guint i = 0; i < list->len; i++)
    add_owing (self, UNSOOT_TABLE (table), g_ptr_array_index (list, i), sums);
  add_sums (self, UNSOOT_TABLE (table), sums);
  gtk_box_append (GTK_BOX (self->card), table);
  gtk_widget_set_visible (GTK_WIDGET (self->card), list->len > 0);
  gtk_widget_set_visible (self->nothing, list->len == 0);
}

static void
unsoot_owed_page_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_owed_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_OWED_PAGE);
}

static void
unsoot_owed_page_class_init (UnsootOwedPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_owed_page_dispose;
  view_class->ask = ask_owed;
  view_class->read = read_owed;
  view_class->free_result = (GDestroyNotify) g_ptr_array_unref;
  view_class->show = show_owed;
  g_type_ensure (UNSOOT_TYPE_CARD);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/owed-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootOwedPage, card);
  gtk_widget_class_bind_template_child (widget_class, UnsootOwedPage, nothing);
}

static void
unsoot_owed_page_init (UnsootOwedPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
