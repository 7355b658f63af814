/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "machine-card.h"

#include "access.h"
#include "side-mark.h"
#include "tank-picture.h"

struct _UnsootMachineCard
{
  GtkButton parent_instance;

  /* template */
  GtkLabel *name;
  GtkLabel *serial;
  GtkBox *tanks;
  GtkLabel *hoses;
  GtkLabel *gauges;
};

G_DEFINE_FINAL_TYPE (UnsootMachineCard, unsoot_machine_card, GTK_TYPE_BUTTON)

static void
unsoot_machine_card_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_machine_card_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_MACHINE_CARD);
}

static void
unsoot_machine_card_class_init (UnsootMachineCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_machine_card_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/machine-card.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootMachineCard, name);
  gtk_widget_class_bind_template_child (widget_class, UnsootMachineCard, serial);
  gtk_widget_class_bind_template_child (widget_class, UnsootMachineCard, tanks);
  gtk_widget_class_bind_template_child (widget_class, UnsootMachineCard, hoses);
  gtk_widget_class_bind_template_child (widget_class, UnsootMachineCard, gauges);
}

static void
unsoot_machine_card_init (UnsootMachineCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
add_tank (UnsootMachineCard *self, const UnsootTankState *state)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *label = gtk_label_new (state->words);
  UnsootSide side = UNSOOT_SIDE_NONE;

  if (unsoot_side_from_slug (state->tank->side, &side) && side != UNSOOT_SIDE_NONE)
    {
      GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
      gtk_box_append (GTK_BOX (head), unsoot_side_mark_new_plain (side));
      gtk_box_append (GTK_BOX (head), gtk_label_new (unsoot_side_label (side)));
      gtk_box_append (GTK_BOX (words), head);
    }
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), 8);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 22);
  gtk_widget_add_css_class (label, "figures");
  gtk_widget_add_css_class (label, "subtitle-line");
  gtk_box_append (GTK_BOX (words), label);
  gtk_box_append (GTK_BOX (box), unsoot_tank_picture_new (state));
  gtk_box_append (GTK_BOX (box), words);
  gtk_widget_set_hexpand (box, TRUE);
  gtk_box_append (self->tanks, box);
}

static void
say_due (GtkLabel *label, const char *words, gboolean late)
{
  gtk_label_set_text (label, words);
  gtk_widget_add_css_class (GTK_WIDGET (label), late ? "warning" : "subtitle-line");
}

GtkWidget *
unsoot_machine_card_new (const UnsootMachineFile *file, const char *today)
{
  UnsootMachineCard *self = g_object_new (UNSOOT_TYPE_MACHINE_CARD, NULL);
  gboolean hoses_late, gauges_late;
  g_autofree char *hoses = unsoot_machine_hoses_words (file, today, &hoses_late);
  g_autofree char *gauges = unsoot_machine_gauge_words (file, today, &gauges_late);
  g_autofree char *name = g_strdup_printf ("%s, %s, %s", file->machine->name, hoses, gauges);

  gtk_label_set_text (self->name, file->machine->name);
  if (file->machine->serial != NULL)
    gtk_label_set_text (self->serial, file->machine->serial);
  for (guint i = 0; i < file->tanks->len; i++)
    add_tank (self, g_ptr_array_index (file->tanks, i));
  say_due (self->hoses, hoses, hoses_late);
  say_due (self->gauges, gauges, gauges_late);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self), "(sx)", "machine", file->machine->id);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self), "win.open");
  unsoot_access_name (GTK_WIDGET (self), name);
  return GTK_WIDGET (self);
}
