/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "machine-file.h"

#include <glib/gi18n-lib.h>

#include "attention.h"
#include "civil.h"
#include "format.h"

void
unsoot_machine_file_free (UnsootMachineFile *file)
{
  if (file == NULL)
    return;
  unsoot_machine_row_free (file->machine);
  g_clear_pointer (&file->tanks, g_ptr_array_unref);
  g_clear_pointer (&file->gauges, g_ptr_array_unref);
  g_clear_pointer (&file->checks, g_ptr_array_unref);
  g_clear_pointer (&file->events, g_ptr_array_unref);
  g_clear_pointer (&file->standing, g_array_unref);
  g_free (file);
}

static void
reverse (GPtrArray *array)
{
  for (guint i = 0; i < array->len / 2; i++)
    {
      gpointer other = array->pdata[array->len - 1 - i];
      array->pdata[array->len - 1 - i] = array->pdata[i];
      array->pdata[i] = other;
    }
}

static int
newest_first (gconstpointer a, gconstpointer b)
{
  const UnsootTankEventRow *left = *(UnsootTankEventRow *const *) a;
  const UnsootTankEventRow *right = *(UnsootTankEventRow *const *) b;

  return left->id > right->id ? -1 : left->id < right->id;
}

static int
next_first (gconstpointer a, gconstpointer b)
{
  const UnsootGaugeCheckRow *left = *(UnsootGaugeCheckRow *const *) a;
  const UnsootGaugeCheckRow *right = *(UnsootGaugeCheckRow *const *) b;

  if (left->next_on == NULL || right->next_on == NULL)
    return (left->next_on == NULL) - (right->next_on == NULL);
  return g_strcmp0 (left->next_on, right->next_on);
}

/* @file->checks run from the newest: the first of each name counts. */
static void
pick_gauges (UnsootMachineFile *file)
{
  file->gauges = g_ptr_array_new ();
  for (guint i = 0; i < file->checks->len; i++)
    {
      UnsootGaugeCheckRow *check = g_ptr_array_index (file->checks, i);
      gboolean known = FALSE;

      for (guint k = 0; k < file->gauges->len; k++)
        known |= g_strcmp0 (((UnsootGaugeCheckRow *) g_ptr_array_index (file->gauges, k))->gauge,
                            check->gauge)
                 == 0;
      if (!known)
        g_ptr_array_add (file->gauges, check);
    }
  g_ptr_array_sort (file->gauges, next_first);
}

static gboolean
load_events (UnsootDb *db, UnsootMachineFile *file, GError **error)
{
  file->events = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_tank_event_row_free);
  file->standing = g_array_new (FALSE, FALSE, sizeof (gint64));
  for (guint i = 0; i < file->tanks->len; i++)
    {
      const UnsootTankState *state = g_ptr_array_index (file->tanks, i);
      g_autoptr (GPtrArray) events = unsoot_tank_events (db, state->tank->id, error);
      const UnsootTankEventRow *last = events != NULL ? unsoot_tank_standing (events) : NULL;
      if (events == NULL)
        return FALSE;
      if (last != NULL)
        g_array_append_val (file->standing, last->id);
      g_ptr_array_set_free_func (events, NULL);
      g_ptr_array_extend (file->events, events, NULL, NULL);
    }
  g_ptr_array_sort (file->events, newest_first);
  return TRUE;
}

UnsootMachineFile *
unsoot_machine_file_load (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootMachineFile) file = g_new0 (UnsootMachineFile, 1);

  file->machine = unsoot_machine_load (db, id, error);
  file->tanks = file->machine != NULL ? unsoot_machine_tanks (db, id, error) : NULL;
  file->checks = file->tanks != NULL ? unsoot_gauge_checks (db, id, error) : NULL;
  if (file->checks == NULL || !load_events (db, file, error))
    return NULL;
  reverse (file->checks);
  pick_gauges (file);
  return g_steal_pointer (&file);
}

GPtrArray *
unsoot_machine_files (UnsootDb *db, GError **error)
{
  g_autoptr (GPtrArray) files
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_machine_file_free);
  g_autoptr (GPtrArray) machines = unsoot_machine_list (db, error);

  for (guint i = 0; machines != NULL && i < machines->len; i++)
    {
      const UnsootMachineRow *machine = g_ptr_array_index (machines, i);
      UnsootMachineFile *file
          = machine->active ? unsoot_machine_file_load (db, machine->id, error) : NULL;
      if (machine->active && file == NULL)
        return NULL;
      if (file != NULL)
        g_ptr_array_add (files, file);
    }
  return machines != NULL ? g_steal_pointer (&files) : NULL;
}

static gboolean
is_past (const char *day, const char *today)
{
  return day != NULL && g_strcmp0 (day, today) < 0;
}

char *
unsoot_machine_hoses_words (const UnsootMachineFile *file, const char *today, gboolean *late)
{
  const char *due = file->machine->hoses_due_on;
  g_autofree char *day = unsoot_format_day (due, today);

  if (late != NULL)
    *late = is_past (due, today);
  if (due == NULL)
    return g_strdup (_ ("no day for new hoses is entered"));
  /* Translators: a day */
  return is_past (due, today) ? g_strdup_printf (_ ("new hoses were due %s"), day)
                              : g_strdup_printf (_ ("new hoses due %s"), day);
}

char *
unsoot_machine_gauge_words (const UnsootMachineFile *file, const char *today, gboolean *late)
{
  const UnsootGaugeCheckRow *next
      = file->gauges->len > 0 ? g_ptr_array_index (file->gauges, 0) : NULL;
  g_autofree char *day = next != NULL ? unsoot_format_day (next->next_on, today) : NULL;

  if (late != NULL)
    *late = next == NULL || !next->passed || is_past (next->next_on, today);
  if (next == NULL)
    return g_strdup (_ ("no gauge was ever checked"));
  if (!next->passed)
    /* Translators: the name of a gauge */
    return g_strdup_printf (_ ("the %s gauge did not pass"), next->gauge);
  if (next->next_on == NULL)
    return g_strdup (_ ("no day for the next gauge check is entered"));
  /* Translators: the name of a gauge, a day */
  return is_past (next->next_on, today)
             ? g_strdup_printf (_ ("check of the %s gauge was due %s"), next->gauge, day)
             : g_strdup_printf (_ ("check of the %s gauge due %s"), next->gauge, day);
}

static gboolean
is_near (const char *day, const char *today, int ahead)
{
  int due, now;

  return day != NULL && unsoot_day_parse (day, &due, NULL) && unsoot_day_parse (today, &now, NULL)
         && due - now <= ahead;
}

gboolean
unsoot_machine_hoses_due (const UnsootMachineFile *file, const char *today)
{
  return is_near (file->machine->hoses_due_on, today, UNSOOT_ATTENTION_HOSES);
}

gboolean
unsoot_machine_gauge_due (const UnsootMachineFile *file, const char *today)
{
  const UnsootGaugeCheckRow *next
      = file->gauges->len > 0 ? g_ptr_array_index (file->gauges, 0) : NULL;

  return next == NULL || !next->passed || is_near (next->next_on, today, UNSOOT_ATTENTION_GAUGE);
}
