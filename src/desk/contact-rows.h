/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "customer-row.h"
#include "form-draft.h"

G_BEGIN_DECLS

/* A customer's phones and addresses, each a row that can be added and taken out. Signal
 * "edited". */
#define UNSOOT_TYPE_CONTACT_ROWS (unsoot_contact_rows_get_type ())
G_DECLARE_FINAL_TYPE (UnsootContactRows, unsoot_contact_rows, UNSOOT, CONTACT_ROWS, GtkBox)

GtkWidget *unsoot_contact_rows_new (void);

/* UnsootPhoneRow and UnsootAddressRow that there are. */
void unsoot_contact_rows_set (UnsootContactRows *self, const GPtrArray *phones,
                              const GPtrArray *addresses);

/* All there are to be from now on; rows left empty are none. */
GPtrArray *unsoot_contact_rows_get_phones (UnsootContactRows *self);
GPtrArray *unsoot_contact_rows_get_addresses (UnsootContactRows *self);

/* What is typed into them is kept. */
void unsoot_contact_rows_watch (UnsootContactRows *self, UnsootFormDraft *draft);

/**
 * unsoot_contact_rows_rebase:
 * @former_phones, @former_addresses: what these rows were filled from
 * @phones, @addresses: what someone else has saved by now
 *
 * What stands here is to stand over theirs: nothing of it changes, and what they added comes to
 * it.
 */
void unsoot_contact_rows_rebase (UnsootContactRows *self, const GPtrArray *former_phones,
                                 const GPtrArray *former_addresses, const GPtrArray *phones,
                                 const GPtrArray *addresses);

/* As they read, a line each; to free. */
char *unsoot_contact_rows_phone_words (UnsootContactRows *self, const GPtrArray *phones);
char *unsoot_contact_rows_address_words (UnsootContactRows *self, const GPtrArray *addresses);

G_END_DECLS
