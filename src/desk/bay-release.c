/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-release.h"

#include <glib/gi18n-lib.h>

struct _UnsootBayRelease
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *tag;
  GtkEntry *signature;
  GtkEntry *reason;
  GtkLabel *trouble;
  GtkButton *release;
};

enum
{
  RELEASE,
  BACK,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBayRelease, unsoot_bay_release, GTK_TYPE_BOX)

static void
release_cb (GtkButton *button, UnsootBayRelease *self)
{
  unsoot_bay_release_say (self, NULL);
  g_signal_emit (self, signals[RELEASE], 0, gtk_editable_get_text (GTK_EDITABLE (self->signature)),
                 gtk_editable_get_text (GTK_EDITABLE (self->reason)));
}

/* Return goes from field to field, and to the button: nothing is released by it in passing. */
static void
reason_activated_cb (GtkEntry *entry, UnsootBayRelease *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->signature));
}

static void
signature_activated_cb (GtkEntry *entry, UnsootBayRelease *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->release));
}

static void
back_cb (GtkButton *button, UnsootBayRelease *self)
{
  g_signal_emit (self, signals[BACK], 0);
}

static void
unsoot_bay_release_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_bay_release_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BAY_RELEASE);
}

static void
unsoot_bay_release_class_init (UnsootBayReleaseClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_bay_release_dispose;
  signals[RELEASE] = g_signal_new ("release", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 2, G_TYPE_STRING, G_TYPE_STRING);
  signals[BACK]
      = g_signal_new ("back", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/bay-release.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRelease, tag);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRelease, signature);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRelease, reason);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRelease, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRelease, release);
  gtk_widget_class_bind_template_callback (widget_class, reason_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, signature_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, release_cb);
  gtk_widget_class_bind_template_callback (widget_class, back_cb);
}

static void
unsoot_bay_release_init (UnsootBayRelease *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
unsoot_bay_release_open (UnsootBayRelease *self, const UnsootRun *run, const char *person)
{
  g_autofree char *tag = unsoot_run_tag (run);

  g_return_if_fail (UNSOOT_IS_BAY_RELEASE (self));
  gtk_label_set_text (self->tag, tag);
  if (person != NULL && *gtk_editable_get_text (GTK_EDITABLE (self->signature)) == '\0')
    gtk_editable_set_text (GTK_EDITABLE (self->signature), person);
  unsoot_bay_release_say (self, NULL);
  gtk_widget_grab_focus (GTK_WIDGET (self->reason));
}

void
unsoot_bay_release_say (UnsootBayRelease *self, const char *sentence)
{
  gtk_label_set_text (self->trouble, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), sentence != NULL);
}
