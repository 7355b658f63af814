/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rows.h"
#include "shop-row.h"

G_BEGIN_DECLS

/* The one shop of this book, with its hours, holidays and suppliers. Errors: NOT_FOUND
 * in a book that has none yet. */
UnsootShopRow *unsoot_shop_load (UnsootDb *db, GError **error);

/* Adds the shop where its id is 0, else saves it. Errors: CONFLICT; NOT_ALLOWED;
 * CONSTRAINT for a second shop; INVALID for a currency or time zone that there isn't. */
gboolean unsoot_shop_save (UnsootDb *db, const UnsootActing *who, UnsootShopRow *shop,
                           GError **error);

/* Minutes that the shop's clock is ahead of UTC at @at (Unix seconds); the zone of this
 * computer where @shop names none. */
int unsoot_shop_utc_offset (const UnsootShopRow *shop, gint64 at);

/* The shop's date at @at (Unix seconds), ISO text to free. */
char *unsoot_shop_date (const UnsootShopRow *shop, gint64 at);

/* The instant (Unix seconds) at which the shop's day @date (ISO) begins. Errors: INVALID. */
gboolean unsoot_shop_day_start (const UnsootShopRow *shop, const char *date, gint64 *at,
                                GError **error);

/* The instant (Unix seconds) of @minute of the day @day (1 is 0001-01-01) by the shop's clock; 1440
 * is the midnight that ends it. An hour that the clock skips is told as if it had not. */
gint64 unsoot_shop_instant (const UnsootShopRow *shop, int day, int minute);

/* UnsootOpenHoursRow by weekday and hour; UnsootHolidayRow by day; UnsootSupplierRow by name. */
GPtrArray *unsoot_open_hours_list (UnsootDb *db, GError **error);
GPtrArray *unsoot_holiday_list (UnsootDb *db, GError **error);
GPtrArray *unsoot_supplier_list (UnsootDb *db, GError **error);

/* Each adds where the id is 0, else saves. Errors: CONFLICT, NOT_ALLOWED, CONSTRAINT. */
gboolean unsoot_open_hours_save (UnsootDb *db, const UnsootActing *who, UnsootOpenHoursRow *hours,
                                 GError **error);
gboolean unsoot_holiday_save (UnsootDb *db, const UnsootActing *who, UnsootHolidayRow *holiday,
                              GError **error);
/* Open no more at those hours; open on that day after all. Errors: CONFLICT, NOT_ALLOWED. */
gboolean unsoot_open_hours_drop (UnsootDb *db, const UnsootActing *who,
                                 const UnsootOpenHoursRow *hours, GError **error);
gboolean unsoot_holiday_drop (UnsootDb *db, const UnsootActing *who,
                              const UnsootHolidayRow *holiday, GError **error);
gboolean unsoot_supplier_save (UnsootDb *db, const UnsootActing *who, UnsootSupplierRow *supplier,
                               GError **error);

G_END_DECLS
