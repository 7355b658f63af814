/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "when.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "civil-words.h"
#include "shops.h"
#include "trade-error.h"

static gboolean
refuse (const char *text, GError **error)
{
  g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
               /* Translators: what was typed; the examples can be typed as they stand */
               _ ("“%s” is no time: type it as “2025-11-24 10:30”, “today 10:30” or "
                  "“tomorrow 8:00”."),
               text);
  return FALSE;
}

gboolean
unsoot_when_absolute (const char *text, gint64 *at, GError **error)
{
  g_autoptr (GDateTime) moment = NULL;

  if (g_ascii_string_to_signed (text, 10, 0, G_MAXINT32 * G_GINT64_CONSTANT (100), at, NULL))
    return TRUE;
  moment = g_date_time_new_from_iso8601 (text, NULL);
  if (moment == NULL)
    {
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                   _ ("“%s” is no moment: type it with its zone as “2025-11-24T16:00:00Z”, or as "
                      "Unix seconds."),
                   text);
      return FALSE;
    }
  *at = g_date_time_to_unix (moment);
  return TRUE;
}

/* Typed as "10:30"; FALSE for anything else. */
static gboolean
read_clock (const char *text, UnsootLocal *local)
{
  g_auto (GStrv) parts = g_strsplit (text, ":", 3);
  gint64 hour = 0, minute = 0;

  if (g_strv_length (parts) != 2 || strlen (parts[1]) != 2
      || !g_ascii_string_to_signed (parts[0], 10, 0, 23, &hour, NULL)
      || !g_ascii_string_to_signed (parts[1], 10, 0, 59, &minute, NULL))
    return FALSE;
  local->hour = (int) hour;
  local->minute = (int) minute;
  return TRUE;
}

static int
today_of (const UnsootShopRow *shop, gint64 now)
{
  return unsoot_local_from_unix (now, unsoot_shop_utc_offset (shop, now)).day;
}

/* The words are typed as they are written here, in every language; 0: not a day. */
static int
read_day (const UnsootShopRow *shop, gint64 now, const char *text)
{
  int day = 0;

  if (g_str_equal (text, "today"))
    return today_of (shop, now);
  if (g_str_equal (text, "tomorrow"))
    return today_of (shop, now) + 1;
  if (g_str_equal (text, "yesterday"))
    return today_of (shop, now) - 1;
  return unsoot_day_parse (text, &day, NULL) ? day : 0;
}

/* The offset may be another one at the moment itself than it is now. */
static gint64
to_unix (const UnsootShopRow *shop, const UnsootLocal *local, gint64 now)
{
  gint64 guess = unsoot_local_to_unix (local, unsoot_shop_utc_offset (shop, now));

  return unsoot_local_to_unix (local, unsoot_shop_utc_offset (shop, guess));
}

gboolean
unsoot_when_moment (const UnsootShopRow *shop, gint64 now, const char *text, gint64 *at,
                    GError **error)
{
  g_autofree char *trimmed = g_strstrip (g_strdup (text));
  g_auto (GStrv) parts = g_strsplit_set (trimmed, " T", 3);
  guint n = g_strv_length (parts);
  UnsootLocal local = { 0 };

  if (n == 1 && read_clock (parts[0], &local))
    local.day = today_of (shop, now);
  else if (n == 2 && read_clock (parts[1], &local))
    local.day = read_day (shop, now, parts[0]);
  else
    return unsoot_when_absolute (trimmed, at, NULL) || refuse (text, error);
  if (local.day == 0)
    return refuse (text, error);
  *at = to_unix (shop, &local, now);
  return TRUE;
}

char *
unsoot_when_date (const UnsootShopRow *shop, gint64 now, const char *text, GError **error)
{
  int day = read_day (shop, now, text);

  if (day == 0)
    {
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                   _ ("“%s” is no day: type it as “2025-11-24”, “today” or “tomorrow”."), text);
      return NULL;
    }
  return unsoot_day_iso (day);
}

char *
unsoot_when_words (const UnsootShopRow *shop, gint64 at)
{
  UnsootLocal local;

  if (at == 0)
    return NULL;
  local = unsoot_local_from_unix (at, unsoot_shop_utc_offset (shop, at));
  return unsoot_moment_words (&local);
}

char *
unsoot_when_iso (const UnsootShopRow *shop, gint64 at)
{
  int offset = unsoot_shop_utc_offset (shop, at);
  UnsootLocal local = unsoot_local_from_unix (at, offset);
  g_autofree char *day = NULL;

  if (at == 0 || local.day == 0)
    return NULL;
  day = unsoot_day_iso (local.day);
  return g_strdup_printf ("%sT%02d:%02d:%02d%c%02d:%02d", day, local.hour, local.minute,
                          local.second, offset < 0 ? '-' : '+', ABS (offset) / 60,
                          ABS (offset) % 60);
}

char *
unsoot_when_day_words (const char *iso)
{
  int day = 0;

  if (iso == NULL || !unsoot_day_parse (iso, &day, NULL))
    return g_strdup (iso);
  return unsoot_day_words (day);
}
