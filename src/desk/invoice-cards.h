/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "card.h"
#include "invoice-view.h"
#include "session.h"

/* The cards of an invoice's page. Each empties its card and fills it. */
void unsoot_invoice_card_lines (UnsootCard *card, const UnsootInvoiceView *view,
                                UnsootSession *session);
void unsoot_invoice_card_money (UnsootCard *card, const UnsootInvoiceView *view,
                                UnsootSession *session);
void unsoot_invoice_card_whom (UnsootCard *card, const UnsootInvoiceView *view,
                               UnsootSession *session);
