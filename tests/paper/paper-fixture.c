/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-fixture-private.h"

#include <math.h>

#define MORNING PAPER_FIXTURE_MORNING
#define MINUTE 60

UnsootJobFile *
paper_fixture_short (void)
{
  UnsootJobFile *file = paper_fixture_make_base ();

  file->customer->name = g_strdup ("Ida Quist");
  file->vehicle->plate = g_strdup ("7KD 204");
  paper_fixture_add_line (file, "labour", "Intake side clean", 1000, "job", 24000, "offered");
  paper_fixture_add_line (file, "fluid", "Rook Intake Cleaner", 2000, "L", 3150, "offered");
  paper_fixture_add_line (file, "disposal", "Disposal of used fluid", 1000, "job", 1200, "offered");
  paper_fixture_add_estimate (file, 118, 31500, 457);
  paper_fixture_add_phase (file, "Get ready", "maker chocks ventilation");
  paper_fixture_add_step (file, "look", "leaks", NULL, "Look for leaks with card and light", NULL);
  paper_fixture_add_step (file, "take-off", "part", "intake",
                          "Take off the air hose at the charge cooler",
                          "Liquid that stands in it locks the engine")
      ->new_gasket
      = TRUE;
  return file;
}

static void
fill_customer (UnsootJobFile *file)
{
  UnsootPhoneRow *phone = unsoot_phone_row_new ();
  UnsootAddressRow *address = unsoot_address_row_new ();

  file->customer->name
      = g_strdup ("Żółć, Ærø & Señor Ñandú Gravel, Sand and Aggregate Haulage Cooperative");
  file->customer->contact = g_strdup ("Gwenllian Þórðardóttir-Åkesson");
  file->customer->terms_days = 30;
  file->customer->kind = g_strdup ("fleet");
  phone->number = g_strdup ("555 0177");
  phone->label = g_strdup ("yard");
  g_ptr_array_add (file->phones, phone);
  address->label = g_strdup ("billing");
  address->street = g_strdup ("1200 Quarry Approach Road, Building 4, second floor");
  address->town = g_strdup ("Harrow Creek");
  address->region = g_strdup ("Westmark");
  address->postcode = g_strdup ("40233");
  g_ptr_array_add (file->addresses, address);
  file->vehicle->plate = g_strdup ("7KD 204");
  file->vehicle->unit_number = g_strdup ("12");
  file->vehicle->engine_serial = g_strdup ("BR51-0099-4471");
}

static void
fill_meters (UnsootJobFile *file)
{
  UnsootMeterReadingRow *meter = unsoot_meter_reading_row_new ();

  meter->kind = g_strdup ("odometer");
  meter->typed = 120400;
  meter->unit = g_strdup ("mi");
  meter->taken_on = g_strdup ("2026-11-14");
  g_ptr_array_add (file->meters, meter);
}

static void
fill_job (UnsootJobFile *file)
{
  file->job->fuel_dose_ml = 1000;
  file->job->dose_reason
      = g_strdup ("fuel side 1 L: class 3, one-ton; intake side 2 L: class 3, one-ton");
  file->job->complaint = g_strdup (
      "Loses power on the hill out of the quarry, black smoke under load, idles rough when "
      "cold. Driver says it began after the last long idle.");
  file->job->codes = g_strdup ("P0401 P2463 P0299");
  file->job->po_number = g_strdup ("HCG-2026-1187");
  file->job->next_due_on = g_strdup ("2027-11-14");
  file->job->next_due_metres = 233355000;
  file->job->next_due_reason = g_strdup ("12 months or 25 000 mi, the shop's interval");
  file->job->arrived_at = MORNING + 10 * MINUTE;
}

static void
fill_lines (UnsootJobFile *file)
{
  paper_fixture_add_line (file, "labour", "Both sides clean, fuel and intake with EGR cooler", 1000,
                          "job", 46000, "authorised");
  paper_fixture_add_line (file, "fluid", "Heron Fuel Cleaner", 1000, "L", 2875, "authorised");
  paper_fixture_add_line (file, "fluid", "Rook Intake Cleaner", 2000, "L", 3150, "authorised");
  for (int i = 1; i <= 35; i++)
    {
      g_autofree char *text
          = g_strdup_printf ("Gasket set no. %d, inlet manifold to EGR valve, high-temperature "
                             "graphite with steel core, both faces",
                             i);
      paper_fixture_add_line (file, "kit", text, 1000, "pc", 1095 + i, "authorised");
    }
  paper_fixture_add_line (file, "disposal", "Disposal of used fluid and rags", 1500, "L", 800,
                          "authorised");
  paper_fixture_add_line (file, "discount", "Fleet discount", -1000, "job", 5000, "authorised");
  paper_fixture_add_line (file, "labour", "Turbocharger vane check", 1000, "job", 12000,
                          "declined");
  ((UnsootJobLineRow *) g_ptr_array_index (file->lines, file->lines->len - 1))->declined_reason
      = g_strdup ("next visit");
}

static void
fill_authorisation (UnsootJobFile *file)
{
  UnsootAuthorisationRow *given = unsoot_authorisation_row_new ();

  given->by_name = g_strdup ("Gwenllian Þórðardóttir-Åkesson");
  given->how = g_strdup ("phone");
  given->amount_minor = 105000;
  given->at = MORNING - 86400 + 90 * MINUTE;
  given->note = g_strdup ("asked for the old gaskets back");
  g_ptr_array_add (file->authorisations, given);
}

static void
add_adapter (UnsootJobFile *file, const char *side, const char *code, const char *name,
             const char *label, const char *bin)
{
  UnsootJobAdapter *adapter = g_new0 (UnsootJobAdapter, 1);

  adapter->type = unsoot_adapter_type_row_new ();
  adapter->type->side = g_strdup (side);
  adapter->type->code = g_strdup (code);
  adapter->type->name = g_strdup (name);
  if (label != NULL)
    {
      adapter->item = unsoot_adapter_item_row_new ();
      adapter->item->label = g_strdup (label);
      adapter->item->bin = g_strdup (bin);
    }
  g_ptr_array_add (file->adapters, adapter);
}

static void
fill_bay (UnsootJobFile *file)
{
  file->booking = unsoot_booking_row_new ();
  file->booking->starts_at = MORNING + 30 * MINUTE;
  file->booking->ends_at = MORNING + 130 * MINUTE;
  file->bay = unsoot_bay_row_new ();
  file->bay->name = g_strdup ("Bay 2");
  file->machine = unsoot_machine_row_new ();
  file->machine->name = g_strdup ("Cart B");
  file->technician = unsoot_staff_row_new ();
  file->technician->name = g_strdup ("Odalys Brennan");
  file->technician->initials = g_strdup ("OB");
  add_adapter (file, "fuel", "F-02", "Supply and return, 37° flare", "F-02/1", "C4");
  add_adapter (file, "intake", "V-07", "Valve cover plate with wand, EGR port", "V-07/2", "A11");
  add_adapter (file, "intake", "H-19", "Cone for intake hose 76 mm", NULL, NULL);
}

static void
add_kit (UnsootJobFile *file, const char *kind, const char *name, gint64 quantity)
{
  UnsootKitItemRow *item = unsoot_kit_item_row_new ();

  item->kind = g_strdup (kind);
  item->name = g_strdup (name);
  item->quantity = quantity;
  g_ptr_array_add (file->kit, item);
}

static void
fill_family (UnsootJobFile *file)
{
  file->family = unsoot_family_row_new ();
  file->family->name = g_strdup ("Brindle T4 5.1");
  file->family->window_min_pa = 6 * 6894.757293168361;
  file->family->window_max_pa = 10 * 6894.757293168361;
  add_kit (file, "gasket", "EGR valve to manifold", 2);
  add_kit (file, "o-ring", "Charge cooler pipe, 76 mm", 1);
  add_kit (file, "filter", "Fuel filter", 1);
  file->fuel_fluid
      = paper_fixture_make_fluid ("fuel", "Heron Fuel Cleaner", "H", "GHS02 GHS07 GHS08 GHS09",
                                  "danger", "H226 H304 H315 H336 H411");
  file->fuel_lot = paper_fixture_make_lot (31, "HN-4471");
  file->intake_lot = paper_fixture_make_lot (32, "RK-0209");
}

static void
fill_steps_of (UnsootJobFile *file, int phase)
{
  static const char *const whys[]
      = { NULL, "The engine must draw from one source only", NULL,
          "Liquid standing in a low pipe locks a piston: never start before it is drained" };

  for (int i = 0; i < 9; i++)
    {
      const int number = phase * 10 + i;
      g_autofree char *wording = g_strdup_printf (
          number % 4 == 1
              ? "Step %d wording: part the vehicle's own supply hose at the filter head, "
                "catch what runs out, cap both ends and hang the hose clear of belts and "
                "fan before anything else is touched"
              : "Step %d wording: take off the intake hose",
          number);
      paper_fixture_add_step (file, i % 2 ? "part" : "take-off", i % 2 ? "line" : "part",
                              phase % 2 ? "fuel" : "intake", wording, whys[number % 4]);
    }
}

static void
fill_procedure (UnsootJobFile *file)
{
  static const char *const titles[] = { "Get ready",
                                        "Fuel side",
                                        "Intake side, through the valve",
                                        "Intake side, through the EGR cooler",
                                        "Put everything back",
                                        "Road test" };
  UnsootStepRow *step;

  file->procedure = unsoot_procedure_row_new ();
  file->procedure->title = g_strdup ("Fuel and intake, adapter at the valve");
  file->procedure->number = 3;
  for (int phase = 0; phase < 6; phase++)
    {
      paper_fixture_add_phase (file, titles[phase],
                               phase == 0   ? "maker ventilation chocks in-reach"
                               : phase == 2 ? "fuel-fire hot-parts eyes-skin"
                                            : NULL);
      fill_steps_of (file, phase);
      step = paper_fixture_add_step (file, phase % 2 ? "run" : "set", phase % 2 ? "engine" : "air",
                                     phase % 2 ? "fuel" : "intake",
                                     "Set the air, or run to the mark", NULL);
      step->value = phase % 2 ? NAN : 40 * 6894.757293168361;
      step->unit = g_strdup (phase % 2 ? NULL : "psi");
      step->share = phase % 2 ? 0.5 : NAN;
      step->minutes = phase % 2 ? 22.5 : NAN;
      step->low_level = phase % 2;
    }
}

static void
add_event (UnsootJobFile *file, const char *kind, gint64 step, gint64 minute, double value,
           gint64 ml)
{
  UnsootRunEventRow *event = unsoot_run_event_row_new ();

  event->seq = file->run_events->len + 1;
  event->kind = g_strdup (kind);
  event->step = step;
  event->at = MORNING + minute * MINUTE;
  event->done_at = event->at;
  event->value = value;
  event->ml = ml;
  g_ptr_array_add (file->run_events, event);
}

static void
add_move (UnsootJobFile *file, gint64 lot_id, gint64 ml)
{
  UnsootStockMoveRow *move = unsoot_stock_move_row_new ();

  move->lot_id = lot_id;
  move->kind = g_strdup ("use");
  move->ml = ml;
  g_ptr_array_add (file->stock_moves, move);
}

static void
fill_run (UnsootJobFile *file)
{
  file->run = unsoot_run_row_new ();
  file->run->began_at = MORNING + 40 * MINUTE;
  file->run->ended_at = MORNING + 125 * MINUTE;
  file->run->signature = g_strdup ("Odalys Brennan");
  file->run->outcome = g_strdup ("finished");
  for (int i = 0; i < 50; i++)
    add_event (file, "confirm", i, 41 + i, i == 9 ? 40 * 6894.757293168361 : NAN,
               i == 19 ? 510 : -1);
  add_move (file, 31, -1000);
  add_move (file, 32, -1960);
}

static void
add_reading (UnsootJobFile *file, const char *stage, const char *kind, double value, double rpm)
{
  UnsootReadingRow *reading = unsoot_reading_row_new ();

  reading->stage = g_strdup (stage);
  reading->kind = g_strdup (kind);
  reading->value = value;
  reading->rpm = rpm;
  reading->load_percent = 40;
  reading->coolant_c = 84;
  reading->egr_state = g_strdup ("shut");
  reading->barometer_pa = 99400;
  reading->ambient_c = 12;
  reading->at = MORNING + (g_str_equal (stage, "before") ? 20 : 120) * MINUTE;
  reading->instrument = g_str_equal (kind, "opacity") ? g_strdup ("Smoke meter SM-2") : NULL;
  reading->tolerance = g_str_equal (kind, "opacity") ? 1.5 : NAN;
  g_ptr_array_add (file->readings, reading);
}

static void
fill_readings (UnsootJobFile *file)
{
  add_reading (file, "before", "opacity", 38, 2000);
  add_reading (file, "after", "opacity", 14, 2000);
  add_reading (file, "before", "air-idle", 0.0185, 700);
  add_reading (file, "after", "air-idle", 0.0189, 700);
  add_reading (file, "before", "boost", 110316, 2200);
  add_reading (file, "after", "boost", 126174, 2400);
  add_reading (file, "before", "egr-error", -6, 1500);
  add_reading (file, "after", "egr-error", -2, 1500);
  add_reading (file, "before", "dpf", 5200, 2000);
}

static void
add_photo (UnsootJobFile *file, const char *angle, const char *stage, int width, int height)
{
  UnsootPhotoRow *photo = unsoot_photo_row_new ();

  photo->angle = g_strdup (angle);
  photo->stage = g_strdup (stage);
  photo->width = width;
  photo->height = height;
  photo->chosen = TRUE;
  photo->jpeg = paper_fixture_picture (width, height, g_str_equal (stage, "after"));
  g_ptr_array_add (file->photos, photo);
}

static void
fill_photos (UnsootJobFile *file)
{
  add_photo (file, "EGR valve, from the manifold", "before", 400, 300);
  add_photo (file, "EGR valve, from the manifold", "after", 400, 300);
  add_photo (file, "Throttle body", "before", 300, 400);
  add_photo (file, "Throttle body", "after", 300, 400);
  add_photo (file, "EGR cooler, inlet", "before", 640, 200);
}

UnsootJobFile *
paper_fixture_long (void)
{
  UnsootJobFile *file = paper_fixture_make_base ();

  g_clear_pointer (&file->job->dose_reason, g_free);
  fill_customer (file);
  fill_meters (file);
  fill_job (file);
  fill_lines (file);
  /* By hand: 460.00 + 28.75 + 2 × 31.50 + 35 sets from 10.96 to 11.30 (389.55) + 1.5 × 8.00
   * − 50.00 = 903.30; 7.25 % of 28.75 + 63.00 + 389.55 = 34.89. */
  paper_fixture_add_estimate (file, 119, 90330, 3489);
  fill_authorisation (file);
  fill_bay (file);
  fill_family (file);
  fill_procedure (file);
  fill_run (file);
  fill_readings (file);
  fill_photos (file);
  paper_fixture_fill_invoices (file);
  return file;
}
