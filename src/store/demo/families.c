/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo-private.h"
#include "demo-resource.h"
#include "dose.h"
#include "families.h"
#include "procedure-text.h"
#include "procedures.h"

/* Engine families from their procedures' texts: what a text says of the family is the
 * family, and what its steps replace is the kit. */

static const char *
make_of (char letter)
{
  for (gsize i = 0; i < unsoot_demo_n_models; i++)
    if (unsoot_demo_models[i].family == letter)
      return unsoot_demo_models[i].make;
  return "";
}

static const char *
engine_of (char letter)
{
  for (gsize i = 0; i < unsoot_demo_n_models; i++)
    if (unsoot_demo_models[i].family == letter)
      return unsoot_demo_models[i].engine;
  return "";
}

/* A dose that the size class does not give is the family's own. */
static gint64
own_dose (const UnsootDemoFamily *from, const UnsootFamilyFacts *facts, UnsootSide side)
{
  gsize n = 0;
  const UnsootDoseRule *rules = unsoot_dose_common_practice (&n);

  for (gsize i = 0; i < n; i++)
    if (rules[i].side == side && rules[i].ml == facts->dose_ml[side]
        && g_str_equal (unsoot_size_class_slug (rules[i].size), from->size_class))
      return 0;
  return facts->dose_ml[side];
}

static UnsootFamilyRow *
family_of (const UnsootDemoFamily *from, const UnsootFamilyFacts *facts)
{
  UnsootFamilyRow *family = unsoot_family_row_new ();
  g_autoptr (GString) low_points = g_string_new (NULL);

  for (guint i = 0; i < facts->low_points->len; i++)
    g_string_append_printf (low_points, "%s%s", i > 0 ? "\n" : "",
                            (const char *) facts->low_points->pdata[i]);
  family->name = g_strdup (facts->name);
  family->make = g_strdup (make_of (from->letter));
  family->engine = g_strdup (engine_of (from->letter));
  family->size_class = g_strdup (from->size_class);
  family->displacement_ml = from->displacement_ml;
  family->lift_pump = facts->has_lift_pump;
  family->lift_pump_bypass = facts->lift_pump_bypass_allowed;
  family->window_min_pa = facts->window_min_pa;
  family->window_max_pa = facts->window_max_pa;
  family->fuel_dose_ml = own_dose (from, facts, UNSOOT_SIDE_FUEL);
  family->intake_dose_ml = own_dose (from, facts, UNSOOT_SIDE_INTAKE);
  family->has_egr = facts->has_egr;
  family->has_egr_cooler = facts->has_egr_cooler;
  family->has_heater = facts->has_heater;
  family->has_regeneration = facts->has_regeneration;
  family->has_road = facts->has_road;
  family->low_points = g_strdup (low_points->str);
  return family;
}

/* What the steps replace, each thing once. */
static GPtrArray *
kit_of (const UnsootProcedure *procedure)
{
  GPtrArray *kit = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_kit_item_row_free);

  for (guint i = 0; i < procedure->steps->len; i++)
    {
      const UnsootStep *step = unsoot_procedure_step (procedure, (int) i);
      gboolean filter = step->subject == UNSOOT_SUBJECT_FILTER;

      if (step->act != UNSOOT_ACT_REPLACE || (!filter && step->subject != UNSOOT_SUBJECT_GASKET))
        continue;
      UnsootKitItemRow *item = unsoot_kit_item_row_new ();
      item->position = kit->len;
      item->kind = g_strdup (filter                                  ? "filter"
                             : strstr (step->name, "o-ring") != NULL ? "o-ring"
                                                                     : "gasket");
      item->name = g_strdup (step->name);
      item->name[0] = g_ascii_toupper (item->name[0]);
      item->quantity = 1;
      item->price_minor = filter ? 3800 : 950 + 150 * (gint64) kit->len;
      g_ptr_array_add (kit, item);
    }
  return kit;
}

static gboolean
make_procedure (UnsootDemo *demo, const UnsootDemoFamily *from, GError **error)
{
  UnsootActing lead = unsoot_demo_as (demo, UNSOOT_DEMO_OWNER, demo->now - 436 * UNSOOT_DEMO_DAY);
  g_autofree char *path = g_strdup_printf ("/org/unsoot/Unsoot/demo/procedures/%s.txt", from->file);
  g_autoptr (GBytes) bytes = g_resource_lookup_data (unsoot_demo_get_resource (), path, 0, error);
  g_autoptr (UnsootProcedure) procedure = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL;
  gint64 *family_id = &demo->families[from->letter - 'a'];

  if (bytes == NULL)
    return FALSE;
  g_autofree char *text = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  if (!unsoot_procedure_parse (text, &procedure, &facts, error))
    {
      g_prefix_error (error, "%s: ", path);
      return FALSE;
    }
  if (*family_id == 0)
    {
      g_autoptr (UnsootFamilyRow) family = family_of (from, facts);
      g_autoptr (GPtrArray) kit = kit_of (procedure);

      if (!unsoot_family_save (demo->db, &lead, family, kit, error))
        return FALSE;
      *family_id = family->id;
    }
  return unsoot_procedure_save (demo->db, &lead, *family_id, procedure, error) != 0;
}

gboolean
unsoot_demo_make_families (UnsootDemo *demo, GError **error)
{
  for (gsize i = 0; i < unsoot_demo_n_families; i++)
    if (!make_procedure (demo, &unsoot_demo_families[i], error))
      return FALSE;
  return TRUE;
}
