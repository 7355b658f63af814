/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "first-record.h"

#include <glib/gi18n-lib.h>

#include "lists.h"
#include "path.h"
#include "shops.h"

/* The newest job that has come furthest, but is not over; in the bay, one that is run. */
static const UnsootJobLine *
fullest (const GPtrArray *jobs, gboolean in_bay)
{
  static const UnsootJobStatus order[] = { UNSOOT_JOB_IN_BAY, UNSOOT_JOB_INVOICED, UNSOOT_JOB_PAID,
                                           UNSOOT_JOB_DONE, UNSOOT_JOB_IN_BAY };

  for (gsize i = in_bay ? 0 : 1; i < G_N_ELEMENTS (order); i++)
    for (guint j = 0; j < jobs->len; j++)
      {
        const UnsootJobLine *line = g_ptr_array_index (jobs, j);
        if (g_strcmp0 (line->status, unsoot_job_status_slug (order[i])) == 0)
          return line;
      }
  return jobs->len > 0 ? g_ptr_array_index (jobs, 0) : NULL;
}

/* The vehicle that came most often: it has most to show. */
static gint64
busiest (const GPtrArray *jobs)
{
  gint64 vehicle_id = 0;
  guint most = 0;

  for (guint i = 0; i < jobs->len; i++)
    {
      const UnsootJobLine *line = g_ptr_array_index (jobs, i);
      guint visits = 0;

      for (guint j = i; j < jobs->len; j++)
        visits += ((const UnsootJobLine *) g_ptr_array_index (jobs, j))->vehicle_id
                  == line->vehicle_id;
      if (visits > most)
        {
          most = visits;
          vehicle_id = line->vehicle_id;
        }
    }
  return vehicle_id;
}

gint64
unsoot_first_record (UnsootDb *db, const UnsootViewQuery *query, const char *slug, GError **error)
{
  const UnsootListPage page = { .limit = 200, .order = UNSOOT_LIST_DOWN };
  g_autoptr (GPtrArray) jobs = NULL;
  const UnsootJobLine *line;

  if (query->record != 0)
    return query->record;
  jobs = unsoot_job_page (db, &page, NULL, 0, 0, error);
  if (jobs == NULL)
    return 0;
  line = fullest (jobs, g_str_equal (slug, "bay"));
  if (line == NULL)
    {
      g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
                           _ ("There is no job yet, so there is nothing to show here."));
      return 0;
    }
  if (g_str_equal (slug, "vehicle"))
    return busiest (jobs);
  return g_str_equal (slug, "customer") ? line->customer_id : line->id;
}

char *
unsoot_first_record_today (UnsootDb *db, gint64 now, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);

  return shop != NULL ? unsoot_shop_date (shop, now) : NULL;
}
