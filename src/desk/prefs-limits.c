/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-limits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "format.h"
#include "money.h"
#include "shops.h"
#include "unit-text.h"

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_shop_save (db, who, record, error);
}

/* Estimates. */

enum
{
  OVER_PERCENT,
  OVER_AMOUNT,
  VALID_DAYS,
  N_ESTIMATES
};

static gboolean
carry_out_estimates (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &unsoot_prefs_estimates, error);
}

static const UnsootDeedForm estimates_form = {
  .slug = "shop-estimates",
  .title = N_ ("Limits of estimates"),
  .verb = N_ ("Save"),
  .done = N_ ("The limits are saved"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .n_fields = N_ESTIMATES,
  .fields = {
    [OVER_PERCENT] = { .label = N_ ("Ask again beyond, in percent"), .optional = TRUE,
                       .hint = N_ ("Empty: any overrun asks. State law may set the limit.") },
    [OVER_AMOUNT] = { .label = N_ ("Or beyond this amount"), .kind = UNSOOT_ASK_MONEY,
                      .optional = TRUE, .hint = N_ ("Empty: no such limit") },
    [VALID_DAYS] = { .label = N_ ("Days an estimate holds"), .kind = UNSOOT_ASK_COUNT },
  },
  .carry_out = carry_out_estimates,
};

static char *
estimates_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootShopRow *shop = record;

  if (field == OVER_PERCENT)
    return isnan (shop->estimate_over_percent)
               ? g_strdup ("")
               : unsoot_format_number (shop->estimate_over_percent, 3);
  if (field == OVER_AMOUNT)
    return shop->estimate_over_minor != 0 ? unsoot_money_plain (shop->estimate_over_minor, currency)
                                          : g_strdup ("");
  return g_strdup_printf ("%d", (int) shop->estimate_valid_days);
}

static gboolean
apply_estimates (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootShopRow *shop = record;
  const char *percent = unsoot_deed_text (order, OVER_PERCENT);

  shop->estimate_over_percent = NAN;
  if (percent != NULL && !unsoot_number_parse (percent, &shop->estimate_over_percent, error))
    return FALSE;
  shop->estimate_over_minor = order->values[OVER_AMOUNT].number;
  shop->estimate_valid_days = order->values[VALID_DAYS].number;
  return TRUE;
}

const UnsootPrefsEdit unsoot_prefs_estimates
    = { &estimates_form, &unsoot_shop_row_type, estimates_text, apply_estimates, save };

/* The next service. */

enum
{
  MONTHS,
  DISTANCE,
  HOURS,
  N_NEXT
};

static gboolean
carry_out_next (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &unsoot_prefs_next, error);
}

static const UnsootDeedForm next_form = {
  .slug = "shop-next",
  .title = N_ ("The next service"),
  .verb = N_ ("Save"),
  .done = N_ ("The next service is saved"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .n_fields = N_NEXT,
  .fields = {
    [MONTHS] = { .label = N_ ("After months"), .kind = UNSOOT_ASK_COUNT,
                 .hint = N_ ("Whichever of the three comes first") },
    [DISTANCE] = { .label = N_ ("After distance"), .hint = N_ ("As 30000 mi or 48000 km") },
    [HOURS] = { .label = N_ ("After engine hours"), .kind = UNSOOT_ASK_COUNT },
  },
  .carry_out = carry_out_next,
};

static char *
next_text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootShopRow *shop = record;

  if (field == MONTHS)
    return g_strdup_printf ("%d", (int) shop->next_due_months);
  if (field == HOURS)
    return g_strdup_printf ("%d", (int) (shop->next_due_seconds / 3600));
  return g_strdup_printf ("%.0f mi",
                          unsoot_unit_from_si (UNSOOT_UNIT_MI, (double) shop->next_due_metres));
}

static gboolean
apply_next (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootShopRow *shop = record;
  UnsootTyped distance;

  if (!unsoot_typed_parse (order->values[DISTANCE].text, UNSOOT_QUANTITY_DISTANCE, UNSOOT_UNIT_NONE,
                           &distance, error))
    return FALSE;
  shop->next_due_months = order->values[MONTHS].number;
  shop->next_due_metres = llround (distance.si);
  shop->next_due_seconds = order->values[HOURS].number * 3600;
  return TRUE;
}

const UnsootPrefsEdit unsoot_prefs_next
    = { &next_form, &unsoot_shop_row_type, next_text, apply_next, save };

char *
unsoot_prefs_estimates_words (const UnsootShopRow *shop, UnsootSession *session)
{
  g_autofree char *percent = unsoot_format_number (shop->estimate_over_percent, 3);
  g_autofree char *amount = unsoot_session_money (session, shop->estimate_over_minor);
  const int days = (int) shop->estimate_valid_days;
  g_autofree char *holds
      = g_strdup_printf (ngettext ("hold %d day", "hold %d days", (gulong) days), days);

  if (isnan (shop->estimate_over_percent) && shop->estimate_over_minor == 0)
    return g_strdup_printf (_ ("any overrun asks again; %s"), holds);
  if (isnan (shop->estimate_over_percent))
    return g_strdup_printf (_ ("beyond %s over they ask again; %s"), amount, holds);
  if (shop->estimate_over_minor == 0)
    return g_strdup_printf (_ ("beyond %s %% over they ask again; %s"), percent, holds);
  return g_strdup_printf (_ ("beyond %s %% or %s over they ask again; %s"), percent, amount, holds);
}

char *
unsoot_prefs_next_words (const UnsootShopRow *shop)
{
  const int months = (int) shop->next_due_months, hours = (int) (shop->next_due_seconds / 3600);
  g_autofree char *distance = unsoot_format_number (
      unsoot_unit_from_si (UNSOOT_UNIT_MI, (double) shop->next_due_metres), 0);

  /* Translators: when the next service is due, whichever comes first */
  return g_strdup_printf (_ ("after %d months, %s mi or %d engine hours"), months, distance, hours);
}
