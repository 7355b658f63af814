/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/*
 * Checks of what is typed about people and vehicles. They catch slips, not strangers:
 * what passes may still not exist.
 */

/**
 * unsoot_phone_check:
 *
 * Digits with the usual signs between and an optional extension ("x 12"); 7 to 15
 * digits before it (the longest number that ITU-T E.164 allows). Empty is allowed.
 *
 * Errors: UNSOOT_TRADE_ERROR_INVALID, naming @phone.
 */
gboolean unsoot_phone_check (const char *phone, GError **error);

/**
 * unsoot_email_check:
 *
 * One @ with a name before it and a domain with a point after it, no spaces,
 * lengths of RFC 5321 (64 and 254 octets). Empty is allowed.
 *
 * Errors: UNSOOT_TRADE_ERROR_INVALID, naming @email.
 */
gboolean unsoot_email_check (const char *email, GError **error);

/**
 * unsoot_po_number_check:
 * @required: the customer's rule: no work without a purchase-order number
 * @customer: whose rule it is, for the sentence
 *
 * Errors: UNSOOT_TRADE_ERROR_REFUSED where it is required and blank.
 */
gboolean unsoot_po_number_check (const char *po_number, gboolean required, const char *customer,
                                 GError **error);

/**
 * unsoot_po_limit_check:
 * @limit: what one of the customer's orders covers, minor units; 0: there is no limit
 * @amount: what this one would be, tax included
 *
 * Errors: UNSOOT_TRADE_ERROR_REFUSED beyond the limit, with both amounts.
 */
gboolean unsoot_po_limit_check (gint64 limit, gint64 amount, const char *currency,
                                const char *customer, GError **error);

/* A plate in capitals with single spaces, as it is shown; NULL where it is not UTF-8. Free it. */
char *unsoot_plate_normalise (const char *plate);
