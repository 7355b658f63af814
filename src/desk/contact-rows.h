/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "customer-row.h"

G_BEGIN_DECLS

/* A customer's phones and addresses, each a row that can be added and taken out. */
#define UNSOOT_TYPE_CONTACT_ROWS (unsoot_contact_rows_get_type ())
G_DECLARE_FINAL_TYPE (UnsootContactRows, unsoot_contact_rows, UNSOOT, CONTACT_ROWS, GtkBox)

GtkWidget *unsoot_contact_rows_new (void);

/* UnsootPhoneRow and UnsootAddressRow that there are. */
void unsoot_contact_rows_set (UnsootContactRows *self, const GPtrArray *phones,
                              const GPtrArray *addresses);

/* All there are to be from now on; rows left empty are none. */
GPtrArray *unsoot_contact_rows_get_phones (UnsootContactRows *self);
GPtrArray *unsoot_contact_rows_get_addresses (UnsootContactRows *self);

G_END_DECLS
