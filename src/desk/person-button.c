/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "person-button.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "access.h"

struct _UnsootPersonButton
{
  GtkButton parent_instance;

  /* template */
  AdwAvatar *avatar;
  GtkLabel *name;
  GtkLabel *role;

  /* owned */
  UnsootSession *session;
};

G_DEFINE_FINAL_TYPE (UnsootPersonButton, unsoot_person_button, GTK_TYPE_BUTTON)

static void
unsoot_person_button_dispose (GObject *object)
{
  UnsootPersonButton *self = UNSOOT_PERSON_BUTTON (object);

  g_clear_object (&self->session);
  G_OBJECT_CLASS (unsoot_person_button_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_PERSON_BUTTON);
}

static void
unsoot_person_button_class_init (UnsootPersonButtonClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_person_button_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/person-button.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootPersonButton, avatar);
  gtk_widget_class_bind_template_child (widget_class, UnsootPersonButton, name);
  gtk_widget_class_bind_template_child (widget_class, UnsootPersonButton, role);
}

static void
unsoot_person_button_init (UnsootPersonButton *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
person_changed_cb (UnsootSession *session, GParamSpec *pspec, UnsootPersonButton *self)
{
  const UnsootStaffRow *person = unsoot_session_get_person (session);
  const char *name = person != NULL ? person->name : _ ("Nobody");
  const char *role = _ ("take the desk");
  g_autofree char *spoken = NULL;
  UnsootRole known;

  if (unsoot_session_get_role (session, &known))
    role = unsoot_role_words (known);
  adw_avatar_set_text (self->avatar, person != NULL ? name : NULL);
  adw_avatar_set_show_initials (self->avatar, person != NULL);
  gtk_label_set_text (self->name, name);
  gtk_label_set_text (self->role, role);
  /* Translators: who is at the desk, name and role */
  spoken = g_strdup_printf (_ ("At the desk: %s, %s. Change hands"), name, role);
  unsoot_access_name (GTK_WIDGET (self), spoken);
}

void
unsoot_person_button_set_session (UnsootPersonButton *self, UnsootSession *session)
{
  g_set_object (&self->session, session);
  g_signal_connect_object (session, "notify::person", G_CALLBACK (person_changed_cb), self, 0);
  person_changed_cb (session, NULL, self);
}
