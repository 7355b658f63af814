/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop-fixture.h"

#include <glib/gstdio.h>
#include <math.h>
#include <sqlite3.h>

#include "adapters.h"
#include "bookings.h"
#include "customers.h"
#include "families.h"
#include "finishes.h"
#include "fluids.h"
#include "jobs.h"
#include "machines.h"
#include "migrate.h"
#include "procedure-text.h"
#include "prechecks.h"
#include "procedures.h"
#include "quotes.h"
#include "services.h"
#include "shops.h"
#include "staff.h"
#include "stocks.h"
#include "vehicles.h"

static const UnsootActing program = { 0, SHOP_NOW - 30 * SHOP_DAY };

/* One deed that has to succeed. */
#define DO(call)                                                                                   \
  G_STMT_START                                                                                     \
  {                                                                                                \
    GError *error = NULL;                                                                          \
    gboolean done = (call);                                                                        \
    ck_no_error (error);                                                                           \
    ck_assert (done);                                                                              \
  }                                                                                                \
  G_STMT_END

static void
make_shop (TestShop *shop)
{
  static const char *const kinds[] = { "labour", "fluid", "kit", "disposal", "other" };
  g_autoptr (UnsootShopRow) row = unsoot_shop_row_new ();

  row->name = g_strdup ("Alder Row Workshop");
  row->currency = g_strdup ("USD");
  row->paper = g_strdup ("letter");
  row->timezone = g_strdup ("Etc/UTC");
  row->estimate_over_percent = 10.0;
  row->estimate_valid_days = 30;
  row->next_due_months = 12;
  row->next_due_metres = 40000000;
  DO (unsoot_shop_save (shop->db, &program, row, &error));
  for (int weekday = 1; weekday <= 5; weekday++)
    {
      g_autoptr (UnsootOpenHoursRow) hours = unsoot_open_hours_row_new ();
      hours->weekday = weekday;
      hours->opens_minute = 8 * 60;
      hours->closes_minute = 17 * 60;
      DO (unsoot_open_hours_save (shop->db, &program, hours, &error));
    }
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (UnsootTaxRuleRow) rule = unsoot_tax_rule_row_new ();
      gboolean taxed = i == 1 || i == 2 || i == 4;
      rule->line_kind = g_strdup (kinds[i]);
      rule->category = g_strdup (taxed ? "S" : "Z");
      rule->rate_milli_percent = taxed ? 8250 : 0;
      rule->label = g_strdup (taxed ? "Sales tax 8.25 %" : "not taxed here");
      DO (unsoot_tax_rule_save (shop->db, &program, rule, &error));
    }
}

static gint64
add_person (TestShop *shop, const char *name, const char *initials, const char *role)
{
  g_autoptr (UnsootStaffRow) row = unsoot_staff_row_new ();

  row->name = g_strdup (name);
  row->initials = g_strdup (initials);
  row->role = g_strdup (role);
  row->active = TRUE;
  DO (unsoot_staff_save (shop->db, &program, row, &error));
  return row->id;
}

static gint64
add_customer (TestShop *shop, const char *kind, const char *name, const char *number)
{
  g_autoptr (UnsootCustomerRow) row = unsoot_customer_row_new ();
  g_autoptr (GPtrArray) phones
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_phone_row_free);
  UnsootPhoneRow *phone = unsoot_phone_row_new ();

  phone->number = g_strdup (number);
  g_ptr_array_add (phones, phone);
  row->kind = g_strdup (kind);
  row->name = g_strdup (name);
  row->active = TRUE;
  row->reminders_ok = TRUE;
  if (g_str_equal (kind, "fleet"))
    {
      row->po_required = TRUE;
      row->po_limit_minor = 100000;
      row->terms_days = 30;
    }
  if (g_str_equal (kind, "business"))
    {
      row->tax_exempt = TRUE;
      row->tax_exempt_reason = g_strdup ("Farm use");
      row->tax_exempt_number = g_strdup ("F-88");
    }
  DO (unsoot_customer_save (shop->db, &program, row, phones, NULL, &error));
  return row->id;
}

static gint64
add_vehicle (TestShop *shop, gint64 customer, const char *plate, const char *unit)
{
  g_autoptr (UnsootVehicleRow) row = unsoot_vehicle_row_new ();

  row->customer_id = customer;
  row->family_id = shop->family;
  row->make = g_strdup ("Tolver");
  row->model = g_strdup ("H6");
  row->engine = g_strdup ("9.0");
  row->plate = g_strdup (plate);
  row->unit_number = g_strdup (unit);
  row->year = 2019;
  row->gvwr_lb = 30000;
  row->has_egr = TRUE;
  row->active = TRUE;
  DO (unsoot_vehicle_save (shop->db, &program, row, NULL, &error));
  return row->id;
}

static gint64
add_service (TestShop *shop, const char *name, const char *sides)
{
  g_autoptr (UnsootServiceRow) row = unsoot_service_row_new ();

  row->name = g_strdup (name);
  row->sides = g_strdup (sides);
  row->price_minor = 24000;
  row->planned_minutes = 100;
  row->disposal_minor = 1500;
  row->active = TRUE;
  DO (unsoot_service_save (shop->db, &program, row, &error));
  return row->id;
}

static void
add_kit_item (GPtrArray *kit, const char *kind, const char *name, gint64 price)
{
  UnsootKitItemRow *item = unsoot_kit_item_row_new ();

  item->position = kit->len + 1;
  item->kind = g_strdup (kind);
  item->name = g_strdup (name);
  item->quantity = 1;
  item->price_minor = price;
  g_ptr_array_add (kit, item);
}

static gint64
save_procedure (TestShop *shop, const UnsootProcedure *procedure)
{
  GError *error = NULL;
  gint64 id = unsoot_procedure_save (shop->db, &program, shop->family, procedure, &error);

  ck_no_error (error);
  return id;
}

/* The family as its procedure's own text has it, without a dose: that follows the size. */
static void
make_family (TestShop *shop)
{
  g_autofree char *path = g_build_filename (g_getenv ("UNSOOT_SOURCE_DIR"), "data", "demo",
                                            "procedures", "tolver-h6-9-0.txt", NULL);
  g_autoptr (UnsootFamilyRow) row = unsoot_family_row_new ();
  g_autoptr (GPtrArray) kit
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_kit_item_row_free);
  g_autoptr (UnsootProcedure) procedure = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL;
  g_autofree char *text = NULL;

  DO (g_file_get_contents (path, &text, NULL, &error));
  DO (unsoot_procedure_parse (text, &procedure, &facts, &error));
  row->name = g_strdup (facts->name);
  row->make = g_strdup ("Tolver");
  row->engine = g_strdup ("9.0");
  row->size_class = g_strdup ("heavy");
  row->lift_pump = facts->has_lift_pump;
  row->lift_pump_bypass = facts->lift_pump_bypass_allowed;
  row->window_min_pa = facts->window_min_pa;
  row->window_max_pa = facts->window_max_pa;
  row->has_egr = facts->has_egr;
  row->has_egr_cooler = facts->has_egr_cooler;
  row->has_heater = facts->has_heater;
  row->has_regeneration = facts->has_regeneration;
  row->has_road = facts->has_road;
  row->low_points = g_strdup ("charge cooler\nintake elbow");
  add_kit_item (kit, "gasket", "plate gasket", 1850);
  add_kit_item (kit, "filter", "fuel filter", 3200);
  DO (unsoot_family_save (shop->db, &program, row, kit, &error));
  shop->family = row->id;
  shop->procedure = save_procedure (shop, procedure);
}

/* Common practice, no source: 2 L and 4 L for larger engines. */
static void
add_dose_rule (TestShop *shop, const char *side, const char *size, gint64 ml)
{
  g_autoptr (UnsootDoseRuleRow) rule = unsoot_dose_rule_row_new ();

  rule->side = g_strdup (side);
  rule->size_class = g_strdup (size);
  rule->dose_ml = ml;
  rule->source = g_strdup ("common practice");
  DO (unsoot_dose_rule_save (shop->db, &program, rule, &error));
}

static gint64
add_fluid (TestShop *shop, const char *code, const char *name, const char *side, gint64 price)
{
  g_autoptr (UnsootFluidRow) row = unsoot_fluid_row_new ();

  row->code = g_strdup (code);
  row->name = g_strdup (name);
  row->side = g_strdup (side);
  row->price_minor = price;
  row->service_level = 0.95;
  row->active = TRUE;
  DO (unsoot_fluid_save (shop->db, &program, row, &error));
  return row->id;
}

static gint64
add_lot (TestShop *shop, gint64 fluid, const char *code, const char *expires, gint64 ml)
{
  g_autoptr (UnsootLotRow) lot = unsoot_lot_row_new ();

  lot->fluid_id = fluid;
  lot->code = g_strdup (code);
  lot->expires_on = g_strdup (expires);
  DO (unsoot_stock_deliver (shop->db, &program, lot, ml, &error));
  return lot->id;
}

static gint64
add_cart (TestShop *shop, const char *name)
{
  g_autoptr (UnsootMachineRow) row = unsoot_machine_row_new ();
  g_autoptr (UnsootTankRow) tank = unsoot_tank_row_new ();

  row->name = g_strdup (name);
  row->active = TRUE;
  tank->capacity_ml = 8000;
  tank->low_ml = 150;
  DO (unsoot_machine_save (shop->db, &program, row, tank, tank, &error));
  return row->id;
}

static gint64
add_bay (TestShop *shop, const char *name, gint64 position)
{
  g_autoptr (UnsootBayRow) row = unsoot_bay_row_new ();

  row->name = g_strdup (name);
  row->position = position;
  row->active = TRUE;
  DO (unsoot_bay_save (shop->db, &program, row, &error));
  return row->id;
}

/* A kind of adapter for the family, with so many items; returns the first. */
static gint64
add_adapter (TestShop *shop, const char *code, const char *side, int items)
{
  g_autoptr (UnsootAdapterTypeRow) type = unsoot_adapter_type_row_new ();
  g_autoptr (UnsootAdapterFitRow) fit = unsoot_adapter_fit_row_new ();
  gint64 first = 0;

  type->code = g_strdup (code);
  type->name = g_strdup_printf ("%s adapter", side);
  type->side = g_strdup (side);
  DO (unsoot_adapter_type_save (shop->db, &program, type, &error));
  fit->type_id = type->id;
  fit->family_id = shop->family;
  DO (unsoot_adapter_fit_save (shop->db, &program, fit, &error));
  for (int i = 1; i <= items; i++)
    {
      g_autoptr (UnsootAdapterItemRow) item = unsoot_adapter_item_row_new ();
      item->type_id = type->id;
      item->label = g_strdup_printf ("%s/%d", code, i);
      item->bin = g_strdup_printf ("C%d", i);
      item->state = g_strdup ("here");
      DO (unsoot_adapter_item_save (shop->db, &program, item, &error));
      first = first != 0 ? first : item->id;
    }
  return first;
}

static void
make_people (TestShop *shop)
{
  shop->owner = add_person (shop, "Ola Brand", "OB", "owner");
  shop->advisor = add_person (shop, "Mara Quill", "MQ", "advisor");
  shop->clerk = add_person (shop, "Piet Lund", "PL", "clerk");
  shop->technician = add_person (shop, "Tove Aske", "TA", "technician");
  shop->lead = add_person (shop, "Lew Harrow", "LH", "lead");
  shop->person = add_customer (shop, "person", "Ansel Reed", "555-0101");
  shop->fleet = add_customer (shop, "fleet", "Harrow Creek Gravel", "555-0102");
  shop->exempt = add_customer (shop, "business", "Long Acre Farm", "555-0103");
}

static void
make_stores (TestShop *shop)
{
  shop->fuel_fluid = add_fluid (shop, "K", "Fuel fluid K", "fuel", 2600);
  shop->intake_fluid = add_fluid (shop, "R", "Intake fluid R", "intake", 3100);
  shop->fuel_lot = add_lot (shop, shop->fuel_fluid, "K-1", "2025-12-31", 10000);
  shop->intake_lot = add_lot (shop, shop->intake_fluid, "R-1", "2026-03-01", 20000);
  shop->expired_lot = add_lot (shop, shop->intake_fluid, "R-0", "2025-11-01", 5000);
  shop->cart = add_cart (shop, "Cart A");
  shop->other_cart = add_cart (shop, "Cart B");
  shop->bay = add_bay (shop, "Bay 1", 1);
  shop->other_bay = add_bay (shop, "Bay 2", 2);
  shop->fuel_adapter = add_adapter (shop, "F-01", "fuel", 2);
  shop->intake_adapter = add_adapter (shop, "V-07", "intake", 1);
}

static TestShop *
shop_in (const char *path)
{
  TestShop *shop = g_new0 (TestShop, 1);
  GError *error = NULL;

  shop->db = unsoot_db_open (path, UNSOOT_DB_CREATE, &error);
  ck_no_error (error);
  unsoot_migrate (shop->db, SHOP_NOW, &error);
  ck_no_error (error);
  make_shop (shop);
  make_family (shop);
  make_people (shop);
  make_stores (shop);
  add_dose_rule (shop, "fuel", "heavy", 2000);
  add_dose_rule (shop, "intake", "heavy", 4000);
  shop->both = add_service (shop, "Both sides", "both");
  shop->fuel_only = add_service (shop, "Fuel side", "fuel");
  shop->vehicle = add_vehicle (shop, shop->person, "7KD 204", NULL);
  shop->fleet_vehicle = add_vehicle (shop, shop->fleet, NULL, "12");
  shop->exempt_vehicle = add_vehicle (shop, shop->exempt, "FARM 3", NULL);
  return shop;
}

TestShop *
test_shop_new (void)
{
  return shop_in (NULL);
}

TestShop *
test_shop_new_file (void)
{
  char *folder = g_dir_make_tmp ("unsoot-shop-XXXXXX", NULL);
  char *path = g_build_filename (folder, "shop.unsoot", NULL);
  TestShop *shop = shop_in (path);

  shop->folder = folder;
  shop->path = path;
  return shop;
}

static void
remove_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_unlink (path);
    }
  g_rmdir (folder);
}

void
test_outside (TestShop *shop, const char *sql)
{
  sqlite3 *raw = NULL;

  ck_assert_int_eq (sqlite3_open (shop->path, &raw), SQLITE_OK);
  ck_assert_msg (sqlite3_exec (raw, sql, NULL, NULL, NULL) == SQLITE_OK, "%s",
                 sqlite3_errmsg (raw));
  sqlite3_close (raw);
}

void
test_shop_free (TestShop *shop)
{
  unsoot_db_close (shop->db);
  if (shop->folder != NULL)
    remove_folder (shop->folder);
  g_free (shop->folder);
  g_free (shop->path);
  g_free (shop);
}

gint64
test_ask (TestShop *shop, const char *sql)
{
  GError *error = NULL;
  gint64 value = 0;

  unsoot_db_int (shop->db, &value, &error, sql);
  ck_no_error (error);
  return value;
}

char *
test_ask_text (TestShop *shop, const char *sql)
{
  GError *error = NULL;
  char *text = unsoot_db_text (shop->db, &error, sql);

  ck_no_error (error);
  return text;
}

gint64
test_quote (TestShop *shop, gint64 vehicle, const char *po_number)
{
  UnsootActing who = test_as (shop->advisor, 0);
  UnsootQuoteWish wish
      = { .vehicle_id = vehicle, .service_id = shop->both, .po_number = po_number };
  GError *error = NULL;
  gint64 job = unsoot_job_quote (shop->db, &who, &wish, &error);

  ck_no_error (error);
  ck_assert_int_ne (job, 0);
  return job;
}

void
test_authorise (TestShop *shop, gint64 job)
{
  UnsootActing who = test_as (shop->advisor, 600);

  DO (unsoot_job_authorise (shop->db, &who, job, "Ansel Reed", "phone", 0, NULL, NULL, &error));
}

gint64
test_book_job (TestShop *shop, gint64 job, gint64 bay, gint64 cart, gint64 starts)
{
  UnsootActing who = test_as (shop->advisor, 700);
  UnsootBookingWish wish = { .job_id = job,
                             .bay_id = bay,
                             .machine_id = cart,
                             .technician_id = shop->technician,
                             .starts_at = SHOP_NOW + starts };
  GError *error = NULL;
  gint64 booking = unsoot_job_book (shop->db, &who, &wish, &error);

  ck_no_error (error);
  ck_assert_int_ne (booking, 0);
  return booking;
}

void
test_arrive (TestShop *shop, gint64 job, double miles)
{
  UnsootActing who = test_as (shop->advisor, 800);
  UnsootArrival arrival = { .odometer = miles, .odometer_unit = "mi", .hours = (double) NAN };

  DO (unsoot_job_arrive (shop->db, &who, job, &arrival, &error));
  DO (unsoot_job_precheck_rest (shop->db, &who, job, &error));
}

gint64
test_begin (TestShop *shop, gint64 job)
{
  UnsootActing who = test_as (shop->technician, SHOP_HOUR);
  GError *error = NULL;
  gint64 run = unsoot_job_run_begin (shop->db, &who, job, 0, &error);

  ck_no_error (error);
  ck_assert_int_ne (run, 0);
  return run;
}

static void
enter (TestShop *shop, const UnsootRun *run, const UnsootStep *step, UnsootRunEvent *event)
{
  const UnsootRig *rig = unsoot_run_rig (run);

  event->value = step->value;
  if (step->act == UNSOOT_ACT_FILL)
    event->lot_id = step->side == UNSOOT_SIDE_FUEL ? shop->fuel_lot : shop->intake_lot;
  if (step->act == UNSOOT_ACT_MEASURE)
    event->value = 0.0;
  /* A tenth of the dose stays in the tank. */
  if (step->act == UNSOOT_ACT_RUN && step->side != UNSOOT_SIDE_NONE)
    {
      double dose = (double) unsoot_run_facts (run)->dose_ml[step->side];
      event->ml = (gint64) (dose * 0.9 * step->share) - rig->used_ml[step->side];
    }
}

static UnsootRunEvent *
next_event (TestShop *shop, const UnsootRun *run, gint64 at)
{
  g_auto (UnsootRunOffer) offer = { 0 };
  unsoot_run_offer (run, &offer);
  const UnsootStep *step = unsoot_procedure_step (unsoot_run_procedure (run), offer.step);
  UnsootRunEvent *event;

  if (offer.ask_again)
    {
      event = unsoot_run_event_new (UNSOOT_RUN_ASKED_AGAIN, at);
      event->step = offer.ask_step;
      return event;
    }
  if (offer.caution)
    {
      event = unsoot_run_event_new (UNSOOT_RUN_CAUTION, at);
      event->step = step->phase;
      return event;
    }
  ck_assert_msg (offer.may_do, "step %d: %s", offer.step, offer.fault.reason);
  event = unsoot_run_event_new (!offer.timed    ? UNSOOT_RUN_CONFIRM
                                : offer.running ? UNSOOT_RUN_ENDED
                                                : UNSOOT_RUN_STARTED,
                                at);
  event->step = offer.step;
  if (event->kind != UNSOOT_RUN_STARTED)
    enter (shop, run, step, event);
  return event;
}

void
test_walk (TestShop *shop, gint64 run_id, int step)
{
  g_autoptr (UnsootRun) run = unsoot_job_run_load (shop->db, run_id, NULL);

  ck_assert_ptr_nonnull (run);
  while (unsoot_run_current (run) < MIN (step, (int) unsoot_run_procedure (run)->steps->len))
    {
      UnsootActing who = test_as (shop->technician, SHOP_HOUR + 60 * unsoot_run_next_seq (run));
      g_autoptr (UnsootRunEvent) event = next_event (shop, run, who.now);
      UnsootRun *after = NULL;
      DO (unsoot_job_run_post (shop->db, &who, run_id, event, &after, &error));
      unsoot_run_free (run);
      run = after;
    }
}

int
test_find_step (TestShop *shop, gint64 run_id, UnsootAct act, UnsootSubject subject)
{
  g_autoptr (UnsootRun) run = unsoot_job_run_load (shop->db, run_id, NULL);
  const GPtrArray *steps = unsoot_run_procedure (run)->steps;

  for (guint i = 0; i < steps->len; i++)
    {
      const UnsootStep *step = steps->pdata[i];
      if (step->act == act && step->subject == subject)
        return (int) i;
    }
  ck_abort_msg ("no such step");
  return -1;
}

void
test_finish (TestShop *shop, gint64 job)
{
  UnsootActing who = test_as (shop->technician, 4 * SHOP_HOUR);

  DO (unsoot_job_finish (shop->db, &who, job, "Tove Aske", &error));
}

gint64
test_done (TestShop *shop, gint64 vehicle, const char *po_number)
{
  gint64 job = test_quote (shop, vehicle, po_number);

  test_authorise (shop, job);
  test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);
  test_arrive (shop, job, 51000);
  test_walk (shop, test_begin (shop, job), G_MAXINT);
  test_finish (shop, job);
  return job;
}
