/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-quote.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "adapters.h"
#include "facts.h"
#include "format.h"
#include "entry-form.h"
#include "money.h"
#include "side-mark.h"
#include "table.h"
#include "weight-class.h"

static GtkWidget *
line_new (const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css);
  return label;
}

/* Every figure with how it came about. */
static GtkWidget *
why_button_new (const UnsootQuote *quote)
{
  GtkWidget *button = gtk_menu_button_new (), *popover = gtk_popover_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  for (guint i = 0; i < quote->reasons->len; i++)
    {
      GtkWidget *line = line_new (g_ptr_array_index (quote->reasons, i), "figures");
      gtk_label_set_max_width_chars (GTK_LABEL (line), 52);
      gtk_box_append (GTK_BOX (box), line);
    }
  gtk_widget_add_css_class (box, "card-content");
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  unsoot_access_name (popover, _ ("How each figure came about"));
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (button), popover);
  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _ ("Why?"));
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  unsoot_form_name (button, _ ("Why is it so?"));
  return button;
}

static void
add_doses (UnsootCard *card, const UnsootQuote *quote)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  g_autofree char *minutes = unsoot_format_span (quote->planned_minutes * 60);
  GtkWidget *time = line_new (minutes, "figures");

  if (quote->fuel.ml > 0)
    gtk_box_append (GTK_BOX (row), unsoot_side_mark_new (UNSOOT_SIDE_FUEL, quote->fuel.ml));
  if (quote->intake.ml > 0)
    gtk_box_append (GTK_BOX (row), unsoot_side_mark_new (UNSOOT_SIDE_INTAKE, quote->intake.ml));
  gtk_box_append (GTK_BOX (row), time);
  gtk_widget_set_hexpand (time, TRUE);
  gtk_box_append (GTK_BOX (row), why_button_new (quote));
  gtk_box_append (GTK_BOX (card), row);
}

static char *
size_text (const UnsootQuote *quote)
{
  g_autofree char *weight = unsoot_weight_words (quote->vehicle->gvwr_lb);

  if (quote->family != NULL && weight != NULL)
    return g_strdup_printf ("%s · %s", weight, quote->family->name);
  if (quote->family != NULL)
    return g_strdup (quote->family->name);
  return g_steal_pointer (&weight);
}

static void
add_facts (UnsootCard *card, const UnsootQuote *quote)
{
  GtkWidget *facts = unsoot_facts_new ();
  g_autofree char *size = size_text (quote);

  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Size"), size);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Fuel side"), quote->fuel.reason);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Intake side"), quote->intake.reason);
  for (guint i = 0; i < quote->adapters->len; i++)
    {
      const UnsootAdapterFit *fit = g_ptr_array_index (quote->adapters, i);
      const UnsootItemState *first = fit->items->len > 0 ? g_ptr_array_index (fit->items, 0) : NULL;
      g_autofree char *text = NULL;

      if (first == NULL)
        text = g_strdup_printf (_ ("%s, the shop has none"), fit->type->name);
      else if (first->place == UNSOOT_ITEM_HERE && first->item->bin != NULL)
        text = g_strdup_printf (_ ("%s %s, bin %s"), first->item->label, fit->type->name,
                                first->item->bin);
      else
        /* Translators: an adapter's tag, what it is, and where it is at that time */
        text = g_strdup_printf (_ ("%s %s, %s"), first->item->label, fit->type->name, first->words);
      unsoot_facts_add (UNSOOT_FACTS (facts), i == 0 ? _ ("Adapters") : "", text);
    }
  gtk_box_append (GTK_BOX (card), facts);
}

static void
add_line (GtkWidget *table, const UnsootJobLineRow *line, UnsootSession *session)
{
  g_autofree char *text = g_markup_escape_text (line->text, -1);
  g_autofree char *number = unsoot_format_number ((double) line->quantity_milli / 1000.0, 3);
  g_autofree char *quantity = unsoot_format_with_unit (number, line->unit);
  g_autofree char *net = NULL;
  gint64 minor;

  if (unsoot_money_times (line->unit_price_minor, line->quantity_milli, &minor, NULL))
    net = unsoot_session_money (session, minor);
  const char *const cells[] = { text, quantity, net };
  unsoot_table_add (UNSOOT_TABLE (table), cells);
}

static void
add_sum (GtkWidget *table, const char *what, gint64 minor, UnsootSession *session, gboolean total)
{
  g_autofree char *money = unsoot_session_money (session, minor);
  g_autofree char *label = g_markup_printf_escaped (total ? "<b>%s</b>" : "%s", what);
  g_autofree char *amount = g_markup_printf_escaped (total ? "<b>%s</b>" : "%s", money);
  const char *const cells[] = { label, NULL, amount };

  if (total)
    unsoot_table_add_total (UNSOOT_TABLE (table), cells);
  else
    unsoot_table_add (UNSOOT_TABLE (table), cells);
}

static void
add_lines (UnsootCard *card, const UnsootBookingFile *file, UnsootSession *session)
{
  static const UnsootTableColumn columns[]
      = { { "", FALSE, TRUE }, { "", TRUE, FALSE }, { "", TRUE, FALSE }, { NULL } };
  const GPtrArray *lines = file->lines != NULL ? file->lines : file->quote->lines;
  const UnsootBill *bill = file->bill != NULL ? file->bill : file->quote->bill;
  GtkWidget *table = unsoot_table_new (_ ("Lines and total"), columns);

  for (guint i = 0; i < lines->len; i++)
    add_line (table, g_ptr_array_index (lines, i), session);
  if (bill->tax != 0)
    add_sum (table, _ ("Tax"), bill->tax, session, FALSE);
  add_sum (table, _ ("Total"), bill->with_tax, session, TRUE);
  gtk_box_append (GTK_BOX (card), table);
}

static void
add_warnings (UnsootCard *card, const GPtrArray *warnings)
{
  for (guint i = 0; i < warnings->len; i++)
    gtk_box_append (GTK_BOX (card), line_new (g_ptr_array_index (warnings, i), "trouble"));
}

/* Who is told of a line that is wanted again. */
typedef struct
{
  UnsootAgainFunc func;
  gpointer owner;
  gint64 line_id;
} Again;

static void
again_cb (GtkCheckButton *check, const Again *again)
{
  again->func (again->owner, again->line_id, gtk_check_button_get_active (check));
}

static gboolean
is_wanted (const UnsootBookingFile *file, gint64 id)
{
  for (guint i = 0; i < file->plan->again->len; i++)
    if (g_array_index (file->plan->again, gint64, i) == id)
      return TRUE;
  return FALSE;
}

static void
again_free (gpointer data, GClosure *closure)
{
  g_free (data);
}

static void
add_declined (UnsootCard *card, const UnsootBookingFile *file, UnsootSession *session,
              UnsootAgainFunc func, gpointer owner)
{
  const GPtrArray *declined = file->quote->declined;

  if (declined->len == 0 || file->job != NULL)
    return;
  gtk_box_append (GTK_BOX (card), line_new (_ ("Declined before; offer it again?"), "heading"));
  for (guint i = 0; i < declined->len; i++)
    {
      const UnsootJobLineRow *line = g_ptr_array_index (declined, i);
      g_autofree char *price = unsoot_session_money (session, line->unit_price_minor);
      g_autofree char *text = g_strdup_printf ("%s · %s", line->text, price);
      GtkWidget *check = gtk_check_button_new_with_label (text);
      Again *again = g_new (Again, 1);

      *again = (Again){ func, owner, line->id };
      gtk_check_button_set_active (GTK_CHECK_BUTTON (check), is_wanted (file, line->id));
      unsoot_form_name (check, text);
      g_signal_connect_data (check, "toggled", G_CALLBACK (again_cb), again, again_free, 0);
      gtk_box_append (GTK_BOX (card), check);
    }
}

void
unsoot_booking_quote_show (UnsootCard *card, const UnsootBookingFile *file, UnsootSession *session,
                           UnsootAgainFunc again, gpointer owner)
{
  if (file->quote == NULL)
    {
      if (file->quote_trouble != NULL)
        gtk_box_append (GTK_BOX (card), line_new (file->quote_trouble, "trouble"));
      else
        unsoot_card_say (card, _ ("Doses, adapters, time and price appear here once a vehicle and "
                                  "a service are chosen, each with its reason."));
      return;
    }
  add_doses (card, file->quote);
  add_facts (card, file->quote);
  add_warnings (card, file->quote->warnings);
  add_lines (card, file, session);
  add_declined (card, file, session, again, owner);
}
