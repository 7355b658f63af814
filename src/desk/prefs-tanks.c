/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-tanks.h"

#include <glib/gi18n-lib.h>

#include "format.h"
#include "machines.h"
#include "side.h"

enum
{
  CAPACITY,
  LOW,
  N_FIELDS
};

static const UnsootPrefsEdit edit;

static gboolean
carry_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &edit, error);
}

static const UnsootDeedForm form = {
  .slug = "machine-tank",
  .title = N_ ("Size of a tank"),
  .verb = N_ ("Save"),
  .done = N_ ("The tank is saved"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .n_fields = N_FIELDS,
  .fields = {
    [CAPACITY] = { .label = N_ ("It holds"), .kind = UNSOOT_ASK_VOLUME,
                   .hint = N_ ("As 4 L or 4 qt; no less than what is in it") },
    [LOW] = { .label = N_ ("Low mark"), .kind = UNSOOT_ASK_VOLUME,
              .hint = N_ ("What is left when the low-level switch ends a run, as 200 mL") },
  },
  .carry_out = carry_out,
};

static char *
text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootTankRow *tank = record;

  return g_strdup_printf ("%d mL", (int) (field == CAPACITY ? tank->capacity_ml : tank->low_ml));
}

static gboolean
apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootTankRow *tank = record;

  tank->capacity_ml = order->values[CAPACITY].number;
  tank->low_ml = order->values[LOW].number;
  return TRUE;
}

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_tank_save (db, who, record, error);
}

static const UnsootPrefsEdit edit = { &form, &unsoot_tank_row_type, text, apply, save };

GtkWidget *
unsoot_prefs_tank_row_new (UnsootSession *session, const UnsootMachineRow *machine,
                           const UnsootTankRow *tank)
{
  UnsootSide side = UNSOOT_SIDE_NONE;
  g_autofree char *holds = unsoot_format_litres (tank->capacity_ml);
  g_autofree char *low = unsoot_format_litres (tank->low_ml);
  /* Translators: two volumes, of one tank */
  g_autofree char *detail = g_strdup_printf (_ ("holds %s, low mark %s"), holds, low);
  g_autofree char *title = NULL;

  unsoot_side_from_slug (tank->side, &side);
  /* Translators: a machine and the side of the engine that its tank is for */
  title = g_strdup_printf (_ ("%s, tank: %s"), machine->name, unsoot_side_label (side));
  return unsoot_prefs_row_new (session, &edit, title, detail, NULL, tank);
}
