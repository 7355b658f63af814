/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-edit.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "access.h"
#include "deed-button.h"
#include "deed-dialog.h"
#include "shops.h"

static const UnsootRecordHead *
head (gconstpointer record)
{
  return record;
}

/* What a person reads where text () has the number of a choice. */
static char *
shown (UnsootDb *db, const UnsootPrefsEdit *edit, gconstpointer record, gsize field,
       const char *currency)
{
  const UnsootDeedField *its = &edit->form->fields[field];
  g_autofree char *text = edit->text (record, field, currency);

  if (its->kind == UNSOOT_ASK_CHOICE && its->words == NULL && edit->chosen != NULL)
    {
      char *name = edit->chosen (db, record, field);
      return name != NULL ? name : g_strdup ("–");
    }
  if (its->kind == UNSOOT_ASK_CHOICE && its->words != NULL)
    return g_strdup (_ (its->words[g_ascii_strtoll (text, NULL, 10)]));
  return *text != '\0' ? g_steal_pointer (&text) : g_strdup ("–");
}

static void
tell_conflict (UnsootDb *db, const UnsootPrefsEdit *edit, gconstpointer theirs, gconstpointer mine,
               const char *currency, GError **error)
{
  g_autoptr (GString) text = g_string_new (_ ("Someone else saved this while it was open here."));

  for (gsize i = 0; i < edit->form->n_fields; i++)
    {
      g_autofree char *their_text = shown (db, edit, theirs, i, currency);
      g_autofree char *my_text = shown (db, edit, mine, i, currency);
      if (g_str_equal (their_text, my_text))
        continue;
      g_string_append_c (text, '\n');
      /* Translators: a field, what someone else saved in it, and what was typed here */
      g_string_append_printf (text, _ ("%s: now %s, here %s."), _ (edit->form->fields[i].label),
                              their_text, my_text);
    }
  g_string_append_c (text, '\n');
  g_string_append (text, _ ("To save it your way, close this and open it again: what you typed "
                            "will stand there."));
  g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONFLICT, text->str);
}

static gboolean
save (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, const UnsootPrefsEdit *edit,
      gpointer record, GError **error)
{
  g_autoptr (UnsootShopRow) shop = NULL;
  gpointer theirs;

  if (!edit->apply (record, order, error))
    return FALSE;
  if (order->record == 0 || head (record)->version == order->version)
    return edit->save (db, who, record, error);
  shop = unsoot_shop_load (db, error);
  theirs = shop != NULL ? unsoot_rows_get (db, edit->type, order->record, error) : NULL;
  if (theirs != NULL)
    tell_conflict (db, edit, theirs, record, shop->currency, error);
  unsoot_record_free (edit->type, theirs);
  return FALSE;
}

gboolean
unsoot_prefs_carry_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order,
                        const UnsootPrefsEdit *edit, GError **error)
{
  gpointer record = order->record != 0 ? unsoot_rows_get (db, edit->type, order->record, error)
                                       : unsoot_record_new (edit->type);
  const gboolean done = record != NULL && save (db, who, order, edit, record, error);

  unsoot_record_free (edit->type, record);
  return done;
}

/* What a row's button opens. */
typedef struct
{
  UnsootSession *session;
  const UnsootPrefsEdit *edit;
  gpointer record; /* NULL: a new one */
  char *about;
} Opening;

static void
opening_free (gpointer data, GClosure *closure)
{
  Opening *opening = data;

  unsoot_record_free (opening->edit->type, opening->record);
  g_object_unref (opening->session);
  g_free (opening->about);
  g_free (opening);
}

static void
open_cb (GtkWidget *button, Opening *opening)
{
  const UnsootPrefsEdit *edit = opening->edit;
  const char *currency = unsoot_session_get_shop (opening->session)->currency;
  UnsootDeedDialog *dialog
      = unsoot_deed_dialog_new (button, opening->session, edit->form,
                                opening->record != NULL ? head (opening->record)->id : 0);

  if (opening->about != NULL)
    unsoot_deed_dialog_say (dialog, opening->about);
  if (opening->record != NULL)
    {
      unsoot_deed_dialog_set_version (dialog, head (opening->record)->version);
      for (gsize i = 0; i < edit->form->n_fields; i++)
        {
          g_autofree char *text = edit->text (opening->record, i, currency);
          unsoot_deed_dialog_set_text (dialog, i, text);
        }
    }
  unsoot_deed_dialog_open (dialog);
}

static GtkWidget *
open_button_new (UnsootSession *session, const UnsootPrefsEdit *edit, const char *label,
                 const char *about, gconstpointer record)
{
  GtkWidget *button = unsoot_deed_button_new (session, edit->form->deed, label, about);
  Opening *opening = g_new0 (Opening, 1);

  opening->session = g_object_ref (session);
  opening->edit = edit;
  opening->record = record != NULL ? unsoot_record_copy (edit->type, record) : NULL;
  opening->about = g_strdup (about);
  g_signal_connect_data (button, "clicked", G_CALLBACK (open_cb), opening, opening_free, 0);
  return button;
}

GtkWidget *
unsoot_prefs_row_new (UnsootSession *session, const UnsootPrefsEdit *edit, const char *title,
                      const char *detail, const char *value, gconstpointer record)
{
  GtkWidget *row = adw_action_row_new ();
  g_autofree char *escaped = g_markup_escape_text (title, -1);
  g_autofree char *escaped_detail = g_markup_escape_text (detail != NULL ? detail : "", -1);
  g_autofree char *name
      = value != NULL ? g_strdup_printf ("%s, %s", title, value) : g_strdup (title);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), escaped);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), escaped_detail);
  unsoot_access_name (row, name);
  if (value != NULL)
    {
      GtkWidget *label = gtk_label_new (value);
      gtk_widget_add_css_class (label, "figures");
      adw_action_row_add_suffix (ADW_ACTION_ROW (row), label);
    }
  if (record != NULL)
    {
      GtkWidget *button = open_button_new (session, edit, _ ("Change…"), title, record);
      gtk_widget_add_css_class (button, "flat");
      adw_action_row_add_suffix (ADW_ACTION_ROW (row), button);
    }
  return row;
}

GtkWidget *
unsoot_prefs_add_button_new (UnsootSession *session, const UnsootPrefsEdit *edit, const char *label)
{
  GtkWidget *button = open_button_new (session, edit, label, NULL, NULL);

  gtk_widget_set_halign (button, GTK_ALIGN_START);
  return button;
}

/* A form that is no record's: its own deed knows what to do. */
typedef struct
{
  UnsootSession *session;
  const UnsootDeedForm *form;
  gint64 id;
  char *about;
} Asking;

static void
asking_free (gpointer data, GClosure *closure)
{
  Asking *asking = data;

  g_object_unref (asking->session);
  g_free (asking->about);
  g_free (asking);
}

static void
ask_cb (GtkWidget *button, Asking *asking)
{
  UnsootDeedDialog *dialog
      = unsoot_deed_dialog_new (button, asking->session, asking->form, asking->id);

  if (asking->about != NULL)
    unsoot_deed_dialog_say (dialog, asking->about);
  unsoot_deed_dialog_open (dialog);
}

GtkWidget *
unsoot_prefs_form_button_new (UnsootSession *session, const UnsootDeedForm *form, const char *label,
                              gint64 id, const char *about)
{
  GtkWidget *button = unsoot_deed_button_new (session, form->deed, label, about);
  Asking *asking = g_new0 (Asking, 1);

  asking->session = g_object_ref (session);
  asking->form = form;
  asking->id = id;
  asking->about = g_strdup (about);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect_data (button, "clicked", G_CALLBACK (ask_cb), asking, asking_free, 0);
  return button;
}

void
unsoot_prefs_row_add_drop (GtkWidget *row, UnsootSession *session, const UnsootDeedForm *form,
                           gint64 id, const char *about)
{
  GtkWidget *button = unsoot_prefs_form_button_new (session, form, _ ("Remove…"), id, about);

  gtk_button_set_icon_name (GTK_BUTTON (button), "user-trash-symbolic");
  gtk_widget_add_css_class (button, "flat");
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), button);
}

void
unsoot_prefs_row_add_change (GtkWidget *row, UnsootSession *session, const UnsootPrefsEdit *edit,
                             const char *label, const char *about, gconstpointer record)
{
  GtkWidget *button = open_button_new (session, edit, label, about, record);

  gtk_widget_add_css_class (button, "flat");
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), button);
}

GtkWidget *
unsoot_prefs_list_new (const char *name)
{
  GtkWidget *list = gtk_list_box_new ();

  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_widget_add_css_class (list, "links");
  unsoot_access_name (list, name);
  return list;
}

void
unsoot_prefs_list_show (GtkWidget *list, UnsootCard *card, const char *empty)
{
  if (gtk_widget_get_first_child (list) != NULL)
    {
      gtk_box_append (GTK_BOX (card), list);
      return;
    }
  g_object_ref_sink (list);
  g_object_unref (list);
  unsoot_card_say (card, empty);
}
