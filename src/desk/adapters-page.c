/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "adapters-page.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "access.h"
#include "adapter-board.h"
#include "adapter-edits.h"
#include "adapters.h"
#include "board-tag-widget.h"
#include "card.h"
#include "deed-button.h"
#include "fold.h"
#include "link-row.h"
#include "loan-link.h"

struct _UnsootAdaptersPage
{
  UnsootView parent_instance;

  /* template */
  GtkBox *acts;
  GtkBox *filters;
  GtkSearchEntry *search;
  UnsootCard *loans;
  GtkFlowBox *bins;
  GtkWidget *none_chosen;
  GtkWidget *nothing;
  GtkWidget *board;

  GPtrArray *tags; /* owned: UnsootBoardTag */
  int only;        /* UnsootBoardState, or −1 for all */
};

G_DEFINE_FINAL_TYPE (UnsootAdaptersPage, unsoot_adapters_page, UNSOOT_TYPE_VIEW)

typedef struct
{
  GPtrArray *tags;  /* UnsootBoardTag */
  GPtrArray *types; /* UnsootAdapterTypeRow */
} Board;

static void
board_free (gpointer data)
{
  Board *board = data;

  g_clear_pointer (&board->tags, g_ptr_array_unref);
  g_clear_pointer (&board->types, g_ptr_array_unref);
  g_free (board);
}

static gpointer
read_board (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  Board *board = g_new0 (Board, 1);

  board->tags = unsoot_board (db, ((const UnsootViewQuery *) data)->now, error);
  board->types = board->tags != NULL ? unsoot_adapter_type_list (db, error) : NULL;
  if (board->types != NULL)
    return board;
  board_free (board);
  return NULL;
}

/* Any case, with or without accents; by what the tag says, the kind, the bin, who has it. */
static gboolean
matches (const UnsootBoardTag *tag, const char *typed)
{
  g_autofree char *text = g_strjoin (" ", tag->item->label, tag->type->name,
                                     tag->item->bin != NULL ? tag->item->bin : "",
                                     tag->loan != NULL ? tag->loan->to_name : "", NULL);
  g_autofree char *folded = unsoot_fold (text, NULL);

  return typed == NULL || *typed == '\0' || (folded != NULL && strstr (folded, typed) != NULL);
}

static gboolean
is_chosen (UnsootAdaptersPage *self, const UnsootBoardTag *tag, const char *typed)
{
  if (self->only >= 0 ? (int) tag->state != self->only : tag->state == UNSOOT_BOARD_RETIRED)
    return FALSE;
  return matches (tag, typed);
}

static GtkWidget *
bin_box_new (const char *bin)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *head = NULL;
  /* Translators: where adapters lie */
  g_autofree char *name
      = bin != NULL ? g_strdup_printf (_ ("Bin %s"), bin) : g_strdup (_ ("In no bin"));

  head = gtk_label_new (name);
  gtk_label_set_xalign (GTK_LABEL (head), 0);
  gtk_widget_add_css_class (head, "caption-heading");
  gtk_widget_add_css_class (head, "dim-label");
  gtk_widget_add_css_class (box, "bin");
  unsoot_access_name (box, name);
  gtk_box_append (GTK_BOX (box), head);
  return box;
}

static void
append_bin (UnsootAdaptersPage *self, GtkWidget *box, const char *bin)
{
  GtkWidget *child = gtk_flow_box_child_new ();

  gtk_flow_box_child_set_child (GTK_FLOW_BOX_CHILD (child), box);
  gtk_widget_set_focusable (child, FALSE);
  unsoot_access_name (child, bin != NULL ? bin : _ ("In no bin"));
  gtk_flow_box_append (self->bins, child);
}

static void
show_bins (UnsootAdaptersPage *self)
{
  g_autofree char *typed = unsoot_fold (gtk_editable_get_text (GTK_EDITABLE (self->search)), NULL);
  GtkWidget *box = NULL, *child;
  const char *bin = NULL;
  guint n = 0;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->bins))) != NULL)
    gtk_flow_box_remove (self->bins, child);
  for (guint i = 0; i < self->tags->len; i++)
    {
      const UnsootBoardTag *tag = g_ptr_array_index (self->tags, i);
      if (!is_chosen (self, tag, typed))
        continue;
      if (box == NULL || g_strcmp0 (bin, tag->item->bin) != 0)
        {
          bin = tag->item->bin;
          box = bin_box_new (bin);
          append_bin (self, box, bin);
        }
      gtk_box_append (GTK_BOX (box), unsoot_board_tag_widget_new (tag));
      n++;
    }
  gtk_widget_set_visible (GTK_WIDGET (self->bins), n > 0);
  gtk_widget_set_visible (self->none_chosen, n == 0);
}

static void
search_cb (GtkSearchEntry *entry, UnsootAdaptersPage *self)
{
  if (self->tags != NULL)
    show_bins (self);
}

static void
filter_cb (GtkToggleButton *button, UnsootAdaptersPage *self)
{
  if (!gtk_toggle_button_get_active (button))
    return;
  self->only = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "state"));
  if (self->tags != NULL)
    show_bins (self);
}

static guint
count (UnsootAdaptersPage *self, int state)
{
  guint n = 0;

  for (guint i = 0; i < self->tags->len; i++)
    {
      const UnsootBoardTag *tag = g_ptr_array_index (self->tags, i);
      n += state >= 0 ? (int) tag->state == state : tag->state != UNSOOT_BOARD_RETIRED;
    }
  return n;
}

static void
label_filters (UnsootAdaptersPage *self)
{
  for (GtkWidget *button = gtk_widget_get_first_child (GTK_WIDGET (self->filters)); button != NULL;
       button = gtk_widget_get_next_sibling (button))
    {
      const int state = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "state"));
      const char *words = state >= 0 ? unsoot_board_words ((UnsootBoardState) state) : _ ("All");
      g_autofree char *label = g_strdup_printf ("%s %u", words, count (self, state));

      gtk_button_set_label (GTK_BUTTON (button), label);
      unsoot_access_name (button, label);
      gtk_widget_set_sensitive (button, state < 0 || count (self, state) > 0);
    }
}

static void
add_filters (UnsootAdaptersPage *self)
{
  GtkWidget *first = NULL;

  for (int state = -1; state < UNSOOT_BOARD_STATES; state++)
    {
      GtkWidget *button = gtk_toggle_button_new ();
      g_object_set_data (G_OBJECT (button), "state", GINT_TO_POINTER (state));
      if (first != NULL)
        gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), GTK_TOGGLE_BUTTON (first));
      else
        first = button;
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), state < 0);
      g_signal_connect (button, "toggled", G_CALLBACK (filter_cb), self);
      gtk_box_append (self->filters, button);
    }
}

static int
longest_overdue_first (gconstpointer a, gconstpointer b)
{
  const UnsootLoanRow *left = (*(UnsootBoardTag *const *) a)->loan;
  const UnsootLoanRow *right = (*(UnsootBoardTag *const *) b)->loan;

  if (left->due_on == NULL || right->due_on == NULL)
    return (left->due_on == NULL) - (right->due_on == NULL);
  return g_strcmp0 (left->due_on, right->due_on);
}

static void
show_loans (UnsootAdaptersPage *self)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  g_autoptr (GPtrArray) out = g_ptr_array_new ();
  GtkWidget *list = unsoot_link_list_new (_ ("Lent"));

  for (guint i = 0; i < self->tags->len; i++)
    if (((UnsootBoardTag *) g_ptr_array_index (self->tags, i))->loan != NULL)
      g_ptr_array_add (out, g_ptr_array_index (self->tags, i));
  g_ptr_array_sort (out, longest_overdue_first);
  unsoot_card_clear (self->loans);
  for (guint i = 0; i < out->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list),
                         unsoot_loan_link_new (g_ptr_array_index (out, i), session));
  gtk_box_append (GTK_BOX (self->loans), list);
  gtk_widget_set_visible (GTK_WIDGET (self->loans), out->len > 0);
}

/* A kind has to be there before an adapter of it. */
static void
show_acts (UnsootAdaptersPage *self, const GPtrArray *types)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *item = unsoot_adapter_item_change_new (session, _ ("Add an adapter…"), NULL, types);
  GtkWidget *former;

  while ((former = gtk_widget_get_first_child (GTK_WIDGET (self->acts))) != NULL)
    gtk_box_remove (self->acts, former);
  if (types->len == 0)
    unsoot_deed_button_bar (item, _ ("First add its kind"));
  gtk_box_append (self->acts, item);
  gtk_box_append (self->acts, unsoot_adapter_type_change_new (session, _ ("Add a kind…"), NULL));
}

static void
show_board (UnsootView *view, gpointer result)
{
  UnsootAdaptersPage *self = UNSOOT_ADAPTERS_PAGE (view);
  Board *board = result;

  g_clear_pointer (&self->tags, g_ptr_array_unref);
  self->tags = g_steal_pointer (&board->tags);
  show_acts (self, board->types);
  board_free (board);
  label_filters (self);
  show_loans (self);
  show_bins (self);
  gtk_widget_set_visible (self->board, self->tags->len > 0);
  gtk_widget_set_visible (self->nothing, self->tags->len == 0);
}

static void
unsoot_adapters_page_dispose (GObject *object)
{
  g_clear_pointer (&UNSOOT_ADAPTERS_PAGE (object)->tags, g_ptr_array_unref);
  G_OBJECT_CLASS (unsoot_adapters_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_ADAPTERS_PAGE);
}

static void
unsoot_adapters_page_class_init (UnsootAdaptersPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_adapters_page_dispose;
  view_class->read = read_board;
  view_class->free_result = board_free;
  view_class->show = show_board;
  g_type_ensure (UNSOOT_TYPE_CARD);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/adapters-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootAdaptersPage, acts);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdaptersPage, filters);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdaptersPage, search);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdaptersPage, loans);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdaptersPage, bins);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdaptersPage, none_chosen);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdaptersPage, nothing);
  gtk_widget_class_bind_template_child (widget_class, UnsootAdaptersPage, board);
  gtk_widget_class_bind_template_callback (widget_class, search_cb);
}

static void
unsoot_adapters_page_init (UnsootAdaptersPage *self)
{
  self->only = -1;
  gtk_widget_init_template (GTK_WIDGET (self));
  unsoot_access_name (GTK_WIDGET (self->search), _ ("Search the board"));
  unsoot_access_name_inside (GTK_WIDGET (self->search), _ ("Search the board"));
  add_filters (self);
}
