/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "board-tag-widget.h"

#include "access.h"
#include "side-mark.h"

struct _UnsootBoardTagWidget
{
  GtkButton parent_instance;

  /* template */
  GtkBox *box;
  GtkLabel *label;
  GtkLabel *state;
};

G_DEFINE_FINAL_TYPE (UnsootBoardTagWidget, unsoot_board_tag_widget, GTK_TYPE_BUTTON)

static void
unsoot_board_tag_widget_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_board_tag_widget_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BOARD_TAG_WIDGET);
}

static void
unsoot_board_tag_widget_class_init (UnsootBoardTagWidgetClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_board_tag_widget_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/board-tag-widget.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBoardTagWidget, box);
  gtk_widget_class_bind_template_child (widget_class, UnsootBoardTagWidget, label);
  gtk_widget_class_bind_template_child (widget_class, UnsootBoardTagWidget, state);
}

static void
unsoot_board_tag_widget_init (UnsootBoardTagWidget *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
unsoot_board_tag_widget_new (const UnsootBoardTag *tag)
{
  UnsootBoardTagWidget *self = g_object_new (UNSOOT_TYPE_BOARD_TAG_WIDGET, NULL);
  g_autofree char *tip = g_strdup_printf ("%s\n%s", tag->type->name, tag->words);
  g_autofree char *name
      = g_strdup_printf ("%s, %s, %s", tag->item->label, tag->type->name, tag->words);
  UnsootSide side = UNSOOT_SIDE_NONE;

  if (unsoot_side_from_slug (tag->type->side, &side) && side != UNSOOT_SIDE_NONE)
    gtk_box_prepend (self->box, unsoot_side_mark_new_plain (side));
  gtk_label_set_text (self->label, tag->item->label);
  gtk_label_set_text (self->state, unsoot_board_words (tag->state));
  gtk_widget_add_css_class (GTK_WIDGET (self), unsoot_board_slug (tag->state));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), tip);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self), "(sx)", "adapter", tag->item->id);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self), "win.open");
  unsoot_access_name (GTK_WIDGET (self), name);
  return GTK_WIDGET (self);
}
