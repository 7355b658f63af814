/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "records-page.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "empty-page.h"
#include "line-item.h"

enum
{
  LINES_A_PAGE = 100,
  CELL_LINES = 2,
  SCREENS_AHEAD = 2 /* read on when the end is this near */
};

typedef struct
{
  /* template */
  GtkLabel *heading;
  GtkBox *tools;
  GtkStack *stack;
  GtkColumnView *view;
  GtkScrolledWindow *scroller;
  GtkWidget *none_chosen;

  /* owned */
  GListStore *lines;
  UnsootStoreSlot more_slot;
  char *filter;

  GtkWidget *empty; /* borrowed from the stack */
  gboolean down;
  gboolean at_end; /* everything is read */
} UnsootRecordsPagePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (UnsootRecordsPage, unsoot_records_page, UNSOOT_TYPE_VIEW)

#define PRIVATE(self) ((UnsootRecordsPagePrivate *) unsoot_records_page_get_instance_private (self))

/* What a column's factory has to know. */
typedef struct
{
  UnsootRecordsPage *page; /* borrowed: it holds the factory */
  const UnsootRecordsColumn *column;
  gboolean first;
} Cell;

static void
page_ask (UnsootView *view, UnsootViewQuery *query)
{
  UnsootRecordsPage *self = UNSOOT_RECORDS_PAGE (view);
  UnsootRecordsPagePrivate *private = PRIVATE (self);
  const guint shown = g_list_model_get_n_items (G_LIST_MODEL (private->lines));

  unsoot_store_slot_clear (&private->more_slot);
  query->list = UNSOOT_RECORDS_PAGE_GET_CLASS (self);
  query->limit = MAX (shown, LINES_A_PAGE);
  query->down = private->down;
  g_strlcpy (query->filter, private->filter, sizeof query->filter);
}

static gpointer
read_first (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;
  const UnsootRecordsPageClass *klass = query->list;
  const UnsootListPage page
      = { .limit = query->limit, .order = query->down ? UNSOOT_LIST_DOWN : UNSOOT_LIST_UP };

  return klass->read_page (db, &page, query->filter, error);
}

/* Appends the lines of @page, which is used up. */
static void
append_lines (UnsootRecordsPage *self, GPtrArray *page)
{
  UnsootRecordsPagePrivate *private = PRIVATE (self);
  const UnsootRecordsPageClass *klass = UNSOOT_RECORDS_PAGE_GET_CLASS (self);
  g_autoptr (GPtrArray) items = g_ptr_array_new_full (page->len, g_object_unref);

  g_ptr_array_set_free_func (page, NULL);
  for (guint i = 0; i < page->len; i++)
    g_ptr_array_add (items, unsoot_line_item_new (g_ptr_array_index (page, i), klass->free_line));
  g_list_store_splice (private->lines, g_list_model_get_n_items (G_LIST_MODEL (private->lines)), 0,
                       items->pdata, items->len);
  g_ptr_array_unref (page);
}

static void
show_state (UnsootRecordsPage *self)
{
  UnsootRecordsPagePrivate *private = PRIVATE (self);
  const gboolean any = g_list_model_get_n_items (G_LIST_MODEL (private->lines)) > 0;

  if (any)
    gtk_stack_set_visible_child (private->stack, GTK_WIDGET (private->scroller));
  else if (*private->filter != '\0')
    gtk_stack_set_visible_child (private->stack, private->none_chosen);
  else
    gtk_stack_set_visible_child (private->stack, private->empty);
  gtk_widget_set_visible (GTK_WIDGET (private->tools), any || *private->filter != '\0');
}

static void
show_first (UnsootView *view, gpointer result)
{
  UnsootRecordsPage *self = UNSOOT_RECORDS_PAGE (view);
  UnsootRecordsPagePrivate *private = PRIVATE (self);
  GPtrArray *page = result;
  const guint wanted = MAX (g_list_model_get_n_items (G_LIST_MODEL (private->lines)), LINES_A_PAGE);

  private->at_end = page->len < wanted;
  /* Out with the old first: one signal for both would make the view compare every row. */
  g_list_store_remove_all (private->lines);
  append_lines (self, page);
  show_state (self);
}

/* Where the next page begins, for the worker. */
typedef struct
{
  const UnsootRecordsPageClass *klass;
  UnsootListPage page;
  char *after_text;
  char *filter;
} More;

static void
more_free (gpointer data)
{
  More *more = data;

  g_free (more->after_text);
  g_free (more->filter);
  g_free (more);
}

static gpointer
read_more (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  More *more = data;

  more->page.after_text = more->after_text;
  return more->klass->read_page (db, &more->page, more->filter, error);
}

static void
more_read (gpointer owner, gpointer result, const GError *error)
{
  UnsootRecordsPage *self = owner;
  GPtrArray *page = result;

  /* What is shown stays; scrolling asks again. */
  if (error != NULL)
    {
      g_warning ("%s", error->message);
      return;
    }
  PRIVATE (self)->at_end = page->len < LINES_A_PAGE;
  append_lines (self, page);
}

static void
ask_for_more (UnsootRecordsPage *self)
{
  UnsootRecordsPagePrivate *private = PRIVATE (self);
  const UnsootRecordsPageClass *klass = UNSOOT_RECORDS_PAGE_GET_CLASS (self);
  const guint n = g_list_model_get_n_items (G_LIST_MODEL (private->lines));
  g_autoptr (UnsootLineItem) last = g_list_model_get_item (G_LIST_MODEL (private->lines), n - 1);
  gconstpointer line = unsoot_line_item_get (last);
  More *more = g_new0 (More, 1);

  more->klass = klass;
  more->page.after_id = klass->after_id (line);
  more->page.limit = LINES_A_PAGE;
  more->page.order = private->down ? UNSOOT_LIST_DOWN : UNSOOT_LIST_UP;
  more->after_text = g_strdup (klass->after_text != NULL ? klass->after_text (line) : NULL);
  more->filter = g_strdup (private->filter);
  unsoot_store_slot_call (
      &private->more_slot, unsoot_session_get_store (unsoot_view_get_session (UNSOOT_VIEW (self))),
      read_more, more, more_free, (GDestroyNotify) g_ptr_array_unref, more_read, self);
}

static void
scrolled_cb (GtkAdjustment *adjustment, UnsootRecordsPage *self)
{
  UnsootRecordsPagePrivate *private = PRIVATE (self);
  const double page = gtk_adjustment_get_page_size (adjustment);
  const double left
      = gtk_adjustment_get_upper (adjustment) - page - gtk_adjustment_get_value (adjustment);

  if (!private->at_end && left < page * SCREENS_AHEAD
      && !unsoot_store_slot_busy (&private->more_slot)
      && g_list_model_get_n_items (G_LIST_MODEL (private->lines)) > 0)
    ask_for_more (self);
}

static void
activate_cb (GtkColumnView *view, guint position, UnsootRecordsPage *self)
{
  const UnsootRecordsPageClass *klass = UNSOOT_RECORDS_PAGE_GET_CLASS (self);
  g_autoptr (UnsootLineItem) item
      = g_list_model_get_item (G_LIST_MODEL (PRIVATE (self)->lines), position);

  if (item != NULL)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.open", "(sx)", klass->opens,
                                klass->id (unsoot_line_item_get (item)));
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, Cell *cell)
{
  GtkWidget *child;

  if (cell->column->make != NULL)
    child = cell->column->make ();
  else
    {
      child = gtk_label_new (NULL);
      gtk_label_set_xalign (GTK_LABEL (child), cell->column->right ? 1 : 0);
      if (cell->column->expands)
        {
          gtk_label_set_wrap (GTK_LABEL (child), TRUE);
          gtk_label_set_lines (GTK_LABEL (child), CELL_LINES);
          gtk_label_set_ellipsize (GTK_LABEL (child), PANGO_ELLIPSIZE_END);
        }
    }
  gtk_list_item_set_child (item, child);
}

/* An empty cell says so: without a name it would be read out as what it is made of. */
static void
name_cell (GtkWidget *label)
{
  const char *text = gtk_label_get_text (GTK_LABEL (label));

  unsoot_access_name (gtk_widget_get_parent (label), *text != '\0' ? text : _ ("nothing"));
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, Cell *cell)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (cell->page));
  gconstpointer line = unsoot_line_item_get (gtk_list_item_get_item (item));
  GtkWidget *child = gtk_list_item_get_child (item);

  if (cell->column->fill != NULL)
    cell->column->fill (child, line);
  else
    {
      g_autofree char *text = cell->column->text (line, session);
      gtk_label_set_markup (GTK_LABEL (child), text);
    }
  if (GTK_IS_LABEL (child))
    name_cell (child);
  if (cell->first)
    {
      g_autofree char *name = UNSOOT_RECORDS_PAGE_GET_CLASS (cell->page)->name (line, session);
      unsoot_access_name (gtk_widget_get_parent (gtk_widget_get_parent (child)), name);
    }
}

/* Heads stand as their column does and are called as it is; the toolkit has no property for
 * either. */
static void
dress_heads (UnsootRecordsPage *self)
{
  const UnsootRecordsPageClass *klass = UNSOOT_RECORDS_PAGE_GET_CLASS (self);
  GtkWidget *head = gtk_widget_get_first_child (GTK_WIDGET (PRIVATE (self)->view));
  GtkWidget *title = head != NULL ? gtk_widget_get_first_child (head) : NULL;

  if (head != NULL)
    unsoot_access_name (head, _ ("Heads of the columns"));
  for (gsize i = 0; title != NULL && i < klass->n_columns; i++)
    {
      GtkWidget *content = gtk_widget_get_first_child (title);
      unsoot_access_name (title, _ (klass->columns[i].head));
      if (content != NULL && klass->columns[i].right)
        gtk_widget_set_halign (content, GTK_ALIGN_END);
      title = gtk_widget_get_next_sibling (title);
    }
}

/* Only tells, when the view's sorter is asked, which way round it is: the store sorts. */
static int
ask_order (gconstpointer a, gconstpointer b, gpointer data)
{
  return -1;
}

static void
order_changed_cb (GtkSorter *sorter, GtkSorterChange change, UnsootRecordsPage *self)
{
  UnsootRecordsPagePrivate *private = PRIVATE (self);
  g_autoptr (GObject) a = g_object_new (G_TYPE_OBJECT, NULL);
  g_autoptr (GObject) b = g_object_new (G_TYPE_OBJECT, NULL);
  const gboolean down = gtk_sorter_compare (sorter, a, b) == GTK_ORDERING_LARGER;

  if (down == private->down)
    return;
  private->down = down;
  g_list_store_remove_all (private->lines);
  unsoot_view_reload (UNSOOT_VIEW (self));
}

static GtkColumnViewColumn *
column_new (UnsootRecordsPage *self, const UnsootRecordsColumn *column, gboolean first)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkColumnViewColumn *result = gtk_column_view_column_new (_ (column->head), factory);
  Cell *cell = g_new0 (Cell, 1);

  cell->page = self;
  cell->column = column;
  cell->first = first;
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), cell);
  g_signal_connect_data (factory, "bind", G_CALLBACK (bind_cb), cell,
                         (GClosureNotify) (void (*) (void)) g_free, 0);
  gtk_column_view_column_set_expand (result, column->expands);
  if (column->sorts)
    {
      g_autoptr (GtkSorter) sorter = GTK_SORTER (gtk_custom_sorter_new (ask_order, NULL, NULL));
      gtk_column_view_column_set_sorter (result, sorter);
    }
  return result;
}

static void
add_columns (UnsootRecordsPage *self)
{
  UnsootRecordsPagePrivate *private = PRIVATE (self);
  const UnsootRecordsPageClass *klass = UNSOOT_RECORDS_PAGE_GET_CLASS (self);

  for (gsize i = 0; i < klass->n_columns; i++)
    {
      g_autoptr (GtkColumnViewColumn) column = column_new (self, &klass->columns[i], i == 0);
      gtk_column_view_append_column (private->view, column);
      if (klass->columns[i].sorts)
        gtk_column_view_sort_by_column (private->view, column,
                                        private->down ? GTK_SORT_DESCENDING : GTK_SORT_ASCENDING);
    }
  dress_heads (self);
  g_signal_connect_object (gtk_column_view_get_sorter (private->view), "changed",
                           G_CALLBACK (order_changed_cb), self, 0);
}

static void
title_changed_cb (UnsootRecordsPage *self, GParamSpec *pspec, gpointer data)
{
  UnsootRecordsPagePrivate *private = PRIVATE (self);
  const char *title = unsoot_view_get_title (UNSOOT_VIEW (self));

  gtk_label_set_text (private->heading, title);
  unsoot_access_name (GTK_WIDGET (private->view), title);
  unsoot_access_name (gtk_widget_get_last_child (GTK_WIDGET (private->view)), title);
}

static void
unsoot_records_page_constructed (GObject *object)
{
  UnsootRecordsPage *self = UNSOOT_RECORDS_PAGE (object);
  UnsootRecordsPagePrivate *private = PRIVATE (self);
  const UnsootRecordsPageClass *klass = UNSOOT_RECORDS_PAGE_GET_CLASS (self);
  g_autoptr (GtkSelectionModel) model = NULL;

  private->down = klass->order == UNSOOT_LIST_DOWN;
  model = GTK_SELECTION_MODEL (gtk_no_selection_new (g_object_ref (G_LIST_MODEL (private->lines))));
  gtk_column_view_set_model (private->view, model);
  add_columns (self);
  private->empty = unsoot_empty_page_new (klass->empty_icon, _ (klass->empty_title),
                                          _ (klass->empty_sentence), NULL, NULL);
  gtk_stack_add_child (private->stack, private->empty);
  g_signal_connect (self, "notify::title", G_CALLBACK (title_changed_cb), NULL);
  G_OBJECT_CLASS (unsoot_records_page_parent_class)->constructed (object);
}

static void
unsoot_records_page_dispose (GObject *object)
{
  UnsootRecordsPagePrivate *private = PRIVATE (UNSOOT_RECORDS_PAGE (object));

  unsoot_store_slot_clear (&private->more_slot);
  G_OBJECT_CLASS (unsoot_records_page_parent_class)->dispose (object);
}

static void
unsoot_records_page_finalize (GObject *object)
{
  UnsootRecordsPagePrivate *private = PRIVATE (UNSOOT_RECORDS_PAGE (object));

  g_clear_object (&private->lines);
  g_clear_pointer (&private->filter, g_free);
  G_OBJECT_CLASS (unsoot_records_page_parent_class)->finalize (object);
}

static void
unsoot_records_page_class_init (UnsootRecordsPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  object_class->constructed = unsoot_records_page_constructed;
  object_class->dispose = unsoot_records_page_dispose;
  object_class->finalize = unsoot_records_page_finalize;
  view_class->ask = page_ask;
  view_class->read = read_first;
  view_class->free_result = (GDestroyNotify) g_ptr_array_unref;
  view_class->show = show_first;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/records-page.ui");
  gtk_widget_class_bind_template_child_private (widget_class, UnsootRecordsPage, heading);
  gtk_widget_class_bind_template_child_private (widget_class, UnsootRecordsPage, tools);
  gtk_widget_class_bind_template_child_private (widget_class, UnsootRecordsPage, stack);
  gtk_widget_class_bind_template_child_private (widget_class, UnsootRecordsPage, view);
  gtk_widget_class_bind_template_child_private (widget_class, UnsootRecordsPage, scroller);
  gtk_widget_class_bind_template_child_private (widget_class, UnsootRecordsPage, none_chosen);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
}

static void
unsoot_records_page_init (UnsootRecordsPage *self)
{
  UnsootRecordsPagePrivate *private = PRIVATE (self);
  GtkAdjustment *adjustment;

  private->lines = g_list_store_new (UNSOOT_TYPE_LINE_ITEM);
  private->filter = g_strdup ("");
  gtk_widget_init_template (GTK_WIDGET (self));
  unsoot_access_stack (private->stack);
  adjustment = gtk_scrolled_window_get_vadjustment (private->scroller);
  g_signal_connect (adjustment, "value-changed", G_CALLBACK (scrolled_cb), self);
  g_signal_connect (adjustment, "changed", G_CALLBACK (scrolled_cb), self);
}

void
unsoot_records_page_add_tool (UnsootRecordsPage *self, GtkWidget *tool)
{
  gtk_box_append (PRIVATE (self)->tools, tool);
}

void
unsoot_records_page_add_above (UnsootRecordsPage *self, GtkWidget *widget)
{
  GtkWidget *stack = GTK_WIDGET (PRIVATE (self)->stack);

  gtk_box_insert_child_after (GTK_BOX (gtk_widget_get_parent (stack)), widget,
                              gtk_widget_get_prev_sibling (stack));
}

void
unsoot_records_page_set_filter (UnsootRecordsPage *self, const char *filter)
{
  UnsootRecordsPagePrivate *private = PRIVATE (self);

  if (g_str_equal (private->filter, filter))
    return;
  g_free (private->filter);
  private->filter = g_strdup (filter);
  g_list_store_remove_all (private->lines);
  unsoot_view_reload (UNSOOT_VIEW (self));
}

guint
unsoot_records_page_get_n_lines (UnsootRecordsPage *self)
{
  return g_list_model_get_n_items (G_LIST_MODEL (PRIVATE (self)->lines));
}
