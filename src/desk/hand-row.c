/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hand-row.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "access.h"
#include "call-deeds.h"
#include "hand-deeds.h"

struct _UnsootHandRow
{
  GtkListBoxRow parent_instance;

  /* template */
  GtkImage *icon;
  GtkLabel *sentence;
  GtkButton *deed;

  /* owned */
  UnsootSession *session;
  char *thing;

  const char *about; /* what is called about; NULL: the button leads there */
  const char *slug;
  UnsootHandKind kind;
  gint64 target_id;
};

G_DEFINE_FINAL_TYPE (UnsootHandRow, unsoot_hand_row, GTK_TYPE_LIST_BOX_ROW)

static void
unsoot_hand_row_dispose (GObject *object)
{
  UnsootHandRow *self = UNSOOT_HAND_ROW (object);

  g_clear_object (&self->session);
  g_clear_pointer (&self->thing, g_free);
  G_OBJECT_CLASS (unsoot_hand_row_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_HAND_ROW);
}

static void
unsoot_hand_row_class_init (UnsootHandRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_hand_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/hand-row.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootHandRow, icon);
  gtk_widget_class_bind_template_child (widget_class, UnsootHandRow, sentence);
  gtk_widget_class_bind_template_child (widget_class, UnsootHandRow, deed);
}

static void
unsoot_hand_row_init (UnsootHandRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static const char *
kind_icon (UnsootHandKind kind)
{
  switch (kind)
    {
    case UNSOOT_HAND_HALTED:
    case UNSOOT_HAND_RELEASED:
      return "unsoot-stop-symbolic";
    case UNSOOT_HAND_WAITING:
      return "unsoot-vehicle-symbolic";
    case UNSOOT_HAND_SETUP:
      return "emblem-system-symbolic";
    case UNSOOT_HAND_SHORT:
    case UNSOOT_HAND_LATE:
    case UNSOOT_HAND_REORDER:
    case UNSOOT_HAND_EXPIRY:
      return "unsoot-fluid-symbolic";
    case UNSOOT_HAND_LOAN:
      return "unsoot-adapter-symbolic";
    case UNSOOT_HAND_GAUGE:
    case UNSOOT_HAND_HOSES:
      return "unsoot-machine-symbolic";
    case UNSOOT_HAND_UNINVOICED:
    case UNSOOT_HAND_ESTIMATE:
    case UNSOOT_HAND_UNPAID:
      return "unsoot-papers-symbolic";
    case UNSOOT_HAND_REMINDER:
      return "unsoot-customer-symbolic";
    }
  g_return_val_if_reached ("unsoot-today-symbolic");
}

static const char *
target_slug (UnsootTargetKind target)
{
  switch (target)
    {
    case UNSOOT_TARGET_JOB:
      return "job";
    case UNSOOT_TARGET_FLUID:
      return "fluid";
    case UNSOOT_TARGET_LOT:
      return "lot";
    case UNSOOT_TARGET_LOAN:
      return "loan";
    case UNSOOT_TARGET_MACHINE:
      return "machine";
    case UNSOOT_TARGET_INVOICE:
      return "invoice";
    case UNSOOT_TARGET_VEHICLE:
      return "vehicle";
    case UNSOOT_TARGET_PREFERENCES:
      return "preferences";
    }
  g_return_val_if_reached ("job");
}

static gboolean
hurts (UnsootHandKind kind)
{
  return kind <= UNSOOT_HAND_RELEASED;
}

static void
call_cb (UnsootHandRow *self)
{
  unsoot_phone_call_open (GTK_WIDGET (self), self->session, self->about, self->target_id,
                          self->thing);
}

/* The record comes to the front, and over it what is to be done there. */
static void
open_cb (UnsootHandRow *self)
{
  g_autoptr (UnsootSession) session = g_object_ref (self->session);
  GtkWidget *window = GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (self)));
  GtkWidget *over = gtk_widget_get_ancestor (GTK_WIDGET (self), ADW_TYPE_TOAST_OVERLAY);
  const UnsootHandKind kind = self->kind;
  const gint64 target_id = self->target_id;

  gtk_widget_activate_action (window, "win.open", "(sx)", self->slug, target_id);
  if (over != NULL)
    unsoot_hand_deed_open (over, session, kind, target_id);
}

/* A call is made from here; everything else is done where it stands. */
static void
set_deed (UnsootHandRow *self, const UnsootHand *hand)
{
  g_autofree char *refusal = NULL;

  self->about = unsoot_hand_call_about (hand->kind);
  if (self->about == NULL)
    {
      self->slug = hand->kind <= UNSOOT_HAND_WAITING ? "bay" : target_slug (hand->target);
      g_signal_connect_swapped (self->deed, "clicked", G_CALLBACK (open_cb), self);
      return;
    }
  refusal = unsoot_session_refusal (self->session, UNSOOT_DEED_EDIT_CUSTOMER);
  gtk_widget_set_sensitive (GTK_WIDGET (self->deed), refusal == NULL);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->deed), refusal);
  g_signal_connect_swapped (self->deed, "clicked", G_CALLBACK (call_cb), self);
}

GtkWidget *
unsoot_hand_row_new (const UnsootHand *hand, UnsootSession *session)
{
  UnsootHandRow *self = g_object_new (UNSOOT_TYPE_HAND_ROW, NULL);
  g_autofree char *markup = g_markup_printf_escaped ("<b>%s</b> %s", hand->thing, hand->rest);
  g_autofree char *spoken = g_strdup_printf ("%s %s", hand->thing, hand->rest);
  g_autofree char *deed = g_strdup_printf ("%s: %s", hand->verb, hand->thing);

  gtk_image_set_from_icon_name (self->icon, kind_icon (hand->kind));
  if (hurts (hand->kind))
    gtk_widget_add_css_class (GTK_WIDGET (self->icon), "error");
  gtk_label_set_markup (self->sentence, markup);
  gtk_button_set_label (self->deed, hand->verb);
  self->session = g_object_ref (session);
  self->thing = g_strdup (spoken);
  self->kind = hand->kind;
  self->target_id = hand->target_id;
  set_deed (self, hand);
  unsoot_access_name (GTK_WIDGET (self), spoken);
  unsoot_access_name (GTK_WIDGET (self->deed), deed);
  return GTK_WIDGET (self);
}
