/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "service-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField service_columns[] = {
  UNSOOT_COLUMN (UnsootServiceRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootServiceRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootServiceRow, name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootServiceRow, sides, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootServiceRow, price_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootServiceRow, planned_minutes, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootServiceRow, disposal_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootServiceRow, active, BOOL, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootServiceRow, unsoot_service_row, "services", N_ ("service"), FALSE,
                      service_columns)

static const UnsootField dose_rule_columns[] = {
  UNSOOT_COLUMN (UnsootDoseRuleRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootDoseRuleRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootDoseRuleRow, side, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootDoseRuleRow, size_class, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootDoseRuleRow, dose_ml, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootDoseRuleRow, source, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootDoseRuleRow, unsoot_dose_rule_row, "dose_rules", N_ ("dose rule"),
                      FALSE, dose_rule_columns)

static const UnsootField tax_rule_columns[] = {
  UNSOOT_COLUMN (UnsootTaxRuleRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootTaxRuleRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootTaxRuleRow, line_kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootTaxRuleRow, category, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootTaxRuleRow, rate_milli_percent, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootTaxRuleRow, label, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootTaxRuleRow, unsoot_tax_rule_row, "tax_rules", N_ ("tax rule"), FALSE,
                      tax_rule_columns)
