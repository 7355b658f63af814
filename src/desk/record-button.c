/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "record-button.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "access.h"
#include "deed-button.h"
#include "deed-dialog.h"

typedef struct
{
  UnsootSession *session;
  const UnsootPrefsEdit *edit;
  gpointer record;
  char *about;
  GPtrArray *choices[UNSOOT_DEED_FIELDS]; /* NULL: the field's own words */
} Opening;

static void
choice_free (gpointer data)
{
  UnsootRecordChoice *choice = data;

  g_free (choice->name);
  g_free (choice);
}

GPtrArray *
unsoot_record_choices_new (void)
{
  return g_ptr_array_new_with_free_func (choice_free);
}

void
unsoot_record_choices_add (GPtrArray *choices, gint64 id, const char *name)
{
  UnsootRecordChoice *choice = g_new0 (UnsootRecordChoice, 1);

  choice->id = id;
  choice->name = g_strdup (name);
  g_ptr_array_add (choices, choice);
}

static void
opening_free (gpointer data, GClosure *closure)
{
  Opening *opening = data;

  unsoot_record_free (opening->edit->type, opening->record);
  g_object_unref (opening->session);
  g_free (opening->about);
  for (gsize i = 0; i < UNSOOT_DEED_FIELDS; i++)
    g_clear_pointer (&opening->choices[i], g_ptr_array_unref);
  g_free (opening);
}

static void
fill (UnsootDeedDialog *dialog, const Opening *opening)
{
  const UnsootPrefsEdit *edit = opening->edit;
  const char *currency = unsoot_session_get_shop (opening->session)->currency;

  for (gsize i = 0; i < edit->form->n_fields; i++)
    {
      const GPtrArray *choices = opening->choices[i];
      g_autofree char *text = edit->text (opening->record, i, currency);

      for (guint k = 0; choices != NULL && k < choices->len; k++)
        {
          const UnsootRecordChoice *choice = choices->pdata[k];
          unsoot_deed_dialog_add_choice (dialog, i, choice->id, choice->name);
        }
      unsoot_deed_dialog_set_text (dialog, i, text);
    }
}

static void
open_cb (GtkWidget *button, Opening *opening)
{
  const UnsootRecordHead *head = opening->record;
  UnsootDeedDialog *dialog
      = unsoot_deed_dialog_new (button, opening->session, opening->edit->form, head->id);

  if (opening->about != NULL)
    unsoot_deed_dialog_say (dialog, opening->about);
  unsoot_deed_dialog_set_version (dialog, head->version);
  fill (dialog, opening);
  unsoot_deed_dialog_open (dialog);
}

GtkWidget *
unsoot_record_button_new (UnsootSession *session, const UnsootPrefsEdit *edit, const char *label,
                          const char *about, gconstpointer record, GPtrArray *const *choices)
{
  GtkWidget *button = unsoot_deed_button_new (session, edit->form->deed, label, about);
  Opening *opening = g_new0 (Opening, 1);

  opening->session = g_object_ref (session);
  opening->edit = edit;
  opening->record = unsoot_record_copy (edit->type, record);
  opening->about = g_strdup (about);
  for (gsize i = 0; choices != NULL && i < edit->form->n_fields; i++)
    opening->choices[i] = choices[i] != NULL ? g_ptr_array_ref (choices[i]) : NULL;
  g_signal_connect_data (button, "clicked", G_CALLBACK (open_cb), opening, opening_free, 0);
  return button;
}

GtkWidget *
unsoot_record_row_new (UnsootSession *session, const UnsootPrefsEdit *edit,
                       const UnsootDeedForm *drop, const char *title, const char *detail,
                       gconstpointer record, GPtrArray *const *choices)
{
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *button
      = unsoot_record_button_new (session, edit, _ ("Change…"), title, record, choices);
  g_autofree char *escaped = g_markup_escape_text (title, -1);
  g_autofree char *escaped_detail = g_markup_escape_text (detail != NULL ? detail : "", -1);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), escaped);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), escaped_detail);
  unsoot_access_name_row (row, title);
  gtk_widget_add_css_class (button, "flat");
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), button);
  if (drop != NULL)
    unsoot_prefs_row_add_drop (row, session, drop, ((const UnsootRecordHead *) record)->id, title);
  return row;
}

char *
unsoot_record_text (const char *text)
{
  return g_strdup (text != NULL ? text : "");
}

char *
unsoot_record_number (gint64 number)
{
  return number != 0 ? g_strdup_printf ("%" G_GINT64_FORMAT, number) : g_strdup ("");
}

void
unsoot_record_take (char **member, const UnsootDeedOrder *order, gsize field)
{
  g_free (*member);
  *member = g_strdup (unsoot_deed_text (order, field));
}
