/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "adapter-edits.h"

#include <glib/gi18n-lib.h>

#include "adapters.h"
#include "families.h"
#include "money.h"
#include "side.h"

/* Kinds. */

enum
{
  CODE,
  NAME,
  SIDE,
  INSPECT,
  PRICE,
  NOTE,
  TYPE_FIELDS
};

static const UnsootPrefsEdit type_edit;

static gboolean
carry_type (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &type_edit, error);
}

/* In the order of UnsootSide, fuel first. */
static const char *const side_words[] = { N_ ("Fuel side"), N_ ("Intake side"), NULL };

static const UnsootDeedForm type_form = {
  .slug = "adapter-kind",
  .title = N_ ("Kind of adapter"),
  .verb = N_ ("Save"),
  .done = N_ ("The kind of adapter is saved"),
  .deed = UNSOOT_DEED_EDIT_ADAPTER,
  .n_fields = TYPE_FIELDS,
  .fields
  = { [CODE] = { .label = N_ ("Code"), .hint = N_ ("As its tags begin: V-07") },
      [NAME] = { .label = N_ ("What it is") },
      [SIDE] = { .label = N_ ("For which side"), .kind = UNSOOT_ASK_CHOICE, .words = side_words },
      [INSPECT]
      = { .label = N_ ("Days between inspections"), .kind = UNSOOT_ASK_COUNT, .optional = TRUE },
      [PRICE] = { .label = N_ ("Price"), .kind = UNSOOT_ASK_MONEY, .optional = TRUE },
      [NOTE] = { .label = N_ ("Note"), .optional = TRUE } },
  .carry_out = carry_type
};

static char *
type_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootAdapterTypeRow *type = record;
  UnsootSide side = UNSOOT_SIDE_FUEL;

  switch (field)
    {
    case CODE:
      return unsoot_record_text (type->code);
    case NAME:
      return unsoot_record_text (type->name);
    case SIDE:
      unsoot_side_from_slug (type->side != NULL ? type->side : "fuel", &side);
      return g_strdup_printf ("%d", (int) (side - UNSOOT_SIDE_FUEL));
    case INSPECT:
      return unsoot_record_number (type->inspect_days);
    case PRICE:
      return type->price_minor != 0 ? unsoot_money_plain (type->price_minor, currency)
                                    : g_strdup ("");
    default:
      return unsoot_record_text (type->note);
    }
}

static gboolean
type_apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootAdapterTypeRow *type = record;

  unsoot_record_take (&type->code, order, CODE);
  unsoot_record_take (&type->name, order, NAME);
  g_free (type->side);
  type->side = g_strdup (
      unsoot_side_to_slug ((UnsootSide) (order->values[SIDE].number + UNSOOT_SIDE_FUEL)));
  type->inspect_days = order->values[INSPECT].number;
  type->price_minor = order->values[PRICE].number;
  unsoot_record_take (&type->note, order, NOTE);
  return TRUE;
}

static gboolean
type_save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_adapter_type_save (db, who, record, error);
}

static const UnsootPrefsEdit type_edit
    = { &type_form, &unsoot_adapter_type_row_type, type_text, type_apply, type_save };

GtkWidget *
unsoot_adapter_type_change_new (UnsootSession *session, const char *label,
                                const UnsootAdapterTypeRow *type)
{
  g_autoptr (UnsootAdapterTypeRow) fresh = unsoot_adapter_type_row_new ();

  return unsoot_record_button_new (session, &type_edit, label, type != NULL ? type->name : NULL,
                                   type != NULL ? type : fresh, NULL);
}

/* The adapters themselves. */

enum
{
  KIND,
  LABEL,
  BIN,
  INSPECTED,
  CONDITION,
  ITEM_FIELDS
};

static const UnsootPrefsEdit item_edit;

static gboolean
carry_item (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &item_edit, error);
}

static const UnsootDeedForm item_form
    = { .slug = "adapter",
        .title = N_ ("Details of an adapter"),
        .verb = N_ ("Save"),
        .done = N_ ("The adapter is saved"),
        .deed = UNSOOT_DEED_EDIT_ADAPTER,
        .n_fields = ITEM_FIELDS,
        .fields
        = { [KIND] = { .label = N_ ("Kind"), .kind = UNSOOT_ASK_CHOICE },
            [LABEL] = { .label = N_ ("On its tag"), .hint = N_ ("Nothing else bears it: V-07/2") },
            [BIN] = { .label = N_ ("Bin"), .optional = TRUE },
            [INSPECTED] = { .label = N_ ("Inspected last"),
                            .kind = UNSOOT_ASK_DAY,
                            .optional = TRUE,
                            .hint = N_ ("2026-03-31") },
            [CONDITION] = { .label = N_ ("Condition"), .optional = TRUE } },
        .carry_out = carry_item };

static char *
item_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootAdapterItemRow *item = record;

  switch (field)
    {
    case KIND:
      return g_strdup_printf ("%" G_GINT64_FORMAT, item->type_id);
    case LABEL:
      return unsoot_record_text (item->label);
    case BIN:
      return unsoot_record_text (item->bin);
    case INSPECTED:
      return unsoot_record_text (item->inspected_on);
    default:
      return unsoot_record_text (item->condition);
    }
}

static gboolean
item_apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootAdapterItemRow *item = record;

  if (item->id == 0)
    item->state = g_strdup ("here");
  item->type_id = order->values[KIND].number;
  unsoot_record_take (&item->label, order, LABEL);
  unsoot_record_take (&item->bin, order, BIN);
  unsoot_record_take (&item->inspected_on, order, INSPECTED);
  unsoot_record_take (&item->condition, order, CONDITION);
  return TRUE;
}

static gboolean
item_save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_adapter_item_save (db, who, record, error);
}

static char *
type_name (UnsootDb *db, gint64 id)
{
  g_autoptr (UnsootAdapterTypeRow) type
      = unsoot_rows_get (db, &unsoot_adapter_type_row_type, id, NULL);

  return type != NULL ? g_strdup (type->name) : NULL;
}

static char *
item_chosen (UnsootDb *db, gconstpointer record, gsize field)
{
  return type_name (db, ((const UnsootAdapterItemRow *) record)->type_id);
}

static const UnsootPrefsEdit item_edit
    = { &item_form, &unsoot_adapter_item_row_type, item_text, item_apply, item_save, item_chosen };

GtkWidget *
unsoot_adapter_item_change_new (UnsootSession *session, const char *label,
                                const UnsootAdapterItemRow *item, const GPtrArray *types)
{
  g_autoptr (GPtrArray) kinds = unsoot_record_choices_new ();
  g_autoptr (UnsootAdapterItemRow) fresh = unsoot_adapter_item_row_new ();
  GPtrArray *choices[ITEM_FIELDS] = { [KIND] = kinds };

  for (guint i = 0; i < types->len; i++)
    {
      const UnsootAdapterTypeRow *type = types->pdata[i];
      g_autofree char *words = g_strdup_printf ("%s · %s", type->code, type->name);
      unsoot_record_choices_add (kinds, type->id, words);
    }
  return unsoot_record_button_new (session, &item_edit, label, item != NULL ? item->label : NULL,
                                   item != NULL ? item : fresh, choices);
}

/* What they fit. */

enum
{
  OF,
  FAMILY,
  MAKE,
  MODEL,
  ENGINE,
  YEAR_FROM,
  YEAR_TO,
  FIT_FIELDS
};

static const UnsootPrefsEdit fit_edit;

static gboolean
carry_fit (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &fit_edit, error);
}

static gboolean
drop_fit (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_adapter_fit_drop (db, who, order->record, error);
}

static const UnsootDeedForm fit_form = {
  .slug = "adapter-fit",
  .title = N_ ("Something that it fits"),
  .verb = N_ ("Save"),
  .done = N_ ("What it fits is saved"),
  .deed = UNSOOT_DEED_EDIT_ADAPTER,
  .n_fields = FIT_FIELDS,
  .fields
  = { [OF] = { .label = N_ ("Kind"), .kind = UNSOOT_ASK_CHOICE },
      [FAMILY] = { .label = N_ ("Engine family"), .kind = UNSOOT_ASK_CHOICE },
      [MAKE] = { .label = N_ ("Make; empty for all"), .optional = TRUE },
      [MODEL] = { .label = N_ ("Model; empty for all"), .optional = TRUE },
      [ENGINE] = { .label = N_ ("Engine; empty for all"), .optional = TRUE },
      [YEAR_FROM] = { .label = N_ ("From model year"), .kind = UNSOOT_ASK_COUNT, .optional = TRUE },
      [YEAR_TO] = { .label = N_ ("To model year"), .kind = UNSOOT_ASK_COUNT, .optional = TRUE } },
  .carry_out = carry_fit
};
static const UnsootDeedForm fit_drop_form = { .slug = "adapter-fit-drop",
                                              .title = N_ ("It does not fit that"),
                                              .verb = N_ ("Take out"),
                                              .done = N_ ("It is no longer offered for that"),
                                              .deed = UNSOOT_DEED_EDIT_ADAPTER,
                                              .destroys = TRUE,
                                              .carry_out = drop_fit };

static char *
fit_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootAdapterFitRow *fit = record;

  switch (field)
    {
    case OF:
      return g_strdup_printf ("%" G_GINT64_FORMAT, fit->type_id);
    case FAMILY:
      return g_strdup_printf ("%" G_GINT64_FORMAT, fit->family_id);
    case MAKE:
      return unsoot_record_text (fit->make);
    case MODEL:
      return unsoot_record_text (fit->model);
    case ENGINE:
      return unsoot_record_text (fit->engine);
    case YEAR_FROM:
      return unsoot_record_number (fit->year_from);
    default:
      return unsoot_record_number (fit->year_to);
    }
}

static gboolean
fit_apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootAdapterFitRow *fit = record;

  fit->type_id = order->values[OF].number;
  fit->family_id = order->values[FAMILY].number;
  unsoot_record_take (&fit->make, order, MAKE);
  unsoot_record_take (&fit->model, order, MODEL);
  unsoot_record_take (&fit->engine, order, ENGINE);
  fit->year_from = order->values[YEAR_FROM].number;
  fit->year_to = order->values[YEAR_TO].number;
  return TRUE;
}

static gboolean
fit_save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_adapter_fit_save (db, who, record, error);
}

static char *
fit_chosen (UnsootDb *db, gconstpointer record, gsize field)
{
  const UnsootAdapterFitRow *fit = record;
  g_autoptr (UnsootFamilyRow) family = field == FAMILY && fit->family_id != 0
                                           ? unsoot_family_load (db, fit->family_id, NULL)
                                           : NULL;

  if (field == OF)
    return type_name (db, fit->type_id);
  return family != NULL ? g_strdup (family->name) : NULL;
}

static const UnsootPrefsEdit fit_edit
    = { &fit_form, &unsoot_adapter_fit_row_type, fit_text, fit_apply, fit_save, fit_chosen };

static void
add_choices (GPtrArray *kinds, GPtrArray *engines, const UnsootAdapterTypeRow *type,
             const GPtrArray *families)
{
  unsoot_record_choices_add (kinds, type->id, type->name);
  unsoot_record_choices_add (engines, 0, _ ("All"));
  for (guint i = 0; i < families->len; i++)
    {
      const UnsootFamilyRow *family = families->pdata[i];
      unsoot_record_choices_add (engines, family->id, family->name);
    }
}

GtkWidget *
unsoot_fit_row_widget_new (UnsootSession *session, const UnsootAdapterTypeRow *type,
                           const UnsootAdapterFitRow *fit, const char *words,
                           const GPtrArray *families)
{
  g_autoptr (GPtrArray) kinds = unsoot_record_choices_new ();
  g_autoptr (GPtrArray) engines = unsoot_record_choices_new ();
  GPtrArray *choices[FIT_FIELDS] = { [OF] = kinds, [FAMILY] = engines };

  add_choices (kinds, engines, type, families);
  return unsoot_record_row_new (session, &fit_edit, &fit_drop_form, words, NULL, fit, choices);
}

GtkWidget *
unsoot_fit_add_new (UnsootSession *session, const UnsootAdapterTypeRow *type,
                    const GPtrArray *families)
{
  g_autoptr (GPtrArray) kinds = unsoot_record_choices_new ();
  g_autoptr (GPtrArray) engines = unsoot_record_choices_new ();
  g_autoptr (UnsootAdapterFitRow) fresh = unsoot_adapter_fit_row_new ();
  GPtrArray *choices[FIT_FIELDS] = { [OF] = kinds, [FAMILY] = engines };

  fresh->type_id = type->id;
  add_choices (kinds, engines, type, families);
  return unsoot_record_button_new (session, &fit_edit, _ ("Add what it fits…"), type->name, fresh,
                                   choices);
}
