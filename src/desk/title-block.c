/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "title-block.h"

#include "access.h"

enum
{
  LINK_CHARS = 26 /* a longer name is cut */
};

struct _UnsootTitleBlock
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *title;
  GtkLabel *subtitle;
  GtkBox *links;
};

G_DEFINE_FINAL_TYPE (UnsootTitleBlock, unsoot_title_block, GTK_TYPE_BOX)

static void
unsoot_title_block_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_title_block_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_TITLE_BLOCK);
}

static void
unsoot_title_block_class_init (UnsootTitleBlockClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_title_block_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/title-block.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootTitleBlock, title);
  gtk_widget_class_bind_template_child (widget_class, UnsootTitleBlock, subtitle);
  gtk_widget_class_bind_template_child (widget_class, UnsootTitleBlock, links);
}

static void
unsoot_title_block_init (UnsootTitleBlock *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
unsoot_title_block_show (UnsootTitleBlock *self, const char *title, const char *subtitle)
{
  GtkWidget *link;

  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->subtitle, subtitle != NULL ? subtitle : "");
  gtk_widget_set_visible (GTK_WIDGET (self->subtitle), subtitle != NULL && *subtitle != '\0');
  while ((link = gtk_widget_get_first_child (GTK_WIDGET (self->links))) != NULL)
    gtk_box_remove (self->links, link);
}

GtkWidget *
unsoot_title_block_link (UnsootTitleBlock *self, const char *icon, const char *label,
                         const char *slug, gint64 record)
{
  GtkWidget *button = gtk_button_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *image = gtk_image_new_from_icon_name (icon), *text = gtk_label_new (label);

  gtk_accessible_update_state (GTK_ACCESSIBLE (image), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  if (g_utf8_strlen (label, -1) > LINK_CHARS)
    {
      gtk_label_set_ellipsize (GTK_LABEL (text), PANGO_ELLIPSIZE_END);
      gtk_label_set_width_chars (GTK_LABEL (text), LINK_CHARS);
      gtk_widget_set_tooltip_text (button, label);
    }
  gtk_box_append (GTK_BOX (box), image);
  gtk_box_append (GTK_BOX (box), text);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "(sx)", slug, record);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.open");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  unsoot_access_name (button, label);
  gtk_box_append (self->links, button);
  return button;
}

void
unsoot_title_block_add (UnsootTitleBlock *self, GtkWidget *button)
{
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_box_append (self->links, button);
}
