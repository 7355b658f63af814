/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card.h"

#include "access.h"

struct _UnsootCard
{
  GtkBox parent_instance;

  GtkWidget *title; /* borrowed child */
};

enum
{
  PROP_TITLE = 1,
  N_PROPS
};
static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (UnsootCard, unsoot_card, GTK_TYPE_BOX)

static void
unsoot_card_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  switch (id)
    {
    case PROP_TITLE:
      g_value_set_string (value, gtk_label_get_text (GTK_LABEL (UNSOOT_CARD (object)->title)));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
unsoot_card_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  UnsootCard *self = UNSOOT_CARD (object);

  switch (id)
    {
    case PROP_TITLE:
      gtk_label_set_text (GTK_LABEL (self->title), g_value_get_string (value));
      gtk_widget_set_visible (self->title, *gtk_label_get_text (GTK_LABEL (self->title)) != '\0');
      unsoot_access_name (GTK_WIDGET (self), gtk_label_get_text (GTK_LABEL (self->title)));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
unsoot_card_class_init (UnsootCardClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = unsoot_card_get_property;
  object_class->set_property = unsoot_card_set_property;
  properties[PROP_TITLE]
      = g_param_spec_string ("title", NULL, NULL, "", G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
unsoot_card_init (UnsootCard *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  gtk_widget_add_css_class (GTK_WIDGET (self), "card");
  gtk_widget_add_css_class (GTK_WIDGET (self), "card-content");
  self->title = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->title), 0);
  gtk_widget_set_visible (self->title, FALSE);
  gtk_widget_add_css_class (self->title, "heading");
  gtk_box_append (GTK_BOX (self), self->title);
}

void
unsoot_card_clear (UnsootCard *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_next_sibling (self->title)) != NULL)
    gtk_box_remove (GTK_BOX (self), child);
}

void
unsoot_card_say (UnsootCard *self, const char *sentence)
{
  GtkWidget *label = gtk_label_new (sentence);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_box_append (GTK_BOX (self), label);
}
