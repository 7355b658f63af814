/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "customers-page.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "customer-edit.h"
#include "customer-words.h"

struct _UnsootCustomersPage
{
  UnsootRecordsPage parent_instance;
};

G_DEFINE_FINAL_TYPE (UnsootCustomersPage, unsoot_customers_page, UNSOOT_TYPE_RECORDS_PAGE)

static char *
escape (const char *text)
{
  return g_markup_escape_text (text != NULL ? text : "", -1);
}

static char *
name_text (gconstpointer line, UnsootSession *session)
{
  return g_markup_printf_escaped ("<b>%s</b>", ((const UnsootCustomerLine *) line)->name);
}

static char *
kind_text (gconstpointer line, UnsootSession *session)
{
  return escape (unsoot_customer_kind_words (((const UnsootCustomerLine *) line)->kind));
}

static char *
phone_text (gconstpointer line, UnsootSession *session)
{
  return escape (((const UnsootCustomerLine *) line)->phone);
}

static char *
town_text (gconstpointer line, UnsootSession *session)
{
  return escape (((const UnsootCustomerLine *) line)->town);
}

static char *
vehicles_text (gconstpointer line, UnsootSession *session)
{
  const gint64 n = ((const UnsootCustomerLine *) line)->vehicles;

  return n > 0 ? g_strdup_printf ("%d", (int) n) : g_strdup ("");
}

static char *
owes_text (gconstpointer line, UnsootSession *session)
{
  const gint64 owes = ((const UnsootCustomerLine *) line)->owes_minor;
  g_autofree char *money = owes != 0 ? unsoot_session_money (session, owes) : NULL;

  return escape (money);
}

static char *
row_name (gconstpointer data, UnsootSession *session)
{
  const UnsootCustomerLine *line = data;
  g_autofree char *owes
      = line->owes_minor != 0 ? unsoot_session_money (session, line->owes_minor) : NULL;

  if (owes != NULL)
    /* Translators: a customer's name and kind, and an amount that is owed */
    return g_strdup_printf (_ ("%s, %s, owes %s"), line->name,
                            unsoot_customer_kind_words (line->kind), owes);
  return g_strdup_printf ("%s, %s", line->name, unsoot_customer_kind_words (line->kind));
}

static const UnsootRecordsColumn columns[] = {
  { .head = N_ ("Name"), .expands = TRUE, .sorts = TRUE, .text = name_text },
  { .head = N_ ("Kind"), .text = kind_text },
  { .head = N_ ("Phone"), .text = phone_text },
  { .head = N_ ("Town"), .expands = TRUE, .text = town_text },
  { .head = N_ ("Vehicles"), .right = TRUE, .text = vehicles_text },
  { .head = N_ ("Owes"), .right = TRUE, .text = owes_text },
};

static GPtrArray *
read_page (UnsootDb *db, const UnsootListPage *page, const char *filter, GError **error)
{
  return unsoot_customer_page (db, page, error);
}

static gint64
line_id (gconstpointer line)
{
  return ((const UnsootCustomerLine *) line)->id;
}

static const char *
line_key (gconstpointer line)
{
  return ((const UnsootCustomerLine *) line)->name;
}

static void
new_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  unsoot_customer_edit_open (widget, unsoot_view_get_session (UNSOOT_VIEW (widget)), 0);
}

static void
unsoot_customers_page_class_init (UnsootCustomersPageClass *klass)
{
  UnsootRecordsPageClass *list_class = UNSOOT_RECORDS_PAGE_CLASS (klass);

  gtk_widget_class_install_action (GTK_WIDGET_CLASS (klass), "view.new", NULL, new_action);
  list_class->columns = columns;
  list_class->n_columns = G_N_ELEMENTS (columns);
  list_class->order = UNSOOT_LIST_UP;
  list_class->opens = "customer";
  list_class->read_page = read_page;
  list_class->free_line = (GDestroyNotify) unsoot_customer_line_free;
  list_class->id = line_id;
  list_class->after_id = line_id;
  list_class->after_text = line_key;
  list_class->name = row_name;
  list_class->empty_icon = "unsoot-customer-symbolic";
  list_class->empty_title = N_ ("No customers yet");
  list_class->empty_sentence
      = N_ ("Everyone whose vehicles are cleaned here: people, businesses and fleets.");
}

static void
unsoot_customers_page_init (UnsootCustomersPage *self)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("New customer…"));

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "view.new");
  unsoot_access_name (button, _ ("New customer…"));
  unsoot_records_page_add_tool (UNSOOT_RECORDS_PAGE (self), button);
}
