/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "alarm-banner.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "bay-order.h"
#include "bay-watch.h"
#include "bay-words.h"
#include "store-call.h"

struct _UnsootAlarmBanner
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *title;
  GtkLabel *words;
  GtkButton *heard;
  GtkButton *open;

  UnsootSession *session; /* owned */
  UnsootStoreSlot slot;
};

G_DEFINE_FINAL_TYPE (UnsootAlarmBanner, unsoot_alarm_banner, ADW_TYPE_BIN)

static void
show_alarm (UnsootAlarmBanner *self)
{
  const UnsootBayAlarm *alarm = unsoot_bay_watch_ringing (unsoot_bay_watch_of (self->session));
  g_autofree char *title = NULL;
  g_autofree char *late = NULL;
  g_autofree char *words = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self), alarm != NULL);
  if (alarm == NULL)
    return;
  title = g_strdup_printf (_ ("ALARM, job %d"), (int) alarm->job_number);
  late = unsoot_bay_late (unsoot_session_now (self->session) - alarm->due);
  /* Translators: the step whose time is over, and how late it is: “Idle on cleaner: the time is
     over, 3 min late” */
  words = g_strdup_printf (_ ("%s: the time is over, %s"), alarm->step, late);
  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->words, words);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self->open), "(sx)", "bay", alarm->job_id);
}

static void
changed_cb (UnsootBayWatch *watch, UnsootAlarmBanner *self)
{
  show_alarm (self);
}

static void
heard_done (gpointer owner, gpointer result, const GError *error)
{
  UnsootAlarmBanner *self = owner;

  gtk_widget_set_sensitive (GTK_WIDGET (self->heard), TRUE);
  if (error != NULL)
    gtk_label_set_text (self->words, error->message);
}

static void
heard_cb (GtkButton *button, UnsootAlarmBanner *self)
{
  const UnsootBayAlarm *alarm = unsoot_bay_watch_ringing (unsoot_bay_watch_of (self->session));
  UnsootBayOrder *order;

  if (alarm == NULL)
    return;
  order = unsoot_bay_order_new (UNSOOT_ORDER_POST, unsoot_session_acting (self->session),
                                alarm->job_id, alarm->run_id);
  order->event = unsoot_run_event_new (UNSOOT_RUN_ALARM_HEARD, order->who.now);
  gtk_widget_set_sensitive (GTK_WIDGET (self->heard), FALSE);
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (self->session),
                          unsoot_bay_order_carry_out, order, (GDestroyNotify) unsoot_bay_order_free,
                          NULL, heard_done, self);
}

static void
unsoot_alarm_banner_dispose (GObject *object)
{
  UnsootAlarmBanner *self = UNSOOT_ALARM_BANNER (object);

  unsoot_store_slot_clear (&self->slot);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (unsoot_alarm_banner_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_ALARM_BANNER);
}

static void
unsoot_alarm_banner_class_init (UnsootAlarmBannerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_alarm_banner_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/alarm-banner.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootAlarmBanner, title);
  gtk_widget_class_bind_template_child (widget_class, UnsootAlarmBanner, words);
  gtk_widget_class_bind_template_child (widget_class, UnsootAlarmBanner, heard);
  gtk_widget_class_bind_template_child (widget_class, UnsootAlarmBanner, open);
  gtk_widget_class_bind_template_callback (widget_class, heard_cb);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_ALERT);
}

static void
unsoot_alarm_banner_init (UnsootAlarmBanner *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  unsoot_access_name (GTK_WIDGET (self), _ ("Alarm"));
}

void
unsoot_alarm_banner_set_session (UnsootAlarmBanner *self, UnsootSession *session)
{
  g_return_if_fail (UNSOOT_IS_ALARM_BANNER (self) && self->session == NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (unsoot_bay_watch_of (session), "changed", G_CALLBACK (changed_cb), self,
                           0);
  show_alarm (self);
}
