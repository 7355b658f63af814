/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "customer-row.h"
#include "rows.h"

G_BEGIN_DECLS

UnsootCustomerRow *unsoot_customer_load (UnsootDb *db, gint64 id, GError **error);

/* UnsootPhoneRow and UnsootAddressRow, in the order in which they were added. */
GPtrArray *unsoot_customer_phones (UnsootDb *db, gint64 customer_id, GError **error);
GPtrArray *unsoot_customer_addresses (UnsootDb *db, gint64 customer_id, GError **error);

/**
 * unsoot_customer_save:
 * @customer: added where its id is 0
 * @phones: (nullable): UnsootPhoneRow, all there are from now on; one that is missing is
 *   deleted. %NULL leaves them as they are
 * @addresses: (nullable): UnsootAddressRow, likewise
 *
 * Errors: CONFLICT, NOT_ALLOWED; INVALID without a name, or with a tax exemption that
 * gives no reason.
 */
gboolean unsoot_customer_save (UnsootDb *db, const UnsootActing *who, UnsootCustomerRow *customer,
                               GPtrArray *phones, GPtrArray *addresses, GError **error);

/* Name, contact and billing address on lines of their own, as a bill is addressed. */
char *unsoot_customer_bill_to (UnsootDb *db, const UnsootCustomerRow *customer, GError **error);

G_END_DECLS
