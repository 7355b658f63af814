/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-cards.h"

#include <glib/gi18n-lib.h>

#include "pin-dialog.h"
#include "prefs-edit.h"
#include "role.h"
#include "staff.h"

#include <adwaita.h>

#include "access.h"

enum
{
  NAME,
  INITIALS,
  ROLE,
  PHONE,
  ACTIVE,
  N_FIELDS
};

static const UnsootPrefsEdit edit;

static gboolean
carry_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &edit, error);
}

/* In the order of UnsootRole. */
static const char *const role_words[]
    = { N_ ("Advisor"), N_ ("Clerk"), N_ ("Technician"), N_ ("Lead"), N_ ("Owner"), NULL };
static const char *const active_words[] = { N_ ("Works here"), N_ ("Has left"), NULL };

static const UnsootDeedForm form = {
  .slug = "staff",
  .title = N_ ("Who works here"),
  .verb = N_ ("Save"),
  .done = N_ ("Saved"),
  .deed = UNSOOT_DEED_EDIT_STAFF,
  .n_fields = N_FIELDS,
  .fields = {
    [NAME] = { .label = N_ ("Name") },
    [INITIALS] = { .label = N_ ("Initials") },
    [ROLE] = { .label = N_ ("Role"), .kind = UNSOOT_ASK_CHOICE, .words = role_words },
    [PHONE] = { .label = N_ ("Phone"), .optional = TRUE },
    [ACTIVE] = { .label = N_ ("Stands"), .kind = UNSOOT_ASK_CHOICE, .words = active_words },
  },
  .carry_out = carry_out,
};

static char *
text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootStaffRow *person = record;
  UnsootRole role = UNSOOT_ROLE_ADVISOR;

  switch (field)
    {
    case NAME:
      return g_strdup (person->name);
    case INITIALS:
      return g_strdup (person->initials != NULL ? person->initials : "");
    case ROLE:
      unsoot_role_find (person->role, &role);
      return g_strdup_printf ("%d", (int) role);
    case PHONE:
      return g_strdup (person->phone != NULL ? person->phone : "");
    default:
      return g_strdup (person->active ? "0" : "1");
    }
}

static gboolean
apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootStaffRow *person = record;

  g_free (person->name);
  person->name = g_strdup (unsoot_deed_text (order, NAME));
  g_free (person->initials);
  person->initials = g_strdup (unsoot_deed_text (order, INITIALS));
  g_free (person->role);
  person->role = g_strdup (unsoot_role_slug ((UnsootRole) order->values[ROLE].number));
  g_free (person->phone);
  person->phone = g_strdup (unsoot_deed_text (order, PHONE));
  person->active = order->values[ACTIVE].number == 0;
  return TRUE;
}

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_staff_save (db, who, record, error);
}

static const UnsootPrefsEdit edit = { &form, &unsoot_staff_row_type, text, apply, save };

static void
pin_cb (GtkWidget *button, UnsootSession *session)
{
  const UnsootStaffRow *person = g_object_get_data (G_OBJECT (button), "person");

  unsoot_pin_dialog_open (button, session, person->id, person->name);
}

/* One's own PIN is one's own affair; another's is the owner's. */
static GtkWidget *
pin_button_new (UnsootSession *session, const UnsootStaffRow *person)
{
  const UnsootStaffRow *here = unsoot_session_get_person (session);
  GtkWidget *button
      = gtk_button_new_with_label (person->pin_hash != NULL ? _ ("Change PIN…") : _ ("Set PIN…"));
  g_autofree char *name
      = g_strdup_printf ("%s: %s", gtk_button_get_label (GTK_BUTTON (button)), person->name);
  g_autofree char *refusal = here != NULL && here->id == person->id
                                 ? NULL
                                 : unsoot_session_refusal (session, UNSOOT_DEED_EDIT_STAFF);

  gtk_widget_set_sensitive (button, refusal == NULL);
  gtk_widget_set_tooltip_text (button, refusal);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (button, "flat");
  unsoot_access_name (button, name);
  g_object_set_data_full (G_OBJECT (button), "person",
                          unsoot_record_copy (&unsoot_staff_row_type, person),
                          (GDestroyNotify) unsoot_staff_row_free);
  g_signal_connect_object (button, "clicked", G_CALLBACK (pin_cb), session, 0);
  return button;
}

void
unsoot_prefs_card_staff (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session)
{
  GtkWidget *list = unsoot_prefs_list_new (_ ("Who works here"));

  for (guint i = 0; i < file->staff->len; i++)
    {
      const UnsootStaffRow *person = g_ptr_array_index (file->staff, i);
      UnsootRole role = UNSOOT_ROLE_ADVISOR;
      GtkWidget *row;

      unsoot_role_find (person->role, &role);
      row = unsoot_prefs_row_new (session, &edit, person->name,
                                  person->active ? unsoot_role_words (role) : _ ("has left"), NULL,
                                  person);
      if (person->active)
        adw_action_row_add_suffix (ADW_ACTION_ROW (row), pin_button_new (session, person));
      gtk_list_box_append (GTK_LIST_BOX (list), row);
    }
  gtk_box_append (GTK_BOX (card), list);
  gtk_box_append (GTK_BOX (card), unsoot_prefs_add_button_new (session, &edit, _ ("Add someone…")));
}
