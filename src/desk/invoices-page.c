/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "invoices-page.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "format.h"
#include "invoice-words.h"
#include "owed-bar.h"

/* The filter of what is overdue carries the day that says so: the worker has no clock. */
#define OPEN "open"
#define OVERDUE "overdue:"

struct _UnsootInvoicesPage
{
  UnsootRecordsPage parent_instance;

  UnsootOwedBar *owed; /* borrowed */
  UnsootStoreSlot slot;
};

G_DEFINE_FINAL_TYPE (UnsootInvoicesPage, unsoot_invoices_page, UNSOOT_TYPE_RECORDS_PAGE)

static char *
escape (const char *text)
{
  return g_markup_escape_text (text != NULL ? text : "", -1);
}

static char *
number_text (gconstpointer line, UnsootSession *session)
{
  return g_strdup_printf ("<b>%d</b>", (int) ((const UnsootInvoiceLine *) line)->number);
}

static char *
customer_text (gconstpointer line, UnsootSession *session)
{
  return escape (((const UnsootInvoiceLine *) line)->customer);
}

static char *
job_text (gconstpointer data, UnsootSession *session)
{
  const UnsootInvoiceLine *line = data;

  return line->job_number != 0 ? g_strdup_printf ("%d", (int) line->job_number) : g_strdup ("");
}

static char *
day_text (const char *iso, UnsootSession *session)
{
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *words = unsoot_format_day (iso, today);

  return escape (words);
}

static char *
issued_text (gconstpointer line, UnsootSession *session)
{
  return day_text (((const UnsootInvoiceLine *) line)->issued_on, session);
}

static char *
total_text (gconstpointer line, UnsootSession *session)
{
  g_autofree char *money
      = unsoot_session_money (session, ((const UnsootInvoiceLine *) line)->total_minor);

  return escape (money);
}

static char *
open_text (gconstpointer data, UnsootSession *session)
{
  const UnsootInvoiceLine *line = data;
  g_autofree char *money
      = line->open_minor != 0 ? unsoot_session_money (session, line->open_minor) : NULL;

  return escape (money);
}

static char *
state_words (const UnsootInvoiceLine *line, UnsootSession *session, gboolean *late)
{
  g_autofree char *today = unsoot_session_today (session);

  return unsoot_invoice_state (line->kind, line->due_on, line->open_minor, today, late);
}

static char *
state_text (gconstpointer line, UnsootSession *session)
{
  gboolean late;
  g_autofree char *words = state_words (line, session, &late);

  return g_markup_printf_escaped (late ? "<b>%s</b>" : "%s", words);
}

static char *
row_name (gconstpointer data, UnsootSession *session)
{
  const UnsootInvoiceLine *line = data;
  gboolean late;
  g_autofree char *title = unsoot_invoice_title (line->kind, line->number);
  g_autofree char *total = unsoot_session_money (session, line->total_minor);
  g_autofree char *state = state_words (line, session, &late);

  return g_strdup_printf ("%s, %s, %s, %s", title, line->customer, total, state);
}

static const UnsootRecordsColumn columns[] = {
  { .head = N_ ("Number"), .sorts = TRUE, .text = number_text },
  { .head = N_ ("Customer"), .expands = TRUE, .text = customer_text },
  { .head = N_ ("Job"), .right = TRUE, .text = job_text },
  { .head = N_ ("Issued"), .text = issued_text },
  { .head = N_ ("Total"), .right = TRUE, .text = total_text },
  { .head = N_ ("Open"), .right = TRUE, .text = open_text },
  { .head = N_ ("Stands"), .text = state_text },
};

static GPtrArray *
read_page (UnsootDb *db, const UnsootListPage *page, const char *filter, GError **error)
{
  if (g_str_has_prefix (filter, OVERDUE))
    return unsoot_invoice_page (db, page, UNSOOT_INVOICES_OVERDUE, filter + strlen (OVERDUE), 0,
                                error);
  return unsoot_invoice_page (
      db, page, g_str_equal (filter, OPEN) ? UNSOOT_INVOICES_OPEN : UNSOOT_INVOICES_ALL, NULL, 0,
      error);
}

static gint64
line_id (gconstpointer line)
{
  return ((const UnsootInvoiceLine *) line)->id;
}

static void
filter_cb (GtkDropDown *chooser, GParamSpec *pspec, UnsootRecordsPage *self)
{
  g_autofree char *today = unsoot_session_today (unsoot_view_get_session (UNSOOT_VIEW (self)));
  g_autofree char *overdue = g_strconcat (OVERDUE, today, NULL);
  const char *const filters[] = { "", OPEN, overdue };
  const guint chosen = gtk_drop_down_get_selected (chooser);

  if (chosen < G_N_ELEMENTS (filters))
    unsoot_records_page_set_filter (self, filters[chosen]);
}

static GtkWidget *
filter_new (UnsootRecordsPage *self)
{
  const char *const words[] = { _ ("All invoices"), _ ("Open"), _ ("Overdue"), NULL };
  GtkWidget *chooser = gtk_drop_down_new_from_strings (words);

  unsoot_access_name (chooser, _ ("Which invoices"));
  /* The button inside is what has the focus. */
  unsoot_access_name_inside (chooser, _ ("Which invoices"));
  g_signal_connect (chooser, "notify::selected", G_CALLBACK (filter_cb), self);
  return chooser;
}

/* Who owes it, one by one. */
static GtkWidget *
owed_button_new (void)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("By customer"));

  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "(sx)", "owed", (gint64) 0);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.open");
  unsoot_access_name (button, _ ("Owed by customer"));
  return button;
}

static gpointer
read_owed (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  g_autofree UnsootOwes *owes = g_new0 (UnsootOwes, 1);

  return unsoot_customer_owes (db, 0, data, owes, error) ? g_steal_pointer (&owes) : NULL;
}

static void
owed_read (gpointer owner, gpointer result, const GError *error)
{
  UnsootInvoicesPage *self = owner;
  g_autofree UnsootOwes *owes = result;

  if (error != NULL)
    g_warning ("%s", error->message);
  else
    unsoot_owed_bar_show (self->owed, owes, unsoot_view_get_session (UNSOOT_VIEW (self)));
}

static void
shown_cb (UnsootInvoicesPage *self, gpointer data)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));

  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (session), read_owed,
                          unsoot_session_today (session), g_free, g_free, owed_read, self);
}

static void
unsoot_invoices_page_dispose (GObject *object)
{
  unsoot_store_slot_clear (&UNSOOT_INVOICES_PAGE (object)->slot);
  G_OBJECT_CLASS (unsoot_invoices_page_parent_class)->dispose (object);
}

static void
unsoot_invoices_page_class_init (UnsootInvoicesPageClass *klass)
{
  UnsootRecordsPageClass *list_class = UNSOOT_RECORDS_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_invoices_page_dispose;
  list_class->columns = columns;
  list_class->n_columns = G_N_ELEMENTS (columns);
  list_class->order = UNSOOT_LIST_DOWN;
  list_class->opens = "invoice";
  list_class->read_page = read_page;
  list_class->free_line = (GDestroyNotify) unsoot_invoice_line_free;
  list_class->id = line_id;
  list_class->after_id = line_id;
  list_class->name = row_name;
  list_class->empty_icon = "unsoot-papers-symbolic";
  list_class->empty_title = N_ ("No invoices yet");
  list_class->empty_sentence
      = N_ ("A job that is done is invoiced from its own page. What was billed, paid and credited "
            "stands here then, the newest at the top.");
}

static void
unsoot_invoices_page_init (UnsootInvoicesPage *self)
{
  UnsootRecordsPage *list = UNSOOT_RECORDS_PAGE (self);

  self->owed = UNSOOT_OWED_BAR (unsoot_owed_bar_new ());
  unsoot_records_page_add_tool (list, owed_button_new ());
  unsoot_records_page_add_tool (list, filter_new (list));
  unsoot_records_page_add_above (list, GTK_WIDGET (self->owed));
  g_signal_connect (self, "shown", G_CALLBACK (shown_cb), NULL);
}
