/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-plan.h"

#include <string.h>

#include "record-json.h"
#include "vin.h"

/* How its numbers and texts are called in a draft. */
typedef struct
{
  const char *name;
  gsize offset;
} Member;

#define MEMBER(field)                                                                              \
  {                                                                                                \
#field, G_STRUCT_OFFSET(UnsootBookingPlan, field)                                              \
  }

static const Member numbers[] = {
  MEMBER (job_id),        MEMBER (customer_id), MEMBER (vehicle_id), MEMBER (service_id),
  MEMBER (fuel_ml),       MEMBER (intake_ml),   MEMBER (bay_id),     MEMBER (machine_id),
  MEMBER (technician_id), MEMBER (starts_at),
};
static const Member texts[] = { MEMBER (phone), MEMBER (complaint), MEMBER (po_number) };

UnsootBookingPlan *
unsoot_booking_plan_new (void)
{
  UnsootBookingPlan *plan = g_new0 (UnsootBookingPlan, 1);

  plan->again = g_array_new (FALSE, FALSE, sizeof (gint64));
  return plan;
}

void
unsoot_booking_plan_free (UnsootBookingPlan *plan)
{
  if (plan == NULL)
    return;
  unsoot_customer_row_free (plan->customer);
  unsoot_vehicle_row_free (plan->vehicle);
  g_free (plan->phone);
  g_free (plan->complaint);
  g_free (plan->po_number);
  g_array_unref (plan->again);
  g_free (plan);
}

UnsootBookingPlan *
unsoot_booking_plan_copy (const UnsootBookingPlan *plan)
{
  UnsootBookingPlan *copy = g_memdup2 (plan, sizeof *plan);

  copy->again = g_array_copy (plan->again);
  copy->phone = g_strdup (plan->phone);
  copy->complaint = g_strdup (plan->complaint);
  copy->po_number = g_strdup (plan->po_number);
  if (plan->customer != NULL)
    copy->customer = unsoot_record_copy (&unsoot_customer_row_type, plan->customer);
  if (plan->vehicle != NULL)
    copy->vehicle = unsoot_record_copy (&unsoot_vehicle_row_type, plan->vehicle);
  return copy;
}

/* "555 0134" is a phone, not a name. */
static gboolean
is_phone (const char *typed)
{
  return g_regex_match_simple ("^[-+() ./0-9]{5,}$", typed, 0, 0);
}

void
unsoot_booking_plan_new_customer (UnsootBookingPlan *plan, const char *typed)
{
  g_clear_pointer (&plan->customer, unsoot_customer_row_free);
  plan->customer_id = 0;
  plan->customer = unsoot_customer_row_new ();
  plan->customer->kind = g_strdup ("person");
  plan->customer->active = TRUE;
  if (typed != NULL && is_phone (typed))
    {
      g_free (plan->phone);
      plan->phone = g_strdup (typed);
    }
  else
    plan->customer->name = g_strdup (typed);
}

void
unsoot_booking_plan_new_vehicle (UnsootBookingPlan *plan, const char *typed)
{
  g_autoptr (UnsootVinCheck) check = typed != NULL ? unsoot_vin_check (typed) : NULL;

  g_clear_pointer (&plan->vehicle, unsoot_vehicle_row_free);
  plan->vehicle_id = 0;
  plan->vehicle = unsoot_vehicle_row_new ();
  plan->vehicle->customer_id = plan->customer_id;
  plan->vehicle->has_egr = plan->vehicle->has_dpf = TRUE;
  plan->vehicle->active = TRUE;
  if (check != NULL && check->verdict != UNSOOT_VIN_WRONG_LENGTH)
    plan->vehicle->vin = g_strdup (check->vin);
  else
    plan->vehicle->plate = g_strdup (typed);
}

void
unsoot_booking_plan_begin (UnsootBookingPlan *plan, const char *typed)
{
  if (is_phone (typed) || strpbrk (typed, "0123456789") == NULL)
    unsoot_booking_plan_new_customer (plan, typed);
  else
    unsoot_booking_plan_new_vehicle (plan, typed);
}

void
unsoot_booking_plan_take_customer (UnsootBookingPlan *plan, gint64 id)
{
  g_clear_pointer (&plan->customer, unsoot_customer_row_free);
  plan->customer_id = id;
  plan->vehicle_id = 0;
  g_array_set_size (plan->again, 0);
}

void
unsoot_booking_plan_take_vehicle (UnsootBookingPlan *plan, gint64 id)
{
  g_clear_pointer (&plan->customer, unsoot_customer_row_free);
  g_clear_pointer (&plan->vehicle, unsoot_vehicle_row_free);
  plan->vehicle_id = id;
  g_array_set_size (plan->again, 0);
}

void
unsoot_booking_plan_change_vehicle (UnsootBookingPlan *plan, gint64 id)
{
  unsoot_booking_plan_take_vehicle (plan, id);
  plan->service_id = 0;
}

void
unsoot_booking_plan_forget_caller (UnsootBookingPlan *plan)
{
  unsoot_booking_plan_take_customer (plan, 0);
  g_clear_pointer (&plan->phone, g_free);
}

void
unsoot_booking_plan_offer_again (UnsootBookingPlan *plan, gint64 line_id, gboolean again)
{
  for (guint i = plan->again->len; i-- > 0;)
    if (g_array_index (plan->again, gint64, i) == line_id)
      g_array_remove_index (plan->again, i);
  if (again)
    g_array_append_val (plan->again, line_id);
}

void
unsoot_booking_plan_pick (UnsootBookingPlan *plan, gint64 starts_at)
{
  plan->starts_at = starts_at;
  plan->walks_in = FALSE;
}

void
unsoot_booking_plan_walk_in (UnsootBookingPlan *plan)
{
  plan->starts_at = 0;
  plan->walks_in = TRUE;
  plan->days_on = 0;
}

gboolean
unsoot_booking_plan_is_empty (const UnsootBookingPlan *plan)
{
  return plan->job_id != 0
         || (plan->customer == NULL && plan->vehicle == NULL && plan->complaint == NULL
             && plan->po_number == NULL && plan->service_id == 0 && plan->starts_at == 0
             && !plan->walks_in && plan->fuel_ml == 0 && plan->intake_ml == 0
             && plan->again->len == 0);
}

char *
unsoot_booking_plan_to_text (const UnsootBookingPlan *plan)
{
  g_autoptr (JsonNode) root = json_node_new (JSON_NODE_OBJECT);
  JsonObject *object = json_object_new ();
  JsonArray *again = json_array_new ();

  json_node_take_object (root, object);
  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++)
    json_object_set_int_member (object, numbers[i].name,
                                G_STRUCT_MEMBER (gint64, plan, numbers[i].offset));
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    if (G_STRUCT_MEMBER (char *, plan, texts[i].offset) != NULL)
      json_object_set_string_member (object, texts[i].name,
                                     G_STRUCT_MEMBER (char *, plan, texts[i].offset));
  json_object_set_boolean_member (object, "walks_in", plan->walks_in);
  for (guint i = 0; i < plan->again->len; i++)
    json_array_add_int_element (again, g_array_index (plan->again, gint64, i));
  json_object_set_array_member (object, "again", again);
  if (plan->customer != NULL)
    json_object_set_member (object, "customer",
                            unsoot_record_to_json (&unsoot_customer_row_type, plan->customer));
  if (plan->vehicle != NULL)
    json_object_set_member (object, "vehicle",
                            unsoot_record_to_json (&unsoot_vehicle_row_type, plan->vehicle));
  return json_to_string (root, FALSE);
}

static void
take_rows (UnsootBookingPlan *plan, JsonObject *object)
{
  if (json_object_has_member (object, "customer"))
    plan->customer = unsoot_record_from_json (&unsoot_customer_row_type,
                                              json_object_get_member (object, "customer"));
  if (json_object_has_member (object, "vehicle"))
    plan->vehicle = unsoot_record_from_json (&unsoot_vehicle_row_type,
                                             json_object_get_member (object, "vehicle"));
}

static void
take_again (UnsootBookingPlan *plan, JsonObject *object)
{
  JsonNode *node = json_object_get_member (object, "again");
  JsonArray *again
      = node != NULL && JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  for (guint i = 0; again != NULL && i < json_array_get_length (again); i++)
    {
      const gint64 id = json_array_get_int_element (again, i);
      g_array_append_val (plan->again, id);
    }
}

UnsootBookingPlan *
unsoot_booking_plan_from_text (const char *text)
{
  g_autoptr (JsonNode) root = text != NULL ? json_from_string (text, NULL) : NULL;
  UnsootBookingPlan *plan;
  JsonObject *object;

  if (root == NULL || !JSON_NODE_HOLDS_OBJECT (root))
    return NULL;
  object = json_node_get_object (root);
  plan = unsoot_booking_plan_new ();
  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++)
    G_STRUCT_MEMBER (gint64, plan, numbers[i].offset)
        = json_object_get_int_member_with_default (object, numbers[i].name, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    G_STRUCT_MEMBER (char *, plan, texts[i].offset)
        = g_strdup (json_object_get_string_member_with_default (object, texts[i].name, NULL));
  plan->walks_in = json_object_get_boolean_member_with_default (object, "walks_in", FALSE);
  take_rows (plan, object);
  take_again (plan, object);
  return plan;
}

void
unsoot_booking_plan_wish (const UnsootBookingPlan *plan, UnsootQuoteWish *wish)
{
  *wish = (UnsootQuoteWish){ .vehicle_id = plan->vehicle_id,
                             .vehicle = plan->vehicle,
                             .customer = plan->vehicle != NULL ? plan->customer : NULL,
                             .service_id = plan->service_id,
                             .fuel_ml = plan->fuel_ml,
                             .intake_ml = plan->intake_ml,
                             .wanted_at = plan->starts_at,
                             .again = (const gint64 *) (gconstpointer) plan->again->data,
                             .n_again = plan->again->len,
                             .complaint = plan->complaint,
                             .po_number = plan->po_number };
}
