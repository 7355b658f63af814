/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-body.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "access.h"
#include "bay-stepper.h"
#include "bay-words.h"
#include "caution-sheet.h"
#include "unit-text.h"

enum
{
  ML_STRIDE = 50,
  ML_MOST = 20000,
  CAUTION_COLUMNS = 3,
  CAUTION_WIDTH = 20, /* characters */
  SENTENCE_WIDTH = 30
};

struct _UnsootBayBody
{
  GtkBox parent_instance;

  UnsootAsk ask;

  /* borrowed children, NULL where not asked for */
  UnsootBayStepper *stepper;
  UnsootBayLots *lots;
  GtkToggleButton *oil_same;
  GtkToggleButton *oil_risen;
  GtkWidget *note;
  GtkLabel *clock;
  GtkLabel *clock_words;
  GtkBox *clock_row;
};

enum
{
  ACTIVATE,
  NOTE,
  SCANNED,
  REFUSED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBayBody, unsoot_bay_body, GTK_TYPE_BOX)

static void
unsoot_bay_body_class_init (UnsootBayBodyClass *klass)
{
  const GType type = G_TYPE_FROM_CLASS (klass);

  signals[ACTIVATE]
      = g_signal_new ("activate", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[NOTE]
      = g_signal_new ("note", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SCANNED] = g_signal_new ("scanned", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[REFUSED] = g_signal_new ("refused", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
unsoot_bay_body_init (UnsootBayBody *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
}

static void
clear (UnsootBayBody *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_box_remove (GTK_BOX (self), child);
  self->stepper = NULL;
  self->lots = NULL;
  self->oil_same = self->oil_risen = NULL;
  self->note = NULL;
  self->clock = self->clock_words = NULL;
}

static GtkWidget *
line_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

/* A width to wrap at: a card is asked how high it is at the narrowest that it can be. */
static GtkWidget *
narrow (GtkWidget *label, int characters)
{
  gtk_label_set_width_chars (GTK_LABEL (label), characters);
  gtk_label_set_max_width_chars (GTK_LABEL (label), characters * 2);
  return label;
}

static void
activated_cb (gpointer field, UnsootBayBody *self)
{
  g_signal_emit (self, signals[ACTIVATE], 0);
}

static UnsootBayStepper *
add_stepper (UnsootBayBody *self, GtkBox *row)
{
  UnsootBayStepper *stepper = g_object_new (UNSOOT_TYPE_BAY_STEPPER, NULL);

  g_signal_connect (stepper, "activate", G_CALLBACK (activated_cb), self);
  gtk_box_append (row, GTK_WIDGET (stepper));
  return stepper;
}

static GtkBox *
add_row (UnsootBayBody *self)
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
ask_pressure (UnsootBayBody *self)
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
    gtk_box_append (GTK_BOX (self), line_new (words, "window-words"));
}

static void
add_millilitres (UnsootBayBody *self, GtkBox *row, const char *name, gint64 ml)
{
  self->stepper = add_stepper (self, row);
  unsoot_bay_stepper_set_up (self->stepper, name, "mL", (double) MAX (ml, 0), ML_STRIDE, 0,
                             self->ask.most_ml > 0 ? (double) self->ask.most_ml : ML_MOST, 0);
}

static void
scanned_cb (UnsootBayLots *lots, const char *code, UnsootBayBody *self)
{
  g_signal_emit (self, signals[SCANNED], 0, code);
}

static void
refused_cb (UnsootBayLots *lots, const char *sentence, UnsootBayBody *self)
{
  g_signal_emit (self, signals[REFUSED], 0, sentence);
}

static void
ask_lot (UnsootBayBody *self, const UnsootBayFile *file, UnsootSession *session)
{
  g_autofree char *today = unsoot_session_today (session);
  GtkWidget *lots = unsoot_bay_lots_new (file->lots[self->ask.side], self->ask.preset_ml, today);

  self->lots = UNSOOT_BAY_LOTS (lots);
  g_signal_connect (lots, "scanned", G_CALLBACK (scanned_cb), self);
  g_signal_connect (lots, "refused", G_CALLBACK (refused_cb), self);
  gtk_box_append (GTK_BOX (self), lots);
  add_millilitres (self, unsoot_bay_lots_get_row (self->lots), _ ("Poured"), self->ask.preset_ml);
}

static GtkToggleButton *
oil_button_new (GtkBox *row, const char *words)
{
  GtkWidget *button = gtk_toggle_button_new_with_label (words);

  gtk_widget_add_css_class (button, "deed");
  unsoot_access_name (button, words);
  gtk_box_append (row, button);
  return GTK_TOGGLE_BUTTON (button);
}

static void
ask_oil (UnsootBayBody *self)
{
  GtkBox *row = add_row (self);

  self->oil_same = oil_button_new (row, _ ("As it was"));
  self->oil_risen = oil_button_new (row, _ ("Risen"));
  gtk_toggle_button_set_group (self->oil_risen, self->oil_same);
}

static void
ask_note (UnsootBayBody *self, const char *name, const char *preset)
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
note_cb (GtkButton *button, UnsootBayBody *self)
{
  g_signal_emit (self, signals[NOTE], 0);
}

static void
ask_used (UnsootBayBody *self, const UnsootRun *run, gboolean running)
{
  const gint64 told = unsoot_run_progress_ml (run);
  GtkBox *row = add_row (self);
  GtkWidget *note;

  add_millilitres (self, row, _ ("Used by this step"), told > 0 ? told : self->ask.preset_ml);
  if (!running)
    return;
  note = gtk_button_new_with_label (_ ("Note so far"));
  gtk_widget_set_valign (note, GTK_ALIGN_CENTER);
  unsoot_access_name (note, _ ("Note what it has used so far"));
  g_signal_connect (note, "clicked", G_CALLBACK (note_cb), self);
  gtk_box_append (self->clock_row, note);
}

static void
add_clock (UnsootBayBody *self)
{
  GtkBox *row = add_row (self);
  GtkWidget *clock = gtk_label_new (""), *words = line_new ("", "text-body");

  gtk_widget_add_css_class (clock, "bay-figure");
  gtk_widget_add_css_class (clock, "largest");
  gtk_box_append (row, clock);
  gtk_box_append (GTK_BOX (self), words);
  self->clock_row = row;
  self->clock = GTK_LABEL (clock);
  self->clock_words = GTK_LABEL (words);
}

static GtkWidget *
caution_new (UnsootCaution caution)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *icon = gtk_image_new_from_icon_name ("dialog-warning-symbolic");
  GtkWidget *text = line_new (unsoot_caution_text (caution), "text-body");

  gtk_image_set_pixel_size (GTK_IMAGE (icon), 24);
  gtk_widget_set_valign (icon, GTK_ALIGN_START);
  gtk_accessible_update_state (GTK_ACCESSIBLE (icon), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (words), line_new (unsoot_caution_title (caution), "heading"));
  gtk_box_append (GTK_BOX (words), narrow (text, CAUTION_WIDTH));
  gtk_box_append (GTK_BOX (box), icon);
  gtk_box_append (GTK_BOX (box), words);
  gtk_widget_add_css_class (box, "caution");
  return box;
}

static void
add_cautions (UnsootBayBody *self, guint cautions)
{
  GtkWidget *grid = gtk_grid_new ();
  int n = 0;

  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  for (int i = 0; i < UNSOOT_CAUTIONS; i++)
    if ((cautions & (1u << i)) != 0)
      {
        gtk_grid_attach (GTK_GRID (grid), caution_new ((UnsootCaution) (1u << i)),
                         n % CAUTION_COLUMNS, n / CAUTION_COLUMNS, 1, 1);
        n++;
      }
  gtk_box_append (GTK_BOX (self), grid);
}

static void
add_sentences (UnsootBayBody *self, const UnsootBayTask *task)
{
  for (guint i = 0; i < task->sentences->len; i++)
    gtk_box_append (
        GTK_BOX (self),
        narrow (line_new (g_ptr_array_index (task->sentences, i), "trouble"), SENTENCE_WIDTH));
}

static void
add_signature (UnsootBayBody *self, UnsootSession *session)
{
  const UnsootStaffRow *person = unsoot_session_get_person (session);

  ask_note (self, _ ("Who signs"), person != NULL ? person->name : "");
}

static void
add_halt (UnsootBayBody *self, const UnsootBayFile *file)
{
  g_autofree char *next = unsoot_run_next_safe_step (file->run);

  gtk_box_append (GTK_BOX (self), line_new (unsoot_happening_label (file->happening), "heading"));
  gtk_box_append (GTK_BOX (self), narrow (line_new (next, "text-body"), SENTENCE_WIDTH));
}

static char *
label_preset (const UnsootBayFile *file, UnsootSide side)
{
  /* Translators: what is written on a tank whose content is kept: job number, side */
  return g_strdup_printf (_ ("Job %d, %s"), (int) file->view->file->job->number,
                          unsoot_side_label (side));
}

static void
show_ask (UnsootBayBody *self, const UnsootBayTask *task, const UnsootBayFile *file,
          UnsootSession *session)
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
      ask_used (self, file->run, task->kind == UNSOOT_TASK_TIMER);
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

void
unsoot_bay_body_show (UnsootBayBody *self, const UnsootBayTask *task, const UnsootBayFile *file,
                      UnsootSession *session)
{
  g_return_if_fail (UNSOOT_IS_BAY_BODY (self));

  clear (self);
  self->ask = (UnsootAsk){ .kind = UNSOOT_ASK_NOTHING };
  switch (task->kind)
    {
    case UNSOOT_TASK_CAUTIONS:
      add_cautions (self, task->cautions);
      break;
    case UNSOOT_TASK_TIMER:
      add_clock (self);
      self->ask = task->ask;
      show_ask (self, task, file, session);
      break;
    case UNSOOT_TASK_ACT:
    case UNSOOT_TASK_STEP:
      self->ask = task->ask;
      show_ask (self, task, file, session);
      break;
    case UNSOOT_TASK_HALTED:
      add_halt (self, file);
      break;
    case UNSOOT_TASK_SIGN:
      if (task->may_do)
        add_signature (self, session);
      break;
    case UNSOOT_TASK_START:
    case UNSOOT_TASK_AGAIN:
    case UNSOOT_TASK_ALREADY:
    case UNSOOT_TASK_OVER:
      break;
    }
  add_sentences (self, task);
}

void
unsoot_bay_body_tick (UnsootBayBody *self, const UnsootRun *run, gint64 now)
{
  gint64 remaining = 0;
  g_autofree char *clock = NULL;

  if (self->clock == NULL)
    return;
  if (!unsoot_run_remaining (run, now, &remaining))
    {
      gtk_label_set_text (self->clock, "–");
      gtk_label_set_text (self->clock_words, _ ("no time is set: it ends when it is clear"));
      return;
    }
  clock = unsoot_bay_clock (remaining);
  gtk_label_set_text (self->clock, clock);
  if (remaining <= 0)
    gtk_label_set_text (self->clock_words, _ ("over its time: end the step"));
  else
    gtk_label_set_text (self->clock_words, unsoot_run_timer_counts (run)
                                               ? _ ("left; the alarm is on")
                                               : _ ("left; it waits, nothing flows"));
}

static gboolean
missing (GError **error, const char *sentence)
{
  g_set_error_literal (error, UNSOOT_RUN_ERROR, UNSOOT_RUN_ERROR_ENTRY, sentence);
  return FALSE;
}

static gboolean
read_ml (UnsootBayBody *self, UnsootRunEvent *event, GError **error)
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
read_oil (UnsootBayBody *self, UnsootRunEvent *event, GError **error)
{
  const gboolean risen = gtk_toggle_button_get_active (self->oil_risen);

  if (!risen && !gtk_toggle_button_get_active (self->oil_same))
    return missing (error, _ ("Say how the oil level is: as it was, or risen."));
  event->value = risen ? 1 : 0;
  return TRUE;
}

static gboolean
read_note (UnsootBayBody *self, UnsootRunEvent *event, GError **error)
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

gboolean
unsoot_bay_body_read (UnsootBayBody *self, UnsootRunEvent *event, GError **error)
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
unsoot_bay_body_lots (UnsootBayBody *self)
{
  return self->lots;
}

const char *
unsoot_bay_body_note (UnsootBayBody *self)
{
  return self->note != NULL ? gtk_editable_get_text (GTK_EDITABLE (self->note)) : "";
}

gboolean
unsoot_bay_body_focus (UnsootBayBody *self)
{
  if (self->note != NULL)
    return gtk_widget_grab_focus (self->note);
  if (self->oil_same != NULL)
    return gtk_widget_grab_focus (GTK_WIDGET (self->oil_same));
  if (self->stepper == NULL || self->clock != NULL || self->lots != NULL)
    return FALSE;
  unsoot_bay_stepper_focus (self->stepper);
  return TRUE;
}
