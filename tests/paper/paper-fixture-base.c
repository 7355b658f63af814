/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-fixture-private.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <math.h>

#define MORNING PAPER_FIXTURE_MORNING

static UnsootShopRow *
make_shop (void)
{
  UnsootShopRow *shop = unsoot_shop_row_new ();

  shop->name = g_strdup ("Larkmoor Diesel Cleaning");
  shop->street = g_strdup ("14 Osier Lane");
  shop->town = g_strdup ("Larkmoor");
  shop->region = g_strdup ("Westmark");
  shop->postcode = g_strdup ("40217");
  shop->phone = g_strdup ("555 0142");
  shop->email = g_strdup ("bay@larkmoor.example");
  shop->tax_number = g_strdup ("WM-22-0417");
  shop->currency = g_strdup ("USD");
  shop->paper = g_strdup ("letter");
  shop->estimate_over_percent = 10;
  shop->estimate_over_minor = 10000;
  shop->payment_note
      = g_strdup ("By transfer to account 555 777 at Larkmoor Bank, or at the counter.");
  shop->soot_note = g_strdup ("Thank you for bringing it to us. Questions: ask for Mara.");
  return shop;
}

static void
add_tax_rule (UnsootJobFile *file, const char *kind, const char *category, gint64 rate,
              const char *label)
{
  UnsootTaxRuleRow *rule = unsoot_tax_rule_row_new ();

  rule->line_kind = g_strdup (kind);
  rule->category = g_strdup (category);
  rule->rate_milli_percent = rate;
  rule->label = g_strdup (label);
  g_ptr_array_add (file->tax_rules, rule);
}

void
paper_fixture_add_line (UnsootJobFile *file, const char *kind, const char *text,
                        gint64 quantity_milli, const char *unit, gint64 price, const char *state)
{
  UnsootJobLineRow *line = unsoot_job_line_row_new ();

  line->position = file->lines->len;
  line->kind = g_strdup (kind);
  line->text = g_strdup (text);
  line->quantity_milli = quantity_milli;
  line->unit = g_strdup (unit);
  line->unit_price_minor = price;
  line->state = g_strdup (state);
  g_ptr_array_add (file->lines, line);
}

UnsootFluidRow *
paper_fixture_make_fluid (const char *side, const char *name, const char *code,
                          const char *pictograms, const char *signal, const char *h)
{
  UnsootFluidRow *fluid = unsoot_fluid_row_new ();

  fluid->side = g_strdup (side);
  fluid->name = g_strdup (name);
  fluid->code = g_strdup (code);
  fluid->pictograms = g_strdup (pictograms);
  fluid->signal_word = g_strdup (signal);
  fluid->h_statements = g_strdup (h);
  fluid->un_number = g_strdup ("1993");
  fluid->sds_on = g_strdup ("2026-02-01");
  return fluid;
}

UnsootLotRow *
paper_fixture_make_lot (gint64 id, const char *code)
{
  UnsootLotRow *lot = unsoot_lot_row_new ();

  lot->id = id;
  lot->code = g_strdup (code);
  lot->expires_on = g_strdup ("2027-08-31");
  return lot;
}

void
paper_fixture_add_phase (UnsootJobFile *file, const char *title, const char *cautions)
{
  UnsootPhaseRow *phase = unsoot_phase_row_new ();

  phase->position = file->phases->len;
  phase->title = g_strdup (title);
  phase->cautions = g_strdup (cautions);
  g_ptr_array_add (file->phases, phase);
}

UnsootStepRow *
paper_fixture_add_step (UnsootJobFile *file, const char *act, const char *subject, const char *side,
                        const char *wording, const char *why)
{
  UnsootStepRow *step = unsoot_step_row_new ();

  step->position = file->steps->len;
  step->phase = file->phases->len - 1;
  step->act = g_strdup (act);
  step->subject = g_strdup (subject);
  step->side = g_strdup (side);
  step->wording = g_strdup (wording);
  step->why = g_strdup (why);
  g_ptr_array_add (file->steps, step);
  return step;
}

void
paper_fixture_add_estimate (UnsootJobFile *file, gint64 number, gint64 net, gint64 tax)
{
  UnsootEstimateRow *estimate = unsoot_estimate_row_new ();

  estimate->number = number;
  estimate->at = MORNING - 86400;
  estimate->net_minor = net;
  estimate->tax_minor = tax;
  estimate->total_minor = net + tax;
  estimate->valid_until = g_strdup ("2026-12-14");
  g_ptr_array_add (file->estimates, estimate);
}

UnsootJobFile *
paper_fixture_make_base (void)
{
  UnsootJobFile *file = unsoot_job_file_new ();

  file->utc_offset_minutes = -6 * 60;
  file->shop = make_shop ();
  file->job = unsoot_job_row_new ();
  file->job->number = 2417;
  file->job->made_at = MORNING - 2 * 86400;
  file->job->dose_reason = g_strdup ("intake side 2 L: class 3, one-ton");
  file->job->intake_dose_ml = 2000;
  file->customer = unsoot_customer_row_new ();
  file->vehicle = unsoot_vehicle_row_new ();
  file->vehicle->vin = g_strdup ("1M8GDM9AXKP042788");
  file->vehicle->year = 2014;
  file->vehicle->make = g_strdup ("Brindle");
  file->vehicle->model = g_strdup ("T4");
  file->vehicle->engine = g_strdup ("5.1");
  file->service = unsoot_service_row_new ();
  file->service->name = g_strdup ("Intake side clean");
  file->intake_fluid = paper_fixture_make_fluid ("intake", "Rook Intake Cleaner", "R",
                                                 "GHS02 GHS08", "danger", "H226 H304 H336");
  add_tax_rule (file, "labour", "Z", 0, "labour");
  add_tax_rule (file, "fluid", "S", 7250, "Sales tax");
  add_tax_rule (file, "kit", "S", 7250, "Sales tax");
  add_tax_rule (file, "disposal", "O", 0, "waste fee");
  add_tax_rule (file, "other", "S", 7250, "Sales tax");
  return file;
}

GBytes *
paper_fixture_picture (int width, int height, gboolean clean)
{
  g_autoptr (GdkPixbuf) pixels = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, width, height);
  const int stride = gdk_pixbuf_get_rowstride (pixels);
  guint8 *data = gdk_pixbuf_get_pixels (pixels);
  char *buffer = NULL;
  gsize size = 0;

  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        const int ring = (int) hypot (x - width / 2.0, y - height / 2.0);
        const int base = clean ? 170 : 30;
        guint8 *pixel = data + y * stride + 3 * x;

        pixel[0] = (guint8) (base + ring % 40);
        pixel[1] = (guint8) (base + ring % 30);
        pixel[2] = (guint8) (base + ring % 20);
      }
  if (!gdk_pixbuf_save_to_buffer (pixels, &buffer, &size, "jpeg", NULL, NULL))
    g_assert_not_reached ();
  return g_bytes_new_take (buffer, size);
}
