/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "vehicles-page.h"

#include <glib/gi18n-lib.h>

#include "format.h"

struct _UnsootVehiclesPage
{
  UnsootRecordsPage parent_instance;
};

G_DEFINE_FINAL_TYPE (UnsootVehiclesPage, unsoot_vehicles_page, UNSOOT_TYPE_RECORDS_PAGE)

static char *
escape (const char *text)
{
  return g_markup_escape_text (text != NULL ? text : "", -1);
}

static char *
title_text (gconstpointer line, UnsootSession *session)
{
  return unsoot_format_title_markup (((const UnsootVehicleLine *) line)->title, TRUE);
}

static char *
customer_text (gconstpointer line, UnsootSession *session)
{
  return escape (((const UnsootVehicleLine *) line)->customer);
}

static char *
vin_text (gconstpointer line, UnsootSession *session)
{
  return escape (((const UnsootVehicleLine *) line)->vin);
}

static char *
day_text (const char *day, UnsootSession *session)
{
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *words = day != NULL ? unsoot_format_day (day, today) : NULL;

  return escape (words);
}

static char *
done_text (gconstpointer line, UnsootSession *session)
{
  return day_text (((const UnsootVehicleLine *) line)->last_done_on, session);
}

static char *
due_text (gconstpointer line, UnsootSession *session)
{
  return day_text (((const UnsootVehicleLine *) line)->next_due_on, session);
}

static char *
row_name (gconstpointer data, UnsootSession *session)
{
  const UnsootVehicleLine *line = data;

  return g_strdup_printf ("%s, %s", line->title, line->customer);
}

static const UnsootRecordsColumn columns[] = {
  { .head = N_ ("Vehicle"), .expands = TRUE, .sorts = TRUE, .text = title_text },
  { .head = N_ ("Customer"), .expands = TRUE, .text = customer_text },
  { .head = N_ ("VIN"), .text = vin_text },
  { .head = N_ ("Last done"), .text = done_text },
  { .head = N_ ("Next due"), .text = due_text },
};

static GPtrArray *
read_page (UnsootDb *db, const UnsootListPage *page, const char *filter, GError **error)
{
  return unsoot_vehicle_page (db, page, 0, error);
}

static gint64
line_id (gconstpointer line)
{
  return ((const UnsootVehicleLine *) line)->id;
}

static const char *
line_key (gconstpointer line)
{
  return ((const UnsootVehicleLine *) line)->sort;
}

static void
unsoot_vehicles_page_class_init (UnsootVehiclesPageClass *klass)
{
  UnsootRecordsPageClass *list_class = UNSOOT_RECORDS_PAGE_CLASS (klass);

  list_class->columns = columns;
  list_class->n_columns = G_N_ELEMENTS (columns);
  list_class->order = UNSOOT_LIST_UP;
  list_class->opens = "vehicle";
  list_class->read_page = read_page;
  list_class->free_line = (GDestroyNotify) unsoot_vehicle_line_free;
  list_class->id = line_id;
  list_class->after_id = line_id;
  list_class->after_text = line_key;
  list_class->name = row_name;
  list_class->empty_icon = "unsoot-vehicle-symbolic";
  list_class->empty_title = N_ ("No vehicles yet");
  list_class->empty_sentence
      = N_ ("Every vehicle and engine that was ever here, with its history and what is next due.");
}

static void
unsoot_vehicles_page_init (UnsootVehiclesPage *self)
{
}
