/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk-place.h"

#include <glib/gi18n-lib.h>

#include "adapter-page.h"
#include "adapters-page.h"
#include "bay-page.h"
#include "bays-page.h"
#include "booking-page.h"
#include "customer-page.h"
#include "customers-page.h"
#include "fluid-page.h"
#include "fluids-page.h"
#include "invoice-page.h"
#include "invoices-page.h"
#include "job-page.h"
#include "jobs-page.h"
#include "kits-page.h"
#include "lot-page.h"
#include "machine-page.h"
#include "machines-page.h"
#include "owed-page.h"
#include "planner-page.h"
#include "preferences-page.h"
#include "today-page.h"
#include "vehicle-page.h"
#include "vehicles-page.h"

#define BIT(role) (1u << UNSOOT_ROLE_##role)
#define EVERYBODY (BIT (ADVISOR) | BIT (CLERK) | BIT (TECHNICIAN) | BIT (LEAD) | BIT (OWNER))
#define FRONT (BIT (ADVISOR) | BIT (LEAD) | BIT (OWNER))

static const UnsootDeskPlace places[] = {
  { "today", NULL, N_ ("Today"), "unsoot-today-symbolic", EVERYBODY, unsoot_today_page_get_type },
  { "planner", NULL, N_ ("Planner"), "unsoot-planner-symbolic", FRONT | BIT (TECHNICIAN),
    unsoot_planner_page_get_type },
  { "bays", NULL, N_ ("Bays"), "unsoot-bay-symbolic", BIT (TECHNICIAN) | BIT (LEAD),
    unsoot_bays_page_get_type },
  { "jobs", NULL, N_ ("Jobs"), "unsoot-job-symbolic", EVERYBODY, unsoot_jobs_page_get_type },
  { "customers", NULL, N_ ("Customers"), "unsoot-customer-symbolic", FRONT,
    unsoot_customers_page_get_type },
  { "vehicles", NULL, N_ ("Vehicles"), "unsoot-vehicle-symbolic", FRONT | BIT (TECHNICIAN),
    unsoot_vehicles_page_get_type },
  { "fluids", NULL, N_ ("Fluids"), "unsoot-fluid-symbolic", FRONT | BIT (CLERK),
    unsoot_fluids_page_get_type },
  { "adapters", NULL, N_ ("Adapters"), "unsoot-adapter-symbolic", EVERYBODY,
    unsoot_adapters_page_get_type },
  { "machines", NULL, N_ ("Machines"), "unsoot-machine-symbolic",
    BIT (CLERK) | BIT (TECHNICIAN) | BIT (LEAD) | BIT (OWNER), unsoot_machines_page_get_type },
  { "invoices", NULL, N_ ("Invoices"), "unsoot-papers-symbolic", FRONT,
    unsoot_invoices_page_get_type },
  { "preferences", "today", NULL, NULL, 0, unsoot_preferences_page_get_type },
  { "bay", "bays", NULL, NULL, 0, unsoot_bay_page_get_type },
  { "job", "jobs", NULL, NULL, 0, unsoot_job_page_get_type },
  { "booking", "jobs", NULL, NULL, 0, unsoot_booking_page_get_type },
  { "booking-job", "jobs", NULL, NULL, 0, unsoot_booking_page_get_type },
  { "booking-vehicle", "jobs", NULL, NULL, 0, unsoot_booking_page_get_type },
  { "booking-party", "jobs", NULL, NULL, 0, unsoot_booking_page_get_type },
  { "estimate", "jobs", NULL, NULL, 0, unsoot_job_page_get_type },
  { "owed", "invoices", NULL, NULL, 0, unsoot_owed_page_get_type },
  { "invoice", "invoices", NULL, NULL, 0, unsoot_invoice_page_view_get_type },
  { "customer", "customers", NULL, NULL, 0, unsoot_customer_page_get_type },
  { "vehicle", "vehicles", NULL, NULL, 0, unsoot_vehicle_page_get_type },
  { "fluid", "fluids", NULL, NULL, 0, unsoot_fluid_page_get_type },
  { "lot", "fluids", NULL, NULL, 0, unsoot_lot_page_get_type },
  { "adapter", "adapters", NULL, NULL, 0, unsoot_adapter_page_get_type },
  { "kits", "adapters", NULL, NULL, 0, unsoot_kits_page_get_type },
  { "loan", "adapters", NULL, NULL, 0, unsoot_adapter_page_get_type },
  { "machine", "machines", NULL, NULL, 0, unsoot_machine_page_get_type },
};

const UnsootDeskPlace *
unsoot_desk_places (gsize *n)
{
  *n = G_N_ELEMENTS (places);
  return places;
}

const UnsootDeskPlace *
unsoot_desk_place_find (const char *slug)
{
  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    if (g_strcmp0 (places[i].slug, slug) == 0)
      return &places[i];
  return NULL;
}

gboolean
unsoot_desk_place_is_of (const UnsootDeskPlace *place, UnsootRole role)
{
  return (place->roles & (1u << role)) != 0;
}

UnsootView *
unsoot_desk_place_create (const UnsootDeskPlace *place, UnsootSession *session, gint64 record)
{
  return g_object_new (place->get_type (), "session", session, "record", record, "slug",
                       place->slug, NULL);
}
