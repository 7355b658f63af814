/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shops.h"

#include <glib/gi18n-lib.h>

#include "civil.h"
#include "conflict.h"
#include "deed.h"
#include "money.h"

UnsootShopRow *
unsoot_shop_load (UnsootDb *db, GError **error)
{
  return unsoot_rows_first (db, &unsoot_shop_row_type, error, "ORDER BY id LIMIT 1");
}

static GTimeZone *
shop_zone (const UnsootShopRow *shop)
{
  g_autoptr (GTimeZone) zone
      = shop->timezone != NULL ? g_time_zone_new_identifier (shop->timezone) : NULL;

  return zone != NULL ? g_steal_pointer (&zone) : g_time_zone_new_local ();
}

static gboolean
check_shop (UnsootDb *db, const UnsootShopRow *shop, GError **error)
{
  gint64 shops = 0;

  if (unsoot_deed_blank (shop->name))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("The shop needs a name: it stands on every paper."));
  if (shop->currency == NULL || !unsoot_currency_is_code (shop->currency))
    return unsoot_deed_fail (
        error, UNSOOT_STORE_ERROR_INVALID,
        _ ("“%s” is no currency. Enter its three letters, such as USD or EUR."),
        shop->currency != NULL ? shop->currency : "");
  if (shop->timezone != NULL)
    {
      g_autoptr (GTimeZone) zone = g_time_zone_new_identifier (shop->timezone);
      if (zone == NULL)
        return unsoot_deed_fail (
            error, UNSOOT_STORE_ERROR_INVALID,
            _ ("There is no time zone “%s”. Enter one such as America/Denver, or none."),
            shop->timezone);
    }
  if (shop->id == 0 && !unsoot_db_int (db, &shops, error, "SELECT count (*) FROM shop"))
    return FALSE;
  if (shops > 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("This book has its shop already. Change that one instead."));
  return TRUE;
}

gboolean
unsoot_shop_save (UnsootDb *db, const UnsootActing *who, UnsootShopRow *shop, GError **error)
{
  return check_shop (db, shop, error)
         && unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_SHOP, &unsoot_shop_row_type, shop, NULL,
                              error);
}

int
unsoot_shop_utc_offset (const UnsootShopRow *shop, gint64 at)
{
  g_autoptr (GTimeZone) zone = shop_zone (shop);
  int interval = g_time_zone_find_interval (zone, G_TIME_TYPE_UNIVERSAL, at);

  return interval < 0 ? 0 : g_time_zone_get_offset (zone, interval) / 60;
}

char *
unsoot_shop_date (const UnsootShopRow *shop, gint64 at)
{
  g_autoptr (GTimeZone) zone = shop_zone (shop);
  g_autoptr (GDateTime) utc = g_date_time_new_from_unix_utc (at);
  g_autoptr (GDateTime) local = utc != NULL ? g_date_time_to_timezone (utc, zone) : NULL;

  return local != NULL ? g_date_time_format (local, "%Y-%m-%d") : g_strdup ("");
}

gboolean
unsoot_shop_day_start (const UnsootShopRow *shop, const char *date, gint64 *at, GError **error)
{
  g_autoptr (GTimeZone) zone = shop_zone (shop);
  g_autofree char *midnight = g_strconcat (date, "T00:00:00", NULL);
  g_autoptr (GDateTime) start = g_date_time_new_from_iso8601 (midnight, zone);

  if (start == NULL)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("“%s” is no date. Write it as 2025-03-31."), date);
  *at = g_date_time_to_unix (start);
  return TRUE;
}

gint64
unsoot_shop_instant (const UnsootShopRow *shop, int day, int minute)
{
  const UnsootLocal local
      = { day + minute / UNSOOT_DAY_MINUTES, minute % UNSOOT_DAY_MINUTES / 60, minute % 60, 0 };
  /* The offset of that very moment is known only once the moment is: near enough, then right. */
  const gint64 near = unsoot_local_to_unix (&local, 0);
  const gint64 nearer = unsoot_local_to_unix (&local, unsoot_shop_utc_offset (shop, near));

  return unsoot_local_to_unix (&local, unsoot_shop_utc_offset (shop, nearer));
}

GPtrArray *
unsoot_open_hours_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_open_hours_row_type, error,
                           "ORDER BY weekday, opens_minute, id");
}

GPtrArray *
unsoot_holiday_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_holiday_row_type, error, "ORDER BY day, id");
}

GPtrArray *
unsoot_supplier_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_supplier_row_type, error, "ORDER BY name, id");
}

gboolean
unsoot_open_hours_save (UnsootDb *db, const UnsootActing *who, UnsootOpenHoursRow *hours,
                        GError **error)
{
  return unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_SHOP, &unsoot_open_hours_row_type, hours, NULL,
                           error);
}

gboolean
unsoot_holiday_save (UnsootDb *db, const UnsootActing *who, UnsootHolidayRow *holiday,
                     GError **error)
{
  return unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_SHOP, &unsoot_holiday_row_type, holiday, NULL,
                           error);
}

static gboolean
drop (UnsootDb *db, const UnsootActing *who, const UnsootRecordType *type, gconstpointer row,
      GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_SHOP, error);
  const gboolean done = deed != NULL && unsoot_rows_delete (db, type, row, who, error);

  return deed != NULL && unsoot_deed_end (&deed, done, error);
}

gboolean
unsoot_open_hours_drop (UnsootDb *db, const UnsootActing *who, const UnsootOpenHoursRow *hours,
                        GError **error)
{
  return drop (db, who, &unsoot_open_hours_row_type, hours, error);
}

gboolean
unsoot_holiday_drop (UnsootDb *db, const UnsootActing *who, const UnsootHolidayRow *holiday,
                     GError **error)
{
  return drop (db, who, &unsoot_holiday_row_type, holiday, error);
}

gboolean
unsoot_supplier_save (UnsootDb *db, const UnsootActing *who, UnsootSupplierRow *supplier,
                      GError **error)
{
  return unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_FLUID, &unsoot_supplier_row_type, supplier,
                           NULL, error);
}
