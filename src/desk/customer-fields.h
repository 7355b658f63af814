/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "customer-row.h"
#include "form-draft.h"
#include "session.h"

G_BEGIN_DECLS

/* What is asked of a customer. Signal "edited". */
#define UNSOOT_TYPE_CUSTOMER_FIELDS (unsoot_customer_fields_get_type ())
G_DECLARE_FINAL_TYPE (UnsootCustomerFields, unsoot_customer_fields, UNSOOT, CUSTOMER_FIELDS, GtkBox)

/* @whole: terms, taxes and orders too, not only what a call needs. */
GtkWidget *unsoot_customer_fields_new (UnsootSession *session, gboolean whole);

/* Shows @customer; says nothing of it. @phone: the first, where the fields ask for one. */
void unsoot_customer_fields_set (UnsootCustomerFields *self, const UnsootCustomerRow *customer,
                                 const char *phone);

/* Writes what was typed into @customer; the rest of it stays. Errors: a number or an amount
 * that is none. */
gboolean unsoot_customer_fields_read (UnsootCustomerFields *self, UnsootCustomerRow *customer,
                                      char **phone, GError **error);

/* What is typed into them is kept. */
void unsoot_customer_fields_watch (UnsootCustomerFields *self, UnsootFormDraft *draft);

/* Where the next thing is to be typed. */
void unsoot_customer_fields_focus (UnsootCustomerFields *self);

G_END_DECLS
