/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fluid-edits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "fluids.h"
#include "format.h"
#include "money.h"
#include "shops.h"
#include "trade-error.h"
#include "unit-text.h"

/* In what it is bought. */

enum
{
  FLUID,
  SIZE,
  COST,
  PACK_FIELDS
};

static const UnsootPrefsEdit pack_edit;

static gboolean
carry_pack (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &pack_edit, error);
}

static gboolean
drop_pack (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_pack_drop (db, who, order->record, error);
}

static const UnsootDeedForm pack_form
    = { .slug = "pack",
        .title = N_ ("Pack"),
        .verb = N_ ("Save"),
        .done = N_ ("The pack is saved"),
        .deed = UNSOOT_DEED_EDIT_FLUID,
        .n_fields = PACK_FIELDS,
        .fields = { [FLUID] = { .label = N_ ("Of"), .kind = UNSOOT_ASK_CHOICE },
                    [SIZE] = { .label = N_ ("How much is in it"), .kind = UNSOOT_ASK_VOLUME },
                    [COST] = { .label = N_ ("Bought for"), .kind = UNSOOT_ASK_MONEY } },
        .carry_out = carry_pack };
static const UnsootDeedForm pack_drop_form = { .slug = "pack-drop",
                                               .title = N_ ("Take a pack out"),
                                               .verb = N_ ("Take out"),
                                               .done = N_ ("It is no longer bought in that pack"),
                                               .deed = UNSOOT_DEED_EDIT_FLUID,
                                               .destroys = TRUE,
                                               .carry_out = drop_pack };

static char *
pack_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootPackRow *pack = record;

  switch (field)
    {
    case FLUID:
      return g_strdup_printf ("%" G_GINT64_FORMAT, pack->fluid_id);
    case SIZE:
      return pack->ml > 0 ? unsoot_format_litres (pack->ml) : g_strdup ("");
    default:
      return pack->id != 0 ? unsoot_money_plain (pack->cost_minor, currency) : g_strdup ("");
    }
}

static gboolean
pack_apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootPackRow *pack = record;

  pack->fluid_id = order->values[FLUID].number;
  pack->ml = order->values[SIZE].number;
  pack->cost_minor = order->values[COST].number;
  return TRUE;
}

static gboolean
pack_save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_pack_save (db, who, record, error);
}

static const UnsootPrefsEdit pack_edit
    = { &pack_form, &unsoot_pack_row_type, pack_text, pack_apply, pack_save };

static GPtrArray *
only_fluid (const UnsootFluidRow *fluid)
{
  GPtrArray *fluids = unsoot_record_choices_new ();

  unsoot_record_choices_add (fluids, fluid->id, fluid->name);
  return fluids;
}

GtkWidget *
unsoot_pack_row_widget_new (UnsootSession *session, const UnsootFluidRow *fluid,
                            const UnsootPackRow *pack)
{
  g_autoptr (GPtrArray) fluids = only_fluid (fluid);
  GPtrArray *choices[PACK_FIELDS] = { [FLUID] = fluids };
  g_autofree char *size = unsoot_format_litres (pack->ml);
  g_autofree char *cost = unsoot_session_money (session, pack->cost_minor);

  return unsoot_record_row_new (session, &pack_edit, &pack_drop_form, size, cost, pack, choices);
}

GtkWidget *
unsoot_pack_add_new (UnsootSession *session, const UnsootFluidRow *fluid)
{
  g_autoptr (GPtrArray) fluids = only_fluid (fluid);
  g_autoptr (UnsootPackRow) fresh = unsoot_pack_row_new ();
  GPtrArray *choices[PACK_FIELDS] = { [FLUID] = fluids };

  fresh->fluid_id = fluid->id;
  return unsoot_record_button_new (session, &pack_edit, _ ("Add a pack…"), fluid->name, fresh,
                                   choices);
}

/* Who sends them. */

enum
{
  NAME,
  PHONE,
  EMAIL,
  LEAD,
  SPREAD,
  SUPPLIER_FIELDS
};

static const UnsootPrefsEdit supplier_edit;

static gboolean
carry_supplier (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &supplier_edit, error);
}

static const UnsootDeedForm supplier_form
    = { .slug = "supplier",
        .title = N_ ("Supplier"),
        .verb = N_ ("Save"),
        .done = N_ ("The supplier is saved"),
        .deed = UNSOOT_DEED_EDIT_FLUID,
        .n_fields = SUPPLIER_FIELDS,
        .fields = { [NAME] = { .label = N_ ("Name") },
                    [PHONE] = { .label = N_ ("Phone"), .optional = TRUE },
                    [EMAIL] = { .label = N_ ("Email"), .optional = TRUE },
                    [LEAD] = { .label = N_ ("Usual days from order to delivery"),
                               .optional = TRUE,
                               .hint = N_ ("Without them there is no reorder point") },
                    [SPREAD] = { .label = N_ ("Give or take, days"),
                                 .optional = TRUE,
                                 .hint = N_ ("The standard deviation of the same") } },
        .carry_out = carry_supplier };

static char *
days_text (double days)
{
  return isnan (days) ? g_strdup ("") : unsoot_format_number (days, 1);
}

static char *
supplier_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootSupplierRow *supplier = record;

  switch (field)
    {
    case NAME:
      return unsoot_record_text (supplier->name);
    case PHONE:
      return unsoot_record_text (supplier->phone);
    case EMAIL:
      return unsoot_record_text (supplier->email);
    case LEAD:
      return days_text (supplier->lead_days);
    default:
      return days_text (supplier->lead_days_spread);
    }
}

static gboolean
read_days (const UnsootDeedOrder *order, gsize field, double *days, GError **error)
{
  const char *text = unsoot_deed_text (order, field);

  *days = (double) NAN;
  if (text == NULL)
    return TRUE;
  if (!unsoot_number_parse (text, days, error))
    return FALSE;
  if (*days >= 0 && *days <= 365)
    return TRUE;
  g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE,
               _ ("“%s” is no number of days within a year"), text);
  return FALSE;
}

static gboolean
supplier_apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootSupplierRow *supplier = record;

  unsoot_record_take (&supplier->name, order, NAME);
  unsoot_record_take (&supplier->phone, order, PHONE);
  unsoot_record_take (&supplier->email, order, EMAIL);
  return read_days (order, LEAD, &supplier->lead_days, error)
         && read_days (order, SPREAD, &supplier->lead_days_spread, error);
}

static gboolean
supplier_save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_supplier_save (db, who, record, error);
}

static const UnsootPrefsEdit supplier_edit
    = { &supplier_form, &unsoot_supplier_row_type, supplier_text, supplier_apply, supplier_save };

GtkWidget *
unsoot_supplier_row_widget_new (UnsootSession *session, const UnsootSupplierRow *supplier)
{
  g_autoptr (GString) detail = g_string_new (supplier->phone);

  if (!isnan (supplier->lead_days))
    {
      g_autofree char *days = unsoot_format_number (supplier->lead_days, 1);
      g_string_append (detail, detail->len > 0 ? " · " : "");
      /* Translators: a number of days */
      g_string_append_printf (detail, _ ("%s days from order to delivery"), days);
    }
  return unsoot_record_row_new (session, &supplier_edit, NULL, supplier->name, detail->str,
                                supplier, NULL);
}

GtkWidget *
unsoot_supplier_add_new (UnsootSession *session)
{
  g_autoptr (UnsootSupplierRow) fresh = unsoot_supplier_row_new ();

  return unsoot_record_button_new (session, &supplier_edit, _ ("Add a supplier…"), NULL, fresh,
                                   NULL);
}
