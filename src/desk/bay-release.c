/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-release.h"

#include <glib/gi18n-lib.h>

#include "form-draft.h"

struct _UnsootBayRelease
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *tag;
  GtkEntry *signature;
  GtkEntry *reason;
  UnsootFormDraft *draft;
  GtkLabel *trouble;
  GtkButton *release;

  gint64 job_id; /* what is typed is about it; 0: nothing is typed yet */
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
  g_type_ensure (UNSOOT_TYPE_FORM_DRAFT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/bay-release.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRelease, tag);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRelease, signature);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRelease, reason);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayRelease, draft);
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
  unsoot_form_draft_watch (self->draft, "reason", _ ("Why it leaves, or stays, in pieces"),
                           GTK_WIDGET (self->reason));
  unsoot_form_draft_watch (self->draft, "signature", _ ("Who takes it on"),
                           GTK_WIDGET (self->signature));
}

static void
begin (UnsootBayRelease *self, gint64 job_id, UnsootSession *session)
{
  const UnsootStaffRow *person = unsoot_session_get_person (session);

  self->job_id = job_id;
  gtk_editable_set_text (GTK_EDITABLE (self->reason), "");
  gtk_editable_set_text (GTK_EDITABLE (self->signature), person != NULL ? person->name : "");
  unsoot_form_draft_begin (self->draft, session, "release", job_id);
}

void
unsoot_bay_release_open (UnsootBayRelease *self, const UnsootRun *run, gint64 job_id,
                         UnsootSession *session)
{
  g_autofree char *tag = unsoot_run_tag (run);

  g_return_if_fail (UNSOOT_IS_BAY_RELEASE (self));
  gtk_label_set_text (self->tag, tag);
  if (self->job_id != job_id)
    begin (self, job_id, session);
  unsoot_bay_release_say (self, NULL);
  gtk_widget_grab_focus (GTK_WIDGET (self->reason));
}

void
unsoot_bay_release_done (UnsootBayRelease *self)
{
  unsoot_form_draft_done (self->draft);
}

void
unsoot_bay_release_forget (UnsootBayRelease *self)
{
  unsoot_form_draft_leave (self->draft);
  self->job_id = 0;
}

void
unsoot_bay_release_say (UnsootBayRelease *self, const char *sentence)
{
  gtk_label_set_text (self->trouble, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), sentence != NULL);
}
