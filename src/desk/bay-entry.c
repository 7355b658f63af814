/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-entry.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "access.h"
#include "bay-line.h"
#include "bay-stepper.h"
#include "bay-words.h"
#include "unit-text.h"

enum
{
  ML_STRIDE = 50,
  ML_MOST = 20000
};

struct _UnsootBayEntry
{
  GtkBox parent_instance;

  UnsootAsk ask;

  /* borrowed children, NULL where not asked for */
  UnsootBayStepper *stepper;
  UnsootBayLots *lots;
  GtkToggleButton *oil_same;
  GtkToggleButton *oil_risen;
  GtkWidget *note;
};

enum
{
  ACTIVATE,
  ANSWERED,
  REFUSED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBayEntry, unsoot_bay_entry, GTK_TYPE_BOX)

static void
unsoot_bay_entry_class_init (UnsootBayEntryClass *klass)
{
  const GType type = G_TYPE_FROM_CLASS (klass);

  signals[ACTIVATE]
      = g_signal_new ("activate", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[ANSWERED]
      = g_signal_new ("answered", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[REFUSED] = g_signal_new ("refused", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
unsoot_bay_entry_init (UnsootBayEntry *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  self->ask.kind = UNSOOT_ASK_NOTHING;
}

static void
activated_cb (gpointer field, UnsootBayEntry *self)
{
  g_signal_emit (self, signals[ACTIVATE], 0);
}

static void
answered_cb (gpointer choice, UnsootBayEntry *self)
{
  g_signal_emit (self, signals[ANSWERED], 0);
}

static UnsootBayStepper *
add_stepper (UnsootBayEntry *self, GtkBox *row)
{
  UnsootBayStepper *stepper = g_object_new (UNSOOT_TYPE_BAY_STEPPER, NULL);

  g_signal_connect (stepper, "activate", G_CALLBACK (activated_cb), self);
  gtk_box_append (row, GTK_WIDGET (stepper));
  return stepper;
}

static GtkBox *
add_row (UnsootBayEntry *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18);

  gtk_box_append (GTK_BOX (self), row);
  return GTK_BOX (row);
}

static double
shown (const UnsootAsk *ask, double pa)
{
  return unsoot_unit_from_si (ask->unit, pa);
}

static void
ask_pressure (UnsootBayEntry *self)
{
  const UnsootAsk *ask = &self->ask;
  const gboolean large = shown (ask, ask->most_pa) > 20;
  const gboolean tiny = shown (ask, ask->most_pa) < 2;
  g_autofree char *window = unsoot_bay_window (ask);
  /* Translators: between which pressures the gauge has to stay */
  g_autofree char *words = window != NULL ? g_strdup_printf (_ ("window %s"), window) : NULL;
  GtkBox *row = add_row (self);

  self->stepper = add_stepper (self, row);
  unsoot_bay_stepper_set_up (self->stepper, _ ("Pressure on the gauge"),
                             unsoot_unit_symbol (ask->unit), shown (ask, ask->preset_pa),
                             large  ? 1
                             : tiny ? 0.05
                                    : 0.5,
                             0, isnan (ask->most_pa) ? 200 : shown (ask, ask->most_pa) * 1.5,
                             tiny ? 2 : 1);
  if (words != NULL)
    gtk_box_append (GTK_BOX (self), unsoot_bay_line_new (words, "window-words"));
}

static void
add_millilitres (UnsootBayEntry *self, GtkBox *row, const char *name, gint64 ml)
{
  self->stepper = add_stepper (self, row);
  unsoot_bay_stepper_set_up (self->stepper, name, "mL", (double) MAX (ml, 0), ML_STRIDE, 0,
                             self->ask.most_ml > 0 ? (double) self->ask.most_ml : ML_MOST, 0);
}

static void
refused_cb (UnsootBayLots *lots, const char *sentence, UnsootBayEntry *self)
{
  g_signal_emit (self, signals[REFUSED], 0, sentence);
}

static void
ask_lot (UnsootBayEntry *self, const UnsootBayFile *file, UnsootSession *session)
{
  const UnsootSide side = self->ask.side;
  GtkWidget *lots = unsoot_bay_lots_new (session, side, file->lots[side], self->ask.preset_ml);

  self->lots = UNSOOT_BAY_LOTS (lots);
  g_signal_connect (lots, "activate", G_CALLBACK (activated_cb), self);
  g_signal_connect (lots, "answered", G_CALLBACK (answered_cb), self);
  g_signal_connect (lots, "refused", G_CALLBACK (refused_cb), self);
  gtk_box_append (GTK_BOX (self), lots);
  add_millilitres (self, unsoot_bay_lots_get_row (self->lots), _ ("Poured"), self->ask.preset_ml);
}

static GtkToggleButton *
oil_button_new (UnsootBayEntry *self, GtkBox *row, const char *words)
{
  GtkWidget *button = gtk_toggle_button_new_with_label (words);

  gtk_widget_add_css_class (button, "deed");
  unsoot_access_name (button, words);
  g_signal_connect (button, "clicked", G_CALLBACK (answered_cb), self);
  gtk_box_append (row, button);
  return GTK_TOGGLE_BUTTON (button);
}

static void
ask_oil (UnsootBayEntry *self)
{
  GtkBox *row = add_row (self);

  self->oil_same = oil_button_new (self, row, _ ("As it was"));
  self->oil_risen = oil_button_new (self, row, _ ("Risen"));
  gtk_toggle_button_set_group (self->oil_risen, self->oil_same);
}

static void
ask_note (UnsootBayEntry *self, const char *name, const char *preset)
{
  self->note = gtk_entry_new ();
  gtk_editable_set_text (GTK_EDITABLE (self->note), preset);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->note), name);
  unsoot_access_name (self->note, name);
  gtk_widget_add_css_class (self->note, "big-entry");
  g_signal_connect (self->note, "activate", G_CALLBACK (activated_cb), self);
  gtk_box_append (GTK_BOX (self), self->note);
}

static void
ask_used (UnsootBayEntry *self, const UnsootRun *run)
{
  const gint64 told = unsoot_run_progress_ml (run);

  add_millilitres (self, add_row (self), _ ("Used by this step"),
                   told > 0 ? told : self->ask.preset_ml);
}

static char *
label_preset (const UnsootBayFile *file, UnsootSide side)
{
  /* Translators: what is written on a tank whose content is kept: job number, side */
  return g_strdup_printf (_ ("Job %d, %s"), (int) file->view->file->job->number,
                          unsoot_side_label (side));
}

static void
show_ask (UnsootBayEntry *self, const UnsootBayFile *file, UnsootSession *session)
{
  g_autofree char *label = label_preset (file, self->ask.side);

  switch (self->ask.kind)
    {
    case UNSOOT_ASK_NOTHING:
      break;
    case UNSOOT_ASK_PRESSURE:
      ask_pressure (self);
      break;
    case UNSOOT_ASK_LOT:
      ask_lot (self, file, session);
      break;
    case UNSOOT_ASK_LEFT:
      add_millilitres (self, add_row (self), _ ("Left in the tank"), self->ask.preset_ml);
      break;
    case UNSOOT_ASK_USED:
      ask_used (self, file->run);
      break;
    case UNSOOT_ASK_OIL:
      ask_oil (self);
      break;
    case UNSOOT_ASK_LABEL:
      ask_note (self, _ ("What the label says"), label);
      break;
    case UNSOOT_ASK_NOTE:
      ask_note (self, _ ("What you see, hear or read"), "");
      break;
    }
}

static gboolean
missing (GError **error, const char *sentence)
{
  g_set_error_literal (error, UNSOOT_RUN_ERROR, UNSOOT_RUN_ERROR_ENTRY, sentence);
  return FALSE;
}

static gboolean
read_ml (UnsootBayEntry *self, UnsootRunEvent *event, GError **error)
{
  double ml = 0;

  if (!unsoot_bay_stepper_read (self->stepper, &ml, error))
    return FALSE;
  if (ml < 0 || ml > ML_MOST)
    return missing (error, _ ("That is no volume for this machine. Enter millilitres."));
  event->ml = llround (ml);
  return TRUE;
}

static gboolean
read_oil (UnsootBayEntry *self, UnsootRunEvent *event, GError **error)
{
  const gboolean risen = gtk_toggle_button_get_active (self->oil_risen);

  if (!risen && !gtk_toggle_button_get_active (self->oil_same))
    return missing (error, _ ("Say how the oil level is: as it was, or risen."));
  event->value = risen ? 1 : 0;
  return TRUE;
}

static gboolean
read_note (UnsootBayEntry *self, UnsootRunEvent *event, GError **error)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->note))));
  double value = 0;

  if (*text == '\0')
    return missing (error, _ ("Write down what you see or read: later it is compared with it."));
  if (unsoot_number_parse (text, &value, NULL))
    event->value = value;
  /* The text of an act off the list is its step line. */
  if (event->kind != UNSOOT_RUN_EXTRA)
    {
      g_free (event->text);
      event->text = g_steal_pointer (&text);
    }
  return TRUE;
}

GtkWidget *
unsoot_bay_entry_new (const UnsootBayTask *task, const UnsootBayFile *file, UnsootSession *session)
{
  UnsootBayEntry *self = g_object_new (UNSOOT_TYPE_BAY_ENTRY, NULL);

  self->ask = task->ask;
  show_ask (self, file, session);
  return GTK_WIDGET (self);
}

GtkWidget *
unsoot_bay_entry_new_signature (const char *who)
{
  UnsootBayEntry *self = g_object_new (UNSOOT_TYPE_BAY_ENTRY, NULL);

  ask_note (self, _ ("Who signs"), who);
  return GTK_WIDGET (self);
}

gboolean
unsoot_bay_entry_read (UnsootBayEntry *self, UnsootRunEvent *event, GError **error)
{
  double typed = 0;

  switch (self->ask.kind)
    {
    case UNSOOT_ASK_NOTHING:
      return TRUE;
    case UNSOOT_ASK_PRESSURE:
      if (!unsoot_bay_stepper_read (self->stepper, &typed, error))
        return FALSE;
      event->value = unsoot_unit_to_si (self->ask.unit, typed);
      return TRUE;
    case UNSOOT_ASK_LOT:
      event->lot_id = unsoot_bay_lots_get (self->lots);
      if (event->lot_id == 0)
        return missing (error, _ ("Choose the lot you pour from, or scan it."));
      return read_ml (self, event, error);
    case UNSOOT_ASK_LEFT:
    case UNSOOT_ASK_USED:
      return read_ml (self, event, error);
    case UNSOOT_ASK_OIL:
      return read_oil (self, event, error);
    case UNSOOT_ASK_LABEL:
    case UNSOOT_ASK_NOTE:
      return read_note (self, event, error);
    }
  g_return_val_if_reached (FALSE);
}

UnsootBayLots *
unsoot_bay_entry_lots (UnsootBayEntry *self)
{
  return self->lots;
}

const char *
unsoot_bay_entry_note (UnsootBayEntry *self)
{
  return self->note != NULL ? gtk_editable_get_text (GTK_EDITABLE (self->note)) : "";
}

void
unsoot_bay_entry_watch (UnsootBayEntry *self, UnsootFormDraft *draft)
{
  if (self->note != NULL)
    unsoot_form_draft_watch (draft, "note", gtk_entry_get_placeholder_text (GTK_ENTRY (self->note)),
                             self->note);
}

gboolean
unsoot_bay_entry_focus (UnsootBayEntry *self)
{
  if (self->note != NULL)
    return gtk_widget_grab_focus (self->note);
  if (self->oil_same != NULL)
    return gtk_widget_grab_focus (GTK_WIDGET (self->oil_same));
  if (self->lots != NULL)
    unsoot_bay_lots_focus (self->lots);
  else if (self->stepper != NULL)
    unsoot_bay_stepper_focus (self->stepper);
  else
    return FALSE;
  return TRUE;
}
