/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "commands.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "bookings.h"
#include "job-readings.h"
#include "jobs.h"
#include "pick.h"
#include "show.h"
#include "unit-text.h"
#include "when.h"

/* The vehicle's visit: when, its arrival, and what is measured. */

static gboolean
pick_items (UnsootCall *call, char **labels, GArray *items, GError **error)
{
  for (guint i = 0; labels != NULL && labels[i] != NULL; i++)
    {
      gint64 id = 0;

      if (!unsoot_pick_item (call, labels[i], &id, error))
        return FALSE;
      g_array_append_val (items, id);
    }
  return TRUE;
}

static gboolean
read_times (UnsootCall *call, const char *start, const char *end, UnsootBookingWish *wish,
            GError **error)
{
  return unsoot_call_wants (start, "--start", error)
         && unsoot_when_moment (call->shop, call->who.now, start, &wish->starts_at, error)
         && (end == NULL
             || unsoot_when_moment (call->shop, call->who.now, end, &wish->ends_at, error));
}

/* A job that is booked already is moved. */
static gboolean
keep_booking (UnsootCall *call, UnsootBookingWish *wish, GError **error)
{
  g_autoptr (GError) fault = NULL;
  g_autoptr (UnsootBookingRow) standing = unsoot_job_booking (call->db, wish->job_id, &fault);

  if (fault != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&fault));
      return FALSE;
    }
  wish->booking_id = standing != NULL ? standing->id : 0;
  if (unsoot_job_book (call->db, &call->who, wish, error) == 0)
    return FALSE;
  g_clear_pointer (&standing, unsoot_booking_row_free);
  standing = unsoot_job_booking (call->db, wish->job_id, error);
  if (standing == NULL
      || !unsoot_show_deed (call, wish->job_id, g_strdup (_ ("The job is booked.")), error))
    return FALSE;
  unsoot_answer_put (call->answer, "starts_at", _ ("From"),
                     unsoot_call_moment (call, standing->starts_at));
  unsoot_answer_put (call->answer, "ends_at", _ ("To"),
                     unsoot_call_moment (call, standing->ends_at));
  return TRUE;
}

static gboolean
run_book (UnsootCall *call, GError **error)
{
  g_autofree char *start = NULL, *end = NULL, *bay = NULL, *machine = NULL, *technician = NULL;
  g_auto (GStrv) labels = NULL;
  g_autoptr (GArray) items = g_array_new (FALSE, FALSE, sizeof (gint64));
  UnsootBookingWish wish = { 0 };
  const GOptionEntry options[]
      = { { "start", 's', 0, G_OPTION_ARG_STRING, &start, N_ ("From when"), N_ ("TIME") },
          { "end", 'e', 0, G_OPTION_ARG_STRING, &end,
            N_ ("Until when; without it, as long as the service is planned for"), N_ ("TIME") },
          { "bay", 'b', 0, G_OPTION_ARG_STRING, &bay, N_ ("Where"), N_ ("NAME") },
          { "machine", 'm', 0, G_OPTION_ARG_STRING, &machine, N_ ("With which cart"), N_ ("NAME") },
          { "technician", 't', 0, G_OPTION_ARG_STRING, &technician, N_ ("Who carries it out"),
            N_ ("INITIALS") },
          { "adapter", 0, 0, G_OPTION_ARG_STRING_ARRAY, &labels,
            N_ ("A certain adapter, by its tag; may be repeated. Without it, a free one of each "
                "kind that fits"),
            N_ ("TAG") },
          { NULL } };

  if (!unsoot_call_begin (call, options, 1, 1, error)
      || !read_times (call, start, end, &wish, error)
      || !unsoot_pick_job (call, call->args[0], &wish.job_id, error)
      || (bay != NULL && !unsoot_pick_bay (call, bay, &wish.bay_id, error))
      || (machine != NULL && !unsoot_pick_machine (call, machine, &wish.machine_id, error))
      || (technician != NULL && !unsoot_pick_person (call, technician, &wish.technician_id, error))
      || !pick_items (call, labels, items, error))
    return FALSE;
  if (items->len > 0)
    {
      wish.items = (const gint64 *) (gconstpointer) items->data;
      wish.n_items = items->len;
    }
  return keep_booking (call, &wish, error);
}

/* "120400 mi", or the unit's own quantity where none is typed. */
static gboolean
read_odometer (const char *text, UnsootArrival *arrival, GError **error)
{
  UnsootTyped typed;

  if (!unsoot_typed_parse (text, UNSOOT_QUANTITY_DISTANCE, UNSOOT_UNIT_NONE, &typed, error))
    return FALSE;
  if (typed.unit != UNSOOT_UNIT_MI && typed.unit != UNSOOT_UNIT_KM)
    return unsoot_call_misused (error, _ ("An odometer reads mi or km, not “%s”."), text);
  arrival->odometer = typed.value;
  arrival->odometer_unit = unsoot_unit_slug (typed.unit);
  return TRUE;
}

static gboolean
run_arrive (UnsootCall *call, GError **error)
{
  g_autofree char *odometer = NULL, *hours = NULL, *complaint = NULL, *codes = NULL;
  UnsootArrival arrival = { .odometer = (double) NAN, .hours = (double) NAN };
  gint64 job_id = 0;
  const GOptionEntry options[]
      = { { "odometer", 'o', 0, G_OPTION_ARG_STRING, &odometer, N_ ("As read, in mi or km"),
            N_ ("DISTANCE") },
          { "hours", 0, 0, G_OPTION_ARG_STRING, &hours, N_ ("Engine hours, as read"),
            N_ ("NUMBER") },
          { "new-meter", 0, 0, G_OPTION_ARG_NONE, &arrival.new_meter,
            N_ ("The meter was changed: it may show less than before"), NULL },
          { "complaint", 'c', 0, G_OPTION_ARG_STRING, &complaint,
            N_ ("In the customer's words; without it, as quoted"), N_ ("TEXT") },
          { "codes", 0, 0, G_OPTION_ARG_STRING, &codes, N_ ("Trouble codes, commas between"),
            N_ ("CODES") },
          { NULL } };

  if (!unsoot_call_begin (call, options, 1, 1, error)
      || (odometer != NULL && !read_odometer (odometer, &arrival, error))
      || (hours != NULL && !unsoot_meter_parse (hours, &arrival.hours, error))
      || !unsoot_pick_job (call, call->args[0], &job_id, error))
    return FALSE;
  arrival.complaint = complaint;
  arrival.codes = codes;
  return unsoot_job_arrive (call->db, &call->who, job_id, &arrival, error)
         && unsoot_show_deed (call, job_id, g_strdup (_ ("The vehicle is here.")), error);
}

/* What a reading was taken under, as typed. */
typedef struct
{
  char *stage;
  char *unit;
  char *instrument;
  char *egr;
  char *barometer;
  char *ambient;
  char *coolant;
  double rpm;
  double load;
  gboolean regeneration;
} Condition;

static void
condition_clear (Condition *condition)
{
  g_free (condition->stage);
  g_free (condition->unit);
  g_free (condition->instrument);
  g_free (condition->egr);
  g_free (condition->barometer);
  g_free (condition->ambient);
  g_free (condition->coolant);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Condition, condition_clear)

/* In SI; NAN where nothing was typed. */
static gboolean
read_si (const char *text, UnsootQuantity quantity, UnsootUnit assumed, double *si, GError **error)
{
  UnsootTyped typed;

  *si = (double) NAN;
  if (text == NULL)
    return TRUE;
  if (!unsoot_typed_parse (text, quantity, assumed, &typed, error))
    return FALSE;
  *si = typed.si;
  return TRUE;
}

static gboolean
read_condition (const Condition *condition, UnsootReadingRow *reading, GError **error)
{
  reading->stage = g_strdup (condition->stage);
  reading->unit = g_strdup (condition->unit);
  reading->instrument = g_strdup (condition->instrument);
  reading->egr_state = g_strdup (condition->egr);
  reading->rpm = condition->rpm;
  reading->load_percent = condition->load;
  reading->regeneration = condition->regeneration;
  reading->tolerance = (double) NAN;
  return read_si (condition->barometer, UNSOOT_QUANTITY_PRESSURE, UNSOOT_UNIT_NONE,
                  &reading->barometer_pa, error)
         && read_si (condition->ambient, UNSOOT_QUANTITY_TEMPERATURE, UNSOOT_UNIT_NONE,
                     &reading->ambient_c, error)
         && read_si (condition->coolant, UNSOOT_QUANTITY_TEMPERATURE, UNSOOT_UNIT_NONE,
                     &reading->coolant_c, error);
}

static gboolean
run_reading (UnsootCall *call, GError **error)
{
  g_auto (Condition) taken = { .rpm = (double) NAN, .load = (double) NAN };
  g_autoptr (UnsootReadingRow) reading = unsoot_reading_row_new ();
  const GOptionEntry options[]
      = { { "stage", 's', 0, G_OPTION_ARG_STRING, &taken.stage, N_ ("before or after the work"),
            N_ ("STAGE") },
          { "unit", 'u', 0, G_OPTION_ARG_STRING, &taken.unit,
            N_ ("Of the value: kPa, g/s, %, rpm …"), N_ ("UNIT") },
          { "instrument", 'i', 0, G_OPTION_ARG_STRING, &taken.instrument,
            N_ ("By what it was read"), N_ ("NAME") },
          { "rpm", 0, 0, G_OPTION_ARG_DOUBLE, &taken.rpm, N_ ("Engine speed"), N_ ("NUMBER") },
          { "load", 0, 0, G_OPTION_ARG_DOUBLE, &taken.load, N_ ("Engine load in percent"),
            N_ ("NUMBER") },
          { "coolant", 0, 0, G_OPTION_ARG_STRING, &taken.coolant, N_ ("Its temperature: 86 °C"),
            N_ ("TEMPERATURE") },
          { "egr", 0, 0, G_OPTION_ARG_STRING, &taken.egr, N_ ("How the EGR valve stood"),
            N_ ("STATE") },
          { "regeneration", 0, 0, G_OPTION_ARG_NONE, &taken.regeneration,
            N_ ("The particulate filter was regenerating"), NULL },
          { "barometer", 0, 0, G_OPTION_ARG_STRING, &taken.barometer,
            N_ ("Air pressure: 1006 mbar"), N_ ("PRESSURE") },
          { "ambient", 0, 0, G_OPTION_ARG_STRING, &taken.ambient, N_ ("Of the air outside: 17 °C"),
            N_ ("TEMPERATURE") },
          { NULL } };

  if (!unsoot_call_begin (call, options, 3, 3, error)
      || !unsoot_call_wants (taken.stage, "--stage", error)
      || !unsoot_call_wants (taken.unit, "--unit", error)
      || !unsoot_pick_job (call, call->args[0], &reading->job_id, error)
      || !read_condition (&taken, reading, error))
    return FALSE;
  reading->kind = g_strdup (call->args[1]);
  reading->typed = g_strdup (call->args[2]);
  return unsoot_reading_add (call->db, &call->who, reading, error)
         && unsoot_show_deed (call, reading->job_id, g_strdup (_ ("The reading is recorded.")),
                              error);
}

const UnsootCommand unsoot_visit_commands[] = {
  { "book", N_ ("JOB"), N_ ("Book a bay, a cart, a technician and adapters, or move the booking"),
    N_ ("TIME is “2025-11-24 10:30”, “today 10:30” or “tomorrow 8:00”, by the shop's clock."),
    UNSOOT_NEEDS_PERSON, run_book },
  { "arrive", N_ ("JOB"), N_ ("The vehicle is here"), NULL, UNSOOT_NEEDS_PERSON, run_arrive },
  { "reading", N_ ("JOB KIND VALUE"), N_ ("Record a reading before or after, with its condition"),
    N_ ("KIND is opacity, air-idle, air-2000, manifold, boost, egr-commanded, egr-actual, "
        "egr-error, egr-cooler, dpf, rail, rail-duty, idle-scatter, balance, return-flow, crank, "
        "oil or fuel-use."),
    UNSOOT_NEEDS_PERSON, run_reading },
  { NULL },
};
