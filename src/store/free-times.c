/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "free-times.h"

#include "adapters.h"
#include "booking-diary.h"
#include "free-start.h"
#include "machines.h"
#include "role.h"
#include "services.h"
#include "shops.h"
#include "staff.h"
#include "vehicles.h"

#define DAY_SECONDS ((gint64) 86400)

/* All that is read for one question. */
typedef struct
{
  UnsootDb *db;
  const UnsootFreeTimeAsk *ask;
  UnsootBookingDiary *diary;
  GPtrArray *things; /* GArray of UnsootNamed: what each need may take */
  GArray *needs;     /* UnsootNeed */
  gint64 own;
  gint64 minutes;
} Search;

static void
search_clear (Search *search)
{
  g_clear_pointer (&search->diary, unsoot_booking_diary_free);
  g_clear_pointer (&search->things, g_ptr_array_unref);
  g_clear_pointer (&search->needs, g_array_unref);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Search, search_clear)

void
unsoot_free_time_free (UnsootFreeTime *time)
{
  if (time == NULL)
    return;
  g_free (time->bay);
  g_free (time->machine);
  g_free (time->technician);
  g_free (time->adapters);
  g_clear_pointer (&time->items, g_array_unref);
  g_free (time);
}

void
unsoot_free_day_free (UnsootFreeDay *day)
{
  if (day == NULL)
    return;
  g_free (day->day);
  g_clear_pointer (&day->times, g_ptr_array_unref);
  g_clear_pointer (&day->why, g_ptr_array_unref);
  g_free (day);
}

static GArray *
new_need (Search *search)
{
  GArray *things = g_array_new (FALSE, TRUE, sizeof (UnsootNamed));

  g_ptr_array_add (search->things, things);
  return things;
}

static void
add_thing (Search *search, GArray *things, gint64 only, gint64 id, const char *name)
{
  const UnsootNamed thing = { id, unsoot_booking_diary_keep (search->diary, name) };

  if (only == 0 || only == id)
    g_array_append_val (things, thing);
}

static void
close_need (Search *search, UnsootNeedKind kind, GArray *things)
{
  const UnsootNeed need = { kind, (const UnsootNamed *) (gconstpointer) things->data, things->len };

  g_array_append_val (search->needs, need);
}

static gboolean
need_bay (Search *search, GError **error)
{
  g_autoptr (GPtrArray) bays = unsoot_bay_list (search->db, error);
  GArray *things = new_need (search);

  for (guint i = 0; bays != NULL && i < bays->len; i++)
    {
      const UnsootBayRow *bay = bays->pdata[i];
      if (bay->active)
        add_thing (search, things, search->ask->bay_id, bay->id, bay->name);
    }
  close_need (search, UNSOOT_NEED_BAY, things);
  return bays != NULL;
}

static gboolean
need_machine (Search *search, GError **error)
{
  g_autoptr (GPtrArray) machines = unsoot_machine_list (search->db, error);
  GArray *things = new_need (search);

  for (guint i = 0; machines != NULL && i < machines->len; i++)
    {
      const UnsootMachineRow *machine = machines->pdata[i];
      if (machine->active)
        add_thing (search, things, search->ask->machine_id, machine->id, machine->name);
    }
  close_need (search, UNSOOT_NEED_MACHINE, things);
  return machines != NULL;
}

/* Those whose usual work it is come before the lead technician. */
static void
add_people (Search *search, const GPtrArray *staff, UnsootRole wanted, GArray *things)
{
  for (guint i = 0; i < staff->len; i++)
    {
      const UnsootStaffRow *person = staff->pdata[i];
      UnsootRole role;
      if (person->active && unsoot_role_find (person->role, &role) && role == wanted)
        add_thing (search, things, search->ask->technician_id, person->id, person->name);
    }
}

static gboolean
need_technician (Search *search, GError **error)
{
  g_autoptr (GPtrArray) staff = unsoot_staff_list (search->db, error);
  GArray *things = new_need (search);

  if (staff == NULL)
    return FALSE;
  add_people (search, staff, UNSOOT_ROLE_TECHNICIAN, things);
  add_people (search, staff, UNSOOT_ROLE_LEAD, things);
  close_need (search, UNSOOT_NEED_TECHNICIAN, things);
  return TRUE;
}

static gboolean
need_adapters (Search *search, const UnsootVehicleRow *vehicle, const UnsootServiceRow *service,
               gint64 from, gint64 to, gint64 now, GError **error)
{
  g_autoptr (GPtrArray) fits = unsoot_adapters_fitting (search->db, vehicle, service->sides, from,
                                                        to, search->ask->job_id, error);

  for (guint i = 0; fits != NULL && i < fits->len; i++)
    {
      const UnsootAdapterFit *fit = fits->pdata[i];
      GArray *things = new_need (search);
      for (guint k = 0; k < fit->items->len; k++)
        {
          const UnsootItemState *state = fit->items->pdata[k];
          add_thing (search, things, 0, state->item->id, state->item->label);
          if (!unsoot_booking_diary_read_items (search->diary, &state->item->id, 1, from, to,
                                                search->ask->job_id, now, error))
            return FALSE;
        }
      close_need (search, UNSOOT_NEED_ADAPTER, things);
    }
  return fits != NULL;
}

/* The job's booking that stands is no hindrance to moving it. */
static gboolean
find_own (Search *search, GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootBookingRow) own
      = search->ask->job_id != 0 ? unsoot_job_booking (search->db, search->ask->job_id, &failed)
                                 : NULL;

  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  search->own = own != NULL ? own->id : 0;
  return TRUE;
}

static gboolean
search_begin (Search *search, gint64 from, gint64 to, gint64 now, GError **error)
{
  g_autoptr (UnsootVehicleRow) vehicle
      = search->ask->vehicle != NULL
            ? unsoot_record_copy (&unsoot_vehicle_row_type, search->ask->vehicle)
            : unsoot_vehicle_load (search->db, search->ask->vehicle_id, error);
  g_autoptr (UnsootServiceRow) service
      = vehicle != NULL ? unsoot_service_load (search->db, search->ask->service_id, error) : NULL;

  if (service == NULL)
    return FALSE;
  search->minutes = service->planned_minutes;
  search->things = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  search->needs = g_array_new (FALSE, TRUE, sizeof (UnsootNeed));
  search->diary = unsoot_booking_diary_new (search->db, error);
  return search->diary != NULL
         && unsoot_booking_diary_read (search->diary, from, to + search->minutes * 60, error)
         && find_own (search, error) && need_bay (search, error) && need_machine (search, error)
         && need_technician (search, error)
         && need_adapters (search, vehicle, service, from, to + search->minutes * 60, now, error);
}

static UnsootFreeAsk
trade_ask (const Search *search)
{
  return (UnsootFreeAsk){ (const UnsootNeed *) (gconstpointer) search->needs->data,
                          search->needs->len, search->own, search->minutes };
}

static const char *
name_in (const UnsootNeed *need, gint64 id)
{
  for (gsize i = 0; i < need->n_any; i++)
    if (need->any[i].id == id)
      return need->any[i].label;
  return NULL;
}

static void
take (UnsootFreeTime *time, const UnsootNeed *need, gint64 id, GString *tags)
{
  const char *name = name_in (need, id);

  switch (need->kind)
    {
    case UNSOOT_NEED_BAY:
      time->bay_id = id;
      time->bay = g_strdup (name);
      break;
    case UNSOOT_NEED_MACHINE:
      time->machine_id = id;
      time->machine = g_strdup (name);
      break;
    case UNSOOT_NEED_TECHNICIAN:
      time->technician_id = id;
      time->technician = g_strdup (name);
      break;
    case UNSOOT_NEED_ADAPTER:
      if (id == 0)
        break;
      g_array_append_val (time->items, id);
      g_string_append_printf (tags, "%s%s", tags->len > 0 ? ", " : "", name);
      break;
    }
}

static UnsootFreeTime *
time_at (const Search *search, gint64 starts_at, gint64 minute, GPtrArray *why)
{
  const UnsootFreeAsk ask = trade_ask (search);
  const UnsootDiary diary = unsoot_booking_diary_get (search->diary);
  g_autofree gint64 *ids = g_new0 (gint64, ask.n_needs);
  g_autoptr (GString) tags = g_string_new (NULL);
  UnsootFreeTime *time = g_new0 (UnsootFreeTime, 1);

  unsoot_free_choose (&ask, &diary, minute, ids, why);
  time->starts_at = starts_at;
  time->ends_at = starts_at + search->minutes * 60;
  time->items = g_array_new (FALSE, FALSE, sizeof (gint64));
  for (gsize i = 0; i < ask.n_needs; i++)
    take (time, &ask.needs[i], ids[i], tags);
  if (tags->len > 0)
    time->adapters = g_strdup (tags->str);
  return time;
}

/* When the shop opens on that day; 0 where it does not. */
static gint64
opens_on (const UnsootDiary *diary, int day)
{
  gint64 opens = 0;

  for (gsize i = 0; i < diary->n_openings; i++)
    if (diary->openings[i].weekday == unsoot_day_weekday (day)
        && (opens == 0 || diary->openings[i].opens < opens % UNSOOT_DAY_MINUTES))
      opens = (gint64) day * UNSOOT_DAY_MINUTES + diary->openings[i].opens;
  return opens;
}

static UnsootFreeDay *
look_through (const Search *search, int day, gint64 from)
{
  const UnsootFreeAsk ask = trade_ask (search);
  const UnsootDiary diary = unsoot_booking_diary_get (search->diary);
  g_autoptr (GArray) starts = unsoot_free_starts (&ask, &diary, day, from, 0);
  const gint64 opens = opens_on (&diary, day);
  UnsootFreeDay *found;

  if (opens == 0)
    return NULL;
  found = g_new0 (UnsootFreeDay, 1);
  found->day = unsoot_day_iso (day);
  found->times = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_free_time_free);
  found->why = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < starts->len; i++)
    {
      const gint64 minute = g_array_index (starts, gint64, i);
      g_ptr_array_add (
          found->times,
          time_at (search, unsoot_booking_diary_unix (search->diary, minute), minute, NULL));
    }
  if (starts->len == 0)
    unsoot_free_time_free (time_at (search, 0, MAX (opens, from), found->why));
  return found;
}

GPtrArray *
unsoot_free_days (UnsootDb *db, const UnsootFreeTimeAsk *ask, gint64 from, GError **error)
{
  g_auto (Search) search = { .db = db, .ask = ask };
  g_autoptr (GPtrArray) days
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_free_day_free);
  gint64 minute;

  if (!search_begin (&search, from, from + ask->days * DAY_SECONDS, from, error))
    return NULL;
  minute = unsoot_booking_diary_wall (search.diary, from);
  for (guint i = 0; i < ask->days; i++)
    {
      UnsootFreeDay *day
          = look_through (&search, (int) (minute / UNSOOT_DAY_MINUTES) + (int) i, minute);
      if (day != NULL)
        g_ptr_array_add (days, day);
    }
  return g_steal_pointer (&days);
}

UnsootFreeTime *
unsoot_free_time_at (UnsootDb *db, const UnsootFreeTimeAsk *ask, gint64 starts_at, gint64 now,
                     GPtrArray *why, GError **error)
{
  g_auto (Search) search = { .db = db, .ask = ask };

  if (!search_begin (&search, starts_at, starts_at, now, error))
    return NULL;
  return time_at (&search, starts_at, unsoot_booking_diary_wall (search.diary, starts_at), why);
}
