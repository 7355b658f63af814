/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-cards.h"

#include <glib/gi18n-lib.h>

#include "bookings.h"
#include "prefs-edit.h"

enum
{
  NAME,
  ACTIVE,
  N_FIELDS
};

static const UnsootPrefsEdit edit;

static gboolean
carry_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &edit, error);
}

static const char *const active_words[] = { N_ ("In use"), N_ ("Not in use"), NULL };

static const UnsootDeedForm form = {
  .slug = "bay",
  .title = N_ ("Bay"),
  .verb = N_ ("Save"),
  .done = N_ ("The bay is saved"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .n_fields = N_FIELDS,
  .fields = {
    [NAME] = { .label = N_ ("Name") },
    [ACTIVE] = { .label = N_ ("Stands"), .kind = UNSOOT_ASK_CHOICE, .words = active_words },
  },
  .carry_out = carry_out,
};

static char *
text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootBayRow *bay = record;

  return field == NAME ? g_strdup (bay->name) : g_strdup (bay->active ? "0" : "1");
}

static gboolean
apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootBayRow *bay = record;

  g_free (bay->name);
  bay->name = g_strdup (unsoot_deed_text (order, NAME));
  bay->active = order->values[ACTIVE].number == 0;
  return TRUE;
}

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_bay_save (db, who, record, error);
}

static const UnsootPrefsEdit edit = { &form, &unsoot_bay_row_type, text, apply, save };

void
unsoot_prefs_card_bays (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session)
{
  GtkWidget *list = unsoot_prefs_list_new (_ ("Bays"));

  for (guint i = 0; i < file->bays->len; i++)
    {
      const UnsootBayRow *bay = g_ptr_array_index (file->bays, i);
      gtk_list_box_append (GTK_LIST_BOX (list),
                           unsoot_prefs_row_new (session, &edit, bay->name,
                                                 bay->active ? NULL : _ ("not in use"), NULL, bay));
    }
  unsoot_prefs_list_show (list, card, _ ("None yet. A bay is where a job is done."));
  gtk_box_append (GTK_BOX (card), unsoot_prefs_add_button_new (session, &edit, _ ("Add a bay…")));
}
