/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bookings.h"
#include "demo-private.h"
#include "service-row.h"
#include "services.h"
#include "shops.h"
#include "staff.h"

/* Long before the first job of the book. */
static gint64
founded (const UnsootDemo *demo)
{
  return demo->now - 440 * UNSOOT_DEMO_DAY;
}

static gboolean
make_shop_row (UnsootDemo *demo, const UnsootActing *who, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_row_new ();

  shop->name = g_strdup ("Alder Ferry Diesel Care");
  shop->street = g_strdup ("14 Ferry Road");
  shop->town = g_strdup ("Alder Ferry");
  shop->region = g_strdup ("Westmark");
  shop->postcode = g_strdup ("90112");
  shop->phone = g_strdup ("(270) 555-0199");
  shop->email = g_strdup ("desk@example.com");
  shop->tax_number = g_strdup ("WM 40-117");
  shop->currency = g_strdup ("USD");
  shop->paper = g_strdup ("letter");
  shop->timezone = g_strdup (demo->zone);
  shop->estimate_over_percent = 10.0;
  shop->estimate_over_minor = 10000;
  shop->estimate_valid_days = 30;
  shop->next_due_months = 12;
  shop->next_due_metres = 48280320; /* 30,000 miles */
  shop->next_due_seconds = 500 * 3600;
  shop->payment_note = g_strdup ("Card or cash at the desk, or by transfer with the invoice's "
                                 "number. Thank you.");
  return unsoot_shop_save (demo->db, who, shop, error);
}

/* Open every day of the week, so that any day can be a busy one. */
static gboolean
make_hours (UnsootDemo *demo, const UnsootActing *who, GError **error)
{
  for (int weekday = 1; weekday <= 7; weekday++)
    {
      g_autoptr (UnsootOpenHoursRow) hours = unsoot_open_hours_row_new ();

      hours->weekday = weekday;
      hours->opens_minute = 7 * 60 + 30;
      hours->closes_minute = 17 * 60 + 30;
      if (!unsoot_open_hours_save (demo->db, who, hours, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
make_suppliers (UnsootDemo *demo, const UnsootActing *who, GError **error)
{
  for (gsize i = 0; i < unsoot_demo_n_suppliers; i++)
    {
      const UnsootDemoSupplier *from = &unsoot_demo_suppliers[i];
      g_autoptr (UnsootSupplierRow) supplier = unsoot_supplier_row_new ();

      supplier->name = g_strdup (from->name);
      supplier->phone = g_strdup (from->phone);
      supplier->lead_days = from->lead_days;
      supplier->lead_days_spread = from->lead_days_spread;
      if (!unsoot_supplier_save (demo->db, who, supplier, error))
        return FALSE;
    }
  return TRUE;
}

/* The first person is the owner, so that the rest is done by someone who may. */
static gboolean
make_staff (UnsootDemo *demo, GError **error)
{
  for (gsize i = 0; i < unsoot_demo_n_staff; i++)
    {
      const UnsootDemoPerson *from = &unsoot_demo_staff[i];
      UnsootActing who
          = { .staff_id = i == 0 ? 0 : demo->staff[UNSOOT_DEMO_OWNER], .now = founded (demo) };
      g_autoptr (UnsootStaffRow) person = unsoot_staff_row_new ();

      person->name = g_strdup (from->name);
      person->initials = g_strdup (from->initials);
      person->role = g_strdup (from->role);
      person->active = TRUE;
      if (!unsoot_staff_save (demo->db, &who, person, error))
        return FALSE;
      demo->staff[i] = person->id;
      who.staff_id = demo->staff[UNSOOT_DEMO_OWNER];
      if (!unsoot_staff_set_pin (demo->db, &who, person->id, from->pin, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
make_services (UnsootDemo *demo, const UnsootActing *who, GError **error)
{
  for (gsize i = 0; i < unsoot_demo_n_services; i++)
    {
      const UnsootDemoService *from = &unsoot_demo_services[i];
      g_autoptr (UnsootServiceRow) service = unsoot_service_row_new ();

      service->name = g_strdup (from->name);
      service->sides = g_strdup (from->sides);
      service->price_minor = from->price_minor;
      service->planned_minutes = from->planned_minutes;
      service->disposal_minor = from->disposal_minor;
      service->active = TRUE;
      if (!unsoot_service_save (demo->db, who, service, error))
        return FALSE;
      demo->services[i] = service->id;
    }
  return TRUE;
}

static gboolean
make_dose_rules (UnsootDemo *demo, const UnsootActing *who, GError **error)
{
  static const struct
  {
    const char *side;
    const char *size;
    gint64 ml;
  } rules[] = {
    { "fuel", "light", 1000 },
    { "fuel", "heavy", 2000 },
    { "intake", "light", 2000 },
    { "intake", "heavy", 4000 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rules); i++)
    {
      g_autoptr (UnsootDoseRuleRow) rule = unsoot_dose_rule_row_new ();

      rule->side = g_strdup (rules[i].side);
      rule->size_class = g_strdup (rules[i].size);
      rule->dose_ml = rules[i].ml;
      rule->source = g_strdup ("common practice, no source");
      if (!unsoot_dose_rule_save (demo->db, who, rule, error))
        return FALSE;
    }
  return TRUE;
}

/* Goods are taxed in Westmark, work is not. */
static gboolean
make_tax_rules (UnsootDemo *demo, const UnsootActing *who, GError **error)
{
  static const struct
  {
    const char *kind;
    const char *category;
    gint64 rate;
    const char *label;
  } rules[] = {
    { "labour", "Z", 0, "Labour" },      { "fluid", "S", 7250, "Sales tax" },
    { "kit", "S", 7250, "Sales tax" },   { "disposal", "Z", 0, "Disposal" },
    { "other", "S", 7250, "Sales tax" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rules); i++)
    {
      g_autoptr (UnsootTaxRuleRow) rule = unsoot_tax_rule_row_new ();

      rule->line_kind = g_strdup (rules[i].kind);
      rule->category = g_strdup (rules[i].category);
      rule->rate_milli_percent = rules[i].rate;
      rule->label = g_strdup (rules[i].label);
      if (!unsoot_tax_rule_save (demo->db, who, rule, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
make_bays (UnsootDemo *demo, const UnsootActing *who, GError **error)
{
  for (gsize i = 0; i < G_N_ELEMENTS (demo->bays); i++)
    {
      g_autoptr (UnsootBayRow) bay = unsoot_bay_row_new ();

      bay->name = i < 3 ? g_strdup_printf ("Bay %d", (int) i + 1) : g_strdup ("Yard stand");
      bay->position = (gint64) i;
      bay->active = TRUE;
      if (!unsoot_bay_save (demo->db, who, bay, error))
        return FALSE;
      demo->bays[i] = bay->id;
    }
  return TRUE;
}

gboolean
unsoot_demo_make_shop (UnsootDemo *demo, GError **error)
{
  UnsootActing nobody = { .staff_id = 0, .now = founded (demo) };

  if (!make_shop_row (demo, &nobody, error) || !make_staff (demo, error))
    return FALSE;

  UnsootActing owner = unsoot_demo_as (demo, UNSOOT_DEMO_OWNER, founded (demo));
  return make_hours (demo, &owner, error) && make_suppliers (demo, &owner, error)
         && make_services (demo, &owner, error) && make_dose_rules (demo, &owner, error)
         && make_tax_rules (demo, &owner, error) && make_bays (demo, &owner, error);
}
