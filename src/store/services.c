/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "services.h"

#include <glib/gi18n-lib.h>

#include "bill.h"
#include "deed.h"

GPtrArray *
unsoot_service_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_service_row_type, error, "ORDER BY active DESC, name, id");
}

GPtrArray *
unsoot_dose_rule_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_dose_rule_row_type, error,
                           "ORDER BY side, size_class DESC, id");
}

GPtrArray *
unsoot_tax_rule_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_tax_rule_row_type, error, "ORDER BY id");
}

UnsootServiceRow *
unsoot_service_load (UnsootDb *db, gint64 id, GError **error)
{
  return unsoot_rows_get (db, &unsoot_service_row_type, id, error);
}

gboolean
unsoot_service_save (UnsootDb *db, const UnsootActing *who, UnsootServiceRow *service,
                     GError **error)
{
  if (unsoot_deed_blank (service->name))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("The service needs a name."));
  if (service->price_minor < 0 || service->disposal_minor < 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("“%s” has a price below zero."),
                             service->name);
  if (service->planned_minutes <= 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("“%s” needs planned minutes: the planner goes by them."),
                             service->name);
  return unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_PRICES, &unsoot_service_row_type, service,
                           NULL, error);
}

gboolean
unsoot_dose_rule_save (UnsootDb *db, const UnsootActing *who, UnsootDoseRuleRow *rule,
                       GError **error)
{
  if (rule->dose_ml <= 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("A dose has to be above zero."));
  return unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_DOSE_RULE, &unsoot_dose_rule_row_type, rule,
                           NULL, error);
}

gboolean
unsoot_tax_rule_save (UnsootDb *db, const UnsootActing *who, UnsootTaxRuleRow *rule, GError **error)
{
  gboolean standard = g_strcmp0 (rule->category, "S") == 0;

  if (standard != (rule->rate_milli_percent > 0))
    return unsoot_deed_fail (
        error, UNSOOT_STORE_ERROR_INVALID,
        _ ("A rate above zero goes with category S, and category S with a rate above zero."));
  return unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_PRICES, &unsoot_tax_rule_row_type, rule, NULL,
                           error);
}
