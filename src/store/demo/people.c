/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "customers.h"
#include "demo-private.h"
#include "vehicles.h"
#include "vin.h"

/* 42 persons, 15 businesses and three fleets of invented people. */

typedef struct
{
  const char *name;
  const char *contact;
  const char *yard;
  const char *models; /* letters of the families it drives */
  int units;
  gint64 po_limit_minor; /* 0: none */
} Fleet;

static const Fleet fleets[] = {
  { "Harrow Creek Gravel", "Lio Ansgar", "Harrow Creek pit", "aacd", 18, 250000 },
  { "Ferry Line Shuttles", "Nessa Thorne", "Quay yard", "bbb", 14, 0 },
  { "Westmark Orchard Growers", "Ruben Alcott", "Packing house", "acde", 11, 120000 },
};

static const char *const businesses[] = {
  "Osier Garage",       "Candle Row Bakery",  "Pell & Daughter Roofing", "Ninebark Nursery",
  "Tollgate Towing",    "Kiln Street Tiles",  "Saltgrass Plumbing",      "Millrace Boatworks",
  "Low Bridge Fencing", "Gale Tree Care",     "Copperleaf Electric",     "Sedge Hollow Dairy",
  "Old Quay Fisheries", "Larkspur Landscape", "Ferry Road Recovery",
};

static const char *const first_names[] = {
  "Ansa", "Bram",   "Cato",  "Dilys", "Edda",   "Fenn",   "Greta", "Hollis",   "Isolde", "Jory",
  "Keir", "Linnea", "Marek", "Nils",  "Orla",   "Perrin", "Quill", "Rosamund", "Søren",  "Tamsin",
  "Ulla", "Vito",   "Wren",  "Yara",  "Zdeněk", "Łucja",  "Íñigo", "Maëlle",
};

static const char *const last_names[] = {
  "Abelard", "Brook",  "Cask",   "Dunmore", "Elverson", "Fallow",  "Garrick", "Heath",
  "Iverly",  "Jessop", "Kettle", "Lorimer", "Marsh",    "Norwood", "Ostrow",  "Penhale",
  "Quarles", "Rook",   "Sallow", "Tilney",  "Underhay", "Vance",   "Wick",    "Yarrow",
};

static const char *const streets[] = {
  "Ferry Road",   "Alder Lane",   "Kiln Street", "Tollgate Hill", "Quay Row",
  "Millrace Way", "Orchard Rise", "Low Bridge",  "Candle Row",    "Sedge Hollow",
};

#define PICK(demo, array) (array)[g_rand_int_range ((demo)->random, 0, G_N_ELEMENTS (array))]

/* Numbers from 555-0100 to 555-0189 are kept for fiction. */
static GPtrArray *
phones_for (int nth)
{
  GPtrArray *phones = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_phone_row_free);
  UnsootPhoneRow *phone = unsoot_phone_row_new ();

  phone->label = g_strdup ("mobile");
  phone->number = g_strdup_printf ("(%03d) 555-01%02d", 270 + nth / 90, nth % 90);
  g_ptr_array_add (phones, phone);
  return phones;
}

static UnsootAddressRow *
address_new (UnsootDemo *demo, const char *label)
{
  UnsootAddressRow *address = unsoot_address_row_new ();

  address->label = g_strdup (label);
  address->street
      = g_strdup_printf ("%d %s", g_rand_int_range (demo->random, 1, 240), PICK (demo, streets));
  address->town = g_strdup ("Alder Ferry");
  address->region = g_strdup ("Westmark");
  address->postcode = g_strdup_printf ("90%03d", g_rand_int_range (demo->random, 100, 199));
  return address;
}

static char *
plate_new (UnsootDemo *demo)
{
  static const char letters[] = "ABCDEFGHJKLMNPRSTUVWXYZ";
  GRand *r = demo->random;

  return g_strdup_printf ("%d%c%c %03d", g_rand_int_range (r, 1, 10),
                          letters[g_rand_int_range (r, 0, 23)],
                          letters[g_rand_int_range (r, 0, 23)], g_rand_int_range (r, 0, 1000));
}

/* A number as a maker would give it, with the right check digit. Position 7 is a letter
 * from 2010 on, position 10 is the model year. */
static char *
vin_new (UnsootDemo *demo, const UnsootDemoModel *model, int year, int serial)
{
  static const char years[] = "ABCDEFGHJKLMNPRSTVWXY123456789";
  char *vin = g_strdup_printf ("%s%c%c%c%c%c0%cF%06d", model->maker_code, 'A' + model->family - 'a',
                               model->engine[0], 'D', year >= 2010 ? 'E' : '5', 'T',
                               years[(year - 1980) % 30], serial);

  vin[8] = unsoot_vin_check_digit (vin);
  return vin;
}

static const UnsootDemoModel *
model_of (UnsootDemo *demo, char family)
{
  const UnsootDemoModel *found[8];
  int n = 0;

  for (gsize i = 0; i < unsoot_demo_n_models; i++)
    if (unsoot_demo_models[i].family == family)
      found[n++] = &unsoot_demo_models[i];
  return found[g_rand_int_range (demo->random, 0, n)];
}

static int
year_of (UnsootDemo *demo, const UnsootDemoModel *model)
{
  return g_rand_int_range (demo->random, model->first_year, model->last_year + 1);
}

static gboolean
make_vehicle (UnsootDemo *demo, const UnsootCustomerRow *customer, char family,
              const char *unit_number, GError **error)
{
  const UnsootDemoModel *model = model_of (demo, family);
  UnsootActing who = unsoot_demo_as (demo, UNSOOT_DEMO_ADVISOR, demo->now - 430 * UNSOOT_DEMO_DAY);
  g_autoptr (UnsootVehicleRow) row = unsoot_vehicle_row_new ();
  gboolean road = model->gvwr_lb > 0 && model->gvwr_lb < 40000;

  row->customer_id = customer->id;
  row->family_id = demo->families[family - 'a'];
  row->year = year_of (demo, model);
  row->vin = vin_new (demo, model, (int) row->year, 100200 + 37 * (int) demo->vehicles->len);
  row->plate = road ? plate_new (demo) : NULL;
  row->plate_region = road ? g_strdup ("WM") : NULL;
  row->unit_number = g_strdup (unit_number);
  row->make = g_strdup (model->make);
  row->model = g_strdup (model->model);
  row->engine = g_strdup (model->engine);
  row->engine_serial
      = g_strdup_printf ("%c%s-%05d", g_ascii_toupper (model->make[0]), model->engine,
                         g_rand_int_range (demo->random, 10000, 99999));
  row->gvwr_lb = model->gvwr_lb;
  row->has_egr = family != 'e';
  row->has_dpf = model->has_dpf;
  row->active = TRUE;
  if (demo->vehicles->len % 41 == 17)
    {
      row->emission_altered = TRUE;
      row->emission_note = g_strdup ("EGR cooler blocked off when it came to us; owner told");
    }
  if (!unsoot_vehicle_save (demo->db, &who, row, NULL, error))
    return FALSE;

  UnsootDemoVehicle *vehicle = g_new0 (UnsootDemoVehicle, 1);
  vehicle->id = row->id;
  vehicle->customer_id = customer->id;
  vehicle->model = model;
  vehicle->fleet = unit_number != NULL;
  vehicle->hours = !road;
  vehicle->read_at = demo->now - 440 * UNSOOT_DEMO_DAY;
  vehicle->miles_a_day = road ? g_rand_double_range (demo->random, vehicle->fleet ? 60 : 22,
                                                     vehicle->fleet ? 130 : 70)
                              : g_rand_double_range (demo->random, 3, 7);
  vehicle->odometer_mi = road ? (double) g_rand_int_range (demo->random, 38000, 190000)
                              : (double) g_rand_int_range (demo->random, 900, 7000);
  vehicle->contact = g_strdup (customer->contact != NULL ? customer->contact : customer->name);
  g_ptr_array_add (demo->vehicles, vehicle);
  return TRUE;
}

static UnsootCustomerRow *
customer_new (UnsootDemo *demo, const char *kind, const char *name, int nth)
{
  UnsootCustomerRow *customer = unsoot_customer_row_new ();

  customer->kind = g_strdup (kind);
  customer->name = g_strdup (name);
  customer->email = g_strdup_printf ("mail%02d@example.com", nth);
  customer->terms_days = g_str_equal (kind, "person") ? 0 : 30;
  customer->reminders_ok = nth % 3 != 1;
  customer->active = TRUE;
  return customer;
}

static gboolean
save_customer (UnsootDemo *demo, UnsootCustomerRow *customer, int nth, const char *yard,
               GError **error)
{
  UnsootActing who = unsoot_demo_as (demo, UNSOOT_DEMO_ADVISOR, demo->now - 431 * UNSOOT_DEMO_DAY);
  g_autoptr (GPtrArray) phones = phones_for (nth);
  g_autoptr (GPtrArray) addresses
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_address_row_free);

  g_ptr_array_add (addresses, address_new (demo, "billing"));
  if (yard != NULL)
    g_ptr_array_add (addresses, address_new (demo, yard));
  return unsoot_customer_save (demo->db, &who, customer, phones, addresses, error);
}

static gboolean
make_fleet (UnsootDemo *demo, const Fleet *fleet, int nth, GError **error)
{
  g_autoptr (UnsootCustomerRow) customer = customer_new (demo, "fleet", fleet->name, nth);

  customer->contact = g_strdup (fleet->contact);
  customer->po_required = TRUE;
  customer->po_limit_minor = fleet->po_limit_minor;
  customer->reminders_ok = TRUE;
  if (!save_customer (demo, customer, nth, fleet->yard, error))
    return FALSE;
  for (int unit = 0; unit < fleet->units; unit++)
    {
      g_autofree char *number = g_strdup_printf ("%d", unit + 1);
      char family = fleet->models[(gsize) unit % strlen (fleet->models)];

      if (!make_vehicle (demo, customer, family, number, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
make_business (UnsootDemo *demo, const char *name, int nth, GError **error)
{
  g_autoptr (UnsootCustomerRow) customer = customer_new (demo, "business", name, nth);
  int vehicles = g_rand_int_range (demo->random, 1, 4);

  customer->contact = g_strdup_printf ("%s %s", PICK (demo, first_names), PICK (demo, last_names));
  if (nth % 7 == 0)
    {
      customer->tax_exempt = TRUE;
      customer->tax_exempt_reason = g_strdup ("Farm and fishery certificate");
      customer->tax_exempt_number = g_strdup_printf ("WM-EX-%04d", 1000 + nth);
    }
  if (!save_customer (demo, customer, nth, NULL, error))
    return FALSE;
  for (int i = 0; i < vehicles; i++)
    if (!make_vehicle (demo, customer, "abce"[g_rand_int_range (demo->random, 0, 4)], NULL, error))
      return FALSE;
  return TRUE;
}

static gboolean
make_person (UnsootDemo *demo, int nth, GError **error)
{
  /* Both lists are walked with different strides, so that no name comes twice. */
  const char *first = first_names[(gsize) nth * 5 % G_N_ELEMENTS (first_names)];
  const char *last = last_names[(gsize) nth * 7 % G_N_ELEMENTS (last_names)];
  g_autofree char *name = g_strdup_printf ("%s %s", first, last);
  g_autoptr (UnsootCustomerRow) customer = customer_new (demo, "person", name, nth);

  if (!save_customer (demo, customer, nth, NULL, error))
    return FALSE;
  for (int i = 0; i < (nth % 5 == 0 ? 2 : 1); i++)
    if (!make_vehicle (demo, customer, "aabbce"[g_rand_int_range (demo->random, 0, 6)], NULL,
                       error))
      return FALSE;
  return TRUE;
}

gboolean
unsoot_demo_make_people (UnsootDemo *demo, GError **error)
{
  int nth = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (fleets); i++)
    if (!make_fleet (demo, &fleets[i], nth++, error))
      return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (businesses); i++)
    if (!make_business (demo, businesses[i], nth++, error))
      return FALSE;
  for (int i = 0; i < 42; i++)
    if (!make_person (demo, nth++, error))
      return FALSE;
  return TRUE;
}
