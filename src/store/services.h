/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rows.h"
#include "service-row.h"

G_BEGIN_DECLS

/* What is sold, and the shop's rules for dose and tax. The lists are ordered as they are
 * shown; services that are no longer sold come last. */
GPtrArray *unsoot_service_list (UnsootDb *db, GError **error);
GPtrArray *unsoot_dose_rule_list (UnsootDb *db, GError **error);
GPtrArray *unsoot_tax_rule_list (UnsootDb *db, GError **error);

UnsootServiceRow *unsoot_service_load (UnsootDb *db, gint64 id, GError **error);

/* Each adds where the id is 0, else saves. Errors: CONFLICT; NOT_ALLOWED; CONSTRAINT for a
 * second rule for the same thing; INVALID for a tax that its category can't have. */
gboolean unsoot_service_save (UnsootDb *db, const UnsootActing *who, UnsootServiceRow *service,
                              GError **error);
gboolean unsoot_dose_rule_save (UnsootDb *db, const UnsootActing *who, UnsootDoseRuleRow *rule,
                                GError **error);
gboolean unsoot_tax_rule_save (UnsootDb *db, const UnsootActing *who, UnsootTaxRuleRow *rule,
                               GError **error);

G_END_DECLS
