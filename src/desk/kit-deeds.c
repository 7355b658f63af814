/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kit-deeds.h"

#include <glib/gi18n-lib.h>

#include "deed-dialog.h"
#include "families.h"
#include "kit-words.h"
#include "money.h"

/* Saves a family's kit as it is to be from now on. */
static gboolean
save (UnsootDb *db, const UnsootActing *who, gint64 family_id, GPtrArray *kit, GError **error)
{
  g_autoptr (UnsootFamilyRow) family = unsoot_family_load (db, family_id, error);

  return family != NULL && unsoot_family_save (db, who, family, kit, error);
}

static void
fill (UnsootKitItemRow *item, const UnsootDeedOrder *order)
{
  g_free (item->kind);
  item->kind = g_strdup (unsoot_kit_kinds[order->values[0].number].slug);
  g_free (item->name);
  item->name = g_strdup (order->values[1].text);
  item->quantity = order->values[2].number;
  item->price_minor = order->values[3].number;
}

static gboolean
add (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (GPtrArray) kit = unsoot_family_kit (db, order->record, error);
  UnsootKitItemRow *item;

  if (kit == NULL)
    return FALSE;
  item = unsoot_kit_item_row_new ();
  item->family_id = order->record;
  item->position = kit->len > 0
                       ? ((UnsootKitItemRow *) g_ptr_array_index (kit, kit->len - 1))->position + 1
                       : 0;
  fill (item, order);
  g_ptr_array_add (kit, item);
  return save (db, who, order->record, kit, error);
}

/* The kit that a part is of, and where it stands there. */
static GPtrArray *
find_kit (UnsootDb *db, gint64 item_id, guint *at, GError **error)
{
  g_autoptr (UnsootKitItemRow) item
      = unsoot_rows_get (db, &unsoot_kit_item_row_type, item_id, error);
  GPtrArray *kit = item != NULL ? unsoot_family_kit (db, item->family_id, error) : NULL;

  for (*at = 0; kit != NULL && *at < kit->len; (*at)++)
    if (((UnsootKitItemRow *) g_ptr_array_index (kit, *at))->id == item_id)
      break;
  return kit;
}

static gboolean
edit (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  guint at;
  g_autoptr (GPtrArray) kit = find_kit (db, order->record, &at, error);
  UnsootKitItemRow *item;

  if (kit == NULL)
    return FALSE;
  item = g_ptr_array_index (kit, at);
  /* What the form was filled from: if someone saved it meanwhile, nothing is lost. */
  item->version = order->version;
  fill (item, order);
  return save (db, who, item->family_id, kit, error);
}

static gboolean
take_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  guint at;
  g_autoptr (GPtrArray) kit = find_kit (db, order->record, &at, error);
  gint64 family;

  if (kit == NULL)
    return FALSE;
  family = ((UnsootKitItemRow *) g_ptr_array_index (kit, at))->family_id;
  g_ptr_array_remove_index (kit, at);
  return save (db, who, family, kit, error);
}

#define KIT_FIELDS                                                                                 \
  {                                                                                                \
    { .label = N_ ("It is a"), .kind = UNSOOT_ASK_CHOICE },                                        \
        { .label = N_ ("Name"), .kind = UNSOOT_ASK_TEXT },                                         \
        { .label = N_ ("How many"), .kind = UNSOOT_ASK_COUNT },                                    \
    {                                                                                              \
      .label = N_ ("Price of each"), .kind = UNSOOT_ASK_MONEY                                      \
    }                                                                                              \
  }

static const UnsootDeedForm add_form = { .slug = "kit-add",
                                         .title = N_ ("Add a part to a kit"),
                                         .verb = N_ ("Add"),
                                         .done = N_ ("Added to the kit"),
                                         .deed = UNSOOT_DEED_EDIT_FAMILY,
                                         .n_fields = 4,
                                         .fields = KIT_FIELDS,
                                         .carry_out = add };
static const UnsootDeedForm edit_form = { .slug = "kit-edit",
                                          .title = N_ ("Change a part of a kit"),
                                          .verb = N_ ("Save"),
                                          .done = N_ ("Kit saved"),
                                          .deed = UNSOOT_DEED_EDIT_FAMILY,
                                          .n_fields = 4,
                                          .fields = KIT_FIELDS,
                                          .carry_out = edit };
static const UnsootDeedForm remove_form = { .slug = "kit-remove",
                                            .title = N_ ("Take a part out of a kit"),
                                            .verb = N_ ("Take out"),
                                            .done = N_ ("Taken out of the kit"),
                                            .deed = UNSOOT_DEED_EDIT_FAMILY,
                                            .destroys = TRUE,
                                            .carry_out = take_out };

static UnsootDeedDialog *
dialog_new (GtkWidget *over, UnsootSession *session, const UnsootDeedForm *form, gint64 record,
            const char *about)
{
  UnsootDeedDialog *dialog = unsoot_deed_dialog_new (over, session, form, record);

  unsoot_deed_dialog_say (dialog, about);
  for (gsize i = 0; form->n_fields > 0 && unsoot_kit_kinds[i].slug != NULL; i++)
    unsoot_deed_dialog_add_choice (dialog, 0, (gint64) i, _ (unsoot_kit_kinds[i].words));
  return dialog;
}

void
unsoot_kit_add_open (GtkWidget *over, UnsootSession *session, const UnsootFamilyRow *family)
{
  UnsootDeedDialog *dialog = dialog_new (over, session, &add_form, family->id, family->name);

  unsoot_deed_dialog_set_text (dialog, 2, "1");
  unsoot_deed_dialog_open (dialog);
}

void
unsoot_kit_edit_open (GtkWidget *over, UnsootSession *session, const UnsootFamilyRow *family,
                      const UnsootKitItemRow *item)
{
  UnsootDeedDialog *dialog = dialog_new (over, session, &edit_form, item->id, family->name);
  g_autofree char *quantity = g_strdup_printf ("%d", (int) item->quantity);
  g_autofree char *price
      = unsoot_money_plain (item->price_minor, unsoot_session_get_shop (session)->currency);
  int kind = 0;

  unsoot_slug_find (unsoot_kit_kinds, item->kind, &kind);
  unsoot_deed_dialog_set_choice (dialog, 0, kind);
  unsoot_deed_dialog_set_text (dialog, 1, item->name);
  unsoot_deed_dialog_set_text (dialog, 2, quantity);
  unsoot_deed_dialog_set_text (dialog, 3, price);
  unsoot_deed_dialog_set_version (dialog, item->version);
  unsoot_deed_dialog_open (dialog);
}

void
unsoot_kit_remove (GtkWidget *over, UnsootSession *session, const UnsootKitItemRow *item)
{
  unsoot_deed_dialog_open (dialog_new (over, session, &remove_form, item->id, item->name));
}
