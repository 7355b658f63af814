/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "credit-dialog.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "form-draft.h"
#include "invoice-words.h"
#include "store-call.h"
#include "window.h"

struct _UnsootCreditDialog
{
  AdwWindow parent_instance;

  /* template */
  GtkLabel *about;
  GtkListBox *lines;
  GtkEntry *reason;
  UnsootFormDraft *draft;
  GtkLabel *trouble;
  GtkLabel *sum;
  GtkButton *issue;

  /* owned */
  UnsootSession *session;
  GPtrArray *checks; /* GtkCheckButton, borrowed from the rows */
  GArray *positions; /* gint64, as the checks */
  GArray *nets;      /* gint64 */
  UnsootStoreSlot slot;

  gint64 invoice_id;
  gboolean leaving; /* as soon as the store has answered */
};

G_DEFINE_FINAL_TYPE (UnsootCreditDialog, unsoot_credit_dialog, ADW_TYPE_WINDOW)

static void
say_trouble (UnsootCreditDialog *self, const char *sentence)
{
  gtk_label_set_text (self->trouble, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), sentence != NULL);
}

static GArray *
chosen (UnsootCreditDialog *self, gint64 *net)
{
  GArray *positions = g_array_new (FALSE, FALSE, sizeof (gint64));

  *net = 0;
  for (guint i = 0; i < self->checks->len; i++)
    if (gtk_check_button_get_active (g_ptr_array_index (self->checks, i)))
      {
        g_array_append_val (positions, g_array_index (self->positions, gint64, i));
        *net += g_array_index (self->nets, gint64, i);
      }
  return positions;
}

static void
changed_cb (UnsootCreditDialog *self)
{
  gint64 net;
  g_autoptr (GArray) positions = chosen (self, &net);
  g_autofree char *money = unsoot_session_money (self->session, net);
  /* Translators: the lines of an invoice that are taken back */
  g_autofree char *text = g_strdup_printf (
      ngettext ("%u line, %s without tax", "%u lines, %s without tax", positions->len),
      positions->len, money);

  gtk_label_set_text (self->sum, text);
  say_trouble (self, NULL);
}

typedef struct
{
  UnsootActing who;
  gint64 invoice_id;
  GArray *positions;
  char *reason;
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  g_array_unref (order->positions);
  g_free (order->reason);
  g_free (order);
}

static gpointer
credit (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Order *order = data;
  const gint64 id = unsoot_invoice_credit (db, &order->who, order->invoice_id,
                                           (const gint64 *) (gconstpointer) order->positions->data,
                                           order->positions->len, order->reason, error);

  return id != 0 ? unsoot_rows_get (db, &unsoot_invoice_row_type, id, error) : NULL;
}

static void
credited (gpointer owner, gpointer result, const GError *error)
{
  UnsootCreditDialog *self = owner;
  GtkWindow *over = gtk_window_get_transient_for (GTK_WINDOW (self));
  g_autoptr (UnsootInvoiceRow) note = result;

  gtk_widget_set_sensitive (GTK_WIDGET (self->issue), TRUE);
  if (error != NULL)
    {
      say_trouble (self, error->message);
      if (self->leaving)
        gtk_window_close (GTK_WINDOW (self));
      return;
    }
  unsoot_form_draft_done (self->draft);
  if (UNSOOT_IS_WINDOW (over))
    {
      g_autofree char *text = g_strdup_printf (_ ("Credit note %d is issued"), (int) note->number);
      unsoot_window_toast (UNSOOT_WINDOW (over), text);
    }
  gtk_window_close (GTK_WINDOW (self));
}

static void
issue_cb (UnsootCreditDialog *self)
{
  gint64 net;
  g_autoptr (GArray) positions = chosen (self, &net);
  const char *reason = gtk_editable_get_text (GTK_EDITABLE (self->reason));
  Order *order;

  if (positions->len == 0)
    {
      say_trouble (self, _ ("Choose at least one line."));
      return;
    }
  order = g_new0 (Order, 1);
  order->who = unsoot_session_acting (self->session);
  order->invoice_id = self->invoice_id;
  order->positions = g_steal_pointer (&positions);
  order->reason = g_strdup (reason);
  gtk_widget_set_sensitive (GTK_WIDGET (self->issue), FALSE);
  say_trouble (self, NULL);
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (self->session), credit, order,
                          order_free, (GDestroyNotify) unsoot_invoice_row_free, credited, self);
}

/* What is under way is waited for: only its answer tells whether the draft is kept. */
static gboolean
unsoot_credit_dialog_close_request (GtkWindow *window)
{
  return !gtk_widget_get_sensitive (GTK_WIDGET (UNSOOT_CREDIT_DIALOG (window)->issue))
         || GTK_WINDOW_CLASS (unsoot_credit_dialog_parent_class)->close_request (window);
}

static void
hands_changed_cb (UnsootCreditDialog *self)
{
  self->leaving = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static void
unsoot_credit_dialog_dispose (GObject *object)
{
  UnsootCreditDialog *self = UNSOOT_CREDIT_DIALOG (object);

  unsoot_store_slot_clear (&self->slot);
  g_clear_object (&self->session);
  g_clear_pointer (&self->checks, g_ptr_array_unref);
  g_clear_pointer (&self->positions, g_array_unref);
  g_clear_pointer (&self->nets, g_array_unref);
  G_OBJECT_CLASS (unsoot_credit_dialog_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_CREDIT_DIALOG);
}

static void
unsoot_credit_dialog_class_init (UnsootCreditDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_credit_dialog_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = unsoot_credit_dialog_close_request;
  g_type_ensure (UNSOOT_TYPE_FORM_DRAFT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/credit-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootCreditDialog, about);
  gtk_widget_class_bind_template_child (widget_class, UnsootCreditDialog, lines);
  gtk_widget_class_bind_template_child (widget_class, UnsootCreditDialog, reason);
  gtk_widget_class_bind_template_child (widget_class, UnsootCreditDialog, draft);
  gtk_widget_class_bind_template_callback (widget_class, hands_changed_cb);
  gtk_widget_class_bind_template_child (widget_class, UnsootCreditDialog, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootCreditDialog, sum);
  gtk_widget_class_bind_template_child (widget_class, UnsootCreditDialog, issue);
  gtk_widget_class_bind_template_callback (widget_class, issue_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  unsoot_form_draft_add_hands (widget_class);
}

static void
unsoot_credit_dialog_init (UnsootCreditDialog *self)
{
  self->checks = g_ptr_array_new ();
  self->positions = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->nets = g_array_new (FALSE, FALSE, sizeof (gint64));
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
add_line (UnsootCreditDialog *self, const UnsootInvoiceLineRow *line)
{
  GtkWidget *row = adw_action_row_new (), *check = gtk_check_button_new ();
  g_autofree char *money = unsoot_session_money (self->session, line->net_minor);
  GtkWidget *amount = gtk_label_new (money);
  g_autofree char *field = g_strdup_printf ("line %" G_GINT64_FORMAT, line->position);
  g_autofree char *text = g_markup_escape_text (line->text, -1);
  g_autofree char *name = g_strdup_printf ("%s, %s", line->text, money);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), text);
  gtk_widget_add_css_class (amount, "figures");
  adw_action_row_add_prefix (ADW_ACTION_ROW (row), check);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), amount);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), check);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  g_signal_connect_swapped (check, "toggled", G_CALLBACK (changed_cb), self);
  unsoot_access_name (row, name);
  unsoot_access_name (check, name);
  gtk_list_box_append (self->lines, row);
  unsoot_form_draft_watch (self->draft, g_intern_string (field), name, check);
  g_ptr_array_add (self->checks, check);
  g_array_append_val (self->positions, line->position);
  g_array_append_val (self->nets, line->net_minor);
}

GtkWindow *
unsoot_credit_dialog_open (GtkWidget *over, UnsootSession *session,
                           const UnsootInvoiceView *invoice)
{
  UnsootCreditDialog *self = g_object_new (UNSOOT_TYPE_CREDIT_DIALOG, "transient-for",
                                           GTK_WINDOW (gtk_widget_get_root (over)), NULL);
  const UnsootInvoiceRow *row = invoice->file->invoice;
  g_autofree char *title = unsoot_invoice_title (row->kind, row->number);
  g_autofree char *about
      = g_strdup_printf (_ ("%s stays as it is. A credit note takes whole lines back, with their "
                            "tax, under the next number."),
                         title);

  self->session = g_object_ref (session);
  self->invoice_id = row->id;
  gtk_label_set_text (self->about, about);
  for (guint i = 0; i < invoice->file->lines->len; i++)
    {
      const UnsootInvoiceLineRow *line = g_ptr_array_index (invoice->file->lines, i);
      if (!unsoot_invoice_view_credited (invoice, line->position))
        add_line (self, line);
    }
  unsoot_form_draft_watch (self->draft, "reason", _ ("Why"), GTK_WIDGET (self->reason));
  unsoot_form_draft_begin (self->draft, session, "credit", row->id);
  changed_cb (self);
  gtk_window_present (GTK_WINDOW (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->reason));
  return GTK_WINDOW (self);
}
