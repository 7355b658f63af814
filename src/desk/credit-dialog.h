/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "invoice-view.h"
#include "session.h"

G_BEGIN_DECLS

/* Asks which lines of an invoice are taken back, and why, and issues the credit note. */
#define UNSOOT_TYPE_CREDIT_DIALOG (unsoot_credit_dialog_get_type ())
G_DECLARE_FINAL_TYPE (UnsootCreditDialog, unsoot_credit_dialog, UNSOOT, CREDIT_DIALOG, AdwWindow)

/* @over: any widget of the window. Shows it. */
GtkWindow *unsoot_credit_dialog_open (GtkWidget *over, UnsootSession *session,
                                      const UnsootInvoiceView *invoice);

G_END_DECLS
