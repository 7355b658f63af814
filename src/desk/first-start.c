/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "first-start.h"

#include <glib/gi18n-lib.h>
#include <langinfo.h>
#include <locale.h>

#include "access.h"
#include "demo-making.h"
#include "new-shop.h"
#include "new-shop-draft.h"
#include "opening.h"
#include "shop-files.h"

enum
{
  LETTER_HEIGHT_MM = 279,
  PROGRESS_INTERVAL_MS = 100
};

struct _UnsootFirstStart
{
  AdwBin parent_instance;

  /* template */
  GtkStack *steps;
  GtkButton *back;
  GtkLabel *trouble;
  GtkWidget *to_shop;
  AdwEntryRow *name;
  AdwEntryRow *town;
  AdwEntryRow *currency;
  AdwComboRow *paper;
  AdwEntryRow *owner;
  AdwPasswordEntryRow *pin;
  GtkLabel *form_trouble;
  GtkWidget *create;
  GtkLabel *making_title;
  GtkProgressBar *progress;

  /* owned */
  GCancellable *cancellable;
  UnsootDemoMaking *making;
  GtkFileChooserNative *chooser;
  guint progress_id;
  UnsootNewShopDraft *draft;

  UnsootWindow *window; /* borrowed: it holds this */
};

G_DEFINE_FINAL_TYPE (UnsootFirstStart, unsoot_first_start, ADW_TYPE_BIN)

static void
say (GtkLabel *label, const char *sentence)
{
  gtk_label_set_text (label, sentence);
  gtk_widget_set_visible (GTK_WIDGET (label), sentence != NULL);
}

static void
show_step (UnsootFirstStart *self, const char *step)
{
  gtk_stack_set_visible_child_name (self->steps, step);
  gtk_widget_set_visible (GTK_WIDGET (self->back), g_str_equal (step, "form"));
}

static void
stop_looking (UnsootFirstStart *self)
{
  g_clear_handle_id (&self->progress_id, g_source_remove);
  g_clear_pointer (&self->making, unsoot_demo_making_unref);
}

static gboolean
progress_cb (gpointer user_data)
{
  UnsootFirstStart *self = user_data;

  if (self->making != NULL)
    gtk_progress_bar_set_fraction (self->progress, unsoot_demo_making_get_share (self->making));
  else
    gtk_progress_bar_pulse (self->progress);
  return G_SOURCE_CONTINUE;
}

static GCancellable *
start_waiting (UnsootFirstStart *self, const char *title, UnsootDemoMaking *making)
{
  stop_looking (self);
  g_clear_object (&self->cancellable);
  self->cancellable = g_cancellable_new ();
  self->making = making;
  gtk_label_set_text (self->making_title, title);
  gtk_progress_bar_set_fraction (self->progress, 0);
  self->progress_id = g_timeout_add (PROGRESS_INTERVAL_MS, progress_cb, self);
  say (self->trouble, NULL);
  show_step (self, "making");
  return self->cancellable;
}

/* Stopped on purpose is no trouble. */
static void
not_opened (UnsootFirstStart *self, const char *step, const GError *error)
{
  const gboolean stopped = g_cancellable_is_cancelled (self->cancellable);

  show_step (self, step);
  say (g_str_equal (step, "form") ? self->form_trouble : self->trouble,
       stopped ? NULL : error->message);
}

static void
open_session (UnsootFirstStart *self, GAsyncResult *result, const char *step, gboolean remember)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (UnsootSession) session = unsoot_opening_finish (result, &error);

  stop_looking (self);
  if (self->window == NULL)
    return;
  if (session == NULL)
    {
      not_opened (self, step, error);
      return;
    }
  if (g_str_equal (step, "form"))
    unsoot_new_shop_draft_done (self->draft);
  if (remember)
    unsoot_shop_files_remember (unsoot_store_get_path (unsoot_session_get_store (session)));
  unsoot_window_set_session (self->window, session);
}

static void
demo_opened_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (UnsootFirstStart) self = user_data;

  open_session (self, result, "choose", FALSE);
}

static void
file_opened_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (UnsootFirstStart) self = user_data;

  open_session (self, result, "choose", TRUE);
}

static void
shop_opened_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (UnsootFirstStart) self = user_data;

  open_session (self, result, "form", TRUE);
}

void
unsoot_first_start_demo (UnsootFirstStart *self)
{
  const gint64 now = g_get_real_time () / G_USEC_PER_SEC;
  g_autofree char *path = unsoot_shop_files_demo (now);
  UnsootDemoMaking *making;

  if (path != NULL)
    {
      unsoot_opening_async (path, 0, TRUE, NULL, NULL, NULL,
                            start_waiting (self, _ ("Opening the demo shop"), NULL), demo_opened_cb,
                            g_object_ref (self));
      return;
    }
  path = unsoot_shop_files_new_demo (now);
  making = unsoot_demo_making_new (now);
  unsoot_opening_async (path, UNSOOT_DB_CREATE, TRUE, unsoot_demo_making_func,
                        unsoot_demo_making_ref (making), (GDestroyNotify) unsoot_demo_making_unref,
                        start_waiting (self, _ ("Making the demo shop"), making), demo_opened_cb,
                        g_object_ref (self));
}

static void
demo_cb (GtkWidget *row, UnsootFirstStart *self)
{
  unsoot_first_start_demo (self);
}

static void
stop_cb (GtkButton *button, UnsootFirstStart *self)
{
  g_cancellable_cancel (self->cancellable);
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, UnsootFirstStart *self)
{
  if (response == GTK_RESPONSE_ACCEPT)
    {
      g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      g_autofree char *path = g_file_get_path (file);

      if (path != NULL)
        unsoot_opening_async (path, UNSOOT_DB_ELSEWHERE, FALSE, NULL, NULL, NULL,
                              start_waiting (self, _ ("Opening the shop"), NULL), file_opened_cb,
                              g_object_ref (self));
      else
        say (self->trouble, _ ("That file is not on this computer. Copy it here first."));
    }
  g_clear_object (&self->chooser);
}

static void
open_cb (GtkWidget *row, UnsootFirstStart *self)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  if (self->chooser != NULL)
    return;
  self->chooser = gtk_file_chooser_native_new (_ ("Open a shop’s file"), GTK_WINDOW (self->window),
                                               GTK_FILE_CHOOSER_ACTION_OPEN, NULL, NULL);
  gtk_file_filter_set_name (filter, _ ("Shops"));
  gtk_file_filter_add_pattern (filter, "*" UNSOOT_SHOP_ENDING);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), filter);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect (self->chooser, "response", G_CALLBACK (chosen_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
new_cb (GtkWidget *row, UnsootFirstStart *self)
{
  say (self->form_trouble, NULL);
  show_step (self, "form");
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}

static void
back_cb (GtkButton *button, UnsootFirstStart *self)
{
  show_step (self, "choose");
}

/* What was typed, on its way to the worker. */
typedef struct
{
  char *name;
  char *town;
  char *currency;
  const char *paper;
  char *owner;
  char *pin;
} Form;

static void
form_free (gpointer data)
{
  Form *form = data;

  g_free (form->name);
  g_free (form->town);
  g_free (form->currency);
  g_free (form->owner);
  g_free (form->pin);
  g_free (form);
}

static char *
typed (gpointer row)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (row))));
}

static gpointer
make_shop (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Form *form = data;
  const UnsootNewShop wish = { .name = form->name,
                               .town = *form->town != '\0' ? form->town : NULL,
                               .currency = form->currency,
                               .paper = form->paper,
                               .owner = form->owner,
                               .pin = form->pin };

  unsoot_new_shop_make (db, &wish, g_get_real_time () / G_USEC_PER_SEC, error);
  return NULL;
}

static void
create_cb (GtkWidget *widget, UnsootFirstStart *self)
{
  g_autofree char *path = unsoot_shop_files_new ();
  Form *form = g_new0 (Form, 1);

  form->name = typed (self->name);
  form->town = typed (self->town);
  form->currency = typed (self->currency);
  form->paper = adw_combo_row_get_selected (self->paper) == 0 ? "letter" : "a4";
  form->owner = typed (self->owner);
  form->pin = typed (self->pin);
  unsoot_opening_async (path, UNSOOT_DB_CREATE, FALSE, make_shop, form, form_free,
                        start_waiting (self, _ ("Opening the new book"), NULL), shop_opened_cb,
                        g_object_ref (self));
}

/* What this computer's language and region would choose. */
static void
propose (UnsootFirstStart *self)
{
  const struct lconv *here = localeconv ();
  g_autofree char *currency
      = here->int_curr_symbol[0] != '\0' ? g_strndup (here->int_curr_symbol, 3) : g_strdup ("USD");
  const int paper_height = (int) (gintptr) nl_langinfo (_NL_PAPER_HEIGHT);

  gtk_editable_set_text (GTK_EDITABLE (self->currency), currency);
  adw_combo_row_set_selected (
      self->paper, here->int_curr_symbol[0] == '\0' || paper_height == LETTER_HEIGHT_MM ? 0 : 1);
}

static void
unsoot_first_start_dispose (GObject *object)
{
  UnsootFirstStart *self = UNSOOT_FIRST_START (object);

  stop_looking (self);
  unsoot_new_shop_draft_leave (self->draft);
  self->window = NULL;
  g_clear_object (&self->cancellable);
  if (self->chooser != NULL)
    gtk_native_dialog_destroy (GTK_NATIVE_DIALOG (self->chooser));
  g_clear_object (&self->chooser);
  G_OBJECT_CLASS (unsoot_first_start_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_FIRST_START);
}

static void
unsoot_first_start_finalize (GObject *object)
{
  g_object_unref (UNSOOT_FIRST_START (object)->draft);
  G_OBJECT_CLASS (unsoot_first_start_parent_class)->finalize (object);
}

static void
unsoot_first_start_class_init (UnsootFirstStartClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_first_start_dispose;
  G_OBJECT_CLASS (klass)->finalize = unsoot_first_start_finalize;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/first-start.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, steps);
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, back);
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, to_shop);
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, name);
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, town);
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, currency);
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, paper);
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, owner);
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, pin);
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, form_trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, create);
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, making_title);
  gtk_widget_class_bind_template_child (widget_class, UnsootFirstStart, progress);
  gtk_widget_class_bind_template_callback (widget_class, new_cb);
  gtk_widget_class_bind_template_callback (widget_class, demo_cb);
  gtk_widget_class_bind_template_callback (widget_class, open_cb);
  gtk_widget_class_bind_template_callback (widget_class, back_cb);
  gtk_widget_class_bind_template_callback (widget_class, create_cb);
  gtk_widget_class_bind_template_callback (widget_class, stop_cb);
}

static void
name_rows (UnsootFirstStart *self)
{
  gpointer const rows[]
      = { self->name, self->town, self->currency, self->paper, self->owner, self->pin };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const char *title = adw_preferences_row_get_title (ADW_PREFERENCES_ROW (rows[i]));
      unsoot_access_name_inside (GTK_WIDGET (rows[i]), title);
    }
}

static char *
paper_text (GtkWidget *row)
{
  return g_strdup_printf ("%u", adw_combo_row_get_selected (ADW_COMBO_ROW (row)));
}

static void
paper_set (GtkWidget *row, const char *text)
{
  adw_combo_row_set_selected (ADW_COMBO_ROW (row), (guint) g_ascii_strtoull (text, NULL, 10));
}

/* All but the PIN. */
static void
begin_draft (UnsootFirstStart *self)
{
  static const UnsootFieldWays paper_ways = { "notify::selected", paper_text, paper_set, FALSE };

  self->draft = unsoot_new_shop_draft_new ();
  unsoot_new_shop_draft_watch (self->draft, "name", GTK_WIDGET (self->name), NULL);
  unsoot_new_shop_draft_watch (self->draft, "town", GTK_WIDGET (self->town), NULL);
  unsoot_new_shop_draft_watch (self->draft, "currency", GTK_WIDGET (self->currency), NULL);
  unsoot_new_shop_draft_watch (self->draft, "paper", GTK_WIDGET (self->paper), &paper_ways);
  unsoot_new_shop_draft_watch (self->draft, "owner", GTK_WIDGET (self->owner), NULL);
  unsoot_new_shop_draft_begin (self->draft);
}

static void
unsoot_first_start_init (UnsootFirstStart *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  unsoot_access_stack (self->steps);
  name_rows (self);
  propose (self);
  begin_draft (self);
}

GtkWidget *
unsoot_first_start_new (UnsootWindow *window, const char *trouble)
{
  UnsootFirstStart *self = g_object_new (UNSOOT_TYPE_FIRST_START, NULL);

  self->window = window;
  say (self->trouble, trouble);
  gtk_widget_set_visible (self->to_shop, unsoot_window_get_session (window) != NULL);
  show_step (self, "choose");
  return GTK_WIDGET (self);
}
