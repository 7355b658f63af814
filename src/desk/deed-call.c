/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "deed-call.h"

#include <glib/gi18n-lib.h>

enum
{
  UNDO_SECONDS = 10
};

/* A deed under way. It outlives the dialog that began it: what was posted is told. */
typedef struct
{
  const UnsootDeedForm *form;
  UnsootDeedFunc func;
  UnsootActing who;
  UnsootDeedOrder *order;
  UnsootSession *session;
  AdwToastOverlay *toasts; /* may be NULL */
  UnsootDeedDone done;
  GWeakRef owner;
} Call;

static void
call_free (Call *call)
{
  g_clear_pointer (&call->order, unsoot_deed_order_free);
  g_clear_object (&call->session);
  g_clear_object (&call->toasts);
  g_weak_ref_clear (&call->owner);
  g_free (call);
}

static void begin (Call *call);

static Call *
call_new (GtkWidget *toasts, UnsootSession *session, const UnsootDeedForm *form,
          UnsootDeedOrder *order, UnsootDeedFunc func)
{
  const UnsootStaffRow *person = unsoot_session_get_person (session);
  Call *call = g_new0 (Call, 1);

  call->form = form;
  call->func = func;
  call->who.staff_id = person != NULL ? person->id : -1;
  call->who.now = unsoot_session_now (session);
  call->order = order;
  call->session = g_object_ref (session);
  call->toasts = toasts != NULL ? g_object_ref (ADW_TOAST_OVERLAY (toasts)) : NULL;
  g_weak_ref_init (&call->owner, NULL);
  return call;
}

/* The newest deed is the one that may want undoing: it does not wait for the former toast. */
static void
show_toast (Call *call, AdwToast *toast)
{
  AdwToast *former;

  if (call->toasts == NULL)
    {
      g_object_unref (toast);
      return;
    }
  former = g_object_steal_data (G_OBJECT (call->toasts), "deed-toast");
  if (former != NULL)
    {
      adw_toast_dismiss (former);
      g_object_unref (former);
    }
  g_object_set_data_full (G_OBJECT (call->toasts), "deed-toast", g_object_ref (toast),
                          g_object_unref);
  adw_toast_overlay_add_toast (call->toasts, toast);
}

/* A toast's title is markup. */
static AdwToast *
toast_new (const char *text)
{
  g_autofree char *title = g_markup_escape_text (text, -1);

  return adw_toast_new (title);
}

static void
undo_cb (AdwToast *toast, Call *former)
{
  begin (call_new (GTK_WIDGET (former->toasts), former->session, former->form,
                   unsoot_deed_order_copy (former->order), former->form->undo));
}

static void
call_closure_free (gpointer data, GClosure *closure)
{
  call_free (data);
}

/* Takes @call where its Undo may still be wanted. */
static gboolean
tell (Call *call, const GError *error)
{
  const gboolean is_undo = call->func == call->form->undo;
  const char *said = call->order->said != NULL ? call->order->said : _ (call->form->done);
  AdwToast *toast;

  if (error != NULL && call->done != NULL)
    return FALSE;
  toast = toast_new (error != NULL ? error->message : is_undo ? _ ("Taken back") : said);
  if (error == NULL && !is_undo && call->form->undo != NULL && call->order->undo_id != 0)
    {
      adw_toast_set_button_label (toast, _ ("Undo"));
      adw_toast_set_timeout (toast, UNDO_SECONDS);
      g_signal_connect_data (toast, "button-clicked", G_CALLBACK (undo_cb), call, call_closure_free,
                             0);
      show_toast (call, toast);
      return TRUE;
    }
  show_toast (call, toast);
  return FALSE;
}

static void
answered_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Call *call = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GtkWidget) owner = g_weak_ref_get (&call->owner);
  const UnsootDeedDone done = call->done;

  unsoot_store_call_finish (UNSOOT_STORE (source), result, &error);
  if (!tell (call, error))
    call_free (call);
  if (owner != NULL && done != NULL)
    done (owner, error);
}

static gpointer
carry_out (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  Call *call = data;

  call->func (db, &call->who, call->order, error);
  return NULL;
}

static void
begin (Call *call)
{
  unsoot_store_call_async (unsoot_session_get_store (call->session), carry_out, call, NULL, NULL,
                           NULL, answered_cb, call);
}

void
unsoot_deed_call (GtkWidget *over, UnsootSession *session, const UnsootDeedForm *form,
                  UnsootDeedOrder *order, UnsootDeedDone done, GtkWidget *owner)
{
  GtkWidget *toasts
      = ADW_IS_TOAST_OVERLAY (over) ? over : gtk_widget_get_ancestor (over, ADW_TYPE_TOAST_OVERLAY);
  Call *call = call_new (toasts, session, form, order, form->carry_out);

  call->done = done;
  g_weak_ref_set (&call->owner, owner);
  begin (call);
}
