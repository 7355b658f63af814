/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "adapter-page.h"

#include <glib/gi18n-lib.h>

#include "adapter-board.h"
#include "adapter-deeds.h"
#include "adapter-edits.h"
#include "call-deeds.h"
#include "calls.h"
#include "card.h"
#include "columns.h"
#include "deed-button.h"
#include "facts.h"
#include "families.h"
#include "format.h"
#include "job-lines.h"
#include "jobs-card.h"
#include "loan-link.h"
#include "prefs-edit.h"
#include "side-mark.h"
#include "table.h"
#include "title-block.h"

enum
{
  JOBS_SHOWN = 20
};

typedef struct
{
  UnsootBoardTag *tag;
  GPtrArray *fits;     /* char *, in words */
  GPtrArray *fit_rows; /* UnsootAdapterFitRow, the same */
  GPtrArray *families; /* UnsootFamilyRow */
  GPtrArray *types;    /* UnsootAdapterTypeRow */
  GPtrArray *loans;    /* UnsootLoanRow, newest first */
  GPtrArray *jobs;     /* UnsootJobLine */
  GPtrArray *calls;    /* UnsootCallLine, newest first */
} AdapterFile;

struct _UnsootAdapterPage
{
  UnsootView parent_instance;

  /* template */
  UnsootTitleBlock *head;
  GtkBox *deeds;
  GtkLabel *trouble;
  UnsootCard *facts;
  UnsootCard *fits;
  UnsootCard *loans;
  UnsootCard *calls;
  UnsootCard *jobs;

  AdapterFile *file; /* owned; NULL until there is data */
};

G_DEFINE_FINAL_TYPE (UnsootAdapterPage, unsoot_adapter_page, UNSOOT_TYPE_VIEW)

static void
adapter_file_free (gpointer data)
{
  AdapterFile *file = data;

  unsoot_board_tag_free (file->tag);
  g_clear_pointer (&file->fits, g_ptr_array_unref);
  g_clear_pointer (&file->fit_rows, g_ptr_array_unref);
  g_clear_pointer (&file->families, g_ptr_array_unref);
  g_clear_pointer (&file->types, g_ptr_array_unref);
  g_clear_pointer (&file->loans, g_ptr_array_unref);
  g_clear_pointer (&file->jobs, g_ptr_array_unref);
  g_clear_pointer (&file->calls, g_ptr_array_unref);
  g_free (file);
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC (AdapterFile, adapter_file_free)

static char *
years_words (const UnsootAdapterFitRow *fit)
{
  if (fit->year_from > 0 && fit->year_to > 0)
    return g_strdup_printf ("%d–%d", (int) fit->year_from, (int) fit->year_to);
  if (fit->year_from > 0)
    return g_strdup_printf (_ ("from %d"), (int) fit->year_from);
  return fit->year_to > 0 ? g_strdup_printf (_ ("until %d"), (int) fit->year_to) : NULL;
}

/* "Brindle 5.1 · T4 · from 2008"; what is not named matches all. */
static char *
fit_words (UnsootDb *db, const UnsootAdapterFitRow *fit, GError **error)
{
  g_autoptr (UnsootFamilyRow) family
      = fit->family_id != 0 ? unsoot_family_load (db, fit->family_id, error) : NULL;
  g_autofree char *years = years_words (fit);
  const char *const parts[] = {
    family != NULL ? family->name : NULL, fit->make, fit->model, fit->engine, years, fit->note
  };
  g_autoptr (GString) text = g_string_new (NULL);

  if (fit->family_id != 0 && family == NULL)
    return NULL;
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (parts[i] != NULL && *parts[i] != '\0')
      g_string_append_printf (text, "%s%s", text->len > 0 ? " · " : "", parts[i]);
  return g_strdup (text->len > 0 ? text->str : _ ("everything"));
}

static gboolean
load_fits (UnsootDb *db, AdapterFile *file, GError **error)
{
  file->fits = g_ptr_array_new_with_free_func (g_free);
  file->fit_rows = unsoot_adapter_fit_list (db, file->tag->type->id, error);
  for (guint i = 0; file->fit_rows != NULL && i < file->fit_rows->len; i++)
    {
      char *words = fit_words (db, g_ptr_array_index (file->fit_rows, i), error);
      if (words == NULL)
        return FALSE;
      g_ptr_array_add (file->fits, words);
    }
  file->families = file->fit_rows != NULL ? unsoot_family_list (db, error) : NULL;
  file->types = file->families != NULL ? unsoot_adapter_type_list (db, error) : NULL;
  return file->types != NULL;
}

/* A loan is shown on its adapter's page. */
static gint64
item_of (UnsootDb *db, const UnsootViewQuery *query, GError **error)
{
  g_autoptr (UnsootLoanRow) loan = NULL;

  if (!g_str_equal (query->slug, "loan"))
    return MAX (query->record, 1);
  loan = unsoot_rows_get (db, &unsoot_loan_row_type, query->record, error);
  return loan != NULL ? loan->item_id : 0;
}

static gpointer
read_adapter (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;
  g_autoptr (AdapterFile) file = g_new0 (AdapterFile, 1);
  const gint64 id = item_of (db, query, error);
  g_autoptr (GArray) jobs = NULL;

  file->tag = id != 0 ? unsoot_board_tag (db, id, query->now, error) : NULL;
  if (file->tag == NULL || !load_fits (db, file, error))
    return NULL;
  file->loans = unsoot_adapter_loans (db, id, error);
  jobs = file->loans != NULL ? unsoot_adapter_jobs (db, id, JOBS_SHOWN, error) : NULL;
  file->jobs = jobs != NULL ? unsoot_job_lines_of (db, jobs, error) : NULL;
  file->calls = file->jobs != NULL ? unsoot_calls_shown_on (db, "adapter", id, error) : NULL;
  return file->calls != NULL ? g_steal_pointer (&file) : NULL;
}

typedef void (*Opener) (GtkWidget *over, UnsootSession *session, const UnsootBoardTag *tag);

static void
deed_cb (GtkWidget *button, UnsootAdapterPage *self)
{
  const Opener *open = g_object_get_data (G_OBJECT (button), "opener");

  (*open) (GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)), self->file->tag);
}

static GtkWidget *
add_deed (UnsootAdapterPage *self, UnsootDeed deed, const char *label, Opener open)
{
  GtkWidget *button = unsoot_deed_button_new (unsoot_view_get_session (UNSOOT_VIEW (self)), deed,
                                              label, self->file->tag->item->label);

  g_object_set_data_full (G_OBJECT (button), "opener", g_memdup2 (&open, sizeof open), g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (deed_cb), self);
  gtk_box_append (self->deeds, button);
  return button;
}

/* Only what is possible where it is now; the next of them is suggested. */
static void
add_deeds (UnsootAdapterPage *self, const UnsootBoardTag *tag)
{
  GtkWidget *button;

  if (tag->state == UNSOOT_BOARD_RETIRED)
    {
      add_deed (self, UNSOOT_DEED_EDIT_ADAPTER, _ ("Bring back"), unsoot_adapter_revive);
      return;
    }
  if (tag->loan != NULL)
    {
      button
          = add_deed (self, UNSOOT_DEED_RETURN_ADAPTER, _ ("Take back…"), unsoot_adapter_back_open);
      unsoot_deed_button_suggest (button, TRUE);
      return;
    }
  button = add_deed (self, UNSOOT_DEED_LEND_ADAPTER, _ ("Lend…"), unsoot_adapter_lend_open);
  if (tag->state != UNSOOT_BOARD_HERE)
    unsoot_deed_button_bar (button, tag->words);
  button = add_deed (self, UNSOOT_DEED_EDIT_ADAPTER, _ ("Inspect…"), unsoot_adapter_inspect_open);
  unsoot_deed_button_suggest (button, tag->state == UNSOOT_BOARD_INSPECTION);
  add_deed (self, UNSOOT_DEED_EDIT_ADAPTER, _ ("Retire…"), unsoot_adapter_retire_open);
}

static void
show_deeds (UnsootAdapterPage *self, const UnsootBoardTag *tag)
{
  GtkWidget *button;

  while ((button = gtk_widget_get_first_child (GTK_WIDGET (self->deeds))) != NULL)
    gtk_box_remove (self->deeds, button);
  add_deeds (self, tag);
  gtk_box_append (self->deeds,
                  unsoot_adapter_item_change_new (unsoot_view_get_session (UNSOOT_VIEW (self)),
                                                  _ ("Change…"), tag->item, self->file->types));
}

static void
show_facts (UnsootAdapterPage *self, const UnsootBoardTag *tag)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *facts = unsoot_facts_new ();
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *inspected = unsoot_format_day (tag->item->inspected_on, today);
  g_autofree char *next
      = tag->inspect_on != NULL ? unsoot_format_day (tag->inspect_on, today) : NULL;
  g_autofree char *price
      = tag->type->price_minor != 0 ? unsoot_session_money (session, tag->type->price_minor) : NULL;

  unsoot_card_clear (self->facts);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Where it is"), tag->words);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Its bin"), tag->item->bin);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Condition"), tag->item->condition);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Inspected"), inspected);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Next inspection"), next);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Price"), price);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Note"), tag->type->note);
  gtk_box_append (GTK_BOX (self->facts), facts);
}

/* The kind's, so of every adapter of it. */
static void
show_fits (UnsootAdapterPage *self, const AdapterFile *file)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const UnsootAdapterTypeRow *type = file->tag->type;
  GtkWidget *list = unsoot_prefs_list_new (_ ("What it fits"));
  GtkWidget *acts = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  unsoot_card_clear (self->fits);
  if (file->fits->len == 0)
    unsoot_card_say (self->fits, _ ("What it fits is not entered."));
  for (guint i = 0; i < file->fits->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list),
                         unsoot_fit_row_widget_new (session, type, file->fit_rows->pdata[i],
                                                    file->fits->pdata[i], file->families));
  gtk_widget_set_visible (list, file->fits->len > 0);
  gtk_box_append (GTK_BOX (self->fits), list);
  gtk_box_append (GTK_BOX (acts), unsoot_fit_add_new (session, type, file->families));
  gtk_box_append (GTK_BOX (acts),
                  unsoot_adapter_type_change_new (session, _ ("Change the kind…"), type));
  gtk_box_append (GTK_BOX (self->fits), acts);
}

static char *
loan_who (const UnsootLoanRow *loan)
{
  g_autofree char *name = g_markup_escape_text (loan->to_name, -1);
  g_autofree char *phone = loan->phone != NULL ? g_markup_escape_text (loan->phone, -1) : NULL;
  g_autofree char *condition
      = loan->back_condition != NULL ? g_markup_escape_text (loan->back_condition, -1) : NULL;
  g_autofree char *detail
      = g_strjoin (" · ", unsoot_loan_kind_words (loan->to_kind), phone != NULL ? phone : condition,
                   phone != NULL ? condition : NULL, NULL);

  return g_strdup_printf ("%s\n<span size=\"small\" alpha=\"72%%\">%s</span>", name, detail);
}

static void
show_loans (UnsootAdapterPage *self, GPtrArray *loans)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GTimeZone *zone = unsoot_session_zone (session);
  const gint64 now = unsoot_session_now (session);
  const UnsootTableColumn columns[] = { { _ ("Who"), FALSE, TRUE },
                                        { _ ("Out"), FALSE, FALSE },
                                        { _ ("Due"), FALSE, FALSE },
                                        { _ ("Back"), FALSE, FALSE },
                                        { NULL, FALSE, FALSE } };
  GtkWidget *table = unsoot_table_new (_ ("Loans"), columns);
  g_autofree char *today = unsoot_session_today (session);

  unsoot_card_clear (self->loans);
  if (loans->len == 0)
    {
      g_object_ref_sink (table);
      g_object_unref (table);
      unsoot_card_say (self->loans, _ ("It was never lent."));
      return;
    }
  for (guint i = 0; i < loans->len; i++)
    {
      const UnsootLoanRow *loan = g_ptr_array_index (loans, i);
      g_autofree char *who = loan_who (loan);
      g_autofree char *out = unsoot_format_stamp (loan->out_at, now, zone);
      g_autofree char *due = unsoot_format_day (loan->due_on, today);
      g_autofree char *back = loan->back_at != 0 ? unsoot_format_stamp (loan->back_at, now, zone)
                                                 : g_strdup (_ ("still out"));
      const char *const cells[] = { who, out, due, back };
      unsoot_table_add (UNSOOT_TABLE (table), cells);
    }
  gtk_box_append (GTK_BOX (self->loans), table);
}

static char *
trouble_words (const UnsootBoardTag *tag)
{
  if (tag->state == UNSOOT_BOARD_DUE && tag->loan->phone != NULL)
    /* Translators: where an adapter is, who has it, their phone */
    return g_strdup_printf (_ ("It is %s, and overdue. Call %s: %s."), tag->words,
                            tag->loan->to_name, tag->loan->phone);
  if (tag->state == UNSOOT_BOARD_DUE)
    /* Translators: where an adapter is, who has it */
    return g_strdup_printf (_ ("It is %s, and overdue. Call %s."), tag->words, tag->loan->to_name);
  return tag->state == UNSOOT_BOARD_INSPECTION
             ? g_strdup (_ ("It is not handed out until someone has looked it over."))
             : NULL;
}

static void
show_adapter (UnsootView *view, gpointer result)
{
  UnsootAdapterPage *self = UNSOOT_ADAPTER_PAGE (view);
  AdapterFile *file = result;
  const UnsootBoardTag *tag = file->tag;
  g_autofree char *title = g_strdup_printf (_ ("Adapter %s"), tag->item->label);
  g_autofree char *detail
      = g_strdup_printf ("%s · %s", tag->type->name, unsoot_sides_words (tag->type->side));
  g_autofree char *trouble = trouble_words (tag);

  g_clear_pointer (&self->file, adapter_file_free);
  self->file = file;
  unsoot_view_set_title (view, title);
  unsoot_title_block_show (self->head, title, detail);
  gtk_label_set_text (self->trouble, trouble != NULL ? trouble : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), trouble != NULL);
  show_deeds (self, tag);
  show_facts (self, tag);
  unsoot_phone_call_card (self->calls, file->calls, unsoot_view_get_session (view));
  show_fits (self, file);
  show_loans (self, file->loans);
  unsoot_jobs_card_fill (self->jobs, file->jobs, unsoot_view_get_session (view),
                         _ ("No job has held it yet."));
}

static void
unsoot_adapter_page_dispose (GObject *object)
{
  g_clear_pointer (&UNSOOT_ADAPTER_PAGE (object)->file, adapter_file_free);
  G_OBJECT_CLASS (unsoot_adapter_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_ADAPTER_PAGE);
}

static void
unsoot_adapter_page_class_init (UnsootAdapterPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_adapter_page_dispose;
  view_class->read = read_adapter;
  view_class->free_result = adapter_file_free;
  view_class->show = show_adapter;
  g_type_ensure (UNSOOT_TYPE_CARD);
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  g_type_ensure (UNSOOT_TYPE_TITLE_BLOCK);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/adapter-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootAdapterPage, head);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdapterPage, deeds);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdapterPage, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdapterPage, facts);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdapterPage, fits);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdapterPage, loans);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdapterPage, calls);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdapterPage, jobs);
}

static void
unsoot_adapter_page_init (UnsootAdapterPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
