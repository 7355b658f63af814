/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

/* A customer's fields in their dialog. */
#define UNSOOT_TYPE_CUSTOMER_EDIT (unsoot_customer_edit_get_type ())
G_DECLARE_FINAL_TYPE (UnsootCustomerEdit, unsoot_customer_edit, UNSOOT, CUSTOMER_EDIT, GtkBox)

/* Changes the customer; 0: a new one. */
void unsoot_customer_edit_open (GtkWidget *over, UnsootSession *session, gint64 customer_id);

G_END_DECLS
