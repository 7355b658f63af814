/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-bills.h"

#include "services.h"

UnsootShopTerms *
unsoot_shop_terms_load (UnsootDb *db, const UnsootCustomerRow *customer, GError **error)
{
  g_autoptr (GPtrArray) rules = unsoot_tax_rule_list (db, error);

  return rules != NULL ? unsoot_shop_terms_new (rules, customer, error) : NULL;
}

GPtrArray *
unsoot_job_lines_standing (UnsootDb *db, gint64 job_id, gboolean offered, GError **error)
{
  return unsoot_rows_list (db, &unsoot_job_line_row_type, error,
                           "WHERE job_id = $1 AND (state = 'authorised'"
                           " OR (state = 'offered' AND $2 = 1)) ORDER BY position, id",
                           unsoot_int (job_id), unsoot_int (offered ? 1 : 0));
}
