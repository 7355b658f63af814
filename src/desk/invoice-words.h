/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* "Invoice 1031" or "Credit note 1032"; the caller frees it. @kind: "invoice" or "credit". */
char *unsoot_invoice_title (const char *kind, gint64 number);

/* How it stands: "paid", "due in 9 days", "12 days over", "credit note". ISO dates; the caller
 * frees it. @late: (out): whether it is past its day and open. */
char *unsoot_invoice_state (const char *kind, const char *due_on, gint64 open_minor,
                            const char *today, gboolean *late);
