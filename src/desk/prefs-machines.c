/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-cards.h"

#include <glib/gi18n-lib.h>

#include "machine-row.h"
#include "machines.h"
#include "prefs-edit.h"
#include "prefs-tanks.h"

/* A machine is added with its two tanks; what they hold is changed in rows of their own. */

enum
{
  NEW_NAME,
  NEW_SERIAL,
  FUEL_CAPACITY,
  FUEL_LOW,
  INTAKE_CAPACITY,
  INTAKE_LOW,
  N_NEW
};

static UnsootTankRow *
tank_of (const UnsootDeedOrder *order, gsize capacity, gsize low)
{
  UnsootTankRow *tank = unsoot_tank_row_new ();

  tank->capacity_ml = order->values[capacity].number;
  tank->low_ml = order->values[low].number;
  return tank;
}

static gboolean
add_machine (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootMachineRow) machine = unsoot_machine_row_new ();
  g_autoptr (UnsootTankRow) fuel = tank_of (order, FUEL_CAPACITY, FUEL_LOW);
  g_autoptr (UnsootTankRow) intake = tank_of (order, INTAKE_CAPACITY, INTAKE_LOW);

  machine->name = g_strdup (unsoot_deed_text (order, NEW_NAME));
  machine->serial = g_strdup (unsoot_deed_text (order, NEW_SERIAL));
  machine->active = TRUE;
  return unsoot_machine_save (db, who, machine, fuel, intake, error);
}

static const UnsootDeedForm add_form = {
  .slug = "machine-add",
  .title = N_ ("New machine"),
  .verb = N_ ("Add"),
  .done = N_ ("The machine is added"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .n_fields = N_NEW,
  .fields = {
    [NEW_NAME] = { .label = N_ ("Name") },
    [NEW_SERIAL] = { .label = N_ ("Serial number"), .optional = TRUE },
    [FUEL_CAPACITY] = { .label = N_ ("Fuel side tank holds"), .kind = UNSOOT_ASK_VOLUME,
                        .hint = N_ ("As 4 L or 4 qt") },
    [FUEL_LOW] = { .label = N_ ("Its low mark"), .kind = UNSOOT_ASK_VOLUME,
                   .hint = N_ ("What is left when the low-level switch ends a run, as 200 mL") },
    [INTAKE_CAPACITY] = { .label = N_ ("Intake side tank holds"), .kind = UNSOOT_ASK_VOLUME },
    [INTAKE_LOW] = { .label = N_ ("Its low mark (intake)"), .kind = UNSOOT_ASK_VOLUME },
  },
  .carry_out = add_machine,
};

enum
{
  NAME,
  SERIAL,
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
  .slug = "machine",
  .title = N_ ("Machine"),
  .verb = N_ ("Save"),
  .done = N_ ("The machine is saved"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .n_fields = N_FIELDS,
  .fields = {
    [NAME] = { .label = N_ ("Name") },
    [SERIAL] = { .label = N_ ("Serial number"), .optional = TRUE },
    [ACTIVE] = { .label = N_ ("Stands"), .kind = UNSOOT_ASK_CHOICE, .words = active_words },
  },
  .carry_out = carry_out,
};

static char *
text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootMachineRow *machine = record;

  switch (field)
    {
    case NAME:
      return g_strdup (machine->name);
    case SERIAL:
      return g_strdup (machine->serial != NULL ? machine->serial : "");
    default:
      return g_strdup (machine->active ? "0" : "1");
    }
}

static gboolean
apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootMachineRow *machine = record;

  g_free (machine->name);
  machine->name = g_strdup (unsoot_deed_text (order, NAME));
  g_free (machine->serial);
  machine->serial = g_strdup (unsoot_deed_text (order, SERIAL));
  machine->active = order->values[ACTIVE].number == 0;
  return TRUE;
}

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_machine_save (db, who, record, NULL, NULL, error);
}

static const UnsootPrefsEdit edit = { &form, &unsoot_machine_row_type, text, apply, save };

static void
add_tanks (GtkWidget *list, const UnsootPrefsFile *file, const UnsootMachineRow *machine,
           UnsootSession *session)
{
  for (guint i = 0; i < file->tanks->len; i++)
    {
      const UnsootTankRow *tank = g_ptr_array_index (file->tanks, i);
      if (tank->machine_id == machine->id)
        gtk_list_box_append (GTK_LIST_BOX (list),
                             unsoot_prefs_tank_row_new (session, machine, tank));
    }
}

void
unsoot_prefs_card_machines (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session)
{
  GtkWidget *list = unsoot_prefs_list_new (_ ("Machines"));

  for (guint i = 0; i < file->machines->len; i++)
    {
      const UnsootMachineRow *machine = g_ptr_array_index (file->machines, i);
      gtk_list_box_append (
          GTK_LIST_BOX (list),
          unsoot_prefs_row_new (session, &edit, machine->name,
                                machine->active ? machine->serial : _ ("not in use"), NULL,
                                machine));
      add_tanks (list, file, machine, session);
    }
  unsoot_prefs_list_show (list, card, _ ("None yet. A machine has a tank for each side."));
  gtk_box_append (GTK_BOX (card),
                  unsoot_prefs_form_button_new (session, &add_form, _ ("Add a machine…"), 0, NULL));
}
