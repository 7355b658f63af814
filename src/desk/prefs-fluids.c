/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-cards.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "fluid-row.h"
#include "fluids.h"
#include "format.h"
#include "money.h"
#include "prefs-edit.h"
#include "side.h"
#include "unit-text.h"

enum
{
  CODE,
  NAME,
  SIDE,
  PRICE,
  OPENED,
  FLASH,
  ACTIVE,
  N_FIELDS
};

/* Share of weeks without running out that a new fluid is kept for; common practice, no source. */
static const double usual_service_level = 0.95;

static const UnsootPrefsEdit edit;

static gboolean
carry_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &edit, error);
}

/* In the order of UnsootSide. */
static const char *const side_words[] = { N_ ("Fuel side"), N_ ("Intake side"), NULL };
static const char *const active_words[] = { N_ ("In use"), N_ ("Not in use"), NULL };

static const UnsootDeedForm form = {
  .slug = "fluid",
  .title = N_ ("Fluid"),
  .verb = N_ ("Save"),
  .done = N_ ("The fluid is saved"),
  .deed = UNSOOT_DEED_EDIT_FLUID,
  .n_fields = N_FIELDS,
  .fields = {
    [CODE] = { .label = N_ ("Short code"), .hint = N_ ("A letter or two, as it is called across the shop") },
    [NAME] = { .label = N_ ("Name") },
    [SIDE] = { .label = N_ ("For which side"), .kind = UNSOOT_ASK_CHOICE, .words = side_words },
    [PRICE] = { .label = N_ ("Sold, for a litre"), .kind = UNSOOT_ASK_MONEY, .hint = N_ ("Without tax") },
    [OPENED] = { .label = N_ ("Days it keeps once opened"), .kind = UNSOOT_ASK_COUNT, .optional = TRUE,
                 .hint = N_ ("As the label says; empty: until its expiry") },
    [FLASH] = { .label = N_ ("Flash point"), .optional = TRUE,
                .hint = N_ ("From section 9 of its safety data sheet, as 61 °C or 142 °F") },
    [ACTIVE] = { .label = N_ ("Stands"), .kind = UNSOOT_ASK_CHOICE, .words = active_words },
  },
  .carry_out = carry_out,
};

static UnsootSide
side_of (const UnsootFluidRow *fluid)
{
  UnsootSide side = UNSOOT_SIDE_FUEL;

  unsoot_side_from_slug (fluid->side, &side);
  return side;
}

static char *
flash_text (const UnsootFluidRow *fluid)
{
  g_autofree char *number = NULL;

  if (isnan (fluid->flash_point_c))
    return g_strdup ("");
  number = unsoot_format_number (fluid->flash_point_c, 1);
  return g_strdup_printf ("%s °C", number);
}

static char *
text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootFluidRow *fluid = record;

  switch (field)
    {
    case CODE:
      return g_strdup (fluid->code);
    case NAME:
      return g_strdup (fluid->name);
    case SIDE:
      return g_strdup_printf ("%d", (int) (side_of (fluid) - UNSOOT_SIDE_FUEL));
    case PRICE:
      return unsoot_money_plain (fluid->price_minor, currency);
    case OPENED:
      return fluid->opened_days > 0 ? g_strdup_printf ("%d", (int) fluid->opened_days)
                                    : g_strdup ("");
    case FLASH:
      return flash_text (fluid);
    default:
      return g_strdup (fluid->active ? "0" : "1");
    }
}

static gboolean
apply_flash (UnsootFluidRow *fluid, const char *typed, GError **error)
{
  UnsootTyped flash;

  fluid->flash_point_c = NAN;
  if (typed == NULL)
    return TRUE;
  if (!unsoot_typed_parse (typed, UNSOOT_QUANTITY_TEMPERATURE, UNSOOT_UNIT_CELSIUS, &flash, error))
    return FALSE;
  fluid->flash_point_c = unsoot_unit_from_si (UNSOOT_UNIT_CELSIUS, flash.si);
  return TRUE;
}

static gboolean
apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootFluidRow *fluid = record;

  g_free (fluid->code);
  fluid->code = g_strdup (unsoot_deed_text (order, CODE));
  g_free (fluid->name);
  fluid->name = g_strdup (unsoot_deed_text (order, NAME));
  g_free (fluid->side);
  fluid->side = g_strdup (
      unsoot_side_to_slug ((UnsootSide) (order->values[SIDE].number + UNSOOT_SIDE_FUEL)));
  fluid->price_minor = order->values[PRICE].number;
  fluid->opened_days = order->values[OPENED].number;
  fluid->active = order->values[ACTIVE].number == 0;
  if (fluid->id == 0)
    {
      fluid->service_level = usual_service_level;
      fluid->boiling_point_c = NAN;
      fluid->density_kg_m3 = NAN;
    }
  return apply_flash (fluid, unsoot_deed_text (order, FLASH), error);
}

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_fluid_save (db, who, record, error);
}

static const UnsootPrefsEdit edit = { &form, &unsoot_fluid_row_type, text, apply, save };

void
unsoot_prefs_card_fluids (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session)
{
  GtkWidget *list = unsoot_prefs_list_new (_ ("Fluids"));

  for (guint i = 0; i < file->fluids->len; i++)
    {
      const UnsootFluidRow *fluid = g_ptr_array_index (file->fluids, i);
      g_autofree char *price = unsoot_session_money (session, fluid->price_minor);
      /* Translators: a price for a litre */
      g_autofree char *value = g_strdup_printf (_ ("%s a litre"), price);

      gtk_list_box_append (GTK_LIST_BOX (list),
                           unsoot_prefs_row_new (session, &edit, fluid->name,
                                                 fluid->active ? unsoot_side_label (side_of (fluid))
                                                               : _ ("not in use"),
                                                 value, fluid));
    }
  unsoot_prefs_list_show (list, card, _ ("None yet. Each fluid is for one side only."));
  gtk_box_append (GTK_BOX (card), unsoot_prefs_add_button_new (session, &edit, _ ("Add a fluid…")));
}
