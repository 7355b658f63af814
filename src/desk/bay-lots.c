/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-lots.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "bay-order.h"
#include "format.h"
#include "lots.h"
#include "store-call.h"

enum
{
  MOST_SHOWN = 3 /* the shelf is long, the card is not; the rest is scanned */
};

struct _UnsootBayLots
{
  GtkBox parent_instance;

  GtkFlowBox *shelf;   /* borrowed child */
  GtkWidget *row;      /* borrowed child */
  GtkWidget *code;     /* in it; borrowed */
  GtkToggleButton *on; /* the chosen one; borrowed */
  gint64 lot_id;

  UnsootSession *session; /* owned */
  UnsootSide side;
  UnsootStoreSlot slot;
};

enum
{
  ACTIVATE,
  ANSWERED,
  REFUSED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBayLots, unsoot_bay_lots, GTK_TYPE_BOX)

static gint64
lot_of (GtkWidget *button)
{
  return *(gint64 *) g_object_get_data (G_OBJECT (button), "lot");
}

static void
toggled_cb (GtkToggleButton *button, UnsootBayLots *self)
{
  const char *why_not = g_object_get_data (G_OBJECT (button), "why-not");

  if (!gtk_toggle_button_get_active (button))
    {
      if (self->on == button)
        gtk_toggle_button_set_active (button, TRUE);
      return;
    }
  if (why_not != NULL)
    {
      gtk_toggle_button_set_active (button, FALSE);
      g_signal_emit (self, signals[REFUSED], 0, why_not);
      return;
    }
  /* What stands in the field is never another lot than the one that is chosen. */
  gtk_editable_set_text (GTK_EDITABLE (self->code), "");
  GtkToggleButton *former = self->on;
  self->on = button;
  self->lot_id = lot_of (GTK_WIDGET (button));
  if (former != NULL && former != button)
    gtk_toggle_button_set_active (former, FALSE);
}

/* By hand, not by what is proposed. */
static void
clicked_cb (GtkToggleButton *button, UnsootBayLots *self)
{
  if (self->on == button)
    g_signal_emit (self, signals[ANSWERED], 0);
}

static GtkWidget *
lot_button_new (UnsootBayLots *self, gint64 lot_id, const char *code, const char *more)
{
  GtkWidget *button = gtk_toggle_button_new ();
  GtkWidget *face = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *first = gtk_label_new (code), *second = gtk_label_new (more);
  g_autofree char *name = g_strdup_printf (_ ("Lot %s, %s"), code, more);

  gtk_widget_add_css_class (first, "lot-code");
  gtk_widget_add_css_class (second, "text-body");
  gtk_box_append (GTK_BOX (face), first);
  gtk_box_append (GTK_BOX (face), second);
  gtk_button_set_child (GTK_BUTTON (button), face);
  g_object_set_data_full (G_OBJECT (button), "lot", g_memdup2 (&lot_id, sizeof lot_id), g_free);
  g_signal_connect (button, "toggled", G_CALLBACK (toggled_cb), self);
  g_signal_connect (button, "clicked", G_CALLBACK (clicked_cb), self);
  unsoot_access_name (button, name);
  gtk_flow_box_append (self->shelf, button);
  gtk_widget_set_focusable (gtk_widget_get_parent (button), FALSE);
  return button;
}

static GtkWidget *
stock_button_new (UnsootBayLots *self, const UnsootLotStock *stock, const char *today)
{
  g_autofree char *litres = unsoot_format_litres (stock->left_ml);
  g_autofree char *until = unsoot_format_day (
      stock->opened_until != NULL ? stock->opened_until : stock->lot->expires_on, today);
  /* Translators: how much of a lot there is, and until when it is good */
  g_autofree char *more = g_strdup_printf (_ ("%s, until %s"), litres, until);
  GtkWidget *button = lot_button_new (self, stock->lot->id, stock->lot->code, more);

  if (!stock->usable)
    {
      gtk_widget_add_css_class (button, "barred");
      g_object_set_data_full (G_OBJECT (button), "why-not", g_strdup (stock->why_not), g_free);
    }
  return button;
}

static void
refuse (UnsootBayLots *self, const char *sentence)
{
  g_signal_emit (self, signals[REFUSED], 0, sentence);
}

static GtkWidget *
button_of (UnsootBayLots *self, gint64 lot_id)
{
  GtkFlowBoxChild *place;

  for (int i = 0; (place = gtk_flow_box_get_child_at_index (self->shelf, i)) != NULL; i++)
    if (lot_of (gtk_flow_box_child_get_child (place)) == lot_id)
      return gtk_flow_box_child_get_child (place);
  return NULL;
}

static void
looked_up (gpointer owner, gpointer result, const GError *error)
{
  UnsootBayLots *self = owner;
  g_autoptr (UnsootLotRow) lot = result;
  GtkWidget *button;

  if (error != NULL)
    {
      refuse (self, error->message);
      return;
    }
  button = button_of (self, lot->id);
  if (button == NULL)
    button = lot_button_new (self, lot->id, lot->code, _ ("scanned"));
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), TRUE);
  gtk_editable_set_text (GTK_EDITABLE (self->code), lot->code);
  gtk_editable_select_region (GTK_EDITABLE (self->code), 0, -1);
  g_signal_emit (self, signals[ANSWERED], 0);
}

static void
look_up (UnsootBayLots *self, const char *code)
{
  UnsootBayScan *scan
      = unsoot_bay_scan_new (code, self->side, unsoot_session_today (self->session));

  refuse (self, NULL);
  /* The next code takes its place. */
  gtk_editable_select_region (GTK_EDITABLE (self->code), 0, -1);
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (self->session),
                          unsoot_bay_scan_look_up, scan, (GDestroyNotify) unsoot_bay_scan_free,
                          (GDestroyNotify) unsoot_lot_row_free, looked_up, self);
}

/* A slow scanner ends here too: what it typed is looked up, and confirms nothing. */
static void
code_activated_cb (GtkEntry *entry, UnsootBayLots *self)
{
  const char *code = gtk_editable_get_text (GTK_EDITABLE (entry));

  if (*code == '\0')
    g_signal_emit (self, signals[ACTIVATE], 0);
  else
    look_up (self, code);
}

static void
unsoot_bay_lots_dispose (GObject *object)
{
  UnsootBayLots *self = UNSOOT_BAY_LOTS (object);

  unsoot_store_slot_clear (&self->slot);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (unsoot_bay_lots_parent_class)->dispose (object);
}

static void
unsoot_bay_lots_class_init (UnsootBayLotsClass *klass)
{
  const GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_bay_lots_dispose;
  signals[ACTIVATE]
      = g_signal_new ("activate", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[ANSWERED]
      = g_signal_new ("answered", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[REFUSED] = g_signal_new ("refused", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
unsoot_bay_lots_init (UnsootBayLots *self)
{
  GtkWidget *shelf = gtk_flow_box_new ();

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  self->shelf = GTK_FLOW_BOX (shelf);
  gtk_flow_box_set_selection_mode (self->shelf, GTK_SELECTION_NONE);
  gtk_flow_box_set_max_children_per_line (self->shelf, MOST_SHOWN);
  gtk_flow_box_set_min_children_per_line (self->shelf, MOST_SHOWN);
  gtk_flow_box_set_row_spacing (self->shelf, 12);
  gtk_flow_box_set_column_spacing (self->shelf, 12);
  gtk_flow_box_set_homogeneous (self->shelf, TRUE);
  unsoot_access_name (shelf, _ ("Lots on the shelf"));
  gtk_box_append (GTK_BOX (self), shelf);
  self->code = gtk_entry_new ();
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->code), _ ("Scan or type the lot"));
  unsoot_access_name (self->code, _ ("Lot, scanned or typed"));
  g_signal_connect (self->code, "activate", G_CALLBACK (code_activated_cb), self);
  gtk_widget_set_hexpand (self->code, TRUE);
  gtk_widget_set_valign (self->code, GTK_ALIGN_CENTER);
  self->row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18);
  gtk_box_append (GTK_BOX (self->row), self->code);
  gtk_box_append (GTK_BOX (self), self->row);
}

static void
add_stocks (UnsootBayLots *self, const GPtrArray *stocks, gint64 ml, const char *today,
            gboolean usable, guint *shown)
{
  for (guint i = 0; stocks != NULL && i < stocks->len && *shown < MOST_SHOWN; i++)
    {
      const UnsootLotStock *stock = g_ptr_array_index (stocks, i);
      GtkWidget *button;

      if (stock->usable != usable || stock->left_ml <= 0)
        continue;
      button = stock_button_new (self, stock, today);
      if (usable && self->on == NULL && stock->left_ml >= ml)
        gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), TRUE);
      (*shown)++;
    }
}

GtkWidget *
unsoot_bay_lots_new (UnsootSession *session, UnsootSide side, const GPtrArray *stocks, gint64 ml)
{
  UnsootBayLots *self = g_object_new (UNSOOT_TYPE_BAY_LOTS, NULL);
  g_autofree char *today = unsoot_session_today (session);
  guint shown = 0;

  self->session = g_object_ref (session);
  self->side = side;
  add_stocks (self, stocks, ml, today, TRUE, &shown);
  add_stocks (self, stocks, ml, today, FALSE, &shown);
  return GTK_WIDGET (self);
}

GtkBox *
unsoot_bay_lots_get_row (UnsootBayLots *self)
{
  return GTK_BOX (self->row);
}

gint64
unsoot_bay_lots_get (UnsootBayLots *self)
{
  return self->lot_id;
}

void
unsoot_bay_lots_scan (UnsootBayLots *self, const char *code)
{
  gtk_editable_set_text (GTK_EDITABLE (self->code), code);
  look_up (self, code);
}

void
unsoot_bay_lots_focus (UnsootBayLots *self)
{
  gtk_widget_grab_focus (self->code);
}
