/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "adapters.h"
#include "demo-private.h"
#include "fluids.h"
#include "machines.h"
#include "shops.h"
#include "stocks.h"

/* Fluids, adapters and machines: what stands in the shop. */

static gint64
founded (const UnsootDemo *demo)
{
  return demo->now - 436 * UNSOOT_DEMO_DAY;
}

static gboolean
make_fluid (UnsootDemo *demo, const UnsootActing *who, gsize i, const gint64 *suppliers,
            GError **error)
{
  const UnsootDemoFluid *from = &unsoot_demo_fluids[i];
  g_autoptr (UnsootFluidRow) fluid = unsoot_fluid_row_new ();
  g_autoptr (UnsootPackRow) pack = unsoot_pack_row_new ();

  fluid->code = g_strdup (from->code);
  fluid->name = g_strdup (from->name);
  fluid->side = g_strdup (from->side);
  fluid->supplier_id = suppliers[from->supplier];
  fluid->price_minor = from->price_minor;
  fluid->service_level = 0.95;
  fluid->opened_days = 180;
  fluid->flash_point_c = from->flash_point_c;
  fluid->boiling_point_c = from->boiling_point_c;
  fluid->density_kg_m3 = from->density_kg_m3;
  fluid->signal_word = g_strdup (from->signal_word);
  fluid->pictograms = g_strdup (from->pictograms);
  fluid->h_statements = g_strdup (from->h_statements);
  fluid->p_statements = g_strdup (from->p_statements);
  fluid->un_number = g_strdup (from->un_number);
  fluid->sds_on = unsoot_demo_date (demo, -500);
  fluid->active = TRUE;
  if (!unsoot_fluid_save (demo->db, who, fluid, error))
    return FALSE;
  demo->fluids[i] = fluid->id;
  pack->fluid_id = fluid->id;
  pack->ml = from->pack_ml;
  pack->cost_minor = from->pack_cost_minor;
  return unsoot_pack_save (demo->db, who, pack, error);
}

static gboolean
make_fluids (UnsootDemo *demo, const UnsootActing *who, GError **error)
{
  g_autoptr (GPtrArray) rows = unsoot_supplier_list (demo->db, error);
  gint64 suppliers[8] = { 0 };

  if (rows == NULL)
    return FALSE;
  for (guint i = 0; i < rows->len; i++)
    suppliers[i] = ((UnsootSupplierRow *) rows->pdata[i])->id;
  for (gsize i = 0; i < unsoot_demo_n_fluids; i++)
    if (!make_fluid (demo, who, i, suppliers, error))
      return FALSE;
  return TRUE;
}

static gboolean
make_fits (UnsootDemo *demo, const UnsootActing *who, const UnsootDemoAdapter *from, gint64 type_id,
           GError **error)
{
  for (const char *letter = from->families; *letter != '\0'; letter++)
    {
      g_autoptr (UnsootAdapterFitRow) fit = unsoot_adapter_fit_row_new ();

      fit->type_id = type_id;
      fit->family_id = demo->families[*letter - 'a'];
      fit->year_from = from->year_from;
      fit->year_to = from->year_to;
      if (!unsoot_adapter_fit_save (demo->db, who, fit, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
make_items (UnsootDemo *demo, const UnsootActing *who, const UnsootDemoAdapter *from, gsize nth,
            gint64 type_id, GError **error)
{
  for (int i = 0; i < from->items; i++)
    {
      g_autoptr (UnsootAdapterItemRow) item = unsoot_adapter_item_row_new ();

      item->type_id = type_id;
      item->label = g_strdup_printf ("%s/%d", from->code, i + 1);
      item->bin = g_strdup_printf ("%c%d", 'A' + (int) nth / 5, 1 + (int) nth % 5);
      item->state = g_strdup ("here");
      item->inspected_on = unsoot_demo_date (demo, -20 - (int) (nth * 7 + 31 * (gsize) i) % 120);
      item->condition = g_strdup ("good");
      if (!unsoot_adapter_item_save (demo->db, who, item, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
make_adapters (UnsootDemo *demo, const UnsootActing *who, GError **error)
{
  for (gsize i = 0; i < unsoot_demo_n_adapters; i++)
    {
      const UnsootDemoAdapter *from = &unsoot_demo_adapters[i];
      g_autoptr (UnsootAdapterTypeRow) type = unsoot_adapter_type_row_new ();

      type->code = g_strdup (from->code);
      type->name = g_strdup (from->name);
      type->side = g_strdup (from->side);
      type->inspect_days = from->inspect_days;
      type->price_minor = 4500 + 700 * (gint64) i;
      if (!unsoot_adapter_type_save (demo->db, who, type, error)
          || !make_items (demo, who, from, i, type->id, error)
          || !make_fits (demo, who, from, type->id, error))
        return FALSE;
    }
  return TRUE;
}

static UnsootTankRow *
tank_new (const char *side)
{
  UnsootTankRow *tank = unsoot_tank_row_new ();

  tank->side = g_strdup (side);
  tank->capacity_ml = 6000;
  tank->low_ml = 150;
  return tank;
}

static gboolean
make_machines (UnsootDemo *demo, const UnsootActing *who, GError **error)
{
  for (int i = 0; i < 3; i++)
    {
      g_autoptr (UnsootMachineRow) machine = unsoot_machine_row_new ();
      g_autoptr (UnsootTankRow) fuel = tank_new ("fuel");
      g_autoptr (UnsootTankRow) intake = tank_new ("intake");
      g_autoptr (UnsootGaugeCheckRow) check = unsoot_gauge_check_row_new ();

      machine->name = g_strdup_printf ("Cart %c", 'A' + i);
      machine->serial = g_strdup_printf ("AFD-%03d", 11 + i);
      machine->hoses_due_on = unsoot_demo_date (demo, i == 2 ? 6 : 150 + 40 * i);
      machine->active = TRUE;
      if (!unsoot_machine_save (demo->db, who, machine, fuel, intake, error))
        return FALSE;
      demo->machines[i] = machine->id;

      UnsootActing checked
          = unsoot_demo_as (demo, UNSOOT_DEMO_LEAD, demo->now - (160 + 15 * i) * UNSOOT_DEMO_DAY);
      check->machine_id = machine->id;
      check->gauge = g_strdup ("supply pressure");
      check->reference_pa = 55158.058;
      check->reads_pa = 55158.058 + 700.0 * (i - 1);
      check->passed = TRUE;
      check->next_on = unsoot_demo_date (demo, i == 1 ? -1 : 20 + 9 * i);
      if (!unsoot_gauge_check_post (demo->db, &checked, check, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
unsoot_demo_make_stores (UnsootDemo *demo, GError **error)
{
  UnsootActing lead = unsoot_demo_as (demo, UNSOOT_DEMO_OWNER, founded (demo));

  return make_fluids (demo, &lead, error) && make_adapters (demo, &lead, error)
         && make_machines (demo, &lead, error);
}
