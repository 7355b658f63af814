/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "procedure-dialog.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "form-draft.h"
#include "procedure-text.h"
#include "procedures.h"
#include "store-call.h"
#include "usual-procedure.h"
#include "window.h"

enum
{
  LEAST_HEIGHT = 480,
  USUAL_DOSE_ML = 1000 /* for safety there only has to be one: how much is each job's own */
};

struct _UnsootProcedureDialog
{
  AdwWindow parent_instance;

  /* template */
  GtkLabel *about;
  GtkDropDown *sides;
  GtkTextView *text;
  UnsootFormDraft *draft;
  GtkLabel *verdict;
  GtkButton *use;

  /* owned */
  UnsootSession *session;
  UnsootFamilyRow *family;
  UnsootFamilyFacts *facts;
  UnsootProcedure *procedure; /* as it stands, where it can be used */
  UnsootStoreSlot read_slot;
  UnsootStoreSlot save_slot;

  gboolean saving;
  gboolean leaving; /* as soon as the store has answered */
};

G_DEFINE_FINAL_TYPE (UnsootProcedureDialog, unsoot_procedure_dialog, ADW_TYPE_WINDOW)

/* In the order of the choices. */
static const char *const sides_slugs[] = { "both", "fuel", "intake" };

static const char *
chosen_sides (UnsootProcedureDialog *self)
{
  const guint chosen = gtk_drop_down_get_selected (self->sides);

  return sides_slugs[chosen < G_N_ELEMENTS (sides_slugs) ? chosen : 0];
}

static void
say (UnsootProcedureDialog *self, const char *sentence, gboolean wrong)
{
  gtk_label_set_text (self->verdict, sentence);
  if (wrong)
    gtk_widget_add_css_class (GTK_WIDGET (self->verdict), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->verdict), "error");
}

/* The first rule that it breaks; NULL: none. */
static char *
broken_rule (const UnsootProcedure *procedure, const UnsootFamilyFacts *facts)
{
  g_autoptr (GArray) faults = unsoot_faults_new ();
  g_autofree char *sentence = NULL;
  const UnsootFault *fault;

  if (unsoot_procedure_check (procedure, facts, faults))
    return NULL;
  fault = &g_array_index (faults, UnsootFault, 0);
  sentence = unsoot_fault_sentence (fault);
  if (fault->step < 0 || fault->step >= (int) procedure->steps->len)
    return g_steal_pointer (&sentence);
  g_autofree char *words = unsoot_step_words (unsoot_procedure_step (procedure, fault->step));
  /* Translators: the number of a step, what it says, and which rule it breaks */
  return g_strdup_printf (_ ("Step %d, “%s”: %s"), fault->step + 1, words, sentence);
}

static void
judge (UnsootProcedureDialog *self, const char *text)
{
  g_autoptr (UnsootProcedure) procedure = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *broken = NULL, *fine = NULL;

  if (!unsoot_procedure_parse (text, &procedure, &facts, &error))
    {
      say (self, error->message, TRUE);
      return;
    }
  if (!unsoot_family_facts_equal (facts, self->facts))
    {
      say (self,
           _ ("What the text says of the engine is not what its family says. Change it in "
              "the family, where doses and adapters see it too."),
           TRUE);
      return;
    }
  broken = broken_rule (procedure, self->facts);
  if (broken != NULL)
    {
      say (self, broken, TRUE);
      return;
    }
  fine = g_strdup_printf (ngettext ("%u step; no rule is broken.", "%u steps; no rule is broken.",
                                    procedure->steps->len),
                          procedure->steps->len);
  say (self, fine, FALSE);
  self->procedure = g_steal_pointer (&procedure);
}

static void
changed_cb (GtkTextBuffer *buffer, UnsootProcedureDialog *self)
{
  GtkTextIter start, end;
  g_autofree char *text = NULL;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  text = gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
  g_clear_pointer (&self->procedure, unsoot_procedure_free);
  judge (self, text);
  gtk_widget_set_sensitive (GTK_WIDGET (self->use), self->procedure != NULL);
}

static void
show_procedure (UnsootProcedureDialog *self, const UnsootProcedure *procedure)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (self->text);
  g_autofree char *text = unsoot_procedure_print (procedure, self->facts);
  GtkTextIter start, end;

  /* Ctrl+Z brings back what it takes away. */
  gtk_text_buffer_begin_user_action (buffer);
  gtk_text_buffer_get_bounds (buffer, &start, &end);
  gtk_text_buffer_delete (buffer, &start, &end);
  gtk_text_buffer_insert (buffer, &start, text, -1);
  gtk_text_buffer_end_user_action (buffer);
}

static void
show_usual (UnsootProcedureDialog *self)
{
  const char *sides = chosen_sides (self);
  g_autoptr (UnsootProcedure) usual = unsoot_usual_procedure (
      self->facts, !g_str_equal (sides, "intake"), !g_str_equal (sides, "fuel"));

  show_procedure (self, usual);
}

static void
usual_cb (UnsootProcedureDialog *self)
{
  show_usual (self);
}

typedef struct
{
  UnsootActing who;
  gint64 family_id;
  const char *sides;
  UnsootProcedure *procedure;
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  g_clear_pointer (&order->procedure, unsoot_procedure_free);
  g_free (order);
}

static Order *
order_new (UnsootProcedureDialog *self)
{
  Order *order = g_new0 (Order, 1);

  order->who = unsoot_session_acting (self->session);
  order->family_id = self->family->id;
  order->sides = chosen_sides (self);
  return order;
}

static gpointer
read_in_use (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Order *order = data;
  g_autoptr (UnsootProcedureRow) row
      = unsoot_procedure_in_use (db, order->family_id, order->sides, error);

  return row != NULL ? unsoot_procedure_load (db, row->id, error) : NULL;
}

static void
in_use_read (gpointer owner, gpointer result, const GError *error)
{
  UnsootProcedureDialog *self = owner;
  g_autoptr (UnsootProcedure) procedure = result;
  g_autofree char *place = g_strdup_printf ("procedure %s", chosen_sides (self));

  gtk_text_view_set_editable (self->text, TRUE);
  if (error != NULL)
    say (self, error->message, TRUE);
  else if (procedure != NULL)
    show_procedure (self, procedure);
  else
    show_usual (self);
  unsoot_form_draft_begin (self->draft, self->session, place, self->family->id);
}

static void
sides_cb (UnsootProcedureDialog *self)
{
  if (self->session == NULL)
    return;
  unsoot_form_draft_leave (self->draft);
  gtk_text_view_set_editable (self->text, FALSE);
  unsoot_store_slot_call (&self->read_slot, unsoot_session_get_store (self->session), read_in_use,
                          order_new (self), order_free, (GDestroyNotify) unsoot_procedure_free,
                          in_use_read, self);
}

static gpointer
save (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Order *order = data;

  unsoot_procedure_save (db, &order->who, order->family_id, order->procedure, error);
  return NULL;
}

static void
saved (gpointer owner, gpointer result, const GError *error)
{
  UnsootProcedureDialog *self = owner;
  GtkWindow *over = gtk_window_get_transient_for (GTK_WINDOW (self));

  self->saving = FALSE;
  gtk_widget_set_sensitive (GTK_WIDGET (self->use), TRUE);
  if (error != NULL)
    {
      say (self, error->message, TRUE);
      if (self->leaving)
        gtk_window_close (GTK_WINDOW (self));
      return;
    }
  unsoot_form_draft_done (self->draft);
  if (UNSOOT_IS_WINDOW (over))
    unsoot_window_toast (UNSOOT_WINDOW (over), _ ("The procedure is in use"));
  gtk_window_close (GTK_WINDOW (self));
}

static void
use_cb (UnsootProcedureDialog *self)
{
  Order *order;

  if (self->procedure == NULL)
    return;
  order = order_new (self);
  order->procedure = unsoot_procedure_copy (self->procedure);
  self->saving = TRUE;
  gtk_widget_set_sensitive (GTK_WIDGET (self->use), FALSE);
  unsoot_store_slot_call (&self->save_slot, unsoot_session_get_store (self->session), save, order,
                          order_free, NULL, saved, self);
}

/* What is under way is waited for: only its answer tells whether the draft is kept. */
static gboolean
unsoot_procedure_dialog_close_request (GtkWindow *window)
{
  return UNSOOT_PROCEDURE_DIALOG (window)->saving
         || GTK_WINDOW_CLASS (unsoot_procedure_dialog_parent_class)->close_request (window);
}

static void
hands_changed_cb (UnsootProcedureDialog *self)
{
  self->leaving = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static void
unsoot_procedure_dialog_dispose (GObject *object)
{
  UnsootProcedureDialog *self = UNSOOT_PROCEDURE_DIALOG (object);

  unsoot_store_slot_clear (&self->read_slot);
  unsoot_store_slot_clear (&self->save_slot);
  g_clear_object (&self->session);
  g_clear_pointer (&self->family, unsoot_family_row_free);
  g_clear_pointer (&self->facts, unsoot_family_facts_free);
  g_clear_pointer (&self->procedure, unsoot_procedure_free);
  G_OBJECT_CLASS (unsoot_procedure_dialog_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_PROCEDURE_DIALOG);
}

static void
unsoot_procedure_dialog_class_init (UnsootProcedureDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_procedure_dialog_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = unsoot_procedure_dialog_close_request;
  g_type_ensure (UNSOOT_TYPE_FORM_DRAFT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/procedure-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootProcedureDialog, about);
  gtk_widget_class_bind_template_child (widget_class, UnsootProcedureDialog, sides);
  gtk_widget_class_bind_template_child (widget_class, UnsootProcedureDialog, text);
  gtk_widget_class_bind_template_child (widget_class, UnsootProcedureDialog, draft);
  gtk_widget_class_bind_template_callback (widget_class, hands_changed_cb);
  gtk_widget_class_bind_template_child (widget_class, UnsootProcedureDialog, verdict);
  gtk_widget_class_bind_template_child (widget_class, UnsootProcedureDialog, use);
  gtk_widget_class_bind_template_callback (widget_class, sides_cb);
  gtk_widget_class_bind_template_callback (widget_class, usual_cb);
  gtk_widget_class_bind_template_callback (widget_class, use_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  unsoot_form_draft_add_hands (widget_class);
}

static void
unsoot_procedure_dialog_init (UnsootProcedureDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  unsoot_access_name_inside (GTK_WIDGET (self->sides), _ ("Which sides"));
  g_signal_connect_object (gtk_text_view_get_buffer (self->text), "changed",
                           G_CALLBACK (changed_cb), self, 0);
  unsoot_form_draft_watch (self->draft, "steps", _ ("The steps"), GTK_WIDGET (self->text));
}

/* How much is poured is each job's own; the checker wants to know that something is. */
static UnsootFamilyFacts *
facts_of (const UnsootFamilyRow *family)
{
  UnsootFamilyFacts *facts = unsoot_family_row_facts (family);

  for (int side = UNSOOT_SIDE_FUEL; side < UNSOOT_SIDES; side++)
    if (facts->dose_ml[side] == 0)
      facts->dose_ml[side] = USUAL_DOSE_ML;
  return facts;
}

GtkWindow *
unsoot_procedure_dialog_open (GtkWidget *over, UnsootSession *session,
                              const UnsootFamilyRow *family)
{
  GtkWidget *window = GTK_WIDGET (gtk_widget_get_root (over));
  UnsootProcedureDialog *self
      = g_object_new (UNSOOT_TYPE_PROCEDURE_DIALOG, "transient-for", window, "default-height",
                      MAX (gtk_widget_get_height (window) - 48, LEAST_HEIGHT), NULL);
  g_autofree char *about = g_strdup_printf (
      _ ("One step a line for %s. The usual order is common practice, no source: put in what comes "
         "off this engine. The vehicle maker’s service information comes first."),
      family->name);

  self->session = g_object_ref (session);
  self->family = unsoot_record_copy (&unsoot_family_row_type, family);
  self->facts = facts_of (family);
  gtk_label_set_text (self->about, about);
  sides_cb (self);
  gtk_window_present (GTK_WINDOW (self));
  return GTK_WINDOW (self);
}
