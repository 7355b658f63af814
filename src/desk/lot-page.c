/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "lot-page.h"

#include <glib/gi18n-lib.h>

#include "attention.h"
#include "card.h"
#include "civil.h"
#include "columns.h"
#include "deed-button.h"
#include "facts.h"
#include "first-record.h"
#include "fluid-deeds.h"
#include "fluid-moves.h"
#include "fluids.h"
#include "format.h"
#include "job-lines.h"
#include "jobs-card.h"
#include "link-row.h"
#include "lots.h"
#include "moves-table.h"
#include "side-mark.h"
#include "title-block.h"

enum
{
  MOVES_SHOWN = 60
};

struct _UnsootLotPage
{
  UnsootView parent_instance;

  /* template */
  UnsootTitleBlock *head;
  GtkBox *deeds;
  GtkLabel *trouble;
  UnsootCard *facts;
  UnsootCard *containers;
  UnsootCard *moves;
  UnsootCard *jobs;

  struct LotFile *file; /* owned; NULL until there is data */
};

G_DEFINE_FINAL_TYPE (UnsootLotPage, unsoot_lot_page, UNSOOT_TYPE_VIEW)

typedef struct LotFile
{
  UnsootFluidRow *fluid;
  GPtrArray *lots;       /* UnsootLotStock of the fluid */
  UnsootLotStock *stock; /* borrowed from them */
  GPtrArray *containers; /* UnsootContainerRow */
  GPtrArray *moves;      /* UnsootMoveLine */
  GPtrArray *jobs;       /* UnsootJobLine, newest first */
} LotFile;

static void
lot_file_free (gpointer data)
{
  LotFile *file = data;

  if (file == NULL)
    return;
  unsoot_fluid_row_free (file->fluid);
  g_clear_pointer (&file->lots, g_ptr_array_unref);
  g_clear_pointer (&file->containers, g_ptr_array_unref);
  g_clear_pointer (&file->moves, g_ptr_array_unref);
  g_clear_pointer (&file->jobs, g_ptr_array_unref);
  g_free (file);
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LotFile, lot_file_free)

static gboolean
load_jobs (UnsootDb *db, LotFile *file, GError **error)
{
  g_autoptr (GArray) oldest_first = unsoot_lot_jobs (db, file->stock->lot->id, error);
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));

  if (oldest_first == NULL)
    return FALSE;
  for (guint i = oldest_first->len; i > 0; i--)
    g_array_append_vals (ids, &g_array_index (oldest_first, gint64, i - 1), 1);
  file->jobs = unsoot_job_lines_of (db, ids, error);
  return file->jobs != NULL;
}

static gboolean
load_lots (UnsootDb *db, LotFile *file, gint64 id, const char *today, GError **error)
{
  g_autoptr (UnsootLotRow) lot = unsoot_lot_load (db, id, error);

  file->fluid = lot != NULL ? unsoot_fluid_load (db, lot->fluid_id, error) : NULL;
  file->lots = file->fluid != NULL ? unsoot_lot_list (db, lot->fluid_id, today, error) : NULL;
  for (guint i = 0; file->lots != NULL && i < file->lots->len; i++)
    {
      UnsootLotStock *stock = g_ptr_array_index (file->lots, i);
      if (stock->lot->id == id)
        file->stock = stock;
    }
  return file->stock != NULL;
}

static gpointer
read_lot (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;
  g_autofree char *today = unsoot_first_record_today (db, query->now, error);
  g_autoptr (LotFile) file = g_new0 (LotFile, 1);
  const gint64 id = MAX (query->record, 1);

  if (today == NULL || !load_lots (db, file, id, today, error))
    return NULL;
  file->containers = unsoot_container_list (db, id, error);
  file->moves = file->containers != NULL
                    ? unsoot_move_lines (db, file->fluid->id, id, 0, NULL, error)
                    : NULL;
  return file->moves != NULL && load_jobs (db, file, error) ? g_steal_pointer (&file) : NULL;
}

static void
deed_cb (GtkWidget *button, UnsootLotPage *self)
{
  const UnsootFluidDeed deed
      = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "fluid-deed"));

  unsoot_fluid_deed_open (deed, GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                          self->file->fluid, self->file->lots, self->file->stock->lot->id, NULL);
}

static void
stop_cb (GtkWidget *button, UnsootLotPage *self)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const UnsootLotRow *lot = self->file->stock->lot;

  if (lot->stop_reason != NULL)
    unsoot_lot_release (GTK_WIDGET (self), session, lot);
  else
    unsoot_lot_stop_open (GTK_WIDGET (self), session, lot);
}

/* Its last day is so near that Today says to use it first. */
static gboolean
goes_off (const UnsootLotStock *stock, const char *today)
{
  int last, now;

  return stock->usable && stock->on_hand_ml > 0 && stock->lot->expires_on != NULL
         && unsoot_day_parse (stock->lot->expires_on, &last, NULL)
         && unsoot_day_parse (today, &now, NULL) && last - now <= UNSOOT_ATTENTION_LOT;
}

/* What is left of an expired lot goes to waste; one that soon goes off is opened first. */
static void
show_deeds (UnsootLotPage *self)
{
  static const UnsootFluidDeed deeds[]
      = { UNSOOT_FLUID_OPEN, UNSOOT_FLUID_COUNT, UNSOOT_FLUID_WASTE, UNSOOT_FLUID_ADJUST };
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const UnsootLotStock *stock = self->file->stock;
  const gboolean stopped = stock->lot->stop_reason != NULL;
  g_autofree char *today = unsoot_session_today (session);
  GtkWidget *button;

  while ((button = gtk_widget_get_first_child (GTK_WIDGET (self->deeds))) != NULL)
    gtk_box_remove (self->deeds, button);
  for (gsize i = 0; i < G_N_ELEMENTS (deeds); i++)
    {
      button = unsoot_fluid_deed_button_new (deeds[i], session);
      g_object_set_data (G_OBJECT (button), "fluid-deed", GUINT_TO_POINTER (deeds[i]));
      g_signal_connect (button, "clicked", G_CALLBACK (deed_cb), self);
      gtk_box_append (self->deeds, button);
      if (deeds[i] == UNSOOT_FLUID_OPEN)
        unsoot_deed_button_suggest (button, goes_off (stock, today));
      if (deeds[i] == UNSOOT_FLUID_WASTE)
        unsoot_deed_button_suggest (button, !stock->usable && !stopped && stock->on_hand_ml > 0);
    }
  button = unsoot_deed_button_new (session, UNSOOT_DEED_HOLD_LOT,
                                   stopped ? _ ("Release") : _ ("Stop its use…"), NULL);
  g_signal_connect (button, "clicked", G_CALLBACK (stop_cb), self);
  gtk_box_append (self->deeds, button);
}

/* What whoever counts finds, where that is less than the book says. */
static void
add_left (UnsootFacts *facts, const UnsootLotStock *stock)
{
  g_autofree char *left = unsoot_format_litres (stock->left_ml);
  g_autofree char *poured = unsoot_format_litres (stock->on_hand_ml - stock->left_ml);
  /* Translators: both are volumes */
  g_autofree char *words
      = g_strdup_printf (_ ("%s; a run under way has poured the other %s"), left, poured);

  if (stock->left_ml != stock->on_hand_ml)
    unsoot_facts_add (facts, _ ("Still in it"), words);
}

static void
show_facts (UnsootLotPage *self, const LotFile *file)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const UnsootLotRow *lot = file->stock->lot;
  GtkWidget *facts = unsoot_facts_new ();
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *left = unsoot_format_litres (file->stock->on_hand_ml);
  g_autofree char *received = unsoot_format_day (lot->received_on, today);
  g_autofree char *expires = unsoot_format_day (lot->expires_on, today);
  g_autofree char *exact = unsoot_format_exact_day (lot->expires_on);
  g_autofree char *cost = lot->cost_minor_per_litre != 0
                              ? unsoot_session_money (session, lot->cost_minor_per_litre)
                              : NULL;
  /* Translators: a cost */
  g_autofree char *cost_text = cost != NULL ? g_strdup_printf (_ ("%s a litre"), cost) : NULL;
  GtkWidget *value;

  unsoot_card_clear (self->facts);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("On hand"), left);
  add_left (UNSOOT_FACTS (facts), file->stock);
  value = unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Expires"), expires);
  gtk_widget_set_tooltip_text (value, exact);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Received"), received);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Cost"), cost_text);
  gtk_box_append (GTK_BOX (self->facts), facts);
}

static void
empty_cb (GtkWidget *button, UnsootSession *session)
{
  const gint64 *id = g_object_get_data (G_OBJECT (button), "container");

  unsoot_container_empty (button, session, *id);
}

static GtkWidget *
container_row_new (const UnsootContainerRow *container, UnsootSession *session)
{
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *size = unsoot_format_litres (container->size_ml);
  g_autofree char *opened = unsoot_format_day (container->opened_on, today);
  g_autofree char *until = unsoot_format_day (container->use_by, today);
  /* Translators: size of a container, when it was opened, its last day */
  g_autofree char *detail
      = g_strdup_printf (_ ("%s, opened %s, to be used by %s"), size, opened, until);
  GtkWidget *row = adw_action_row_new ();
  g_autofree char *title = g_markup_escape_text (container->label, -1);
  GtkWidget *button
      = unsoot_deed_button_new (session, UNSOOT_DEED_POST_STOCK, _ ("Empty"), container->label);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), detail);
  g_object_set_data_full (G_OBJECT (button), "container",
                          g_memdup2 (&container->id, sizeof container->id), g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (empty_cb), session);
  unsoot_link_row_add (row, button);
  return row;
}

static void
show_containers (UnsootLotPage *self, const LotFile *file)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *list;

  unsoot_card_clear (self->containers);
  if (file->containers->len == 0)
    {
      unsoot_card_say (self->containers, _ ("No container of it is open."));
      return;
    }
  list = unsoot_link_list_new (_ ("Opened containers"));
  for (guint i = 0; i < file->containers->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list),
                         container_row_new (g_ptr_array_index (file->containers, i), session));
  gtk_box_append (GTK_BOX (self->containers), list);
}

static void
show_head (UnsootLotPage *self, const LotFile *file)
{
  const UnsootLotStock *stock = file->stock;
  g_autofree char *title = g_strdup_printf (_ ("Lot %s"), stock->lot->code);

  unsoot_view_set_title (UNSOOT_VIEW (self), title);
  unsoot_title_block_show (self->head, title, unsoot_sides_words (file->fluid->side));
  unsoot_title_block_link (self->head, "unsoot-fluid-symbolic", file->fluid->name, "fluid",
                           file->fluid->id);
  gtk_label_set_text (self->trouble, stock->why_not != NULL ? stock->why_not : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble),
                          stock->why_not != NULL && stock->on_hand_ml > 0);
}

static void
show_lot (UnsootView *view, gpointer result)
{
  UnsootLotPage *self = UNSOOT_LOT_PAGE (view);
  UnsootSession *session = unsoot_view_get_session (view);
  LotFile *file = result;

  g_clear_pointer (&self->file, lot_file_free);
  self->file = file;
  show_head (self, file);
  show_deeds (self);
  show_facts (self, file);
  show_containers (self, file);
  unsoot_card_clear (self->moves);
  gtk_box_append (GTK_BOX (self->moves),
                  unsoot_moves_table_new (file->moves, MOVES_SHOWN, FALSE, session));
  unsoot_jobs_card_fill (self->jobs, file->jobs, session, _ ("No job has had this lot."));
}

static void
unsoot_lot_page_dispose (GObject *object)
{
  g_clear_pointer (&UNSOOT_LOT_PAGE (object)->file, lot_file_free);
  G_OBJECT_CLASS (unsoot_lot_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_LOT_PAGE);
}

static void
unsoot_lot_page_class_init (UnsootLotPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_lot_page_dispose;
  view_class->read = read_lot;
  view_class->free_result = lot_file_free;
  view_class->show = show_lot;
  g_type_ensure (UNSOOT_TYPE_CARD);
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  g_type_ensure (UNSOOT_TYPE_TITLE_BLOCK);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/lot-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootLotPage, head);
  gtk_widget_class_bind_template_child (widget_class, UnsootLotPage, deeds);
  gtk_widget_class_bind_template_child (widget_class, UnsootLotPage, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootLotPage, facts);
  gtk_widget_class_bind_template_child (widget_class, UnsootLotPage, containers);
  gtk_widget_class_bind_template_child (widget_class, UnsootLotPage, moves);
  gtk_widget_class_bind_template_child (widget_class, UnsootLotPage, jobs);
}

static void
unsoot_lot_page_init (UnsootLotPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
