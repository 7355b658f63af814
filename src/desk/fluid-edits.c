/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fluid-edits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "fluids.h"
#include "format.h"
#include "money.h"
#include "shops.h"
#include "side.h"
#include "trade-error.h"
#include "unit-text.h"

/* Share of order cycles in which a new fluid is not to run short, percent. Common practice, no
 * source. */
#define USUAL_SERVICE_PERCENT 95.0

static char *
real_text (double value, double factor, int decimals)
{
  return isnan (value) ? g_strdup ("") : unsoot_format_number (value * factor, decimals);
}

/* Nothing typed is NAN. */
static gboolean
read_real (const UnsootDeedOrder *order, gsize field, double *value, GError **error)
{
  const char *text = unsoot_deed_text (order, field);

  *value = (double) NAN;
  return text == NULL || unsoot_number_parse (text, value, error);
}

/* What it is called, what it is for, how it is bought and sold. */

enum
{
  CODE,
  NAME,
  SIDE,
  SUPPLIER,
  PRICE,
  SERVICE,
  OPENED,
  FLUID_FIELDS
};

static const UnsootPrefsEdit fluid_edit;

static gboolean
carry_fluid (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &fluid_edit, error);
}

/* In the order of UnsootSide, fuel first. */
static const char *const side_words[] = { N_ ("Fuel side"), N_ ("Intake side"), NULL };

static const UnsootDeedForm fluid_form = {
  .slug = "fluid-stock",
  .title = N_ ("Fluid"),
  .verb = N_ ("Save"),
  .done = N_ ("The fluid is saved"),
  .deed = UNSOOT_DEED_EDIT_FLUID,
  .n_fields = FLUID_FIELDS,
  .fields
  = { [CODE] = { .label = N_ ("Short code"),
                 .hint = N_ ("A letter or two, as it is called across the shop") },
      [NAME] = { .label = N_ ("Name") },
      [SIDE] = { .label = N_ ("For which side"), .kind = UNSOOT_ASK_CHOICE, .words = side_words },
      [SUPPLIER] = { .label = N_ ("Who sends it"), .kind = UNSOOT_ASK_CHOICE },
      [PRICE]
      = { .label = N_ ("Sold, for a litre"), .kind = UNSOOT_ASK_MONEY, .hint = N_ ("Without tax") },
      [SERVICE] = { .label = N_ ("Orders that come in time, %") },
      [OPENED] = { .label = N_ ("Days it keeps once opened"),
                   .kind = UNSOOT_ASK_COUNT,
                   .optional = TRUE,
                   .hint = N_ ("As the label says; empty: until its expiry") } },
  .carry_out = carry_fluid
};

static char *
fluid_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootFluidRow *fluid = record;
  UnsootSide side = UNSOOT_SIDE_FUEL;

  switch (field)
    {
    case CODE:
      return unsoot_record_text (fluid->code);
    case NAME:
      return unsoot_record_text (fluid->name);
    case SIDE:
      unsoot_side_from_slug (fluid->side != NULL ? fluid->side : "fuel", &side);
      return g_strdup_printf ("%d", (int) (side - UNSOOT_SIDE_FUEL));
    case SUPPLIER:
      return g_strdup_printf ("%" G_GINT64_FORMAT, fluid->supplier_id);
    case PRICE:
      return fluid->id != 0 ? unsoot_money_plain (fluid->price_minor, currency) : g_strdup ("");
    case SERVICE:
      return real_text (fluid->service_level, 100, 2);
    default:
      return unsoot_record_number (fluid->opened_days);
    }
}

static gboolean
fluid_apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootFluidRow *fluid = record;
  double service = 0;

  if (!unsoot_number_parse (order->values[SERVICE].text, &service, error))
    return FALSE;
  if (fluid->id == 0)
    fluid->active = TRUE;
  unsoot_record_take (&fluid->code, order, CODE);
  unsoot_record_take (&fluid->name, order, NAME);
  g_free (fluid->side);
  fluid->side = g_strdup (
      unsoot_side_to_slug ((UnsootSide) (order->values[SIDE].number + UNSOOT_SIDE_FUEL)));
  fluid->supplier_id = order->values[SUPPLIER].number;
  fluid->price_minor = order->values[PRICE].number;
  fluid->service_level = service / 100;
  fluid->opened_days = order->values[OPENED].number;
  return TRUE;
}

static gboolean
fluid_save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_fluid_save (db, who, record, error);
}

/* The only field that chooses a record. */
static char *
fluid_chosen (UnsootDb *db, gconstpointer record, gsize field)
{
  const gint64 id = ((const UnsootFluidRow *) record)->supplier_id;
  g_autoptr (UnsootSupplierRow) supplier
      = id != 0 ? unsoot_rows_get (db, &unsoot_supplier_row_type, id, NULL) : NULL;

  return supplier != NULL ? g_strdup (supplier->name) : NULL;
}

static const UnsootPrefsEdit fluid_edit
    = { &fluid_form, &unsoot_fluid_row_type, fluid_text, fluid_apply, fluid_save, fluid_chosen };

GtkWidget *
unsoot_fluid_change_new (UnsootSession *session, const char *label, const UnsootFluidRow *fluid,
                         const GPtrArray *suppliers)
{
  g_autoptr (GPtrArray) from = unsoot_record_choices_new ();
  g_autoptr (UnsootFluidRow) fresh = unsoot_fluid_row_new ();
  GPtrArray *choices[FLUID_FIELDS] = { [SUPPLIER] = from };

  fresh->service_level = USUAL_SERVICE_PERCENT / 100;
  unsoot_record_choices_add (from, 0, _ ("Nobody yet"));
  for (guint i = 0; i < suppliers->len; i++)
    {
      const UnsootSupplierRow *supplier = suppliers->pdata[i];
      unsoot_record_choices_add (from, supplier->id, supplier->name);
    }
  return unsoot_record_button_new (session, &fluid_edit, label, fluid != NULL ? fluid->name : NULL,
                                   fluid != NULL ? fluid : fresh, choices);
}

/* What its safety data sheet says. */

enum
{
  SIGNAL,
  PICTOGRAMS,
  HAZARDS,
  PRECAUTIONS,
  UN_NUMBER,
  SDS_ON,
  HAZARD_FIELDS
};

static const UnsootPrefsEdit hazard_edit;

static gboolean
carry_hazards (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &hazard_edit, error);
}

static const char *const signal_slugs[] = { NULL, "warning", "danger" };
static const char *const signal_words[] = { N_ ("None"), N_ ("Warning"), N_ ("Danger"), NULL };

static const UnsootDeedForm hazard_form = {
  .slug = "fluid-hazards",
  .title = N_ ("What its data sheet says"),
  .verb = N_ ("Save"),
  .done = N_ ("What the data sheet says is saved"),
  .deed = UNSOOT_DEED_EDIT_FLUID,
  .n_fields = HAZARD_FIELDS,
  .fields
  = { [SIGNAL] = { .label = N_ ("Signal word"), .kind = UNSOOT_ASK_CHOICE, .words = signal_words },
      [PICTOGRAMS] = { .label = N_ ("Pictograms"),
                       .optional = TRUE,
                       .hint = N_ ("GHS02 GHS07 …, a space between") },
      [HAZARDS]
      = { .label = N_ ("Hazard statements"), .optional = TRUE, .hint = N_ ("H226 H304 …") },
      [PRECAUTIONS]
      = { .label = N_ ("Precautionary statements"), .optional = TRUE, .hint = N_ ("P210 P280 …") },
      [UN_NUMBER] = { .label = N_ ("UN number"), .optional = TRUE },
      [SDS_ON]
      = { .label = N_ ("Date of the data sheet"), .kind = UNSOOT_ASK_DAY, .optional = TRUE } },
  .carry_out = carry_hazards
};

static char *
hazard_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootFluidRow *fluid = record;

  switch (field)
    {
    case SIGNAL:
      return g_strdup (g_strcmp0 (fluid->signal_word, "danger") == 0    ? "2"
                       : g_strcmp0 (fluid->signal_word, "warning") == 0 ? "1"
                                                                        : "0");
    case PICTOGRAMS:
      return unsoot_record_text (fluid->pictograms);
    case HAZARDS:
      return unsoot_record_text (fluid->h_statements);
    case PRECAUTIONS:
      return unsoot_record_text (fluid->p_statements);
    case UN_NUMBER:
      return unsoot_record_text (fluid->un_number);
    default:
      return unsoot_record_text (fluid->sds_on);
    }
}

static gboolean
hazard_apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootFluidRow *fluid = record;

  g_free (fluid->signal_word);
  fluid->signal_word = g_strdup (signal_slugs[order->values[SIGNAL].number]);
  unsoot_record_take (&fluid->pictograms, order, PICTOGRAMS);
  unsoot_record_take (&fluid->h_statements, order, HAZARDS);
  unsoot_record_take (&fluid->p_statements, order, PRECAUTIONS);
  unsoot_record_take (&fluid->un_number, order, UN_NUMBER);
  unsoot_record_take (&fluid->sds_on, order, SDS_ON);
  return TRUE;
}

static const UnsootPrefsEdit hazard_edit
    = { &hazard_form, &unsoot_fluid_row_type, hazard_text, hazard_apply, fluid_save };

GtkWidget *
unsoot_fluid_hazards_new (UnsootSession *session, const UnsootFluidRow *fluid)
{
  return unsoot_record_button_new (session, &hazard_edit, _ ("Change the hazards…"), fluid->name,
                                   fluid, NULL);
}

/* Its figures, and whether it is used at all. */

enum
{
  FLASH,
  BOILING,
  DENSITY,
  ACTIVE,
  FIGURE_FIELDS
};

static const UnsootPrefsEdit figure_edit;

static gboolean
carry_figures (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &figure_edit, error);
}

static const char *const active_words[] = { N_ ("In use"), N_ ("Not in use"), NULL };

static const UnsootDeedForm figure_form
    = { .slug = "fluid-figures",
        .title = N_ ("Figures of a fluid"),
        .verb = N_ ("Save"),
        .done = N_ ("The fluid is saved"),
        .deed = UNSOOT_DEED_EDIT_FLUID,
        .n_fields = FIGURE_FIELDS,
        .fields = { [FLASH] = { .label = N_ ("Flash point, °C"),
                                .optional = TRUE,
                                .hint = N_ ("From section 9 of its safety data sheet") },
                    [BOILING] = { .label = N_ ("Begins to boil at, °C"), .optional = TRUE },
                    [DENSITY] = { .label = N_ ("Density, kg/m³"), .optional = TRUE },
                    [ACTIVE]
                    = { .label = N_ ("It is"), .kind = UNSOOT_ASK_CHOICE, .words = active_words } },
        .carry_out = carry_figures };

static char *
figure_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootFluidRow *fluid = record;

  switch (field)
    {
    case FLASH:
      return real_text (fluid->flash_point_c, 1, 1);
    case BOILING:
      return real_text (fluid->boiling_point_c, 1, 1);
    case DENSITY:
      return real_text (fluid->density_kg_m3, 1, 1);
    default:
      return g_strdup (fluid->active ? "0" : "1");
    }
}

static gboolean
figure_apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootFluidRow *fluid = record;

  fluid->active = order->values[ACTIVE].number == 0;
  return read_real (order, FLASH, &fluid->flash_point_c, error)
         && read_real (order, BOILING, &fluid->boiling_point_c, error)
         && read_real (order, DENSITY, &fluid->density_kg_m3, error);
}

static const UnsootPrefsEdit figure_edit
    = { &figure_form, &unsoot_fluid_row_type, figure_text, figure_apply, fluid_save };

GtkWidget *
unsoot_fluid_figures_new (UnsootSession *session, const char *label, const UnsootFluidRow *fluid)
{
  return unsoot_record_button_new (session, &figure_edit, label, fluid->name, fluid, NULL);
}
