/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "loan-link.h"

#include <glib/gi18n-lib.h>

#include "adapter-deeds.h"
#include "deed-button.h"
#include "format.h"
#include "link-row.h"
#include "slug.h"

const char *
unsoot_loan_kind_words (const char *kind)
{
  static const UnsootSlug kinds[] = { { 0, "job", N_ ("a job") },
                                      { 1, "colleague", N_ ("a colleague") },
                                      { 2, "shop", N_ ("another shop") },
                                      { 0, NULL, NULL } };
  int value;

  return unsoot_slug_find (kinds, kind, &value) ? unsoot_slug_words (kinds, value) : kind;
}

/* What the button has to know: the tag of its row. */
typedef struct
{
  UnsootSession *session;
  UnsootBoardTag *tag;
} Back;

static void
back_free (gpointer data, GClosure *closure)
{
  Back *back = data;

  g_object_unref (back->session);
  unsoot_board_tag_free (back->tag);
  g_free (back);
}

static void
back_cb (GtkWidget *button, Back *back)
{
  unsoot_adapter_back_open (button, back->session, back->tag);
}

static UnsootBoardTag *
tag_copy (const UnsootBoardTag *tag)
{
  UnsootBoardTag *copy = g_new0 (UnsootBoardTag, 1);

  copy->item = unsoot_record_copy (&unsoot_adapter_item_row_type, tag->item);
  copy->type = unsoot_record_copy (&unsoot_adapter_type_row_type, tag->type);
  copy->loan = unsoot_record_copy (&unsoot_loan_row_type, tag->loan);
  copy->state = tag->state;
  copy->words = g_strdup (tag->words);
  copy->inspect_on = g_strdup (tag->inspect_on);
  return copy;
}

static GtkWidget *
back_button_new (const UnsootBoardTag *tag, UnsootSession *session)
{
  GtkWidget *button = unsoot_deed_button_new (session, UNSOOT_DEED_RETURN_ADAPTER, _ ("Take back…"),
                                              tag->item->label);
  Back *back = g_new0 (Back, 1);

  back->session = g_object_ref (session);
  back->tag = tag_copy (tag);
  g_signal_connect_data (button, "clicked", G_CALLBACK (back_cb), back, back_free, 0);
  return button;
}

GtkWidget *
unsoot_loan_link_new (const UnsootBoardTag *tag, UnsootSession *session)
{
  const UnsootLoanRow *loan = tag->loan;
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *due = unsoot_format_day (loan->due_on, today);
  g_autofree char *exact = unsoot_format_exact_day (loan->due_on);
  /* Translators: what an adapter's tag says, and who has it */
  g_autofree char *title = g_strdup_printf (_ ("%s · %s"), tag->item->label, loan->to_name);
  g_autofree char *detail = loan->phone != NULL
                                ? g_strdup_printf ("%s · %s", tag->type->name, loan->phone)
                                : g_strdup (tag->type->name);
  GtkWidget *row = unsoot_link_row_new ("adapter", tag->item->id, title, detail);
  /* Translators: when a loan is due */
  g_autofree char *words = loan->due_on == NULL ? g_strdup (_ ("no day agreed"))
                           : tag->state == UNSOOT_BOARD_DUE
                               ? g_strdup_printf (_ ("was due %s"), due)
                               : g_strdup_printf (_ ("due %s"), due);
  GtkWidget *label = gtk_label_new (words);

  gtk_widget_set_tooltip_text (label, exact);
  gtk_widget_add_css_class (label, "figures");
  gtk_widget_add_css_class (label, tag->state == UNSOOT_BOARD_DUE ? "error" : "dim-label");
  unsoot_link_row_add (row, label);
  unsoot_link_row_add (row, back_button_new (tag, session));
  return row;
}
