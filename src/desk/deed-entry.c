/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "deed-entry.h"

#include <glib/gi18n-lib.h>

#include "access.h"

struct _UnsootDeedEntry
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *label;
  GtkBox *holder;
  GtkLabel *note;

  GtkWidget *input; /* borrowed: a GtkEntry, a box of buttons or a GtkDropDown */
  GtkWidget *first; /* borrowed: of the buttons */
  const UnsootDeedField *field;
  GArray *numbers; /* gint64 of the choices */
};

enum
{
  EDITED,
  ACTIVATE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootDeedEntry, unsoot_deed_entry, GTK_TYPE_BOX)

static void
unsoot_deed_entry_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_deed_entry_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_DEED_ENTRY);
}

static void
unsoot_deed_entry_finalize (GObject *object)
{
  g_array_unref (UNSOOT_DEED_ENTRY (object)->numbers);
  G_OBJECT_CLASS (unsoot_deed_entry_parent_class)->finalize (object);
}

static void
unsoot_deed_entry_class_init (UnsootDeedEntryClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_deed_entry_dispose;
  G_OBJECT_CLASS (klass)->finalize = unsoot_deed_entry_finalize;
  signals[EDITED] = g_signal_new ("edited", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 0);
  signals[ACTIVATE] = g_signal_new ("activate", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                    NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/deed-entry.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootDeedEntry, label);
  gtk_widget_class_bind_template_child (widget_class, UnsootDeedEntry, holder);
  gtk_widget_class_bind_template_child (widget_class, UnsootDeedEntry, note);
}

static void
unsoot_deed_entry_init (UnsootDeedEntry *self)
{
  self->numbers = g_array_new (FALSE, FALSE, sizeof (gint64));
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
say (UnsootDeedEntry *self, const char *text, gboolean wrong)
{
  gtk_label_set_text (self->note, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note), text != NULL);
  gtk_widget_remove_css_class (GTK_WIDGET (self->note), wrong ? "dim-label" : "error");
  gtk_widget_add_css_class (GTK_WIDGET (self->note), wrong ? "error" : "dim-label");
  if (!wrong)
    gtk_widget_remove_css_class (self->input, "error");
  else
    gtk_widget_add_css_class (self->input, "error");
  unsoot_access_describe (self->input, text != NULL ? text : "");
}

static void
edited (UnsootDeedEntry *self)
{
  say (self, self->field->hint != NULL ? _ (self->field->hint) : NULL, FALSE);
  g_signal_emit (self, signals[EDITED], 0);
}

static void
activated_cb (GtkEntry *entry, UnsootDeedEntry *self)
{
  g_signal_emit (self, signals[ACTIVATE], 0);
}

static void
picked_cb (GtkCalendar *calendar, UnsootDeedEntry *self)
{
  g_autoptr (GDateTime) date = gtk_calendar_get_date (calendar);
  g_autofree char *iso = g_date_time_format (date, "%Y-%m-%d");

  gtk_editable_set_text (GTK_EDITABLE (self->input), iso);
  gtk_popover_popdown (
      GTK_POPOVER (gtk_widget_get_ancestor (GTK_WIDGET (calendar), GTK_TYPE_POPOVER)));
}

static GtkWidget *
calendar_button_new (UnsootDeedEntry *self)
{
  GtkWidget *button = gtk_menu_button_new (), *popover = gtk_popover_new ();
  GtkWidget *calendar = gtk_calendar_new ();
  /* Translators: a button that opens a calendar; the label of the field beside it */
  g_autofree char *name = g_strdup_printf (_ ("Choose the day: %s"), _ (self->field->label));

  g_signal_connect (calendar, "day-selected", G_CALLBACK (picked_cb), self);
  gtk_popover_set_child (GTK_POPOVER (popover), calendar);
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (button), popover);
  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (button), "x-office-calendar-symbolic");
  gtk_widget_set_tooltip_text (button, _ ("Choose the day"));
  unsoot_access_name (button, name);
  unsoot_access_name_inside (button, name);
  return button;
}

static void
add_entry (UnsootDeedEntry *self)
{
  self->input = gtk_entry_new ();
  gtk_widget_set_hexpand (self->input, TRUE);
  gtk_widget_add_css_class (self->input, "figures");
  g_signal_connect_swapped (self->input, "changed", G_CALLBACK (edited), self);
  g_signal_connect (self->input, "activate", G_CALLBACK (activated_cb), self);
  gtk_box_append (self->holder, self->input);
  if (self->field->kind == UNSOOT_ASK_DAY)
    gtk_box_append (self->holder, calendar_button_new (self));
}

static void
add_choices (UnsootDeedEntry *self)
{
  if (self->field->words != NULL)
    {
      self->input = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
      gtk_box_set_homogeneous (GTK_BOX (self->input), TRUE);
      gtk_widget_add_css_class (self->input, "linked");
    }
  else
    {
      self->input = gtk_drop_down_new_from_strings ((const char *const[]){ NULL });
      g_signal_connect_swapped (self->input, "notify::selected", G_CALLBACK (edited), self);
    }
  gtk_widget_set_hexpand (self->input, TRUE);
  gtk_box_append (self->holder, self->input);
  for (gsize i = 0; self->field->words != NULL && self->field->words[i] != NULL; i++)
    unsoot_deed_entry_add_choice (self, (gint64) i, _ (self->field->words[i]));
}

GtkWidget *
unsoot_deed_entry_new (const UnsootDeedField *field)
{
  UnsootDeedEntry *self = g_object_new (UNSOOT_TYPE_DEED_ENTRY, NULL);

  self->field = field;
  gtk_label_set_text (self->label, _ (field->label));
  if (field->kind == UNSOOT_ASK_CHOICE)
    add_choices (self);
  else
    add_entry (self);
  unsoot_access_name (self->input, _ (field->label));
  unsoot_access_name_inside (self->input, _ (field->label));
  say (self, field->hint != NULL ? _ (field->hint) : NULL, FALSE);
  return GTK_WIDGET (self);
}

static void
toggled_cb (GtkToggleButton *button, UnsootDeedEntry *self)
{
  if (gtk_toggle_button_get_active (button))
    edited (self);
}

void
unsoot_deed_entry_add_choice (UnsootDeedEntry *self, gint64 number, const char *words)
{
  g_array_append_val (self->numbers, number);
  if (GTK_IS_DROP_DOWN (self->input))
    {
      GtkStringList *list = GTK_STRING_LIST (gtk_drop_down_get_model (GTK_DROP_DOWN (self->input)));
      gtk_string_list_append (list, words);
      return;
    }
  GtkWidget *button = gtk_toggle_button_new_with_label (words);
  unsoot_access_name (button, words);
  if (self->first == NULL)
    self->first = button;
  else
    gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), GTK_TOGGLE_BUTTON (self->first));
  g_signal_connect (button, "toggled", G_CALLBACK (toggled_cb), self);
  gtk_box_append (GTK_BOX (self->input), button);
  if (button == self->first)
    gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), TRUE);
}

/* Which of the choices is chosen, counted from 0. */
static guint
chosen (UnsootDeedEntry *self)
{
  guint i = 0;

  if (GTK_IS_DROP_DOWN (self->input))
    return gtk_drop_down_get_selected (GTK_DROP_DOWN (self->input));
  for (GtkWidget *button = self->first; button != NULL;
       button = gtk_widget_get_next_sibling (button))
    {
      if (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (button)))
        return i;
      i++;
    }
  return GTK_INVALID_LIST_POSITION;
}

void
unsoot_deed_entry_set_choice (UnsootDeedEntry *self, gint64 number)
{
  GtkWidget *button = self->first;

  for (guint i = 0; i < self->numbers->len; i++)
    {
      const gboolean it = g_array_index (self->numbers, gint64, i) == number;
      if (it && GTK_IS_DROP_DOWN (self->input))
        gtk_drop_down_set_selected (GTK_DROP_DOWN (self->input), i);
      else if (it && button != NULL)
        gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), TRUE);
      button = button != NULL ? gtk_widget_get_next_sibling (button) : NULL;
    }
}

void
unsoot_deed_entry_set_text (UnsootDeedEntry *self, const char *text)
{
  if (self->field->kind == UNSOOT_ASK_CHOICE)
    unsoot_deed_entry_set_choice (self, g_ascii_strtoll (text, NULL, 10));
  else
    gtk_editable_set_text (GTK_EDITABLE (self->input), text);
}

char *
unsoot_deed_entry_dup_text (UnsootDeedEntry *self)
{
  guint i;

  if (self->field->kind != UNSOOT_ASK_CHOICE)
    return g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->input)));
  i = chosen (self);
  return i < self->numbers->len
             ? g_strdup_printf ("%" G_GINT64_FORMAT, g_array_index (self->numbers, gint64, i))
             : g_strdup ("");
}

gboolean
unsoot_deed_entry_read (UnsootDeedEntry *self, const char *currency, UnsootDeedValue *value)
{
  g_autofree char *text = unsoot_deed_entry_dup_text (self);
  g_autoptr (GError) error = NULL;

  if (!unsoot_deed_field_read (self->field, text, currency, value, &error))
    {
      say (self, error->message, TRUE);
      return FALSE;
    }
  if (self->field->kind == UNSOOT_ASK_CHOICE)
    value->number = g_ascii_strtoll (text, NULL, 10);
  return TRUE;
}

void
unsoot_deed_entry_focus (UnsootDeedEntry *self)
{
  GtkWidget *button = self->first;

  while (button != NULL && !gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (button)))
    button = gtk_widget_get_next_sibling (button);
  gtk_widget_grab_focus (button != NULL ? button : self->input);
}
