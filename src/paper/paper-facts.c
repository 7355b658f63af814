/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-facts.h"

#include <glib/gi18n-lib.h>

#include "page-block.h"
#include "paper-words.h"

static const char *
filled (const char *text)
{
  return text != NULL ? text : "";
}

/* What tells one vehicle from another beyond its name: VIN, serial, meters. */
static char *
vehicle_numbers (const UnsootJobFile *file)
{
  const UnsootVehicleRow *vehicle = file->vehicle;
  g_autofree char *odometer = unsoot_paper_meter (file, "odometer");
  g_autofree char *hours = unsoot_paper_meter (file, "hours");
  g_autofree char *vin
      = *filled (vehicle->vin) ? g_strdup_printf (_ ("VIN %s"), vehicle->vin) : g_strdup ("");
  g_autofree char *serial = *filled (vehicle->engine_serial)
                                ? g_strdup_printf (_ ("Engine serial %s"), vehicle->engine_serial)
                                : g_strdup ("");

  return unsoot_paper_join ("\n", vin, serial, filled (odometer), filled (hours), NULL);
}

static char *
job_words (const UnsootJobFile *file)
{
  g_autofree char *serial = unsoot_paper_serial (file->job->number);
  /* Translators: a job's number */
  g_autofree char *number = g_strdup_printf (_ ("Job %s"), serial);
  g_autofree char *order = *filled (file->job->po_number)
                               ? g_strdup_printf (_ ("PO number %s"), file->job->po_number)
                               : g_strdup ("");

  return unsoot_paper_join ("\n", number, file->service != NULL ? filled (file->service->name) : "",
                            order, NULL);
}

static void
draw_complaint (UnsootPageKit *kit, const UnsootJobFile *file)
{
  const UnsootFact facts[] = {
    { _ ("What the customer told us"), file->job->complaint, NULL },
    { _ ("Trouble codes"), file->job->codes, NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (facts); i++)
    unsoot_page_facts (kit, &facts[i], 1, 1);
}

void
unsoot_paper_facts_of_job (UnsootPageKit *kit, const UnsootJobFile *file)
{
  g_autofree char *customer = unsoot_paper_customer (file);
  g_autofree char *phones = unsoot_paper_phones (file);
  g_autofree char *vehicle = unsoot_paper_vehicle (file->vehicle);
  g_autofree char *numbers = vehicle_numbers (file);
  g_autofree char *job = job_words (file);
  const UnsootFact facts[] = {
    { _ ("Customer"), customer, phones },
    { _ ("Vehicle"), vehicle, numbers },
    { _ ("Job"), job, NULL },
  };

  unsoot_page_facts (kit, facts, G_N_ELEMENTS (facts), 3);
  draw_complaint (kit, file);
}
